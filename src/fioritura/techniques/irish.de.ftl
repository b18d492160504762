irish-cut = Cut
    .label = Cut
    .text = Ein angeschnippter höherer Ton vor dem Ton, so kurz, dass er kaum eine Tonhöhe hat: Er trennt und betont, wie anderswo die Zunge.
    .how = Auf Flöte und Whistle einen Finger der oberen Hand heben, den dritten für Töne der unteren Hand, den ersten für A und H, und sofort zurücklegen; die Zunge bleibt aus dem Spiel.
    .when = Auf einem wiederholten Ton, besonders wenn danach ein Schritt abwärts folgt, und auf Tönen der Zählzeit, die von unten erreicht werden.
    .fault = Der Cut klingt wie ein Ton der Melodie.
    .cure = Den Ton zweimal mit dem Cut dazwischen sagen und eins zählen, nicht zwei: Der Finger federt nur.

irish-strike = Strike
    .label = Strike
    .text = Ein getippter tieferer Ton vor dem Ton; ein Finger schlägt auf sein Loch und springt zurück.
    .how = Mit gestrecktem Finger auf das nächste offene Loch darunter schlagen und abfedern lassen; die Luft fließt weiter.
    .when = Um einen Ton von einem gleichen zu trennen, oder um nach einem Sprung abwärts zu landen.
    .fault = Der Finger bleibt auf dem Loch, und der tiefere Ton spricht an.
    .cure = Mit dem Finger auf die Tischplatte tippen: Er muss weg sein, bevor man ihn hört.

irish-short-roll = kurzer Roll
    .label = kurzer Roll
    .text = Eine Viertel, die mit einem Cut beginnt und von einem Strike geteilt wird: Cut und Ton, Strike und Ton.
    .how = Ganz am Anfang der Cut, in der Mitte der Strike, ein Atem und keine Zunge dazwischen.
    .when = Auf Vierteln in Jigs und Reels, wo unten ein Finger frei ist.
    .fault = Cut und Strike kommen überstürzt am Anfang.
    .cure = Zwei Achtel auf demselben Ton spielen, dann mit den Fingern statt mit der Zunge trennen.

irish-long-roll = langer Roll
    .label = Roll
    .text = Eine punktierte Viertel, in drei geteilt: der Ton, der Ton mit Cut, der Ton mit Strike. Sein Zeichen ist ~.
    .how = Den Ton eine Achtel halten, Cut, Strike, alles im Gleichmaß der Jig; nur zwei Finger bewegen sich.
    .when = Auf punktierten Vierteln, und wo die Melodie einen Ton drei Achtel lang umkreist.
    .fault = Die drei Töne sind ungleich: Der Roll staut sich am Ende.
    .cure = Erst drei gleiche Achtel stoßen, dann die Zunge weglassen und Cut und Strike an denselben Stellen trennen lassen.

irish-cran = Cran
    .label = Cran
    .text = Ein Roll auf dem tiefen D, wo kein Finger zum Anschlagen übrig ist: Der Ton wird durch Cuts zweier verschiedener Finger geteilt.
    .how = Mit dem ersten, dann mit dem zweiten Finger der unteren Hand schneiden; nie zweimal mit demselben.
    .when = Auf langen tiefen D, und auf dem D darüber, das fast gleich gegriffen wird.
    .fault = Unter den Cuts bricht die Oktave.
    .cure = Sanft in ein volles tiefes D blasen; langsam schneiden, ein Finger nach dem anderen, und schneller werden, wenn beide Cuts ansprechen.

irish-triplet = Triole
    .label = Triole
    .text = Drei schnelle gleiche Töne in der Zeit einer Viertel: Der Ton zwischen zwei Tönen einer Terz wird gefüllt, oder ein Ton wird umkreist.
    .how = Binden, oder nur den ersten stoßen; der Schlag liegt auf dem ersten.
    .when = In Reels und Hornpipes, zwischen Tönen im Terzabstand und vor einer Quarte; in Jigs fast nie.
    .fault = Es werden zwei Sechzehntel und eine Achtel.
    .cure = Den Schlag klatschen und »Tri-o-le« sagen; dann auf einem Ton spielen.

irish-treble = Treble
    .label = Treble
    .text = Eine Viertel, als gleichmäßige Triole dreimal gesagt.
    .how = »Te-ke-te« stoßen, oder nur den ersten Ton stoßen und die anderen mit Cut und Strike trennen.
    .when = Auf einer Viertel auf dem Schlag in Reels und Hornpipes, als Antrieb; ein- oder zweimal im Stück.
    .fault = Er ist schwerer als die Töne ringsum.
    .cure = Leiser spielen als das Vorige; nur der erste Ton darf zu hören sein.

irish-divided-note = geteilter Ton
    .label = geteilt
    .text = Aus einer Viertel werden zwei Achtel: sie selbst, und ein Ton des Akkords oder ein Nachbar, der weiterführt.
    .how = Die erste bleibt, wie sie war; die zweite ist leicht.
    .when = Wenn eine Phrase wiederkommt und ihre gehaltenen Töne sich bewegen dürfen.
    .fault = Der neue Ton ist lauter als die Melodie.
    .cure = Die Viertel zweimal spielen, dann nur die Finger der zweiten ändern.

irish-held-note = gehaltener Ton
    .label = gehalten
    .text = Aus zwei Achteln wird eine Viertel: Der durchgehende Ton fällt weg, und die Melodie atmet.
    .how = Den ersten bis zum Ende halten, oder früh loslassen und atmen.
    .when = Wenn eine Phrase wiederkommt, in laufenden Achteln; die Stelle, an der Flötisten Luft holen.
    .fault = Der Schlag schleppt, weil sich nichts bewegt.
    .cure = Die weggelassene Achtel mit dem Fuß klopfen.

irish-cut-why = { $coming ->
    [repeated] Ein wiederholter Ton wird { $where } durch einen Cut vom vorigen getrennt
    [below] Die Melodie steigt zum Ton { $where }: Ein Cut gibt ihm Gewicht
    [above] Die Melodie fällt zum Ton { $where }: Ein Cut hebt ihn heraus
   *[first] Ein Cut hebt den ersten Ton heraus
}.
irish-strike-why = { $coming ->
    [repeated] Der Ton wird noch einmal gesagt: Ein Strike von unten trennt die beiden.
   *[above] Die Melodie springt abwärts: Mit einem Strike landet sie.
}
irish-short-roll-why = Der Ton ist so lang wie zwei laufende, und unten ist ein Finger frei: Cut und Strike teilen ihn in zwei.
irish-long-roll-why = { $form ->
    [held] Der Ton dauert so lang wie drei laufende: Ein Roll hält den Schlag darin in Gang.
    [said-again] Die Melodie sagt den Ton so lang wie drei laufende: Ein Roll bindet sie zu einem.
   *[circled] Die Melodie umkreist den Ton in drei laufenden: Der Roll tut dasselbe mit zwei Fingern.
}
irish-cran-why = { $form ->
    [held] Für einen langen Ton ist kein Finger zum Anschlagen übrig: Nur Cuts teilen ihn.
    [said-again] Die Melodie sagt den Ton so lang wie drei laufende, und kein Finger ist zum Anschlagen übrig: Ein Cran bindet sie zu einem.
   *[circled] Die Melodie umkreist den Ton in drei laufenden, und kein Finger ist zum Anschlagen übrig: Ein Cran bleibt auf ihm.
}
irish-triplet-why = { $form ->
    [third] Die zwei Töne liegen eine Terz auseinander: Der Ton dazwischen macht sie zur Triole.
    [fourth] Ein Ton, so lang wie zwei laufende, vor einer Quarte: Die zwei Töne dazwischen laufen als Triole weiter.
   *[neighbour] Ein Ton, so lang wie zwei laufende, vor einem Schritt oder einer Terz abwärts: Als Triole kreist er einmal.
}
irish-treble-why = Ein Ton auf dem Schlag, so lang wie zwei laufende: Dreimal gesagt treibt er voran.
irish-divided-note-why = { $side ->
    [above] Ein Ton, so lang wie zwei laufende, kann sich bewegen: Der Ton darüber führt weiter.
   *[below] Ein Ton, so lang wie zwei laufende, kann sich bewegen: Der Ton darunter führt weiter.
}
irish-held-note-why = { $heard ->
    [before] Die Phrase war schon zu hören: Der durchgehende Ton darf wegfallen, und die Linie atmet.
   *[first] Der Ton dazwischen geht nur durch: Ohne ihn atmet die Linie.
}
