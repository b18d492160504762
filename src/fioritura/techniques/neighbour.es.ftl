neighbour-why-repeated = La melodía repite una nota: la bordadura { $which ->
    [upper] superior
    [lower] inferior
   *[chromatic] inferior cromática
} intermedia le da de dónde volver.
neighbour-why-long = La nota es lo bastante larga para dar un paso a su bordadura { $which ->
    [upper] superior
    [lower] inferior
   *[chromatic] inferior cromática
} y volver.
double-neighbour-why-repeated = La melodía repite una nota: las dos bordaduras ({ $first ->
    [above] arriba y luego abajo
   *[below] abajo y luego arriba
}) bailan a su alrededor.
double-neighbour-why-long = Una nota larga gira por las dos bordaduras ({ $first ->
    [above] arriba y luego abajo
   *[below] abajo y luego arriba
}) y vuelve a casa.
escape-tone-why = La melodía { $direction ->
    [up] sube
   *[down] baja
}: un paso en sentido contrario y luego el salto la dejan tomar aliento.
appoggiatura-why = Una nota { $foreign ->
    [yes] del acorde{" "}
   *[no] {""}
}en el tiempo: un salto al grado { $side ->
    [above] superior
   *[below] inferior
}{ $foreign ->
    [yes] , ajeno al acorde,
   *[no] {""}
} se apoya en ella y resuelve.
