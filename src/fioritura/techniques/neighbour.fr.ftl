neighbour-upper = broderie supérieure
    .label = brod. sup.
    .text = Un degré au-dessus de la note de la mélodie, et retour.
    .how = La broderie est plus légère que la note à laquelle elle appartient.
    .when = Sur une note répétée ou une longue note qui doit bouger un peu.
    .fault = Le retour est en retard.
    .cure = Faire d’abord les trois doigtés en silence et en mesure.

neighbour-lower = broderie inférieure
    .label = brod. inf.
    .text = Un degré (ou un demi-ton) au-dessous de la note de la mélodie, et retour.
    .how = Lier la descente et la montée d’un seul geste.
    .when = Sur une note répétée ou longue ; le demi-ton est plus fort, le degré plus doux.
    .fault = La note inférieure est trop basse.
    .cure = Garder l’air rapide en descendant.

double-neighbour = double broderie
    .label = double brod.
    .text = Les deux broderies d’une note, l’une après l’autre, avant son retour.
    .how = Quatre notes égales, la première et la dernière identiques.
    .when = Entre deux notes égales, ou dans une longue.
    .fault = Les deux notes du milieu se brouillent.
    .cure = Travailler lentement avec un accent sur la deuxième note, puis sur la troisième.

escape-tone = échappée
    .label = échappée
    .text = Un degré contre le sens de la mélodie, puis un saut vers la note suivante.
    .how = La lancer comme en passant : brève et légère.
    .when = Où la mélodie avance d’un degré ou d’une tierce et que la première note a le temps.
    .fault = Elle sonne comme une fausse note.
    .cure = Donner toute leur longueur et tout leur poids aux notes de la mélodie des deux côtés.

appoggiatura = appoggiature longue
    .label = appogg.
    .text = La mélodie saute à la note voisine de la note d’accord, s’y appuie et se résout d’un degré.
    .how = Tout le poids sur la note d’appui, aucun sur la résolution, sans coup de langue entre les deux.
    .when = Sur une longue note d’accord sur le temps, atteinte par saut.
    .fault = La résolution reçoit un accent.
    .cure = La chanter dans un soupir : « AH-ah ».

neighbour-why-repeated = La mélodie répète une note : la broderie { $which ->
    [upper] supérieure
    [lower] inférieure
   *[chromatic] inférieure chromatique
} intercalée lui donne d’où revenir.
neighbour-why-long = La note est assez longue pour un pas vers sa broderie { $which ->
    [upper] supérieure
    [lower] inférieure
   *[chromatic] inférieure chromatique
} et un retour.
double-neighbour-why-repeated = La mélodie répète une note : ses deux broderies ({ $first ->
    [above] en haut, puis en bas
   *[below] en bas, puis en haut
}) dansent autour d’elle.
double-neighbour-why-long = Une longue note tourne par ses deux broderies ({ $first ->
    [above] en haut, puis en bas
   *[below] en bas, puis en haut
}) et revient.
escape-tone-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} : un pas en sens contraire, puis le saut, lui font reprendre haleine.
appoggiatura-why = Une note { $foreign ->
    [yes] de l’accord{" "}
   *[no] {""}
}sur le temps : un saut au degré { $side ->
    [above] supérieur
   *[below] inférieur
}{ $foreign ->
    [yes] , étranger à l’accord,
   *[no] {""}
} s’appuie sur elle et se résout.
