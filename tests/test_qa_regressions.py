"""Defects that a teacher and an engraver found on tunes of their own, each kept from coming back.

What is right is common practice of engraving and method books unless a test names another source.
"""

from __future__ import annotations

import io
from dataclasses import replace
from typing import Any

import mido
import pytest

from fioritura.arrange.rendition import Rendition, laid_out
from fioritura.lesson.edition import Edition, figure_records, line_score
from fioritura.notation.abc.reader import read_abc
from fioritura.notation.abc.writer import write_abc
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.notation.part_spelling import written_tune
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.sound.midi_writer import write_midi
from fioritura.sound.perform import perform
from fioritura.techniques.approach import APPROACH_NOTE, SURROUND
from fioritura.techniques.delay import DELAY, SUSPENSION
from fioritura.techniques.figure import Figure
from fioritura.techniques.fill import ANSWER_FILL
from fioritura.techniques.grace import (
    DOUBLE_GRACE_UPPER_LOWER,
    LOWER_GRACE_SEMITONE,
    LOWER_GRACE_STEP,
    UPPER_GRACE_STEP,
)
from fioritura.techniques.inflection import FALL
from fioritura.techniques.neighbour import APPOGGIATURA, DOUBLE_NEIGHBOUR, NEIGHBOUR_LOWER, NEIGHBOUR_UPPER
from fioritura.techniques.passing import PASSING_NOTE_CHROMATIC
from fioritura.techniques.repetition import REPEATED_NOTES, REPEATED_NOTES_LIVELY
from fioritura.techniques.run import RUN_CHROMATIC, RUN_PENTATONIC, RUN_SCALE
from fioritura.techniques.turn import MORDENT, SHAKE, TURN, UPPER_MORDENT
from fioritura.theory.metre import QUARTER
from fioritura.tune import Mark, Tempo, Tune
from fioritura.unfold import unfolded
from fioritura.words import say
from tests.test_techniques import offered
from tests.tunes import line_of


def rendition_of(tune: Tune, figure: Figure, instrument: str = "alto-sax", **changes: Any) -> Rendition:
    return Rendition(tune, Setting(Player.of(instrument, 5), 120.0).changed(**changes), (figure,))


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
    figure = offered(tune, PASSING_NOTE_CHROMATIC.id)[0][1]
    assert names(tune, figure, instrument) == expected


def test_a_respelled_key_brings_no_double_flats() -> None:
    """E major is D flat major for the alto: a run from E to G sharp reads D flat, D, E flat, E, F."""
    tune = line_of("E5/2 G#5/2", key="E major", chords="E")
    figure = offered(tune, RUN_CHROMATIC.id)[0][1]
    assert names(tune, figure, "alto-sax") == ["Db", "D", "Eb", "E", "F"]
    around = line_of("E5/2 F#5/2 B4/2 G#4/2", key="E major", chords="E C#m7")
    for technique in (LOWER_GRACE_SEMITONE.id, TURN.id, MORDENT.id, SURROUND.id, DOUBLE_GRACE_UPPER_LOWER.id):
        for _, figure in offered(around, technique):
            assert not [name for name in names(around, figure, "alto-sax") if len(name) > 2], technique


def test_a_file_s_own_double_accidentals_stay() -> None:
    tune = line_of("F##5/2 G#5/2", key="G# minor", chords="G#m")
    concert = written_tune(tune, INSTRUMENTS["concert"].transposition)
    assert [str(note.pitch) for note in concert.notes] == ["F##5", "G#5"]


def test_figures_json_names_notes_as_the_part_prints_them() -> None:
    tune = line_of("E5/2 G#5/2", key="E major", chords="E")
    figure = offered(tune, RUN_CHROMATIC.id)[0][1]
    (record,) = figure_records(rendition_of(tune, figure))
    assert [note["written"] for note in record["notes"]] == ["D6", "Eb6", "E6"]


# --- Slurs, feel and tempo on paper ---


@pytest.mark.parametrize(
    "technique", [TURN.id, MORDENT.id, UPPER_MORDENT.id, SHAKE.id, NEIGHBOUR_UPPER.id, APPOGGIATURA.id]
)
def test_a_figure_inside_one_note_is_slurred_no_further_than_that_note(technique: str) -> None:
    tune = line_of("C5/2 G5/2 C5/4", chords="C")
    figure = next(figure for _, figure in offered(tune, technique) if figure.anchors[0] == 1)
    line = laid_out(tune, [figure])
    (stop,) = [note for note in line if Mark.SLUR_STOP in note.marks]
    assert stop.end_ticks <= tune.notes[1].end_ticks


def test_feel_and_tempo_that_the_player_asks_for_are_printed() -> None:
    tune = line_of("C5/2 E5/2 C5/4", chords="C")
    figure = offered(tune, TURN.id)[0][1]
    score = line_score(Edition(rendition_of(tune, figure, feel="swing", tempo=90.0)))
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
    name = str(made.full_title)
    data = write_midi(perform(tune, tune.notes, instrument=made, tempo=120.0, name=name))
    tracks = mido.MidiFile(file=io.BytesIO(data), charset="utf-8").tracks
    assert [track.name for track in tracks] == ["Ősz 秋 ♭", name]


# --- Figures in their places ---


def techniques_of(tune: Tune, technique: str, anchor: int) -> list[Figure]:
    return [figure for _, figure in offered(tune, technique) if figure.anchors[0] == anchor]


def test_late_notes_follow_the_chord_that_has_come_under_a_long_note() -> None:
    """C held from C into E flat 7: the step below is B, and later B flat."""
    tune = line_of("C5/4 F5/2 F5/2", metre="2/4", chords="C Eb7")
    (run,) = techniques_of(line_of("C5/8 G5/4", chords="C Cm7 Cm7", key="Eb major"), RUN_SCALE.id, 0)
    assert "Eb5" in [str(note.pitch) for note in run.notes]
    lower = [str(figure.notes[1].pitch) for figure in techniques_of(tune, NEIGHBOUR_LOWER.id, 0)]
    assert lower[0] == "Bb4"


def test_half_of_a_dotted_beat_is_no_late_start() -> None:
    compound = line_of("C5/1.5 E5/1.5 D5/1.5 C5/1.5", metre="6/8")
    assert not offered(compound, DELAY.id)
    assert offered(line_of("C5/1 E5/1 D5/1 C5/1"), DELAY.id)


def test_a_suspension_clashes_before_it_resolves() -> None:
    """Open Music Theory, "Embellishing tones": a suspension is a dissonance; the seventh of a chord is at rest."""
    assert not offered(line_of("F#5/4 E5/4", key="B minor", chords="Bm F#7"), SUSPENSION.id)
    assert not offered(line_of("C5/4 Bb4/4", key="F major", chords="F C7"), SUSPENSION.id)
    assert offered(line_of("C5/4 B4/4", chords="C G"), SUSPENSION.id)


def test_a_syncopated_note_is_not_struck_again_on_the_beat() -> None:
    tune = line_of("C5/0.5 E5/1.5 D5/2 C5/4")
    assert not techniques_of(tune, REPEATED_NOTES.id, 1)
    assert not techniques_of(tune, REPEATED_NOTES_LIVELY.id, 1)
    assert techniques_of(tune, REPEATED_NOTES.id, 2)


def test_a_held_last_note_dies_away_and_does_not_drop() -> None:
    tune = line_of("C5/2 E5/2 G5/8")
    assert not offered(tune, FALL.id)
    assert techniques_of(line_of("C5/2 E5/2 G5/2 r/2"), FALL.id, 2)


def test_a_whole_tone_grace_does_not_skip_the_semitone_just_heard() -> None:
    """B, then C with a grace B flat: the ear hears a wrong note."""
    tune = line_of("B4/2 C5/2", chords="C7")
    assert not techniques_of(tune, LOWER_GRACE_STEP.id, 1)
    assert techniques_of(line_of("G4/2 C5/2", chords="C7"), LOWER_GRACE_STEP.id, 1)


def test_quick_notes_off_the_beat_take_no_grace() -> None:
    tune = line_of("C5/0.25 E5/0.25 D5/0.5 C5/1 G5/2")
    assert not techniques_of(tune, UPPER_GRACE_STEP.id, 1)
    assert techniques_of(tune, UPPER_GRACE_STEP.id, 4)


def test_a_neighbour_does_not_take_the_next_note_away() -> None:
    tune = line_of("E5/2 D5/2 C5/4")
    assert not [f for f in techniques_of(tune, NEIGHBOUR_LOWER.id, 0) if str(f.notes[1].pitch) == "D5"]
    assert techniques_of(tune, NEIGHBOUR_UPPER.id, 0)


def test_no_wide_leap_to_an_approach_note() -> None:
    assert not offered(line_of("E5/2 G4/2"), APPROACH_NOTE.id)
    assert offered(line_of("E5/2 A4/2"), APPROACH_NOTE.id)


def test_fills_and_runs_have_the_names_of_the_chord() -> None:
    """Over G7 with a raised fifth the seventh is F, not E sharp."""
    tune = line_of("D5/4 D#5/4", chords="G7#5")
    for technique in (ANSWER_FILL.id, RUN_PENTATONIC.id):
        for _, figure in offered(tune, technique):
            assert all(str(note.pitch.name) != "E#" for note in figure.notes)
    assert offered(tune, ANSWER_FILL.id)


def test_a_leading_note_in_a_part_stands_on_the_line_or_space_below() -> None:
    """F sharp major is A flat major for the tenor: D before D sharp reads E before F, not F flat."""
    tune = line_of("F#5/2 D#5/2", key="F# major", chords="D#m")
    figure = techniques_of(tune, LOWER_GRACE_SEMITONE.id, 1)[0]
    assert names(tune, figure, "tenor-sax") == ["Ab", "E", "F"]


@pytest.mark.parametrize(
    ("length", "metre", "values"), [(3, "3/4", [1, 1, 1]), (1.5, "6/8", [0.5] * 3), (3, "6/8", [2, 0.5, 0.5])]
)
def test_a_neighbour_keeps_to_the_beat(length: float, metre: str, values: list[float]) -> None:
    tune = line_of(f"E5/{length} G5/{length}", metre=metre)
    figure = techniques_of(tune, NEIGHBOUR_UPPER.id, 0)[0]
    assert [note.duration_ticks / QUARTER for note in figure.notes] == values


def test_written_out_repeats_print_a_tempo_where_it_changes_and_bring_the_first_one_back() -> None:
    tune = line_of("C5/4 D5/4")
    bars = (replace(tune.bars[0], opens_repeat=True), replace(tune.bars[1], repeats=1))
    steady = replace(tune, bars=bars, tempos=(Tempo(0, 90.0),))
    assert unfolded(steady).tempos == (Tempo(0, 90.0),)
    slowing = replace(steady, tempos=(Tempo(0, 90.0), Tempo(4 * QUARTER, 60.0)))
    quarters = [(tempo.onset_ticks // QUARTER, tempo.quarters_per_minute) for tempo in unfolded(slowing).tempos]
    assert quarters == [(0, 90.0), (4, 60.0), (8, 90.0), (12, 60.0)]


def test_repeated_notes_keep_to_the_dotted_beat() -> None:
    tune = line_of("E5/3 D5/1.5 C5/1.5", metre="6/8")
    (even,) = techniques_of(tune, REPEATED_NOTES.id, 0)
    assert [note.duration_ticks / QUARTER for note in even.notes] == [1.5, 1.5]
    for lively in techniques_of(tune, REPEATED_NOTES_LIVELY.id, 0):
        ends = [note.end_ticks for note in laid_out(tune, [lively])]
        assert int(1.5 * QUARTER) in ends


def test_a_note_that_is_repeated_is_no_peak() -> None:
    tune = line_of("C5/2 E5/2 E5/2 G5/2")
    reasons = [say(figure.why) for figure in techniques_of(tune, LOWER_GRACE_SEMITONE.id, 1)]
    assert reasons
    assert "higher" not in reasons[0]
    assert "higher" in say(techniques_of(tune, LOWER_GRACE_SEMITONE.id, 3)[0].why)


def test_the_last_note_of_a_tune_comes_to_rest() -> None:
    tune = line_of("C5/2 E5/2 C5/4")
    for technique in (NEIGHBOUR_UPPER.id, NEIGHBOUR_LOWER.id, DOUBLE_NEIGHBOUR.id):
        assert not techniques_of(tune, technique, 2)
    for figure in techniques_of(tune, TURN.id, 2):
        assert figure.notes[-1].duration_ticks > 2 * QUARTER


def test_a_figure_brings_no_b_sharp_into_a_part_that_has_none() -> None:
    """F major is D major for the alto: from B to D by semitones is B, C, C sharp, D."""
    tune = line_of("D5/2 F5/2", key="F major", chords="Bb")
    figure = techniques_of(tune, RUN_CHROMATIC.id, 0)[0]
    assert names(tune, figure, "alto-sax") == ["B", "C", "C#", "D"]


def test_a_german_h_is_reported_with_its_bar_and_kept_as_text() -> None:
    (tune,) = read_abc('X:1\nT:x\nM:4/4\nL:1/4\nK:C\n"C"CDEF|"H7"GABc|"C"c4|]\n')
    assert [(span.text, span.chord is None) for span in tune.chords] == [("C", False), ("H7", True), ("C", False)]
    assert any("bar 2" in say(warning) and "H7" in say(warning) for warning in tune.warnings)


def test_a_raised_ninth_is_no_reason_for_a_b_sharp() -> None:
    """G7alt is A7alt for the tenor: from A to D by semitones is A, A sharp, B, C, C sharp, D; over G sharp 7 B sharp
    is the third."""
    figure = techniques_of(line_of("G4/2 C5/2", chords="G7alt"), RUN_CHROMATIC.id, 0)[0]
    assert names(line_of("G4/2 C5/2", chords="G7alt"), figure, "tenor-sax") == ["A", "A#", "B", "C", "C#", "D"]
    tune = line_of("C#5/2 A#4/2 B4/4", key="E major", chords="F#7 B")
    figure = techniques_of(tune, UPPER_GRACE_STEP.id, 1)[0]
    assert "B#" in names(tune, figure, "tenor-sax")
