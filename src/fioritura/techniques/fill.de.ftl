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
}: { $count } Töne{ $doubled ->
    [yes] {" "}im doppelten Tempo
   *[no] {""}
} { $idea ->
    [echo] greifen vier Töne dieser Phrase auf
    [third] berühren die Blue-Terz
    [fifth] berühren die verminderte Quinte
    [guide] heben Terz oder Septime des neuen Akkords hervor
    [arpeggio] gehen durch die Töne des Akkords
    [around] umspielen einen Ton von beiden Seiten
    [chromatic] berühren einen Ton außerhalb von Tonart und Akkord
    [waves] wechseln mehrmals die Richtung
    [arch] steigen und kehren um
    [valley] fallen und kehren um
    [falling] fallen
   *[rising] steigen
} und { $way ->
    [enclosed] umspielen die nächste Note, bevor sie kommt
    [semitone] führen mit einem Halbton in die nächste Note
    [step] führen mit einem Ganzton in die nächste Note
    [third] führen mit einer Terz in die nächste Note
    [colour] kommen auf einem Farbton des Akkords zur Ruhe
   *[rest] kommen auf einem Akkordton zur Ruhe
}.
