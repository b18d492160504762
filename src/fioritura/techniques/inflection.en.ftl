scoop = scoop
    .label = scoop
    .text = The note starts a little flat and is bent up to pitch.
    .how = Reeds: loosen the jaw for the attack, then firm it; flute: roll in and back; brass: start under the note. No finger moves.
    .when = On long notes, peaks and phrase starts; seldom twice in a phrase.
    .fault = Every long note is scooped.
    .cure = Allow yourself one in four bars and choose it beforehand.

fall = fall
    .label = fall
    .text = At its end the note drops off downwards, without a goal.
    .how = Let the air and the fingers go together, fading as you fall.
    .when = At the end of a phrase, before a rest.
    .fault = It is loud to the end and lands on a pitch.
    .cure = Fade to nothing before the last finger moves.

doit = doit
    .label = doit
    .text = At its end the note shoots off upwards.
    .how = Tighten the embouchure and throw the fingers up, in one quick gesture.
    .when = At the end of a bright phrase that rises.
    .fault = It is as long as the note.
    .cure = Hold the note for its value and use only the last moment.

ghost-note = ghost note
    .label = ghost
    .text = A note half swallowed: more felt than heard.
    .how = Let the tongue all but stop the note (reeds: touch the reed) and keep the air going.
    .when = On a weak eighth between two stronger notes.
    .fault = The note disappears altogether or its pitch is wrong.
    .cure = Play it full, then bring the tongue closer by degrees.

vibrato = vibrato towards the end
    .label = vib.
    .text = The long note starts straight and begins to swing in pitch towards its end.
    .how = Saxophone and brass: a small movement of the jaw, about five a second; flute and oboe: the breath. Start after half the note.
    .when = On notes longer than about a second, most of all at endings.
    .fault = It begins with the attack and never varies.
    .cure = Count the note: straight for the first half, vibrato for the second.

scoop-why = This is { $role ->
    [peak] a note higher than its neighbours
    [last] a last note higher than the one before it
    [start] the start of a phrase
   *[long] a long note
}: it can be bent up into from below.
fall-why = The phrase lets go of this note: it may drop off downwards.
doit-why = The phrase lets go of this note{ $rises ->
    [yes] {" "}after a rise
   *[no] {""}
}: it may shoot off upwards.
ghost-note-why = A short note off the beat, on the way to the next: it can be half swallowed.
vibrato-why = A note long enough to start straight and warm up towards its end.
