### Las palabras de la página y de sus scripts.

## En cada página

page-language = Idioma de esta página
page-skip-content = Ir al contenido
page-skip-music = Ir a la música
page-pages = Páginas
page-stand = Atril
page-lesson = Lección
page-take = Toma
page-students = Alumnos
page-shelf = Estante
page-bring-in = Traer
page-view = Vista
page-smaller-notes = Notas más pequeñas
page-larger-notes = Notas más grandes
page-close-panel = Cerrar el panel
page-engraving = Grabando la música…
page-wait = Un momento…
page-waiting = Esperando…
page-play = Tocar
page-stop = Parar
page-hear = Oír
page-keep = Conservar
page-cancel = Cancelar
page-close = Cerrar
page-remove = Quitar
page-remove-name = Quitar { $name }
page-add = Añadir
page-all = Todos
page-none = Ninguno
page-off = no
page-undo = Deshacer
page-redo = Rehacer
page-title = Título
page-tune = Melodía
page-tags = Etiquetas
page-player = Instrumento
page-level = Nivel
page-idiom = Estilo
page-idiom-file = Según la pieza
page-idiom-jazz = Jazz
page-idiom-folk = Folk
page-idiom-blues = Blues
page-idiom-irish = Irlandés
page-eighth-notes = Corcheas
page-feel-straight = Iguales
page-feel-swing = Swing
page-tempo = Tempo
page-tempo-now = Tempo { $tempo }
page-tempo-share = { $tempo } ({ $share } %)
page-beats-a-minute = tiempos por minuto
page-band = Banda
page-microphone = Micrófono
page-ornament = Adorno
page-nobody = nadie en particular
page-milliseconds = { $ms } ms
page-percent = { $share } %
page-share-of = { $count } de { $total }
page-bar-one = Compás { $first }
page-bars-span = Compases { $first }–{ $last }
page-bars-pickup = De la anacrusa al compás { $last }
page-bars-from-to = Compases { $first } a { $last }
page-bars-count =
    { $count ->
        [one] { $count } compás
       *[other] { $count } compases
    }
page-pickup = Anacrusa
page-care-softly = Empiece suave, sobre todo con auriculares.
page-care-limit = Según el límite habitual en el trabajo (NIOSH: 85 dB durante ocho horas), una hora a 94 dB llena el día.
page-sound-preparing = Preparando el sonido…
page-line-name =
    { $line ->
        [plain] sencilla
       *[ornamented] adornada
    }
page-technique-name = Nombre
page-technique-label = Signo sobre las notas
page-technique-text = Qué es
page-technique-how = Cómo
page-technique-when = Cuándo
page-technique-fault = Qué sale mal
page-technique-cure = Qué ayuda

## El servidor

page-server-silent = El servidor no responde: ¿sigue en marcha `fioritura serve`?
page-server-failed = El servidor ha fallado ({ $status }).
page-server-forgot = El servidor ha olvidado este trabajo: empiécelo de nuevo.

## Las teclas

page-keys = Teclas
page-keys-letters = Las letras y los signos sueltos son teclas
page-keycap-space = Espacio
page-keycap-escape = Esc
page-keycap-control = Ctrl
page-key-help = estas teclas
page-key-level = nivel
page-key-level-number = nivel { $level }
page-key-slower-faster = más lento, más rápido
page-key-faster = más rápido
page-key-smaller-larger = notas más pequeñas, más grandes
page-key-larger = notas más grandes
page-key-close-panel = cerrar el panel

## La entrada, y las direcciones que no llevan a ninguna parte

page-enter = Entrar
page-enter-whose = ¿De quién es este estante?
page-enter-about = Esta página se ofrece por una red. La contraseña está en el terminal donde se arrancó.
page-enter-token = Contraseña
page-enter-wrong = Esa no es la contraseña: vuelva a mirar en el terminal.
page-wrong = Aquí no
page-wrong-to-shelf = Al estante
page-wrong-to-stand = Al atril

## Traer melodías

page-bring-a-tune = Traer una melodía
page-bring-unfolds = Escribir las repeticiones, para que cada vez pueda ser distinta
page-bring-from-files = Desde archivos
page-bring-drop = Suelte aquí archivos MusicXML, ABC o MIDI,
page-bring-choose-files = o elija archivos
page-bring-choose-folder = o una carpeta entera
page-bring-type-abc = O escriba la melodía en ABC
page-bring-my-tune = Mi melodía
page-bring-take = Ponerla en el atril
page-bring-preview = Tal como se leerá
page-bring-preview-music = La melodía escrita, en notas
page-bring-bars-from = Compases desde el { $bar }
page-bring-readable = Se puede leer.
page-bring-problem-at = Línea { $line }, columna { $column }: { $problem }
page-bring-problem-in = { $problem } (línea { $line }, columna { $column })
page-bring-tune-facts =
    { $bars ->
        [one] { $key }, { $metre }, { $bars } compás
       *[other] { $key }, { $metre }, { $bars } compases
    }
page-bring-files-read = Archivos leídos
page-bring-files-done = { $done } de { $total } archivos
page-bring-stopped = Parado: no se ha puesto nada en el estante.
page-bring-no-tunes = Ninguno de estos archivos es MusicXML, ABC o MIDI.
page-bring-too-large = Estos archivos son demasiado grandes juntos: tráigalos por partes de { $most } MB.
page-bring-reading =
    { $count ->
        [one] Leyendo { $count } archivo…
       *[other] Leyendo { $count } archivos…
    }
page-bring-skipped =
    { $count ->
        [one] { $count } archivo más se ha dejado de lado.
       *[other] { $count } archivos más se han dejado de lado.
    }

## El estante

page-shelf-search-what = Buscar en títulos, compositores, etiquetas y lecciones
page-shelf-search = Buscar
page-shelf-export = Exportar todo
page-shelf-restore = Recuperar una exportación
page-shelf-restoring = Recuperando…
page-shelf-doubles = Algunas de estas melodías ya están aquí
page-shelf-doubles-count =
    { $count ->
        [one] Una melodía de la exportación viene del mismo archivo que una de su estante. ¿Qué se hace con ella?
       *[other] { $count } melodías de la exportación vienen de los mismos archivos que otras de su estante. ¿Qué se hace con ellas?
    }
page-shelf-doubles-skip = Dejar las mías como están y añadir solo las demás
page-shelf-doubles-replace = Sustituir las mías, con todo lo que les pertenece
page-shelf-doubles-copy = Añadirlas todas una segunda vez
page-shelf-none-by-that-name = No hay nada aquí con ese nombre: { $all }.
page-shelf-show-all = mostrar todo
page-shelf-empty = Todavía no hay nada aquí: traiga una melodía.
page-shelf-arrangement = Arreglo: { $name }
page-shelf-remove-arrangement = Quitar el arreglo { $name } de { $title }
page-shelf-lesson = Lección: { $title }
page-shelf-worked-on = trabajado el { $day }
page-shelf-describe = Título y etiquetas
page-shelf-describe-name = Título y etiquetas de { $title }
page-shelf-tags = Etiquetas, separadas por comas
page-shelf-remove-sure = ¿Quitarlo?
page-shelf-remove-about = «{ $what }» sale del estante con todo lo que le pertenece. Una exportación que lo contenga se puede recuperar.

## El atril

page-stand-tools = Historial y vista
page-stand-music = Música: sencilla sobre adornada
page-stand-legend = Clases de figuras en este arreglo
page-stand-panel = Figura y ajuste
page-stand-tabs = Panel
page-stand-setting =
    { $idiom ->
        [jazz] { $player }, nivel { $level }, jazz
        [blues] { $player }, nivel { $level }, blues
        [irish] { $player }, nivel { $level }, irlandés
       *[folk] { $player }, nivel { $level }, folk
    }
page-stand-figures =
    { $count ->
        [one] { $count } figura · { $share } % de la melodía como era
       *[other] { $count } figuras · { $share } % de la melodía como era
    }
page-stand-undo-what = Deshacer: { $what } (U)
page-stand-undo-nothing = Nada que deshacer
page-stand-redo-what = Rehacer: { $what } (Y)
page-stand-redo-nothing = Nada que rehacer
page-stand-undone = Deshecho: { $what }
page-stand-redone = Rehecho: { $what }
page-stand-loop-how = Arrastre sobre los compases que quiera repetir, o elija antes una figura.
page-stand-key-play = tocar, parar
page-stand-key-next = figura siguiente
page-stand-key-before = figura anterior
page-stand-key-keep = conservar la figura, o liberarla
page-stand-key-leave-out = omitir la figura
page-stand-key-hear = oír la figura
page-stand-key-alternatives = ir a lo que podría ir aquí en su lugar
page-stand-key-undo = deshacer
page-stand-key-redo = rehacer
page-stand-key-plain = oír la melodía sencilla
page-stand-key-ornamented = oír la línea adornada
page-stand-key-in-turn = oírlas por turnos
page-stand-key-loop = repetir los compases en torno a la figura, o no
page-stand-key-count-in = cuenta previa sí, no
page-stand-key-band = banda sí, no
page-stand-key-setting = el ajuste
page-stand-key-version = poner otra versión al lado, o guardarla
page-stand-key-lesson = hacer una lección con ella

## El atril: una figura

page-figure = Figura
page-figure-none = Elija una figura en la música, o pase de una a otra con las flechas.
page-figure-looking = Buscando qué más podría ir aquí…
page-figure-alternatives = Qué más podría ir aquí
page-figure-no-other = Aquí no podría ir otra cosa.
page-figure-where = { $family } · { $where }
page-figure-place = { $name }, { $where }
page-figure-place-kept = { $name }, { $where }, conservada
page-figure-keep = Conservar
page-figure-kept = Conservada
page-figure-leave-out = Omitir
page-figure-hear = Oírla
page-figure-hear-name = Oír: { $name }
page-figure-difficulty = Dificultad
page-difficulty-name =
    { $difficulty ->
        [easy] fácil
        [moderate] media
        [demanding] exigente
       *[hard] difícil
    }
page-figure-notes = Sus notas, como se escriben
page-figure-added-note = Nota añadida { $note }
page-figure-lower = Bajar { $note }
page-figure-raise = Subir { $note }
page-figure-on-staff = { $name } en un pentagrama
page-figure-fit =
    { $fit ->
        [best] es la que mejor encaja
        [well] encaja bien
        [fairly] encaja
       *[less] encaja menos
    }
page-figure-stands = está puesta
page-figure-take = Tomar en su lugar
page-figure-take-name = Tomar en su lugar: { $name }

## El atril: el ajuste, otras versiones y copias

page-setting = Ajuste
page-setting-tempo = Tempo del arreglo
page-setting-density = Cuántas figuras
page-setting-families = Clases de figuras
page-setting-techniques = Técnicas una a una
page-density-usual = como siempre
page-density-fewer = menos ({ $share } %)
page-density-more = más ({ $share } %)
page-version-another = Otra versión
page-version-about = El mismo ajuste y las mismas decisiones, otra buena elección de figuras, en un pentagrama debajo de este.
page-version-show = Mostrar otra al lado
page-version-next = Otra más
page-version-take = Tomarla
page-version-hide = Guardarla
page-copy-another = Otro arreglo
page-copy-about = Dejar este como está y seguir con una copia: para otro instrumento, otro nivel. Los dos quedan en el estante.
page-copy-name = Su nombre
page-copy-make = Copiar

## Oírla

page-hear-what = Qué oír
page-hear-plain = Sencilla
page-hear-ornamented = Adornada
page-hear-in-turn = Por turnos
page-hear-other = Otra
page-hear-both = Esta, otra
page-hear-tempo = Tempo en tiempos por minuto
page-hear-loop = Bucle
page-hear-loop-how = Bucle (L): arrastre sobre los compases, o repita los de la figura
page-hear-loop-bars = compases { $first }–{ $last }
page-hear-loop-on = Bucle: { $bars }
page-hear-loop-off = Sin bucle
page-hear-count-in = Cuenta previa
page-hear-feel = Feeling
page-hear-band-on = Con banda
page-hear-band-off = Sin banda
page-part-name =
    { $part ->
        [melody] Melodía
        [bass] Bajo
        [chords] Acordes
        [drums] Batería
       *[click] Clic
    }
page-feel-usual = lo que conviene a la melodía
page-feel-name =
    { $feel ->
        [swing] swing
        [shuffle] shuffle
        [slow-blues] slow blues
        [ballad] balada
        [bossa] bossa
        [soul] soul
        [funk] funk
        [waltz] vals
        [folk-waltz] vals folk
        [march] marcha y polca
        [reel] reel
        [jig] giga
       *[other] { $feel }
    }

## La lección

page-lesson-on = Lección sobre { $title }
page-lesson-built-from = Hecha a partir { $arrangement }, tal como está ahora.
page-lesson-arrangement = del arreglo del atril
page-lesson-others = Lecciones sobre esta melodía
page-lesson-new = Nueva lección
page-lesson-your-words = Sus palabras
page-lesson-for = Para
page-lesson-for-whom = un alumno, una clase
page-lesson-studio = Línea del estudio
page-lesson-studio-what = estudio, día y hora
page-lesson-notes = Notas en la primera página
page-lesson-notes-what = Qué escuchar, por dónde empezar
page-lesson-more-words = Subtítulo, compositor, derechos
page-lesson-subtitle = Subtítulo
page-lesson-subtitle-what = nivel y estilo
page-lesson-composer = Compositor
page-lesson-composer-what = como en el archivo
page-lesson-rights = Derechos
page-lesson-rights-what = quién puede copiarla
page-lesson-phrases = Frases
page-lesson-phrases-about = Los ejemplos salen de las frases elegidas.
page-lesson-phrase-new =
    { $count ->
        [one] nueva, { $count } figura
       *[other] nueva, { $count } figuras
    }
page-lesson-phrase-returns =
    { $count ->
        [one] ya oída, { $count } figura
       *[other] ya oída, { $count } figuras
    }
page-lesson-reading = Leyendo el arreglo…
page-lesson-whom = Para quién, y cómo
page-lesson-paper = Papel
page-paper-a-four = A4
page-paper-letter = Carta
page-lesson-language = Idioma
page-lesson-note-names = Nombres de las notas
page-note-names-usual = los del idioma
page-note-names-english = C D E, B♭
page-note-names-german = C D E, B y H
page-note-names-solfege = Do Re Mi
page-lesson-sound-files = Archivos de sonido
page-lesson-sections = En la carpeta
page-lesson-section =
    { $section ->
        [handout] Cuadernillo
        [parts] Partes
        [sound] Sonido
        [exercises] Ejercicios
        [levels] Camino graduado
        [page] Página sin conexión
        [overlays] Imágenes
        [clips] Clips
       *[other] { $section }
    }
page-lesson-section-about =
    { $section ->
        [handout] la melodía, cada técnica con un ejemplo, la interpretación, un plan de estudio
        [parts] una hoja para cada instrumento elegido abajo
        [sound] sencilla, adornada, acompañamientos y ejemplos, lento y rápido
        [exercises] los pasajes difíciles y las técnicas en otras tonalidades
        [levels] la melodía desde el nivel más fácil hasta este, con un plan de curso
        [page] un archivo que toca la lección en cualquier navegador
        [overlays] los ejemplos sin fondo, para ponerlos sobre un vídeo
        [clips] cada ejemplo como vídeo, apaisado y vertical (lento)
       *[other] { "" }
    }
page-lesson-players = Instrumentos que reciben una parte
page-lesson-techniques = Técnicas
page-lesson-techniques-about = Cada una de las elegidas recibe una sección con un ejemplo de la melodía. Cambie sus palabras donde usted lo diga de otro modo.
page-lesson-technique-use =
    { $count ->
        [0] nivel { $level } · no está en el arreglo
        [one] nivel { $level } · una vez
       *[other] nivel { $level } · { $count } veces
    }
page-lesson-more = Qué más ofrece esta melodía
page-lesson-words = Palabras
page-lesson-words-on = Palabras sobre { $name }
page-lesson-words-back = Volver a las palabras habituales
page-lesson-preview = Los ejemplos, como se imprimirán
page-lesson-example-music = { $name }, sencilla sobre adornada
page-lesson-examples =
    { $count ->
        [one] { $count } técnica.
       *[other] { $count } técnicas, la más fácil primero.
    }
page-lesson-no-part = No hay parte para { $player }: { $reason }
page-lesson-keeping = Guardando…
page-lesson-kept = En el estante
page-lesson-not-kept = Aún no está en el estante
page-lesson-unkept = No se ha podido poner la lección en el estante: inténtelo de nuevo.
page-lesson-remove = Quitar esta lección
page-lesson-remove-sure = ¿Quitar esta lección?
page-lesson-remove-about = El arreglo se queda; el plan y sus palabras para esta lección se pierden.
page-lesson-key-build = preparar la carpeta
page-lesson-key-download = descargar la carpeta
page-lesson-key-stop = parar la preparación
page-lesson-key-stand = volver al atril

## La carpeta de la lección

page-pack = Carpeta
page-pack-build = Preparar la carpeta
page-pack-build-again = Preparar de nuevo
page-pack-download = Descargar
page-pack-beginning = Empezando…
page-pack-waiting = Esperando a otro trabajo…
page-pack-reading = Leyendo la lección…
page-pack-building = Preparando…
page-pack-step =
    { $step ->
        [engraving] Grabado { $done } / { $total }
        [sound] Sonido { $done } / { $total }
        [documents] Páginas para imprimir { $done } / { $total }
        [page] Página sin conexión { $done } / { $total }
        [overlays] Imágenes { $done } / { $total }
        [clips] Clips { $done } / { $total }
       *[other] { $step } { $done } / { $total }
    }
page-pack-ready =
    { $count ->
        [one] Lista: { $count } archivo, { NUMBER($size, minimumFractionDigits: 1, maximumFractionDigits: 1) } MB.
       *[other] Lista: { $count } archivos, { NUMBER($size, minimumFractionDigits: 1, maximumFractionDigits: 1) } MB.
    }
page-pack-no-part = No hay parte para { $player }: { $reason }.
page-pack-none = Todavía no hay carpeta: prepárela antes.
page-pack-outdated = Ha cambiado desde entonces.
page-pack-stopped = Parado.

## Hacer una toma

page-take-of = Toma: { $title }
page-take-music = La línea que se va a tocar
page-take-line =
    { $line ->
        [plain] La melodía sencilla
       *[ornamented] Con sus adornos
    }
page-take-panel = Cómo grabar
page-take-what = Qué tocar
page-take-which = Para tocar
page-take-behind = Detrás de usted
page-take-behind-click = Clic
page-take-behind-nothing = Nada
page-take-loudness = Volumen
page-take-guide = Tocar también la línea, suave
page-take-who = Quién toca
page-take-plays = Toca { $name }.
page-take-headphones = Use auriculares, para que el micrófono le oiga solo a usted.
page-take-headphones-on = ¿Auriculares puestos?
page-take-choices = Opciones
page-record = Grabar
page-take-record-button =
    { $state ->
        [starting] Espere…
        [recording] Parar
       *[idle] Grabar
    }
page-take-count-in = Cuenta previa: { $beats }
page-take-bar = Compás { $bar } de { $last }
page-take-again = Grabar de nuevo
page-take-playback = Oír lo grabado
page-take-cancel = Dejar de escuchar
page-take-bring = O traiga una grabación
page-take-choose-file = Elegir un archivo
page-take-file-about = WAV, FLAC, MP3 u OGG, hasta diez minutos. Cualquier tempo vale.
page-take-earlier = Tomas de esta melodía
page-take-ornaments = { $count } de { $total } adornos
page-take-not-kept = aún sin conservar
page-take-sound-not-ready = El sonido no está listo: espere un momento y grabe de nuevo.
page-take-too-short = Ha sido demasiado corto: toque la melodía o una frase suya.
page-take-clips =
    { $count ->
        [one] La grabación satura en { $count } lugar: la próxima vez, más lejos del micrófono.
       *[other] La grabación satura en { $count } lugares: la próxima vez, más lejos del micrófono.
    }
page-take-key-record = grabar, parar
page-take-key-microphone = probar el micrófono, cerrarlo
page-take-key-plain = tocar la melodía sencilla
page-take-key-ornamented = tocar la línea adornada
page-take-key-band = con la banda
page-take-key-click = con un clic
page-microphone-which = Cuál
page-microphone-try = Probar el micrófono
page-microphone-close = Cerrar el micrófono
page-microphone-closed = cerrado
page-microphone-not-encrypted = Un navegador no da micrófono a una página sin cifrar de otro ordenador: grabe en el propio ordenador o traiga una grabación.
page-microphone-not-allowed = Esta página no tiene permiso para el micrófono: permítalo en la barra de direcciones del navegador o traiga una grabación.
page-microphone-none = No hay ningún micrófono conectado: conecte uno o traiga una grabación.
page-microphone-taken = Otro programa ocupa el micrófono: ciérrelo o traiga una grabación.
page-meter = Nivel del micrófono, en decibelios por debajo del máximo
page-meter-words =
    { $state ->
        [clips] Demasiado fuerte, satura: aléjese o baje la entrada
        [hot] Demasiado cerca del máximo: aléjese un poco
        [good] Bien
       *[soft] Débil: acérquese o suba la entrada
    }
page-meter-spoken =
    { $state ->
        [clips] { $level } decibelios, demasiado fuerte, satura: aléjese o baje la entrada
        [hot] { $level } decibelios, demasiado cerca del máximo: aléjese un poco
        [good] { $level } decibelios, bien
       *[soft] { $level } decibelios, débil: acérquese o suba la entrada
    }
page-delay = Retraso
page-delay-about = Lo que se le toca vuelve un poco más tarde. Ese tiempo se descuenta, para que una nota en el pulso cuente como tal.
page-delay-by-hand = Ajustar a mano
page-delay-measure = Medirlo
page-delay-guess = Estimarlo
page-delay-measure-how = Para medir, acerque un auricular al micrófono: suenan cinco clics.
page-delay-how =
    { $how ->
        [guessed] { $ms } ms, estimado
        [measured] { $ms } ms, medido
       *[by-hand] { $ms } ms, a mano
    }
page-delay-listening = Escuchando cinco clics…
page-delay-found = El retraso es de { $delay }.
page-delay-unclear = Los clics no han vuelto con claridad: acerque un auricular al micrófono, suba un poco el volumen y mida de nuevo.
page-sending-listening = Escuchando la toma…
page-sending-listening-about = Se buscan notas, adornos, afinación y tiempo. Tarda unos segundos por cada minuto de música.
page-sending-failed = De esto no se puede informar
page-sending-no-recording = No es una grabación: traiga un archivo WAV, FLAC, MP3 u OGG.
page-sending-too-large = El archivo ocupa { $size } MB; el límite es { $most } MB. Guárdelo como MP3 o grabe una melodía cada vez.

## El informe de una toma

page-report-of = Toma de { $title }
page-report-around = En torno a esta toma
page-report-another = Otra toma
page-report-on-stand = En el atril
page-report-short = En breve
page-report-reading = Leyendo el informe…
page-report-asked-at = pedida a { $tempo }
page-report-seconds = { $seconds } s
page-report-minutes = { $minutes } min { $seconds } s
page-report-key = Suena { $where }.
page-report-recording = La grabación
page-report-along = Oírla con la banda
page-report-whose = De quién es la toma
page-report-keep = Conservarla
page-report-kept = Conservada en el estante.
page-report-kept-now = Conservada.
page-report-kept-of = Conservada como toma de { $student }.
page-report-discard = Descartarla
page-report-discard-sure = ¿Descartar esta toma?
page-report-discard-about = La grabación y su informe se borran. No se puede deshacer.
page-report-discard-yes = Descartar
page-report-print = Imprimirlo
page-report-printing = Componiendo las páginas…
page-report-printed = Abrir las páginas (PDF)
page-report-advice = Para estudiar ahora
page-report-heard = Tal como se oyó
page-report-heard-about = Su altura sobre la línea impresa: por el centro de la cabeza de la nota está afinada con usted mismo; un espacio de diferencia son 50 cents.
page-report-passage = Pasada
page-report-music = La línea impresa con la altura que se oyó
page-report-signs = Signos
page-report-note-kind =
    { $kind ->
        [right] una nota de la melodía
        [figure] en un adorno
        [wrong] otra nota
       *[added] una nota añadida
    }
page-report-note = { $note }, { $cents } cents
page-report-status =
    { $status ->
        [done] logrado
        [missed] no se oyó
       *[added] añadido por usted
    }
page-report-ornament-status =
    { $status ->
        [done] adorno logrado
        [missed] adorno que no se oyó
       *[added] adorno añadido por usted
    }
page-report-no-ornaments = No se pidió ningún adorno, y ninguno se oyó.
page-report-came-out = { $count } de { $total } logrados
page-ornaments-added = { $count } añadidos
page-report-where = Dónde
page-report-outcome = Qué fue de él
page-report-sure = Certeza
page-report-hear = Oír { $name }, { $where }
page-report-slips = Notas distintas de las escritas
page-report-slip = { $what } ({ $where })
page-report-time = Tiempo
page-report-tempo = { $tempo } tiempos por minuto
page-report-drift = Del principio al final
page-report-steady = estable
page-report-faster = { $percent } por ciento más rápido
page-report-slower = { $percent } por ciento más lento
page-report-spread = En torno a su propio pulso
page-report-spread-within = notas dentro de { $ms } ms
page-report-even = iguales
page-report-swing = { NUMBER($ratio, minimumFractionDigits: 2, maximumFractionDigits: 2) } a 1
page-report-behind-band = Respecto al acompañamiento
page-report-graces = Notas de adorno
page-report-on-beat = justo en él
page-report-late = { $ms } ms tarde
page-report-early = { $ms } ms antes
page-report-beats = En qué lugar del compás
page-report-pitch = Afinación y sonido
page-report-your-a = Su La
page-report-tuning = { $hertz } Hz, { $cents } cents desde 440
page-report-melody = Notas de la melodía
page-report-right = { $count } de { $total } correctas
page-report-soft-loud = De suave a fuerte
page-report-decibels = { $range } dB
page-report-by-register = Por registro y nota
page-report-cents = { $cents } cents

## Los alumnos y su progreso

page-students-all = Todos los alumnos
page-students-nobody = Nadie en particular
page-students-none = Todavía nadie. Las tomas también se pueden conservar sin nombre.
page-students-name = Nombre
page-student-new = Nuevo alumno
page-student-name-what = Nombre de pila o iniciales
page-students-takes =
    { $count ->
        [0] Ninguna toma conservada
        [one] Una toma
       *[other] { $count } tomas
    }
page-students-takes-last =
    { $count ->
        [one] Una toma, la última el { $day }
       *[other] { $count } tomas, la última el { $day }
    }
page-students-rename = Cambiar el nombre
page-students-rename-name = Cambiar el nombre de { $name }
page-students-remove-sure = ¿Quitar a este alumno?
page-students-remove-about = «{ $name }» sale del estante, y { $takes }. No se puede deshacer.
page-students-removed-too =
    { $count ->
        [0] nada más
        [one] también una toma con su grabación
       *[other] también { $count } tomas con sus grabaciones
    }
page-privacy = Qué se guarda de un alumno
page-privacy-kept = Un nombre y las tomas que usted decide conservar: grabación, informe y fecha. Nada más, y nada sale de este ordenador: todo está en { $folder } y en las exportaciones que usted mismo hace.
page-privacy-ask = Basta el nombre de pila o las iniciales. Pregunte al alumno, y a los padres si es menor, antes de conservar una grabación. Al quitar a un alumno se borran todas sus tomas y grabaciones.
page-takes = Tomas
page-takes-all-of = Todas las tomas de { $student }
page-takes-of-nobody = Tomas de nadie en particular
page-measure-pitch = Afinación
page-measure-timing = Tiempo
page-measure-ornaments = Adornos
page-progress-around = En torno a estas tomas
page-progress-all-tunes = todas las melodías
page-progress-record = Grabar una toma
page-progress-none = Todavía no hay tomas: grabe una y consérvela.
page-progress-when = Cuándo
page-progress-line = Línea
page-progress-right = Notas correctas
page-progress-keep = ¿conservarla?
page-progress-none-asked = ninguno pedido
page-progress-no-ornament = Todavía no se ha pedido ningún adorno.
page-progress-cents = { NUMBER($cents, minimumFractionDigits: 1, maximumFractionDigits: 1) } cents
page-progress-pitch-about = Cents desde el centro de la nota, en mediana. Hasta 10 (sombreado) suena afinado a casi todos los oídos.
page-progress-timing-about = Cuánto se dispersan las notas en torno al pulso propio. Hasta 35 ms (sombreado) es estable.
page-progress-ornaments-about = Cuántos de los adornos pedidos se han logrado. Desde cuatro de cinco (sombreado) son seguros.
page-progress-point =
    { $unit ->
        [cents] { $tune }, { $day }: { $value } cents
        [ms] { $tune }, { $day }: { $value } ms
       *[percent] { $tune }, { $day }: { $value } %
    }
page-progress-chart =
    { $measure }: { $value } { $unit ->
        [cents] cents
        [ms] ms
       *[percent] %
    } en la última de { $count ->
        [one] { $count } toma
       *[other] { $count } tomas
    }{ $course ->
        [same] , como al principio
        [better] , mejor que { $first } al principio
        [worse] , peor que { $first } al principio
       *[none] { "" }
    }
