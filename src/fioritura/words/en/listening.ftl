# Recordings.

recording-missing = { $file } does not exist: check the name and the folder.
recording-is-folder = { $file } is a folder, not a recording: name a file in it.
audio-unreadable = { $file } can’t be read as audio ({ $reason }): save it as WAV, FLAC, MP3 or OGG.
recording-shape = Audio of shape { $shape } and type { $type } is no recording: give floats within ±1, as (frames,) or (frames, channels).
audio-rate = A rate of { $rate } Hz is outside { $low } to { $high } Hz: resample { $name } to { $usual } Hz.
recording-not-numbers = { CAPITAL($name) } holds samples that are not numbers: record or export it again.
recording-unclear = { $name }: { $advice }
recording-without-notes = { $name }: No note can be heard in it: record nearer to the instrument, and longer.
recording-silent = Hardly anything is to be heard: check the microphone and its level, and record again.
recording-noisy = Most of it is noise without a pitch: go nearer to the microphone, and away from the noise.
recording-of-several = Two or more parts sound at once: record the melody alone, or with the backing on headphones.
recording-clipped = The loud moments are cut off: turn the recording level down until the meter stays below the red.
the-recording = the recording
record-nearer = Record again, nearer to the microphone.
no-notes-heard = No notes were heard in { $seconds } s of sound. { $remedy }
title-as-played = What was played

# A line against the tune.

the-tune = the tune
the-note = the note
heard-no-notes = No note was heard
heard-notes = { $count ->
    [one] { $count } note was heard, { $low }
   *[other] { $count } notes were heard, from { $low } to { $high }
}
not-this-tune = { $name }: This does not sound like { $tune }. { $heard }; { NUMBER($likeness, style: "percent") } of line and tune agree, and a performance has { NUMBER($least, style: "percent") } and more. Give the tune that was played; if it was { $tune }, record it again, all of it and with fewer ornaments.
distance = { $semitones ->
    [1] a minor second
    [2] a major second
    [3] a minor third
    [4] a major third
    [5] a fourth
    [6] a tritone
    [7] a fifth
    [8] a minor sixth
    [9] a major sixth
    [10] a minor seventh
   *[11] a major seventh
}
distance-octaves = { $octaves ->
    [1] an octave
   *[other] { $octaves } octaves
}
distance-and-octaves = { distance } and { distance-octaves }
line-higher = { $distance } higher than the tune
line-lower = { $distance } lower than the tune
line-read-on = { $lies }, as when its part is read on the { LIST($instruments, "or") }
slip-wrong = { $played } instead of { $written }
slip-left-out = { $written } left out
slip-added = { $played } added
bars-named = bars { $bars }
pickup-and-bars = the pickup and { $bars }
beat-name = beat { $number }
    .at = on beat { $number }
beats-between = between the beats
register-low = low
register-middle = middle
register-high = high

# What went well.

praise-all-ornaments = { $asked ->
    [one] The ornament came out.
   *[other] All { $asked } ornaments came out.
}
praise-ornaments = { $done } of { $asked } ornaments came out; the clearest was the { $technique } { FORM($bar, "at") }.
praise-notes-safe = { $right } of { $wanted } melody notes were right: the tune is safely in the fingers.
praise-notes = { $right } of { $wanted } melody notes were right.
praise-beat = The beat was steady: two notes of three lie within { $ms } ms of it.
praise-tune = The tune can be recognised from beginning to end, and that is what ornaments stand on.

# What to practise next: a title, what was found, and what to do.

advice-level = Let the line grow and fade
    .practice = Play each phrase as one breath that grows to its highest note and fades to its end.
advice-level-finding = Soft and loud notes are only { $db } dB apart.
advice-ornament = { CAPITAL($name) }
    .practice = { $cure }
advice-ornament-finding = { $missed } of { $asked } could not be heard ({ $bars }). A common fault: { $fault }
advice-notes = Make the plain tune safe first
    .practice = Play { $bar } alone and slowly, without ornaments, three times right in a row; then with the bars around it.
advice-notes-finding = { $count } melody notes were other than written; { $bar }: { $examples }.
advice-tuning = Tune before you play
    .practice = { $side ->
        [sharp] Warm up, tune a long note to a tuner, and pull the mouthpiece or head joint out until it agrees.
       *[flat] Warm up, tune a long note to a tuner, and push the mouthpiece or head joint in until it agrees.
    }
advice-tuning-finding = { $side ->
    [sharp] The whole take is { $cents } cents sharp of A = 440 Hz.
   *[flat] The whole take is { $cents } cents flat of A = 440 Hz.
}
advice-note = Listen to { $note }
    .practice = Hold { $note } with a drone, hear where it settles, and play it there from the notes before and after it.
advice-note-finding = { $side ->
    [sharp] { $note } is { $cents } cents sharp against your own tuning, in { $count } notes.
   *[flat] { $note } is { $cents } cents flat against your own tuning, in { $count } notes.
}
advice-drift = { $way ->
    [faster] Keep the tempo to the end
   *[slower] Carry the tempo to the end
}
    .practice = Play with a click on two and four only, and record the last eight bars again.
drift = { $way ->
    [faster] The end is { $percent } percent faster than the beginning.
   *[slower] The end is { $percent } percent slower than the beginning.
}
advice-beat = Place the notes on the beat
    .practice = Clap the rhythm of a phrase with the click, speak it, then play it on one note, then as written.
advice-beat-finding = One note of three strays by more than { $ms } ms from your own beat
    .alone = One note of three strays by more than { $ms } ms from your own beat.
advice-beat-finding-worst = { $side ->
    [late] { $strays }; notes { FORM($beats, "at") } come { $ms } ms late.
   *[early] { $strays }; notes { FORM($beats, "at") } come { $ms } ms early.
}
advice-swing = Let the eighths swing
    .practice = Sing “doo-da” over a slow click, the second syllable late and light; recorded soloists play about { $usual } to 1.
advice-swing-finding = Long and short eighths are { $ratio } to 1, nearly even.
advice-straight = Play the eighths even
    .practice = Set the click to eighths and match every one of them.
advice-straight-finding = The eighths swing, { $ratio } to 1; the tune is written straight.
advice-graces = Shorten the grace notes
    .practice = Play the main note alone with a click, then let the grace note in without moving it.
advice-graces-finding = Grace notes last { $ms } ms; they sound like melody notes.
advice-evenness = Even fingers: { $name }
    .practice = Play it in dotted rhythms both ways, then even, at half the tempo; add five beats a minute at a time.
advice-evenness-finding = { CAPITAL(FORM($bar, "at")) } the quick notes differ by { $percent } percent in length.
advice-add = Add an ornament: { $name }
    .practice = { $when }
advice-add-finding = { $text }
advice-faster = A little faster
    .practice = Play it at { $tempo } with the same ornaments.
advice-faster-finding = This take was at { $tempo } quarter notes a minute.
advice-by-heart = By heart
    .practice = Play the tune from memory, and choose the ornaments as you go.
advice-by-heart-finding = The notes are there.
bars-from-to = bars { $first }–{ $last }
pickup-to-bar = from the pickup to bar { $last }
