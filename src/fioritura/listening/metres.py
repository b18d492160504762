"""Which metre and tempo a take may be in: two or three readings of the same onsets, the likeliest first.

The onsets are followed in plain and in compound time (`fioritura.listening.beat`). A line with hardly a note off the
beat whose notes last longer than beats is counted at half the tempo. Bars of two, three and four beats are then weighed
by what is long at their beginnings and by whether bars have the rhythm of the bars beside them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.beat import PARTS, follow
from fioritura.theory.metre import Metre

__all__ = ["Reading", "readings"]

MOST: Final = 3
OFF_BEAT: Final = 0.06
"""With fewer onsets off the beat, and"""
LONG_BEATS: Final = 1.2
"""notes longer than this on average, a line is counted at half the tempo;"""
SLOWEST_BPM: Final = 42.0
"""but no slower than this."""
_SIMPLE: Final = {4: Metre(4, 4), 3: Metre(3, 4), 2: Metre(2, 4)}
_COMPOUND: Final = {2: Metre(6, 8)}
# The weights were chosen on 36 tunes of the train half: the metre came first in 28, was among the three in all.
_LONG_WEIGHT: Final = 1.0
_ALIKE_WEIGHT: Final = 1.5
_HALF_BAR: Final = 0.12
"""What bars of two beats pay: whatever speaks for bars of four speaks for them."""
_OTHER_TEMPO: Final = 0.3
_SLOW: Final = 1.5
"""More than the regularity that any line has when every second beat is empty."""
_COST_WEIGHT: Final = 0.3

Reals = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Reading:
    """A way to count a line: the metre, its beats a minute (dotted quarters in 6/8), and how likely it is among the
    readings that are offered (0 to 1)."""

    metre: Metre
    beats_per_minute: float
    likelihood: float


def readings(onsets_sec: Sequence[float], beats_per_minute: float | None = None) -> tuple[Reading, ...]:
    """Up to three readings of a line's main notes, no two alike in metre and tempo, the likeliest first.

    Args:
        onsets_sec: when the notes begin, in order.
        beats_per_minute: the tempo, about, where it is known.
    """
    if len(onsets_sec) < 2:
        return (Reading(_SIMPLE[4], beats_per_minute or 100.0, 1.0),)
    found = sorted(_weighed(onsets_sec, beats_per_minute), key=lambda pair: -pair[0])
    kept: list[tuple[float, Metre, float]] = []
    for weight, metre, bpm in found:
        if all(metre != other or abs(np.log2(bpm / tempo)) > 0.2 for _, other, tempo in kept):
            kept.append((weight, metre, bpm))
    kept = kept[:MOST]
    shares = np.exp(4 * (np.array([weight for weight, *_ in kept]) - kept[0][0]))
    shares /= shares.sum()
    return tuple(
        Reading(metre, round(bpm, 1), round(float(share), 2))
        for (_, metre, bpm), share in zip(kept, shares, strict=True)
    )


def _weighed(onsets_sec: Sequence[float], hint: float | None) -> Iterator[tuple[float, Metre, float]]:
    for is_compound, metres in ((False, _SIMPLE), (True, _COMPOUND)):
        one = follow(onsets_sec, hint, is_compound=is_compound)
        beats = np.array(one.parts) / PARTS
        fit = -_COST_WEIGHT * one.cost
        other = None if hint or is_compound else _other_tempo(beats, one.beats_per_minute)
        for count, metre in metres.items():
            yield fit + _weight(beats, count), metre, one.beats_per_minute
            if other:
                gain, factor = other
                yield fit + gain + _weight(beats * factor, count), metre, one.beats_per_minute * factor


def _other_tempo(beats: Reals, bpm: float) -> tuple[float, float] | None:
    """What speaks for counting at half the tempo (or, of a slow line, at twice), and the factor; None where nothing."""
    off = float((np.abs(beats - np.rint(beats)) > 1e-6).mean())
    if bpm / 2 >= SLOWEST_BPM:
        is_slow = off <= OFF_BEAT and float(np.diff(beats).mean()) >= LONG_BEATS
        return (_SLOW if is_slow else -_OTHER_TEMPO), 0.5
    return (-_OTHER_TEMPO, 2.0) if 2 * bpm <= 220 else None


def _weight(beats: Reals, count: int) -> float:
    """How well bars of `count` beats suit a line, at their best place."""
    lasts = np.minimum(np.append(np.diff(beats), 1.0), count)
    places = np.rint(beats * 2).astype(int)
    total = int(places[-1]) + 1
    long = np.zeros(total)
    np.maximum.at(long, places, lasts)
    struck = (long > 0).astype(float)
    bar = 2 * count
    firsts = [long[start::bar].mean() for start in range(0, bar, 2)]
    accent = (max(firsts) - float(np.mean(firsts))) / (float(np.mean(firsts)) + 0.25)
    alike = _ALIKE_WEIGHT * _alike(struck, bar)
    return float(_LONG_WEIGHT * accent / count**0.5 + alike - _HALF_BAR * (count == 2))


def _alike(struck: Reals, lag: int) -> float:
    """How much the rhythm agrees with itself a bar later, beyond chance (a correlation)."""
    if struck.size <= lag + 4:
        return 0.0
    now, later = struck[:-lag], struck[lag:]
    spread = now.std() * later.std()
    return float(((now - now.mean()) * (later - later.mean())).mean() / spread) if spread > 1e-9 else 0.0
