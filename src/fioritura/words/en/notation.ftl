# Words around printed music.

sheet-legend = Ornaments and their bars
sheet-pickup = pickup

# Where something is wrong.

problem-in-file = { $name }: { $problem }
problem-in-tune = { $tune }: { $problem }
abc-at = line { NUMBER($line, useGrouping: 0) }, column { NUMBER($column, useGrouping: 0) }, “{ $text }”: { $problem }
abc-warned = line { NUMBER($line, useGrouping: 0) }, column { NUMBER($column, useGrouping: 0) }: { $problem }
xml-at = Line { $line }: { $problem }
abc-tune = tune { $place }
abc-tune-titled = tune { $place }, { $title }
abc-at-line = at line { NUMBER($line, useGrouping: 0) }

# Files and what they hold.

file-kind = { $kind ->
    [compressed] compressed MusicXML
   *[other] { $kind }
}
and-more = { $count } more
first-of-several-read = the file holds { $count } tunes; the first was read
file-named-otherwise = the file's name ends in { $ending }, but it holds { $kind } and was read as that
one-tune-only = A file of { $kind } holds one tune only: leave out its number and title.
no-tune-titled = No tune here has the title “{ $given }”; there are: { $tunes }.
no-tune-numbered = There is no tune number { $given } here; there are: { $tunes }.
file-is-pdf = It is a PDF: notes can't be read from a page; export MusicXML, ABC or MIDI instead.
file-is-picture = It is a picture: export MusicXML, ABC or MIDI instead.
file-is-gzip = It is a gzip archive: unpack it first.
file-is-sound = It is a sound file: a tune is read from MusicXML, ABC or MIDI.
file-is-web-page = It is a web page, not a tune: download the file itself.
file-is-binary = It holds no tune that can be read, but binary data: give MusicXML, ABC or MIDI.
file-is-text = It is text, but not ABC (there is no X: or K: line): give MusicXML, ABC or MIDI.

# Parts and the melody among them.

part-unnamed = without a name
part-numbered = part { $number }
part-in-list = { $number } { $name }
no-such-part = “{ $given }” is not a part of this file; there are: { $parts }. Give a number or a whole name.
part-in-doubt = “{ $given }” names several parts; there are: { $parts }. Give a number or a whole name.
chords-without-melody = There are chord symbols but no melody notes: add the melody to the file.
chords-without-notes = There are chord symbols but no melody notes: add the melody, or choose another part.
no-pitched-notes = There are no pitched notes to ornament: give a file with a melody.
no-notes-at-all = There are no notes to ornament: choose another part or another file.
melody-taken-from = the melody was taken from { $part }; there are: { $parts }

# Bars, notes, chords and tempos of any file.

quarter-notes = { $count ->
    [one] { $count } quarter note
   *[other] { $count } quarter notes
}
    .number = { $count }
quarter-note-parts = { $count } quarter notes
    .number = { $count }
bar-holds = { $bar } holds { $held } where { $metre } has { FORM($full, "number") }
bar-kept = { $fault }: kept as it is
bars-irregular = { $fault }{ $more ->
    [0] { "" }
   *[other] { " " }({ $more } more like it)
}: correct it in the file, or keep the bars as they are.
bar-unmeasured = A bar without metre lasts { $length }, more than can be measured: set bar lines in it.
tune-too-long = The tune has { $bars } bars; { $limit } is the limit: cut the file to the tune.
notes-together = { $bar } has { $pitch } while { $other } still sounds; the melody must be one note at a time: choose another part, or take out the second voice.
note-unplayable = { $bar } has the note { $pitch } of { $length }, which can't be played: correct it.
chords-at-one-place = { $bar } has “{ $first }” and “{ $second }” at one place: “{ $first }” is left out
chord-kept-as-text = { $bar }: “{ $given }” can't be read as a chord symbol; kept as text, played as no chord
tempo-unplayable = { $bar } has a tempo of { $given } quarter notes a minute; { $low } to { $high } can be played: correct it.
note-without-length = Note { $number } ({ $pitch }) has no length: give it one or leave it out.
note-over-another = Note { $number } ({ $pitch }, ticks { $ticks }) lies over the note before it or outside the bars (ticks { $free }): shorten or move it.
score-empty = A score without staves or bars can't be written: give at least one of each.

# ABC: what is wrong with a piece of text.

abc-no-key-no-music = there is no K: field and no music; an ABC tune begins with X:, T: and K: and goes on with notes.
abc-line-too-long = the line has { $count } characters, { $limit } is the limit: break it.
abc-no-key = this is not a key; write a letter A-G, # or b, and a mode, as in K:G or K:Bbdor.
abc-after-key = “{ $given }” after the key means nothing; write for example K:F#m or K:D =c.
abc-no-mode = “{ $given }” is not a mode; known are { $known }.
abc-no-metre = this is not a metre; write for example M:4/4, M:6/8, M:C|, M:(2+2+3)/8 or M:none.
abc-no-unit = this is not a note length; write for example L:1/8 (1/512 to 4).
abc-no-tempo = this is not a tempo; write for example Q:1/4=120 or Q:"Allegro" 1/4=120.
abc-tempo-outside = this is { $given } quarter notes a minute; { $low } to { $high } can be played: correct it.
abc-no-part-order = this is not an order of parts; write for example P:AABB or P:(AB)2C.
abc-bracket-open = a bracket is not closed; write for example P:(AB)2C.
abc-too-many-parts = the order has more than { $limit } parts: shorten it.
abc-no-definition = this is not a definition; write for example U:T = !trill!.
abc-no-note = this is not a note.
abc-note-outside = the note lies outside MIDI's range: take out some octave marks.
abc-length-absurd = this length is absurd; write for example A3, A/2 or A3/2.
abc-note-length = a note may last from { $shortest } to { $longest } whole notes.
abc-rest-in-chord = a rest has no place in a chord.
abc-bar-rest-count = a rest may last 1 to 999 bars.
abc-bar-rest-inside-bar = a rest of whole bars must follow a bar line.
abc-no-ending-numbers = these are not the numbers of an ending; write for example [1 or [1,3 or [1-3.
abc-ending-outside = an ending's number must lie between 1 and { $limit }.
abc-too-many-bars = the tune has more than { $limit } bars: split it.
abc-tuplet-outside = a tuplet puts 2 to { $limit } notes in the time of 1 to { $limit }.
abc-broken-misplaced = a broken rhythm stands between two notes, as in A>B, A>>B or A<B.
abc-broken-over-bar-line = a broken rhythm can't pass a bar line: write the lengths out.
abc-broken-open = a broken rhythm needs a note after it, before the bar line.
abc-among-graces = “{ $given }” has no place among grace notes.
abc-chord-in-chord = a chord can't begin inside a chord.
abc-chord-end-loose = there is no chord to end here.
abc-chord-open = a chord is not closed before this bar line.
abc-unknown-sign = no sign of ABC begins so: take it out, or write what was meant.
abc-notes-together = { $count } notes sound at once; the melody must be one note at a time: take the others out, or keep the top note.
abc-voices-together = two voices sound at once; the melody must be one note at a time: take the others out, or keep the top note.

# ABC: what was guessed or left out.

abc-left-out = “{ $text }” is left out: { $problem }
abc-no-key-field = there is no K: field; the tune is read without a key signature
abc-key-guessed = { $given } is read as { FORM($key, "inline") }
abc-key-changed = the signature of { FORM($key, "inline") } is changed by accidentals; they are written at the notes instead
abc-after-metre = “{ $given }” after the metre { $metre } is left out
abc-macros = macros are not expanded; the notes are read as they are written
abc-music-after-gap = line { NUMBER($line, useGrouping: 0) }: music after an empty line is not part of the tune and is left out
abc-music-after-gap-read = line { NUMBER($line, useGrouping: 0) }: music after an empty line is read as part of the tune
abc-parts-missing = the order of parts { $order } is left out: the tune has no part { $parts }
abc-parts-written-out = the parts are written out in playing order, { $order }
abc-melody-voice = the melody is voice { $name }; left out: { $others }
abc-ending-cut = an ending without an end is read as long as the first one
abc-tie-loose = a tie without a note before it is left out
abc-slur-end-loose = the end of a slur that has no beginning is left out
abc-ties-as-slurs = { $count ->
    [one] { $count } tie between different pitches is read as a slur
   *[other] { $count } ties between different pitches are read as slurs
}
abc-bar-lines-understood = { $count ->
    [one] { $count } bar line is understood at the end of a line
   *[other] { $count } bar lines are understood at the ends of lines
}
abc-top-notes = { $count ->
    [one] at { $count } place several notes sound at once: the top note is read
   *[other] at { $count } places several notes sound at once: the top note is read
}
abc-more-places = { $count ->
    [one] { $count } more place like these
   *[other] { $count } more places like these
}
abc-signs-left-out = left out, as they are no notes of a melody: { $signs }
abc-sign-counted = { $sign } ({ $count })
abc-sign-on-rest = { $sign } on a rest
abc-further-verses = further verses

# MusicXML.

xml-no-score = It is a MusicXML { $kind } file, not a score: give the score itself.
xml-not-music = It is XML, but not MusicXML (its first element is <{ $element }>): export it as MusicXML.
xml-too-large = The XML holds more than { $elements } elements or { $bytes } bytes: save the melody part alone.
xml-damaged = The XML breaks off or is damaged at line { NUMBER($line, useGrouping: 0) } ({ $reason }): export or save it again.
xml-empty = no content
xml-unreadable = The XML can't be read ({ $reason }): export or save it again.
xml-entities = The XML uses entities of its own, which a score has no use for: export it again as MusicXML.
mxl-damaged = The compressed file is damaged ({ $reason }): export or download it again.
mxl-too-many-files = The compressed file holds { $files } files; { $limit } is the limit: export the score alone.
mxl-unsafe-name = The compressed file holds an unsafe name, “{ $name }”: don't use it.
mxl-password = The compressed file is protected by a password: save it without one.
mxl-packing = The compressed file is packed in a way that .mxl does not allow: save it again as .mxl.
mxl-bomb = The compressed file would unpack from { $packed } to { $unpacked } bytes; { $limit } and { $ratio }-fold are the limits: don't use it.
mxl-unpacks-too-far = The compressed file unpacks to more than { $limit } bytes: don't use it.
mxl-names-no-score = The compressed file's container names no score that is in it: export it again as .mxl.
mxl-holds-no-score = The compressed file holds no score: export it again as .mxl or .musicxml.
xml-no-part = There is no part in the score: export it again with its staves.
xml-element-missing = <{ $element }> is missing: correct it, or export the file again.
xml-element-senseless = <{ $element }> holds “{ $given }”, which makes no sense there: correct it, or export the file again.
xml-divisions = { $given } divisions of a quarter note; 1 to { $limit } make sense: export the file again.
xml-negative-duration = a negative duration: correct it, or export the file again.
xml-backup-too-far = a backup to before the start of the measure: export the file again.
xml-note-too-short = the note { $pitch } lasts { $length }, too short to be worked with: write it as a grace note, or lengthen it.
xml-key-too-far = a key signature of { $count } sharps or flats; 7 is the limit: respell it.
xml-tempo-no-number = a tempo of “{ $given }” is no number: correct it.
xml-notes-at-once = { $bar } has { $pitch } and { $other } at once, and a melody is one note at a time: take out the lower notes in the file.
xml-part-at-once = { $bar } has { $pitch } and { $other } at once, and a melody is one note at a time: choose another part ({ $parts }), or take out the lower notes in the file.
xml-one-voice-read = only voice { $voice } of the top staff was read; { $count ->
    [one] { $count } note of other voices and staves is left out
   *[other] { $count } notes of other voices and staves are left out
}
xml-signs-left-out = { $count ->
    [one] { $count } { $sign } sign left out: there is no place for it here
   *[other] { $count } { $sign } signs left out: there is no place for them here
}
xml-lengths-rounded = { $count ->
    [one] { $count } note, { FORM($bar, "at") }, has a length finer than { $part } of a quarter note and was rounded to it
   *[other] { $count } notes, the first { FORM($bar, "at") }, have lengths finer than { $part } of a quarter note and were rounded to it
}
xml-graces-at-end = grace notes at the end of the tune, with no note to follow, are left out
xml-octave-outside = { $pitch } can't be written: MusicXML has octaves 0 to 9; move the notes by octaves.
no-bars-per-system = { $given } bars a system make no page: give 1 or more.

# MIDI.

midi-damaged-or-large = The MIDI file is damaged or larger than { $limit } bytes: export it again.
midi-breaks-off = The MIDI file breaks off: export or download it again.
midi-damaged = The MIDI file is damaged ({ $reason }): export or download it again.
midi-smpte = The MIDI file counts time in SMPTE frames, not in beats: export it with ticks per beat.
midi-format = It is a MIDI file of format { $given }; 0 and 1 can be read: export it as format 1.
midi-too-many-bars = The MIDI file has more than { $limit } bars: cut it to the tune.
midi-part-empty = { $part } has no notes; there are: { $parts }. Choose another part.
midi-bar-crowded = { $bar } has notes too close for any rhythm: thin them out, or choose another part.
midi-notes-at-once = { $bar } has { $pitch } and { $other } at once, and a melody is one note at a time: choose another part ({ $parts }).
midi-swing-read = long-short eighths throughout were read as even eighths with a swing feel
midi-silent-bars = { $count ->
    [one] { $count } silent bar before the melody left out
   *[other] { $count } silent bars before the melody left out
}
midi-key-found = the file names no key; { FORM($key, "inline") } was found from the notes
midi-key-doubted = the file says { FORM($said, "inline") }, but its notes are those of { FORM($key, "inline") } and were read as that
midi-part = { $name } ({ $sound })
midi-channel = Channel { $number }
midi-family = { $family ->
    [piano] Piano
    [chromatic-percussion] Chromatic percussion
    [organ] Organ
    [guitar] Guitar
    [bass] Bass
    [strings] Strings
    [ensemble] Ensemble
    [brass] Brass
    [reed] Reed
    [pipe] Pipe
    [synth-lead] Synth lead
    [synth-pad] Synth pad
    [synth-effects] Synth effects
    [ethnic] Ethnic
    [percussive] Percussive
   *[sound-effects] Sound effects
}

# Engraving and pages.

no-reason-given = no reason given
engraver-missing = The engraver is missing ({ $reason }): install the package “verovio”.
engraver-no-layout = The engraver can't lay out the music: { $reason }.
engraver-no-room = The engraver can't set the music in { $systems ->
    [one] { $systems } system
   *[other] { $systems } systems
}: give fewer bars a system.
engraver-lost-bars = The engraver drew { $drawn } bars of { $bars }: report the tune with which it happens.
staff-height-outside = A staff of { $given } mm can't be engraved: give 2 to 40 mm (7 is usual).
page-width-outside = A page { $given } mm wide doesn't go with a staff of { $staff } mm: give { $low } to { $high } mm.
bars-per-system-outside = { $given } bars a system can't be engraved: give 1 to 32.
engraver-page-unread = The engraver's page can't be read: install the version of “verovio” that this program names.
engraver-drawing-damaged = The engraver's drawing is damaged (a group in it has no end): report the tune with which it happens.
page-octave-outside = { $pitch } can't be written: a page has octaves 0 to 9; move the notes by octaves.
font-not-stored = The music font can't be stored: { $reason } { $variable } names another folder.
font-lacks-sign = The music font { $font } has no glyph for { $sign }: reinstall the package “verovio”.
font-not-found = No music font { $font } to be found: reinstall the package “verovio”.
font-empty = { $file } of the package “verovio” holds no font: reinstall it (6.0 or later).
resolution-outside = { $given } dots an inch can't be drawn: give 20 to 1200 (144 suits a screen).
picture-size-outside = A picture { $width } by { $height } pixels can't be drawn: give 16 to 8192.
typesetter-missing = The typesetter is missing ({ $reason }): install the package “typst”.
typesetter-failed = The typesetter failed ({ $reason }): report the tune with which it happens.
typesetter-made-no-page = The typesetter made no page: report the tune with which it happens.
no-such-paper = No paper “{ $given }”: choose { LIST($known, "or") }.
no-such-page = There is no page { $page }: the sheet has { $pages }.
