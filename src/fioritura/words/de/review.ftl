# Die Seiten einer Besprechung.

which-tune = Welche Melodie wurde gespielt? Die Melodie angeben oder die Bearbeitung, die verlangt war.
not-earlier-takes = { $file } ist nicht die Datei der früheren Aufnahmen: sie wegräumen oder einen anderen Ordner wählen.
the-take = Die Aufnahme
review-untitled = Eine Aufnahme
review-subtitle = was zu hören war und was als Nächstes zu üben ist
review-recording = Zur Aufnahme.
review-next = Was als Nächstes zu üben ist
review-ladder = Mit { $start } Schlägen in der Minute beginnen; dreimal hintereinander richtig, dann vier schneller, bis { $goal }.
review-how-measured = Bei jeder Verzierung steht, wie sicher das Ohr ist; ist der Name nicht sicher, steht die andere Lesart dabei. Cent zählen von der gleichstufigen Stimmung auf dem eigenen A, Millisekunden vom eigenen Schlag.
review-passages = Zu hören waren { $count } Durchgänge, Wiederholungen und neue Anläufe mitgezählt.

glance-of = { $right } von { $wanted }
glance-count = { $count }
glance-ornaments = Verzierungen
glance-notes = Richtige Melodienoten
glance-tempo = Tempo
glance-time = Zeit
glance-eighths = Achtel
glance-tuning = Stimmung
glance-within = höchstens { $ms } ms
glance-swing = { $ratio } zu 1
glance-even = gleichmäßig
beats-a-minute = { $tempo } Schläge in der Minute
in-tune-with-440 = A = 440 Hz
amount-of-cents = { $cents } Cent
cents-off = { $side ->
    [sharp] { amount-of-cents } zu hoch
   *[flat] { amount-of-cents } zu tief
}

review-played = Was gespielt wurde
review-played-about = { $below ->
    [asked] Oben, was zu hören war, darunter, was verlangt war.
   *[plain] Oben, was zu hören war, darunter die schlichte Melodie.
} Die Linie hinter den Noten ist die gespielte Tonhöhe: Auf dem Notenkopf ist sie rein, ein Zwischenraum höher oder tiefer ist ein Halbton.
review-passage = Durchgang { $number } von { $count }, { $bars }
staff-played = gespielt
staff-asked = verlangt
staff-plain = schlicht
music = Noten
music-from-bar = Noten ab Takt { $bar }
colours = Farben: { $names }
colour-as-asked = wie verlangt
colour-ornament = Verzierung
colour-missed = verlangt, nicht gehört
colour-slip = anders als notiert
in-tune = rein
sharp = zu hoch
flat = zu tief

review-no-ornament = Es war keine Verzierung zu hören: Die Melodie wurde schlicht gespielt.
review-ornaments = Die Verzierungen, eine nach der anderen
review-status-done = gelungen
review-status-missed = nicht gehört
review-status-added = eigene
column-passage = Durchgang
column-bar = Takt
column-pickup = Auftakt
column-beat = Schlag
column-ornament = Verzierung
column-sure = Wie sicher
column-figure = Schnelle Noten von
column-uneven = Unterschied in der Länge
share = { NUMBER($share, style: "percent") }
sure-else = { $share }, sonst { $other }
no-ornament = keine Verzierung
review-slips = Noten, die anders waren als notiert
review-slip = { CAPITAL($where) }: { $words }.

review-spread = Zwei von drei Noten liegen höchstens { $ms } ms neben dem eigenen Schlag.
review-no-drift = Das Tempo am Ende ist das des Anfangs.
review-swing = Lange und kurze Achtel stehen { $ratio } zu 1.
review-graces = Vorschläge dauern { $ms } ms.
review-evenness = Gleichmäßigkeit
percent = { $percent } Prozent
nearly-even = fast gleichmäßig
to-practise = zu üben
review-tuning = Die ganze Aufnahme: { $off }.
review-tuning-about = Jeder Strich ist eine ausgehaltene Note, jeder Punkt ihre Mitte, gegen die eigene Stimmung.
review-register = { $register }, { $off } ({ $count ->
    [one] { $count } Note
   *[other] { $count } Noten
})
review-registers = Nach Lagen: { $registers }.
review-level-heading = Lautstärke
review-level = Leise und laute Noten liegen { $db } dB auseinander.

# Zeichnungen.

axis-on-the-beat = auf dem Schlag
axis-off-the-beat = { $side ->
    [late] { $ms } ms spät
   *[early] { $ms } ms früh
}
axis-on-a-beat = auf einem Schlag
axis-together = höchstens { $ms } ms: klingt zusammen
axis-tempo = Tempo { $tempo }
axis-cents = { $side ->
    [sharp] { $cents } Cent hoch
   *[flat] { $cents } Cent tief
}
louder = lauter
usual-level = üblich
softer = leiser
plot-time = Noten vor und nach dem Schlag und das Tempo, Takt für Takt
plot-tuning = Stimmung jeder Note, in Cent gegen die eigene Stimmung
plot-level = Lautstärke jeder Note über die Takte
plot-progress = Messwerte der Aufnahmen, von der ersten zur letzten

# Übungen.

drill-long-short = Lang–kurz
drill-short-long = Kurz–lang
drill-plain = { CAPITAL($bar) }, schlicht
drill-with-ornament = Mit der Verzierung
drill-loop = { CAPITAL($bar) }, in der Schleife
drill-long-note = { $note } zu einem Bordun aushalten
drill-one-note = { CAPITAL($bars) } auf einer Note
drill-as-written = Wie notiert

# Fortschritt über mehrere Aufnahmen.

review-progress = Fortschritt
measure-ornaments = gelungene Verzierungen
measure-notes = richtige Noten
measure-spread = Abstand der Noten vom Schlag
measure-drift = Tempo, Ende gegen Anfang
measure-pitch = Abstand der Noten von der Tonhöhe
measure-uneven = Unterschied schneller Noten
measure-level = leise bis laut
measure-tempo = Tempo, Viertel in der Minute
amount-percent = { $amount } %
amount-ms = { $amount } ms
amount-cents = { $amount } Cent
amount-db = { $amount } dB
amount-tempo = { $amount }
then-and-now = { $measure } damals { $then }, jetzt { $now }
progress-takes = { $count } Aufnahmen dieser Melodie.
progress-better = { $before } Besser seit der ersten: { $measures }.
progress-worse = { $before } Darauf achten: { $measures }.
