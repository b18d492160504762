"""Keys found from notes, against music21's own key finder and its corpus; spelling against what editors wrote."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from fioritura.errors import FiorituraError
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.theory.key import Key, Mode
from fioritura.theory.key_finding import MAJOR_PROFILE, MINOR_PROFILE, find_key, find_mode, spell_between
from fioritura.theory.pitch import Pitch

from .corpus import content

music21 = pytest.importorskip("music21")
KESSLER = music21.analysis.discrete.KrumhanslKessler()


def test_the_profiles_are_those_of_krumhansl_and_kessler() -> None:
    assert list(MAJOR_PROFILE) == pytest.approx(KESSLER.getWeights("major"))
    assert list(MINOR_PROFILE) == pytest.approx(KESSLER.getWeights("minor"))


@pytest.mark.parametrize("seed", range(20))
def test_the_same_key_as_music21_finds(seed: int) -> None:
    dice = random.Random(seed)
    modes: tuple[Mode, ...] = ("major", "minor")
    scale = Key(dice.randrange(-5, 6), dice.choice(modes)).scale
    stream = music21.stream.Stream()
    weights = [0.0] * 12
    for name in dice.choices(scale, weights=[5, 2, 4, 2, 4, 1, 2], k=60):
        length = dice.choice([0.5, 1, 2])
        stream.append(music21.note.Note(name.pitch_class + 60, quarterLength=length))
        weights[name.pitch_class] += length
    theirs = music21.analysis.discrete.KrumhanslKessler(stream).getSolution(stream)
    ours = find_key(weights)
    assert (ours.tonic.pitch_class, ours.mode) == (theirs.tonic.pitchClass, theirs.mode)


def test_the_last_note_tells_relative_keys_apart() -> None:
    even = [1.0, 0, 1.0, 0, 1.0, 1.0, 0, 1.0, 0, 1.0, 0, 1.0]
    assert str(find_mode(0, even, 0)) == "C major"
    assert str(find_mode(0, even, 9)) == "A minor"


def test_silence_speaks_for_no_key_more_than_twelve_notes_alike_do() -> None:
    assert find_key([0.0] * 12) == find_key([1.0] * 12)


@pytest.mark.parametrize(
    "key, line, names",
    [
        ("C major", (60, 61, 62), "C4 C#4 D4"),
        ("C major", (62, 61, 60), "D4 Db4 C4"),
        ("C major", (60, 66, 67), "C4 F#4 G4"),
        ("C major", (67, 70, 69), "G4 Bb4 A4"),
        ("A minor", (69, 68, 64), "A4 G#4 E4"),
        ("F# minor", (66, 65, 66), "F#4 E#4 F#4"),
        ("G minor", (67, 66, 62), "G4 F#4 D4"),
        ("Eb major", (63, 64, 65), "Eb4 E4 F4"),
    ],
)
def test_spelling_by_degree_and_direction(key: str, line: tuple[int, int, int], names: str) -> None:
    """Common practice: raised on the way up, lowered on the way down, leading notes raised."""
    tonic, mode = key.split()
    around = [None, *line, None]
    spelled = [spell_between(Key.of(tonic, mode), m, around[n], around[n + 2]) for n, m in enumerate(line)]
    assert " ".join(map(str, spelled)) == names


def test_chorale_melodies_are_spelled_as_their_editors_spelled_them() -> None:
    """Sopranos of Bach chorales: of the notes that the signature does not give, 95 in a hundred at least."""
    wrong = chromatic = 0
    for path in sorted((Path(music21.__file__).parent / "corpus" / "bach").glob("bwv[12]*.mxl"))[:80]:
        try:
            tune = read_musicxml(content(path), irregular="keep")
        except FiorituraError:
            continue
        pitches: list[Pitch] = [note.pitch for note in tune.notes]
        around = [None, *(pitch.midi for pitch in pitches), None]
        for index, (note, pitch) in enumerate(zip(tune.notes, pitches, strict=True)):
            key = tune.bar_at(note.onset_ticks).key
            chromatic += not key.holds(pitch)
            wrong += spell_between(key, pitch.midi, around[index], around[index + 2]) != pitch
    assert chromatic > 100
    assert wrong < 0.05 * chromatic
