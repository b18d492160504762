added-chord-note = nota del acorde añadida
    .label = nota del acorde
    .text = Una nota del acorde con valor propio: dentro de un salto de la melodía, o entre una nota y su repetición.
    .how = Oír el acorde antes del salto; cada una de las notas tiene su sonido pleno.
    .when = En un salto de quinta o mayor que tiene dentro una nota del acorde, o donde una nota se repite.
    .fault = La nota añadida suena apretada, porque el oído está ya en la nota siguiente de la melodía.
    .cure = Tocar el acorde hacia arriba y hacia abajo desde la fundamental; luego solo la nota de la melodía y la del acorde, despacio.

arpeggiated-note = acorde quebrado en una nota larga
    .label = arpegio
    .text = Se sale de una nota larga por las notas de su acorde, o el acorde se quiebra hacia arriba en el silencio anterior.
    .how = Dejar que suene primero la nota larga; luego un solo movimiento parejo del aire para todo el acorde.
    .when = En una blanca o más, y antes de una nota del acorde en el tiempo que viene tras un silencio.
    .fault = El arpegio empieza demasiado pronto y se pierde la nota de la melodía.
    .cure = Contar en voz alta los tiempos de la nota larga y empezar en el tiempo contado.

guide-tone-line = línea de notas guía
    .label = notas guía
    .text = Mientras la melodía espera, las terceras y séptimas de los acordes siguen por grado donde cambia el acorde.
    .how = En toda su duración, con calma y sin acento, como una voz interior; el grado llega con el cambio de acorde.
    .when = Bajo una nota larga o un silencio de tres tiempos o más durante el cual cambia el acorde.
    .fault = El grado llega pronto o tarde y el cambio no se oye.
    .cure = Tocar la tercera y la séptima de cada acorde en blancas por toda la pieza, con el bajo.

added-chord-note-why = { $kind ->
    [leap] La melodía salta hacia { $direction ->
        [up] arriba
       *[down] abajo
    }: una nota del acorde queda en medio.
   *[repeated] La nota se repite: una nota del acorde por { $direction ->
        [up] encima
       *[down] debajo
    } de ella queda en medio.
}
arpeggiated-note-why = { $way ->
    [into] La melodía calla antes de esta nota: { $count } notas de su acorde suben hasta ella.
   *[from] La nota es larga: { $count } notas de su acorde llevan más allá.
}
guide-tone-line-why = La melodía espera mientras el acorde cambia{ $changes ->
    [one] {""}
   *[other] { " " }{ $changes } veces
}: { $count ->
    [one] una tercera o séptima lleva por grado
   *[other] { $count } notas, cada una la tercera o séptima de su acorde, llevan por grados
} más allá.
