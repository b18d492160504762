no-shelf-archive = This is no archive of a shelf: choose one that the shelf page has given out.
archive-version = The archive has version { $given }; { $known } can be read: update Fioritura.
archive-damaged = The archive is damaged ({ $reason }): export it again.
archive-no-steps = steps are missing
archive-no-name = a student has no name
archive-no-arrangement = a take's arrangement is missing
archive-named-twice = a file is named twice
archive-words-long = a text is too long
archive-bad-content = The archive holds a damaged arrangement, report or plan ({ $reason }): export it again.
archive-too-large = The archive holds { $files } files of { $size } bytes; { $limit } is the limit: export fewer tunes.
archive-entry-too-large = { $name } in the archive is larger than { $limit } bytes: export it again.
shelf-folder-unmade = { $path } can't be made ({ $reason }): name another folder for the shelf.
shelf-unopened = { $path } can't be opened ({ $reason }): move it away or name another folder.
shelf-unwritable = The shelf { $path } can't be written ({ $reason }): check space and rights.
not-on-shelf = { $kind ->
    [tune] There is no tune { $number } on the shelf: choose one of those it lists.
    [arrangement] There is no arrangement { $number } on the shelf: choose one of those it lists.
    [student] There is no student { $number } on the shelf: choose one of those it lists.
    [take] There is no take { $number } on the shelf: choose one of those it lists.
    [lesson] There is no lesson { $number } on the shelf: choose one of those it lists.
   *[other] There is nothing of the number { $number } on the shelf: choose one of those it lists.
}
shelf-full-of-lessons = The shelf holds { $limit } lessons, which is the limit: remove some first.
lesson-changed-elsewhere = The lesson was changed elsewhere (revision { $stands }, not { $given }): look at it again.
recording-unreadable = This is no recording that can be read ({ $reason }): save it as WAV, FLAC, MP3 or OGG.
recording-type = A recording of type { $given } is not taken: save it as WAV, FLAC, MP3 or OGG.
recording-rate = A rate of { $given } Hz is outside { $low } to { $high } Hz: save it at 44100 Hz.
recording-channels = { $given } channels are too many: save it in mono or stereo.
recording-too-short = The recording lasts { $seconds } seconds: record the tune, or a phrase of it.
recording-too-long = The recording is longer than { $limit } minutes: record one tune at a time.
shelf-version = The shelf has version { $given }; { $known } can be read: update Fioritura, or name another folder.
tune-needs-title = A tune needs a title: give it one.
only-arrangement = It is the only arrangement of its tune: remove the tune, or copy it first.
nothing-to-undo = There is nothing to undo here.
nothing-to-redo = There is nothing to redo here.
arrangement-changed-elsewhere = The arrangement was changed elsewhere (step { $stands }, not { $given }): look at it again.
no-such-step = Arrangement { $arrangement } has no step { $step }: look at it again.
too-many-tags = { $count } tags are too many: { $limit } is the limit.
tag-too-long = The tag “{ $tag }…” has { $count } letters: { $limit } is the limit.
shelf-full-of-students = The shelf holds { $limit } students, which is the limit: remove some first.
student-needs-name = A student needs a name: a first name or initials will do.
name-too-long = The name has { $count } letters: { $limit } is the limit.
student-name-taken = There is a student “{ $name }” already: add an initial to tell them apart.
take-gone = There is no such take on the shelf any more: choose one of those it lists.
