cli-note = Hinweis: { $text }
cli-error = fioritura: { $text }
cli-hint = { $text } ({ $hint })
cli-stopped = abgebrochen; nichts ist halb geschrieben.
cli-chords-inferred = die Datei hat keine Akkordsymbole; sie wurden erschlossen. Eigene gibt --chords an.
cli-ornamented = { $has_part ->
    [yes] { $title } (Stimme: { $part })
   *[no] { $title }
}: { $figures ->
    [one] eine Figur
   *[other] { $figures } Figuren
} ({ $rate } auf vier Viertel, höchstens { $most } in einer Phrase), { $kept } % der Melodie bleiben.
cli-practise-first = Zuerst üben:
cli-written = Geschrieben nach { $folder }:
cli-writing = schreiben
cli-writing-file = { $name } schreiben
cli-spots = { $spots ->
    [one] Eine Stelle
   *[other] { $spots } Stellen
} für { $techniques ->
    [one] eine Technik
   *[other] { $techniques } Techniken
}.
cli-level = Stufe { $level }
cli-incomplete = „{ $given }“ ist unvollständig: schreiben wie in { $usage }.
cli-no-time = Eine Grenze von { $given } s lässt keine Zeit: --limit mehr als 0 geben.
cli-takes-unasked = --takes nennt Aufnahmen für Berichte: diese mit --make report anfordern.
cli-no-levels = --levels „{ $given }“ nennt keine Stufen: einige von 1 bis 5 angeben, wie 1,3,5 oder 1-5.
cli-no-workers = { $given } Prozesse können nichts tun: --workers 1 oder mehr geben.
cli-batch-done = { $tunes ->
    [one] Ein Stück
   *[other] { $tunes } Stücke
}, { $made } Dateien und Ordner erstellt{ $before ->
    [0] {""}
   *[other] , { $before } schon vorher
} in { $time }: { $out }
cli-batch-failed = { $failed ->
    [one] Ein Stück ist ganz oder teilweise gescheitert:
   *[other] { $failed } Stücke sind ganz oder teilweise gescheitert:
}
cli-batch-reasons = Alle, mit Gründen: { $path }
cli-batch-progress = { $tunes } Stücke, { $failed } gescheitert
cli-batch-line = Stapel: { $share } %, { $counts }, noch { $left }
cli-no-tempo = --tempo { $given }: Zahlen angeben, wie 90 oder 70,80,90.
cli-bad-ending = { $name }: der Name muss auf .mp3, .wav, .flac oder .mid enden.
cli-untitled = Ohne Titel
cli-all-muted = Alle Stimmen sind stumm: mindestens eine lassen.
cli-part = { $name ->
    [melody] Melodie
    [bass] Bass
    [chords] Akkorde
    [drums] Schlagzeug
    [click] Klick
   *[other] { $name }
}
cli-sound-made = { $title }: { $feel }, { $time }
cli-no-port = Den Port { $given } gibt es nicht: 0 bis 65535 angeben.
cli-page-lacks = Die Seite braucht das Paket „{ $name }“: Fioritura neu installieren.
cli-soundfont = Soundfont  { $name } ({ $origin ->
    [set] selbst gewählt
    [system] auf diesem Rechner gefunden
   *[fallback] kommt mit einem anderen Paket; klein, zum Üben gut genug
})
    {"           "}{ $path }
cli-licence = Lizenz     { $licence }
cli-synth-built-in = eingebaut
cli-synth-fluidsynth = fluidsynth ({ $path }), mit --synth fluidsynth
cli-synths = Synth      { $count ->
    [0] keiner: das Programm fluidsynth installieren
   *[other] { $synths }
}
cli-better-soundfont = 
    Ein besserer Soundfont: jede .sf2- oder .sf3-Datei für General MIDI, etwa FluidR3 (MIT-Lizenz); Debian und Ubuntu haben ihn als Paket
    fluid-soundfont-gm. Ohne root: die Datei nach ~/.local/share/soundfonts legen, wo sie gefunden wird, oder sie nennen:
    {"  "}{ $variable }=/path/to/file.sf2 fioritura play ...
    {"  "}fioritura play ... --soundfont /path/to/file.sf2
cli-no-voice = --voice { $given }: measured, soundfont oder eine Datei angeben, deren Name auf .sfz endet.
cli-voice = Melodie    gemessene Bläserstimmen, mit --voice measured: nach MTG Solo Saxophones (Music Technology Group, Universitat
    {"           "}Pompeu Fabra; CC BY 4.0) und University of Iowa Musical Instrument Samples (frei verwendbar)
cli-sampled-voices =
    Echte Aufnahmen für die Melodie: ein Instrument im SFZ-Format, mit --voice /path/to/file.sfz. Freie, vollständig in einen
    beliebigen Ordner zu entpacken:
    {"  "}MTG Solo Saxophones (CC BY 4.0): Sopran, Alt, Tenor, Bariton; github.com/sfzinstruments/MTG.SoloSax
    {"  "}VSCO 2 Community Edition (CC0): Flöte, Oboe, Klarinette, Trompete, Posaune; github.com/sgossner/VSCO-2-CE
    Gelesen werden Aufnahmen, Tasten, Anschlagstärken, Schleifen, Pegel und Stimmung; Hüllkurven, Filter, Wechsel zwischen
    Aufnahmen und Tastenschalter nicht.
cli-bad-key = --key { $given }: { $reason }
cli-no-key = „{ $given }“ ist keine Tonart: Grundton und Geschlecht schreiben, wie Bb, Am, F# minor oder D-dorian.
cli-as-played = wie gespielt in { $name }
cli-transcribed = { $title }: { $notes } Töne und { $graces } Vorschläge in { $bars } Takten ({ $metre }), { $transposes ->
    [yes] klingend { $key } (geschrieben { $written })
   *[no] { $key }
}, { $tempo } Schläge in der Minute{ $feel ->
    [swing] , Achtel geswingt
   *[straight] {""}
}; Stimmung { $tuning } Cent.
cli-other-reading = Lesbar auch als { $metre } mit { $tempo } Schlägen in der Minute: --reading { $number }
cli-which-tune = Welches Stück wurde gespielt? --tune mit seiner Datei oder --asked mit einer arrangement.json angeben.
cli-named = { $title }: { $figures ->
    [one] eine Figur
   *[other] { $figures } Figuren
}, { $slips ->
    [one] ein Fehler
   *[other] { $slips } Fehler
}.
cli-sounds = Es klingt { $where }.
cli-passage = Durchgang { $number } von { $count }
cli-else = { $name } (sonst { $other })
cli-slip = Fehler
cli-hearing = { $name } anhören
cli-reading = lesen
cli-played =   Tempo { $tempo }, { $drift } Prozent bis zum Ende; Töne auf { $spread } ms genau; Achtel { $swing } zu 1; Stimmung { $tuning } Cent
cli-practise-next = Als Nächstes üben:
cli-status = { $status ->
    [done] gelungen
    [missed] fehlt
   *[added] eigene
}
cli-no-part-for = keine Stimme für { $player }: { $reason }
cli-pack-made = { $title }: { $techniques ->
    [one] eine Technik
   *[other] { $techniques } Techniken
}, { $files } Dateien, { $size } MB in { $out }
cli-pack-step = { $step ->
    [engraving] Notensatz
    [sound] Klang
    [pages] Seiten
    [clips] Clips
   *[other] { $step }
}
cli-no-curve = --curve { $given }: Zahlen angeben, wie 0.3,0.8,1.4.
cli-curve-count = --curve hat { $given } Dichten und --choruses ist { $count }: für jeden Chorus eine Dichte angeben.
cli-sound-title = { $title } ({ $what ->
    [plain] schlicht
    [ornamented] verziert
    [in-turn] schlicht und verziert im Wechsel
   *[backing] Begleitung
}), { $key }, { $tempo }{ $has_bars ->
    [yes] {", "}Takte { $bars }
   *[no] {""}
}{ $has_parts ->
    [without] {", "}ohne { LIST($parts) }
    [just] {", "}{ LIST($parts) }
   *[all] {""}
}
cli-no-part = Die Stimme „{ $given }“ gibt es nicht: möglich ist { LIST($known, "or") }.
cli-mute-or-just = --mute und --just widersprechen sich: eins davon angeben.
