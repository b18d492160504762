held-colour = nota de color final
    .label = color
    .text = La última nota pasa a la sexta o a la novena de su acorde y se queda allí.
    .how = Tocar la última nota durante un tiempo, pasar luego al color sin nuevo golpe de lengua y mantenerlo por igual hasta el final.
    .when = Al final de una pieza de jazz, sobre un último acorde mantenido; no donde los demás mantienen con usted la nota sencilla.
    .fault = La nota de color suena más fuerte que la nota de la que viene y parece un error.
    .cure = Mantener la última nota, cantar el color y luego tocarlo con la misma intensidad.

held-colour-why = La melodía acaba en una nota mantenida del acorde: la { $colour ->
    [ninth] novena
   *[sixth] sexta
} da su color al último acorde.

closing-phrase = frase de cierre
    .label = cierre
    .text = Tras la última nota, unas notas rápidas de la escala pentatónica llevan a una nota mantenida.
    .how = Dejar hablar la última nota, tocar las notas rápidas con ligereza y a tiempo, y asentar la nota mantenida con la banda.
    .when = Una sola vez, al final de todo, cuando la última nota es larga.
    .fault = Se precipita, y la nota mantenida llega antes del tiempo.
    .cure = Contar en voz alta los tiempos de la última nota y tocar luego la frase dentro de esa cuenta.

closing-phrase-why = La melodía acaba aquí y queda tiempo: una frase corta { $rises ->
    [yes] sube
   *[no] baja
} hasta una nota mantenida.
