# Notes, tonalités et places dans la mesure.

note-name = { NOTE($letter, $alter) }
    .inline = { LOWER(NOTE($letter, $alter)) }
pitch-name = { NOTE($letter, $alter) }{ $octave }

key-name = { NOTE($letter, $alter) } { $mode ->
    [minor] mineur
    [dorian] dorien
    [phrygian] phrygien
    [lydian] lydien
    [mixolydian] mixolydien
    [locrian] locrien
   *[major] majeur
}
    .inline = { LOWER(NOTE($letter, $alter)) } { $mode ->
        [minor] mineur
        [dorian] dorien
        [phrygian] phrygien
        [lydian] lydien
        [mixolydian] mixolydien
        [locrian] locrien
       *[major] majeur
    }

ordinal = { $n ->
    [1] première
    [2] deuxième
    [3] troisième
    [4] quatrième
    [5] cinquième
    [6] sixième
    [7] septième
    [8] huitième
   *[other] { $n }e
}

pickup = la levée
    .at = dans la levée
bar-name = mesure { $number }
    .at = à la mesure { $number }

position = { $kind ->
    [downbeat] sur le premier temps
    [beat] sur le temps { $beat }
    [offbeat] sur le contretemps du temps { $beat }
    [half] sur la { $ordinal } blanche du temps { $beat }
    [quarter] sur la { $ordinal } noire du temps { $beat }
    [eighth] sur la { $ordinal } croche du temps { $beat }
    [sixteenth] sur la { $ordinal } double croche du temps { $beat }
    [thirtysecond] sur la { $ordinal } triple croche du temps { $beat }
    [triplet] sur la { $ordinal } note du triolet du temps { $beat }
    [quintuplet] sur la { $ordinal } note du quintolet du temps { $beat }
    [sextuplet] sur la { $ordinal } note du sextolet du temps { $beat }
    [septuplet] sur la { $ordinal } note du septolet du temps { $beat }
   *[after] juste après le temps { $beat }
}
    .name = { $kind ->
        [downbeat] temps 1
        [beat] temps { $beat }
        [offbeat] contretemps du temps { $beat }
        [half] { $ordinal } blanche du temps { $beat }
        [quarter] { $ordinal } noire du temps { $beat }
        [eighth] { $ordinal } croche du temps { $beat }
        [sixteenth] { $ordinal } double croche du temps { $beat }
        [thirtysecond] { $ordinal } triple croche du temps { $beat }
        [triplet] { $ordinal } note du triolet du temps { $beat }
        [quintuplet] { $ordinal } note du quintolet du temps { $beat }
        [sextuplet] { $ordinal } note du sextolet du temps { $beat }
        [septuplet] { $ordinal } note du septolet du temps { $beat }
       *[after] juste après le temps { $beat }
    }
    .full = { $bar }, { position.name }
no-chord-symbol = « { $given } » n’est pas un chiffrage d’accord lisible : écrivez fondamentale, qualité et basse, comme Dm7, Bb7(b9) ou C/E.
no-chord-kind = « { $given } » n’est pas un type d’accord de MusicXML 4.0 : on connaît { $known }.
chord-degree-outside = Le degré { $degree } est hors de 1 à 13 : retirez-le de l’accord sur { $root }.
key-too-far = { $tonic } { $mode } demanderait { $count } altérations ; 7 est la limite : écrivez la tonique par enharmonie.
no-mode = « { $given } » n’est pas un mode : on connaît { $known }.
no-metre = « { $given } » n’est pas une mesure utilisable : 1 à 32 temps sur 1, 2, 4, 8, 16 ou 32, comme 6/8.
no-interval = « { $given } » n’est pas un intervalle : écrivez par exemple m3, P5, A4 ou -M2.
no-note-name = « { $given } » n’est pas un nom de note : écrivez une lettre de A à G avec # ou b, comme Bb ou F#.
no-pitch = « { $given } » n’est pas une hauteur : écrivez lettre, altération et octave, comme Bb3 ou F#5.
