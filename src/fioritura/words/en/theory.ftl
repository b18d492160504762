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
no-chord-symbol = “{ $given }” is not a chord symbol that can be read: write root, quality and bass, as in Dm7, Bb7(b9) or C/E.
no-chord-kind = “{ $given }” is not a chord kind of MusicXML 4.0: known are { $known }.
chord-degree-outside = Chord degree { $degree } lies outside 1 to 13: take it out of the chord on { $root }.
key-too-far = { $tonic } { $mode } would need { $count } sharps or flats; 7 is the limit: spell the tonic by its other name.
no-mode = “{ $given }” is not a mode: known are { $known }.
no-metre = “{ $given }” is not a metre that can be worked with: 1 to 32 beats over 1, 2, 4, 8, 16 or 32, as in 6/8.
no-interval = “{ $given }” is not an interval: write for example m3, P5, A4 or -M2.
no-note-name = “{ $given }” is not a note name: write a letter A to G with # or b, as in Bb or F#.
no-pitch = “{ $given }” is not a pitch: write letter, accidental and octave, as in Bb3 or F#5.
