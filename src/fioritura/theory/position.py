"""Where in a bar something stands, as a musician says it: the downbeat, beat 3, the second triplet of beat 1."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal

from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH, THIRTYSECOND, Metre
from fioritura.words import Message, message

__all__ = ["Position", "Subdivision", "position_in", "position_of_beat"]

Subdivision = Literal[
    "beat", "offbeat", "half", "quarter", "eighth", "sixteenth", "thirtysecond", "triplet", "quintuplet", "sextuplet",
    "septuplet", "after",
]  # fmt: skip
"""What a place is counted in: whole beats, the off-beat in the middle of one, notes of a value or of a tuplet that fills
the beat; `after` is anything between them."""

_VALUES: Final[tuple[tuple[Subdivision, int], ...]] = (
    ("half", HALF),
    ("quarter", QUARTER),
    ("eighth", EIGHTH),
    ("sixteenth", SIXTEENTH),
    ("thirtysecond", THIRTYSECOND),
)
_TUPLETS: Final[tuple[tuple[Subdivision, int], ...]] = (
    ("triplet", 3),
    ("quintuplet", 5),
    ("sextuplet", 6),
    ("septuplet", 7),
)


@dataclass(frozen=True, slots=True)
class Position:
    """A place in a bar: the `ordinal`-th `subdivision` of beat `beat`, all counted from 1.

    `bar` is the number that is printed at the bar; in a pickup (`is_pickup`) the beats count as in a full bar.

    >>> from fioritura.theory.metre import Metre, QUARTER
    >>> str(position_in(Metre(4, 4), QUARTER + QUARTER // 3).message)
    'on the second triplet of beat 2'
    """

    bar: int
    beat: int
    subdivision: Subdivision = "beat"
    ordinal: int = 1
    is_pickup: bool = False

    @property
    def message(self) -> Message:
        """The place in its bar: "on beat 3"; form ``name`` without the preposition, ``full`` with the bar."""
        return _message_of(self)

    @property
    def bar_message(self) -> Message:
        """The bar: "bar 5", "the pickup"; form ``at``: "in bar 5"."""
        return message("pickup") if self.is_pickup else message("bar-name", number=self.bar)


@lru_cache(maxsize=4096)
def _message_of(place: Position) -> Message:
    is_downbeat = place.beat == 1 and place.subdivision == "beat" and not place.is_pickup
    kind = "downbeat" if is_downbeat else place.subdivision
    ordinal = message("ordinal", n=place.ordinal)
    return message("position", bar=place.bar_message, beat=place.beat, kind=kind, n=place.ordinal, ordinal=ordinal)


@lru_cache(maxsize=16384)
def position_in(metre: Metre, offset_ticks: int, bar: int = 0, is_pickup: bool = False) -> Position:
    """The place `offset_ticks` after the start of a full bar of a metre.

    A bar that is too long goes on in beats of the usual length.
    """
    groups = metre.groups_ticks
    start, beat = 0, 1
    while offset_ticks >= start + (length := groups[beat - 1] if beat <= len(groups) else metre.beat_ticks):
        start, beat = start + length, beat + 1
    subdivision, ordinal = _subdivided(offset_ticks - start, length)
    return Position(bar, beat, subdivision, ordinal, is_pickup)


def position_of_beat(metre: Metre, beat: float, bar: int = 0) -> Position:
    """The place of a beat number (from 1; half past the second beat is 2.5) in a bar; bar 0 is a pickup."""
    number = max(int(beat), 1)
    groups = metre.groups_ticks
    starts = sum(groups[: number - 1]) + metre.beat_ticks * max(0, number - 1 - len(groups))
    length = groups[number - 1] if number <= len(groups) else metre.beat_ticks
    return position_in(metre, starts + round((beat - number) * length), bar, is_pickup=bar == 0)


def _subdivided(inside_ticks: int, beat_ticks: int) -> tuple[Subdivision, int]:
    if inside_ticks == 0:
        return "beat", 1
    if 2 * inside_ticks == beat_ticks and beat_ticks in (HALF, QUARTER, EIGHTH):
        return "offbeat", 2
    for name, value in _VALUES:
        if value < beat_ticks and inside_ticks % value == 0 and beat_ticks % value == 0:
            return name, inside_ticks // value + 1
    for name, count in _TUPLETS:
        if inside_ticks * count % beat_ticks == 0:
            return name, inside_ticks * count // beat_ticks + 1
    return "after", 1
