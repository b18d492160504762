# Was eine Lehrkraft austeilt: Ausgaben einer Melodie, Übefassungen, das Paket einer Lektion mit seiner Offline-Seite.

# Namen, die auf jedem Blatt stehen.

tune-untitled = Ohne Titel
line-plain = schlicht
line-ornamented = verziert
idiom-name =
    { $idiom ->
        [folk] Folk
        [blues] Blues
        [irish] irisch
       *[jazz] Jazz
    }
lesson-level = Stufe { $level }
bars-span = Takte { $first }–{ $last }
bars-from-pickup = Auftakt bis Takt { $last }

# Ausgaben und Übefassungen.

edition-line = Stufe { $level }, { idiom-name }
edition-comparison = schlicht und verziert, Stufe { $level }, { idiom-name }
edition-plain-sound = { CAPITAL($instrument) }, schlicht
chorus-head = Thema
chorus-last-head = letztes Thema
chorus-solo = Solo { $number }

# Das Arbeitsblatt.

handout-subtitle = Eine Lektion im Verzieren · Stufe { $level }, { idiom-name }
handout-contents = In dieser Lektion
handout-plain = Die schlichte Melodie
handout-notes = Von der Lehrkraft
handout-techniques = Die Techniken, eine nach der anderen
handout-techniques-intro = Jedes Beispiel nimmt eine Phrase der Melodie: oben schlicht, unten verziert, die Figur auf grauem Grund. Die schlichte Phrase spielen, bis sie singt, dann langsam die verzierte; dann beide im Wechsel.
handout-others = Was diese Melodie noch bietet
handout-others-intro = In der Fassung zum Vorspielen kommt dies nicht vor, die Melodie hat aber Stellen dafür: für später, oder für alle, die mehr wollen.
handout-how = So wird es gespielt
handout-when = Wann es passt
handout-fault = Ein häufiger Fehler
handout-cure = Abhilfe
handout-summary = Alle Techniken auf einen Blick
handout-summary-intro = Stellen: bei wie vielen Noten dieser Melodie die Technik möglich ist. Benutzt: die Takte der Fassung, in denen sie steht.
handout-column-technique = Technik
handout-column-label = In den Noten
handout-column-level = Stufe
handout-column-what = Was es ist
handout-column-places = Stellen
handout-column-used = Benutzt
handout-performance = Die Fassung zum Vorspielen
handout-plan = Übeplan
handout-plan-each = Jede Übeeinheit, etwa fünfundzwanzig Minuten
handout-step-tone = Lange Töne und die Tonleiter in { $key }, gebunden: fünf Minuten.
handout-step-plain = Die schlichte Melodie einmal auswendig, mit der Begleitung: drei Minuten.
handout-step-technique = Die Techniken der Einheit, jede in ihrem Beispiel: langsam, im Tempo, in der Melodie: zehn Minuten.
handout-step-place = Eine schwere Stelle, siehe unten: vier Minuten. Früher aufhören, wenn ein Finger oder die Lippe müde wird.
handout-step-play = Die Fassung mit der Begleitung im Tempo der Einheit: drei Minuten. Aufnehmen und einmal anhören.
handout-sessions = Einheit für Einheit
handout-session-session = Einheit
handout-session-new = Neu
handout-session-again = Noch einmal
handout-session-tempo = Tempo
handout-session-done = Fertig
handout-again-all = alle
handout-hard = Die schweren Stellen
handout-care = Bitte beachten

# Stimmen.

part-octave-lower =
    { $octaves ->
        [one] Eine Oktave tiefer gespielt, als dieses Instrument ein Leadsheet üblicherweise liest, damit es im Umfang liegt.
       *[other] { $octaves } Oktaven tiefer gespielt, als dieses Instrument ein Leadsheet üblicherweise liest, damit es im Umfang liegt.
    }
part-octave-higher =
    { $octaves ->
        [one] Eine Oktave höher gespielt, als dieses Instrument ein Leadsheet üblicherweise liest, damit es im Umfang liegt.
       *[other] { $octaves } Oktaven höher gespielt, als dieses Instrument ein Leadsheet üblicherweise liest, damit es im Umfang liegt.
    }
part-without-octave = in keiner Oktave dieses Instruments hat die ganze Linie Platz

# Titel der Klangdateien.

sound-backing = Begleitung
sound-performance = Fassung zum Vorspielen
sound-plain = Schlichte Melodie
sound-ladder = Fassung mit { $tempo } Schlägen in der Minute
sound-slow = { CAPITAL($technique) }, langsam
sound-level = { $title }, Stufe { $level }

# Die Übungsblätter.

exercises-title = Übungen
exercises-intro = Jede schwere Stelle der Fassung auf einer eigenen Seite: allein, in Rhythmen, in allen Tonarten und Schritt für Schritt zum Zieltempo. Zehn Minuten an einer Stelle genügen; dann etwas Leichtes spielen.
exercises-drill-isolated = Allein: achtmal ohne Fehler.
exercises-drill-even = Gleichmäßig, gebunden, dann angestoßen.
exercises-drill-long-short = Lang, kurz.
exercises-drill-short-long = Kurz, lang.
exercises-drill-triplets = In Triolen.
exercises-drill-dotted = In punktierten Gruppen.
exercises-keys = Durch die Tonarten, in Quarten. Eine Tonart am Tag genügt; ihren Namen nennen, dann spielen.
exercises-tempos = Schritt für Schritt zum Ziel: ein Tempo abhaken, wenn es dreimal nacheinander sauber war.
exercises-reading = Vom Blatt
exercises-reading-intro = Dieselbe Melodie mit anderen Verzierungen. Eine halbe Minute ansehen, innerlich hören, dann ohne anzuhalten spielen; nicht üben.
exercises-reading-variant = Fassung { $number }
exercises-turn = Selbst verzieren
exercises-turn-intro = Die Phrase auf das leere System schreiben und die Verzierung einfügen. Das Geschriebene spielen und ändern, bis es gefällt.
exercises-turn-task = { CAPITAL($bar) }, { $where }: { $technique }.
exercises-yours = eigene Linie
exercises-answers = Lösungsvorschläge
exercises-answers-intro = Ein Weg von mehreren. Klingt der eigene in der Melodie besser, gilt der eigene.

# Der Plan der Wochen.

course-title = Kursplan
course-intro = Eine Melodie, fünf Stufen, { $weeks } Wochen. Jede Stufe ist ein Blatt und eine Aufnahme im Ordner „{ $folder }“; weiter geht es, wenn das Ziel erreicht ist, nicht wenn die Woche vorbei ist.
course-column-week = Woche
course-column-level = Stufe
course-column-new = Neu
course-column-tempo = Tempo
course-column-files = Dateien
course-column-done = Fertig
course-again = nichts Neues: alles noch einmal, auswendig
course-goals = Ziele
course-goal = Ziel
course-goal-1 = Die Melodie auswendig, mit wenigen Vorschlägen, die pünktlich kommen und die Hauptnote singen lassen.
course-goal-2 = Eine zweite Farbe: Wechselnoten, Durchgangsnoten und angeschliffene Töne, die der Linie folgen, ohne zu eilen.
course-goal-3 = Doppelschläge, Annäherungen und kurze Läufe in gleichmäßigem Rhythmus; wer zuhört, summt die Melodie noch mit.
course-goal-4 = Längere Figuren über den Taktstrich, auf einem Atem phrasiert, laut und leise.
course-goal-5 = Eine eigene Fassung: im Spielen unter allen Figuren wählen und die Melodie jedes Mal neu erzählen.
course-check = Bereit für die nächste Stufe?
course-check-1 = Ich spiele diese Stufe im Zieltempo mit der Begleitung, ohne anzuhalten.
course-check-2 = Ich kann jede Verzierung singen, bevor ich sie spiele.
course-check-3 = Wer zuhört, erkennt die Melodie sofort.
course-check-4 = Nichts tut weh: Hände, Lippe und Schultern sind frei.

# Der Ablauf einer Lektion im Video.

order-title = { $title }: Ablauf
order-intro = Zieltempo { $tempo }. Die Zeiten gelten für ruhiges Sprechen und jedes Beispiel langsam und im Tempo.
order-quiet = Ton prüfen: Lautsprecher leise, Kopfhörer ab, Telefon stumm.
order-play = { $file } abspielen.
order-technique = { CAPITAL($technique) } ({ $clock }, etwa { $seconds } s)
order-say = Sagen: { $text }
order-listen = Abspielen: { $files }
order-show = Zeigen: { $files }
order-warn = Warnen: { $text }
order-end = Zum Schluss ({ $clock })
order-homework = Die Hausaufgabe nennen: die erste Einheit des Übeplans.

# Die Seite, die ohne Netz spielt.

offline-skip = Zur Musik
offline-desk = Tempo und Ton
offline-tempo = Tempo
offline-loop = Schleife
offline-volume = Lautstärke
offline-stop = Stopp
offline-plain = Schlicht
offline-ornamented = Verziert
offline-both = Beide im Wechsel
offline-play = { $what }: { $score }
offline-playing = Es spielt: { $what }, { $score }
offline-stopped = Angehalten.
offline-score = { CAPITAL($technique) }, { $place }
offline-system = { $score }, Notenzeile { $number }
offline-intro = Oben ein Tempo wählen, dann die schlichte Phrase, die verzierte oder beide im Wechsel spielen; die Marke zeigt, wo die Musik ist. Ein Takt Klicks zählt vor. Escape hält an.

# Was nicht stimmen kann.

no-such-naming = Notennamen „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
no-such-section = Einen Teil „{ $given }“ hat das Paket nicht: möglich sind { $known }.
no-such-audio = Klangdateien „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
no-such-format = Ein Format „{ $given }“ gibt es nicht: möglich sind { $known }.
no-such-phrase = „{ $given }“ ist keine Phrase: ihre Nummern zählen ab 0.
no-such-override = Ein Text „{ $given }“ lässt sich nicht ersetzen: möglich sind { $known }.
override-too-long = „{ $name }“ hat { $letters } Zeichen; höchstens { $limit } sind möglich: bitte kürzen.
override-bad-line = Zeile { $line } der eigenen Worte, „{ $text }“: „Name: Worte“ schreiben, mit einem der Namen { $known }.
override-not-text = { $file } ist kein Text in UTF-8: als reinen Text in UTF-8 speichern.
lesson-plan-damaged = Das ist kein Plan einer Lektion: bitte neu anlegen.
lesson-without-figures = In den gewählten Phrasen liegt keine Figur der gewählten Techniken: eine andere Technik oder Phrase wählen.
manifest-damaged = { $file } ist kein Verzeichnis eines Lektionspakets: die Datei { $name } aus einem Paket angeben.
manifest-other-file = { $file } ist nicht die Datei, aus der das Paket gemacht wurde: sie wiederherstellen oder die Melodie selbst angeben.
times-out-of-reach = { $given }-mal spielen geht nicht: möglich ist { $low }- bis { $high }-mal.
key-outside-instrument = In { $key } liegt die Linie in jeder Oktave außerhalb des Instruments ({ $instrument }): eine andere Tonart, ein anderes Instrument oder eine leichtere Stufe wählen.
clips-need-library = Videos brauchen das Paket { $package } ({ $error }): es installieren oder die Lektion ohne Videos machen.
clip-not-encoded = Das Video { $file } lässt sich nicht schreiben ({ $error }): die Lektion ohne Videos machen.
worker-ended = Ein Arbeitsprozess wurde beendet, vielleicht aus Mangel an Speicher: noch einmal mit weniger Prozessen versuchen.
