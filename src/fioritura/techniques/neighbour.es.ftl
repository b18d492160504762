neighbour-upper = bordadura superior
    .label = bord. sup.
    .text = Un grado hacia arriba desde la nota de la melodía, y vuelta.
    .how = La bordadura es más ligera que la nota a la que pertenece.
    .when = En una nota repetida o en una larga que deba moverse un poco.
    .fault = La vuelta llega tarde.
    .cure = Digitar primero las tres notas en silencio y a tempo.

neighbour-lower = bordadura inferior
    .label = bord. inf.
    .text = Un grado (o un semitono) hacia abajo desde la nota de la melodía, y vuelta.
    .how = Ligar la bajada y la subida en un solo gesto.
    .when = En una nota repetida o larga; el semitono es más fuerte, el grado más suave.
    .fault = La nota inferior queda baja.
    .cure = Mantener el aire rápido al bajar.

double-neighbour = doble bordadura
    .label = doble bord.
    .text = Las dos bordaduras de una nota, una tras otra, antes de que vuelva.
    .how = Cuatro notas iguales, la primera y la última la misma.
    .when = Entre dos notas iguales o dentro de una larga.
    .fault = Las dos notas de en medio se confunden.
    .cure = Práctica lenta con acento en la segunda nota y luego en la tercera.

escape-tone = escapada
    .label = escapada
    .text = Un grado en contra de la dirección de la melodía y luego un salto a la nota siguiente.
    .how = Soltarla como de paso: corta y ligera.
    .when = Donde la melodía se mueve por grado o por tercera y la primera nota tiene tiempo.
    .fault = Suena como una nota fallada.
    .cure = Dar a las notas de la melodía de ambos lados toda su duración y todo su peso.

appoggiatura = apoyatura larga
    .label = apoy.
    .text = La melodía salta a la nota vecina de la del acorde, se apoya en ella y resuelve por grado.
    .how = Todo el peso en la nota de apoyo, ninguno en la resolución, sin lengua entre ambas.
    .when = En una nota larga del acorde en el tiempo a la que se llega por salto.
    .fault = La resolución recibe un acento.
    .cure = Cantarla en un suspiro: «AH-ah».

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
