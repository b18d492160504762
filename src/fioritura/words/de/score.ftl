told-unnamed-staff = System { $number }
told-staff = { $name }:
told-bar = { $number ->
    [0] Auftakt:
   *[other] Takt { $number }:
}
told-key = Tonart { $key }
told-metre = { $metre }-Takt
told-repeat-begins = Wiederholung beginnt
told-endings = Klammer { $numbers }
told-jump = { $jump ->
    [segno] Segno
   *[coda] Kodazeichen
}
told-repeat-ends = { $count ->
    [2] Wiederholung endet
   *[other] Wiederholung endet, { $count } Mal gespielt
}
told-double-bar = Doppelstrich
told-chord = Akkord { $text }
told-label = Figur { $text }
told-bar-rest = ganztaktige Pause
told-rest = Pause ({ $value })
told-event = { LIST($parts, "comma") }
told-note = { $pitch } { $value }
told-note-with-graces = { $count ->
    [one] { $note } mit Vorschlag { $graces }
   *[other] { $note } mit den Vorschlägen { $graces }
}
told-tie = übergebunden
told-lyric = gesungen „{ $text }“
told-value = { $dots ->
   *[0] {""}
    [1] punktierte{" "}
    [2] doppelt punktierte{" "}
}{ $tuplet ->
   *[0] {""}
    [2] Duolen-
    [3] Triolen-
    [4] Quartolen-
    [5] Quintolen-
    [6] Sextolen-
    [7] Septolen-
}{ $value ->
    [1] Ganze
    [2] Halbe
    [4] Viertel
    [8] Achtel
    [16] Sechzehntel
    [32] Zweiunddreißigstel
   *[64] Vierundsechzigstel
}
told-pitch = { NOTE($letter, $alter) }{ $octave }
told-mark = { $mark ->
    [staccato] staccato
    [tenuto] tenuto
    [accent] mit Akzent
    [marcato] marcato
    [fermata] mit Fermate
    [breath] danach Atemzeichen
    [slur-start] Bindebogen beginnt
    [slur-stop] Bindebogen endet
    [trill] Triller
    [turn] Doppelschlag
    [inverted-turn] umgekehrter Doppelschlag
    [mordent] Mordent
    [inverted-mordent] Pralltriller
    [roll] Roll
    [cran] Cran
    [shake] Shake
    [scoop] von unten gezogen
    [fall] mit Fall
    [doit] mit Doit
    [ghost] Ghost Note
    [pp] pianissimo
    [p] piano
    [mp] mezzopiano
    [mf] mezzoforte
    [f] forte
    [ff] fortissimo
    [crescendo] crescendo von hier an
    [diminuendo] diminuendo von hier an
    [hairpin-stop] Ende der Gabel
   *[vibrato] Vibrato
}
