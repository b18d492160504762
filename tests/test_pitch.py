"""Pitch, note name and interval against music21 (its pitch, interval and transposition), and by their own laws."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from music21 import interval as m21_interval
from music21 import pitch as m21_pitch

from fioritura.errors import TuneError
from fioritura.theory.pitch import LETTERS, Interval, NoteName, Pitch

INTERVAL_NAMES = [
    *(f"{quality}{number}" for number in (1, 4, 5, 8, 11, 12, 15) for quality in ("dd", "d", "P", "A", "AA")),
    *(f"{quality}{number}" for number in (2, 3, 6, 7, 9, 10, 13, 14) for quality in ("dd", "d", "m", "M", "A", "AA")),
]

pitches = st.builds(Pitch, st.integers(7, 62), st.integers(-2, 2))
names = st.builds(NoteName, st.integers(0, 6), st.integers(-2, 2))
intervals = st.sampled_from([Interval.parse(name) for name in INTERVAL_NAMES if name not in ("d1", "dd1")])


def m21_pitch_of(pitch: Pitch) -> m21_pitch.Pitch:
    accidental = "#" * pitch.alter if pitch.alter > 0 else "-" * -pitch.alter
    return m21_pitch.Pitch(f"{pitch.letter}{accidental}{pitch.octave}")


@given(pitches)
def test_midi_and_frequency_agree_with_music21(pitch: Pitch) -> None:
    expected = m21_pitch_of(pitch)
    assert pitch.midi == round(expected.ps)
    assert pitch.frequency_hz == pytest.approx(expected.frequency)


def test_a4_is_440_hz() -> None:
    # ISO 16:1975
    assert Pitch.parse("A4").frequency_hz == 440.0
    assert Pitch.parse("A4").midi == 69
    assert Pitch.parse("C4").midi == 60


@pytest.mark.parametrize("name", [name for name in INTERVAL_NAMES if name not in ("d1", "dd1")])
def test_interval_names_agree_with_music21(name: str) -> None:
    interval, expected = Interval.parse(name), m21_interval.Interval(name)
    assert interval.semitones == expected.semitones
    assert interval.steps == expected.generic.staffDistance
    assert interval.name == name
    falling = Interval.parse(f"-{name}")
    assert (falling.steps, falling.semitones) == (-interval.steps, -interval.semitones)


@given(pitches, intervals, st.booleans())
def test_transposition_is_spelled_as_in_music21(pitch: Pitch, interval: Interval, falls: bool) -> None:
    directed = -interval if falls else interval
    reached = pitch.up(directed)
    assume(abs(reached.alter) <= 4)  # music21 knows no more accidentals.
    expected = m21_interval.Interval(directed.name).transposePitch(m21_pitch_of(pitch), maxAccidental=None)
    assert reached.midi == round(expected.ps)
    assert (reached.letter, reached.octave) == (expected.step, expected.octave)


@given(pitches, pitches)
def test_interval_between_two_pitches_agrees_with_music21(low: Pitch, high: Pitch) -> None:
    # music21 names no interval that is augmented five times, such as Fbb to B##.
    assume(abs(high.alter - low.alter) < 4)
    found = low.to(high)
    expected = m21_interval.Interval(m21_pitch_of(low), m21_pitch_of(high))
    assert found.semitones == expected.semitones
    assert found.steps == expected.generic.staffDistance
    assert low.up(found) == high


@given(pitches, intervals, intervals)
def test_intervals_add_and_undo(pitch: Pitch, first: Interval, second: Interval) -> None:
    assert pitch.up(first).up(-first) == pitch
    assert pitch.up(first).up(second) == pitch.up(first + second)
    assert (first + second) - second == first
    assert pitch.up(first).name == pitch.name.up(first)


@given(names, intervals)
def test_a_name_moves_along_the_line_of_fifths(name: NoteName, interval: Interval) -> None:
    assert NoteName.from_fifths(name.fifths) == name
    assert name.up(Interval.parse("P5")).fifths == name.fifths + 1
    assert name.up(interval).pitch_class == (name.pitch_class + interval.semitones) % 12
    assert name.up(interval).up(-interval) == name


@given(pitches)
def test_respelling_keeps_the_key_of_the_piano(pitch: Pitch) -> None:
    plain = pitch.respelled()
    assert plain.midi == pitch.midi
    assert abs(plain.alter) <= 1
    assert str(plain.name) not in {"Cb", "Fb", "E#", "B#"}
    assert plain.respelled() == plain


@given(pitches)
def test_text_round_trip(pitch: Pitch) -> None:
    assert Pitch.parse(str(pitch)) == pitch
    assert NoteName.parse(str(pitch.name)) == pitch.name
    assert Pitch.parse(pitch.display) == pitch


@pytest.mark.parametrize("text", ["H4", "C", "", "C#b#5x", "4", "Cb", "c##4 5", "C³", "C" + "9" * 5000])
def test_bad_pitch_is_refused(text: str) -> None:
    with pytest.raises(TuneError, match="not a pitch"):
        Pitch.parse(text)


@pytest.mark.parametrize("text", ["H", "C4", "", "Bbq"])
def test_bad_name_is_refused(text: str) -> None:
    with pytest.raises(TuneError, match="not a note name"):
        NoteName.parse(text)


@pytest.mark.parametrize("name", ["M5", "P3", "m0", "X2", "", "m", "3", "M" + "9" * 5000])
def test_bad_interval_is_refused(name: str) -> None:
    with pytest.raises(TuneError, match="not an interval"):
        Interval.parse(name)


def test_letters_rise_from_c() -> None:
    assert [Pitch(step).letter for step in range(28, 35)] == list(LETTERS)
    assert Pitch(28).octave == 4
