anticipation = anticipation
    .label = early
    .text = The note comes early, by a sixteenth (in swing by an eighth), and is held over its beat.
    .how = Tongue the early note clearly and hold it; feel the beat pass under it without playing again.
    .when = On a note of a beat or two that starts on a beat, best where the chord changes with it.
    .fault = Everything after it comes early as well.
    .cure = Tap the beat with the foot and speak the rhythm before you play it.

anticipation-why = A note on a beat that can come { $value ->
    [eighth] an eighth
   *[sixteenth] a sixteenth
} early { $brings ->
    [yes] and brings the new chord in early
   *[no] and pushes the line forward
}.
