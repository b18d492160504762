note-there = la nota { $where }{ $height ->
    [peak] , más alta que sus vecinas,
    [last] , más alta que la anterior,
   *[plain] {""}
}
