# Lo que dice el servidor de la página.

served-at = Fioritura está en { $address } (se detiene con Ctrl-C). Su estante: { $shelf }
served-token =
    Solo este ordenador puede llegar a él, y solo quien tenga la contraseña: { $token }
served-beyond =
    El servidor escucha más allá de este ordenador. Quien pueda llegar a él y tenga la contraseña de abajo puede ver,
    cambiar y quitar todo lo que hay en su estante. Nada de lo que pasa por la red va cifrado, tampoco la contraseña: hágalo
    solo en una red de confianza. Las tomas se graban únicamente en este ordenador, pues los navegadores no prestan el
    micrófono a una página sin cifrar.
    Contraseña: { $token }
no-listening-address = «{ $given }» no es una dirección en la que se pueda escuchar: dé una en cifras, como 192.168.1.20, o 0.0.0.0 para todas.
port-unusable = El puerto { $port } de { $address } no está disponible ({ $reason }): tome otro.
no-page-language = La página no habla «{ $given }»: elija { LIST($known, "or") }.
token-too-short = Una contraseña de { $count } caracteres es demasiado corta: se necesitan al menos { $limit }.
token-first = Dé primero la contraseña: abra { $address } o envíela como token «bearer».
other-host = Este servidor solo responde en su propia dirección: abra la que mostró al arrancar.
other-site = La petición viene de otro sitio: use la propia página.
request-too-large = { $size } bytes son demasiados: el límite es { $limit }.
request-unfit =
    { $kind ->
        [missing] Falta { $place }: indíquelo.
        [greater_than_equal] { $place } es demasiado pequeño: { $limit } como mínimo.
        [less_than_equal] { $place } es demasiado grande: { $limit } como máximo.
        [string_too_long] { $place } es demasiado largo: { $limit } caracteres como máximo.
        [string_too_short] { $place } es demasiado corto: { $limit } caracteres como mínimo.
        [too_long] { $place } tiene demasiadas entradas: { $limit } como máximo.
        [too_short] { $place } tiene muy pocas entradas: { $limit } como mínimo.
        [extra_forbidden] { $place } no se conoce aquí: no lo indique.
       *[other] { $place } es de una clase que aquí no se admite: véase /api/openapi.json.
    }
no-such-address = No hay nada en esta dirección.
address-refused = Esto no es posible en esta dirección (HTTP { $status }).
upload-problem = { $file }: { $problem }
upload-empty = El archivo está vacío: expórtelo o guárdelo de nuevo.
no-such-tune-in-book =
    { $count ->
        [one] El cuaderno tiene { $count } melodía y ninguna melodía { $given }: elija otra.
       *[other] El cuaderno tiene { $count } melodías y ninguna melodía { $given }: elija otra.
    }
tune-facts-unfit = Lo que dice de una melodía, o de cómo se lee, no encaja.
no-tune-yet = Todavía no hay ninguna melodía: empiece con X:1 y termine la cabecera con K:.
chords-inferred = El archivo no tiene cifrado de acordes; los que van entre paréntesis se han deducido.
arrangement-first = primero
arrangement-copy = copia
staff-name =
    { $line ->
        [plain] sencilla
        [ornamented] adornada
        [this] esta
       *[other] otra
    }
no-figure-here = Aquí no hay ninguna figura «{ $given }»: vuelva a mirar el arreglo.
replace-needs-other = Para reemplazar una figura, indique también la otra.
bend-needs-note = Para subir o bajar una nota, indique cuál.
no-such-sound = Ese sonido ya no existe: vuelva a preguntar qué se puede oír.
engraver-ended = El grabado se interrumpió, quizá por falta de memoria: inténtelo de nuevo.
step-decided =
    { $kind ->
        [keep] conservar «{ $figure }»
        [release] liberar «{ $figure }»
        [leave-out] omitir «{ $figure }»
        [replace] reemplazar «{ $figure }»
        [raise] subir una nota de «{ $figure }»
       *[lower] bajar una nota de «{ $figure }»
    }
step-setting = cambiar el ajuste
too-many-jobs = Ya esperan { $waiting } trabajos: inténtelo de nuevo cuando terminen algunos.
no-such-job = Ese trabajo ya no existe: empiécelo de nuevo.
job-without-file = El trabajo no ha producido ningún archivo: mire cómo va.
job-files =
    { $count ->
        [one] { $count } archivo
       *[other] { $count } archivos
    }
job-too-long =
    { $minutes ->
        [one] El trabajo duró más de { $minutes } minuto: pida menos de una vez.
       *[other] El trabajo duró más de { $minutes } minutos: pida menos de una vez.
    }
job-failed = El trabajo ha fallado ({ $reason }): la salida del servidor dice dónde.
job-died =
    { $how ->
        [signal] El proceso terminó con la señal { $number }, quizá por falta de memoria: inténtelo de nuevo o pida menos de una vez.
       *[code] El proceso terminó con el código { $number }, quizá por falta de memoria: inténtelo de nuevo o pida menos de una vez.
    }
plan-damaged =
    { $count ->
        [one] El plan de una lección está dañado ({ $count } defecto).
       *[other] El plan de una lección está dañado ({ $count } defectos).
    }
no-such-passage =
    { $count ->
        [one] La toma tiene { $count } pasada y ninguna pasada { $given }.
       *[other] La toma tiene { $count } pasadas y ninguna pasada { $given }.
    }
report-damaged =
    { $count ->
        [one] El informe está dañado ({ $count } defecto): grabe la toma de nuevo.
       *[other] El informe está dañado ({ $count } defectos): grabe la toma de nuevo.
    }
take-facts-damaged =
    { $count ->
        [one] Los datos de una toma están dañados ({ $count } defecto).
       *[other] Los datos de una toma están dañados ({ $count } defectos).
    }
recording-gone = La grabación ya no está en { $folder }: devuelva { $name } a su sitio o descarte la toma.
beat-in-bar = compás { $bar }, tiempo { NUMBER($beat, maximumFractionDigits: 2) }
sentence = { CAPITAL($words) }
