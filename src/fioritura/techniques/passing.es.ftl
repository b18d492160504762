passing-note-why = La melodía salta una tercera: la nota de la escala que queda en medio la llena.
passing-notes-pair-why = La melodía salta una cuarta: las dos notas de la escala que quedan en medio la convierten en un paseo.
passing-note-chromatic-why = La melodía se mueve un tono: el semitono intermedio la lleva adelante, como nota real fuera del tiempo.
