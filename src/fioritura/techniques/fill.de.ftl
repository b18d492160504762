answer-fill = Antwort
    .label = Antwort
    .text = Wo die Melodie liegt oder pausiert, antwortet eine kurze Phrase und führt in die nächste Melodienote.
    .how = Die lange Note früher verlassen, atmen und vom Anfang der Antwort an auf die nächste Melodienote zielen.
    .when = Bei langen Noten am Phrasenende und in Pausen zwischen Phrasen; nicht in jeder Lücke.
    .fault = Die Antwort ist lauter und dichter als die Melodie, und die nächste Phrase beginnt zu spät.
    .cure = Die Melodie singen und nur die Antworten spielen; dann die Melodie spielen und jede zweite Antwort weglassen.

answer-fill-why = Die Melodie { $rests ->
    [yes] pausiert
   *[no] hält eine lange Note
}: Eine Antwort im Rhythmus { $origin ->
    [phrase] dieser Phrase
    [opening] des Anfangs
    [to-triplet] von Achteln, die mit einer Triole schließen
    [to-pair] von Achteln, die mit zwei schnellen Noten schließen
    [from-triplet] einer Triole, die in Achteln ausläuft
    [from-pair] zweier schneller Noten, die in Achteln auslaufen
    [from-long] einer gehaltenen ersten Note mit Achteln danach
   *[eighths] gleichmäßiger Achtel
}{ $halved ->
    [yes] , im halben Wert
   *[no] {""}
}, { $shape ->
    [arch] zu einem Höhepunkt und zurück
    [valley] hinab und wieder hinauf
    [falling] durchweg fallend
   *[rising] durchweg steigend
}, führt in die nächste Note.
