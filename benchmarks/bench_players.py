"""Speed of the player's tables and of the phrase programmes.

``make bench`` prints the table; the ceilings are those the arranger counts on
(1,000 candidate figures of a 32-bar tune checked in 10 ms).
"""

from __future__ import annotations

import random

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from fioritura.players import fingering
from fioritura.players.breath import breath_marks
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.limits import limits_of
from fioritura.players.playability import hardest_places
from fioritura.players.player import Player
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, Metre
from fioritura.tune import Bar, Note, Tune

CANDIDATES = 1000
BARS = 32


def tune_for(player: Player, bars: int = BARS) -> Tune:
    """Eighth notes up and down by chance over the comfortable range; invented."""
    random_steps = random.Random(1)
    low, high = player.instrument.comfortable_low, player.instrument.comfortable_high
    step, notes = low.step, []
    for place in range(8 * bars):
        step = min(high.step, max(low.step, step + random_steps.choice((-2, -1, 1, 2))))
        notes.append(Note(place * EIGHTH, EIGHTH, player.instrument.sounding(Key(0).step(low, step - low.step))))
    metre = Metre(4, 4)
    measures = (Bar(n + 1, n * metre.bar_ticks, metre.bar_ticks, metre, Key(0)) for n in range(bars))
    return Tune("Benchmark", tuple(notes), tuple(measures))


def bench_candidate_figures_are_checked_by_look_up(benchmark: BenchmarkFixture) -> None:
    player = Player.of("alto-sax", 3)
    figures = [[60 + (start + step) % 12 for step in range(5)] for start in range(CANDIDATES)]
    durations = [0.125] * 4
    player.strain(figures[0], durations)
    benchmark(lambda: [player.strain(figure, durations) <= 1 for figure in figures])
    assert benchmark.stats["median"] < 0.010


@pytest.mark.parametrize("id", ["alto-sax", "clarinet", "flute", "trumpet"])
def bench_tables_are_built_once_and_quickly(benchmark: BenchmarkFixture, id: str) -> None:
    def build() -> float:
        fingering._moves.cache_clear()
        player = Player(INSTRUMENTS[id], 3, limits_of(id, 3))
        return player.slurred_sec[72][74] + player.tongued_sec[72][74] + player.grace_sec[72][74]

    benchmark(build)
    assert benchmark.stats["median"] < 0.050


def bench_breaths_of_a_chorus(benchmark: BenchmarkFixture) -> None:
    player = Player.of("alto-sax", 3)
    line = tune_for(player).notes
    benchmark(breath_marks, player, line, 40.0)
    assert benchmark.stats["median"] < 0.050


def bench_hardest_places_of_a_chorus(benchmark: BenchmarkFixture) -> None:
    player = Player.of("clarinet", 3)
    tune = tune_for(player)
    benchmark(hardest_places, player, tune.notes, tune, 120.0)
    assert benchmark.stats["median"] < 0.100
