"""Listening: from a recording to notes, aligned spans and named figures."""
