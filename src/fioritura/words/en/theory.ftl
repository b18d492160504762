# Notes, keys and places in the bar.

note-name = { NOTE($letter, $alter) }
pitch-name = { NOTE($letter, $alter) }{ $octave }

key-name = { NOTE($letter, $alter) } { $mode ->
    [minor] minor
    [dorian] dorian
    [phrygian] phrygian
    [lydian] lydian
    [mixolydian] mixolydian
    [locrian] locrian
   *[major] major
}
    .inline = { key-name }

ordinal = { $n ->
    [1] first
    [2] second
    [3] third
    [4] fourth
    [5] fifth
    [6] sixth
    [7] seventh
    [8] eighth
   *[other] { $n }th
}

pickup = the pickup
    .at = in the pickup
bar-name = bar { $number }
    .at = in bar { $number }

position = { $kind ->
    [downbeat] on the downbeat
    [beat] on beat { $beat }
    [offbeat] on the off-beat after { $beat }
    [half] on the { $ordinal } half note of beat { $beat }
    [quarter] on the { $ordinal } quarter of beat { $beat }
    [eighth] on the { $ordinal } eighth of beat { $beat }
    [sixteenth] on the { $ordinal } sixteenth of beat { $beat }
    [thirtysecond] on the { $ordinal } thirty-second of beat { $beat }
    [triplet] on the { $ordinal } triplet of beat { $beat }
    [quintuplet] on the { $ordinal } quintuplet of beat { $beat }
    [sextuplet] on the { $ordinal } sextuplet of beat { $beat }
    [septuplet] on the { $ordinal } septuplet of beat { $beat }
   *[after] just after beat { $beat }
}
    .name = { $kind ->
        [downbeat] beat 1
        [beat] beat { $beat }
        [offbeat] off-beat after { $beat }
        [half] { $ordinal } half note of beat { $beat }
        [quarter] { $ordinal } quarter of beat { $beat }
        [eighth] { $ordinal } eighth of beat { $beat }
        [sixteenth] { $ordinal } sixteenth of beat { $beat }
        [thirtysecond] { $ordinal } thirty-second of beat { $beat }
        [triplet] { $ordinal } triplet of beat { $beat }
        [quintuplet] { $ordinal } quintuplet of beat { $beat }
        [sextuplet] { $ordinal } sextuplet of beat { $beat }
        [septuplet] { $ordinal } septuplet of beat { $beat }
       *[after] just after beat { $beat }
    }
    .full = { $bar }, { position.name }
