"""Swing against the published figures: Friberg & Sundström 2002 (Music Perception 19(3), 333-349) for drummers, the
open jazz solo annotations (387 wind solos, as given with the program's facts) for soloists."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fioritura.sound.swing import SwingGrid, drummer_ratio, soloist_delay_sec, soloist_ratio
from fioritura.theory.metre import EIGHTH, QUARTER
from tests.charts import chart

TEMPOS = range(60, 401, 5)


def test_drummers_swing_up_to_three_and_a_half_at_slow_tempi_and_evenly_at_fast_ones() -> None:
    # Friberg & Sundström 2002: up to 3.5:1 at about 120, roughly linear to 1:1 at about 300.
    assert drummer_ratio(120) == pytest.approx(3.5, abs=0.1)
    assert drummer_ratio(300) == pytest.approx(1.0, abs=0.05)
    assert drummer_ratio(210) == pytest.approx(2.25, abs=0.2)
    assert all(slow >= fast for slow, fast in pairwise(map(drummer_ratio, TEMPOS)))


@pytest.mark.parametrize("tempo", range(130, 301, 10))
def test_the_short_eighth_of_the_ride_stays_near_a_tenth_of_a_second(tempo: int) -> None:
    # Friberg & Sundström 2002: about 100 ms from medium tempi up.
    short_sec = 60 / tempo / (1 + drummer_ratio(tempo))
    assert 0.085 <= short_sec <= 0.110


@pytest.mark.parametrize(
    ("tempo", "ratio", "delay_ms"),
    [(120, 1.33, 49), (160, 1.35, 42), (200, 1.23, 27), (240, 1.19, 13), (280, 1.12, 4)],
)
def test_soloists_swing_and_lay_back_as_measured(tempo: float, ratio: float, delay_ms: float) -> None:
    # Jazz solo annotations: at the middle of each tempo class.
    assert soloist_ratio(tempo) == pytest.approx(ratio, abs=0.02)
    assert 1000 * soloist_delay_sec(tempo) == pytest.approx(delay_ms, abs=3)


def test_soloists_never_swing_more_than_drummers_below_the_fastest_tempi() -> None:
    # Friberg & Sundström 2002 and Corcoran & Frieler 2021: the soloist's ratio is the lower one.
    assert all(soloist_ratio(tempo) <= drummer_ratio(tempo) for tempo in range(60, 281, 10))


@given(st.floats(1.0, 3.5), st.lists(st.integers(0, 8 * 4 * QUARTER), min_size=2, unique=True))
def test_swing_keeps_the_order_of_places_and_every_quarter(ratio: float, places: list[int]) -> None:
    grid = SwingGrid.of(chart("C | F | G | C | C | F | G | C"), [])
    swung = [grid.swung(place, ratio) for place in sorted(places)]
    assert all(before < after for before, after in pairwise(swung))
    assert grid.swung(3 * QUARTER, ratio) == 3 * QUARTER


def test_the_second_eighth_comes_late_by_the_ratio() -> None:
    grid = SwingGrid.of(chart("C"), [0, EIGHTH, QUARTER])
    first = grid.swung(EIGHTH, 2.0)
    assert first / (QUARTER - first) == pytest.approx(2.0)


@pytest.mark.parametrize("fine", [QUARTER // 3, QUARTER // 4, 3 * QUARTER // 4])
def test_triplets_and_sixteenths_are_played_as_written(fine: int) -> None:
    grid = SwingGrid.of(chart("C"), [0, fine, EIGHTH, QUARTER + EIGHTH])
    assert grid.swung(fine, 3.0) == fine
    assert grid.swung(EIGHTH, 3.0) == EIGHTH
    assert grid.swung(QUARTER + EIGHTH, 3.0) == pytest.approx(QUARTER + 0.75 * QUARTER)


def test_compound_time_is_not_swung() -> None:
    grid = SwingGrid.of(chart("C", metre="6/8"), [EIGHTH])
    assert grid.swung(EIGHTH, 3.0) == EIGHTH


def test_the_grid_counts_from_the_bar_line_after_a_pickup() -> None:
    grid = SwingGrid.of(chart("C", pickup=1), [])
    assert grid.swung(EIGHTH, 3.0) == EIGHTH
    assert grid.swung(2 * EIGHTH, 3.0) == pytest.approx(EIGHTH + 0.75 * QUARTER)
