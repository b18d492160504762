"""The MusicXML reader against music21 (BSD licence), an independent reader, over the scores of music21's corpus:
the same pitches, spelling, onsets, durations and bars in the part that was chosen."""

from __future__ import annotations

import random
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from fioritura.errors import FiorituraError
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune
from fioritura.words import say

from .corpus import content

music21 = pytest.importorskip("music21")

CORPUS = Path(music21.__file__).parent / "corpus"
SUFFIXES = {".xml", ".mxl", ".musicxml"}

LEAD_SHEETS = ["leadSheet/fosterBrownHair.mxl", "leadSheet/berlinAlexandersRagtime.mxl"]

KNOWN_DIFFERENCES = {
    "trecento/PMFC_04-Cara mi donna.xml": "triplets in 256 divisions: music21 keeps 85/256 where the tuplet says 1/3",
    "trecento/PMFC_06-Jacopo-03a-Di_Novo.xml": "the same",
    "trecento/PMFC_06-Jacopo-02-Con-Gran-Furor.xml": "the same",
    "trecento/PMFC_06_8-In Verde Prato.xml": "the same",
    "demos/nested_tuplet_finale_test.xml": "ninths of a half are finer than a tick and rounded with a warning",
    "trecento/PMFC_13_15-Gloria.xml": "music21 joins a tie over a note between",
    "mozart/k80/movement4.mxl": "music21 lengthens the pickup of K. 80 by a direction's offset",
}


def files() -> list[Path]:
    known = {CORPUS / name for name in KNOWN_DIFFERENCES}
    return sorted(path for path in CORPUS.rglob("*") if path.suffix in SUFFIXES and path not in known)


def sample(count: int, seed: int) -> list[Path]:
    small = [path for path in files() if path.stat().st_size < 60_000]
    return random.Random(seed).sample(small, count)


def ours(tune: Tune) -> list[tuple[Fraction, Fraction, str]]:
    return [
        (Fraction(n.onset_ticks, QUARTER), Fraction(n.duration_ticks, QUARTER), f"{n.pitch.letter}{n.pitch.midi}")
        for n in tune.notes
    ]


def theirs(part: Any) -> list[tuple[Fraction, Fraction, str]]:
    return [
        (exact(n.offset), exact(n.quarterLength), f"{n.pitch.step}{n.pitch.midi}")
        for n in part.stripTies().flatten().getElementsByClass(music21.note.Note)
        if not n.duration.isGrace
    ]


def exact(value: float | Fraction) -> Fraction:
    return Fraction(value).limit_denominator(10_000)


def comparison(path: Path) -> bool | None:
    """True or False as the two readers agree; None where they can't be compared: the file is refused as a melody,
    one line of several notes at once was taken, or music21 splits its parts or voices otherwise."""
    try:
        tune = read_musicxml(content(path), irregular="keep")
    except FiorituraError:
        return None
    score = music21.converter.parse(path)
    parts = list(score.toSoundingPitch().parts) if isinstance(score, music21.stream.Score) else []
    named = [part for part in parts if part.partName == tune.part_name]
    part = named[0] if len(named) == 1 else parts[0] if len(parts) == 1 else None
    warnings = " ".join(map(say, tune.warnings))
    if part is None or "only voice" in warnings or "several notes sound at once" in warnings:
        return None
    measures = list(part.getElementsByClass(music21.stream.Measure))
    if any(measure.voices for measure in measures):
        return None
    return ours(tune) == theirs(part) and len(tune.bars) == len(measures)


SAMPLE = sample(16, seed=4)
LEFT_OUT = 1
"""Files of the sample that can't be compared: refused as a melody, read as one line of several, or split otherwise by
music21."""


def test_a_sample_of_the_corpus_reads_as_music21_reads_it() -> None:
    agree = {path.name: comparison(path) for path in SAMPLE}
    assert [name for name, agrees in agree.items() if agrees is False] == []
    assert sum(agrees is None for agrees in agree.values()) <= LEFT_OUT, agree


@pytest.mark.parametrize("name", LEAD_SHEETS)
def test_chord_symbols_of_lead_sheets_match_in_place_and_root(name: str) -> None:
    path = CORPUS / name
    tune = read_musicxml(content(path), irregular="keep")
    symbols = music21.converter.parse(path).flatten().getElementsByClass(music21.harmony.ChordSymbol)
    expected = {(exact(s.offset), s.root().name.replace("-", "b")) for s in symbols if s.figure}
    assert {(Fraction(s.onset_ticks, QUARTER), str(s.chord.root)) for s in tune.chords if s.chord} == expected
    assert len(tune.chords) > 10


@pytest.mark.slow
def test_the_whole_corpus_reads_as_music21_reads_it() -> None:
    """Scores above 600 kB are left out: music21 takes minutes for each."""
    found = {path: comparison(path) for path in files() if len(content(path)) < 600_000}
    assert [path.name for path, agrees in found.items() if agrees is False] == []
    assert sum(agrees is True for agrees in found.values()) >= 450
