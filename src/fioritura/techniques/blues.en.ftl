blue-third = blue third
    .label = blue third
    .text = The minor third before the major one, bent or slurred up into it: the note between the two is what the blues sings.
    .how = Finger the minor third with a loose jaw, then slur; the bend takes its time from the note, not from the beat.
    .when = On the third of the key's chord, above all where it is long or begins a phrase.
    .fault = It becomes two clean notes, like a finger exercise.
    .cure = Sing the bend on one syllable, then play it as slowly as you sang it.

flat-fifth = flat fifth in passing
    .label = flat fifth
    .text = The semitone between fifth and fourth, touched on the way.
    .how = Slur it into the note after it, and lean on the fifth before it.
    .when = Where the tune goes from the fifth to the fourth or the blue third, more down than up.
    .fault = The flat fifth is held or falls on a beat, and sounds like a wrong note.
    .cure = Count the off-beat aloud and play it only there.

blue-drop = blue third above the key note
    .label = blue drop
    .text = The minor third of the key, flicked before the key note, from above.
    .how = Tongue the blue note hard and short, and drop.
    .when = On the key note on a beat, at the end of a call or of its answer.
    .fault = The drop is lazy and the key note late.
    .cure = Set the key note with the beat; throw the blue note before it.

blue-third-why = The third { $where } is bent up to from the blue third.
flat-fifth-why = { $way ->
    [down] From the fifth down: the flat fifth passes between.
   *[up] From the fourth up to the fifth: the flat fifth passes between.
}
blue-drop-why = The key note on a beat: the blue third drops onto it.
