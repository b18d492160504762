# Enregistrements.

recording-missing = { $file } n’existe pas : vérifier le nom et le dossier.
recording-is-folder = { $file } est un dossier et non un enregistrement : indiquer un fichier qui s’y trouve.
audio-unreadable = { $file } ne peut pas être lu comme du son ({ $reason }) : l’enregistrer en WAV, FLAC, MP3 ou OGG.
recording-shape = Du son de forme { $shape } et de type { $type } n’est pas un enregistrement : donner des nombres à virgule entre −1 et 1, en (frames,) ou (frames, channels).
audio-rate = Une fréquence de { $rate } Hz est hors de { $low } à { $high } Hz : convertir { $name } à { $usual } Hz.
recording-not-numbers = { CAPITAL($name) } contient des valeurs qui ne sont pas des nombres : enregistrer ou exporter de nouveau.
recording-unclear = { $name } : { $advice }
recording-without-notes = { $name } : aucune note ne s’entend : enregistrer plus près de l’instrument, et plus longtemps.
recording-silent = On n’entend presque rien : vérifier le micro et son niveau, puis enregistrer de nouveau.
recording-noisy = C’est surtout du bruit sans hauteur : se rapprocher du micro et s’éloigner du bruit.
recording-without-player = On n’y entend aucun instrument à vent, seulement d’autres sons : enregistrer la mélodie, près du micro.
recording-of-several = Deux voix ou plus sonnent à la fois : enregistrer la mélodie seule, ou écouter l’accompagnement au casque.
recording-clipped = Les moments forts sont écrêtés : baisser le niveau d’enregistrement jusqu’à ce que l’indicateur reste hors du rouge.
the-recording = l’enregistrement
record-nearer = Enregistrer de nouveau, plus près du micro.
no-notes-heard = Aucune note ne s’entend dans { $seconds } s de son. { $remedy }
title-as-played = Ce qui a été joué

# Une ligne face à la mélodie.

the-tune = la mélodie
the-note = la note
heard-no-notes = Aucune note n’a été entendue
heard-notes = { $count ->
    [one] { $count } note a été entendue, { $low }
   *[other] { $count } notes ont été entendues, de { $low } à { $high }
}
not-this-tune = { $name } : cela ne ressemble pas à « { $tune } ». { $heard } ; la ligne et la mélodie s’accordent à { NUMBER($likeness, style: "percent") }, une interprétation atteint { NUMBER($least, style: "percent") } et plus. Indiquer la mélodie qui a été jouée ; si c’était bien « { $tune } », l’enregistrer de nouveau, en entier et avec moins d’ornements.
distance = { $semitones ->
    [1] une seconde mineure
    [2] une seconde majeure
    [3] une tierce mineure
    [4] une tierce majeure
    [5] une quarte
    [6] un triton
    [7] une quinte
    [8] une sixte mineure
    [9] une sixte majeure
    [10] une septième mineure
   *[11] une septième majeure
}
distance-octaves = { $octaves ->
    [1] une octave
   *[other] { $octaves } octaves
}
distance-and-octaves = { distance } et { distance-octaves }
line-higher = { $distance } plus haut que la mélodie
line-lower = { $distance } plus bas que la mélodie
line-read-on = { $lies }, comme lorsque la partie est lue par un de ces instruments : { LIST($instruments, "or") }
slip-wrong = { $played } au lieu de { $written }
slip-left-out = { $written } omis
slip-added = { $played } ajouté
bars-named = mesures { $bars }
pickup-and-bars = la levée et { $bars }
beat-name = temps { $number }
    .at = sur le temps { $number }
beats-between = entre les temps
register-low = grave
register-middle = médium
register-high = aigu
bars-from-to = mesures { $first }–{ $last }
pickup-to-bar = de la levée à la mesure { $last }

# Ce qui s’est passé dans une prise : une phrase pour chaque chose, la première du rapport.

perhaps = Peut-être : { $words }
the-rest = le reste
note-itself = { $note }
slip-there = { $words } ({ FORM($where, "full") })
happened-stop = { $count ->
    [one] La musique s’est arrêtée pendant { $seconds } secondes ({ $bars }).
   *[other] La musique s’est arrêtée { $count } fois, { $seconds } secondes en tout ({ $bars }).
}
happened-again = { CAPITAL($bar) } : recommencée une fois.
happened-again-from = { CAPITAL(FORM($bar, "at")) }, le jeu s’est interrompu et a repris plus haut ; joué deux fois : { $bars }.
happened-again-often = Le jeu s’est interrompu et a repris plus haut { $count } fois ; recommencé : { $bars }.
happened-skipped = { $count ->
    [one] Une mesure a été sautée : { $bars }.
   *[other] { $count } mesures ont été sautées : { $bars }.
}
happened-part = Seule une partie a été jouée : { $bars } sur { $last }.
happened-off = Toute la prise sonne { $words }.
happened-off-bars = { $side ->
    [higher] { CAPITAL($distance) } plus haut que ce qui est écrit : { $bars }.
   *[lower] { CAPITAL($distance) } plus bas que ce qui est écrit : { $bars }.
}
happened-key = L’armure a été oubliée : { $played } au lieu de { $written }, { $count ->
    [one] une fois
   *[other] { $count } fois
}.
happened-wrong = { $count ->
    [one] Une note sur { $wanted } n’était pas celle qui est écrite : { $examples }.
   *[other] { $count } notes sur { $wanted } n’étaient pas celles qui sont écrites : { $examples }{ $more ->
        [0] .
       *[other]  ; et ainsi de suite.
    }
}
happened-left-out = { $count ->
    [one] Une note sur { $wanted } a été omise : { $examples }.
   *[other] { $count } notes sur { $wanted } ont été omises : { $examples }{ $more ->
        [0] .
       *[other]  ; et ainsi de suite.
    }
}
happened-added = { $count ->
    [one] Une note a été ajoutée, qui n’est pas dans la mélodie : { $examples }.
   *[other] { $count } notes ont été ajoutées, qui ne sont pas dans la mélodie : { $examples }{ $more ->
        [0] .
       *[other]  ; et ainsi de suite.
    }
}
happened-ornament = { CAPITAL($name) } : { $missed } sur { $asked } ne s’entendaient pas ({ $bars }).
happened-ornaments = { $missed } ornements sur { $asked } ne s’entendaient pas ({ $bars }).
happened-ornaments-least = Au moins { $missed } ornements sur { $asked } ne s’entendaient pas ({ $bars }).
happened-tempo = { $way ->
    [faster] Le tempo était plus rapide que demandé : { $played } temps à la minute au lieu de { $asked }.
   *[slower] Le tempo était plus lent que demandé : { $played } temps à la minute au lieu de { $asked }.
}
happened-drift = { $way ->
    [faster] { CAPITAL(FORM($bar, "at")) }, la musique commence à accélérer : à la fin, elle est { $percent } pour cent plus rapide qu’avant.
   *[slower] { CAPITAL(FORM($bar, "at")) }, la musique commence à ralentir : à la fin, elle est { $percent } pour cent plus lente qu’avant.
}
happened-span = { $way ->
    [faster] Quelques mesures sont allées { $percent } pour cent plus vite que les autres : { $bars }.
   *[slower] Quelques mesures sont allées { $percent } pour cent plus lentement que les autres : { $bars }.
}
happened-late = { $side ->
    [late] Les notes { FORM($beats, "at") } viennent { $ms } ms plus tard que les autres ({ $count } notes).
   *[early] Les notes { FORM($beats, "at") } viennent { $ms } ms plus tôt que les autres ({ $count } notes).
}
happened-rhythm = { $side ->
    [late] Une note est venue trop tard pour le rythme écrit ({ FORM($where, "full") }).
   *[early] Une note est venue trop tôt pour le rythme écrit ({ FORM($where, "full") }).
}
happened-rhythms = À { $count } endroits, le rythme n’était pas celui qui est écrit ({ $bars }).

# Ce qui a réussi.

praise-all-ornaments = { $asked ->
    [one] L’ornement est sorti.
   *[other] Les { $asked } ornements sont tous sortis.
}
praise-ornaments = { $done } ornements sur { $asked } s’entendaient nettement ; le plus net : { $technique } { FORM($bar, "at") }.
praise-notes-safe = { $right } notes de la mélodie sur { $wanted } étaient justes : la mélodie est bien dans les doigts.
praise-notes = { $right } notes de la mélodie sur { $wanted } étaient justes.
praise-beat = La pulsation était stable : deux notes sur trois tombent à { $ms } ms près.
praise-tune = La mélodie se reconnaît.

# Ce qu’il faut travailler : un titre, un constat, un exercice.

advice-stop = Ne pas s’arrêter
    .practice = Jouer de deux temps avant l’endroit à deux temps après, assez lentement pour ne pas devoir s’arrêter ; trois fois juste de suite ({ $bars }).
advice-again = Continuer, quoi qu’il arrive
    .practice = Jouer lentement et sans arrêt ce qui est écrit { FORM($bar, "at") } et juste avant ; dans la mélodie entière, laisser passer une faute et continuer.
advice-skipped = Chaque mesure à sa place
    .practice = Jouer de la mesure avant le trou à la mesure après, en comptant les mesures à voix haute ({ $bars }).
advice-part = Vers la mélodie entière
    .practice = Apprendre à part les mesures qui manquent, puis les relier à ce qui va déjà : { $missing }.
advice-octave = La bonne octave
    .practice = Jouer la première note de l’endroit, regarder où elle est sur la portée, puis enchaîner depuis la mesure précédente ({ $bars }).
advice-octave-whole = L’octave
    .practice = Demander si la mélodie doit sonner à cette octave ; sinon, commencer par la première note seule.
advice-transposed = Est-ce la bonne partie ?
    .practice = Vérifier que la partie est celle de votre instrument, et jouer sa première note avec un piano ou l’accompagnement.
advice-transposed-bars = Retrouver la première note
    .practice = Alterner la dernière note avant l’endroit et sa première note, puis continuer ({ $bars }).
advice-key = Regarder l’armure
    .practice = Marquer dans la partie chaque { LIST($written, "or") }, jouer deux fois la gamme du ton, puis la mélodie lentement.
advice-wrong = Jouer les notes écrites
    .practice = Jouer seul et lentement ce qui est écrit { FORM($bar, "at") }, trois fois juste de suite ; puis avec les mesures voisines.
advice-left-out = N’omettre aucune note
    .practice = Dire le rythme de ce qui est écrit { FORM($bar, "at") }, le frapper, puis le jouer avec toutes ses notes.
advice-added = D’abord la mélodie simple
    .practice = Jouer lentement, avec les seules notes écrites, ce qui se trouve { FORM($bar, "at") }, puis avec les mesures voisines.
advice-tempo = { $way ->
    [faster] Pas si vite
   *[slower] Vers le tempo
}
    .practice = { $way ->
        [faster] Régler le clic à { $asked }, écouter quatre temps et chanter la première mesure avant de jouer.
       *[slower] Rester à votre tempo jusqu’à ce que tout soit facile, puis monter de quatre temps à la minute à chaque fois, jusqu’à { $asked }.
    }
advice-span = { $way ->
    [faster] Ne pas presser
   *[slower] Ne pas attendre
}
    .practice = Jouer avec un clic de la mesure avant l’endroit à la mesure après ({ $bars }).
advice-late = { $side ->
    [late] Être là à temps
   *[early] Attendre le temps
}
    .practice = Battre le temps du pied et dire « ta » { FORM($beats, "at") }, puis jouer.
advice-rhythm = Le rythme
    .practice = Frapper avec un clic le rythme écrit { FORM($bar, "at") }, le dire, le jouer sur une seule note, puis comme écrit.
advice-level = Laisser la ligne croître et décroître
    .practice = Jouer chaque phrase comme un seul souffle qui grandit jusqu’à la note la plus haute et s’éteint vers la fin.
advice-level-finding = Les notes douces et fortes ne diffèrent que de { $db } dB.
advice-ornament = { CAPITAL($name) }
    .practice = { $cure }
advice-tuning = S’accorder avant de jouer
    .practice = { $side ->
        [sharp] S’échauffer, accorder une note longue à l’accordeur et tirer le bec, l’embouchure ou la tête jusqu’à l’accord.
       *[flat] S’échauffer, accorder une note longue à l’accordeur et enfoncer le bec, l’embouchure ou la tête jusqu’à l’accord.
    }
advice-tuning-finding = { $side ->
    [sharp] Toute la prise est { $cents } cents plus haut que La = 440 Hz.
   *[flat] Toute la prise est { $cents } cents plus bas que La = 440 Hz.
}
advice-note = Écouter { $note }
    .practice = Tenir { $note } sur un bourdon, entendre où cela se pose, et le jouer exactement là depuis les notes qui précèdent et qui suivent.
advice-note-finding = { $side ->
    [sharp] { $note } est { $cents } cents trop haut par rapport à vos autres notes ({ $count } fois).
   *[flat] { $note } est { $cents } cents trop bas par rapport à vos autres notes ({ $count } fois).
}
advice-drift = { $way ->
    [faster] Tenir le tempo jusqu’au bout
   *[slower] Porter le tempo jusqu’au bout
}
    .practice = Jouer avec un clic sur deux et quatre seulement, et enregistrer de nouveau les huit dernières mesures.
drift = { $way ->
    [faster] La fin est { $percent } pour cent plus rapide que le début.
   *[slower] La fin est { $percent } pour cent plus lente que le début.
}
advice-beat = Placer les notes sur le temps
    .practice = Frapper le rythme d’une phrase avec le clic, le dire, puis le jouer sur une seule note, puis comme écrit.
advice-beat-finding = Une note sur trois s’écarte de plus de { $ms } ms de votre propre temps.
advice-swing = Laisser swinguer les croches
    .practice = Chanter « dou-da » sur un clic lent, la deuxième syllabe tardive et légère ; les solistes enregistrés jouent environ { $usual } pour 1.
advice-swing-finding = Les croches longues et brèves sont à { $ratio } pour 1, presque égales.
advice-straight = Jouer les croches égales
    .practice = Régler le clic à la croche et tomber sur chacune.
advice-straight-finding = Les croches swinguent, { $ratio } pour 1 ; la mélodie est écrite en croches égales.
advice-graces = Raccourcir les petites notes
    .practice = Jouer la note principale seule avec un clic, puis laisser entrer la petite note sans la déplacer.
advice-graces-finding = Les petites notes durent { $ms } ms ; elles sonnent comme des notes de la mélodie.
advice-evenness = Des doigts égaux : { $name }
    .practice = Jouer en rythmes pointés dans les deux sens, puis égal, à la moitié du tempo ; ajouter cinq temps à la minute à chaque fois.
advice-evenness-finding = { CAPITAL(FORM($bar, "at")) }, les notes rapides diffèrent de { $percent } pour cent en durée.
advice-add = Ajouter un ornement : { $name }
    .practice = { $when }
advice-add-finding = { $text }
advice-faster = Un peu plus vite
    .practice = Jouer à { $tempo } avec les mêmes ornements.
advice-faster-finding = Cette prise était à { $tempo } noires à la minute.
