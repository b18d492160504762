### Les mots de la page et de ses scripts.

## Sur chaque page

page-language = Langue de cette page
page-skip-content = Aller au contenu
page-skip-music = Aller à la musique
page-pages = Pages
page-stand = Pupitre
page-lesson = Leçon
page-take = Prise
page-students = Élèves
page-shelf = Étagère
page-bring-in = Importer
page-view = Affichage
page-smaller-notes = Notes plus petites
page-larger-notes = Notes plus grandes
page-close-panel = Fermer le volet
page-engraving = Gravure en cours…
page-wait = Un instant…
page-waiting = En attente…
page-play = Jouer
page-stop = Arrêter
page-hear = Écouter
page-keep = Garder
page-cancel = Annuler
page-close = Fermer
page-remove = Retirer
page-remove-name = Retirer { $name }
page-add = Ajouter
page-all = Tous
page-none = Aucun
page-off = coupé
page-undo = Annuler
page-redo = Rétablir
page-title = Titre
page-tune = Air
page-tags = Étiquettes
page-player = Instrument
page-level = Niveau
page-idiom = Style
page-idiom-file = Selon le morceau
page-idiom-jazz = Jazz
page-idiom-folk = Folk
page-idiom-blues = Blues
page-idiom-irish = Irlandais
page-eighth-notes = Croches
page-feel-straight = Égales
page-feel-swing = Swing
page-tempo = Tempo
page-tempo-now = Tempo { $tempo }
page-tempo-share = { $tempo } ({ $share } %)
page-beats-a-minute = temps par minute
page-band = Groupe
page-microphone = Microphone
page-ornament = Ornement
page-nobody = personne en particulier
page-milliseconds = { $ms } ms
page-percent = { $share } %
page-share-of = { $count } sur { $total }
page-bar-one = Mesure { $first }
page-bars-span = Mesures { $first }–{ $last }
page-bars-pickup = De la levée à la mesure { $last }
page-bars-from-to = Mesures { $first } à { $last }
page-bars-count =
    { $count ->
        [one] { $count } mesure
       *[other] { $count } mesures
    }
page-pickup = Levée
page-care-softly = Commencez doucement, surtout au casque.
page-care-limit = Selon la limite usuelle au travail (NIOSH : 85 dB pendant huit heures), une heure à 94 dB remplit la journée.
page-sound-preparing = Préparation du son…
page-line-name =
    { $line ->
        [plain] simple
       *[ornamented] orné
    }
page-technique-name = Nom
page-technique-label = Signe au-dessus des notes
page-technique-text = Ce que c’est
page-technique-how = Comment
page-technique-when = Quand
page-technique-fault = Ce qui échoue
page-technique-cure = Ce qui aide

## Le serveur

page-server-silent = Le serveur ne répond pas : `fioritura serve` est-il encore en marche ?
page-server-failed = Le serveur a échoué ({ $status }).
page-server-forgot = Le serveur a oublié ce travail : relancez-le.

## Les touches

page-keys = Touches
page-keys-letters = Les lettres et signes seuls sont des touches
page-keycap-space = Espace
page-keycap-escape = Échap
page-keycap-control = Ctrl
page-key-help = ces touches
page-key-level = niveau
page-key-level-number = niveau { $level }
page-key-slower-faster = plus lent, plus vite
page-key-faster = plus vite
page-key-smaller-larger = notes plus petites, plus grandes
page-key-larger = notes plus grandes
page-key-close-panel = fermer le volet

## L’entrée, et les adresses qui ne mènent nulle part

page-enter = Entrer
page-enter-whose = À qui est cette étagère ?
page-enter-about = Cette page passe par un réseau. Le mot de passe se trouve dans le terminal où elle a été lancée.
page-enter-token = Mot de passe
page-enter-wrong = Ce n’est pas le mot de passe : regardez de nouveau dans le terminal.
page-wrong = Pas ici
page-wrong-to-shelf = Vers l’étagère
page-wrong-to-stand = Vers le pupitre

## Importer des airs

page-bring-a-tune = Importer un air
page-bring-unfolds = Écrire les reprises en toutes notes, pour que chaque fois puisse différer
page-bring-from-files = À partir de fichiers
page-bring-drop = Déposez ici des fichiers MusicXML, ABC ou MIDI,
page-bring-choose-files = ou choisissez des fichiers
page-bring-choose-folder = ou tout un dossier
page-bring-type-abc = Ou écrivez la mélodie en ABC
page-bring-my-tune = Mon air
page-bring-take = Mettre au pupitre
page-bring-preview = Tel qu’il sera lu
page-bring-preview-music = La mélodie écrite, gravée
page-bring-bars-from = Mesures à partir de { $bar }
page-bring-readable = C’est lisible.
page-bring-problem-at = Ligne { $line }, colonne { $column } : { $problem }
page-bring-problem-in = { $problem } (ligne { $line }, colonne { $column })
page-bring-tune-facts =
    { $bars ->
        [one] { $key }, { $metre }, { $bars } mesure
       *[other] { $key }, { $metre }, { $bars } mesures
    }
page-bring-files-read = Fichiers lus
page-bring-files-done = { $done } fichiers sur { $total }
page-bring-stopped = Arrêté : rien n’a été mis sur l’étagère.
page-bring-no-tunes = Aucun de ces fichiers n’est du MusicXML, de l’ABC ou du MIDI.
page-bring-too-large = Ces fichiers sont trop gros ensemble : importez-les par parties de { $most } Mo.
page-bring-reading =
    { $count ->
        [one] Lecture de { $count } fichier…
       *[other] Lecture de { $count } fichiers…
    }
page-bring-skipped =
    { $count ->
        [one] { $count } autre fichier a été laissé de côté.
       *[other] { $count } autres fichiers ont été laissés de côté.
    }

## L’étagère

page-shelf-search-what = Chercher dans les titres, compositeurs, étiquettes et leçons
page-shelf-search = Chercher
page-shelf-export = Tout exporter
page-shelf-restore = Reprendre un export
page-shelf-restoring = Reprise en cours…
page-shelf-doubles = Certains de ces airs sont déjà là
page-shelf-doubles-count =
    { $count ->
        [one] Un air de l’export vient du même fichier qu’un air de votre étagère. Que faut-il en faire ?
       *[other] { $count } airs de l’export viennent des mêmes fichiers que des airs de votre étagère. Que faut-il en faire ?
    }
page-shelf-doubles-skip = Laisser les miens tels quels et n’ajouter que les autres
page-shelf-doubles-replace = Remplacer les miens, avec tout ce qui s’y rattache
page-shelf-doubles-copy = Les ajouter tous une seconde fois
page-shelf-none-by-that-name = Rien ici sous ce nom : { $all }.
page-shelf-show-all = tout montrer
page-shelf-empty = Il n’y a encore rien ici : importez un air.
page-shelf-arrangement = Arrangement : { $name }
page-shelf-remove-arrangement = Retirer l’arrangement { $name } de { $title }
page-shelf-lesson = Leçon : { $title }
page-shelf-worked-on = travaillé le { $day }
page-shelf-describe = Titre et étiquettes
page-shelf-describe-name = Titre et étiquettes de { $title }
page-shelf-tags = Étiquettes, séparées par des virgules
page-shelf-remove-sure = Retirer ?
page-shelf-remove-about = « { $what } » quitte l’étagère avec tout ce qui s’y rattache. Un export qui le contient peut être repris.

## Le pupitre

page-stand-tools = Historique et affichage
page-stand-music = Musique : simple au-dessus d’orné
page-stand-legend = Genres de figures dans cet arrangement
page-stand-panel = Figure et réglage
page-stand-tabs = Volet
page-stand-setting =
    { $idiom ->
        [jazz] { $player }, niveau { $level }, jazz
        [blues] { $player }, niveau { $level }, blues
        [irish] { $player }, niveau { $level }, irlandais
       *[folk] { $player }, niveau { $level }, folk
    }
page-stand-figures =
    { $count ->
        [one] { $count } figure · { $share } % de l’air tel qu’il était
       *[other] { $count } figures · { $share } % de l’air tel qu’il était
    }
page-stand-undo-what = Annuler : { $what } (U)
page-stand-undo-nothing = Rien à annuler
page-stand-redo-what = Rétablir : { $what } (Y)
page-stand-redo-nothing = Rien à rétablir
page-stand-undone = Annulé : { $what }
page-stand-redone = Rétabli : { $what }
page-stand-loop-how = Faites glisser sur les mesures à répéter, ou choisissez d’abord une figure.
page-stand-key-play = jouer, arrêter
page-stand-key-next = figure suivante
page-stand-key-before = figure précédente
page-stand-key-keep = garder la figure, ou la libérer
page-stand-key-leave-out = laisser la figure de côté
page-stand-key-hear = écouter la figure
page-stand-key-alternatives = aller à ce qui pourrait être ici à la place
page-stand-key-undo = annuler
page-stand-key-redo = rétablir
page-stand-key-plain = écouter l’air simple
page-stand-key-ornamented = écouter la ligne ornée
page-stand-key-in-turn = les écouter tour à tour
page-stand-key-loop = répéter les mesures autour de la figure, ou non
page-stand-key-count-in = décompte oui, non
page-stand-key-band = groupe oui, non
page-stand-key-setting = le réglage
page-stand-key-version = mettre une autre version à côté, ou la ranger
page-stand-key-lesson = en faire une leçon

## Le pupitre : une figure

page-figure = Figure
page-figure-none = Choisissez une figure dans la musique, ou passez de l’une à l’autre avec les flèches.
page-figure-looking = Recherche de ce qui pourrait être ici à la place…
page-figure-alternatives = Ce qui pourrait être ici
page-figure-no-other = Rien d’autre ne pourrait être ici.
page-figure-where = { $family } · { $where }
page-figure-place = { $name }, { $where }
page-figure-place-kept = { $name }, { $where }, gardé
page-figure-keep = Garder
page-figure-kept = Gardé
page-figure-leave-out = Laisser de côté
page-figure-hear = Écouter
page-figure-hear-name = Écouter : { $name }
page-figure-difficulty = Difficulté
page-difficulty-name =
    { $difficulty ->
        [easy] facile
        [moderate] moyen
        [demanding] exigeant
       *[hard] difficile
    }
page-figure-notes = Ses notes, telles qu’écrites
page-figure-added-note = Note ajoutée { $note }
page-figure-lower = Baisser { $note }
page-figure-raise = Hausser { $note }
page-figure-on-staff = { $name } sur une portée
page-figure-fit =
    { $fit ->
        [best] convient le mieux
        [well] convient bien
        [fairly] convient
       *[less] convient moins bien
    }
page-figure-stands = en place
page-figure-take = Prendre à la place
page-figure-take-name = Prendre à la place : { $name }

## Le pupitre : le réglage, les autres versions et les copies

page-setting = Réglage
page-setting-tempo = Tempo de l’arrangement
page-setting-density = Combien de figures
page-setting-families = Genres de figures
page-setting-techniques = Techniques une à une
page-density-usual = comme d’habitude
page-density-fewer = moins ({ $share } %)
page-density-more = plus ({ $share } %)
page-version-another = Une autre version
page-version-about = Le même réglage et les mêmes décisions, un autre bon choix de figures, sur une portée au-dessous.
page-version-show = En montrer une autre à côté
page-version-next = Encore une autre
page-version-take = La prendre
page-version-hide = La ranger
page-copy-another = Un autre arrangement
page-copy-about = Laisser celui-ci tel quel et continuer avec une copie : pour un autre instrument, un autre niveau. Les deux restent sur l’étagère.
page-copy-name = Son nom
page-copy-make = Copier

## L’écouter

page-hear-what = Quoi écouter
page-hear-plain = Simple
page-hear-ornamented = Orné
page-hear-in-turn = Tour à tour
page-hear-other = Autre
page-hear-both = Celui-ci, l’autre
page-hear-tempo = Tempo en temps par minute
page-hear-loop = Boucle
page-hear-loop-how = Boucle (L) : faites glisser sur des mesures, ou répétez celles de la figure
page-hear-loop-bars = mesures { $first }–{ $last }
page-hear-loop-on = Boucle : { $bars }
page-hear-loop-off = Pas de boucle
page-hear-count-in = Décompte
page-hear-feel = Feeling
page-hear-band-on = Avec le groupe
page-hear-band-off = Sans le groupe
page-part-name =
    { $part ->
        [melody] Mélodie
        [bass] Basse
        [chords] Accords
        [drums] Batterie
       *[click] Clic
    }
page-feel-usual = ce qui convient à l’air
page-feel-name =
    { $feel ->
        [swing] swing
        [shuffle] shuffle
        [slow-blues] slow blues
        [ballad] ballade
        [bossa] bossa
        [soul] soul
        [funk] funk
        [waltz] valse
        [folk-waltz] valse folk
        [march] marche et polka
        [reel] reel
        [jig] gigue
       *[other] { $feel }
    }

## La leçon

page-lesson-on = Leçon sur { $title }
page-lesson-built-from = Faite d’après { $arrangement }, dans son état actuel.
page-lesson-arrangement = l’arrangement au pupitre
page-lesson-others = Leçons sur cet air
page-lesson-new = Nouvelle leçon
page-lesson-your-words = Vos mots
page-lesson-for = Pour
page-lesson-for-whom = un élève, une classe
page-lesson-studio = Ligne du studio
page-lesson-studio-what = studio, jour et heure
page-lesson-notes = Notes sur la première page
page-lesson-notes-what = Ce qu’il faut écouter, par quoi commencer
page-lesson-more-words = Sous-titre, compositeur, droits
page-lesson-subtitle = Sous-titre
page-lesson-subtitle-what = niveau et style
page-lesson-composer = Compositeur
page-lesson-composer-what = comme dans le fichier
page-lesson-rights = Droits
page-lesson-rights-what = qui peut le copier
page-lesson-phrases = Phrases
page-lesson-phrases-about = Les exemples viennent des phrases choisies.
page-lesson-phrase-new =
    { $count ->
        [one] nouvelle, { $count } figure
       *[other] nouvelle, { $count } figures
    }
page-lesson-phrase-returns =
    { $count ->
        [one] déjà entendue, { $count } figure
       *[other] déjà entendue, { $count } figures
    }
page-lesson-reading = Lecture de l’arrangement…
page-lesson-whom = Pour qui, et comment
page-lesson-paper = Papier
page-paper-a-four = A4
page-paper-letter = Letter
page-lesson-language = Langue
page-lesson-note-names = Noms des notes
page-note-names-usual = ceux de la langue
page-note-names-english = C D E, B♭
page-note-names-german = C D E, B et H
page-note-names-solfege = Do Ré Mi
page-lesson-sound-files = Fichiers son
page-lesson-sections = Dans le dossier
page-lesson-section =
    { $section ->
        [handout] Fascicule
        [parts] Parties
        [sound] Son
        [exercises] Exercices
        [levels] Parcours gradué
        [page] Page hors ligne
        [overlays] Images
        [clips] Clips
       *[other] { $section }
    }
page-lesson-section-about =
    { $section ->
        [handout] l’air, chaque technique avec un exemple, l’exécution, un plan de travail
        [parts] une feuille pour chaque instrument choisi ci-dessous
        [sound] simple, orné, accompagnements et exemples, lent et rapide
        [exercises] les passages difficiles, et les techniques dans d’autres tonalités
        [levels] l’air du niveau le plus facile à celui-ci, avec un plan de cours
        [page] un seul fichier qui joue la leçon dans tout navigateur
        [overlays] les exemples sans fond, à poser sur une vidéo
        [clips] chaque exemple en vidéo, en large et en hauteur (lent)
       *[other] { "" }
    }
page-lesson-players = Instruments qui reçoivent une partie
page-lesson-techniques = Techniques
page-lesson-techniques-about = Chacune de celles qui sont choisies reçoit une section avec un exemple tiré de l’air. Changez ses mots là où vous le dites autrement.
page-lesson-technique-use =
    { $count ->
        [0] niveau { $level } · pas dans l’arrangement
        [one] niveau { $level } · une fois
       *[other] niveau { $level } · { $count } fois
    }
page-lesson-more = Ce que cet air offre encore
page-lesson-words = Mots
page-lesson-words-on = Mots sur { $name }
page-lesson-words-back = Remettre les mots habituels
page-lesson-preview = Les exemples, tels qu’ils seront imprimés
page-lesson-example-music = { $name }, simple au-dessus d’orné
page-lesson-examples =
    { $count ->
        [one] { $count } technique.
       *[other] { $count } techniques, la plus facile d’abord.
    }
page-lesson-no-part = Pas de partie pour { $player } : { $reason }
page-lesson-keeping = Enregistrement…
page-lesson-kept = Sur l’étagère
page-lesson-not-kept = Pas encore sur l’étagère
page-lesson-unkept = La leçon n’a pas pu être mise sur l’étagère : réessayez.
page-lesson-remove = Retirer cette leçon
page-lesson-remove-sure = Retirer cette leçon ?
page-lesson-remove-about = L’arrangement reste ; le plan et vos mots pour cette leçon disparaissent.
page-lesson-key-build = composer le dossier
page-lesson-key-download = télécharger le dossier
page-lesson-key-stop = arrêter la composition
page-lesson-key-stand = retour au pupitre

## Le dossier de la leçon

page-pack = Dossier
page-pack-build = Composer le dossier
page-pack-build-again = Recomposer
page-pack-download = Télécharger
page-pack-beginning = On commence…
page-pack-waiting = En attente d’un autre travail…
page-pack-reading = Lecture de la leçon…
page-pack-building = Composition en cours…
page-pack-step =
    { $step ->
        [engraving] Gravure { $done } / { $total }
        [sound] Son { $done } / { $total }
        [documents] Pages à imprimer { $done } / { $total }
        [page] Page hors ligne { $done } / { $total }
        [overlays] Images { $done } / { $total }
        [clips] Clips { $done } / { $total }
       *[other] { $step } { $done } / { $total }
    }
page-pack-ready =
    { $count ->
        [one] Prêt : { $count } fichier, { NUMBER($size, minimumFractionDigits: 1, maximumFractionDigits: 1) } Mo.
       *[other] Prêt : { $count } fichiers, { NUMBER($size, minimumFractionDigits: 1, maximumFractionDigits: 1) } Mo.
    }
page-pack-no-part = Pas de partie pour { $player } : { $reason }.
page-pack-none = Il n’y a pas encore de dossier : composez-le d’abord.
page-pack-outdated = Modifié depuis.
page-pack-stopped = Arrêté.

## Faire une prise

page-take-of = Prise : { $title }
page-take-music = La ligne à jouer
page-take-line =
    { $line ->
        [plain] L’air simple
       *[ornamented] Avec ses ornements
    }
page-take-panel = Comment enregistrer
page-take-what = Quoi jouer
page-take-which = À jouer
page-take-behind = Derrière vous
page-take-behind-click = Clic
page-take-behind-nothing = Rien
page-take-loudness = Volume
page-take-guide = Jouer la ligne avec vous, doucement
page-take-who = Qui joue
page-take-plays = { $name } joue.
page-take-headphones = Portez un casque, pour que le microphone n’entende que vous.
page-take-headphones-on = Casque sur les oreilles ?
page-take-choices = Choix
page-record = Enregistrer
page-take-record-button =
    { $state ->
        [starting] Un instant…
        [recording] Arrêter
       *[idle] Enregistrer
    }
page-take-count-in = Décompte : { $beats }
page-take-bar = Mesure { $bar } sur { $last }
page-take-again = Enregistrer de nouveau
page-take-playback = Écouter l’enregistrement
page-take-cancel = Arrêter l’écoute
page-take-bring = Ou apportez un enregistrement
page-take-choose-file = Choisir un fichier
page-take-file-about = WAV, FLAC, MP3 ou OGG, jusqu’à dix minutes. Tout tempo convient.
page-take-earlier = Prises de cet air
page-take-ornaments = { $count } ornements sur { $total }
page-take-not-kept = pas encore gardée
page-take-sound-not-ready = Le son n’est pas prêt : attendez un instant, et enregistrez de nouveau.
page-take-too-short = C’était trop court : jouez l’air, ou l’une de ses phrases.
page-take-clips =
    { $count ->
        [one] L’enregistrement sature à { $count } endroit : éloignez-vous du microphone la prochaine fois.
       *[other] L’enregistrement sature à { $count } endroits : éloignez-vous du microphone la prochaine fois.
    }
page-take-key-record = enregistrer, arrêter
page-take-key-microphone = essayer le microphone, le fermer
page-take-key-plain = jouer l’air simple
page-take-key-ornamented = jouer la ligne ornée
page-take-key-band = avec le groupe
page-take-key-click = avec un clic
page-microphone-which = Lequel
page-microphone-try = Essayer le microphone
page-microphone-close = Fermer le microphone
page-microphone-closed = fermé
page-microphone-not-encrypted = Un navigateur ne donne pas de microphone à une page non chiffrée d’un autre ordinateur : enregistrez sur l’ordinateur lui-même, ou apportez un enregistrement.
page-microphone-not-allowed = Le microphone n’est pas permis à cette page : permettez-le dans la barre d’adresse du navigateur, ou apportez un enregistrement.
page-microphone-none = Aucun microphone n’est branché : branchez-en un, ou apportez un enregistrement.
page-microphone-taken = Un autre programme occupe le microphone : fermez-le, ou apportez un enregistrement.
page-meter = Niveau du microphone, en décibels sous le maximum
page-meter-words =
    { $state ->
        [clips] Trop fort, cela sature : éloignez-vous, ou baissez l’entrée
        [hot] Trop près du maximum : éloignez-vous un peu
        [good] Bien
       *[soft] Faible : approchez-vous, ou montez l’entrée
    }
page-meter-spoken =
    { $state ->
        [clips] { $level } décibels, trop fort, cela sature : éloignez-vous, ou baissez l’entrée
        [hot] { $level } décibels, trop près du maximum : éloignez-vous un peu
        [good] { $level } décibels, bien
       *[soft] { $level } décibels, faible : approchez-vous, ou montez l’entrée
    }
page-delay = Décalage
page-delay-about = Ce qui vous est joué revient un peu plus tard. Ce temps est déduit, pour qu’une note sur le temps compte comme telle.
page-delay-by-hand = Régler à la main
page-delay-measure = Mesurer
page-delay-guess = Estimer
page-delay-measure-how = Pour mesurer, tenez un écouteur contre le microphone : cinq clics sont joués.
page-delay-how =
    { $how ->
        [guessed] { $ms } ms, estimé
        [measured] { $ms } ms, mesuré
       *[by-hand] { $ms } ms, réglé à la main
    }
page-delay-listening = À l’écoute de cinq clics…
page-delay-found = Le décalage est de { $delay }.
page-delay-unclear = Les clics ne sont pas revenus clairement : tenez un écouteur contre le microphone, montez un peu le son, et mesurez de nouveau.
page-sending-listening = Écoute en cours…
page-sending-listening-about = Notes, ornements, justesse et rythme sont recherchés. Cela prend quelques secondes par minute de musique.
page-sending-failed = Pas de compte rendu possible
page-sending-no-recording = Ce n’est pas un enregistrement : apportez un fichier WAV, FLAC, MP3 ou OGG.
page-sending-too-large = Le fichier fait { $size } Mo ; { $most } Mo est la limite. Enregistrez-le en MP3, ou un seul air à la fois.

## Le compte rendu d’une prise

page-report-of = Prise de { $title }
page-report-around = Autour de cette prise
page-report-another = Une autre prise
page-report-on-stand = Au pupitre
page-report-short = En bref
page-report-reading = Lecture du compte rendu…
page-report-asked-at = demandé à { $tempo }
page-report-seconds = { $seconds } s
page-report-minutes = { $minutes } min { $seconds } s
page-report-key = Cela sonne { $where }.
page-report-recording = L’enregistrement
page-report-along = Écouter avec le groupe
page-report-whose = À qui est cette prise
page-report-keep = Garder
page-report-kept = Gardée sur l’étagère.
page-report-kept-now = Gardée.
page-report-kept-of = Gardée comme prise de { $student }.
page-report-discard = Supprimer
page-report-discard-sure = Supprimer cette prise ?
page-report-discard-about = L’enregistrement et son compte rendu sont effacés. C’est irrévocable.
page-report-discard-yes = Supprimer
page-report-print = Imprimer
page-report-printing = Mise en page…
page-report-printed = Ouvrir les pages (PDF)
page-report-advice = À travailler ensuite
page-report-heard = Tel qu’on l’a entendu
page-report-heard-about = Votre hauteur au-dessus de la ligne imprimée : au milieu de la tête de note, vous êtes juste avec vous-même ; un interligne d’écart vaut 50 cents.
page-report-passage = Passage
page-report-music = La ligne imprimée avec la hauteur entendue
page-report-signs = Signes
page-report-note-kind =
    { $kind ->
        [right] une note de l’air
        [figure] dans un ornement
        [wrong] une autre note
       *[added] une note ajoutée
    }
page-report-note = { $note }, { $cents } cents
page-report-status =
    { $status ->
        [done] réussi
        [missed] non entendu
       *[added] ajouté par vous
    }
page-report-ornament-status =
    { $status ->
        [done] ornement réussi
        [missed] ornement non entendu
       *[added] ornement ajouté par vous
    }
page-report-no-ornaments = Aucun ornement n’était demandé, et aucun n’a été entendu.
page-report-came-out = { $count } réussis sur { $total }
page-ornaments-added = { $count } ajoutés
page-report-where = Où
page-report-outcome = Ce qu’il est devenu
page-report-sure = Certitude
page-report-hear = Écouter { $name }, { $where }
page-report-slips = Notes autres que celles écrites
page-report-slip = { $what } ({ $where })
page-report-time = Rythme
page-report-tempo = { $tempo } temps par minute
page-report-drift = Du début à la fin
page-report-steady = régulier
page-report-faster = { $percent } pour cent plus vite
page-report-slower = { $percent } pour cent plus lent
page-report-spread = Autour de votre propre pulsation
page-report-spread-within = notes à moins de { $ms } ms
page-report-even = égales
page-report-swing = { NUMBER($ratio, minimumFractionDigits: 2, maximumFractionDigits: 2) } pour 1
page-report-behind-band = Par rapport à l’accompagnement
page-report-graces = Appoggiatures brèves
page-report-on-beat = dessus
page-report-late = { $ms } ms de retard
page-report-early = { $ms } ms d’avance
page-report-beats = Où dans la mesure
page-report-pitch = Justesse et son
page-report-your-a = Votre La
page-report-tuning = { $hertz } Hz, { $cents } cents de 440
page-report-melody = Notes de la mélodie
page-report-right = { $count } justes sur { $total }
page-report-soft-loud = Du doux au fort
page-report-decibels = { $range } dB
page-report-by-register = Par registre et par note
page-report-cents = { $cents } cents

## Les élèves et leurs progrès

page-students-all = Tous les élèves
page-students-nobody = Personne en particulier
page-students-none = Encore personne. Les prises peuvent aussi se garder sans nom.
page-students-name = Nom
page-student-new = Nouvel élève
page-student-name-what = Prénom ou initiales
page-students-takes =
    { $count ->
        [0] Aucune prise gardée
        [one] Une prise
       *[other] { $count } prises
    }
page-students-takes-last =
    { $count ->
        [one] Une prise, la dernière le { $day }
       *[other] { $count } prises, la dernière le { $day }
    }
page-students-rename = Renommer
page-students-rename-name = Renommer { $name }
page-students-remove-sure = Retirer cet élève ?
page-students-remove-about = « { $name } » quitte l’étagère, et { $takes }. C’est irrévocable.
page-students-removed-too =
    { $count ->
        [0] rien d’autre
        [one] une prise avec son enregistrement
       *[other] { $count } prises avec leurs enregistrements
    }
page-privacy = Ce qui est gardé d’un élève
page-privacy-kept = Un nom, et les prises que vous choisissez de garder : enregistrement, compte rendu et date. Rien d’autre, et rien ne quitte cet ordinateur : tout est dans { $folder }, et dans les exports que vous faites vous-même.
page-privacy-ask = Un prénom ou des initiales suffisent. Demandez à l’élève, et aux parents d’un enfant, avant de garder un enregistrement. Retirer un élève efface toutes ses prises et tous ses enregistrements.
page-takes = Prises
page-takes-all-of = Toutes les prises de { $student }
page-takes-of-nobody = Prises de personne en particulier
page-measure-pitch = Justesse
page-measure-timing = Rythme
page-measure-ornaments = Ornements
page-progress-around = Autour de ces prises
page-progress-all-tunes = tous les airs
page-progress-record = Faire une prise
page-progress-none = Pas encore de prise : enregistrez-en une, et gardez-la.
page-progress-when = Quand
page-progress-line = Ligne
page-progress-right = Notes justes
page-progress-keep = garder ?
page-progress-none-asked = aucun demandé
page-progress-no-ornament = Aucun ornement n’a encore été demandé.
page-progress-cents = { NUMBER($cents, minimumFractionDigits: 1, maximumFractionDigits: 1) } cents
page-progress-pitch-about = Écart en cents au milieu de la note, en médiane. Jusqu’à 10 (teinté), c’est juste pour la plupart des oreilles.
page-progress-timing-about = Dispersion des notes autour de la pulsation de l’élève. Jusqu’à 35 ms (teinté), c’est stable.
page-progress-ornaments-about = Combien des ornements demandés sont réussis. À partir de quatre sur cinq (teinté), ils sont sûrs.
page-progress-point =
    { $unit ->
        [cents] { $tune }, { $day } : { $value } cents
        [ms] { $tune }, { $day } : { $value } ms
       *[percent] { $tune }, { $day } : { $value } %
    }
page-progress-chart =
    { $measure } : { $value } { $unit ->
        [cents] cents
        [ms] ms
       *[percent] %
    } dans la dernière de { $count ->
        [one] { $count } prise
       *[other] { $count } prises
    }{ $course ->
        [same] , comme au début
        [better] , mieux que { $first } au début
        [worse] , moins bien que { $first } au début
       *[none] { "" }
    }
