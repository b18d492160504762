"""The first sentence names what went wrong, and nothing false is said: takes with one fault each, their truth known.

Notes are given as a perfect ear would hear them; `benchmarks/fault_bench.py` plays them on recorded notes in rooms, on more
tunes, and prints how sure the claims are against how often they are right. The least shares are those asked of the bench.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from fioritura.listening.advice import MOST, Subject, advice_on, headline_of, praise_for
from fioritura.listening.happening import LEAST, Kind
from fioritura.listening.report import report_on
from fioritura.listening.rows import Report, Status
from fioritura.players.instruments import instrument_named
from fioritura.words import LANGUAGES, say, speaking
from tests.faulty_takes import FAULTS, Truth, fault_takes, fault_tunes, faulty_take, heard_perfectly
from tests.played_lines import ALTO
from tests.report_checker import bare, is_true, names_the_fault, sentences

SEED = 101


def reported(truth: Truth) -> Report:
    return report_on(truth.tune, heard_perfectly(truth), truth.asked, instrument=ALTO, tempo=truth.tempo)[1]


@pytest.fixture(scope="module")
def reports() -> list[tuple[Truth, Report]]:
    """Every kind of fault on two tunes of the test half."""
    return [(truth, reported(truth)) for truth in fault_takes("test", 2, SEED)]


def test_the_first_sentence_names_the_fault(reports: list[tuple[Truth, Report]]) -> None:
    missed = [(truth.kind, say(headline_of(found))) for truth, found in reports if not names_the_fault(found, truth)]
    assert len({truth.kind for truth, _ in reports}) >= 28
    assert len(missed) <= 0.1 * len(reports), missed


def test_nothing_false_is_said(reports: list[tuple[Truth, Report]]) -> None:
    false = [
        (truth.kind, say(said))
        for truth, found in reports
        for said in sentences(found, headline_of(found), praise_for(found))
        if not is_true(said, truth)
    ]
    assert len(false) <= 0.05 * len(reports), false


def test_a_cause_is_said_once(reports: list[tuple[Truth, Report]]) -> None:
    """A forgotten signature is no heap of wrong notes, a skipped bar no heap of notes left out, a stop no change of tempo."""
    effects = {
        Kind.KEY: {Kind.WRONG, Kind.TRANSPOSED},
        Kind.SKIPPED: {Kind.LEFT_OUT},
        Kind.OCTAVE: {Kind.WRONG},
        Kind.STOP: {Kind.DRIFT, Kind.SPAN, Kind.RHYTHM},
        Kind.PART: {Kind.LEFT_OUT},
    }
    for truth, found in reports:
        kinds = {one.kind for one in found.happenings}
        for cause, blamed in effects.items():
            assert not (cause in kinds and kinds & blamed), (truth.kind, kinds)


def test_every_asked_note_is_counted(reports: list[tuple[Truth, Report]]) -> None:
    for truth, found in reports:
        if truth.kind == "wrongs":
            assert (found.right, found.wanted) == (len(truth.tune.notes) - 4, len(truth.tune.notes))


def test_what_was_played_as_asked_is_not_called_the_players_own(reports: list[tuple[Truth, Report]]) -> None:
    for truth, found in reports:
        if truth.kind == "as-asked":
            missed = [row for row in found.figures if row.status is Status.MISSED]
            assert found.count(Status.ADDED) == 0
            assert all(row.confidence < LEAST for row in missed), missed
            assert headline_of(found).id == ("praise-ornaments" if missed else "praise-all-ornaments")
        if truth.kind == "none":
            assert found.happenings == ()
            assert [one.subject for one in advice_on(found)] == [Subject.NEXT_STEP]


def test_advice_is_of_what_happened_and_no_more(reports: list[tuple[Truth, Report]]) -> None:
    for truth, found in reports:
        advice = advice_on(found)
        assert 1 <= len(advice) <= MOST
        if found.happenings:
            assert {one.finding for one in advice} <= {one.words for one in found.happenings}
        assert all(one.confidence >= LEAST for one in found.happenings)
        if truth.rendition is None:
            assert not any(one.kind in (Kind.GRACES, Kind.ORNAMENTS) for one in found.happenings)


def test_each_sentence_is_said_in_each_language(reports: list[tuple[Truth, Report]]) -> None:
    said = {bare(one.words).id: one.words for _, found in reports for one in found.happenings}
    for words in said.values():
        texts = set()
        for language in LANGUAGES:
            with speaking(language):
                text = say(words)
            assert text[0].isupper() or not text[0].isalpha(), text
            assert text.endswith("."), text
            texts.add(text)
        assert len(texts) == len(LANGUAGES)


def test_a_forgotten_signature_is_that_of_the_part() -> None:
    """Concert D is two sharps, five for the alto saxophone: who reads at concert pitch can forget two alone."""
    tune = next(one for one in fault_tunes("test", 6) if one.key.fifths)
    truth = faulty_take(tune, "key", SEED)
    assert truth is not None
    assert names_the_fault(reported(truth), truth)
    concert = report_on(tune, heard_perfectly(truth), instrument=instrument_named("concert"))[1]
    assert headline_of(concert).id != "happened-key" or concert.happenings[0].count < len(truth.fault.wrong)


def test_sixty_cents_flat_is_flat_and_in_the_key() -> None:
    """A quarter tone and more: the nearest semitones are a semitone low, 40 cents sharp."""
    tune = fault_tunes("test", 1)[0]
    truth = faulty_take(tune, "none", SEED)
    assert truth is not None
    flat = replace(truth, tones=tuple(replace(tone, cents=tone.cents - 60) for tone in truth.tones))
    found = reported(flat)
    assert found.semitones == 0
    assert found.tuning_cents == pytest.approx(-60, abs=9)
    assert headline_of(found).id == "advice-tuning-finding"


def test_faults_are_of_twenty_kinds_and_more() -> None:
    assert len(FAULTS) - len({"none", "as-asked", "own"}) >= 20
