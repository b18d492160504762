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
recording-without-player = Darin ist kein Bläser zu hören, nur anderer Klang: die Melodie aufnehmen, nah am Mikrofon.
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

# Was in einer Aufnahme geschah: je ein Satz, der erste des Berichts.

perhaps = Vielleicht: { $words }
the-rest = der Rest
note-itself = { $note }
slip-there = { $words } ({ FORM($where, "full") })
happened-stop = { $count ->
    [one] Die Musik stand { $seconds } Sekunden lang still ({ $bars }).
   *[other] Die Musik stand { $count } Mal still, zusammen { $seconds } Sekunden lang ({ $bars }).
}
happened-again = { CAPITAL($bar) } wurde noch einmal begonnen.
happened-again-from = { CAPITAL(FORM($bar, "at")) } wurde abgebrochen und zurückgegangen; zweimal gespielt: { $bars }.
happened-again-often = { $count } Mal wurde abgebrochen und zurückgegangen; noch einmal begonnen: { $bars }.
happened-skipped = { $count ->
    [one] Ein Takt wurde übersprungen: { $bars }.
   *[other] { $count } Takte wurden übersprungen: { $bars }.
}
happened-part = Nur ein Teil wurde gespielt: { $bars } von { $last }.
happened-off = Die ganze Aufnahme klingt { $words }.
happened-off-bars = { $side ->
    [higher] { CAPITAL($distance) } höher als notiert: { $bars }.
   *[lower] { CAPITAL($distance) } tiefer als notiert: { $bars }.
}
happened-key = Die Vorzeichen der Tonart wurden vergessen: { $played } statt { $written }, { $count ->
    [one] einmal
   *[other] { $count } Mal
}.
happened-wrong = { $count ->
    [one] Eine von { $wanted } Noten war nicht die notierte: { $examples }.
   *[other] { $count } von { $wanted } Noten waren nicht die notierten: { $examples }{ $more ->
        [0] .
       *[other] ; und so weiter.
    }
}
happened-left-out = { $count ->
    [one] Eine von { $wanted } Noten wurde ausgelassen: { $examples }.
   *[other] { $count } von { $wanted } Noten wurden ausgelassen: { $examples }{ $more ->
        [0] .
       *[other] ; und so weiter.
    }
}
happened-added = { $count ->
    [one] Eine Note kam hinzu, die nicht in der Melodie steht: { $examples }.
   *[other] { $count } Noten kamen hinzu, die nicht in der Melodie stehen: { $examples }{ $more ->
        [0] .
       *[other] ; und so weiter.
    }
}
happened-ornament = { CAPITAL($name) }: { $missed } von { $asked } nicht zu hören ({ $bars }).
happened-ornaments = { $missed } von { $asked } Verzierungen waren nicht zu hören ({ $bars }).
happened-ornaments-least = Mindestens { $missed } von { $asked } Verzierungen waren nicht zu hören ({ $bars }).
happened-tempo = { $way ->
    [faster] Das Tempo war schneller als verlangt: { $played } Schläge in der Minute statt { $asked }.
   *[slower] Das Tempo war langsamer als verlangt: { $played } Schläge in der Minute statt { $asked }.
}
happened-drift = { $way ->
    [faster] { CAPITAL(FORM($bar, "at")) } beginnt die Musik schneller zu werden: Am Ende ist sie { $percent } Prozent schneller als vorher.
   *[slower] { CAPITAL(FORM($bar, "at")) } beginnt die Musik langsamer zu werden: Am Ende ist sie { $percent } Prozent langsamer als vorher.
}
happened-span = { $way ->
    [faster] Einige Takte gingen { $percent } Prozent schneller als die anderen: { $bars }.
   *[slower] Einige Takte gingen { $percent } Prozent langsamer als die anderen: { $bars }.
}
happened-late = { $side ->
    [late] Noten { FORM($beats, "at") } kommen { $ms } ms später als die anderen ({ $count } Noten).
   *[early] Noten { FORM($beats, "at") } kommen { $ms } ms früher als die anderen ({ $count } Noten).
}
happened-rhythm = { $side ->
    [late] Eine Note kam zu spät für den notierten Rhythmus ({ FORM($where, "full") }).
   *[early] Eine Note kam zu früh für den notierten Rhythmus ({ FORM($where, "full") }).
}
happened-rhythms = An { $count } Stellen war der Rhythmus nicht der notierte ({ $bars }).

# Was gelungen ist.

praise-all-ornaments = { $asked ->
    [one] Die Verzierung ist gelungen.
   *[other] Alle { $asked } Verzierungen sind gelungen.
}
praise-ornaments = { $done } von { $asked } Verzierungen waren klar zu hören; am deutlichsten war: { $technique } { FORM($bar, "at") }.
praise-notes-safe = { $right } von { $wanted } Melodienoten waren richtig: Die Melodie sitzt sicher in den Fingern.
praise-notes = { $right } von { $wanted } Melodienoten waren richtig.
praise-beat = Der Puls war ruhig: Zwei von drei Noten liegen höchstens { $ms } ms daneben.
praise-tune = Die Melodie ist zu erkennen.

# Was als Nächstes zu üben ist: Überschrift, Befund, Übung.

advice-stop = Weiterspielen
    .practice = Von zwei Schlägen vor der Stelle bis zwei Schläge danach spielen, so langsam, dass kein Halt nötig ist; dreimal hintereinander richtig ({ $bars }).
advice-again = Weiterspielen, was auch geschieht
    .practice = Langsam und ohne Halt spielen, was { FORM($bar, "at") } und davor steht; in der ganzen Melodie einen Fehler vorbeigehen lassen und weiterspielen.
advice-skipped = Jeder Takt an seinem Platz
    .practice = Vom Takt vor der Lücke bis zum Takt danach spielen und die Takte laut zählen ({ $bars }).
advice-part = Weiter zur ganzen Melodie
    .practice = Die fehlenden Takte für sich lernen und dann mit dem verbinden, was schon geht: { $missing }.
advice-octave = Die richtige Oktave
    .practice = Die erste Note der Stelle spielen, nachsehen, wo sie im System steht, dann vom Takt davor an weiterspielen ({ $bars }).
advice-octave-whole = Die Oktave
    .practice = Nachfragen, ob die Melodie in dieser Oktave klingen soll; wenn nicht, mit der ersten Note allein beginnen.
advice-transposed = Ist es die richtige Stimme?
    .practice = Nachsehen, ob die Stimme die für dieses Instrument ist, und ihre erste Note mit einem Klavier oder der Band spielen.
advice-transposed-bars = Die erste Note wiederfinden
    .practice = Die letzte Note vor der Stelle und ihre erste im Wechsel spielen, dann weitergehen ({ $bars }).
advice-key = Auf die Vorzeichen achten
    .practice = In der Stimme jedes { LIST($written, "or") } anstreichen, die Tonleiter der Tonart zweimal spielen, dann langsam die Melodie.
advice-wrong = Die Noten spielen, die dastehen
    .practice = Allein und langsam spielen, was { FORM($bar, "at") } steht, dreimal hintereinander richtig; dann mit den Takten ringsum.
advice-left-out = Keine Note auslassen
    .practice = Den Rhythmus sprechen, der { FORM($bar, "at") } steht, ihn klatschen, dann mit allen Noten spielen.
advice-added = Erst die schlichte Melodie
    .practice = Langsam und nur mit den notierten Noten spielen, was { FORM($bar, "at") } steht, dann mit den Takten ringsum.
advice-tempo = { $way ->
    [faster] Nicht so schnell
   *[slower] Dem Tempo entgegen
}
    .practice = { $way ->
        [faster] Den Klick auf { $asked } stellen, vier Schläge hören und den ersten Takt singen, bevor gespielt wird.
       *[slower] Beim eigenen Tempo bleiben, bis alles leicht geht, dann jeweils um vier Schläge in der Minute steigern, bis { $asked }.
    }
advice-span = { $way ->
    [faster] Nicht eilen
   *[slower] Nicht warten
}
    .practice = Vom Takt vor der Stelle bis zum Takt danach mit Klick spielen ({ $bars }).
advice-late = { $side ->
    [late] Pünktlich da sein
   *[early] Auf den Schlag warten
}
    .practice = Den Schlag mit dem Fuß klopfen und „ta“ sprechen { FORM($beats, "at") }, dann spielen.
advice-rhythm = Der Rhythmus
    .practice = Den Rhythmus, der { FORM($bar, "at") } steht, zum Klick klatschen, ihn sprechen, auf einer Note spielen, dann wie notiert.
advice-level = Die Linie wachsen und abnehmen lassen
    .practice = Jede Phrase als einen Atem spielen, der bis zur höchsten Note wächst und zum Ende hin abnimmt.
advice-level-finding = Leise und laute Noten liegen nur { $db } dB auseinander.
advice-ornament = { CAPITAL($name) }
    .practice = { $cure }
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
    [sharp] { $note } ist gegen die anderen Noten { $cents } Cent zu hoch ({ $count } Mal).
   *[flat] { $note } ist gegen die anderen Noten { $cents } Cent zu tief ({ $count } Mal).
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
advice-beat-finding = Eine von drei Noten liegt mehr als { $ms } ms neben dem eigenen Schlag.
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
