"""Accompanying: bass, chords and drums from chord symbols and feel."""
