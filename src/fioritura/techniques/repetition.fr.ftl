repeated-notes = notes répétées
    .label = répétition
    .text = Une noire devient deux croches, une blanche une noire pointée et une croche : la même hauteur, dite encore une fois.
    .how = Articuler chaque note légèrement, « da-da », l’air continu.
    .when = Sur une note d’une noire ou plus, de préférence plus longue que ses voisines, où la ligne s’arrêterait sinon.
    .fault = L’air s’arrête à chaque coup de langue.
    .cure = Jouer la note longue, puis la toucher de la langue sans changer l’air.

repeated-notes-lively = notes répétées en rythme
    .label = rythme
    .text = Une longue note devient un petit rythme sur une seule hauteur, souvent syncopé.
    .how = Lui donner une forme : une des notes est la plus forte, les autres y mènent ou en retombent.
    .when = Sur une note tenue pendant que l’orchestre continue, ou pour réveiller une fin trop simple.
    .fault = Toutes les notes sont également fortes.
    .cure = Dire le rythme avec une syllabe accentuée, puis articuler exactement cela.

repeated-notes-why = { $end ->
    [last] La mélodie finit sur { $pitch }
   *[moves] La mélodie reste sur { $pitch } avant d’aller à { $next }
} : dite deux fois, la note garde le mouvement.
repeated-notes-lively-why = La note devient un rythme de { $count ->
    [2] deux
    [3] trois
    [4] quatre
   *[other] { $count }
} notes sur une seule hauteur, pendant que la mélodie attend.
