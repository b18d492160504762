neighbour-upper = obere Nebennote
    .label = ob. Nebennote
    .text = Ein Schritt von der Melodienote hinauf und wieder zurück.
    .how = Die Nebennote ist leichter als die Note, zu der sie gehört.
    .when = Bei wiederholten oder langen Noten, die sich ein wenig bewegen sollen.
    .fault = Die Rückkehr kommt zu spät.
    .cure = Die drei Griffe erst stumm im Takt wechseln.

neighbour-lower = untere Nebennote
    .label = unt. Nebennote
    .text = Ein Schritt (oder Halbton) von der Melodienote hinab und wieder zurück.
    .how = In einer Geste hinab und hinauf binden.
    .when = Bei wiederholten oder langen Noten; der Halbton ist kräftiger, die Tonleiterstufe weicher.
    .fault = Die untere Note ist zu tief.
    .cure = Die Luft auf dem Weg nach unten schnell halten.

double-neighbour = doppelte Nebennote
    .label = dopp. Nebennote
    .text = Beide Nebennoten einer Note nacheinander, bevor sie wiederkehrt.
    .how = Vier gleiche Noten, die erste und die letzte dieselbe.
    .when = Zwischen zwei gleichen Noten oder in einer langen.
    .fault = Die beiden mittleren Noten verwischen.
    .cure = Langsam üben, betont auf der zweiten, dann auf der dritten Note.

escape-tone = Fluchtnote
    .label = Fluchtnote
    .text = Ein Schritt gegen die Richtung der Melodie, dann ein Sprung zur nächsten Melodienote.
    .how = Sie wegwerfen: kurz und leicht.
    .when = Wo die Melodie einen Schritt oder eine Terz geht und die erste Note Zeit hat.
    .fault = Sie klingt wie ein Fehler.
    .cure = Den Melodienoten auf beiden Seiten volle Länge und volles Gewicht geben.

appoggiatura = Vorhalt im Sprung
    .label = Appogg.
    .text = Die Melodie springt zur Note neben der Akkordnote, lehnt sich darauf und löst sich schrittweise auf.
    .how = Volles Gewicht auf die Vorhaltsnote, keines auf die Auflösung, kein Zungenstoß dazwischen.
    .when = Bei einer langen Akkordnote auf dem Schlag, die im Sprung erreicht wird.
    .fault = Die Auflösung ist betont.
    .cure = Auf einem Seufzer singen: „AH-ah“.

neighbour-why-repeated = Die Melodie wiederholt eine Note: Die { $which ->
    [upper] obere
    [lower] untere
   *[chromatic] chromatische untere
} Nebennote dazwischen gibt ihr einen Rückweg.
neighbour-why-long = Die Note ist lang genug für einen Schritt zur { $which ->
    [upper] oberen
    [lower] unteren
   *[chromatic] chromatischen unteren
} Nebennote und zurück.
double-neighbour-why-repeated = Die Melodie wiederholt eine Note: Beide Nebennoten ({ $first ->
    [above] oben, dann unten
   *[below] unten, dann oben
}) umtanzen sie.
double-neighbour-why-long = Eine lange Note kreist durch beide Nebennoten ({ $first ->
    [above] oben, dann unten
   *[below] unten, dann oben
}) und kehrt heim.
escape-tone-why = Die Melodie geht { $direction ->
    [up] aufwärts
   *[down] abwärts
}: Ein Schritt in die Gegenrichtung, dann der Sprung, lässt sie Atem holen.
appoggiatura-why = Eine { $foreign ->
    [yes] Akkordnote
   *[no] Note
} auf dem Schlag: Ein Sprung zur { $foreign ->
    [yes] akkordfremden{" "}
   *[no] {""}
}Stufe { $side ->
    [above] darüber
   *[below] darunter
} lehnt sich auf sie und löst sich auf.
