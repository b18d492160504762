# What the page's server says.

served-at = Fioritura is at { $address } (stop it with Ctrl-C). Your shelf: { $shelf }
served-token =
    Only this machine can reach it, and only who has the token: { $token }
served-beyond =
    It listens beyond this machine. Whoever can reach it and has the token below can see, change and remove everything on
    your shelf. Nothing that goes over the network is encrypted, the token included: do this only in a network that you
    trust. Takes are recorded on this machine only, as browsers lend the microphone to no page that is not encrypted.
    Token: { $token }
no-listening-address = “{ $given }” is no address to listen on: give one in digits, such as 192.168.1.20, or 0.0.0.0 for all.
port-unusable = Port { $port } of { $address } can't be used ({ $reason }): take another one.
no-page-language = The page does not speak “{ $given }”: choose { LIST($known, "or") }.
token-too-short = A token of { $count } letters is too short: { $limit } is the least.
token-first = Give the token first: open { $address }, or send it as a bearer token.
other-host = This server answers to its own address only: open the address that it printed when it was started.
other-site = The request comes from another site: use the page itself.
request-too-large = { $size } bytes are too many: { $limit } is the limit.
request-unfit =
    { $kind ->
        [missing] { $place } is missing: give it.
        [greater_than_equal] { $place } is too small: { $limit } is the least.
        [less_than_equal] { $place } is too large: { $limit } is the most.
        [string_too_long] { $place } is too long: { $limit } letters are the most.
        [string_too_short] { $place } is too short: { $limit } letters are the least.
        [too_long] { $place } has too many entries: { $limit } are the most.
        [too_short] { $place } has too few entries: { $limit } are the least.
        [extra_forbidden] { $place } is unknown here: leave it out.
       *[other] { $place } is of a kind that is not taken here: see /api/openapi.json.
    }
no-such-address = There is nothing at this address.
address-refused = This can't be done at this address (HTTP { $status }).
upload-problem = { $file }: { $problem }
upload-empty = The file is empty: export or save it again.
no-such-tune-in-book =
    { $count ->
        [one] The book has { $count } tune, and no tune { $given }: choose another.
       *[other] The book has { $count } tunes, and no tune { $given }: choose another.
    }
tune-facts-unfit = What it says of a tune, or of how it is read, is of no such kind.
no-tune-yet = There is no tune yet: begin with X:1 and end the header with K:.
chords-inferred = The file has no chord symbols; those in parentheses were inferred.
arrangement-first = first
arrangement-copy = copy
staff-name =
    { $line ->
        [plain] plain
        [ornamented] ornamented
        [this] this one
       *[other] other
    }
no-figure-here = There is no figure “{ $given }” here: look at the arrangement again.
replace-needs-other = To replace a figure name the other one, too.
bend-needs-note = To raise or lower a note say which one.
no-such-sound = There is no such sound any more: ask what there is to hear again.
engraver-ended = The engraver's process was ended, perhaps for want of memory: try again.
# What was done to an arrangement; it stands after “Undo:”.
step-decided =
    { $kind ->
        [keep] kept “{ $figure }”
        [release] released “{ $figure }”
        [leave-out] left out “{ $figure }”
        [replace] replaced “{ $figure }”
        [raise] raised a note of “{ $figure }”
       *[lower] lowered a note of “{ $figure }”
    }
step-setting = changed the setting
too-many-jobs = { $waiting } jobs are waiting: try again when some of them are done.
no-such-job = There is no such job any more: start it again.
job-without-file = The job has made no file: see how it stands.
job-files =
    { $count ->
        [one] { $count } file
       *[other] { $count } files
    }
job-too-long =
    { $minutes ->
        [one] The work took more than { $minutes } minute: ask for less at once.
       *[other] The work took more than { $minutes } minutes: ask for less at once.
    }
job-failed = The work failed ({ $reason }): the server's own output says where.
job-died =
    { $how ->
        [signal] The worker process ended with signal { $number }, perhaps for want of memory: try again, or ask for less at once.
       *[code] The worker process ended with code { $number }, perhaps for want of memory: try again, or ask for less at once.
    }
plan-damaged =
    { $count ->
        [one] The plan of a lesson is damaged ({ $count } fault).
       *[other] The plan of a lesson is damaged ({ $count } faults).
    }
no-such-passage =
    { $count ->
        [one] The take has { $count } passage, and no passage { $given }.
       *[other] The take has { $count } passages, and no passage { $given }.
    }
report-damaged =
    { $count ->
        [one] The report is damaged ({ $count } fault): record the take again.
       *[other] The report is damaged ({ $count } faults): record the take again.
    }
take-facts-damaged =
    { $count ->
        [one] The facts of a take are damaged ({ $count } fault).
       *[other] The facts of a take are damaged ({ $count } faults).
    }
recording-gone = The recording is no longer in { $folder }: put { $name } back, or discard the take.
beat-in-bar = bar { $bar }, beat { NUMBER($beat, maximumFractionDigits: 2) }
sentence = { CAPITAL($words) }
