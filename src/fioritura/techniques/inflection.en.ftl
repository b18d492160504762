scoop = scoop
    .label = scoop
    .text = The note starts a little flat and is bent up to pitch.
    .how = Reeds: loosen the jaw for the attack, then firm it; flute: roll in and back; brass: start under the note. No finger moves.
    .when = On a note with time for it: long notes, peaks, phrase starts; seldom twice in a phrase.
    .fault = Every long note is scooped.
    .cure = Allow yourself one in four bars and choose it beforehand.

fall = fall
    .label = fall
    .text = At its end the note drops off downwards, without a goal.
    .how = Let the air and the fingers go together, fading as you fall.
    .when = Before a rest, or on a long note at the end of a phrase.
    .fault = It is loud to the end and lands on a pitch.
    .cure = Fade to nothing before the last finger moves.

doit = doit
    .label = doit
    .text = At its end the note shoots off upwards.
    .how = Tighten the embouchure and throw the fingers up, in one quick gesture.
    .when = Before a rest or on a long note at the end of a phrase, best after a rise.
    .fault = It is as long as the note.
    .cure = Hold the note for its value and use only the last moment.

ghost-note = ghost note
    .label = ghost
    .text = A note half swallowed: more felt than heard.
    .how = Let the tongue all but stop the note (reeds: touch the reed) and keep the air going.
    .when = On a short note off the beat that leads straight on to the next.
    .fault = The note disappears altogether or its pitch is wrong.
    .cure = Play it full, then bring the tongue closer by degrees.

vibrato = vibrato towards the end
    .label = vib.
    .text = The long note starts straight and begins to swing in pitch towards its end.
    .how = Saxophone and brass: a small movement of the jaw, about five a second; flute and oboe: the breath. Start after half the note.
    .when = On notes of about a second or longer, most of all at endings.
    .fault = It begins with the attack and never varies.
    .cure = Count the note: straight for the first half, vibrato for the second.

scoop-why = This is { $role ->
    [peak] a note higher than its neighbours
    [last] a last note higher than the one before it
    [start] the start of a phrase
    [leap] a note reached by a leap up
    [long] a long note
   *[time] a note with time for it
}: it can be bent up into from below.
fall-why = { $end ->
    [rest] A rest follows this note
    [last] This is the last note
   *[phrase] The phrase ends with this note
}: it may drop off downwards.
doit-why = { $end ->
    [rest] A rest follows this note
    [last] This is the last note
   *[phrase] The phrase ends with this note
}{ $rises ->
    [yes] , and the melody has risen to it
   *[no] {""}
}: it may shoot off upwards.
ghost-note-why = A short { $pitch } off the beat, on the way to { $next }: it can be half swallowed.
vibrato-why = { $end ->
    [last] The tune ends on { $pitch }
    [phrase] The phrase ends on { $pitch }
   *[long] The melody stays on { $pitch } for { $count ->
        [one] { $count } quarter note
       *[other] { $count } quarter notes
    }
}: the note can start straight and warm up towards its end.
