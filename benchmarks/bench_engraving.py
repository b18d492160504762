"""Speed of engraving: a 32-bar comparison set for the first time, and set anew when some of its notes have changed.

``make bench`` prints the table. The second is what a click on the stand costs beside the choice of figures. Times are
processor time, so that other work on the machine matters little.
"""

from __future__ import annotations

import time
from itertools import count

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from fioritura.notation.engraving.engrave import engrave_systems
from fioritura.notation.engraving.mei import piece_of
from tests.scores import ornamented

WIDTH_MM, STAFF_MM = 200.0, 7.0
FIRST_SEC, ANEW_SEC, MEI_SEC = 0.150, 0.080, 0.015
pytestmark = pytest.mark.benchmark(timer=time.process_time)
SCORES = [ornamented(3, bars=32, level=level) for level in (4, 5)]


def bench_a_page_is_engraved_for_the_first_time(benchmark: BenchmarkFixture) -> None:
    systems = benchmark.pedantic(
        lambda: engrave_systems(SCORES[0], width_mm=WIDTH_MM, staff_mm=STAFF_MM), rounds=25, warmup_rounds=2
    )
    assert sum(system.bar_count for system in systems) == 32
    assert benchmark.stats["median"] < FIRST_SEC


def bench_a_page_is_engraved_anew_after_a_click(benchmark: BenchmarkFixture) -> None:
    before = engrave_systems(SCORES[1], width_mm=WIDTH_MM, staff_mm=STAFF_MM)
    turns = count()
    after = benchmark.pedantic(
        lambda: engrave_systems(SCORES[next(turns) % 2], width_mm=WIDTH_MM, staff_mm=STAFF_MM, like=before),
        rounds=40,
        warmup_rounds=4,
    )
    assert [system.bar_count for system in after] == [system.bar_count for system in before]
    assert benchmark.stats["median"] < ANEW_SEC


def bench_a_score_is_written_as_mei(benchmark: BenchmarkFixture) -> None:
    mei = benchmark.pedantic(lambda: piece_of(SCORES[1]).mei([0, 4, 8]), rounds=40, warmup_rounds=4)
    assert mei.count("<measure ") == 32
    assert benchmark.stats["median"] < MEI_SEC
