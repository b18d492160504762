turn = Doppelschlag
    .label = Doppelschlag
    .text = Hauptnote, obere Stufe, Hauptnote, untere Stufe, Hauptnote, in der Tonleiter des Akkords.
    .how = Den ganzen Doppelschlag binden, gleichmäßig, und die letzte Note singen lassen.
    .when = Bei einer Note von mindestens einem Schlag, am besten auf dem Weg zur nächsten.
    .fault = Der Doppelschlag ist am Anfang gedrängt, und die letzte Note kommt zu spät.
    .cure = In langsamen gleichen Noten mit dem Metronom spielen, dann die Werte halbieren.

inverted-turn = umgekehrter Doppelschlag
    .label = umg. Doppelschlag
    .text = Hauptnote, untere Stufe, Hauptnote, obere Stufe, Hauptnote.
    .how = Wie der Doppelschlag, doch er öffnet sich nach oben: zur oberen Note ein wenig wachsen.
    .when = Vor einer Melodienote, die höher liegt.
    .fault = Er wird mit dem Doppelschlag verwechselt.
    .cure = „Zuerst hinab“ sagen und sehen, wohin die Melodie geht.

mordent = Mordent
    .label = Mordent
    .text = Hauptnote, ein rascher Ausschlag zur unteren Stufe und zurück.
    .how = Ein Schnippen eines Fingers; die Zunge spielt nur die erste Note.
    .when = Bei einer schweren Note, die von oben erreicht oder wiederholt wird.
    .fault = Drei gleiche Noten: eine Triole statt eines Schnippens.
    .cure = Die lange Note spielen und das Schnippen ganz am Anfang anfügen, so spät und so schnell wie möglich.

upper-mordent = Praller
    .label = Praller
    .text = Hauptnote, ein rascher Ausschlag zur oberen Stufe und zurück.
    .how = Den Finger hinaufschnippen, nicht hinunter: leicht und nah an der Klappe.
    .when = Bei einer schweren Note, die von unten erreicht oder wiederholt wird.
    .fault = Die obere Note ist betont.
    .cure = Die Hauptnote betonen und das Schnippen auf derselben Luft reiten lassen.

shake = Triller
    .label = Triller
    .text = Rascher Wechsel einer langen Note mit der oberen Stufe, der auf der Hauptnote zur Ruhe kommt.
    .how = Langsamer beginnen als möglich, beschleunigen und rechtzeitig aufhören, damit die Note ausklingt.
    .when = Bei einer langen hohen Note auf dem Höhepunkt; einmal im Chorus genügt.
    .fault = Er dauert bis zum Ende der Note.
    .cure = Den Schlag festlegen, auf dem er zur Ruhe kommt, und das Ankommen üben.

turn-why = Eine Note mit Zeit für einen Doppelschlag ({ $start ->
    [at-once] sofort
   *[after] nachdem die Note zu hören war
}): obere und untere Stufe um sie herum.
turn-why-raised = Eine Note mit Zeit für einen Doppelschlag ({ $start ->
    [at-once] sofort
   *[after] nachdem die Note zu hören war
}), dessen untere Note zum Leitton erhöht ist.
inverted-turn-why = Eine Note mit Zeit für einen Doppelschlag, der zuerst taucht: untere, dann obere Stufe.
mordent-why = Ein rascher Ausschlag zur unteren Stufe schärft den Ansatz.
upper-mordent-why = Ein rascher Ausschlag zur oberen Stufe hellt den Ansatz auf.
shake-why = Eine lange Note, die Spannung trägt: rascher Wechsel mit der oberen Stufe, dann Ruhe.
