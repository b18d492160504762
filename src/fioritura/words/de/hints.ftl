hint-every-technique-refused = eine aus --without weglassen
hint-no-such-figure = `fioritura spots` listet sie auf; sie stehen auch in figures.json
hint-octave-too-far = --octave nimmt -3 bis 3
hint-beats-out-of-reach = --tempo nimmt Schläge in der Minute
hint-notes-out-of-range = --octave versetzt es, --player wählt das Instrument
hint-octave-by-custom = --octave 0 behält die eigene Lage
