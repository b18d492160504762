passing-note = nota de paso
    .label = paso
    .text = La nota de la escala dentro de un salto de tercera, con valor real: una corchea o una semicorchea fuera del tiempo.
    .how = Hacerla más ligera que las notas de ambos lados y ligar a través de ella.
    .when = Donde la melodía salta una tercera y la primera nota es lo bastante larga para ceder tiempo.
    .fault = La nota de paso suena más que la melodía.
    .cure = Tocar el salto solo; luego dejar que la nota de paso ocurra por el camino.

passing-notes-pair = dos notas de paso
    .label = paso
    .text = Las dos notas de la escala dentro de un salto de cuarta.
    .how = Regulares, ligeras, ligadas a la llegada.
    .when = Donde la melodía salta una cuarta desde una nota de un tiempo o más.
    .fault = Se precipitan.
    .cure = Contar las subdivisiones del tiempo que ocupan.

passing-note-chromatic = nota de paso cromática
    .label = paso crom.
    .text = El semitono dentro de un tono, como nota real fuera del tiempo.
    .how = Apoyarse un poco en ella: quiere seguir.
    .when = Donde la melodía se mueve un tono y la primera nota tiene tiempo.
    .fault = Cae en el tiempo y suena como una nota falsa.
    .cure = Poner el pie en el tiempo: la nota cromática está siempre entre dos golpes.

passing-note-why = La melodía salta una tercera: la nota de la escala que queda en medio la llena.
passing-notes-pair-why = La melodía salta una cuarta: las dos notas de la escala que quedan en medio la convierten en un paseo.
passing-note-chromatic-why = La melodía se mueve un tono: el semitono intermedio la lleva adelante, como nota real fuera del tiempo.
