"""Ornament a tune: survey, choose and lay out; the door through which every face comes in."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from math import ceil
from typing import Final

from fioritura.arrange.choose import Candidate, Model, choose, gumbel
from fioritura.arrange.levels import Level, level_numbered
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import Survey, figure_id, survey
from fioritura.errors import OptionError
from fioritura.techniques.figure import Figure
from fioritura.techniques.place import Setting
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import WHOLE
from fioritura.tune import Tune

__all__ = ["choose_figures", "ornament"]

SEED_NOISE: Final = 0.3
MOST_SHARE: Final = 0.15
"""No technique makes up more of the figures, as long as at least eight techniques are on offer."""

PENALTIES: Final = (1.2, 0.5, 0.3)
"""For the technique of the figure before, its family, and the family of the figure before that."""

_BEST_AT_A_SLOT: Final = 8
_MOST_ROUNDS: Final = 6
_LOCKED_BONUS: Final = 1000.0


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


def choose_figures(
    found: Survey, *, seed: int = 0, locked: Collection[str] = (), refused: Collection[str] = ()
) -> Rendition:
    """Choose among the figures of a survey; see `ornament`.

    Each round is solved exactly. Where the tune would be hidden, or one technique takes more than its share, a toll
    is laid on what hides it, or a price on that technique, and the next round is solved with them.
    """
    unknown = [name for name in (*locked, *refused) if name not in found.by_id]
    if unknown:
        raise OptionError(f"No figure {unknown[0]!r} in this tune and setting: list them with `spots`.")
    constraints = Constraints(
        fixed=frozenset(found.by_id[name] for name in locked),
        barred=frozenset(found.by_id[name] for name in refused),
        noise=tuple(gumbel(seed, figure_id(figure), SEED_NOISE) for figure in found.found) if seed else (),
    )
    least_kept = min(level_numbered(found.setting.level).kept_share, 0.8 if found.is_asked else 1.0)
    toll, prices = 0.0, Counter[str]()
    for _ in range(_MOST_ROUNDS):
        rendition = _solved(found, constraints, seed, toll, prices)
        hides = rendition.kept_share < least_kept
        overused = _overused(found, rendition.figures)
        if not (hides or overused):
            break
        toll = 1.6 * toll + 0.04 if hides else toll
        prices.update(overused)
    if found.is_asked and not rendition.figures and len(found.found) > len(constraints.barred):
        rendition = _solved(found, replace(constraints, fixed=frozenset([_best_of(found, constraints)])), seed)
    return rendition


@dataclass(frozen=True, slots=True)
class Constraints:
    """Numbers of the survey's figures that must and must not stand, and the seed's noise for each figure."""

    fixed: frozenset[int]
    barred: frozenset[int]
    noise: tuple[float, ...] = ()


def _solved(
    found: Survey, constraints: Constraints, seed: int, toll: float = 0.0, prices: Mapping[str, float] | None = None
) -> Rendition:
    numbers, model = _model(found, constraints, toll, prices or {})
    indices, worth = choose(model)
    figures = tuple(found.scored(numbers[index]) for index in indices)
    return Rendition(found.tune, found.setting, figures, seed, round(worth, 4))


def _best_of(found: Survey, constraints: Constraints) -> int:
    return max(set(range(len(found.found))) - constraints.barred, key=lambda n: (found.scores[n], -n))


def _overused(found: Survey, figures: Sequence[Figure]) -> Mapping[str, float]:
    """What to add to the price of each technique that takes more than its share."""
    if len(found.techniques) < 2 or len(figures) < 5:
        return {}
    most = max(MOST_SHARE, 1.6 / len(found.techniques)) * len(figures)
    counts = Counter(figure.technique for figure in figures)
    return {id: 0.3 * (count / most - 0.8) for id, count in counts.items() if count > ceil(most)}


def _model(
    found: Survey, constraints: Constraints, toll: float, prices: Mapping[str, float]
) -> tuple[list[int], Model]:
    """The chooser's model, and for each of its candidates the number of the figure.

    Of figures that compete for just the same slots only the best of each technique is a candidate, and of those that
    start in one slot only the eight best. Techniques that were asked for by name are lifted until they count.
    """
    level, fixed, noise = level_numbered(found.setting.level), constraints.fixed, constraints.noise
    lift = _lifts(found) if found.is_asked else {}
    slot_times = _slot_times(found.tune)
    ordered = sorted(found.techniques, key=lambda technique: technique.family)
    technique_numbers = {technique.id: number for number, technique in enumerate(ordered)}
    locks = [found.found[number] for number in sorted(fixed)]
    best: dict[tuple[int, int, int], tuple[float, int]] = {}
    scores = found.scores.tolist()
    for number, figure in enumerate(found.found):
        is_locked = number in fixed
        if number in constraints.barred or (
            locks and not is_locked and any(_collides(figure, other) for other in locks)
        ):
            continue
        score = scores[number] - toll * found.losses[number] - prices.get(figure.technique, 0.0)
        score += (noise[number] if noise else 0.0) + lift.get(figure.technique, 0.0)
        if is_locked:
            score += _LOCKED_BONUS
        elif score <= 0:
            continue
        free = _next_free(figure, slot_times, level.rest_ticks)
        free = min([free, *(other.first_slot for other in locks if other.first_slot > figure.last_slot)])
        key = (figure.first_slot, free, technique_numbers[figure.technique])
        if key not in best or best[key][0] < score:
            best[key] = (score, number)
    kept = _best_at_each_slot(best)
    candidates = tuple(
        Candidate(first, free, technique, score, number in fixed)
        for (first, free, technique), (score, number) in kept
    )
    phrase_of_slot, limits = _phrase_limits(found, level, locks)
    families = _family_numbers(ordered)
    penalties = (0.0, 0.0, 0.0) if len(ordered) == 1 else PENALTIES
    return [number for _, (_, number) in kept], Model(candidates, phrase_of_slot, limits, families, *penalties)


def _lifts(found: Survey) -> dict[str, float]:
    """What each technique needs for its best figure to score 1.0."""
    best: dict[str, float] = {}
    for figure, score in zip(found.found, found.scores.tolist(), strict=True):
        best[figure.technique] = max(best.get(figure.technique, score), score)
    return {id: max(0.0, 1.0 - score) for id, score in best.items()}


Entry = tuple[tuple[int, int, int], tuple[float, int]]


def _best_at_each_slot(best: Mapping[tuple[int, int, int], tuple[float, int]]) -> list[Entry]:
    kept: list[Entry] = []
    by_slot: dict[int, list[Entry]] = {}
    for entry in best.items():
        by_slot.setdefault(entry[0][0], []).append(entry)
    for slot in sorted(by_slot):
        ranked = sorted(by_slot[slot], key=lambda entry: (-entry[1][0], entry[0]))
        kept += sorted(ranked[:_BEST_AT_A_SLOT])
    return kept


def _family_numbers(ordered: Sequence[Technique]) -> tuple[int, ...]:
    """The family number of each technique, from 0 in order."""
    changes = [0, *(int(a.family != b.family) for a, b in pairwise(ordered))]
    return tuple(accumulate(changes))


def _phrase_limits(found: Survey, level: Level, locks: Sequence[Figure]) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The phrase of each slot, and the most figures in each phrase."""
    phrase_of_slot: list[int] = []
    limits: list[int] = []
    for place in found.places:
        if place.is_phrase_start:
            bars = (place.phrase.end_ticks - place.phrase.start_ticks) / WHOLE
            held = sum(place.phrase.first <= lock.anchors[0] <= place.phrase.last for lock in locks)
            limits.append(max(ceil(bars * level.figures_per_bar), 1, held))
        phrase_of_slot += [len(limits) - 1] * 2
    return tuple(phrase_of_slot), tuple(limits)


def _slot_times(tune: Tune) -> list[int]:
    return [time for note in tune.notes for time in (note.onset_ticks, note.onset_ticks + note.duration_ticks // 2)]


def _next_free(figure: Figure, slot_times: Sequence[int], rest_ticks: int) -> int:
    slot = figure.last_slot + 1
    ready = figure.end_ticks + rest_ticks
    while slot < len(slot_times) and rest_ticks and slot_times[slot] < ready:
        slot += 1
    return slot


def _collides(figure: Figure, lock: Figure) -> bool:
    return figure.first_slot <= lock.last_slot and lock.first_slot <= figure.last_slot
