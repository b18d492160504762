turn-why = Una nota con tiempo para un grupeto ({ $start ->
    [at-once] enseguida
   *[after] después de oírse la nota
}): grado superior e inferior a su alrededor.
turn-why-raised = Una nota con tiempo para un grupeto ({ $start ->
    [at-once] enseguida
   *[after] después de oírse la nota
}), cuya nota inferior sube hasta ser sensible.
inverted-turn-why = Una nota con tiempo para un grupeto que primero baja: grado inferior y luego superior.
mordent-why = Un rápido batido al grado inferior afila el ataque.
upper-mordent-why = Un rápido batido al grado superior da brillo al ataque.
shake-why = Una nota larga que admite emoción: alternancia rápida con el grado superior, y luego se asienta.
