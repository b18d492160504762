lower-grace-semitone = grace note a semitone below
    .label = semitone below
    .text = A short note one semitone under the melody note, played just before it and slurred up into it.
    .how = Tongue the grace note lightly and slur at once to the main note, which keeps its place on the beat.
    .when = On notes that deserve weight: long notes, peaks, the first note of a phrase, notes on a beat.
    .fault = The grace note grows long and the main note comes late.
    .cure = Play the main note alone with a metronome, then let the grace note in without moving it.

lower-grace-step = grace note a scale step below
    .label = grace below
    .text = A short note one step of the scale under the melody note: softer in colour than the semitone.
    .how = Finger both notes before you start; only one or two fingers should move on the slur.
    .when = Where the semitone would sound too sharp-edged: ballads, and notes whose lower step is a whole tone.
    .fault = Both notes get the same weight.
    .cure = Breathe into the main note; say 'ta-DAA', never 'TA-ta'.

upper-grace-step = grace note a scale step above
    .label = grace above
    .text = A short note one step of the scale above the melody note, falling onto it.
    .how = Think of flicking a finger: the upper note is only a click before the main note.
    .when = On a repeated note, after a rising step, and on the strong beats of folk tunes.
    .fault = The upper note sounds like a wrong melody note.
    .cure = Make it shorter and quieter; the ear should notice the attack, not the pitch.

upper-grace-semitone = grace note a semitone above, in a falling whole tone
    .label = semitone above
    .text = Where the melody falls by a whole tone, the semitone that lies between is touched on the way down.
    .how = Leave the first note a moment early and slide through the middle note by finger, not by jaw.
    .when = Only where the melody really falls a whole tone to the note.
    .fault = It is used on falling semitones, where nothing lies between.
    .cure = Name the two melody notes first; if they are neighbours on the piano, choose another grace note.

double-grace-lower = double grace note from below
    .label = double grace
    .text = Two quick scale steps that run up into the melody note.
    .how = One tongue stroke on the first, then slur all three; fingers close together on the keys.
    .when = On a strong, long note, best where the melody comes from below or from a rest.
    .fault = The two notes are uneven.
    .cure = Practise them as an even triplet with the main note, then shrink the triplet.

double-grace-upper-lower = double grace note around the note (upper, lower)
    .label = grace around
    .text = The scale step above and the semitone below, then the note between them.
    .how = Slur all three; aim the air at the main note from the start.
    .when = On a long note or a peak on a beat, where there is time for the ear to hear the note arrive.
    .fault = The main note is cut short.
    .cure = Hold the main note for its full value and let the note before it give up the time.

lower-grace-semitone-why = The semitone below leads up into { $note } and makes it speak.
lower-grace-step-why = The scale step below is a whole tone here: it lifts { $note } more softly.
upper-grace-step-why = { $coming ->
    [repeated] A repeated note is parted from the one before
    [below] The melody comes from below, so the note is touched from the other side
   *[above] The note is leaned on from above
}: the scale step above falls { $where } onto it.
upper-grace-semitone-why = The melody falls a whole tone here: the semitone between fills the step on the way down.
double-grace-lower-why = Two scale steps run up into the note { $where }.
double-grace-upper-lower-why = Scale step above, semitone below: { $note } is closed in from both sides.
