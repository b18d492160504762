held-colour = Farbton am Schluss
    .label = Farbton
    .text = Die letzte Note geht zur Sexte oder None ihres Akkords und bleibt dort liegen.
    .how = Die letzte Note einen Schlag lang spielen, dann ohne neuen Zungenstoß zum Farbton gehen und ihn gleichmäßig bis zum Ende halten.
    .when = Am Schluss eines Stücks im Jazz, über einem liegenden Schlussakkord; nicht, wo alle anderen die schlichte Note mit aushalten.
    .fault = Der Farbton ist lauter als die Note, aus der er kommt, und klingt wie ein Fehler.
    .cure = Die letzte Note halten, den Farbton singen, dann ihn gleich laut spielen.

held-colour-why = Die Melodie schließt auf einem liegenden Akkordton: Die { $colour ->
    [ninth] None
   *[sixth] Sexte
} gibt dem letzten Akkord seine Farbe.

closing-phrase = Schlussphrase
    .label = Schluss
    .text = Nach der letzten Note führen ein paar schnelle Töne der Pentatonik zu einem gehaltenen Ton.
    .how = Die letzte Note sprechen lassen, die schnellen Töne leicht und im Takt spielen und den gehaltenen Ton mit der Band setzen.
    .when = Einmal, ganz am Schluss, wenn die letzte Note lang ist.
    .fault = Sie eilt, und der gehaltene Ton kommt vor dem Schlag.
    .cure = Die Schläge der letzten Note laut zählen, dann die Phrase in dieses Zählen hinein spielen.

closing-phrase-why = Das Stück endet hier und lässt noch Zeit: Eine kurze Phrase { $rises ->
    [yes] steigt
   *[no] fällt
} zu einem gehaltenen Ton.
