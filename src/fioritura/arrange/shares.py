"""No technique takes over, and grace notes come from below as often as players have it.

The best set of figures is taken first, without regard to shares. Where a technique has more than its share, phrases are
chosen again by the same programme, all others standing, each without one of the figures in excess; those are taken that
lose least. Where too many single grace notes come from one side, those are turned round that lose least.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.field import Field, Solution

__all__ = ["MOST_SHARE", "Shares"]

MOST_SHARE: Final = 0.25
"""No technique makes up more of a rendition of eight and more figures, where the tune offers another."""

_FEWEST_FIGURES: Final = 5
_FIRM_FROM: Final = 8
_FEWEST_TECHNIQUES: Final = 5
_SPREAD: Final = 1.6
"""Where few techniques are to hand each may take so many times its even share."""

_MOST_LOSS: Final = 0.08
"""What part of its worth a rendition may lose for shares: beyond it the tune offers too little else."""

_SLIGHT_EXCESS: Final = 2
_LOOKED_AT: Final = 4
_MOST_PASSES: Final = 12

Move = tuple[float, int, int, tuple[int, ...]]
"""What is lost, the figure that goes, its phrase, and the figures that stand in the phrase without it."""


class Shares:
    """How often each technique may be used, and how many of the single grace notes come from above."""

    def __init__(self, field: Field) -> None:
        self.field = field
        taste = field.found.taste
        usual = taste.share["usual"]
        own = [taste.share.get(technique.id, usual) for technique in field.ordered]
        self._count = len(own)
        self._share = np.maximum(own, _SPREAD / self._count)
        self._most_share = max(MOST_SHARE, usual)
        self._below = taste.below
        singles = {figure.technique for figure in field.found.candidates if len(figure.graces) == 1}
        sides = {"above": 1, "below": -1, None: 0}
        self._side = np.array([sides[each.side] if each.id in singles else 0 for each in field.ordered])
        """+1 for the techniques of single grace notes from above, −1 from below, 0 for all others."""

    def most(self, uses: NDArray[np.int64]) -> NDArray[np.int64]:
        """The most uses of each technique among so many figures as are used."""
        total = int(uses.sum())
        if total < _FEWEST_FIGURES or self._count < 2:
            return np.full(self._count, max(total, 1))
        most = np.ceil(self._share * total)
        if total >= _FIRM_FROM and self._count >= _FEWEST_TECHNIQUES:
            most = np.minimum(most, int(self._most_share * total))
        above = self._from_above(uses)
        if above is not None:
            most = np.where(self._side > 0, np.minimum(most, max(above, 1)), most)
        counts: NDArray[np.int64] = most.astype(np.int64)
        return counts

    def _from_above(self, uses: NDArray[np.int64]) -> int | None:
        """How many of the single grace notes are to come from above; None where that is left to the place."""
        sides = {int(side) for side in self._side}
        if self._below is None or not sides >= {1, -1}:
            return None
        return int((1.0 - self._below) * int(uses[self._side != 0].sum()) + 0.5)

    def uses(self, numbers: Sequence[int]) -> NDArray[np.int64]:
        """How often each technique is used."""
        counts: NDArray[np.int64] = np.bincount(self.field.technique[list(numbers)], minlength=self._count)
        return counts

    def spent(self, numbers: Sequence[int], standing: Sequence[int]) -> NDArray[np.bool_]:
        """The figures that may not be added to some, because their technique has its share; `standing` ones may."""
        is_full = self.uses(numbers) >= self.most(self.uses(standing))
        barred: NDArray[np.bool_] = is_full[self.field.technique]
        barred[list(standing)] = False
        return barred

    def kept(self, solution: Solution) -> Solution:
        """The solution with no technique above its share, as far as the tune offers others."""
        scores = self.field.priced(solution.terms)
        numbers = self._turned(self._without_excess(solution.numbers, scores), scores)
        return solution if numbers == solution.numbers else self.field.solution(numbers, solution.terms)

    def _without_excess(self, numbers: tuple[int, ...], scores: NDArray[np.float64]) -> tuple[int, ...]:
        left = _MOST_LOSS * self.field.worth(numbers, scores)
        for _ in range(_MOST_PASSES):
            uses = self.uses(numbers)
            most = self.most(uses)
            if not (uses > most).any():
                break
            before = numbers
            touched: set[int] = set()
            for loss, figure, phrase, new in sorted(self._moves(numbers, scores, uses, most)):
                technique = int(self.field.technique[figure])
                if uses[technique] <= most[technique] or touched & {phrase - 1, phrase, phrase + 1}:
                    continue
                others, old, later = self.field.parted(numbers, phrase)
                after = uses - self.uses(old) + self.uses(new)
                if loss > left or ((after > most) & (after > uses)).any():
                    continue
                numbers, uses = (*others, *new, *later), after
                touched.add(phrase)
                left -= max(loss, 0.0)
            if numbers == before:
                break
        return numbers

    def _moves(
        self, numbers: tuple[int, ...], scores: NDArray[np.float64], uses: NDArray[np.int64], most: NDArray[np.int64]
    ) -> Iterator[Move]:
        """For each technique in excess, what it costs to do without one of its figures. No phrase gets fewer figures, but
        where the excess is slight."""
        field = self.field
        spared = int(np.maximum(uses - most, 0).sum()) <= _SLIGHT_EXCESS
        is_full = (uses >= most)[field.technique]
        for technique in np.flatnonzero(uses > most).tolist():
            own = [n for n in numbers if field.technique[n] == technique and not field.is_fixed[n]]
            own.sort(key=lambda n: (scores[n], n))
            for figure in own[: 2 * int(uses[technique] - most[technique]) + _LOOKED_AT]:
                phrase = field.phrase_of(figure)
                others, old, _ = field.parted(numbers, phrase)
                barred = is_full.copy()
                barred[old] = False
                barred[figure] = True
                again, change = field.chosen_again(numbers, phrase, scores, barred)
                count = len(old) + len(again) - len(numbers)
                if count >= len(old) - spared:
                    yield -change, figure, phrase, again[len(others) : len(others) + count]

    def _turned(self, numbers: tuple[int, ...], scores: NDArray[np.float64]) -> tuple[int, ...]:
        """Single grace notes turned round until as many as players have it come from below."""
        uses = self.uses(numbers)
        wanted = self._from_above(uses)
        missing = 0 if wanted is None else wanted - int(uses[self._side > 0].sum())
        if not missing:
            return numbers
        towards = 1 if missing > 0 else -1
        line, most = list(numbers), self.most(uses)
        turns = (turn for place in range(len(line)) for turn in self._turns(line, place, towards, scores))
        for _, place, other in sorted(turns):
            old, new = (int(self.field.technique[number]) for number in (line[place], other))
            if not missing or line[place] != numbers[place] or uses[new] >= most[new]:
                continue
            line[place] = other
            uses[old], uses[new] = uses[old] - 1, uses[new] + 1
            missing -= towards
        return tuple(line)

    def _turns(
        self, line: Sequence[int], place: int, towards: int, scores: NDArray[np.float64]
    ) -> Iterator[tuple[float, int, int]]:
        """What is lost by each figure that comes from the other side to the same note."""
        field, one = self.field, line[place]
        if self._side[field.technique[one]] != -towards or field.is_fixed[one]:
            return
        start, stop = np.searchsorted(field.places, [field.first[one], field.first[one] + 1])
        for other in field.by_place[start:stop].tolist():
            if (
                self._side[field.technique[other]] == towards
                and not field.is_barred[other]
                and field.free[other] == field.free[one]
            ):
                around = line[max(place - 2, 0) : place], line[place + 1 : place + 3]
                worths = [field.worth([*around[0], n, *around[1]], scores) for n in (one, other)]
                yield worths[0] - worths[1], place, other
