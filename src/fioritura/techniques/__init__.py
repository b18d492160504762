"""Techniques of ornament: rewriting rules over a melody, one file a family, gathered by `table`."""
