"""Where in the plain tune a played moment stands: a smooth map from played time to ticks, robust against strays."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from fioritura.theory.metre import EIGHTH, QUARTER

__all__ = ["exact_shift", "long_share", "mapped", "median_slope", "pieces", "straightened"]

Floats = NDArray[np.float64]

NEAREST: Final = 13
"""Each moment is placed by a straight line through so many matched notes around it."""

_WIDE: Final = 49
_STEADY_TICKS: Final = QUARTER / 10
"""Where so many notes stray from one line by no more than this as a rule, the player keeps time: a group of notes that
comes late is late, and does not bend the map."""

STOP_SEC: Final = 0.7
STOP_QUARTERS: Final = 0.9
"""What waits longer than both, beyond its written length, is a stop."""
_AROUND: Final = 5
_ROUNDS: Final = 3
_LEAST_SHARE: Final = 0.5
_LEAST_EIGHTHS: Final = 4
_LEAST_SWING: Final = 0.53
_MOST_SWING: Final = 0.78
_STEEPEST: Final = 2.0
"""The tempo of a moment differs from the usual one by no more than this factor."""


def median_slope(times: Floats, ticks: Floats) -> float:
    """The usual number of ticks to a unit of played time, from pairs in order of time; 0.0 where none can be told."""
    moves = np.diff(times)
    steps = np.diff(ticks)
    usable = (moves > 1e-6) & (steps > 0)
    return float(np.median(steps[usable] / moves[usable])) if usable.any() else 0.0


def exact_shift(times: Floats, ticks: Floats) -> float | None:
    """How many ticks later the plain tune is than a written line, where most matched notes agree on it to the tick."""
    shifts, counts = np.unique(np.rint(ticks - times), return_counts=True)
    best = int(counts.argmax())
    return float(shifts[best]) if counts[best] >= _LEAST_SHARE * len(times) else None


def pieces(times: Floats, ticks: Floats, usual_slope: float) -> list[slice]:
    """The matched notes of a passage between the player's stops.

    A stop is a step from one note to the next that takes longer than its ticks ask for, at the tempo of the notes around
    it, by `STOP_SEC` and by `STOP_QUARTERS`. Slopes and times are those of `mapped`.
    """
    excess = waited(times, ticks, usual_slope)
    slopes = local_slopes(times, ticks, usual_slope)
    is_stop = (excess > STOP_SEC) & (excess * slopes > STOP_QUARTERS * QUARTER)
    edges = [0, *(np.flatnonzero(is_stop) + 1).tolist(), len(times)]
    return [slice(first, stop) for first, stop in pairwise(edges)]


def waited(times: Floats, ticks: Floats, usual_slope: float) -> Floats:
    """By how many units of time each step from note to note is longer than the tempo around it asks for."""
    if len(times) < 2:
        return np.zeros(0)
    return np.asarray(np.diff(times) - np.diff(ticks) / local_slopes(times, ticks, usual_slope))


def local_slopes(times: Floats, ticks: Floats, usual_slope: float) -> Floats:
    """Ticks to a unit of time around each step: the median of the steps near it, no farther from the usual one than
    `_STEEPEST` allows."""
    moves, steps = np.diff(times), np.diff(ticks)
    slopes = np.where((moves > 1e-6) & (steps > 0), steps / np.maximum(moves, 1e-6), usual_slope)
    padded = np.pad(slopes, _AROUND, constant_values=np.nan)
    near = np.nanmedian(sliding_window_view(padded, 2 * _AROUND + 1), axis=1) if len(slopes) else slopes
    return np.asarray(np.clip(near, usual_slope / _STEEPEST, usual_slope * _STEEPEST))


def mapped(times: Floats, ticks: Floats, asked: Floats, usual_slope: float, *, is_stiff: bool = False) -> Floats:
    """The tick of each asked time.

    Args:
        times, ticks: matched notes in order of time, at least one.
        asked: played times, shape (n,).
        usual_slope: ticks to a unit of time, for moments with too few notes around.
        is_stiff: where the player keeps time, let a group of notes be late or early.

    Returns:
        Ticks, shape (n,): a line is fitted through the nearest notes, near ones counting more and strays hardly
        (locally weighted regression with bisquare weights; Cleveland 1979, JASA 74, 829-836, from memory).
    """
    if len(times) < 3:
        return float(np.median(ticks - usual_slope * times)) + usual_slope * asked
    near, _ = _fitted(times, ticks, asked, usual_slope, NEAREST)
    if not is_stiff or len(times) <= NEAREST:
        return near
    wide, strays = _fitted(times, ticks, asked, usual_slope, _WIDE)
    return np.where(strays <= _STEADY_TICKS, wide, near)


def _fitted(times: Floats, ticks: Floats, asked: Floats, usual_slope: float, nearest: int) -> tuple[Floats, Floats]:
    """The tick of each asked time by the line through so many notes around it, and how far the notes stray from it as a
    rule."""
    count = min(nearest, len(times))
    first = np.clip(np.searchsorted(times, asked) - count // 2, 0, len(times) - count)
    near_times = sliding_window_view(times, count)[first]
    near_ticks = sliding_window_view(ticks, count)[first]
    away = np.abs(near_times - asked[:, None])
    reach = away.max(axis=1, keepdims=True) * 1.1 + 1e-9
    closeness = (1 - np.minimum(away / reach, 1.0) ** 3) ** 3 + 1e-3
    weights = closeness
    for _ in range(_ROUNDS):
        slope, centre_time, centre_tick = _lines(near_times, near_ticks, weights, usual_slope)
        strays = np.abs(near_ticks - centre_tick - slope * (near_times - centre_time))
        scale = 6 * np.median(strays, axis=1, keepdims=True) + 1e-6 + 20.0
        weights = closeness * np.maximum(1 - (strays / scale) ** 2, 1e-3) ** 2
    slope, centre_time, centre_tick = _lines(near_times, near_ticks, weights, usual_slope)
    usual_strays = np.median(np.abs(near_ticks - centre_tick - slope * (near_times - centre_time)), axis=1)
    return np.asarray(centre_tick[:, 0] + slope[:, 0] * (asked - centre_time[:, 0])), usual_strays


def _lines(times: Floats, ticks: Floats, weights: Floats, usual_slope: float) -> tuple[Floats, Floats, Floats]:
    """Slope and centre of the weighted line in each row, with a slight pull to the usual slope."""
    total = weights.sum(axis=1, keepdims=True)
    centre_time = (weights * times).sum(axis=1, keepdims=True) / total
    centre_tick = (weights * ticks).sum(axis=1, keepdims=True) / total
    spread = (weights * (times - centre_time) ** 2).sum(axis=1, keepdims=True)
    shared = (weights * (times - centre_time) * (ticks - centre_tick)).sum(axis=1, keepdims=True)
    pull = 0.05 * spread.mean() + 1e-12
    slope = (shared + pull * usual_slope) / (spread + pull)
    return np.clip(slope, usual_slope / _STEEPEST, usual_slope * _STEEPEST), centre_time, centre_tick


def long_share(lateness: Iterable[tuple[int, float]]) -> float:
    """Where in a beat the second of two eighths falls, 0.5 straight and 0.67 triplet swing.

    `lateness` holds, for matched notes, the plain tick within the quarter and how late the note came. A share within
    reach of straight playing, or told by fewer than four eighths, is given as 0.5.
    """
    on_beat: list[float] = []
    off_beat: list[float] = []
    for place, late in lateness:
        if place in (0, EIGHTH) and abs(late) < EIGHTH / 2:
            (off_beat if place else on_beat).append(late)
    if len(off_beat) < _LEAST_EIGHTHS or len(on_beat) < _LEAST_EIGHTHS:
        return 0.5
    share = 0.5 + float(np.median(off_beat) - np.median(on_beat)) / QUARTER
    return share if _LEAST_SWING <= share <= _MOST_SWING else 0.5


def straightened(ticks: Floats, share: float) -> Floats:
    """Ticks with the swing taken out: the place `share` of a beat becomes its half."""
    whole = np.floor(ticks / QUARTER)
    part = ticks / QUARTER - whole
    straight = np.where(part < share, part / (2 * share), 0.5 + (part - share) / (2 * (1 - share)))
    return np.asarray((whole + straight) * QUARTER)
