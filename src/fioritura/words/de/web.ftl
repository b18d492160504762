# Was der Server der Seite sagt.

served-at = Fioritura ist unter { $address } zu erreichen (mit Strg-C beenden). Ihr Regal: { $shelf }
served-token =
    Nur dieser Rechner kann ihn erreichen, und nur, wer das Kennwort hat: { $token }
served-beyond =
    Der Server ist auch von anderen Rechnern aus zu erreichen. Wer ihn erreicht und das Kennwort unten hat, kann alles in
    Ihrem Regal sehen, ändern und entfernen. Was über das Netz geht, ist nicht verschlüsselt, auch das Kennwort nicht: nur
    in einem Netz, dem Sie vertrauen. Aufnehmen lässt sich nur auf diesem Rechner, denn Browser geben einer
    unverschlüsselten Seite kein Mikrofon.
    Kennwort: { $token }
no-listening-address = „{ $given }“ ist keine Adresse, an der sich lauschen lässt: eine in Ziffern angeben, wie 192.168.1.20, oder 0.0.0.0 für alle.
port-unusable = Der Port { $port } von { $address } ist nicht verfügbar ({ $reason }): einen anderen nehmen.
no-page-language = „{ $given }“ spricht die Seite nicht: möglich ist { LIST($known, "or") }.
token-too-short = Ein Kennwort mit { $count } Zeichen ist zu kurz: mindestens { $limit } sind nötig.
token-first = Zuerst das Kennwort angeben: { $address } öffnen oder es als Bearer-Token senden.
other-host = Dieser Server antwortet nur unter seiner eigenen Adresse: die öffnen, die er beim Start ausgegeben hat.
other-site = Die Anfrage kommt von einer fremden Seite: die Seite selbst benutzen.
request-too-large = { $size } Bytes sind zu viel: { $limit } sind möglich.
request-unfit =
    { $kind ->
        [missing] { $place } fehlt: bitte angeben.
        [greater_than_equal] { $place } ist zu klein: mindestens { $limit }.
        [less_than_equal] { $place } ist zu groß: höchstens { $limit }.
        [string_too_long] { $place } ist zu lang: höchstens { $limit } Zeichen.
        [string_too_short] { $place } ist zu kurz: mindestens { $limit } Zeichen.
        [too_long] { $place } hat zu viele Einträge: höchstens { $limit }.
        [too_short] { $place } hat zu wenige Einträge: mindestens { $limit }.
        [extra_forbidden] { $place } ist hier unbekannt: weglassen.
       *[other] { $place } ist von einer Art, die hier nicht geht: siehe /api/openapi.json.
    }
no-such-address = Unter dieser Adresse gibt es nichts.
address-refused = Das geht unter dieser Adresse nicht (HTTP { $status }).
upload-problem = { $file }: { $problem }
upload-empty = Die Datei ist leer: noch einmal exportieren oder speichern.
no-such-tune-in-book =
    { $count ->
        [one] Das Heft enthält { $count } Stück, aber kein Stück { $given }: ein anderes wählen.
       *[other] Das Heft enthält { $count } Stücke, aber kein Stück { $given }: ein anderes wählen.
    }
tune-facts-unfit = Die Angaben zu einem Stück oder dazu, wie es gelesen wird, passen nicht.
no-tune-yet = Noch kein Stück: mit X:1 beginnen und den Kopf mit K: beenden.
chords-inferred = Die Datei enthält keine Akkordsymbole; die in Klammern sind erschlossen.
arrangement-first = erste
arrangement-copy = Kopie
staff-name =
    { $line ->
        [plain] schlicht
        [ornamented] verziert
        [this] diese
       *[other] andere
    }
no-figure-here = Eine Figur „{ $given }“ gibt es hier nicht: die Fassung noch einmal ansehen.
replace-needs-other = Zum Ersetzen einer Figur auch die andere nennen.
bend-needs-note = Zum Höher- oder Tiefersetzen angeben, welcher Ton gemeint ist.
no-such-sound = Diesen Klang gibt es nicht mehr: neu abfragen, was zu hören ist.
engraver-ended = Der Notenstich wurde abgebrochen, vielleicht aus Mangel an Speicher: noch einmal versuchen.
step-decided =
    { $kind ->
        [keep] „{ $figure }“ behalten
        [release] „{ $figure }“ freigegeben
        [leave-out] „{ $figure }“ weggelassen
        [replace] „{ $figure }“ ersetzt
        [raise] einen Ton von „{ $figure }“ höher gesetzt
       *[lower] einen Ton von „{ $figure }“ tiefer gesetzt
    }
step-setting = Einstellung geändert
too-many-jobs = { $waiting } Aufträge warten schon: noch einmal versuchen, wenn einige fertig sind.
no-such-job = Diesen Auftrag gibt es nicht mehr: noch einmal beginnen.
job-without-file = Der Auftrag hat keine Datei ergeben: nachsehen, wie es um ihn steht.
job-files =
    { $count ->
        [one] { $count } Datei
       *[other] { $count } Dateien
    }
job-too-long =
    { $minutes ->
        [one] Die Arbeit dauerte länger als { $minutes } Minute: weniger auf einmal verlangen.
       *[other] Die Arbeit dauerte länger als { $minutes } Minuten: weniger auf einmal verlangen.
    }
job-failed = Die Arbeit ist misslungen ({ $reason }): die Ausgabe des Servers sagt, wo.
job-died =
    { $how ->
        [signal] Der Arbeitsprozess endete mit Signal { $number }, vielleicht aus Mangel an Speicher: noch einmal versuchen oder weniger auf einmal verlangen.
       *[code] Der Arbeitsprozess endete mit Code { $number }, vielleicht aus Mangel an Speicher: noch einmal versuchen oder weniger auf einmal verlangen.
    }
plan-damaged =
    { $count ->
        [one] Der Plan einer Stunde ist beschädigt ({ $count } Fehler).
       *[other] Der Plan einer Stunde ist beschädigt ({ $count } Fehler).
    }
no-such-passage =
    { $count ->
        [one] Die Aufnahme hat { $count } Durchgang, aber keinen Durchgang { $given }.
       *[other] Die Aufnahme hat { $count } Durchgänge, aber keinen Durchgang { $given }.
    }
report-damaged = Der Bericht ist beschädigt ({ $count } Fehler): noch einmal aufnehmen.
take-facts-damaged = Die Angaben zu einer Aufnahme sind beschädigt ({ $count } Fehler).
recording-gone = Die Aufnahme liegt nicht mehr in { $folder }: { $name } zurücklegen oder die Aufnahme verwerfen.
beat-in-bar = Takt { $bar }, Schlag { NUMBER($beat, maximumFractionDigits: 2) }
sentence = { CAPITAL($words) }
