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
octave-to-fit = { $pitch } in { $place }{ $others ->
    [0] {""}
   *[other] {" "}and { $others } more
} would lie outside the { $instrument }: the tune is played { $octave }.
key-best = { $key } suits best, written in { $written } ({ $instruments }): the tune is moved there.
key-of-another-mode = “{ $given }” is of another mode than the tune, which is in { FORM($key, "inline") }: give the key note alone.
no-such-key = “{ $given }” is no key: give a key note, as C, Bb or F#, or “best”.
pickup-out-of-reach = A pickup of { $given } beats is out of reach: the bar has { $beats }.
beats-out-of-reach = A tempo of { $given } beats a minute is out of reach: here it goes from { $low } to { $high }.
notes-out-of-range = { $pitch } in { $place }{ $others ->
    [0] {""}
   *[other] {" "}and { $others } more
} { $others ->
    [0] lies
   *[other] lie
} outside the { $instrument }, which sounds from { $low } to { $high }: { $remedy }, or { $other }.
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
taste-refused = { CAPITAL($what) } can’t be used: { $problem }.
taste-given = the table of weights
taste-names-nothing = The table of weights names “{ $given }”, which is neither a technique nor a family: choose among { LIST($known) }.
taste-no-share = a share of { $given } makes no sense: give more than 0 up to 1, and to single techniques only
taste-no-figure-feature = figures have no feature “{ $given }”: choose among { LIST($known) }

# What speaks for or against a figure.

feature-technique = the technique itself
feature-choice-among-its-variants = choice among its variants
feature-usual-place = the usual place
feature-usual-side = the usual side
feature-long = length of the note
feature-strong = weight of its place in the bar
feature-peak = higher than its neighbours
feature-phrase-start = start of a phrase
feature-phrase-end = end of a phrase
feature-repeated-note = repeated note
feature-reached-by-leap = reached by leap
feature-reached-by-step-up = reached by a step up
feature-reached-by-step-down = reached by a step down
feature-left-by-leap = left by leap
feature-chord-changes = a new chord or the first note
feature-chord-note = not foreign to the chord
feature-rest-after = rest after it
feature-busy-around = busy around it
feature-next-is-strong = weight of the next note’s place in the bar
feature-next-is-long = length of the next note
feature-next-is-peak = the next note is higher than its neighbours
feature-heard-before = how often the phrase has been heard before
feature-first-statement = first statement
feature-near-the-end = how far into the tune
feature-guide-tone-at-a-change = guide tone at a change of chord
feature-next-is-guide-tone-at-a-change = the next note is a guide tone at a change of chord
feature-last-note = the last note
feature-ballad = a ballad
feature-up-tempo = up tempo
feature-swing = in swing
feature-even = in even eighth notes
feature-level = level of the player
feature-draw = draw: players are not alike
feature-change-from-earlier-statements = variety in a repeat, drawn by lot
feature-loss-of-the-tune = loss of the tune
feature-added-notes = added or changed notes
feature-added-notes-in-a-ballad = added notes in a ballad
feature-strain = strain
feature-outside-the-chord-on-a-beat = outside the chord on a beat
feature-length-in-beats = length in beats
feature-length-over-the-tune-s-usual-note = length over the tune’s usual note
feature-on-the-downbeat = on the downbeat
feature-stronger-than-the-next-note = stronger than the next note
feature-on-a-beat-in-compound-time = on a beat in compound time
feature-quick-on-a-beat = quick, on a beat
feature-on-a-beat-then-falls = on a beat, then falls
feature-on-a-beat-then-a-step-down = on a beat, then a step down
feature-on-a-half-beat-then-a-step-down = on an off-beat, then a step down
feature-half-a-beat-long-as-the-next = half a beat long, as the next
feature-longer-after-even-notes-in-compound-time = longer after even notes in compound time
feature-dotted-then-a-step-down = dotted, then a step down
feature-long-then-rises = long, then rises
feature-long-then-falls = long, then falls
feature-amid-a-rise = amid a rise
feature-fallen-to-then-rises = fallen to, then rises
feature-a-peak-then-a-step-down = higher than its neighbours, then a step down
feature-reached-by-a-semitone-up = reached by a semitone up
feature-reached-by-a-semitone-up-on-a-half-beat = reached by a semitone up, on an off-beat
feature-reached-by-a-third-to-a-fifth-up = reached by a third to a fifth up
feature-half-a-beat-long-after-a-sixth-up-or-more = half a beat long after a sixth up or more
feature-on-a-half-beat-after-a-sixth-up-or-more = on an off-beat after a sixth up or more
feature-left-by-a-semitone-down = left by a semitone down
feature-left-by-a-sixth-down-or-more = left by a sixth down or more
feature-left-by-an-octave-down = left by an octave down
feature-a-sixth-down-or-more-to-a-stronger-note = a sixth down or more to a stronger note
feature-the-lower-neighbour-follows = the lower neighbour follows
feature-a-step-down-and-up-again = a step down and up again
feature-quick-a-step-down-and-up-again = quick, a step down and up again
feature-quick-the-next-note-falls = quick, the next note falls
feature-on-a-half-beat-a-step-down-and-up-again = on an off-beat, a step down and up again
feature-repeated-a-step-down-and-up-again = repeated, a step down and up again
feature-half-a-beat-long-out-and-back = half a beat long, out and back
feature-a-neighbour-follows-on-the-beat = a neighbour follows on the beat
feature-repeated-then-falls = repeated, then falls
feature-repeated-then-a-step-down = repeated, then a step down
feature-repeated-on-the-downbeat = repeated, on the downbeat
feature-repeated-on-a-beat = repeated, on a beat
feature-repeated-on-a-half-beat = repeated, on an off-beat
feature-repeated-and-very-short = repeated and very short
feature-repeated-and-much-longer-than-the-next = repeated and much longer than the next
feature-the-note-before-was-a-repeated-one = the note before was a repeated one
feature-fallen-to-on-a-half-beat = fallen to, on an off-beat
feature-fallen-to-and-quick = fallen to and quick
feature-a-step-down-in-even-notes = a step down in even notes
feature-very-long-the-note-before-reached-by-a-semitone-down = very long, the note before reached by a semitone down
feature-high-and-much-longer-than-the-next = high and much longer than the next
feature-second-degree-on-the-downbeat = second degree on the downbeat
feature-second-degree-in-triple-time = second degree in triple time
feature-fourth-degree-the-next-note-falls = fourth degree, the next note falls
feature-fourth-degree-then-a-third-down = fourth degree, then a third down
feature-fifth-degree-in-even-notes = fifth degree in even notes
feature-seventh-degree-on-a-beat = seventh degree on a beat
feature-on-a-half-beat = on an off-beat
feature-after-a-rest = after a rest
feature-tonic = tonic
feature-the-scale-has-a-semitone-below = the scale has a semitone below it
feature-repeated = repeated
feature-reached-by-a-step-down = reached by a step down
feature-reached-by-a-leap-down = reached by a leap down
feature-reached-by-a-whole-tone-up = reached by a whole tone up
feature-reached-by-a-third-up = reached by a third up
feature-reached-by-a-sixth-up-or-more = reached by a sixth up or more
feature-the-grace-above-would-repeat-the-note-before = the grace note above would repeat the note before
feature-the-grace-below-would-repeat-the-note-before = the grace note below would repeat the note before
feature-followed-by-the-same-note = followed by the same note
feature-followed-by-a-step-up = followed by a step up
feature-followed-by-a-leap-up = followed by a leap up
feature-followed-by-a-semitone-down = followed by a semitone down
feature-followed-by-a-fourth-to-a-seventh-down = followed by a fourth to a seventh down
feature-followed-by-an-octave-down-or-more = followed by an octave down or more
feature-the-last-note = the last note
feature-leapt-up-to-and-followed-by-the-same-note = leapt up to and followed by the same note
feature-placement = place: { $feature }
feature-side = side: { $feature }
chorus-number = chorus { $number }
choruses-out-of-reach = { $given } choruses are out of reach: give { $low } to { $high }.
plan-density-out-of-reach = A density of { $given } is out of reach for a chorus: give { $low } to { $high }.
plan-lean-out-of-reach = A size of { $size } with a register of { $register } is out of reach: both go from −1 to 1.
plan-other-length = A plan of { $count } choruses does not fit { $bars } bars: write the tune out as often as the plan says.
plan-other-count = The arrangement has { $count ->
    [one] one chorus
   *[other] { $count } choruses
} and the plan { $given }: give one density for each chorus.
plan-statement = chorus { $number }: { $role ->
    [head] the tune, nearly plain
    [fuller] fuller
    [climax] the climax
    [return] calmer again
   *[only] the tune
} ({ $density } % of the usual figures)
plan-heading = Chorus { $number }, { $role ->
    [head] nearly plain
    [fuller] fuller
    [climax] the climax
    [return] calmer again
   *[only] the tune
}
