"""What is recognised: a group of added notes, and the definition by which a technique is told in it.

Players and arrangers choose other rhythms, other scales and other places than our rules. Their additions are named by
how they are approached and left: Open Music Theory, "Embellishing tones" (passing: step in and out the same way;
neighbour: step out and back; appoggiatura: leap in, step out; escape tone: step in, leap out the other way;
anticipation: the next note early), and common practice for grace notes, turns, runs and approaches.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Final

__all__ = ["STEP_SEMITONES", "Definition", "Group", "is_step"]

STEP_SEMITONES: Final = 2
"""The widest step."""


@dataclass(frozen=True)
class Group:
    """Added notes between two notes that are the tune's: MIDI numbers in order.

    `before` and `after` are None at the ends of the line. `is_quick` tells notes of a grace note's length, `is_light`
    notes too short to be a step of the tune themselves, `is_fill` that the note before is long enough to be answered.
    `scale`, `five` and `chord` are pitch classes.
    """

    before: int | None
    inner: tuple[int, ...]
    after: int | None
    is_quick: bool = False
    is_light: bool = True
    is_fill: bool = False
    scale: frozenset[int] = frozenset(range(12))
    five: frozenset[int] = frozenset()
    chord: frozenset[int] = frozenset()

    @cached_property
    def path(self) -> tuple[int, ...]:
        """The added notes with the notes around them."""
        return tuple(midi for midi in (self.before, *self.inner, self.after) if midi is not None)

    @cached_property
    def moves(self) -> tuple[int, ...]:
        """Semitones from note to note."""
        return tuple(after - before for before, after in pairwise(self.path))

    @property
    def goes_one_way(self) -> bool:
        """True when every move rises, or every move falls."""
        return all(move > 0 for move in self.moves) or all(move < 0 for move in self.moves)

    @property
    def is_between(self) -> bool:
        """True when there is a note on both sides."""
        return self.before is not None and self.after is not None

    def around(self, main: int | None) -> tuple[int, ...]:
        """The added notes as semitones above a note; empty without one."""
        return () if main is None else tuple(midi - main for midi in self.inner)

    @property
    def is_diatonic(self) -> bool:
        """True when every added note belongs to the scale."""
        return self.all_in(self.scale)

    def all_in(self, classes: frozenset[int]) -> bool:
        """True when every added note belongs to some pitch classes."""
        return all(midi % 12 in classes for midi in self.inner)


@dataclass(frozen=True, slots=True)
class Definition:
    """By what a technique is recognised in added notes that are no figure of its own rule.

    Of the definitions that a group meets the narrowest names it: `breadth` orders them, the narrower before the wider
    (ours go from 10, a grace note of one interval, to 290, a fill).
    """

    is_met: Callable[[Group], bool]
    breadth: int


def is_step(move: int) -> bool:
    """True for a semitone or a whole tone, up or down."""
    return 1 <= abs(move) <= STEP_SEMITONES
