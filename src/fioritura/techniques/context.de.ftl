note-there = die Note { $where }{ $height ->
    [peak] , höher als ihre Nachbarn,
    [last] , höher als die vorige,
   *[plain] {""}
}
