# Worte um die gedruckten Noten.

sheet-legend = Verzierungen und ihre Takte
sheet-instrument = { CAPITAL($instrument) } in { $tonic }
sheet-concert-pitch = { CAPITAL($instrument) }, klingend notiert
sheet-pickup = Auftakt
