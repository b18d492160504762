lead-in = Hinführung
    .label = Hinführung
    .text = Ein langer Ton geht in eine Linie gleicher Töne durch den Akkord über, die auf dem nächsten Melodieton ankommt.
    .how = Erst den langen Ton klingen lassen; dann auf die Ankunft hin spielen, nicht auf die Töne dazwischen.
    .when = Mitten in einer Phrase auf Tönen von zwei Schlägen und mehr; am besten zu einem betonten Ton oder einem neuen Akkord.
    .fault = Die Linie wird gehetzt, und der nächste Melodieton kommt zu früh.
    .cure = Den langen Ton und die Ankunft singen; dann den letzten Ton der Linie dazunehmen, dann die letzten zwei und so fort.

lead-in-why = Der Ton ist lang, und die Phrase geht weiter: { $count } gleiche Töne durch den Akkord, der letzte { $way ->
    [semitone] einen Halbton vor der Ankunft
   *[step] einen Ganzton vor der Ankunft
}{ $chromatic ->
    [yes] { " und außerhalb der Skala" }
   *[no] {""}
}.
