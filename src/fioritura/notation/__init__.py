"""Notation: files read and written, staves engraved, pages set."""
