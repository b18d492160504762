lower-grace-semitone-why = Le demi-ton inférieur monte vers { $note } et la fait parler.
lower-grace-step-why = Le degré inférieur est ici à un ton : il soulève { $note } plus doucement.
upper-grace-step-why = { $coming ->
    [repeated] Une note répétée est séparée de la précédente
    [below] La mélodie vient d’en bas, la note est donc touchée de l’autre côté
   *[above] La note est appuyée par en haut
} : le degré supérieur tombe sur elle { $where }.
upper-grace-semitone-why = La mélodie descend ici d’un ton : le demi-ton intermédiaire remplit le pas en descendant.
double-grace-lower-why = Deux degrés de la gamme montent vers la note { $where }.
double-grace-upper-lower-why = Degré supérieur, demi-ton inférieur : { $note } est encerclée des deux côtés.
