"""Ornament a tune: survey, choose and lay out; the door through which every face comes in."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace
from typing import Final

import numpy as np

from fioritura.arrange.choose import Model
from fioritura.arrange.field import Constraints, Field, Solution, Terms, check_known, constraints_of
from fioritura.arrange.ideas import tell, tell_of
from fioritura.arrange.plan import Plan
from fioritura.arrange.playable import unplayable_figures
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.shares import Shares
from fioritura.arrange.survey import Survey, no_collector, survey
from fioritura.arrange.taking_up import taken_up
from fioritura.players.setting import Setting
from fioritura.tune import Tune

__all__ = ["best_figures", "choose_figures", "choose_nearby", "model_of", "ornament", "rivals"]

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
    plan: Plan | None = None,
) -> Rendition:
    """The best rendition of a tune for a player; with a `plan`, of one that is written out as often as it says.

    Seed 0 gives the best; every other seed gives another good version, always the same. `locked` and `refused` hold
    figures by id: the former stand in the rendition, the latter do not, the rest is the best around them.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> ornament(tune, setting, seed=3) == ornament(tune, setting, seed=3)
        True

    Raises:
        OptionError: an unknown technique or figure, or locked figures that collide.
    """
    found = survey(tune, setting, only, without, plan=plan)
    return choose_figures(found, seed=seed, locked=locked, refused=refused)


@no_collector()
def choose_figures(
    found: Survey, *, seed: int = 0, locked: Collection[str] = (), refused: Collection[str] = ()
) -> Rendition:
    """Choose among the figures of a survey; see `ornament`.

    The best set is found exactly, and once more when the scores have been told of its ideas (see `ideas`). Where the
    tune would be hidden a toll is laid on what hides it, and the whole is solved again; where a technique has more than
    its share, phrases are (see `shares`), and where a statement of a plan would repeat figures of an earlier one (see
    `taking_up`).

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> found = survey(tune, setting)
        >>> set(choose_figures(found).figures) <= set(found.figures)
        True
    """
    field = Field(found, constraints_of(found, seed, locked, refused))
    solution = _settled(field, seed)
    again = taken_up(field, solution)
    return (solution if again is solution else _sound_in_phrases(field, again, _least_kept(field))).rendition


@no_collector()
def choose_nearby(
    found: Survey,
    standing: Sequence[str],
    around: str,
    *,
    seed: int = 0,
    locked: Collection[str] = (),
    refused: Collection[str] = (),
) -> Rendition:
    """Choose the phrase of one figure again, by the same programme, with all other `standing` figures as they are.

    Figures outside the phrase go only where a locked one collides with them.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.arrange.survey import survey
        >>> found = survey(tune, fioritura.Setting("alto-sax", level=3).on(tune))
        >>> best = choose_figures(found)
        >>> ids = [figure.id for figure in best.figures]
        >>> without = choose_nearby(found, ids, ids[0], refused=ids[:1])
        >>> ids[0] in {figure.id for figure in without.figures}
        False

    Raises:
        OptionError: an unknown figure, or locked figures that collide.
    """
    field = Field(found, constraints_of(found, seed, locked, refused))
    check_known(found, (around,))
    phrase = field.phrase_of(found.by_id[around])
    known = [found.by_id[name] for name in standing if name in found.by_id]
    stays = {number for number in known if not field.is_barred[number]} | field.constraints.fixed
    numbers = tuple(sorted(stays, key=lambda number: int(field.first[number])))
    tell_of(field, numbers)
    solution = _phrase_again(field, field.solution(numbers, Terms(seed)), phrase)
    return _sound_in_phrases(field, solution, _least_kept(field), phrase).rendition


@no_collector()
def rivals(
    found: Survey,
    id: str,
    *,
    count: int = 8,
    seed: int = 0,
    locked: Collection[str] = (),
    refused: Collection[str] = (),
    standing: Sequence[str] | None = None,
) -> list[tuple[int, float]]:
    """Numbers of the figures that could stand where the named one does, each with what the whole is worth with it, on
    the terms on which the rendition was chosen; best first.

    The phrase is chosen anew around the figure; all other `standing` figures (without them those of the best rendition)
    stay but where a technique would pass its share.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> found = survey(tune, setting)
        >>> best = choose_figures(found)
        >>> best.figures[0] in [found.figures[number] for number, _ in rivals(found, best.figures[0].id)]
        True

    Raises:
        OptionError: there is no such figure.
    """
    constraints = constraints_of(found, seed, locked, refused)
    check_known(found, (id,))
    one = found.candidates[found.by_id[id]]
    field = Field(found, constraints)
    best = _settled(field, seed)
    terms, spoilt = best.terms, field.barred_since
    numbers = best.numbers
    if standing is not None:
        numbers = tuple(sorted((found.by_id[name] for name in standing), key=lambda number: int(field.first[number])))
    at_hand = [n for n, other in enumerate(found.candidates) if n not in spoilt and one.collides(other)]
    at_hand.sort(key=lambda number: (number not in numbers, -found.scores[number], number))
    worths: list[tuple[int, float]] = []
    for number in at_hand[: max(count, 1)]:
        if number in numbers:
            worths.append((number, field.worth(numbers, field.priced(terms))))
            continue
        other = found.candidates[number]
        stays = {lock for lock in constraints.fixed if not other.collides(found.candidates[lock])}
        barred = (constraints.barred | spoilt) - {number}
        held = Field(found, replace(constraints, fixed=frozenset(stays | {number}), barred=barred))
        held.scores = field.scores
        held.rest_as(field, number)
        around = held.solution([n for n in numbers if not other.collides(found.candidates[n])], terms)
        again = _phrase_again(held, around, held.phrase_of(number))
        worths.append((number, Shares(held).kept(again).rendition.score))
    return sorted(worths, key=lambda entry: -entry[1])


def best_figures(found: Survey) -> Rendition:
    """The best set of figures that is playable and keeps its share of the tune, whatever shares its techniques have.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.arrange.survey import survey
        >>> found = survey(tune, fioritura.Setting("alto-sax", level=3).on(tune))
        >>> best_figures(found).score >= choose_figures(found).score
        True
    """
    field = Field(found, constraints_of(found, 0, (), ()))
    return _sound(field, Terms(0)).rendition


def model_of(found: Survey) -> Model:
    """The chooser's model of a survey in its first round: no seed, no constraints, no tolls.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> setting = fioritura.Setting("alto-sax", level=3).on(tune)
        >>> model = model_of(survey(tune, setting))
        >>> len(model.phrase_of_slot) == 2 * len(tune.notes), min(model.limits) >= 1
        (True, True)
    """
    nothing: frozenset[int] = frozenset()
    return Field(found, Constraints(nothing, nothing, np.zeros(1))).model(Terms(0))[1]


def _least_kept(field: Field) -> float:
    return min(field.level.kept_share, 0.8 if field.found.is_asked else 1.0)


def _settled(field: Field, seed: int) -> Solution:
    """The best rendition that is playable, keeps its share of the tune and gives no technique more than its own."""
    least_kept = _least_kept(field)
    first = solution = _sound(field, Terms(seed))
    shares = Shares(field, first.rendition.score)
    for _ in range(_MOST_ROUNDS):
        shared = shares.kept(first)
        if shared is first:
            break
        sound = _sound_in_phrases(field, shared, least_kept)
        solution = shares.better(solution, sound)
        if sound is shared or not shares.excess(shares.uses(sound.numbers)):
            break
    if field.found.is_asked and not solution.numbers and len(field.first) > len(field.constraints.barred):
        solution = field.alone(solution.terms)
    return solution


def _sound(field: Field, terms: Terms) -> Solution:
    """The best rendition that is playable and keeps its share of the tune, told of its ideas."""
    least_kept = _least_kept(field)
    numbers, worth = tell(field, terms)
    solution = field.solution(numbers, terms, worth)
    for _ in range(_MOST_ROUNDS - 1):
        if solution.rendition.kept_share >= least_kept:
            break
        terms = terms.dearer()
        solution = field.solve(terms)
    return _sound_in_phrases(field, solution, least_kept)


def _sound_in_phrases(field: Field, solution: Solution, least_kept: float, phrase: int | None = None) -> Solution:
    """The solution with breath for every phrase, time for every grace note and enough of the tune kept: what stands in
    the way is taken out and its phrase chosen again; locked figures stay, and with a phrase given all outside it."""
    while True:
        of_phrase = [n for n in solution.numbers if phrase is None or field.phrase_of(n) == phrase]
        wrong = {solution.numbers[place] for place in unplayable_figures(solution.rendition)}
        if solution.rendition.kept_share < least_kept and of_phrase:
            wrong |= {max(of_phrase, key=lambda number: (field.losses[number], -number))}
        wrong &= set(of_phrase) - field.constraints.fixed
        if not wrong:
            return solution
        field.bar(wrong)
        for again in sorted({field.phrase_of(number) for number in wrong}):
            solution = _phrase_again(field, solution, again)


def _phrase_again(field: Field, solution: Solution, phrase: int) -> Solution:
    """The solution with one phrase chosen again, in which no technique passes its share anew."""
    before, _, after = field.parted(solution.numbers, phrase)
    barred = Shares(field).spent([*before, *after], solution.numbers)
    numbers, _ = field.chosen_again(solution.numbers, phrase, field.priced(solution.terms), barred)
    return field.solution(numbers, solution.terms)
