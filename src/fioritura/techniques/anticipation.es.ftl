anticipation-why = Una nota en el tiempo que puede llegar { $value ->
    [eighth] una corchea
   *[sixteenth] una semicorchea
} antes { $brings ->
    [yes] y adelantar el nuevo acorde
   *[no] y empujar la línea hacia delante
}.
