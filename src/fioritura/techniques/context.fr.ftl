note-there = la note { $where }{ $height ->
    [peak] , plus haute que ses voisines,
    [last] , plus haute que la précédente,
   *[plain] {""}
}
