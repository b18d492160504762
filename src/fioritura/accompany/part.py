"""What a band part is: notes in ticks, before anyone has played them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["BandNote", "BandPart", "PartName"]

PartName = Literal["bass", "chords", "drums", "click"]


@dataclass(frozen=True, slots=True)
class BandNote:
    """One note of the band: a MIDI number (for drums a General MIDI drum key) and 0-1 for how loud."""

    onset_ticks: int
    duration_ticks: int
    midi: int
    loudness: float

    @property
    def end_ticks(self) -> int:
        """Where the note stops."""
        return self.onset_ticks + self.duration_ticks


@dataclass(frozen=True, slots=True)
class BandPart:
    """One part in order of onset. `program` counts from 1; for drums it is the kit (1 standard, 41 brushes).

    `level_lu` is how loud it should be against the melody, in loudness units. With `is_strummed` the notes of a chord are struck one after the other, the lowest first.
    """

    name: PartName
    program: int
    notes: tuple[BandNote, ...]
    level_lu: float = 0.0
    is_strummed: bool = False

    @property
    def is_drums(self) -> bool:
        """True for the part of drum keys."""
        return self.name == "drums"
