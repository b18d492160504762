passing-note = Durchgangsnote
    .label = Durchgang
    .text = Die Tonleiternote in einem Terzsprung, mit eigenem Wert: eine Achtel oder Sechzehntel neben dem Schlag.
    .how = Leichter spielen als die Noten zu beiden Seiten und durchbinden.
    .when = Wo die Melodie eine Terz springt und die erste Note lang genug ist, um Zeit abzugeben.
    .fault = Die Durchgangsnote ist lauter als die Melodie.
    .cure = Den Sprung allein spielen; dann die Durchgangsnote unterwegs geschehen lassen.

passing-notes-pair = zwei Durchgangsnoten
    .label = Durchgang
    .text = Die zwei Tonleiternoten in einem Quartsprung.
    .how = Gleichmäßig, leicht, zum Ziel gebunden.
    .when = Wo die Melodie von einer Note von mindestens einem Schlag eine Quarte springt.
    .fault = Sie eilen.
    .cure = Die Unterteilungen des Schlags zählen, die sie einnehmen.

passing-note-chromatic = chromatische Durchgangsnote
    .label = chrom. Durchgang
    .text = Der Halbton in einem Ganzton, als eigene Note neben dem Schlag.
    .how = Sich ein wenig hineinlehnen: Sie will weiter.
    .when = Wo die Melodie einen Ganzton geht und die erste Note Zeit hat.
    .fault = Sie fällt auf den Schlag und klingt falsch.
    .cure = Mit dem Fuß den Schlag klopfen: Die chromatische Note liegt immer dazwischen.

passing-note-why = Die Melodie springt eine Terz: Die Tonleiternote dazwischen füllt sie.
passing-notes-pair-why = Die Melodie springt eine Quarte: Die zwei Tonleiternoten dazwischen machen daraus einen Gang.
passing-note-chromatic-why = Die Melodie geht einen Ganzton: Der Halbton dazwischen führt weiter, als eigene Note neben dem Schlag.
