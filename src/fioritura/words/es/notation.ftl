# Las palabras en torno a la música impresa.

sheet-legend = Los adornos y sus compases
sheet-pickup = anacrusa

# Dónde algo está mal.

problem-in-file = { $name }: { $problem }
problem-in-tune = { $tune }: { $problem }
abc-at = línea { NUMBER($line, useGrouping: 0) }, columna { NUMBER($column, useGrouping: 0) }, «{ $text }»: { $problem }
abc-warned = línea { NUMBER($line, useGrouping: 0) }, columna { NUMBER($column, useGrouping: 0) }: { $problem }
xml-at = Línea { $line }: { $problem }
abc-tune = melodía { $place }
abc-tune-titled = melodía { $place }, { $title }
abc-at-line = en la línea { NUMBER($line, useGrouping: 0) }

# Los archivos y lo que contienen.

file-kind = { $kind ->
    [compressed] MusicXML comprimido
   *[other] { $kind }
}
and-more = { $count } más
first-of-several-read = el archivo contiene { $count } melodías; se leyó la primera
file-named-otherwise = el nombre del archivo termina en { $ending }, pero contiene { $kind } y se leyó como tal
one-tune-only = Un archivo de { $kind } contiene una sola melodía: omita su número y su título.
no-tune-titled = Ninguna melodía tiene aquí el título «{ $given }»; hay: { $tunes }.
no-tune-numbered = No hay aquí ninguna melodía con el número { $given }; hay: { $tunes }.
file-is-pdf = Es un PDF: de una página no se pueden leer notas; exporte MusicXML, ABC o MIDI.
file-is-picture = Es una imagen: exporte MusicXML, ABC o MIDI.
file-is-gzip = Es un archivo gzip: descomprímalo primero.
file-is-sound = Es un archivo de sonido: una melodía se lee de MusicXML, ABC o MIDI.
file-is-web-page = Es una página web, no una melodía: descargue el archivo mismo.
file-is-binary = No contiene ninguna melodía legible, sino datos binarios: dé MusicXML, ABC o MIDI.
file-is-text = Es texto, pero no ABC (no hay ninguna línea X: ni K:): dé MusicXML, ABC o MIDI.

# Las partes, y la melodía entre ellas.

part-unnamed = sin nombre
part-numbered = parte { $number }
part-in-list = { $number } { $name }
no-such-part = «{ $given }» no es una parte de este archivo; hay: { $parts }. Dé un número o un nombre entero.
part-in-doubt = «{ $given }» nombra varias partes; hay: { $parts }. Dé un número o un nombre entero.
chords-without-melody = Hay cifrados de acordes, pero ninguna melodía: añada la melodía al archivo.
chords-without-notes = Hay cifrados de acordes, pero ninguna melodía: añádala o elija otra parte.
no-pitched-notes = No hay notas de altura definida que adornar: dé un archivo con una melodía.
no-notes-at-all = No hay notas que adornar: elija otra parte u otro archivo.
melody-taken-from = la melodía se tomó de { $part }; hay: { $parts }

# Compases, notas, acordes y tempos de cualquier archivo.

quarter-notes = { $count ->
    [one] { $count } negra
   *[other] { $count } negras
}
    .number = { $count }
quarter-note-parts = { $count } de negra
    .number = { $count }
bar-holds = { $bar }: contiene { $held }, y un compás de { $metre } tiene { FORM($full, "number") }
bar-kept = { $fault }; se deja como está
bars-irregular = { $fault }{ $more ->
    [0] { "" }
   *[other] { " " }(y { $more } más así)
}: corríjalo en el archivo o conserve los compases como están.
bar-unmeasured = Un compás sin indicación dura { $length }, más de lo que se puede medir: póngale barras de compás.
tune-too-long = La melodía tiene { $bars } compases; el límite es { $limit }: recorte el archivo a la melodía.
notes-together = { $bar }: { $pitch } empieza mientras { $other } suena todavía; una melodía tiene una sola nota a la vez: elija otra parte o quite la segunda voz.
note-unplayable = { $bar }: la nota { $pitch } ({ $length }) no se puede tocar: corríjala.
chords-at-one-place = { $bar }: «{ $first }» y «{ $second }» están en el mismo lugar; se omite «{ $first }»
chord-kept-as-text = { $bar }: «{ $given }» no es un cifrado de acorde legible; se deja como texto y se toca sin acorde
tempo-unplayable = { $bar }: un tempo de { $given } negras por minuto; se puede tocar de { $low } a { $high }: corríjalo.
note-without-length = La nota { $number } ({ $pitch }) no tiene duración: désela u omítala.
note-over-another = La nota { $number } ({ $pitch }, tics { $ticks }) se superpone a la anterior o queda fuera de los compases (tics { $free }): acórtela o muévala.
score-empty = Una partitura sin pentagramas o sin compases no se puede escribir: dé al menos uno de cada.

# ABC: qué está mal en un lugar.

abc-no-key-no-music = no hay campo K: ni música; una melodía en ABC empieza con X:, T: y K:, y siguen las notas.
abc-line-too-long = la línea tiene { $count } caracteres; el límite es { $limit }: pártala.
abc-no-key = no es una tonalidad; escriba una letra A-G, # o b, y un modo, como K:G o K:Bbdor.
abc-after-key = «{ $given }» después de la tonalidad no significa nada; escriba por ejemplo K:F#m o K:D =c.
abc-no-mode = «{ $given }» no es un modo; se conocen { $known }.
abc-no-metre = no es una indicación de compás; escriba por ejemplo M:4/4, M:6/8, M:C|, M:(2+2+3)/8 o M:none.
abc-no-unit = no es una duración de nota; escriba por ejemplo L:1/8 (de 1/512 a 4).
abc-no-tempo = no es un tempo; escriba por ejemplo Q:1/4=120 o Q:"Allegro" 1/4=120.
abc-tempo-outside = son { $given } negras por minuto; se puede tocar de { $low } a { $high }: corríjalo.
abc-no-part-order = no es un orden de partes; escriba por ejemplo P:AABB o P:(AB)2C.
abc-bracket-open = hay un paréntesis sin cerrar; escriba por ejemplo P:(AB)2C.
abc-too-many-parts = el orden tiene más de { $limit } partes: acórtelo.
abc-no-definition = no es una definición; escriba por ejemplo U:T = !trill!.
abc-no-note = no es una nota.
abc-note-outside = la nota queda fuera de la extensión de MIDI: quite algunos signos de octava.
abc-length-absurd = esta duración es absurda; escriba por ejemplo A3, A/2 o A3/2.
abc-note-length = una nota puede durar de { $shortest } a { $longest } redondas.
abc-rest-in-chord = un silencio no tiene lugar en un acorde.
abc-bar-rest-count = un silencio puede durar de 1 a 999 compases.
abc-bar-rest-inside-bar = un silencio de compases enteros debe seguir a una barra de compás.
abc-no-ending-numbers = no son los números de una casilla de repetición; escriba por ejemplo [1 o [1,3 o [1-3.
abc-ending-outside = el número de una casilla de repetición debe estar entre 1 y { $limit }.
abc-too-many-bars = la melodía tiene más de { $limit } compases: divídala.
abc-tuplet-outside = un grupo irregular pone de 2 a { $limit } notas en el tiempo de 1 a { $limit }.
abc-broken-misplaced = un ritmo con puntillo va entre dos notas, como en A>B, A>>B o A<B.
abc-broken-over-bar-line = un ritmo con puntillo no puede pasar una barra de compás: escriba las duraciones por entero.
abc-broken-open = un ritmo con puntillo necesita otra nota antes de la barra de compás.
abc-among-graces = «{ $given }» no tiene lugar entre notas de adorno.
abc-chord-in-chord = un acorde no puede empezar dentro de un acorde.
abc-chord-end-loose = no hay aquí ningún acorde que cerrar.
abc-chord-open = un acorde queda sin cerrar antes de esta barra de compás.
abc-unknown-sign = ningún signo de ABC empieza así: quítelo o escriba lo que se quería.
abc-notes-together = { $count } notas suenan a la vez; una melodía tiene una sola nota a la vez: quite las demás o conserve solo la más aguda.
abc-voices-together = dos voces suenan a la vez; una melodía tiene una sola nota a la vez: quite las demás o conserve solo la nota más aguda.

# ABC: qué se adivinó o se omitió.

abc-left-out = se omite «{ $text }»: { $problem }
abc-no-key-field = no hay campo K:; la melodía se lee sin armadura
abc-key-guessed = { $given } se lee como { FORM($key, "inline") }
abc-key-changed = la armadura de { FORM($key, "inline") } está cambiada por alteraciones; se escriben en cambio junto a las notas
abc-after-metre = se omite «{ $given }» después del compás { $metre }
abc-macros = las macros no se desarrollan; las notas se leen como están escritas
abc-music-after-gap = línea { NUMBER($line, useGrouping: 0) }: la música después de una línea vacía no pertenece a la melodía y se omite
abc-music-after-gap-read = línea { NUMBER($line, useGrouping: 0) }: la música después de una línea vacía se lee como parte de la melodía
abc-parts-missing = se omite el orden de las partes { $order }: la melodía no tiene la parte { $parts }
abc-parts-written-out = las partes están escritas en el orden en que se tocan, { $order }
abc-melody-voice = la melodía es la voz { $name }; se omiten: { $others }
abc-ending-cut = una casilla de repetición sin final se lee tan larga como la primera
abc-tie-loose = se omite una ligadura de unión sin nota anterior
abc-slur-end-loose = se omite el final de una ligadura de expresión que no tiene principio
abc-ties-as-slurs = { $count ->
    [one] { $count } ligadura de unión entre notas distintas se lee como ligadura de expresión
   *[other] { $count } ligaduras de unión entre notas distintas se leen como ligaduras de expresión
}
abc-bar-lines-understood = { $count ->
    [one] { $count } barra de compás se sobreentiende al final de una línea
   *[other] { $count } barras de compás se sobreentienden al final de las líneas
}
abc-top-notes = { $count ->
    [one] en { $count } lugar suenan varias notas a la vez: se lee la más aguda
   *[other] en { $count } lugares suenan varias notas a la vez: se lee la más aguda
}
abc-more-places = { $count ->
    [one] { $count } lugar más como estos
   *[other] { $count } lugares más como estos
}
abc-signs-left-out = omitidos, pues no son notas de una melodía: { $signs }
abc-sign-counted = { $sign } ({ $count })
abc-sign-on-rest = { $sign } sobre un silencio
abc-further-verses = otras estrofas

# MusicXML.

xml-no-score = Es un archivo MusicXML de tipo { $kind }, no una partitura: dé la partitura misma.
xml-not-music = Es XML, pero no MusicXML (su primer elemento es <{ $element }>): expórtelo como MusicXML.
xml-too-large = El XML tiene más de { $elements } elementos o { $bytes } bytes: guarde solo la parte de la melodía.
xml-damaged = El XML se interrumpe o está dañado en la línea { NUMBER($line, useGrouping: 0) } ({ $reason }): expórtelo o guárdelo de nuevo.
xml-empty = sin contenido
xml-unreadable = El XML no se puede leer ({ $reason }): expórtelo o guárdelo de nuevo.
xml-entities = El XML usa entidades propias, que una partitura no necesita: expórtelo de nuevo como MusicXML.
mxl-damaged = El archivo comprimido está dañado ({ $reason }): expórtelo o descárguelo de nuevo.
mxl-too-many-files = El archivo comprimido contiene { $files } archivos; el límite es { $limit }: exporte solo la partitura.
mxl-unsafe-name = El archivo comprimido contiene un nombre inseguro, «{ $name }»: no lo use.
mxl-password = El archivo comprimido está protegido por una contraseña: guárdelo sin ella.
mxl-packing = El archivo está comprimido de un modo que .mxl no permite: guárdelo de nuevo como .mxl.
mxl-bomb = El archivo comprimido pasaría de { $packed } a { $unpacked } bytes; los límites son { $limit } y { $ratio } veces su tamaño: no lo use.
mxl-unpacks-too-far = El archivo comprimido da más de { $limit } bytes: no lo use.
mxl-names-no-score = El contenedor del archivo comprimido no nombra ninguna partitura que esté dentro: expórtelo de nuevo como .mxl.
mxl-holds-no-score = El archivo comprimido no contiene ninguna partitura: expórtelo de nuevo como .mxl o .musicxml.
xml-no-part = La partitura no tiene ninguna parte: expórtela de nuevo con sus pentagramas.
xml-element-missing = falta <{ $element }>: corríjalo o exporte el archivo de nuevo.
xml-element-senseless = <{ $element }> contiene «{ $given }», que ahí no tiene sentido: corríjalo o exporte el archivo de nuevo.
xml-divisions = { $given } divisiones de la negra; tienen sentido de 1 a { $limit }: exporte el archivo de nuevo.
xml-negative-duration = una duración negativa: corríjala o exporte el archivo de nuevo.
xml-backup-too-far = un retroceso a antes del principio del compás: exporte el archivo de nuevo.
xml-note-too-short = la nota { $pitch } dura { $length }, demasiado poco para trabajarla: escríbala como nota de adorno o alárguela.
xml-key-too-far = una armadura de { $count } alteraciones; el límite es 7: escríbala por enarmonía.
xml-tempo-no-number = el tempo «{ $given }» no es un número: corríjalo.
xml-notes-at-once = { $bar }: suenan a la vez { $pitch } y { $other }, y una melodía tiene una sola nota a la vez: quite del archivo las notas más graves.
xml-part-at-once = { $bar }: suenan a la vez { $pitch } y { $other }, y una melodía tiene una sola nota a la vez: elija otra parte ({ $parts }) o quite del archivo las notas más graves.
xml-one-voice-read = solo se leyó la voz { $voice } del pentagrama superior; { $count ->
    [one] se omite { $count } nota de otras voces y pentagramas
   *[other] se omiten { $count } notas de otras voces y pentagramas
}
xml-signs-left-out = { $count ->
    [one] se omite { $count } signo { $sign }: aquí no tiene lugar
   *[other] se omiten { $count } signos { $sign }: aquí no tienen lugar
}
xml-lengths-rounded = { $count ->
    [one] { $count } nota, { FORM($bar, "at") }, tiene una duración más fina que { $part } de negra y se redondeó
   *[other] { $count } notas, la primera { FORM($bar, "at") }, tienen duraciones más finas que { $part } de negra y se redondearon
}
xml-graces-at-end = se omiten notas de adorno al final de la melodía, a las que no sigue ninguna nota
xml-octave-outside = { $pitch } no se puede escribir: MusicXML tiene las octavas 0 a 9; mueva las notas por octavas.
no-bars-per-system = { $given } compases por sistema no hacen una página: dé 1 o más.

# MIDI.

midi-damaged-or-large = El archivo MIDI está dañado o supera los { $limit } bytes: expórtelo de nuevo.
midi-breaks-off = El archivo MIDI se interrumpe: expórtelo o descárguelo de nuevo.
midi-damaged = El archivo MIDI está dañado ({ $reason }): expórtelo o descárguelo de nuevo.
midi-smpte = El archivo MIDI cuenta el tiempo en cuadros SMPTE, no en pulsos: expórtelo con tics por pulso.
midi-format = Es un archivo MIDI de formato { $given }; se pueden leer 0 y 1: expórtelo en formato 1.
midi-too-many-bars = El archivo MIDI tiene más de { $limit } compases: recórtelo a la melodía.
midi-part-empty = { $part } no tiene notas; hay: { $parts }. Elija otra parte.
midi-bar-crowded = { $bar }: las notas están demasiado juntas para cualquier ritmo; aclárelas o elija otra parte.
midi-notes-at-once = { $bar }: suenan a la vez { $pitch } y { $other }, y una melodía tiene una sola nota a la vez: elija otra parte ({ $parts }).
midi-swing-read = corcheas larga-breve de principio a fin se leyeron como corcheas iguales con ritmo de swing
midi-silent-bars = { $count ->
    [one] se omite { $count } compás en silencio antes de la melodía
   *[other] se omiten { $count } compases en silencio antes de la melodía
}
midi-key-found = el archivo no nombra ninguna tonalidad; de las notas se dedujo { FORM($key, "inline") }
midi-key-doubted = el archivo dice { FORM($said, "inline") }, pero sus notas son las de { FORM($key, "inline") } y así se leyeron
midi-part = { $name } ({ $sound })
midi-channel = Canal { $number }
midi-family = { $family ->
    [piano] Piano
    [chromatic-percussion] Láminas
    [organ] Órgano
    [guitar] Guitarra
    [bass] Bajo
    [strings] Cuerdas
    [ensemble] Conjunto
    [brass] Metales
    [reed] Cañas
    [pipe] Flautas
    [synth-lead] Sintetizador solista
    [synth-pad] Colchón de sintetizador
    [synth-effects] Efectos de sintetizador
    [ethnic] Instrumentos del mundo
    [percussive] Percusión
   *[sound-effects] Efectos de sonido
}

# Grabado y páginas.

no-reason-given = sin razón indicada
engraver-missing = Falta el grabador de música ({ $reason }): instale el paquete «verovio».
engraver-no-layout = El grabador no puede componer la música: { $reason }.
engraver-no-room = El grabador no puede poner la música en { $systems ->
    [one] { $systems } sistema
   *[other] { $systems } sistemas
}: dé menos compases por sistema.
engraver-lost-bars = El grabador dibujó { $drawn } compases de { $bars }: avise de la melodía con la que ocurre.
staff-height-outside = Un pentagrama de { $given } mm no se puede grabar: dé de 2 a 40 mm (lo usual es 7).
page-width-outside = Una página de { $given } mm de ancho no va con un pentagrama de { $staff } mm: dé de { $low } a { $high } mm.
bars-per-system-outside = { $given } compases por sistema no se pueden grabar: dé de 1 a 32.
engraver-page-unread = La página del grabador no se puede leer: instale la versión de «verovio» que nombra este programa.
engraver-drawing-damaged = El dibujo del grabador está dañado (un grupo no tiene final): avise de la melodía con la que ocurre.
page-octave-outside = { $pitch } no se puede escribir: una página tiene las octavas 0 a 9; mueva las notas por octavas.
font-not-stored = La fuente musical no se puede guardar: { $reason } { $variable } nombra otra carpeta.
font-lacks-sign = La fuente musical { $font } no tiene el signo { $sign }: reinstale el paquete «verovio».
font-not-found = No se encuentra la fuente musical { $font }: reinstale el paquete «verovio».
font-empty = { $file } del paquete «verovio» no contiene ninguna fuente: reinstálelo (6.0 o posterior).
resolution-outside = { $given } puntos por pulgada no se pueden dibujar: dé de 20 a 1200 (144 va bien para una pantalla).
picture-size-outside = Una imagen de { $width } por { $height } píxeles no se puede dibujar: dé de 16 a 8192.
typesetter-missing = Falta el compositor de páginas ({ $reason }): instale el paquete «typst».
typesetter-failed = El compositor de páginas falló ({ $reason }): avise de la melodía con la que ocurre.
typesetter-made-no-page = El compositor de páginas no hizo ninguna página: avise de la melodía con la que ocurre.
no-such-paper = No hay ningún papel «{ $given }»: elija { LIST($known, "or") }.
no-such-page = No hay página { $page }: la hoja tiene { $pages }.
