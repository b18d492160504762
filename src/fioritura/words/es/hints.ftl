hint-every-technique-refused = quite una de --without
hint-no-such-figure = `fioritura spots` las enumera; también están en figures.json
hint-octave-too-far = --octave admite de -3 a 3
hint-beats-out-of-reach = --tempo admite pulsos por minuto
hint-notes-out-of-range = --octave la mueve, --player elige el instrumento
hint-octave-by-custom = --octave 0 conserva su propia altura
