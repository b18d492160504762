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
}: an answer in the rhythm of { $origin ->
    [phrase] this phrase
    [opening] the tune’s opening
    [to-triplet] eighths that close with a triplet
    [to-pair] eighths that close with a quick pair
    [from-triplet] a triplet that runs out in eighths
    [from-pair] a quick pair that runs out in eighths
    [from-long] a held first note and eighths
   *[eighths] steady eighths
}{ $halved ->
    [yes] , in half the value
   *[no] {""}
}, { $shape ->
    [arch] up to one peak and back
    [valley] down and up again
    [falling] falling all the way
   *[rising] rising all the way
}, leads into the next note.
