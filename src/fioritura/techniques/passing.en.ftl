passing-note = passing note
    .label = passing
    .text = The scale note inside a leap of a third, with real value: an eighth or a sixteenth off the beat.
    .how = Make it lighter than the notes on both sides and slur through it.
    .when = Where the melody leaps a third and the first note is long enough to give up some time.
    .fault = The passing note is louder than the melody.
    .cure = Play the leap alone; then let the passing note happen on the way.

passing-notes-pair = two passing notes
    .label = passing
    .text = The two scale notes inside a leap of a fourth.
    .how = Even, light, slurred to the arrival.
    .when = Where the melody leaps a fourth from a note of a beat or more.
    .fault = They rush.
    .cure = Count the subdivisions of the beat that they take.

passing-note-chromatic = chromatic passing note
    .label = chrom. passing
    .text = The semitone inside a whole tone, as a real note off the beat.
    .how = Lean a little into it: it wants to resolve.
    .when = Where the melody moves by a whole tone and the first note has time.
    .fault = It falls on the beat and sounds like a wrong note.
    .cure = Put the foot on the beat: the chromatic note is always between two taps.

passing-note-why = The melody leaps a third: the scale note between fills it.
passing-notes-pair-why = The melody leaps a fourth: the two scale notes between make it a walk.
passing-note-chromatic-why = The melody moves by a whole tone: the semitone between leads on, as a real note off the beat.
