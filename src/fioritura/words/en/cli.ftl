cli-note = note: { $text }
cli-error = fioritura: { $text }
cli-hint = { $text } ({ $hint })
cli-stopped = stopped; nothing was left half-written.
cli-chords-inferred = the file has no chord symbols; they were inferred. Give your own with --chords.
cli-ornamented = { $has_part ->
    [yes] { $title } (part: { $part })
   *[no] { $title }
}: { $figures ->
    [one] one figure
   *[other] { $figures } figures
} ({ $rate } a bar of four quarters, at most { $most } in a phrase), { $kept } % of the tune kept.
cli-practise-first = Practise first:
cli-written = Written to { $folder }:
cli-writing = writing
cli-writing-file = writing { $name }
cli-spots = { $spots ->
    [one] One spot
   *[other] { $spots } spots
} for { $techniques ->
    [one] one technique
   *[other] { $techniques } techniques
}.
cli-level = Level { $level }
cli-incomplete = “{ $given }” is not complete: write it as in { $usage }.
cli-no-time = A limit of { $given } s leaves no time: give --limit more than 0.
cli-takes-unasked = --takes names recordings to report on: ask for them with --make report.
cli-no-levels = --levels “{ $given }” names no levels: give some of 1 to 5, as 1,3,5 or 1-5.
cli-no-workers = { $given } workers can't work: give --workers 1 or more.
cli-batch-done = { $tunes ->
    [one] One tune
   *[other] { $tunes } tunes
}, { $made } files and folders made{ $before ->
    [0] {""}
   *[other] , { $before } made before
} in { $time }: { $out }
cli-batch-failed = { $failed ->
    [one] One tune failed, in whole or in part:
   *[other] { $failed } tunes failed, in whole or in part:
}
cli-batch-reasons = All of them, with reasons: { $path }
cli-batch-progress = { $tunes } tunes, { $failed } failed
cli-batch-line = batch: { $share } %, { $counts }, { $left } left
cli-no-tempo = --tempo { $given }: give numbers, as in 90 or 70,80,90.
cli-bad-ending = { $name }: end the name in .mp3, .wav, .flac or .mid.
cli-untitled = Untitled
cli-all-muted = Every part is muted: leave at least one.
cli-part = { $name ->
    [melody] melody
    [bass] bass
    [chords] chords
    [drums] drums
    [click] click
   *[other] { $name }
}
cli-sound-made = { $title }: { $feel }, { $time }
cli-no-port = Port { $given } does not exist: give 0 to 65535.
cli-page-lacks = The page needs the package “{ $name }”: install Fioritura again.
cli-soundfont = Soundfont  { $name } ({ $origin ->
    [set] chosen by you
    [system] found on this system
   *[fallback] comes with another package; small, good enough to practise with
})
    {"           "}{ $path }
cli-licence = Licence    { $licence }
cli-synth-built-in = built-in
cli-synth-fluidsynth = fluidsynth ({ $path }), by --synth fluidsynth
cli-synths = Synth      { $count ->
    [0] none: install the fluidsynth program
   *[other] { $synths }
}
cli-better-soundfont = 
    A better soundfont: any General MIDI .sf2 or .sf3 file. FluidR3 (MIT licence) is one; Debian and Ubuntu have it as the package
    fluid-soundfont-gm. Without root, put the file into ~/.local/share/soundfonts, where it is found by itself, or name it:
    {"  "}{ $variable }=/path/to/file.sf2 fioritura play ...
    {"  "}fioritura play ... --soundfont /path/to/file.sf2
cli-no-voice = --voice { $given }: give measured, soundfont or a file whose name ends in .sfz.
cli-voice = Melody     measured wind voices, by --voice measured: after MTG Solo Saxophones (Music Technology Group, Universitat
    {"           "}Pompeu Fabra; CC BY 4.0) and the University of Iowa Musical Instrument Samples (free of restriction)
cli-sampled-voices =
    Real samples for the melody: an instrument in the SFZ format, by --voice /path/to/file.sfz. Open ones, to be unpacked whole
    in any folder:
    {"  "}MTG Solo Saxophones (CC BY 4.0): soprano, alto, tenor, baritone; github.com/sfzinstruments/MTG.SoloSax
    {"  "}VSCO 2 Community Edition (CC0): flute, oboe, clarinet, trumpet, trombone; github.com/sgossner/VSCO-2-CE
    Of the format, samples, keys, velocities, loops, gain and tuning are read; envelopes, filters, round robin and key
    switches are not.
cli-bad-key = --key { $given }: { $reason }
cli-no-key = “{ $given }” is not a key: write the key note and the mode, as Bb, Am, F# minor or D-dorian.
cli-as-played = as played in { $name }
cli-transcribed = { $title }: { $notes } notes and { $graces } grace notes in { $bars } bars of { $metre }, { $transposes ->
    [yes] sounding { $key } (written { $written })
   *[no] { $key }
}, { $tempo } beats a minute{ $feel ->
    [swing] , eighths swung
   *[straight] {""}
}; tuning { $tuning } cents.
cli-other-reading = It can also be read in { $metre } at { $tempo } beats a minute: --reading { $number }
cli-which-tune = Which tune was played? Give --tune with its file, or --asked with an arrangement.json.
cli-named = { $title }: { $figures ->
    [one] one figure
   *[other] { $figures } figures
}, { $slips ->
    [one] one slip
   *[other] { $slips } slips
}.
cli-sounds = It sounds { $where }.
cli-passage = Time through { $number } of { $count }
cli-else = { $name } (else { $other })
cli-slip = slip
cli-hearing = hearing { $name }
cli-reading = reading
cli-played =   tempo { $tempo }, { $drift } percent to the end; notes within { $spread } ms; eighths { $swing } to 1; tuning { $tuning } cents
cli-practise-next = To practise next:
cli-status = { $status ->
    [done] came out
    [missed] missed
   *[added] added
}
cli-no-part-for = no part for { $player }: { $reason }
cli-pack-made = { $title }: { $techniques ->
    [one] one technique
   *[other] { $techniques } techniques
}, { $files } files, { $size } MB in { $out }
cli-pack-step = { $step ->
    [engraving] engraving
    [sound] sound
    [pages] pages
    [clips] clips
   *[other] { $step }
}
cli-no-curve = --curve { $given }: give numbers, as in 0.3,0.8,1.4.
cli-curve-count = --curve has { $given } densities and --choruses is { $count }: give one density for each chorus.
cli-sound-title = { $title } ({ $what ->
    [plain] plain
    [ornamented] ornamented
    [in-turn] plain and ornamented in turn
   *[backing] backing
}), { $key }, { $tempo }{ $has_bars ->
    [yes] {", "}bars { $bars }
   *[no] {""}
}{ $has_parts ->
    [without] {", "}without { LIST($parts) }
    [just] {", "}{ LIST($parts) }
   *[all] {""}
}
cli-no-part = There is no part “{ $given }”: choose { LIST($known, "or") }.
cli-mute-or-just = --mute and --just contradict each other: give one of them.
