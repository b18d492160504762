# Ce que donne un professeur : éditions d’une mélodie, versions de travail, le dossier de la leçon et sa page hors ligne.

# Noms qui figurent sur chaque feuille.

tune-untitled = Sans titre
line-plain = simple
line-ornamented = ornée
idiom-name =
    { $idiom ->
        [folk] folk
        [blues] blues
        [irish] irlandais
       *[jazz] jazz
    }
lesson-level = Niveau { $level }
bars-span = mesures { $first } à { $last }
bars-from-pickup = de la levée à la mesure { $last }

# Éditions et versions de travail.

edition-line = niveau { $level }, { idiom-name }
edition-comparison = simple et ornée, niveau { $level }, { idiom-name }
edition-plain-sound = { CAPITAL($instrument) }, mélodie simple
chorus-head = thème
chorus-last-head = dernier thème
chorus-solo = solo { $number }

# Le livret.

handout-subtitle = Une leçon d’ornementation · niveau { $level }, { idiom-name }
handout-contents = Dans cette leçon
handout-plain = La mélodie simple
handout-notes = Le mot du professeur
handout-techniques = Les techniques, une à une
handout-techniques-intro = Chaque exemple prend une phrase de la mélodie : simple en haut, ornée en bas, la figure sur fond gris. Jouez la phrase simple jusqu’à ce qu’elle chante, puis la phrase ornée, lentement ; puis les deux en alternance.
handout-others = Ce que cette mélodie offre encore
handout-others-intro = La version de concert ne s’en sert pas, mais la mélodie a des endroits pour cela : pour plus tard, ou pour qui en demande davantage.
handout-how = Comment la jouer
handout-when = Quand elle convient
handout-fault = Un défaut courant
handout-cure = Le remède
handout-summary = Toutes les techniques en un coup d’œil
handout-summary-intro = Endroits : le nombre de notes de cette mélodie qui se prêtent à la technique. Emploi : les mesures de la version de concert où elle figure.
handout-column-technique = Technique
handout-column-label = Sur la partition
handout-column-level = Niveau
handout-column-what = Ce que c’est
handout-column-places = Endroits
handout-column-used = Emploi
handout-performance = La version de concert
handout-plan = Plan de travail
handout-plan-each = Chaque séance, environ vingt-cinq minutes
handout-step-tone = Sons filés et gamme de { FORM($key, "inline") }, liée : cinq minutes.
handout-step-plain = La mélodie simple une fois par cœur, avec l’accompagnement : trois minutes.
handout-step-technique = Les techniques de la séance, chacune dans son exemple, lentement, au tempo, puis dans la mélodie : dix minutes.
handout-step-place = Un passage difficile, voir plus bas : quatre minutes. Arrêtez plus tôt si un doigt ou les lèvres se fatiguent.
handout-step-play = La version de concert avec l’accompagnement, au tempo de la séance : trois minutes. Enregistrez-vous et écoutez une fois.
handout-sessions = Séance par séance
handout-session-session = Séance
handout-session-new = Nouveau
handout-session-again = À revoir
handout-session-tempo = Tempo
handout-session-done = Fait
handout-again-all = toutes
handout-hard = Les passages difficiles
handout-care = Précautions

# Parties.

part-octave-lower =
    { $octaves ->
        [one] Joué une octave plus bas que cet instrument ne lit d’ordinaire une partition de thème, pour rester dans sa tessiture.
       *[other] Joué { $octaves } octaves plus bas que cet instrument ne lit d’ordinaire une partition de thème, pour rester dans sa tessiture.
    }
part-octave-higher =
    { $octaves ->
        [one] Joué une octave plus haut que cet instrument ne lit d’ordinaire une partition de thème, pour rester dans sa tessiture.
       *[other] Joué { $octaves } octaves plus haut que cet instrument ne lit d’ordinaire une partition de thème, pour rester dans sa tessiture.
    }
part-without-octave = aucune octave de cet instrument ne contient toute la ligne

# Titres des fichiers son.

sound-backing = Accompagnement
sound-performance = Version de concert
sound-plain = Mélodie simple
sound-ladder = Version de concert à { $tempo } temps par minute
sound-slow = { CAPITAL($technique) }, lentement
sound-level = { $title }, niveau { $level }

# Les feuilles d’exercices.

exercises-title = Exercices
exercises-intro = Chaque passage difficile de la version de concert sur sa propre page : isolé, sur divers rythmes, dans tous les tons, et pas à pas jusqu’au tempo visé. Dix minutes sur un passage suffisent ; jouez ensuite quelque chose de facile.
exercises-drill-isolated = Isolé : huit fois sans accroc.
exercises-drill-even = Régulier, lié, puis détaché.
exercises-drill-long-short = Longue, brève.
exercises-drill-short-long = Brève, longue.
exercises-drill-triplets = En triolets.
exercises-drill-dotted = En groupes pointés.
exercises-keys = Dans tous les tons, par quartes. Un ton par jour suffit ; nommez-le avant de jouer.
exercises-tempos = Pas à pas vers le but : cochez un tempo quand il a été propre trois fois de suite.
exercises-reading = Déchiffrage
exercises-reading-intro = La même mélodie avec d’autres ornements. Parcourez-la une demi-minute, entendez-la intérieurement, puis jouez sans vous arrêter ; ne la travaillez pas.
exercises-reading-variant = Variante { $number }
exercises-turn = À vous
exercises-turn-intro = Recopiez la phrase sur la portée vide et ajoutez-y l’ornement. Jouez ce que vous avez écrit, puis changez-le jusqu’à ce qu’il vous plaise.
exercises-turn-task = { CAPITAL($bar) }, { $where } : { $technique }.
exercises-yours = votre ligne
exercises-answers = Réponses proposées
exercises-answers-intro = Une solution parmi d’autres. Si la vôtre sonne mieux dans la mélodie, gardez la vôtre.

# Le plan des semaines.

course-title = Plan du cours
course-intro = Une mélodie, cinq niveaux, { $weeks } semaines. À chaque niveau, une feuille et un enregistrement dans le dossier « { $folder } » ; passez au suivant quand le but est atteint, non quand la semaine est finie.
course-column-week = Semaine
course-column-level = Niveau
course-column-new = Nouveau
course-column-tempo = Tempo
course-column-files = Fichiers
course-column-done = Fait
course-again = rien de nouveau : tout revoir, par cœur
course-goals = Buts
course-goal = But
course-goal-1 = La mélodie par cœur, avec quelques petites notes qui arrivent à temps et laissent chanter la note principale.
course-goal-2 = Une deuxième couleur : des broderies, des notes de passage et des inflexions qui suivent la ligne sans la presser.
course-goal-3 = Des gruppettos, des approches et de courts traits d’un rythme égal ; l’auditeur fredonne toujours la mélodie.
course-goal-4 = Des figures plus longues par-dessus la barre de mesure, phrasées d’un seul souffle, fort et doux.
course-goal-5 = Une version à vous : choisissez en jouant parmi toutes les figures et racontez la mélodie chaque fois autrement.
course-check = Prêt pour le niveau suivant ?
course-check-1 = Je joue ce niveau au tempo visé avec l’accompagnement, sans m’arrêter.
course-check-2 = Je sais chanter chaque ornement avant de le jouer.
course-check-3 = Un auditeur reconnaît aussitôt la mélodie.
course-check-4 = Rien ne fait mal : les mains, les lèvres et les épaules sont libres.

# Le déroulé d’une leçon en vidéo.

order-title = { $title } : déroulé
order-intro = Tempo visé { $tempo }. Les durées comptent une parole tranquille et chaque exemple joué lentement, puis au tempo.
order-quiet = Vérifier le son : haut-parleurs bas, casque retiré, téléphone en mode silencieux.
order-play = Faire écouter { $file }.
order-technique = { CAPITAL($technique) } ({ $clock }, environ { $seconds } s)
order-say = Dire : { $text }
order-listen = Faire écouter : { $files }
order-show = Montrer : { $files }
order-warn = Mettre en garde : { $text }
order-end = Pour finir ({ $clock })
order-homework = Donner les devoirs : la première séance du plan de travail.

# La page hors ligne.

offline-skip = Aller à la musique
offline-desk = Tempo et son
offline-tempo = Tempo
offline-loop = Boucle
offline-volume = Volume
offline-stop = Arrêter
offline-plain = Simple
offline-ornamented = Ornée
offline-both = Les deux en alternance
offline-play = { $what } : { $score }
offline-playing = On entend : { $what }, { $score }
offline-stopped = Arrêté.
offline-score = { CAPITAL($technique) }, { $place }
offline-system = { $score }, système { $number }
offline-intro = Choisissez un tempo ci-dessus, puis écoutez la phrase simple, la phrase ornée ou les deux en alternance ; le repère montre où en est la musique. Une mesure de clics donne le départ. La touche Échap arrête la musique.

# Ce qui peut ne pas aller.

no-such-naming = Pas de noms de notes « { $given } » : choisissez { LIST($known, "or") }.
no-such-section = Pas de section « { $given } » dans un dossier de leçon : choisissez parmi { $known }.
no-such-audio = Pas de fichiers son « { $given } » : choisissez { LIST($known, "or") }.
no-such-format = Pas de format « { $given } » : choisissez parmi { $known }.
no-such-phrase = « { $given } » n’est pas une phrase : donnez leurs numéros à partir de 0.
no-such-override = Pas de texte « { $given } » à remplacer : choisissez parmi { $known }.
override-too-long = « { $name } » a { $letters } signes ; { $limit } est la limite : raccourcissez-le.
override-bad-line = Ligne { $line } de vos textes, « { $text } » : écrivez « nom: texte » avec l’un des noms { $known }.
override-not-text = { $file } n’est pas du texte en UTF-8 : enregistrez-le comme texte brut en UTF-8.
lesson-plan-damaged = Ceci n’est pas le plan d’une leçon : refaites-le.
lesson-without-figures = Aucune figure des techniques choisies ne se trouve dans les phrases choisies : choisissez une autre technique ou une autre phrase.
manifest-damaged = { $file } n’est pas le manifeste d’un dossier de leçon : indiquez le fichier { $name } d’un dossier.
manifest-other-file = { $file } n’est pas le fichier dont le dossier a été fait : rétablissez-le, ou indiquez la mélodie elle-même.
times-out-of-reach = Jouer { $given } fois, c’est hors de portée : donnez de { $low } à { $high }.
key-outside-instrument = En { FORM($key, "inline") }, la ligne sort de l’instrument à chaque octave ({ $instrument }) : choisissez un autre ton, un autre instrument ou un niveau plus facile.
clips-need-library = Les vidéos demandent le paquet { $package } ({ $error }) : installez-le, ou faites le dossier sans vidéos.
clip-not-encoded = La vidéo { $file } n’a pas pu être encodée ({ $error }) : faites le dossier sans vidéos.
worker-ended = Un processus de travail a été interrompu, peut-être faute de mémoire : réessayez avec moins de processus à la fois.
