"""What happened in a take, as a teacher would name it: a stop, a bar begun again, a forgotten key signature."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from fioritura.theory.pitch import Pitch
from fioritura.words import Message

__all__ = ["LEAST", "SURE", "Happening", "Kind", "Unit"]

SURE: Final = 0.8
"""What is less sure is said with a perhaps."""
LEAST: Final = 0.5
"""What is less sure is not said."""


class Kind(StrEnum):
    """What can happen in a take."""

    STOP = "stop"
    """The music stood still: `amount` seconds in all, `count` times."""
    AGAIN = "begun-again"
    """The player broke off, went back and played some bars twice."""
    SKIPPED = "skipped"
    """Whole bars were passed over."""
    PART = "part-only"
    """Only `bars` were played."""
    OCTAVE = "octave"
    """The take, or some bars of it, sound `amount` semitones (whole octaves) off."""
    TRANSPOSED = "transposed"
    """The take, or some bars of it, sound `amount` semitones off: another part was read, or from another note."""
    KEY = "key-signature"
    """Notes were played without the sharps or flats of the key signature."""
    WRONG = "wrong-notes"
    LEFT_OUT = "left-out"
    ADDED = "added"
    """Notes that are not in the tune, and are no ornaments."""
    RHYTHM = "rhythm"
    """Notes that came at another place of the bar than they are written."""
    TEMPO = "tempo"
    """The take was `amount` percent faster than asked (slower < 0)."""
    SPAN = "faster-or-slower-bars"
    """Some bars were `amount` percent faster than the others (slower < 0)."""
    DRIFT = "growing-tempo"
    """The end was `amount` percent faster than the beginning (slower < 0)."""
    LATE = "late"
    """Notes on one beat of the bar came `amount` milliseconds late (early < 0)."""
    UNSTEADY = "unsteady"
    """One note of three strays farther than `amount` milliseconds from the player's own beat."""
    SWUNG = "swung"
    """Eighths that are written even were swung, `amount` to 1."""
    EVEN = "even"
    """Eighths that were to swing were even, `amount` to 1."""
    TUNING = "tuning"
    """The whole take is `amount` cents sharp (flat < 0)."""
    NOTE = "note-out-of-tune"
    """One note of the player's is `amount` cents sharp (flat < 0) against all others."""
    ORNAMENTS = "ornaments-missed"
    """Asked ornaments of one technique that could not be heard."""
    GRACES = "long-grace-notes"
    UNEVEN = "uneven-figure"
    LEVEL = "level"


class Unit(StrEnum):
    """What `Happening.amount` counts."""

    SECONDS = "s"
    MILLISECONDS = "ms"
    SEMITONES = "semitones"
    CENTS = "cents"
    PERCENT = "percent"
    RATIO = "to 1"
    DECIBELS = "dB"


@dataclass(frozen=True, slots=True)
class Happening:
    """One thing that happened, its causes and effects taken together.

    `words` say it in one sentence, `cure` what to do about it (its form ``practice``; without a form a title). `weight`
    is how much it matters, `confidence` (0 to 1) how sure it is: of those at 0.8 four in five are right. `bars` are the
    bars that it touches, the one to begin with first; `onset_sec` is where it is first heard in the recording. `count` says
    how many notes, stops or ornaments, `amount` how much, in `unit`. `technique` and `note` (as the player reads it) are
    what it is about, empty and None where it is about neither.
    """

    kind: Kind
    words: Message
    cure: Message
    weight: float
    confidence: float
    bars: tuple[int, ...] = ()
    onset_sec: float | None = None
    count: int = 1
    amount: float | None = None
    unit: Unit | None = None
    technique: str = ""
    note: Pitch | None = None
