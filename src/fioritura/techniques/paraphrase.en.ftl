back-phrasing = back-phrasing
    .label = back-phrased
    .text = A group of notes starts late and closes up, so that the note it leads to comes in its place. Where there is no rest before it, the note before is held meanwhile.
    .how = Hold the note before as if there were time without end, then speak the words of the phrase towards the arrival; the pulse goes on in the foot.
    .when = In ballads and medium swing, on two to eight notes that lead to a downbeat or to a longer note on a beat.
    .fault = The tempo slackens with the phrase.
    .cure = Loop the bar over a bass line: sing the phrase in time first, then late, and clap the arrival each time.

phrase-ahead = phrase brought forward
    .label = ahead
    .text = A group of notes comes an eighth or a sixteenth early, and the longer note at its end is held from there.
    .how = Breathe a beat sooner, accent the first early note lightly, and keep the values as they are written in the tune.
    .when = Where two to eight notes lead from a beat to a longer note and the note before has time to spare.
    .fault = The group is early and then rushed as well.
    .cure = Clap two and four while you play; the early notes stand exactly between the beats.

octave-phrase = phrase in another octave
    .label = octave
    .text = A gesture that repeats or answers what was just heard is played an octave higher or lower, note for note.
    .how = Hear the first note of the new octave before it is played, and keep the sound as round as in the octave before.
    .when = On a repeat, a sequence or an answer that stays in the comfortable range and is reached by no more than an octave.
    .fault = The first note cracks.
    .cure = Play the octave leap to it alone, slurred and soft, ten times, then the gesture.

back-phrasing-why = The { $count } notes that lead to the note { $where } start { $late ->
    [eighth] an eighth
   *[quarter] a quarter
} late and are there in time{ $held ->
    [true] : the note before is held meanwhile
   *[false] {""}
}.
phrase-ahead-why = The { $count } notes up to the one { $where } come { $value ->
    [eighth] an eighth
   *[sixteenth] a sixteenth
} early, and that longer note is held from there.
octave-phrase-why = { $kind ->
    [repeat] What was heard { FORM($bar, "at") } comes again
    [sequence] The gesture { FORM($bar, "at") } comes again on other notes
   *[answer] The same rhythm answers what was heard { FORM($bar, "at") }
}: an octave { $direction ->
    [up] higher
   *[down] lower
} it is something new.
