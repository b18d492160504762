tempo-out-of-reach = Ein Tempo von { $given } Vierteln in der Minute geht nicht: möglich sind { $low } bis { $high }.
density-out-of-reach = Eine Dichte von { $given } geht nicht: möglich sind { $low } bis { $high }, üblich ist 1.
no-such-feel = Ein Feeling „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
no-such-idiom = Einen Stil „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
no-such-instrument = Ein Instrument „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
no-such-level = Stufe { $given } gibt es nicht: Die Stufen gehen von { $low } (Anfang) bis { $high } (Meisterschaft).
tempo-not-above-0 = Ein Tempo von { $given } lässt sich nicht spielen: Viertel in der Minute über 0 angeben.
hard-places-not-above-0 = Das Tempo ({ $tempo }) und die Zahl der Stellen ({ $count }) müssen beide über 0 liegen.
no-fingering = Für das notierte { $pitch } gibt es keinen Griff, die Tabelle geht von { $low } bis { $high }: die Linie um eine Oktave versetzen.

plugin-wrong-form = was es anbietet, hat nicht die richtige Form ({ $reason })
plugin-no-instruments = es hat keine INSTRUMENTS
plugin-not-an-instrument = { $id } in seinen INSTRUMENTS ist kein Instrument
plugin-instrument-taken = es gibt schon ein Instrument „{ $id }“
plugin-instrument-bounds = Umfang oder Klangprogramm von „{ $id }“ liegt außerhalb der Grenzen
plugin-chart-lacks = der Grifftabelle von „{ $id }“ fehlt die notierte MIDI-Nummer { $number }
plugin-breath = der Atem von „{ $id }“ liegt außerhalb von { $low } bis { $high } mal dem üblichen
plugin-stranger = es hat eine Grifftabelle oder einen Atem für „{ $id }“, das keines seiner Instrumente ist

# Instrumente: im Satz, mit Artikel, im Dativ mit Artikel, und am System.

instrument-title = { CAPITAL($instrument) }
instrument-in-key = { CAPITAL($instrument) } in { $tonic }
instrument-at-concert-pitch = { CAPITAL($instrument) }, klingend notiert

instrument-concert = klingende Notation
    .the = die klingende Notation
    .dative = der klingenden Notation
    .gender = f
    .short = C
instrument-soprano-sax = Sopransaxophon
    .the = das Sopransaxophon
    .dative = dem Sopransaxophon
    .gender = n
    .short = S.-Sax.
instrument-alto-sax = Altsaxophon
    .the = das Altsaxophon
    .dative = dem Altsaxophon
    .gender = n
    .short = A.-Sax.
instrument-tenor-sax = Tenorsaxophon
    .the = das Tenorsaxophon
    .dative = dem Tenorsaxophon
    .gender = n
    .short = T.-Sax.
instrument-baritone-sax = Baritonsaxophon
    .the = das Baritonsaxophon
    .dative = dem Baritonsaxophon
    .gender = n
    .short = B.-Sax.
instrument-clarinet = Klarinette
    .the = die Klarinette
    .dative = der Klarinette
    .gender = f
    .short = Klar.
instrument-bass-clarinet = Bassklarinette
    .the = die Bassklarinette
    .dative = der Bassklarinette
    .gender = f
    .short = B.-Klar.
instrument-flute = Flöte
    .the = die Flöte
    .dative = der Flöte
    .gender = f
    .short = Fl.
instrument-irish-flute = irische Flöte
    .the = die irische Flöte
    .dative = der irischen Flöte
    .gender = f
    .short = Ir. Fl.
instrument-tin-whistle = Tin Whistle
    .the = die Tin Whistle
    .dative = der Tin Whistle
    .gender = f
    .short = Wh.
instrument-oboe = Oboe
    .the = die Oboe
    .dative = der Oboe
    .gender = f
    .short = Ob.
instrument-trumpet = Trompete
    .the = die Trompete
    .dative = der Trompete
    .gender = f
    .short = Trp.
instrument-flugelhorn = Flügelhorn
    .the = das Flügelhorn
    .dative = dem Flügelhorn
    .gender = n
    .short = Flgh.
instrument-trombone = Posaune
    .the = die Posaune
    .dative = der Posaune
    .gender = f
    .short = Pos.

# Griffe: nach „mit“, mit Artikel (.the) und im Dativ mit Artikel (.dative).

fingering = { $keys }
fingering-open = offenem Griff

key-the = { FORM($key, "the") }
key-from = { FORM($key, "dative") }
key-to = { FORM($key, "dative") }
key-number = Klappe { $number }
hole-number = Loch { $number }
key-octave = Oktavklappe
    .the = die Oktavklappe
    .dative = der Oktavklappe
key-back-octave = hinterer Oktavklappe
    .the = die hintere Oktavklappe
    .dative = der hinteren Oktavklappe
key-side-octave = seitlicher Oktavklappe
    .the = die seitliche Oktavklappe
    .dative = der seitlichen Oktavklappe
key-register = Überblasklappe
    .the = die Überblasklappe
    .dative = der Überblasklappe
key-thumb = Daumen
    .the = die Daumenklappe
    .dative = der Daumenklappe
key-thumb-hole = Daumen
    .the = das Daumenloch
    .dative = dem Daumenloch
key-half-hole = Halblochklappe
    .the = die Halblochklappe
    .dative = der Halblochklappe
key-bis = Bis-Klappe
    .the = die Bis-Klappe
    .dative = der Bis-Klappe
key-left-sliver = linker Zwischenklappe
    .the = die linke Zwischenklappe
    .dative = der linken Zwischenklappe
key-right-sliver = rechter Zwischenklappe
    .the = die rechte Zwischenklappe
    .dative = der rechten Zwischenklappe
key-second-side = zweiter Seitenklappe
    .the = die zweite Seitenklappe
    .dative = der zweiten Seitenklappe
key-of-note = { $note }-Klappe
    .the = die { $note }-Klappe
    .dative = der { $note }-Klappe
key-low = tiefer { $note }-Klappe
    .the = die tiefe { $note }-Klappe
    .dative = der tiefen { $note }-Klappe
key-high = hoher { $note }-Klappe
    .the = die hohe { $note }-Klappe
    .dative = der hohen { $note }-Klappe
key-left = linker { $note }-Klappe
    .the = die linke { $note }-Klappe
    .dative = der linken { $note }-Klappe
key-pair = { $low }/{ $high }-Klappe
    .the = die { $low }/{ $high }-Klappe
    .dative = der { $low }/{ $high }-Klappe
key-left-pair = linker { $low }/{ $high }-Klappe
    .the = die linke { $low }/{ $high }-Klappe
    .dative = der linken { $low }/{ $high }-Klappe
key-right-pair = rechter { $low }/{ $high }-Klappe
    .the = die rechte { $low }/{ $high }-Klappe
    .dative = der rechten { $low }/{ $high }-Klappe
key-throat = { $note }-Klappe der linken Hand
    .the = die { $note }-Klappe der linken Hand
    .dative = der { $note }-Klappe der linken Hand
key-side = seitlicher { $note }-Klappe
    .the = die seitliche { $note }-Klappe
    .dative = der seitlichen { $note }-Klappe
key-side-trill = seitlicher { $note }-Trillerklappe
    .the = die seitliche { $note }-Trillerklappe
    .dative = der seitlichen { $note }-Trillerklappe
key-trill = { $note }-Trillerklappe
    .the = die { $note }-Trillerklappe
    .dative = der { $note }-Trillerklappe
key-lever = { $note }-Heber
    .the = den { $note }-Heber
    .dative = dem { $note }-Heber
key-palm = { $note }-Handballenklappe
    .the = die { $note }-Handballenklappe
    .dative = der { $note }-Handballenklappe
key-front = vorderer { $note }-Klappe
    .the = die vordere { $note }-Klappe
    .dative = der vorderen { $note }-Klappe
key-thumb-note = { $note }-Daumenklappe
    .the = die { $note }-Daumenklappe
    .dative = der { $note }-Daumenklappe
slide-position = { $number ->
    [1] erster
    [2] zweiter
    [3] dritter
    [4] vierter
    [5] fünfter
    [6] sechster
   *[7] siebter
} Lage

# Warum eine Stelle schwer ist.

note-pair = { $first }–{ $second }
move-to = { $first } nach { $second }
move-again = { $note } noch einmal
hard-place-why = { $move }: { $why }.
cause-tongue = die Zunge muss schnell sein
cause-grace = als Vorschlag muss es leicht und schnell sein
cause-speed = { $rate } Noten in der Sekunde
cause-break = es geht über den Registerwechsel
cause-into-altissimo = es geht ins Altissimo
cause-from-altissimo = es kommt aus dem Altissimo herab
cause-palm = die Handballenklappen kommen ins Spiel
cause-crossing = Finger kreuzen sich ({ $down } hinab, { $up } hinauf)
cause-many-fingers = { $count } Finger bewegen sich zugleich
cause-slide = der Zug geht von { $first } zu { $second }
cause-next-partial = der Bogen geht zum nächsten Naturton
cause-partials = der Bogen überspringt { $count } Naturtöne
cause-finger-goes = der { $finger } geht von { $before } zu { $after }
cause-finger-takes = der { $finger } nimmt { $keys } hinzu
cause-finger-leaves = der { $finger } lässt nur { $keys } los
count-of-fingers = { $n ->
    [0] keiner
    [1] einer
    [2] zwei
    [3] drei
    [4] vier
    [5] fünf
    [6] sechs
    [7] sieben
    [8] acht
    [9] neun
   *[other] { $n }
}
count-of-partials = { count-of-fingers }
finger-left-thumb = linke Daumen
finger-left-first = linke Zeigefinger
finger-left-second = linke Mittelfinger
finger-left-third = linke Ringfinger
finger-left-little = linke kleine Finger
finger-left-palm = linke Handballen
finger-right-first = rechte Zeigefinger
finger-right-second = rechte Mittelfinger
finger-right-third = rechte Ringfinger
finger-right-little = rechte kleine Finger
finger-right-side = Rand der rechten Hand

# Wie man sie übt.

practice-fingering = { $note } mit { $fingering } greifen.
practice-break = { $pair } auf einem ruhigen Atem binden; die rechte Hand für { $upper } setzen, bevor { $lower } verlassen wird.
practice-little-finger = { $pair } achtmal in jeder Richtung binden; der kleine Finger bleibt beim Gleiten auf den Klappen.
practice-roll = Rollen statt heben: { $pair } achtmal in jeder Richtung binden, der Finger verlässt die Klappen nie.
practice-palm = { $pair } mit ruhiger Hand binden; nur der Handballen bewegt sich, gerade so viel, dass die Klappe öffnet.
practice-many-fingers = { $pair } langsam in der Schleife, bis alle Finger mit einem Klick ankommen, dann etwas schneller.
practice-partial = { $pair } singen, dann mit weichen Lippen nur auf der Luft binden, bevor die Hand mitmacht.
practice-slide = { $pair } mit leichter Legatozunge spielen; der Zug bewegt sich spät und auf einmal.
practice-tongue = { $lower } allein anstoßen, vier-, sechs-, dann achtmal, nur mit der Zungenspitze, ohne die Luft anzuhalten.
practice-dotted = Die ganze Stelle punktiert spielen, lang–kurz, dann kurz–lang, dann gleichmäßig.
practice-slow-trill = { $pair } gleichmäßig hin und her binden, bis es sich wie ein langsamer Triller anfühlt.
practice-tempo = Bei { $beat } = { $start } beginnen; wenn es dreimal nacheinander sauber ist, um { $step } steigern; Ziel ist { $beat } = { $goal }.
practice-at-tempo = Bei { $beat } = { $goal } liegt es in Reichweite: dort gleichmäßig spielen.
feel-by-custom = In der Datei steht nicht, wie gespielt wird: Die Achtel sind geswingt, wie im Jazz üblich.
