# What a teacher gives out: editions of a tune, practice versions, the lesson pack with its offline page.

# Names of things that stand on every sheet.

tune-untitled = Untitled
line-plain = plain
line-ornamented = ornamented
idiom-name =
    { $idiom ->
        [folk] folk
        [blues] blues
        [irish] Irish
       *[jazz] jazz
    }
lesson-level = Level { $level }
bars-span = bars { $first }–{ $last }
bars-from-pickup = pickup to bar { $last }

# Editions and practice versions.

edition-line = level { $level }, { idiom-name }
edition-comparison = plain and ornamented, level { $level }, { idiom-name }
edition-plain-sound = { CAPITAL($instrument) }, plain
chorus-head = head
chorus-last-head = last head
chorus-solo = solo { $number }

# The handout.

handout-subtitle = A lesson in ornaments · level { $level }, { idiom-name }
handout-contents = In this lesson
handout-plain = The plain tune
handout-notes = From your teacher
handout-techniques = The techniques, one by one
handout-techniques-intro = Each example takes a phrase of the tune: plain above, ornamented below, the figure on a grey ground. Play the plain phrase until it sings, then the ornamented one, slowly; then both in turn.
handout-others = More that this tune offers
handout-others-intro = The performance does not use these; the tune has places for them. They are for later, or for the student who asks for more.
handout-how = How to play it
handout-when = When it fits
handout-fault = A common fault
handout-cure = The cure
handout-summary = All techniques at a glance
handout-summary-intro = Places: how many notes of this tune offer the technique. Used: the bars of the performance that have it.
handout-column-technique = Technique
handout-column-label = In the music
handout-column-level = Level
handout-column-what = What it is
handout-column-places = Places
handout-column-used = Used
handout-performance = The performance
handout-plan = Practice plan
handout-plan-each = Each session, about twenty-five minutes
handout-step-tone = Long notes and the scale of { $key }, slurred: five minutes.
handout-step-plain = The plain tune once by heart, with the backing: three minutes.
handout-step-technique = The techniques of the session, each in its example: slow, at tempo, in the tune: ten minutes.
handout-step-place = One hard place, as below: four minutes. Stop sooner if a finger or the lip tires.
handout-step-play = The performance with the backing at the session’s tempo: three minutes. Record it and listen once.
handout-sessions = Session by session
handout-session-session = Session
handout-session-new = New
handout-session-again = Again
handout-session-tempo = Tempo
handout-session-done = Done
handout-again-all = all of them
handout-hard = The hard places
handout-care = Take care

# Parts.

part-octave-lower =
    { $octaves ->
        [one] Played an octave lower than this instrument reads a lead sheet by custom, to lie in its range.
       *[other] Played { $octaves } octaves lower than this instrument reads a lead sheet by custom, to lie in its range.
    }
part-octave-higher =
    { $octaves ->
        [one] Played an octave higher than this instrument reads a lead sheet by custom, to lie in its range.
       *[other] Played { $octaves } octaves higher than this instrument reads a lead sheet by custom, to lie in its range.
    }
part-without-octave = no octave of this instrument holds all of the line

# Titles of the sound files.

sound-backing = Backing
sound-performance = Performance
sound-plain = Plain tune
sound-ladder = Performance at { $tempo } beats a minute
sound-slow = { CAPITAL($technique) }, slow
sound-level = { $title }, level { $level }

# The exercise sheets.

exercises-title = Exercises
exercises-intro = Each hard place of the performance on a page of its own: alone, in rhythms, in all keys, and step by step to the goal tempo. Ten minutes on one place are enough; then play something easy.
exercises-drill-isolated = Alone: eight times without a slip.
exercises-drill-even = Even, slurred, then tongued.
exercises-drill-long-short = Long, short.
exercises-drill-short-long = Short, long.
exercises-drill-triplets = In triplets.
exercises-drill-dotted = In dotted groups.
exercises-keys = Around the keys, in fourths. One key a day is enough; say its name before you play.
exercises-tempos = Step by step to the goal: tick a tempo when it was clean three times running.
exercises-reading = Sight-reading
exercises-reading-intro = The same tune with other ornaments. Look through it for half a minute, hear it inside, then play without stopping; do not practise it.
exercises-reading-variant = Variant { $number }
exercises-turn = Your turn
exercises-turn-intro = Copy the phrase onto the empty staff and write the ornament in. Play what you wrote, then change it until you like it.
exercises-turn-task = { CAPITAL($bar) }, { $where }: { $technique }.
exercises-yours = your line
exercises-answers = Suggested answers
exercises-answers-intro = One way of several. If yours sounds better in the tune, keep yours.

# The plan of the weeks.

course-title = Course plan
course-intro = One tune, five levels, { $weeks } weeks. Each level is a sheet and a recording in the folder “{ $folder }”; go on when its goal is met, not when the week is over.
course-column-week = Week
course-column-level = Level
course-column-new = New
course-column-tempo = Tempo
course-column-files = Files
course-column-done = Done
course-again = nothing new: everything again, by heart
course-goals = Goals
course-goal = Goal
course-goal-1 = The tune by heart, with a few grace notes that arrive in time and let the main note sing.
course-goal-2 = A second colour: neighbours, passing notes and bends that follow the line without hurrying it.
course-goal-3 = Turns, approaches and short runs in even rhythm; listeners still hum the tune along.
course-goal-4 = Longer figures over the bar line, phrased on one breath, loud and soft.
course-goal-5 = A performance of your own: choose among all figures as you play and tell the tune a new way each time.
course-check = Ready for the next level?
course-check-1 = I play this level at the goal tempo with the backing, without stopping.
course-check-2 = I can sing each ornament before I play it.
course-check-3 = A listener recognises the tune at once.
course-check-4 = Nothing hurts: hands, lip and shoulders are free.

# The running order of a lesson on video.

order-title = { $title }: running order
order-intro = Goal tempo { $tempo }. Times are for talking at ease and playing each example slow and at tempo.
order-quiet = Check the sound: speakers low, headphones off, phone silent.
order-play = Play { $file }.
order-technique = { CAPITAL($technique) } ({ $clock }, about { $seconds } s)
order-say = Say: { $text }
order-listen = Play: { $files }
order-show = Show: { $files }
order-warn = Warn: { $text }
order-end = To finish ({ $clock })
order-homework = Name the homework: the first session of the practice plan.

# The page that works offline.

offline-skip = To the music
offline-desk = Tempo and sound
offline-tempo = Tempo
offline-loop = Loop
offline-volume = Volume
offline-stop = Stop
offline-plain = Plain
offline-ornamented = Ornamented
offline-both = Both in turn
offline-play = { $what }: { $score }
offline-playing = Playing: { $what }, { $score }
offline-stopped = Stopped.
offline-score = { CAPITAL($technique) }, { $place }
offline-system = { $score }, system { $number }
offline-intro = Choose a tempo above, then play the plain phrase, the ornamented one, or both in turn; the marker shows where the music is. A bar of clicks counts in. Escape stops.

# What can be wrong.

no-such-naming = Notes can’t be named “{ $given }”: choose { LIST($known, "or") }.
no-such-section = No section “{ $given }” in a pack: choose among { $known }.
no-such-audio = No kind of sound file “{ $given }”: choose { LIST($known, "or") }.
no-such-format = No format “{ $given }”: choose among { $known }.
no-such-phrase = “{ $given }” is no phrase: give their numbers from 0.
no-such-override = No text “{ $given }” can be put in place of the usual: choose among { $known }.
override-too-long =
    “{ $name }” has { $letters } letters; { $limit } is the limit: shorten it.
override-bad-line = Line { $line } of your words, “{ $text }”: write “name: words” with one of the names { $known }.
override-not-text = { $file } is not UTF-8 text: save it as plain text in UTF-8.
lesson-plan-damaged = This is no plan of a lesson: make it anew.
lesson-without-figures = No figure of the chosen techniques lies in the chosen phrases: choose another technique or phrase.
manifest-damaged = { $file } is no manifest of a lesson pack: name the file { $name } in a pack.
manifest-other-file = { $file } is not the file that the pack was made from: restore it, or name the tune itself.
times-out-of-reach = Playing it { $given } times is out of reach: give { $low } to { $high }.
key-outside-instrument = In { FORM($key, "inline") } the line lies outside the instrument in every octave ({ $instrument }): choose another key, another instrument or an easier level.
clips-need-library = Clips need the package { $package } ({ $error }): install it, or make the pack without clips.
clip-not-encoded = The clip { $file } can’t be encoded ({ $error }): make the pack without clips.
worker-ended = A worker process was ended, perhaps for want of memory: try again with fewer at once.
