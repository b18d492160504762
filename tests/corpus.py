"""Files of music21's corpus."""

from pathlib import Path

from fioritura.notation.musicxml.file import unpacked


def content(path: Path) -> bytes:
    """The MusicXML of a plain or compressed score."""
    data = path.read_bytes()
    return unpacked(data)[0] if data.startswith(b"PK") else data
