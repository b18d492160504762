lead-in = trait d’amenée
    .label = amenée
    .text = Une note longue se prolonge en une ligne de notes égales à travers l’accord, qui arrive sur la note suivante de la mélodie.
    .how = Laisser d’abord parler la note longue ; puis jouer vers l’arrivée, non vers les notes du chemin.
    .when = Au milieu d’une phrase, sur une note de deux temps et plus ; de préférence vers une note forte ou un nouvel accord.
    .fault = La ligne se précipite et la note suivante de la mélodie arrive trop tôt.
    .cure = Chanter la note longue et l’arrivée ; ajouter la dernière note de la ligne, puis les deux dernières, et ainsi de suite.

lead-in-why = La note est longue et la phrase continue : { $count } notes égales à travers l’accord, la dernière { $way ->
    [semitone] à un demi-ton de l’arrivée
   *[step] à un ton de l’arrivée
}{ $chromatic ->
    [yes] { " et hors de la gamme" }
   *[no] {""}
}.
