run-chromatic = escala cromática rápida dentro de una tercera o cuarta
    .label = esc. crom.
    .text = Todos los semitonos entre dos notas de la melodía a distancia de tercera o cuarta, rápidos y regulares.
    .how = Empezar antes tarde que pronto; la última nota de la melodía es la meta y está en su tiempo.
    .when = Donde el salto no pasa de una cuarta; los mayores tienen demasiados semitonos.
    .fault = La escala empieza demasiado pronto y la llegada espera.
    .cure = Tocar hacia atrás: la llegada, luego las dos últimas notas y la llegada, luego tres.

run-scale = escala rápida
    .label = escala
    .text = Las notas de la escala del acorde entre dos notas de la melodía a distancia de quinta o más.
    .how = Un aire, una ligadura, los dedos bajos; crecer hacia la llegada.
    .when = Hacia un punto alto o desde él, donde la primera nota es larga.
    .fault = Dos o tres notas de en medio se confunden.
    .cure = Tocarla en ritmos con puntillo de ambas maneras y luego regular.

run-pentatonic = escala pentatónica rápida
    .label = esc. pent.
    .text = Una escala rápida de cinco notas por octava: menos notas para la misma distancia.
    .how = Como la escala rápida, pero con aire entre las notas; puede llevar swing.
    .when = Donde una escala completa sería demasiado rápida para el tempo, y en colores de blues y folk.
    .fault = La tercera que contiene sale desigual.
    .cure = Repetir en bucle las tres notas alrededor de la tercera.

run-arpeggio = arpegio rápido
    .label = arpegio
    .text = Las notas del acorde como pasos rápidos de una nota de la melodía a la siguiente.
    .how = Oír primero el acorde y dejar que los dedos lo deletreen.
    .when = Donde la melodía da un gran salto dentro de un acorde.
    .fault = El cambio de registro se rompe.
    .cure = Practicar las dos notas del cambio como ligadura lenta y luego el arpegio entero.

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
