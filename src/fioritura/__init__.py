"""Fioritura: ornaments for a plain tune, chosen by hand-rules, playable, and turned into teaching."""
