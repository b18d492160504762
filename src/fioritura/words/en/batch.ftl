cluster-not-installed = A cluster needs dask.distributed: pip install "fioritura[cluster]".
no-scheduler = No scheduler answers at { $address } ({ $reason }): start one with “dask scheduler”.
no-cluster-worker = The scheduler at { $address } has no worker: start some with “dask worker { $address }”.
scheduler-gone = The scheduler at { $address } is gone: start it again and run the same command to go on.
worker-lacks = A worker lacks { $name }: install Fioritura on all machines.
worker-other-version = A worker runs another version of Fioritura or of its tools: install the same on all machines.
worker-other-soundfont = A worker plays with another soundfont than { $name }: give all machines the same file.
batch-nothing-there = { $path } does not exist: name a folder of tunes, or a book.
batch-no-tune = There is no tune in { $path }: a tune's file ends in { LIST($known, "or") }.
batch-unwritable = { $path } can't be written ({ $reason }): check space and rights, then run the same again.
batch-busy = Another batch is at work in { $path }: wait for it, or name another folder.
takes-no-folder = { $path } is no folder of takes: name the folder of the recordings.
takes-no-recording = There is no recording in { $path }: a take ends in { LIST($known, "or") }.
batch-kind = thing to make
batch-format = format
batch-audio = audio format
batch-section = section of a pack
batch-level = level
batch-asked = level asked of takes
batch-none-named = No { $what } is named: choose among { $known }.
batch-unknown = No { $what } “{ $given }”: choose among { $known }.
batch-over-time = it took more than { $seconds } s and was given up: try it alone, or give it more time
batch-fault = a fault of the program ({ $kind }: { $reason }): please report it with the tune
batch-moved = { $octaves ->
    [-1] Moved an octave down, so that all notes lie on the instrument.
    [1] Moved an octave up, so that all notes lie on the instrument.
   *[other] Moved by { $octaves } octaves, so that all notes lie on the instrument.
}
