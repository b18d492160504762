run-chromatic = chromatischer Lauf in Terz oder Quarte
    .label = chrom. Lauf
    .text = Alle Halbtöne zwischen zwei Melodienoten im Abstand einer Terz oder Quarte, rasch und gleichmäßig.
    .how = Lieber spät als früh beginnen; die letzte Melodienote ist das Ziel und steht auf ihrem Schlag.
    .when = Wo der Sprung höchstens eine Quarte misst; größere haben zu viele Halbtöne.
    .fault = Der Lauf beginnt zu früh, und das Ziel muss warten.
    .cure = Rückwärts aufbauen: das Ziel, dann die letzten zwei Noten und das Ziel, dann drei.

run-scale = Tonleiterlauf
    .label = Lauf
    .text = Die Töne der Akkordtonleiter zwischen zwei Melodienoten im Abstand einer Quinte oder mehr.
    .how = Ein Atem, ein Bogen, Finger tief; zum Ziel hin wachsen.
    .when = In einen Höhepunkt oder von ihm herab, wo die erste Note lang ist.
    .fault = Zwei oder drei Noten in der Mitte verwischen.
    .cure = In punktierten Rhythmen beider Art spielen, dann gleichmäßig.

run-pentatonic = pentatonischer Lauf
    .label = pent. Lauf
    .text = Ein Lauf durch fünf Töne der Oktave: weniger Noten als die Tonleiter auf demselben Weg.
    .how = Wie ein Tonleiterlauf, aber mit Luft zwischen den Noten; er darf swingen.
    .when = Wo die ganze Tonleiter für das Tempo zu schnell wäre, und in Blues- und Folkfarben.
    .fault = Die Terz darin ist ungleich.
    .cure = Die drei Noten um die Terz in der Schleife üben.

run-arpeggio = Arpeggio-Lauf
    .label = Arpeggio
    .text = Die Töne des Akkords als rasche Stufen von einer Melodienote zur nächsten.
    .how = Erst den Akkord hören, dann die Finger ihn buchstabieren lassen.
    .when = Wo die Melodie innerhalb eines Akkords weit springt.
    .fault = Der Registerwechsel bricht.
    .cure = Die zwei Noten am Registerwechsel langsam binden, dann das ganze Arpeggio.

run-chromatic-why = Die Melodie { $direction ->
    [up] steigt
   *[down] fällt
} eine { $size ->
    [fourth] Quarte
   *[third] Terz
}: so wenige Halbtöne, dass alle Platz haben.
run-scale-why = Die Melodie { $direction ->
    [up] steigt
   *[down] fällt
} in einem weiten Sprung: Die Akkordtonleiter füllt ihn, und das Ziel ist pünktlich.
run-pentatonic-why = Die Melodie { $direction ->
    [up] steigt
   *[down] fällt
} in einem weiten Sprung: Fünf Töne der Oktave füllen ihn leicht.
run-arpeggio-why = Die Melodie { $direction ->
    [up] steigt
   *[down] fällt
} in einem weiten Sprung: Die Akkordtöne sind die Sprossen der Leiter.
