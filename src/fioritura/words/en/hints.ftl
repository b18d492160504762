hint-key-outside-instrument = --key chooses the key, --player the instrument, --level how hard the line is
hint-clips-need-library = leave out --clips
hint-clip-not-encoded = leave out --clips
