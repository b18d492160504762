"""Rhythms of answer fills, drawn value by value as people's short phrases go on.

Time is counted in units of a twelfth of a quarter, from the earliest attack that the place allows. Values come from
`fill_tables.json` (what value follows which at each place in the beat, at what tempo; how many notes; where in the beat
phrases begin; rhythms of whole phrases). What could hardly be read is left out: a triplet stays within its beat, and
quicker triplets within half of one.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from itertools import pairwise
from typing import Any, Final, Literal

import numpy as np
from numpy.typing import NDArray

from fioritura.chance import Chance
from fioritura.players.feel import BALLAD_BELOW
from fioritura.theory.metre import QUARTER

__all__ = ["UNIT", "Grid", "Pace", "Pool", "Rhythm", "continued", "fill_tables", "pace_of", "rhythm_pool"]

UNIT: Final = QUARTER // 12
"""Ticks of a unit."""

Pace = Literal["ballad", "medium", "up"]
Grid = Literal["quarters", "straight", "eighths", "folk"]
"""Quarters divided as in jazz; the same without triplets; eighths, for metres that are counted in them; folk players'
even eighths."""

_UP_ABOVE: Final = 160.0
"""Quarter notes a minute: fills are drawn as people play them in quick tunes."""

_POOL: Final = 192
_FEWEST: Final = 3
_MOST: Final = {1: 4, 2: 5, 3: 9, 4: 11, 5: 12}
"""Notes of a fill, by the player's level."""

_THREE_NOTES: Final = {1: 0.8, 2: 1.2, 3: 0.4, 4: 0.3, 5: 0.3}
"""How far fills of three notes are held back, by level: fills are rather short, and long ones must have room."""

_FULLER: Final = {1: 0.0, 2: 0.0, 3: 0.5, 4: 1.0, 5: 2.0}
"""How much more often each note more is asked for than people have it, by level: many of the longer have no room."""

_LONG: Final = 5
"""From so many notes on a fill begins as early as it can."""

_CUT_SHORT: Final = 0.15
"""How many of the fills of three notes stay that were to be longer, for want of time."""

_TRIES: Final = 6
"""How often a rhythm is drawn until all of its notes have room."""

_SPAN_SHARE: Final = 0.75
_USUAL_UNITS: Final = 44
"""Rhythms that take up less than this share of the time (of so much of it, where there is more) are drawn again."""

_SAME: Final = 0.5
"""How much less often a value goes on over a beat or its half than in the tables, since what reads badly is left out."""

_MIXED: Final = {1: 0.08, 2: 0.25, 3: 0.5, 4: 1.0}
"""How many rhythms of one to four values stay (of four notes and fewer, one more): four in five phrases of people mix
values."""

_VALUES: Final = {1: {6, 12, 18}, 2: {4, 6, 9, 12, 18}, 3: {3, 4, 6, 9, 12, 18}}
"""Values that a level is asked for; those above read all."""

_NEXT: Final = {
    0: (2, 3, 4, 6, 9, 12, 18, 24),
    3: (3, 6, 9),
    4: (4, 8),
    6: (2, 3, 6, 12, 18),
    8: (4,),
    9: (3,),
}
"""Values that read well from a place in the beat."""

_OF_TRIPLETS: Final = frozenset({2, 4, 8})
_SYNCOPATED: Final = {6: 9, 9: 9}
"""Values over the beat to the second or from the last sixteenth, from level 3 on."""

_EVEN: Final = {"eighths": ((6, 0.6), (12, 0.22), (3, 0.18)), "folk": ((6, 0.85), (12, 0.15))}
"""Values and their shares in other grids (common practice); sixteenths come in pairs."""

_LONGEST_LEAD: Final = 15
"""The longest last note that is held up to the next note of the tune; after others there is a rest."""

_LEADS: Final = 0.6
"""How many rhythms that could are held up to the next note."""

_WHOLE_SHARE: Final = 0.08
"""How many rhythms are those of whole phrases, where one fits."""


@cache
def fill_tables() -> dict[str, Any]:
    """The tables of people's short phrases, with their source and licence.

    Examples:
        >>> fill_tables()["licence"][:3], len(fill_tables()["values"])
        ('MIT', 6)
    """
    found: dict[str, Any] = json.loads(
        files("fioritura.techniques").joinpath("fill_tables.json").read_text(encoding="utf-8")
    )
    return found


def pace_of(quarters_per_minute: float) -> Pace:
    """The tempo class of the tables: a ballad under 90 quarters a minute, up-tempo over 160.

    Examples:
        >>> pace_of(60.0), pace_of(120.0), pace_of(200.0)
        ('ballad', 'medium', 'up')
    """
    if quarters_per_minute < BALLAD_BELOW:
        return "ballad"
    return "up" if quarters_per_minute > _UP_ABOVE else "medium"


@dataclass(frozen=True, slots=True)
class Rhythm:
    """Attacks in units from the earliest, how long the last note lasts, and whether it is held up to the next note."""

    onsets: tuple[int, ...]
    last: int
    leads: bool

    @property
    def values(self) -> tuple[int, ...]:
        """The notes' values, in units."""
        return (*(b - a for a, b in pairwise(self.onsets)), self.last)


@dataclass(frozen=True, eq=False)
class Pool:
    """Rhythms as arrays of one row each, the longest first: `onsets` (the last one said again to the width), `sizes`,
    `leads`, `shortest`."""

    rhythms: tuple[Rhythm, ...]
    onsets: NDArray[np.int64]
    sizes: NDArray[np.int64]
    leads: NDArray[np.bool_]
    shortest: NDArray[np.int64]

    @classmethod
    def of(cls, rhythms: Sequence[Rhythm]) -> Pool:
        """The arrays of some rhythms, one at least; rhythms of as many notes stay in order."""
        rhythms = sorted(rhythms, key=lambda one: -len(one.onsets))
        width = len(rhythms[0].onsets)
        return cls(
            tuple(rhythms),
            np.array([(*one.onsets, *[one.onsets[-1]] * (width - len(one.onsets))) for one in rhythms]),
            np.array([len(one.onsets) for one in rhythms]),
            np.array([one.leads for one in rhythms]),
            np.array([min(one.values) for one in rhythms]),
        )

    def taken(self, rows: NDArray[np.int64]) -> Pool:
        """Some of the rhythms, by numbers that rise."""
        picked = tuple(self.rhythms[row] for row in rows.tolist())
        onsets = self.onsets[rows, : self.sizes[rows[0]]]
        return Pool(picked, onsets, self.sizes[rows], self.leads[rows], self.shortest[rows])

    def with_others(self, others: Sequence[Rhythm]) -> Pool:
        """The rhythms with others among them."""
        if not others:
            return self
        more = Pool.of(others)
        width = max(self.onsets.shape[1], more.onsets.shape[1])
        sizes = np.concatenate([self.sizes, more.sizes])
        order = np.argsort(-sizes, kind="stable")
        onsets = np.concatenate([_as_wide(self.onsets, width), _as_wide(more.onsets, width)])[order]
        every = (*self.rhythms, *more.rhythms)
        leads = np.concatenate([self.leads, more.leads])[order]
        shortest = np.concatenate([self.shortest, more.shortest])[order]
        return Pool(tuple(every[row] for row in order.tolist()), onsets, sizes[order], leads, shortest)


def _as_wide(onsets: NDArray[np.int64], width: int) -> NDArray[np.int64]:
    return np.pad(onsets, ((0, 0), (0, width - onsets.shape[1])), mode="edge")


@lru_cache(maxsize=512)
def rhythm_pool(place: int, length: int, pace: Pace, level: int, grid: Grid) -> Pool | None:
    """Rhythms for a stretch of `length` units that begins `place` units after a beat; None where none fits.

    Examples:
        >>> pool = rhythm_pool(6, 18, "medium", 5, "quarters")
        >>> all(3 <= size <= 12 for size in pool.sizes), max(one.onsets[-1] + one.last for one in pool.rhythms) <= 18
        (True, True)
        >>> rhythm_pool(0, 6, "up", 1, "quarters") is None
        True
    """
    chance = Chance.of(0, "fill rhythms", f"{place} {length} {pace} {level} {grid}")
    wholes = round(_WHOLE_SHARE * _POOL) if grid == "quarters" else 0
    tried = (_whole(chance, place, length, pace, level) for _ in range(wholes))
    found = [one for one in tried if one is not None]
    for _ in range(9 * _POOL):
        one = _drawn(chance, place, length, pace, level, grid)
        if one is not None:
            found.append(one)
            if len(found) == _POOL:
                break
    return Pool.of(found) if found else None


def _drawn(chance: Chance, place: int, length: int, pace: Pace, level: int, grid: Grid) -> Rhythm | None:
    size = _size(chance, pace, level)
    best: list[int] = []
    for _ in range(_TRIES):
        starts = _starts(chance, place, length, pace, level, grid)
        if starts:
            first = starts[0] if size >= _LONG else chance.pick(starts)
            onsets = _extended(chance, place, length, [first], size, pace, level, grid)
            if len(onsets) > len(best):
                best = onsets
        if len(best) >= size:
            break
    if len(best) < _FEWEST or (len(best) == _FEWEST < size and not chance.happens(_CUT_SHORT)):
        return None
    kinds = len({b - a for a, b in pairwise(best)})
    span = (best[-1] - best[0]) / (_SPAN_SHARE * min(length, _USUAL_UNITS))
    is_kept = chance.happens(
        min(span, 1.0) ** 2 * (1.0 if grid == "folk" else _MIXED[min(kinds + (len(best) < _LONG), 4)])
    )
    return _closed(chance, place, length, best) if is_kept else None


def continued(
    chance: Chance, place: int, length: int, pace: Pace, level: int, grid: Grid, onsets: Sequence[int]
) -> Rhythm:
    """A rhythm that begins with given attacks in a stretch (see `rhythm_pool`) and goes on for up to three notes.

    Examples:
        >>> continued(Chance(1), 0, 36, "medium", 5, "quarters", (0, 6, 12, 18)).onsets[:4]
        (0, 6, 12, 18)
    """
    size = min(len(onsets) + chance.below(4), max(_MOST[level], len(onsets)))
    return _closed(chance, place, length, _extended(chance, place, length, onsets, size, pace, level, grid))


def _extended(
    chance: Chance, place: int, length: int, onsets: Sequence[int], size: int, pace: Pace, level: int, grid: Grid
) -> list[int]:
    """The attacks with others after them, until there are `size` or the stretch is full."""
    found = list(onsets)
    values = _walk(chance, place + found[-1], pace, level, grid)
    while len(found) < size:
        value, count = next(values)
        if found[-1] + count * value > length - 3:
            break
        found += [found[-1] + value * number for number in range(1, count + 1)]
    return found


def _size(chance: Chance, pace: Pace, level: int) -> int:
    most = _MOST[level]
    shares = list(fill_tables()["sizes"][pace][: most - _FEWEST + 1])
    shares[0] *= _THREE_NOTES[level]
    shares = [share * (1.0 + _FULLER[level] * number) for number, share in enumerate(shares)]
    return chance.pick(range(_FEWEST, most + 1), shares)


def _starts(chance: Chance, place: int, length: int, pace: Pace, level: int, grid: Grid) -> range:
    """Where the first note may stand: in any beat of the stretch, at a place in the beat where people begin."""
    if grid in _EVEN:
        step = 6 if grid == "eighths" else 12
        return range(-place % step, length - 15, step)
    units, shares = fill_tables()["place units"], list(fill_tables()["starts"][pace])
    for number, unit in enumerate(units):
        if (unit not in (0, 6) and level < 3) or (unit in (4, 8) and (level < 4 or grid == "straight")):
            shares[number] = 0.0
    wanted = chance.pick(units, shares)
    return range((wanted - place) % 12, length - 9, 12)


def _walk(chance: Chance, place: int, pace: Pace, level: int, grid: Grid) -> Iterator[tuple[int, int]]:
    """Values without end from a place in the beat, each with how often it comes in a row."""
    if grid in _EVEN:
        values, shares = zip(*(each for each in _EVEN[grid] if each[0] >= 6 or level >= 4), strict=True)
        while True:
            value = chance.pick(values, shares)
            yield value, 1 + (value == 3)
    before = -1
    while True:
        place %= 12
        values, shares = _followers(place, before, pace, level, grid)
        value = chance.pick(values, shares)
        yield value, 3 if value == 2 else 1
        before = fill_tables()["value units"].index(value)
        place += 6 if value == 2 else value


@lru_cache(maxsize=2048)
def _followers(
    place: int, before: int, pace: Pace, level: int, grid: Grid
) -> tuple[tuple[int, ...], tuple[float, ...]]:
    """The values that may follow at a place in the beat after a value (its number, -1 for none), with their odds."""
    tables = fill_tables()
    units = tables["value units"]
    odds = tables["values"][tables["place units"].index(place)][before]
    reads = _NEXT[place] + ((_SYNCOPATED[place],) if level >= 3 and place in _SYNCOPATED else ())
    allowed = [value for value in reads if value in _VALUES.get(level, units) or len(reads) == 1]
    allowed = [value for value in allowed if grid != "straight" or value not in _OF_TRIPLETS]
    allowed = allowed or [12 - place]
    shares = [
        float(np.exp(odds[units.index(value)]))
        * tables["value tilt"][pace][units.index(value)]
        * (_SAME if place in (0, 6) and before == units.index(value) else 1.0)
        for value in allowed
    ]
    return tuple(allowed), tuple(shares)


def _closed(chance: Chance, place: int, length: int, onsets: Sequence[int]) -> Rhythm:
    """The rhythm with its last note: held up to the next note of the tune, or short with a rest after it."""
    left, inside = length - onsets[-1], (place + onsets[-1]) % 12
    to_beat = 12 - inside
    reads = left == to_beat if inside in (4, 8) else left <= to_beat + 6 or inside in (0, 6)
    if reads and left <= _LONGEST_LEAD and (left <= 3 or chance.happens(_LEADS if left <= 12 else 0.5)):
        return Rhythm(tuple(onsets), left, leads=True)
    last = to_beat if inside not in (0, 6) else chance.pick((6, 12))
    last = min(last, left - 3 if left % 3 == 0 and left > 6 else left)
    return Rhythm(tuple(onsets), last, leads=last == left)


def _whole(chance: Chance, place: int, length: int, pace: Pace, level: int) -> Rhythm | None:
    """The rhythm of a whole phrase, somewhere in the stretch; None where none fits."""
    most, known = _MOST[level], _VALUES.get(level)
    entries = [
        (count, starts)
        for count, begins, values in fill_tables()["rhythms"][pace]
        if len(values) < most and (known is None or known.issuperset(values))
        for starts in [
            [(start, tuple(values)) for start in range((begins - place) % 12, length - sum(values) - 2, 12)]
        ]
        if starts
    ]
    if not entries:
        return None
    start, values = chance.pick(chance.pick([starts for _, starts in entries], [count for count, _ in entries]))
    onsets = [start]
    for value in values:
        onsets.append(onsets[-1] + value)
    return _closed(chance, place, length, onsets)
