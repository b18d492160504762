tempo-out-of-reach = Un tempo de { $given } negras por minuto está fuera de alcance: va de { $low } a { $high }.
density-out-of-reach = Una densidad de { $given } está fuera de alcance: va de { $low } a { $high }; lo usual es 1.
no-such-feel = No hay ningún ritmo «{ $given }»: elija { LIST($known, "or") }.
no-such-idiom = No hay ningún estilo «{ $given }»: elija { LIST($known, "or") }.
no-such-instrument = No hay ningún instrumento «{ $given }»: elija { LIST($known, "or") }.
no-such-level = El nivel { $given } no existe: los niveles van de { $low } (principiante) a { $high } (experto).
tempo-not-above-0 = Un tempo de { $given } no se puede tocar: indique negras por minuto por encima de 0.
hard-places-not-above-0 = El tempo ({ $tempo }) y el número de pasajes ({ $count }) deben ser ambos mayores que 0.
no-fingering = No hay digitación para la nota escrita { $pitch }, la tabla va de { $low } a { $high }: desplace la línea una octava.

plugin-wrong-form = lo que ofrece no tiene la forma correcta ({ $reason })
plugin-no-instruments = no tiene INSTRUMENTS
plugin-not-an-instrument = { $id } en sus INSTRUMENTS no es un instrumento
plugin-instrument-taken = ya hay un instrumento «{ $id }»
plugin-instrument-bounds = la extensión o el programa de sonido de «{ $id }» está fuera de los límites
plugin-chart-lacks = a la tabla de digitación de «{ $id }» le falta el número MIDI escrito { $number }
plugin-breath = el aire de «{ $id }» está fuera de { $low } a { $high } veces lo habitual
plugin-stranger = tiene una tabla o un aire para «{ $id }», que no es ninguno de sus instrumentos

# Instrumentos: en la frase, con artículo, con «de» y junto al pentagrama.

instrument-title = { CAPITAL($instrument) }
instrument-in-key = { CAPITAL($instrument) } en { LOWER($tonic) }
instrument-at-concert-pitch = { CAPITAL($instrument) }, sonido real

instrument-concert = notación en sonido real
    .the = la notación en sonido real
    .of = de la notación en sonido real
    .gender = f
    .short = Do
instrument-soprano-sax = saxofón soprano
    .the = el saxofón soprano
    .of = del saxofón soprano
    .gender = m
    .short = Sax. s.
instrument-alto-sax = saxofón alto
    .the = el saxofón alto
    .of = del saxofón alto
    .gender = m
    .short = Sax. a.
instrument-tenor-sax = saxofón tenor
    .the = el saxofón tenor
    .of = del saxofón tenor
    .gender = m
    .short = Sax. t.
instrument-baritone-sax = saxofón barítono
    .the = el saxofón barítono
    .of = del saxofón barítono
    .gender = m
    .short = Sax. b.
instrument-clarinet = clarinete
    .the = el clarinete
    .of = del clarinete
    .gender = m
    .short = Cl.
instrument-bass-clarinet = clarinete bajo
    .the = el clarinete bajo
    .of = del clarinete bajo
    .gender = m
    .short = Cl. b.
instrument-flute = flauta
    .the = la flauta
    .of = de la flauta
    .gender = f
    .short = Fl.
instrument-irish-flute = flauta irlandesa
    .the = la flauta irlandesa
    .of = de la flauta irlandesa
    .gender = f
    .short = Fl. irl.
instrument-tin-whistle = tin whistle
    .the = el tin whistle
    .of = del tin whistle
    .gender = m
    .short = Wh.
instrument-oboe = oboe
    .the = el oboe
    .of = del oboe
    .gender = m
    .short = Ob.
instrument-trumpet = trompeta
    .the = la trompeta
    .of = de la trompeta
    .gender = f
    .short = Tpt.
instrument-flugelhorn = fliscorno
    .the = el fliscorno
    .of = del fliscorno
    .gender = m
    .short = Flis.
instrument-trombone = trombón
    .the = el trombón
    .of = del trombón
    .gender = m
    .short = Tbn.

# Digitaciones: las llaves como se enumeran; `.gender` para el artículo.

fingering = { $keys }
fingering-open = ningún dedo

key-the = { FORM($key, "gender") ->
    [m] el
   *[f] la
} { $key }
key-from = { FORM($key, "gender") ->
    [m] del
   *[f] de la
} { $key }
key-to = { FORM($key, "gender") ->
    [m] al
   *[f] a la
} { $key }
key-number = llave { $number }
hole-number = orificio { $number }
    .gender = m
key-octave = llave de octava
key-back-octave = llave de octava trasera
key-side-octave = llave de octava lateral
key-register = llave de registro
key-thumb = pulgar
    .gender = m
key-thumb-hole = pulgar
    .gender = m
key-half-hole = medio orificio
    .gender = m
key-bis = llave bis
key-left-sliver = llave intermedia izquierda
key-right-sliver = llave intermedia derecha
key-second-side = segunda llave lateral
key-of-note = llave de { $note }
key-low = llave de { $note } grave
key-high = llave de { $note } agudo
key-left = llave de { $note } izquierda
key-pair = llave de { $low }/{ $high }
key-left-pair = llave izquierda de { $low }/{ $high }
key-right-pair = llave derecha de { $low }/{ $high }
key-throat = llave de { $note } de la mano izquierda
key-side = llave lateral de { $note }
key-side-trill = llave lateral de trino de { $note }
key-trill = llave de trino de { $note }
key-lever = palanca de { $note }
key-palm = llave de palma de { $note }
key-front = llave frontal de { $note }
key-thumb-note = llave de pulgar de { $note }
slide-position = { $number ->
    [1] primera
    [2] segunda
    [3] tercera
    [4] cuarta
    [5] quinta
    [6] sexta
   *[7] séptima
} posición

# Por qué un pasaje es difícil.

note-pair = { $first }–{ $second }
move-to = { $first } a { $second }
move-again = { $note } repetido
hard-place-why = { $move }: { $why }.
cause-tongue = la lengua tiene que ser rápida
cause-grace = como nota de adorno debe ser ligera y rápida
cause-speed = pasa a { $rate } notas por segundo
cause-break = cruza el cambio de registro
cause-into-altissimo = pasa al sobreagudo
cause-from-altissimo = baja del sobreagudo
cause-palm = entran en juego las llaves de palma
cause-crossing = los dedos se cruzan (bajan: { $down }, suben: { $up })
cause-many-fingers = { $count } dedos se mueven a la vez
cause-slide = la vara va de la { $first } a la { $second }
cause-next-partial = la ligadura pasa al armónico vecino
cause-partials = la ligadura salta { $count } armónicos
cause-finger-goes = { $finger } va { $before } { $after }
cause-finger-takes = { $finger } toma además { $keys }
cause-finger-leaves = { $finger } suelta solo { $keys }
count-of-fingers = { $n ->
    [0] ninguno
    [1] uno
    [2] dos
    [3] tres
    [4] cuatro
    [5] cinco
    [6] seis
    [7] siete
    [8] ocho
    [9] nueve
   *[other] { $n }
}
count-of-partials = { count-of-fingers }
finger-left-thumb = el pulgar izquierdo
finger-left-first = el índice izquierdo
finger-left-second = el dedo medio izquierdo
finger-left-third = el anular izquierdo
finger-left-little = el meñique izquierdo
finger-left-palm = la palma izquierda
finger-right-first = el índice derecho
finger-right-second = el dedo medio derecho
finger-right-third = el anular derecho
finger-right-little = el meñique derecho
finger-right-side = el canto de la mano derecha

# Cómo estudiarlo.

practice-fingering = Tome { $note } con { $fingering }.
practice-break = Ligue { $pair } con un aire constante; coloque la mano derecha para { $upper } antes de dejar { $lower }.
practice-little-finger = Ligue { $pair } ocho veces en cada sentido; el meñique sigue sobre las llaves al deslizarse.
practice-roll = Rodar en vez de levantar: ligue { $pair } ocho veces en cada sentido sin que el dedo deje las llaves.
practice-palm = Ligue { $pair } con la mano quieta; solo se mueve la palma, lo justo para abrir la llave.
practice-many-fingers = Repita { $pair } despacio hasta que todos los dedos lleguen con un solo clic; luego, algo más rápido.
practice-partial = Cante { $pair } y líguelo después solo con el aire, con labios blandos, antes de añadir la mano.
practice-slide = Toque { $pair } con una lengua ligera en legato; la vara se mueve tarde y de una vez.
practice-tongue = Articule { $lower } solo, cuatro, seis y luego ocho veces, con la punta de la lengua y sin parar el aire.
practice-dotted = Toque todo el pasaje con puntillo, larga–breve, luego breve–larga y luego igual.
practice-slow-trill = Ligue { $pair } de ida y vuelta, con igualdad, hasta que parezca un trino lento.
practice-tempo = Empiece a { $beat } = { $start }; cuando salga limpio tres veces seguidas, suba de { $step } en { $step }; la meta es { $beat } = { $goal }.
practice-at-tempo = Está al alcance a { $beat } = { $goal }: tóquelo ahí, con igualdad.
feel-by-custom = El archivo no dice cómo se toca: las corcheas llevan swing, como es costumbre en el jazz.
