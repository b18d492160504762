# The pages of a review.

which-tune = Which tune was played? Give the tune, or the arrangement that was asked for.
not-earlier-takes = { $file } is not the file of earlier takes: move it away, or choose another folder.
the-take = The take
review-untitled = A take
review-subtitle = what was heard, and what to practise next
review-recording = About the recording.
review-next = What to practise next
review-ladder = Begin at { $start } beats a minute; three times right in a row, then four faster, up to { $goal }.
review-how-measured = Ornaments are named with how sure the ear is; a name that is not sure is given with the other reading. Cents count from equal temperament on the player’s own A, milliseconds from the player’s own beat.
review-passages = It was heard in { $count } passages, repeats and fresh starts among them.

glance-of = { $right } of { $wanted }
glance-count = { $count }
glance-ornaments = Ornaments
glance-notes = Melody notes right
glance-tempo = Tempo
glance-time = Time
glance-eighths = Eighths
glance-tuning = Tuning
glance-within = within { $ms } ms
glance-swing = { $ratio } to 1
glance-even = even
beats-a-minute = { $tempo } beats a minute
in-tune-with-440 = A = 440 Hz
amount-of-cents = { $cents ->
    [one] { $cents } cent
   *[other] { $cents } cents
}
cents-off = { $side ->
    [sharp] { amount-of-cents } sharp
   *[flat] { amount-of-cents } flat
}

review-played = What you played
review-played-about = { $below ->
    [asked] Above what was heard, below it what was asked.
   *[plain] Above what was heard, below it the plain tune.
} The line behind the notes is your pitch: on the head it is in tune, and a staff space higher or lower is a semitone.
review-passage = Passage { $number } of { $count }, { $bars }
staff-played = played
staff-asked = asked
staff-plain = plain
music = Music
music-from-bar = Music from bar { $bar }
colours = Colours: { $names }
colour-as-asked = as asked
colour-ornament = ornament
colour-missed = asked, not heard
colour-slip = other than written
in-tune = in tune
sharp = sharp
flat = flat

review-no-ornament = No ornament was heard: the tune was played plain.
review-ornaments = Ornaments, one by one
review-status-done = came out
review-status-missed = not heard
review-status-added = your own
column-passage = Passage
column-bar = Bar
column-pickup = pickup
column-beat = Beat
column-ornament = Ornament
column-sure = How sure
column-figure = Quick notes of the
column-uneven = differ in length by
share = { NUMBER($share, style: "percent") }
sure-else = { $share }, else { $other }
no-ornament = no ornament
review-slips = Notes other than written
review-slip = { CAPITAL($where) }: { $words }.

review-spread = Two notes of three lie within { $ms } ms of your own beat.
review-no-drift = The tempo at the end is that of the beginning.
review-swing = Long and short eighths are { $ratio } to 1.
review-graces = Grace notes last { $ms } ms.
review-evenness = Evenness
percent = { $percent } percent
nearly-even = nearly even
to-practise = to practise
review-tuning = The whole take: { $off }.
review-tuning-about = Each stroke is a note that was held, each dot the middle of them, against your own tuning.
review-register = { $register }, { $off } ({ $count ->
    [one] { $count } note
   *[other] { $count } notes
})
review-registers = By register: { $registers }.
review-level-heading = Tone level
review-level = Soft and loud notes lie { $db } dB apart.

# Plots.

axis-on-the-beat = on the beat
axis-off-the-beat = { $side ->
    [late] { $ms } ms late
   *[early] { $ms } ms early
}
axis-on-a-beat = on a beat
axis-together = within { $ms } ms: heard as together
axis-tempo = tempo { $tempo }
axis-cents = { $side ->
    [sharp] { $cents } cents sharp
   *[flat] { $cents } cents flat
}
louder = louder
usual-level = usual
softer = softer
plot-time = Notes early and late against the beat, and the tempo, bar by bar
plot-tuning = Tuning of each note, in cents against the player’s own tuning
plot-level = Tone level of each note along the bars
plot-progress = Measures of the takes, from the first to the last

# Exercises.

drill-long-short = Long–short
drill-short-long = Short–long
drill-plain = { CAPITAL($bar) }, plain
drill-with-ornament = With the ornament
drill-loop = { CAPITAL($bar) }, in a loop
drill-long-note = Hold { $note } against a drone
drill-one-note = { CAPITAL($bars) } on one note
drill-as-written = As written

# Progress over several takes.

review-progress = Progress
measure-ornaments = ornaments that came out
measure-notes = right notes
measure-spread = notes stray from the beat by
measure-drift = tempo, end against beginning
measure-pitch = notes off their pitch by
measure-uneven = quick notes differ by
measure-level = soft to loud
measure-tempo = tempo, quarters a minute
amount-percent = { $amount }%
amount-ms = { $amount } ms
amount-cents = { $amount ->
    [one] { $amount } cent
   *[other] { $amount } cents
}
amount-db = { $amount } dB
amount-tempo = { $amount }
then-and-now = { $measure } { $then } then, { $now } now
progress-takes = { $count } takes of this tune.
progress-better = { $before } Better since the first: { $measures }.
progress-worse = { $before } To look after: { $measures }.
