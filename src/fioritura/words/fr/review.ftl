# Les pages d’un compte rendu.

which-tune = Quelle mélodie a été jouée ? Indiquer la mélodie, ou l’arrangement qui était demandé.
not-earlier-takes = { $file } n’est pas le fichier des prises précédentes : le déplacer, ou choisir un autre dossier.
the-take = La prise
review-untitled = Une prise
review-subtitle = ce qui s’entend, et ce qu’il faut travailler ensuite
review-recording = À propos de l’enregistrement.
review-next = À travailler ensuite
review-ladder = Commencer à { $start } temps à la minute ; trois fois juste de suite, puis quatre de plus, jusqu’à { $goal }.
review-how-measured = Chaque ornement est nommé avec le degré de certitude de l’oreille ; un nom incertain est donné avec l’autre lecture. Les cents se comptent depuis le tempérament égal sur votre propre La, les millisecondes depuis votre propre temps.
review-passages = Elle a été entendue en { $count } passages, reprises et nouveaux départs compris.

glance-of = { $right } sur { $wanted }
glance-count = { $count }
glance-ornaments = Ornements
glance-notes = Notes justes
glance-tempo = Tempo
glance-time = Mise en place
glance-eighths = Croches
glance-tuning = Accord
glance-within = à { $ms } ms près
glance-swing = { $ratio } pour 1
glance-even = égal
beats-a-minute = { $tempo } temps à la minute
in-tune-with-440 = La = 440 Hz
amount-of-cents = { $cents ->
    [one] { $cents } cent
   *[other] { $cents } cents
}
cents-off = { $side ->
    [sharp] { amount-of-cents } trop haut
   *[flat] { amount-of-cents } trop bas
}

review-played = Ce que vous avez joué
review-played-about = { $below ->
    [asked] En haut ce qui s’entend, en dessous ce qui était demandé.
   *[plain] En haut ce qui s’entend, en dessous la mélodie simple.
} La ligne derrière les notes est votre hauteur : sur la tête de note elle est juste, un interligne plus haut ou plus bas fait un demi-ton.
review-passage = Passage { $number } sur { $count }, { $bars }
staff-played = joué
staff-asked = demandé
staff-plain = simple
music = Musique
music-from-bar = Musique à partir de la mesure { $bar }
colours = Couleurs : { $names }
colour-as-asked = comme demandé
colour-ornament = ornement
colour-missed = demandé, non entendu
colour-slip = autre que le texte
in-tune = juste
sharp = trop haut
flat = trop bas

review-no-ornament = Aucun ornement ne s’entend : la mélodie a été jouée simplement.
review-ornaments = Les ornements, un par un
review-status-done = réussi
review-status-missed = non entendu
review-status-added = de vous
column-passage = Passage
column-bar = Mesure
column-pickup = levée
column-beat = Temps
column-ornament = Ornement
column-sure = Certitude
column-figure = Notes rapides de
column-uneven = Écart de durée
share = { NUMBER($share, style: "percent") }
sure-else = { $share }, sinon { $other }
no-ornament = aucun ornement
review-slips = Notes autres que le texte
review-slip = { CAPITAL($where) } : { $words }.

review-spread = Deux notes sur trois tombent à { $ms } ms près de votre propre temps.
review-no-drift = Le tempo de la fin est celui du début.
review-swing = Les croches longues et brèves sont à { $ratio } pour 1.
review-graces = Les petites notes durent { $ms } ms.
review-evenness = Égalité
percent = { $percent } pour cent
nearly-even = presque égal
to-practise = à travailler
review-tuning = Toute la prise : { $off }.
review-tuning-about = Chaque trait est une note tenue, chaque point leur milieu, par rapport à votre propre accord.
review-register = { $register }, { $off } ({ $count ->
    [one] { $count } note
   *[other] { $count } notes
})
review-registers = Par registre : { $registers }.
review-level-heading = Niveau sonore
review-level = Les notes douces et fortes diffèrent de { $db } dB.

# Graphiques.

axis-on-the-beat = sur le temps
axis-off-the-beat = { $side ->
    [late] { $ms } ms tard
   *[early] { $ms } ms tôt
}
axis-on-a-beat = sur un temps
axis-together = à { $ms } ms près : sonne ensemble
axis-tempo = tempo { $tempo }
axis-cents = { $side ->
    [sharp] { $cents } cents haut
   *[flat] { $cents } cents bas
}
louder = plus fort
usual-level = habituel
softer = plus doux
plot-time = Notes en avance et en retard sur le temps, et le tempo, mesure par mesure
plot-tuning = Justesse de chaque note, en cents par rapport à l’accord de l’interprète
plot-level = Niveau sonore de chaque note au fil des mesures
plot-progress = Mesures des prises, de la première à la dernière

# Exercices.

drill-long-short = Longue–brève
drill-short-long = Brève–longue
drill-plain = { CAPITAL($bar) }, simple
drill-with-ornament = Avec l’ornement
drill-loop = { CAPITAL($bar) }, en boucle
drill-long-note = Tenir { $note } sur un bourdon
drill-one-note = { CAPITAL($bars) } sur une seule note
drill-as-written = Comme écrit

# Les progrès sur plusieurs prises.

review-progress = Progrès
measure-ornaments = ornements réussis
measure-notes = notes justes
measure-spread = écart des notes au temps
measure-drift = tempo, fin contre début
measure-pitch = écart des notes à la hauteur
measure-uneven = écart des notes rapides
measure-level = du doux au fort
measure-tempo = tempo, noires à la minute
amount-percent = { $amount } %
amount-ms = { $amount } ms
amount-cents = { $amount ->
    [one] { $amount } cent
   *[other] { $amount } cents
}
amount-db = { $amount } dB
amount-tempo = { $amount }
then-and-now = { $measure } { $then } alors, { $now } maintenant
progress-takes = { $count } prises de cette mélodie.
progress-better = { $before } Mieux depuis la première : { $measures }.
progress-worse = { $before } À surveiller : { $measures }.
