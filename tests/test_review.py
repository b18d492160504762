"""A take reviewed: what is written of it, its pictures and pages, its exercises, and progress over takes.

The player is made by formula (`listening_takes`): what he plays is known, so what the pages say of it can be checked
against that; pages are read back by lxml and pypdf, notation by music21.
"""

from __future__ import annotations

import io
import json
import re
from dataclasses import replace
from difflib import SequenceMatcher
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile
from lxml import etree, html
from pypdf import PdfReader

from fioritura.arrange.arrangement import Arrangement, arranged
from fioritura.arrange.arrangement_file import arrangement_to_json
from fioritura.cli import main
from fioritura.errors import OptionError, OtherTuneError, ReadError
from fioritura.lesson.edition import Edition, plain_score
from fioritura.listening.advice import Advice, Subject
from fioritura.listening.naming import SlipKind
from fioritura.listening.rows import Status
from fioritura.notation.engraving.typeset import pdf
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.review.document import ReviewSheet, review_document, sheet_of
from fioritura.review.exercise import exercise_for
from fioritura.review.page import review_page
from fioritura.review.pictures import pictures
from fioritura.review.played import passages
from fioritura.review.progress import TakeRow, joined, measures_of, read_rows, rows_text, shown, tune_digest
from fioritura.review.take_review import Review, review_take
from fioritura.tune import Tune
from fioritura.words import LANGUAGES, message, say, speaking, verbatim
from tests import listening_takes as sound
from tests.pseudo import plain_words
from tests.test_listen import HEARD, SETTING, wave_of
from tests.tunes import random_tune


@pytest.fixture(scope="module")
def tune() -> Tune:
    return random_tune(21, bars=8)


@pytest.fixture(scope="module")
def arrangement(tune: Tune) -> Arrangement:
    return arranged(tune, SETTING, only=HEARD)


@pytest.fixture(scope="module")
def ornamented(tune: Tune, arrangement: Arrangement) -> Review:
    return review_take(wave_of(tune, arrangement.rendition.line), asked=arrangement, name="friday.wav")


@pytest.fixture(scope="module")
def plain(tune: Tune, arrangement: Arrangement) -> Review:
    """The arrangement was asked for, the plain tune was played, its fifth note a tone too high, its tenth left out."""
    line = [replace(note, anchor=number) for number, note in enumerate(tune.notes)]
    line[4] = replace(line[4], pitch=tune.key.spell(line[4].pitch.midi + 2))
    del line[9]
    return review_take(wave_of(tune, tuple(line)), asked=arrangement, name="monday.wav")


@pytest.fixture(scope="module")
def sheet(plain: Review) -> ReviewSheet:
    return sheet_of(plain)


# What was played -----------------------------------------------------------------------------------------------


def test_what_was_played_is_written_as_it_was_asked(ornamented: Review, arrangement: Arrangement) -> None:
    """Of a take that plays the arrangement, the written notes are mostly the arrangement's, grace notes included."""
    (passage,) = passages(ornamented)
    written, below = (staff.line for staff in passage.score.staves)
    assert [note.pitch for note in below] == [note.pitch for note in arrangement.rendition.line]
    asked = [(note.onset_ticks, note.pitch.midi, len(note.graces)) for note in arrangement.rendition.line]
    played = [(note.onset_ticks, note.pitch.midi, len(note.graces)) for note in written]
    assert len(set(asked) & set(played)) >= 0.85 * len(asked)
    done = [row for row, notes in passage.figures if row.status is Status.DONE and notes]
    assert len(done) == ornamented.report.count(Status.DONE)


def test_slips_stand_where_they_were_made(plain: Review, tune: Tune) -> None:
    (passage,) = passages(plain)
    played, below = (staff.line for staff in passage.score.staves)
    kinds = {slip.kind for slip in plain.report.slips}
    assert {SlipKind.WRONG, SlipKind.LEFT_OUT} <= kinds
    assert [played[number].pitch.midi for number in passage.wrong] == [tune.notes[4].pitch.midi + 2]
    assert [below[number].anchor for number in passage.left_out] == [9]
    assert len(passage.missed) >= 3


def test_every_sign_that_was_heard_has_its_event(ornamented: Review) -> None:
    (passage,) = passages(ornamented)
    line, alignment = passage.score.staves[0].line, ornamented.naming.alignment
    for (number, grace), event in passage.events.items():
        pitch = line[number].pitch if grace is None else line[number].graces[grace]
        assert alignment.events[event].midi - alignment.semitones == pitch.midi
    assert len(passage.events) >= 0.9 * len(line)


# Pictures and pages --------------------------------------------------------------------------------------------


def test_pictures_are_drawings(plain: Review) -> None:
    found = pictures(plain)
    assert {"passage-1", "time", "tuning", "level"} == set(found)
    for drawings in found.values():
        for svg in drawings:
            root = etree.fromstring(svg.encode())
            assert root.tag.endswith("svg")
    traces = "".join(found["passage-1"]).count('stroke-linecap="round" stroke-linejoin="round"')
    assert traces >= 0.9 * len(plain.report.notes)


def test_the_page_says_what_the_report_says(sheet: ReviewSheet) -> None:
    page: Any = html.fromstring(review_page(sheet))
    text = page.text_content()
    report = sheet.review.report
    assert all(say(one.title) in text and say(one.finding) in text for one in sheet.review.advice)
    assert all(say(slip.words) in text for slip in report.slips)
    assert text.count("not heard") >= report.count(Status.MISSED)
    ids = page.xpath("//@id")
    assert len(ids) == len(set(ids))
    assert all(name.startswith("#") for name in page.xpath("//@src") + page.xpath("//*/@*[name()='xlink:href']"))


def test_the_print_says_it_too(sheet: ReviewSheet) -> None:
    pages = PdfReader(io.BytesIO(pdf(review_document(sheet)))).pages
    text = " ".join("\n".join(page.extract_text() for page in pages).split())
    assert "What to practise next" in text
    assert all(say(one.title) in text for one in sheet.review.advice)


def test_each_subject_has_its_exercise(plain: Review, ornamented: Review) -> None:
    missed = next(row for row in plain.report.figures if row.status is Status.MISSED)
    row = next(note for note in plain.report.notes if note.cents is not None)
    nothing = (verbatim(""),) * 3
    cases = [
        Advice(Subject.ORNAMENT, *nothing, (missed.bar,), missed.technique),
        Advice(Subject.NOTES, *nothing, (2,)),
        Advice(Subject.PITCH, *nothing, note=row.pitch),
        Advice(Subject.TIME, *nothing),
    ]
    for advice in cases:
        exercise = exercise_for(plain, advice, 178.0)
        assert exercise is not None and exercise.pieces, advice
        assert 20 <= exercise.start_tempo < plain.report.timing.quarters_per_minute
    assert exercise_for(plain, Advice(Subject.LEVEL, *nothing), 178.0) is None


def test_the_tempi_of_an_exercise_lead_to_the_one_that_was_asked(plain: Review, arrangement: Arrangement) -> None:
    """The take was at 84; asked at 132, the ladder ends there, and begins where the take lets it."""
    asked = replace(arrangement, setting=arrangement.setting.changed(tempo=132.0))
    review = replace(plain, asked=asked)
    exercise = exercise_for(review, plain.advice[0], 178.0)
    assert exercise is not None
    assert exercise.goal_tempo == 132
    assert exercise.start_tempo <= 0.75 * plain.report.timing.quarters_per_minute + 1


# Languages -----------------------------------------------------------------------------------------------------

STOP_WORDS = {"the", "and", "with", "what", "bar", "of", "your", "to", "in", "beat", "not", "is"}


def _texts(review: Review, rows: tuple[TakeRow, ...] = ()) -> tuple[str, str]:
    """The text of a review on the screen, labels for those who can't see included, and in print."""
    sheet = sheet_of(review, rows)
    page: Any = html.fromstring(review_page(sheet))
    for other in page.xpath("//style | //desc"):  # what stands in the music is told by the engraving
        other.drop_tree()
    screen = " ".join([*page.itertext(), *page.xpath("//@aria-label")])
    pages = PdfReader(io.BytesIO(pdf(review_document(sheet)))).pages
    return screen, "\n".join(each.extract_text() for each in pages)


def _rows(review: Review) -> tuple[TakeRow, ...]:
    digest, measures = tune_digest(review.tune), measures_of(review.report)
    better = {id: value + 1 for id, value in measures.items()}
    return TakeRow("1", "2026-01-01", digest, "00", measures), TakeRow("2", "2026-01-02", digest, "01", better)


@pytest.mark.parametrize("which", ["plain", "ornamented"])
def test_every_word_of_a_review_comes_through_the_texts(which: str, request: pytest.FixtureRequest) -> None:
    review: Review = request.getfixturevalue(which)
    with speaking("pseudo"):
        texts = _texts(review, _rows(review))
    allowed = [review.name, review.tune.title, "A Hz ms dB cents"]
    for text in texts:
        assert plain_words(text, allowed) == set()


def test_a_review_is_written_in_each_language(plain: Review) -> None:
    found = {}
    for language in LANGUAGES:
        with speaking(language):
            screen, print_ = _texts(plain, _rows(plain))
            data = json.dumps(plain.to_dict())
        assert say_in(language, "review-next") in screen
        assert say_in(language, "review-next") in " ".join(print_.split())
        found[language] = {"screen": screen, "data": data}
    assert len({each["screen"] for each in found.values()}) == len({each["data"] for each in found.values()}) == 4
    own = re.findall(r"\w+", found["en"]["screen"].lower())
    assert set(own) >= STOP_WORDS
    for language in LANGUAGES[1:]:
        text = found[language]["screen"]
        assert set(re.findall(r"\w+", text.lower())) & (STOP_WORDS - COGNATES[language]) == set()


COGNATES = {"de": {"in"}, "fr": set(), "es": set()}
"""Words that a language shares with English."""


def say_in(language: str, id: str) -> str:
    with speaking(language):
        return say(message(id))


# Refusals ------------------------------------------------------------------------------------------------------


def test_another_tune_is_refused_in_plain_words(tune: Tune) -> None:
    other = random_tune(9)
    with pytest.raises(OtherTuneError, match=r"does not sound like .* notes were heard, from .* Give the tune"):
        review_take(wave_of(tune, tune.notes), other, name="take.wav")


def test_two_players_noise_and_silence_are_refused(tune: Tune) -> None:
    wave = wave_of(tune, tune.notes)
    lower = wave_of(tune, tuple(replace(note, pitch=tune.key.step(note.pitch, -2)) for note in tune.notes))
    size = min(wave.size, lower.size)
    noise = np.random.default_rng(0).normal(0, 0.1, size)
    for spoiled, words in ((wave[:size] + lower[:size], "parts"), (noise, "noise"), (np.zeros(size), "Hardly")):
        with pytest.raises(ReadError, match=words):
            review_take(0.5 * spoiled, tune)


def test_clipping_is_said_and_the_report_given(tune: Tune) -> None:
    wave = wave_of(tune, tune.notes)
    loud = np.clip(4 * wave / np.abs(wave).max(), -1, 1)
    review = review_take(loud, tune)
    assert [finding.kind.value for finding in review.take.findings] == ["clipping"]
    assert "cut off" in review_page(sheet_of(review))


def test_what_can_not_be_asked(tune: Tune) -> None:
    with pytest.raises(OptionError, match="Which tune"):
        review_take(np.zeros(100))
    with pytest.raises(OptionError, match="Level 6"):
        review_take(np.zeros(100), tune, level=6)


# Progress ------------------------------------------------------------------------------------------------------


def test_rows_are_kept_by_tune_and_sound(tune: Tune, tmp_path: Path) -> None:
    here, other = tune_digest(tune), tune_digest(random_tune(9))
    first = TakeRow("a.wav", "2026-01-01", here, "00", {"tempo": 80.0})
    again = replace(first, measures={"tempo": 90.0})
    elsewhere = TakeRow("b.wav", "2026-01-02", other, "01", {})
    rows = joined(joined(joined((), first), elsewhere), again)
    assert rows == (elsewhere, again)
    assert shown(rows, tune) == (again,)
    path = tmp_path / "progress.json"
    assert read_rows(path) == ()
    path.write_text(rows_text(rows), encoding="utf-8")
    assert read_rows(path) == rows
    path.write_text('{"not": "rows"}', encoding="utf-8")
    with pytest.raises(ReadError, match="earlier takes"):
        read_rows(path)


def test_takes_side_by_side(
    tune: Tune, arrangement: Arrangement, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Monday plain, Friday ornamented: the progress goes up, and a third take finds the two in the folder."""
    asked = tmp_path / "arrangement.json"
    asked.write_text(arrangement_to_json(arrangement), encoding="utf-8")
    for name, line in (("monday", tune.notes), ("friday", arrangement.rendition.line)):
        soundfile.write(tmp_path / f"{name}.wav", wave_of(tune, line), sound.RATE)
    takes = [str(tmp_path / f"{name}.wav") for name in ("monday", "friday")]
    out = tmp_path / "report"
    assert main(["listen", takes[0], "--asked", str(asked), "--out", str(out), "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)["progress"]) == 1
    assert main(["listen", takes[1], "--asked", str(asked), "--out", str(out), "--json"]) == 0
    rows = json.loads(capsys.readouterr().out)["progress"]
    assert [row["take"] for row in rows] == ["monday.wav", "friday.wav"]
    assert rows[0]["measures"]["ornaments"] <= 10 < 70 <= rows[1]["measures"]["ornaments"]
    assert "Progress" in (out / "report.html").read_text(encoding="utf-8")
    assert main(["listen", *takes, "--asked", str(asked)]) == 0
    assert "2 takes of this tune. Better since the first: ornaments that came out" in capsys.readouterr().out


# Writing down --------------------------------------------------------------------------------------------------


def test_a_take_is_written_down(tune: Tune, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """music21 reads the notation; its pitches are those that were played, a major sixth up for the alto saxophone."""
    from music21 import converter

    soundfile.write(tmp_path / "take.wav", wave_of(tune, tune.notes), sound.RATE)
    out = tmp_path / "out"
    command = [
        "transcribe",
        str(tmp_path / "take.wav"),
        "--tempo",
        "84",
        "--key",
        str(tune.key.tonic),
        "--out",
        str(out),
    ]
    assert main([*command, "--player", "alto-sax", "--json"]) == 0
    record = json.loads(capsys.readouterr().out)
    assert record["quarters_per_minute"] == pytest.approx(84, rel=0.03)
    played = [note.pitch.midi for note in tune.notes]
    score = converter.parse(out / "transcription.musicxml").toSoundingPitch()
    read = [note.pitch.midi for note in score.flatten().notes if not note.duration.isGrace and not _goes_on(note)]
    assert SequenceMatcher(None, played, read, autojunk=False).ratio() > 0.9
    assert (out / "transcription.pdf").read_bytes().startswith(b"%PDF")
    assert (out / "transcription.mid").read_bytes().startswith(b"MThd")


def _goes_on(note: object) -> bool:
    tie = getattr(note, "tie", None)
    return tie is not None and tie.type in ("stop", "continue")


@pytest.mark.parametrize("wrong", [["--key", "H"], ["--metre", "5/7"], ["--tempo", "1000"], ["--key", "G# major"]])
def test_what_can_not_be_written(
    wrong: list[str], tune: Tune, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    soundfile.write(tmp_path / "take.wav", wave_of(tune, tune.notes[:8]), sound.RATE)
    assert main(["transcribe", str(tmp_path / "take.wav"), "--out", str(tmp_path / "out"), *wrong]) == 2
    assert capsys.readouterr().err.startswith("fioritura: ")
    assert not (tmp_path / "out").exists()


def test_a_tune_from_a_file_will_do(tune: Tune, arrangement: Arrangement, tmp_path: Path) -> None:
    (tmp_path / "tune.musicxml").write_bytes(write_musicxml(plain_score(Edition(arrangement.rendition))))
    soundfile.write(tmp_path / "take.flac", wave_of(tune, tune.notes), sound.RATE)
    command = ["listen", str(tmp_path / "take.flac"), "--tune", str(tmp_path / "tune.musicxml")]
    assert main([*command, "--out", str(tmp_path / "report"), "--player", "flute"]) == 0
    record = json.loads((tmp_path / "report" / "report.json").read_text(encoding="utf-8"))
    assert {"figures", "notes", "tuning_cents", "advice"} <= set(record)
