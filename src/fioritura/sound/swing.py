"""Swing: how long the first of two eighths lasts, and how far behind the beat a soloist plays.

Sources: Friberg & Sundström 2002 (Music Perception 19(3), 333-349) for the drummer's ratio, which falls about
linearly from 3.5:1 at 120 quarters a minute to 1:1 at 300 and keeps the short note near 100 ms; the open jazz
solo annotations (387 wind solos) for the soloist, who swings less than the drummer and plays late.
Written music stays in even eighths; only what sounds is swung.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Tune

__all__ = ["TRIPLET_RATIO", "SwingGrid", "drummer_ratio", "soloist_delay_sec", "soloist_ratio"]

TRIPLET_RATIO: Final = 2.0
"""The shuffle's ratio: eighths as the outer notes of a triplet."""

_DRUMMER_RATIO: Final = ((120.0, 3.5), (300.0, 1.0))
_SOLOIST_RATIO: Final = ((120.0, 1.33), (160.0, 1.35), (200.0, 1.23), (240.0, 1.19), (280.0, 1.12), (320.0, 1.05))
_SOLOIST_DELAY_SEC: Final = ((120.0, 0.049), (160.0, 0.042), (200.0, 0.027), (240.0, 0.013), (280.0, 0.004))


def drummer_ratio(quarters_per_minute: float) -> float:
    """Long to short eighth on the ride cymbal; held at 3.5 below tempo 120 and at 1 above 300."""
    return _interpolated(_DRUMMER_RATIO, quarters_per_minute)


def soloist_ratio(quarters_per_minute: float) -> float:
    """Long to short eighth of a wind soloist."""
    return _interpolated(_SOLOIST_RATIO, quarters_per_minute)


def soloist_delay_sec(quarters_per_minute: float) -> float:
    """Seconds by which a soloist's notes on the beat come after the rhythm section's."""
    return _interpolated(_SOLOIST_DELAY_SEC, quarters_per_minute)


@dataclass(frozen=True, slots=True)
class SwingGrid:
    """Where written places sound, still in ticks: the second eighth of a swung quarter comes late.

    A quarter that holds triplets, sixteenths or anything finer is played as written, and so is compound time.
    """

    tune: Tune
    straight_quarters: frozenset[int]

    @classmethod
    def of(cls, tune: Tune, onsets_ticks: Iterable[int]) -> SwingGrid:
        """The grid for a line with these onsets over the bars of `tune`."""
        places = ((ticks, _phase(tune, ticks)) for ticks in onsets_ticks)
        return cls(tune, frozenset(ticks - phase for ticks, phase in places if phase % EIGHTH))

    def swung(self, ticks: int, ratio: float) -> float:
        """The place at which `ticks` sounds when the first eighth is `ratio` times the second."""
        phase = _phase(self.tune, ticks)
        if not phase or self._is_even(ticks, phase):
            return float(ticks)
        long = QUARTER * ratio / (1.0 + ratio)
        inside = phase * long / EIGHTH if phase <= EIGHTH else QUARTER - (QUARTER - phase) * (QUARTER - long) / EIGHTH
        return ticks - phase + inside

    def on_beat(self, ticks: int) -> float:
        """How much a place belongs to the beats next to it: 1 on a beat and in quarters that are not swung, 0 between."""
        phase = _phase(self.tune, ticks)
        return 1.0 if self._is_even(ticks, phase) else abs(1.0 - phase / EIGHTH)

    def _is_even(self, ticks: int, phase: int) -> bool:
        return ticks - phase in self.straight_quarters or self.tune.bar_at(ticks).metre.is_compound


def _phase(tune: Tune, ticks: int) -> int:
    """Ticks since the last quarter of the bar's metre."""
    bar = tune.bar_at(ticks)
    return (ticks - bar.start_ticks + bar.metre_offset_ticks) % QUARTER


def _interpolated(points: tuple[tuple[float, float], ...], place: float) -> float:
    """The value at `place` on the polygon through `points`, held at both ends."""
    if place <= points[0][0]:
        return points[0][1]
    for (left, low), (right, high) in pairwise(points):
        if place <= right:
            return low + (high - low) * (place - left) / (right - left)
    return points[-1][1]
