told-unnamed-staff = staff { $number }
told-staff = { $name }:
told-bar = { $number ->
    [0] pickup:
   *[other] bar { $number }:
}
told-key = key of { $key }
told-metre = { $metre } time
told-repeat-begins = repeat begins
told-endings = { $count ->
    [one] ending { $numbers }
   *[other] endings { $numbers }
}
told-jump = { $jump ->
    [segno] segno
   *[coda] coda sign
}
told-repeat-ends = { $count ->
    [2] repeat ends
   *[other] repeat ends, played { $count } times
}
told-double-bar = double bar line
told-chord = chord { $text }
told-label = figure { $text }
told-bar-rest = whole-bar rest
told-rest = { $value } rest
told-event = { LIST($parts, "comma") }
told-note = { $pitch } { $value }
told-note-with-graces = { $count ->
    [one] { $note } with a grace note { $graces } before it
   *[other] { $note } with grace notes { $graces } before it
}
told-tie = tied on
told-lyric = sung “{ $text }”
told-value = { $tuplet ->
   *[0] {""}
    [2] duplet{" "}
    [3] triplet{" "}
    [4] quadruplet{" "}
    [5] quintuplet{" "}
    [6] sextuplet{" "}
    [7] septuplet{" "}
}{ $dots ->
   *[0] {""}
    [1] dotted{" "}
    [2] double dotted{" "}
}{ $value ->
    [1] whole
    [2] half
    [4] quarter
    [8] eighth
    [16] sixteenth
    [32] thirty-second
   *[64] sixty-fourth
}
told-pitch = { NOTE($letter, 0) }{ $alter ->
    [-2] {" "}double flat{" "}
    [-1] {" "}flat{" "}
   *[0] {""}
    [1] {" "}sharp{" "}
    [2] {" "}double sharp{" "}
}{ $octave }
told-mark = { $mark ->
    [staccato] staccato
    [tenuto] tenuto
    [accent] accented
    [marcato] marcato
    [fermata] with a fermata
    [breath] breath mark after it
    [slur-start] slur begins
    [slur-stop] slur ends
    [trill] trill
    [turn] turn
    [inverted-turn] inverted turn
    [mordent] mordent
    [inverted-mordent] inverted mordent
    [roll] roll
    [cran] cran
    [shake] shake
    [scoop] scooped
    [fall] with a fall
    [doit] with a doit
    [ghost] ghost note
    [pp] pianissimo
    [p] piano
    [mp] mezzo piano
    [mf] mezzo forte
    [f] forte
    [ff] fortissimo
    [crescendo] crescendo from here
    [diminuendo] diminuendo from here
    [hairpin-stop] end of the hairpin
   *[vibrato] vibrato
}
