# Las palabras en torno a la música impresa.

sheet-legend = Los adornos y sus compases
sheet-instrument = { CAPITAL($instrument) } en { FORM($tonic, "inline") }
sheet-concert-pitch = { CAPITAL($instrument) }, en sonidos reales
sheet-pickup = anacrusa
