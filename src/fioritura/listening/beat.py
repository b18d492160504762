"""Where the beats are: tempo and place in the beat of each onset, by one dynamic programme.

The state at an onset is a tempo and a place in the beat (twelfths, so that sixteenths and triplets both fit). From
one onset to the next the time that passed must fit the places between them at that tempo, and the tempo may drift.
Plain places cost nothing, crooked ones more. The programme is run once for each swing ratio, with the second eighth
of a beat moved to where that ratio puts it, and the cheapest run wins. Costs are in nats, set by hand.

Swing ratios follow Friberg & Sundström 2002 and Corcoran & Frieler 2021: from even eighths to 3 to 1.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.paths import Costs, Places, Step, best_walk

__all__ = ["PARTS", "Follow", "follow"]

PARTS: Final = 12
"""Places in a beat."""
RATIOS: Final = (1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0)

_SIMPLE: Final = {0: 0.0, 6: 0.4, 3: 1.2, 9: 1.2, 4: 2.0, 8: 2.0, 2: 3.0, 10: 3.0}
_COMPOUND: Final = {0: 0.0, 4: 0.4, 8: 0.4, 2: 1.4, 6: 1.2, 10: 1.4}
_CROOKED: Final = 5.0
_SWING: Final = 3.0
"""What any swing costs a whole line, so that a few late notes do not make one."""
_ONSET_SEC: Final = 0.02
_DRIFT: Final = 0.03
"""Deviation of an onset: a fixed part, and a share of the time since the last."""
_TEMPO_STEP: Final = 0.02
_TEMPO_DRIFT: Final = 0.5
_REACH: Final = 3
_USUAL_BPM: Final = 110.0
_USUAL_OCTAVES: Final = 0.4
_FREE_BPM: Final = (45.0, 220.0)
_HINT_SHARE: Final = 1.25

Reals = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Follow:
    """The onsets in beats: whole `parts` (twelfths of a beat) from the first beat at or before the first onset.

    `beats_per_minute` is the tempo over the line, `swing_ratio` long to short eighth (1 for even ones), `cost` what an
    onset costs on this way, in nats.
    """

    parts: tuple[int, ...]
    beats_per_minute: float
    swing_ratio: float
    cost: float = 0.0


def follow(
    onsets_sec: Sequence[float], beats_per_minute: float | None = None, *, is_compound: bool = False
) -> Follow:
    """Follow the beat of a line of one onset or more, in order; a tempo that is given is believed within a quarter."""
    times = np.asarray(onsets_sec, float)
    low, high = (beats_per_minute / _HINT_SHARE, beats_per_minute * _HINT_SHARE) if beats_per_minute else _FREE_BPM
    tempos = np.exp(np.arange(np.log(low), np.log(high) + _TEMPO_STEP, _TEMPO_STEP))
    centre = beats_per_minute or _USUAL_BPM
    prior = 0.5 * (np.log2(tempos / centre) / _USUAL_OCTAVES) ** 2
    runs = [_run(times, tempos, prior, ratio, is_compound) for ratio in (RATIOS if not is_compound else (1.0,))]
    cost, parts, bpm, ratio = min(runs)
    if parts[-1] > parts[0]:
        bpm = 60 * (parts[-1] - parts[0]) / PARTS / float(times[-1] - times[0])
    return Follow(parts, bpm, ratio, cost / len(parts))


def _places(ratio: float, is_compound: bool) -> tuple[Reals, Reals]:
    """Where each place of the beat sounds (in beats), and what it costs."""
    sounds = np.arange(PARTS) / PARTS
    prices = np.full(PARTS, _CROOKED)
    for part, price in (_COMPOUND if is_compound else _SIMPLE).items():
        prices[part] = price
    if ratio > 1:
        sounds[6] = ratio / (1 + ratio)
        prices[[3, 9]] += 0.6
    return sounds, prices


def _run(
    times: Reals, tempos: Reals, prior: Reals, ratio: float, is_compound: bool
) -> tuple[float, tuple[int, ...], float, float]:
    """Cost, parts, tempo and ratio of the best path under one swing ratio. State: tempo, and place in the beat."""
    sounds, prices = _places(ratio, is_compound)
    beat_sec = 60.0 / tempos
    between = sounds[None, :] - sounds[:, None]
    gaps = np.diff(times)
    costs = prior[:, None] + prices[None, :]
    path = best_walk(costs.ravel(), (_step(gap, beat_sec, between, prices, prior) for gap in gaps))
    rows, places = np.divmod(np.array(path.places), PARTS)
    beats = gaps / beat_sec[rows[1:]]
    wholes = _whole_beats(beats, between[places[:-1], places[1:]]).astype(int)
    parts = PARTS * np.concatenate([[0], np.cumsum(wholes)]) + places
    charge = _SWING if ratio > 1 else 0.0
    return path.cost + charge, tuple(parts.tolist()), float(np.median(tempos[rows])), ratio


def _step(gap: float, beat_sec: Reals, between: Reals, prices: Reals, prior: Reals) -> Step:
    """From one onset to the next: the tempo drifts to each tempo, then the best place before each place."""
    drift = _TEMPO_DRIFT * np.arange(-_REACH, _REACH + 1) ** 2
    beats = gap / beat_sec[:, None, None]
    error = (between + _whole_beats(beats, between) - beats) * beat_sec[:, None, None]
    fit = 0.5 * (error / (_ONSET_SEC + _DRIFT * gap)) ** 2
    count = len(beat_sec)

    def step(totals: Costs) -> tuple[Costs, Places]:
        padded = np.pad(totals.reshape(count, PARTS), ((_REACH, _REACH), (0, 0)), constant_values=np.inf)
        moved = np.stack([padded[shift : shift + count] + price for shift, price in enumerate(drift)])
        tempo_from = moved.argmin(axis=0) - _REACH
        total = moved.min(axis=0)[:, :, None] + fit
        place_from = total.argmin(axis=1)
        rows = np.arange(count)[:, None]
        origins = (rows + tempo_from[rows, place_from]) * PARTS + place_from
        return (total.min(axis=1) + prices[None, :] + prior[:, None]).ravel(), origins.ravel()

    return step


def _whole_beats(beats: Reals, between: Reals) -> Reals:
    """Whole beats that passed where `beats` did and the places lie `between` apart; an onset comes after the last."""
    whole = np.rint(beats - between)
    return np.where(between + whole < 1e-6, whole + 1, whole)
