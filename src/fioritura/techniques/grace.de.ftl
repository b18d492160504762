lower-grace-semitone = Vorschlag einen Halbton tiefer
    .label = Halbton tief
    .text = Eine kurze Note einen Halbton unter der Melodienote, knapp vor ihr gespielt und an sie gebunden.
    .how = Den Vorschlag leicht anstoßen und sofort zur Hauptnote binden; sie bleibt auf ihrem Platz.
    .when = Bei Noten, die Gewicht verdienen: lange Noten, Höhepunkte, Phrasenanfänge, Noten auf dem Schlag.
    .fault = Der Vorschlag wird lang, und die Hauptnote kommt zu spät.
    .cure = Die Hauptnote allein mit dem Metronom spielen, dann den Vorschlag hineinlassen, ohne sie zu verschieben.

lower-grace-step = Vorschlag eine Tonstufe tiefer
    .label = Vorschl. tief
    .text = Eine kurze Note eine Tonleiterstufe unter der Melodienote: weicher in der Farbe als der Halbton.
    .how = Beide Griffe vorher denken; beim Binden bewegen sich nur ein oder zwei Finger.
    .when = Wo der Halbton zu scharf klänge: in Balladen und bei Noten, deren untere Stufe ein Ganzton ist.
    .fault = Beide Noten bekommen dasselbe Gewicht.
    .cure = In die Hauptnote hineinatmen; „ta-DAA“ sagen, nie „TA-ta“.

upper-grace-step = Vorschlag eine Tonstufe höher
    .label = Vorschl. hoch
    .text = Eine kurze Note eine Tonleiterstufe über der Melodienote, die auf sie herabfällt.
    .how = An ein Schnippen mit dem Finger denken: Die obere Note ist nur ein Klick vor der Hauptnote.
    .when = Bei wiederholten Noten, nach einem Schritt aufwärts und auf den schweren Schlägen von Volksmelodien.
    .fault = Die obere Note klingt wie eine falsche Melodienote.
    .cure = Kürzer und leiser spielen; das Ohr soll den Ansatz bemerken, nicht die Tonhöhe.

upper-grace-semitone = Vorschlag einen Halbton höher, im fallenden Ganzton
    .label = Halbton hoch
    .text = Wo die Melodie einen Ganzton fällt, wird der Halbton dazwischen im Vorübergehen berührt.
    .how = Die erste Note einen Augenblick früher verlassen und mit dem Finger, nicht mit dem Kiefer, durch die mittlere gleiten.
    .when = Nur wo die Melodie wirklich einen Ganzton zur Note fällt.
    .fault = Er wird bei fallenden Halbtönen gespielt, wo nichts dazwischen liegt.
    .cure = Erst die beiden Melodienoten benennen; sind es Nachbarn auf dem Klavier, einen anderen Vorschlag wählen.

double-grace-lower = Doppelvorschlag von unten
    .label = Doppelvorschl.
    .text = Zwei rasche Tonleiterstufen, die in die Melodienote hinauflaufen.
    .how = Nur die erste anstoßen und alle drei binden; die Finger bleiben nah an den Klappen.
    .when = Bei einer schweren, langen Note, am besten wenn die Melodie von unten oder aus einer Pause kommt.
    .fault = Die beiden Noten sind ungleich.
    .cure = Sie mit der Hauptnote als gleichmäßige Triole üben, dann die Triole schrumpfen lassen.

double-grace-upper-lower = Doppelvorschlag um die Note (oben, unten)
    .label = Vorschl. rundum
    .text = Die Tonleiterstufe darüber und der Halbton darunter, dann die Note dazwischen.
    .how = Alle drei binden; die Luft zielt von Anfang an auf die Hauptnote.
    .when = Bei einer langen Note oder einem Höhepunkt auf dem Schlag, wo das Ohr Zeit hat, sie ankommen zu hören.
    .fault = Die Hauptnote wird zu kurz.
    .cure = Die Hauptnote voll aushalten; die Note davor gibt die Zeit her.

lower-grace-semitone-why = Der Halbton darunter führt hinauf in { $note } und lässt sie sprechen.
lower-grace-step-why = Die Stufe darunter ist hier ein Ganzton: Sie hebt { $note } weicher an.
upper-grace-step-why = { $coming ->
    [repeated] Eine wiederholte Note wird von der vorigen getrennt
    [below] Die Melodie kommt von unten, also wird die Note von der anderen Seite berührt
   *[above] Die Note wird von oben angelehnt
}: Die Stufe darüber fällt { $where } auf sie herab.
upper-grace-semitone-why = Die Melodie fällt hier einen Ganzton: Der Halbton dazwischen füllt den Schritt.
double-grace-lower-why = Zwei Tonleiterstufen laufen hinauf in die Note { $where }.
double-grace-upper-lower-why = Stufe darüber, Halbton darunter: { CAPITAL($note) } wird von beiden Seiten eingekreist.
