"""What it costs the fingers to go from one note to the next, and the best fingerings for a phrase.

The unit of cost is one strong finger going down or up. Several fingers that go the same way together cost little
more than one; weak fingers, fingers that cross (some down while others lift), one finger going from key to key,
palm keys, register breaks, partials and slide travel cost more. The weights are common practice, set from memory
of what method books drill; they order note pairs as a teacher would and carry no claim beyond that.

All pitches here are written ones, as the player reads and fingers them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.paths import best_path
from fioritura.players.added import added_players
from fioritura.players.chart import SLIDE_POSITIONS, Digit, Fingering, FingeringChart
from fioritura.players.charts import clarinet, flute, oboe, saxophone, six_hole, trombone, trumpet
from fioritura.players.instruments import INSTRUMENTS, Instrument, instrument_named
from fioritura.theory.pitch import Pitch

__all__ = [
    "COMPONENTS",
    "FREE_COST",
    "FingeringPath",
    "Matrix",
    "chart_of",
    "cheapest_moves",
    "fingering_path",
    "move_components",
    "pair_cost",
]

Matrix = NDArray[np.float64]
"""Numbers in an array of any shape."""

FREE_COST: Final = 1.0
"""Cost of any pair on an instrument without a chart (concert pitch)."""

COMPONENTS: Final = ("fingers", "crossing", "slide", "stretch", "seal", "register", "travel")
"""What a move is made of, in the order of `move_components`."""

_LEFT: Final[tuple[Digit, ...]] = ("LT", "L1", "L2", "L3", "L4", "LP")
_RIGHT: Final[tuple[Digit, ...]] = ("R1", "R2", "R3", "R4", "RS")
_DIGITS: Final = (*_LEFT, *_RIGHT)
_DIGIT_COST: Final = np.array([0.7, 1.0, 1.0, 1.2, 1.4, 1.5, 1.0, 1.0, 1.2, 1.4, 1.2])
_TOGETHER: Final = 0.25
"""Share that each further finger adds when several move at once."""
_CROSSING_IN_HAND: Final = 1.1
_CROSSING_OF_HANDS: Final = 0.5
_SLIDE_COST: Final = np.array([2.4, 2.4, 3.6, 3.6, 3.2, 3.6, 3.6, 3.6, 3.6, 3.2, 3.6])
"""One digit from key to key: thumbs, first left and little fingers roll, the others must jump."""


@dataclass(frozen=True, slots=True)
class FingeringPath:
    """The cheapest fingerings of a phrase: one for each note, and the cost of each move between neighbours."""

    fingerings: tuple[Fingering, ...]
    move_costs: tuple[float, ...]

    @property
    def cost(self) -> float:
        """Sum of all moves and of the penalties of the fingerings chosen."""
        return sum(self.move_costs) + sum(fingering.penalty for fingering in self.fingerings)


@lru_cache(maxsize=32)
def chart_of(instrument: Instrument | str) -> FingeringChart | None:
    """The fingering chart of an instrument or instrument id; None for concert pitch.

    Raises:
        OptionError: there is no such instrument.
    """
    known = instrument if isinstance(instrument, Instrument) else instrument_named(instrument)
    if known.id not in INSTRUMENTS:
        return added_players().charts.get(known.id)
    if known.id.endswith("-sax"):
        return saxophone.CHART
    charts = {
        "clarinet": clarinet.CHART,
        "bass-clarinet": clarinet.CHART,
        "flute": flute.CHART,
        "irish-flute": six_hole.CHART,
        "tin-whistle": six_hole.CHART,
        "oboe": oboe.CHART,
        "trumpet": trumpet.CHART,
        "flugelhorn": trumpet.FLUGELHORN,
        "trombone": trombone.CHART,
    }
    return charts.get(known.id)


def pair_cost(instrument: Instrument | str, written_a: Pitch, written_b: Pitch) -> float:
    """Cost of going from one written note to another, by the best pair of fingerings; 0 for a repeated note.

    Raises:
        OptionError: there is no such instrument.
        RangeError: the instrument has no fingering for one of the notes.
    """
    return fingering_path(instrument, (written_a, written_b)).cost if written_a.midi != written_b.midi else 0.0


def fingering_path(instrument: Instrument | str, written_pitches: Sequence[Pitch]) -> FingeringPath:
    """The cheapest fingerings for a phrase, exactly, by dynamic programming over the alternates of each note.

    Without a chart there are no fingerings, and each move to another note costs `FREE_COST`.

    Raises:
        OptionError: there is no such instrument.
        RangeError: the instrument has no fingering for one of the notes.
    """
    chart = chart_of(instrument)
    if chart is None:
        return FingeringPath((), tuple(FREE_COST * (a.midi != b.midi) for a, b in pairwise(written_pitches)))
    if not written_pitches:
        return FingeringPath((), ())
    choices = [chart.numbers_of(pitch) for pitch in written_pitches]
    moves = _moves(chart)
    penalties = _penalties(chart)
    between = (moves[np.ix_(before, here)] for before, here in pairwise(choices))
    path = best_path((penalties.take(numbers) for numbers in choices), between)
    numbers = [group[place] for group, place in zip(choices, path.places, strict=True)]
    costs = (float(moves[a, b]) for a, b in pairwise(numbers))
    return FingeringPath(tuple(chart.fingerings[number] for number in numbers), tuple(costs))


def cheapest_moves(chart: FingeringChart) -> tuple[dict[int, int], Matrix]:
    """Pair costs of a whole chart: the row of each written MIDI number, and the square matrix of costs."""
    moves = _moves(chart)
    penalties = _penalties(chart)
    padded = moves + penalties[:, None] + penalties[None, :]
    starts = np.array([numbers[0] for numbers in chart.numbers_by_midi.values()])
    best = np.minimum.reduceat(np.minimum.reduceat(padded, starts, axis=0), starts, axis=1)
    np.fill_diagonal(best, 0.0)
    return {midi: row for row, midi in enumerate(chart.numbers_by_midi)}, best


def move_components(chart: FingeringChart, a: Fingering, b: Fingering) -> dict[str, float]:
    """What a move from one fingering to another is made of: the cost of each of `COMPONENTS` that is in it."""
    parts = _components(chart, (a,), (b,))
    return {name: float(part[0, 0]) for name, part in zip(COMPONENTS, parts, strict=True) if part[0, 0] > 0}


@lru_cache(maxsize=16)
def _moves(chart: FingeringChart) -> Matrix:
    return np.asarray(sum(_components(chart, chart.fingerings, chart.fingerings)), dtype=np.float64)


@lru_cache(maxsize=16)
def _penalties(chart: FingeringChart) -> Matrix:
    return np.array([fingering.penalty for fingering in chart.fingerings])


def _components(chart: FingeringChart, first: Sequence[Fingering], second: Sequence[Fingering]) -> list[Matrix]:
    """Each of `COMPONENTS` as a matrix (fingerings of `first` × fingerings of `second`)."""
    handling = chart.handling
    a, b = _key_bits(chart, first)[:, None, :], _key_bits(chart, second)[None, :, :]
    down, up = (a == 0) & (b != 0), (a != 0) & (b == 0)
    changed = (a != 0) & (b != 0) & (a != b)
    stretched = changed & (((a & b) == a) | ((a & b) == b))
    weights = np.where(down | up, _DIGIT_COST, 0.0)
    heaviest = weights.max(axis=2)
    left = slice(0, len(_LEFT))
    right = slice(len(_LEFT), len(_DIGITS))
    in_hands = [np.minimum(down[..., hand].sum(axis=2), up[..., hand].sum(axis=2)) for hand in (left, right)]
    crossing = in_hands[0] + in_hands[1]
    of_hands = np.minimum(down.sum(axis=2), up.sum(axis=2)) - crossing
    holes_a, holes_b = _open_holes(chart, first)[:, None], _open_holes(chart, second)[None, :]
    sealed = np.bitwise_count(holes_b & ~holes_a).astype(np.int64)
    registers_a, registers_b = _registers(first)[:, None], _registers(second)[None, :]
    rise = registers_b - registers_a
    travel = np.abs(_positions(first)[:, None] - _positions(second)[None, :])
    return [
        heaviest + _TOGETHER * (weights.sum(axis=2) - heaviest),
        _CROSSING_IN_HAND * crossing + _CROSSING_OF_HANDS * of_hands,
        (changed & ~stretched) @ _SLIDE_COST,
        _rolls(chart, a ^ b, stretched),
        handling.seal * np.maximum(sealed - 1, 0),
        handling.register * np.abs(rise) + handling.upward * np.maximum(rise, 0),
        handling.travel * travel,
    ]


def _rolls(chart: FingeringChart, differing: NDArray[np.int64], stretched: NDArray[np.bool_]) -> Matrix:
    cost = np.zeros(stretched.shape[:2])
    for number, key in enumerate(chart.keys.values()):
        if key.digit != "slide":
            digit = _DIGITS.index(key.digit)
            cost += key.roll * ((differing[..., digit] >> number & 1) * stretched[..., digit])
    return cost


def _key_bits(chart: FingeringChart, fingerings: Sequence[Fingering]) -> NDArray[np.int64]:
    """Keys held by each digit as a set of bits (fingerings × digits)."""
    bits = np.zeros((len(fingerings), len(_DIGITS)), dtype=np.int64)
    for row, fingering in enumerate(fingerings):
        for key in fingering.keys:
            digit = chart.keys[key].digit
            if digit != "slide":
                bits[row, _DIGITS.index(digit)] |= 1 << list(chart.keys).index(key)
    return bits


def _open_holes(chart: FingeringChart, fingerings: Sequence[Fingering]) -> NDArray[np.int64]:
    numbers = {key: number for number, key in enumerate(chart.keys) if chart.keys[key].is_open_hole}
    return np.array([sum(1 << numbers[key] for key in f.keys if key in numbers) for f in fingerings], dtype=np.int64)


def _registers(fingerings: Sequence[Fingering]) -> NDArray[np.int64]:
    return np.array([fingering.register for fingering in fingerings], dtype=np.int64)


def _positions(fingerings: Sequence[Fingering]) -> NDArray[np.int64]:
    """Slide positions; 0 where there is no slide."""
    return np.array([SLIDE_POSITIONS.get("".join(f.keys), 0) for f in fingerings], dtype=np.int64)
