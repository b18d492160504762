passing-note-why = La mélodie saute d’une tierce : la note de la gamme entre les deux la remplit.
passing-notes-pair-why = La mélodie saute d’une quarte : les deux notes de la gamme entre les deux en font une marche.
passing-note-chromatic-why = La mélodie avance d’un ton : le demi-ton intermédiaire mène plus loin, en note réelle hors du temps.
