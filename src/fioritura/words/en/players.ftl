tempo-out-of-reach = A tempo of { $given } quarter notes a minute is out of reach: it goes from { $low } to { $high }.
density-out-of-reach = A density of { $given } is out of reach: it goes from { $low } to { $high }, 1 is usual.
no-such-feel = No feel “{ $given }”: choose { LIST($known, "or") }.
no-such-idiom = No idiom “{ $given }”: choose { LIST($known, "or") }.
no-such-instrument = No instrument “{ $given }”: choose { LIST($known, "or") }.
no-such-level = Level { $given } does not exist: levels go from { $low } (beginner) to { $high } (expert).
tempo-not-above-0 = A tempo of { $given } can’t be played: give quarter notes a minute above 0.
hard-places-not-above-0 = The tempo ({ $tempo }) and the number of places ({ $count }) must both be above 0.
no-fingering = There is no fingering for written { $pitch }, the chart goes from { $low } to { $high }: move the line by an octave.

plugin-wrong-form = what it offers is not of the right form ({ $reason })
plugin-no-instruments = it has no INSTRUMENTS
plugin-not-an-instrument = { $id } in its INSTRUMENTS is no instrument
plugin-instrument-taken = there is an instrument “{ $id }” already
plugin-instrument-bounds = the range or the sound program of “{ $id }” is out of bounds
plugin-chart-lacks = the fingering chart of “{ $id }” lacks written MIDI number { $number }
plugin-breath = the breath of “{ $id }” is outside { $low } to { $high } times the usual
plugin-stranger = it has a chart or a breath for “{ $id }”, which is none of its instruments

# Instruments: inside a sentence, and beside a staff.

instrument-title = { CAPITAL($instrument) }
instrument-in-key = { CAPITAL($instrument) } in { $tonic }
instrument-at-concert-pitch = { CAPITAL($instrument) }, concert pitch

instrument-concert = concert pitch
    .short = C
instrument-soprano-sax = soprano saxophone
    .short = S. Sax.
instrument-alto-sax = alto saxophone
    .short = A. Sax.
instrument-tenor-sax = tenor saxophone
    .short = T. Sax.
instrument-baritone-sax = baritone saxophone
    .short = B. Sax.
instrument-clarinet = clarinet
    .short = Cl.
instrument-bass-clarinet = bass clarinet
    .short = B. Cl.
instrument-flute = flute
    .short = Fl.
instrument-irish-flute = Irish flute
    .short = Ir. Fl.
instrument-tin-whistle = tin whistle
    .short = Wh.
instrument-oboe = oboe
    .short = Ob.
instrument-trumpet = trumpet
    .short = Tpt.
instrument-flugelhorn = flugelhorn
    .short = Flghn.
instrument-trombone = trombone
    .short = Tbn.

# Fingerings: keys as they are listed ("with 1, 2 and side B♭").

fingering = { $keys }
fingering-open = open fingering

key-the = { FORM($key, "the") }
key-from = { FORM($key, "the") }
key-to = { FORM($key, "the") }
key-number = key { $number }
hole-number = hole { $number }
key-octave = octave key
    .the = the octave key
key-back-octave = back octave key
    .the = the back octave key
key-side-octave = side octave key
    .the = the side octave key
key-register = register key
    .the = the register key
key-thumb = thumb
    .the = the thumb key
key-thumb-hole = thumb
    .the = the thumb hole
key-half-hole = half-hole
    .the = the half-hole
key-bis = bis key
    .the = the bis key
key-left-sliver = left sliver key
    .the = the left sliver key
key-right-sliver = right sliver key
    .the = the right sliver key
key-second-side = second side key
    .the = the second side key
key-of-note = { $note } key
    .the = the { $note } key
key-low = low { $note } key
    .the = the low { $note } key
key-high = high { $note } key
    .the = the high { $note } key
key-left = left { $note } key
    .the = the left { $note } key
key-pair = { $low }/{ $high } key
    .the = the { $low }/{ $high } key
key-left-pair = left { $low }/{ $high } key
    .the = the left { $low }/{ $high } key
key-right-pair = right { $low }/{ $high } key
    .the = the right { $low }/{ $high } key
key-throat = throat { $note } key
    .the = the throat { $note } key
key-side = side { $note }
    .the = the side { $note } key
key-side-trill = side { $note } trill key
    .the = the side { $note } trill key
key-trill = { $note } trill key
    .the = the { $note } trill key
key-lever = { $note } lever
    .the = the { $note } lever
key-palm = palm { $note }
    .the = the palm { $note } key
key-front = front { $note }
    .the = the front { $note } key
key-thumb-note = thumb { $note }
    .the = the thumb { $note } key
slide-position = { $number ->
    [1] first
    [2] second
    [3] third
    [4] fourth
    [5] fifth
    [6] sixth
   *[7] seventh
} position

# Why a place is hard.

note-pair = { $first }–{ $second }
move-to = { $first } to { $second }
move-again = { $note } again
hard-place-why = { $move }: { $why }.
cause-tongue = the tongue has to be quick
cause-grace = as a grace note it must be light and quick
cause-speed = it goes by at { $rate } notes a second
cause-break = it crosses the break
cause-into-altissimo = it goes over into the altissimo
cause-from-altissimo = it comes down from the altissimo
cause-palm = the palm keys come into play
cause-crossing = fingers cross ({ $down } down while { $up } up)
cause-many-fingers = { $count } fingers move at once
cause-slide = the slide goes from { $first } to { $second }
cause-next-partial = the slur crosses to the next partial
cause-partials = the slur leaps { $count } partials
cause-finger-goes = the { $finger } goes from { $before } to { $after }
cause-finger-takes = the { $finger } takes { $keys } as well
cause-finger-leaves = the { $finger } lets go of { $keys } alone
count-of-fingers = { $n ->
    [0] none
    [1] one
    [2] two
    [3] three
    [4] four
    [5] five
    [6] six
    [7] seven
    [8] eight
    [9] nine
   *[other] { $n }
}
count-of-partials = { count-of-fingers }
finger-left-thumb = left thumb
finger-left-first = left first finger
finger-left-second = left second finger
finger-left-third = left third finger
finger-left-little = left little finger
finger-left-palm = left palm
finger-right-first = right first finger
finger-right-second = right second finger
finger-right-third = right third finger
finger-right-little = right little finger
finger-right-side = side of the right hand

# How to practise it.

practice-fingering = Take { $note } with { $fingering }.
practice-break = Slur { $pair } with one steady breath; set the right hand for { $upper } before you leave { $lower }.
practice-little-finger = Slur { $pair } eight times each way, the little finger staying on the keys as it glides.
practice-roll = Roll rather than lift: slur { $pair } eight times each way with the finger never off the keys.
practice-palm = Slur { $pair } with the hand still; let only the palm move, as little as will open the key.
practice-many-fingers = Loop { $pair } slowly until all fingers arrive in one click, then a little faster.
practice-partial = Sing { $pair }, then slur it on the air alone with soft lips before the hand joins in.
practice-slide = Play { $pair } with a light legato tongue, the slide moving late and at once.
practice-tongue = Tongue { $lower } alone, four, six, then eight times, with the tip only, the air never stopping.
practice-dotted = Play the whole stretch in dotted rhythm, long–short, then short–long, then even.
practice-slow-trill = Slur { $pair } back and forth, evenly, until it feels like a slow trill.
practice-tempo = Begin at { $beat } = { $start }; when it is clean three times running, go up by { $step }; the goal is { $beat } = { $goal }.
practice-at-tempo = It lies within reach at { $beat } = { $goal }: play it there, evenly.
feel-by-custom = The file does not say how it is played: its eighths are swung, as jazz does by custom.
