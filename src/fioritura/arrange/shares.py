"""No technique takes over, and grace notes come from below as often as players have it.

The quotas of a rendition. From five figures on no technique has more than its share of them, rounded up; from eight on,
where there are five techniques at least, none has more than a quarter. Of the single grace notes as many come from above
as players have it, rounded up or down. Quotas hold wherever the tune offers another choice: where some set of figures
that keeps them is worth at least nine tenths of the best set that need not.

The best set without quotas is taken first. Where a technique has more than its share, phrases are chosen again by the
same programme, all others standing, each without one of the figures in excess; those are taken that lose least. What the
best set loses in this way can't be more than its distance from a bound: the worth of the best set at prices on what
passes its quota, the prices added to it (Lagrange's multipliers; any prices give a bound). While the loss may be worth it,
prices are moved two ways, damped, and the repair is tried on the best set at those prices; the best of all is kept.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.field import Field, Solution

__all__ = ["MOST_LOSS", "MOST_SHARE", "Shares"]

MOST_SHARE: Final = 0.25
"""No technique makes up more of a rendition of eight and more figures, where the tune offers another."""

MOST_LOSS: Final = 0.1
"""What part of its worth a rendition may lose for quotas: beyond it the tune offers no other choice."""

_FEWEST_FIGURES: Final = 5
_FIRM_FROM: Final = 8
_FEWEST_TECHNIQUES: Final = 5
_SPREAD: Final = 1.6
"""Where few techniques are to hand each may take so many times its even share."""

_NEAR: Final = 0.985
"""No more prices are tried when so much of the bound is reached."""

_MOST_ROUNDS: Final = 8
_STEP: Final = 0.8
_LEAST_STEP: Final = 0.02
_ROUNDINGS: Final = (0.4, 0.6)
_LOOKED_AT: Final = 4
_MOST_PASSES: Final = 12

Counts = NDArray[np.int64]
Scores = NDArray[np.float64]
Move = tuple[float, int, int, tuple[int, ...]]
"""What is lost, the figure that goes, its phrase, and the figures that stand in the phrase without it."""


class Shares:
    """How often each technique may be used, and how many of the single grace notes come from above."""

    def __init__(self, field: Field, best: float = 0.0) -> None:
        """`best` is the worth of the best set of figures that need keep no quota."""
        self.field, self.least = field, (1.0 - MOST_LOSS) * best
        taste = field.found.taste
        usual = taste.share["usual"]
        own = [taste.share.get(technique.id, usual) for technique in field.ordered]
        self._count = len(own)
        self._share = np.maximum(own, _SPREAD / max(self._count, 1))
        self._most_share = max(MOST_SHARE, usual)
        singles = {figure.technique for figure in field.found.candidates if len(figure.graces) == 1}
        sides = {"above": 1, "below": -1, None: 0}
        self._side = np.array(
            [sides[each.side] if each.id in singles else 0 for each in field.ordered], dtype=np.int64
        )
        """+1 for the techniques of single grace notes from above, −1 from below, 0 for all others."""
        has_both = {1, -1} <= set(self._side.tolist())
        self._above = 1.0 - taste.below if taste.below is not None and has_both else None
        """What part of the single grace notes comes from above; None where that is left to the place."""

    def most(self, uses: Counts, *, is_wide: bool = False) -> Counts:
        """The most uses of each technique among so many figures as are used.

        Grace notes from above are rounded as `_above_of` says, or up where the bounds are to be wide.
        """
        total = int(uses.sum())
        if total < _FEWEST_FIGURES or self._count < 2:
            return np.full(self._count, max(total, 1))
        most = np.ceil(self._share * total - 1e-9)
        if self._is_firm(total):
            most = np.minimum(most, int(self._most_share * total))
        if self._above is not None:
            above = np.ceil(self._above * self._singles(uses)) if is_wide else self._above_of(uses)
            most = np.where(self._side > 0, np.minimum(most, above), most)
        counts: Counts = most.astype(np.int64)
        return counts

    def _is_firm(self, total: int) -> bool:
        return total >= _FIRM_FROM and self._count >= _FEWEST_TECHNIQUES

    def _singles(self, uses: Counts) -> int:
        return int(uses[self._side != 0].sum())

    def _above_of(self, uses: Counts) -> int:
        """How many single grace notes are to come from above. A half is rounded up in one tune of two, by the number of
        its notes: else tunes with three grace notes each would have too many, or none."""
        rounding = _ROUNDINGS[len(self.field.found.tune.notes) % 2]
        return int((self._above or 0.0) * self._singles(uses) + rounding)

    def excess(self, uses: Counts) -> int:
        """How many uses are beyond a quota, and how many single grace notes from above are wanting."""
        over = int(np.maximum(uses - self.most(uses, is_wide=True), 0).sum())
        if self._above is None:
            return over
        above = int(uses[self._side > 0].sum())
        return over + max(int(self._above * self._singles(uses)) - above, 0)

    def uses(self, numbers: Sequence[int]) -> Counts:
        """How often each technique is used."""
        counts: Counts = np.bincount(self.field.technique[list(numbers)], minlength=self._count)
        return counts

    def spent(self, numbers: Sequence[int], standing: Sequence[int]) -> NDArray[np.bool_]:
        """The figures that may not be added to some, because their technique has its share; `standing` ones may."""
        is_full = self.uses(numbers) >= self.most(self.uses(standing))
        barred: NDArray[np.bool_] = is_full[self.field.technique]
        barred[list(standing)] = False
        return barred

    def kept(self, solution: Solution) -> Solution:
        """The solution with no technique above its share, as far as the tune offers others."""
        numbers, scores = solution.numbers, self.field.priced(solution.terms)
        if not numbers:
            return solution
        repaired = self._repaired(numbers, scores)
        is_kept = all(self._merit(repaired, scores)[:2])
        best = repaired if is_kept else max(numbers, repaired, key=lambda each: self._merit(each, scores))
        prices = _Prices(self, numbers, scores)
        for _ in range(_MOST_ROUNDS):
            reached, is_within = self.field.worth(best, scores), not self.excess(self.uses(best))
            if (is_within and reached >= _NEAR * prices.bound) or not prices.move(reached):
                break
            tried = self._repaired(prices.numbers, scores, is_wide=not all(self._merit(best, scores)[:2]))
            best = max(best, tried, key=lambda each: self._merit(each, scores))
        return solution if best == solution.numbers else self.field.solution(best, solution.terms)

    def bound(self, solution: Solution, rounds: int = 60) -> float:
        """What no set of figures within the quotas is worth more than, of eight figures and more where the solution has
        so many."""
        prices = _Prices(self, solution.numbers, self.field.priced(solution.terms))
        for _ in range(rounds):
            if not prices.move(self.least):
                break
        return prices.bound

    def better(self, one: Solution, other: Solution) -> Solution:
        """The other solution where it keeps all quotas at a loss that is allowed; else the one with the higher merit."""
        merits = [self._merit(each.numbers, self.field.priced(each.terms)) for each in (one, other)]
        return other if all(merits[1][:2]) or merits[1] > merits[0] else one

    def _merit(self, numbers: Sequence[int], scores: Scores) -> tuple[bool, bool, float]:
        """By what one set of figures is better than another: no more lost than is allowed, all quotas kept, and the
        worth, of which each use beyond a quota takes away what a figure is worth on average."""
        worth, wanting = self.field.worth(numbers, scores), self.excess(self.uses(numbers))
        return worth >= self.least, not wanting, worth - wanting * worth / max(len(numbers), 1)

    def quotas(self, total: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """The quotas that hold for so many figures as rows: what each use adds to a row, and the most that a row may be."""
        own = np.eye(self._count)
        rows, slack = [own - self._share[:, None]], [np.full(self._count, 1.0)]
        if self._is_firm(total):
            rows.append(own - self._most_share)
            slack.append(np.zeros(self._count))
        if self._above is not None:
            towards = (self._side > 0) - self._above * (self._side != 0)
            rows.append(np.array([towards, -towards]))
            slack.append(np.ones(2))
        return np.concatenate(rows), np.concatenate(slack)

    def _repaired(self, numbers: tuple[int, ...], scores: Scores, *, is_wide: bool = False) -> tuple[int, ...]:
        """A set of figures with as many quotas kept as the least worth allows."""
        return self._turned(self._without_excess(numbers, scores, is_wide), scores)

    def _without_excess(self, numbers: tuple[int, ...], scores: Scores, is_wide: bool) -> tuple[int, ...]:
        left = self.field.worth(numbers, scores) - self.least
        may_thin = False
        for _ in range(_MOST_PASSES):
            uses = self.uses(numbers)
            most = self.most(uses, is_wide=is_wide)
            if not (uses > most).any():
                break
            before = numbers
            touched: set[int] = set()
            for loss, figure, phrase, new in sorted(self._moves(numbers, scores, uses, most, may_thin)):
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
                if may_thin:
                    break
            if numbers != before:
                may_thin = False
            elif may_thin:
                break
            else:
                may_thin = True
        return numbers

    def _moves(
        self, numbers: tuple[int, ...], scores: Scores, uses: Counts, most: Counts, may_thin: bool
    ) -> Iterator[Move]:
        """For each technique in excess, what it costs to do without one of its figures; only where it may thin does a
        phrase get fewer figures."""
        field = self.field
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
                if count >= len(old) - may_thin:
                    yield -change, figure, phrase, again[len(others) : len(others) + count]

    def _turned(self, numbers: tuple[int, ...], scores: Scores) -> tuple[int, ...]:
        """Single grace notes turned round until as many as players have it come from below."""
        if self._above is None:
            return numbers
        uses = self.uses(numbers)
        missing = self._above_of(uses) - int(uses[self._side > 0].sum())
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
        self, line: Sequence[int], place: int, towards: int, scores: Scores
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


class _Prices:
    """Prices on quotas, the best set of figures at them, and the bound that they give."""

    def __init__(self, shares: Shares, numbers: tuple[int, ...], scores: Scores) -> None:
        self.shares, self.scores, self.numbers = shares, scores, numbers
        self.rows, self.slack = shares.quotas(len(numbers))
        self.prices = np.zeros(len(self.slack))
        self.worth = self.bound = shares.field.worth(numbers, scores)

    def move(self, reached: float) -> bool:
        """Move the prices by how far each quota is broken, the further the higher the bound lies above what is reached;
        False when there is nothing to move."""
        broken = self.rows @ self.shares.uses(self.numbers) - self.slack
        moved = (broken > 0) | (self.prices > 0)
        size = float((broken[moved] ** 2).sum())
        if not size:
            return False
        step = _STEP * max(self.worth - reached, _LEAST_STEP * self.bound) / size
        self.prices = np.maximum(self.prices + step * broken, 0.0)
        toll = self.prices @ self.rows
        field = self.shares.field
        self.numbers, priced = field.best(self.scores - toll[field.technique])
        self.worth = priced + float(self.prices @ self.slack)
        self.bound = min(self.bound, self.worth)
        return True
