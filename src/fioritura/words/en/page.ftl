### The words of the page and of its scripts, in British English.
### Names in the form { $name } are filled in. Titles of tunes, names of people and what the server reports come as they are.

## On every page

page-language = Language of this page
page-skip-content = Skip to the content
page-skip-music = Skip to the music
page-pages = Pages
page-stand = Stand
page-lesson = Lesson
page-take = Take
page-students = Students
page-shelf = Shelf
page-bring-in = Bring in
page-view = View
page-smaller-notes = Smaller notes
page-larger-notes = Larger notes
page-close-panel = Close the panel
page-engraving = Engraving…
page-wait = Wait…
page-waiting = Waiting…
page-play = Play
page-stop = Stop
page-hear = Hear
page-keep = Keep
page-cancel = Cancel
page-close = Close
page-remove = Remove
page-remove-name = Remove { $name }
page-add = Add
page-all = All
page-none = None
page-off = off
page-undo = Undo
page-redo = Redo
page-title = Title
page-tune = Tune
page-tags = Tags
page-player = Player
page-level = Level
page-idiom = Idiom
page-idiom-file = As the tune says
page-idiom-jazz = Jazz
page-idiom-folk = Folk
page-idiom-blues = Blues
page-idiom-irish = Irish
page-eighth-notes = Eighth notes
page-feel-straight = Straight
page-feel-swing = Swing
page-tempo = Tempo
page-tempo-now = Tempo { $tempo }
# A tempo in beats a minute, and how large a part of the usual one it is.
page-tempo-share = { $tempo } ({ $share } %)
page-beats-a-minute = beats a minute
page-band = Band
page-microphone = Microphone
page-ornament = Ornament
page-nobody = nobody in particular
page-milliseconds = { $ms } ms
page-percent = { $share } %
page-share-of = { $count } of { $total }
page-bar-one = Bar { $first }
page-bars-span = Bars { $first }–{ $last }
page-bars-pickup = Pickup to bar { $last }
page-bars-from-to = Bars { $first } to { $last }
page-bars-count =
    { $count ->
        [one] { $count } bar
       *[other] { $count } bars
    }
page-pickup = Pickup
page-care-softly = Start softly, in headphones most of all.
page-care-limit = By the usual limit for work (NIOSH: 85 dB for eight hours) one hour at 94 dB fills the day.
page-sound-preparing = Preparing the sound…
# The plain tune or the line with ornaments, in a list.
page-line-name =
    { $line ->
        [plain] plain
       *[ornamented] ornamented
    }
page-technique-name = Name
page-technique-label = Sign over the notes
page-technique-text = What it is
page-technique-how = How
page-technique-when = When
page-technique-fault = What goes wrong
page-technique-cure = What helps

## The server

page-server-silent = The server does not answer: is `fioritura serve` still running?
page-server-failed = The server failed ({ $status }).
page-server-forgot = The server forgot this work: start it again.

## Keys

page-keys = Keys
page-keys-letters = Single letters and signs are keys
page-keycap-space = Space
page-keycap-escape = Esc
page-keycap-control = Ctrl
page-key-help = these keys
page-key-level = level
page-key-level-number = level { $level }
page-key-slower-faster = slower, faster
page-key-faster = faster
page-key-smaller-larger = smaller, larger notes
page-key-larger = larger notes
page-key-close-panel = close the panel

## The entrance, and addresses that lead nowhere

page-enter = Enter
page-enter-whose = Whose shelf is this?
page-enter-about = This page is served over a network. The token stands in the terminal where it was started.
page-enter-token = Token
page-enter-wrong = That is not the token: look again in the terminal.
page-wrong = Not here
page-wrong-to-shelf = To the shelf
page-wrong-to-stand = To the stand

## Bringing tunes in

page-bring-a-tune = Bring in a tune
page-bring-unfolds = Write repeats out, so that each time can differ
page-bring-from-files = From files
page-bring-drop = Drop MusicXML, ABC or MIDI files here,
page-bring-choose-files = or choose files
page-bring-choose-folder = or a whole folder
page-bring-type-abc = Or type the melody in ABC
page-bring-my-tune = My tune
page-bring-take = Put it on the stand
page-bring-preview = As it will be read
page-bring-preview-music = The typed melody, engraved
page-bring-bars-from = Bars from { $bar }
page-bring-readable = It can be read.
page-bring-problem-at = Line { $line }, column { $column }: { $problem }
page-bring-problem-in = { $problem } (line { $line }, column { $column })
page-bring-tune-facts =
    { $bars ->
        [one] { $key }, { $metre }, { $bars } bar
       *[other] { $key }, { $metre }, { $bars } bars
    }
page-bring-files-read = Files read
page-bring-files-done = { $done } of { $total } files
page-bring-stopped = Stopped: nothing was put on the shelf.
page-bring-no-tunes = None of these is a MusicXML, ABC or MIDI file.
page-bring-too-large = These files are too large together: bring them in by parts of { $most } MB.
page-bring-reading =
    { $count ->
        [one] Reading { $count } file…
       *[other] Reading { $count } files…
    }
page-bring-skipped =
    { $count ->
        [one] { $count } other file was left alone.
       *[other] { $count } other files were left alone.
    }

## The shelf

page-shelf-search-what = Search titles, composers, tags and lessons
page-shelf-search = Search
page-shelf-export = Export everything
page-shelf-restore = Restore an export
page-shelf-restoring = Restoring…
page-shelf-doubles = Some of these tunes stand here already
page-shelf-doubles-count =
    { $count ->
        [one] One tune of the export came from the same file as one on your shelf. What becomes of it?
       *[other] { $count } tunes of the export came from the same files as tunes on your shelf. What becomes of them?
    }
page-shelf-doubles-skip = Leave mine as they are; add only the others
page-shelf-doubles-replace = Replace mine, with all that belongs to them
page-shelf-doubles-copy = Add them all a second time
# { $all } is a link with the words of page-shelf-show-all.
page-shelf-none-by-that-name = Nothing here by that name: { $all }.
page-shelf-show-all = show all
page-shelf-empty = Nothing here yet: bring in a tune.
page-shelf-arrangement = Arrangement: { $name }
page-shelf-remove-arrangement = Remove the arrangement { $name } of { $title }
page-shelf-lesson = Lesson: { $title }
page-shelf-worked-on = worked on { $day }
page-shelf-describe = Title and tags
page-shelf-describe-name = Title and tags of { $title }
page-shelf-tags = Tags, with commas between them
page-shelf-remove-sure = Remove it?
page-shelf-remove-about = “{ $what }” goes off the shelf with all that belongs to it. An export that holds it can be restored.

## The stand

page-stand-tools = History and view
page-stand-music = Music: plain over ornamented
page-stand-legend = Kinds of figures in this arrangement
page-stand-panel = Figure and setting
page-stand-tabs = Panel
page-stand-setting =
    { $idiom ->
        [jazz] { $player }, level { $level }, jazz
        [blues] { $player }, level { $level }, blues
        [irish] { $player }, level { $level }, Irish
       *[folk] { $player }, level { $level }, folk
    }
page-stand-figures =
    { $count ->
        [one] { $count } figure · { $share } % of the tune as it was
       *[other] { $count } figures · { $share } % of the tune as it was
    }
# What is undone and redone comes from the server: “keep figure 3”.
page-stand-undo-what = Undo: { $what } (U)
page-stand-undo-nothing = Nothing to undo
page-stand-redo-what = Redo: { $what } (Y)
page-stand-redo-nothing = Nothing to redo
page-stand-undone = Undone: { $what }
page-stand-redone = Redone: { $what }
page-stand-loop-how = Drag over the bars to loop, or choose a figure first.
page-stand-key-play = play, stop
page-stand-key-next = next figure
page-stand-key-before = figure before
page-stand-key-keep = keep the figure, or set it free again
page-stand-key-leave-out = leave the figure out
page-stand-key-hear = hear the figure
page-stand-key-alternatives = go to what else could stand here
page-stand-key-undo = undo
page-stand-key-redo = redo
page-stand-key-plain = hear the plain tune
page-stand-key-ornamented = hear the ornamented line
page-stand-key-in-turn = hear them in turn
page-stand-key-loop = loop the bars around the figure, or no loop
page-stand-key-count-in = count-in on, off
page-stand-key-band = band on, off
page-stand-key-setting = the setting
page-stand-key-version = another version beside this one, or put it away
page-stand-key-lesson = make a lesson of it

## The stand: one figure

page-figure = Figure
page-figure-none = Choose a figure in the music, or go from one to the next with the arrow keys.
page-figure-looking = Looking for what else could stand here…
page-figure-alternatives = What else could stand here
page-figure-no-other = Nothing else could stand here.
page-figure-where = { $family } · { $where }
page-figure-place = { $name }, { $where }
page-figure-place-kept = { $name }, { $where }, kept
page-figure-keep = Keep
page-figure-kept = Kept
page-figure-leave-out = Leave out
page-figure-hear = Hear it
page-figure-hear-name = Hear: { $name }
page-figure-difficulty = Difficulty
page-difficulty-name =
    { $difficulty ->
        [easy] easy
        [moderate] moderate
        [demanding] demanding
       *[hard] hard
    }
page-figure-notes = Its notes, as written
page-figure-added-note = Added note { $note }
page-figure-lower = Lower { $note }
page-figure-raise = Raise { $note }
page-figure-on-staff = { $name } on a staff
page-figure-fit =
    { $fit ->
        [best] fits best
        [well] fits well
        [fairly] fits
       *[less] fits less well
    }
page-figure-stands = stands now
page-figure-take = Take instead
page-figure-take-name = Take instead: { $name }

## The stand: the setting, other versions and copies

page-setting = Setting
page-setting-tempo = Tempo it is arranged for
page-setting-density = How many figures
page-setting-families = Kinds of figures
page-setting-techniques = Single techniques
page-density-usual = as usual
page-density-fewer = fewer ({ $share } %)
page-density-more = more ({ $share } %)
page-version-another = Another version
page-version-about = The same setting and decisions, another good choice of figures, on a staff under this one.
page-version-show = Show another beside it
page-version-next = Yet another
page-version-take = Take it
page-version-hide = Put it away
page-copy-another = Another arrangement
page-copy-about = Leave this one as it stands and go on with a copy: for another player, another level. Both stay on the shelf.
page-copy-name = Its name
page-copy-make = Make a copy

## Hearing it

page-hear-what = What to hear
page-hear-plain = Plain
page-hear-ornamented = Ornamented
page-hear-in-turn = In turn
page-hear-other = Other
page-hear-both = This, other
page-hear-tempo = Tempo in beats a minute
page-hear-loop = Loop
page-hear-loop-how = Loop (L): drag over bars, or loop the bars of the figure
page-hear-loop-bars = bars { $first }–{ $last }
page-hear-loop-on = Loop: { $bars }
page-hear-loop-off = No loop
page-hear-count-in = Count-in
page-hear-feel = Feel
page-hear-band-on = Band on
page-hear-band-off = Band off
page-part-name =
    { $part ->
        [melody] Melody
        [bass] Bass
        [chords] Chords
        [drums] Drums
       *[click] Click
    }
page-feel-usual = what suits the tune
page-feel-name =
    { $feel ->
        [swing] swing
        [shuffle] shuffle
        [slow-blues] slow blues
        [ballad] ballad
        [bossa] bossa
        [soul] soul
        [funk] funk
        [waltz] waltz
        [folk-waltz] folk-waltz
        [march] march and polka
        [reel] reel
        [jig] jig
       *[other] { $feel }
    }

## The lesson

# { $title } is the title of a tune.
page-lesson-on = Lesson on { $title }
# { $arrangement } is a link with the words of page-lesson-arrangement.
page-lesson-built-from = Built from { $arrangement }, as it stands there now.
page-lesson-arrangement = the arrangement on the stand
page-lesson-others = Lessons on this tune
page-lesson-new = New lesson
page-lesson-your-words = Your words
page-lesson-for = For
page-lesson-for-whom = a student, a class
page-lesson-studio = Studio line
page-lesson-studio-what = studio, day and hour
page-lesson-notes = Notes on the front page
page-lesson-notes-what = What to listen for, what to do first
page-lesson-more-words = Subtitle, composer, rights
page-lesson-subtitle = Subtitle
page-lesson-subtitle-what = level and idiom
page-lesson-composer = Composer
page-lesson-composer-what = as in the file
page-lesson-rights = Rights
page-lesson-rights-what = who may copy it
page-lesson-phrases = Phrases
page-lesson-phrases-about = Examples come from the phrases that are chosen.
page-lesson-phrase-new =
    { $count ->
        [one] new, { $count } figure
       *[other] new, { $count } figures
    }
page-lesson-phrase-returns =
    { $count ->
        [one] heard before, { $count } figure
       *[other] heard before, { $count } figures
    }
page-lesson-reading = Reading the arrangement…
page-lesson-whom = For whom, and how
page-lesson-paper = Paper
page-paper-a-four = A4
page-paper-letter = Letter
page-lesson-language = Language
page-lesson-note-names = Note names
page-note-names-usual = the language's
page-note-names-english = C D E, B♭
page-note-names-german = C D E, B and H
page-note-names-solfege = Do Re Mi
page-lesson-sound-files = Sound files
page-lesson-sections = In the pack
page-lesson-section =
    { $section ->
        [handout] Handout
        [parts] Parts
        [sound] Sound
        [exercises] Exercises
        [levels] Graded path
        [page] Offline page
        [overlays] Pictures
        [clips] Clips
       *[other] { $section }
    }
page-lesson-section-about =
    { $section ->
        [handout] the tune, each technique with an example, the performance, a practice plan
        [parts] a sheet for each player that is chosen below
        [sound] plain, ornamented, backing tracks and examples, slow and fast
        [exercises] the hard places and the techniques in other keys
        [levels] the tune from the easiest level to this one, with a course plan
        [page] one file that plays the lesson in any browser
        [overlays] the examples without ground, to lay over a video
        [clips] each example as a video, wide and tall (slow)
       *[other] { "" }
    }
page-lesson-players = Players who get a part
page-lesson-techniques = Techniques
page-lesson-techniques-about = Each that is chosen gets a section with an example from the tune. Change its words where you say it otherwise.
page-lesson-technique-use =
    { $count ->
        [0] level { $level } · not in the arrangement
        [one] level { $level } · once
       *[other] level { $level } · { $count } times
    }
page-lesson-more = More that this tune offers
page-lesson-words = Words
page-lesson-words-on = Words on { $name }
page-lesson-words-back = Put the usual words back
page-lesson-preview = The examples, as they will be printed
page-lesson-example-music = { $name }, plain over ornamented
page-lesson-examples =
    { $count ->
        [one] { $count } technique, easiest first.
       *[other] { $count } techniques, easiest first.
    }
page-lesson-no-part = No part for { $player }: { $reason }
page-lesson-keeping = Keeping…
page-lesson-kept = On the shelf
page-lesson-not-kept = Not kept yet
page-lesson-unkept = The lesson could not be kept: try again.
page-lesson-remove = Remove this lesson
page-lesson-remove-sure = Remove this lesson?
page-lesson-remove-about = The arrangement stays; the plan and your words for this lesson go.
page-lesson-key-build = build the pack
page-lesson-key-download = download the pack
page-lesson-key-stop = stop building
page-lesson-key-stand = back to the stand

## The lesson's pack

page-pack = Pack
page-pack-build = Build the pack
page-pack-build-again = Build again
page-pack-download = Download
page-pack-beginning = Beginning…
page-pack-waiting = Waiting for other work…
page-pack-reading = Reading the lesson…
page-pack-building = Building…
page-pack-step =
    { $step ->
        [engraving] Engraving { $done } / { $total }
        [sound] Sound { $done } / { $total }
        [documents] Pages to print { $done } / { $total }
        [page] Offline page { $done } / { $total }
        [overlays] Pictures { $done } / { $total }
        [clips] Clips { $done } / { $total }
       *[other] { $step } { $done } / { $total }
    }
page-pack-ready =
    { $count ->
        [one] Ready: { $count } file, { NUMBER($size, minimumFractionDigits: 1, maximumFractionDigits: 1) } MB.
       *[other] Ready: { $count } files, { NUMBER($size, minimumFractionDigits: 1, maximumFractionDigits: 1) } MB.
    }
page-pack-no-part = No part for { $player }: { $reason }.
page-pack-none = There is no pack yet: build it first.
page-pack-outdated = Changed since it was built.
page-pack-stopped = Stopped.

## Making a take

page-take-of = Take: { $title }
page-take-music = The line to be played
page-take-line =
    { $line ->
        [plain] The plain tune
       *[ornamented] With its ornaments
    }
page-take-panel = How to record
page-take-what = What to play
page-take-which = To be played
page-take-behind = Behind you
page-take-behind-click = Click
page-take-behind-nothing = Nothing
page-take-loudness = How loud it is
page-take-guide = Play the line along, softly
page-take-who = Who plays
page-take-plays = { $name } plays.
page-take-headphones = Wear headphones, so that the microphone hears you alone.
page-take-headphones-on = Headphones on?
page-take-choices = Choices
page-record = Record
page-take-record-button =
    { $state ->
        [starting] Wait…
        [recording] Stop
       *[idle] Record
    }
page-take-count-in = Count-in: { $beats }
page-take-bar = Bar { $bar } of { $last }
page-take-again = Record again
page-take-playback = Hear what was recorded
page-take-cancel = Stop listening
page-take-bring = Or bring a recording
page-take-choose-file = Choose a file
page-take-file-about = WAV, FLAC, MP3 or OGG, up to ten minutes. Any tempo will do.
page-take-earlier = Takes of this tune
page-take-ornaments = { $count } of { $total } ornaments
page-take-not-kept = not kept yet
page-take-sound-not-ready = The sound is not ready: wait a moment, and record again.
page-take-too-short = That was too short to be heard: play the tune, or a phrase of it.
page-take-clips =
    { $count ->
        [one] The recording clips in { $count } place: move back from the microphone next time.
       *[other] The recording clips in { $count } places: move back from the microphone next time.
    }
page-take-key-record = record, stop
page-take-key-microphone = try the microphone, close it
page-take-key-plain = play the plain tune
page-take-key-ornamented = play the ornamented line
page-take-key-band = with the band
page-take-key-click = with a click
page-microphone-which = Which one
page-microphone-try = Try the microphone
page-microphone-close = Close the microphone
page-microphone-closed = closed
page-microphone-not-encrypted = A browser gives no microphone to a page of another machine that is not encrypted: record on the machine itself, or bring a recording.
page-microphone-not-allowed = The microphone is not allowed to this page: allow it in the browser's address bar, or bring a recording.
page-microphone-none = No microphone is connected: connect one, or bring a recording.
page-microphone-taken = Another program holds the microphone: close that program, or bring a recording.
page-meter = Level of the microphone, in decibels under full
page-meter-words =
    { $state ->
        [clips] Too loud: it clips. Move back, or turn the input down
        [hot] Too near the top: move back a little
        [good] Good
       *[soft] Soft: come nearer, or turn the input up
    }
# For screen readers.
page-meter-spoken =
    { $state ->
        [clips] { $level } decibels, too loud: it clips. move back, or turn the input down
        [hot] { $level } decibels, too near the top: move back a little
        [good] { $level } decibels, good
       *[soft] { $level } decibels, soft: come nearer, or turn the input up
    }
page-delay = Delay
page-delay-about = What is played to you comes back a little later. That time is taken off, so that a note with the beat counts as on the beat.
page-delay-by-hand = Set by hand
page-delay-measure = Measure it
page-delay-guess = Guess it
page-delay-measure-how = To measure, hold an earpiece to the microphone: five clicks are played.
page-delay-how =
    { $how ->
        [guessed] { $ms } ms, guessed
        [measured] { $ms } ms, measured
       *[by-hand] { $ms } ms, set by hand
    }
page-delay-listening = Listening for five clicks…
# { $delay } is what page-delay-how says.
page-delay-found = The delay is { $delay }.
page-delay-unclear = The clicks did not come back clearly: hold an earpiece to the microphone, turn it up a little, and measure again.
page-sending-listening = Listening to it…
page-sending-listening-about = Notes, ornaments, pitch and time are looked for. This takes some seconds for each minute of music.
page-sending-failed = This can't be reported on
page-sending-no-recording = It is no recording: bring a WAV, FLAC, MP3 or OGG file.
page-sending-too-large = The file has { $size } MB; { $most } MB is the limit. Save it as MP3, or record one tune at a time.

## The report on a take

page-report-of = Take of { $title }
page-report-around = Around this take
page-report-another = Another take of it
page-report-on-stand = On the stand
page-report-short = In short
page-report-reading = Reading the report…
page-report-asked-at = asked at { $tempo }
page-report-seconds = { $seconds } s
page-report-minutes = { $minutes } min { $seconds } s
# { $where } comes from the server.
page-report-key = It sounds { $where }.
page-report-recording = The recording
page-report-along = Hear it with the band
page-report-whose = Whose take it is
page-report-keep = Keep it
page-report-kept = Kept on the shelf.
page-report-kept-now = Kept.
page-report-kept-of = Kept as a take of { $student }.
page-report-discard = Discard it
page-report-discard-sure = Discard this take?
page-report-discard-about = The recording and its report are deleted. That can't be undone.
page-report-discard-yes = Discard
page-report-print = Print it
page-report-printing = Setting the pages…
page-report-printed = Open the pages (PDF)
page-report-advice = To practise next
page-report-heard = As it was heard
page-report-heard-about = Your pitch over the printed line: through the middle of the note head is in tune with yourself, a staff space off is 50 cents.
page-report-passage = Time through
page-report-music = The printed line with the pitch that was heard
page-report-signs = Signs
page-report-note-kind =
    { $kind ->
        [right] a note of the tune
        [figure] in an ornament
        [wrong] another note
       *[added] an added note
    }
page-report-note = { $note }, { $cents } cents
page-report-status =
    { $status ->
        [done] came out
        [missed] not heard
       *[added] added by you
    }
page-report-ornament-status =
    { $status ->
        [done] ornament came out
        [missed] ornament not heard
       *[added] ornament added by you
    }
page-report-no-ornaments = No ornament was asked for, and none was heard.
page-report-came-out = { $count } of { $total } came out
page-ornaments-added = { $count } added
page-report-where = Where
page-report-outcome = What became of it
page-report-sure = How sure
page-report-hear = Hear { $name }, { $where }
page-report-slips = Notes other than written
# { $what } and { $where } come from the server: “E5 left out”, “bar 5, beat 2”.
page-report-slip = { $what } ({ $where })
page-report-time = Time
page-report-tempo = { $tempo } beats a minute
page-report-drift = From beginning to end
page-report-steady = steady
page-report-faster = { $percent } percent faster
page-report-slower = { $percent } percent slower
page-report-spread = Around your own beat
page-report-spread-within = notes lie within { $ms } ms
page-report-even = even
page-report-swing = { NUMBER($ratio, minimumFractionDigits: 2, maximumFractionDigits: 2) } to 1
page-report-behind-band = Against what was behind you
page-report-graces = Grace notes
page-report-on-beat = on it
page-report-late = { $ms } ms late
page-report-early = { $ms } ms early
page-report-beats = Where in the bar
page-report-pitch = Pitch and tone
page-report-your-a = Your A
page-report-tuning = { $hertz } Hz, { $cents } cents from 440
page-report-melody = Melody notes
page-report-right = { $count } of { $total } right
page-report-soft-loud = Soft to loud
page-report-decibels = { $range } dB
page-report-by-register = By register and note
page-report-cents = { $cents } cents

## Students and their progress

page-students-all = All students
page-students-nobody = Nobody in particular
page-students-none = Nobody yet. Takes can be kept without a name, too.
page-students-name = Name
page-student-new = A new student
page-student-name-what = First name or initials
page-students-takes =
    { $count ->
        [0] No takes kept
        [one] One take
       *[other] { $count } takes
    }
page-students-takes-last =
    { $count ->
        [one] One take, the last on { $day }
       *[other] { $count } takes, the last on { $day }
    }
page-students-rename = Another name
page-students-rename-name = Another name for { $name }
page-students-remove-sure = Remove this student?
# { $takes } is what page-students-removed-too says.
page-students-remove-about = “{ $name }” goes off the shelf, and { $takes }. That can't be undone.
page-students-removed-too =
    { $count ->
        [0] nothing else
        [one] one take with its recording too
       *[other] { $count } takes with their recordings too
    }
page-privacy = What is kept of a student
page-privacy-kept = A name, and the takes that you choose to keep: recording, report and date. Nothing else, and nothing leaves this computer: it is all in { $folder }, and in the exports that you make yourself.
page-privacy-ask = A first name or initials will do. Ask the student, and a child's parents, before you keep a recording. Removing a student deletes every take and recording of theirs.
page-takes = Takes
page-takes-all-of = All takes of { $student }
page-takes-of-nobody = Takes of nobody in particular
page-measure-pitch = Pitch
page-measure-timing = Timing
page-measure-ornaments = Ornaments
page-progress-around = Around these takes
page-progress-all-tunes = all tunes
page-progress-record = Record a take
page-progress-none = No takes yet: record one, and keep it.
page-progress-when = When
page-progress-line = Line
page-progress-right = Notes right
page-progress-keep = keep it?
page-progress-none-asked = none asked
page-progress-no-ornament = No ornament has been asked for yet.
page-progress-cents = { NUMBER($cents, minimumFractionDigits: 1, maximumFractionDigits: 1) } cents
page-progress-pitch-about = Cents from the middle of the note, as a median. Within 10 (shaded) is in tune to most ears.
page-progress-timing-about = How widely notes lie around the player's own beat. Within 35 ms (shaded) is steady.
page-progress-ornaments-about = How many of the asked ornaments came out. From four of five on (shaded) they are safe.
page-progress-point =
    { $unit ->
        [cents] { $tune }, { $day }: { $value } cents
        [ms] { $tune }, { $day }: { $value } ms
       *[percent] { $tune }, { $day }: { $value } %
    }
# A chart for screen readers: the latest value, and how it lies against the first.
page-progress-chart =
    { $measure }: { $value } { $unit ->
        [cents] cents
        [ms] ms
       *[percent] %
    } in the latest of { $count ->
        [one] { $count } take
       *[other] { $count } takes
    }{ $course ->
        [same] , as at first
        [better] , better than { $first } at first
        [worse] , less good than { $first } at first
       *[none] { "" }
    }
