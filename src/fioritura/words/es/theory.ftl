# Notas, tonalidades y lugares del compás.

note-name = { NOTE($letter, $alter) }
pitch-name = { NOTE($letter, $alter) }{ $octave }

key-name = { NOTE($letter, $alter) } { $mode ->
    [minor] menor
    [dorian] dórico
    [phrygian] frigio
    [lydian] lidio
    [mixolydian] mixolidio
    [locrian] locrio
   *[major] mayor
}
    .inline = { LOWER(NOTE($letter, $alter)) } { $mode ->
        [minor] menor
        [dorian] dórico
        [phrygian] frigio
        [lydian] lidio
        [mixolydian] mixolidio
        [locrian] locrio
       *[major] mayor
    }

ordinal = { $n ->
    [1] primera
    [2] segunda
    [3] tercera
    [4] cuarta
    [5] quinta
    [6] sexta
    [7] séptima
    [8] octava
   *[other] { $n }.ª
}

pickup = la anacrusa
    .at = en la anacrusa
bar-name = compás { $number }
    .at = en el compás { $number }

position = { $kind ->
    [downbeat] en el primer tiempo
    [beat] en el tiempo { $beat }
    [offbeat] en el contratiempo del tiempo { $beat }
    [half] en la { $ordinal } blanca del tiempo { $beat }
    [quarter] en la { $ordinal } negra del tiempo { $beat }
    [eighth] en la { $ordinal } corchea del tiempo { $beat }
    [sixteenth] en la { $ordinal } semicorchea del tiempo { $beat }
    [thirtysecond] en la { $ordinal } fusa del tiempo { $beat }
    [triplet] en la { $ordinal } nota del tresillo del tiempo { $beat }
    [quintuplet] en la { $ordinal } nota del quintillo del tiempo { $beat }
    [sextuplet] en la { $ordinal } nota del seisillo del tiempo { $beat }
    [septuplet] en la { $ordinal } nota del septillo del tiempo { $beat }
   *[after] justo después del tiempo { $beat }
}
    .name = { $kind ->
        [downbeat] tiempo 1
        [beat] tiempo { $beat }
        [offbeat] contratiempo del tiempo { $beat }
        [half] { $ordinal } blanca del tiempo { $beat }
        [quarter] { $ordinal } negra del tiempo { $beat }
        [eighth] { $ordinal } corchea del tiempo { $beat }
        [sixteenth] { $ordinal } semicorchea del tiempo { $beat }
        [thirtysecond] { $ordinal } fusa del tiempo { $beat }
        [triplet] { $ordinal } nota del tresillo del tiempo { $beat }
        [quintuplet] { $ordinal } nota del quintillo del tiempo { $beat }
        [sextuplet] { $ordinal } nota del seisillo del tiempo { $beat }
        [septuplet] { $ordinal } nota del septillo del tiempo { $beat }
       *[after] justo después del tiempo { $beat }
    }
    .full = { $bar }, { position.name }
