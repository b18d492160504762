why-by-hand = { $why } One pitch or more by hand.
no-such-figure = No figure “{ $given }” is on offer here: take one of those that are.
bend-too-far = { $given } semitones are too far: a pitch is raised or lowered by one semitone at a time.
bend-unplayable = With this pitch the figure doubles a note or leaves the instrument: take another one.
bend-own-note = That note is the tune’s own: only added notes can be raised or lowered.
bend-no-such-note = The figure has { $count ->
    [one] one note
   *[other] { $count } notes
} of its own: there is no note { $given } (they count from 0).
nothing-to-take-back = Nothing to take back: no decision has been made.
locked-figures-collide = Two locked figures collide or overfill their phrase: unlock one of them.
no-such-level = Level { $given } does not exist: levels go from 1 (beginner) to 5 (expert).
arrangement-unreadable = This is no arrangement file ({ $reason }): choose an arrangement.json.
arrangement-none = This is no arrangement file: choose an arrangement.json that was written here.
arrangement-version = The arrangement has version { $given }; { $readable } can be read: update Fioritura.
arrangement-damaged = The arrangement file is damaged ({ $reason }): save it again.
damaged-key = a key of { $fifths } fifths
damaged-bar = a bar without length, or no bar at all
damaged-bars = bars overlap or leave gaps
damaged-repeats = a bar is repeated more than { $most } times
damaged-tempo = a tempo of { $given } quarter notes a minute
damaged-note = a note without length, or no note at all
damaged-notes = notes overlap or are out of order
damaged-end = notes lie behind the last bar
damaged-figure-place = a figure stands at the notes numbered { $notes } from 0, and the tune has { $count ->
    [one] one
   *[other] { $count }
}
damaged-figure-claim = a figure ends before it begins, or stands on notes that the tune does not have
damaged-figure-note = a note of a figure has no length, or lies before it
damaged-figure-score = a figure’s score is no number
chords-other-count = The chords fill { $given ->
    [one] one bar
   *[other] { $given } bars
} and the tune has { $bars }, the upbeat not counted: write one cell for each bar between | signs, with % to repeat a bar, or a shorter line that divides the tune.
chords-no-cell = Bar { $number } of the chords { $given ->
    [nothing] holds nothing
   *[other] holds “{ $given }”
}: write its chords, N.C. for none, or % alone to repeat the bar before.
chords-unreadable = Bar { $number } of the chords: { $reason }
chords-too-many = Bar { $number } is given { $given } chords and has room for { $room }, one to each beat of { $metre }: write fewer.
figures-collide = The { $technique } { $where } collides with another figure: take one of them out.
figure-splits-note = The { $technique } would split note { $number } in two: take it out.
octave-too-far = { $given } octaves are too far: a tune is moved by at most 3 octaves up or down.
octaves = { $direction ->
    [none] at its own pitch
    [up] { $count ->
        [one] an octave
       *[other] { $count } octaves
    } higher
   *[down] { $count ->
        [one] an octave
       *[other] { $count } octaves
    } lower
}
octave-by-custom = The { $instrument } plays lead sheets { $octave } by custom.
beats-out-of-reach = A tempo of { $given } beats a minute is out of reach: here it goes from { $low } to { $high }.
notes-out-of-range = { $pitch } in { $place }{ $others ->
    [0] {""}
   *[other] {" "}and { $others } more
} lies outside the { $instrument }, which sounds from { $low } to { $high }: { $remedy }, or { $other }.
other-octaves = play it { LIST($octaves, "or") }
no-octave-fits = no octave holds all of it on the { $instrument }
other-instruments = choose an instrument that reaches it: { LIST($instruments, "or") }
smaller-tune = take a tune with a smaller range
taste-of = the taste of { $id }
taste-not-of-the-form = it is not of the right form ({ $error })
taste-no-idiom = there is no idiom “{ $given }”: choose { LIST($known, "or") }
taste-no-table = it has “{ $given }” for { $idiom }: give { LIST($known) }
taste-no-number = the weight { $given } is no number
taste-no-feature = places have no feature “{ $given }”: choose among { LIST($known) }
