"""Where the systems of a piece begin: the best division into lines, found exactly.

Every bar has a natural width, and every system opens with its clef and key signature. A dynamic programme over the
bars weighs each possible system by how full it is and by where it ends (a phrase of four bars is kept together,
common practice in lead sheets), and never leaves one bar alone on the last system where it can be helped.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from fioritura.paths import best_division

__all__ = ["BarWidth", "system_starts"]

_LOOSE: Final = 0.45
_TIGHT: Final = 0.92
"""A system is well filled when its bars take this share of it at their natural, narrow spacing."""

_LOOSE_WEIGHT: Final = 30.0
_TIGHT_WEIGHT: Final = 100.0
_COUNT_WEIGHT: Final = 0.05
_HALF_PHRASE: Final = 0.3
_OFF_PHRASE: Final = 1.0
_LONELY: Final = 5.0
_ORPHAN: Final = 25.0
_OVERFULL: Final = 1000.0
_PHRASE_BARS: Final = 4


@dataclass(frozen=True, slots=True)
class BarWidth:
    """A bar's natural `width`, and the width of the `head` (clef, key) of a system that begins with it.

    A system ends gladly with a bar that `ends_section` (a double bar, a repeat sign). A pickup, or the second half of a bar that a repeat sign divides, `counts` for no bar.
    """

    width: float
    head: float
    ends_section: bool = False
    counts: bool = True


def system_starts(bars: Sequence[BarWidth], line_width: float, bars_per_system: int | None = None) -> list[int]:
    """Indices of the bars with which the systems begin, the first always 0.

    Widths are in any one unit. With `bars_per_system` that many bars stand on each system unless they would not
    fit; without it about four do, fewer where the bars are dense, more where they are sparse. A single bar wider
    than `line_width` gets a system of its own.
    """
    count = len(bars)
    places = _phrase_places(bars)

    def ways_to(end: int, totals: Sequence[float]) -> Iterator[tuple[int, float]]:
        width, length = 0.0, 0
        for start in range(end - 1, -1, -1):
            width += bars[start].width
            length += bars[start].counts
            fill = (width + bars[start].head) / line_width
            if fill > 1.0 and start < end - 1:
                break
            yield start, totals[start] + _line_cost(length, fill, places[end], end == count, bars_per_system)

    return [start for start, _ in best_division(count, ways_to)]


def _phrase_places(bars: Sequence[BarWidth]) -> list[int]:
    """For each bar line, how many bars of a four-bar phrase have gone by (0 at its end); sections begin afresh.

    A bar that counts for none belongs to what follows: the place after it is no good one.
    """
    places = [0]
    since = 0
    for bar in bars:
        since = 0 if bar.ends_section else since + bar.counts
        places.append(since % _PHRASE_BARS if bar.counts or bar.ends_section else 1)
    return places


def _line_cost(length: int, fill: float, place: int, is_last: bool, bars_per_system: int | None) -> float:
    """What a system of `length` bars costs that is `fill` full (1 = its whole width) and ends at `place`."""
    cost = _OVERFULL * fill if fill > 1.0 else 0.0
    if length <= 1:
        cost += _ORPHAN if is_last else _LONELY
    if bars_per_system is not None:
        return cost + (0.0 if is_last and length <= bars_per_system else float((length - bars_per_system) ** 2))
    cost += _TIGHT_WEIGHT * max(0.0, fill - _TIGHT) ** 2
    if is_last:
        is_crowded = fill > (_LOOSE + _TIGHT) / 2
        cost += _COUNT_WEIGHT * max(0, length - _PHRASE_BARS) * is_crowded
        return cost + _LOOSE_WEIGHT * max(0.0, _LOOSE / 2 - fill) ** 2
    cost += _COUNT_WEIGHT * abs(length - _PHRASE_BARS) + _LOOSE_WEIGHT * max(0.0, _LOOSE - fill) ** 2
    return cost + (0.0 if place == 0 else _HALF_PHRASE if place == _PHRASE_BARS // 2 else _OFF_PHRASE)
