# Les mots autour de la musique imprimée.

sheet-legend = Les ornements et leurs mesures
sheet-pickup = levée

# Où quelque chose ne va pas.

problem-in-file = { $name } : { $problem }
problem-in-tune = { $tune } : { $problem }
abc-at = ligne { NUMBER($line, useGrouping: 0) }, colonne { NUMBER($column, useGrouping: 0) }, « { $text } » : { $problem }
abc-warned = ligne { NUMBER($line, useGrouping: 0) }, colonne { NUMBER($column, useGrouping: 0) } : { $problem }
xml-at = Ligne { $line } : { $problem }
abc-tune = air { $place }
abc-tune-titled = air { $place }, { $title }
abc-at-line = à la ligne { NUMBER($line, useGrouping: 0) }

# Les fichiers et ce qu’ils contiennent.

file-kind = { $kind ->
    [compressed] MusicXML compressé
   *[other] { $kind }
}
and-more = { $count ->
    [one] { $count } autre
   *[other] { $count } autres
}
first-of-several-read = le fichier contient { $count } airs ; le premier a été lu
file-named-otherwise = le nom du fichier se termine par { $ending }, mais il contient du { $kind } et a été lu comme tel
one-tune-only = Un fichier de ce genre ({ $kind }) ne contient qu’un air : omettez son numéro et son titre.
no-tune-titled = Aucun air n’a ici pour titre « { $given } » ; il y a : { $tunes }.
no-tune-numbered = Il n’y a pas ici d’air numéro { $given } ; il y a : { $tunes }.
file-is-pdf = C’est un PDF : on ne peut lire les notes d’une page ; exportez plutôt du MusicXML, de l’ABC ou du MIDI.
file-is-picture = C’est une image : exportez plutôt du MusicXML, de l’ABC ou du MIDI.
file-is-gzip = C’est une archive gzip : décompressez-la d’abord.
file-is-sound = C’est un fichier de son : un air se lit dans du MusicXML, de l’ABC ou du MIDI.
file-is-web-page = C’est une page web, pas un air : téléchargez le fichier lui-même.
file-is-binary = Il ne contient aucun air lisible, mais des données binaires : donnez du MusicXML, de l’ABC ou du MIDI.
file-is-text = C’est du texte, mais pas de l’ABC (il n’y a pas de ligne X: ni K:) : donnez du MusicXML, de l’ABC ou du MIDI.

# Les parties, et la mélodie parmi elles.

part-unnamed = sans nom
part-numbered = partie { $number }
part-in-list = { $number } { $name }
no-such-part = « { $given } » n’est pas une partie de ce fichier ; il y a : { $parts }. Donnez un numéro ou un nom entier.
part-in-doubt = « { $given } » désigne plusieurs parties ; il y a : { $parts }. Donnez un numéro ou un nom entier.
chords-without-melody = Il y a des accords chiffrés, mais aucune mélodie : ajoutez la mélodie au fichier.
chords-without-notes = Il y a des accords chiffrés, mais aucune mélodie : ajoutez-la, ou choisissez une autre partie.
no-pitched-notes = Il n’y a pas de notes de hauteur définie à orner : donnez un fichier qui contient une mélodie.
no-notes-at-all = Il n’y a pas de notes à orner : choisissez une autre partie ou un autre fichier.
melody-taken-from = la mélodie vient de { $part } ; il y a : { $parts }

# Mesures, notes, accords et tempos de tout fichier.

quarter-notes = { $count ->
    [one] { $count } noire
   *[other] { $count } noires
}
    .number = { $count }
quarter-note-parts = { $count } de noire
    .number = { $count }
bar-holds = { $bar } : { $held }, alors qu’une mesure à { $metre } en compte { FORM($full, "number") }
bar-kept = { $fault } ; gardée telle quelle
bars-irregular = { $fault }{ $more ->
    [0] { "" }
    [one] { " " }(et { $more } autre de même)
   *[other] { " " }(et { $more } autres de même)
} : corrigez dans le fichier, ou gardez les mesures telles quelles.
bar-unmeasured = Une mesure sans chiffrage dure { $length }, plus qu’on ne peut mesurer : mettez-y des barres de mesure.
tune-too-long = L’air compte { $bars } mesures ; { $limit } est la limite : réduisez le fichier à l’air.
notes-together = { $bar } : { $pitch } commence alors que { $other } sonne encore ; une mélodie n’a qu’une note à la fois : choisissez une autre partie, ou retirez la seconde voix.
note-unplayable = { $bar } : la note { $pitch } ({ $length }) n’est pas jouable : corrigez-la.
chords-at-one-place = { $bar } : « { $first } » et « { $second } » sont au même endroit ; « { $first } » est omis
chord-kept-as-text = { $bar } : « { $given } » n’est pas un chiffrage d’accord lisible ; gardé comme texte, joué sans accord
tempo-unplayable = { $bar } : un tempo de { $given } noires à la minute ; de { $low } à { $high }, c’est jouable : corrigez-le.
note-without-length = La note { $number } ({ $pitch }) n’a pas de durée : donnez-lui-en une ou omettez-la.
note-over-another = La note { $number } ({ $pitch }, tics { $ticks }) recouvre la précédente ou sort des mesures (tics { $free }) : raccourcissez-la ou déplacez-la.
score-empty = Une partition sans portées ou sans mesures ne peut être écrite : donnez au moins une de chaque.

# ABC : ce qui ne va pas à un endroit.

abc-no-key-no-music = il n’y a ni champ K: ni musique ; un air en ABC commence par X:, T: et K:, puis viennent les notes.
abc-line-too-long = la ligne compte { $count } caractères ; { $limit } est la limite : coupez-la.
abc-no-key = ce n’est pas une tonalité ; écrivez une lettre A-G, # ou b, et un mode, comme K:G ou K:Bbdor.
abc-after-key = « { $given } » après la tonalité ne veut rien dire ; écrivez par exemple K:F#m ou K:D =c.
abc-no-mode = « { $given } » n’est pas un mode ; on connaît { $known }.
abc-no-metre = ce n’est pas un chiffrage de mesure ; écrivez par exemple M:4/4, M:6/8, M:C|, M:(2+2+3)/8 ou M:none.
abc-no-unit = ce n’est pas une durée de note ; écrivez par exemple L:1/8 (de 1/512 à 4).
abc-no-tempo = ce n’est pas un tempo ; écrivez par exemple Q:1/4=120 ou Q:"Allegro" 1/4=120.
abc-tempo-outside = cela fait { $given } noires à la minute ; de { $low } à { $high }, c’est jouable : corrigez-le.
abc-no-part-order = ce n’est pas un ordre de parties ; écrivez par exemple P:AABB ou P:(AB)2C.
abc-bracket-open = une parenthèse n’est pas fermée ; écrivez par exemple P:(AB)2C.
abc-too-many-parts = l’ordre compte plus de { $limit } parties : raccourcissez-le.
abc-no-definition = ce n’est pas une définition ; écrivez par exemple U:T = !trill!.
abc-no-note = ce n’est pas une note.
abc-note-outside = la note sort de l’étendue du MIDI : retirez quelques signes d’octave.
abc-length-absurd = cette durée est absurde ; écrivez par exemple A3, A/2 ou A3/2.
abc-note-length = une note peut durer de { $shortest } à { $longest } rondes.
abc-rest-in-chord = un silence n’a pas sa place dans un accord.
abc-bar-rest-count = un silence peut durer de 1 à 999 mesures.
abc-bar-rest-inside-bar = un silence de mesures entières doit suivre une barre de mesure.
abc-no-ending-numbers = ce ne sont pas des numéros de fin de reprise ; écrivez par exemple [1 ou [1,3 ou [1-3.
abc-ending-outside = le numéro d’une fin de reprise doit être entre 1 et { $limit }.
abc-too-many-bars = l’air compte plus de { $limit } mesures : partagez-le.
abc-tuplet-outside = un n-olet met de 2 à { $limit } notes dans le temps de 1 à { $limit }.
abc-broken-misplaced = un rythme pointé se met entre deux notes, comme A>B, A>>B ou A<B.
abc-broken-over-bar-line = un rythme pointé ne peut franchir une barre de mesure : écrivez les durées en entier.
abc-broken-open = un rythme pointé demande encore une note avant la barre de mesure.
abc-among-graces = « { $given } » n’a pas sa place parmi les petites notes.
abc-chord-in-chord = un accord ne peut commencer dans un accord.
abc-chord-end-loose = il n’y a pas d’accord à fermer ici.
abc-chord-open = un accord n’est pas fermé avant cette barre de mesure.
abc-unknown-sign = aucun signe d’ABC ne commence ainsi : retirez-le, ou écrivez ce qui était voulu.
abc-notes-together = { $count } notes sonnent ensemble ; une mélodie n’a qu’une note à la fois : retirez les autres, ou ne gardez que la plus haute.
abc-voices-together = deux voix sonnent ensemble ; une mélodie n’a qu’une note à la fois : retirez les autres, ou ne gardez que la note la plus haute.

# ABC : ce qui a été deviné ou omis.

abc-left-out = « { $text } » est omis : { $problem }
abc-no-key-field = il n’y a pas de champ K: ; l’air est lu sans armure
abc-key-guessed = { $given } est lu comme { FORM($key, "inline") }
abc-key-changed = l’armure de { FORM($key, "inline") } est changée par des altérations ; elles sont écrites devant les notes
abc-after-metre = « { $given } » après le chiffrage { $metre } est omis
abc-macros = les macros ne sont pas développées ; les notes sont lues comme elles sont écrites
abc-music-after-gap = ligne { NUMBER($line, useGrouping: 0) } : la musique après une ligne vide n’appartient pas à l’air et est omise
abc-music-after-gap-read = ligne { NUMBER($line, useGrouping: 0) } : la musique après une ligne vide est lue comme faisant partie de l’air
abc-parts-missing = l’ordre des parties { $order } est omis : l’air n’a pas de partie { $parts }
abc-parts-written-out = les parties sont écrites dans l’ordre où elles se jouent, { $order }
abc-melody-voice = la mélodie est la voix { $name } ; omis : { $others }
abc-ending-cut = une fin de reprise non fermée est lue aussi longue que la première
abc-tie-loose = une liaison de durée sans note qui la précède est omise
abc-slur-end-loose = la fin d’une liaison sans commencement est omise
abc-ties-as-slurs = { $count ->
    [one] { $count } liaison de durée entre des notes différentes est lue comme un legato
   *[other] { $count } liaisons de durée entre des notes différentes sont lues comme des legatos
}
abc-bar-lines-understood = { $count ->
    [one] { $count } barre de mesure est sous-entendue en fin de ligne
   *[other] { $count } barres de mesure sont sous-entendues en fin de ligne
}
abc-top-notes = { $count ->
    [one] à { $count } endroit, plusieurs notes sonnent ensemble : la plus haute est lue
   *[other] à { $count } endroits, plusieurs notes sonnent ensemble : la plus haute est lue
}
abc-more-places = { $count ->
    [one] { $count } autre endroit semblable
   *[other] { $count } autres endroits semblables
}
abc-signs-left-out = omis, car ce ne sont pas des notes d’une mélodie : { $signs }
abc-sign-counted = { $sign } ({ $count })
abc-sign-on-rest = { $sign } sur un silence
abc-further-verses = couplets suivants

# MusicXML.

xml-no-score = C’est un fichier MusicXML de genre { $kind }, pas une partition : donnez la partition elle-même.
xml-not-music = C’est du XML, mais pas du MusicXML (son premier élément est <{ $element }>) : exportez-le en MusicXML.
xml-too-large = Le XML compte plus de { $elements } éléments ou { $bytes } octets : enregistrez la mélodie seule.
xml-damaged = Le XML est interrompu ou endommagé à la ligne { NUMBER($line, useGrouping: 0) } ({ $reason }) : exportez-le ou enregistrez-le de nouveau.
xml-empty = aucun contenu
xml-unreadable = Le XML ne peut être lu ({ $reason }) : exportez-le ou enregistrez-le de nouveau.
xml-entities = Le XML emploie ses propres entités, dont une partition n’a que faire : exportez-le de nouveau en MusicXML.
mxl-damaged = Le fichier compressé est endommagé ({ $reason }) : exportez-le ou téléchargez-le de nouveau.
mxl-too-many-files = Le fichier compressé contient { $files } fichiers ; { $limit } est la limite : exportez la partition seule.
mxl-unsafe-name = Le fichier compressé contient un nom dangereux, « { $name } » : ne l’utilisez pas.
mxl-password = Le fichier compressé est protégé par un mot de passe : enregistrez-le sans.
mxl-packing = Le fichier compressé l’est d’une façon que .mxl ne permet pas : enregistrez-le de nouveau en .mxl.
mxl-bomb = Le fichier compressé passerait de { $packed } à { $unpacked } octets ; { $limit } et { $ratio } fois la taille sont les limites : ne l’utilisez pas.
mxl-unpacks-too-far = Le fichier compressé donne plus de { $limit } octets : ne l’utilisez pas.
mxl-names-no-score = Le conteneur du fichier compressé ne nomme aucune partition qui s’y trouve : exportez-le de nouveau en .mxl.
mxl-holds-no-score = Le fichier compressé ne contient pas de partition : exportez-le de nouveau en .mxl ou .musicxml.
xml-no-part = La partition n’a aucune partie : exportez-la de nouveau avec ses portées.
xml-element-missing = <{ $element }> manque : corrigez-le, ou exportez le fichier de nouveau.
xml-element-senseless = <{ $element }> contient « { $given } », qui n’y a pas de sens : corrigez-le, ou exportez le fichier de nouveau.
xml-divisions = { $given } divisions de la noire ; de 1 à { $limit }, cela a un sens : exportez le fichier de nouveau.
xml-negative-duration = une durée négative : corrigez-la, ou exportez le fichier de nouveau.
xml-backup-too-far = un retour avant le début de la mesure : exportez le fichier de nouveau.
xml-note-too-short = la note { $pitch } dure { $length }, trop peu pour être travaillée : écrivez-la en petite note, ou allongez-la.
xml-key-too-far = une armure de { $count } altérations ; 7 est la limite : écrivez-la par enharmonie.
xml-tempo-no-number = le tempo « { $given } » n’est pas un nombre : corrigez-le.
xml-notes-at-once = { $bar } : { $pitch } et { $other } sonnent ensemble, et une mélodie n’a qu’une note à la fois : retirez du fichier les notes du bas.
xml-part-at-once = { $bar } : { $pitch } et { $other } sonnent ensemble, et une mélodie n’a qu’une note à la fois : choisissez une autre partie ({ $parts }), ou retirez du fichier les notes du bas.
xml-one-voice-read = seule la voix { $voice } de la portée du haut a été lue ; { $count ->
    [one] { $count } note d’autres voix et portées est omise
   *[other] { $count } notes d’autres voix et portées sont omises
}
xml-signs-left-out = { $count ->
    [one] { $count } signe { $sign } omis : il n’a pas sa place ici
   *[other] { $count } signes { $sign } omis : ils n’ont pas leur place ici
}
xml-lengths-rounded = { $count ->
    [one] { $count } note, { FORM($bar, "at") }, a une durée plus fine que { $part } de noire et y a été arrondie
   *[other] { $count } notes, la première { FORM($bar, "at") }, ont des durées plus fines que { $part } de noire et y ont été arrondies
}
xml-graces-at-end = des petites notes à la fin de l’air, que nulle note ne suit, sont omises
xml-octave-outside = { $pitch } ne peut être écrit : MusicXML a les octaves 0 à 9 ; déplacez les notes par octaves.
no-bars-per-system = { $given } mesures par système ne font pas une page : donnez 1 ou plus.

# MIDI.

midi-damaged-or-large = Le fichier MIDI est endommagé ou dépasse { $limit } octets : exportez-le de nouveau.
midi-breaks-off = Le fichier MIDI est interrompu : exportez-le ou téléchargez-le de nouveau.
midi-damaged = Le fichier MIDI est endommagé ({ $reason }) : exportez-le ou téléchargez-le de nouveau.
midi-smpte = Le fichier MIDI compte le temps en images SMPTE, non en temps musicaux : exportez-le avec des tics par temps.
midi-format = C’est un fichier MIDI de format { $given } ; 0 et 1 se lisent : exportez-le au format 1.
midi-too-many-bars = Le fichier MIDI compte plus de { $limit } mesures : réduisez-le à l’air.
midi-part-empty = { $part } n’a pas de notes ; il y a : { $parts }. Choisissez une autre partie.
midi-bar-crowded = { $bar } : des notes trop serrées pour aucun rythme ; éclaircissez-les, ou choisissez une autre partie.
midi-notes-at-once = { $bar } : { $pitch } et { $other } sonnent ensemble, et une mélodie n’a qu’une note à la fois : choisissez une autre partie ({ $parts }).
midi-swing-read = des croches longues-brèves d’un bout à l’autre ont été lues comme des croches égales avec un feeling swing
midi-silent-bars = { $count ->
    [one] { $count } mesure vide avant la mélodie, omise
   *[other] { $count } mesures vides avant la mélodie, omises
}
midi-key-found = le fichier ne nomme pas de tonalité ; les notes donnent { FORM($key, "inline") }
midi-key-doubted = le fichier dit { FORM($said, "inline") }, mais ses notes sont celles de { FORM($key, "inline") } et ont été lues ainsi
midi-part = { $name } ({ $sound })
midi-channel = Canal { $number }
midi-family = { $family ->
    [piano] Piano
    [chromatic-percussion] Percussions à clavier
    [organ] Orgue
    [guitar] Guitare
    [bass] Basse
    [strings] Cordes
    [ensemble] Ensemble
    [brass] Cuivres
    [reed] Anches
    [pipe] Flûtes
    [synth-lead] Synthé solo
    [synth-pad] Nappe de synthé
    [synth-effects] Effets de synthé
    [ethnic] Instruments du monde
    [percussive] Percussions
   *[sound-effects] Bruitages
}

# Gravure et pages.

no-reason-given = sans raison donnée
engraver-missing = Le graveur manque ({ $reason }) : installez le paquet « verovio ».
engraver-no-layout = Le graveur ne peut mettre la musique en page : { $reason }.
engraver-no-room = Le graveur ne peut mettre la musique en { $systems ->
    [one] { $systems } système
   *[other] { $systems } systèmes
} : donnez moins de mesures par système.
engraver-lost-bars = Le graveur a dessiné { $drawn } mesures sur { $bars } : signalez l’air avec lequel cela arrive.
staff-height-outside = Une portée de { $given } mm ne peut être gravée : donnez de 2 à 40 mm (7 est l’usage).
page-width-outside = Une page large de { $given } mm ne va pas avec une portée de { $staff } mm : donnez de { $low } à { $high } mm.
bars-per-system-outside = { $given } mesures par système ne peuvent être gravées : donnez de 1 à 32.
engraver-page-unread = La page du graveur ne peut être lue : installez la version de « verovio » que ce programme nomme.
engraver-drawing-damaged = Le dessin du graveur est endommagé (un groupe n’y a pas de fin) : signalez l’air avec lequel cela arrive.
page-octave-outside = { $pitch } ne peut être écrit : une page a les octaves 0 à 9 ; déplacez les notes par octaves.
font-not-stored = La police musicale ne peut être enregistrée : { $reason } { $variable } nomme un autre dossier.
font-lacks-sign = La police musicale { $font } n’a pas de glyphe pour { $sign } : réinstallez le paquet « verovio ».
font-not-found = La police musicale { $font } est introuvable : réinstallez le paquet « verovio ».
font-empty = { $file } du paquet « verovio » ne contient pas de police : réinstallez-le (6.0 ou plus récent).
resolution-outside = { $given } points par pouce ne peuvent être dessinés : donnez de 20 à 1200 (144 convient à un écran).
picture-size-outside = Une image de { $width } sur { $height } pixels ne peut être dessinée : donnez de 16 à 8192.
typesetter-missing = Le compositeur de pages manque ({ $reason }) : installez le paquet « typst ».
typesetter-failed = Le compositeur de pages a échoué ({ $reason }) : signalez l’air avec lequel cela arrive.
typesetter-made-no-page = Le compositeur de pages n’a fait aucune page : signalez l’air avec lequel cela arrive.
no-such-paper = Pas de papier « { $given } » : choisissez { LIST($known, "or") }.
no-such-page = Il n’y a pas de page { $page } : la feuille en a { $pages }.
