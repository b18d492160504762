### Die Wörter der Seite und ihrer Skripte.

## Auf jeder Seite

page-language = Sprache dieser Seite
page-skip-content = Zum Inhalt springen
page-skip-music = Zu den Noten springen
page-pages = Seiten
page-stand = Pult
page-lesson = Stunde
page-take = Aufnahme
page-students = Schüler
page-shelf = Regal
page-bring-in = Einlesen
page-view = Ansicht
page-smaller-notes = Kleinere Noten
page-larger-notes = Größere Noten
page-close-panel = Leiste schließen
page-engraving = Noten werden gesetzt…
page-wait = Moment…
page-waiting = Es wird gewartet…
page-play = Abspielen
page-stop = Stopp
page-hear = Anhören
page-keep = Behalten
page-cancel = Abbrechen
page-close = Schließen
page-remove = Entfernen
page-remove-name = { $name } entfernen
page-add = Hinzufügen
page-all = Alle
page-none = Keine
page-off = aus
page-undo = Zurück
page-redo = Wieder
page-title = Titel
page-tune = Stück
page-tags = Stichwörter
page-player = Instrument
page-level = Stufe
page-idiom = Stil
page-idiom-file = Wie das Stück es sagt
page-idiom-jazz = Jazz
page-idiom-folk = Folk
page-idiom-blues = Blues
page-idiom-irish = Irisch
page-eighth-notes = Achtel
page-feel-straight = Gerade
page-feel-swing = Swing
page-tempo = Tempo
page-tempo-now = Tempo { $tempo }
page-tempo-share = { $tempo } ({ $share } %)
page-beats-a-minute = Schläge pro Minute
page-band = Band
page-microphone = Mikrofon
page-ornament = Verzierung
page-nobody = niemand Bestimmtes
page-milliseconds = { $ms } ms
page-percent = { $share } %
page-share-of = { $count } von { $total }
page-bar-one = Takt { $first }
page-bars-span = Takte { $first }–{ $last }
page-bars-pickup = Auftakt bis Takt { $last }
page-bars-from-to = Takte { $first } bis { $last }
page-bars-count =
    { $count ->
        [one] { $count } Takt
       *[other] { $count } Takte
    }
page-pickup = Auftakt
page-care-softly = Leise beginnen, vor allem mit Kopfhörern.
page-care-limit = Nach dem üblichen Grenzwert für die Arbeit (NIOSH: 85 dB für acht Stunden) ist der Tag nach einer Stunde mit 94 dB ausgeschöpft.
page-sound-preparing = Der Klang wird vorbereitet…
page-line-name =
    { $line ->
        [plain] schlicht
       *[ornamented] verziert
    }
page-technique-name = Name
page-technique-label = Zeichen über den Noten
page-technique-text = Was es ist
page-technique-how = Wie
page-technique-when = Wann
page-technique-fault = Was misslingt
page-technique-cure = Was hilft

## Der Server

page-server-silent = Der Server antwortet nicht: läuft `fioritura serve` noch?
page-server-failed = Der Server ist gescheitert ({ $status }).
page-server-forgot = Der Server weiß von dieser Arbeit nichts mehr: noch einmal beginnen.

## Tasten

page-keys = Tasten
page-keys-letters = Einzelne Buchstaben und Zeichen sind Tasten
page-keycap-space = Leertaste
page-keycap-escape = Esc
page-keycap-control = Strg
page-key-help = diese Tasten
page-key-level = Stufe
page-key-level-number = Stufe { $level }
page-key-slower-faster = langsamer, schneller
page-key-faster = schneller
page-key-smaller-larger = kleinere, größere Noten
page-key-larger = größere Noten
page-key-close-panel = Leiste schließen

## Der Eingang, und Adressen, unter denen nichts ist

page-enter = Eintreten
page-enter-whose = Wessen Regal ist das?
page-enter-about = Diese Seite kommt über ein Netz. Das Kennwort steht in dem Terminal, in dem sie gestartet wurde.
page-enter-token = Kennwort
page-enter-wrong = Das ist nicht das Kennwort: noch einmal im Terminal nachsehen.
page-wrong = Nicht hier
page-wrong-to-shelf = Zum Regal
page-wrong-to-stand = Zum Pult

## Stücke einlesen

page-bring-a-tune = Ein Stück einlesen
page-bring-unfolds = Wiederholungen ausschreiben, damit jedes Mal anders klingen kann
page-bring-from-files = Aus Dateien
page-bring-drop = MusicXML-, ABC- oder MIDI-Dateien hier ablegen,
page-bring-choose-files = oder Dateien wählen
page-bring-choose-folder = oder einen ganzen Ordner
page-bring-type-abc = Oder die Melodie in ABC schreiben
page-bring-my-tune = Mein Stück
page-bring-take = Aufs Pult legen
page-bring-preview = Wie es gelesen wird
page-bring-preview-music = Die geschriebene Melodie in Noten
page-bring-bars-from = Takte ab { $bar }
page-bring-readable = Es ist lesbar.
page-bring-problem-at = Zeile { $line }, Spalte { $column }: { $problem }
page-bring-problem-in = { $problem } (Zeile { $line }, Spalte { $column })
page-bring-tune-facts =
    { $bars ->
        [one] { $key }, { $metre }, { $bars } Takt
       *[other] { $key }, { $metre }, { $bars } Takte
    }
page-bring-files-read = Gelesene Dateien
page-bring-files-done = { $done } von { $total } Dateien
page-bring-stopped = Angehalten: Ins Regal kam nichts.
page-bring-no-tunes = Darunter ist keine MusicXML-, ABC- oder MIDI-Datei.
page-bring-too-large = Diese Dateien sind zusammen zu groß: in Teilen von { $most } MB einlesen.
page-bring-reading =
    { $count ->
        [one] { $count } Datei wird gelesen…
       *[other] { $count } Dateien werden gelesen…
    }
page-bring-skipped =
    { $count ->
        [one] { $count } andere Datei blieb liegen.
       *[other] { $count } andere Dateien blieben liegen.
    }

## Das Regal

page-shelf-search-what = Titel, Komponisten, Stichwörter und Stunden durchsuchen
page-shelf-search = Suchen
page-shelf-export = Alles exportieren
page-shelf-restore = Einen Export zurückholen
page-shelf-restoring = Wird zurückgeholt…
page-shelf-doubles = Einige dieser Stücke stehen schon hier
page-shelf-doubles-count =
    { $count ->
        [one] Ein Stück des Exports stammt aus derselben Datei wie eines in Ihrem Regal. Was soll damit geschehen?
       *[other] { $count } Stücke des Exports stammen aus denselben Dateien wie Stücke in Ihrem Regal. Was soll damit geschehen?
    }
page-shelf-doubles-skip = Meine lassen, wie sie sind; nur die anderen aufnehmen
page-shelf-doubles-replace = Meine ersetzen, mit allem, was dazugehört
page-shelf-doubles-copy = Alle ein zweites Mal aufnehmen
page-shelf-none-by-that-name = Unter diesem Namen ist hier nichts: { $all }.
page-shelf-show-all = alles zeigen
page-shelf-empty = Noch ist nichts da: ein Stück einlesen.
page-shelf-arrangement = Fassung: { $name }
page-shelf-remove-arrangement = Die Fassung { $name } von { $title } entfernen
page-shelf-lesson = Stunde: { $title }
page-shelf-worked-on = bearbeitet am { $day }
page-shelf-describe = Titel und Stichwörter
page-shelf-describe-name = Titel und Stichwörter von { $title }
page-shelf-tags = Stichwörter, durch Kommas getrennt
page-shelf-remove-sure = Entfernen?
page-shelf-remove-about = „{ $what }“ verlässt das Regal mit allem, was dazugehört. Ein Export, der es enthält, lässt sich zurückholen.

## Das Pult

page-stand-tools = Verlauf und Ansicht
page-stand-music = Noten: schlicht über verziert
page-stand-legend = Arten von Figuren in dieser Fassung
page-stand-panel = Figur und Einstellung
page-stand-tabs = Leiste
page-stand-setting =
    { $idiom ->
        [jazz] { $player }, Stufe { $level }, Jazz
        [blues] { $player }, Stufe { $level }, Blues
        [irish] { $player }, Stufe { $level }, irisch
       *[folk] { $player }, Stufe { $level }, Folk
    }
page-stand-figures =
    { $count ->
        [one] { $count } Figur · { $share } % des Stücks wie zuvor
       *[other] { $count } Figuren · { $share } % des Stücks wie zuvor
    }
page-stand-undo-what = Zurücknehmen: { $what } (U)
page-stand-undo-nothing = Nichts zurückzunehmen
page-stand-redo-what = Wiederherstellen: { $what } (Y)
page-stand-redo-nothing = Nichts wiederherzustellen
page-stand-undone = Zurückgenommen: { $what }
page-stand-redone = Wiederhergestellt: { $what }
page-stand-loop-how = Für eine Schleife über die Takte ziehen oder zuerst eine Figur wählen.
page-stand-key-play = abspielen, anhalten
page-stand-key-next = nächste Figur
page-stand-key-before = vorige Figur
page-stand-key-keep = Figur behalten oder wieder freigeben
page-stand-key-leave-out = Figur weglassen
page-stand-key-hear = Figur anhören
page-stand-key-alternatives = zu dem, was hier sonst stehen könnte
page-stand-key-undo = zurücknehmen
page-stand-key-redo = wiederherstellen
page-stand-key-plain = schlichtes Stück anhören
page-stand-key-ornamented = verzierte Stimme anhören
page-stand-key-in-turn = abwechselnd anhören
page-stand-key-loop = Takte um die Figur wiederholen oder nicht
page-stand-key-count-in = Einzähler an, aus
page-stand-key-band = Band an, aus
page-stand-key-setting = die Einstellung
page-stand-key-version = eine andere Version daneben legen oder weglegen
page-stand-key-lesson = eine Stunde daraus machen

## Das Pult: eine Figur

page-figure = Figur
page-figure-none = Eine Figur in den Noten wählen oder mit den Pfeiltasten von einer zur nächsten gehen.
page-figure-looking = Gesucht wird, was hier sonst stehen könnte…
page-figure-alternatives = Was hier sonst stehen könnte
page-figure-no-other = Hier könnte nichts anderes stehen.
page-figure-where = { $family } · { $where }
page-figure-place = { $name }, { $where }
page-figure-place-kept = { $name }, { $where }, behalten
page-figure-keep = Behalten
page-figure-kept = Wird behalten
page-figure-leave-out = Weglassen
page-figure-hear = Anhören
page-figure-hear-name = Anhören: { $name }
page-figure-difficulty = Schwierigkeit
page-difficulty-name =
    { $difficulty ->
        [easy] leicht
        [moderate] mittel
        [demanding] anspruchsvoll
       *[hard] schwer
    }
page-figure-notes = Ihre Töne, wie notiert
page-figure-added-note = Hinzugefügter Ton { $note }
page-figure-lower = { $note } tiefer setzen
page-figure-raise = { $note } höher setzen
page-figure-on-staff = { $name } auf einer Notenzeile
page-figure-fit =
    { $fit ->
        [best] passt am besten
        [well] passt gut
        [fairly] passt
       *[less] passt weniger gut
    }
page-figure-stands = steht jetzt da
page-figure-take = Stattdessen nehmen
page-figure-take-name = Stattdessen nehmen: { $name }

## Das Pult: die Einstellung, andere Versionen und Kopien

page-setting = Einstellung
page-setting-tempo = Tempo der Fassung
page-setting-density = Wie viele Figuren
page-setting-families = Arten von Figuren
page-setting-techniques = Einzelne Techniken
page-density-usual = wie üblich
page-density-fewer = weniger ({ $share } %)
page-density-more = mehr ({ $share } %)
page-version-another = Eine andere Version
page-version-about = Dieselbe Einstellung, dieselben Entscheidungen, eine andere gute Wahl von Figuren, auf einer Notenzeile darunter.
page-version-show = Eine andere danebenlegen
page-version-next = Noch eine andere
page-version-take = Diese nehmen
page-version-hide = Weglegen
page-copy-another = Eine andere Fassung
page-copy-about = Diese stehen lassen und mit einer Kopie weiterarbeiten: für ein anderes Instrument, eine andere Stufe. Beide bleiben im Regal.
page-copy-name = Ihr Name
page-copy-make = Kopieren

## Anhören

page-hear-what = Was zu hören ist
page-hear-plain = Schlicht
page-hear-ornamented = Verziert
page-hear-in-turn = Im Wechsel
page-hear-other = Andere
page-hear-both = Diese, andere
page-hear-tempo = Tempo in Schlägen pro Minute
page-hear-loop = Schleife
page-hear-loop-how = Schleife (L): über Takte ziehen oder die Takte der Figur wiederholen
page-hear-loop-bars = Takte { $first }–{ $last }
page-hear-loop-on = Schleife: { $bars }
page-hear-loop-off = Keine Schleife
page-hear-count-in = Einzähler
page-hear-feel = Feeling
page-hear-band-on = Band an
page-hear-band-off = Band aus
page-part-name =
    { $part ->
        [melody] Melodie
        [bass] Bass
        [chords] Akkorde
        [drums] Schlagzeug
       *[click] Klick
    }
page-feel-usual = was zum Stück passt
page-feel-name =
    { $feel ->
        [swing] Swing
        [shuffle] Shuffle
        [slow-blues] Slow Blues
        [ballad] Ballade
        [bossa] Bossa
        [soul] Soul
        [funk] Funk
        [waltz] Walzer
        [folk-waltz] Folk-Walzer
        [march] Marsch und Polka
        [reel] Reel
        [jig] Jig
       *[other] { $feel }
    }

## Die Stunde

page-lesson-on = Stunde zu { $title }
page-lesson-built-from = Beruht auf der { $arrangement }, wie sie dort jetzt steht.
page-lesson-arrangement = Fassung auf dem Pult
page-lesson-others = Stunden zu diesem Stück
page-lesson-new = Neue Stunde
page-lesson-your-words = Ihre Worte
page-lesson-for = Für
page-lesson-for-whom = eine Schülerin, einen Schüler, eine Gruppe
page-lesson-studio = Zeile des Studios
page-lesson-studio-what = Studio, Tag und Stunde
page-lesson-notes = Bemerkungen auf der ersten Seite
page-lesson-notes-what = Worauf zu hören, womit zu beginnen ist
page-lesson-more-words = Untertitel, Komponist, Rechte
page-lesson-subtitle = Untertitel
page-lesson-subtitle-what = Stufe und Stil
page-lesson-composer = Komponist
page-lesson-composer-what = wie in der Datei
page-lesson-rights = Rechte
page-lesson-rights-what = wer es kopieren darf
page-lesson-phrases = Phrasen
page-lesson-phrases-about = Die Beispiele kommen aus den gewählten Phrasen.
page-lesson-phrase-new =
    { $count ->
        [one] neu, { $count } Figur
       *[other] neu, { $count } Figuren
    }
page-lesson-phrase-returns =
    { $count ->
        [one] schon gehört, { $count } Figur
       *[other] schon gehört, { $count } Figuren
    }
page-lesson-reading = Die Fassung wird gelesen…
page-lesson-whom = Für wen und wie
page-lesson-paper = Papier
page-paper-a-four = A4
page-paper-letter = Letter
page-lesson-language = Sprache
page-lesson-note-names = Notennamen
page-note-names-usual = wie in der Sprache
page-note-names-english = C D E, B♭
page-note-names-german = C D E, B und H
page-note-names-solfege = Do Re Mi
page-lesson-sound-files = Tondateien
page-lesson-sections = In der Mappe
page-lesson-section =
    { $section ->
        [handout] Handreichung
        [parts] Stimmen
        [sound] Klang
        [exercises] Übungen
        [levels] Stufenweg
        [page] Offline-Seite
        [overlays] Bilder
        [clips] Clips
       *[other] { $section }
    }
page-lesson-section-about =
    { $section ->
        [handout] das Stück, jede Technik mit einem Beispiel, der Vortrag, ein Übeplan
        [parts] ein Blatt für jedes unten gewählte Instrument
        [sound] schlicht, verziert, Begleitungen und Beispiele, langsam und schnell
        [exercises] die schweren Stellen und die Techniken in anderen Tonarten
        [levels] das Stück von der leichtesten Stufe bis zu dieser, mit einem Kursplan
        [page] eine Datei, die die Stunde in jedem Browser spielt
        [overlays] die Beispiele ohne Hintergrund, zum Einblenden in ein Video
        [clips] jedes Beispiel als Video, quer und hoch (langsam)
       *[other] { "" }
    }
page-lesson-players = Instrumente, die eine Stimme bekommen
page-lesson-techniques = Techniken
page-lesson-techniques-about = Jede gewählte bekommt einen Abschnitt mit einem Beispiel aus dem Stück. Die Worte lassen sich ändern, wo Sie es anders sagen.
page-lesson-technique-use =
    { $count ->
        [0] Stufe { $level } · nicht in der Fassung
        [one] Stufe { $level } · einmal
       *[other] Stufe { $level } · { $count }-mal
    }
page-lesson-more = Was dieses Stück noch bietet
page-lesson-words = Worte
page-lesson-words-on = Worte zu { $name }
page-lesson-words-back = Die üblichen Worte zurückholen
page-lesson-preview = Die Beispiele, wie sie gedruckt werden
page-lesson-example-music = { $name }, schlicht über verziert
page-lesson-examples =
    { $count ->
        [one] { $count } Technik.
       *[other] { $count } Techniken, die leichteste zuerst.
    }
page-lesson-no-part = Keine Stimme für { $player }: { $reason }
page-lesson-keeping = Wird aufbewahrt…
page-lesson-kept = Im Regal
page-lesson-not-kept = Noch nicht im Regal
page-lesson-unkept = Die Stunde ließ sich nicht ins Regal stellen: noch einmal versuchen.
page-lesson-remove = Diese Stunde entfernen
page-lesson-remove-sure = Diese Stunde entfernen?
page-lesson-remove-about = Die Fassung bleibt; der Plan und Ihre Worte zu dieser Stunde gehen verloren.
page-lesson-key-build = Mappe zusammenstellen
page-lesson-key-download = Mappe herunterladen
page-lesson-key-stop = Zusammenstellen anhalten
page-lesson-key-stand = zurück zum Pult

## Die Mappe der Stunde

page-pack = Mappe
page-pack-build = Mappe erstellen
page-pack-build-again = Neu erstellen
page-pack-download = Herunterladen
page-pack-beginning = Es beginnt…
page-pack-waiting = Wartet auf andere Arbeit…
page-pack-reading = Die Stunde wird gelesen…
page-pack-building = Die Mappe entsteht…
page-pack-step =
    { $step ->
        [engraving] Notensatz { $done } / { $total }
        [sound] Klang { $done } / { $total }
        [documents] Druckseiten { $done } / { $total }
        [page] Offline-Seite { $done } / { $total }
        [overlays] Bilder { $done } / { $total }
        [clips] Clips { $done } / { $total }
       *[other] { $step } { $done } / { $total }
    }
page-pack-ready =
    { $count ->
        [one] Fertig: { $count } Datei, { NUMBER($size, minimumFractionDigits: 1, maximumFractionDigits: 1) } MB.
       *[other] Fertig: { $count } Dateien, { NUMBER($size, minimumFractionDigits: 1, maximumFractionDigits: 1) } MB.
    }
page-pack-no-part = Keine Stimme für { $player }: { $reason }.
page-pack-none = Es gibt noch keine Mappe: zuerst eine erstellen.
page-pack-outdated = Seitdem geändert.
page-pack-stopped = Angehalten.

## Aufnehmen

page-take-of = Aufnahme: { $title }
page-take-music = Die Stimme, die gespielt wird
page-take-line =
    { $line ->
        [plain] Das schlichte Stück
       *[ornamented] Mit seinen Verzierungen
    }
page-take-panel = Wie aufgenommen wird
page-take-what = Was gespielt wird
page-take-which = Zu spielen
page-take-behind = Begleitung
page-take-behind-click = Klick
page-take-behind-nothing = Nichts
page-take-loudness = Lautstärke
page-take-guide = Die Stimme leise mitspielen
page-take-who = Wer spielt
page-take-plays = { $name } spielt.
page-take-headphones = Kopfhörer tragen, damit das Mikrofon nur Sie hört.
page-take-headphones-on = Kopfhörer auf?
page-take-choices = Auswahl
page-record = Aufnehmen
page-take-record-button =
    { $state ->
        [starting] Moment…
        [recording] Stopp
       *[idle] Aufnehmen
    }
page-take-count-in = Einzähler: { $beats }
page-take-bar = Takt { $bar } von { $last }
page-take-again = Noch einmal aufnehmen
page-take-playback = Das Aufgenommene anhören
page-take-cancel = Auswertung abbrechen
page-take-bring = Oder eine Aufnahme mitbringen
page-take-choose-file = Datei wählen
page-take-file-about = WAV, FLAC, MP3 oder OGG, bis zu zehn Minuten. Das Tempo ist frei.
page-take-earlier = Aufnahmen dieses Stücks
page-take-ornaments = { $count } von { $total } Verzierungen
page-take-not-kept = noch nicht behalten
page-take-sound-not-ready = Der Klang ist noch nicht bereit: einen Moment warten und noch einmal aufnehmen.
page-take-too-short = Das war zu kurz: das Stück oder eine Phrase daraus spielen.
page-take-clips =
    { $count ->
        [one] Die Aufnahme übersteuert an { $count } Stelle: nächstes Mal weiter weg vom Mikrofon.
       *[other] Die Aufnahme übersteuert an { $count } Stellen: nächstes Mal weiter weg vom Mikrofon.
    }
page-take-key-record = aufnehmen, anhalten
page-take-key-microphone = Mikrofon ausprobieren, schließen
page-take-key-plain = das schlichte Stück spielen
page-take-key-ornamented = die verzierte Stimme spielen
page-take-key-band = mit der Band
page-take-key-click = mit einem Klick
page-microphone-which = Welches
page-microphone-try = Mikrofon ausprobieren
page-microphone-close = Mikrofon schließen
page-microphone-closed = geschlossen
page-microphone-not-encrypted = Einer unverschlüsselten Seite von einem anderen Rechner gibt der Browser kein Mikrofon: auf dem Rechner selbst aufnehmen oder eine Aufnahme mitbringen.
page-microphone-not-allowed = Das Mikrofon ist für diese Seite nicht erlaubt: in der Adresszeile des Browsers erlauben oder eine Aufnahme mitbringen.
page-microphone-none = Kein Mikrofon ist angeschlossen: eines anschließen oder eine Aufnahme mitbringen.
page-microphone-taken = Ein anderes Programm benutzt das Mikrofon: es schließen oder eine Aufnahme mitbringen.
page-meter = Pegel des Mikrofons in Dezibel unter Vollaussteuerung
page-meter-words =
    { $state ->
        [clips] Zu laut, übersteuert: weiter weg, oder den Eingang leiser stellen
        [hot] Zu nah an der Grenze: ein wenig weiter weg
        [good] Gut
       *[soft] Leise: näher heran, oder den Eingang lauter stellen
    }
page-meter-spoken =
    { $state ->
        [clips] { $level } Dezibel, zu laut, übersteuert: weiter weg, oder den Eingang leiser stellen
        [hot] { $level } Dezibel, zu nah an der Grenze: ein wenig weiter weg
        [good] { $level } Dezibel, gut
       *[soft] { $level } Dezibel, leise: näher heran, oder den Eingang lauter stellen
    }
page-delay = Verzögerung
page-delay-about = Was Ihnen vorgespielt wird, kommt ein wenig später zurück. Diese Zeit wird abgezogen, damit ein Ton mit dem Schlag auch als solcher zählt.
page-delay-by-hand = Von Hand einstellen
page-delay-measure = Messen
page-delay-guess = Schätzen
page-delay-measure-how = Zum Messen eine Hörmuschel ans Mikrofon halten: Fünf Klicks erklingen.
page-delay-how =
    { $how ->
        [guessed] { $ms } ms, geschätzt
        [measured] { $ms } ms, gemessen
       *[by-hand] { $ms } ms, von Hand eingestellt
    }
page-delay-listening = Gelauscht wird auf fünf Klicks…
page-delay-found = Die Verzögerung beträgt { $delay }.
page-delay-unclear = Die Klicks kamen nicht deutlich zurück: eine Hörmuschel ans Mikrofon halten, etwas lauter stellen und noch einmal messen.
page-sending-listening = Die Aufnahme wird angehört…
page-sending-listening-about = Gesucht werden Töne, Verzierungen, Intonation und Timing. Das dauert einige Sekunden für jede Minute Musik.
page-sending-failed = Dazu gibt es keinen Bericht
page-sending-no-recording = Das ist keine Aufnahme: eine WAV-, FLAC-, MP3- oder OGG-Datei nehmen.
page-sending-too-large = Die Datei hat { $size } MB, { $most } MB sind möglich. Als MP3 speichern oder immer nur ein Stück aufnehmen.

## Der Bericht über eine Aufnahme

page-report-of = Aufnahme von { $title }
page-report-around = Rund um diese Aufnahme
page-report-another = Noch eine Aufnahme davon
page-report-on-stand = Auf dem Pult
page-report-short = In Kürze
page-report-reading = Der Bericht wird gelesen…
page-report-asked-at = verlangt bei { $tempo }
page-report-seconds = { $seconds } s
page-report-minutes = { $minutes } min { $seconds } s
page-report-key = Es klingt { $where }.
page-report-recording = Die Aufnahme
page-report-along = Mit der Band anhören
page-report-whose = Wessen Aufnahme es ist
page-report-keep = Behalten
page-report-kept = Im Regal aufbewahrt.
page-report-kept-now = Aufbewahrt.
page-report-kept-of = Aufbewahrt als Aufnahme von { $student }.
page-report-discard = Verwerfen
page-report-discard-sure = Diese Aufnahme verwerfen?
page-report-discard-about = Die Aufnahme und ihr Bericht werden gelöscht. Das lässt sich nicht zurücknehmen.
page-report-discard-yes = Verwerfen
page-report-print = Drucken
page-report-printing = Die Seiten werden gesetzt…
page-report-printed = Die Seiten öffnen (PDF)
page-report-advice = Als Nächstes üben
page-report-heard = Wie es zu hören war
page-report-heard-about = Ihre Tonhöhe über der gedruckten Stimme: Durch die Mitte des Notenkopfs heißt, in sich sauber; ein Zwischenraum daneben sind 50 Cent.
page-report-passage = Durchgang
page-report-music = Die gedruckte Stimme mit der gehörten Tonhöhe
page-report-signs = Zeichen
page-report-note-kind =
    { $kind ->
        [right] ein Ton des Stücks
        [figure] in einer Verzierung
        [wrong] ein anderer Ton
       *[added] ein hinzugefügter Ton
    }
page-report-note = { $note }, { $cents } Cent
page-report-status =
    { $status ->
        [done] gelungen
        [missed] nicht gehört
       *[added] von Ihnen hinzugefügt
    }
page-report-ornament-status =
    { $status ->
        [done] Verzierung gelungen
        [missed] Verzierung nicht gehört
       *[added] Verzierung von Ihnen hinzugefügt
    }
page-report-no-ornaments = Verlangt war keine Verzierung, und gehört wurde keine.
page-report-came-out = { $count } von { $total } gelungen
page-ornaments-added = { $count } hinzugefügt
page-report-where = Wo
page-report-outcome = Was daraus wurde
page-report-sure = Wie sicher
page-report-hear = { $name } anhören, { $where }
page-report-slips = Andere Töne als notiert
page-report-slip = { $what } ({ $where })
page-report-time = Zeit
page-report-tempo = { $tempo } Schläge pro Minute
page-report-drift = Vom Anfang bis zum Ende
page-report-steady = gleichmäßig
page-report-faster = { $percent } Prozent schneller
page-report-slower = { $percent } Prozent langsamer
page-report-spread = Um den eigenen Schlag
page-report-spread-within = Töne innerhalb von { $ms } ms
page-report-even = gerade
page-report-swing = { NUMBER($ratio, minimumFractionDigits: 2, maximumFractionDigits: 2) } zu 1
page-report-behind-band = Gegen die Begleitung
page-report-graces = Vorschläge
page-report-on-beat = genau darauf
page-report-late = { $ms } ms zu spät
page-report-early = { $ms } ms zu früh
page-report-beats = Wo im Takt
page-report-pitch = Intonation und Ton
page-report-your-a = Ihr A
page-report-tuning = { $hertz } Hz, { $cents } Cent von 440
page-report-melody = Melodietöne
page-report-right = { $count } von { $total } richtig
page-report-soft-loud = Leise bis laut
page-report-decibels = { $range } dB
page-report-by-register = Nach Lage und Ton
page-report-cents = { $cents } Cent

## Schüler und ihre Fortschritte

page-students-all = Alle Schüler
page-students-nobody = Niemand Bestimmtes
page-students-none = Noch niemand. Aufnahmen lassen sich auch ohne Namen aufbewahren.
page-students-name = Name
page-student-new = Neuer Name
page-student-name-what = Vorname oder Initialen
page-students-takes =
    { $count ->
        [0] Keine Aufnahmen
        [one] Eine Aufnahme
       *[other] { $count } Aufnahmen
    }
page-students-takes-last =
    { $count ->
        [one] Eine Aufnahme, die letzte am { $day }
       *[other] { $count } Aufnahmen, die letzte am { $day }
    }
page-students-rename = Umbenennen
page-students-rename-name = { $name } umbenennen
page-students-remove-sure = Wirklich entfernen?
page-students-remove-about = „{ $name }“ verlässt das Regal, und { $takes }. Das lässt sich nicht zurücknehmen.
page-students-removed-too =
    { $count ->
        [0] sonst nichts
        [one] dazu eine Aufnahme
       *[other] dazu { $count } Aufnahmen
    }
page-privacy = Was von Schülern aufbewahrt wird
page-privacy-kept = Ein Name und die Aufnahmen, die Sie behalten: Ton, Bericht und Datum. Sonst nichts, und nichts verlässt diesen Rechner: Alles liegt in { $folder } und in den Exporten, die Sie selbst anlegen.
page-privacy-ask = Ein Vorname oder Initialen genügen. Fragen Sie die Schülerin oder den Schüler, bei Kindern die Eltern, bevor Sie eine Aufnahme behalten. Wer entfernt wird, dessen Aufnahmen werden alle gelöscht.
page-takes = Aufnahmen
page-takes-all-of = Alle Aufnahmen von { $student }
page-takes-of-nobody = Aufnahmen von niemand Bestimmtem
page-measure-pitch = Intonation
page-measure-timing = Timing
page-measure-ornaments = Verzierungen
page-progress-around = Rund um diese Aufnahmen
page-progress-all-tunes = alle Stücke
page-progress-record = Aufnehmen
page-progress-none = Noch keine Aufnahmen: eine machen und behalten.
page-progress-when = Wann
page-progress-line = Stimme
page-progress-right = Richtige Töne
page-progress-keep = behalten?
page-progress-none-asked = keine verlangt
page-progress-no-ornament = Noch wurde keine Verzierung verlangt.
page-progress-cents = { NUMBER($cents, minimumFractionDigits: 1, maximumFractionDigits: 1) } Cent
page-progress-pitch-about = Cent von der Mitte des Tons, als Median. Bis 10 (getönt) klingt für die meisten Ohren sauber.
page-progress-timing-about = Wie weit Töne um den eigenen Schlag streuen. Bis 35 ms (getönt) ist sicher im Schlag.
page-progress-ornaments-about = Wie viele der verlangten Verzierungen gelungen sind. Ab vier von fünf (getönt) sitzen sie.
page-progress-point =
    { $unit ->
        [cents] { $tune }, { $day }: { $value } Cent
        [ms] { $tune }, { $day }: { $value } ms
       *[percent] { $tune }, { $day }: { $value } %
    }
page-progress-chart =
    { $measure }: { $value } { $unit ->
        [cents] Cent
        [ms] ms
       *[percent] %
    } in der letzten von { $count ->
        [one] { $count } Aufnahme
       *[other] { $count } Aufnahmen
    }{ $course ->
        [same] , wie am Anfang
        [better] , besser als { $first } am Anfang
        [worse] , weniger gut als { $first } am Anfang
       *[none] { "" }
    }
