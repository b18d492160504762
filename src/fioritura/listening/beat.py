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

    `beats_per_minute` is the tempo over the line, `swing_ratio` long to short eighth (1 for even ones).
    """

    parts: tuple[int, ...]
    beats_per_minute: float
    swing_ratio: float


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
    _, parts, bpm, ratio = min(runs)
    if parts[-1] > parts[0]:
        bpm = 60 * (parts[-1] - parts[0]) / PARTS / float(times[-1] - times[0])
    return Follow(parts, bpm, ratio)


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
    """Cost, parts, tempo and ratio of the best path under one swing ratio."""
    sounds, prices = _places(ratio, is_compound)
    beat_sec = 60.0 / tempos
    between = sounds[None, :] - sounds[:, None]
    drift = _TEMPO_DRIFT * np.arange(-_REACH, _REACH + 1) ** 2
    cost = prior[:, None] + prices[None, :]
    came: list[tuple[NDArray[np.intp], NDArray[np.intp], NDArray[np.intp]]] = []
    for gap in np.diff(times):
        padded = np.pad(cost, ((_REACH, _REACH), (0, 0)), constant_values=np.inf)
        moved = np.stack([padded[shift : shift + len(tempos)] + price for shift, price in enumerate(drift)])
        tempo_from = moved.argmin(axis=0) - _REACH
        reached = moved.min(axis=0)
        beats = gap / beat_sec[:, None, None]
        whole = np.rint(beats - between)
        whole = np.where(between + whole < 1e-6, whole + 1, whole)
        error = (between + whole - beats) * beat_sec[:, None, None]
        fit = 0.5 * (error / (_ONSET_SEC + _DRIFT * gap)) ** 2
        total = reached[:, :, None] + fit
        place_from = total.argmin(axis=1)
        cost = total.min(axis=1) + prices[None, :] + prior[:, None]
        rows, columns = np.indices(cost.shape)
        came.append((rows + tempo_from[rows, place_from], place_from, whole[rows, place_from, columns].astype(int)))
    best = np.unravel_index(int(cost.argmin()), cost.shape)
    charge = _SWING if ratio > 1 else 0.0
    parts, tempo = _traced(came, int(best[0]), int(best[1]), tempos)
    return float(cost.min()) + charge, parts, tempo, ratio


def _traced(
    came: Sequence[tuple[NDArray[np.intp], NDArray[np.intp], NDArray[np.intp]]], tempo: int, place: int, tempos: Reals
) -> tuple[tuple[int, ...], float]:
    places, wholes, seen = [place], [], [tempos[tempo]]
    for tempo_from, place_from, whole in reversed(came):
        wholes.append(int(whole[tempo, place]))
        tempo, place = int(tempo_from[tempo, place]), int(place_from[tempo, place])
        places.append(place)
        seen.append(tempos[tempo])
    beats = np.concatenate([[0], np.cumsum(wholes[::-1])]).astype(int)
    parts = tuple(int(PARTS * beat + place) for beat, place in zip(beats, places[::-1], strict=True))
    return parts, float(np.median(seen))
