"""Quotas: no technique takes over where the tune offers another, at next to no loss.

Reference: OR-Tools CP-SAT with the quotas in its model, proved optimal.
"""

from __future__ import annotations

from collections import Counter

import pytest

from fioritura.arrange.arranger import best_figures, choose_figures, model_of
from fioritura.arrange.choose import choose
from fioritura.arrange.field import Field, Terms, constraints_of
from fioritura.arrange.shares import MOST_LOSS, Shares
from fioritura.arrange.survey import Survey, survey
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.techniques.grace import LOWER_GRACE_STEP
from fioritura.techniques.inflection import VIBRATO
from tests.corpus_tunes import corpus_tunes
from tests.solver_reference import cp_sat_worth, quotas_of
from tests.tunes import random_tune


def found_in(seed: int, bars: int, level: int) -> Survey:
    return survey(random_tune(seed, bars=bars), Setting(Player.of("concert", level), 100.0))


def reached(found: Survey) -> tuple[float, float]:
    """What is chosen under quotas to the optimum under quotas, and the loss to the optimum without."""
    pytest.importorskip("ortools")
    field = Field(found, constraints_of(found, 0, (), ()))
    free = field.solve(Terms(0))
    shares = Shares(field, free.rendition.score)
    kept = shares.kept(free)
    assert not shares.excess(shares.uses(kept.numbers))
    optimum, _ = cp_sat_worth(model_of(found), 300.0, quotas_of(found))
    return kept.rendition.score / optimum, optimum / free.rendition.score


@pytest.mark.parametrize(
    ("seed", "bars", "level"), [(2, 8, 3), (2, 12, 3), pytest.param(0, 24, 1, marks=pytest.mark.slow)]
)
def test_quotas_are_kept_at_next_to_no_loss(seed: int, bars: int, level: int) -> None:
    found = found_in(seed, bars, level)
    field = Field(found, constraints_of(found, 0, (), ()))
    free, _ = field.best(field.scores)
    assert Shares(field).excess(Shares(field).uses(free)) > 0, "the quotas bear on this tune"
    gap, _ = reached(found)
    assert 0.99 <= gap <= 1.0 + 1e-5


@pytest.mark.slow
def test_quotas_are_kept_at_next_to_no_loss_on_real_tunes() -> None:
    """Short tunes of the public books, where CP-SAT gets to its proof; all of whose quotas can be kept."""
    tunes = [tune for tune in corpus_tunes() if len(tune.notes) <= 28][:9]
    gaps = []
    for number, tune in enumerate(tunes):
        found = survey(tune, Setting(Player.of("concert", 1 + number % 3), 100.0, "swing", "jazz"))
        gaps.append(reached(found)[0])
    assert min(gaps) >= 0.97
    assert sum(gaps) / len(gaps) >= 0.99


def test_where_the_tune_offers_nothing_else_a_technique_may_pass_its_quarter() -> None:
    """A tune whose only places are for one technique: quotas would cost more than a tenth, so they give way."""
    found = found_in(0, 24, 1)
    few = survey(found.tune, found.setting, only=[VIBRATO.id, LOWER_GRACE_STEP.id])
    counts = Counter(figure.technique for figure in choose_figures(few).figures)
    assert max(counts.values()) > counts.total() / 4
    assert choose_figures(found).score >= (1.0 - MOST_LOSS) * best_figures(found).score


@pytest.mark.parametrize("level", [1, 2, 3, 5])
def test_a_rendition_is_worth_nine_tenths_of_the_best(level: int) -> None:
    for seed in range(6):
        found = found_in(seed, 16, level)
        assert choose_figures(found).score >= (1.0 - MOST_LOSS) * best_figures(found).score


def test_prices_give_a_bound() -> None:
    """Lagrange's: whatever the prices, the best at them with the prices added is no less than any set within quotas."""
    found = found_in(0, 24, 1)
    field = Field(found, constraints_of(found, 0, (), ()))
    _, free = choose(model_of(found))
    shares = Shares(field, free)
    rows, slack = shares.quotas(len(field.best(field.scores)[0]))
    kept = shares.kept(field.solve(Terms(0))).rendition.score
    for number in range(len(slack)):
        toll = 0.2 * rows[number]
        _, priced = field.best(field.scores - toll[field.technique])
        assert priced + 0.2 * slack[number] >= kept - 1e-6
