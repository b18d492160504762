# Töne, Tonarten und Stellen im Takt.

note-name = { NOTE($letter, $alter) }
pitch-name = { NOTE($letter, $alter) }{ $octave }

key-name = { $kind ->
    [minor] { LOWER(NOTE($letter, $alter)) }
   *[major] { NOTE($letter, $alter) }
}-{ $mode ->
    [minor] Moll
    [dorian] Dorisch
    [phrygian] Phrygisch
    [lydian] Lydisch
    [mixolydian] Mixolydisch
    [locrian] Lokrisch
   *[major] Dur
}
    .inline = { key-name }

ordinal = { $n ->
    [1] ersten
    [2] zweiten
    [3] dritten
    [4] vierten
    [5] fünften
    [6] sechsten
    [7] siebten
    [8] achten
   *[other] { $n }.
}

pickup = der Auftakt
    .at = im Auftakt
bar-name = Takt { $number }
    .at = in Takt { $number }

position = { $kind ->
    [downbeat] auf der Eins
    [beat] auf Schlag { $beat }
    [offbeat] auf der Und nach { $beat }
    [half] auf der { $ordinal } Halben von Schlag { $beat }
    [quarter] auf dem { $ordinal } Viertel von Schlag { $beat }
    [eighth] auf dem { $ordinal } Achtel von Schlag { $beat }
    [sixteenth] auf dem { $ordinal } Sechzehntel von Schlag { $beat }
    [thirtysecond] auf dem { $ordinal } Zweiunddreißigstel von Schlag { $beat }
    [triplet] auf dem { $ordinal } Triolenton von Schlag { $beat }
    [quintuplet] auf dem { $ordinal } Quintolenton von Schlag { $beat }
    [sextuplet] auf dem { $ordinal } Sextolenton von Schlag { $beat }
    [septuplet] auf dem { $ordinal } Septolenton von Schlag { $beat }
   *[after] kurz nach Schlag { $beat }
}
    .name = { $kind ->
        [downbeat] Schlag 1
        [beat] Schlag { $beat }
        [offbeat] Und nach { $beat }
        [half] { $n }. Halbe von Schlag { $beat }
        [quarter] { $n }. Viertel von Schlag { $beat }
        [eighth] { $n }. Achtel von Schlag { $beat }
        [sixteenth] { $n }. Sechzehntel von Schlag { $beat }
        [thirtysecond] { $n }. Zweiunddreißigstel von Schlag { $beat }
        [triplet] { $n }. Triolenton von Schlag { $beat }
        [quintuplet] { $n }. Quintolenton von Schlag { $beat }
        [sextuplet] { $n }. Sextolenton von Schlag { $beat }
        [septuplet] { $n }. Septolenton von Schlag { $beat }
       *[after] kurz nach Schlag { $beat }
    }
    .full = { $bar }, { position.name }
no-chord-symbol = „{ $given }“ ist kein lesbares Akkordsymbol: Grundton, Art und Bass angeben, wie in Dm7, Bb7(b9) oder C/E.
no-chord-kind = „{ $given }“ ist keine Akkordart von MusicXML 4.0: bekannt sind { $known }.
chord-degree-outside = Die Akkordstufe { $degree } liegt außerhalb von 1 bis 13: aus dem Akkord auf { $root } entfernen.
key-too-far = { $tonic } { $mode } bräuchte { $count } Vorzeichen, 7 sind möglich: den Grundton enharmonisch anders schreiben.
no-mode = „{ $given }“ ist keine Tonart: bekannt sind { $known }.
no-metre = „{ $given }“ ist keine verwendbare Taktart: 1 bis 32 Schläge über 1, 2, 4, 8, 16 oder 32, wie in 6/8.
no-interval = „{ $given }“ ist kein Intervall: zum Beispiel m3, P5, A4 oder -M2 schreiben.
no-note-name = „{ $given }“ ist kein Notenname: Buchstabe A bis G mit # oder b schreiben, wie Bb oder F#.
no-pitch = „{ $given }“ ist keine Tonhöhe: Buchstabe, Vorzeichen und Oktave schreiben, wie Bb3 oder F#5.
