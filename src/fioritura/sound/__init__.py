"""Sound: the one place that knows seconds; performing, synthesis, loudness and encoding."""
