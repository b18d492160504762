told-unnamed-staff = portée { $number }
told-staff = { $name } :
told-bar = { $number ->
    [0] levée :
   *[other] mesure { $number } :
}
told-key = tonalité de { $key }
told-metre = à { $metre }
told-repeat-begins = début de reprise
told-endings = fin { $numbers }
told-jump = { $jump ->
    [segno] segno
   *[coda] signe de coda
}
told-repeat-ends = { $count ->
    [2] fin de reprise
   *[other] fin de reprise, jouée { $count } fois
}
told-double-bar = double barre
told-chord = accord { $text }
told-label = figure { $text }
told-bar-rest = pause d’une mesure
told-rest = silence de { $value }
told-event = { LIST($parts, "comma") }
told-note = { $pitch } { $value }
told-note-with-graces = { $count ->
    [one] { $note } précédée de l’appoggiature brève { $graces }
   *[other] { $note } précédée des appoggiatures brèves { $graces }
}
told-tie = liée à la suivante
told-lyric = chantée « { $text } »
told-value = { $value ->
    [1] ronde
    [2] blanche
    [4] noire
    [8] croche
    [16] double croche
    [32] triple croche
   *[64] quadruple croche
}{ $dots ->
   *[0] {""}
    [1] {" "}pointée
    [2] {" "}doublement pointée
}{ $tuplet ->
   *[0] {""}
    [2] {" "}de duolet
    [3] {" "}de triolet
    [4] {" "}de quartolet
    [5] {" "}de quintolet
    [6] {" "}de sextolet
    [7] {" "}de septolet
}
told-pitch = { NOTE($letter, 0) }{ $alter ->
    [-2] {" "}double bémol
    [-1] {" "}bémol
   *[0] {""}
    [1] {" "}dièse
    [2] {" "}double dièse
}{" "}{ $octave }
told-mark = { $mark ->
    [staccato] staccato
    [tenuto] tenuto
    [accent] accentuée
    [marcato] marcato
    [fermata] avec point d’orgue
    [breath] suivie d’une respiration
    [slur-start] début de liaison
    [slur-stop] fin de liaison
    [trill] trille
    [turn] gruppetto
    [inverted-turn] gruppetto renversé
    [mordent] mordant
    [inverted-mordent] mordant supérieur
    [roll] roll
    [cran] cran
    [shake] shake
    [scoop] prise par en dessous
    [fall] avec chute
    [doit] avec doit
    [ghost] note fantôme
    [pp] pianissimo
    [p] piano
    [mp] mezzo piano
    [mf] mezzo forte
    [f] forte
    [ff] fortissimo
    [crescendo] crescendo à partir d’ici
    [diminuendo] diminuendo à partir d’ici
    [hairpin-stop] fin du soufflet
   *[vibrato] vibrato
}
