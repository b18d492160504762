no-shelf-archive = Das ist kein Archiv eines Regals: eines wählen, das die Regalseite ausgegeben hat.
archive-version = Das Archiv hat die Version { $given }, lesbar ist { $known }: Fioritura aktualisieren.
archive-damaged = Das Archiv ist beschädigt ({ $reason }): noch einmal exportieren.
archive-no-steps = Schritte fehlen
archive-no-name = ein Name fehlt
archive-no-arrangement = die Fassung zu einer Aufnahme fehlt
archive-named-twice = eine Datei ist zweimal genannt
archive-words-long = ein Text ist zu lang
archive-bad-content = Im Archiv ist eine Fassung, ein Bericht oder ein Plan beschädigt ({ $reason }): noch einmal exportieren.
archive-too-large = Das Archiv enthält { $files } Dateien mit { $size } Bytes, { $limit } sind möglich: weniger Stücke exportieren.
archive-entry-too-large = { $name } im Archiv ist größer als { $limit } Bytes: noch einmal exportieren.
shelf-folder-unmade = { $path } lässt sich nicht anlegen ({ $reason }): einen anderen Ordner für das Regal nennen.
shelf-unopened = { $path } lässt sich nicht öffnen ({ $reason }): beiseitelegen oder einen anderen Ordner nennen.
shelf-unwritable = Das Regal { $path } lässt sich nicht schreiben ({ $reason }): Platz und Rechte prüfen.
not-on-shelf = { $kind ->
    [tune] Im Regal ist kein Stück { $number }: eines aus der Liste wählen.
    [arrangement] Im Regal ist keine Fassung { $number }: eine aus der Liste wählen.
    [student] Im Regal ist niemand mit der Nummer { $number }: jemanden aus der Liste wählen.
    [take] Im Regal ist keine Aufnahme { $number }: eine aus der Liste wählen.
    [lesson] Im Regal ist keine Stunde { $number }: eine aus der Liste wählen.
   *[other] Im Regal ist nichts mit der Nummer { $number }: etwas aus der Liste wählen.
}
shelf-full-of-lessons = Im Regal sind { $limit } Stunden, mehr gehen nicht: zuerst einige entfernen.
lesson-changed-elsewhere = Die Stunde wurde anderswo geändert (Stand { $stands }, nicht { $given }): noch einmal ansehen.
recording-unreadable = Das ist keine lesbare Aufnahme ({ $reason }): als WAV, FLAC, MP3 oder OGG speichern.
recording-type = Eine Aufnahme vom Typ { $given } geht nicht: als WAV, FLAC, MP3 oder OGG speichern.
recording-rate = Eine Rate von { $given } Hz liegt außerhalb von { $low } bis { $high } Hz: mit 44100 Hz speichern.
recording-channels = { $given } Kanäle sind zu viele: in Mono oder Stereo speichern.
recording-too-short = Die Aufnahme dauert { $seconds } Sekunden: das Stück oder eine Phrase davon aufnehmen.
recording-too-long = Die Aufnahme ist länger als { $limit } Minuten: immer nur ein Stück aufnehmen.
shelf-version = Das Regal hat die Version { $given }, lesbar ist { $known }: Fioritura aktualisieren oder einen anderen Ordner nennen.
tune-needs-title = Ein Stück braucht einen Titel: einen eingeben.
only-arrangement = Es ist die einzige Fassung des Stücks: das Stück entfernen oder die Fassung zuerst kopieren.
nothing-to-undo = Hier gibt es nichts zurückzunehmen.
nothing-to-redo = Hier gibt es nichts wiederherzustellen.
arrangement-changed-elsewhere = Die Fassung wurde anderswo geändert (Schritt { $stands }, nicht { $given }): noch einmal ansehen.
no-such-step = Die Fassung { $arrangement } hat keinen Schritt { $step }: noch einmal ansehen.
too-many-tags = { $count } Stichwörter sind zu viele: { $limit } sind möglich.
tag-too-long = Das Stichwort „{ $tag }…“ hat { $count } Buchstaben: { $limit } sind möglich.
shelf-full-of-students = Im Regal stehen { $limit } Namen, mehr gehen nicht: zuerst einige entfernen.
student-needs-name = Ein Name fehlt: ein Vorname oder Initialen genügen.
name-too-long = Der Name hat { $count } Buchstaben: { $limit } sind möglich.
student-name-taken = Den Namen „{ $name }“ gibt es schon: zur Unterscheidung eine Initiale anfügen.
take-gone = Diese Aufnahme ist nicht mehr im Regal: eine aus der Liste wählen.
