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

_DIVISIONS: Final = (1, 2, 3, 4, 6, 8, 12, 5, 7, 16, 24)
"""Into how many parts a beat is divided in print, the simplest first."""
_ROUNDED: Final = 0.0006
"""How far a beat number rounded to three places lies from its place."""


@dataclass(frozen=True, slots=True)
class Position:
    """A place in a bar: the `ordinal`-th `subdivision` of beat `beat`, all counted from 1.

    `bar` is the number that is printed at the bar; in a pickup (`is_pickup`) the beats count as in a full bar.

    Examples:
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

    Examples:
        >>> str(position_in(Metre.parse("4/4"), 3 * QUARTER // 2, bar=5).message)
        'on the off-beat after 2'
        >>> position_in(Metre.parse("6/8"), 3 * QUARTER // 2).beat
        2
    """
    groups = metre.groups_ticks
    start, beat = 0, 1
    while offset_ticks >= start + (length := groups[beat - 1] if beat <= len(groups) else metre.beat_ticks):
        start, beat = start + length, beat + 1
    subdivision, ordinal = _subdivided(offset_ticks - start, length)
    return Position(bar, beat, subdivision, ordinal, is_pickup)


def position_of_beat(metre: Metre, beat: float, bar: int = 0) -> Position:
    """The written place nearest to a beat number (from 1; half past the second beat is 2.5) in a bar; bar 0 is a pickup.

    A number that a place was rounded to (1.333 for the second triplet of beat 1) is that place; what was played between
    the places goes to the nearest sixteenth or triplet.

    Examples:
        >>> str(position_of_beat(Metre.parse("4/4"), 2.5, bar=1).message)
        'on the off-beat after 2'
        >>> str(position_of_beat(Metre.parse("4/4"), 1.333, bar=1).message)
        'on the second triplet of beat 1'
        >>> str(position_of_beat(Metre.parse("4/4"), 3.98, bar=1).message)
        'on beat 4'
    """
    number = max(int(beat), 1)
    groups = metre.groups_ticks
    starts = sum(groups[: number - 1]) + metre.beat_ticks * max(0, number - 1 - len(groups))
    length = groups[number - 1] if number <= len(groups) else metre.beat_ticks
    inside = _snapped(max(beat - number, 0.0), length, is_last=number >= len(groups))
    return position_in(metre, starts + inside, bar, is_pickup=bar == 0)


def _snapped(share: float, beat_ticks: int, is_last: bool) -> int:
    """Ticks within a beat of the place that a share of it means; within the last beat of a bar, of one before its end."""
    for count in _DIVISIONS:
        part = round(share * count)
        if abs(share - part / count) <= _ROUNDED and part * beat_ticks % count == 0:
            return part * beat_ticks // count
    counts = (6,) if beat_ticks % (3 * EIGHTH) == 0 else (4, 3)
    places = {part * beat_ticks // count for count in counts for part in range(count + (not is_last))}
    return min(places, key=lambda place: (abs(place - share * beat_ticks), place))


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
