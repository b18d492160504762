"""Scales against music21's, steps against a plain count of keys, and chord scales against tables of common practice."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import scale as m21_scale

from fioritura.theory.chord import Chord
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import MODES, Key
from fioritura.theory.pitch import NoteName, Pitch
from fioritura.theory.scale import (
    SCALES,
    Scale,
    blues_scale,
    chord_scale,
    key_scale,
    pentatonic,
    scale_named,
)

M21_SCALES = {
    "major": m21_scale.MajorScale,
    "dorian": m21_scale.DorianScale,
    "phrygian": m21_scale.PhrygianScale,
    "lydian": m21_scale.LydianScale,
    "mixolydian": m21_scale.MixolydianScale,
    "aeolian": m21_scale.MinorScale,
    "locrian": m21_scale.LocrianScale,
    "harmonic minor": m21_scale.HarmonicMinorScale,
    "melodic minor": m21_scale.MelodicMinorScale,
}
TONICS = ["C", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B", "C#", "Db"]

PARENTS = {
    # Common practice: the modes of each parent scale, by degree.
    "major": ["major", "dorian", "phrygian", "lydian", "mixolydian", "aeolian", "locrian"],
    "melodic minor": [
        "melodic minor",
        "dorian b2",
        "lydian augmented",
        "lydian dominant",
        "mixolydian b13",
        "locrian natural 2",
        "altered",
    ],
    "harmonic minor": {0: "harmonic minor", 2: "major #5", 4: "mixolydian b9 b13", 6: "ultralocrian"},
}


def chord(text: str) -> Chord:
    found = read_chord(text)
    assert found is not None
    return found


def key(text: str) -> Key:
    tonic, mode = text.split()
    return Key.of(tonic, mode)


def names(scale: Scale) -> str:
    return " ".join(map(str, scale.names))


@pytest.mark.parametrize("name", sorted(M21_SCALES))
@pytest.mark.parametrize("tonic", TONICS)
def test_scales_are_spelled_as_in_music21(tonic: str, name: str) -> None:
    made = scale_named(NoteName.parse(tonic), name)
    reference = M21_SCALES[name](f"{tonic.replace('b', '-')}4")
    expected = [pitch.name for pitch in reference.getPitches(direction=m21_scale.Direction.ASCENDING)[:7]]
    if any("##" in pitch or "--" in pitch for pitch in expected):
        assert all(abs(note.alter) < 2 for note in made.names)
    else:
        assert names(made).replace("b", "-").split() == expected


@pytest.mark.parametrize("tonic", TONICS)
def test_symmetrical_scales_sound_as_in_music21(tonic: str) -> None:
    start = f"{tonic.replace('b', '-')}4"
    root = NoteName.parse(tonic)
    whole_tone = {pitch.pitchClass for pitch in m21_scale.WholeToneScale(start).getPitches()}
    assert scale_named(root, "whole tone").pitch_classes == whole_tone
    octatonics = {
        frozenset(p.pitchClass for p in m21_scale.OctatonicScale(start, mode).getPitches()) for mode in (1, 2)
    }
    ours = {scale_named(root, f"{kind} diminished").pitch_classes for kind in ("half-whole", "whole-half")}
    assert ours == octatonics


@pytest.mark.parametrize(
    ("parent", "degree", "mode"),
    [
        (parent, degree, mode)
        for parent, modes in PARENTS.items()
        for degree, mode in (modes.items() if isinstance(modes, dict) else enumerate(modes))
    ],
)
def test_modes_are_the_notes_of_their_parent(parent: str, degree: int, mode: str) -> None:
    scale = scale_named(NoteName.parse("C"), parent)
    tonic = scale.names[degree]
    assert scale_named(tonic, mode).pitch_classes == scale.pitch_classes


@pytest.mark.parametrize(
    ("scale", "notes"),
    [
        # Common practice.
        ("C major pentatonic", "C D E G A"),
        ("A minor pentatonic", "A C D E G"),
        ("C blues", "C Eb F Gb G Bb"),
        ("G altered", "G Ab A# B Db Eb F"),
        ("Bb lydian dominant", "Bb C D E F G Ab"),
        ("E mixolydian b9 b13", "E F G# A B C D"),
        ("G half-whole diminished", "G Ab A# B C# D E F"),
        ("B locrian bb7", "B C D E F G Ab"),
    ],
)
def test_notes_of_other_scales(scale: str, notes: str) -> None:
    tonic, _, name = scale.partition(" ")
    assert names(scale_named(NoteName.parse(tonic), name)) == notes


note_names = st.builds(NoteName, st.integers(0, 6), st.integers(-1, 1))
scales = st.builds(scale_named, note_names, st.sampled_from(sorted(SCALES)))
pitches = st.builds(Pitch, st.integers(14, 56), st.integers(-1, 1))


@given(scales, pitches, st.integers(1, 12))
def test_steps_count_the_notes_of_the_scale(scale: Scale, pitch: Pitch, steps: int) -> None:
    above = [midi for midi in range(pitch.midi + 1, pitch.midi + 60) if midi % 12 in scale.pitch_classes]
    below = [midi for midi in range(pitch.midi - 1, pitch.midi - 60, -1) if midi % 12 in scale.pitch_classes]
    assert scale.step(pitch, steps).midi == above[steps - 1]
    assert scale.step(pitch, -steps).midi == below[steps - 1]
    assert scale.step(pitch, steps).name in scale.names
    assert scale.step(pitch, 0) == pitch


@given(scales, pitches, pitches)
def test_between_holds_every_note_of_the_span(scale: Scale, low: Pitch, high: Pitch) -> None:
    found = scale.between(low, high)
    assert [pitch.midi for pitch in found] == [
        midi for midi in range(low.midi, high.midi + 1) if midi % 12 in scale.pitch_classes
    ]
    assert all(pitch.name in scale.names for pitch in found)


@pytest.mark.parametrize("fifths", range(-7, 8))
@pytest.mark.parametrize("mode", sorted(MODES))
def test_the_scale_of_a_key_is_its_signature(fifths: int, mode: str) -> None:
    home = Key.of(Key(fifths, next(m for m in MODES if m == mode)).tonic, mode)
    assert key_scale(home).names == home.scale
    assert chord_scale(None, home) == key_scale(home)


DIATONIC = ["C Dm Em F G Am Bdim", "Cmaj7 Dm7 Em7 Fmaj7 G7 Am7 Bm7b5"]


@pytest.mark.parametrize("mode", ["C major", "A minor", "D dorian", "G mixolydian", "E phrygian", "F lydian"])
@pytest.mark.parametrize("symbol", " ".join(DIATONIC).split())
def test_a_chord_of_the_key_takes_the_keys_notes(symbol: str, mode: str) -> None:
    scale = chord_scale(chord(symbol), key(mode))
    assert scale.pitch_classes == {0, 2, 4, 5, 7, 9, 11}
    assert scale.tonic == chord(symbol).root


CHORD_SCALES = {
    # Common practice of jazz harmony, chord by chord in a key.
    "C major": {
        "C": "major", "Dm7": "dorian", "Em7": "phrygian", "Fmaj7": "lydian", "G7": "mixolydian",
        "Am7": "aeolian", "Bm7b5": "locrian", "C6/9": "major", "Cmaj7#11": "lydian",
        "A7": "mixolydian b9 b13", "B7": "mixolydian b9 b13", "E7": "mixolydian b9 b13", "E": "mixolydian b9 b13",
        "D7": "mixolydian", "D": "mixolydian", "C7": "mixolydian", "A13": "mixolydian", "A9": "mixolydian b13",
        "F7": "lydian dominant", "Bb7": "lydian dominant", "Ab7": "lydian dominant", "Db7": "lydian dominant",
        "Eb7": "lydian dominant", "Gb7": "lydian dominant",
        "G7alt": "altered", "G7#5#9": "altered", "G7b9": "half-whole diminished", "G13b9": "half-whole diminished",
        "G7#11": "lydian dominant", "G9#11": "lydian dominant", "G7#5": "whole tone", "G9#5": "whole tone",
        "G+": "whole tone", "G7b13": "mixolydian b13", "G7b9b13": "mixolydian b9 b13", "E7#9": "spanish eight-tone",
        "G7sus4": "mixolydian", "G9sus4": "mixolydian", "G7sus4b9": "dorian b2",
        "Fm7": "dorian", "Fm6": "melodic minor", "Gm7": "dorian", "Cm7": "dorian", "Bb": "lydian",
        "Abmaj7": "lydian", "Dbmaj7": "lydian", "Ebmaj7": "lydian", "F#m7b5": "locrian",
        "Cm(maj7)": "melodic minor", "Fmaj7#5": "lydian augmented",
        "C#dim7": "ultralocrian", "G#dim7": "ultralocrian", "D#dim7": "ultralocrian", "Bdim7": "locrian bb7",
        "F#dim7": "locrian bb7", "Ebdim7": "whole-half diminished", "Cdim7": "whole-half diminished",
    },
    "A minor": {
        "Am": "aeolian", "Am7": "aeolian", "Am6": "dorian", "Am(maj7)": "harmonic minor", "Dm7": "dorian",
        "Bm7b5": "locrian", "E7": "mixolydian b9 b13", "E": "mixolydian b9 b13", "E7b9": "mixolydian b9 b13",
        "E7alt": "altered", "E9": "mixolydian b13", "E7#5": "altered", "G7": "mixolydian", "C": "major",
        "F7": "lydian dominant", "Bb7": "lydian dominant", "G#dim7": "ultralocrian", "C+": "major #5",
        "A7": "mixolydian b9 b13", "D7": "mixolydian",
    },
    "D dorian": {
        "Dm7": "dorian", "G7": "mixolydian", "G": "mixolydian", "C": "major", "Am": "aeolian", "Em": "phrygian",
        "A7": "mixolydian b9 b13", "Dm6": "dorian",
    },
    "D mixolydian": {"D": "mixolydian", "C": "lydian", "G": "major", "Am": "dorian", "A7": "mixolydian"},
}  # fmt: skip


@pytest.mark.parametrize(
    ("home", "symbol", "name"),
    [(home, symbol, name) for home, row in CHORD_SCALES.items() for symbol, name in row.items()],
)
def test_chord_scales(home: str, symbol: str, name: str) -> None:
    scale = chord_scale(chord(symbol), key(home))
    assert (scale.tonic, scale.name) == (chord(symbol).root, name)


def test_a_chord_tone_keeps_the_chords_name() -> None:
    assert names(chord_scale(chord("G7alt"), key("C major"))) == "G Ab A# B Db D# F"
    assert names(chord_scale(chord("Db7alt"), key("Gb major"))) == "Db D E F G A Cb"


SUFFIXES = (
    ",m,7,m7,maj7,dim,dim7,m7b5,+,7#5,6,m6,6/9,9,11,13,maj9,maj13,m11,7b9,7#9,7#11,7b5,7b13,7alt,13b9,7b9#11,7b9b13,"
    "sus4,sus2,7sus4,9sus4,13sus4,7sus4b9,add9,madd9,m(maj7),maj7#5,maj7#11,5,m7add11,m9b5,7b5#9,dim(maj7),maj7b5,"
    "7b9#9,m13,mb6,add#11,m7b9"
)
chords = st.builds(lambda root, suffix: chord(f"{root}{suffix}"), note_names, st.sampled_from(SUFFIXES.split(",")))
keys = st.builds(Key, st.integers(-6, 6), st.sampled_from(sorted(MODES)))


@given(chords, keys)
def test_chord_tones_always_belong_to_the_scale(symbol: Chord, home: Key) -> None:
    scale = chord_scale(symbol, home)
    assert symbol.pitch_classes <= scale.pitch_classes
    assert scale.tonic == symbol.root
    assert len(scale.pitch_classes) == len(scale.names) >= 6
    assert all(abs(note.alter) <= 1 for note in scale.names)


@given(chords, keys)
def test_scales_have_no_gap_wider_than_a_minor_third(symbol: Chord, home: Key) -> None:
    scale = chord_scale(symbol, home)
    ladder = [pitch.midi for pitch in scale.between(Pitch.parse("C4"), Pitch.parse("C6"))]
    assert max(high - low for low, high in pairwise(ladder)) <= 3


@pytest.mark.parametrize(
    ("home", "symbol", "name"),
    [
        # Common practice.
        ("C major", "C", "C major pentatonic"),
        ("C major", "G7", "G major pentatonic"),
        ("C major", "Am7", "A minor pentatonic"),
        ("C major", "Dm7", "D minor pentatonic"),
        ("C major", "Bm7b5", "D minor pentatonic"),
        ("C major", "F", "F major pentatonic"),
        ("A minor", "Am", "A minor pentatonic"),
        ("D dorian", "Dm", "D minor pentatonic"),
    ],
)
def test_pentatonics(home: str, symbol: str, name: str) -> None:
    assert str(pentatonic(chord(symbol), key(home))) == name


def test_pentatonic_of_the_key_without_a_chord() -> None:
    assert str(pentatonic(None, key("Bb major"))) == "Bb major pentatonic"
    assert str(pentatonic(None, key("D dorian"))) == "D minor pentatonic"


@given(chords, keys)
def test_a_pentatonic_has_five_notes_and_meets_the_chord(symbol: Chord, home: Key) -> None:
    scale = pentatonic(symbol, home)
    assert len(scale.pitch_classes) == 5
    assert len(scale.pitch_classes & symbol.pitch_classes) >= 2


def test_blues_scale() -> None:
    assert str(blues_scale(key("F major"))) == "F blues"
    assert names(blues_scale(chord("G7"))) == "G Bb C Db D F"


def test_display() -> None:
    assert chord_scale(chord("Bb7"), key("C major")).display == "B♭ lydian dominant"
    assert chord_scale(chord("A7"), key("C major")).display == "A mixolydian ♭9 ♭13"
    assert chord_scale(chord("Bdim7"), key("C major")).display == "B locrian 𝄫7"
