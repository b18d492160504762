passing-note = note de passage
    .label = passage
    .text = La note de la gamme dans un saut de tierce, en valeur réelle : une croche ou une double croche hors du temps.
    .how = La faire plus légère que les notes des deux côtés et lier à travers elle.
    .when = Où la mélodie saute d’une tierce et que la première note est assez longue pour céder du temps.
    .fault = La note de passage est plus forte que la mélodie.
    .cure = Jouer le saut seul ; puis laisser la note de passage se glisser en chemin.

passing-notes-pair = deux notes de passage
    .label = passage
    .text = Les deux notes de la gamme dans un saut de quarte.
    .how = Régulières, légères, liées à l’arrivée.
    .when = Où la mélodie saute d’une quarte à partir d’une note d’un temps ou plus.
    .fault = Elles se pressent.
    .cure = Compter les subdivisions du temps qu’elles occupent.

passing-note-chromatic = note de passage chromatique
    .label = passage chrom.
    .text = Le demi-ton dans un ton entier, en note réelle hors du temps.
    .how = S’y appuyer un peu : elle veut avancer.
    .when = Où la mélodie avance d’un ton et que la première note a le temps.
    .fault = Elle tombe sur le temps et sonne faux.
    .cure = Poser le pied sur le temps : la note chromatique est toujours entre deux battements.

passing-note-why = La mélodie saute d’une tierce : la note de la gamme entre les deux la remplit.
passing-notes-pair-why = La mélodie saute d’une quarte : les deux notes de la gamme entre les deux en font une marche.
passing-note-chromatic-why = La mélodie avance d’un ton : le demi-ton intermédiaire mène plus loin, en note réelle hors du temps.
