repeated-notes-why = Una nota lo bastante larga para decirse dos veces: la altura se queda, el ritmo se mueve.
repeated-notes-lively-why = Una nota larga se vuelve un ritmo de { $count ->
    [2] dos
    [3] tres
    [4] cuatro
   *[other] { $count }
} notas de una sola altura, mientras la melodía espera.
