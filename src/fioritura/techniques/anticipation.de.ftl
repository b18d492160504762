anticipation = Vorausnahme
    .label = früh
    .text = Die Note kommt um eine Sechzehntel (im Swing um eine Achtel) zu früh und wird über ihren Schlag gehalten.
    .how = Die frühe Note klar anstoßen und halten; den Schlag darunter spüren, ohne neu anzustoßen.
    .when = Bei Noten von ein oder zwei Schlägen, die auf dem Schlag beginnen, am besten beim Akkordwechsel.
    .fault = Alles danach kommt ebenfalls zu früh.
    .cure = Den Schlag mit dem Fuß klopfen und den Rhythmus vorher sprechen.

anticipation-why = Eine Note auf dem Schlag, die { $value ->
    [eighth] eine Achtel
   *[sixteenth] eine Sechzehntel
} früher kommen kann { $brings ->
    [yes] und den neuen Akkord vorwegnimmt
   *[no] und die Linie vorantreibt
}.
