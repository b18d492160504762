"""Defects that a teacher and an engraver found on tunes of their own, each kept from coming back.

What is right is common practice of engraving and method books unless a test names another source.
"""

from __future__ import annotations

import io
from dataclasses import replace

import mido
import pytest

from fioritura.arrange.rendition import Rendition, laid_out
from fioritura.lesson.edition import Edition, figure_records, line_score
from fioritura.notation.abc_writer import write_abc
from fioritura.notation.musicxml_writer import write_musicxml
from fioritura.notation.part_spelling import written_tune
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.player import Player
from fioritura.sound.midi_writer import write_midi
from fioritura.sound.perform import perform
from fioritura.techniques.figure import Figure
from fioritura.techniques.place import Setting
from fioritura.tune import Mark, Tune
from tests.test_techniques import offered
from tests.tunes import line_of


def rendition_of(tune: Tune, figure: Figure, instrument: str = "alto-sax", **changes: object) -> Rendition:
    return Rendition(tune, replace(Setting(Player.of(instrument, 5), 120.0), **changes), (figure,))  # type: ignore[arg-type]


def names(tune: Tune, figure: Figure, instrument: str) -> list[str]:
    """The ornamented line in the instrument's part, grace notes in their places."""
    line = laid_out(tune, [figure])
    written = written_tune(replace(tune, notes=line), INSTRUMENTS[instrument].transposition)
    return [str(pitch.name) for note in written.notes for pitch in (*note.graces, note.pitch)]


# --- Spelling in parts ---


@pytest.mark.parametrize(
    ("instrument", "expected"),
    [("concert", ["F", "E", "Eb"]), ("alto-sax", ["D", "Db", "C"]), ("tenor-sax", ["G", "Gb", "F"])],
)
def test_a_falling_semitone_is_a_flat_in_every_part(instrument: str, expected: list[str]) -> None:
    """Chromatic notes lead down as flats; a white key keeps its plain name."""
    tune = line_of("F5/2 Eb5/2", key="Eb major", chords="Eb")
    figure = offered(tune, "passing-note-chromatic")[0][1]
    assert names(tune, figure, instrument) == expected


def test_a_respelled_key_brings_no_double_flats() -> None:
    """E major is D flat major for the alto: a run from E to G sharp reads D flat, D, E flat, E, F."""
    tune = line_of("E5/2 G#5/2", key="E major", chords="E")
    figure = offered(tune, "run-chromatic")[0][1]
    assert names(tune, figure, "alto-sax") == ["Db", "D", "Eb", "E", "F"]
    around = line_of("E5/2 F#5/2 B4/2 G#4/2", key="E major", chords="E C#m7")
    for technique in ("lower-grace-semitone", "turn", "mordent", "surround", "double-grace-upper-lower"):
        for _, figure in offered(around, technique):
            assert not [name for name in names(around, figure, "alto-sax") if len(name) > 2], technique


def test_a_file_s_own_double_accidentals_stay() -> None:
    tune = line_of("F##5/2 G#5/2", key="G# minor", chords="G#m")
    concert = written_tune(tune, INSTRUMENTS["concert"].transposition)
    assert [str(note.pitch) for note in concert.notes] == ["F##5", "G#5"]


def test_figures_json_names_notes_as_the_part_prints_them() -> None:
    tune = line_of("E5/2 G#5/2", key="E major", chords="E")
    figure = offered(tune, "run-chromatic")[0][1]
    (record,) = figure_records(rendition_of(tune, figure))
    assert [note["written"] for note in record["notes"]] == ["D6", "Eb6", "E6"]


# --- Slurs, feel and tempo on paper ---


@pytest.mark.parametrize(
    "technique", ["turn", "mordent", "upper-mordent", "shake", "neighbour-upper", "appoggiatura"]
)
def test_a_figure_inside_one_note_is_slurred_no_further_than_that_note(technique: str) -> None:
    tune = line_of("C5/2 G5/2 C5/4", chords="C")
    figure = next(figure for _, figure in offered(tune, technique) if figure.anchors[0] == 1)
    line = laid_out(tune, [figure])
    (stop,) = [note for note in line if Mark.SLUR_STOP in note.marks]
    assert stop.end_ticks <= tune.notes[1].end_ticks


def test_feel_and_tempo_that_the_player_asks_for_are_printed() -> None:
    tune = line_of("C5/2 E5/2 C5/4", chords="C")
    figure = offered(tune, "turn")[0][1]
    score = line_score(Edition(rendition_of(tune, figure, feel="swing", quarters_per_minute=90.0)))
    xml, abc = write_musicxml(score).decode(), write_abc(score)
    assert "Swing" in xml
    assert "<per-minute>90</per-minute>" in xml
    assert 'Q:"Swing" 1/4=90' in abc
    plain = line_score(Edition(rendition_of(tune, figure)))
    assert "Swing" not in write_musicxml(plain).decode()
    assert "<per-minute>" not in write_musicxml(plain).decode()


# --- Files ---


@pytest.mark.parametrize("instrument", ["clarinet", "trumpet"])
def test_midi_takes_names_outside_latin_1(instrument: str) -> None:
    """Standard MIDI files say no more of texts than "ASCII, other codes may be used": UTF-8, as mido can read it."""
    tune = replace(line_of("C5/2 E5/2"), title="Ősz 秋 ♭")
    made = INSTRUMENTS[instrument]
    data = write_midi(perform(tune, tune.notes, instrument=made, tempo=120.0, name=made.name))
    tracks = mido.MidiFile(file=io.BytesIO(data), charset="utf-8").tracks
    assert [track.name for track in tracks] == ["Ősz 秋 ♭", made.name]
