hint-every-technique-refused = retirez-en une de --without
hint-no-such-figure = `fioritura spots` en donne la liste ; elles sont aussi dans figures.json
hint-octave-too-far = --octave accepte de -3 à 3
hint-beats-out-of-reach = --tempo prend des battements par minute
hint-notes-out-of-range = --octave le déplace, --player choisit l’instrument
hint-octave-by-custom = --octave 0 garde sa propre hauteur
