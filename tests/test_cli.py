"""The command line: what it writes, what it prints, and how it refuses bad input."""

from __future__ import annotations

import gzip
import json
import zipfile
from pathlib import Path

import pytest

from fioritura.cli import main
from fioritura.techniques.grace import LOWER_GRACE_SEMITONE
from fioritura.techniques.passing import PASSING_NOTE
from fioritura.techniques.table import all_techniques
from fioritura.techniques.turn import TURN
from fioritura.words import capital

ABC = """X:1
T:Test Air
M:4/4
L:1/4
Q:1/4=100
K:G
D | "G"G2 B d | "C"e2 "D7"d c | "Em"B G E2 | "Am7"A2 "D7"D F | "G"G2 d2 | "C"e g e2 | "D7"d2 c A | "G"G3 |]
"""
EDITION = {
    "plain.musicxml",
    "ornamented.musicxml",
    "ornamented.mid",
    "ornamented.abc",
    "comparison.pdf",
    "ornamented.pdf",
    "ornamented.mp3",
    "plain.mp3",
    "figures.json",
    "arrangement.json",
}


@pytest.fixture
def air(tmp_path: Path) -> Path:
    path = tmp_path / "air.abc"
    path.write_text(ABC, encoding="utf-8")
    return path


def run_json(capsys: pytest.CaptureFixture[str], *arguments: str) -> object:
    assert main([*arguments, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_ornament_writes_the_whole_edition(air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "out"
    summary = run_json(capsys, "ornament", str(air), "--player", "alto-sax", "--seed", "1", "--out", str(out))
    assert {path.name for path in out.iterdir()} >= EDITION
    assert isinstance(summary, dict)
    assert {"kept_share", "figure_count", "warnings", "files"} <= set(summary)
    assert {Path(name).name for name in summary["files"]} >= EDITION
    assert summary["kept_share"] >= 0.8
    figures = json.loads((out / "figures.json").read_text())
    assert len(figures) == summary["figure_count"] > 0
    for figure in figures:
        assert {"technique", "bar", "beat", "anchors", "notes", "reason", "level"} <= set(figure)
        assert figure["technique"] in all_techniques()
        assert 0 <= figure["bar"] <= 8
    assert (out / "comparison.pdf").read_bytes().startswith(b"%PDF")
    assert (out / "ornamented.mp3").stat().st_size > 20_000
    assert (out / "ornamented.mid").read_bytes().startswith(b"MThd")


def test_the_same_command_gives_the_same_notation(air: Path, tmp_path: Path) -> None:
    for name in ("one", "two"):
        formats = "musicxml,abc,pdf,json,mid,svg"
        assert main(["ornament", str(air), "--out", str(tmp_path / name), "--formats", formats]) == 0
    for path in (tmp_path / "one").iterdir():
        assert path.read_bytes() == (tmp_path / "two" / path.name).read_bytes(), path.name


def test_spots_are_listed_with_place_reason_and_score(air: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spots = run_json(capsys, "spots", str(air), "--only", "lower-grace-semitone,passing-note", "--why")
    assert isinstance(spots, list)
    assert {spot["technique"] for spot in spots} == {LOWER_GRACE_SEMITONE.id, PASSING_NOTE.id}
    assert all({"bar", "beat", "reason", "score", "why"} <= set(spot) for spot in spots)
    assert any(spot["bar"] == 0 for spot in spots)


def test_techniques_are_listed_as_a_table(capsys: pytest.CaptureFixture[str]) -> None:
    table = run_json(capsys, "techniques")
    assert isinstance(table, list)
    assert {row["id"] for row in table} == set(all_techniques())
    for row in table:
        assert {"id", "name", "family", "level", "text"} <= set(row)
        assert row["id"] == row["id"].lower()
        assert row["name"] == capital(row["name"])


def test_a_rendition_can_be_steered_by_ids(air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spots = run_json(capsys, "spots", str(air), "--only", TURN.id)
    assert isinstance(spots, list)
    wanted = spots[0]["id"]
    arguments = ["ornament", str(air), "--out", str(tmp_path / "o"), "--formats", "json", "--lock", wanted]
    assert main(arguments) == 0
    figures = json.loads((tmp_path / "o" / "figures.json").read_text())
    assert wanted in {figure["id"] for figure in figures}


def xml(measures: str, head: str = "") -> bytes:
    return (
        f'<?xml version="1.0"?>{head}<score-partwise version="4.0"><part-list><score-part id="P1">'
        f"<part-name>Melody</part-name></score-part></part-list><part id='P1'>{measures}</part></score-partwise>"
    ).encode()


def measure(notes: str, number: int = 1, beats: str = "4", unit: str = "4") -> str:
    attributes = (
        f"<attributes><divisions>1</divisions><key><fifths>0</fifths></key>"
        f"<time><beats>{beats}</beats><beat-type>{unit}</beat-type></time></attributes>"
    )
    return f"<measure number='{number}'>{attributes}{notes}</measure>"


def note(step: str = "C", octave: int = 5, duration: int = 1, extra: str = "") -> str:
    return (
        f"<note>{extra}<pitch><step>{step}</step><octave>{octave}</octave></pitch>"
        f"<duration>{duration}</duration></note>"
    )


FOUR = note("C") + note("D") + note("E") + note("F")
HARMONY = "<harmony><root><root-step>C</root-step></root><kind>major</kind></harmony>"
ENTITIES = (
    '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa">'
    + "".join(f'<!ENTITY {chr(98 + n)} "{("&" + chr(97 + n) + ";") * 10}">' for n in range(9))
    + "]>"
)

BAD_FILES: dict[str, tuple[str, bytes]] = {
    "empty": ("t.musicxml", b""),
    "truncated": ("t.musicxml", xml(measure(FOUR))[:-60]),
    "binary": ("t.abc", bytes(range(256)) * 40),
    "wrong extension": ("t.mid", b"just some words that are no tune at all"),
    "entities": ("t.xml", xml(measure(FOUR), ENTITIES).replace(b"Melody", b"&i;")),
    "gzip": ("t.musicxml", gzip.compress(xml(measure(FOUR)))),
    "no notes": ("t.musicxml", xml(measure("<note><rest/><duration>4</duration></note>"))),
    "chords only": ("t.musicxml", xml(measure(HARMONY + "<note><rest/><duration>4</duration></note>"))),
    "chords only abc": ("t.abc", b'X:1\nT:x\nM:4/4\nL:1/4\nK:C\n"C"z4|"F"z4|\n'),
    "polyphony": ("t.musicxml", xml(measure(note("C") + note("E", extra="<chord/>") + note("D") * 3))),
    "absurd metre": ("t.musicxml", xml(measure(FOUR, beats="99", unit="64"))),
    "absurd tempo": ("t.abc", b"X:1\nT:x\nM:4/4\nL:1/4\nQ:1/4=90000\nK:C\nCDEF|\n"),
    "bars that do not add up": (
        "t.musicxml",
        xml(measure(FOUR) + measure(FOUR + note("G"), 2) + measure(FOUR, 3) + measure(FOUR, 4)),
    ),
    "outside the instrument": ("t.musicxml", xml(measure(note("C", 1) + note("C", 2) + note("C", 8) * 2))),
}


@pytest.mark.parametrize("kind", sorted(BAD_FILES))
def test_bad_files_get_one_clear_message_and_leave_nothing(
    kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    name, data = BAD_FILES[kind]
    (tmp_path / name).write_bytes(data)
    out = tmp_path / "out"
    assert main(["ornament", str(tmp_path / name), "--player", "alto-sax", "--out", str(out)]) == 2
    error = capsys.readouterr().err
    assert error.startswith("fioritura: ")
    assert error.count("\n") == 1
    assert "Traceback" not in error
    assert len(error) > 40
    assert {path.name for path in tmp_path.iterdir()} == {name}


def test_a_zip_bomb_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "bomb.mxl"
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(
            "META-INF/container.xml", "<container><rootfiles><rootfile full-path='s.xml'/></rootfiles></container>"
        )
        archive.writestr("s.xml", b" " * 300_000_000)
    assert main(["ornament", str(path), "--out", str(tmp_path / "out")]) == 2
    assert capsys.readouterr().err.startswith("fioritura: ")
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["--level", "9"], "Level 9"),
        (["--player", "kazoo"], "kazoo"),
        (["--tempo", "5000"], "5,000"),
        (["--only", "warble"], "warble"),
        (["--chords", "C | D | E"], "bars"),
        (["--chords", "C | H7 | C | C | C | C | C | C"], "H7"),
        (["--formats", "docx"], "docx"),
        (["--octave", "9"], "octave"),
        (["--part", "tuba"], "tuba"),
        (["--lock", "turn-1-000000"], "turn-1-000000"),
    ],
)
def test_bad_options_say_value_limit_and_remedy(
    arguments: list[str], message: str, air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["ornament", str(air), "--out", str(tmp_path / "out"), *arguments]) == 2
    error = capsys.readouterr().err
    assert error.startswith("fioritura: ")
    assert message in error
    assert not (tmp_path / "out").exists()


def test_a_missing_file_and_a_file_as_folder(air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["spots", str(tmp_path / "nowhere.abc")]) == 2
    assert "does not exist" in capsys.readouterr().err
    assert main(["ornament", str(air), "--out", str(air)]) == 2
    assert "folder" in capsys.readouterr().err
    assert air.read_text(encoding="utf-8") == ABC


def test_files_of_the_folder_with_other_names_stay(air: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "mine.txt").write_text("keep me")
    assert main(["ornament", str(air), "--out", str(out), "--formats", "json,abc"]) == 0
    assert {path.name for path in out.iterdir()} == {"mine.txt", "figures.json", "arrangement.json", "ornamented.abc"}


def test_an_arrangement_is_revised_step_by_step(
    air: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "out"
    assert main(["ornament", str(air), "--out", str(out), "--formats", "json"]) == 0
    capsys.readouterr()
    saved, formats = str(out / "arrangement.json"), ["--formats", "json"]
    first = json.loads((out / "figures.json").read_text())
    ranked = run_json(capsys, "revise", saved, "--alternatives", first[0]["id"])
    assert isinstance(ranked, list)
    other = next(row["id"] for row in ranked if not row["stands"])
    assert main(["revise", saved, "--swap", f"{first[0]['id']}={other}", *formats]) == 0
    swapped = {figure["id"] for figure in json.loads((out / "figures.json").read_text())}
    assert other in swapped
    assert first[0]["id"] not in swapped
    assert main(["revise", saved, "--undo", *formats]) == 0
    assert json.loads((out / "figures.json").read_text()) == first
    assert main(["revise", saved, "--undo", *formats]) == 2
    assert main(["revise", str(air)]) == 2
    assert "no arrangement file" in capsys.readouterr().err
