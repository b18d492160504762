"""Added notes are read without surprise: at sounding pitch and in the parts of transposing instruments."""

from __future__ import annotations

from dataclasses import replace

import pytest

from fioritura.players.setting import Idiom
from fioritura.techniques.grace import LOWER_GRACE_SEMITONE, UPPER_GRACE_STEP
from fioritura.techniques.neighbour import NEIGHBOUR_LOWER
from fioritura.techniques.turn import MORDENT, TURN, UPPER_MORDENT
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.pitch import Pitch
from fioritura.theory.spelling import spelled_line
from tests.corpus_tunes import corpus_tunes
from tests.judged import PARTS, offers, unread
from tests.legibility import Read, surprises
from tests.test_techniques import offered
from tests.tunes import line_of


def spelled(names: str, added: str, key: str = "C major", chord: str = "C") -> str:
    """A line spelled anew; `added` has an x for each note that may change its name."""
    tonic, mode = key.split()
    line = tuple(map(Pitch.parse, names.split()))
    marks = tuple(mark == "x" for mark in added)
    return " ".join(map(str, spelled_line(line, marks, Key.of(tonic, mode), (read_chord(chord),) * len(line)) or ()))


@pytest.mark.parametrize(
    ("names", "added", "key", "chord", "expected"),
    [
        # Common practice, each line one case.
        ("D4 Db4", ".x", "C major", "C", "D4 Db4"),
        ("F4 E4 Eb4", ".x.", "Eb major", "Eb", "F4 E4 Eb4"),
        ("D5 C#5 C5", ".x.", "C major", "C", "D5 Db5 C5"),
        ("G4 G#4 A4", ".x.", "C major", "C", "G4 G#4 A4"),
        ("Ab4 B4 C5", ".xx", "F minor", "Fm", "Ab4 B4 C5"),
        ("Db5 B4 C5", "xx.", "C major", "C", "Db5 B4 C5"),
        ("C4 Eb4 Gb4 A4 C5", ".xxx.", "C major", "Cdim7", "C4 Eb4 Gb4 A4 C5"),
        ("C4 Ab4 B4 C5", ".xx.", "C major", "C", "C4 G#4 B4 C5"),
        ("D#5 C5 B4", "xx.", "D major", "B7b9", "D#5 C5 B4"),
        ("Eb5 F#5 G5", ".x.", "Bb major", "Gm", "Eb5 F#5 G5"),
        ("C5 Db5 B4 A4", "xxx.", "C major", "C", ""),
    ],
)
def test_lines(names: str, added: str, key: str, chord: str, expected: str) -> None:
    """An empty line has no spelling that reads well: a diminished third between two added notes, whatever they are called."""
    assert spelled(names, added, key, chord) == expected


def test_a_step_is_another_letter() -> None:
    """Over C7♭9 the scale has no neighbour of D: the key or another scale of the chord has it."""
    tune = line_of("C5/2 D5/2 Db5/2 D5/2", key="F major", chords="C7b9")
    graces = [(figure.anchors[0], str(figure.graces[0])) for _, figure in offered(tune, UPPER_GRACE_STEP.id)]
    assert graces == [(0, "Db5"), (1, "E5"), (3, "E5")]
    (flicked,) = [figure for _, figure in offered(tune, UPPER_MORDENT.id) if figure.anchors == (2,)]
    assert str(flicked.notes[1].pitch) == "Eb5"


def test_folk_takes_the_notes_of_its_mode() -> None:
    tune = line_of("D5/2 D5/2 A4/2 G4/2 D5/4 D5/4", key="D dorian", chords="Dm")
    for technique in (NEIGHBOUR_LOWER.id, TURN.id, LOWER_GRACE_SEMITONE.id):
        found = offered(tune, technique, idiom="folk")
        added = {p.midi % 12 for _, f in found for p in (*f.graces, *(note.pitch for note in f.notes))}
        assert added <= {2, 4, 5, 7, 9, 11, 0}, technique
    assert any(figure.notes[-1].pitch == Pitch.parse("C#5") for _, figure in offered(tune, NEIGHBOUR_LOWER.id))


@pytest.mark.parametrize("idiom", ["jazz", "folk"])
def test_no_surprise_in_a_sample_of_the_corpus(idiom: Idiom) -> None:
    tunes = corpus_tunes(600)[:5]
    found = [(tune, figure) for tune in tunes for figure in offers(tune, idiom)[1]]
    assert len(found) > 1500
    assert [fault for tune, figure in found for fault in unread(tune, figure)] == []


def test_no_surprise_in_parts() -> None:
    """With chords of all kinds, in keys with flats and sharps (common changes)."""
    count = 0
    for key, chords in (
        ("Eb major", "Ebmaj7 C7b9 Fm7 Bb7 Ebm6 Adim7 Abm7 Db9"),
        ("D major", "D B7b9 Em7 A7 F#m7b5 Ddim7 G#7 C#7"),
    ):
        tonic = Pitch.parse(f"{key.split()[0]}5")
        scale = [Key.of(key.split()[0]).step(tonic, n) for n in (0, 2, -1, 1, -3, 4, 0, -2, 3, 2, -1, 0, 1, 5, 3, 0)]
        tune = line_of(" ".join(f"{pitch}/2" for pitch in scale), key=key, chords=chords)
        figures = offers(tune, "jazz")[1]
        count += len(figures)
        assert [fault for figure in figures for fault in unread(tune, figure, PARTS)] == []
    assert count > 600


@pytest.mark.slow
@pytest.mark.parametrize("idiom", ["jazz", "folk"])
def test_no_surprise_in_the_corpus(idiom: Idiom) -> None:
    for tune in corpus_tunes(40):
        for number, figure in enumerate(offers(tune, idiom)[1]):
            assert list(unread(tune, figure, PARTS if number % 20 == 0 else ())) == []


@pytest.mark.parametrize(
    ("names", "fault"),
    [
        ("C5 Db5 D5", "semitone"),
        ("C5 D#5 E5", ""),
        ("C5 Cb5 C5", "odd name"),
        ("C5 Ebb5 D5", "double accidental"),
        ("C5 C##5 D5", "one sound"),
        ("G4 E#4 G4", "odd name"),
    ],
)
def test_the_judge_sees_faults(names: str, fault: str) -> None:
    reads = [Read(Pitch.parse(name), False, False, Key(0), read_chord("C")) for name in names.split()]
    reads[1] = replace(reads[1], is_added=True)
    found = list(surprises(reads, MORDENT.id))
    assert bool(found) == bool(fault)
    assert fault in " ".join(found)
