# Notas, tonalidades y lugares del compás.

note-name = { NOTE($letter, $alter) }
    .inline = { LOWER(NOTE($letter, $alter)) }
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
no-chord-symbol = «{ $given }» no es un cifrado de acorde legible: escriba fundamental, especie y bajo, como Dm7, Bb7(b9) o C/E.
no-chord-kind = «{ $given }» no es un tipo de acorde de MusicXML 4.0: se conocen { $known }.
chord-degree-outside = El grado { $degree } queda fuera de 1 a 13: quítelo del acorde sobre { $root }.
key-too-far = { $tonic } { $mode } necesitaría { $count } alteraciones; el límite es 7: escriba la tónica por enarmonía.
no-mode = «{ $given }» no es un modo: se conocen { $known }.
no-metre = «{ $given }» no es un compás utilizable: de 1 a 32 partes sobre 1, 2, 4, 8, 16 o 32, como 6/8.
no-interval = «{ $given }» no es un intervalo: escriba por ejemplo m3, P5, A4 o -M2.
no-note-name = «{ $given }» no es un nombre de nota: escriba una letra de A a G con # o b, como Bb o F#.
no-pitch = «{ $given }» no es una altura: escriba letra, alteración y octava, como Bb3 o F#5.
