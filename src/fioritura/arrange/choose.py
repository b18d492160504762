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
from math import log
from typing import Final
from zlib import crc32

import numpy as np
from numpy.typing import NDArray

from fioritura.errors import OptionError

__all__ = ["Candidate", "Model", "choose", "gumbel"]

_IMPOSSIBLE: Final = -1e9


@dataclass(frozen=True, slots=True)
class Candidate:
    """A figure as the chooser sees it: it starts in slot `first`, and the next figure may start in `next_free`."""

    first: int
    next_free: int
    technique: int
    score: float
    is_locked: bool = False


@dataclass(frozen=True, slots=True)
class Model:
    """What is to be solved.

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
    unit = (crc32(f"{seed}/{name}".encode()) + 0.5) / 2**32
    return scale * (-log(-log(unit)) - 0.5772156649)


def choose(model: Model) -> tuple[list[int], float]:
    """Indices of the chosen candidates in order, and the worth of the set.

    Raises:
        OptionError: the locked candidates collide with each other.
    """
    return _Programme(model).solve()


class _Programme:
    """Tables of the dynamic programme: `value[s][last, family before, count]` is the best worth of figures that all
    leave slot s free, given the state."""

    def __init__(self, model: Model) -> None:
        self.model = model
        self.slots = len(model.phrase_of_slot)
        self.techniques = len(model.family)
        self.families = max(model.family, default=-1) + 1
        self.counts = max(model.limits, default=0) + 1
        self.starts = [model.family.index(family) for family in range(self.families)] + [self.techniques]
        self.family = np.array([*model.family, self.families])
        kin = self.family[:, None] == self.family[None, :]
        same = np.eye(self.techniques + 1, dtype=bool)
        self.penalty = (model.same_family * kin + model.same_technique * same).astype(np.float32)
        """What a figure of the row's technique loses after one of the column's."""
        shape = (self.techniques + 1, self.families + 1, self.counts)
        self.value = np.full((self.slots + 1, *shape), _IMPOSSIBLE, np.float32)
        self.value[0][-1, -1, 0] = 0.0
        self.grid = np.indices((self.techniques + 1, self.counts), sparse=True)
        self.by_start: list[list[Candidate]] = [[] for _ in range(self.slots)]
        self.by_landing: list[list[int]] = [[] for _ in range(self.slots + 1)]
        self.passable = [True] * self.slots
        for index, candidate in enumerate(model.candidates):
            self.by_start[candidate.first].append(candidate)
            self.by_landing[min(candidate.next_free, self.slots)].append(index)
            if candidate.is_locked:
                for slot in range(candidate.first, min(candidate.next_free, self.slots)):
                    self.passable[slot] = False

    def _phrase(self, slot: int) -> int:
        return self.model.phrase_of_slot[slot] if slot < self.slots else len(self.model.limits)

    def _penalised(self, slot: int, technique: int) -> NDArray[np.float32]:
        """The worth of each state before a figure of a technique that starts here."""
        table = self.value[slot].copy()
        table[:, self.model.family[technique], :] -= np.float32(self.model.family_again)
        return np.asarray(table - self.penalty[technique][:, None, None])

    def _forward(self) -> None:
        for slot in range(self.slots):
            if self.by_start[slot]:
                self._start_figures(slot)
            if self.passable[slot]:
                table, after = self.value[slot], self.value[slot + 1]
                if self._phrase(slot + 1) == self._phrase(slot):
                    np.maximum(after, table, out=after)
                else:
                    np.maximum(after[:, :, 0], table.max(axis=2), out=after[:, :, 0])

    def _start_figures(self, slot: int) -> None:
        """Land every figure that starts in a slot, from the best state that could precede it."""
        candidates = self.by_start[slot]
        techniques = [candidate.technique for candidate in candidates]
        table, rows, columns = self.value[slot], *self.grid
        best_family = table.argmax(axis=1)
        best = table[rows, best_family, columns]
        others = table.copy()
        others[rows, best_family, columns] = _IMPOSSIBLE
        weakened = np.maximum(others.max(axis=1), best - np.float32(self.model.family_again))
        own = self.family[techniques][:, None, None]
        by_last = np.where(best_family == own, weakened, best) - self.penalty[techniques][:, :, None]
        before = np.maximum.reduceat(by_last, self.starts, axis=1)
        before += np.array([candidate.score for candidate in candidates], dtype=np.float32)[:, None, None]
        phrase = self._phrase(slot)
        limit = self.model.limits[phrase]
        for candidate, gained in zip(candidates, before[:, :, :limit], strict=True):
            landing = min(candidate.next_free, self.slots)
            target = self.value[landing, candidate.technique]
            if self._phrase(landing) == phrase:
                np.maximum(target[:, 1 : limit + 1], gained, out=target[:, 1 : limit + 1])
            elif limit:
                np.maximum(target[:, 0], gained.max(axis=1), out=target[:, 0])

    def solve(self) -> tuple[list[int], float]:
        self._forward()
        final = self.value[self.slots]
        worth = float(final.max())
        if worth < _IMPOSSIBLE / 2:
            raise OptionError("Two locked figures collide or overfill their phrase: unlock one of them.")
        last, before, count = (int(n) for n in np.unravel_index(int(final.argmax()), final.shape))
        return self._traced(last, before, count), worth

    def _traced(self, last: int, before: int, count: int) -> list[int]:
        """Walk back from the end: at each slot the state came from passing on or from one of the figures."""
        chosen: list[int] = []
        slot = self.slots
        while slot > 0:
            value = self.value[slot][last, before, count]
            step = self._passed(slot, last, before, count, value)
            if step is not None:
                slot, count = slot - 1, step
                continue
            index, state = self._came_from(slot, last, before, count, value)
            chosen.append(index)
            slot = self.model.candidates[index].first
            last, before, count = state
        return chosen[::-1]

    def _passed(self, slot: int, last: int, before: int, count: int, value: np.float32) -> int | None:
        if not self.passable[slot - 1]:
            return None
        table = self.value[slot - 1][last, before]
        if self._phrase(slot - 1) == self._phrase(slot):
            return count if table[count] == value else None
        best = int(table.argmax())
        return best if count == 0 and table[best] == value else None

    def _came_from(
        self, slot: int, last: int, before: int, count: int, value: np.float32
    ) -> tuple[int, tuple[int, int, int]]:
        model = self.model
        for index in self.by_landing[slot]:
            candidate = model.candidates[index]
            if candidate.technique != last:
                continue
            start = candidate.first
            table = self._penalised(start, last)[self.starts[before] : self._stop(before)] + np.float32(
                candidate.score
            )
            phrase = self._phrase(start)
            limit = model.limits[phrase]
            stays = self._phrase(slot) == phrase
            counts = table[:, :, count - 1 : count] if stays else table[:, :, :limit]
            if counts.size and (stays or count == 0) and counts.max() == value:
                place = np.unravel_index(int(counts.argmax()), counts.shape)
                found = count - 1 if stays else int(place[2])
                return index, (int(place[0]) + self.starts[before], int(place[1]), found)
        raise RuntimeError("the tables of the programme contradict each other: please report the tune and the seed")

    def _stop(self, family: int) -> int:
        return self.starts[family + 1] if family < self.families else self.techniques + 1
