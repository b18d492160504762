"""The figures of a survey as columns, from which each of the chooser's models is drawn: of a whole tune, or of a stretch
of it with all else standing."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.choose import Candidate, Model, choose, gumbel
from fioritura.arrange.levels import Level, level_of
from fioritura.arrange.plan import Plan
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import Survey
from fioritura.errors import OptionError
from fioritura.phrase import Phrase, phrases
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import WHOLE
from fioritura.tune import Tune

__all__ = ["Constraints", "Field", "Solution", "Terms", "check_known", "constraints_of", "phrase_limits"]

SEED_NOISE: Final = 0.06
PENALTIES: Final = (1.2, 0.5, 0.3)
"""For the technique of the figure before, its family, and the family of the figure before that."""

MOST_FOR_A_NOTE: Final = 0.67
"""Figures in a phrase for each of its notes, at most: more would bury the tune."""

FIRST_STATEMENT_SHARE: Final = 0.75
"""How much of the level's density the first statement of a phrase gets that will be heard again."""

BEST_PLACE_WORTH: Final = 0.35
"""What a technique's best place in each stretch of the tune is worth beyond its score: a first use above a tenth."""

_UPWARDS: Final = 0.3
"""How far a phrase's number of figures is rounded rather up (see `Level.most_figures`)."""

_STRETCH_TICKS: Final = 32 * WHOLE
_BEST_AT_A_SLOT: Final = 6
_KEPT_AROUND: Final = 2
"""How many standing figures on either side bear on what may be chosen between them (see `choose`)."""


@dataclass(frozen=True)
class Constraints:
    """Numbers of the survey's figures that must and must not stand, and the seed's noise for each figure."""

    fixed: frozenset[int]
    barred: frozenset[int]
    noise: NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Terms:
    """On what terms figures are chosen: by which seed, and with what toll on what hides the tune."""

    seed: int
    toll: float = 0.0

    def dearer(self) -> Terms:
        """The terms with a higher toll."""
        return replace(self, toll=2.0 * self.toll + 0.05)


@dataclass(frozen=True, slots=True)
class Solution:
    """A rendition, the numbers of its figures in the survey in order, and the terms on which it was chosen."""

    rendition: Rendition
    numbers: tuple[int, ...]
    terms: Terms


def check_known(found: Survey, names: Collection[str]) -> None:
    """Refuse a name that no figure of the survey has.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.arrange.survey import survey
        >>> found = survey(tune, fioritura.Setting("alto-sax", level=3).on(tune))
        >>> check_known(found, [found.figures[0].id])

    Raises:
        OptionError: there is one.
    """
    unknown = [name for name in names if name not in found.by_id]
    if unknown:
        raise OptionError("no-such-figure", given=unknown[0])


def constraints_of(found: Survey, seed: int, locked: Collection[str], refused: Collection[str]) -> Constraints:
    """The constraints that a seed and a teacher's decisions lay on a survey.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.arrange.survey import survey
        >>> found = survey(tune, fioritura.Setting("alto-sax", level=3).on(tune))
        >>> constraints_of(found, 0, [found.figures[0].id], []).fixed
        frozenset({0})

    Raises:
        OptionError: an unknown figure.
    """
    check_known(found, (*locked, *refused))
    scale = SEED_NOISE * found.taste.seed_variety
    return Constraints(
        fixed=frozenset(found.by_id[name] for name in locked),
        barred=frozenset(found.by_id[name] for name in refused),
        noise=np.array([gumbel(seed, figure.id, scale) for figure in found.candidates] if seed else 0.0),
    )


class Field:
    """The figures of a survey as columns.

    Of figures that compete for just the same slots only the best of each technique is a candidate, and of those that
    start in one slot only the six best. Techniques that were asked for by name are lifted until they count; of any
    other the best place in each 32 bars is lifted a little.
    """

    def __init__(self, found: Survey, constraints: Constraints) -> None:
        self.found, self.constraints = found, constraints
        self.level = level_of(found.setting)
        self.ordered = sorted(found.techniques, key=lambda technique: technique.family)
        self.numbers = {technique.id: number for number, technique in enumerate(self.ordered)}
        self.family = _family_numbers(self.ordered)
        aversion = 0.0 if len(self.ordered) == 1 else found.taste.aversion
        self.penalties = (PENALTIES[0] * aversion, PENALTIES[1] * aversion, PENALTIES[2] * aversion)
        self.locks = [found.candidates[number] for number in sorted(constraints.fixed)]
        self.limits = phrase_limits(found.tune, self.level, self.locks, found.plan)
        self.phrase_of_slot = tuple(context.phrase.number for context in found.contexts for _ in range(2))
        self.first = np.array([figure.first_slot for figure in found.candidates], dtype=np.int64)
        self.technique = np.array([self.numbers[figure.technique] for figure in found.candidates], dtype=np.int64)
        slot_times = _slot_times(found.tune)
        self.slots = len(slot_times)
        self.free = _next_free(found.candidates, slot_times, self._rests_ticks(), self.locks)
        self.by_place = np.argsort(self.first, kind="stable")
        self.places = self.first[self.by_place]
        """First slots in order, and the numbers of the figures in that order."""
        self.rivalry = self._rivalry()
        """One number for each stretch of slots and technique."""
        self.losses = np.array(found.losses)
        self.scores = self._lifted(found.scores) + constraints.noise
        self.is_fixed = np.isin(np.arange(len(found.candidates)), list(constraints.fixed))
        self.is_barred = np.isin(np.arange(len(found.candidates)), list(constraints.barred))
        self.barred_since: set[int] = set()
        """Figures that `bar` has taken out."""
        if self.locks:
            last = np.array([figure.last_slot for figure in found.candidates])
            for lock in self.locks:
                self.is_barred |= (self.first <= lock.last_slot) & (lock.first_slot <= last) & ~self.is_fixed

    def _rivalry(self) -> NDArray[np.int64]:
        rivalry: NDArray[np.int64] = (self.first * (self.slots + 1) + self.free) * len(self.numbers) + self.technique
        return rivalry

    def rest_as(self, other: Field, number: int) -> None:
        """Ask for the rests that another field of the same survey asks for, though this one holds a figure besides:
        only locks may stand closer before that one."""
        self.free = other.free.copy()
        first = int(self.first[number])
        for lock in self.constraints.fixed - {number}:
            if self.found.candidates[lock].last_slot < first:
                self.free[lock] = min(int(self.free[lock]), first)
        self.rivalry = self._rivalry()

    def _rests_ticks(self) -> NDArray[np.int64]:
        """The least time after each figure: the level's, shorter where the plan is denser."""
        found, rest = self.found, self.level.rest_ticks
        plan = found.plan
        if plan is None or not rest:
            return np.full(len(found.candidates), rest, dtype=np.int64)
        rests = [round(rest / max(each.density, 0.25)) for each in plan.statements]
        starts = (found.tune.notes[figure.anchors[0]].onset_ticks for figure in found.candidates)
        return np.array([rests[plan.number_at(found.tune, ticks)] for ticks in starts], dtype=np.int64)

    def _lifted(self, scores: NDArray[np.float64]) -> NDArray[np.float64]:
        if not len(scores):
            return scores
        if self.found.is_asked:
            best = np.full(len(self.numbers), -np.inf)
            np.maximum.at(best, self.technique, scores)
            lifted: NDArray[np.float64] = scores + np.maximum(0.0, 1.0 - best[self.technique])
            return lifted
        times = np.array([context.note.onset_ticks for context in self.found.contexts]) // _STRETCH_TICKS
        group = times[self.first // 2] * len(self.numbers) + self.technique
        ranked = np.lexsort((-scores, group))
        heads = ranked[np.concatenate([[True], group[ranked][1:] != group[ranked][:-1]])]
        place = self.first * len(self.numbers) + self.technique
        return scores + BEST_PLACE_WORTH * np.isin(place, place[heads])

    def priced(self, terms: Terms) -> NDArray[np.float64]:
        """What each figure scores on these terms."""
        return self.scores - terms.toll * self.losses if terms.toll else self.scores

    def solve(self, terms: Terms) -> Solution:
        """The best rendition on these terms."""
        numbers, worth = self.best(self.priced(terms))
        return self.solution(numbers, terms, worth)

    def best(self, scores: NDArray[np.float64]) -> tuple[tuple[int, ...], float]:
        """The best set of figures at these scores, and its worth."""
        candidates, model = self._modelled(scores)
        indices, worth = choose(model)
        return tuple(candidates[index] for index in indices), worth

    def solution(self, numbers: Sequence[int], terms: Terms, worth: float | None = None) -> Solution:
        """A rendition of these figures."""
        worth = self.worth(numbers, self.priced(terms)) if worth is None else worth
        figures = tuple(self.found.scored(number) for number in numbers)
        found = self.found
        rendition = Rendition(found.tune, found.setting, figures, terms.seed, round(worth, 4), found.plan)
        return Solution(rendition, tuple(numbers), terms)

    def bar(self, numbers: Collection[int]) -> bool:
        """Take figures out of the choice, all but locked ones; False when that changes nothing."""
        fresh = [number for number in numbers if not (self.is_fixed[number] or self.is_barred[number])]
        self.is_barred[fresh] = True
        self.barred_since.update(fresh)
        return bool(fresh)

    def alone(self, terms: Terms) -> Solution:
        """The figure that hides least of the tune, the best of those, alone."""
        allowed = set(range(len(self.found.candidates))) - self.constraints.barred
        one = min(allowed, key=lambda number: (self.losses[number], -self.scores[number], number))
        others = frozenset(range(len(self.found.candidates))) - {one}
        return Field(self.found, replace(self.constraints, fixed=frozenset([one]), barred=others)).solve(terms)

    def model(self, terms: Terms) -> tuple[list[int], Model]:
        """The chooser's model, and for each of its candidates the number of the figure."""
        return self._modelled(self.priced(terms))

    def _modelled(self, scores: NDArray[np.float64]) -> tuple[list[int], Model]:
        kept = self._best_rivals(np.flatnonzero(((scores > 0) | self.is_fixed) & ~self.is_barred), scores)
        columns = (self.first[kept], self.free[kept], self.technique[kept], scores[kept], self.is_fixed[kept])
        candidates = tuple(map(Candidate._make, zip(*(column.tolist() for column in columns), strict=True)))
        return kept.tolist(), Model(candidates, self.phrase_of_slot, self.limits, self.family, *self.penalties)

    def _best_rivals(self, numbers: NDArray[np.int64], scores: NDArray[np.float64]) -> NDArray[np.int64]:
        """Numbers of the candidates: the best of those that compete for the same slots, six at most in a slot."""
        ranked = numbers[np.lexsort((-scores[numbers], ~self.is_fixed[numbers]))]
        _, firsts = np.unique(self.rivalry[ranked], return_index=True)
        ranked = ranked[np.sort(firsts)]
        by_slot = ranked[np.argsort(self.first[ranked], kind="stable")]
        slots = self.first[by_slot]
        rank = np.arange(len(slots)) - np.searchsorted(slots, slots)
        kept = by_slot[rank < _BEST_AT_A_SLOT]
        ordered: NDArray[np.int64] = kept[np.lexsort((self.technique[kept], self.free[kept], self.first[kept]))]
        return ordered

    def worth(self, numbers: Sequence[int], scores: NDArray[np.float64]) -> float:
        """What figures in order of place are worth by the chooser's model (see `choose`)."""
        same_technique, same_family, family_again = self.penalties
        total, last, last_family, before_family = 0.0, -1, -1, -1
        for number in numbers:
            technique = int(self.technique[number])
            family = self.family[technique]
            total += float(scores[number])
            total -= same_technique * (technique == last) + same_family * (family == last_family)
            total -= family_again * (family == before_family)
            last, last_family, before_family = technique, family, last_family
        return total

    def phrase_of(self, number: int) -> int:
        """The phrase that a figure counts in: that of its first slot."""
        return self.phrase_of_slot[int(self.first[number])]

    def parted(self, numbers: Sequence[int], phrase: int) -> tuple[list[int], list[int], list[int]]:
        """Figures in order of place: those before a phrase, in it, and after it."""
        phrases = [self.phrase_of(number) for number in numbers]
        start, stop = bisect_left(phrases, phrase), bisect_left(phrases, phrase + 1)
        return list(numbers[:start]), list(numbers[start:stop]), list(numbers[stop:])

    def chosen_again(
        self,
        numbers: Sequence[int],
        phrase: int,
        scores: NDArray[np.float64],
        barred: NDArray[np.bool_],
        fixed: Collection[int] = (),
    ) -> tuple[tuple[int, ...], float]:
        """The figures after one phrase has been chosen again with all others standing, and the change of worth.

        `barred` marks figures that may not be chosen, `fixed` holds those that must stand.
        """
        before, old, after = self.parted(numbers, phrase)
        new = self._best_between(before[-_KEPT_AROUND:], after[:_KEPT_AROUND], phrase, scores, barred, fixed)
        around = before[-_KEPT_AROUND:], after[:_KEPT_AROUND]
        change = self.worth([*around[0], *new, *around[1]], scores) - self.worth(
            [*around[0], *old, *around[1]], scores
        )
        return (*before, *new, *after), change

    def _best_between(
        self,
        before: Sequence[int],
        after: Sequence[int],
        phrase: int,
        scores: NDArray[np.float64],
        barred: NDArray[np.bool_],
        fixed: Collection[int],
    ) -> list[int]:
        """The best figures of a phrase beside those that stand before and after it, by the same programme."""
        start = bisect_left(self.phrase_of_slot, phrase)
        stop = bisect_left(self.phrase_of_slot, phrase + 1)
        must = self.is_fixed.copy()
        must[list(fixed)] = True
        inside = self.by_place[np.searchsorted(self.places, start) : np.searchsorted(self.places, stop)]
        if before:
            start = max(start, int(self.free[before[-1]]))
        held = inside[must[inside]]
        start = min([start, *self.first[held].tolist()])
        end = int(self.first[after[0]]) if after else self.slots
        is_open = (self.first[inside] >= start) & (self.free[inside] <= end) & (scores[inside] > 0)
        is_open &= ~(self.is_barred[inside] | barred[inside])
        kept = self._best_rivals(inside[is_open & ~must[inside]], scores)
        kept = np.concatenate([kept, held])
        kept = kept[np.lexsort((self.technique[kept], self.free[kept], self.first[kept]))]
        offset = len(before) - start
        candidates = [Candidate(n, n + 1, int(self.technique[k]), 0.0, True) for n, k in enumerate(before)]
        candidates += [
            Candidate(
                int(self.first[k]) + offset,
                min(int(self.free[k]), end) + offset,
                int(self.technique[k]),
                float(scores[k]),
                bool(must[k]),
            )
            for k in kept
        ]
        end += offset
        candidates += [
            Candidate(end + n, end + n + 1, int(self.technique[k]), 0.0, True) for n, k in enumerate(after)
        ]
        inner = stop - start
        phrases = (0,) * len(before) + (1,) * inner + (2,) * (end - len(before) - inner + len(after))
        limits = (_KEPT_AROUND, max(self.limits[phrase], len(held)), _KEPT_AROUND)
        chosen, _ = choose(Model(tuple(candidates), phrases, limits, self.family, *self.penalties))
        first, last = len(before), len(before) + len(kept)
        return [int(kept[index - first]) for index in chosen if first <= index < last]


def _family_numbers(ordered: Sequence[Technique]) -> tuple[int, ...]:
    """The family number of each technique, from 0 in order."""
    changes = [0, *(int(a.family != b.family) for a, b in pairwise(ordered))]
    return tuple(accumulate(changes))


def phrase_limits(
    tune: Tune, level: Level, locks: Sequence[Figure] = (), plan: Plan | None = None
) -> tuple[int, ...]:
    """The most figures in each phrase: by the plan, in which a phrase may have none, and without one a first statement
    that will return stays plainer; locks raise a limit.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.arrange.levels import level_numbered
        >>> all(limit >= 1 for limit in phrase_limits(tune, level_numbered(3)))
        True
    """
    found = phrases(tune)
    statements = Counter(phrase.model for phrase in found)
    ends = [phrase.last for phrase in found]
    held = Counter(bisect_left(ends, lock.first_slot // 2) for lock in locks)

    def most(phrase: Phrase) -> int:
        returns = phrase.statement == 1 and statements[phrase.model] > 1
        share = FIRST_STATEMENT_SHARE if returns else 1.0
        room = max(1, round(MOST_FOR_A_NOTE * (phrase.last - phrase.first + 1)))
        return min(level.most_figures(phrase.end_ticks - phrase.start_ticks, share), room)

    counts = _planned_counts(tune, level, found, plan) if plan else map(most, found)
    return tuple(max(count, held[phrase.number]) for phrase, count in zip(found, counts, strict=True))


def _planned_counts(tune: Tune, level: Level, found: Sequence[Phrase], plan: Plan) -> Iterator[int]:
    """The most figures in each phrase by the plan: what is rounded in one phrase is made up for in the next."""
    number, owed = -1, 0.0
    for phrase in found:
        now = plan.number_at(tune, (phrase.start_ticks + phrase.end_ticks) // 2)
        density = plan.statements[now].density
        number, owed = now, owed if now == number else _UPWARDS * min(density, 1.0)
        owed += (phrase.end_ticks - phrase.start_ticks) / WHOLE * level.figures_per_bar * density
        owed += _UPWARDS * density / 2
        count = max(round(owed), 0)
        owed -= count
        yield count


def _slot_times(tune: Tune) -> list[int]:
    return [time for note in tune.notes for time in (note.onset_ticks, note.onset_ticks + note.duration_ticks // 2)]


def _next_free(
    figures: Sequence[Figure], slot_times: Sequence[int], rests_ticks: NDArray[np.int64], locks: Sequence[Figure]
) -> NDArray[np.int64]:
    """The first slot in which another figure may start after each: after its rest, but no later than a lock."""
    last = np.array([figure.last_slot for figure in figures], dtype=np.int64)
    free = last + 1
    if rests_ticks.any():
        ready = np.array([figure.end_ticks for figure in figures], dtype=np.int64) + rests_ticks
        free = np.maximum(free, np.searchsorted(slot_times, ready))
    for lock in locks:
        free = np.where(last < lock.first_slot, np.minimum(free, lock.first_slot), free)
    return free
