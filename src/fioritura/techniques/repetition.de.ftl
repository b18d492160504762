repeated-notes = Tonwiederholung
    .label = Wiederh.
    .text = Aus einer Viertel werden zwei Achtel, aus einer Halben eine punktierte Viertel und eine Achtel: derselbe Ton, noch einmal gesagt.
    .how = Jede Note leicht anstoßen, „da-da“, bei durchlaufender Luft.
    .when = Bei einer Note von mindestens einer Viertel, am besten einer, die länger ist als ihre Nachbarn, wo die Linie sonst stehen bliebe.
    .fault = Die Luft hält bei jedem Zungenstoß an.
    .cure = Die Note lang spielen, dann mit der Zunge antippen, ohne die Luft zu ändern.

repeated-notes-lively = Tonwiederholung im Rhythmus
    .label = Rhythmus
    .text = Aus einer langen Note wird ein kleiner Rhythmus auf einem Ton, oft synkopiert.
    .how = Ihn formen: Eine Note ist die laute, die anderen führen zu ihr hin oder von ihr weg.
    .when = Bei einer gehaltenen Note, während die Band weiterspielt, oder um einen schlichten Schluss zu wecken.
    .fault = Alle Noten sind gleich laut.
    .cure = Den Rhythmus mit einer betonten Silbe sprechen, dann genau das anstoßen.

repeated-notes-why = { $end ->
    [last] Die Melodie endet auf { $pitch }
   *[moves] Die Melodie bleibt auf { $pitch }, bevor sie zu { $next } weitergeht
}: Zweimal gesagt, hält der Ton die Zeit in Bewegung.
repeated-notes-lively-why = Aus der Note wird ein Rhythmus von { $count ->
    [2] zwei
    [3] drei
    [4] vier
   *[other] { $count }
} Noten auf einem Ton, während die Melodie wartet.
