hint-every-technique-refused = leave one out of --without
hint-no-such-figure = list those there are with `fioritura spots`, or see figures.json
hint-octave-too-far = --octave takes -3 to 3
hint-beats-out-of-reach = --tempo takes beats a minute
hint-notes-out-of-range = --octave moves it, --player chooses the instrument
hint-octave-by-custom = --octave 0 keeps the tune’s own
