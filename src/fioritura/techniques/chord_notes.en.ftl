added-chord-note = added chord note
    .label = chord note
    .text = A note of the chord with real value: inside a leap of the melody, or between a note and its repeat.
    .how = Hear the chord before the leap; each of the notes has its own full sound.
    .when = In a leap of a fifth or more that has a chord note inside it, or where a note is repeated.
    .fault = The added note is pinched, because the ear is on the melody note after it.
    .cure = Play the chord up and down from its root, then melody and chord note alone, slowly.

arpeggiated-note = broken chord on a long note
    .label = arpeggio
    .text = A long note is left through the notes of its chord, or the chord is broken upwards in the rest before it.
    .how = Let the long note sound first; then one even movement of the air for the whole chord.
    .when = On a half note or longer, and before a chord note on a beat that comes after a rest.
    .fault = The break starts too soon, and the melody note is lost.
    .cure = Count the beats of the long note aloud and start the break on the count.

guide-tone-line = guide-tone line
    .label = guide tones
    .text = While the melody waits, thirds and sevenths of the chords go on by step where the chord changes.
    .how = Full length, quiet and without accent, as an inner voice; the step comes with the change of the chord.
    .when = Under a long note or a rest of three beats or more over which the chord changes.
    .fault = The step comes early or late, and the change is not heard.
    .cure = Play third and seventh of each chord in half notes through the whole tune, with the bass.

added-chord-note-why = { $kind ->
    [leap] The melody leaps { $direction ->
        [up] up
       *[down] down
    }: a note of the chord stands between.
   *[repeated] The note is repeated: a note of the chord { $direction ->
        [up] above
       *[down] below
    } it stands between.
}
arpeggiated-note-why = { $way ->
    [into] The melody rests before this note: { $count } notes of its chord rise to it.
   *[from] The note is long: { $count } notes of its chord lead on from it.
}
guide-tone-line-why = The melody waits while the chord changes{ $changes ->
    [one] {""}
   *[other] { " " }{ $changes } times
}: { $count ->
    [one] a third or seventh leads by step
   *[other] { $count } notes, each the third or seventh of its chord, lead by step
}.
