"""Figures of a whole phrase: words are not torn, slurs stay closed, parts read back, and the tune is still found."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest

from fioritura.arrange.find import find_figures
from fioritura.arrange.rendition import Rendition, laid_out
from fioritura.lesson.edition import Edition, line_bytes
from fioritura.notation.read import read_tune
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.techniques.context import contexts
from fioritura.techniques.figure import Figure
from fioritura.techniques.paraphrase import BACK_PHRASING, OCTAVE_PHRASE, PHRASE_AHEAD
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Mark, Tune
from tests.tunes import line_of, random_tune

TECHNIQUES = (BACK_PHRASING, PHRASE_AHEAD, OCTAVE_PHRASE)
SETTING = Setting(Player.of("alto-sax", 5), 100.0, "swing")


def figures_of(tune: Tune, *techniques: Technique, setting: Setting = SETTING) -> list[Figure]:
    return [figure for _, figure in find_figures(contexts(tune, setting.on(tune)), techniques or TECHNIQUES)]


def sung(tune: Tune, words: str) -> Tune:
    """The tune with a syllable a note; ``_`` for a note on which the syllable before goes on."""
    syllables = ["" if word == "_" else word for word in words.split()]
    notes = tuple(replace(note, lyric=syllable) for note, syllable in zip(tune.notes, syllables, strict=True))
    return replace(tune, notes=notes)


def test_back_phrasing_as_players_do_it() -> None:
    """Common practice: in medium swing the notes come off the beat, and the last gives the time back."""
    tune = line_of("G4/1 C5/1 D5/1 E5/1 C5/4", chords="C")
    figure = next(f for f in figures_of(tune, BACK_PHRASING) if len(f.anchors) == 4)
    line = [
        (note.onset_ticks / QUARTER, note.duration_ticks / QUARTER, str(note.pitch))
        for note in laid_out(tune, [figure])
    ]
    assert line == [(0, 1.5, "G4"), (1.5, 1, "C5"), (2.5, 1, "D5"), (3.5, 0.5, "E5"), (4, 4, "C5")]


def test_in_a_ballad_three_quarters_come_as_a_triplet() -> None:
    tune = line_of("G4/1 C5/1 D5/1 E5/1 C5/4", chords="C")
    slow = figures_of(tune, BACK_PHRASING, setting=SETTING.changed(tempo=66.0))
    figure = next(f for f in slow if len(f.anchors) == 4)
    triplet = [note.duration_ticks * 3 for note in figure.notes[1:]]
    assert triplet == [2 * QUARTER] * 3
    assert figure.notes[0].duration_ticks == QUARTER


def test_the_late_start_is_no_rest_where_the_tune_has_none() -> None:
    for seed in range(6):
        tune = random_tune(seed, bars=16)
        for figure in figures_of(tune, BACK_PHRASING):
            line = laid_out(tune, [figure])
            rests = sum(b.onset_ticks > a.end_ticks for a, b in zip(line, line[1:], strict=False))
            plain = sum(b.onset_ticks > a.end_ticks for a, b in zip(tune.notes, tune.notes[1:], strict=False))
            assert rests == plain, figure
            assert line[0].onset_ticks == tune.notes[0].onset_ticks


@pytest.mark.parametrize(
    "words, is_torn",
    [("when will you come home", False), ("sum- mer time come home", True), ("when _ you come home", True)],
)
def test_no_word_is_torn(words: str, is_torn: bool) -> None:
    """A group never begins inside a word, or inside a syllable that goes on."""
    tune = sung(line_of("G4/1 C5/1 D5/1 E5/1 C5/4", chords="C"), words)
    begins = {
        min(note.anchor for note in f.notes if note.anchor is not None and not note.joins) for f in figures_of(tune)
    }
    assert (1 in begins) is not is_torn


def test_slurs_and_breaths_of_the_file_stay_whole() -> None:
    tune = line_of("G4/1 C5/1 D5/1 E5/1 C5/4 G4/1 C5/1 D5/1 E5/1 C5/4", chords="C")
    marks = {
        1: (Mark.SLUR_START,),
        2: (Mark.SLUR_STOP,),
        3: (Mark.BREATH,),
        6: (Mark.SLUR_START,),
        8: (Mark.SLUR_STOP,),
    }
    tune = replace(tune, notes=tuple(replace(n, marks=marks.get(i, ())) for i, n in enumerate(tune.notes)))
    wanted = Counter(mark for found in marks.values() for mark in found)
    figures = figures_of(tune)
    assert len(figures) >= 6
    for figure in figures:
        kept = Counter(mark for note in laid_out(tune, [figure]) for mark in note.marks)
        assert kept == wanted, figure


@pytest.mark.parametrize("kind", ["musicxml", "abc"])
def test_written_parts_read_back(kind: str, tmp_path: Path) -> None:
    """Every bar adds up and every tie closes: what is read is what was written, note for note."""
    for seed in range(4):
        tune = random_tune(seed, bars=16, metre=("4/4", "3/4", "6/8", "4/4")[seed])
        for technique in TECHNIQUES:
            chosen: list[Figure] = []
            for figure in figures_of(tune, technique):
                if not any(figure.collides(other) for other in chosen):
                    chosen.append(figure)
            rendition = Rendition(tune, SETTING, tuple(chosen))
            path = tmp_path / f"{seed}.{kind}"
            path.write_bytes(line_bytes(Edition(rendition, is_concert=True), kind))
            read = [(note.onset_ticks, note.duration_ticks, note.pitch.midi) for note in read_tune(path).notes]
            assert read == [(note.onset_ticks, note.duration_ticks, note.pitch.midi) for note in rendition.line]


def test_a_phrase_an_eighth_away_is_the_tune_still() -> None:
    tune = line_of("G4/1 C5/1 D5/1 E5/1 C5/4", chords="C")
    figure = next(f for f in figures_of(tune, BACK_PHRASING) if len(f.anchors) == 4)
    assert max(abs(n.onset_ticks - tune.notes[n.anchor].onset_ticks) for n in figure.notes[1:] if n.anchor) == EIGHTH
    assert Rendition(tune, SETTING, (figure,)).kept_share == 1.0


def test_sizes() -> None:
    """Counted by hand: added notes, and notes that have another time, length or octave."""
    tune = line_of("G4/1 C5/1 D5/1 E5/1 C5/4", chords="C")
    late = next(f for f in figures_of(tune, BACK_PHRASING) if len(f.anchors) == 4)
    assert late.size == 4
    assert all(figure.size == len(figure.notes) for figure in figures_of(random_tune(1), OCTAVE_PHRASE))
