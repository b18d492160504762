"""Metres against music21's `TimeSignature`: bar and beat lengths, beats, and the order of metrical weights."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import meter as m21_meter

from fioritura.errors import TuneError
from fioritura.theory.metre import QUARTER, WHOLE, Metre

SIMPLE = ["2/2", "3/2", "4/2", "2/4", "3/4", "4/4", "6/4"]
COMPOUND = ["6/8", "9/8", "12/8", "6/16"]
UNEVEN = ["5/8", "7/8", "8/8", "10/8", "11/8"]

metres = st.builds(Metre, st.integers(1, 32), st.sampled_from([1, 2, 4, 8, 16, 32]))


@pytest.mark.parametrize("text", [*SIMPLE, *COMPOUND, *UNEVEN, "3/8", "5/4", "7/4", "2/8"])
def test_bar_length_agrees_with_music21(text: str) -> None:
    assert Metre.parse(text).bar_ticks == m21_meter.TimeSignature(text).barDuration.quarterLength * QUARTER


@pytest.mark.parametrize("text", [*(metre for metre in SIMPLE if metre != "6/4"), *COMPOUND, "3/8"])
def test_beats_agree_with_music21(text: str) -> None:
    metre, expected = Metre.parse(text), m21_meter.TimeSignature(text)
    if text == "3/8":  # Counted in one here: a quick 3/8 has one beat (common practice); music21 counts three.
        expected.beatCount = 1
    assert len(metre.groups_ticks) == expected.beatCount
    assert metre.beat_ticks == expected.beatDuration.quarterLength * QUARTER
    for offset in range(0, metre.bar_ticks, QUARTER // 4):
        beat = expected.getBeatProportion(Fraction(offset, QUARTER))
        assert float(metre.beat_at(offset)) == pytest.approx(beat)


@pytest.mark.parametrize("text", ["4/4", "3/4", "2/4", "2/2", "6/8", "9/8", "12/8"])
def test_weights_fall_where_music21s_accent_weights_fall(text: str) -> None:
    metre, expected = Metre.parse(text), m21_meter.TimeSignature(text)
    step = QUARTER // 2
    offsets = range(0, metre.bar_ticks, step)
    for here in offsets:
        for there in offsets:
            ours = metre.strength(here) - metre.strength(there)
            theirs = expected.getAccentWeight(here / QUARTER) - expected.getAccentWeight(there / QUARTER)
            assert not (ours > 0 > theirs), (here, there)


@given(metres)
def test_groups_fill_the_bar(metre: Metre) -> None:
    assert sum(metre.groups_ticks) == metre.bar_ticks
    assert metre.strength(0) == 1.0
    assert all(metre.strength(offset) < 1.0 for offset in range(QUARTER // 8, metre.bar_ticks, QUARTER // 8))


@given(metres, st.integers(0, WHOLE))
def test_beats_rise_through_the_bar(metre: Metre, offset: int) -> None:
    assert 1 <= metre.beat_at(offset) < metre.beat_at(offset + 1)
    assert 0.0 <= metre.strength(offset % metre.bar_ticks) <= 1.0


def test_weights_of_common_time() -> None:
    # Common practice.
    metre = Metre(4, 4)
    assert [metre.strength(n * QUARTER // 2) for n in range(8)] == [1.0, 0.25, 0.5, 0.25, 0.75, 0.25, 0.5, 0.25]
    assert metre.strength(QUARTER // 4) == 0.125
    assert metre.strength(QUARTER // 3) == 0.0
    jig = Metre(6, 8)
    assert [jig.strength(n * QUARTER // 2) for n in range(6)] == [1.0, 0.25, 0.25, 0.5, 0.25, 0.25]


def test_uneven_beats() -> None:
    # Common practice: 5/8 as 3 + 2, 7/8 as 2 + 2 + 3.
    eighth = QUARTER // 2
    assert Metre(5, 8).groups_ticks == (3 * eighth, 2 * eighth)
    assert Metre(7, 8).groups_ticks == (2 * eighth, 2 * eighth, 3 * eighth)
    assert Metre(7, 8).beat_at(5 * eighth) == 3 + Fraction(1, 3)


@pytest.mark.parametrize(("text", "expected"), [("C", "4/4"), ("C|", "2/2"), ("2+3/8", "5/8"), (" 6/8 ", "6/8")])
def test_texts(text: str, expected: str) -> None:
    assert str(Metre.parse(text)) == expected


@pytest.mark.parametrize(
    "text", ["", "4", "4/3", "0/4", "33/4", "x/4", "4/4/4", "-3/4", "+/4", "3+/8", "4/64", "²/4", "9" * 5000 + "/4"]
)
def test_bad_metre_is_refused(text: str) -> None:
    with pytest.raises(TuneError, match="not a metre"):
        Metre.parse(text)


def test_beats_go_on_behind_the_bar() -> None:
    """A pickup note that is held, or a bar of irregular length, is counted on in usual beats."""
    assert Metre.parse("4/4").beat_at(WHOLE) == 5
    assert Metre.parse("4/4").beat_at(WHOLE + QUARTER + QUARTER // 2) == Fraction(13, 2)
    assert Metre.parse("6/8").beat_at(WHOLE) == Fraction(11, 3)
