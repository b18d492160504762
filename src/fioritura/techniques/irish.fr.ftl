irish-cut = cut
    .label = cut
    .text = Une note plus haute effleurée avant la note, si brève qu’elle n’a presque pas de hauteur : elle sépare et accentue, comme le fait ailleurs la langue.
    .how = À la flûte et au whistle, lever un doigt de la main du haut, le troisième pour les notes de la main du bas, le premier pour la et si, et le reposer aussitôt ; la langue ne s’en mêle pas.
    .when = Sur une note répétée, surtout si elle descend ensuite d’un degré, et sur les notes des temps que l’on atteint d’en bas.
    .fault = Le cut sonne comme une note de la mélodie.
    .cure = Dire la note deux fois avec le cut entre les deux et compter un, non deux : le doigt ne fait que rebondir.

irish-strike = strike
    .label = strike
    .text = Une note plus basse touchée avant la note : un doigt frappe son trou et repart.
    .how = Frapper du doigt tendu le premier trou ouvert au-dessous et le laisser rebondir ; l’air continue.
    .when = Pour séparer une note de la même note, ou pour se poser après un saut descendant.
    .fault = Le doigt reste sur le trou et la note basse parle.
    .cure = Taper la table du doigt : il doit être parti avant qu’on l’entende.

irish-short-roll = roll court
    .label = roll court
    .text = Une noire qui commence par un cut et qu’un strike sépare en deux : note coupée, note frappée.
    .how = Le cut tout au début, le strike au milieu, un seul souffle et pas de langue entre les deux.
    .when = Sur les noires des jigs et des reels, quand un doigt est libre au-dessous.
    .fault = Cut et strike se précipitent au début.
    .cure = Jouer deux croches sur la même note, puis les séparer des doigts au lieu de la langue.

irish-long-roll = roll long
    .label = roll
    .text = Une noire pointée séparée en trois : la note, la note coupée, la note frappée. Son signe est ~.
    .how = Tenir la note une croche, cut, strike, le tout dans la pulsation égale de la jig ; deux doigts seulement bougent.
    .when = Sur les noires pointées, et partout où la mélodie tourne trois croches autour d’une note.
    .fault = Les trois notes sont inégales : le roll se tasse à la fin.
    .cure = Articuler d’abord trois croches égales, puis laisser la langue et séparer par le cut et le strike aux mêmes endroits.

irish-cran = cran
    .label = cran
    .text = Un roll sur le ré grave, où il ne reste pas de doigt pour frapper : des cuts de deux doigts différents séparent la note.
    .how = Couper du premier puis du deuxième doigt de la main du bas ; jamais deux fois du même.
    .when = Sur les longs ré graves, et sur le ré au-dessus, dont le doigté est presque le même.
    .fault = L’octave casse sous les cuts.
    .cure = Souffler doucement dans un ré grave plein ; couper lentement, un doigt après l’autre, et accélérer quand les deux cuts parlent.

irish-triplet = triolet
    .label = triolet
    .text = Trois notes rapides et égales dans le temps d’une noire : on comble une tierce, ou l’on tourne autour d’une note.
    .how = Les lier, ou n’articuler que la première ; le temps tombe sur la première.
    .when = Dans les reels et les hornpipes, entre notes à distance de tierce et avant une quarte ; presque jamais dans les jigs.
    .fault = On entend deux doubles croches et une croche.
    .cure = Frapper le temps et dire « tri-o-let » ; puis le jouer sur une seule note.

irish-treble = treble
    .label = treble
    .text = Une noire dite trois fois en triolet égal.
    .how = Articuler « te-ke-te », ou n’articuler que la première et séparer les autres par un cut et un strike.
    .when = Sur une noire sur le temps dans les reels et les hornpipes, pour l’élan ; une ou deux fois par air.
    .fault = Il pèse plus que les notes alentour.
    .cure = Le jouer plus doux que ce qui précède ; seule la première peut s’entendre.

irish-divided-note = note divisée
    .label = divisée
    .text = Une noire devient deux croches : elle-même, et une note de l’accord ou une voisine qui mène plus loin.
    .how = La première reste ce qu’elle était ; la seconde est légère.
    .when = Quand une phrase revient et que ses notes tenues peuvent bouger.
    .fault = La note nouvelle est plus forte que la mélodie.
    .cure = Jouer la noire deux fois, puis ne changer que les doigts de la seconde.

irish-held-note = note tenue
    .label = tenue
    .text = Deux croches deviennent une noire : la note de passage disparaît et la mélodie respire.
    .how = Tenir la première jusqu’au bout, ou la quitter tôt et respirer.
    .when = Quand une phrase revient, dans les croches continues ; là où les flûtistes respirent.
    .fault = Le temps traîne parce que rien ne bouge.
    .cure = Battre du pied la croche que l’on omet.

irish-cut-why = { $coming ->
    [repeated] Une note répétée est séparée de la précédente par un cut { $where }
    [below] La mélodie monte à la note { $where } : un cut lui donne du poids
    [above] La mélodie descend à la note { $where } : un cut la marque
   *[first] Un cut marque la première note
}.
irish-strike-why = { $coming ->
    [repeated] La note est redite : un strike d’en bas sépare les deux.
   *[above] La mélodie saute vers le bas : un strike la fait se poser.
}
irish-short-roll-why = La note dure autant que deux notes courantes, un doigt est libre au-dessous : cut et strike la séparent en deux.
irish-long-roll-why = { $form ->
    [held] La note dure autant que trois notes courantes : un roll y maintient la pulsation.
    [said-again] La mélodie dit la note le temps de trois notes courantes : un roll les lie en une.
   *[circled] La mélodie tourne autour de la note en trois notes courantes : le roll fait de même avec deux doigts.
}
irish-cran-why = { $form ->
    [held] Une note longue, et pas de doigt pour frapper : des cuts seuls la séparent.
    [said-again] La mélodie dit la note le temps de trois notes courantes, et il ne reste pas de doigt pour frapper : un cran les lie en une.
   *[circled] La mélodie tourne autour de la note en trois notes courantes, et il ne reste pas de doigt pour frapper : un cran reste sur elle.
}
irish-triplet-why = { $form ->
    [third] Les deux notes sont à une tierce : celle du milieu en fait un triolet.
    [fourth] Une note longue comme deux notes courantes avant une quarte : les deux notes intermédiaires avancent en triolet.
   *[neighbour] Une note longue comme deux notes courantes avant un degré ou une tierce descendante : elle tourne une fois, en triolet.
}
irish-treble-why = Une note sur le temps, longue comme deux notes courantes : dite trois fois, elle pousse en avant.
irish-divided-note-why = { $side ->
    [above] Une note longue comme deux notes courantes peut bouger : la note au-dessus mène plus loin.
   *[below] Une note longue comme deux notes courantes peut bouger : la note au-dessous mène plus loin.
}
irish-held-note-why = { $heard ->
    [before] La phrase a été entendue : la note de passage peut partir, et la ligne respire.
   *[first] La note intermédiaire ne fait que passer : sans elle, la ligne respire.
}
