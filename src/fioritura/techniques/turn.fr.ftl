turn-why = Une note qui a le temps d’un gruppetto ({ $start ->
    [at-once] tout de suite
   *[after] après qu’on a entendu la note
}) : degré supérieur et degré inférieur autour d’elle.
turn-why-raised = Une note qui a le temps d’un gruppetto ({ $start ->
    [at-once] tout de suite
   *[after] après qu’on a entendu la note
}), dont la note inférieure est haussée en sensible.
inverted-turn-why = Une note qui a le temps d’un gruppetto qui plonge d’abord : degré inférieur, puis supérieur.
mordent-why = Un bref battement vers le degré inférieur aiguise l’attaque.
upper-mordent-why = Un bref battement vers le degré supérieur éclaire l’attaque.
shake-why = Une longue note qui supporte l’excitation : alternance rapide avec le degré supérieur, puis elle se pose.
