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

# Ce qui a réussi.

praise-all-ornaments = { $asked ->
    [one] L’ornement est sorti.
   *[other] Les { $asked } ornements sont tous sortis.
}
praise-ornaments = { $done } ornements sur { $asked } sont sortis ; le plus net : { $technique } { FORM($bar, "at") }.
praise-notes-safe = { $right } notes de la mélodie sur { $wanted } étaient justes : la mélodie est bien dans les doigts.
praise-notes = { $right } notes de la mélodie sur { $wanted } étaient justes.
praise-beat = La pulsation était stable : deux notes sur trois tombent à { $ms } ms près.
praise-tune = La mélodie se reconnaît du début à la fin, et c’est là-dessus que reposent les ornements.

# Ce qu’il faut travailler : un titre, un constat, un exercice.

advice-level = Laisser la ligne croître et décroître
    .practice = Jouer chaque phrase comme un seul souffle qui grandit jusqu’à la note la plus haute et s’éteint vers la fin.
advice-level-finding = Les notes douces et fortes ne diffèrent que de { $db } dB.
advice-ornament = { CAPITAL($name) }
    .practice = { $cure }
advice-ornament-finding = { $missed } sur { $asked } ne s’entendaient pas ({ $bars }). Une faute fréquente : { $fault }
advice-notes = D’abord assurer la mélodie simple
    .practice = Jouer seul et lentement ce qui est écrit { FORM($bar, "at") }, sans ornements, trois fois juste de suite ; puis avec les mesures voisines.
advice-notes-finding = { $count } notes de la mélodie différaient du texte ; { FORM($bar, "at") } : { $examples }.
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
    [sharp] { $note } est { $cents } cents trop haut par rapport à votre propre accord, sur { $count } notes.
   *[flat] { $note } est { $cents } cents trop bas par rapport à votre propre accord, sur { $count } notes.
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
advice-beat-finding = Une note sur trois s’écarte de plus de { $ms } ms de votre propre temps
    .alone = Une note sur trois s’écarte de plus de { $ms } ms de votre propre temps.
advice-beat-finding-worst = { $side ->
    [late] { $strays } ; les notes { FORM($beats, "at") } viennent { $ms } ms trop tard.
   *[early] { $strays } ; les notes { FORM($beats, "at") } viennent { $ms } ms trop tôt.
}
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
advice-by-heart = Par cœur
    .practice = Jouer la mélodie de mémoire et choisir les ornements en chemin.
advice-by-heart-finding = Les notes sont là.
