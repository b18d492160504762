"""Standard MIDI files: read."""
