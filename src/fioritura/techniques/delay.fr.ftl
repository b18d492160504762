delay = retard avec approche resserrée
    .label = en retard
    .text = Commencer tard, puis jouer les notes qui précèdent une arrivée en valeurs deux fois plus brèves : l’arrivée garde son temps.
    .how = Compter le silence, puis penser à la note d’arrivée ; les notes brèves y mènent.
    .when = Sur une à quatre notes qui mènent à un temps fort, dans un tempo qui laisse la place aux demi-valeurs.
    .fault = L’arrivée est en retard elle aussi.
    .cure = Frapper le temps de l’arrivée en chantant les notes brèves ; puis jouer avec une batterie.

suspension = retard descendant
    .label = retard
    .text = La note précédente est tenue par-dessus le temps, puis se résout d’un degré vers le bas sur la note de la mélodie.
    .how = Lier ; s’appuyer de l’air sur la note tenue et se détendre dans la résolution.
    .when = Où la mélodie descend d’un degré sur une longue note d’accord sur le temps.
    .fault = La résolution est articulée et forte.
    .cure = La jouer comme un soupir : forte sur le temps, douce ensuite.

retardation = retard ascendant
    .label = retard asc.
    .text = La note précédente est tenue par-dessus le temps, puis se résout d’un degré vers le haut sur la note de la mélodie.
    .how = Lier, avec un léger gonflement vers la résolution.
    .when = Où la mélodie monte d’un degré sur une longue note d’accord sur le temps, surtout à la fin.
    .fault = Elle se presse.
    .cure = Subdiviser le temps à voix haute et résoudre exactement sur la subdivision.

delay-why = { $count ->
    [one] La note commence plus tard et prend
   *[other] Ces { $count } notes commencent plus tard et prennent
} moitié moins de temps, pour que l’arrivée sur le prochain temps fort soit à sa place.
suspension-why = La mélodie descend d’un degré sur une note de l’accord : la note précédente, étrangère à l’accord, est tenue et descend en retard.
retardation-why = La mélodie monte d’un degré sur une note de l’accord : la note précédente, étrangère à l’accord, est tenue et monte en retard.
