hint-key-outside-instrument = --key wählt die Tonart, --player das Instrument, --level wie schwer die Linie ist
hint-clips-need-library = --clips weglassen
hint-clip-not-encoded = --clips weglassen
