scoop = Anschleifen
    .label = Scoop
    .text = Die Note beginnt etwas zu tief und wird auf ihre Höhe gezogen.
    .how = Rohrblatt: zum Ansatz den Kiefer lockern, dann festigen; Flöte: ein- und zurückdrehen; Blech: unter der Note beginnen. Kein Finger bewegt sich.
    .when = Bei einer Note mit Zeit dafür: lange Noten, Höhepunkte, Phrasenanfänge; selten zweimal in einer Phrase.
    .fault = Jede lange Note wird angeschliffen.
    .cure = Sich in vier Takten eine erlauben und sie vorher aussuchen.

fall = Abfall
    .label = Fall
    .text = Am Ende fällt die Note ohne Ziel nach unten ab.
    .how = Luft und Finger gehen zusammen und werden im Fallen leiser.
    .when = Vor einer Pause oder bei einer langen Note am Ende einer Phrase.
    .fault = Er bleibt bis zum Schluss laut und landet auf einem Ton.
    .cure = Bis ins Nichts leiser werden, bevor sich der letzte Finger bewegt.

doit = Aufschießen
    .label = Doit
    .text = Am Ende schießt die Note nach oben weg.
    .how = Den Ansatz straffen und die Finger in einer raschen Geste hochwerfen.
    .when = Vor einer Pause oder bei einer langen Note am Ende einer Phrase, am besten nach einem Anstieg.
    .fault = Es dauert so lang wie die Note.
    .cure = Die Note aushalten und nur den letzten Augenblick nutzen.

ghost-note = verschluckte Note
    .label = Ghost
    .text = Eine halb verschluckte Note: mehr gefühlt als gehört.
    .how = Die Zunge hält die Note fast an (Rohrblatt: sie berührt das Blatt), die Luft läuft weiter.
    .when = Auf einer kurzen Note neben dem Schlag, die gleich zur nächsten weiterführt.
    .fault = Die Note verschwindet ganz oder stimmt nicht.
    .cure = Sie voll spielen, dann die Zunge nach und nach näher bringen.

vibrato = Vibrato zum Ende hin
    .label = Vib.
    .text = Die lange Note beginnt gerade und fängt gegen Ende zu schwingen an.
    .how = Saxophon und Blech: eine kleine Bewegung des Kiefers, etwa fünf in der Sekunde; Flöte und Oboe: der Atem. Erst nach der halben Note beginnen.
    .when = Bei Noten von etwa einer Sekunde und mehr, vor allem an Schlüssen.
    .fault = Es beginnt mit dem Ansatz und bleibt immer gleich.
    .cure = Die Note zählen: die erste Hälfte gerade, die zweite mit Vibrato.

scoop-why = Das ist { $role ->
    [peak] eine Note, die höher liegt als ihre Nachbarn
    [last] eine Schlussnote, die höher liegt als die vorige
    [start] ein Phrasenanfang
    [leap] eine Note, zu der die Melodie hinaufspringt
    [long] eine lange Note
   *[time] eine Note mit Zeit dafür
}: Man kann von unten hineinziehen.
fall-why = { $end ->
    [rest] Nach dieser Note kommt eine Pause
    [last] Das ist die letzte Note
   *[phrase] Die Phrase endet mit dieser Note
}: Sie darf nach unten abfallen.
doit-why = { $end ->
    [rest] Nach dieser Note kommt eine Pause
    [last] Das ist die letzte Note
   *[phrase] Die Phrase endet mit dieser Note
}{ $rises ->
    [yes] , und die Melodie ist zu ihr gestiegen
   *[no] {""}
}: Sie darf nach oben wegschießen.
ghost-note-why = Ein kurzes { $pitch } neben dem Schlag, auf dem Weg zu { $next }: Es darf halb verschluckt werden.
vibrato-why = { $end ->
    [last] Die Melodie endet auf { $pitch }
    [phrase] Die Phrase endet auf { $pitch }
   *[long] Die Melodie bleibt auf { $pitch }, { $count ->
        [one] { $count } Viertel lang
       *[other] { $count } Viertel lang
    }
}: Die Note kann gerade beginnen und gegen Ende warm werden.
