"""Musical time: ticks, metres and the weight of each place in the bar.

All musical time is an exact integer count of ticks, 1680 to the quarter note, so that sixty-fourths, triplets,
quintuplets and septuplets are whole numbers. A name that carries a time says its unit (`onset_ticks`).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Final

from fioritura.errors import TuneError

__all__ = ["BEAT_SIGNS", "EIGHTH", "HALF", "QUARTER", "SIXTEENTH", "THIRTYSECOND", "WHOLE", "Metre"]

QUARTER: Final = 1680
WHOLE: Final = 4 * QUARTER
HALF: Final = 2 * QUARTER
EIGHTH: Final = QUARTER // 2
SIXTEENTH: Final = QUARTER // 4
THIRTYSECOND: Final = QUARTER // 8

_METRE: Final = re.compile(r"([0-9]{1,2}(?:\+[0-9]{1,2})*)/(1|2|4|8|16|32)")
BEAT_SIGNS: Final = {
    1: "\N{MUSICAL SYMBOL WHOLE NOTE}",
    2: "\N{MUSICAL SYMBOL HALF NOTE}",
    4: "♩",
    8: "♪",
    16: "\N{MUSICAL SYMBOL SIXTEENTH NOTE}",
}
"""The notes of tempo marks by note value (4 a quarter)."""

_IRREGULAR_GROUPS: Final = {5: (3, 2), 7: (2, 2, 3), 8: (3, 3, 2), 10: (3, 3, 2, 2), 11: (2, 2, 3, 2, 2)}


@dataclass(frozen=True, slots=True)
class Metre:
    """A time signature: `beats` over `unit` (a power of two)."""

    beats: int
    unit: int

    @classmethod
    def parse(cls, text: str) -> Metre:
        """Read ``"4/4"``, ``"6/8"``, ``"C"`` (4/4) or ``"C|"`` (2/2).

        Examples:
            >>> Metre.parse("6/8").is_compound, Metre.parse("3/4").bar_ticks
            (True, 5040)

        Raises:
            TuneError: not a metre, or one outside 1-32 beats over 1, 2, 4, 8, 16 or 32.
        """
        text = {"C": "4/4", "C|": "2/2"}.get(text.strip(), text.strip())
        match = _METRE.fullmatch(text)
        beats = sum(map(int, match[1].split("+"))) if match else 0
        if match and 1 <= beats <= 32:
            return cls(beats, int(match[2]))
        raise TuneError("no-metre", given=text)

    @property
    def unit_ticks(self) -> int:
        """Length of the lower figure's note."""
        return WHOLE // self.unit

    @property
    def bar_ticks(self) -> int:
        """Length of a full bar."""
        return self.beats * self.unit_ticks

    @property
    def is_compound(self) -> bool:
        """True for 6/8, 9/8, 12/8 and their kin, where a beat is three units (3/8 counts as one beat)."""
        return self.unit >= 8 and self.beats % 3 == 0

    @property
    def groups_ticks(self) -> tuple[int, ...]:
        """Lengths of the beats in order; uneven metres (5/8, 7/8) have beats of unequal length."""
        return _groups(self)

    @property
    def beat_ticks(self) -> int:
        """Length of the usual beat: a dotted quarter in 6/8, a quarter in 4/4, a half in 2/2."""
        return 3 * self.unit_ticks if self.is_compound else self.unit_ticks

    @property
    def beat_sign(self) -> str:
        """The note that a tempo counts: ``"♩"``, ``"♩."`` in 6/8, ``"♪"`` in 7/8.

        Examples:
            >>> [Metre.parse(name).beat_sign for name in ("3/4", "12/8", "7/8")]
            ['♩', '♩.', '♪']
            >>> Metre.parse("2/2").beat_sign == BEAT_SIGNS[2]
            True
        """
        if self.is_compound:
            return BEAT_SIGNS.get(self.unit // 2, "♩") + "."
        return BEAT_SIGNS.get(self.unit, "♩")

    def beat_at(self, offset_ticks: int) -> Fraction:
        """Beat number (from 1) of a place in the bar; half past the second beat is 5/2."""
        start = 0
        for number, length in enumerate(self.groups_ticks, start=1):
            if offset_ticks < start + length:
                return number + Fraction(offset_ticks - start, length)
            start += length
        return len(self.groups_ticks) + 1 + Fraction(offset_ticks - start, self.beat_ticks)

    def strength(self, offset_ticks: int) -> float:
        """Metrical weight of a place in the bar, 1.0 to 0.0.

        Downbeat 1.0, the half-bar 0.75, other beats 0.5, halves of beats (thirds in compound time) 0.25,
        sixteenths 0.125, anything finer or crooked 0.0 (common practice).
        """
        return _strength(self, offset_ticks)

    def __str__(self) -> str:
        return f"{self.beats}/{self.unit}"


@lru_cache(maxsize=256)
def _groups(metre: Metre) -> tuple[int, ...]:
    if metre.is_compound:
        return (3 * metre.unit_ticks,) * (metre.beats // 3)
    if metre.unit >= 8 and metre.beats in _IRREGULAR_GROUPS:
        return tuple(size * metre.unit_ticks for size in _IRREGULAR_GROUPS[metre.beats])
    return (metre.unit_ticks,) * metre.beats


@lru_cache(maxsize=8192)
def _strength(metre: Metre, offset_ticks: int) -> float:
    if offset_ticks <= 0:
        return 1.0 if offset_ticks == 0 else 0.0
    groups = metre.groups_ticks
    starts = [sum(groups[:number]) for number in range(len(groups))]
    if offset_ticks in starts:
        halfway = len(groups) >= 4 and len(groups) % 2 == 0 and offset_ticks == starts[len(groups) // 2]
        return 0.75 if halfway else 0.5
    start = max(start for start in starts if start < offset_ticks)
    inside = offset_ticks - start
    unit = metre.unit_ticks if metre.unit >= 8 else metre.unit_ticks // 2
    if inside % unit == 0:
        return 0.25
    return 0.125 if inside % (unit // 2) == 0 else 0.0
