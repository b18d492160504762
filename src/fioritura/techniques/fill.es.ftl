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
}: { $count } notas{ $doubled ->
    [yes] {" "}a doble tiempo
   *[no] {""}
} { $idea ->
    [echo] retoman cuatro notas de esta frase
    [third] tocan la tercera de blues
    [fifth] tocan la quinta disminuida
    [guide] destacan la tercera o la séptima del nuevo acorde
    [arpeggio] recorren las notas del acorde
    [around] rodean una nota por ambos lados
    [chromatic] tocan una nota ajena a la tonalidad y al acorde
    [waves] cambian varias veces de dirección
    [arch] suben y vuelven
    [valley] bajan y vuelven
    [falling] bajan
   *[rising] suben
} y { $way ->
    [enclosed] rodean la nota siguiente antes de que llegue
    [semitone] conducen a la nota siguiente por un semitono
    [step] conducen a la nota siguiente por un tono
    [third] conducen a la nota siguiente por una tercera
    [colour] reposan en un color del acorde
   *[rest] reposan en una nota del acorde
}.
