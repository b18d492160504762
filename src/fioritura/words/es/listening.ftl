# Grabaciones.

recording-missing = { $file } no existe: compruebe el nombre y la carpeta.
recording-is-folder = { $file } es una carpeta y no una grabación: indique un archivo que esté en ella.
audio-unreadable = { $file } no se puede leer como sonido ({ $reason }): guárdelo como WAV, FLAC, MP3 u OGG.
recording-shape = Un sonido de forma { $shape } y tipo { $type } no es una grabación: dé números decimales entre −1 y 1, como (frames,) o (frames, channels).
audio-rate = Una frecuencia de { $rate } Hz está fuera de { $low } a { $high } Hz: convierta { $name } a { $usual } Hz.
recording-not-numbers = { CAPITAL($name) } contiene valores que no son números: grabe o exporte de nuevo.
recording-unclear = { $name }: { $advice }
recording-without-notes = { $name }: no se oye ninguna nota: grabe más cerca del instrumento y durante más tiempo.
recording-silent = Apenas se oye nada: compruebe el micrófono y su nivel, y grabe de nuevo.
recording-noisy = La mayor parte es ruido sin altura: acérquese al micrófono y aléjese del ruido.
recording-without-player = No se oye a ningún instrumentista de viento, solo otros sonidos: grabe la melodía cerca del micrófono.
recording-of-several = Suenan dos o más voces a la vez: grabe la melodía sola, o con el acompañamiento en los auriculares.
recording-clipped = Los momentos fuertes están recortados: baje el nivel de grabación hasta que el indicador no llegue al rojo.
the-recording = la grabación
record-nearer = Grabe de nuevo, más cerca del micrófono.
no-notes-heard = No se oyó ninguna nota en { $seconds } s de sonido. { $remedy }
title-as-played = Lo que se tocó

# Una línea frente a la melodía.

the-tune = la melodía
the-note = la nota
heard-no-notes = No se oyó ninguna nota
heard-notes = { $count ->
    [one] Se oyó { $count } nota, { $low }
   *[other] Se oyeron { $count } notas, de { $low } a { $high }
}
not-this-tune = { $name }: esto no suena como «{ $tune }». { $heard }; la línea y la melodía coinciden en un { NUMBER($likeness, style: "percent") }, y una interpretación llega al { NUMBER($least, style: "percent") } o más. Indique la melodía que se tocó; si era «{ $tune }», grábela de nuevo, entera y con menos adornos.
distance = { $semitones ->
    [1] una segunda menor
    [2] una segunda mayor
    [3] una tercera menor
    [4] una tercera mayor
    [5] una cuarta
    [6] un tritono
    [7] una quinta
    [8] una sexta menor
    [9] una sexta mayor
    [10] una séptima menor
   *[11] una séptima mayor
}
distance-octaves = { $octaves ->
    [1] una octava
   *[other] { $octaves } octavas
}
distance-and-octaves = { distance } y { distance-octaves }
line-higher = { $distance } más alto que la melodía
line-lower = { $distance } más bajo que la melodía
line-read-on = { $lies }, como cuando la parte se lee con uno de estos instrumentos: { LIST($instruments, "or") }
slip-wrong = { $played } en vez de { $written }
slip-left-out = { $written } omitido
slip-added = { $played } añadido
bars-named = compases { $bars }
pickup-and-bars = la anacrusa y { $bars }
beat-name = tiempo { $number }
    .at = en el tiempo { $number }
beats-between = entre los tiempos
register-low = grave
register-middle = medio
register-high = agudo
bars-from-to = compases { $first }–{ $last }
pickup-to-bar = de la anacrusa al compás { $last }

# Lo que pasó en una toma: una frase para cada cosa, la primera del informe.

perhaps = Quizá: { $words }
the-rest = el resto
note-itself = { $note }
slip-there = { $words } ({ FORM($where, "full") })
happened-stop = { $count ->
    [one] La música se detuvo { $seconds } segundos ({ $bars }).
   *[other] La música se detuvo { $count } veces, { $seconds } segundos en total ({ $bars }).
}
happened-again = { CAPITAL($bar) }: empezado otra vez.
happened-again-from = { CAPITAL(FORM($bar, "at")) } se interrumpió y se volvió atrás; tocado dos veces: { $bars }.
happened-again-often = Se interrumpió y se volvió atrás { $count } veces; empezado otra vez: { $bars }.
happened-skipped = { $count ->
    [one] Se saltó un compás: { $bars }.
   *[other] Se saltaron { $count } compases: { $bars }.
}
happened-part = Solo se tocó una parte: { $bars } de { $last }.
happened-off = Toda la toma suena { $words }.
happened-off-bars = { $side ->
    [higher] { CAPITAL($distance) } más alto que lo escrito: { $bars }.
   *[lower] { CAPITAL($distance) } más bajo que lo escrito: { $bars }.
}
happened-key = Se olvidó la armadura: { $played } en vez de { $written }, { $count ->
    [one] una vez
   *[other] { $count } veces
}.
happened-wrong = { $count ->
    [one] Una nota de { $wanted } no fue la que está escrita: { $examples }.
   *[other] { $count } de { $wanted } notas no fueron las que están escritas: { $examples }{ $more ->
        [0] .
       *[other] ; y así sucesivamente.
    }
}
happened-left-out = { $count ->
    [one] Faltó una nota de { $wanted }: { $examples }.
   *[other] Faltaron { $count } de { $wanted } notas: { $examples }{ $more ->
        [0] .
       *[other] ; y así sucesivamente.
    }
}
happened-added = { $count ->
    [one] Se añadió una nota que no está en la melodía: { $examples }.
   *[other] Se añadieron { $count } notas que no están en la melodía: { $examples }{ $more ->
        [0] .
       *[other] ; y así sucesivamente.
    }
}
happened-ornament = { CAPITAL($name) }: { $missed } de { $asked } sin oírse ({ $bars }).
happened-ornaments = { $missed } de { $asked } adornos no se oyeron ({ $bars }).
happened-ornaments-least = Al menos { $missed } de { $asked } adornos no se oyeron ({ $bars }).
happened-tempo = { $way ->
    [faster] El tempo fue más rápido de lo pedido: { $played } tiempos por minuto en vez de { $asked }.
   *[slower] El tempo fue más lento de lo pedido: { $played } tiempos por minuto en vez de { $asked }.
}
happened-drift = { $way ->
    [faster] { CAPITAL(FORM($bar, "at")) } la música empieza a acelerar: al final va un { $percent } por ciento más rápida que antes.
   *[slower] { CAPITAL(FORM($bar, "at")) } la música empieza a frenar: al final va un { $percent } por ciento más lenta que antes.
}
happened-span = { $way ->
    [faster] Algunos compases fueron un { $percent } por ciento más rápidos que los demás: { $bars }.
   *[slower] Algunos compases fueron un { $percent } por ciento más lentos que los demás: { $bars }.
}
happened-late = { $side ->
    [late] Las notas { FORM($beats, "at") } llegan { $ms } ms más tarde que las demás ({ $count } notas).
   *[early] Las notas { FORM($beats, "at") } llegan { $ms } ms antes que las demás ({ $count } notas).
}
happened-rhythm = { $side ->
    [late] Una nota llegó demasiado tarde para el ritmo escrito ({ FORM($where, "full") }).
   *[early] Una nota llegó demasiado pronto para el ritmo escrito ({ FORM($where, "full") }).
}
happened-rhythms = En { $count } lugares el ritmo no fue el que está escrito ({ $bars }).

# Lo que salió bien.

praise-all-ornaments = { $asked ->
    [one] El adorno salió.
   *[other] Salieron los { $asked } adornos.
}
praise-ornaments = Se oyeron con claridad { $done } de { $asked } adornos; el más claro: { $technique } { FORM($bar, "at") }.
praise-notes-safe = { $right } de { $wanted } notas de la melodía fueron correctas: la melodía está segura en los dedos.
praise-notes = { $right } de { $wanted } notas de la melodía fueron correctas.
praise-beat = El pulso fue estable: dos de cada tres notas caen a menos de { $ms } ms.
praise-tune = La melodía se reconoce.

# Lo que hay que estudiar: un título, lo que se observó y qué hacer.

advice-stop = Siga tocando
    .practice = Toque desde dos tiempos antes del lugar hasta dos tiempos después, tan despacio que no haga falta detenerse; tres veces bien seguidas ({ $bars }).
advice-again = Siga, pase lo que pase
    .practice = Toque despacio y sin detenerse lo que está escrito { FORM($bar, "at") } y justo antes; en la melodía entera, deje pasar un fallo y siga.
advice-skipped = Cada compás en su lugar
    .practice = Toque desde el compás anterior al hueco hasta el siguiente, contando los compases en voz alta ({ $bars }).
advice-part = Hacia la melodía entera
    .practice = Aprenda aparte los compases que faltan y únalos a lo que ya sale: { $missing }.
advice-octave = La octava correcta
    .practice = Toque la primera nota del lugar, mire dónde está en el pentagrama y siga desde el compás anterior ({ $bars }).
advice-octave-whole = La octava
    .practice = Pregunte si la melodía debe sonar en esta octava; si no, empiece por la primera nota sola.
advice-transposed = ¿Es la parte correcta?
    .practice = Compruebe que la parte es la de su instrumento y toque su primera nota con un piano o con el acompañamiento.
advice-transposed-bars = Vuelva a encontrar la primera nota
    .practice = Alterne la última nota antes del lugar y su primera nota, y luego siga ({ $bars }).
advice-key = Mire la armadura
    .practice = Marque en la parte cada { LIST($written, "or") }, toque dos veces la escala de la tonalidad y luego la melodía despacio.
advice-wrong = Toque las notas escritas
    .practice = Toque solo y despacio lo que está escrito { FORM($bar, "at") }, tres veces bien seguidas; luego, con los compases de alrededor.
advice-left-out = Que no falte ninguna nota
    .practice = Diga el ritmo de lo que está escrito { FORM($bar, "at") }, dé palmas con él y tóquelo con todas sus notas.
advice-added = Primero, la melodía sencilla
    .practice = Toque despacio, solo con las notas escritas, lo que está { FORM($bar, "at") }; luego, con los compases de alrededor.
advice-tempo = { $way ->
    [faster] No tan rápido
   *[slower] Hacia el tempo
}
    .practice = { $way ->
        [faster] Ponga el clic en { $asked }, escuche cuatro tiempos y cante el primer compás antes de tocar.
       *[slower] Quédese en su tempo hasta que todo sea fácil y suba luego de cuatro en cuatro tiempos por minuto, hasta { $asked }.
    }
advice-span = { $way ->
    [faster] No se apresure
   *[slower] No espere
}
    .practice = Toque con un clic desde el compás anterior al lugar hasta el siguiente ({ $bars }).
advice-late = { $side ->
    [late] Llegue a tiempo
   *[early] Espere el tiempo
}
    .practice = Marque el tiempo con el pie y diga «ta» { FORM($beats, "at") }; luego, tóquelo.
advice-rhythm = El ritmo
    .practice = Dé palmas con un clic al ritmo escrito { FORM($bar, "at") }, dígalo, tóquelo en una sola nota y luego como está escrito.
advice-level = Deje crecer y apagarse la línea
    .practice = Toque cada frase como un solo aliento que crece hasta la nota más alta y se apaga hacia el final.
advice-level-finding = Las notas suaves y fuertes solo se diferencian en { $db } dB.
advice-ornament = { CAPITAL($name) }
    .practice = { $cure }
advice-tuning = Afine antes de tocar
    .practice = { $side ->
        [sharp] Caliente, afine una nota larga con el afinador y saque la boquilla o la cabeza hasta que coincida.
       *[flat] Caliente, afine una nota larga con el afinador y meta la boquilla o la cabeza hasta que coincida.
    }
advice-tuning-finding = { $side ->
    [sharp] Toda la toma está { $cents } cents por encima de La = 440 Hz.
   *[flat] Toda la toma está { $cents } cents por debajo de La = 440 Hz.
}
advice-note = Escuche { $note }
    .practice = Sostenga { $note } con un bordón, oiga dónde se asienta y tóquelo ahí desde las notas anteriores y posteriores.
advice-note-finding = { $side ->
    [sharp] { $note } está { $cents } cents alto respecto a sus otras notas ({ $count } veces).
   *[flat] { $note } está { $cents } cents bajo respecto a sus otras notas ({ $count } veces).
}
advice-drift = { $way ->
    [faster] Mantenga el tempo hasta el final
   *[slower] Sostenga el tempo hasta el final
}
    .practice = Toque con un clic solo en dos y cuatro, y grabe de nuevo los ocho últimos compases.
drift = { $way ->
    [faster] El final es un { $percent } por ciento más rápido que el principio.
   *[slower] El final es un { $percent } por ciento más lento que el principio.
}
advice-beat = Ponga las notas en su tiempo
    .practice = Dé palmas con el ritmo de una frase sobre el clic, dígalo, tóquelo en una sola nota y luego como está escrito.
advice-beat-finding = Una de cada tres notas se aparta más de { $ms } ms de su propio pulso.
advice-swing = Deje que las corcheas tengan swing
    .practice = Cante «du-da» sobre un clic lento, la segunda sílaba tarde y ligera; los solistas grabados tocan más o menos { $usual } a 1.
advice-swing-finding = Las corcheas largas y breves están { $ratio } a 1, casi iguales.
advice-straight = Toque iguales las corcheas
    .practice = Ponga el clic en corcheas y haga coincidir cada una.
advice-straight-finding = Las corcheas tienen swing, { $ratio } a 1; la melodía está escrita en corcheas iguales.
advice-graces = Acorte las notas de adorno
    .practice = Toque la nota principal sola con un clic y deje entrar después la nota de adorno sin moverla.
advice-graces-finding = Las notas de adorno duran { $ms } ms; suenan como notas de la melodía.
advice-evenness = Dedos iguales: { $name }
    .practice = Toque en ritmos con puntillo en los dos sentidos, luego igual, a la mitad del tempo; añada cinco tiempos por minuto cada vez.
advice-evenness-finding = { CAPITAL(FORM($bar, "at")) }, las notas rápidas difieren un { $percent } por ciento en duración.
advice-add = Añada un adorno: { $name }
    .practice = { $when }
advice-add-finding = { $text }
advice-faster = Un poco más rápido
    .practice = Toque a { $tempo } con los mismos adornos.
advice-faster-finding = Esta toma iba a { $tempo } negras por minuto.
