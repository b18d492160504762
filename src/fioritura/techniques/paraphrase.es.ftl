back-phrasing = fraseo retrasado
    .label = retrasado
    .text = Un grupo de notas empieza tarde y se aprieta, de modo que la nota a la que lleva llega en su sitio. Donde no hay silencio antes, la nota anterior se mantiene mientras tanto.
    .how = Mantener la nota anterior como si sobrara el tiempo y luego decir las palabras de la frase hacia la llegada; el pulso sigue en el pie.
    .when = En baladas y swing medio, en dos a ocho notas que llevan a un primer tiempo o a una nota más larga en el tiempo.
    .fault = El tempo se afloja con la frase.
    .cure = Repetir el compás en bucle sobre una línea de bajo: cantar la frase primero a tiempo, luego tarde, y dar una palmada en cada llegada.

phrase-ahead = frase adelantada
    .label = adelantada
    .text = Un grupo de notas llega una corchea o una semicorchea antes, y la nota más larga de su final se mantiene desde ahí.
    .how = Respirar un tiempo antes, acentuar un poco la primera nota adelantada y dejar los valores como están en la melodía.
    .when = Donde dos a ocho notas llevan de un tiempo a una nota más larga y a la nota anterior le sobra duración.
    .fault = El grupo se adelanta y además corre.
    .cure = Dar palmadas en dos y cuatro mientras se toca; las notas adelantadas quedan justo entre los tiempos.

octave-phrase = frase en otra octava
    .label = octava
    .text = Un gesto que repite lo que se acaba de oír, o le responde, se toca una octava más aguda o más grave, nota por nota.
    .how = Oír la primera nota de la nueva octava antes de tocarla y mantener el sonido tan redondo como en la octava anterior.
    .when = En una repetición, una secuencia o una respuesta que queda en el registro cómodo y a la que se llega con una octava como mucho.
    .fault = La primera nota se quiebra.
    .cure = Tocar solo el salto de octava que lleva a ella, ligado y suave, diez veces, y luego el gesto.

back-phrasing-why = Las { $count } notas que llevan a la nota { $where } empiezan { $late ->
    [eighth] una corchea
   *[quarter] una negra
} más tarde y llegan a tiempo{ $held ->
    [true] : la nota anterior se mantiene mientras tanto
   *[false] {""}
}.
phrase-ahead-why = Las { $count } notas hasta la que está { $where } llegan { $value ->
    [eighth] una corchea
   *[sixteenth] una semicorchea
} antes, y esa nota más larga se mantiene desde ahí.
octave-phrase-why = { $kind ->
    [repeat] Lo que se oyó { FORM($bar, "at") } vuelve
    [sequence] El gesto que se oyó { FORM($bar, "at") } vuelve con otras notas
   *[answer] El mismo ritmo responde a lo que se oyó { FORM($bar, "at") }
}: una octava más { $direction ->
    [up] aguda
   *[down] grave
} es algo nuevo.
