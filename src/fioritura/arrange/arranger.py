"""Ornament a tune: survey, choose and lay out; the door through which every face comes in."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import accumulate, pairwise
from math import ceil
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.choose import Candidate, Model, choose, gumbel
from fioritura.arrange.levels import Level, level_numbered
from fioritura.arrange.playable import unplayable_figures
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import Survey, figure_id, no_collector, survey
from fioritura.arrange.taste import taste_of
from fioritura.errors import OptionError
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import WHOLE
from fioritura.tune import Tune

__all__ = ["choose_figures", "model_of", "ornament", "rivals"]

SEED_NOISE: Final = 0.06
PENALTIES: Final = (1.2, 0.5, 0.3)
"""For the technique of the figure before, its family, and the family of the figure before that."""

FIRST_STATEMENT_SHARE: Final = 0.75
"""How much of the level's density the first statement of a phrase gets that will be heard again."""

_BEST_AT_A_SLOT: Final = 6
_MOST_ROUNDS: Final = 4


def ornament(
    tune: Tune,
    setting: Setting,
    *,
    seed: int = 0,
    only: Iterable[str] = (),
    without: Iterable[str] = (),
    locked: Collection[str] = (),
    refused: Collection[str] = (),
) -> Rendition:
    """The best rendition of a tune for a player.

    Seed 0 gives the best; every other seed gives another good version, always the same. `locked` and `refused` hold
    figures by `figure_id`: the former stand in the rendition, the latter do not, the rest is the best around them.

    Raises:
        OptionError: an unknown technique or figure, or locked figures that collide.
    """
    return choose_figures(survey(tune, setting, only, without), seed=seed, locked=locked, refused=refused)


@no_collector()
def choose_figures(
    found: Survey, *, seed: int = 0, locked: Collection[str] = (), refused: Collection[str] = ()
) -> Rendition:
    """Choose among the figures of a survey; see `ornament`.

    Each round is solved exactly. Where the tune would be hidden, or one technique takes more than its share, a toll
    is laid on what hides it, or a price on that technique, and the next round is solved with them.
    """
    return _settled(_Field(found, _constraints(found, seed, locked, refused)), seed).rendition


@no_collector()
def rivals(
    found: Survey,
    id: str,
    *,
    count: int = 8,
    seed: int = 0,
    locked: Collection[str] = (),
    refused: Collection[str] = (),
) -> list[tuple[int, float]]:
    """Numbers of the figures that could stand where the named one does, each with what the best whole around it is
    worth, on the terms on which the rendition was chosen; best first.

    Raises:
        OptionError: there is no such figure.
    """
    constraints = _constraints(found, seed, locked, refused)
    _check_known(found, (id,))
    one = found.candidates[found.by_id[id]]
    figures = _Field(found, constraints)
    standing = _settled(figures, seed)
    spoilt = figures.barred_since
    at_hand = [n for n, other in enumerate(found.candidates) if n not in spoilt and one.collides(other)]
    at_hand.sort(key=lambda number: (number not in standing.numbers, -found.scores[number], number))
    worths: list[tuple[int, float]] = []
    for number in at_hand[: max(count, 1)]:
        worth = standing.rendition.score
        if number not in standing.numbers:
            stays = {
                lock for lock in constraints.fixed if not found.candidates[number].collides(found.candidates[lock])
            }
            held = replace(
                constraints, fixed=frozenset(stays | {number}), barred=(constraints.barred | spoilt) - {number}
            )
            worth = _Field(found, held).solve(standing.terms).rendition.score
        worths.append((number, worth))
    return sorted(worths, key=lambda entry: -entry[1])


def _check_known(found: Survey, names: Iterable[str]) -> None:
    unknown = [name for name in names if name not in found.by_id]
    if unknown:
        raise OptionError("no-such-figure", given=unknown[0])


def _constraints(found: Survey, seed: int, locked: Collection[str], refused: Collection[str]) -> Constraints:
    _check_known(found, (*locked, *refused))
    return Constraints(
        fixed=frozenset(found.by_id[name] for name in locked),
        barred=frozenset(found.by_id[name] for name in refused),
        noise=np.array([gumbel(seed, figure_id(figure), SEED_NOISE) for figure in found.candidates] if seed else 0.0),
    )


def _settled(figures: _Field, seed: int) -> _Solution:
    """The best rendition that is playable and keeps its share of the tune."""
    found = figures.found
    least_kept = min(figures.level.kept_share, 0.8 if found.is_asked else 1.0)
    terms = _Terms(seed)
    for _ in range(_MOST_ROUNDS):
        solution = figures.solve(terms)
        hides = solution.rendition.kept_share < least_kept
        overused = _overused(found, solution.rendition.figures)
        figures.bar([solution.numbers[context] for context in unplayable_figures(solution.rendition)])
        if not (hides or overused):
            break
        terms = terms.dearer(overused, hides=hides)
    solution = _recognisable(figures, terms, _playable(figures, terms, solution), least_kept)
    if found.is_asked and not solution.numbers and len(found.candidates) > len(figures.constraints.barred):
        solution = figures.alone(terms)
    return solution


@dataclass(frozen=True)
class Constraints:
    """Numbers of the survey's figures that must and must not stand, and the seed's noise for each figure."""

    fixed: frozenset[int]
    barred: frozenset[int]
    noise: NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Terms:
    """On what terms a round is solved: a toll on what hides the tune, and a price on each technique."""

    seed: int
    toll: float = 0.0
    prices: Mapping[str, float] = field(default_factory=dict)

    def dearer(self, overused: Mapping[str, float], *, hides: bool) -> _Terms:
        """The terms of the next round."""
        prices = Counter(self.prices)
        prices.update(overused)
        return _Terms(self.seed, 2.0 * self.toll + 0.05 if hides else self.toll, prices)


@dataclass(frozen=True, slots=True)
class _Solution:
    """A rendition, the numbers of its figures in the survey, and the terms on which it is the best."""

    rendition: Rendition
    numbers: tuple[int, ...]
    terms: _Terms


def _playable(figures: _Field, terms: _Terms, solution: _Solution) -> _Solution:
    """The best rendition that leaves breath for every phrase and time for every grace note; locked figures stay."""
    while troubles := {solution.numbers[context] for context in unplayable_figures(solution.rendition)}:
        if troubles <= figures.constraints.fixed:
            break
        figures.bar(troubles)
        solution = figures.solve(terms)
    return solution


def _recognisable(figures: _Field, terms: _Terms, solution: _Solution, least_kept: float) -> _Solution:
    """The best rendition that keeps its share of the tune: the costliest figures are taken out, one by one."""
    while solution.rendition.kept_share < least_kept and solution.numbers:
        costliest = max(solution.numbers, key=lambda number: (figures.found.losses[number], -number))
        if not figures.bar([costliest]):
            break
        solution = _playable(figures, terms, figures.solve(terms))
    return solution


def _overused(found: Survey, figures: Sequence[Figure]) -> Mapping[str, float]:
    """What to add to the price of each technique that takes more than its share."""
    if len(found.techniques) < 2 or len(figures) < 5:
        return {}
    share = taste_of(found.setting.idiom).share
    over: dict[str, float] = {}
    for id, count in Counter(figure.technique for figure in figures).items():
        most = max(share.get(id, share["usual"]), 1.6 / len(found.techniques)) * len(figures)
        if count > ceil(most):
            over[id] = 0.5 * (count / most - 0.75)
    return over


def model_of(found: Survey) -> Model:
    """The chooser's model of a survey in its first round: no seed, no constraints, no tolls."""
    nothing: frozenset[int] = frozenset()
    return _Field(found, Constraints(nothing, nothing, np.zeros(1))).model(0.0, {})[1]


class _Field:
    """The figures of a survey as columns, from which each round's model is drawn.

    Of figures that compete for just the same slots only the best of each technique is a candidate, and of those that
    start in one slot only the six best. Techniques that were asked for by name are lifted until they count.
    """

    def __init__(self, found: Survey, constraints: Constraints) -> None:
        self.found, self.constraints = found, constraints
        self.level = level_numbered(found.setting.level).at_density(found.setting.density)
        self.ordered = sorted(found.techniques, key=lambda technique: technique.family)
        numbers = {technique.id: number for number, technique in enumerate(self.ordered)}
        self.locks = [found.candidates[number] for number in sorted(constraints.fixed)]
        self.phrase_of_slot, self.limits = _phrase_limits(found, self.level, self.locks)
        self.first = np.array([figure.first_slot for figure in found.candidates], dtype=np.int64)
        self.technique = np.array([numbers[figure.technique] for figure in found.candidates], dtype=np.int64)
        slot_times = _slot_times(found.tune)
        free = [_next_free(figure, slot_times, self.level.rest_ticks, self.locks) for figure in found.candidates]
        self.free = np.array(free, dtype=np.int64)
        slots = len(slot_times) + 1
        self.rivalry = (self.first * slots + self.free) * len(numbers) + self.technique
        """One number for each stretch of slots and technique."""
        self.losses = np.array(found.losses)
        self.scores = found.scores + constraints.noise
        if found.is_asked:
            best = np.full(len(numbers), -np.inf)
            np.maximum.at(best, self.technique, found.scores)
            self.scores = self.scores + np.maximum(0.0, 1.0 - best[self.technique])
        self.is_fixed = np.isin(np.arange(len(found.candidates)), list(constraints.fixed))
        self.is_barred = np.isin(np.arange(len(found.candidates)), list(constraints.barred))
        self.barred_since: set[int] = set()
        """Figures that `bar` has taken out."""
        for lock in self.locks:
            last = np.array([figure.last_slot for figure in found.candidates])
            self.is_barred |= (self.first <= lock.last_slot) & (lock.first_slot <= last) & ~self.is_fixed

    def solve(self, terms: _Terms) -> _Solution:
        """The best rendition on these terms."""
        candidates, model = self.model(terms.toll, terms.prices)
        indices, worth = choose(model)
        numbers = tuple(candidates[index] for index in indices)
        figures = tuple(self.found.scored(number) for number in numbers)
        return _Solution(
            Rendition(self.found.tune, self.found.setting, figures, terms.seed, round(worth, 4)), numbers, terms
        )

    def bar(self, numbers: Collection[int]) -> bool:
        """Take figures out of the choice, all but locked ones; False when that changes nothing."""
        fresh = [number for number in numbers if not (self.is_fixed[number] or self.is_barred[number])]
        self.is_barred[fresh] = True
        self.barred_since.update(fresh)
        return bool(fresh)

    def alone(self, terms: _Terms) -> _Solution:
        """The figure that hides least of the tune, the best of those, alone."""
        allowed = set(range(len(self.found.candidates))) - self.constraints.barred
        one = min(allowed, key=lambda number: (self.losses[number], -self.scores[number], number))
        others = frozenset(range(len(self.found.candidates))) - {one}
        return _Field(self.found, replace(self.constraints, fixed=frozenset([one]), barred=others)).solve(terms)

    def model(self, toll: float, prices: Mapping[str, float]) -> tuple[list[int], Model]:
        """The chooser's model, and for each of its candidates the number of the figure."""
        costs = np.array([prices.get(technique.id, 0.0) for technique in self.ordered])
        scores = self.scores - toll * self.losses - costs[self.technique] if len(self.scores) else self.scores
        kept = self._best_rivals(scores)
        columns = (self.first[kept], self.free[kept], self.technique[kept], scores[kept], self.is_fixed[kept])
        candidates = tuple(map(Candidate._make, zip(*(column.tolist() for column in columns), strict=True)))
        penalties = (0.0, 0.0, 0.0) if len(self.ordered) == 1 else PENALTIES
        return kept.tolist(), Model(
            candidates, self.phrase_of_slot, self.limits, _family_numbers(self.ordered), *penalties
        )

    def _best_rivals(self, scores: NDArray[np.float64]) -> NDArray[np.int64]:
        """Numbers of the candidates: the best of those that compete for the same slots, six at most in a slot."""
        open_numbers = np.flatnonzero(((scores > 0) | self.is_fixed) & ~self.is_barred)
        ranked = open_numbers[np.lexsort((-scores[open_numbers], ~self.is_fixed[open_numbers]))]
        _, firsts = np.unique(self.rivalry[ranked], return_index=True)
        ranked = ranked[np.sort(firsts)]
        by_slot = ranked[np.argsort(self.first[ranked], kind="stable")]
        slots = self.first[by_slot]
        rank = np.arange(len(slots)) - np.searchsorted(slots, slots)
        kept = by_slot[rank < _BEST_AT_A_SLOT]
        ordered: NDArray[np.int64] = kept[np.lexsort((self.technique[kept], self.free[kept], self.first[kept]))]
        return ordered


def _family_numbers(ordered: Sequence[Technique]) -> tuple[int, ...]:
    """The family number of each technique, from 0 in order."""
    changes = [0, *(int(a.family != b.family) for a, b in pairwise(ordered))]
    return tuple(accumulate(changes))


def _phrase_limits(found: Survey, level: Level, locks: Sequence[Figure]) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The phrase of each slot, and the most figures in each phrase; a first statement that will return stays plainer."""
    statements = Counter(context.phrase.model for context in found.contexts if context.is_phrase_start)
    phrase_of_slot: list[int] = []
    limits: list[int] = []
    for context in found.contexts:
        phrase = context.phrase
        if context.is_phrase_start:
            bars = (phrase.end_ticks - phrase.start_ticks) / WHOLE
            returns = phrase.statement == 1 and statements[phrase.model] > 1
            share = FIRST_STATEMENT_SHARE if returns else 1.0
            held = sum(phrase.first <= lock.anchors[0] <= phrase.last for lock in locks)
            limits.append(max(round(bars * level.figures_per_bar * share + 0.3), 1, held))
        phrase_of_slot += [len(limits) - 1] * 2
    return tuple(phrase_of_slot), tuple(limits)


def _slot_times(tune: Tune) -> list[int]:
    return [time for note in tune.notes for time in (note.onset_ticks, note.onset_ticks + note.duration_ticks // 2)]


def _next_free(figure: Figure, slot_times: Sequence[int], rest_ticks: int, locks: Sequence[Figure]) -> int:
    """The first slot in which another figure may start: after the level's rest, but no later than a lock."""
    slot = figure.last_slot + 1
    ready = figure.end_ticks + rest_ticks
    while slot < len(slot_times) and rest_ticks and slot_times[slot] < ready:
        slot += 1
    return min([slot, *(lock.first_slot for lock in locks if lock.first_slot > figure.last_slot)])
