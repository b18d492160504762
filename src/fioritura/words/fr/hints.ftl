hint-key-outside-instrument = --key choisit le ton, --player l’instrument, --level la difficulté de la ligne
hint-clips-need-library = omettez --clips
hint-clip-not-encoded = omettez --clips
