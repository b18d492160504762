repeated-notes = notas repetidas
    .label = repetición
    .text = Una negra se vuelve dos corcheas, una blanca una negra con puntillo y una corchea: la misma altura, dicha otra vez.
    .how = Articular cada nota con ligereza, «da-da», con el aire continuo.
    .when = En una nota de una negra o más, mejor si es más larga que sus vecinas, donde la línea se quedaría quieta.
    .fault = El aire se detiene en cada golpe de lengua.
    .cure = Tocar la nota larga y luego tocarla con la lengua sin cambiar el aire.

repeated-notes-lively = notas repetidas con ritmo
    .label = ritmo
    .text = Una nota larga se vuelve un pequeño ritmo de una sola altura, a menudo sincopado.
    .how = Darle forma: una de las notas es la fuerte, las otras llevan a ella o caen de ella.
    .when = En una nota mantenida mientras la banda sigue, o para despertar un final sencillo.
    .fault = Todas las notas suenan igual de fuerte.
    .cure = Decir el ritmo con una sílaba acentuada y articular exactamente eso.

repeated-notes-why = { $end ->
    [last] La melodía termina en { $pitch }
   *[moves] La melodía se queda en { $pitch } antes de pasar a { $next }
}: dicha dos veces, la nota mantiene el movimiento.
repeated-notes-lively-why = La nota se vuelve un ritmo de { $count ->
    [2] dos
    [3] tres
    [4] cuatro
   *[other] { $count }
} notas de una sola altura, mientras la melodía espera.
