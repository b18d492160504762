"""A later statement takes up the places of an earlier one with other or larger gestures.

The best set of figures is taken first. Where a figure stands at a place where an earlier statement had the same technique
with as many added notes, its phrase is chosen again by the same programme, all others standing, without such figures.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.field import Field, Solution
from fioritura.arrange.plan import Plan
from fioritura.arrange.shares import Shares

__all__ = ["taken_up"]

_MOST_LOSS: Final = 0.6
"""What a phrase may lose, for each figure that is not to come again: about half of what a good one is worth."""


def taken_up(field: Field, solution: Solution) -> Solution:
    """The solution with other figures, or larger ones, where a statement would repeat those of one before.

    Examples:
        >>> import fioritura
        >>> from fioritura.arrange.field import Terms, constraints_of
        >>> plan = Plan.usual(2)
        >>> tune = plan.written_out(fioritura.demo_tune())
        >>> found = fioritura.find(tune, fioritura.Setting("alto-sax", level=3), plan=plan)
        >>> field = Field(found, constraints_of(found, 0, [], []))
        >>> best = field.solve(Terms(0))
        >>> taken_up(field, best).rendition.score <= best.rendition.score
        True
    """
    plan = field.found.plan
    if plan is None or plan.count == 1 or not solution.numbers:
        return solution
    places = _Places(field, plan)
    shares, scores = Shares(field), field.priced(solution.terms)
    numbers = solution.numbers
    for phrase in sorted({field.phrase_of(number) for number in numbers}):
        before, own, after = field.parted(numbers, phrase)
        stale = places.stale(before)
        again = [number for number in own if stale[number] and not field.is_fixed[number]]
        if not again:
            continue
        barred = shares.spent([*before, *after], numbers) | stale
        chosen, change = field.chosen_again(numbers, phrase, scores, barred)
        if len(chosen) >= len(numbers) and change >= -_MOST_LOSS * len(again):
            numbers = chosen
    return solution if numbers == solution.numbers else field.solution(numbers, solution.terms)


class _Places:
    """Where in its statement each figure of a survey stands, by which technique, and how large it is."""

    def __init__(self, field: Field, plan: Plan) -> None:
        found = field.found
        length = plan.start_ticks(found.tune, 1) - plan.start_ticks(found.tune, 0)
        onsets = np.array([found.tune.notes[figure.anchors[0]].onset_ticks for figure in found.candidates])
        self._size = np.array([figure.size for figure in found.candidates], dtype=np.int64)
        self._place = (onsets % length) * (int(field.technique.max()) + 1) + field.technique

    def stale(self, standing: list[int]) -> NDArray[np.bool_]:
        """The figures that bring nothing new after those that stand: same place and technique, and no larger."""
        stale = np.zeros(len(self._place), dtype=np.bool_)
        for number in standing:
            stale |= (self._place == self._place[number]) & (self._size <= self._size[number])
        stale[standing] = False
        return stale
