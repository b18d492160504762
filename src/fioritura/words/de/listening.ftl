# Aufnahmen.

recording-missing = { $file } gibt es nicht: Namen und Ordner prüfen.
recording-is-folder = { $file } ist ein Ordner und keine Aufnahme: eine Datei daraus nennen.
audio-unreadable = { $file } lässt sich nicht als Ton lesen ({ $reason }): als WAV, FLAC, MP3 oder OGG speichern.
recording-shape = Ton der Form { $shape } und des Typs { $type } ist keine Aufnahme: Fließkommazahlen innerhalb von ±1 geben, als (frames,) oder (frames, channels).
audio-rate = Eine Abtastrate von { $rate } Hz liegt außerhalb von { $low } bis { $high } Hz: { $name } auf { $usual } Hz umrechnen.
recording-not-numbers = { CAPITAL($name) } enthält Werte, die keine Zahlen sind: neu aufnehmen oder neu exportieren.
recording-unclear = { $name }: { $advice }
recording-without-notes = { $name }: Es ist keine Note zu hören: näher am Instrument und länger aufnehmen.
recording-silent = Es ist kaum etwas zu hören: Mikrofon und Pegel prüfen und neu aufnehmen.
recording-noisy = Das meiste ist Geräusch ohne Tonhöhe: näher ans Mikrofon gehen und weg vom Lärm.
recording-of-several = Zwei oder mehr Stimmen klingen zugleich: die Melodie allein aufnehmen oder die Begleitung über Kopfhörer hören.
recording-clipped = Die lauten Stellen sind abgeschnitten: den Aufnahmepegel senken, bis die Anzeige nicht mehr in den roten Bereich kommt.
the-recording = die Aufnahme
record-nearer = Noch einmal aufnehmen, näher am Mikrofon.
no-notes-heard = In { $seconds } s Ton war keine Note zu hören. { $remedy }
title-as-played = Was gespielt wurde

# Eine Linie neben der Melodie.

the-tune = die Melodie
the-note = die Note
heard-no-notes = Keine Note war zu hören
heard-notes = { $count ->
    [one] Zu hören war { $count } Note, { $low }
   *[other] Zu hören waren { $count } Noten, von { $low } bis { $high }
}
not-this-tune = { $name }: Das klingt nicht wie „{ $tune }“. { $heard }; Linie und Melodie stimmen zu { NUMBER($likeness, style: "percent") } überein, bei einer Darbietung sind es { NUMBER($least, style: "percent") } und mehr. Die Melodie angeben, die gespielt wurde; war es doch „{ $tune }“, noch einmal aufnehmen, vollständig und mit weniger Verzierungen.
distance = { $semitones ->
    [1] eine kleine Sekunde
    [2] eine große Sekunde
    [3] eine kleine Terz
    [4] eine große Terz
    [5] eine Quarte
    [6] einen Tritonus
    [7] eine Quinte
    [8] eine kleine Sexte
    [9] eine große Sexte
    [10] eine kleine Septime
   *[11] eine große Septime
}
distance-octaves = { $octaves ->
    [1] eine Oktave
   *[other] { $octaves } Oktaven
}
distance-and-octaves = { distance } und { distance-octaves }
line-higher = { $distance } höher als die Melodie
line-lower = { $distance } tiefer als die Melodie
line-read-on = { $lies }, wie wenn die Stimme für { LIST($instruments, "or") } gelesen wird
slip-wrong = { $played } statt { $written }
slip-left-out = { $written } ausgelassen
slip-added = { $played } hinzugefügt
bars-named = Takte { $bars }
pickup-and-bars = Auftakt und { $bars }
beat-name = Schlag { $number }
    .at = auf Schlag { $number }
beats-between = zwischen den Schlägen
register-low = tief
register-middle = Mittellage
register-high = hoch
bars-from-to = Takte { $first }–{ $last }
pickup-to-bar = vom Auftakt bis Takt { $last }

# Was gelungen ist.

praise-all-ornaments = { $asked ->
    [one] Die Verzierung ist gelungen.
   *[other] Alle { $asked } Verzierungen sind gelungen.
}
praise-ornaments = { $done } von { $asked } Verzierungen sind gelungen; am deutlichsten war: { $technique } { FORM($bar, "at") }.
praise-notes-safe = { $right } von { $wanted } Melodienoten waren richtig: Die Melodie sitzt sicher in den Fingern.
praise-notes = { $right } von { $wanted } Melodienoten waren richtig.
praise-beat = Der Puls war ruhig: Zwei von drei Noten liegen höchstens { $ms } ms daneben.
praise-tune = Die Melodie ist von Anfang bis Ende zu erkennen, und darauf stehen die Verzierungen.

# Was als Nächstes zu üben ist: Überschrift, Befund, Übung.

advice-level = Die Linie wachsen und abnehmen lassen
    .practice = Jede Phrase als einen Atem spielen, der bis zur höchsten Note wächst und zum Ende hin abnimmt.
advice-level-finding = Leise und laute Noten liegen nur { $db } dB auseinander.
advice-ornament = { CAPITAL($name) }
    .practice = { $cure }
advice-ornament-finding = { $missed } von { $asked } waren nicht zu hören ({ $bars }). Ein häufiger Fehler: { $fault }
advice-notes = Erst die schlichte Melodie sichern
    .practice = Allein und langsam spielen, was { FORM($bar, "at") } steht, ohne Verzierungen, dreimal hintereinander richtig; dann mit den Takten ringsum.
advice-notes-finding = { $count } Melodienoten waren anders als notiert; { FORM($bar, "at") }: { $examples }.
advice-tuning = Vor dem Spielen stimmen
    .practice = { $side ->
        [sharp] Einspielen, eine lange Note nach dem Stimmgerät stimmen und Mundstück oder Kopfstück herausziehen, bis es stimmt.
       *[flat] Einspielen, eine lange Note nach dem Stimmgerät stimmen und Mundstück oder Kopfstück hineinschieben, bis es stimmt.
    }
advice-tuning-finding = { $side ->
    [sharp] Die ganze Aufnahme ist { $cents } Cent höher als A = 440 Hz.
   *[flat] Die ganze Aufnahme ist { $cents } Cent tiefer als A = 440 Hz.
}
advice-note = Auf { $note } hören
    .practice = { $note } zu einem Bordun aushalten, hören, wo es ruhig wird, und es von den Noten davor und danach aus genau dort spielen.
advice-note-finding = { $side ->
    [sharp] { $note } ist gegen die eigene Stimmung { $cents } Cent zu hoch, in { $count } Noten.
   *[flat] { $note } ist gegen die eigene Stimmung { $cents } Cent zu tief, in { $count } Noten.
}
advice-drift = { $way ->
    [faster] Das Tempo bis zum Ende halten
   *[slower] Das Tempo bis zum Ende tragen
}
    .practice = Mit einem Klick nur auf zwei und vier spielen und die letzten acht Takte noch einmal aufnehmen.
drift = { $way ->
    [faster] Das Ende ist { $percent } Prozent schneller als der Anfang.
   *[slower] Das Ende ist { $percent } Prozent langsamer als der Anfang.
}
advice-beat = Die Noten auf den Schlag setzen
    .practice = Den Rhythmus einer Phrase zum Klick klatschen, ihn sprechen, dann auf einer Note spielen, dann wie notiert.
advice-beat-finding = Eine von drei Noten liegt mehr als { $ms } ms neben dem eigenen Schlag
    .alone = Eine von drei Noten liegt mehr als { $ms } ms neben dem eigenen Schlag.
advice-beat-finding-worst = { $side ->
    [late] { $strays }; Noten { FORM($beats, "at") } kommen { $ms } ms zu spät.
   *[early] { $strays }; Noten { FORM($beats, "at") } kommen { $ms } ms zu früh.
}
advice-swing = Die Achtel swingen lassen
    .practice = „Du-da“ über einem langsamen Klick singen, die zweite Silbe spät und leicht; Solisten auf Aufnahmen spielen etwa { $usual } zu 1.
advice-swing-finding = Lange und kurze Achtel stehen { $ratio } zu 1, fast gleich.
advice-straight = Die Achtel gleichmäßig spielen
    .practice = Den Klick auf Achtel stellen und jede einzelne treffen.
advice-straight-finding = Die Achtel swingen, { $ratio } zu 1; die Melodie ist gerade notiert.
advice-graces = Die Vorschläge kürzen
    .practice = Die Hauptnote allein mit dem Klick spielen, dann den Vorschlag hineinlassen, ohne sie zu verschieben.
advice-graces-finding = Vorschläge dauern { $ms } ms; sie klingen wie Melodienoten.
advice-evenness = Gleichmäßige Finger: { $name }
    .practice = In punktierten Rhythmen in beiden Richtungen spielen, dann gleichmäßig, im halben Tempo; jeweils um fünf Schläge in der Minute steigern.
advice-evenness-finding = { CAPITAL(FORM($bar, "at")) } unterscheiden sich die schnellen Noten um { $percent } Prozent in der Länge.
advice-add = Eine Verzierung dazunehmen: { $name }
    .practice = { $when }
advice-add-finding = { $text }
advice-faster = Etwas schneller
    .practice = Mit denselben Verzierungen im Tempo { $tempo } spielen.
advice-faster-finding = Diese Aufnahme hatte { $tempo } Viertel in der Minute.
advice-by-heart = Auswendig
    .practice = Die Melodie aus dem Gedächtnis spielen und die Verzierungen unterwegs wählen.
advice-by-heart-finding = Die Noten sind da.
