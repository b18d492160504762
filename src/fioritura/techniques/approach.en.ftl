approach-note = chromatic approach note
    .label = approach
    .text = A real note a semitone below the next melody note, taken from the end of the one before.
    .how = Slur the approach into the arrival and put the weight on the arrival.
    .when = Where the melody leaps onto a beat.
    .fault = The leap to the approach note is missed.
    .cure = Practise the leap to the approach note alone, then add the semitone.

approach-chromatic = double chromatic approach
    .label = chrom. approach
    .text = Two semitones in a row that slide into the next melody note.
    .how = Even, legato, growing.
    .when = Into a note on a beat, when the note before has time to spare.
    .fault = The first of the two is accented.
    .cure = Start it softer than the melody note before.

surround = approach from both sides
    .label = surround
    .text = The notes on both sides of the next melody note, one after the other, and then the note itself.
    .how = Think of three notes as one gesture whose goal is the last.
    .when = Into a note on a beat, most of all a chord note where the chord changes.
    .fault = The line stops on the arrival.
    .cure = Play on past it: loop the gesture and the two melody notes that follow.

enclosure = extended enclosure
    .label = enclosure
    .text = Three or four notes of real value close in on a structural note from both sides.
    .how = Keep the notes even and light, and let the arrival carry the weight.
    .when = Into a chord note on the first beat or the half-bar, or into the third or seventh of a new chord, where the note before has time.
    .fault = The direction is lost: each note is played for itself.
    .cure = Sing the arrival, play the notes around it slowly, and sing it again; then leave out the singing.

approach-note-why = The melody leaps onto a beat: the semitone below the arrival announces it.
approach-chromatic-why = Two semitones { $direction ->
    [up] climb into a note on a beat from below
   *[down] slide down into a note on a beat from above
}.
surround-why = The arrival is closed in from both sides: { $first ->
    [above] scale step above, semitone below
   *[below] semitone below, scale step above
}, then the note.
enclosure-why = The note { $where } is closed in from both sides: { $order ->
    [above] from above by two semitones, then the semitone below
    [above-four] two semitones down to it, then two semitones up to it
   *[below] two semitones from below, then the scale step above
}.
