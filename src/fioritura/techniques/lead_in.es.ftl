lead-in = línea de enlace
    .label = enlace
    .text = Una nota larga sigue como una línea de notas iguales por el acorde, que llega a la nota siguiente de la melodía.
    .how = Deje hablar primero la nota larga; luego toque hacia la llegada, no hacia las notas del camino.
    .when = En medio de una frase, sobre una nota de dos tiempos o más; mejor hacia una nota fuerte o un acorde nuevo.
    .fault = La línea se precipita y la nota siguiente de la melodía llega antes de tiempo.
    .cure = Cante la nota larga y la llegada; añada la última nota de la línea, luego las dos últimas, y así sucesivamente.

lead-in-why = La nota es larga y la frase sigue: { $count } notas iguales por el acorde, la última { $way ->
    [semitone] a un semitono de la llegada
   *[step] a un tono de la llegada
}{ $chromatic ->
    [yes] { " y fuera de la escala" }
   *[no] {""}
}.
