"""Choosing is exact: against brute force on small models, and against OR-Tools CP-SAT on real ones where installed."""

from __future__ import annotations

import random
from collections.abc import Sequence
from itertools import combinations

import pytest

from fioritura.arrange.choose import Candidate, Model, choose, gumbel
from fioritura.errors import OptionError


def worth(model: Model, chosen: Sequence[int]) -> float | None:
    """The worth of a set by the words of the model alone; None when it is not allowed."""
    figures = [model.candidates[index] for index in chosen]
    counts = [0] * len(model.limits)
    total = 0.0
    for context, figure in enumerate(figures):
        counts[model.phrase_of_slot[figure.first]] += 1
        if context and figures[context - 1].next_free > figure.first:
            return None
        total += figure.score
        own = model.family[figure.technique]
        if context:
            last = figures[context - 1].technique
            total -= model.same_technique * (last == figure.technique) + model.same_family * (
                model.family[last] == own
            )
        if context > 1:
            total -= model.family_again * (model.family[figures[context - 2].technique] == own)
    if any(count > limit for count, limit in zip(counts, model.limits, strict=True)):
        return None
    return total


def random_model(dice: random.Random, slots: int, count: int) -> Model:
    techniques = dice.randint(2, 5)
    family = sorted(dice.randrange(3) for _ in range(techniques))
    family = [sorted(set(family)).index(f) for f in family]
    candidates = []
    for _ in range(count):
        first = dice.randrange(slots)
        candidates.append(
            Candidate(first, first + dice.randint(1, 4), dice.randrange(techniques), round(dice.uniform(0.05, 3), 2))
        )
    candidates.sort(key=lambda c: (c.first, c.next_free, c.technique))
    phrases = sorted(dice.randrange(3) for _ in range(slots))
    phrases = [sorted(set(phrases)).index(p) for p in phrases]
    limits = tuple(dice.randint(1, 3) for _ in range(phrases[-1] + 1))
    return Model(tuple(candidates), tuple(phrases), limits, tuple(family), 1.2, 0.5, 0.3)


@pytest.mark.parametrize("seed", range(60))
def test_the_optimum_is_that_of_brute_force(seed: int) -> None:
    dice = random.Random(seed)
    model = random_model(dice, slots=dice.randint(4, 14), count=dice.randint(3, 11))
    best = 0.0
    for size in range(1, len(model.candidates) + 1):
        for subset in combinations(range(len(model.candidates)), size):
            value = worth(model, sorted(subset, key=lambda index: model.candidates[index].first))
            best = max(best, value if value is not None else 0.0)
    chosen, value = choose(model)
    assert value == pytest.approx(best, abs=1e-4)
    assert worth(model, chosen) == pytest.approx(best, abs=1e-4)


def test_a_locked_figure_stands_even_where_it_is_poor() -> None:
    poor = Candidate(2, 5, 0, 0.1, is_locked=True)
    rich = Candidate(1, 4, 1, 2.0)
    later = Candidate(5, 6, 1, 1.0)
    model = Model((rich, poor, later), (0,) * 8, (4,), (0, 1), 1.2, 0.5, 0.3)
    chosen, _ = choose(model)
    assert [model.candidates[index] for index in chosen] == [poor, later]


def test_locked_figures_that_collide_are_refused() -> None:
    one, two = Candidate(2, 5, 0, 1.0, is_locked=True), Candidate(3, 6, 1, 1.0, is_locked=True)
    with pytest.raises(OptionError, match="collide"):
        choose(Model((one, two), (0,) * 8, (4,), (0, 1), 1.2, 0.5, 0.3))


def test_nothing_to_choose_is_nothing_chosen() -> None:
    assert choose(Model((), (), (), (), 1.2, 0.5, 0.3)) == ([], 0.0)


def test_noise_is_repeatable_and_seed_zero_is_silent() -> None:
    assert gumbel(0, "turn-1-abc", 0.3) == 0.0
    assert gumbel(7, "turn-1-abc", 0.3) == gumbel(7, "turn-1-abc", 0.3) != gumbel(8, "turn-1-abc", 0.3)
    draws = [gumbel(3, str(n), 1.0) for n in range(4000)]
    mean = sum(draws) / len(draws)
    assert mean == pytest.approx(0.0, abs=0.06)  # the Gumbel distribution's mean, taken off (Euler's constant)


@pytest.mark.parametrize(("seed", "level"), [(1, 2), (2, 3), (3, 4)])
def test_the_optimum_is_that_of_an_independent_solver(seed: int, level: int) -> None:
    """Reference: OR-Tools CP-SAT on the same model, as a real tune gives it, proved optimal."""
    pytest.importorskip("ortools")
    from fioritura.arrange import arranger
    from fioritura.arrange.survey import survey
    from fioritura.players.player import Player
    from fioritura.players.setting import Setting
    from tests.solver_reference import cp_sat_worth
    from tests.tunes import random_tune

    found = survey(random_tune(seed, bars=8), Setting(Player.of("concert", level), 100.0))
    model = arranger.model_of(found)
    chosen, value = choose(model)
    reference, other = cp_sat_worth(model)
    assert value == pytest.approx(reference, abs=2e-3)
    assert worth(model, chosen) == pytest.approx(worth(model, other), abs=2e-3)
