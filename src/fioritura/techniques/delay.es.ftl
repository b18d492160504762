delay = retraso con llegada apretada
    .label = tarde
    .text = Empezar tarde y tocar las notas anteriores a una llegada en la mitad de su valor: la llegada conserva su tiempo.
    .how = Contar el silencio y pensar en la nota de llegada; las notas cortas llevan a ella.
    .when = En una a cuatro notas que llevan a un tiempo fuerte, en un tempo que deje sitio a los valores a la mitad.
    .fault = También la llegada se retrasa.
    .cure = Dar una palmada en el tiempo de llegada cantando las notas cortas; luego tocar con una batería.

suspension = retardo descendente
    .label = retardo
    .text = La nota anterior se mantiene sobre el tiempo y luego resuelve un grado hacia abajo en la nota de la melodía.
    .how = Ligar; apoyarse con el aire en la nota mantenida y relajarse en la resolución.
    .when = Donde la melodía baja por grado a una nota larga del acorde en el tiempo.
    .fault = La resolución se articula y suena fuerte.
    .cure = Tocarla como un suspiro: fuerte en el tiempo, suave después.

retardation = retardo ascendente
    .label = retardo asc.
    .text = La nota anterior se mantiene sobre el tiempo y luego resuelve un grado hacia arriba en la nota de la melodía.
    .how = Ligar, con un pequeño crecimiento hacia la resolución.
    .when = Donde la melodía sube por grado a una nota larga del acorde en el tiempo, sobre todo al final.
    .fault = Se precipita.
    .cure = Subdividir el tiempo en voz alta y resolver justo en la subdivisión.

delay-why = { $count ->
    [one] La nota empieza tarde y dura
   *[other] Estas { $count } notas empiezan tarde y duran
} la mitad, para que la llegada en el siguiente tiempo fuerte esté en su sitio.
suspension-why = La melodía baja por grado a una nota del acorde: la nota anterior, ajena al acorde, se mantiene y baja con retraso.
retardation-why = La melodía sube por grado a una nota del acorde: la nota anterior, ajena al acorde, se mantiene y sube con retraso.
