back-phrasing = Back-Phrasing
    .label = Back-Phrasing
    .text = Eine Gruppe von Noten beginnt später und rückt zusammen, sodass die Note, zu der sie führt, an ihrem Platz kommt. Wo keine Pause davor steht, wird die vorige Note so lange gehalten.
    .how = Die vorige Note halten, als wäre endlos Zeit, dann die Worte der Phrase auf das Ziel hin sprechen; der Puls läuft im Fuß weiter.
    .when = In Balladen und mittlerem Swing, bei zwei bis acht Noten, die auf eine Eins oder zu einer längeren Note auf dem Schlag führen.
    .fault = Das Tempo wird mit der Phrase langsamer.
    .cure = Den Takt über einer Basslinie in der Schleife üben: die Phrase zuerst pünktlich singen, dann spät, und jedes Mal das Ziel klatschen.

phrase-ahead = vorgezogene Phrase
    .label = vorgezogen
    .text = Eine Gruppe von Noten kommt eine Achtel oder eine Sechzehntel früher, und die längere Note an ihrem Ende wird von dort an gehalten.
    .how = Einen Schlag früher atmen, die erste vorgezogene Note leicht betonen und die Werte so lassen, wie sie in der Melodie stehen.
    .when = Wo zwei bis acht Noten von einem Schlag zu einer längeren Note führen und die vorige Note Zeit übrig hat.
    .fault = Die Gruppe kommt früh und eilt dann noch dazu.
    .cure = Beim Spielen auf zwei und vier klatschen lassen; die frühen Noten stehen genau zwischen den Schlägen.

octave-phrase = Phrase in anderer Oktave
    .label = Oktave
    .text = Eine Wendung, die das eben Gehörte wiederholt oder beantwortet, wird Note für Note eine Oktave höher oder tiefer gespielt.
    .how = Die erste Note der neuen Oktave hören, bevor sie erklingt, und den Klang so rund halten wie in der Oktave davor.
    .when = Bei einer Wiederholung, Sequenz oder Antwort, die in der bequemen Lage bleibt und über höchstens eine Oktave erreicht wird.
    .fault = Die erste Note kiekst.
    .cure = Den Oktavsprung dorthin allein spielen, gebunden und leise, zehnmal, dann die Wendung.

back-phrasing-why = Die { $count } Noten, die zu der Note { $where } führen, beginnen um { $late ->
    [eighth] eine Achtel
   *[quarter] eine Viertel
} später und sind rechtzeitig da{ $held ->
    [true] : die vorige Note wird so lange gehalten
   *[false] {""}
}.
phrase-ahead-why = Die { $count } Noten bis zu der { $where } kommen { $value ->
    [eighth] eine Achtel
   *[sixteenth] eine Sechzehntel
} früher, und diese längere Note wird von dort an gehalten.
octave-phrase-why = { $kind ->
    [repeat] Was { FORM($bar, "at") } zu hören war, kommt noch einmal
    [sequence] Die Wendung { FORM($bar, "at") } kommt auf anderen Tönen noch einmal
   *[answer] Derselbe Rhythmus antwortet auf das, was { FORM($bar, "at") } zu hören war
}: eine Oktave { $direction ->
    [up] höher
   *[down] tiefer
} ist es etwas Neues.
