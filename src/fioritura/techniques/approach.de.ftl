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
    .when = In eine Note auf dem Schlag, wenn die vorige einen Schlag übrig hat.
    .fault = Die erste der beiden ist betont.
    .cure = Sie leiser beginnen als die Melodienote davor.

surround = Einkreisen
    .label = Einkreisen
    .text = Die Noten zu beiden Seiten der nächsten Melodienote, nacheinander, dann die Note selbst.
    .how = Drei Noten als eine Geste denken, deren Ziel die letzte ist.
    .when = In eine schwere Akkordnote, vor allem beim Akkordwechsel.
    .fault = Die Linie bleibt auf dem Ziel stehen.
    .cure = Darüber hinaus spielen: die Geste mit den zwei folgenden Melodienoten in der Schleife üben.

approach-note-why = Die Melodie springt auf einen Schlag: Der Halbton unter dem Ziel kündigt es an.
approach-chromatic-why = Zwei Halbtöne { $direction ->
    [up] steigen von unten
   *[down] gleiten von oben
} in eine Note auf dem Schlag.
surround-why = Das Ziel wird eingekreist: { $first ->
    [above] Stufe darüber, Halbton darunter
   *[below] Halbton darunter, Stufe darüber
}, dann die Note.
