why-by-hand = { $why } Au moins une note à la main.
no-such-figure = Pas de figure « { $given } » ici : prenez l’une de celles qui sont proposées.
bend-too-far = { $given } demi-tons, c’est trop : une note se hausse ou se baisse d’un demi-ton à la fois.
bend-unplayable = Avec cette note, la figure double une note ou sort de l’instrument : prenez-en une autre.
bend-own-note = Cette note est celle de la mélodie : seules les notes ajoutées se haussent ou se baissent.
bend-no-such-note = La figure a { $count ->
    [one] une note
   *[other] { $count } notes
} à elle : il n’y a pas de note { $given } (on compte à partir de 0).
nothing-to-take-back = Rien à annuler : aucune décision n’a été prise.
locked-figures-collide = Deux figures verrouillées se heurtent ou surchargent leur phrase : libérez-en une.
arrangement-unreadable = Ce n’est pas un fichier d’arrangement ({ $reason }) : choisissez un arrangement.json.
arrangement-none = Ce n’est pas un fichier d’arrangement : choisissez un arrangement.json écrit ici.
arrangement-version = L’arrangement est de version { $given } ; la version { $readable } est lisible : mettez Fioritura à jour.
arrangement-damaged = Le fichier d’arrangement est abîmé ({ $reason }) : enregistrez-le de nouveau.
damaged-key = une tonalité de { $fifths } quintes
damaged-bar = une mesure sans durée, ou aucune mesure
damaged-bars = des mesures se chevauchent ou laissent des trous
damaged-repeats = une mesure est répétée plus de { $most } fois
damaged-tempo = un tempo de { $given } noires à la minute
damaged-note = une note sans durée, ou aucune note
damaged-notes = des notes se chevauchent ou sont en désordre
damaged-end = des notes se trouvent après la dernière mesure
damaged-figure-place = une figure porte sur les notes { $notes } (comptées à partir de 0), et le morceau en a { $count ->
    [one] une
   *[other] { $count }
}
damaged-figure-claim = une figure finit avant de commencer, ou porte sur des notes que le morceau n’a pas
damaged-figure-note = une note d’une figure n’a pas de durée, ou la précède
damaged-figure-score = la note d’appréciation d’une figure n’est pas un nombre
chords-other-count = Les accords remplissent { $given ->
    [one] une mesure
   *[other] { $given } mesures
} et le morceau en a { $bars }, levée non comprise : écrivez une case par mesure entre des signes |, avec % pour répéter une mesure, ou une ligne plus courte qui divise le morceau.
chords-no-cell = La mesure { $number } des accords { $given ->
    [nothing] est vide
   *[other] contient « { $given } »
} : écrivez ses accords, N.C. pour aucun, ou % seul pour répéter la mesure précédente.
chords-unreadable = Mesure { $number } des accords : { $reason }
chords-too-many = La mesure { $number } reçoit { $given } accords et n’a de place que pour { $room }, un par temps à { $metre } : écrivez-en moins.
figures-collide = Figure « { $technique } » { $where } : elle en heurte une autre, retirez l’une des deux.
figure-splits-note = La figure « { $technique } » couperait la note { $number } en deux : retirez-la.
octave-too-far = { $given } octaves, c’est trop : un morceau se déplace de 3 octaves au plus, vers le haut ou vers le bas.
octaves = { $direction ->
    [none] à sa propre hauteur
    [up] { $count ->
        [one] une octave
       *[other] { $count } octaves
    } plus haut
   *[down] { $count ->
        [one] une octave
       *[other] { $count } octaves
    } plus bas
}
octave-by-custom = { CAPITAL($instrument) } : l’usage est de jouer les grilles { $octave }.
octave-to-fit = { $pitch } ({ $place }){ $others ->
    [0] {""}
   *[other] {" "}et { $others } autres
} sortirait de l’étendue ({ $instrument }) : le morceau se joue { $octave }.
key-best = { $key } convient le mieux, écrit en { $written } ({ $instruments }) : le morceau y est transposé.
key-of-another-mode = « { $given } » n’est pas dans le mode du morceau, qui est en { FORM($key, "inline") } : donnez la tonique seule.
no-such-key = « { $given } » n’est pas une tonalité : donnez une tonique, par exemple C, Bb ou F#, ou « best ».
pickup-out-of-reach = Une levée de { $given } temps est hors de portée : la mesure en a { $beats }.
beats-out-of-reach = Un tempo de { $given } battements par minute est hors de portée : il va ici de { $low } à { $high }.
notes-out-of-range = { $pitch } ({ $place }){ $others ->
    [0] {""}
   *[other] {" "}et { $others } autres
} sort de l’étendue ({ $instrument } : de { $low } à { $high } en sons réels) : { $remedy }, ou { $other }.
other-octaves = jouez-le { LIST($octaves, "or") }
no-octave-fits = aucune octave ne contient tout ({ $instrument })
other-instruments = choisissez un instrument qui l’atteint : { LIST($instruments, "or") }
smaller-tune = prenez un morceau de moindre étendue
taste-of = le goût de { $id }
taste-not-of-the-form = il n’a pas la bonne forme ({ $error })
taste-no-idiom = il n’y a pas de style « { $given } » : choisissez { LIST($known, "or") }
taste-no-table = il a « { $given } » pour { $idiom } : donnez { LIST($known) }
taste-no-number = le poids { $given } n’est pas un nombre
taste-no-feature = les endroits n’ont pas de trait « { $given } » : choisissez parmi { LIST($known) }
taste-refused = { CAPITAL($what) } est inutilisable : { $problem }.
taste-given = la table des poids
taste-names-nothing = La table des poids nomme « { $given } », qui n’est ni une technique ni une famille : choisissez parmi { LIST($known) }.
taste-no-share = une part de { $given } n’a pas de sens : donnez plus de 0 et 1 au plus, et seulement à une technique isolée
taste-no-figure-feature = les figures n’ont pas de trait « { $given } » : choisissez parmi { LIST($known) }

# What speaks for or against a figure.

feature-technique = la technique elle-même
feature-choice-among-its-variants = choix parmi ses variantes
feature-usual-place = l’endroit habituel
feature-usual-side = le côté habituel
feature-long = longueur de la note
feature-strong = poids de sa place dans la mesure
feature-peak = plus haute que ses voisines
feature-phrase-start = début d’une phrase
feature-phrase-end = fin d’une phrase
feature-repeated-note = note répétée
feature-reached-by-leap = atteinte par saut
feature-reached-by-step-up = atteinte d’un degré montant
feature-reached-by-step-down = atteinte d’un degré descendant
feature-left-by-leap = quittée par saut
feature-chord-changes = nouvel accord ou première note
feature-chord-note = pas étrangère à l’accord
feature-rest-after = silence après elle
feature-busy-around = beaucoup de notes autour
feature-next-is-strong = poids de la place de la note suivante dans la mesure
feature-next-is-long = longueur de la note suivante
feature-next-is-peak = la note suivante est plus haute que ses voisines
feature-heard-before = combien de fois la phrase a déjà été entendue
feature-first-statement = première fois
feature-near-the-end = avancement dans le morceau
feature-guide-tone-at-a-change = note guide à un changement d’accord
feature-next-is-guide-tone-at-a-change = la note suivante est une note guide à un changement d’accord
feature-last-note = la dernière note
feature-ballad = une ballade
feature-up-tempo = tempo rapide
feature-swing = en swing
feature-even = en croches égales
feature-level = niveau du musicien
feature-draw = tirage : les musiciens diffèrent
feature-change-from-earlier-statements = variété dans une reprise, tirée au sort
feature-loss-of-the-tune = perte de la mélodie
feature-added-notes = notes ajoutées ou modifiées
feature-added-notes-in-a-ballad = notes ajoutées dans une ballade
feature-strain = effort
feature-outside-the-chord-on-a-beat = étrangère à l’accord sur le temps
feature-length-in-beats = durée en temps
feature-length-over-the-tune-s-usual-note = durée par rapport à la note habituelle du morceau
feature-on-the-downbeat = sur le premier temps
feature-stronger-than-the-next-note = plus forte que la suivante
feature-on-a-beat-in-compound-time = sur le temps en mesure composée
feature-quick-on-a-beat = rapide, sur le temps
feature-on-a-beat-then-falls = sur le temps, puis descend
feature-on-a-beat-then-a-step-down = sur le temps, puis un degré vers le bas
feature-on-a-half-beat-then-a-step-down = à contretemps, puis un degré vers le bas
feature-half-a-beat-long-as-the-next = longue d’un demi-temps, comme la suivante
feature-longer-after-even-notes-in-compound-time = plus longue après des notes égales en mesure composée
feature-dotted-then-a-step-down = pointée, puis un degré vers le bas
feature-long-then-rises = longue, puis monte
feature-long-then-falls = longue, puis descend
feature-amid-a-rise = au milieu d’une montée
feature-fallen-to-then-rises = atteinte en descendant, puis monte
feature-a-peak-then-a-step-down = plus haute que ses voisines, puis un degré vers le bas
feature-reached-by-a-semitone-up = atteinte d’un demi-ton montant
feature-reached-by-a-semitone-up-on-a-half-beat = atteinte d’un demi-ton montant, à contretemps
feature-reached-by-a-third-to-a-fifth-up = atteinte d’une tierce à une quinte montante
feature-half-a-beat-long-after-a-sixth-up-or-more = longue d’un demi-temps après une sixte montante ou plus
feature-on-a-half-beat-after-a-sixth-up-or-more = à contretemps après une sixte montante ou plus
feature-left-by-a-semitone-down = quittée d’un demi-ton descendant
feature-left-by-a-sixth-down-or-more = quittée d’une sixte descendante ou plus
feature-left-by-an-octave-down = quittée d’une octave descendante
feature-a-sixth-down-or-more-to-a-stronger-note = une sixte descendante ou plus vers une note plus forte
feature-the-lower-neighbour-follows = la broderie inférieure suit
feature-a-step-down-and-up-again = un degré vers le bas et retour
feature-quick-a-step-down-and-up-again = rapide, un degré vers le bas et retour
feature-quick-the-next-note-falls = rapide, la note suivante descend
feature-on-a-half-beat-a-step-down-and-up-again = à contretemps, un degré vers le bas et retour
feature-repeated-a-step-down-and-up-again = répétée, un degré vers le bas et retour
feature-half-a-beat-long-out-and-back = longue d’un demi-temps, aller et retour
feature-a-neighbour-follows-on-the-beat = une broderie suit sur le temps
feature-repeated-then-falls = répétée, puis descend
feature-repeated-then-a-step-down = répétée, puis un degré vers le bas
feature-repeated-on-the-downbeat = répétée, sur le premier temps
feature-repeated-on-a-beat = répétée, sur le temps
feature-repeated-on-a-half-beat = répétée, à contretemps
feature-repeated-and-very-short = répétée et très brève
feature-repeated-and-much-longer-than-the-next = répétée et bien plus longue que la suivante
feature-the-note-before-was-a-repeated-one = la note précédente était répétée
feature-fallen-to-on-a-half-beat = atteinte en descendant, à contretemps
feature-fallen-to-and-quick = atteinte en descendant et rapide
feature-a-step-down-in-even-notes = un degré vers le bas en notes égales
feature-very-long-the-note-before-reached-by-a-semitone-down = très longue, la précédente atteinte d’un demi-ton descendant
feature-high-and-much-longer-than-the-next = aiguë et bien plus longue que la suivante
feature-second-degree-on-the-downbeat = deuxième degré sur le premier temps
feature-second-degree-in-triple-time = deuxième degré à trois temps
feature-fourth-degree-the-next-note-falls = quatrième degré, la note suivante descend
feature-fourth-degree-then-a-third-down = quatrième degré, puis une tierce vers le bas
feature-fifth-degree-in-even-notes = cinquième degré en notes égales
feature-seventh-degree-on-a-beat = septième degré sur le temps
feature-on-a-half-beat = à contretemps
feature-after-a-rest = après un silence
feature-tonic = tonique
feature-the-scale-has-a-semitone-below = la gamme a un demi-ton au-dessous
feature-repeated = répétée
feature-reached-by-a-step-down = atteinte d’un degré descendant
feature-reached-by-a-leap-down = atteinte d’un saut descendant
feature-reached-by-a-whole-tone-up = atteinte d’un ton montant
feature-reached-by-a-third-up = atteinte d’une tierce montante
feature-reached-by-a-sixth-up-or-more = atteinte d’une sixte montante ou plus
feature-the-grace-above-would-repeat-the-note-before = l’appoggiature brève au-dessus répéterait la note précédente
feature-the-grace-below-would-repeat-the-note-before = l’appoggiature brève au-dessous répéterait la note précédente
feature-followed-by-the-same-note = suivie de la même note
feature-followed-by-a-step-up = suivie d’un degré montant
feature-followed-by-a-leap-up = suivie d’un saut montant
feature-followed-by-a-semitone-down = suivie d’un demi-ton descendant
feature-followed-by-a-fourth-to-a-seventh-down = suivie d’une quarte à une septième descendante
feature-followed-by-an-octave-down-or-more = suivie d’une octave descendante ou plus
feature-the-last-note = la dernière note
feature-leapt-up-to-and-followed-by-the-same-note = atteinte d’un saut montant et suivie de la même note
feature-placement = endroit : { $feature }
feature-side = côté : { $feature }
chorus-number = chorus { $number }
choruses-out-of-reach = { $given } chorus, c’est hors de portée : donnez de { $low } à { $high }.
plan-density-out-of-reach = Une densité de { $given } est hors de portée pour un chorus : donnez de { $low } à { $high }.
plan-lean-out-of-reach = Une ampleur de { $size } avec un registre de { $register } est hors de portée : les deux vont de −1 à 1.
plan-other-length = Un plan de { $count } chorus ne convient pas à { $bars } mesures : écrivez l’air autant de fois que le plan le dit.
plan-other-count = L’arrangement a { $count ->
    [one] un chorus
   *[other] { $count } chorus
} et le plan { $given } : donnez une densité pour chaque chorus.
plan-statement = chorus { $number } : { $role ->
    [head] l’air, presque simple
    [fuller] plus fourni
    [climax] le sommet
    [return] de nouveau plus calme
   *[only] l’air
} ({ $density } % des figures habituelles)
plan-heading = Chorus { $number }, { $role ->
    [head] presque simple
    [fuller] plus fourni
    [climax] le sommet
    [return] de nouveau plus calme
   *[only] l’air
}
