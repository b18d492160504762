"""The whole ear at work: sound made by formula (`listening_takes`), heard, aligned, named and reported."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import soundfile

from fioritura.arrange.arrangement import arranged
from fioritura.arrange.arrangement_file import arrangement_to_json
from fioritura.cli import main
from fioritura.lesson.edition import Edition, plain_score
from fioritura.listening.hear import hear
from fioritura.listening.report import report_on
from fioritura.listening.rows import Status
from fioritura.notation.musicxml.writer import write_musicxml
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.tune import Note, Tune
from tests import listening_takes as sound
from tests import played_lines as lines
from tests.tunes import random_tune

HEARD = ["graces", "turns", "runs", "repetitions", "neighbours", "passing-notes"]
"""Families that a recording tells."""

SETTING = Setting(Player.of("alto-sax", 4), 84.0)


@pytest.fixture(scope="module")
def tune() -> Tune:
    return random_tune(21, bars=12)


def wave_of(tune: Tune, line: tuple[Note, ...], cents: float = 0.0) -> np.ndarray:
    """The line as the program performs it, on a saxophone made by formula, in a room."""
    take = lines.take_of(tune, line, SETTING, 1)
    truth = []
    for number, note in enumerate(take.notes):
        before = take.notes[number - 1] if number else None
        is_joined = before is not None and note.onset_sec - before.offset_sec < 0.02 and before.midi != note.midi
        is_quick = note.duration_sec < 0.15 or (before is not None and before.duration_sec < 0.15)
        truth.append(
            sound.Truth(
                note.onset_sec + 0.3,
                note.offset_sec + 0.3,
                note.midi,
                is_tongued=not (is_joined and is_quick),
                level_db=-14.0 + 4 * ((number % 4) / 3),
            )
        )
    rng = np.random.default_rng(1)
    wave = sound.render(sound._joined(truth), sound.TIMBRES["saxophone"], rng, tuning_cents=cents)
    return sound.normalised(sound.room(wave, rng))


@pytest.fixture(scope="module")
def files(tune: Tune, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("takes")
    arrangement = arranged(tune, SETTING, only=HEARD)
    paths = {name: folder / name for name in ("arrangement.json", "tune.musicxml", "other.musicxml")}
    paths["arrangement.json"].write_text(arrangement_to_json(arrangement), encoding="utf-8")
    paths["tune.musicxml"].write_bytes(write_musicxml(plain_score(Edition(arrangement.rendition))))
    other = replace(arrangement.rendition, tune=random_tune(9), figures=())
    paths["other.musicxml"].write_bytes(write_musicxml(plain_score(Edition(other))))
    waves = {
        "ornamented.wav": wave_of(tune, arrangement.rendition.line, cents=25.0),
        "plain.flac": wave_of(tune, tune.notes),
        "silence.wav": np.zeros(44100),
    }
    for name, wave in waves.items():
        paths[name] = folder / name
        soundfile.write(paths[name], wave, sound.RATE)
    return paths


def test_an_arrangement_is_listened_to(files: dict[str, Path], capsys: pytest.CaptureFixture[str]) -> None:
    """A player 25 cents sharp who plays all that was asked."""
    out = files["ornamented.wav"].parent / "report"
    command = ["listen", str(files["ornamented.wav"]), "--asked", str(files["arrangement.json"]), "--json"]
    assert main([*command, "--out", str(out)]) == 0
    record = json.loads(capsys.readouterr().out)
    kept = json.loads((out / "report.json").read_text(encoding="utf-8"))
    assert kept == {name: value for name, value in record.items() if name not in ("files", "progress", "heard")}
    assert record["heard"] and set(record["heard"][0]) == {"onset_sec", "offset_sec", "midi", "cents", "confidence"}
    assert all(Path(name).stat().st_size for name in record["files"])
    assert record["tuning_cents"] == pytest.approx(25, abs=4)
    done = [row for row in record["figures"] if row["status"] == "done"]
    asked = [row for row in record["figures"] if row["status"] != "added"]
    assert len(asked) >= 5
    assert len(done) >= 0.8 * len(asked)
    assert len(record["figures"]) - len(asked) <= 2
    assert all({"technique", "bar", "beat", "confidence"} <= set(row) for row in record["figures"])
    assert [one["subject"] for one in record["advice"]] == ["pitch"]
    assert record["headline"].startswith("The whole take is 2")
    assert any("25 cents sharp" in one["finding"] or "cents sharp of A" in one["finding"] for one in record["advice"])
    assert record["timing"]["quarters_per_minute"] == pytest.approx(84, rel=0.03)


def test_a_plain_take_has_hardly_a_figure(tune: Tune, files: dict[str, Path]) -> None:
    naming, report = report_on(tune, hear(files["plain.flac"]))
    assert naming.alignment.is_this_tune
    assert report.count(Status.ADDED) <= 1
    assert sum(note.is_right for note in report.notes) >= 0.97 * len(tune.notes)


def test_what_is_said_for_people(files: dict[str, Path], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["listen", str(files["plain.flac"]), "--tune", str(files["tune.musicxml"])]) == 0
    said = capsys.readouterr().out
    assert "To practise next:" in said
    assert "  1. " in said
    assert "  2. " not in said


def test_what_is_refused(files: dict[str, Path], capsys: pytest.CaptureFixture[str]) -> None:
    other = ["listen", str(files["plain.flac"]), "--tune", str(files["other.musicxml"])]
    assert main(other) == 3
    assert main(["listen", str(files["silence.wav"]), "--tune", str(files["tune.musicxml"])]) == 2
    assert main(["listen", str(files["plain.flac"])]) == 2
    assert main(["listen", str(files["tune.musicxml"]), "--tune", str(files["tune.musicxml"])]) == 2
    errors = capsys.readouterr().err.splitlines()
    assert len(errors) == 4
    assert all(line.startswith("fioritura: ") for line in errors)
