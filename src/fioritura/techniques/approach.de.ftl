approach-note = chromatische Annäherung
    .label = Annäherung
    .text = Eine eigene Note einen Halbton unter der nächsten Melodienote, vom Ende der vorigen genommen.
    .how = Zur Zielnote binden und ihr das Gewicht geben.
    .when = Wo die Melodie auf einen Schlag springt.
    .fault = Der Sprung zur Annäherungsnote misslingt.
    .cure = Den Sprung allein üben, dann den Halbton anfügen.

approach-chromatic = doppelte chromatische Annäherung
    .label = chrom. Annäherung
    .text = Zwei Halbtöne nacheinander, die in die nächste Melodienote gleiten.
    .how = Gleichmäßig, gebunden, wachsend.
    .when = In eine Note auf dem Schlag, wenn die vorige Zeit übrig hat.
    .fault = Die erste der beiden ist betont.
    .cure = Sie leiser beginnen als die Melodienote davor.

surround = Einkreisen
    .label = Einkreisen
    .text = Die Noten zu beiden Seiten der nächsten Melodienote, nacheinander, dann die Note selbst.
    .how = Drei Noten als eine Geste denken, deren Ziel die letzte ist.
    .when = In eine Note auf dem Schlag, vor allem eine Akkordnote beim Akkordwechsel.
    .fault = Die Linie bleibt auf dem Ziel stehen.
    .cure = Darüber hinaus spielen: die Geste mit den zwei folgenden Melodienoten in der Schleife üben.

enclosure = erweiterte Einkreisung
    .label = Umspielung
    .text = Drei oder vier Noten mit eigenem Wert kreisen eine tragende Note von beiden Seiten ein.
    .how = Die Noten gleichmäßig und leicht spielen; das Ziel trägt das Gewicht.
    .when = In eine Akkordnote auf der Eins oder der Taktmitte oder in die Terz oder Septime eines neuen Akkords, wo die vorige Note Zeit hat.
    .fault = Die Richtung geht verloren: Jede Note steht für sich.
    .cure = Das Ziel singen, die Noten um es herum langsam spielen und es wieder singen; dann das Singen weglassen.

approach-note-why = Die Melodie springt auf einen Schlag: Der Halbton unter dem Ziel kündigt es an.
approach-chromatic-why = Zwei Halbtöne { $direction ->
    [up] steigen von unten
   *[down] gleiten von oben
} in eine Note auf dem Schlag.
surround-why = Das Ziel wird eingekreist: { $first ->
    [above] Stufe darüber, Halbton darunter
   *[below] Halbton darunter, Stufe darüber
}, dann die Note.
enclosure-why = Die Note { $where } wird von beiden Seiten eingekreist: { $order ->
    [above] in zwei Halbtönen von oben, dann der Halbton darunter
    [above-four] zwei Halbtöne abwärts zu ihr, dann zwei Halbtöne aufwärts
   *[below] zwei Halbtöne von unten, dann die Stufe darüber
}.
