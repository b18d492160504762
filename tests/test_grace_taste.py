"""The learned folk taste for grace notes: its features on worked examples, its weights against the books.

The checks against O'Neill's, Ryan's and Aird's books (music21's ABC corpus) are slow and run with ``-m slow``; the
bars are those of the project's measures of musical judgement.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from fioritura.arrange.grace_taste import PLACEMENT, SIDE, folk_grace_taste, grace_sites
from fioritura.tune import Tune
from tests.tunes import line_of, random_tune
from tools.folk_graces import across_books, auc, conditional_logit, folk_tunes, logistic, measure, train


def features_of(tune: Tune, number: int) -> set[str]:
    spot = grace_sites(tune)[number]
    return {name for name, feature in PLACEMENT.items() if feature(spot) is True}


def side_features_of(tune: Tune, number: int) -> set[str]:
    spot = grace_sites(tune)[number]
    return {name for name, feature in SIDE.items() if feature(spot) is True}


# --- what the features see --------------------------------------------------------------------------------------


def test_a_written_out_turn_is_seen() -> None:
    tune = line_of("G4/1 A4/0.25 G4/0.25 A4/0.5 C5/2")
    found = features_of(tune, 1)
    assert {"a step down and up again", "quick, a step down and up again", "the lower neighbour follows"} <= found
    assert {"a peak, then a step down", "on a beat, then a step down", "quick, on a beat"} <= found
    assert "repeated, a step down and up again" not in found


def test_a_repeated_note_that_steps_down_is_seen() -> None:
    found = features_of(line_of("A4/1 A4/1 G4/1 F4/1"), 1)
    assert {"repeated, then falls", "repeated, then a step down", "repeated, on a beat"} <= found
    assert "left by a semitone down" not in found
    assert "left by a semitone down" in features_of(line_of("C5/1 C5/1 B4/1 A4/1"), 1)


def test_lengths_are_measured_in_beats_and_against_neighbours() -> None:
    simple = grace_sites(line_of("A4/1.5 G4/0.5 F4/2"))
    assert [round(spot.length, 3) for spot in simple] == [round(math.log2(1.5), 3), -1.0, 1.0]
    assert simple[0].over_next == pytest.approx(math.log2(3)) == -simple[1].over_before
    assert "dotted, then a step down" in features_of(line_of("A4/1.5 G4/0.5 F4/2"), 0)
    compound = grace_sites(line_of("A4/1.5 G4/0.5 F4/0.5 E4/0.5", "6/8"))
    assert [round(spot.length, 3) for spot in compound] == [0.0, *[round(-math.log2(3), 3)] * 3]
    assert compound[3].flow == 0.0 and compound[3].is_compound


def test_degrees_follow_the_key_and_its_mode() -> None:
    assert "second degree on the downbeat" in features_of(line_of("D4/2 C4/2"), 0)
    assert "second degree on the downbeat" in features_of(line_of("B4/2 A4/2", key="A minor"), 0)
    assert "seventh degree on a beat" in features_of(line_of("G4/2 A4/2", key="A dorian"), 0)
    assert "tonic" in side_features_of(line_of("C5/2 D5/2"), 0)


def test_the_ends_of_a_tune_have_no_interval() -> None:
    tune = line_of("C4/1 r/1 C5/1 C5/1")
    ends = grace_sites(tune)[0], grace_sites(tune)[2]
    assert not {name for name in features_of(tune, 0) if "repeated" in name or "fallen" in name}
    assert ends[0].came == ends[1].leaves == ends[0].came_before == 0.5
    assert "the last note" in side_features_of(tune, 2)
    assert "after a rest" in side_features_of(tune, 1)
    assert grace_sites(Tune("Empty", (), tune.bars)) == ()


@pytest.mark.parametrize("metre", ["4/4", "3/4", "6/8", "5/4"])
def test_every_feature_is_a_small_number_on_any_tune(metre: str) -> None:
    values = [
        float(feature(spot))
        for spot in grace_sites(random_tune(3, metre=metre))
        for feature in (*PLACEMENT.values(), *SIDE.values())
    ]
    assert all(-3 <= value <= 2 for value in values)


# --- the model --------------------------------------------------------------------------------------------------


def test_the_weights_name_the_features_one_for_one() -> None:
    taste = folk_grace_taste()
    assert list(taste.placement) == list(PLACEMENT)
    assert list(taste.side) == list(SIDE)


def test_scores_are_the_sum_of_their_reasons() -> None:
    taste = folk_grace_taste()
    for spot in grace_sites(random_tune(5)):
        parts = taste.placement_reasons(spot)
        assert taste.placement_score(spot) == pytest.approx(taste.placement_base + sum(parts.values()))
        assert taste.side_score(spot) == pytest.approx(taste.side_base + sum(taste.side_reasons(spot).values()))
        assert list(parts) == sorted(parts, key=lambda name: -abs(parts[name]))


def test_a_cut_between_repeated_notes_beats_a_passing_note() -> None:
    """Common practice in folk playing: a grace note parts repeated notes; one in mid-scale is rare."""
    taste = folk_grace_taste()
    tune = line_of("D4/1 A4/0.5 A4/0.5 G4/0.5 A4/0.5 B4/0.5 C5/0.5", key="G major")
    scores = [taste.placement_score(spot) for spot in grace_sites(tune)]
    assert scores[1] > scores[5] and scores[2] > scores[5]
    assert taste.side_score(grace_sites(tune)[2]) > 0


def test_folk_grace_notes_lie_above_after_a_repeated_note_and_a_step_down() -> None:
    """Measured on 3,050 single grace notes: above after a unison 96 %, after a falling step 94 %."""
    taste = folk_grace_taste()
    for text in ("A4/1 A4/1 G4/1 F4/1", "B4/1 A4/1 G4/1 F4/1"):
        assert taste.side_score(grace_sites(line_of(text))[1]) > math.log(0.85 / 0.15)


# --- the learning -----------------------------------------------------------------------------------------------


def test_conditional_logit_is_at_its_optimum() -> None:
    """Against numerical differentiation of the likelihood as written in its documentation."""
    dice = np.random.default_rng(2)
    columns, sizes = dice.normal(size=(60, 3)), [20, 25, 15]
    graces = (dice.random(60) < 0.15).astype(float)
    graces[[0, 20, 45]] = 1.0
    weights = conditional_logit(columns, graces, sizes, ridge=0.5)

    def loss(tried: np.ndarray) -> float:
        total, start = 0.25 * float(tried @ tried), 0
        for size in sizes:
            scores = columns[start : start + size] @ tried
            marked = graces[start : start + size].astype(bool)
            total -= float((scores[marked] - np.log(np.exp(scores).sum())).sum()) / math.sqrt(marked.sum())
            start += size
        return total

    for axis in range(3):
        step = np.eye(3)[axis] * 1e-3
        assert loss(weights) <= min(loss(weights + step), loss(weights - step))


def test_logistic_regression_gives_the_share_when_nothing_else_speaks() -> None:
    outcome = np.array([1.0] * 30 + [0.0] * 10)
    base, weights = logistic(np.zeros((40, 2)), outcome, ridge=1.0)
    assert base == pytest.approx(math.log(3)) and weights == pytest.approx([0.0, 0.0])


def test_area_under_the_curve_by_its_definition() -> None:
    assert auc(np.array([3.0, 1.0, 2.0]), np.array([True, False, False])) == 1.0
    assert auc(np.array([1.0, 1.0, 2.0]), np.array([True, False, False])) == 0.25


@pytest.mark.slow
def test_held_out_tunes_reach_the_bars() -> None:
    found = measure(folk_grace_taste(), [tune for tune in folk_tunes() if tune.is_test])
    assert found.tunes > 400 and found.graces > 1400
    assert found.mean_auc >= 0.87
    assert found.hit_share >= 0.33 and found.mean_hit_share >= 0.33
    assert found.side_share >= 0.92


@pytest.mark.slow
def test_other_books_reach_the_bar() -> None:
    found = across_books(folk_tunes())
    assert len(found) == 3
    assert min(measures.mean_auc for measures in found.values()) >= 0.83


@pytest.mark.slow
def test_the_stored_weights_are_those_that_training_gives() -> None:
    trained = train([tune for tune in folk_tunes() if not tune.is_test])
    stored = folk_grace_taste()
    assert dict(trained.placement) == pytest.approx(dict(stored.placement), abs=0.005)
    assert dict(trained.side) == pytest.approx(dict(stored.side), abs=0.005)


@pytest.mark.slow
def test_no_title_stands_on_both_sides_of_the_split() -> None:
    tunes = folk_tunes()
    train_titles, test_titles = ({tune.title for tune in tunes if tune.is_test == side} for side in (False, True))
    assert train_titles.isdisjoint(test_titles)
    assert 0.4 < len(test_titles) / len(train_titles | test_titles) < 0.6
