irish-cut = cut
    .label = cut
    .text = A flick of a higher note before the note, so short that it has hardly a pitch: it parts and accents, as the tongue does elsewhere.
    .how = On flute and whistle lift one finger of the upper hand, the third for notes of the lower hand, the first for A and B, and put it back at once; the tongue stays out of it.
    .when = On a repeated note, above all one that steps down afterwards, and on notes of the beat that are reached from below.
    .fault = The cut sounds like a note of the tune.
    .cure = Say the note twice with the cut between and count one, not two: the finger only bounces.

irish-strike = strike
    .label = strike
    .text = A tap of a lower note before the note, made by a finger that hits its hole and springs back.
    .how = Hit the next open hole below with a straight finger and let it bounce; the air goes on.
    .when = To part a note from one of the same pitch, or to land on one that is leapt down to.
    .fault = The finger stays on the hole and the lower note speaks.
    .cure = Tap a table top with the finger: it has to be off before you hear it.

irish-short-roll = short roll
    .label = short roll
    .text = A quarter note that begins with a cut and is parted by a strike: cut note, struck note.
    .how = Cut at the very start, strike in the middle, one breath and no tongue between.
    .when = On quarter notes of jigs and reels with a finger free below.
    .fault = Cut and strike come in a hurry at the start.
    .cure = Say "and-a ONE": play two eighth notes of the same pitch, then part them with fingers instead of the tongue.

irish-long-roll = long roll
    .label = roll
    .text = A dotted quarter parted into three: the note, the note cut, the note struck. Its sign is ~.
    .how = Hold the note for an eighth, cut, strike, all in the even beat of the jig; only two fingers move.
    .when = On dotted quarters, and wherever the tune circles one note for three eighths.
    .fault = The three notes are uneven: the roll bunches at its end.
    .cure = Tongue three even eighths first, then leave the tongue away and let cut and strike part them at the same places.

irish-cran = cran
    .label = cran
    .text = A roll on the low D, where no finger is left to strike with: the note is parted by cuts of two different fingers.
    .how = Cut with the first and then the second finger of the lower hand; never the same finger twice.
    .when = On long low Ds, and on the D above, which is fingered almost alike.
    .fault = The octave breaks under the cuts.
    .cure = Blow gently into a full low D; cut slowly, one finger at a time, and quicken when both cuts speak.

irish-triplet = triplet
    .label = triplet
    .text = Three quick even notes in the time of a quarter: the step between two notes of a third is filled, or a note is circled.
    .how = Slur them, or tongue the first alone; the beat falls on the first.
    .when = In reels and hornpipes, between notes a third apart and before a fourth; hardly ever in jigs.
    .fault = Two sixteenths and an eighth come out.
    .cure = Clap the beat and say "tri-po-let"; then play it on one note.

irish-treble = treble
    .label = treble
    .text = A quarter note said three times as an even triplet.
    .how = Tongue "te-ke-te", or tongue the first and part the rest with a cut and a strike.
    .when = On a quarter note on the beat in reels and hornpipes, for drive; once or twice a tune.
    .fault = It is heavier than the notes around.
    .cure = Play it softer than what comes before; only the first may be heard.

irish-divided-note = divided note
    .label = divided
    .text = A quarter note becomes two eighths: itself, and a note of the chord or a neighbour that leads on.
    .how = Keep the first as it was; the second is light.
    .when = When a phrase comes again and its held notes can move.
    .fault = The new note is louder than the tune's.
    .cure = Play the quarter note twice, then change only the fingers of the second.

irish-held-note = held note
    .label = held
    .text = Two eighths become one quarter: the passing one is left out, and the tune breathes.
    .how = Hold the first to its end, or let it go early and breathe.
    .when = When a phrase comes again, on running eighths; the place where a flute player takes breath.
    .fault = The beat drags because nothing moves.
    .cure = Tap the eighth that you leave out with the foot.

irish-cut-why = { $coming ->
    [repeated] A repeated note is parted from the one before by a cut { $where }
    [below] The melody rises to the note { $where }: a cut gives it weight
    [above] The melody falls to the note { $where }: a cut marks it
   *[first] A cut marks the first note
}.
irish-strike-why = { $coming ->
    [repeated] The note is said again: a strike from below parts the two.
   *[above] The melody leaps down: a strike makes it land.
}
irish-short-roll-why = The note is as long as two running ones, with a finger free below: cut and strike part it in two.
irish-long-roll-why = { $form ->
    [held] The note lasts as long as three running ones: a roll keeps the beat going in it.
    [said-again] The tune says the note for as long as three running ones: a roll binds them into one.
   *[circled] The tune circles the note in three running ones: the roll does the same with two fingers.
}
irish-cran-why = { $form ->
    [held] A long note has no finger left to strike with: cuts alone part it.
    [said-again] The tune says the note for as long as three running ones, and no finger is left to strike with: a cran binds them into one.
   *[circled] The tune circles the note in three running ones, and no finger is left to strike with: a cran keeps it on the note.
}
irish-triplet-why = { $form ->
    [third] The two notes are a third apart: the one between makes them a triplet.
    [fourth] A note as long as two running ones lies before a fourth: the two notes between run on in a triplet.
   *[neighbour] A note as long as two running ones lies before a step or a third down: it circles once, as a triplet.
}
irish-treble-why = A note on the beat, as long as two running ones: said three times, it drives on.
irish-divided-note-why = { $side ->
    [above] A note as long as two running ones can move: the note above leads on.
   *[below] A note as long as two running ones can move: the note below leads on.
}
irish-held-note-why = { $heard ->
    [before] The phrase has been heard: the passing note may go, and the line breathes.
   *[first] The note between only passes: left out, it lets the line breathe.
}
