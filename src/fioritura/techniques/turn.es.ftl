turn = grupeto
    .label = grupeto
    .text = Nota principal, grado superior, nota principal, grado inferior, nota principal, en la escala del acorde.
    .how = Ligar todo el grupeto; mantenerlo regular y dejar cantar la última nota.
    .when = En una nota de un tiempo o más, mejor camino de la siguiente.
    .fault = El grupeto se aprieta al comienzo y la última nota llega tarde.
    .cure = Tocarlo en notas lentas y regulares con metrónomo y luego reducir los valores a la mitad.

inverted-turn = grupeto invertido
    .label = grup. inv.
    .text = Nota principal, grado inferior, nota principal, grado superior, nota principal.
    .how = Como el grupeto, pero se abre hacia arriba: crecer un poco hacia la nota superior.
    .when = Antes de una nota de la melodía más alta.
    .fault = Se confunde con el grupeto.
    .cure = Decir «primero abajo» y mirar adónde va la melodía.

mordent = mordente
    .label = mordente
    .text = Nota principal, un rápido batido al grado inferior, y vuelta.
    .how = Un golpecito de un solo dedo; la lengua toca solo la primera nota.
    .when = En una nota fuerte a la que se llega desde arriba o que se repite.
    .fault = Tres notas iguales: un tresillo en vez de un batido.
    .cure = Tocar la nota larga y añadir el batido muy al comienzo, tan tarde y tan rápido como se pueda.

upper-mordent = mordente superior
    .label = mord. sup.
    .text = Nota principal, un rápido batido al grado superior, y vuelta.
    .how = Levantar el dedo de un golpecito, no bajarlo: ligero y cerca de la llave.
    .when = En una nota fuerte a la que se llega desde abajo o que se repite.
    .fault = La nota superior va acentuada.
    .cure = Acentuar la nota principal y dejar que el batido viaje en el mismo aire.

shake = trino
    .label = trino
    .text = Alternancia rápida de una nota larga con el grado superior, que se asienta en la nota principal.
    .how = Empezar más despacio de lo posible, acelerar y parar a tiempo para que la nota suene.
    .when = En una nota larga y aguda en un clímax; con una por chorus basta.
    .fault = Dura hasta el final de la nota.
    .cure = Decidir el tiempo en que se asienta y practicar la llegada ahí.

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
