"""Batches: what they make, that nothing stops them, and that any stop can be taken up again."""

from __future__ import annotations

import csv
import errno
import io
import json
import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from fioritura.batch.job import Made, TuneTask, make
from fioritura.batch.pool import Lost, Pool
from fioritura.batch.sources import Sources
from fioritura.batch.store import Store
from fioritura.batch.wishes import Output, Wishes
from fioritura.cli import main
from fioritura.cli.batch import SOME_FAILED
from fioritura.errors import OptionError, ToolError
from fioritura.files import read_bytes
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.notation.read import read_tune, unread_tunes
from tests.batches import children, deadly, is_running, tree, write_book
from tests.corpus_tunes import book_entries
from tests.musicxml_schema import schema_errors

TUNE = "X:1\nT:{title}\nM:4/4\nL:1/4\nK:G\nG2 B d|e2 d c|B G E2|A2 D2|G2 d2|e g e2|d2 c A|G4|]\n"
KEEP = ("--irregular", "keep", "--workers", "1")


def batch(*arguments: str | Path) -> int:
    return main(["batch", *map(str, arguments)])


def summary(capsys: pytest.CaptureFixture[str], *arguments: str | Path, code: int = 0) -> dict[str, Any]:
    assert batch(*arguments, "--json") == code
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def test_a_book_with_a_bad_tune(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The bad tune is named with its reason; all others are there, valid after the MusicXML 4.0 schema."""
    book, out = write_book(tmp_path / "book.abc", 5, bad_after=2), tmp_path / "out"
    found = summary(capsys, book, "--out", out, "--levels", "1-3", *KEEP, code=SOME_FAILED)
    assert (found["tunes"], found["made"], found["failed_tunes"]) == (6, 15, 1)
    assert set(found["cpu_seconds"]) == {"reading", "engine", "writing"}
    (failure,) = found["failures"]
    assert failure["kind"] == "TuneError"
    assert "X:900" in failure["source"]
    assert "no notes" in failure["reason"]
    folders = sorted(path.name for path in out.iterdir() if path.is_dir())
    assert [name[:5] for name in folders] == ["0001-", "0002-", "0004-", "0005-", "0006-"]
    for folder in folders:
        for level in (1, 2, 3):
            data = (out / folder / f"level-{level}.musicxml").read_bytes()
            assert not schema_errors(data)
            assert read_musicxml(data, irregular="keep").notes
    rows = list(csv.DictReader(io.StringIO((out / "failures.csv").read_text(encoding="utf-8"))))
    assert rows == [failure]
    report = json.loads((out / "batch.json").read_text(encoding="utf-8"))
    assert report["failures"] == [failure]
    assert report["reasons"] == {"TuneError": 1}
    assert not list(out.glob(".*"))


def test_what_is_done_is_not_done_again(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    book, out = write_book(tmp_path / "book.abc", 3), tmp_path / "out"
    first = summary(capsys, book, "--out", out, "--levels", "2", *KEEP)
    assert (first["made"], first["done_before"]) == (3, 0)
    again = summary(capsys, book, "--out", out, "--levels", "2", *KEEP)
    assert (again["made"], again["done_before"]) == (0, 3)
    more = summary(capsys, book, "--out", out, "--levels", "2,3", *KEEP)
    assert (more["made"], more["done_before"]) == (3, 3)
    other = summary(capsys, book, "--out", out, "--levels", "2,3", "--seed", "1", *KEEP)
    assert (other["made"], other["done_before"]) == (6, 0)
    (cut,) = out.glob("0002*/level-2.musicxml")
    cut.write_bytes(cut.read_bytes()[:100])
    mended = summary(capsys, book, "--out", out, "--levels", "2,3", "--seed", "1", *KEEP)
    assert mended["made"] == 1
    straight = tmp_path / "straight"
    summary(capsys, book, "--out", straight, "--levels", "2,3", "--seed", "1", *KEEP)
    assert tree(out) == tree(straight)


def test_a_change_of_one_tune_makes_that_tune_anew(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for name in ("one", "two"):
        (tmp_path / f"{name}.abc").write_text(TUNE.format(title=name))
    out = tmp_path / "out"
    summary(capsys, tmp_path, "--out", out, *KEEP)
    (tmp_path / "two.abc").write_text(TUNE.format(title="two").replace("e2 d c", "e2 c d"))
    again = summary(capsys, tmp_path, "--out", out, *KEEP)
    assert (again["tunes"], again["made"], again["done_before"]) == (2, 1, 1)


def test_a_killed_batch_is_taken_up_again(tmp_path: Path) -> None:
    """SIGKILL in the middle: no worker stays, nothing is half-written, and the rest makes the same tree."""
    book = write_book(tmp_path / "book.abc", 16, bad_after=9)
    killed, straight = tmp_path / "killed", tmp_path / "straight"
    command = [sys.executable, "-m", "fioritura", "batch", str(book), "--levels", "1,3,5", "--irregular", "keep"]
    command += ["--workers", "2", "--out"]
    process = subprocess.Popen([*command, str(killed)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    while len(list(killed.glob("*/tune.json"))) < 3:
        assert process.poll() is None
        time.sleep(0.005)
    workers = children(process.pid)
    process.kill()
    process.wait()
    assert workers
    done = len(list(killed.glob("*/tune.json")))
    assert 3 <= done < 16
    assert not (killed / "batch.json").exists()
    for record in killed.glob("*/tune.json"):
        for path, piece in json.loads(record.read_bytes())["pieces"].items():
            assert (record.parent / path).stat().st_size == piece["bytes"][""]
    deadline = time.monotonic() + 10
    while any(is_running(pid) for pid in workers):
        assert time.monotonic() < deadline, "workers stay behind"
        time.sleep(0.05)
    for out in (killed, straight):
        ended = subprocess.run([*command, str(out), "--json"], capture_output=True, text=True, check=False)
        assert ended.returncode == SOME_FAILED, ended.stderr
        if out is killed:
            assert json.loads(ended.stdout)["done_before"] >= 3 * 3
    assert tree(killed) == tree(straight)


def heeding_interrupts() -> None:
    """Tests that run in the background of a shell would hand on that the keyboard's interrupt is ignored."""
    signal.signal(signal.SIGINT, signal.default_int_handler)


def test_an_interrupt_ends_in_order(tmp_path: Path) -> None:
    book, out = write_book(tmp_path / "book.abc", 400), tmp_path / "out"
    command = [sys.executable, "-m", "fioritura", "batch", str(book), "--out", str(out), *KEEP]
    process = subprocess.Popen(command, stderr=subprocess.PIPE, text=True, preexec_fn=heeding_interrupts)
    while not list(out.glob("*/tune.json")):
        assert process.poll() is None
        time.sleep(0.005)
    process.send_signal(signal.SIGINT)
    _, said = process.communicate(timeout=20)
    assert process.returncode == 130
    assert "nothing was left half-written" in said
    assert not (out / ".batch").exists()


def jobs_titled(tmp_path: Path, *titles: str) -> Iterator[TuneTask]:
    for number, title in enumerate(titles):
        path = tmp_path / f"{number}.abc"
        path.write_text(TUNE.format(title=title))
        (tune,) = unread_tunes(path)
        piece = Output("notation", "level-2.musicxml", 2, "musicxml")
        yield TuneTask(title, title, tune, Wishes(levels=(2,)), (piece,))


def test_a_killed_worker_loses_nothing(tmp_path: Path) -> None:
    """A worker that is killed once costs nothing; the tune that always kills its worker is the only one lost."""
    titles = ["a", f"kills once {tmp_path / 'marker'}", "b", "c", "kills always", "d", "e", "f", "g", "h", "i", "j"]
    with Pool(2) as pool:
        outcomes = {job.name: outcome for job, outcome in pool.spread(deadly, jobs_titled(tmp_path, *titles))}
    assert sorted(outcomes) == sorted(titles)
    assert [name for name, outcome in outcomes.items() if isinstance(outcome, Lost)] == ["kills always"]
    here = {job.name: make(job) for job in jobs_titled(tmp_path, *titles)}
    for name, outcome in outcomes.items():
        if isinstance(outcome, Made):
            assert outcome.pieces == here[name].pieces
            assert outcome.pieces


def test_a_fault_of_the_program_is_told_like_any_failure(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (job,) = jobs_titled(tmp_path, "one")

    def broken(*arguments: object, **more: object) -> None:
        raise ZeroDivisionError("of all things")

    monkeypatch.setattr("fioritura.batch.job.survey", broken)
    (failure,) = make(job).failures
    assert failure.kind == "Fault"
    assert "ZeroDivisionError: of all things" in failure.reason


def test_a_tune_that_takes_too_long_is_given_up(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What was made of it before stays made."""
    (job,) = jobs_titled(tmp_path, "one")
    quick, slow = Output("notation", "level-1.abc", 1, "abc"), Output("notation", "level-1.musicxml", 1, "musicxml")
    work = "fioritura.batch.job.line_bytes"

    def endless(edition: object, ending: str) -> bytes:
        while ending == "musicxml":
            pass
        return b"X:1"

    monkeypatch.setattr(work, endless)
    made = make(replace(job, pieces=(quick, slow), limit_sec=1.0))
    assert [one.piece for one in made.pieces] == [quick]
    assert [failure.kind for failure in made.failures] == ["TimeLimit"]


def test_a_full_disk_ends_in_order(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    book, out, straight = write_book(tmp_path / "book.abc", 4), tmp_path / "out", tmp_path / "straight"
    put, left = Store._put, iter(range(5))

    def full(self: Store, place: Path, data: bytes) -> None:
        if next(left, None) is None:
            raise OSError(errno.ENOSPC, "No space left on device")
        put(self, place, data)

    with monkeypatch.context() as patched:
        patched.setattr(Store, "_put", full)
        assert batch(book, "--out", out, *KEEP) == 2
    assert "No space left on device" in capsys.readouterr().err
    assert not list(out.glob(".*"))
    assert summary(capsys, book, "--out", out, *KEEP)["done_before"] == 2
    summary(capsys, book, "--out", straight, *KEEP)
    assert tree(out) == tree(straight)


def test_another_version_is_refused(tmp_path: Path) -> None:
    (job,) = jobs_titled(tmp_path, "one")
    with pytest.raises(ToolError, match="another version"):
        make(TuneTask(job.name, job.source, job.tune, job.wishes, job.pieces, code="other"))
    with pytest.raises(ToolError, match="another soundfont than none"):
        make(TuneTask(job.name, job.source, job.tune, job.wishes, job.pieces, soundfont=("none.sf2", 1)))


def test_a_folder_of_all_kinds(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Books and tunes in folders and all formats; what is made in the folder is no tune of the next run."""
    tunes = tmp_path / "tunes"
    write_book(tunes / "airs" / "book.abc", 2)
    (tunes / "Waltz.abc").write_text(TUNE.format(title="Waltz"))
    main(["ornament", str(tunes / "Waltz.abc"), "--out", str(tunes / "deep"), "--formats", "musicxml,mid"])
    (tunes / "Waltz.musicxml").write_bytes((tunes / "deep" / "plain.musicxml").read_bytes())
    (tunes / "photo.abc").write_bytes(b"\x89PNG\r\n")
    (tunes / "notes.txt").write_text("no tune")
    (tunes / "lost.abc").symlink_to(tunes / "nowhere.abc")
    capsys.readouterr()
    out = tunes / "made"
    arguments = (tunes, "--out", out, "--formats", "musicxml,abc,mid", *KEEP)
    first = summary(capsys, *arguments, code=SOME_FAILED)
    again = summary(capsys, *arguments, code=SOME_FAILED)
    assert first["tunes"] == again["tunes"] == 10
    assert again["made"] == 0
    names = {path.parent.relative_to(out).as_posix() for path in out.rglob("tune.json")}
    assert names >= {"Waltz.abc", "Waltz.musicxml", "deep/ornamented.mid", "deep/plain", "deep/comparison"}
    assert len([name for name in names if name.startswith("airs/book/000")]) == 2
    assert [row["source"] for row in first["failures"]] == ["lost.abc", "photo.abc"]
    made = {path.name for path in (out / "Waltz.abc").iterdir()}
    assert made == {"tune.json", "level-3.musicxml", "level-3.abc", "level-3.mid"}
    assert read_tune(out / "Waltz.abc" / "level-3.abc").notes


def test_sound_and_packs(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A pack is made once more, the same, from its own manifest."""
    path, out = tmp_path / "air.abc", tmp_path / "out"
    path.write_text(TUNE.format(title="Air"))
    wanted = ("--make", "sound,pack", "--levels", "2", "--sections", "parts", "--workers", "1")
    found = summary(capsys, path, "--out", out, *wanted)
    assert found["made"] == 2
    assert (out / "air" / "level-2.mp3").stat().st_size > 20_000
    pack = out / "air" / "level-2-pack"
    assert (pack / "parts" / "trumpet.pdf").read_bytes().startswith(b"%PDF")
    assert summary(capsys, path, "--out", out, *wanted)["made"] == 0
    assert main(["lesson", str(pack / "manifest.json"), "--out", str(tmp_path / "again"), "--json"]) == 0
    capsys.readouterr()
    ours, again = tree(pack), tree(tmp_path / "again")
    del ours["manifest.json"], again["manifest.json"]
    assert ours == again


def test_reports_on_takes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Takes lie beside their tunes or in a folder named after a book; one of another tune fails alone."""
    tunes, takes, book = tmp_path / "tunes", tmp_path / "takes", tmp_path / "tunes" / "book.abc"
    tunes.mkdir()
    second = TUNE.format(title="Second").replace("X:1", "X:2").replace("G2 B d|e2 d c", "B/c/d B G|A B/A/ G2")
    third = (
        second.replace("X:2", "X:3")
        .replace("|B G E2|A2 D2|", "|d3 c|c2 E2|")
        .replace("B/c/d B G|A B/A/ G2", "d2 A F|E3 d")
        .replace("|G2 d2|e g e2|d2 c A|G4|]", "|F/E/D/C/ E2|F3 A|f/e/d/c/ d A|F4|]")
    )
    book.write_text(f"{TUNE.format(title='First')}\n{second}\n{third}")
    (tunes / "air.abc").write_text(TUNE.format(title="Air"))
    (tunes / "air two.abc").write_text(TUNE.format(title="Air two").replace("G2 B d", "B2 d G"))
    made = tmp_path / "made"
    main(["ornament", str(tunes / "air.abc"), "--out", str(made / "air"), "--formats", "wav"])
    main(
        [
            "ornament",
            str(book),
            "--number",
            "2",
            "--irregular",
            "keep",
            "--out",
            str(made / "two"),
            "--formats",
            "wav",
        ]
    )
    (takes / "book").mkdir(parents=True)
    for target, source in {
        "air-anna.wav": made / "air" / "plain.wav",
        "book/2-anna.wav": made / "two" / "plain.wav",
        "book/3.wav": made / "air" / "plain.wav",
        "gigue.wav": made / "air" / "plain.wav",
    }.items():
        (takes / target).write_bytes(read_bytes(source))
    (takes / "air-empty.wav").touch()
    capsys.readouterr()
    out = tmp_path / "out"
    arguments = (tunes, "--out", out, "--make", "report", "--takes", takes, *KEEP)
    found = summary(capsys, *arguments, code=SOME_FAILED)
    assert found["made"] == 2
    assert [(row["kind"], row["piece"]) for row in found["failures"]] == [
        ("ReadError", "takes/air-empty.wav.json"),
        ("OtherTuneError", "takes/3.wav.json"),
        ("TakeOfNoTune", ""),
    ]
    report = json.loads((out / "air" / "takes" / "air-anna.wav.json").read_text(encoding="utf-8"))
    assert 1 <= len(report["advice"]) <= 3
    assert (next(out.glob("book/0002*")) / "takes" / "2-anna.wav.json").is_file()
    assert summary(capsys, *arguments, code=SOME_FAILED)["done_before"] == 2


def test_takes_go_to_the_longest_name(tmp_path: Path) -> None:
    for name in ("air.abc", "air two.abc"):
        (tmp_path / name).write_text(TUNE.format(title=name))
    for name in ("air.wav", "air two.wav", "air two-anna.flac", "airy.wav"):
        (tmp_path / name).write_bytes(b"x")
    sources = Sources(tmp_path, tmp_path / "out", tmp_path)
    takes = {found.name: [path.name for path in found.takes] for found in sources}
    assert takes == {"air": ["air.wav"], "air two": ["air two-anna.flac", "air two.wav"]}
    assert sources.takes is not None
    assert [path.name for path in sources.takes.unclaimed()] == ["airy.wav"]


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--levels", "1,9"), "No level “9”"),
        (("--levels", "high"), "names no levels"),
        (("--levels", "³"), "names no levels"),
        (("--levels", "1-99999999999"), "names no levels"),
        (("--make", "coffee"), "No thing to make “coffee”"),
        (("--formats", "docx"), "No format “docx”"),
        (("--player", "kazoo"), "No instrument “kazoo”"),
        (("--only", "yodel"), "No technique “yodel”"),
        (("--workers", "0"), "0 workers can't work"),
        (("--limit", "0"), "leaves no time"),
        (("--takes", "takes"), "ask for them with --make report"),
        (("--make", "report", "--takes", "nowhere"), "no folder of takes"),
        (("--scheduler", "tcp://127.0.0.1:9"), "No scheduler answers"),
    ],
)
def test_bad_options(
    tmp_path: Path,
    arguments: tuple[str, ...],
    words: str,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("fioritura.batch.cluster._CONNECT_SEC", 1)
    path = tmp_path / "air.abc"
    path.write_text(TUNE.format(title="Air"))
    assert batch(path, "--out", tmp_path / "out", *arguments) == 2
    assert words in capsys.readouterr().err
    assert not (tmp_path / "out" / "batch.json").exists()


def test_bad_places(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "empty").mkdir()
    (tmp_path / "air.abc").write_text(TUNE.format(title="Air"))
    assert batch(tmp_path / "nowhere") == 2
    assert batch(tmp_path / "empty") == 2
    assert batch(tmp_path / "air.abc", "--out", tmp_path / "air.abc") == 2
    said = capsys.readouterr().err
    assert re.findall(r"does not exist|There is no tune|is a file, not a folder", said) == [
        "does not exist",
        "There is no tune",
        "is a file, not a folder",
    ]


def test_one_batch_at_a_time(tmp_path: Path) -> None:
    script = f"from pathlib import Path; from fioritura.batch.store import Store\nwith Store(Path({str(tmp_path)!r})): pass"
    with Store(tmp_path):
        ended = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False)
    assert "Another batch is at work" in ended.stderr


def test_a_tune_of_a_book_alone_reads_the_same(tmp_path: Path) -> None:
    """What is sent to a worker is the tune's own text: it reads as it does in its book."""
    for entry in book_entries()[::800]:
        path = tmp_path / "alone.abc"
        path.write_text(str(entry.text), encoding="utf-8")
        alone = read_tune(path, irregular="keep")
        within = entry.read(irregular="keep")
        assert replace(alone, warnings=(), title="") == replace(within, warnings=(), title="")


def test_wishes_are_checked() -> None:
    with pytest.raises(OptionError, match="No level is named"):
        Wishes(levels=())
    assert os.sep not in "".join(piece.path for piece in Wishes(levels=(1, 5)).pieces())
