run-chromatic = chromatic run inside a third or fourth
    .label = chrom. run
    .text = All semitones between two melody notes a third or a fourth apart, quick and even.
    .how = Start late rather than early; the last melody note is the goal and stands on its beat.
    .when = Where the leap is no more than a fourth; wider gaps have too many semitones.
    .fault = The run starts too early and the arrival waits.
    .cure = Play backwards: the arrival, then the last two notes and the arrival, then three.

run-scale = scale run
    .label = scale run
    .text = The notes of the chord's scale between two melody notes a fifth or more apart.
    .how = One breath, one slur, fingers low; grow towards the arrival.
    .when = Into a high point, or down from it, where the first note is long.
    .fault = Two or three notes in the middle are blurred.
    .cure = Play it in dotted rhythms both ways, then even.

run-pentatonic = pentatonic run
    .label = pent. run
    .text = A run through five notes to the octave: fewer notes than the scale for the same distance.
    .how = As a scale run, but with air between the notes; it may swing.
    .when = Where a full scale would be too quick for the tempo, and in blues and folk colours.
    .fault = The gap of a third inside it is uneven.
    .cure = Loop the three notes around the third.

run-arpeggio = arpeggio run
    .label = arpeggio
    .text = The notes of the chord as quick steps from one melody note to the next.
    .how = Hear the chord first, then let the fingers spell it.
    .when = Where the melody makes a wide leap inside one chord.
    .fault = The register break cracks.
    .cure = Practise the two notes at the break as a slow slur, then the whole arpeggio.

run-chromatic-why = The melody { $direction ->
    [up] rises
   *[down] falls
} a { $size ->
    [fourth] fourth
   *[third] third
}: few enough semitones to play them all.
run-scale-why = The melody { $direction ->
    [up] rises
   *[down] falls
} by a wide leap: the chord’s scale fills it, and the arrival is on time.
run-pentatonic-why = The melody { $direction ->
    [up] rises
   *[down] falls
} by a wide leap: five notes to the octave fill it lightly.
run-arpeggio-why = The melody { $direction ->
    [up] rises
   *[down] falls
} by a wide leap: the notes of the chord are the steps of the ladder.
