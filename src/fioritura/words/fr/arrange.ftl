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
no-such-level = Le niveau { $given } n’existe pas : les niveaux vont de 1 (débutant) à 5 (expert).
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
