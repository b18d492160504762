repeated-notes = repeated notes
    .label = repeat
    .text = A quarter note becomes two eighths, a half a dotted quarter and an eighth: the same pitch, said again.
    .how = Tongue each note lightly, 'dah-dah', with the air running through.
    .when = On a note of a quarter or more, best one longer than its neighbours, where the line would otherwise stand still.
    .fault = The air stops with each tongue stroke.
    .cure = Play the note long, then touch it with the tongue without changing the air.

repeated-notes-lively = repeated notes in a rhythm
    .label = rhythm
    .text = A long note becomes a small rhythm on one pitch, often syncopated.
    .how = Shape it: one of the notes is the loud one, the others lead to it or fall from it.
    .when = On a held note while the band plays on, or to wake up a plain ending.
    .fault = All notes are equally loud.
    .cure = Speak the rhythm with one accented syllable, then tongue just that.

repeated-notes-why = { $end ->
    [last] The tune ends on { $pitch }
   *[moves] The melody stays on { $pitch } before it goes on to { $next }
}: said twice, the note keeps the time moving.
repeated-notes-lively-why = The note becomes a rhythm of { $count ->
    [2] two
    [3] three
    [4] four
   *[other] { $count }
} on one pitch, while the melody waits.
