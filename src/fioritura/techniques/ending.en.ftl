held-colour = colour note at the end
    .label = colour
    .text = The last note moves to the sixth or the ninth of its chord and stays there.
    .how = Play the last note for a beat, then move to the colour without a new tongue stroke and hold it evenly to the end.
    .when = At the end of a tune in jazz, over a last chord that is held; not where all others hold the plain note with you.
    .fault = The colour note is louder than the note it comes from and sounds like a mistake.
    .cure = Hold the last note, sing the colour, then play it at the same loudness.

held-colour-why = The tune ends on a chord note that is held: the { $colour ->
    [ninth] ninth
   *[sixth] sixth
} gives the last chord its colour.

closing-phrase = closing phrase
    .label = close
    .text = After the last note a few quick notes of the five-note scale lead to one that is held.
    .how = Let the last note speak, play the quick notes lightly and in time, and set the held note down with the band.
    .when = Once, at the very end of a tune, where the last note is long.
    .fault = It rushes, and the held note comes before the beat.
    .cure = Count the beats of the last note aloud, then play the phrase into that count.

closing-phrase-why = The tune ends here with time to spare: a short phrase { $rises ->
    [yes] rises
   *[no] falls
} to a note that is held.
