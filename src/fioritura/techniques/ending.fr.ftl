held-colour = note de couleur finale
    .label = couleur
    .text = La dernière note passe à la sixte ou à la neuvième de son accord et y reste.
    .how = Jouer la dernière note pendant un temps, puis passer à la couleur sans nouveau coup de langue et la tenir également jusqu’au bout.
    .when = À la fin d’un morceau de jazz, sur un dernier accord tenu ; pas là où tous les autres tiennent la note simple avec vous.
    .fault = La couleur est plus forte que la note dont elle vient et sonne comme une erreur.
    .cure = Tenir la dernière note, chanter la couleur, puis la jouer à la même intensité.

held-colour-why = La mélodie finit sur une note tenue de l’accord : la { $colour ->
    [ninth] neuvième
   *[sixth] sixte
} donne au dernier accord sa couleur.

closing-phrase = phrase de conclusion
    .label = conclusion
    .text = Après la dernière note, quelques notes rapides de la gamme pentatonique mènent à une note tenue.
    .how = Laisser parler la dernière note, jouer les notes rapides légèrement et en mesure, et poser la note tenue avec l’orchestre.
    .when = Une seule fois, tout à la fin, quand la dernière note est longue.
    .fault = Elle se précipite, et la note tenue arrive avant le temps.
    .cure = Compter à voix haute les temps de la dernière note, puis jouer la phrase dans ce compte.

closing-phrase-why = La mélodie finit ici et il reste du temps : une courte phrase { $rises ->
    [yes] monte
   *[no] descend
} vers une note tenue.
