anticipation = anticipación
    .label = antes
    .text = La nota llega antes, una semicorchea (en swing una corchea), y se mantiene sobre su tiempo.
    .how = Articular con claridad la nota adelantada y mantenerla; sentir pasar el tiempo sin volver a tocar.
    .when = En una nota de uno o dos tiempos que empieza en el tiempo, mejor si el acorde cambia con ella.
    .fault = Todo lo que sigue llega antes también.
    .cure = Marcar el tiempo con el pie y decir el ritmo antes de tocarlo.

anticipation-why = Una nota en el tiempo que puede llegar { $value ->
    [eighth] una corchea
   *[sixteenth] una semicorchea
} antes { $brings ->
    [yes] y adelantar el nuevo acorde
   *[no] y empujar la línea hacia delante
}.
