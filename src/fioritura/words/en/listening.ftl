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
recording-without-player = No wind player can be heard in it, only other sounds: record the melody, near to the microphone.
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

# What happened in a take: each in one sentence, the first of the report.

perhaps = Perhaps: { $words }
the-rest = the rest
note-itself = { $note }
slip-there = { $words } ({ FORM($where, "full") })
happened-stop = { $count ->
    [one] The music stood still for { $seconds } seconds ({ $bars }).
   *[other] The music stood still { $count } times, { $seconds } seconds in all ({ $bars }).
}
happened-again = { CAPITAL($bar) } was begun again.
happened-again-from = { CAPITAL(FORM($bar, "at")) } you broke off and went back; played twice: { $bars }.
happened-again-often = You broke off and went back { $count } times; begun again: { $bars }.
happened-skipped = { $count ->
    [one] A bar was skipped: { $bars }.
   *[other] { $count } bars were skipped: { $bars }.
}
happened-part = Only a part was played: { $bars } of { $last }.
happened-off = The whole take sounds { $words }.
happened-off-bars = { $side ->
    [higher] { CAPITAL($distance) } higher than written: { $bars }.
   *[lower] { CAPITAL($distance) } lower than written: { $bars }.
}
happened-key = The key signature was forgotten: { $played } instead of { $written }, { $count ->
    [one] once
   *[other] { $count } times
}.
happened-wrong = { $count ->
    [one] One note of { $wanted } was not the one that is written: { $examples }.
   *[other] { $count } of { $wanted } notes were not the ones that are written: { $examples }{ $more ->
        [0] .
       *[other] ; and so on.
    }
}
happened-left-out = { $count ->
    [one] One note of { $wanted } was left out: { $examples }.
   *[other] { $count } of { $wanted } notes were left out: { $examples }{ $more ->
        [0] .
       *[other] ; and so on.
    }
}
happened-added = { $count ->
    [one] One note was added that is not in the tune: { $examples }.
   *[other] { $count } notes were added that are not in the tune: { $examples }{ $more ->
        [0] .
       *[other] ; and so on.
    }
}
happened-ornament = { CAPITAL($name) }: { $missed } of { $asked } could not be heard ({ $bars }).
happened-ornaments = { $missed } of { $asked } ornaments could not be heard ({ $bars }).
happened-ornaments-least = At least { $missed } of { $asked } ornaments could not be heard ({ $bars }).
happened-tempo = { $way ->
    [faster] You played faster than asked: { $played } beats a minute instead of { $asked }.
   *[slower] You played slower than asked: { $played } beats a minute instead of { $asked }.
}
happened-drift = { $way ->
    [faster] { CAPITAL(FORM($bar, "at")) } the music begins to grow faster: at the end it is { $percent } percent faster than before.
   *[slower] { CAPITAL(FORM($bar, "at")) } the music begins to grow slower: at the end it is { $percent } percent slower than before.
}
happened-span = { $way ->
    [faster] Some bars went { $percent } percent faster than the others: { $bars }.
   *[slower] Some bars went { $percent } percent slower than the others: { $bars }.
}
happened-late = { $side ->
    [late] Notes { FORM($beats, "at") } come later than the others, by { $ms } ms ({ $count } notes).
   *[early] Notes { FORM($beats, "at") } come earlier than the others, by { $ms } ms ({ $count } notes).
}
happened-rhythm = { $side ->
    [late] One note came too late for the rhythm that is written ({ FORM($where, "full") }).
   *[early] One note came too early for the rhythm that is written ({ FORM($where, "full") }).
}
happened-rhythms = In { $count } places the rhythm was not the one that is written ({ $bars }).

# What went well.

praise-all-ornaments = { $asked ->
    [one] The ornament came out.
   *[other] All { $asked } ornaments came out.
}
praise-ornaments = { $done } of { $asked } ornaments could be heard clearly; the clearest was the { $technique } { FORM($bar, "at") }.
praise-notes-safe = { $right } of { $wanted } melody notes were right: the tune is safely in the fingers.
praise-notes = { $right } of { $wanted } melody notes were right.
praise-beat = The beat was steady: two notes of three lie within { $ms } ms of it.
praise-tune = The tune can be recognised.

# What to practise next: a title and what to do.

advice-stop = Keep going
    .practice = Play from two beats before the place to two beats after it, slowly enough that you need not stop; three times right in a row. ({ $bars })
advice-again = Play on, whatever happens
    .practice = Play { $bar } and the bar before it slowly and without a stop; in the whole tune let a slip go by and play on.
advice-skipped = Every bar in its place
    .practice = Play from the bar before the gap to the bar after it, and count the bars aloud ({ $bars }).
advice-part = On to the whole tune
    .practice = Learn the missing bars by themselves, then join them to what you played: { $missing }.
advice-octave = The right octave
    .practice = Play the first note of the place, look where it stands on the staff, then play on from the bar before ({ $bars }).
advice-octave-whole = The octave
    .practice = Ask whether the tune is to sound in this octave; if not, begin with the first note alone.
advice-transposed = Is it the right part?
    .practice = See that the part is the one for your instrument, and play its first note with a piano or the band.
advice-transposed-bars = Find the first note again
    .practice = Play the last note before the place and the first note of it, to and fro, then go on ({ $bars }).
advice-key = Look at the key signature
    .practice = Mark each { LIST($written, "or") } in the part, play the scale of the key twice, then the tune slowly.
advice-wrong = Play the notes as they are written
    .practice = Play { $bar } alone and slowly, three times right in a row; then with the bars around it.
advice-left-out = Leave no note out
    .practice = Say the rhythm of { $bar } aloud, clap it, then play it with all its notes.
advice-added = The plain tune first
    .practice = Play { $bar } slowly with just the notes that are written, then with the bars around it.
advice-tempo = { $way ->
    [faster] Not so fast
   *[slower] Towards the tempo
}
    .practice = { $way ->
        [faster] Set the click to { $asked }, hear four beats, and sing the first bar before you play.
       *[slower] Stay at your tempo until all is easy, then go up by four beats a minute at a time, to { $asked }.
    }
advice-span = { $way ->
    [faster] Do not hurry
   *[slower] Do not wait
}
    .practice = Play from the bar before the place to the bar after it with a click ({ $bars }).
advice-late = { $side ->
    [late] Be there on time
   *[early] Wait for the beat
}
    .practice = Tap the beat with your foot, and speak “ta” { FORM($beats, "at") }, then play it.
advice-rhythm = The rhythm
    .practice = Clap the rhythm of { $bar } with a click, speak it, then play it on one note, then as written.
advice-level = Let the line grow and fade
    .practice = Play each phrase as one breath that grows to its highest note and fades to its end.
advice-level-finding = Soft and loud notes are only { $db } dB apart.
advice-ornament = { CAPITAL($name) }
    .practice = { $cure }
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
    [sharp] { $note } is { $cents } cents sharp against your other notes ({ $count } times).
   *[flat] { $note } is { $cents } cents flat against your other notes ({ $count } times).
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
advice-beat-finding = One note of three strays by more than { $ms } ms from your own beat.
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
bars-from-to = bars { $first }–{ $last }
pickup-to-bar = from the pickup to bar { $last }
