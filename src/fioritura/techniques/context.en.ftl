note-there = the note { $where }{ $height ->
    [peak] , higher than its neighbours,
    [last] , higher than the one before it,
   *[plain] {""}
}
