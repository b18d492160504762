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
    .when = Vers une note sur le temps, quand la précédente a du temps à céder.
    .fault = La première des deux est accentuée.
    .cure = La commencer plus doucement que la note précédente de la mélodie.

surround = encerclement
    .label = encerclement
    .text = Les notes des deux côtés de la note suivante, l’une après l’autre, puis la note elle-même.
    .how = Penser trois notes comme un seul geste dont le but est la dernière.
    .when = Vers une note sur le temps, surtout une note de l’accord où l’accord change.
    .fault = La ligne s’arrête sur l’arrivée.
    .cure = Continuer au-delà : répéter en boucle le geste et les deux notes qui suivent.

enclosure = encerclement élargi
    .label = encerclement élargi
    .text = Trois ou quatre notes en valeur réelle encerclent une note structurelle par les deux côtés.
    .how = Garder les notes égales et légères ; c’est l’arrivée qui porte le poids.
    .when = Vers une note de l’accord sur le premier temps ou à la demi-mesure, ou vers la tierce ou la septième d’un nouvel accord, où la note précédente a du temps.
    .fault = La direction se perd : chaque note est jouée pour elle-même.
    .cure = Chanter l’arrivée, jouer lentement les notes qui l’entourent, la chanter de nouveau ; puis supprimer le chant.

approach-note-why = La mélodie saute sur un temps : le demi-ton sous la note d’arrivée l’annonce.
approach-chromatic-why = Deux demi-tons { $direction ->
    [up] montent par en dessous
   *[down] glissent par au-dessus
} vers une note sur le temps.
surround-why = La note d’arrivée est encerclée : { $first ->
    [above] degré supérieur, demi-ton inférieur
   *[below] demi-ton inférieur, degré supérieur
}, puis la note.
enclosure-why = La note { $where } est encerclée par les deux côtés : { $order ->
    [above] deux demi-tons par le haut, puis le demi-ton inférieur
    [above-four] deux demi-tons vers le bas, puis deux demi-tons vers le haut
   *[below] deux demi-tons par le bas, puis le degré supérieur
}.
