approach-note-why = La mélodie saute sur un temps : le demi-ton sous la note d’arrivée l’annonce.
approach-chromatic-why = Deux demi-tons { $direction ->
    [up] montent par en dessous
   *[down] glissent par au-dessus
} vers une note sur le temps.
surround-why = La note d’arrivée est encerclée : { $first ->
    [above] degré supérieur, demi-ton inférieur
   *[below] demi-ton inférieur, degré supérieur
}, puis la note.
