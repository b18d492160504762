"""The course of a take in time: from note to note, where it stood still, and how the tempo went bar by bar.

Only notes in their place are looked at: those that a figure moves, and those whose time is the player's own (beside a
fermata), are left out.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import exp, log
from typing import Final

import numpy as np

from fioritura.listening.naming import Naming
from fioritura.listening.tempo_map import STOP_QUARTERS, STOP_SEC, local_slopes, waited
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Tune

__all__ = ["BarTempo", "Bend", "Course", "Step", "swung_onset"]

_ONSET_SEC: Final = 0.03
_WANDER: Final = 0.03
"""Noise of a bar's tempo: that of two onsets, and the wandering of a player who keeps time."""
_SHORTEST_BARS: Final = 3
_LONGEST_BARS: Final = 12
_FEWEST_BARS: Final = 5
_LEAST_GAIN: Final = 5.0
_LEAST_BEND: Final = 0.075
"""Log of a tempo against another that is worth a word: some 8 percent."""


def swung_onset(tune: Tune, plain: int, long_share: float) -> float:
    """Where a plain note falls, in ticks, when eighths swing."""
    onset = tune.notes[plain].onset_ticks
    return onset + (long_share - 0.5) * QUARTER if onset % QUARTER == EIGHTH else onset


@dataclass(frozen=True, slots=True)
class Step:
    """From one note in its place to the next: written `ticks`, played `seconds`, of which `waited_sec` too many at
    `ticks_per_sec`, the tempo around. `onset_sec` is that of the first note, `plain` and `following` are plain notes."""

    passage: int
    plain: int
    following: int
    onset_sec: float
    seconds: float
    ticks: float
    waited_sec: float
    ticks_per_sec: float

    @property
    def is_stop(self) -> bool:
        """True where the player stood still."""
        return self.waited_sec > STOP_SEC and self.waited_sec * self.ticks_per_sec > STOP_QUARTERS * QUARTER


@dataclass(frozen=True, slots=True)
class BarTempo:
    """The tempo of a bar as it was played: `ticks` in `seconds`, at the `bar` of the tune (its index)."""

    bar: int
    ticks: float
    seconds: float


@dataclass(frozen=True, slots=True)
class Bend:
    """A change of tempo: bars `first` to `last` (of those played, by number of the tune) were `ratio` times as fast as the
    others; or, where it `is_gradual`, the tempo grew from `first` to `last`, and was `ratio` times the first at its end.
    `ticks_per_sec` is the tempo without the change, `gain` by how much better the bars are told so (natural logarithm of
    the odds)."""

    first: int
    last: int
    ratio: float
    is_gradual: bool
    ticks_per_sec: float
    gain: float


class Course:
    """The course of a take; see the module. `free` are (passage, plain note) of notes whose time says nothing."""

    def __init__(self, tune: Tune, naming: Naming, free: Collection[tuple[int, int]]) -> None:
        self.tune, self.share = tune, naming.long_share
        self.rate = naming.alignment.ticks_per_unit
        passes = [one for one in naming.alignment.passes if one.spans]
        self.steps = tuple(
            step
            for passage, (one, standing) in enumerate(zip(passes, naming.standing, strict=False), start=1)
            for step in self._steps(
                passage,
                [
                    (
                        self._first_of(plain, standing, float(one.ticks[event - one.first_event])),
                        naming.alignment.events[event].onset,
                    )
                    for plain, event in sorted(standing.items())
                    if (passage, plain) not in free
                ],
            )
        )

    def _steps(self, passage: int, notes: Sequence[tuple[int, float]]) -> Iterator[Step]:
        times = np.array([sec for _, sec in notes])
        ticks = np.array([swung_onset(self.tune, plain, self.share) for plain, _ in notes])
        excess, slopes = waited(times, ticks, self.rate), local_slopes(times, ticks, self.rate)
        for place in range(len(notes) - 1):
            plain, following = notes[place][0], notes[place + 1][0]
            seconds, length = float(times[place + 1] - times[place]), float(ticks[place + 1] - ticks[place])
            if seconds > 0 and length > 0:
                yield Step(
                    passage,
                    plain,
                    following,
                    float(times[place]),
                    seconds,
                    length,
                    float(excess[place]),
                    float(slopes[place]),
                )

    def _first_of(self, plain: int, standing: Mapping[int, int], ticks: float) -> int:
        """The plain note whose attack was heard: of notes of one pitch that were heard as one, the one nearest in time."""
        notes, found = self.tune.notes, plain
        while found and found - 1 not in standing and notes[found - 1].pitch.midi == notes[plain].pitch.midi:
            if abs(notes[found - 1].onset_ticks - ticks) > abs(notes[found].onset_ticks - ticks):
                break
            found -= 1
        return found

    @property
    def stops(self) -> tuple[Step, ...]:
        """Where the player stood still."""
        return tuple(step for step in self.steps if step.is_stop)

    def bars(self) -> list[BarTempo]:
        """The tempo of each bar that was played, stops left out."""
        starts = [bar.start_ticks for bar in self.tune.bars]
        found: list[BarTempo] = []
        where: tuple[int, int] | None = None
        for step in self.steps:
            if step.is_stop:
                continue
            index = int(np.searchsorted(starts, self.tune.notes[step.plain].onset_ticks, side="right")) - 1
            if where == (step.passage, index):
                last = found[-1]
                found[-1] = BarTempo(index, last.ticks + step.ticks, last.seconds + step.seconds)
            else:
                found.append(BarTempo(index, step.ticks, step.seconds))
            where = step.passage, index
        return found

    def bend(self) -> Bend | None:
        """The change of tempo that says most about the bars; None where the tempo was kept."""
        bars = self.bars()
        if len(bars) < _FEWEST_BARS:
            return None
        speed = np.array([log(bar.ticks / bar.seconds) for bar in bars])
        weights = np.array([1 / (_WANDER**2 + 2 * (_ONSET_SEC / bar.seconds) ** 2) for bar in bars])
        weights *= np.minimum(1.0, np.array([bar.ticks for bar in bars]) / np.median([bar.ticks for bar in bars]))
        even = _left(speed, weights, np.zeros_like(speed))
        tried = [
            (0.5 * (even - left), first, last, change, is_gradual, base)
            for first, last, shape, is_gradual in _shapes(len(bars))
            for left, change, base in [_fitted(speed, weights, shape)]
            if abs(change) >= _LEAST_BEND
        ]
        if not tried:
            return None
        gain, first, last, change, is_gradual, base = max(tried)
        number = [self.tune.bars[bar.bar].number for bar in bars]
        is_real = gain >= _LEAST_GAIN
        return Bend(number[first], number[last], exp(change), is_gradual, exp(base), gain) if is_real else None


Floats = np.ndarray[tuple[int], np.dtype[np.float64]]


def _shapes(count: int) -> Iterator[tuple[int, int, Floats, bool]]:
    """(first bar, last bar, shape, gradual): some bars apart from the rest, and a tempo that grows to the end."""
    places = np.arange(count)
    for first in range(count - 2):
        for last in range(first + 1, min(first + _LONGEST_BARS, count)):
            if last - first + 1 >= _SHORTEST_BARS and 2 * (last - first + 1) <= count:
                yield first, last, ((places >= first) & (places <= last)).astype(np.float64), False
        if first <= 0.7 * count:
            yield first, count - 1, np.maximum(0.0, (places - first + 0.5) / (count - first)), True


def _fitted(speed: Floats, weights: Floats, shape: Floats) -> tuple[float, float, float]:
    """What is left of the speeds (sum of weighted squares) when a shape is taken out, how high it was, and the speed
    without it."""
    centred = shape - np.average(shape, weights=weights)
    height = float((weights * centred * speed).sum() / max(float((weights * centred**2).sum()), 1e-12))
    base = float(np.average(speed - height * shape, weights=weights))
    return _left(speed, weights, height * shape), height, base


def _left(speed: Floats, weights: Floats, model: Floats) -> float:
    away = speed - model
    away = away - np.average(away, weights=weights)
    return float((weights * away**2).sum())
