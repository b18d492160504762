scoop-why = Es { $role ->
    [peak] una nota más alta que sus vecinas
    [last] una última nota más alta que la anterior
    [start] el comienzo de una frase
   *[long] una nota larga
}: se puede llegar a ella resbalando desde abajo.
fall-why = La frase suelta esta nota: puede caer hacia abajo.
doit-why = La frase suelta esta nota{ $rises ->
    [yes] {" "}tras una subida
   *[no] {""}
}: puede dispararse hacia arriba.
ghost-note-why = Una nota breve fuera del tiempo, de camino a la siguiente: se puede tragar a medias.
vibrato-why = Una nota lo bastante larga para empezar recta y animarse hacia el final.
