tempo-out-of-reach = Un tempo de { $given } noires à la minute est hors de portée : il va de { $low } à { $high }.
density-out-of-reach = Une densité de { $given } est hors de portée : elle va de { $low } à { $high } ; 1 est l’usage.
no-such-feel = Pas de feeling « { $given } » : choisissez { LIST($known, "or") }.
no-such-idiom = Pas de style « { $given } » : choisissez { LIST($known, "or") }.
no-such-instrument = Il n’y a pas d’instrument « { $given } » : choisir { LIST($known, "or") }.
no-such-level = Le niveau { $given } n’existe pas : les niveaux vont de { $low } (débutant) à { $high } (expert).
tempo-not-above-0 = Un tempo de { $given } ne peut pas être joué : indiquer des noires à la minute au-dessus de 0.
hard-places-not-above-0 = Le tempo ({ $tempo }) et le nombre de passages ({ $count }) doivent tous deux dépasser 0.
no-fingering = Il n’y a pas de doigté pour la note écrite { $pitch }, la tablature va de { $low } à { $high } : déplacer la ligne d’une octave.

plugin-wrong-form = ce qu’il propose n’a pas la bonne forme ({ $reason })
plugin-no-instruments = il n’a pas d’INSTRUMENTS
plugin-not-an-instrument = { $id } dans ses INSTRUMENTS n’est pas un instrument
plugin-instrument-taken = il y a déjà un instrument « { $id } »
plugin-instrument-bounds = l’étendue ou le programme sonore de « { $id } » est hors limites
plugin-chart-lacks = la tablature de « { $id } » n’a pas le numéro MIDI écrit { $number }
plugin-breath = le souffle de « { $id } » est hors de { $low } à { $high } fois l’usage
plugin-stranger = il a une tablature ou un souffle pour « { $id } », qui n’est pas un de ses instruments

# Instruments : dans la phrase, avec l’article, avec « de », et devant la portée.

instrument-title = { CAPITAL($instrument) }
instrument-in-key = { CAPITAL($instrument) } en { LOWER($tonic) }
instrument-at-concert-pitch = { CAPITAL($instrument) }, sons réels

instrument-concert = notation en sons réels
    .the = la notation en sons réels
    .of = de la notation en sons réels
    .gender = f
    .short = Ut
instrument-soprano-sax = saxophone soprano
    .the = le saxophone soprano
    .of = du saxophone soprano
    .gender = m
    .short = Sax. s.
instrument-alto-sax = saxophone alto
    .the = le saxophone alto
    .of = du saxophone alto
    .gender = m
    .short = Sax. a.
instrument-tenor-sax = saxophone ténor
    .the = le saxophone ténor
    .of = du saxophone ténor
    .gender = m
    .short = Sax. t.
instrument-baritone-sax = saxophone baryton
    .the = le saxophone baryton
    .of = du saxophone baryton
    .gender = m
    .short = Sax. b.
instrument-clarinet = clarinette
    .the = la clarinette
    .of = de la clarinette
    .gender = f
    .short = Cl.
instrument-bass-clarinet = clarinette basse
    .the = la clarinette basse
    .of = de la clarinette basse
    .gender = f
    .short = Cl. b.
instrument-flute = flûte
    .the = la flûte
    .of = de la flûte
    .gender = f
    .short = Fl.
instrument-irish-flute = flûte irlandaise
    .the = la flûte irlandaise
    .of = de la flûte irlandaise
    .gender = f
    .short = Fl. irl.
instrument-tin-whistle = tin whistle
    .the = le tin whistle
    .of = du tin whistle
    .gender = m
    .short = Wh.
instrument-oboe = hautbois
    .the = le hautbois
    .of = du hautbois
    .gender = m
    .short = Htb.
instrument-trumpet = trompette
    .the = la trompette
    .of = de la trompette
    .gender = f
    .short = Tpt.
instrument-flugelhorn = bugle
    .the = le bugle
    .of = du bugle
    .gender = m
    .short = Bgl.
instrument-trombone = trombone
    .the = le trombone
    .of = du trombone
    .gender = m
    .short = Tbn.

# Doigtés : les clés telles qu’on les énumère ; `.gender` pour l’article.

fingering = { $keys }
fingering-open = aucun doigt

key-the = { FORM($key, "gender") ->
    [m] le
   *[f] la
} { $key }
key-from = { FORM($key, "gender") ->
    [m] du
   *[f] de la
} { $key }
key-to = { FORM($key, "gender") ->
    [m] au
   *[f] à la
} { $key }
key-number = clé { $number }
hole-number = trou { $number }
    .gender = m
key-octave = clé d’octave
key-back-octave = clé d’octave arrière
key-side-octave = clé d’octave latérale
key-register = clé de douzième
key-thumb = pouce
    .gender = m
key-thumb-hole = pouce
    .gender = m
key-half-hole = demi-trou
    .gender = m
key-bis = clé bis
key-left-sliver = petite clé intermédiaire gauche
key-right-sliver = petite clé intermédiaire droite
key-second-side = deuxième clé latérale
key-of-note = clé de { $note }
key-low = clé de { $note } grave
key-high = clé de { $note } aigu
key-left = clé de { $note } gauche
key-pair = clé de { $low }/{ $high }
key-left-pair = clé gauche de { $low }/{ $high }
key-right-pair = clé droite de { $low }/{ $high }
key-throat = clé de { $note } de la main gauche
key-side = clé latérale de { $note }
key-side-trill = clé latérale de trille de { $note }
key-trill = clé de trille de { $note }
key-lever = spatule de { $note }
key-palm = clé de paume de { $note }
key-front = clé frontale de { $note }
key-thumb-note = clé de pouce de { $note }
slide-position = { $number ->
    [1] première
    [2] deuxième
    [3] troisième
    [4] quatrième
    [5] cinquième
    [6] sixième
   *[7] septième
} position

# Pourquoi un passage est difficile.

note-pair = { $first }–{ $second }
move-to = { $first } vers { $second }
move-again = { $note } répété
hard-place-why = { $move } : { $why }.
cause-tongue = la langue doit être rapide
cause-grace = en petite note, cela doit être léger et rapide
cause-speed = cela passe à { $rate } notes par seconde
cause-break = on franchit le changement de registre
cause-into-altissimo = on passe dans le suraigu
cause-from-altissimo = on redescend du suraigu
cause-palm = les clés de paume entrent en jeu
cause-crossing = les doigts se croisent (baissés : { $down }, levés : { $up })
cause-many-fingers = { $count } doigts bougent à la fois
cause-slide = la coulisse va de la { $first } à la { $second }
cause-next-partial = la liaison passe à l’harmonique voisin
cause-partials = la liaison saute { $count } harmoniques
cause-finger-goes = { $finger } va { $before } { $after }
cause-finger-takes = { $finger } prend en plus { $keys }
cause-finger-leaves = { $finger } ne lâche que { $keys }
count-of-fingers = { $n ->
    [0] aucun
    [1] un
    [2] deux
    [3] trois
    [4] quatre
    [5] cinq
    [6] six
    [7] sept
    [8] huit
    [9] neuf
   *[other] { $n }
}
count-of-partials = { count-of-fingers }
finger-left-thumb = le pouce gauche
finger-left-first = l’index gauche
finger-left-second = le majeur gauche
finger-left-third = l’annulaire gauche
finger-left-little = l’auriculaire gauche
finger-left-palm = la paume gauche
finger-right-first = l’index droit
finger-right-second = le majeur droit
finger-right-third = l’annulaire droit
finger-right-little = l’auriculaire droit
finger-right-side = le bord de la main droite

# Comment le travailler.

practice-fingering = Prendre { $note } avec : { $fingering }.
practice-break = Lier { $pair } sur un souffle égal ; poser la main droite pour { $upper } avant de quitter { $lower }.
practice-little-finger = Lier { $pair } huit fois dans chaque sens ; l’auriculaire reste sur les clés en glissant.
practice-roll = Rouler plutôt que lever : lier { $pair } huit fois dans chaque sens, le doigt ne quitte jamais les clés.
practice-palm = Lier { $pair } la main immobile ; seule la paume bouge, juste assez pour ouvrir la clé.
practice-many-fingers = Jouer { $pair } lentement en boucle jusqu’à ce que tous les doigts arrivent d’un seul clic, puis un peu plus vite.
practice-partial = Chanter { $pair }, puis lier sur l’air seul, les lèvres souples, avant d’ajouter la main.
practice-slide = Jouer { $pair } d’un léger coup de langue legato ; la coulisse bouge tard et d’un coup.
practice-tongue = Détacher { $lower } seul, quatre, six puis huit fois, du bout de la langue, sans jamais arrêter l’air.
practice-dotted = Jouer tout le passage en rythme pointé, longue–brève, puis brève–longue, puis égal.
practice-slow-trill = Lier { $pair } dans les deux sens, régulièrement, jusqu’à sentir un trille lent.
practice-tempo = Commencer à { $beat } = { $start } ; quand c’est net trois fois de suite, monter de { $step } ; le but est { $beat } = { $goal }.
practice-at-tempo = C’est à portée à { $beat } = { $goal } : le jouer là, régulièrement.
feel-by-custom = Le fichier ne dit pas comment jouer : les croches sont swinguées, selon l’usage du jazz.
