"""The ground: pitch, key, metre, chord and scale as pure values; no input or output."""
