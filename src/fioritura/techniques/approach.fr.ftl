approach-note = note d’approche chromatique
    .label = approche
    .text = Une note réelle un demi-ton sous la note suivante de la mélodie, prise sur la fin de la précédente.
    .how = Lier l’approche à la note d’arrivée et donner le poids à celle-ci.
    .when = Où la mélodie saute sur un temps.
    .fault = Le saut vers la note d’approche est manqué.
    .cure = Travailler seul le saut vers la note d’approche, puis ajouter le demi-ton.

approach-chromatic = double approche chromatique
    .label = approche chrom.
    .text = Deux demi-tons de suite qui glissent vers la note suivante de la mélodie.
    .how = Régulier, legato, en croissant.
    .when = Vers une note sur le temps, quand la précédente a un temps à céder.
    .fault = La première des deux est accentuée.
    .cure = La commencer plus doucement que la note précédente de la mélodie.

surround = encerclement
    .label = encerclement
    .text = Les notes des deux côtés de la note suivante, l’une après l’autre, puis la note elle-même.
    .how = Penser trois notes comme un seul geste dont le but est la dernière.
    .when = Vers une note d’accord forte, surtout où l’accord change.
    .fault = La ligne s’arrête sur l’arrivée.
    .cure = Continuer au-delà : répéter en boucle le geste et les deux notes qui suivent.

approach-note-why = La mélodie saute sur un temps : le demi-ton sous la note d’arrivée l’annonce.
approach-chromatic-why = Deux demi-tons { $direction ->
    [up] montent par en dessous
   *[down] glissent par au-dessus
} vers une note sur le temps.
surround-why = La note d’arrivée est encerclée : { $first ->
    [above] degré supérieur, demi-ton inférieur
   *[below] demi-ton inférieur, degré supérieur
}, puis la note.
