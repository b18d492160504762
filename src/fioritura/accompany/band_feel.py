"""What a feel of the band is: its id, the metres it suits, and how each part plays it.

The feels themselves are in `jazz`, `even` and `dances`; their patterns are bars of text (see `grid`): eight signs a bar
of four are eighths, sixteen are sixteenths, twelve are triplets. All are common practice.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from fioritura.accompany.bass import BassStyle
from fioritura.accompany.chords import CompStyle
from fioritura.accompany.drums import DrumStyle
from fioritura.accompany.form import Ending
from fioritura.accompany.harmony import beat_lengths
from fioritura.theory.metre import Metre
from fioritura.tune import Feel
from fioritura.words import Message, message

__all__ = ["ANY", "THREE", "BandFeel", "Levels", "Subdivision"]

Subdivision = Literal["straight", "swing", "triplet"]
"""How two written eighths sound: even, by the drummer's ratio at the tempo, or as the outer notes of a triplet."""

ACOUSTIC_BASS: Final = 33
FINGERED_BASS: Final = 34
PIANO: Final = 1
ELECTRIC_PIANO: Final = 5
ORGAN: Final = 17
ACCORDION: Final = 22
NYLON_GUITAR: Final = 25
STEEL_GUITAR: Final = 26
JAZZ_KIT: Final = 33
BRUSH_KIT: Final = 41
FUNK_KIT: Final = 1

_MOST_BEATS: Final = 64
"""A bar of 32 halves, the most that a metre may have, is walked in quarters."""

ANY: Final = frozenset(range(1, _MOST_BEATS + 1))
THREE: Final = frozenset(beats for beats in ANY if beats % 3 == 0)
NOT_ODD_THREES: Final = frozenset(beats for beats in ANY if beats % 6 != 3)


@dataclass(frozen=True, slots=True)
class Levels:
    """How loud each part is against the melody, in loudness units."""

    bass: float = -5.0
    chords: float = -7.5
    drums: float = -6.5
    click: float = -10.0


@dataclass(frozen=True, slots=True)
class BandFeel:
    """One feel: its id, the metres it suits by beats in the bar, and its parts."""

    id: str
    subdivision: Subdivision
    bass: BassStyle
    bass_program: int
    chords: CompStyle
    drums: DrumStyle
    levels: Levels = Levels()
    ending: Ending = "straight"
    is_compound: bool | None = False
    """Whether it is played in compound time; None where in both."""

    beats: frozenset[int] = NOT_ODD_THREES

    @property
    def name(self) -> Message:
        """What it is called; form ``text``: what is played."""
        return message(f"feel-{self.id}")

    @property
    def line_feel(self) -> Feel:
        """How a melody goes with it."""
        return "straight" if self.subdivision == "straight" else "swing"

    def suits(self, metre: Metre) -> bool:
        """True when the feel can be played in a metre."""
        return self.is_compound in (None, metre.is_compound) and len(beat_lengths(metre)) in self.beats
