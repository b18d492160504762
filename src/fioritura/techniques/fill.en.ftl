answer-fill = answer fill
    .label = fill
    .text = Where the melody holds or rests, a short phrase answers it and leads into the next melody note.
    .how = Leave the long note early, breathe, and aim for the next melody note from the start of the fill.
    .when = On long notes at the end of a phrase and in the rests between phrases; not in every gap.
    .fault = The fill is louder and busier than the tune, and the next phrase starts late.
    .cure = Sing the tune and play only the fills; then play the tune and leave every second fill out.

answer-fill-why = The melody { $rests ->
    [yes] rests
   *[no] holds a long note
}: { $count } notes{ $doubled ->
    [yes] , in double time,
   *[no] {""}
} { $idea ->
    [echo] take up four notes of this phrase
    [third] touch the blue third
    [fifth] touch the flat fifth
    [guide] bring out the third or seventh of the new chord
    [arpeggio] go through the notes of the chord
    [around] close in on a note from both sides
    [chromatic] touch a note outside key and chord
    [waves] turn more than once
    [arch] rise and come back
    [valley] fall and come back
    [falling] fall
   *[rising] rise
} and { $way ->
    [enclosed] surround the next note before it comes
    [semitone] lead into the next note by a semitone
    [step] lead into the next note by a whole tone
    [third] lead into the next note by a third
    [colour] come to rest on a colour of the chord
   *[rest] come to rest on a note of the chord
}.
