answer-fill-why = La mélodie { $rests ->
    [yes] se tait
   *[no] tient une longue note
} : une réponse dans le rythme { $origin ->
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
