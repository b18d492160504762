run-chromatic-why = La melodía { $direction ->
    [up] sube
   *[down] baja
} una { $size ->
    [fourth] cuarta
   *[third] tercera
}: tan pocos semitonos que caben todos.
run-scale-why = La melodía { $direction ->
    [up] sube
   *[down] baja
} con un gran salto: la escala del acorde lo llena, y la llegada es puntual.
run-pentatonic-why = La melodía { $direction ->
    [up] sube
   *[down] baja
} con un gran salto: cinco notas por octava lo llenan con ligereza.
run-arpeggio-why = La melodía { $direction ->
    [up] sube
   *[down] baja
} con un gran salto: las notas del acorde son los peldaños de la escalera.
