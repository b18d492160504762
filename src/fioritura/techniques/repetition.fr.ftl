repeated-notes-why = Une note assez longue pour être dite deux fois : la hauteur reste, le rythme bouge.
repeated-notes-lively-why = Une longue note devient un rythme de { $count ->
    [2] deux
    [3] trois
    [4] quatre
   *[other] { $count }
} notes sur une seule hauteur, pendant que la mélodie attend.
