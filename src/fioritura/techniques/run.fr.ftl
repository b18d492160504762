run-chromatic-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} d’une { $size ->
    [fourth] quarte
   *[third] tierce
} : assez peu de demi-tons pour les jouer tous.
run-scale-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} d’un grand saut : la gamme de l’accord le remplit, et l’arrivée est à l’heure.
run-pentatonic-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} d’un grand saut : cinq notes par octave le remplissent avec légèreté.
run-arpeggio-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} d’un grand saut : les notes de l’accord sont les barreaux de l’échelle.
