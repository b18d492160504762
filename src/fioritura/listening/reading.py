"""The programme that reads a played line: the path through the lattice that explains it at least cost.

Costs are natural logarithms of odds. A played note that is not expected, and an expected one that is not played, are
slips; a figure must explain more than it costs. The path is found exactly (Viterbi over slots and events), within a
band around each note's own time.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.lattice import Arc, Expected, figure_marks
from fioritura.theory.metre import QUARTER
from fioritura.tune import Mark

__all__ = ["Heard", "Reading", "ReadingCosts", "Use", "read_line"]

Floats = NDArray[np.float64]

_INFINITE: Final = 1e9
_BAND_TICKS: Final = 1.5 * QUARTER


@dataclass(frozen=True, slots=True)
class Heard:
    """An event at its place in the plain tune, in ticks, at the tune's own pitch. `seconds` is how long it lasts, None
    in a written line; `confidence` how clearly it was heard."""

    onset: float
    end: float
    midi: int
    is_grace: bool = False
    marks: frozenset[Mark] = frozenset()
    seconds: float | None = None
    confidence: float = 1.0
    repeat_odds: float = np.inf


@dataclass(frozen=True, slots=True)
class ReadingCosts:
    """The prices of a reading."""

    wrong_pitch: float = 2.5
    wrong_added: float = 3.5
    """A wrong pitch in an added note: more than a note that nothing explains, since it speaks for no figure."""
    extra: float = 2.0
    extra_grace: float = 1.6
    left_out: float = 2.2
    onset: float = 0.5
    """For each `onset_ticks` from the place where the note is expected."""
    onset_ticks: float = QUARTER / 16
    onset_limit: float = 1.2
    length: float = 0.5
    """For each doubling or halving of the length."""
    length_limit: float = 1.2
    sign: float = 2.2
    """A sign that is expected and not there, or there and not expected."""
    grace: float = 0.8
    """A written grace note for a full note, or the other way round."""
    figure: float = 0.0
    """For each figure, on top of its own price."""
    grace_sec: float = 0.09
    """In a recording a note of up to this length may be a grace note."""


@dataclass(frozen=True, slots=True)
class Use:
    """One arc of a reading: for each of its notes the event that was heard for it (None where there was none), from
    `first` to `stop` (excluded) of the events, those that it does not explain among them."""

    arc: Arc
    events: tuple[tuple[Expected, int | None], ...]
    first: int
    stop: int


@dataclass(frozen=True)
class Reading:
    """The arcs of the best path in order, the events that none explains, and the cost of the whole."""

    uses: tuple[Use, ...]
    extras: tuple[int, ...]
    cost: float


def read_line(
    heard: Sequence[Heard], arcs: Mapping[int, Sequence[Arc]], slots: tuple[int, int], costs: ReadingCosts
) -> Reading:
    """The best reading of events between two even slots; `arcs` holds the arcs by the slot they start from."""
    return _Reader(heard, arcs, slots, costs).solve()


class _Reader:
    """`open[s]` (two rows: the open note was heard, or not) for odd slots and `raw[s]` for even ones hold the least
    cost of having come to slot s with the first p events dealt with."""

    def __init__(
        self,
        heard: Sequence[Heard],
        arcs: Mapping[int, Sequence[Arc]],
        slots: tuple[int, int],
        costs: ReadingCosts,
    ) -> None:
        self.heard, self.arcs = heard, arcs
        self.first_slot, self.stop_slot = slots
        self.evidence = _Evidence(heard, costs)
        count = len(heard) + 1
        self.table: dict[int, Floats] = {}
        self.best: dict[int, NDArray[np.int32]] = {}
        for slot in range(self.first_slot, self.stop_slot + 1):
            self.table[slot] = np.full((1 + slot % 2, count), _INFINITE)
            self.best[slot] = np.full((1 + slot % 2, count), -1, np.int32)
        self.table[self.first_slot][0, 0] = 0.0
        self.used: list[Arc] = []

    def solve(self) -> Reading:
        for slot in range(self.first_slot, self.stop_slot):
            for arc in self.arcs.get(slot, ()):
                if arc.stop > self.stop_slot:
                    continue
                window = self.evidence.window(arc)
                target = self.table[arc.stop][:, window]
                found = self._stages(arc, window)[-1]
                cheaper = found < target
                target[cheaper] = found[cheaper]
                self.best[arc.stop][:, window][cheaper] = len(self.used)
                self.used.append(arc)
        final = self._settled(self.stop_slot)
        return self._traced(float(final[-1]))

    def _settled(self, slot: int) -> Floats:
        """Costs at an even slot after any events that nothing explains."""
        return self.evidence.passed(self.table[slot][0], slice(0, len(self.heard) + 1))

    def _stages(self, arc: Arc, window: slice) -> list[Floats]:
        """Costs within a window before the arc's first note, after each of its notes, and at its end (2-d)."""
        if arc.closes is None:
            now = self._settled(arc.start)[window]
        else:
            heard, unheard = self.table[arc.start][:, window]
            now = np.minimum(heard + self.evidence.closing(arc, window), unheard)
        stages = [now]
        for note in arc.notes:
            played, unplayed = self._after(now, note, window)
            now = np.minimum(played, unplayed)
            stages.append(now)
        rows = self._after(now, arc.opens, window) if arc.opens else (now,)
        stages.append(np.stack(rows) + self.evidence.price(arc))
        return stages

    def _after(self, now: Floats, note: Expected, window: slice) -> tuple[Floats, Floats]:
        """Costs after a note that was played, and after one that was not."""
        ready = self.evidence.passed(now, window)
        played = np.full_like(ready, _INFINITE)
        played[1:] = ready[:-1] + self.evidence.match(note, window)
        return played, ready + self.evidence.left_out(note)

    def _traced(self, cost: float) -> Reading:
        uses: list[Use] = []
        extras: list[int] = []
        slot, place, row = self.stop_slot, len(self.heard), 0
        while True:
            if slot % 2 == 0:
                settled = self._unpassed(self.table[slot][0], place)
                extras += range(settled, place)
                place = settled
            if slot == self.first_slot:
                break
            arc = self.used[self.best[slot][row, place]]
            use, row = self._retraced(arc, row, place)
            explained = {event for _, event in use.events}
            extras += (event for event in range(use.first, use.stop) if event not in explained)
            uses.append(use)
            slot, place = arc.start, use.first
        return Reading(tuple(uses[::-1]), tuple(sorted(extras)), cost)

    def _unpassed(self, costs: Floats, place: int) -> int:
        return int(np.argmin(costs[: place + 1] - self.evidence.behind[: place + 1]))

    def _retraced(self, arc: Arc, row: int, place: int) -> tuple[Use, int]:
        """What an arc explains when it ends with `place` events behind, and the row of the slot it starts from."""
        window = self.evidence.window(arc)
        stages = self._stages(arc, window)
        stop, here = place, place - window.start
        pairs: list[tuple[Expected, int | None]] = []
        for number in range(len(arc.wanted) - 1, -1, -1):
            note = arc.wanted[number]
            played, unplayed = self._after(stages[number], note, window)
            is_open = note is arc.opens
            was_played = row == 0 if is_open else bool(played[here] <= unplayed[here])
            here -= was_played
            pairs.append((note, window.start + here if was_played else None))
            behind = self.evidence.behind[window]
            here = int(np.argmin(stages[number][: here + 1] - behind[: here + 1]))
        row = 0
        if arc.closes is not None:
            heard, unheard = self.table[arc.start][:, window]
            row = int(unheard[here] < heard[here] + self.evidence.closing(arc, window)[here])
        return Use(arc, tuple(pairs[::-1]), window.start + here, stop), row


class _Evidence:
    """What the events say for and against expected notes. A window is a slice of places, from `start` events behind
    to `stop` - 1 events behind."""

    def __init__(self, heard: Sequence[Heard], costs: ReadingCosts) -> None:
        self.costs = costs
        self.onset = np.array([one.onset for one in heard])
        self.length = np.maximum(np.array([one.end - one.onset for one in heard]), 1.0)
        self.midi = np.array([one.midi for one in heard], dtype=np.int64)
        self.is_grace = np.array([one.is_grace for one in heard], dtype=np.bool_)
        self.is_sound = np.array([one.seconds is not None for one in heard], dtype=np.bool_)
        self.seconds = np.array([one.seconds or 0.0 for one in heard])
        self.signs = {mark: np.array([mark in one.marks for one in heard]) for mark in figure_marks()}
        sure = np.array([one.confidence for one in heard])
        odds = np.array([one.repeat_odds for one in heard])
        extra = np.where(self.is_grace, costs.extra_grace, costs.extra) * sure**2
        extra = np.minimum(extra, np.logaddexp(0.0, odds))
        self.struck = np.logaddexp(0.0, -odds)
        self.behind = np.concatenate([[0.0], np.cumsum(extra)])

    def price(self, arc: Arc) -> float:
        """What an arc costs before any note is heard."""
        return arc.price if arc.offer is None else arc.price + self.costs.figure

    def window(self, arc: Arc) -> slice:
        """The places within a band around what an arc expects."""
        first, last = arc.span
        start = int(np.searchsorted(self.onset, first - _BAND_TICKS))
        stop = int(np.searchsorted(self.onset, last + _BAND_TICKS, side="right"))
        return slice(start, stop + 1)

    def passed(self, costs: Floats, window: slice) -> Floats:
        """Costs after events that nothing explains."""
        behind = self.behind[window]
        return np.asarray(np.minimum.accumulate(costs - behind) + behind)

    def left_out(self, note: Expected) -> float:
        """Cost of an expected note that was not played."""
        return self.costs.extra_grace if note.is_grace else self.costs.left_out

    def match(self, note: Expected, window: slice) -> Floats:
        """Cost of each event of a window as an expected note."""
        costs = self.costs
        events = slice(window.start, window.stop - 1)
        wrong = costs.wrong_added if note.plain is None else costs.wrong_pitch
        cost = wrong * (self.midi[events] != note.midi) + self.struck[events]
        away = np.abs(self.onset[events] - note.onset)
        if note.is_grace:
            cost = cost + np.where(
                self.is_sound[events],
                costs.grace * np.clip(self.seconds[events] / costs.grace_sec - 1, 0, 2),
                costs.grace * ~self.is_grace[events],
            )
            away = np.maximum(away - QUARTER / 4, 0)
        else:
            cost = cost + costs.grace * self.is_grace[events] + self._length(note.onset, note.end, events)
            for mark, present in self.signs.items():
                cost = cost + costs.sign * (present[events] != (mark in note.marks))
        return np.asarray(cost + costs.onset * np.minimum(away / costs.onset_ticks, 2 * costs.onset_limit))

    def closing(self, arc: Arc, window: slice) -> Floats:
        """Cost of letting the event before each place end where the arc says."""
        places = np.arange(window.start, window.stop)
        events = np.maximum(places - 1, 0)
        if not len(self.onset):
            return np.zeros(len(places))
        assert arc.closes is not None
        cost = self._length(self.onset[events], arc.closes, events)
        for mark in arc.tail_marks:
            cost = cost + self.costs.sign * np.where(self.signs[mark][events], -1.0, 1.0)
        return np.asarray(cost)

    def _length(self, onset: float | Floats, end: float, events: slice | NDArray[np.int64]) -> Floats:
        wanted = np.maximum(end - onset, 1.0)
        doublings = np.abs(np.log2(self.length[events] / wanted))
        return np.asarray(np.minimum(self.costs.length * doublings, self.costs.length_limit))
