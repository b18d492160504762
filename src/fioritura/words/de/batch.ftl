cluster-not-installed = Ein Cluster braucht dask.distributed: pip install "fioritura[cluster]".
no-scheduler = Unter { $address } antwortet kein Scheduler ({ $reason }): mit „dask scheduler“ einen starten.
no-cluster-worker = Der Scheduler unter { $address } hat keinen Worker: mit „dask worker { $address }“ welche starten.
scheduler-gone = Der Scheduler unter { $address } ist fort: neu starten und denselben Befehl noch einmal geben, dann geht es weiter.
worker-lacks = Einem Worker fehlt { $name }: Fioritura auf allen Rechnern installieren.
worker-other-version = Ein Worker hat eine andere Version von Fioritura oder seinen Werkzeugen: auf allen Rechnern dieselbe installieren.
worker-other-soundfont = Ein Worker spielt mit einem anderen Soundfont als { $name }: allen Rechnern dieselbe Datei geben.
batch-nothing-there = { $path } gibt es nicht: einen Ordner mit Stücken oder ein Buch nennen.
batch-no-tune = In { $path } ist kein Stück: die Datei eines Stücks endet auf { LIST($known, "or") }.
batch-unwritable = { $path } lässt sich nicht schreiben ({ $reason }): Platz und Rechte prüfen, dann dasselbe noch einmal starten.
batch-busy = In { $path } arbeitet schon eine andere Stapelverarbeitung: warten oder einen anderen Ordner nennen.
takes-no-folder = { $path } ist kein Ordner mit Aufnahmen: den Ordner der Aufnahmen nennen.
takes-no-recording = In { $path } ist keine Aufnahme: eine Aufnahme endet auf { LIST($known, "or") }.
batch-kind = Ausgabe
batch-format = Format
batch-audio = Tonformat
batch-section = Teil einer Mappe
batch-level = Stufe
batch-asked = Stufe der Aufnahmen
batch-none-named = Nichts genannt ({ $what }): zur Wahl stehen { $known }.
batch-unknown = Unbekannt ({ $what }): „{ $given }“. Zur Wahl stehen { $known }.
batch-over-time = nach { $seconds } s abgebrochen: einzeln versuchen oder mehr Zeit geben
batch-fault = ein Fehler des Programms ({ $kind }: { $reason }): bitte mit dem Stück melden
batch-moved = { $octaves ->
    [-1] Eine Oktave tiefer gesetzt, damit alle Töne auf dem Instrument liegen.
    [1] Eine Oktave höher gesetzt, damit alle Töne auf dem Instrument liegen.
   *[other] Um { $octaves } Oktaven versetzt, damit alle Töne auf dem Instrument liegen.
}
