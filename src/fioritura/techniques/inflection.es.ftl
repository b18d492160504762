scoop = scoop
    .label = scoop
    .text = La nota empieza un poco baja y se sube hasta su altura.
    .how = Cañas: aflojar la mandíbula en el ataque y afirmarla después; flauta: girar hacia dentro y volver; metales: empezar por debajo de la nota. No se mueve ningún dedo.
    .when = En una nota con tiempo para ello: notas largas, cimas, comienzos de frase; rara vez dos veces en una frase.
    .fault = Todas las notas largas se toman desde abajo.
    .cure = Permitirse uno cada cuatro compases y elegirlo de antemano.

fall = fall
    .label = fall
    .text = Al final la nota cae hacia abajo, sin meta.
    .how = Soltar juntos el aire y los dedos, apagándose al caer.
    .when = Antes de un silencio o en una nota larga al final de una frase.
    .fault = Suena fuerte hasta el final y aterriza en una nota.
    .cure = Apagarse del todo antes de que se mueva el último dedo.

doit = doit
    .label = doit
    .text = Al final la nota se dispara hacia arriba.
    .how = Tensar la embocadura y lanzar los dedos hacia arriba, en un solo gesto rápido.
    .when = Antes de un silencio o en una nota larga al final de una frase, mejor tras una subida.
    .fault = Dura tanto como la nota.
    .cure = Mantener la nota todo su valor y usar solo el último instante.

ghost-note = ghost note
    .label = ghost
    .text = Una nota medio tragada: más sentida que oída.
    .how = La lengua casi detiene la nota (cañas: toca la caña) y el aire sigue.
    .when = En una nota breve fuera del tiempo que lleva directamente a la siguiente.
    .fault = La nota desaparece del todo o su altura es falsa.
    .cure = Tocarla plena y luego acercar la lengua poco a poco.

vibrato = vibrato hacia el final
    .label = vib.
    .text = La nota larga empieza recta y comienza a oscilar hacia el final.
    .how = Saxofón y metales: un pequeño movimiento de la mandíbula, unas cinco veces por segundo; flauta y oboe: el aire. Empezar pasada la mitad de la nota.
    .when = En notas de un segundo aproximadamente o más, sobre todo en los finales.
    .fault = Empieza con el ataque y no varía nunca.
    .cure = Contar la nota: recta la primera mitad, con vibrato la segunda.

scoop-why = Es { $role ->
    [peak] una nota más alta que sus vecinas
    [last] una última nota más alta que la anterior
    [start] el comienzo de una frase
    [leap] una nota alcanzada por un salto hacia arriba
    [long] una nota larga
   *[time] una nota con tiempo para ello
}: se puede llegar a ella resbalando desde abajo.
fall-why = { $end ->
    [rest] A esta nota le sigue un silencio
    [last] Es la última nota
   *[phrase] La frase termina con esta nota
}: puede caer hacia abajo.
doit-why = { $end ->
    [rest] A esta nota le sigue un silencio
    [last] Es la última nota
   *[phrase] La frase termina con esta nota
}{ $rises ->
    [yes] , y la melodía ha subido hasta ella
   *[no] {""}
}: puede dispararse hacia arriba.
ghost-note-why = Un { $pitch } breve fuera del tiempo, de camino a { $next }: se puede tragar a medias.
vibrato-why = { $end ->
    [last] La melodía termina en { $pitch }
    [phrase] La frase termina en { $pitch }
   *[long] La melodía se queda en { $pitch } durante { $count ->
        [one] { $count } negra
       *[other] { $count } negras
    }
}: la nota puede empezar recta y animarse hacia el final.
