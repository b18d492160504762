"""A metre as a tree of cells, and how a length inside it is cut into note values.

A 4/4 bar halves into half-bars, beats, eighths and so on; a 6/8 bar is two dotted beats of three eighths. A note
stays whole when it lies in a cell and its ends lie on the cell's joints: the quarters of a halving cell, the half
parts of one in thirds, the group borders of compound and uneven metres. A cell whose places the halving grid
can't give is read as a tuplet; among the readings the one with the fewest pieces, ties and subdivisions wins.

The rules are those of common practice as the notation handbooks of Gardner Read and Elaine Gould give them (from
memory). Places are ticks from the start of the metre's bar.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH, WHOLE, Metre

__all__ = ["SIXTYFOURTH", "VALUES", "Cell", "Region", "Span", "bar_cell", "cuts", "tuplets"]

SIXTYFOURTH: Final = WHOLE // 64
VALUES: Final[dict[int, tuple[int, int]]] = {
    WHOLE // value * (3 if dots else 2) // 2: (value, dots)
    for value in (1, 2, 4, 8, 16, 32, 64)
    for dots in (0, 1)
    if (value, dots) != (64, 1)
}
"""Length in ticks to (part of a whole note, dots): 2520 is (4, 1), a dotted quarter."""

_HALVING_TUPLETS: Final = ((3, 2), (6, 4), (5, 4), (7, 4))
_DOTTED_TUPLETS: Final = ((2, 3), (4, 3), (5, 6), (7, 6))
_MIXED_GROUPS: Final = {7: (4, 3)}


@dataclass(frozen=True, slots=True, eq=False)
class Cell:
    """A stretch of a bar and its `parts`; compared by identity.

    A note over one border of parts is written whole when its ends lie on `joints`, over several when they lie on
    `borders`. A rest is written whole when it is one of `rests`. All places count from the cell's start.
    """

    length: int
    parts: tuple[Cell, ...]
    borders: tuple[int, ...]
    joints: frozenset[int]
    rests: frozenset[tuple[int, int]]
    is_dotted: bool = False
    holds_dotted: bool = False


def _cell(parts: Sequence[Cell], joints: Iterable[int], rests: Iterable[tuple[int, int]], dotted: bool) -> Cell:
    borders = [0]
    for part in parts:
        borders.append(borders[-1] + part.length)
    holds_dotted = dotted or any(part.holds_dotted for part in parts)
    return Cell(borders[-1], tuple(parts), tuple(borders), frozenset(joints), frozenset(rests), dotted, holds_dotted)


@lru_cache(maxsize=64)
def _halving(length: int) -> Cell:
    whole = frozenset({(0, length)})
    if length % 2 or length <= SIXTYFOURTH:
        return Cell(length, (), (0, length), frozenset({0, length}), whole)
    joints = range(0, length + 1, length // 4) if length % 4 == 0 else (0, length // 2, length)
    return _cell([_halving(length // 2)] * 2, joints, whole, dotted=False)


@lru_cache(maxsize=64)
def _thirds(part: int, rests: bool) -> Cell:
    """Three halving parts; with `rests`, one rest may fill it or its first two parts."""
    allowed = ((0, 3 * part), (0, 2 * part)) if rests else ()
    return _cell([_halving(part)] * 3, range(0, 3 * part + 1, part // 2), allowed, dotted=True)


def _row(parts: Sequence[Cell], rests: bool = False) -> Cell:
    """Groups side by side, which notes cross only from border to border."""
    length = sum(part.length for part in parts)
    joints = [sum(part.length for part in parts[:count]) for count in range(len(parts) + 1)]
    return _cell(parts, joints, ((0, length),) if rests else (), dotted=False)


@lru_cache(maxsize=256)
def _metre_cell(metre: Metre) -> Cell:
    unit = metre.unit_ticks
    if metre.is_compound:
        beat = _thirds(unit, True)
        count = metre.beats // 3
        if count == 1:
            return beat
        if count == 4:
            half = _row([beat] * 2, rests=True)
            return _cell([half] * 2, range(0, 12 * unit + 1, 3 * unit), (), dotted=False)
        return _row([beat] * count)
    if len(set(metre.groups_ticks)) > 1:
        sizes = [group // unit for group in metre.groups_ticks]
    elif metre.beats.bit_count() == 1:
        return _halving(metre.bar_ticks)
    else:
        sizes = list(_MIXED_GROUPS.get(metre.beats, _threes_and_twos(metre.beats)))
    cells = [_thirds(unit, unit < QUARTER) if size == 3 else _halving(size * unit) for size in sizes]
    return cells[0] if len(cells) == 1 else _row(cells)


def _threes_and_twos(beats: int) -> tuple[int, ...]:
    twos = -beats % 3
    return (3,) * ((beats - 2 * twos) // 3) + (2,) * twos


@lru_cache(maxsize=256)
def bar_cell(metre: Metre, length: int) -> Cell:
    """The cell of a bar, or of as many bars as an overfull bar needs."""
    bar = _metre_cell(metre)
    return bar if length <= bar.length else _row([bar] * -(-length // bar.length))


@lru_cache(maxsize=8192)
def cuts(cell: Cell, start: int, end: int, is_rest: bool) -> tuple[tuple[int, int], ...]:
    """Cut a stretch of a cell into pieces that are written with one note value each."""
    for part, place in zip(cell.parts, cell.borders, strict=False):
        if place <= start and end <= place + part.length:
            if (start, end) == (place, place + part.length) and not is_rest and end - start in VALUES:
                return ((start, end),)
            inner = cuts(part, start - place, end - place, is_rest)
            return tuple((first + place, last + place) for first, last in inner)
    if not cell.parts or _stays_whole(cell, start, end, is_rest):
        return ((start, end),)
    crossed = [border for border in cell.borders if start < border < end]
    if start in cell.borders:
        crossed.reverse()
    options = (cuts(cell, start, at, is_rest) + cuts(cell, at, end, is_rest) for at in crossed)
    return min(options, key=len)


def _stays_whole(cell: Cell, start: int, end: int, is_rest: bool) -> bool:
    if end - start not in VALUES:
        return False
    if is_rest:
        return (start, end) in cell.rests
    crossed = sum(start < border < end for border in cell.borders)
    allowed = cell.joints if crossed == 1 else cell.borders
    return start in allowed and end in allowed


@dataclass(frozen=True, slots=True)
class Region:
    """A stretch that is not written in plain values: a tuplet, or (0 for 0) one with no exact notation."""

    start: int
    end: int
    actual: int
    normal: int

    def cuts(self, start: int, end: int, is_rest: bool) -> list[tuple[int, int]]:
        """Cut a stretch inside the region; places in ticks of the bar."""
        if not self.actual:
            return [(start, end)]
        at, actual, normal = self.start, self.actual, self.normal
        inside = _tuplet_cell(actual, (self.end - at) // normal)
        pieces = cuts(inside, (start - at) * actual // normal, (end - at) * actual // normal, is_rest)
        return [(at + first * normal // actual, at + last * normal // actual) for first, last in pieces]


@lru_cache(maxsize=64)
def _tuplet_cell(actual: int, unit: int) -> Cell:
    """The inside of a tuplet as written: `actual` notes of `unit` ticks each."""
    if actual in {2, 4}:
        return _halving(actual * unit)
    if actual % 3 == 0:
        return _thirds(actual // 3 * unit, True)
    return _row([_halving(unit)] * actual)


Span = tuple[int, int, bool]
"""Start, end, and whether it is a rest."""

_Plan = tuple[float, tuple[Region, ...]]


def tuplets(cell: Cell, spans: Sequence[Span]) -> tuple[Region, ...]:
    """The tuplets (and stretches without exact notation) of a bar whose spans fill it, in order."""
    return _plan(cell, tuple(spans), False)[1]


@lru_cache(maxsize=2048)
def _plan(cell: Cell, spans: tuple[Span, ...], goes_on: bool) -> _Plan:
    """The cheapest reading of a cell that `spans` fill: its cost and its tuplets, counted from the cell's start.

    The first span `goes_on` from the cell before. The cost counts written pieces, ties, and what makes a tuplet
    hard to read: its extent and its subdivisions.
    """
    places = [start for start, _, _ in spans]
    options: list[_Plan] = []
    if all(place % SIXTYFOURTH == 0 for place in places):
        options.append((_cost([cuts(cell, *span) for span in spans], goes_on), ()))
        if not cell.holds_dotted or all(place % SIXTEENTH == 0 for place in places):
            return options[0]
    is_exact = bool(options)
    options += _tuplets(cell, spans, goes_on)
    options += _divided(cell, spans, goes_on)
    if not is_exact and (cell.length <= QUARTER or not options):
        loose = sum(place % SIXTYFOURTH != 0 for place in places)
        options.append((1000.0 * loose + len(spans), (Region(0, cell.length, 0, 0),)))
    return min(options, key=lambda option: option[0])


def _cost(pieces_of_spans: Sequence[Sequence[tuple[int, int]]], goes_on: bool) -> float:
    """One for the first piece of a span, two for each that is tied to the one before."""
    return 2.0 * sum(map(len, pieces_of_spans)) - len(pieces_of_spans) + goes_on


def _tuplets(cell: Cell, spans: Sequence[Span], goes_on: bool) -> Iterator[_Plan]:
    if cell.length not in VALUES:
        return
    for actual, normal in _DOTTED_TUPLETS if cell.is_dotted else _HALVING_TUPLETS:
        unit, rest = divmod(cell.length, normal)
        finest = max(unit // 4, SIXTYFOURTH) * normal
        if rest or WHOLE % unit or any(start * actual % finest for start, _, _ in spans):
            continue
        region = Region(0, cell.length, actual, normal)
        subdivided = sum(start * actual % cell.length != 0 for start, _, _ in spans)
        extent = _extent_cost(cell.length)
        cost = _cost([region.cuts(*span) for span in spans], goes_on)
        yield cost + extent + 0.4 * extent * subdivided + (actual == 6), (region,)


def _extent_cost(length: int) -> float:
    if length <= EIGHTH:
        return 1.25
    if length <= QUARTER * 3 // 2:
        return 1.0
    return 2.5 if length <= HALF else 6.5


def _divided(cell: Cell, spans: Sequence[Span], goes_on: bool) -> Iterator[_Plan]:
    """The cell read part by part, and with a tuplet over two parts that are not a cell of their own."""
    if cell.length <= SIXTEENTH or not cell.parts:
        return
    divisions: list[tuple[float, Sequence[Cell]]] = [(0.0, cell.parts)]
    if not cell.is_dotted and len(cell.parts) == 2 and HALF <= cell.parts[0].length == cell.parts[1].length:
        halves = cell.parts[0].parts
        middle = cell.parts[0].length
        if len(halves) == 2 and any(start < middle < end and not is_rest for start, end, is_rest in spans):
            divisions.append((1.0, (halves[0], cell.parts[0], halves[1])))
    if cell.is_dotted and cell.length > HALF:
        pair = _halving(cell.length // 3 * 2)
        divisions += [(0.0, (pair, cell.parts[2])), (0.5, (cell.parts[0], pair))]
    for extra, parts in divisions:
        cost, place = extra, 0
        regions: list[Region] = []
        for part in parts:
            end = place + part.length
            inside = [(s - place, e - place, is_rest) for s, e, is_rest in spans if s < end and e > place]
            clipped = tuple((max(s, 0), min(e, part.length), is_rest) for s, e, is_rest in inside)
            part_cost, found = _plan(part, clipped, goes_on if place == 0 else inside[0][0] < 0)
            cost += part_cost
            regions += (Region(r.start + place, r.end + place, r.actual, r.normal) for r in found)
            place = end
        yield cost, tuple(regions)
