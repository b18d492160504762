run-chromatic = trait chromatique dans une tierce ou une quarte
    .label = trait chrom.
    .text = Tous les demi-tons entre deux notes de la mélodie à distance de tierce ou de quarte, rapides et égaux.
    .how = Partir plutôt tard que tôt ; la dernière note de la mélodie est le but et reste sur son temps.
    .when = Où le saut ne dépasse pas la quarte ; les sauts plus grands ont trop de demi-tons.
    .fault = Le trait part trop tôt et l’arrivée attend.
    .cure = Jouer à reculons : l’arrivée, puis les deux dernières notes et l’arrivée, puis trois.

run-scale = trait en gamme
    .label = gamme
    .text = Les notes de la gamme de l’accord entre deux notes de la mélodie à distance de quinte ou plus.
    .how = Un souffle, une liaison, les doigts bas ; grandir vers l’arrivée.
    .when = Vers un point culminant ou à partir de lui, où la première note est longue.
    .fault = Deux ou trois notes du milieu se brouillent.
    .cure = Le jouer en rythmes pointés dans les deux sens, puis égal.

run-pentatonic = trait pentatonique
    .label = trait pent.
    .text = Un trait par cinq notes à l’octave : moins de notes que la gamme pour le même chemin.
    .how = Comme un trait en gamme, mais avec de l’air entre les notes ; il peut swinguer.
    .when = Où la gamme entière serait trop rapide pour le tempo, et dans les couleurs du blues et du folk.
    .fault = La tierce qu’il contient est inégale.
    .cure = Répéter en boucle les trois notes autour de la tierce.

run-arpeggio = trait en arpège
    .label = arpège
    .text = Les notes de l’accord comme des pas rapides d’une note de la mélodie à la suivante.
    .how = Entendre d’abord l’accord, puis laisser les doigts l’épeler.
    .when = Où la mélodie fait un grand saut dans un seul accord.
    .fault = Le passage de registre craque.
    .cure = Travailler les deux notes du passage en liaison lente, puis l’arpège entier.

run-chromatic-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} d’une { $size ->
    [fourth] quarte
   *[third] tierce
} : assez peu de demi-tons pour les jouer tous.
run-scale-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} d’un grand saut : la gamme de l’accord le remplit, et l’arrivée est à l’heure.
run-pentatonic-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} d’un grand saut : cinq notes par octave le remplissent avec légèreté.
run-arpeggio-why = La mélodie { $direction ->
    [up] monte
   *[down] descend
} d’un grand saut : les notes de l’accord sont les barreaux de l’échelle.
