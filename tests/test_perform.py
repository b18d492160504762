"""Performing a line: what sounds when, against published timing and music21's realisations."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from statistics import mean, pstdev
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.accompany.feels import FEELS
from fioritura.accompany.form import Chorus
from fioritura.chance import Chance
from fioritura.errors import OptionError
from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound.clock import Clock
from fioritura.sound.ornaments import realised
from fioritura.sound.perform import grace_sec, perform
from fioritura.sound.performance import BEND_RANGE, CurvePoint, PerformedNote
from fioritura.sound.session import Session
from fioritura.sound.session import played as perform_session
from fioritura.sound.swing import soloist_delay_sec, soloist_ratio
from fioritura.sound.timing import Span, humanised
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, HALF, QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark, Note, Tempo, Tune
from tests.charts import chart
from tests.notation_strategies import tunes
from tests.tunes import line_of

ALTO = INSTRUMENTS["alto-sax"]


def played(tune: Tune, line: tuple[Note, ...] | None = None, **options: Any) -> tuple[PerformedNote, ...]:
    options = {"exact": True, "instrument": ALTO, **options}
    return perform(tune, tune.notes if line is None else line, **options).parts[0].notes


def with_note(tune: Tune, number: int, **changes: Any) -> tuple[Note, ...]:
    line = list(tune.notes)
    line[number] = replace(line[number], **changes)
    return tuple(line)


def test_exact_straight_notes_sound_on_the_grid() -> None:
    notes = played(line_of("C4/1 D4/1 E4/2"), tempo=90)
    assert [note.onset_sec for note in notes] == pytest.approx([0, 60 / 90, 120 / 90])


@pytest.mark.parametrize("tempo", [80, 120, 160, 200, 280])
def test_a_swing_line_has_the_soloists_ratio_and_delay(tempo: float) -> None:
    tune = chart("C | C | C | C", melody="C4 D4 E4 F4 G4 F4 E4 D4", tempo=tempo)
    onsets = [note.onset_sec for note in played(tune, laid_back=False)]
    ratios = [(b - a) / (c - b) for a, b, c in zip(onsets[::2], onsets[1::2], onsets[2::2], strict=False)]
    assert ratios == pytest.approx([soloist_ratio(tempo)] * len(ratios))
    late = [note.onset_sec for note in perform(tune, tune.notes, instrument=ALTO, laid_back=True).parts[0].notes]
    beat = 60 / tempo
    delays = [onset - n * beat for n, onset in enumerate(late[::2])]
    assert mean(delays) == pytest.approx(soloist_delay_sec(tempo), abs=0.006)


def test_human_timing_stays_within_what_ensembles_do_and_off_when_exact() -> None:
    # Rasch 1979: 30 to 50 ms between players; Friberg & Sundberg 1995: the order of onsets is heard from 22 ms.
    tune = chart(" | ".join(["C"] * 64), melody="C4 D4 E4 F4 G4 F4 E4 D4", feel="straight")
    grid, human = played(tune), played(tune, exact=False, seed=3)
    deviations = [h.onset_sec - g.onset_sec for g, h in zip(grid, human, strict=True)]
    assert 0.005 <= pstdev(deviations) <= 0.015
    assert max(map(abs, deviations)) <= 0.022
    assert all(a.onset_sec < b.onset_sec for a, b in pairwise(human))


def test_the_same_seed_is_the_same_performance() -> None:
    tune = chart("C | F | G | C", melody="C4 D4 E4 F4 G4 F4 E4 D4")
    assert played(tune, exact=False, seed=5) == played(tune, exact=False, seed=5)
    assert played(tune, exact=False, seed=5) != played(tune, exact=False, seed=6)


@pytest.mark.parametrize("count", [1, 2, 3])
def test_grace_notes_take_their_time_from_the_note_before(count: int) -> None:
    # Timmers et al. 2002, Music Perception 20(1), 3-33.
    tune = line_of("C4/1 E4/1 G4/2")
    graces = tuple(Pitch.parse(name) for name in ("C4", "D4", "D#4")[-count:])
    plain, graced = played(tune), played(tune, with_note(tune, 1, graces=graces))
    main = next(note for note in graced if note.midi == 64)
    assert main.onset_sec == pytest.approx(plain[1].onset_sec)
    assert main.end_sec == pytest.approx(plain[1].end_sec)
    assert [note.midi for note in graced[1 : 1 + count]] == [grace.midi for grace in graces]
    lost = plain[0].end_sec - graced[0].end_sec
    assert lost == pytest.approx(count * grace_sec(count, 0.5), abs=0.05)
    assert graced[0].end_sec <= graced[1].onset_sec + 0.01


def test_grace_notes_scale_less_than_the_tempo() -> None:
    # Timmers et al. 2002: less than proportionally.
    for slow, fast in ((60, 120), (80, 160), (100, 220)):
        stretch = grace_sec(1, 60 / slow) / grace_sec(1, 60 / fast)
        assert 1.0 < stretch < slow / fast * (fast / slow) ** 2


def test_grace_notes_leave_half_of_a_short_note_before_them() -> None:
    tune = line_of("C4/0.25 E4/0.25 G4/2", metre="5/4")
    line = with_note(tune, 1, graces=tuple(map(Pitch.parse, ("C4", "D4", "D#4"))))
    notes = played(tune, line, tempo=120)
    assert notes[0].duration_sec >= 0.05
    assert all(a.onset_sec < b.onset_sec for a, b in pairwise(notes))


def test_grace_notes_before_the_very_first_note_come_on_the_beat() -> None:
    tune = line_of("C4/1 E4/1")
    notes = played(tune, with_note(tune, 0, graces=(Pitch.parse("B3"),)))
    assert notes[0].midi == 59
    assert notes[0].onset_sec == 0
    assert 0.03 < notes[1].onset_sec < 0.15


@pytest.mark.parametrize(
    ("mark", "name"),
    [
        (Mark.TURN, "Turn"),
        (Mark.INVERTED_TURN, "InvertedTurn"),
        (Mark.MORDENT, "Mordent"),
        (Mark.INVERTED_MORDENT, "InvertedMordent"),
    ],
)
@pytest.mark.parametrize("fifths", range(-4, 5))
def test_turns_and_mordents_are_the_notes_that_music21_realises(mark: Mark, name: str, fifths: int) -> None:
    from music21 import expressions, key, note

    for midi in range(60, 72):
        pitch = Key(fifths).spell(midi)
        if not Key(fifths).holds(pitch):
            continue
        other = note.Note(str(pitch).replace("b", "-"), quarterLength=1.0)
        before, main, after = getattr(expressions, name)().realize(other, keySig=key.KeySignature(fifths))
        expected = [n.pitch.midi for n in (*before, *([main] if main else []), *after)]
        assert [piece.midi for piece in realised(pitch, [mark], Key(fifths), 0.5)] == expected


def test_a_trill_alternates_with_the_upper_note_as_music21_does_and_ends_on_the_main_one() -> None:
    from music21 import expressions, note

    other = expressions.Trill().realize(note.Note("G4", quarterLength=1.0))[0]
    pieces = realised(Pitch.parse("G4"), [Mark.TRILL], Key(0), 1.0)
    assert [piece.midi for piece in pieces[:8]] == [n.pitch.midi for n in other]
    assert pieces[-1].midi == 67
    assert sum(piece.duration_sec for piece in pieces) == pytest.approx(1.0)
    assert 9 <= len(pieces) / 1.0 <= 15


@pytest.mark.parametrize("mark", [Mark.TRILL, Mark.SHAKE, Mark.TURN, Mark.MORDENT, Mark.ROLL, Mark.INVERTED_TURN])
@pytest.mark.parametrize("duration_sec", [0.05, 0.2, 0.6, 3.0])
def test_signs_fill_their_note_exactly(mark: Mark, duration_sec: float) -> None:
    pieces = realised(Pitch.parse("A4"), [mark], Key(0), duration_sec)
    assert len(pieces) >= 3
    assert pieces[0].after_sec == 0
    for piece, following in pairwise(pieces):
        assert piece.after_sec + piece.duration_sec == pytest.approx(following.after_sec)
    assert pieces[-1].after_sec + pieces[-1].duration_sec == pytest.approx(duration_sec)
    assert all(piece.duration_sec > 0 for piece in pieces)


def test_scoops_rise_into_the_pitch_and_falls_leave_it() -> None:
    tune = line_of("C4/2 G4/2")
    scooped = played(tune, with_note(tune, 0, marks=(Mark.SCOOP,)))[0].bend
    assert scooped[0].after_sec == 0
    assert -2.0 <= scooped[0].value <= -0.8
    assert next(p.after_sec for p in scooped if abs(p.value) < 0.03) <= 0.15
    fallen = played(tune, with_note(tune, 1, marks=(Mark.FALL,)))[1]
    assert fallen.bend[-1].value <= -3
    assert fallen.level[-1].value < 0.5
    risen = played(tune, with_note(tune, 1, marks=(Mark.DOIT,)))[1]
    assert 3 <= risen.bend[-1].value <= BEND_RANGE


def adorned(tune: Tune) -> tuple[Note, ...]:
    """The tune's notes as those of a line with a figure."""
    return (replace(tune.notes[0], figures=(0,)), *tune.notes[1:])


def crossings(points: list[CurvePoint]) -> list[float]:
    """When a curve rises through 0."""
    return [b.after_sec for a, b in pairwise(points) if a.value < 0 <= b.value]


@pytest.mark.parametrize("feel", ["swing", "straight"])
def test_vibrato_sets_in_when_half_of_a_long_note_is_over_and_grows(feel: str) -> None:
    # Common practice: depth, rate and level grow together; jazz players let a note stand first.
    tune = line_of("C4/4 D4/0.5 E4/0.5")
    long, short, _ = played(tune, adorned(tune), tempo=60, feel=feel)
    starts = next(point.after_sec for point in long.bend if point.value) / long.duration_sec
    assert 0.5 <= starts <= 0.62
    swings = [point for point in long.bend if point.after_sec > starts * long.duration_sec]
    middle = (1 + starts) / 2 * long.duration_sec
    early, late = ([abs(p.value) for p in swings if (p.after_sec > middle) is is_late] for is_late in (False, True))
    assert max(early) < 0.75 * max(late)
    assert 0.1 <= max(late) <= 0.35
    rises = crossings(swings)
    assert rises[1] - rises[0] > 1.1 * (rises[-1] - rises[-2])
    assert all(4.0 <= 1 / (b - a) <= 6.5 for a, b in pairwise(rises))
    assert short.bend == ()


def test_plain_lines_have_no_vibrato_but_where_it_is_written() -> None:
    tune = line_of("C4/4 D4/4")
    assert [note.bend for note in played(tune)] == [(), ()]
    first, second = played(tune, with_note(tune, 1, marks=(Mark.VIBRATO,)))
    assert first.bend == ()
    assert max(point.value for point in second.bend) > 0.22


def test_a_plain_chorus_has_no_vibrato_beside_an_adorned_one() -> None:
    tune = chart("C | C | C | C", melody="C4 D4 E4 F4 G4 F4 E4 D4", feel="swing", tempo=100)
    tune = replace(tune, notes=line_of("C4/4 E4/4 G4/4 C5/4").notes)
    choruses = (Chorus("head", tune.notes), Chorus("chorus", adorned(tune)))
    melody = perform_session(Session(tune, choruses, ALTO, FEELS["swing"], holds_last=False)).parts[0]
    waves = [any(point.value for point in note.bend) for note in melody.notes]
    assert waves == [False] * 4 + [True] * 4


def test_long_notes_swell_and_phrases_end_tapered() -> None:
    tune = line_of("C4/4 D4/2 E4/2 F4/4")
    for note in played(tune, tempo=90):
        levels = [40 * math.log10(point.value) for point in note.level]
        assert 4.0 <= max(levels) - min(levels) <= 10.0
    last = played(tune, tempo=90)[-1]
    assert last.level[-1].value < 0.7


def test_a_hairpin_over_a_long_note_is_heard_in_it() -> None:
    tune = line_of("C4/4 D4/4")
    for mark, grows in ((Mark.CRESCENDO, True), (Mark.DIMINUENDO, False)):
        note = played(tune, with_note(tune, 0, marks=(mark, Mark.HAIRPIN_STOP)), tempo=90)[0]
        assert (note.level[0].value < 0.8 < note.level[-1].value) is grows
        assert (note.level[-1].value < 0.8 < note.level[0].value) is not grows


@pytest.mark.parametrize("tempo", [90, 120, 160, 200, 220])
def test_over_a_band_off_beats_fall_with_the_ride_and_notes_on_the_beat_come_late(tempo: float) -> None:
    # Friberg & Sundström 2002: off-beats together, downbeats of the soloist late by what 387 wind solos show.
    tune = chart(" | ".join(["C"] * 16), melody="C4 D4 E4 F4 G4 F4 E4 D4", tempo=tempo, feel="swing")
    tune = replace(tune, notes=line_of("C4/0.5 D4/0.5 E4/0.5 F4/0.5 G4/0.5 F4/0.5 E4/0.5 D4/0.5 " * 16).notes)
    music = perform_session(Session(tune, (Chorus("head", tune.notes),), ALTO, FEELS["swing"], seed=2))
    lead = music.parts[0].notes
    ride = [note.onset_sec for part in music.parts if part.is_drums for note in part.notes if note.midi in (51, 59)]
    beat, start = 60 / tempo, music.clock.seconds(music.bars[1].start_ticks)
    on, off = [], []
    for number, note in enumerate(lead):
        nearest = min(ride, key=lambda onset: abs(onset - note.onset_sec))
        if number % 2 and abs(nearest - note.onset_sec) < 0.05:
            off.append(note.onset_sec - nearest)
        elif not number % 2:
            on.append(note.onset_sec - start - number // 2 * beat)
    assert len(off) >= 16
    assert abs(mean(off)) <= 0.004
    assert max(map(abs, off)) <= 0.012
    assert mean(on) == pytest.approx(soloist_delay_sec(tempo), abs=0.006)


def test_tongued_notes_part_by_the_tongue_and_slurred_ones_join() -> None:
    # Hofmann et al. 2012: the tongue is on the reed for 34.5 ms.
    tune = line_of("C4/1 D4/1 E4/1 F4/1")
    tongued = played(tune)
    gaps = [b.onset_sec - a.end_sec for a, b in pairwise(tongued)]
    assert gaps == pytest.approx([0.0345] * 3)
    line = (replace(tune.notes[0], marks=(Mark.SLUR_START,)), *tune.notes[1:3])
    slurred = played(tune, (*line, replace(tune.notes[3], marks=(Mark.SLUR_STOP,))))
    assert all(b.onset_sec <= a.end_sec <= b.onset_sec + 0.01 for a, b in pairwise(slurred))


def test_swing_eighths_are_slurred_onto_the_beat_by_custom() -> None:
    # Common practice of jazz articulation: tongue the eighth off the beat, slur onto the beat.
    tune = chart("C", melody="C4 D4 E4 F4 G4 A4 B4 C5")
    notes = played(tune)
    gaps = [b.onset_sec - a.end_sec for a, b in pairwise(notes)]
    assert all(gap > 0.02 for gap in gaps[::2])
    assert all(gap <= 0 for gap in gaps[1::2])


def test_articulations_shorten_and_accents_are_louder() -> None:
    tune = line_of("C4/1 C4/1 C4/1 C4/1")
    signs = ((), (Mark.STACCATO,), (Mark.ACCENT,), (Mark.GHOST,))
    plain, short, loud, ghost = played(
        tune, tuple(replace(n, marks=m) for n, m in zip(tune.notes, signs, strict=True))
    )
    assert short.duration_sec == pytest.approx(0.5 * 0.5, rel=0.05)
    assert loud.velocity >= plain.velocity + 8
    assert ghost.velocity < 0.7 * plain.velocity


def test_a_fermata_lengthens_its_note_and_delays_the_rest() -> None:
    tune = line_of("C4/2 E4/2")
    notes = played(tune, with_note(tune, 0, marks=(Mark.FERMATA,)))
    assert notes[0].duration_sec > 1.5
    assert notes[1].onset_sec > 1.7


def test_phrases_without_rests_get_a_breath_before_seven_and_a_half_seconds_are_over() -> None:
    # 95 % of the phrases in 387 recorded wind solos are shorter than 7.5 s.
    tune = line_of("C4/1 D4/1 E4/1 F4/1 " * 16)
    notes = played(tune, tempo=100)
    breaths = [a.end_sec for a, b in pairwise(notes) if b.onset_sec - a.end_sec > 0.1]
    assert all(b - a <= 8.5 for a, b in pairwise([0.0, *breaths, notes[-1].end_sec]))


def test_tempo_scales_and_changes_of_tempo_stay_in_proportion() -> None:
    tune = replace(line_of("C4/4 D4/4 E4/4"), tempos=(Tempo(0, 60.0), Tempo(4 * QUARTER, 120.0)))
    assert [note.onset_sec for note in played(tune)] == pytest.approx([0, 4, 6])
    assert [note.onset_sec for note in played(tune, tempo=120)] == pytest.approx([0, 2, 3])


@pytest.mark.parametrize("tempo", [0, 19, 401, float("nan"), -5])
def test_absurd_tempi_are_refused_with_the_limits(tempo: float) -> None:
    with pytest.raises(OptionError, match="20 to 400"):
        played(line_of("C4/4"), tempo=tempo)


def test_clock_goes_there_and_back_and_slows_only_inside_spans() -> None:
    clock = Clock((Tempo(0, 120.0), Tempo(QUARTER, 90.0))).slowed([(HALF, HALF + QUARTER, 0.5)])
    for ticks in range(-QUARTER, 8 * QUARTER, EIGHTH // 2):
        assert clock.ticks(clock.seconds(ticks)) == pytest.approx(ticks)
    assert clock.seconds(HALF + QUARTER) - clock.seconds(HALF) == pytest.approx(60 / 45)
    assert clock.seconds(HALF + 2 * QUARTER) - clock.seconds(HALF + QUARTER) == pytest.approx(60 / 90)


def test_the_quickest_notes_keep_their_order_in_human_timing() -> None:
    spans = [Span(0.004 * number, 0.004 * (number + 1)) for number in range(200)]
    for seed in range(50):
        onsets = [span.onset_sec for span in humanised(spans, Chance(seed))]
        assert all(before <= after for before, after in pairwise(onsets[10:]))


@settings(max_examples=60, deadline=None)
@given(tunes(), st.integers(0, 3), st.sampled_from(["straight", "swing"]), st.booleans())
def test_any_line_is_played_in_order_without_overlap_or_silence(
    tune: Tune, seed: int, feel: str, exact: bool
) -> None:
    notes = played(tune, seed=seed, feel=feel, exact=exact, laid_back=True)
    assert {note.source for note in notes} == set(range(len(tune.notes)))
    for note in notes:
        assert note.onset_sec >= 0
        assert note.duration_sec > 0
        assert 1 <= note.velocity <= 127
        assert all(abs(point.value) <= BEND_RANGE for point in note.bend)
        assert all(a.after_sec < b.after_sec for a, b in pairwise(note.bend))
    for before, after in pairwise(notes):
        assert before.onset_sec < after.onset_sec
        assert before.end_sec <= after.onset_sec + 0.031
