why-by-hand = { $why } Al menos una nota a mano.
no-such-figure = Aquí no hay ninguna figura «{ $given }»: elija una de las que se ofrecen.
bend-too-far = { $given } semitonos es demasiado: una nota se sube o se baja de semitono en semitono.
bend-unplayable = Con esta nota la figura duplica otra o se sale del instrumento: tome otra.
bend-own-note = Esa nota es de la propia melodía: solo las añadidas se pueden subir o bajar.
bend-no-such-note = La figura tiene { $count ->
    [one] una nota propia
   *[other] { $count } notas propias
}: no hay nota { $given } (se cuentan desde 0).
nothing-to-take-back = Nada que deshacer: no se ha tomado ninguna decisión.
locked-figures-collide = Dos figuras fijadas chocan o llenan demasiado su frase: suelte una de ellas.
arrangement-unreadable = No es un archivo de arreglo ({ $reason }): elija un arrangement.json.
arrangement-none = No es un archivo de arreglo: elija un arrangement.json escrito aquí.
arrangement-version = El arreglo es de la versión { $given }; se puede leer la { $readable }: actualice Fioritura.
arrangement-damaged = El archivo de arreglo está dañado ({ $reason }): guárdelo de nuevo.
damaged-key = una tonalidad de { $fifths } quintas
damaged-bar = un compás sin duración, o ningún compás
damaged-bars = los compases se superponen o dejan huecos
damaged-repeats = un compás se repite más de { $most } veces
damaged-tempo = un tempo de { $given } negras por minuto
damaged-note = una nota sin duración, o ninguna nota
damaged-notes = las notas se superponen o están desordenadas
damaged-end = hay notas después del último compás
damaged-figure-place = una figura está en las notas { $notes } (contadas desde 0), y la pieza tiene { $count ->
    [one] una
   *[other] { $count }
}
damaged-figure-claim = una figura acaba antes de empezar, o está en notas que la pieza no tiene
damaged-figure-note = una nota de una figura no tiene duración, o la precede
damaged-figure-score = la puntuación de una figura no es un número
chords-other-count = Los acordes llenan { $given ->
    [one] un compás
   *[other] { $given } compases
} y la pieza tiene { $bars }, sin contar la anacrusa: escriba una casilla por compás entre signos |, con % para repetir un compás, o una línea más corta que divida la pieza.
chords-no-cell = El compás { $number } de los acordes { $given ->
    [nothing] está vacío
   *[other] contiene «{ $given }»
}: escriba sus acordes, N.C. si no hay, o solo % para repetir el compás anterior.
chords-unreadable = Compás { $number } de los acordes: { $reason }
chords-too-many = El compás { $number } recibe { $given } acordes y tiene sitio para { $room }, uno por tiempo en { $metre }: escriba menos.
figures-collide = La figura «{ $technique }» { $where } choca con otra: quite una de las dos.
figure-splits-note = La figura «{ $technique }» partiría en dos la nota { $number }: quítela.
octave-too-far = { $given } octavas es demasiado: una pieza se mueve como mucho 3 octavas arriba o abajo.
octaves = { $direction ->
    [none] a su propia altura
    [up] { $count ->
        [one] una octava
       *[other] { $count } octavas
    } más alta
   *[down] { $count ->
        [one] una octava
       *[other] { $count } octavas
    } más baja
}
octave-by-custom = { CAPITAL($instrument) }: por costumbre las hojas guía se tocan { $octave }.
octave-to-fit = { $pitch } ({ $place }){ $others ->
    [0] {""}
   *[other] {" "}y { $others } más
} quedaría fuera de la extensión ({ $instrument }): la pieza se toca { $octave }.
key-best = { $key } es la que mejor conviene, escrita en { $written } ({ $instruments }): la pieza se ha transportado ahí.
key-of-another-mode = «{ $given }» es de otro modo que la pieza, que está en { FORM($key, "inline") }: indique solo la tónica.
no-such-key = «{ $given }» no es una tonalidad: indique una tónica, por ejemplo C, Bb o F#, o «best».
pickup-out-of-reach = Una anacrusa de { $given } tiempos está fuera de alcance: el compás tiene { $beats }.
beats-out-of-reach = Un tempo de { $given } pulsos por minuto está fuera de alcance: aquí va de { $low } a { $high }.
notes-out-of-range = { $pitch } ({ $place }){ $others ->
    [0] {""}
   *[other] {" "}y { $others } más
} queda fuera de la extensión ({ $instrument }: suena de { $low } a { $high }): { $remedy }, o { $other }.
other-octaves = tóquela { LIST($octaves, "or") }
no-octave-fits = ninguna octava lo contiene todo ({ $instrument })
other-instruments = elija un instrumento que la alcance: { LIST($instruments, "or") }
smaller-tune = tome una pieza de menor extensión
taste-of = el gusto de { $id }
taste-not-of-the-form = no tiene la forma correcta ({ $error })
taste-no-idiom = no hay ningún estilo «{ $given }»: elija { LIST($known, "or") }
taste-no-table = tiene «{ $given }» para { $idiom }: dé { LIST($known) }
taste-no-number = el peso { $given } no es un número
taste-no-feature = los lugares no tienen el rasgo «{ $given }»: elija entre { LIST($known) }
taste-refused = No se puede usar { $what }: { $problem }.
taste-given = la tabla de pesos
taste-names-nothing = La tabla de pesos nombra «{ $given }», que no es ni una técnica ni una familia: elija entre { LIST($known) }.
taste-no-share = una proporción de { $given } no tiene sentido: dé más de 0 y como máximo 1, y solo a técnicas sueltas
taste-no-figure-feature = las figuras no tienen el rasgo «{ $given }»: elija entre { LIST($known) }

# What speaks for or against a figure.

feature-technique = la técnica misma
feature-choice-among-its-variants = elección entre sus variantes
feature-usual-place = el lugar habitual
feature-usual-side = el lado habitual
feature-long = duración de la nota
feature-strong = peso de su lugar en el compás
feature-peak = más alta que sus vecinas
feature-phrase-start = comienzo de una frase
feature-phrase-end = final de una frase
feature-repeated-note = nota repetida
feature-reached-by-leap = alcanzada por salto
feature-reached-by-step-up = alcanzada por grado ascendente
feature-reached-by-step-down = alcanzada por grado descendente
feature-left-by-leap = dejada por salto
feature-chord-changes = acorde nuevo o primera nota
feature-chord-note = no ajena al acorde
feature-rest-after = silencio después
feature-busy-around = muchas notas alrededor
feature-next-is-strong = peso del lugar de la nota siguiente en el compás
feature-next-is-long = duración de la nota siguiente
feature-next-is-peak = la nota siguiente es más alta que sus vecinas
feature-heard-before = cuántas veces se ha oído ya la frase
feature-first-statement = primera vez
feature-near-the-end = punto del recorrido de la pieza
feature-guide-tone-at-a-change = nota guía en un cambio de acorde
feature-next-is-guide-tone-at-a-change = la nota siguiente es nota guía en un cambio de acorde
feature-last-note = la última nota
feature-ballad = una balada
feature-up-tempo = tempo rápido
feature-swing = en swing
feature-even = en corcheas iguales
feature-level = nivel del músico
feature-draw = sorteo: los músicos son distintos
feature-change-from-earlier-statements = variedad en una repetición, por sorteo
feature-loss-of-the-tune = pérdida de la melodía
feature-added-notes = notas añadidas o cambiadas
feature-added-notes-in-a-ballad = notas añadidas en una balada
feature-strain = esfuerzo
feature-outside-the-chord-on-a-beat = ajena al acorde en el tiempo
feature-length-in-beats = duración en tiempos
feature-length-over-the-tune-s-usual-note = duración frente a la nota habitual de la pieza
feature-on-the-downbeat = en el primer tiempo
feature-stronger-than-the-next-note = más fuerte que la siguiente
feature-on-a-beat-in-compound-time = en el tiempo en compás compuesto
feature-quick-on-a-beat = rápida, en el tiempo
feature-on-a-beat-then-falls = en el tiempo, luego baja
feature-on-a-beat-then-a-step-down = en el tiempo, luego un grado abajo
feature-on-a-half-beat-then-a-step-down = en el contratiempo, luego un grado abajo
feature-half-a-beat-long-as-the-next = de medio tiempo, como la siguiente
feature-longer-after-even-notes-in-compound-time = más larga tras notas iguales en compás compuesto
feature-dotted-then-a-step-down = con puntillo, luego un grado abajo
feature-long-then-rises = larga, luego sube
feature-long-then-falls = larga, luego baja
feature-amid-a-rise = en medio de una subida
feature-fallen-to-then-rises = alcanzada bajando, luego sube
feature-a-peak-then-a-step-down = más alta que sus vecinas, luego un grado abajo
feature-reached-by-a-semitone-up = alcanzada por semitono ascendente
feature-reached-by-a-semitone-up-on-a-half-beat = alcanzada por semitono ascendente, en el contratiempo
feature-reached-by-a-third-to-a-fifth-up = alcanzada por tercera a quinta ascendente
feature-half-a-beat-long-after-a-sixth-up-or-more = de medio tiempo tras una sexta ascendente o más
feature-on-a-half-beat-after-a-sixth-up-or-more = en el contratiempo tras una sexta ascendente o más
feature-left-by-a-semitone-down = dejada por semitono descendente
feature-left-by-a-sixth-down-or-more = dejada por sexta descendente o más
feature-left-by-an-octave-down = dejada por octava descendente
feature-a-sixth-down-or-more-to-a-stronger-note = una sexta descendente o más hacia una nota más fuerte
feature-the-lower-neighbour-follows = sigue la bordadura inferior
feature-a-step-down-and-up-again = un grado abajo y vuelta
feature-quick-a-step-down-and-up-again = rápida, un grado abajo y vuelta
feature-quick-the-next-note-falls = rápida, la nota siguiente baja
feature-on-a-half-beat-a-step-down-and-up-again = en el contratiempo, un grado abajo y vuelta
feature-repeated-a-step-down-and-up-again = repetida, un grado abajo y vuelta
feature-half-a-beat-long-out-and-back = de medio tiempo, ida y vuelta
feature-a-neighbour-follows-on-the-beat = sigue una bordadura en el tiempo
feature-repeated-then-falls = repetida, luego baja
feature-repeated-then-a-step-down = repetida, luego un grado abajo
feature-repeated-on-the-downbeat = repetida, en el primer tiempo
feature-repeated-on-a-beat = repetida, en el tiempo
feature-repeated-on-a-half-beat = repetida, en el contratiempo
feature-repeated-and-very-short = repetida y muy breve
feature-repeated-and-much-longer-than-the-next = repetida y mucho más larga que la siguiente
feature-the-note-before-was-a-repeated-one = la nota anterior era repetida
feature-fallen-to-on-a-half-beat = alcanzada bajando, en el contratiempo
feature-fallen-to-and-quick = alcanzada bajando y rápida
feature-a-step-down-in-even-notes = un grado abajo en notas iguales
feature-very-long-the-note-before-reached-by-a-semitone-down = muy larga, la anterior alcanzada por semitono descendente
feature-high-and-much-longer-than-the-next = aguda y mucho más larga que la siguiente
feature-second-degree-on-the-downbeat = segundo grado en el primer tiempo
feature-second-degree-in-triple-time = segundo grado en compás ternario
feature-fourth-degree-the-next-note-falls = cuarto grado, la nota siguiente baja
feature-fourth-degree-then-a-third-down = cuarto grado, luego una tercera abajo
feature-fifth-degree-in-even-notes = quinto grado en notas iguales
feature-seventh-degree-on-a-beat = séptimo grado en el tiempo
feature-on-a-half-beat = en el contratiempo
feature-after-a-rest = tras un silencio
feature-tonic = tónica
feature-the-scale-has-a-semitone-below = la escala tiene un semitono por debajo
feature-repeated = repetida
feature-reached-by-a-step-down = alcanzada por grado descendente
feature-reached-by-a-leap-down = alcanzada por salto descendente
feature-reached-by-a-whole-tone-up = alcanzada por tono ascendente
feature-reached-by-a-third-up = alcanzada por tercera ascendente
feature-reached-by-a-sixth-up-or-more = alcanzada por sexta ascendente o más
feature-the-grace-above-would-repeat-the-note-before = la nota de adorno de arriba repetiría la nota anterior
feature-the-grace-below-would-repeat-the-note-before = la nota de adorno de abajo repetiría la nota anterior
feature-followed-by-the-same-note = seguida de la misma nota
feature-followed-by-a-step-up = seguida de un grado ascendente
feature-followed-by-a-leap-up = seguida de un salto ascendente
feature-followed-by-a-semitone-down = seguida de un semitono descendente
feature-followed-by-a-fourth-to-a-seventh-down = seguida de una cuarta a séptima descendente
feature-followed-by-an-octave-down-or-more = seguida de una octava descendente o más
feature-the-last-note = la última nota
feature-leapt-up-to-and-followed-by-the-same-note = alcanzada por salto ascendente y seguida de la misma nota
feature-placement = lugar: { $feature }
feature-side = lado: { $feature }
chorus-number = vuelta { $number }
choruses-out-of-reach = { $given } vueltas están fuera de alcance: dé de { $low } a { $high }.
plan-density-out-of-reach = Una densidad de { $given } está fuera de alcance para una vuelta: dé de { $low } a { $high }.
plan-lean-out-of-reach = Un tamaño de { $size } con un registro de { $register } está fuera de alcance: ambos van de −1 a 1.
plan-other-length = Un plan de { $count } vueltas no encaja con { $bars } compases: escriba la melodía tantas veces como diga el plan.
plan-other-count = El arreglo tiene { $count ->
    [one] una vuelta
   *[other] { $count } vueltas
} y el plan { $given }: dé una densidad para cada vuelta.
plan-statement = vuelta { $number }: { $role ->
    [head] la melodía, casi sencilla
    [fuller] más llena
    [climax] el punto culminante
    [return] otra vez más tranquila
   *[only] la melodía
} ({ $density } % de las figuras habituales)
plan-heading = Vuelta { $number }, { $role ->
    [head] casi sencilla
    [fuller] más llena
    [climax] el punto culminante
    [return] otra vez más tranquila
   *[only] la melodía
}
