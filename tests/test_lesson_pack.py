"""The pack: all or nothing, the same bytes twice, what changed and no more, and rebuilt from its manifest."""

import json
import os
import zipfile
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from fioritura.cli import main
from fioritura.errors import ToolError
from fioritura.lesson import pack as pack_module
from fioritura.lesson.cache import Cache
from fioritura.lesson.handout import handout_engravings
from fioritura.lesson.lesson import Lesson
from fioritura.lesson.pack import PackOptions, write_pack
from fioritura.lesson.soundtrack import balance_of, tracks, write_track
from fioritura.notation.engraving.engrave import with_staves

from .lessons import demo_lesson

PAPER = PackOptions(players=("concert", "alto-sax"), sections=("parts", "exercises"), workers=1)


@pytest.fixture(scope="module")
def lesson() -> Lesson:
    return demo_lesson(level=1)


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Cache:
    return Cache(tmp_path_factory.mktemp("cache"))


def _files(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_the_same_lesson_gives_the_same_bytes_with_and_without_the_cache(
    lesson: Lesson, cache: Cache, tmp_path: Path
) -> None:
    write_pack(lesson, tmp_path / "a", PAPER, cache=cache)
    write_pack(lesson, tmp_path / "b", PAPER, cache=cache)
    write_pack(lesson, tmp_path / "c", PAPER, cache=Cache(tmp_path / "fresh"))
    first = _files(tmp_path / "a")
    assert {"exercises.pdf", "parts/alto-sax.pdf", "parts/concert.musicxml", "manifest.json"} <= set(first)
    assert first == _files(tmp_path / "b") == _files(tmp_path / "c")


def test_the_manifest_has_every_file_with_its_checksum(lesson: Lesson, cache: Cache, tmp_path: Path) -> None:
    write_pack(lesson, tmp_path / "pack", PAPER, cache=cache)
    manifest = json.loads((tmp_path / "pack/manifest.json").read_text())
    listed = {file["path"]: file["sha256"] for file in manifest["files"]}
    found = {name: sha256(data).hexdigest() for name, data in _files(tmp_path / "pack").items()}
    assert listed == {name: sum for name, sum in found.items() if name != "manifest.json"}


def test_a_second_run_makes_nothing_anew(
    lesson: Lesson, cache: Cache, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_pack(lesson, tmp_path / "pack", PAPER, cache=cache)

    def refuse(*given: Any) -> None:
        raise AssertionError("made anew")

    monkeypatch.setattr(pack_module, "_done", refuse)
    monkeypatch.setattr(pack_module, "_prepare", refuse)
    write_pack(lesson, tmp_path / "again", PAPER, cache=cache)
    assert _files(tmp_path / "again") == _files(tmp_path / "pack")


def test_a_failure_leaves_the_earlier_pack_and_nothing_else(
    lesson: Lesson, cache: Cache, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "pack"
    write_pack(lesson, target, PAPER, cache=cache)
    before = _files(target)

    def fail(*given: Any) -> None:
        raise ToolError("The typesetter failed.")

    monkeypatch.setattr(pack_module, "_done", fail)
    with pytest.raises(ToolError):
        write_pack(lesson, target, PAPER, cache=Cache(tmp_path / "other"))
    assert _files(target) == before
    assert sorted(path.name for path in tmp_path.iterdir()) == ["other", "pack"]


def test_a_zip_holds_the_same_files_and_is_the_same_twice(lesson: Lesson, cache: Cache, tmp_path: Path) -> None:
    write_pack(lesson, tmp_path / "pack", PAPER, cache=cache)
    for name in ("one", "two"):
        (tmp_path / name).mkdir()
        write_pack(lesson, tmp_path / name / "pack.zip", PAPER, cache=cache)
    assert (tmp_path / "one/pack.zip").read_bytes() == (tmp_path / "two/pack.zip").read_bytes()
    with zipfile.ZipFile(tmp_path / "one/pack.zip") as archive:
        assert archive.testzip() is None
        found = {name.removeprefix("pack/"): archive.read(name) for name in archive.namelist()}
    assert found == _files(tmp_path / "pack")


def test_systems_are_kept_with_what_they_show(lesson: Lesson) -> None:
    for engraving in handout_engravings(lesson)[:3]:
        systems = engraving.systems()
        assert systems[0].staves
        assert with_staves([replace(system, staves=()) for system in systems], engraving.score) == systems


def test_two_runs_share_a_cache(lesson: Lesson, tmp_path: Path) -> None:
    shared = Cache(tmp_path / "shared")
    options = PackOptions(players=("flute",), sections=("parts",), workers=1)
    with ThreadPoolExecutor(2) as pool:
        runs = [pool.submit(write_pack, lesson, tmp_path / name, options, cache=shared) for name in ("a", "b")]
        for run in runs:
            run.result()
    assert _files(tmp_path / "a") == _files(tmp_path / "b")


def test_workers_start_safely_where_the_typesetter_has_run(tmp_path: Path) -> None:
    """A process forked from one with the typesetter's threads would wait for them for ever."""
    import subprocess
    import sys

    program = tmp_path / "program.py"
    program.write_text(
        "import sys\n"
        "from pathlib import Path\n"
        "from fioritura.lesson.cache import Cache\n"
        "from fioritura.lesson.pack import PackOptions, write_pack\n"
        "from fioritura.notation.engraving.page import Document, Heading\n"
        "from fioritura.notation.engraving.typeset import pdf\n"
        "from tests.lessons import demo_lesson\n"
        "if __name__ == '__main__':\n"
        "    pdf(Document('x', (Heading('x'),)))\n"
        "    options = PackOptions(players=('flute', 'trombone'), sections=('parts',), workers=2)\n"
        "    write_pack(demo_lesson(level=1), Path(sys.argv[1]), options, cache=Cache(Path(sys.argv[2])))\n"
    )
    command = [sys.executable, str(program), str(tmp_path / "out"), str(tmp_path / "cache")]
    root = Path(__file__).parents[1]
    subprocess.run(command, check=True, timeout=60, cwd=root, env={**os.environ, "PYTHONPATH": str(root)})
    assert (tmp_path / "out/parts/flute.pdf").is_file()


def test_the_cache_drops_what_was_not_used_for_longest(tmp_path: Path) -> None:
    cache = Cache(tmp_path, limit_bytes=250)
    for number in range(4):
        cache.put(f"{number:040}", bytes(100))
        os.utime(cache._path(f"{number:040}"), (1000 + number, 1000 + number))
    assert cache.get(f"{0:040}") is not None
    cache.trim()
    kept = [number for number in range(4) if cache.get(f"{number:040}") is not None]
    assert kept == [0, 3]


def test_the_command_makes_a_pack_and_rebuilds_it_from_its_manifest(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from importlib.resources import as_file, files

    monkeypatch.setenv("FIORITURA_CACHE", str(tmp_path / "cache"))
    words = tmp_path / "mine.txt"
    words.write_text("title: Quay\n")
    options = ["--player", "flute", "--level", "1", "--players", "flute", "--language", "de", "--words", str(words)]
    with as_file(files("fioritura.data") / "lanterns.abc") as path:
        assert main(["lesson", str(path), *options, "--sections", "parts", "--out", str(tmp_path / "a")]) == 0
    words.unlink()
    assert main(["lesson", str(tmp_path / "a/manifest.json"), "--out", str(tmp_path / "b")]) == 0
    assert _files(tmp_path / "a") == _files(tmp_path / "b")
    assert "Quay" in capsys.readouterr().out
    (tmp_path / "a/source/lanterns.abc").write_text("X:1\nK:C\nCDEF|\n")
    assert main(["lesson", str(tmp_path / "a/manifest.json"), "--out", str(tmp_path / "c")]) == 2
    assert "not the file" in capsys.readouterr().err
    assert not (tmp_path / "c").exists()


def test_a_tune_below_the_player_is_moved_and_told_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "low.abc").write_text('X:1\nT:Low\nM:4/4\nL:1/4\nK:C\n"C"G,A,B,C|"G7"D B,G,2|"C"C4|]\n')
    out = tmp_path / "out"
    options = ["--player", "flute", "--players", "flute,trombone", "--sections", "parts", "--level", "1"]
    assert main(["lesson", str(tmp_path / "low.abc"), *options, "--out", str(out)]) == 0
    assert "would lie outside the flute: the tune is played an octave higher." in capsys.readouterr().err
    manifest = json.loads((out / "manifest.json").read_text())
    assert manifest["moved_octaves"]["flute"] == 1
    assert manifest["left_out"] == []


@pytest.mark.parametrize(
    ("options", "complaint"),
    [
        (["--language", "xx"], "No language “xx”"),
        (["--players", "kazoo"], "No instrument “kazoo”"),
        (["--sections", "poster"], "No section “poster”"),
        (["--words", "nowhere.txt"], "nowhere.txt does not exist"),
        (["--level", "9"], "Level 9"),
    ],
)
def test_bad_options_are_named_before_anything_is_made(
    options: list[str], complaint: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    from importlib.resources import as_file, files

    with as_file(files("fioritura.data") / "lanterns.abc") as path:
        assert main(["lesson", str(path), "--out", str(tmp_path / "out"), *options]) == 2
    assert complaint in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_an_example_sounds_plain_then_ornamented(lesson: Lesson, tmp_path: Path) -> None:
    import soundfile

    track = next(track for track in tracks(lesson) if track.name == lesson.examples[0].name)
    write_track(track, balance_of(lesson), "", tmp_path / "example.flac")
    info = soundfile.info(tmp_path / "example.flac")
    example = lesson.examples[0]
    bars = 2 * len(example.tune.bars) + 1
    assert info.duration == pytest.approx(bars * 4 * 60 / 132, abs=3.5)
    audio, rate = soundfile.read(tmp_path / "example.flac")
    assert abs(audio[2 * rate :]).max() > 0.1
