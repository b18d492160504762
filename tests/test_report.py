"""The report and its advice: what is put into a take by formula comes out as figures.

A player who is 25 cents sharp, one note 20 cents flat, a tempo that grows by a tenth, a swing of 2 to 1, an ornament
left out: each is built into an otherwise perfect take and must be told, and the perfect take must not be blamed.
"""

from __future__ import annotations

import json
import random
from dataclasses import replace

import pytest

from fioritura.arrange.arranger import ornament
from fioritura.listening.advice import Subject, advice_on, headline_of, praise_for
from fioritura.listening.happening import Kind
from fioritura.listening.notes import Attack, PlayedNote, Take, Vibrato
from fioritura.listening.report import report_on
from fioritura.listening.rows import Report, Status
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.techniques.inflection import GHOST_NOTE, VIBRATO
from fioritura.techniques.run import RUN_SCALE
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Mark, Tune
from fioritura.words import say, speaking
from tests import played_lines as lines
from tests.faulty_takes import HEARD
from tests.tunes import random_tune

ALTO = instrument_named("alto-sax")


def plain_take(
    tune: Tune, *, rate: float = 2000.0, jitter: float = 0.0, share: float = 0.5, drift: float = 0.0
) -> Take:
    """The plain tune: `rate` ticks a second that grow by `drift` to the end, eighths swung to `share` of the beat."""
    dice = random.Random(1)
    total = tune.duration_ticks

    def seconds(ticks: float) -> float:
        beat, part = divmod(ticks, QUARTER)
        swung = part * 2 * share if part <= EIGHTH else QUARTER * share + (part - EIGHTH) * 2 * (1 - share)
        context = beat * QUARTER + swung
        return context / rate * (1 - drift * context / total / 2)

    notes = []
    for number, note in enumerate(tune.notes):
        onset = seconds(note.onset_ticks) + dice.gauss(0, jitter)
        level = -20.0 + 5.0 * (number % 3 - 1)
        length = seconds(note.end_ticks) - seconds(note.onset_ticks)
        cents = 100.0 * (note.pitch.midi - 69)
        notes.append(PlayedNote(onset, onset + 0.9 * length, cents, note.pitch.midi, level, Attack.TONGUED))
    return Take(tuple(notes), notes[-1].offset_sec, 0.0)


def listened(tune: Tune, take: Take, asked: tuple[Figure, ...] = ()) -> Report:
    return report_on(tune, take, asked, instrument=ALTO)[1]


@pytest.fixture(scope="module")
def tune() -> Tune:
    return random_tune(21, bars=16)


def test_a_perfect_take_is_not_blamed(tune: Tune) -> None:
    report = listened(tune, plain_take(tune))
    assert report.likeness > 0.95
    assert all(note.is_right for note in report.notes)
    assert (report.figures, report.slips) == ((), ())
    assert report.timing.spread_ms < 5
    assert abs(report.timing.drift_percent) < 1
    assert report.timing.quarters_per_minute == pytest.approx(60 * 2000 / QUARTER, rel=0.01)
    advice = advice_on(report)
    assert report.happenings == ()
    assert [one.subject for one in advice] == [Subject.NEXT_STEP]
    assert praise_for(report).id == "praise-notes-safe"
    assert headline_of(report) == praise_for(report)


def test_the_report_is_json(tune: Tune) -> None:
    data = json.loads(json.dumps(listened(tune, plain_take(tune)).to_dict()))
    assert {"figures", "notes", "tuning_cents", "timing", "level", "slips"} <= set(data)
    assert len(data["notes"]) == len(tune.notes)


def test_tuning_is_told_in_whole_and_by_note(tune: Tune) -> None:
    sharp = plain_take(tune)
    flat_midi = max({n.midi for n in sharp.notes}, key=lambda midi: sum(n.midi == midi for n in sharp.notes))
    notes = tuple(
        replace(note, pitch_cents=note.pitch_cents + 25.0 - 36.0 * (note.midi == flat_midi)) for note in sharp.notes
    )
    report = listened(tune, replace(sharp, notes=notes, tuning_cents=25.0))
    rows = {row.name: row.cents for row in report.by_note}
    name = ALTO.written(next(n.pitch for n in tune.notes if n.pitch.midi == flat_midi))
    assert rows[name] == pytest.approx(-36, abs=0.1)
    assert sorted(rows.values())[1] == pytest.approx(0, abs=0.1)
    told = {one.kind: one for one in report.happenings}
    assert told[Kind.TUNING].amount == pytest.approx(25, abs=0.1)
    assert told[Kind.NOTE].note == name
    assert told[Kind.NOTE].amount == pytest.approx(-36, abs=0.1)
    assert f"{name.display} is 36 cents flat against your other notes" in say(told[Kind.NOTE].words)
    assert len([one for one in advice_on(report) if one.subject is Subject.PITCH]) == 1


def test_a_growing_tempo_is_told(tune: Tune) -> None:
    """Seconds shrink by `drift` times the share of the tune: the rate at the end is 1 / (1 − drift) of the first."""
    report = listened(tune, plain_take(tune, drift=0.12))
    assert 7 < report.timing.drift_percent < 16
    assert Subject.TIME in [one.subject for one in advice_on(report)]
    assert listened(tune, plain_take(tune, drift=-0.12)).timing.drift_percent < -6


@pytest.mark.parametrize("ratio", [1.5, 2.0])
def test_swing_is_measured(tune: Tune, ratio: float) -> None:
    report = listened(tune, plain_take(tune, share=ratio / (ratio + 1)))
    assert report.timing.swing_ratio == pytest.approx(ratio, rel=0.08)
    assert report.figures == ()
    assert headline_of(report).id == "advice-straight-finding"
    swung = report_on(tune, plain_take(tune, share=ratio / (ratio + 1)), instrument=ALTO, feel="swing")[1]
    assert swung.happenings == ()


def test_stray_notes_widen_the_spread(tune: Tune) -> None:
    """Onsets off by a normal error of 50 ms; a smooth map takes up a little of it."""
    assert 30 < listened(tune, plain_take(tune, jitter=0.05)).timing.spread_ms < 60


def test_asked_and_done_asked_and_missed_added(tune: Tune) -> None:
    """The arrangement asks for its figures; one is left out of the take, and one that was not asked is played."""
    rendition = ornament(tune, Setting(Player.of("alto-sax", 4), 90.0), only=HEARD)
    sounding = [figure for figure in rendition.figures if not figure.marks]
    assert len(sounding) >= 4
    left_out, unasked = next(one for one in sounding if one.technique == RUN_SCALE.id), sounding[2]
    played = tuple(figure for figure in rendition.figures if figure is not left_out)
    asked = tuple(figure for figure in rendition.figures if figure is not unasked)
    line = replace(rendition, figures=played).line
    report = listened(tune, lines.take_of(tune, line, rendition.setting, 2), asked)
    by_status = {status: [row.technique for row in report.figures if row.status is status] for status in Status}
    assert left_out.technique in by_status[Status.MISSED]
    assert unasked.technique in by_status[Status.ADDED]
    assert len(by_status[Status.MISSED]) <= 2
    assert report.count(Status.DONE) >= len(asked) - 2
    assert any(one.technique == left_out.technique for one in advice_on(report))
    assert str(report.count(Status.DONE)) in say(praise_for(report))


def test_vibrato_and_ghost_notes_are_asked_of_the_sound(tune: Tune) -> None:
    take = plain_take(tune)
    long_note = max(range(len(tune.notes)), key=lambda n: tune.notes[n].duration_ticks)
    figures = tuple(
        Figure(f"{technique}", (index,), 2 * index, 2 * index + 1, onset, onset, marks=(mark,))
        for technique, index, mark in ((VIBRATO.id, long_note, Mark.VIBRATO), (GHOST_NOTE.id, 6, Mark.GHOST))
        for onset in [tune.notes[index].onset_ticks]
    )
    assert listened(tune, take, figures).count(Status.MISSED) == 2
    notes = list(take.notes)
    notes[long_note] = replace(notes[long_note], vibrato=Vibrato(5.2, 18.0))
    notes[6] = replace(notes[6], level_db=-36.0)
    assert listened(tune, replace(take, notes=tuple(notes)), figures).count(Status.DONE) == 2


def test_wrong_notes_come_before_ornaments(tune: Tune) -> None:
    take = plain_take(tune)
    notes = list(take.notes)
    for number in (5, 9, 10, 14, 20):
        notes[number] = replace(notes[number], midi=notes[number].midi + 1)
    report = listened(tune, replace(take, notes=tuple(notes)))
    assert len(report.slips) == 5
    first = advice_on(report)[0]
    assert first.subject is Subject.NOTES
    assert str(len(report.slips)) in say(first.finding)


def test_slips_are_named_as_the_player_reads_them_and_nothing_is_called_safe(tune: Tune) -> None:
    """One note a semitone high on the alto saxophone, which reads a major sixth above what sounds."""
    take = plain_take(tune)
    notes = list(take.notes)
    for number in (5, 9, 10):
        notes[number] = replace(notes[number], midi=notes[number].midi + 1)
    report = listened(tune, replace(take, notes=tuple(notes)))
    written = [slip.words["written"] for slip in report.slips]
    assert written == [ALTO.written(tune.notes[number].pitch) for number in (5, 9, 10)]
    assert all((slip.position.bar, float(slip.position.beat)) == (slip.bar, slip.beat // 1) for slip in report.slips)
    assert praise_for(report).id != "praise-notes-safe"
    added = replace(listened(tune, take), slips=report.slips[:1] * 4)
    assert praise_for(added).id == "praise-notes"


def test_the_record_of_a_report_is_in_the_language_spoken(tune: Tune) -> None:
    report = listened(tune, plain_take(tune))
    with speaking("de"):
        data = json.loads(json.dumps(report.to_dict()))
    assert {row["name"] for row in data["by_register"]} <= {"tief", "Mittellage", "hoch"}
    assert data["timing"]["beats"][0]["name"] == "Schlag 1"
    assert all(isinstance(note["pitch"], str) for note in data["notes"])


def test_uneven_runs_are_told() -> None:
    """A scale run whose notes last 60 and 180 ms by turns has a spread of 50 percent (arithmetic)."""
    from tests.tunes import line_of

    tune = line_of("C4/3 C5/1 C5/4 A4/2 G4/2 E4/4 F4/2 D4/2 C4/4", chords="C")
    setting = Setting(Player.of("concert", 5), 60.0)
    rendition = ornament(tune, setting, only=[RUN_SCALE.id])
    figure = next(one for one in rendition.figures if one.technique == RUN_SCALE.id)
    take = lines.take_of(tune, replace(rendition, figures=(figure,)).line, setting, 0)
    _, even = report_on(tune, take, (figure,))
    (row,) = even.evenness
    assert row.spread_percent < 20
    first = min(
        range(len(take.notes)), key=lambda n: abs(take.notes[n].onset_sec - figure.notes[0].onset_ticks / QUARTER)
    )
    notes = list(take.notes)
    start = notes[first].onset_sec
    step = (notes[first + len(figure.notes)].onset_sec - start) / len(figure.notes)
    for context in range(len(figure.notes)):
        onset = start + step * (context + (0.5 if context % 2 else 0.0))
        notes[first + context] = replace(notes[first + context], onset_sec=onset, offset_sec=onset + step / 2)
    _, uneven = report_on(tune, replace(take, notes=tuple(notes)), (figure,))
    (row,) = uneven.evenness
    assert row.spread_percent == pytest.approx(50, abs=12)
    assert Subject.EVENNESS in [one.subject for one in advice_on(uneven)]


def test_another_tune_gives_an_empty_report(tune: Tune) -> None:
    naming, report = report_on(random_tune(5), plain_take(tune))
    assert not naming.alignment.is_this_tune
    assert (report.notes, report.figures, report.passages) == ((), (), 0)
