"""Parts and drills, against music21 and the circle of fifths."""

import re
from dataclasses import replace

import music21
import pytest

from fioritura.lesson.course import stages
from fioritura.lesson.drill import around_the_keys, cell_at, isolated, rhythm_names, rhythms
from fioritura.lesson.lesson import lesson_of
from fioritura.lesson.parts import CLASS_SET, part_for, part_scores
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.notation.part_spelling import written_tune
from fioritura.notation.score import Score, Staff
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.setting import Setting
from fioritura.theory.metre import Metre
from fioritura.theory.pitch import Interval
from fioritura.tune import Tempo, transpose
from fioritura.words import say

from .lessons import demo_lesson
from .tunes import random_tune

MUSIC21_INSTRUMENTS = {
    "soprano-sax": music21.instrument.SopranoSaxophone,
    "alto-sax": music21.instrument.AltoSaxophone,
    "tenor-sax": music21.instrument.TenorSaxophone,
    "baritone-sax": music21.instrument.BaritoneSaxophone,
    "clarinet": music21.instrument.Clarinet,
}


@pytest.mark.parametrize("player", CLASS_SET)
def test_music21_reads_each_part_back_to_the_source(player: str) -> None:
    lesson = demo_lesson()
    part = part_for(lesson, INSTRUMENTS[player])
    assert part is not None
    shift = part.tune.notes[0].pitch.midi - lesson.tune.notes[0].pitch.midi
    assert shift % 12 == 0
    for score, line in zip(part_scores(lesson, part), (lesson.tune.notes, lesson.rendition.line), strict=True):
        read = music21.converter.parseData(write_musicxml(score), format="musicxml")
        sounding = read.toSoundingPitch().stripTies()
        found = [(note.pitch.midi, note.duration.isGrace) for note in sounding.recurse().notes if note.isNote]
        wanted = []
        for note in line:
            wanted += [(grace.midi + shift, True) for grace in note.graces]
            wanted.append((note.pitch.midi + shift, False))
        assert found == wanted


@pytest.mark.parametrize("semitones", range(-5, 7))
def test_written_keys_have_the_fewest_accidentals(semitones: int) -> None:
    """By the circle of fifths: no enharmonic key has fewer sharps or flats (music21 counts them)."""
    name = music21.interval.Interval(semitones).directedSimpleName.replace("-", "")
    up = Interval.parse(name) if semitones >= 0 else -Interval.parse(name)
    lesson = demo_lesson("concert", up=up)
    for player in CLASS_SET:
        part = part_for(lesson, INSTRUMENTS[player])
        if part is None:
            continue
        read = music21.converter.parseData(write_musicxml(part_scores(lesson, part)[0]), format="musicxml")
        written = next(iter(read.recurse().getElementsByClass(music21.key.KeySignature)))
        others = {written.sharps - 12, written.sharps + 12}
        assert abs(written.sharps) <= min(map(abs, others))
        theirs = MUSIC21_INSTRUMENTS.get(player)
        if theirs is not None:
            tonic = music21.pitch.Pitch(str(lesson.tune.key.tonic).replace("b", "-"))
            expected = theirs().transposition.reverse().transposePitch(tonic).pitchClass
            assert music21.key.Key(written.asKey("major").tonic).tonic.pitchClass == expected


def test_a_part_out_of_range_is_moved_by_octaves_or_left_out() -> None:
    low = demo_lesson("concert", up=-Interval.parse("M6"))
    flute = part_for(low, INSTRUMENTS["flute"])
    assert flute is not None
    assert flute.octave > 0
    assert all(INSTRUMENTS["flute"].reaches(note.pitch) for note in flute.line)
    wide = random_tune(3)
    notes = (replace(wide.notes[0], pitch=wide.notes[0].pitch.up(Interval(21, 36))), *wide.notes[1:])
    huge = replace(low, tune=replace(wide, notes=notes), rendition=replace(low.rendition, tune=wide, figures=()))
    assert part_for(huge, INSTRUMENTS["trumpet"]) is None


# Drills ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("metre", ["4/4", "3/4", "6/8"])
@pytest.mark.parametrize("seed", range(4))
def test_drills_fill_their_bars_with_the_cells_notes(metre: str, seed: int) -> None:
    tune = random_tune(seed, metre=metre)
    onset = tune.notes[len(tune.notes) // 2].onset_ticks
    cell = cell_at(tune, tune.notes, onset)
    bar = Metre.parse(metre).bar_ticks
    assert isolated(cell).bars[0].repeats == 1
    assert all(note.end_ticks <= bar for note in isolated(cell).notes)
    for name in rhythm_names(cell.metre):
        drill = rhythms(cell, name)
        assert sum(note.duration_ticks for note in drill.notes) == bar
        assert {note.pitch for note in drill.notes} <= set(cell.pitches)


@pytest.mark.parametrize("seed", range(4))
def test_the_circle_goes_through_the_keys_by_fourths_and_stays_on_the_instrument(seed: int) -> None:
    tune = transpose(random_tune(seed), Interval.parse("P4"))
    cell = cell_at(tune, tune.notes, tune.notes[8].onset_ticks)
    instrument = INSTRUMENTS["alto-sax"]
    circle = around_the_keys(cell, instrument)
    assert 8 <= len(circle.bars) <= 12
    length = cell.metre.bar_ticks
    shapes, starts = set(), []
    for number in range(len(circle.bars)):
        notes = [n for n in circle.notes if number * length <= n.onset_ticks < (number + 1) * length]
        first = notes[0].pitch.midi
        starts.append(first % 12)
        shapes.add(tuple((n.onset_ticks - number * length, n.pitch.midi - first) for n in notes))
        assert all(instrument.reaches(n.pitch) for n in notes)
    assert len(shapes) == 1
    assert len(set(starts)) == len(starts)
    if len(starts) == 12:
        assert all((b - a) % 12 == 5 for a, b in zip(starts, starts[1:], strict=False))


def test_tempos_rise_to_the_goal() -> None:
    lesson = demo_lesson()
    assert lesson.hard_places
    for place in lesson.hard_places:
        tempos = place.tempos
        assert list(tempos) == sorted(set(tempos))
        assert tempos[-1] == lesson.ladder[-1] == 132


def test_levels_add_techniques_and_keep_the_lessons_own_performance() -> None:
    lesson = demo_lesson()
    path = stages(lesson)
    assert [stage.level for stage in path] == [1, 2, 3, 4, 5]
    assert path[2].rendition is lesson.rendition
    new = [id for stage in path for id in stage.new]
    assert len(new) == len(set(new))
    counts = [len(stage.rendition.figures) for stage in path]
    assert counts[0] < counts[2] < counts[4]


def test_every_level_of_a_thinned_lesson_is_thinned() -> None:
    lesson = demo_lesson()
    thinned = replace(lesson, setting=lesson.setting.changed(density=0.5))
    for usual, fewer in zip(stages(lesson), stages(thinned), strict=True):
        if usual.level != lesson.setting.level:
            assert fewer.rendition.setting.density == 0.5
            assert len(fewer.rendition.figures) < len(usual.rendition.figures)


PLAYERS = ("alto-sax", "tenor-sax", "clarinet", "flute", "trumpet", "baritone-sax")


@pytest.mark.parametrize("player", PLAYERS)
@pytest.mark.parametrize("seed", range(3))
def test_every_bar_of_the_twelve_keys_is_spelled_for_its_key_and_chord(player: str, seed: int) -> None:
    """Read back by music21 from the written part: no double signs, no chord that belongs to a key of seven signs and more,
    and every bar is the first one transposed."""
    lesson = demo_lesson(player)
    tune = lesson.tune
    onset = tune.notes[10 + 9 * seed].onset_ticks
    drill = around_the_keys(cell_at(tune, lesson.rendition.line, onset), INSTRUMENTS[player])
    written = written_tune(drill, INSTRUMENTS[player].transposition)
    data = write_musicxml(Score(drill, (Staff(drill.notes, "", INSTRUMENTS[player]),)))
    part = music21.converter.parseData(data.decode(), format="musicxml").parts[0]
    shapes, names = set(), []
    for number, measure in enumerate(part.getElementsByClass("Measure")):
        sounds = [note for note in measure.recurse().notes if not isinstance(note, music21.harmony.ChordSymbol)]
        assert all(abs(note.pitch.alter) <= 1 for note in sounds)
        first = sounds[0].pitch
        shapes.add(tuple(note.pitch.ps - first.ps for note in sounds))
        spans = [span for span in written.chords if written.bar_at(span.onset_ticks) is written.bars[number]]
        for span in spans:
            assert span.chord is not None
            names.append(span.chord.text)
    assert len(shapes) == 1
    assert names
    assert not [name for name in names if re.match(r"(G#|D#|A#|E#|B#)(maj|6|$)|(A#|E#|B#|Cb|Fb)m|F b|.##|.bb", name)]


def test_a_hard_place_counts_the_beats_of_its_metre_everywhere() -> None:
    tune = random_tune(2, metre="6/8")
    tune = replace(tune, tempos=(Tempo(0, 150.0),))
    lesson = lesson_of(tune, Setting("alto-sax", level=5))
    place = lesson.hard_places[0]
    assert place.tempos[-1] == lesson.ladder[-1] == 100
    words = say(place.practice[-1])
    assert f"♩. = {place.tempos[-1]}" in words or f"♩.\u00a0=\u00a0{place.tempos[-1]}" in words
    if len(place.tempos) > 1:
        assert str(place.tempos[0]) in words
        assert str(place.tempos[1] - place.tempos[0]) in words
