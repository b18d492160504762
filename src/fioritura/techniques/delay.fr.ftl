delay-why = { $count ->
    [one] La note commence plus tard et prend
   *[other] Ces { $count } notes commencent plus tard et prennent
} moitié moins de temps, pour que l’arrivée sur le prochain temps fort soit à sa place.
suspension-why = La mélodie descend d’un degré sur une note de l’accord : la note précédente, étrangère à l’accord, est tenue et descend en retard.
retardation-why = La mélodie monte d’un degré sur une note de l’accord : la note précédente, étrangère à l’accord, est tenue et monte en retard.
