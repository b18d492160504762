# Las páginas de un informe.

which-tune = ¿Qué melodía se tocó? Indique la melodía, o el arreglo que se pidió.
not-earlier-takes = { $file } no es el archivo de las tomas anteriores: apártelo o elija otra carpeta.
the-take = La toma
review-untitled = Una toma
review-subtitle = lo que se oyó y lo que conviene estudiar ahora
review-recording = Sobre la grabación.
review-next = Qué estudiar ahora
review-ladder = Empiece a { $start } tiempos por minuto; tres veces bien seguidas, luego cuatro más, hasta { $goal }.
review-how-measured = Cada adorno se nombra con la seguridad que tiene el oído; un nombre dudoso se da con la otra lectura. Los cents se cuentan desde el temperamento igual sobre su propio La; los milisegundos, desde su propio pulso.
review-passages = Se oyó en { $count } pasajes, contando repeticiones y nuevos comienzos.

glance-of = { $right } de { $wanted }
glance-count = { $count }
glance-ornaments = Adornos
glance-notes = Notas correctas
glance-tempo = Tempo
glance-time = Pulso
glance-eighths = Corcheas
glance-tuning = Afinación
glance-within = a menos de { $ms } ms
glance-swing = { $ratio } a 1
glance-even = igual
beats-a-minute = { $tempo } tiempos por minuto
in-tune-with-440 = La = 440 Hz
amount-of-cents = { $cents ->
    [one] { $cents } cent
   *[other] { $cents } cents
}
cents-off = { $side ->
    [sharp] { amount-of-cents } alto
   *[flat] { amount-of-cents } bajo
}

review-played = Lo que usted tocó
review-played-about = { $below ->
    [asked] Arriba, lo que se oyó; debajo, lo que se pidió.
   *[plain] Arriba, lo que se oyó; debajo, la melodía sencilla.
} La línea detrás de las notas es su altura: sobre la cabeza está afinada, y un espacio más arriba o más abajo es un semitono.
review-passage = Pasaje { $number } de { $count }, { $bars }
staff-played = tocado
staff-asked = pedido
staff-plain = sencillo
music = Música
music-from-bar = Música desde el compás { $bar }
colours = Colores: { $names }
colour-as-asked = como se pidió
colour-ornament = adorno
colour-missed = pedido, no oído
colour-slip = distinto de lo escrito
in-tune = afinado
sharp = alto
flat = bajo

review-no-ornament = No se oyó ningún adorno: la melodía se tocó sencilla.
review-ornaments = Los adornos, uno por uno
review-status-done = salió
review-status-missed = no se oyó
review-status-added = propio
column-passage = Pasaje
column-bar = Compás
column-pickup = anacrusa
column-beat = Tiempo
column-ornament = Adorno
column-sure = Seguridad
column-figure = Notas rápidas de
column-uneven = Diferencia de duración
share = { NUMBER($share, style: "percent") }
sure-else = { $share }, si no { $other }
no-ornament = ningún adorno
review-slips = Notas distintas de lo escrito
review-slip = { CAPITAL($where) }: { $words }.

review-spread = Dos de cada tres notas caen a menos de { $ms } ms de su propio pulso.
review-no-drift = El tempo del final es el del principio.
review-swing = Las corcheas largas y breves están { $ratio } a 1.
review-graces = Las notas de adorno duran { $ms } ms.
review-evenness = Igualdad
percent = { $percent } por ciento
nearly-even = casi igual
to-practise = por estudiar
review-tuning = Toda la toma: { $off }.
review-tuning-about = Cada trazo es una nota sostenida, cada punto su centro, respecto a su propia afinación.
review-register = { $register }, { $off } ({ $count ->
    [one] { $count } nota
   *[other] { $count } notas
})
review-registers = Por registros: { $registers }.
review-level-heading = Volumen
review-level = Las notas suaves y fuertes se diferencian en { $db } dB.

# Gráficos.

axis-on-the-beat = en el tiempo
axis-off-the-beat = { $side ->
    [late] { $ms } ms tarde
   *[early] { $ms } ms pronto
}
axis-on-a-beat = en un tiempo
axis-together = menos de { $ms } ms: suena junto
axis-tempo = tempo { $tempo }
axis-cents = { $side ->
    [sharp] { $cents } cents alto
   *[flat] { $cents } cents bajo
}
louder = más fuerte
usual-level = habitual
softer = más suave
plot-time = Notas antes y después del tiempo, y el tempo, compás por compás
plot-tuning = Afinación de cada nota, en cents respecto a la afinación del intérprete
plot-level = Volumen de cada nota a lo largo de los compases
plot-progress = Medidas de las tomas, de la primera a la última

# Ejercicios.

drill-long-short = Larga–breve
drill-short-long = Breve–larga
drill-plain = { CAPITAL($bar) }, sencillo
drill-with-ornament = Con el adorno
drill-loop = { CAPITAL($bar) }, en bucle
drill-long-note = Sostenga { $note } con un bordón
drill-one-note = { CAPITAL($bars) } en una sola nota
drill-as-written = Como está escrito

# El progreso a lo largo de varias tomas.

review-progress = Progreso
measure-ornaments = adornos que salieron
measure-notes = notas correctas
measure-spread = desvío de las notas del pulso
measure-drift = tempo, final frente a principio
measure-pitch = desvío de las notas de su altura
measure-uneven = diferencia de las notas rápidas
measure-level = de suave a fuerte
measure-tempo = tempo, negras por minuto
amount-percent = { $amount } %
amount-ms = { $amount } ms
amount-cents = { $amount ->
    [one] { $amount } cent
   *[other] { $amount } cents
}
amount-db = { $amount } dB
amount-tempo = { $amount }
then-and-now = { $measure } { $then } entonces, { $now } ahora
progress-takes = { $count } tomas de esta melodía.
progress-better = { $before } Mejor desde la primera: { $measures }.
progress-worse = { $before } Que vigilar: { $measures }.
