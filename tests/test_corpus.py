"""Real tunes: music21's corpus of public ABC books, read, ornamented at levels 1, 3 and 5 for alto saxophone, written
and read back. Bars add up, the range holds, anchors keep their place, and every file is valid MusicXML 4.0.

60 tunes run always; ``pytest -m slow`` takes every monophonic tune of the books.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from fioritura.arrange.arranger import ornament
from fioritura.arrange.harmonise import harmonise
from fioritura.arrange.prepare import fitted, fitting_octaves
from fioritura.arrange.rendition import Rendition
from fioritura.lesson.edition import Edition, line_score
from fioritura.notation.abc.reader import AbcEntry, list_abc
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.theory.metre import SIXTEENTH
from fioritura.tune import Tune
from tests.musicxml_schema import schema_errors

BOOKS = ("oneills1850", "ryansMammoth", "airdsAirs", "essenFolksong")
LEVELS = (1, 3, 5)
ALTO = instrument_named("alto-sax")


@cache
def entries() -> tuple[AbcEntry, ...]:
    from music21 import corpus

    paths = sorted(
        Path(path) for path in corpus.getCorePaths(fileExtensions=("abc",)) if Path(path).parent.name in BOOKS
    )
    return tuple(entry for path in paths for entry in list_abc(path.read_bytes().decode("utf-8", "replace")))


def tunes(chosen: tuple[AbcEntry, ...]) -> Iterator[Tune]:
    for entry in chosen:
        yield entry.read(irregular="keep")


def sweep(chosen: tuple[AbcEntry, ...]) -> Counter[str]:
    """Run the whole way for each tune; counts what was done."""
    counts: Counter[str] = Counter()
    for tune in tunes(chosen):
        counts["tunes"] += 1
        octaves = fitting_octaves(tune, ALTO)
        if not octaves:
            counts["no octave fits the alto"] += 1
            continue
        fitting = fitted(harmonise(tune), ALTO, octaves[0])
        idiom: Idiom = "folk" if counts["tunes"] % 2 else "jazz"
        for level in LEVELS:
            setting = Setting(Player.of("alto-sax", level), 100.0, tune.feel, idiom)
            rendition = ornament(fitting, setting, seed=level)
            check(rendition)
            counts["renditions"] += 1
            counts["figures"] += len(rendition.figures)
    return counts


def check(rendition: Rendition) -> None:
    tune, line, title = rendition.tune, rendition.line, rendition.tune.title
    assert all(ALTO.reaches(note.pitch) for note in line), title
    assert all(ALTO.reaches(grace) for note in line for grace in note.graces), title
    assert all(a.end_ticks <= b.onset_ticks for a, b in zip(line, line[1:], strict=False)), title
    for figure in rendition.figures:
        for anchor in figure.anchors:
            plain = tune.notes[anchor]
            kept = [note for note in line if note.anchor == anchor]
            assert kept, (title, figure)
            if len(figure.graces) == 1:
                assert abs(kept[0].onset_ticks - plain.onset_ticks) <= SIXTEENTH
    data = write_musicxml(line_score(Edition(rendition)))
    assert not schema_errors(data), title
    again = read_musicxml(data, irregular="keep")
    ours = [(note.onset_ticks, note.duration_ticks, note.pitch.midi, len(note.graces)) for note in line]
    theirs = [(note.onset_ticks, note.duration_ticks, note.pitch.midi, len(note.graces)) for note in again.notes]
    assert ours == theirs, title
    assert [bar.duration_ticks for bar in again.bars] == [bar.duration_ticks for bar in tune.bars], title


def test_sixty_tunes_of_the_books() -> None:
    chosen = tuple(random.Random(60).sample(entries(), 60))
    counts = sweep(chosen)
    assert counts["tunes"] == 60
    assert counts["renditions"] >= 3 * 55
    assert counts["figures"] > counts["renditions"]


@pytest.mark.slow
def test_every_tune_of_the_books(capsys: pytest.CaptureFixture[str]) -> None:
    counts = sweep(entries())
    with capsys.disabled():
        print(f"\ncorpus sweep: {dict(counts)}")
    assert counts["tunes"] > 4000
