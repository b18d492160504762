lower-grace-semitone = nota de adorno un semitono por debajo
    .label = semitono abajo
    .text = Una nota breve un semitono por debajo de la nota de la melodía, tocada justo antes y ligada hacia arriba.
    .how = Articular con ligereza la nota de adorno y ligar enseguida a la nota principal, que conserva su lugar en el tiempo.
    .when = En notas que merecen peso: notas largas, cimas, la primera de una frase, notas en el tiempo.
    .fault = La nota de adorno se alarga y la principal llega tarde.
    .cure = Tocar la nota principal sola con metrónomo y luego dejar entrar la de adorno sin moverla.

lower-grace-step = nota de adorno un grado por debajo
    .label = adorno abajo
    .text = Una nota breve un grado de la escala por debajo de la nota de la melodía: de color más suave que el semitono.
    .how = Pensar las dos digitaciones antes de empezar; al ligar solo se mueven uno o dos dedos.
    .when = Donde el semitono sonaría demasiado cortante: en baladas y en notas cuyo grado inferior está a un tono.
    .fault = Las dos notas reciben el mismo peso.
    .cure = Soplar hacia la nota principal; decir «ta-DAA», nunca «TA-ta».

upper-grace-step = nota de adorno un grado por encima
    .label = adorno arriba
    .text = Una nota breve un grado de la escala por encima de la nota de la melodía, que cae sobre ella.
    .how = Pensar en un golpecito del dedo: la nota superior es solo un chasquido antes de la principal.
    .when = En una nota repetida, tras un grado ascendente y en los tiempos fuertes de las melodías populares.
    .fault = La nota superior suena como una nota equivocada de la melodía.
    .cure = Hacerla más corta y más suave; el oído debe notar el ataque, no la altura.

upper-grace-semitone = nota de adorno un semitono por encima, en un tono descendente
    .label = semitono arriba
    .text = Donde la melodía baja un tono, se roza de paso el semitono intermedio.
    .how = Dejar la primera nota un instante antes y pasar por la de en medio con el dedo, no con la mandíbula.
    .when = Solo donde la melodía baja de verdad un tono hasta la nota.
    .fault = Se usa en semitonos descendentes, donde no hay nada en medio.
    .cure = Nombrar primero las dos notas de la melodía; si son vecinas en el piano, elegir otra nota de adorno.

double-grace-lower = doble nota de adorno desde abajo
    .label = doble adorno
    .text = Dos grados rápidos que suben hacia la nota de la melodía.
    .how = Un solo golpe de lengua en la primera y ligar las tres; los dedos cerca de las llaves.
    .when = En una nota fuerte y larga, mejor si la melodía viene de abajo o de un silencio.
    .fault = Las dos notas son desiguales.
    .cure = Practicarlas como tresillo regular con la nota principal y luego encoger el tresillo.

double-grace-upper-lower = doble nota de adorno alrededor de la nota (arriba, abajo)
    .label = adorno alrededor
    .text = El grado superior y el semitono inferior, y luego la nota entre ambos.
    .how = Ligar las tres; dirigir el aire a la nota principal desde el comienzo.
    .when = En una nota larga o una cima en el tiempo, donde el oído tiene tiempo de oírla llegar.
    .fault = La nota principal se acorta.
    .cure = Mantener la nota principal todo su valor; la nota anterior cede el tiempo.

lower-grace-semitone-why = El semitono inferior sube hacia { $note } y la hace hablar.
lower-grace-step-why = El grado inferior está aquí a un tono: levanta { $note } con más suavidad.
upper-grace-step-why = { $coming ->
    [repeated] Una nota repetida se separa de la anterior
    [below] La melodía viene de abajo, así que la nota se toca desde el otro lado
   *[above] La nota se apoya desde arriba
}: el grado superior cae sobre ella { $where }.
upper-grace-semitone-why = La melodía baja aquí un tono: el semitono intermedio llena el paso al bajar.
double-grace-lower-why = Dos grados de la escala suben hacia la nota { $where }.
double-grace-upper-lower-why = Grado superior, semitono inferior: { $note } queda rodeada por ambos lados.
