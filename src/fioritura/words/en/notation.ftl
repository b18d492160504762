# Words around printed music.

sheet-legend = Ornaments and their bars
sheet-instrument = { CAPITAL($instrument) } in { $tonic }
sheet-concert-pitch = { CAPITAL($instrument) }, concert pitch
sheet-pickup = pickup
