answer-fill = respuesta
    .label = respuesta
    .text = Donde la melodía se mantiene o calla, una frase corta le responde y lleva a la nota siguiente.
    .how = Dejar antes la nota larga, respirar y apuntar a la nota siguiente desde el comienzo de la respuesta.
    .when = En notas largas al final de una frase y en los silencios entre frases; no en cada hueco.
    .fault = La respuesta es más fuerte y más recargada que la melodía, y la frase siguiente empieza tarde.
    .cure = Cantar la melodía y tocar solo las respuestas; luego tocar la melodía y omitir una de cada dos.

answer-fill-why = La melodía { $rests ->
    [yes] calla
   *[no] mantiene una nota larga
}: una respuesta con el ritmo { $origin ->
    [phrase] de esta frase
    [opening] del comienzo
    [to-triplet] de corcheas que acaban en un tresillo
    [to-pair] de corcheas que acaban en dos notas rápidas
    [from-triplet] de un tresillo seguido de corcheas
    [from-pair] de dos notas rápidas seguidas de corcheas
    [from-long] de una primera nota mantenida y corcheas
   *[eighths] de corcheas regulares
}{ $halved ->
    [yes] , en valores a la mitad
   *[no] {""}
}, { $shape ->
    [arch] que sube a una cima y vuelve
    [valley] que baja y vuelve a subir
    [falling] siempre descendente
   *[rising] siempre ascendente
}, conduce a la nota siguiente.
