lower-grace-semitone = appoggiature brève un demi-ton au-dessous
    .label = demi-ton dessous
    .text = Une note brève un demi-ton sous la note de la mélodie, jouée juste avant elle et liée vers le haut.
    .how = Articuler légèrement l’appoggiature et lier aussitôt à la note principale, qui garde sa place sur le temps.
    .when = Sur les notes qui méritent du poids : notes longues, sommets, début de phrase, notes sur le temps.
    .fault = L’appoggiature s’allonge et la note principale arrive en retard.
    .cure = Jouer la note principale seule avec le métronome, puis laisser entrer l’appoggiature sans la déplacer.

lower-grace-step = appoggiature brève un degré au-dessous
    .label = appogg. dessous
    .text = Une note brève un degré de la gamme sous la note de la mélodie : plus douce de couleur que le demi-ton.
    .how = Penser les deux doigtés avant de commencer ; un ou deux doigts seulement bougent pendant la liaison.
    .when = Où le demi-ton serait trop tranchant : dans les ballades, et sur les notes dont le degré inférieur est à un ton.
    .fault = Les deux notes reçoivent le même poids.
    .cure = Souffler dans la note principale ; dire « ta-DAA », jamais « TA-ta ».

upper-grace-step = appoggiature brève un degré au-dessus
    .label = appogg. dessus
    .text = Une note brève un degré de la gamme au-dessus de la note de la mélodie, qui tombe sur elle.
    .how = Penser à une chiquenaude du doigt : la note supérieure n’est qu’un déclic avant la note principale.
    .when = Sur une note répétée, après un degré montant, et sur les temps forts des airs populaires.
    .fault = La note supérieure sonne comme une fausse note de la mélodie.
    .cure = La faire plus brève et plus douce ; l’oreille doit remarquer l’attaque, non la hauteur.

upper-grace-semitone = appoggiature brève un demi-ton au-dessus, dans un ton descendant
    .label = demi-ton dessus
    .text = Où la mélodie descend d’un ton, le demi-ton intermédiaire est effleuré au passage.
    .how = Quitter la première note un instant plus tôt et glisser par la note du milieu avec le doigt, non avec la mâchoire.
    .when = Seulement où la mélodie descend vraiment d’un ton vers la note.
    .fault = On l’emploie sur des demi-tons descendants, où il n’y a rien entre les deux.
    .cure = Nommer d’abord les deux notes de la mélodie ; si elles sont voisines au piano, choisir une autre appoggiature.

double-grace-lower = double appoggiature par en dessous
    .label = double appogg.
    .text = Deux degrés rapides qui montent vers la note de la mélodie.
    .how = Un seul coup de langue sur la première, puis lier les trois ; les doigts près des clés.
    .when = Sur une note forte et longue, de préférence quand la mélodie vient d’en bas ou d’un silence.
    .fault = Les deux notes sont inégales.
    .cure = Les travailler en triolet régulier avec la note principale, puis resserrer le triolet.

double-grace-upper-lower = double appoggiature autour de la note (dessus, dessous)
    .label = appogg. autour
    .text = Le degré supérieur et le demi-ton inférieur, puis la note entre les deux.
    .how = Lier les trois ; diriger l’air vers la note principale dès le début.
    .when = Sur une note longue ou un sommet sur le temps, où l’oreille a le temps d’entendre la note arriver.
    .fault = La note principale est écourtée.
    .cure = Tenir la note principale toute sa valeur ; c’est la note précédente qui cède le temps.

lower-grace-semitone-why = Le demi-ton inférieur monte vers { $note } et la fait parler.
lower-grace-step-why = Le degré inférieur est ici à un ton : il soulève { $note } plus doucement.
upper-grace-step-why = { $coming ->
    [repeated] Une note répétée est séparée de la précédente
    [below] La mélodie vient d’en bas, la note est donc touchée de l’autre côté
   *[above] La note est appuyée par en haut
} : le degré supérieur tombe sur elle { $where }.
upper-grace-semitone-why = La mélodie descend ici d’un ton : le demi-ton intermédiaire remplit le pas en descendant.
double-grace-lower-why = Deux degrés de la gamme montent vers la note { $where }.
double-grace-upper-lower-why = Degré supérieur, demi-ton inférieur : { $note } est encerclée des deux côtés.
