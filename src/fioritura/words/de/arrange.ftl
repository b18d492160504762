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
octave-to-fit = { $pitch } ({ $place }){ $others ->
    [0] {""}
   *[other] {" "}und { $others } weitere
} läge außerhalb des Umfangs ({ $instrument }): Das Stück wird { $octave } gespielt.
key-best = { $key } passt am besten, notiert in { $written } ({ $instruments }): Das Stück ist dorthin transponiert.
key-of-another-mode = „{ $given }“ hat ein anderes Tongeschlecht als das Stück, das in { FORM($key, "inline") } steht: nur den Grundton angeben.
no-such-key = „{ $given }“ ist keine Tonart: einen Grundton angeben, etwa C, Bb oder F#, oder „best“.
pickup-out-of-reach = Ein Auftakt von { $given } Schlägen geht nicht: Der Takt hat { $beats }.
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
taste-refused = { CAPITAL($what) } ist nicht zu gebrauchen: { $problem }.
taste-given = die Tabelle der Gewichte
taste-names-nothing = Die Tabelle der Gewichte nennt „{ $given }“; das ist weder eine Technik noch eine Familie: möglich sind { LIST($known) }.
taste-no-share = ein Anteil von { $given } ist nicht möglich: mehr als 0 und höchstens 1 angeben, und nur bei einzelnen Techniken
taste-no-figure-feature = Figuren haben kein Merkmal „{ $given }“: möglich sind { LIST($known) }

# What speaks for or against a figure.

feature-technique = die Technik selbst
feature-choice-among-its-variants = Wahl unter ihren Varianten
feature-usual-place = die übliche Stelle
feature-usual-side = die übliche Seite
feature-long = Länge der Note
feature-strong = Gewicht der Stelle im Takt
feature-peak = höher als ihre Nachbarn
feature-phrase-start = Anfang einer Phrase
feature-phrase-end = Ende einer Phrase
feature-repeated-note = wiederholte Note
feature-reached-by-leap = im Sprung erreicht
feature-reached-by-step-up = schrittweise von unten erreicht
feature-reached-by-step-down = schrittweise von oben erreicht
feature-left-by-leap = im Sprung verlassen
feature-chord-changes = neuer Akkord oder erste Note
feature-chord-note = dem Akkord nicht fremd
feature-rest-after = Pause danach
feature-busy-around = viel Bewegung ringsum
feature-next-is-strong = Gewicht der Stelle der nächsten Note im Takt
feature-next-is-long = Länge der nächsten Note
feature-next-is-peak = die nächste Note ist höher als ihre Nachbarn
feature-heard-before = wie oft die Phrase schon zu hören war
feature-first-statement = zum ersten Mal
feature-near-the-end = wie weit im Stück
feature-guide-tone-at-a-change = Terz oder Septime beim Akkordwechsel
feature-next-is-guide-tone-at-a-change = die nächste Note ist Terz oder Septime beim Akkordwechsel
feature-last-note = letzte Note
feature-ballad = Ballade
feature-up-tempo = schnelles Tempo
feature-swing = im Swing
feature-even = in geraden Achteln
feature-level = Stufe des Spielers
feature-draw = Auslosung: Spieler sind verschieden
feature-change-from-earlier-statements = Abwechslung bei der Wiederholung, ausgelost
feature-loss-of-the-tune = Verlust an Melodie
feature-added-notes = hinzugefügte oder veränderte Noten
feature-added-notes-in-a-ballad = hinzugefügte Noten in einer Ballade
feature-strain = Anstrengung
feature-outside-the-chord-on-a-beat = akkordfremd auf dem Schlag
feature-length-in-beats = Länge in Schlägen
feature-length-over-the-tune-s-usual-note = Länge gegen die übliche Note des Stücks
feature-on-the-downbeat = auf der Eins
feature-stronger-than-the-next-note = schwerer als die nächste Note
feature-on-a-beat-in-compound-time = auf dem Schlag im zusammengesetzten Takt
feature-quick-on-a-beat = schnell, auf dem Schlag
feature-on-a-beat-then-falls = auf dem Schlag, dann fallend
feature-on-a-beat-then-a-step-down = auf dem Schlag, dann ein Schritt abwärts
feature-on-a-half-beat-then-a-step-down = auf einer Und, dann ein Schritt abwärts
feature-half-a-beat-long-as-the-next = einen halben Schlag lang wie die nächste
feature-longer-after-even-notes-in-compound-time = länger nach gleichen Noten im zusammengesetzten Takt
feature-dotted-then-a-step-down = punktiert, dann ein Schritt abwärts
feature-long-then-rises = lang, dann steigend
feature-long-then-falls = lang, dann fallend
feature-amid-a-rise = mitten im Anstieg
feature-fallen-to-then-rises = von oben erreicht, dann steigend
feature-a-peak-then-a-step-down = höher als ihre Nachbarn, dann ein Schritt abwärts
feature-reached-by-a-semitone-up = von einem Halbton tiefer erreicht
feature-reached-by-a-semitone-up-on-a-half-beat = von einem Halbton tiefer erreicht, auf einer Und
feature-reached-by-a-third-to-a-fifth-up = durch Terz bis Quinte aufwärts erreicht
feature-half-a-beat-long-after-a-sixth-up-or-more = einen halben Schlag lang nach einer Sexte aufwärts oder mehr
feature-on-a-half-beat-after-a-sixth-up-or-more = auf einer Und nach einer Sexte aufwärts oder mehr
feature-left-by-a-semitone-down = einen Halbton abwärts verlassen
feature-left-by-a-sixth-down-or-more = eine Sexte abwärts oder mehr verlassen
feature-left-by-an-octave-down = eine Oktave abwärts verlassen
feature-a-sixth-down-or-more-to-a-stronger-note = eine Sexte abwärts oder mehr zu einer schwereren Note
feature-the-lower-neighbour-follows = die untere Nebennote folgt
feature-a-step-down-and-up-again = ein Schritt hinab und wieder hinauf
feature-quick-a-step-down-and-up-again = schnell, ein Schritt hinab und wieder hinauf
feature-quick-the-next-note-falls = schnell, die nächste Note fällt
feature-on-a-half-beat-a-step-down-and-up-again = auf einer Und, ein Schritt hinab und wieder hinauf
feature-repeated-a-step-down-and-up-again = wiederholt, ein Schritt hinab und wieder hinauf
feature-half-a-beat-long-out-and-back = einen halben Schlag lang, hinaus und zurück
feature-a-neighbour-follows-on-the-beat = eine Nebennote folgt auf dem Schlag
feature-repeated-then-falls = wiederholt, dann fallend
feature-repeated-then-a-step-down = wiederholt, dann ein Schritt abwärts
feature-repeated-on-the-downbeat = wiederholt, auf der Eins
feature-repeated-on-a-beat = wiederholt, auf dem Schlag
feature-repeated-on-a-half-beat = wiederholt, auf einer Und
feature-repeated-and-very-short = wiederholt und sehr kurz
feature-repeated-and-much-longer-than-the-next = wiederholt und viel länger als die nächste
feature-the-note-before-was-a-repeated-one = die vorige Note war eine wiederholte
feature-fallen-to-on-a-half-beat = von oben erreicht, auf einer Und
feature-fallen-to-and-quick = von oben erreicht und schnell
feature-a-step-down-in-even-notes = ein Schritt abwärts in gleichen Noten
feature-very-long-the-note-before-reached-by-a-semitone-down = sehr lang, die vorige einen Halbton abwärts erreicht
feature-high-and-much-longer-than-the-next = hoch und viel länger als die nächste
feature-second-degree-on-the-downbeat = zweite Stufe auf der Eins
feature-second-degree-in-triple-time = zweite Stufe im Dreiertakt
feature-fourth-degree-the-next-note-falls = vierte Stufe, die nächste Note fällt
feature-fourth-degree-then-a-third-down = vierte Stufe, dann eine Terz abwärts
feature-fifth-degree-in-even-notes = fünfte Stufe in gleichen Noten
feature-seventh-degree-on-a-beat = siebte Stufe auf dem Schlag
feature-on-a-half-beat = auf einer Und
feature-after-a-rest = nach einer Pause
feature-tonic = Grundton
feature-the-scale-has-a-semitone-below = die Tonleiter hat darunter einen Halbton
feature-repeated = wiederholt
feature-reached-by-a-step-down = einen Schritt abwärts erreicht
feature-reached-by-a-leap-down = im Sprung abwärts erreicht
feature-reached-by-a-whole-tone-up = einen Ganzton aufwärts erreicht
feature-reached-by-a-third-up = eine Terz aufwärts erreicht
feature-reached-by-a-sixth-up-or-more = eine Sexte aufwärts oder mehr erreicht
feature-the-grace-above-would-repeat-the-note-before = der Vorschlag darüber würde die vorige Note wiederholen
feature-the-grace-below-would-repeat-the-note-before = der Vorschlag darunter würde die vorige Note wiederholen
feature-followed-by-the-same-note = dieselbe Note folgt
feature-followed-by-a-step-up = ein Schritt aufwärts folgt
feature-followed-by-a-leap-up = ein Sprung aufwärts folgt
feature-followed-by-a-semitone-down = ein Halbton abwärts folgt
feature-followed-by-a-fourth-to-a-seventh-down = eine Quarte bis Septime abwärts folgt
feature-followed-by-an-octave-down-or-more = eine Oktave abwärts oder mehr folgt
feature-the-last-note = die letzte Note
feature-leapt-up-to-and-followed-by-the-same-note = im Sprung aufwärts erreicht, dieselbe Note folgt
feature-placement = Stelle: { $feature }
feature-side = Seite: { $feature }
chorus-number = Chorus { $number }
choruses-out-of-reach = { $given } Chorusse gehen nicht: möglich sind { $low } bis { $high }.
plan-density-out-of-reach = Eine Dichte von { $given } geht für einen Chorus nicht: möglich sind { $low } bis { $high }.
plan-lean-out-of-reach = Größe { $size } mit Lage { $register } geht nicht: Beide reichen von −1 bis 1.
plan-other-length = Ein Plan mit { $count } Chorussen passt nicht zu { $bars } Takten: Das Stück so oft ausschreiben, wie der Plan es sagt.
plan-other-count = Die Bearbeitung hat { $count ->
    [one] einen Chorus
   *[other] { $count } Chorusse
}, der Plan { $given }: Für jeden Chorus eine Dichte angeben.
plan-statement = Chorus { $number }: { $role ->
    [head] die Melodie, fast schlicht
    [fuller] voller
    [climax] der Höhepunkt
    [return] wieder ruhiger
   *[only] die Melodie
} ({ $density } % der üblichen Figuren)
plan-heading = Chorus { $number }, { $role ->
    [head] fast schlicht
    [fuller] voller
    [climax] der Höhepunkt
    [return] wieder ruhiger
   *[only] die Melodie
}
