"""How long finding and choosing take on a tune of 32 bars, and how the time grows with the tune.

``make bench`` prints the table. The bars: find and choose on 32 bars in a median of 50 ms; sixteen times the
notes in at most twenty times the time.
"""

from __future__ import annotations

import subprocess
import sys

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from fioritura.arrange.arranger import choose_figures, model_of, ornament
from fioritura.arrange.choose import choose
from fioritura.arrange.survey import survey
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from tests.solver_reference import cp_sat_worth
from tests.tunes import random_tune


def setting(level: int) -> Setting:
    return Setting(Player.of("alto-sax", level), 120.0, "swing", "jazz")


@pytest.mark.benchmark(group="find and choose, 32 bars")
@pytest.mark.parametrize("level", [1, 3, 5])
def bench_ornament(benchmark: BenchmarkFixture, level: int) -> None:
    benchmark(ornament, random_tune(1, bars=32), setting(level))


@pytest.mark.benchmark(group="parts of it, level 3, 32 bars")
@pytest.mark.parametrize("part", ["find", "choose"])
def bench_parts(benchmark: BenchmarkFixture, part: str) -> None:
    tune = random_tune(1, bars=32)
    if part == "find":
        benchmark(survey, tune, setting(3))
    else:
        benchmark(choose_figures, survey(tune, setting(3)))


@pytest.mark.benchmark(group="the chooser and CP-SAT on one model, 8 bars: at least 50 times faster")
@pytest.mark.parametrize("solver", ["choose", "cp-sat"])
def bench_solvers(benchmark: BenchmarkFixture, solver: str) -> None:
    """The reference is OR-Tools CP-SAT on both cores until it has proved its optimum (on 16 bars it takes minutes)."""
    model = model_of(survey(random_tune(1, bars=8), setting(3)))
    if solver == "choose":
        benchmark(choose, model)
    else:
        benchmark.pedantic(cp_sat_worth, (model,), rounds=1)


@pytest.mark.benchmark(group="growth, level 3: at most 20 times for 16 times the bars")
@pytest.mark.parametrize("bars", [32, 512])
def bench_growth(benchmark: BenchmarkFixture, bars: int) -> None:
    benchmark.pedantic(ornament, (random_tune(1, bars=bars), setting(3)), rounds=5, warmup_rounds=1)


@pytest.mark.benchmark(group="start-up: the help text in 0.4 s")
def bench_help(benchmark: BenchmarkFixture) -> None:
    benchmark.pedantic(
        subprocess.run, ([sys.executable, "-m", "fioritura", "--help"],), {"capture_output": True}, rounds=5
    )
