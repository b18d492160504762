approach-note-why = La melodía salta a un tiempo: el semitono por debajo de la llegada la anuncia.
approach-chromatic-why = Dos semitonos { $direction ->
    [up] suben desde abajo
   *[down] bajan desde arriba
} hasta una nota en el tiempo.
surround-why = La llegada queda rodeada por ambos lados: { $first ->
    [above] grado superior, semitono inferior
   *[below] semitono inferior, grado superior
} y luego la nota.
