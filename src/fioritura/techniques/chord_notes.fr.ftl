added-chord-note = note d’accord ajoutée
    .label = note d’accord
    .text = Une note de l’accord en valeur réelle : dans un saut de la mélodie, ou entre une note et sa répétition.
    .how = Entendre l’accord avant le saut ; chacune des notes a son plein son.
    .when = Dans un saut d’une quinte ou plus qui contient une note de l’accord, ou là où une note est répétée.
    .fault = La note ajoutée est serrée, parce que l’oreille est déjà à la note suivante.
    .cure = Jouer l’accord en montant et en descendant depuis sa fondamentale, puis la note de la mélodie et celle de l’accord seules, lentement.

arpeggiated-note = accord brisé sur une note longue
    .label = arpège
    .text = On quitte une note longue par les notes de son accord, ou l’accord est brisé en montant dans le silence qui la précède.
    .how = Laisser d’abord sonner la note longue ; puis un seul mouvement d’air régulier pour tout l’accord.
    .when = Sur une blanche ou plus, et avant une note de l’accord sur le temps qui suit un silence.
    .fault = L’arpège part trop tôt et la note de la mélodie se perd.
    .cure = Compter à voix haute les temps de la note longue et partir sur le temps compté.

guide-tone-line = ligne de notes guides
    .label = notes guides
    .text = Pendant que la mélodie attend, les tierces et les septièmes des accords avancent par degré au changement d’accord.
    .how = En pleine durée, calme et sans accent, comme une voix intérieure ; le degré vient avec le changement d’accord.
    .when = Sous une note longue ou un silence de trois temps ou plus pendant lequel l’accord change.
    .fault = Le degré vient trop tôt ou trop tard, et l’on n’entend pas le changement.
    .cure = Jouer la tierce et la septième de chaque accord en blanches d’un bout à l’autre du morceau, avec la basse.

added-chord-note-why = { $kind ->
    [leap] La mélodie saute { $direction ->
        [up] vers le haut
       *[down] vers le bas
    } : une note de l’accord se place entre les deux.
   *[repeated] La note est répétée : une note de l’accord { $direction ->
        [up] au-dessus
       *[down] au-dessous
    } d’elle se place entre les deux.
}
arpeggiated-note-why = { $way ->
    [into] La mélodie se tait avant cette note : { $count } notes de son accord montent vers elle.
   *[from] La note est longue : { $count } notes de son accord mènent plus loin.
}
guide-tone-line-why = La mélodie attend pendant que l’accord change{ $changes ->
    [one] {""}
   *[other] { " " }{ $changes } fois
} : { $count ->
    [one] une tierce ou une septième mène plus loin par degré
   *[other] { $count } notes, chacune tierce ou septième de son accord, mènent plus loin par degrés
}.
