turn = turn
    .label = turn
    .text = Main note, upper step, main note, lower step, main note, in the scale of the chord.
    .how = Slur the whole turn; keep it even and let the last note sing.
    .when = On a note of a beat or more, best on its way to the next one.
    .fault = The turn is squeezed at the start and the last note is late.
    .cure = Play it in slow even notes with the metronome, then halve the values.

inverted-turn = inverted turn
    .label = inv. turn
    .text = Main note, lower step, main note, upper step, main note.
    .how = As the turn, but it opens upwards: grow a little to the upper note.
    .when = Before a melody note that lies higher.
    .fault = It is mixed up with the turn.
    .cure = Say 'down first' and look where the melody goes next.

mordent = mordent
    .label = mordent
    .text = Main note, a quick dip to the step below, and back.
    .how = One flick of one finger; the tongue plays only the first note.
    .when = On a strong note that is approached from above or repeated.
    .fault = Three equal notes: a triplet instead of a flick.
    .cure = Play the long note, add the flick at its very start, as late and as fast as you can.

upper-mordent = upper mordent
    .label = upper mord.
    .text = Main note, a quick flick to the step above, and back.
    .how = Flick the finger up, not down: light and near the key.
    .when = On a strong note that is approached from below or repeated.
    .fault = The upper note is accented.
    .cure = Accent the main note and let the flick ride on the same air.

shake = shake
    .label = shake
    .text = Rapid alternation of a long note with the step above, settling on the main note.
    .how = Start slower than you can, speed up, and stop in time to let the note ring.
    .when = On a long high note at a climax; once in a chorus is plenty.
    .fault = It goes on to the end of the note.
    .cure = Decide the beat on which it settles and practise arriving there.

turn-why = A note with time for a turn ({ $start ->
    [at-once] at once
   *[after] after the note has been heard
}): upper and lower scale step around it.
turn-why-raised = A note with time for a turn ({ $start ->
    [at-once] at once
   *[after] after the note has been heard
}), its lower note raised to a leading semitone.
inverted-turn-why = A note with time for a turn that dips first: lower, then upper scale step.
mordent-why = The attack is sharpened by one quick dip to the step below.
upper-mordent-why = The attack is brightened by one quick flick to the step above.
shake-why = A long note that can carry excitement: rapid alternation with the step above, then it settles.
