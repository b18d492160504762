"""Chance that repeats.

SplitMix64's numbers for the seed 1234567 and the counts for 987654321 are the published ones (Rosetta Code,
"Pseudo-random numbers/Splitmix64", made with Vigna's splitmix64.c). The distributions are tested by scipy. The hashes
hold what the engine made when they were written: a change of one is a change of every tune that has a seed.
"""

from __future__ import annotations

import doctest
from collections import Counter
from collections.abc import Sequence
from dataclasses import astuple
from hashlib import sha256
from importlib.resources import as_file, files

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fioritura import chance as module
from fioritura.accompany.band import band_parts
from fioritura.accompany.feels import feel_named
from fioritura.accompany.form import Chorus, form_of
from fioritura.arrange.choose import gumbel
from fioritura.arrange.prepare import prepared
from fioritura.chance import EULER, Chance
from fioritura.notation.read import read_tune
from fioritura.players.instruments import instrument_named
from fioritura.sound.timing import drifts_sec
from fioritura.tune import Tune

FIGURES = [-0.216301874, 4.914580591, -0.725308798]
BANDS = {"swing": ("78cf1de773b916fa", "b8df6f7acef238d9"), "bossa": ("46440986bde24ab7", "77fff6f0a5afeddb")}
"""By feel: the checksums of the band's notes with the seeds 0 and 1."""
DRIFTS = [0.008130681, 0.008740022, 0.012032069, 0.001875243]


def test_the_numbers_are_those_of_the_published_algorithm() -> None:
    chance = Chance(1234567)
    assert [chance.bits() for _ in range(5)] == [
        6457827717110365317,
        3203168211198807973,
        9817491932198370423,
        4593380528125082431,
        16408922859458223821,
    ]


def test_the_counts_are_those_of_the_published_example() -> None:
    chance = Chance(987654321)
    counts = Counter(int(5 * chance.unit()) for _ in range(100_000))
    assert [counts[number] for number in range(5)] == [20027, 19892, 20073, 19978, 20030]


@given(st.integers(-(2**70), 2**70), st.integers(0, 50))
def test_arrays_hold_the_same_numbers_as_single_calls(start: int, count: int) -> None:
    one, many = Chance(start), Chance(start)
    assert many.many_bits(count).tolist() == [one.bits() for _ in range(count)]
    assert many.bits() == one.bits()
    variates = many.gumbels(3, 2)
    assert variates.ravel() == pytest.approx([one.gumbel() for _ in range(6)], rel=1e-12)


@given(st.integers(), st.text(max_size=5), st.text(max_size=5))
def test_a_stream_hangs_on_its_seed_and_names_alone(seed: int, name: str, part: str) -> None:
    chance = Chance.of(seed, name)
    parted = chance.child(part).bits()
    chance.bits()
    assert chance.child(part).bits() == Chance.of(seed, name, part).bits() == parted
    assert (
        len({Chance.of(seed, name).bits(), Chance.of(seed + 1, name).bits(), Chance.of(seed, name, "").bits()}) == 3
    )


def test_distributions_are_the_named_ones() -> None:
    """Kolmogorov-Smirnov tests of scipy at one in a thousand, and the mean of the Gumbel distribution."""
    from scipy import stats

    chance = Chance.of(1, "distributions")
    count = 4000
    assert stats.kstest([chance.unit() for _ in range(count)], "uniform").pvalue > 0.001
    assert stats.kstest([chance.normal(2.0) / 2.0 for _ in range(count)], "norm").pvalue > 0.001
    assert stats.kstest([chance.gumbel() for _ in range(count)], "gumbel_r").pvalue > 0.001
    assert stats.kstest(chance.gumbels(count), "gumbel_r").pvalue > 0.001
    assert stats.chisquare(np.bincount([chance.below(7) for _ in range(count)], minlength=7)).pvalue > 0.001
    picks = Counter(chance.pick("abc", [1.0, 0.0, 3.0]) for _ in range(count))
    assert picks["b"] == 0
    assert stats.chisquare([picks["a"], picks["c"]], [count / 4, 3 * count / 4]).pvalue > 0.001
    assert float(np.mean(chance.gumbels(100_000))) == pytest.approx(EULER, abs=0.02)


@given(st.integers(), st.integers(1, 2**40))
def test_numbers_stay_within_their_bounds(start: int, count: int) -> None:
    chance = Chance(start)
    assert 0 <= chance.below(count) < count
    assert 0.0 <= chance.unit() < 1.0
    assert np.isfinite(chance.normal()) and np.isfinite(chance.gumbel())


def test_what_can_not_be_drawn_is_refused() -> None:
    chance = Chance(1)
    with pytest.raises(ValueError, match="0 to 0 - 1"):
        chance.below(0)
    for items, weights in (("ab", [1.0]), ("ab", [0.0, 0.0]), ("ab", [-1.0, 2.0]), ("", None)):
        with pytest.raises(ValueError):
            chance.pick(items, weights)


def test_streams_with_neighbouring_seeds_do_not_move_together() -> None:
    rows = [np.array([Chance.of(seed, str(n)).unit() for n in range(400)]) for seed in range(6)]
    correlations = np.corrcoef(rows)[np.triu_indices(6, 1)]
    assert np.abs(correlations).max() < 4 / np.sqrt(400), "four standard deviations of independent ones"


def test_the_examples_of_the_module_hold() -> None:
    outcome = doctest.testmod(module)
    assert outcome.attempted >= 3 and not outcome.failed


# What hangs on it -------------------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def demo() -> Tune:
    with as_file(files("fioritura.data") / "lanterns.abc") as path:
        return prepared(read_tune(path), instrument_named("alto-sax"), unfold=True)


def checksum(rows: Sequence[object]) -> str:
    return sha256(repr(rows).encode()).hexdigest()[:16]


def test_noise_of_figures_is_what_it_was() -> None:
    found = [round(gumbel(seed, name, 1.0), 9) for seed, name in ((1, "turn-1-abc"), (2, "turn-1-abc"), (1, "x"))]
    assert found == FIGURES


@pytest.mark.parametrize(("feel", "expected"), BANDS.items())
def test_the_band_of_the_demo_tune_is_what_it_was(demo: Tune, feel: str, expected: tuple[str, str]) -> None:
    form = form_of(demo, [Chorus("solo")] * 2)
    bands = (band_parts(form, feel_named(feel), seed=seed) for seed in (0, 1))
    assert tuple(checksum([astuple(note) for part in band for note in part.notes]) for band in bands) == expected


def test_the_drift_of_a_player_is_what_it_was() -> None:
    assert [round(drift, 9) for drift in drifts_sec(4, Chance.of(1, "performance", "melody"))] == DRIFTS
