told-unnamed-staff = pentagrama { $number }
told-staff = { $name }:
told-bar = { $number ->
    [0] anacrusa:
   *[other] compás { $number }:
}
told-key = tonalidad de { $key }
told-metre = compás de { $metre }
told-repeat-begins = empieza la repetición
told-endings = casilla { $numbers }
told-jump = { $jump ->
    [segno] segno
   *[coda] signo de coda
}
told-repeat-ends = { $count ->
    [2] termina la repetición
   *[other] termina la repetición, se toca { $count } veces
}
told-double-bar = doble barra
told-chord = acorde { $text }
told-label = figura { $text }
told-bar-rest = silencio de compás entero
told-rest = silencio de { $value }
told-event = { LIST($parts, "comma") }
told-note = { $pitch } { $value }
told-note-with-graces = { $count ->
    [one] { $note } precedida de la nota de adorno { $graces }
   *[other] { $note } precedida de las notas de adorno { $graces }
}
told-tie = ligada a la siguiente
told-lyric = cantada «{ $text }»
told-value = { $value ->
    [1] redonda
    [2] blanca
    [4] negra
    [8] corchea
    [16] semicorchea
    [32] fusa
   *[64] semifusa
}{ $dots ->
   *[0] {""}
    [1] {" "}con puntillo
    [2] {" "}con doble puntillo
}{ $tuplet ->
   *[0] {""}
    [2] {" "}de dosillo
    [3] {" "}de tresillo
    [4] {" "}de cuatrillo
    [5] {" "}de quintillo
    [6] {" "}de seisillo
    [7] {" "}de septillo
}
told-pitch = { NOTE($letter, 0) }{ $alter ->
    [-2] {" "}doble bemol
    [-1] {" "}bemol
   *[0] {""}
    [1] {" "}sostenido
    [2] {" "}doble sostenido
}{" "}{ $octave }
told-mark = { $mark ->
    [staccato] staccato
    [tenuto] tenuto
    [accent] acentuada
    [marcato] marcato
    [fermata] con calderón
    [breath] después, respiración
    [slur-start] empieza ligadura
    [slur-stop] termina ligadura
    [trill] trino
    [turn] grupeto
    [inverted-turn] grupeto invertido
    [mordent] mordente
    [inverted-mordent] mordente superior
    [roll] roll
    [cran] cran
    [shake] shake
    [scoop] atacada desde abajo
    [fall] con caída
    [doit] con doit
    [ghost] nota fantasma
    [pp] pianissimo
    [p] piano
    [mp] mezzo piano
    [mf] mezzo forte
    [f] forte
    [ff] fortissimo
    [crescendo] crescendo desde aquí
    [diminuendo] diminuendo desde aquí
    [hairpin-stop] fin del regulador
   *[vibrato] vibrato
}
