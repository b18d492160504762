why-by-hand = { $why } Mindestens ein Ton von Hand.
no-such-figure = Eine Figur „{ $given }“ gibt es hier nicht: eine von denen nehmen, die es gibt.
bend-too-far = { $given } Halbtöne sind zu weit: Ein Ton wird je Schritt um einen Halbton erhöht oder erniedrigt.
bend-unplayable = Mit diesem Ton verdoppelt die Figur eine Note oder verlässt das Instrument: einen anderen nehmen.
bend-own-note = Diese Note gehört der Melodie selbst: Nur hinzugefügte lassen sich erhöhen oder erniedrigen.
bend-no-such-note = Die Figur hat { $count ->
    [one] eine eigene Note
   *[other] { $count } eigene Noten
}: Note { $given } gibt es nicht (gezählt wird ab 0).
nothing-to-take-back = Nichts zurückzunehmen: Es ist noch nichts entschieden.
locked-figures-collide = Zwei festgehaltene Figuren stoßen zusammen oder überfüllen ihre Phrase: eine davon freigeben.
no-such-level = Stufe { $given } gibt es nicht: Die Stufen gehen von 1 (Anfang) bis 5 (Meisterschaft).
arrangement-unreadable = Das ist keine Arrangement-Datei ({ $reason }): eine arrangement.json wählen.
arrangement-none = Das ist keine Arrangement-Datei: eine arrangement.json wählen, die hier geschrieben wurde.
arrangement-version = Das Arrangement hat Version { $given }; lesbar ist { $readable }: Fioritura erneuern.
arrangement-damaged = Die Arrangement-Datei ist beschädigt ({ $reason }): noch einmal speichern.
damaged-key = eine Tonart mit { $fifths } Quinten
damaged-bar = ein Takt ohne Länge oder gar kein Takt
damaged-bars = Takte überlappen sich oder lassen Lücken
damaged-repeats = ein Takt wird mehr als { $most }-mal wiederholt
damaged-tempo = ein Tempo von { $given } Vierteln in der Minute
damaged-note = eine Note ohne Länge oder gar keine Note
damaged-notes = Noten überlappen sich oder stehen nicht in der Reihenfolge
damaged-end = Noten liegen hinter dem letzten Takt
damaged-figure-place = eine Figur steht bei den Noten { $notes } (ab 0 gezählt), und das Stück hat { $count ->
    [one] eine
   *[other] { $count }
}
damaged-figure-claim = eine Figur endet, bevor sie beginnt, oder steht auf Noten, die das Stück nicht hat
damaged-figure-note = eine Note einer Figur hat keine Länge oder liegt vor ihr
damaged-figure-score = die Bewertung einer Figur ist keine Zahl
chords-other-count = Die Akkorde füllen { $given ->
    [one] einen Takt
   *[other] { $given } Takte
}, und das Stück hat { $bars }, den Auftakt nicht gezählt: für jeden Takt ein Feld zwischen |-Zeichen schreiben, % wiederholt einen Takt, oder eine kürzere Zeile, die das Stück teilt.
chords-no-cell = Takt { $number } der Akkorde { $given ->
    [nothing] ist leer
   *[other] enthält „{ $given }“
}: die Akkorde schreiben, N.C. für keinen, oder % allein, um den vorigen Takt zu wiederholen.
chords-unreadable = Takt { $number } der Akkorde: { $reason }
chords-too-many = Takt { $number } soll { $given } Akkorde bekommen und hat Platz für { $room }, einen je Schlag im { $metre }-Takt: weniger schreiben.
figures-collide = { CAPITAL($technique) } { $where } stößt mit einer anderen Figur zusammen: eine davon herausnehmen.
figure-splits-note = { CAPITAL($technique) } würde Note { $number } in zwei teilen: die Figur herausnehmen.
octave-too-far = { $given } Oktaven sind zu weit: Ein Stück wird um höchstens 3 Oktaven nach oben oder unten versetzt.
octaves = { $direction ->
    [none] in der eigenen Lage
    [up] { $count ->
        [one] eine Oktave
       *[other] { $count } Oktaven
    } höher
   *[down] { $count ->
        [one] eine Oktave
       *[other] { $count } Oktaven
    } tiefer
}
octave-by-custom = { CAPITAL($instrument) }: Leadsheets werden üblicherweise { $octave } gespielt.
beats-out-of-reach = Ein Tempo von { $given } Schlägen in der Minute geht nicht: möglich sind hier { $low } bis { $high }.
notes-out-of-range = { $pitch } ({ $place }){ $others ->
    [0] {""}
   *[other] {" "}und { $others } weitere
} liegt außerhalb des Umfangs ({ $instrument }: klingend { $low } bis { $high }): { $remedy }, oder { $other }.
other-octaves = es { LIST($octaves, "or") } spielen
no-octave-fits = keine Oktave fasst alles ({ $instrument })
other-instruments = ein Instrument wählen, das es erreicht: { LIST($instruments, "or") }
smaller-tune = ein Stück mit kleinerem Umfang nehmen
taste-of = der Geschmack von { $id }
taste-not-of-the-form = er hat nicht die richtige Form ({ $error })
taste-no-idiom = einen Stil „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }
taste-no-table = er hat „{ $given }“ für { $idiom }: möglich sind { LIST($known) }
taste-no-number = das Gewicht { $given } ist keine Zahl
taste-no-feature = Stellen haben kein Merkmal „{ $given }“: möglich sind { LIST($known) }
