blue-third = tierce bleue
    .label = tierce bleue
    .text = La tierce mineure avant la majeure, tirée ou liée vers elle : la note entre les deux est celle que chante le blues.
    .how = Doigter la tierce mineure mâchoire souple, puis lier ; l’inflexion prend son temps sur la note, non sur le temps.
    .when = Sur la tierce de l’accord du ton, surtout quand elle est longue ou commence une phrase.
    .fault = On entend deux notes propres, comme un exercice de doigts.
    .cure = Chanter l’inflexion sur une syllabe, puis la jouer aussi lentement qu’on l’a chantée.

flat-fifth = quinte diminuée de passage
    .label = quinte diminuée
    .text = Le demi-ton entre la quinte et la quarte, effleuré au passage.
    .how = La lier à la note qui suit et s’appuyer sur la quinte qui précède.
    .when = Quand la mélodie va de la quinte à la quarte ou à la tierce bleue, plutôt en descendant.
    .fault = La quinte diminuée est tenue ou tombe sur un temps et sonne comme une fausse note.
    .cure = Compter le contretemps à voix haute et ne la jouer que là.

blue-drop = tierce bleue au-dessus de la tonique
    .label = chute bleue
    .text = La tierce mineure du ton, jetée d’en haut avant la tonique.
    .how = Articuler la note bleue fort et bref, et laisser tomber.
    .when = Sur la tonique sur un temps, à la fin d’un appel ou de sa réponse.
    .fault = La chute traîne et la tonique est en retard.
    .cure = Poser la tonique sur le temps ; jeter la note bleue avant.

blue-third-why = La tierce { $where } est tirée depuis la tierce bleue.
flat-fifth-why = { $way ->
    [down] De la quinte vers le bas : la quinte diminuée passe entre les deux.
   *[up] De la quarte à la quinte : la quinte diminuée passe entre les deux.
}
blue-drop-why = La tonique sur un temps : la tierce bleue tombe sur elle.
