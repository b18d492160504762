answer-fill = réponse
    .label = réponse
    .text = Où la mélodie tient ou se tait, une courte phrase lui répond et mène à la note suivante.
    .how = Quitter la longue note plus tôt, respirer, et viser la note suivante dès le début de la réponse.
    .when = Sur les longues notes en fin de phrase et dans les silences entre les phrases ; pas dans chaque creux.
    .fault = La réponse est plus forte et plus chargée que la mélodie, et la phrase suivante commence tard.
    .cure = Chanter la mélodie et ne jouer que les réponses ; puis jouer la mélodie et omettre une réponse sur deux.

answer-fill-why = La mélodie { $rests ->
    [yes] se tait
   *[no] tient une longue note
} : une réponse dans le rythme { $origin ->
    [phrase] de cette phrase
    [opening] du début du morceau
    [to-triplet] de croches qui finissent par un triolet
    [to-pair] de croches qui finissent par deux notes rapides
    [from-triplet] d’un triolet suivi de croches
    [from-pair] de deux notes rapides suivies de croches
    [from-long] d’une première note tenue suivie de croches
   *[eighths] de croches régulières
}{ $halved ->
    [yes] , en valeurs deux fois plus brèves
   *[no] {""}
}, { $shape ->
    [arch] qui monte vers un sommet et redescend
    [valley] qui descend puis remonte
    [falling] qui descend sans cesse
   *[rising] qui monte sans cesse
}, mène à la note suivante.
