added-chord-note = zusätzliche Akkordnote
    .label = Akkordnote
    .text = Eine Note des Akkords mit eigenem Wert: in einem Sprung der Melodie oder zwischen einer Note und ihrer Wiederholung.
    .how = Den Akkord vor dem Sprung hören; jede der Noten hat ihren vollen Klang.
    .when = In einem Sprung ab einer Quinte, in dem eine Akkordnote liegt, oder wo eine Note wiederholt wird.
    .fault = Die zusätzliche Note ist gepresst, weil das Ohr schon bei der Melodienote danach ist.
    .cure = Den Akkord vom Grundton auf und ab spielen, dann Melodie- und Akkordnote allein, langsam.

arpeggiated-note = gebrochener Akkord auf einer langen Note
    .label = Arpeggio
    .text = Eine lange Note wird durch die Noten ihres Akkords verlassen, oder der Akkord wird in der Pause davor aufwärts gebrochen.
    .how = Zuerst die lange Note klingen lassen; dann eine gleichmäßige Bewegung der Luft für den ganzen Akkord.
    .when = Auf einer Halben oder länger, und vor einer Akkordnote auf dem Schlag nach einer Pause.
    .fault = Die Brechung beginnt zu früh, und die Melodienote geht verloren.
    .cure = Die Schläge der langen Note laut zählen und auf dem gezählten Schlag beginnen.

guide-tone-line = Guide-Tone-Linie
    .label = Guide Tones
    .text = Während die Melodie wartet, gehen Terzen und Septimen der Akkorde beim Akkordwechsel schrittweise weiter.
    .how = In voller Länge, ruhig und ohne Betonung, wie eine Mittelstimme; der Schritt kommt mit dem Akkordwechsel.
    .when = Unter einer langen Note oder Pause von drei Schlägen und mehr, über der der Akkord wechselt.
    .fault = Der Schritt kommt zu früh oder zu spät, und der Wechsel ist nicht zu hören.
    .cure = Terz und Septime jedes Akkords in Halben durch das ganze Stück spielen, mit dem Bass.

added-chord-note-why = { $kind ->
    [leap] Die Melodie springt { $direction ->
        [up] aufwärts
       *[down] abwärts
    }: dazwischen steht eine Note des Akkords.
   *[repeated] Die Note wird wiederholt: dazwischen steht eine Note des Akkords { $direction ->
        [up] darüber
       *[down] darunter
    }.
}
arpeggiated-note-why = { $way ->
    [into] Vor dieser Note pausiert die Melodie: { $count } Noten ihres Akkords steigen zu ihr auf.
   *[from] Die Note ist lang: { $count } Noten ihres Akkords führen von ihr weiter.
}
guide-tone-line-why = Die Melodie wartet, während der Akkord { $changes ->
    [one] wechselt
   *[other] { $changes }-mal wechselt
}: { $count ->
    [one] eine Terz oder Septime führt schrittweise
   *[other] { $count } Noten, jede die Terz oder Septime ihres Akkords, führen schrittweise
} weiter.
