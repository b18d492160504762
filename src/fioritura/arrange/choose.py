"""Choose the best set of figures, exactly.

The model. Each figure has a score and claims a stretch of slots (see `figure.head` and `figure.tail`); after it no
other figure may begin for the level's rest. A set of figures is worth the sum of its scores, less a penalty where a
figure uses the technique of the one before it, or the family of one of the two before it. No phrase holds more
figures than its limit. `choose` returns a set of the highest worth.

The method is a dynamic programme over the slots. Its state is what the future may depend on: the last technique, the
family of the figure before that, and the number of figures in the phrase so far. Time and memory grow linearly with
the length of the tune. A seed perturbs the scores with Gumbel noise, so that another seed gives another good version
and the same seed the same notes for ever.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from fioritura.chance import EULER, Chance
from fioritura.errors import OptionError

__all__ = ["Candidate", "Model", "choose", "gumbel"]

_IMPOSSIBLE: Final = -1e9


class Candidate(NamedTuple):
    """A figure as the chooser sees it: it starts in slot `first`, and the next figure may start in `next_free`."""

    first: int
    next_free: int
    technique: int
    score: float
    is_locked: bool = False


@dataclass(frozen=True, slots=True)
class Model:
    """What is to be solved. Candidates stand in order of their first slot.

    `phrase_of_slot[s]` is the phrase of slot s (never falling), `limits[p]` the most figures in phrase p, and
    `family[t]` the family number of technique t; techniques are numbered so that families stand together, from 0.
    `same_technique`, `same_family` and `family_again` are the penalties
    for the technique of the last figure, the family of the last figure, and the family of the one before it.
    """

    candidates: tuple[Candidate, ...]
    phrase_of_slot: tuple[int, ...]
    limits: tuple[int, ...]
    family: tuple[int, ...]
    same_technique: float
    same_family: float
    family_again: float


def gumbel(seed: int, name: str, scale: float) -> float:
    """Repeatable Gumbel noise for a figure of that name; seed 0 means none."""
    if seed == 0:
        return 0.0
    return scale * (Chance.of(seed, "figure", name).gumbel() - EULER)


def choose(model: Model) -> tuple[list[int], float]:
    """Indices of the chosen candidates in order, and the worth of the set.

    Raises:
        OptionError: the locked candidates collide with each other.
    """
    return _Programme(model).solve()


class _Programme:
    """Tables of the dynamic programme.

    `value[s, last, coming, count]` is the best worth of figures that all leave slot s free, where `last` is the row
    of the last one's technique, `count` their number in the phrase, and `coming` the family of the figure that will
    come next: what the family before the last one would cost it is taken off already. Every family has the same
    number of rows, some of them empty, so that the best of each family is one reduction; the last family is none.
    """

    def __init__(self, model: Model) -> None:
        self.model = model
        self.slots = len(model.phrase_of_slot)
        self.phrases = [*model.phrase_of_slot, len(model.limits)]
        self.families = max(model.family, default=-1) + 1
        self.rows = max(map(model.family.count, model.family), default=1)
        """Rows for each family."""
        row_of = [family * self.rows + t - model.family.index(family) for t, family in enumerate(model.family)]
        self.first = [candidate.first for candidate in model.candidates]
        self.landing = [min(candidate.next_free, self.slots) for candidate in model.candidates]
        self.row = [row_of[candidate.technique] for candidate in model.candidates]
        self.phrase = [self.phrases[slot] for slot in self.first]
        self._lay_out_slots()
        self._lay_out_tables()

    def _lay_out_slots(self) -> None:
        bounds = np.searchsorted(self.first, range(self.slots + 1)).tolist()
        self.by_start = [slice(start, stop) for start, stop in pairwise(bounds)]
        self.by_landing: list[list[int]] = [[] for _ in range(self.slots + 1)]
        self.nearest_landing = [self.slots] * self.slots
        for index, (first, landing) in enumerate(zip(self.first, self.landing, strict=True)):
            self.by_landing[landing].append(index)
            self.nearest_landing[first] = min(self.nearest_landing[first], landing)
        self.passable = [True] * self.slots
        for candidate in self.model.candidates:
            if candidate.is_locked:
                for slot in range(candidate.first, min(candidate.next_free, self.slots)):
                    self.passable[slot] = False

    def _lay_out_tables(self) -> None:
        rows, families, counts = (
            self.rows * (self.families + 1),
            self.families + 1,
            max(self.model.limits, default=0) + 1,
        )
        self.value = np.full((self.slots + 1, rows, families, counts), _IMPOSSIBLE, np.float32)
        self.value[0, -self.rows, :, 0] = 0.0
        self.states = self.value.reshape(-1, counts)
        """The table, one row for each slot, last technique and coming family."""
        row = np.array(self.row, dtype=np.int64)
        self.own = row // self.rows
        """The family of each candidate."""
        every = np.arange(rows)[:, None]
        self.before = (np.array(self.first, dtype=np.int64) * rows + every) * families + self.own
        """The states from which each candidate may start, as rows of `states`: shape (rows, candidates)."""
        penalties = self.model.same_family * (every // self.rows == self.own) + self.model.same_technique * (
            every == row
        )
        self.penalties = np.repeat(penalties.astype(np.float32)[:, :, None], counts, axis=2)
        """What each candidate loses after a technique: shape (rows, candidates, counts)."""
        again = np.float32(self.model.family_again) * np.eye(families, dtype=np.float32)
        again[-1, -1] = 0.0
        self.again = again[:, :, None, None]
        """What a figure of the second family loses when the one before the last was of the first."""
        limits = np.array([self.model.limits[phrase] for phrase in self.phrase], dtype=np.int64)[:, None]
        scores = np.array([candidate.score for candidate in self.model.candidates], np.float32)[:, None]
        self.scores = np.where(np.arange(counts) < limits, scores, np.float32(_IMPOSSIBLE))
        """Score of each candidate by the number of figures before it in the phrase: shape (candidates, counts)."""

    def _forward(self) -> None:
        slot = 0
        while slot < self.slots:
            stop = self._batch_end(slot)
            these = slice(self.by_start[slot].start, self.by_start[stop - 1].stop)
            for passed in range(slot, stop - 1):
                self._pass(passed)
            if these.start < these.stop:
                self._start_figures(these)
            self._pass(stop - 1)
            slot = stop

    def _batch_end(self, slot: int) -> int:
        """The end of the longest row of slots from this one into which none of its own figures lands."""
        stop, nearest = slot + 1, self.nearest_landing[slot]
        while stop < nearest:
            nearest = min(nearest, self.nearest_landing[stop])
            stop += 1
        return stop

    def _pass(self, slot: int) -> None:
        """Leave a slot without a figure."""
        if not self.passable[slot]:
            return
        table, after = self.value[slot], self.value[slot + 1]
        if self.phrases[slot + 1] == self.phrases[slot]:
            np.maximum(after, table, out=after)
        else:
            np.maximum(after[:, :, 0], table.max(axis=2), out=after[:, :, 0])

    def _gained(self, these: slice) -> NDArray[np.float32]:
        """Worth with each of these figures: shape (family of the figure before it, figures, count before it)."""
        by_last = self.states.take(self.before[:, these], axis=0)
        by_last -= self.penalties[:, these]
        gained: NDArray[np.float32] = by_last.reshape(self.families + 1, self.rows, *by_last.shape[1:]).max(axis=1)
        gained += self.scores[these]
        return gained

    def _start_figures(self, these: slice) -> None:
        """Land figures that start in a row of slots, each from the best state that could precede it."""
        gained = self._gained(these)
        landed = (gained[:, None] - self.again).max(axis=0)
        for place, index in enumerate(range(these.start, these.stop)):
            landing = self.landing[index]
            target = self.value[landing, self.row[index]]
            if self.phrases[landing] == self.phrase[index]:
                later = target[:, 1:]
                np.maximum(later, landed[:, place, :-1], out=later)
            else:
                np.maximum(target[:, 0], landed[:, place].max(axis=1), out=target[:, 0])

    def solve(self) -> tuple[list[int], float]:
        self._forward()
        final = self.value[self.slots, :, -1]
        worth = float(final.max())
        if worth < _IMPOSSIBLE / 2:
            raise OptionError("locked-figures-collide")
        last, count = (int(n) for n in np.unravel_index(int(final.argmax()), final.shape))
        return self._traced(last, self.families, count), worth

    def _traced(self, last: int, coming: int, count: int) -> list[int]:
        """Walk back from the end: at each slot the state came from passing on or from one of the figures."""
        chosen: list[int] = []
        slot = self.slots
        while slot > 0:
            value = self.value[slot, last, coming, count]
            step = self._passed(slot, last, coming, count, value)
            if step is not None:
                slot, count = slot - 1, step
                continue
            index, last, count = self._came_from(slot, last, coming, count, value)
            chosen.append(index)
            slot = self.first[index]
            coming = int(self.own[index])
        return chosen[::-1]

    def _passed(self, slot: int, last: int, coming: int, count: int, value: np.float32) -> int | None:
        if not self.passable[slot - 1]:
            return None
        row = self.value[slot - 1, last, coming]
        if self.phrases[slot - 1] == self.phrases[slot]:
            return count if row[count] == value else None
        best = int(row.argmax())
        return best if count == 0 and row[best] == value else None

    def _came_from(self, slot: int, last: int, coming: int, count: int, value: np.float32) -> tuple[int, int, int]:
        """The figure that led to a state, and the row of the technique and the count before it."""
        for index in self.by_landing[slot]:
            if self.row[index] != last:
                continue
            phrase = self.phrase[index]
            stays = self.phrases[slot] == phrase
            if not stays and count:
                continue
            gained = self._gained(slice(index, index + 1))[:, 0] - self.again[:, coming, :, 0]
            wanted = gained[:, count - 1 : count] if stays else gained[:, : self.model.limits[phrase]]
            if wanted.size and wanted.max() == value:
                family, place = (int(n) for n in np.unravel_index(int(wanted.argmax()), wanted.shape))
                before = count - 1 if stays else place
                return index, self._last_of(index, family, before), before
        raise RuntimeError("the tables of the programme contradict each other: please report the tune and the seed")

    def _last_of(self, index: int, family: int, count: int) -> int:
        """The row of the last figure before one, given that figure's family."""
        rows = slice(family * self.rows, (family + 1) * self.rows)
        column = self.states[self.before[rows, index], count] - self.penalties[rows, index, count]
        return rows.start + int(column.argmax())
