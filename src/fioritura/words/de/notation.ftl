# Worte um die gedruckten Noten.

sheet-legend = Verzierungen und ihre Takte
sheet-pickup = Auftakt

# Wo etwas nicht stimmt.

problem-in-file = { $name }: { $problem }
problem-in-tune = { $tune }: { $problem }
abc-at = Zeile { NUMBER($line, useGrouping: 0) }, Spalte { NUMBER($column, useGrouping: 0) }, „{ $text }“: { $problem }
abc-warned = Zeile { NUMBER($line, useGrouping: 0) }, Spalte { NUMBER($column, useGrouping: 0) }: { $problem }
xml-at = Zeile { $line }: { $problem }
abc-tune = Stück { $place }
abc-tune-titled = Stück { $place }, { $title }
abc-at-line = in Zeile { NUMBER($line, useGrouping: 0) }

# Dateien und was sie enthalten.

file-kind = { $kind ->
    [compressed] komprimiertes MusicXML
   *[other] { $kind }
}
and-more = noch { $count }
first-of-several-read = die Datei enthält { $count } Stücke; das erste wurde gelesen
file-named-otherwise = der Name der Datei endet auf { $ending }, sie enthält aber { $kind } und wurde so gelesen
one-tune-only = Eine solche Datei ({ $kind }) enthält nur ein Stück: Nummer und Titel weglassen.
no-tune-titled = Ein Stück mit dem Titel „{ $given }“ gibt es hier nicht; vorhanden: { $tunes }.
no-tune-numbered = Ein Stück mit der Nummer { $given } gibt es hier nicht; vorhanden: { $tunes }.
file-is-pdf = Das ist ein PDF: Von einer Seite lassen sich keine Noten lesen; stattdessen MusicXML, ABC oder MIDI exportieren.
file-is-picture = Das ist ein Bild: stattdessen MusicXML, ABC oder MIDI exportieren.
file-is-gzip = Das ist ein gzip-Archiv: erst entpacken.
file-is-sound = Das ist eine Tondatei: Ein Stück wird aus MusicXML, ABC oder MIDI gelesen.
file-is-web-page = Das ist eine Webseite, kein Stück: die Datei selbst herunterladen.
file-is-binary = Die Datei enthält kein lesbares Stück, sondern Binärdaten: MusicXML, ABC oder MIDI angeben.
file-is-text = Das ist Text, aber kein ABC (es gibt keine Zeile X: oder K:): MusicXML, ABC oder MIDI angeben.

# Stimmen und die Melodie darunter.

part-unnamed = ohne Namen
part-numbered = Stimme { $number }
part-in-list = { $number } { $name }
no-such-part = „{ $given }“ ist keine Stimme dieser Datei; vorhanden: { $parts }. Eine Nummer oder einen ganzen Namen angeben.
part-in-doubt = „{ $given }“ passt auf mehrere Stimmen; vorhanden: { $parts }. Eine Nummer oder einen ganzen Namen angeben.
chords-without-melody = Es gibt Akkordsymbole, aber keine Melodie: die Melodie in der Datei ergänzen.
chords-without-notes = Es gibt Akkordsymbole, aber keine Melodie: die Melodie ergänzen oder eine andere Stimme wählen.
no-pitched-notes = Es gibt keine Noten mit Tonhöhe zum Verzieren: eine Datei mit einer Melodie angeben.
no-notes-at-all = Es gibt keine Noten zum Verzieren: eine andere Stimme oder eine andere Datei wählen.
melody-taken-from = die Melodie stammt aus { $part }; vorhanden: { $parts }

# Takte, Noten, Akkorde und Tempi jeder Datei.

quarter-notes = { $count } Viertel
    .number = { $count }
quarter-note-parts = { $count } Viertel
    .number = { $count }
bar-holds = { $bar } enthält { $held }, ein { $metre }-Takt hat { FORM($full, "number") }
bar-kept = { $fault }: so belassen
bars-irregular = { $fault }{ $more ->
    [0] { "" }
   *[other] { " " }(so auch { $more ->
        [one] { $more } weiterer
       *[other] { $more } weitere
    })
}: in der Datei berichtigen oder die Takte so belassen.
bar-unmeasured = Ein Takt ohne Taktart dauert { $length }, mehr als sich messen lässt: Taktstriche setzen.
tune-too-long = Das Stück hat { $bars } Takte, { $limit } sind möglich: die Datei auf das Stück kürzen.
notes-together = { $bar } hat { $pitch }, während { $other } noch klingt; eine Melodie hat immer nur einen Ton: eine andere Stimme wählen oder die zweite herausnehmen.
note-unplayable = { $bar } hat die Note { $pitch } mit { $length } Dauer, die sich nicht spielen lässt: berichtigen.
chords-at-one-place = { $bar } hat „{ $first }“ und „{ $second }“ an derselben Stelle: „{ $first }“ wird weggelassen
chord-kept-as-text = { $bar }: „{ $given }“ ist kein lesbares Akkordsymbol; als Text belassen, ohne Akkord gespielt
tempo-unplayable = { $bar } hat ein Tempo von { $given } Vierteln in der Minute; spielbar sind { $low } bis { $high }: berichtigen.
note-without-length = Note { $number } ({ $pitch }) hat keine Dauer: eine geben oder die Note weglassen.
note-over-another = Note { $number } ({ $pitch }, Ticks { $ticks }) liegt über der Note davor oder außerhalb der Takte (Ticks { $free }): kürzen oder verschieben.
score-empty = Eine Partitur ohne Systeme oder Takte lässt sich nicht schreiben: mindestens je eines angeben.

# ABC: was an einer Stelle nicht stimmt.

abc-no-key-no-music = es gibt weder ein Feld K: noch Musik; ein Stück in ABC beginnt mit X:, T: und K:, danach folgen Noten.
abc-line-too-long = die Zeile hat { $count } Zeichen, { $limit } sind möglich: umbrechen.
abc-no-key = das ist keine Tonart; einen Buchstaben A-G, # oder b und ein Tongeschlecht schreiben, wie in K:G oder K:Bbdor.
abc-after-key = „{ $given }“ nach der Tonart bedeutet nichts; zum Beispiel K:F#m oder K:D =c schreiben.
abc-no-mode = „{ $given }“ ist kein Tongeschlecht; bekannt sind { $known }.
abc-no-metre = das ist keine Taktart; zum Beispiel M:4/4, M:6/8, M:C|, M:(2+2+3)/8 oder M:none schreiben.
abc-no-unit = das ist kein Notenwert; zum Beispiel L:1/8 schreiben (1/512 bis 4).
abc-no-tempo = das ist kein Tempo; zum Beispiel Q:1/4=120 oder Q:"Allegro" 1/4=120 schreiben.
abc-tempo-outside = das sind { $given } Viertel in der Minute; spielbar sind { $low } bis { $high }: berichtigen.
abc-no-part-order = das ist keine Reihenfolge von Teilen; zum Beispiel P:AABB oder P:(AB)2C schreiben.
abc-bracket-open = eine Klammer ist nicht geschlossen; zum Beispiel P:(AB)2C schreiben.
abc-too-many-parts = die Reihenfolge hat mehr als { $limit } Teile: kürzen.
abc-no-definition = das ist keine Definition; zum Beispiel U:T = !trill! schreiben.
abc-no-note = das ist keine Note.
abc-note-outside = die Note liegt außerhalb des Bereichs von MIDI: einige Oktavzeichen entfernen.
abc-length-absurd = diese Dauer ist unsinnig; zum Beispiel A3, A/2 oder A3/2 schreiben.
abc-note-length = eine Note darf { $shortest } bis { $longest } ganze Noten dauern.
abc-rest-in-chord = eine Pause hat in einem Akkord keinen Platz.
abc-bar-rest-count = eine Pause darf 1 bis 999 Takte dauern.
abc-bar-rest-inside-bar = eine Pause über ganze Takte muss auf einen Taktstrich folgen.
abc-no-ending-numbers = das sind keine Nummern einer Klammer; zum Beispiel [1 oder [1,3 oder [1-3 schreiben.
abc-ending-outside = die Nummer einer Klammer muss zwischen 1 und { $limit } liegen.
abc-too-many-bars = das Stück hat mehr als { $limit } Takte: aufteilen.
abc-tuplet-outside = eine N-tole verteilt 2 bis { $limit } Noten auf die Zeit von 1 bis { $limit }.
abc-broken-misplaced = ein punktierter Rhythmus steht zwischen zwei Noten, wie in A>B, A>>B oder A<B.
abc-broken-over-bar-line = ein punktierter Rhythmus geht nicht über einen Taktstrich: die Dauern ausschreiben.
abc-broken-open = ein punktierter Rhythmus braucht noch vor dem Taktstrich eine zweite Note.
abc-among-graces = „{ $given }“ hat zwischen Vorschlagsnoten keinen Platz.
abc-chord-in-chord = ein Akkord kann nicht in einem Akkord beginnen.
abc-chord-end-loose = hier ist kein Akkord zu schließen.
abc-chord-open = ein Akkord ist vor diesem Taktstrich nicht geschlossen.
abc-unknown-sign = kein Zeichen von ABC beginnt so: entfernen oder schreiben, was gemeint war.
abc-notes-together = { $count } Noten klingen zugleich; eine Melodie hat immer nur einen Ton: die anderen herausnehmen oder nur den obersten behalten.
abc-voices-together = zwei Stimmen klingen zugleich; eine Melodie hat immer nur einen Ton: die anderen herausnehmen oder nur den obersten behalten.

# ABC: was erraten oder weggelassen wurde.

abc-left-out = „{ $text }“ wird weggelassen: { $problem }
abc-no-key-field = es gibt kein Feld K:; das Stück wird ohne Vorzeichen gelesen
abc-key-guessed = { $given } wird als { $key } gelesen
abc-key-changed = die Vorzeichen von { $key } sind durch Versetzungszeichen verändert; sie stehen stattdessen bei den Noten
abc-after-metre = „{ $given }“ nach der Taktart { $metre } wird weggelassen
abc-macros = Makros werden nicht aufgelöst; die Noten werden gelesen, wie sie dastehen
abc-music-after-gap = Zeile { NUMBER($line, useGrouping: 0) }: Musik nach einer leeren Zeile gehört nicht zum Stück und wird weggelassen
abc-music-after-gap-read = Zeile { NUMBER($line, useGrouping: 0) }: Musik nach einer leeren Zeile wird als Teil des Stücks gelesen
abc-parts-missing = die Reihenfolge der Teile { $order } wird weggelassen: Dem Stück fehlt der Teil { $parts }
abc-parts-written-out = die Teile sind in der gespielten Reihenfolge ausgeschrieben, { $order }
abc-melody-voice = die Melodie ist Stimme { $name }; weggelassen: { $others }
abc-ending-cut = eine Klammer ohne Ende wird so lang gelesen wie die erste
abc-tie-loose = ein Haltebogen ohne Note davor wird weggelassen
abc-slur-end-loose = das Ende eines Bogens ohne Anfang wird weggelassen
abc-ties-as-slurs = { $count ->
    [one] { $count } Haltebogen zwischen verschiedenen Tönen wird als Bindebogen gelesen
   *[other] { $count } Haltebögen zwischen verschiedenen Tönen werden als Bindebögen gelesen
}
abc-bar-lines-understood = { $count ->
    [one] { $count } Taktstrich am Ende einer Zeile wird mitgedacht
   *[other] { $count } Taktstriche am Ende von Zeilen werden mitgedacht
}
abc-top-notes = { $count ->
    [one] an { $count } Stelle klingen mehrere Noten zugleich: Gelesen wird die oberste
   *[other] an { $count } Stellen klingen mehrere Noten zugleich: Gelesen wird die oberste
}
abc-more-places = { $count ->
    [one] { $count } weitere solche Stelle
   *[other] { $count } weitere solche Stellen
}
abc-signs-left-out = weggelassen, da keine Noten einer Melodie: { $signs }
abc-sign-counted = { $sign } ({ $count })
abc-sign-on-rest = { $sign } auf einer Pause
abc-further-verses = weitere Strophen

# MusicXML.

xml-no-score = Das ist eine MusicXML-Datei der Art { $kind }, keine Partitur: die Partitur selbst angeben.
xml-not-music = Das ist XML, aber kein MusicXML (das erste Element ist <{ $element }>): als MusicXML exportieren.
xml-too-large = Das XML enthält mehr als { $elements } Elemente oder { $bytes } Bytes: nur die Melodiestimme speichern.
xml-damaged = Das XML bricht ab oder ist in Zeile { NUMBER($line, useGrouping: 0) } beschädigt ({ $reason }): noch einmal exportieren oder speichern.
xml-empty = kein Inhalt
xml-unreadable = Das XML lässt sich nicht lesen ({ $reason }): noch einmal exportieren oder speichern.
xml-entities = Das XML verwendet eigene Entities, die eine Partitur nicht braucht: noch einmal als MusicXML exportieren.
mxl-damaged = Die komprimierte Datei ist beschädigt ({ $reason }): noch einmal exportieren oder herunterladen.
mxl-too-many-files = Die komprimierte Datei enthält { $files } Dateien, { $limit } sind möglich: nur die Partitur exportieren.
mxl-unsafe-name = Die komprimierte Datei enthält einen unsicheren Namen, „{ $name }“: nicht verwenden.
mxl-password = Die komprimierte Datei ist durch ein Passwort geschützt: ohne Passwort speichern.
mxl-packing = Die komprimierte Datei ist auf eine Weise gepackt, die .mxl nicht erlaubt: noch einmal als .mxl speichern.
mxl-bomb = Die komprimierte Datei würde entpackt von { $packed } auf { $unpacked } Bytes wachsen; möglich sind { $limit } und das { $ratio }-Fache: nicht verwenden.
mxl-unpacks-too-far = Die komprimierte Datei ergibt entpackt mehr als { $limit } Bytes: nicht verwenden.
mxl-names-no-score = Der Container der komprimierten Datei nennt keine Partitur, die darin liegt: noch einmal als .mxl exportieren.
mxl-holds-no-score = Die komprimierte Datei enthält keine Partitur: noch einmal als .mxl oder .musicxml exportieren.
xml-no-part = Die Partitur hat keine Stimme: noch einmal mit ihren Systemen exportieren.
xml-element-missing = <{ $element }> fehlt: berichtigen oder die Datei noch einmal exportieren.
xml-element-senseless = <{ $element }> enthält „{ $given }“, was dort keinen Sinn ergibt: berichtigen oder die Datei noch einmal exportieren.
xml-divisions = { $given } Teile einer Viertelnote; sinnvoll sind 1 bis { $limit }: die Datei noch einmal exportieren.
xml-negative-duration = eine negative Dauer: berichtigen oder die Datei noch einmal exportieren.
xml-backup-too-far = ein Rücksprung vor den Anfang des Taktes: die Datei noch einmal exportieren.
xml-note-too-short = die Note { $pitch } dauert { $length }, zu kurz zum Bearbeiten: als Vorschlagsnote schreiben oder verlängern.
xml-key-too-far = { $count } Vorzeichen, 7 sind möglich: enharmonisch anders schreiben.
xml-tempo-no-number = das Tempo „{ $given }“ ist keine Zahl: berichtigen.
xml-notes-at-once = { $bar } hat { $pitch } und { $other } zugleich, und eine Melodie hat immer nur einen Ton: die unteren Noten aus der Datei nehmen.
xml-part-at-once = { $bar } hat { $pitch } und { $other } zugleich, und eine Melodie hat immer nur einen Ton: eine andere Stimme wählen ({ $parts }) oder die unteren Noten aus der Datei nehmen.
xml-one-voice-read = nur Stimme { $voice } des obersten Systems wurde gelesen; { $count ->
    [one] { $count } Note anderer Stimmen und Systeme ist weggelassen
   *[other] { $count } Noten anderer Stimmen und Systeme sind weggelassen
}
xml-signs-left-out = { $count ->
    [one] { $count } Zeichen { $sign } weggelassen: Dafür gibt es hier keinen Platz
   *[other] { $count } Zeichen { $sign } weggelassen: Dafür gibt es hier keinen Platz
}
xml-lengths-rounded = { $count ->
    [one] { $count } Note, { FORM($bar, "at") }, hat eine Dauer feiner als { $part } einer Viertelnote und wurde darauf gerundet
   *[other] { $count } Noten, die erste { FORM($bar, "at") }, haben Dauern feiner als { $part } einer Viertelnote und wurden darauf gerundet
}
xml-graces-at-end = Vorschlagsnoten am Ende des Stücks, auf die keine Note folgt, sind weggelassen
xml-octave-outside = { $pitch } lässt sich nicht schreiben: MusicXML hat die Oktaven 0 bis 9; die Noten um Oktaven versetzen.
no-bars-per-system = { $given } Takte je Zeile ergeben keine Seite: 1 oder mehr angeben.

# MIDI.

midi-damaged-or-large = Die MIDI-Datei ist beschädigt oder größer als { $limit } Bytes: noch einmal exportieren.
midi-breaks-off = Die MIDI-Datei bricht ab: noch einmal exportieren oder herunterladen.
midi-damaged = Die MIDI-Datei ist beschädigt ({ $reason }): noch einmal exportieren oder herunterladen.
midi-smpte = Die MIDI-Datei zählt die Zeit in SMPTE-Bildern statt in Schlägen: mit Ticks je Schlag exportieren.
midi-format = Das ist eine MIDI-Datei im Format { $given }; lesbar sind 0 und 1: im Format 1 exportieren.
midi-too-many-bars = Die MIDI-Datei hat mehr als { $limit } Takte: auf das Stück kürzen.
midi-part-empty = { $part } hat keine Noten; vorhanden: { $parts }. Eine andere Stimme wählen.
midi-bar-crowded = { $bar } hat Noten, die für jeden Rhythmus zu dicht liegen: ausdünnen oder eine andere Stimme wählen.
midi-notes-at-once = { $bar } hat { $pitch } und { $other } zugleich, und eine Melodie hat immer nur einen Ton: eine andere Stimme wählen ({ $parts }).
midi-swing-read = durchgehend lang-kurze Achtel wurden als gleichmäßige Achtel mit Swing-Feeling gelesen
midi-silent-bars = { $count ->
    [one] { $count } leerer Takt vor der Melodie weggelassen
   *[other] { $count } leere Takte vor der Melodie weggelassen
}
midi-key-found = die Datei nennt keine Tonart; aus den Noten ergab sich { $key }
midi-key-doubted = die Datei sagt { $said }, ihre Noten sind aber die von { $key } und wurden so gelesen
midi-part = { $name } ({ $sound })
midi-channel = Kanal { $number }
midi-family = { $family ->
    [piano] Klavier
    [chromatic-percussion] Stabspiele
    [organ] Orgel
    [guitar] Gitarre
    [bass] Bass
    [strings] Streicher
    [ensemble] Ensemble
    [brass] Blech
    [reed] Rohrblatt
    [pipe] Flöten
    [synth-lead] Synth-Lead
    [synth-pad] Synth-Fläche
    [synth-effects] Synth-Effekte
    [ethnic] Ethno
    [percussive] Schlagwerk
   *[sound-effects] Klangeffekte
}

# Notenstich und Seiten.

no-reason-given = ohne Angabe von Gründen
engraver-missing = Der Notenstich fehlt ({ $reason }): das Paket „verovio“ installieren.
engraver-no-layout = Der Notenstich kann die Musik nicht setzen: { $reason }.
engraver-no-room = Der Notenstich kann die Musik nicht in { $systems ->
    [one] { $systems } Zeile
   *[other] { $systems } Zeilen
} setzen: weniger Takte je Zeile angeben.
engraver-lost-bars = Der Notenstich zeichnete { $drawn } von { $bars } Takten: das Stück melden, mit dem es geschieht.
staff-height-outside = Ein System von { $given } mm Höhe lässt sich nicht stechen: 2 bis 40 mm angeben (7 ist üblich).
page-width-outside = Eine Seite von { $given } mm Breite passt nicht zu einem System von { $staff } mm: { $low } bis { $high } mm angeben.
bars-per-system-outside = { $given } Takte je Zeile lassen sich nicht stechen: 1 bis 32 angeben.
engraver-page-unread = Die Seite des Notenstichs lässt sich nicht lesen: die Version von „verovio“ installieren, die dieses Programm nennt.
engraver-drawing-damaged = Die Zeichnung des Notenstichs ist beschädigt (eine Gruppe darin hat kein Ende): das Stück melden, mit dem es geschieht.
page-octave-outside = { $pitch } lässt sich nicht schreiben: Eine Seite hat die Oktaven 0 bis 9; die Noten um Oktaven versetzen.
font-not-stored = Die Notenschrift lässt sich nicht ablegen: { $reason } { $variable } nennt einen anderen Ordner.
font-lacks-sign = Der Notenschrift { $font } fehlt das Zeichen { $sign }: das Paket „verovio“ neu installieren.
font-not-found = Die Notenschrift { $font } ist nicht zu finden: das Paket „verovio“ neu installieren.
font-empty = { $file } im Paket „verovio“ enthält keine Schrift: neu installieren (6.0 oder später).
resolution-outside = { $given } Punkte je Zoll lassen sich nicht zeichnen: 20 bis 1200 angeben (144 passt für Bildschirme).
picture-size-outside = Ein Bild von { $width } mal { $height } Pixeln lässt sich nicht zeichnen: 16 bis 8192 angeben.
typesetter-missing = Der Textsatz fehlt ({ $reason }): das Paket „typst“ installieren.
typesetter-failed = Der Textsatz ist gescheitert ({ $reason }): das Stück melden, mit dem es geschieht.
typesetter-made-no-page = Der Textsatz ergab keine Seite: das Stück melden, mit dem es geschieht.
no-such-paper = Ein Papier „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
no-such-page = Eine Seite { $page } gibt es nicht: Das Blatt hat { $pages }.
