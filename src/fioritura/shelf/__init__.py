"""The shelf: a teacher's tunes and arrangements in one SQLite file."""
