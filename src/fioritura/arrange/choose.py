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
    unit = (crc32(f"{seed}/{name}".encode()) + 0.5) / 2**32
    return scale * (-log(-log(unit)) - 0.5772156649)


def choose(model: Model) -> tuple[list[int], float]:
    """Indices of the chosen candidates in order, and the worth of the set.

    Raises:
        OptionError: the locked candidates collide with each other.
    """
    return _Programme(model).solve()


class _Programme:
    """Tables of the dynamic programme.

    `value[s][last, coming, count]` is the best worth of figures that all leave slot s free, where `last` is the
    technique of the last one, `count` their number in the phrase, and `coming` the family of the figure that will
    come next: what the family before the last one would cost it is taken off already. The numbers after the last
    technique and the last family stand for none.
    """

    def __init__(self, model: Model) -> None:
        self.model = model
        self.slots = len(model.phrase_of_slot)
        self.phrases = [*model.phrase_of_slot, len(model.limits)]
        self.techniques = len(model.family)
        self.families = max(model.family, default=-1) + 1
        counts = max(model.limits, default=0) + 1
        self.starts = [model.family.index(family) for family in range(self.families)] + [self.techniques]
        family = np.array([*model.family, self.families])
        kin = family[:, None] == family[None, :]
        same = np.eye(self.techniques + 1, dtype=bool)
        self.penalty = (model.same_family * kin + model.same_technique * same).astype(np.float32)
        """What a figure of the column's technique loses after one of the row's."""
        self.again = np.float32(model.family_again) * np.eye(self.families + 1, dtype=np.float32)
        """What a figure of the column's family loses when the one before the last was of the row's."""
        self.again[-1, -1] = 0.0
        shape = (self.slots + 1, self.techniques + 1, self.families + 1, counts)
        self.value = np.full(shape, _IMPOSSIBLE, np.float32)
        self.value[0, -1, :, 0] = 0.0
        candidates = model.candidates
        technique = np.array([candidate.technique for candidate in candidates], dtype=np.int64)
        self.own = family[technique]
        self.penalties = self.penalty[:, technique, None]
        self.scores = np.array([candidate.score for candidate in candidates], dtype=np.float32)[None, :, None]
        self.technique = technique.tolist()
        self.landing = [min(candidate.next_free, self.slots) for candidate in candidates]
        self.by_start: list[list[int]] = [[] for _ in range(self.slots)]
        self.by_landing: list[list[int]] = [[] for _ in range(self.slots + 1)]
        self.passable = [True] * self.slots
        for index, candidate in enumerate(candidates):
            self.by_start[candidate.first].append(index)
            self.by_landing[self.landing[index]].append(index)
            if candidate.is_locked:
                for slot in range(candidate.first, self.landing[index]):
                    self.passable[slot] = False

    def _forward(self) -> None:
        for slot in range(self.slots):
            if self.by_start[slot]:
                self._start_figures(slot)
            if self.passable[slot]:
                table, after = self.value[slot], self.value[slot + 1]
                if self.phrases[slot + 1] == self.phrases[slot]:
                    np.maximum(after, table, out=after)
                else:
                    np.maximum(after[:, :, 0], table.max(axis=2), out=after[:, :, 0])

    def _gained(self, slot: int, these: slice) -> NDArray[np.float32]:
        """Worth with each of these figures, by the family of the figure before it and the count before it."""
        by_last = self.value[slot][:, self.own[these]] - self.penalties[:, these]
        gained: NDArray[np.float32] = np.maximum.reduceat(by_last, self.starts, axis=0)
        gained += self.scores[:, these]
        return gained

    def _start_figures(self, slot: int) -> None:
        """Land every figure that starts in a slot, from the best state that could precede it."""
        indices = self.by_start[slot]
        gained = self._gained(slot, slice(indices[0], indices[-1] + 1))
        landed = (gained[:, None] - self.again[:, :, None, None]).max(axis=0)
        phrase = self.phrases[slot]
        limit = self.model.limits[phrase]
        for place, index in enumerate(indices):
            landing = self.landing[index]
            target = self.value[landing, self.technique[index]]
            worths = landed[:, place, :limit]
            if self.phrases[landing] == phrase:
                np.maximum(target[:, 1 : limit + 1], worths, out=target[:, 1 : limit + 1])
            elif limit:
                np.maximum(target[:, 0], worths.max(axis=1), out=target[:, 0])

    def solve(self) -> tuple[list[int], float]:
        self._forward()
        final = self.value[self.slots, :, -1]
        worth = float(final.max())
        if worth < _IMPOSSIBLE / 2:
            raise OptionError("Two locked figures collide or overfill their phrase: unlock one of them.")
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
            slot = self.model.candidates[index].first
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
        """The figure that led to a state, and the technique and the count before it."""
        for index in self.by_landing[slot]:
            candidate = self.model.candidates[index]
            if candidate.technique != last:
                continue
            phrase = self.phrases[candidate.first]
            stays = self.phrases[slot] == phrase
            if not stays and count:
                continue
            gained = self._gained(candidate.first, slice(index, index + 1))[:, 0] - self.again[:, coming, None]
            wanted = gained[:, count - 1 : count] if stays else gained[:, : self.model.limits[phrase]]
            if wanted.size and wanted.max() == value:
                family, place = (int(n) for n in np.unravel_index(int(wanted.argmax()), wanted.shape))
                before = count - 1 if stays else place
                return index, self._last_of(candidate.first, index, family, before), before
        raise RuntimeError("the tables of the programme contradict each other: please report the tune and the seed")

    def _last_of(self, slot: int, index: int, family: int, count: int) -> int:
        """The technique of the last figure before one, given that figure's family."""
        stop = self.starts[family + 1] if family < self.families else self.techniques + 1
        column = self.value[slot, :, self.own[index], count] - self.penalties[:, index, 0]
        return self.starts[family] + int(column[self.starts[family] : stop].argmax())
