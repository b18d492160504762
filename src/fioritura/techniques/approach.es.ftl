approach-note = nota de aproximación cromática
    .label = aproximación
    .text = Una nota real un semitono por debajo de la siguiente nota de la melodía, tomada del final de la anterior.
    .how = Ligar la aproximación a la llegada y poner el peso en la llegada.
    .when = Donde la melodía salta a un tiempo.
    .fault = Se falla el salto a la nota de aproximación.
    .cure = Practicar solo el salto a la nota de aproximación y luego añadir el semitono.

approach-chromatic = doble aproximación cromática
    .label = aprox. crom.
    .text = Dos semitonos seguidos que resbalan hacia la siguiente nota de la melodía.
    .how = Regular, legato, creciendo.
    .when = Hacia una nota en el tiempo, cuando la anterior tiene tiempo que ceder.
    .fault = La primera de las dos va acentuada.
    .cure = Empezarla más suave que la nota anterior de la melodía.

surround = rodeo por ambos lados
    .label = rodeo
    .text = Las notas a ambos lados de la siguiente nota, una tras otra, y luego la nota misma.
    .how = Pensar tres notas como un solo gesto cuya meta es la última.
    .when = Hacia una nota en el tiempo, sobre todo una nota del acorde donde cambia el acorde.
    .fault = La línea se detiene en la llegada.
    .cure = Seguir más allá: repetir en bucle el gesto y las dos notas que siguen.

enclosure = rodeo ampliado
    .label = rodeo ampliado
    .text = Tres o cuatro notas con valor propio rodean por ambos lados una nota estructural.
    .how = Mantener las notas parejas y ligeras; la llegada lleva el peso.
    .when = Hacia una nota del acorde en el primer tiempo o a mitad de compás, o hacia la tercera o séptima de un acorde nuevo, donde la nota anterior tiene tiempo.
    .fault = Se pierde la dirección: cada nota se toca por sí sola.
    .cure = Cantar la llegada, tocar despacio las notas que la rodean y volver a cantarla; luego dejar de cantar.

approach-note-why = La melodía salta a un tiempo: el semitono por debajo de la llegada la anuncia.
approach-chromatic-why = Dos semitonos { $direction ->
    [up] suben desde abajo
   *[down] bajan desde arriba
} hasta una nota en el tiempo.
surround-why = La llegada queda rodeada por ambos lados: { $first ->
    [above] grado superior, semitono inferior
   *[below] semitono inferior, grado superior
} y luego la nota.
enclosure-why = La nota { $where } queda rodeada por ambos lados: { $order ->
    [above] dos semitonos desde arriba y luego el semitono inferior
    [above-four] dos semitonos hacia abajo y luego dos semitonos hacia arriba
   *[below] dos semitonos desde abajo y luego el grado superior
}.
