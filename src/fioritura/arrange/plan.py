"""The plan of a performance: how often the tune is played, and how it grows and comes down.

It stands between finding figures and choosing them. Every statement of the tune has a density of figures, a size of
gesture and a register; the chooser follows them, and the band reads the same values. By custom the tune comes nearly
plain first, then fuller, with one climax, and an ending (common practice of jazz and of theme and variations).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import isfinite
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from fioritura.errors import OptionError
from fioritura.techniques.figure import Figure
from fioritura.tune import Note, Tune
from fioritura.unfold import unfolded, written_out
from fioritura.words import Message, message

__all__ = ["MOST_STATEMENTS", "Plan", "Role", "Statement", "leanings", "statement", "usual_count"]

Role = Literal["only", "head", "fuller", "climax", "return"]
"""What a statement is for: the one statement, the first one, one on the way up, the fullest, one after it."""

MOST_STATEMENTS: Final = 200
DENSITIES: Final = (0.0, 2.0)
_HEAD_DENSITY: Final = 0.35
_CLIMAX_DENSITY: Final = 1.35
_RETURN_DENSITY: Final = 0.65
_FULL_SIZE_AT: Final = 0.5
"""How far from the usual density a statement's gestures are as small, or as large, as they get."""

_USUAL_ENERGY: Final = 0.65
_ENERGY_OF_DENSITY: Final = 0.7
_LEVELS_OF_ENERGY: Final = 3.0
"""How many dynamic levels (mp, mf) a line is louder at full energy than at none."""

_ADDED_WORTH: Final = 0.1
"""What each note that a figure adds or changes gains or loses with the size of gesture at its end (+1, −1); the chooser's figures
score from 0 to about 2."""

_MOST_ADDED: Final = 8
_REGISTER_WORTH: Final = 0.08

_LONG_BARS: Final = 48
_SHORT_BARS: Final = 12


@dataclass(frozen=True, slots=True)
class Statement:
    """Once through the tune.

    `density` is the number of figures as a share of what is usual at the level, 0 to 2; `size` goes from small gestures
    (−1) to large ones (1), `register` from low (−1) to high (1).
    """

    density: float
    size: float = 0.0
    register: float = 0.0

    @property
    def energy(self) -> float:
        """How much the band gives, 0 to 1: 0.65 at the usual density."""
        return min(max(_USUAL_ENERGY + _ENERGY_OF_DENSITY * (self.density - 1.0), 0.0), 1.0)


def statement(density: float) -> Statement:
    """A statement whose gestures and register follow its density.

    Examples:
        >>> statement(1.0), statement(0.25).size, statement(1.75).register
        (Statement(density=1.0, size=0.0, register=0.0), -1.0, 1.0)
    """
    lean = min(max((density - 1.0) / _FULL_SIZE_AT, -1.0), 1.0)
    return Statement(density, lean, lean)


@dataclass(frozen=True, slots=True)
class Plan:
    """The statements of a performance in order.

    Examples:
        >>> plan = Plan.usual(4)
        >>> [each.density for each in plan.statements], plan.climax, [plan.role(n) for n in range(4)]
        ([0.35, 0.85, 1.35, 0.65], 2, ['head', 'fuller', 'climax', 'return'])
        >>> Plan.of([3.0])
        Traceback (most recent call last):
        fioritura.errors.OptionError: A density of 3 is out of reach for a chorus: give 0 to 2.
    """

    statements: tuple[Statement, ...]

    def __post_init__(self) -> None:
        if not 1 <= len(self.statements) <= MOST_STATEMENTS:
            raise OptionError("choruses-out-of-reach", given=len(self.statements), low=1, high=MOST_STATEMENTS)
        low, high = DENSITIES
        for each in self.statements:
            if not (isfinite(each.density) and low <= each.density <= high):
                raise OptionError("plan-density-out-of-reach", given=f"{each.density:g}", low=low, high=high)
            if not all(isfinite(value) and -1 <= value <= 1 for value in (each.size, each.register)):
                raise OptionError("plan-lean-out-of-reach", size=f"{each.size:g}", register=f"{each.register:g}")

    @classmethod
    def usual(cls, count: int) -> Plan:
        """The usual plan of so many statements: nearly plain, fuller and fuller, the climax; from four on, a return.

        Raises:
            OptionError: fewer than 1 or more than 200.
        """
        if not 1 <= count <= MOST_STATEMENTS:
            raise OptionError("choruses-out-of-reach", given=count, low=1, high=MOST_STATEMENTS)
        if count == 1:
            return cls.of([1.0])
        rising = count if count < 4 else count - 1
        step = (_CLIMAX_DENSITY - _HEAD_DENSITY) / (rising - 1)
        curve = [round(_HEAD_DENSITY + number * step, 2) for number in range(rising)]
        return cls.of([*curve, _RETURN_DENSITY][:count])

    @classmethod
    def of(cls, densities: Iterable[float]) -> Plan:
        """A plan from the density of each statement, which size and register follow.

        Raises:
            OptionError: no density, or one outside 0 to 2.
        """
        return cls(tuple(map(statement, densities)))

    @property
    def count(self) -> int:
        """How often the tune is played."""
        return len(self.statements)

    @property
    def climax(self) -> int | None:
        """The number of the densest statement from 0, the last of equals; None where there is but one."""
        if self.count == 1:
            return None
        return max(range(self.count), key=lambda number: (self.statements[number].density, number))

    def role(self, number: int) -> Role:
        """What the statement of a number, from 0, is for."""
        climax = self.climax
        if climax is None:
            return "only"
        return "climax" if number == climax else "head" if number == 0 else "fuller" if number < climax else "return"

    def name(self, number: int) -> Message:
        """The statement of a number, from 0, as it is called: "chorus 2"."""
        return message("chorus-number", number=number + 1)

    def heading(self, number: int) -> Message:
        """What stands over the statement of a number, from 0, on the page."""
        return message("plan-heading", number=number + 1, role=self.role(number))

    @property
    def told(self) -> tuple[Message, ...]:
        """Each statement in words."""
        return tuple(
            message(
                "plan-statement",
                number=number + 1,
                role=self.role(number),
                density=round(100 * each.density),
            )
            for number, each in enumerate(self.statements)
        )

    def written_out(self, tune: Tune) -> Tune:
        """The tune as often as it is played, one bar after the other.

        Examples:
            >>> import fioritura
            >>> tune = fioritura.demo_tune()
            >>> len(tune.bars), len(Plan.usual(2).written_out(tune).bars)
            (27, 65)

        Raises:
            TuneError: more than 5000 bars.
        """
        return written_out(tune, self.count)

    def number_at(self, tune: Tune, ticks: int) -> int:
        """The number of the statement to which a place of the written-out tune belongs; a pickup goes with what it leads to."""
        return min(max(ticks, 0) // self._length(tune), self.count - 1)

    def start_ticks(self, tune: Tune, number: int) -> int:
        """Where a statement of the written-out tune begins, its pickup left aside."""
        return tune.pickup_ticks + number * self._length(tune)

    def _length(self, tune: Tune) -> int:
        return max((tune.duration_ticks - tune.pickup_ticks) // self.count, 1)

    def checked(self, tune: Tune) -> Plan:
        """The plan, if the tune is written out as often as it says.

        Raises:
            OptionError: it is not.
        """
        starts = {bar.start_ticks for bar in tune.bars}
        if any(self.start_ticks(tune, number) not in starts for number in range(self.count)):
            raise OptionError("plan-other-length", bars=len(tune.bars), count=self.count)
        return self

    def parted(self, tune: Tune, line: Sequence[Note]) -> tuple[tuple[Note, ...], ...]:
        """A line over the written-out tune by statements, the times of each as in the first one.

        Examples:
            >>> import fioritura
            >>> tune = Plan.usual(2).written_out(fioritura.demo_tune())
            >>> first, second = Plan.usual(2).parted(tune, tune.notes)
            >>> [note.pitch for note in first] == [note.pitch for note in second]
            True
        """
        length = self._length(tune)
        found: list[list[Note]] = [[] for _ in self.statements]
        for note in line:
            number = self.number_at(tune, note.onset_ticks)
            found[number].append(replace(note, onset_ticks=note.onset_ticks - number * length))
        return tuple(map(tuple, found))

    def levels(self, tune: Tune, line: Sequence[Note]) -> tuple[float, ...]:
        """By how many dynamic levels each note of a line over the written-out tune is louder than usual."""
        leans = [_LEVELS_OF_ENERGY * (each.energy - _USUAL_ENERGY) for each in self.statements]
        return tuple(leans[self.number_at(tune, note.onset_ticks)] for note in line)

    def once(self, tune: Tune) -> Tune:
        """The first statement of the written-out tune alone."""
        if self.count == 1:
            return tune
        end = self.start_ticks(tune, 1)
        pickup = tune.pickup_ticks
        stop = end - pickup + min(tune.notes[0].onset_ticks, pickup)
        notes = tuple(
            replace(note, duration_ticks=min(note.end_ticks, end) - note.onset_ticks)
            for note in tune.notes
            if note.onset_ticks < stop
        )
        bars = tuple(bar for bar in tune.bars if bar.end_ticks <= end)
        chords = tuple(span for span in tune.chords if span.onset_ticks < end)
        tempos = tuple(tempo for tempo in tune.tempos if tempo.onset_ticks < end)
        last = replace(bars[-1], ends_section=False)
        return replace(tune, notes=notes, bars=(*bars[:-1], last), chords=chords, tempos=tempos)


def usual_count(tune: Tune) -> int:
    """How often a tune is played unless it is said: three times up to 12 bars, twice up to 48, once beyond.

    Examples:
        >>> import fioritura
        >>> usual_count(fioritura.demo_tune())
        2
    """
    bars = len(unfolded(tune).bars)
    return 3 if bars <= _SHORT_BARS + 1 else 2 if bars <= _LONG_BARS + 1 else 1


def leanings(plan: Plan, tune: Tune, figures: Sequence[Figure]) -> NDArray[np.float64]:
    """What each figure gains (or loses) by its size and register in the statement in which it stands.

    Examples:
        >>> import fioritura
        >>> tune = Plan.usual(2).written_out(fioritura.demo_tune())
        >>> figures = fioritura.find(tune, fioritura.Setting("flute", level=4), only=["runs"]).figures
        >>> gains = leanings(Plan.usual(2), tune, figures)
        >>> bool(gains[0] < 0 < gains[-1])
        True
    """
    gains = np.zeros(len(figures))
    for number, figure in enumerate(figures):
        own = plan.statements[plan.number_at(tune, tune.notes[figure.anchors[0]].onset_ticks)]
        added = [note.pitch.midi for note in figure.notes if note.anchor is None] + [p.midi for p in figure.graces]
        gains[number] = _ADDED_WORTH * own.size * min(figure.size, _MOST_ADDED)
        if added:
            above = sum(added) / len(added) - tune.notes[figure.anchors[0]].pitch.midi
            gains[number] += _REGISTER_WORTH * own.register * max(-1.0, min(above / 2, 1.0))
    return gains
