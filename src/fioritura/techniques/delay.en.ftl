delay = delay with a compressed approach
    .label = late
    .text = Start late, then play the notes before an arrival in half their value: the arrival keeps its beat.
    .how = Count the rest, then think of the arrival note; the short notes lead to it.
    .when = On one to four notes that lead to a strong beat, in a tempo that leaves time for the half values.
    .fault = The arrival comes late too.
    .cure = Clap the arrival's beat while you sing the short notes; then play with a drum track.

suspension = suspension
    .label = suspension
    .text = The note before is held over the beat and then resolves down by step to the melody note.
    .how = Slur; lean on the held note with the air and relax into the resolution.
    .when = Where the melody falls by step onto a long chord note on a beat.
    .fault = The resolution is tongued and loud.
    .cure = Play it as a sigh: loud on the beat, soft after it.

retardation = retardation
    .label = retardation
    .text = The note before is held over the beat and then resolves up by step to the melody note.
    .how = Slur, with a small swell into the resolution.
    .when = Where the melody rises by step onto a long chord note on a beat, most of all at an ending.
    .fault = It is rushed.
    .cure = Subdivide the beat aloud and resolve on the exact subdivision.

delay-why = { $count ->
    [one] The note starts late and takes
   *[other] These { $count } notes start late and take
} half the time, so that the arrival on the next strong beat is in its place.
suspension-why = The melody falls by step onto a chord note: the note before, foreign to the chord, is held and falls late.
retardation-why = The melody rises by step onto a chord note: the note before, foreign to the chord, is held and rises late.
