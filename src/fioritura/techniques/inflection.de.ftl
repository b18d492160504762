scoop = Anschleifen
    .label = Scoop
    .text = Die Note beginnt etwas zu tief und wird auf ihre Höhe gezogen.
    .how = Rohrblatt: zum Ansatz den Kiefer lockern, dann festigen; Flöte: ein- und zurückdrehen; Blech: unter der Note beginnen. Kein Finger bewegt sich.
    .when = Bei langen Noten, Höhepunkten und Phrasenanfängen; selten zweimal in einer Phrase.
    .fault = Jede lange Note wird angeschliffen.
    .cure = Sich in vier Takten eine erlauben und sie vorher aussuchen.

fall = Abfall
    .label = Fall
    .text = Am Ende fällt die Note ohne Ziel nach unten ab.
    .how = Luft und Finger gehen zusammen und werden im Fallen leiser.
    .when = Am Ende einer Phrase, vor einer Pause.
    .fault = Er bleibt bis zum Schluss laut und landet auf einem Ton.
    .cure = Bis ins Nichts leiser werden, bevor sich der letzte Finger bewegt.

doit = Aufschießen
    .label = Doit
    .text = Am Ende schießt die Note nach oben weg.
    .how = Den Ansatz straffen und die Finger in einer raschen Geste hochwerfen.
    .when = Am Ende einer hellen, steigenden Phrase.
    .fault = Es dauert so lang wie die Note.
    .cure = Die Note aushalten und nur den letzten Augenblick nutzen.

ghost-note = verschluckte Note
    .label = Ghost
    .text = Eine halb verschluckte Note: mehr gefühlt als gehört.
    .how = Die Zunge hält die Note fast an (Rohrblatt: sie berührt das Blatt), die Luft läuft weiter.
    .when = Auf einer leichten Achtel zwischen zwei stärkeren Noten.
    .fault = Die Note verschwindet ganz oder stimmt nicht.
    .cure = Sie voll spielen, dann die Zunge nach und nach näher bringen.

vibrato = Vibrato zum Ende hin
    .label = Vib.
    .text = Die lange Note beginnt gerade und fängt gegen Ende zu schwingen an.
    .how = Saxophon und Blech: eine kleine Bewegung des Kiefers, etwa fünf in der Sekunde; Flöte und Oboe: der Atem. Erst nach der halben Note beginnen.
    .when = Bei Noten von mehr als einer Sekunde, vor allem an Schlüssen.
    .fault = Es beginnt mit dem Ansatz und bleibt immer gleich.
    .cure = Die Note zählen: die erste Hälfte gerade, die zweite mit Vibrato.

scoop-why = Das ist { $role ->
    [peak] eine Note, die höher liegt als ihre Nachbarn
    [last] eine Schlussnote, die höher liegt als die vorige
    [start] ein Phrasenanfang
   *[long] eine lange Note
}: Man kann von unten hineinziehen.
fall-why = Die Phrase lässt diese Note los: Sie darf nach unten abfallen.
doit-why = Die Phrase lässt diese Note{ $rises ->
    [yes] {" "}nach einem Anstieg
   *[no] {""}
} los: Sie darf nach oben wegschießen.
ghost-note-why = Eine kurze Note neben dem Schlag, auf dem Weg zur nächsten: Sie darf halb verschluckt werden.
vibrato-why = Eine Note, lang genug, um gerade zu beginnen und gegen Ende warm zu werden.
