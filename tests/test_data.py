"""Notes as data: the same fields in `figures.json`, `spots --json` and the arrangement, with the same values."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from fioritura.cli import main
from fioritura.techniques.grace import LOWER_GRACE_SEMITONE

TUNE = 'X:1\nT:Data\nM:4/4\nL:1/4\nQ:1/4=100\nK:C\nG|"C"CDEF|"G7"GAB2|"Am"cBA2|"C"c3|]\n'
FIELDS = {"pitch", "midi", "onset_quarters", "duration_quarters", "bar", "beat", "place", "chord"}
NAMES = ["C", "D", "E", "F", "G", "A", "B"]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "tune.abc").write_text(TUNE, encoding="utf-8")
    return tmp_path


def listed(folder: Path, capsys: pytest.CaptureFixture[str]) -> list[dict[str, Any]]:
    assert main(["spots", str(folder / "tune.abc"), "--player", "concert", "--json"]) == 0
    found: list[dict[str, Any]] = json.loads(capsys.readouterr().out)
    return found


def is_right(note: dict[str, Any]) -> bool:
    """Bar, beat and chord follow from the onset: a pickup of one quarter, then bars of four."""
    bar, beat = divmod(note["onset_quarters"] + 3, 4)
    chord = {0: None, 1: "C", 2: "G7", 3: "Am", 4: "C"}[bar]
    letter = NAMES.index(note["pitch"][0])
    alter = note["pitch"].count("#") - note["pitch"][1:].count("b")
    midi = 12 * (int(note["pitch"][-1]) + 1) + [0, 2, 4, 5, 7, 9, 11][letter] + alter
    return (note["bar"], note["chord"], note["midi"]) == (bar, chord, midi) and abs(note["beat"] - beat - 1) < 1e-5


def test_spots_have_notes_and_places(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rows = listed(folder, capsys)
    notes = [note for row in rows for note in row["notes"]]
    assert len(notes) > 50
    assert all(note.keys() >= FIELDS | {"kind", "anchor"} and is_right(note) for note in notes)
    assert all((note["duration_quarters"] == 0) == (note["kind"] == "grace") for note in notes)
    assert any(row["place"] == "bar 2, beat 3" and row["chord"] == "G7" for row in rows)


def test_spots_show_their_pitches(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    argv = ["spots", str(folder / "tune.abc"), "--player", "concert", "--only", LOWER_GRACE_SEMITONE.id, "--language"]
    assert main([*argv, "en"]) == 0
    assert "Grace note a semitone below (B3/): " in capsys.readouterr().out
    assert main([*argv, "de"]) == 0
    assert "Vorschlag einen Halbton tiefer (H3/): " in capsys.readouterr().out


def test_figures_and_arrangement_say_the_same(folder: Path) -> None:
    argv = ["ornament", str(folder / "tune.abc"), "--player", "alto-sax", "--level", "4", "--formats", "json"]
    assert main([*argv, "--out", str(folder / "out")]) == 0
    figures = json.loads((folder / "out/figures.json").read_text(encoding="utf-8"))
    arrangement = json.loads((folder / "out/arrangement.json").read_text(encoding="utf-8"))
    assert figures and len(figures) == len(arrangement["figures"])
    for told, kept in zip(figures, arrangement["figures"], strict=True):
        mains = [note for note in told["notes"] if note["kind"] == "note"]
        assert all(note.keys() >= FIELDS and is_right(note) for note in told["notes"])
        fields = ("pitch", "onset_quarters", "duration_quarters", "bar", "beat", "chord")
        for note, same in zip(mains, kept["notes"], strict=True):
            assert [note[name] for name in fields] == [same[name] for name in fields]
    for note in arrangement["tune"]["notes"]:
        assert note["ticks"] == [round(1680 * note[name]) for name in ("onset_quarters", "duration_quarters")]
