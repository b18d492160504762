turn = gruppetto
    .label = gruppetto
    .text = Note principale, degré supérieur, note principale, degré inférieur, note principale, dans la gamme de l’accord.
    .how = Lier tout le gruppetto ; le garder égal et laisser chanter la dernière note.
    .when = Sur une note d’un temps ou plus, de préférence en route vers la suivante.
    .fault = Le gruppetto est serré au début et la dernière note est en retard.
    .cure = Le jouer en notes lentes et égales avec le métronome, puis réduire les valeurs de moitié.

inverted-turn = gruppetto renversé
    .label = grupp. renv.
    .text = Note principale, degré inférieur, note principale, degré supérieur, note principale.
    .how = Comme le gruppetto, mais il s’ouvre vers le haut : grandir un peu vers la note supérieure.
    .when = Avant une note de la mélodie plus haute.
    .fault = On le confond avec le gruppetto.
    .cure = Dire « d’abord en bas » et regarder où va la mélodie.

mordent = mordant
    .label = mordant
    .text = Note principale, bref battement vers le degré inférieur, et retour.
    .how = Une chiquenaude d’un seul doigt ; la langue ne joue que la première note.
    .when = Sur une note forte, atteinte par en haut ou répétée.
    .fault = Trois notes égales : un triolet au lieu d’un battement.
    .cure = Jouer la longue note, ajouter le battement tout au début, aussi tard et aussi vite que possible.

upper-mordent = mordant supérieur
    .label = mord. sup.
    .text = Note principale, bref battement vers le degré supérieur, et retour.
    .how = Lever le doigt d’une chiquenaude, non l’abaisser : léger et près de la clé.
    .when = Sur une note forte, atteinte par en bas ou répétée.
    .fault = La note supérieure est accentuée.
    .cure = Accentuer la note principale et laisser le battement voyager sur le même air.

shake = trille
    .label = trille
    .text = Alternance rapide d’une longue note avec le degré supérieur, qui se pose sur la note principale.
    .how = Commencer plus lentement que possible, accélérer, et s’arrêter à temps pour laisser sonner la note.
    .when = Sur une longue note aiguë au point culminant ; une fois par chorus suffit largement.
    .fault = Il dure jusqu’à la fin de la note.
    .cure = Décider du temps sur lequel il se pose et travailler l’arrivée à cet endroit.

turn-why = Une note qui a le temps d’un gruppetto ({ $start ->
    [at-once] tout de suite
   *[after] après qu’on a entendu la note
}) : degré supérieur et degré inférieur autour d’elle.
turn-why-raised = Une note qui a le temps d’un gruppetto ({ $start ->
    [at-once] tout de suite
   *[after] après qu’on a entendu la note
}), dont la note inférieure est haussée en sensible.
inverted-turn-why = Une note qui a le temps d’un gruppetto qui plonge d’abord : degré inférieur, puis supérieur.
mordent-why = Un bref battement vers le degré inférieur aiguise l’attaque.
upper-mordent-why = Un bref battement vers le degré supérieur éclaire l’attaque.
shake-why = Une longue note qui supporte l’excitation : alternance rapide avec le degré supérieur, puis elle se pose.
