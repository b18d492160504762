lead-in = lead-in
    .label = lead-in
    .text = A long note goes on as a line of even notes through the chord that arrives on the next melody note.
    .how = Let the long note speak first; then play to the arrival, not to the notes on the way.
    .when = In the middle of a phrase, on a note of two beats and more; best into a strong note or a new chord.
    .fault = The line is rushed, and the next melody note comes early.
    .cure = Sing the long note and the arrival; then put in the last note of the line, then the last two, and so on.

lead-in-why = The note is long and the phrase goes on: { $count } even notes through the chord, the last of them { $way ->
    [semitone] a semitone from the arrival
   *[step] a whole tone from the arrival
}{ $chromatic ->
    [yes] { " and outside the scale" }
   *[no] {""}
}.
