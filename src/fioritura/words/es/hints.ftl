hint-key-outside-instrument = --key elige la tonalidad, --player el instrumento, --level la dificultad de la línea
hint-clips-need-library = omita --clips
hint-clip-not-encoded = omita --clips
