# Les mots autour de la musique imprimée.

sheet-legend = Les ornements et leurs mesures
sheet-instrument = { CAPITAL($instrument) } en { FORM($tonic, "inline") }
sheet-concert-pitch = { CAPITAL($instrument) }, en notes réelles
sheet-pickup = levée
