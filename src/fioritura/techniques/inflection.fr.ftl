scoop-why = C’est { $role ->
    [peak] une note plus haute que ses voisines
    [last] une dernière note plus haute que la précédente
    [start] le début d’une phrase
   *[long] une longue note
} : on peut y glisser par en dessous.
fall-why = La phrase lâche cette note : elle peut tomber vers le bas.
doit-why = La phrase lâche cette note{ $rises ->
    [yes] {" "}après une montée
   *[no] {""}
} : elle peut s’élancer vers le haut.
ghost-note-why = Une note brève à contretemps, en route vers la suivante : on peut l’avaler à moitié.
vibrato-why = Une note assez longue pour commencer droite et se réchauffer vers la fin.
