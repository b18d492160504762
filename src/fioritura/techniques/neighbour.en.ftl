neighbour-upper = upper neighbour note
    .label = upper nbr
    .text = A step up from the melody note and back again.
    .how = The neighbour is lighter than the note it belongs to.
    .when = On a repeated note or a long note that should move a little.
    .fault = The return is late.
    .cure = Finger the three notes silently in time first.

neighbour-lower = lower neighbour note
    .label = lower nbr
    .text = A step (or a semitone) down from the melody note and back again.
    .how = Slur down and up in one gesture.
    .when = On a repeated note or a long note; the semitone is stronger, the scale step softer.
    .fault = The lower note is flat.
    .cure = Keep the air fast on the way down.

double-neighbour = double neighbour
    .label = double nbr
    .text = Both neighbours of a note, one after the other, before it returns.
    .how = Four even notes, the first and last the same.
    .when = Between two equal notes, or inside a long one.
    .fault = The two middle notes blur.
    .cure = Slow practice with an accent on the second note, then on the third.

escape-tone = escape tone
    .label = escape
    .text = A step against the direction of the melody, then a leap to the next melody note.
    .how = Throw it away: short and light.
    .when = Where the melody moves down (or up) by step or third and the first note has time.
    .fault = It sounds like a missed note.
    .cure = Give the melody notes on both sides full length and weight.

appoggiatura = appoggiatura
    .label = appogg.
    .text = The melody leaps to the note beside the chord note, leans on it, and resolves by step.
    .how = Full weight on the leaning note, none on the resolution, no tongue between.
    .when = On a long chord note on a beat that is reached by leap.
    .fault = The resolution gets an accent.
    .cure = Sing it on a sigh: 'AH-ah'.

neighbour-why-repeated = The melody repeats a note: the { $which ->
    [upper] upper
    [lower] lower
   *[chromatic] chromatic lower
} neighbour between gives it somewhere to return from.
neighbour-why-long = The note is long enough to step out to its { $which ->
    [upper] upper
    [lower] lower
   *[chromatic] chromatic lower
} neighbour and back.
double-neighbour-why-repeated = The melody repeats a note: both neighbours ({ $first ->
    [above] above, then below
   *[below] below, then above
}) dance around it.
double-neighbour-why-long = A long note circles through both neighbours ({ $first ->
    [above] above, then below
   *[below] below, then above
}) and comes home.
escape-tone-why = The melody goes { $direction ->
    [up] up
   *[down] down
}: a step the other way first, then the leap, gives it a catch of breath.
appoggiatura-why = { $foreign ->
    [yes] A chord note
   *[no] A note
} on a beat: a leap to the step { $side ->
    [above] above
   *[below] below
}{ $foreign ->
    [yes] , foreign to the chord,
   *[no] {""}
} leans on it and resolves.
