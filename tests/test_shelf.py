"""The shelf's store: what is confirmed stays, steps go back and forth, and everything comes out and in again.

That a write-ahead log keeps what was committed is SQLite's promise (sqlite.org/wal.html, sqlite.org/atomiccommit.html);
here a process that writes is killed, and what it had been told was kept is looked for.
"""

from __future__ import annotations

import io
import json
import os
import signal
import sqlite3
import subprocess
import sys
import zipfile
import zlib
from collections.abc import Iterator
from pathlib import Path
from threading import Thread

import pytest

from fioritura.errors import OptionError, OutputError, ReadError
from fioritura.shelf.archive import Checks, restore, write_archive
from fioritura.shelf.schema import MIGRATIONS
from fioritura.shelf.store import DATA_VARIABLE, NotOnShelfError, Shelf, StaleError, data_folder
from fioritura.techniques.turn import TURN
from tests.archives import rewritten


@pytest.fixture
def shelf(tmp_path: Path) -> Iterator[Shelf]:
    shelf = Shelf(tmp_path / "data")
    yield shelf
    shelf.close()


def add_tune(shelf: Shelf, title: str = "Air", composer: str = "", tags: tuple[str, ...] = ()) -> int:
    facts = {"key": "G major", "metre": "4/4", "bars": 8}
    return shelf.add_tune(
        title, composer, facts=facts, source_name="air.abc", source=b"X:1", reading={"place": None}, tags=tags
    )


def test_a_tune_comes_back_as_it_was_put_there(shelf: Shelf) -> None:
    entry = shelf.tune(add_tune(shelf, "Ärie №1", "N. N.", ("Waltz", "  slow   air ", "waltz")))
    assert (entry.title, entry.composer, entry.tags) == ("Ärie №1", "N. N.", ("slow air", "waltz"))
    assert entry.facts["metre"] == "4/4"
    assert shelf.source(entry.id) == b"X:1"
    assert entry.versions == ()


def test_another_shelf_in_the_same_folder_sees_the_same(shelf: Shelf) -> None:
    add_tune(shelf)
    again = Shelf(shelf.path.parent)
    assert [entry.title for entry in again.tunes()] == ["Air"]
    again.close()


def test_steps_go_back_and_forth_and_a_new_one_forgets_what_was_undone(shelf: Shelf) -> None:
    id = shelf.add_arrangement(add_tune(shelf), "first", "zero")
    for number, text in enumerate(("one", "two", "three")):
        shelf.add_step(id, number, f"did {text}", text)
    assert (shelf.step(id).text, shelf.step(id).undoes, shelf.step(id).redoes) == ("three", "did three", "")
    assert shelf.move(id, 3, -1).redoes == "did three"
    back = shelf.move(id, 2, -1)
    assert (back.text, back.undoes, back.redoes) == ("one", "did one", "did two")
    assert shelf.move(id, 1, 1).text == "two"
    forked = shelf.add_step(id, 2, "did other", "other")
    assert (forked.number, forked.last, forked.redoes) == (3, 3, "")
    assert [step.text for step in shelf.steps(id)] == ["zero", "one", "two", "other"]


def test_nothing_is_undone_before_the_first_step_or_redone_after_the_last(shelf: Shelf) -> None:
    id = shelf.add_arrangement(add_tune(shelf), "first", "zero")
    for by, word in ((-1, "undo"), (1, "redo")):
        with pytest.raises(OptionError, match=f"nothing to {word}"):
            shelf.move(id, 0, by)


def test_a_decision_about_an_older_step_is_refused(shelf: Shelf) -> None:
    id = shelf.add_arrangement(add_tune(shelf), "first", "zero")
    shelf.add_step(id, 0, "here", "one")
    with pytest.raises(StaleError, match="step 1, not 0"):
        shelf.add_step(id, 0, "elsewhere", "other")
    assert shelf.step(id).text == "one"


def test_of_many_writers_at_once_just_one_takes_each_step(shelf: Shelf) -> None:
    id = shelf.add_arrangement(add_tune(shelf), "first", "zero")
    refused: list[str] = []

    def write(name: str) -> None:
        try:
            shelf.add_step(id, 0, name, name)
        except StaleError:
            refused.append(name)

    threads = [Thread(target=write, args=(f"writer {number}",)) for number in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(refused) == 7
    assert shelf.step(id).last == 1


def test_search_finds_all_words_in_title_composer_and_tags(shelf: Shelf) -> None:
    add_tune(shelf, "Lanterns", "Fioritura", ("swing",))
    add_tune(shelf, "100% Blue", "Anon", ("blues",))
    found = {
        words: [entry.title for entry in shelf.tunes(words)] for words in ("lan fio", "swing", "%", "_", "blue x")
    }
    assert found == {"lan fio": ["Lanterns"], "swing": ["Lanterns"], "%": ["100% Blue"], "_": [], "blue x": []}
    assert [entry.title for entry in shelf.tunes(tag="blues")] == ["100% Blue"]
    assert shelf.tags() == {"blues": 1, "swing": 1}


def test_the_tune_that_was_worked_on_last_comes_first(shelf: Shelf) -> None:
    first, second = add_tune(shelf, "First"), add_tune(shelf, "Second")
    arrangements = [shelf.add_arrangement(id, "one", "zero") for id in (first, second)]
    shelf.add_step(arrangements[0], 0, "changed", "one")
    assert [entry.title for entry in shelf.tunes()] == ["First", "Second"]


def test_title_and_tags_can_be_changed(shelf: Shelf) -> None:
    id = add_tune(shelf, tags=("old", "kept"))
    assert shelf.describe(id, title="  New ", tags=("kept", "new")).tags == ("kept", "new")
    assert shelf.tune(id).title == "New"
    with pytest.raises(OptionError, match="title"):
        shelf.describe(id, title=" ")
    with pytest.raises(OptionError, match="20 is the limit"):
        shelf.describe(id, tags=tuple(f"tag {number}" for number in range(21)))


def test_a_tune_goes_with_its_arrangements(shelf: Shelf) -> None:
    tune = add_tune(shelf)
    arrangement = shelf.add_arrangement(tune, "one", "zero")
    shelf.remove_tune(tune)
    with pytest.raises(NotOnShelfError):
        shelf.step(arrangement)
    with pytest.raises(NotOnShelfError):
        shelf.tune(tune)
    with sqlite3.connect(shelf.path) as connection:
        assert connection.execute("SELECT count(*) FROM steps").fetchone() == (0,)


def test_a_shelf_of_a_later_version_is_refused(tmp_path: Path) -> None:
    Shelf(tmp_path).close()
    with sqlite3.connect(tmp_path / "shelf.db") as connection:
        connection.execute(f"PRAGMA user_version = {len(MIGRATIONS) + 1}")
    connection.close()
    with pytest.raises(ReadError, match="update Fioritura"):
        Shelf(tmp_path)


def test_a_file_that_is_no_shelf_is_refused_and_left_alone(tmp_path: Path) -> None:
    (tmp_path / "shelf.db").write_bytes(b"no database at all " * 100)
    with pytest.raises(ReadError, match="can't be opened"):
        Shelf(tmp_path)
    assert (tmp_path / "shelf.db").read_bytes().startswith(b"no database")


def test_a_folder_that_can_not_be_made_is_refused(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file")
    with pytest.raises(OutputError, match="another folder"):
        Shelf(tmp_path / "taken" / "data")


def test_the_data_folder_can_be_named(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv(DATA_VARIABLE, str(tmp_path / "mine"))
    assert data_folder() == tmp_path / "mine"
    monkeypatch.delenv(DATA_VARIABLE)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    assert data_folder() == tmp_path / "fioritura"


def filled(shelf: Shelf) -> None:
    tune = add_tune(shelf, "Air", "Anon", ("slow",))
    id = shelf.add_arrangement(tune, "first", "zero")
    shelf.add_step(id, 0, "kept a turn", "one")
    shelf.move(id, 1, -1)
    add_tune(shelf, "../../etc/passwd", "", ())


def archived(shelf: Shelf) -> bytes:
    file = io.BytesIO()
    write_archive(shelf, file)
    return file.getvalue()


def test_everything_comes_out_and_in_again(shelf: Shelf, tmp_path: Path) -> None:
    filled(shelf)
    other = Shelf(tmp_path / "other")
    assert restore(other, io.BytesIO(archived(shelf))).added == 2
    for mine, theirs in zip(
        sorted(shelf.tunes(), key=lambda e: e.id), sorted(other.tunes(), key=lambda e: e.id), strict=True
    ):
        assert (mine.title, mine.composer, mine.facts, mine.tags) == (
            theirs.title,
            theirs.composer,
            theirs.facts,
            theirs.tags,
        )
        assert shelf.source(mine.id) == other.source(theirs.id)
        for one, two in zip(mine.versions, theirs.versions, strict=True):
            assert (one.name, one.position) == (two.name, two.position)
            steps = [
                [(s.number, s.words, s.text) for s in s_of.steps(v.id)] for s_of, v in ((shelf, one), (other, two))
            ]
            assert steps[0] == steps[1]
    other.close()


def test_no_name_in_an_archive_leads_out_of_its_folder(shelf: Shelf) -> None:
    filled(shelf)
    names = zipfile.ZipFile(io.BytesIO(archived(shelf))).namelist()
    assert not [name for name in names if ".." in name.split("/") or name.startswith("/")]


@pytest.mark.parametrize("damage", ["no zip", "no manifest", "other", "version", "entry", "step", "arrangement"])
def test_a_damaged_archive_is_refused_and_adds_nothing(shelf: Shelf, tmp_path: Path, damage: str) -> None:
    filled(shelf)
    source = zipfile.ZipFile(io.BytesIO(archived(shelf)))
    manifest = json.loads(source.read("shelf.json"))
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w") as target:
        if damage == "other":
            manifest["format"] = "something else"
        elif damage == "version":
            manifest["version"] = 99
        elif damage == "entry":
            manifest["tunes"][-1]["source"] = "missing"
        elif damage == "step":
            manifest["tunes"][0]["arrangements"][0]["position"] = 17
        for name in source.namelist():
            if name != "shelf.json":
                target.writestr(name, source.read(name))
        if damage != "no manifest":
            target.writestr("shelf.json", json.dumps(manifest))
    data = b"no zip" if damage == "no zip" else file.getvalue()

    def check(text: str) -> None:
        if damage == "arrangement":
            raise ReadError("damaged")

    other = Shelf(tmp_path / "other")
    with pytest.raises(ReadError):
        restore(other, io.BytesIO(data), Checks(check))
    assert other.tunes() == []
    other.close()


@pytest.mark.parametrize("damage", ["garbled", "deep", "endless number"])
def test_an_archive_that_breaks_the_readers_below_is_refused(shelf: Shelf, tmp_path: Path, damage: str) -> None:
    """The errors of zlib, of Python's recursion and of its numbers are none of ours."""
    filled(shelf)
    data = archived(shelf)
    if damage == "garbled":
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            start = archive.getinfo("shelf.json").header_offset + 30 + len("shelf.json")
        data = data[:start] + b"\xff" * 20 + data[start + 20 :]
        with pytest.raises(zlib.error):
            zipfile.ZipFile(io.BytesIO(data)).read("shelf.json")
    else:
        text = b"[" * 100_000 if damage == "deep" else b'{"format": ' + b"9" * 5000 + b"}"
        data = rewritten(data, text)
    other = Shelf(tmp_path / "other")
    with pytest.raises(ReadError, match="damaged"):
        restore(other, io.BytesIO(data))
    assert other.tunes() == []
    other.close()


WRITER = """
import sys
from pathlib import Path
from fioritura.shelf.store import Shelf
shelf, id = Shelf(Path(sys.argv[1])), int(sys.argv[2])
number = shelf.step(id).number
while True:
    number = shelf.add_step(id, number, "more", f"step {number + 1} " * 2000).number
    print(number, flush=True)
"""


def killed_while_writing(shelf: Shelf, id: int, lines: int) -> int:
    """Let a process write, kill it after some confirmed steps, and return the last step that it had confirmed."""
    command = [sys.executable, "-c", WRITER, str(shelf.path.parent), str(id)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        confirmed = [int(process.stdout.readline()) for _ in range(lines)]
        os.kill(process.pid, signal.SIGKILL)
        confirmed += [int(line) for line in process.stdout.read().split("\n")[:-1]]
    return max(confirmed)


def assert_kills_lose_nothing(shelf: Shelf, times: int) -> None:
    id = shelf.add_arrangement(add_tune(shelf), "first", "zero")
    for time in range(times):
        confirmed = killed_while_writing(shelf, id, 3 + time % 5)
        step = shelf.step(id)
        assert step.number >= confirmed
        assert step.text == f"step {step.number} " * 2000
    with sqlite3.connect(shelf.path) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)


@pytest.mark.skipif(sys.platform == "win32", reason="needs POSIX signals")
def test_a_kill_in_the_middle_of_writing_loses_nothing_that_was_confirmed(shelf: Shelf) -> None:
    assert_kills_lose_nothing(shelf, 3)


@pytest.mark.slow
@pytest.mark.skipif(sys.platform == "win32", reason="needs POSIX signals")
def test_fifty_kills_lose_nothing_that_was_confirmed(shelf: Shelf) -> None:
    assert_kills_lose_nothing(shelf, 50)


def test_lessons_belong_to_an_arrangement_and_go_with_its_tune(shelf: Shelf) -> None:
    tune = add_tune(shelf)
    arrangement = shelf.add_arrangement(tune, "first", "zero")
    lesson = shelf.lessons.add(arrangement, " On Turns ", {"level": 2})
    changed = shelf.lessons.change(lesson.id, 0, "On Scoops", {"level": 3})
    assert (changed.title, changed.plan, changed.revision, changed.tune_id) == ("On Scoops", {"level": 3}, 1, tune)
    with pytest.raises(StaleError, match="revision 1, not 0"):
        shelf.lessons.change(lesson.id, 0, "Late", {})
    assert [entry.id for entry in shelf.lessons.lessons(tune_id=tune)] == [lesson.id]
    with pytest.raises(NotOnShelfError):
        shelf.lessons.add(arrangement + 1, "Nowhere", {})
    shelf.remove_tune(tune)
    assert shelf.lessons.lessons() == []
    with pytest.raises(NotOnShelfError):
        shelf.lessons.lesson(lesson.id)


def test_lessons_come_out_and_in_again_and_bad_plans_are_refused(shelf: Shelf, tmp_path: Path) -> None:
    filled(shelf)
    of = shelf.tunes("Air")[0].versions[0].id
    shelf.lessons.add(of, "On Turns", {"techniques": [TURN.id]})
    data = archived(shelf)
    other = Shelf(tmp_path / "other")

    def refuse(plan: object) -> None:
        raise OptionError("no plan")

    with pytest.raises(ReadError, match="no plan"):
        restore(other, io.BytesIO(data), Checks(plan=refuse))
    assert other.tunes() == []
    restore(other, io.BytesIO(data))
    back = other.lessons.lessons()
    assert [(entry.title, entry.plan, entry.tune) for entry in back] == [
        ("On Turns", {"techniques": [TURN.id]}, "Air")
    ]
    other.close()


def test_a_shelf_of_an_earlier_version_is_brought_up_to_date(tmp_path: Path) -> None:
    with sqlite3.connect(tmp_path / "shelf.db") as connection:
        for statement in MIGRATIONS[0]:
            connection.execute(statement)
        connection.execute("PRAGMA user_version = 1")
        connection.execute("INSERT INTO tunes VALUES (7, 'Old', '', '{}', 'old.abc', x'00', '{}', '2024')")
    connection.close()
    shelf = Shelf(tmp_path)
    assert [entry.title for entry in shelf.tunes()] == ["Old"]
    shelf.lessons.add(shelf.add_arrangement(7, "first", "zero"), "New", {})
    shelf.close()
