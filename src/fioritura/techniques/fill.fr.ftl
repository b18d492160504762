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
} : { $count } notes{ $doubled ->
    [yes] {" "}en valeurs doublées
   *[no] {""}
} { $idea ->
    [echo] reprennent quatre notes de cette phrase
    [third] touchent la tierce blues
    [fifth] touchent la quinte diminuée
    [guide] font entendre la tierce ou la septième du nouvel accord
    [arpeggio] parcourent les notes de l’accord
    [around] encadrent une note des deux côtés
    [chromatic] touchent une note étrangère au ton et à l’accord
    [waves] changent plusieurs fois de direction
    [arch] montent puis reviennent
    [valley] descendent puis reviennent
    [falling] descendent
   *[rising] montent
} et { $way ->
    [enclosed] encadrent la note suivante avant qu’elle n’arrive
    [semitone] mènent à la note suivante par un demi-ton
    [step] mènent à la note suivante par un ton
    [third] mènent à la note suivante par une tierce
    [colour] se posent sur une couleur de l’accord
   *[rest] se posent sur une note de l’accord
}.
