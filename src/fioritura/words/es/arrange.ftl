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
no-such-level = El nivel { $given } no existe: los niveles van de 1 (principiante) a 5 (experto).
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
