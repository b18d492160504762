neighbour-why-repeated = La mélodie répète une note : la broderie { $which ->
    [upper] supérieure
    [lower] inférieure
   *[chromatic] inférieure chromatique
} intercalée lui donne d’où revenir.
neighbour-why-long = La note est assez longue pour un pas vers sa broderie { $which ->
    [upper] supérieure
    [lower] inférieure
   *[chromatic] inférieure chromatique
} et un retour.
double-neighbour-why-repeated = La mélodie répète une note : ses deux broderies ({ $first ->
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
} : un pas en sens contraire, puis le saut, lui font reprendre haleine.
appoggiatura-why = Une note { $foreign ->
    [yes] de l’accord{" "}
   *[no] {""}
}sur le temps : un saut au degré { $side ->
    [above] supérieur
   *[below] inférieur
}{ $foreign ->
    [yes] , étranger à l’accord,
   *[no] {""}
} s’appuie sur elle et se résout.
