"""Key signatures, modes and scales against music21; spelling of chromatic notes by common practice."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import key as m21_key

from fioritura.errors import TuneError
from fioritura.theory.key import MODES, Direction, Key, Mode, mode_named
from fioritura.theory.pitch import Interval, NoteName, Pitch

keys = st.builds(Key, st.integers(-7, 7), st.sampled_from(sorted(MODES)))
signatures = st.integers(-7, 7)
midis = st.integers(24, 100)
directions = st.sampled_from(["up", "down"])


def m21_names(names: tuple[NoteName, ...]) -> list[str]:
    return [str(name).replace("b", "-") for name in names]


@pytest.mark.parametrize("fifths", range(-7, 8))
def test_signature_agrees_with_music21(fifths: int) -> None:
    altered = {pitch.step: pitch.accidental.alter for pitch in m21_key.KeySignature(fifths).alteredPitches}
    assert {letter: Key(fifths).alter(n) for n, letter in enumerate("CDEFGAB") if Key(fifths).alter(n)} == altered


@pytest.mark.parametrize("mode", sorted(MODES))
@pytest.mark.parametrize("tonic", ["C", "D", "E", "F", "G", "A", "B", "Bb", "Eb", "F#", "Ab"])
def test_scale_of_a_mode_agrees_with_music21(tonic: str, mode: Mode) -> None:
    expected = m21_key.Key(tonic.replace("b", "-"), mode)
    if abs(expected.sharps) > 7:
        with pytest.raises(TuneError, match="spell the tonic"):
            Key.of(tonic, mode)
        return
    key = Key.of(tonic, mode)
    assert key.fifths == expected.sharps
    assert str(key.tonic) == tonic
    assert m21_names(key.scale) == [pitch.name for pitch in expected.getPitches(f"{expected.tonic.name}4")[:7]]


@given(keys)
def test_the_tonic_gives_the_key_back(key: Key) -> None:
    assert Key.of(key.tonic, key.mode) == key
    assert key.scale[0] == key.tonic
    assert key.is_minor == ((key.scale[2].pitch_class - key.tonic.pitch_class) % 12 == 3)
    assert [key.degree(Pitch(name.letter + 28, name.alter)) for name in key.scale] == [1, 2, 3, 4, 5, 6, 7]


@pytest.mark.parametrize(
    ("key", "midi", "direction", "expected"),
    [
        # Common practice: a chromatic note that rises is the raised one, one that falls the lowered one.
        ("C major", 66, "up", "F#4"),
        ("C major", 66, "down", "Gb4"),
        ("C major", 70, "down", "Bb4"),
        ("C major", 61, "up", "C#4"),
        ("Eb major", 66, "up", "F#4"),
        ("Eb major", 66, "down", "Gb4"),
        ("Eb major", 71, "up", "B4"),
        ("Eb major", 71, "down", "B4"),
        ("D major", 65, "up", "F4"),
        ("D major", 65, "down", "F4"),
        ("D major", 60, "down", "C4"),
        ("E major", 62, "up", "D4"),
        ("E major", 67, "down", "G4"),
        ("A minor", 68, "up", "G#4"),
        ("A minor", 70, "down", "Bb4"),
        ("F# major", 65, "up", "E#4"),
        ("Gb major", 71, "down", "Cb5"),
    ],
)
def test_spelling(key: str, midi: int, direction: Direction, expected: str) -> None:
    tonic, mode = key.split()
    assert str(Key.of(tonic, mode).spell(midi, direction)) == expected


@given(keys, midis, directions)
def test_spelling_keeps_the_sound_and_the_keys_own_notes(key: Key, midi: int, direction: Direction) -> None:
    pitch = key.spell(midi, direction)
    assert pitch.midi == midi
    if any(name.pitch_class == midi % 12 for name in key.scale):
        assert key.holds(pitch)
    else:
        assert pitch.respelled() == pitch


@given(keys, midis, st.integers(-9, 9))
def test_steps_of_the_key_count_staff_places(key: Key, midi: int, steps: int) -> None:
    pitch = key.spell(midi)
    reached = key.step(pitch, steps)
    assert reached.step == pitch.step + steps
    assert key.holds(reached)


@given(keys, st.sampled_from(["m2", "M2", "m3", "M3", "P4", "A4", "P5", "m6", "M6", "m7", "M7", "M9", "M13"]))
def test_transposed_key_agrees_with_music21_up_to_respelling(key: Key, name: str) -> None:
    interval = Interval.parse(name)
    moved = key.transposed(interval)
    assert -6 <= moved.fifths <= 6
    assert moved.mode == key.mode
    expected = m21_key.Key(str(key.tonic).replace("b", "-"), key.mode).transpose(name)
    assert moved.tonic.pitch_class == expected.tonic.pitchClass
    if abs(expected.sharps) < 6:
        assert moved.fifths == expected.sharps


def test_other_names_of_modes() -> None:
    assert mode_named("Ionian") == "major"
    assert mode_named(" AEOLIAN ") == "minor"
    assert mode_named("none") == "major"
    with pytest.raises(TuneError, match="not a mode"):
        mode_named("hexatonic")


def test_names_for_people() -> None:
    assert Key.of("Bb", "dorian").display == "B♭ dorian"
    assert str(Key.of("F#", "minor")) == "F# minor"
