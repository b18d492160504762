"""Students, takes and recordings on the shelf: kept whole, given out and taken in again, and nothing else let in.

What is read back is compared with what was written, sample by sample; formats are those of libsndfile (its documentation
lists them), MP3 is made by LAME.
"""

from __future__ import annotations

import io
import json
import os
import signal
import sqlite3
import subprocess
import sys
import time
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile

from fioritura.errors import OptionError, ReadError
from fioritura.shelf.archive import Restored, restore, write_archive
from fioritura.shelf.recordings import MOST_SEC, Recordings, media_type_of
from fioritura.shelf.schema import MIGRATIONS
from fioritura.shelf.store import NotOnShelfError, Shelf
from fioritura.shelf.takes import NewTake
from fioritura.sound.encode import encode_audio
from tests.archives import rewritten
from tests.test_shelf import add_tune

RATE = 16000
FACTS = {"tempo": 96.0, "done": 3, "asked": 5}


@pytest.fixture
def shelf(tmp_path: Path) -> Iterator[Shelf]:
    shelf = Shelf(tmp_path / "data")
    yield shelf
    shelf.close()


def samples(seconds: float = 2.0) -> np.ndarray:
    times = np.arange(int(seconds * RATE)) / RATE
    return np.round(12000 * np.sin(2 * np.pi * 440 * times)).astype(np.int16)


def wav(seconds: float = 2.0, subtype: str = "PCM_16") -> io.BytesIO:
    file = io.BytesIO()
    data = samples(seconds)
    soundfile.write(file, data / 32768 if subtype == "FLOAT" else data, RATE, subtype, format="WAV")
    return file


def add_take(shelf: Shelf, tune: int, student: int | None = None, **values: Any) -> str:
    recording = shelf.takes.recordings.add(wav())
    new: dict[str, Any] = {
        "arrangement_id": None,
        "facts": FACTS,
        "arrangement": "zero",
        "report": '{"praise": "Good."}',
    }
    new |= values
    shelf.takes.add(NewTake(id=recording.id, tune_id=tune, student_id=student, recording=recording.name, **new))
    return recording.id


# Recordings


def test_a_wav_file_becomes_flac_and_loses_nothing(tmp_path: Path) -> None:
    recordings = Recordings(tmp_path / "recordings")
    recording = recordings.add(wav())
    assert recording.seconds == pytest.approx(2.0)
    assert recording.name == f"{recording.id}.flac"
    kept, rate = soundfile.read(recordings.path(recording.name), dtype="int16")
    assert rate == RATE
    assert np.array_equal(kept, samples())
    assert soundfile.info(recordings.path(recording.name)).subtype == "PCM_16"


@pytest.mark.parametrize("kind", ["flac", "ogg", "mp3"])
def test_other_formats_are_kept_as_they_came(tmp_path: Path, kind: str) -> None:
    audio = np.column_stack([samples(6.0)] * 2).astype(np.float32) / np.float32(32768)
    file = io.BytesIO()
    if kind == "mp3":
        file.write(encode_audio(audio, "mp3"))
    else:
        soundfile.write(file, audio, RATE, format=kind)
    recordings = Recordings(tmp_path)
    recording = recordings.add(file)
    assert recordings.path(recording.name).read_bytes() == file.getvalue()
    assert recording.name.endswith(f".{kind}")
    assert media_type_of(recording.name) == {"flac": "audio/flac", "ogg": "audio/ogg", "mp3": "audio/mpeg"}[kind]


def test_a_floating_point_wav_is_kept_to_24_bits(tmp_path: Path) -> None:
    recordings = Recordings(tmp_path)
    kept, _ = soundfile.read(recordings.path(recordings.add(wav(subtype="FLOAT")).name))
    assert np.abs(kept - samples() / 32768).max() < 2**-22


def aiff() -> bytes:
    file = io.BytesIO()
    soundfile.write(file, samples(), RATE, format="AIFF")
    return file.getvalue()


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "no recording that can be read"),
        (b"X:1\nK:C\nCDEF|\n" * 50, "no recording that can be read"),
        (b"\x1aE\xdf\xa3" + b"\x00webm" * 400, "save it as WAV, FLAC, MP3 or OGG"),
        (aiff(), "type AIFF is not taken"),
        (wav(0.4).getvalue(), "lasts 0.4 seconds"),
        (wav().getvalue()[:44], "lasts 0"),
    ],
    ids=["empty", "text", "webm", "aiff", "short", "cut"],
)
def test_what_is_no_recording_is_refused_and_leaves_nothing(tmp_path: Path, data: bytes, words: str) -> None:
    with pytest.raises(ReadError, match=words):
        Recordings(tmp_path).add(io.BytesIO(data))
    assert list(tmp_path.iterdir()) == []


def test_a_recording_of_more_than_ten_minutes_is_refused_whatever_its_size(tmp_path: Path) -> None:
    """Silence in FLAC: an hour of it is some kilobytes."""
    file = io.BytesIO()
    soundfile.write(file, np.zeros(int((MOST_SEC + 5) * 8000), np.int16), 8000, format="FLAC")
    assert len(file.getvalue()) < 200_000
    with pytest.raises(ReadError, match="longer than 10 minutes"):
        Recordings(tmp_path).add(file)
    assert list(tmp_path.iterdir()) == []


def test_what_a_crash_has_left_is_swept_after_a_day(shelf: Shelf) -> None:
    known = add_take(shelf, add_tune(shelf))
    folder = shelf.takes.recordings.folder
    old, young = folder / "0123456789abcdef.flac", folder / "fedcba9876543210.flac"
    for path in (old, young):
        path.write_bytes(b"left")
    for path in (old, folder / f"{known}.flac"):
        os.utime(path, (time.time() - 90_000,) * 2)
    Shelf(shelf.path.parent).close()
    assert {path.name for path in folder.iterdir()} == {f"{known}.flac", young.name}


# Students and takes


def test_a_shelf_of_the_first_version_gets_the_new_tables_and_keeps_what_it_held(tmp_path: Path) -> None:
    connection = sqlite3.connect(tmp_path / "shelf.db")
    for statement in MIGRATIONS[0]:
        connection.execute(statement)
    connection.execute("INSERT INTO tunes VALUES (7, 'Air', '', '{}', 'air.abc', x'00', '{}', '2025-01-01')")
    connection.execute("PRAGMA user_version = 1")
    connection.commit()
    connection.close()
    shelf = Shelf(tmp_path)
    assert [entry.title for entry in shelf.tunes()] == ["Air"]
    assert shelf.takes.take(add_take(shelf, 7)).tune == "Air"
    shelf.close()
    with sqlite3.connect(tmp_path / "shelf.db") as connection:
        assert connection.execute("PRAGMA user_version").fetchone() == (len(MIGRATIONS),)


def test_a_take_waits_until_it_is_kept_as_that_of_a_student(shelf: Shelf) -> None:
    tune, student = add_tune(shelf), shelf.takes.add_student("  Ada   L. ")
    id = add_take(shelf, tune)
    assert not shelf.takes.take(id).is_kept
    assert shelf.takes.student(student).takes == 0
    kept = shelf.takes.keep(id, student)
    assert (kept.is_kept, kept.student, kept.tune) == (True, "Ada L.", "Air")
    entry = shelf.takes.student(student)
    assert (entry.name, entry.takes, entry.last_at) == ("Ada L.", 1, kept.taken_at)
    assert kept.facts == FACTS
    assert (shelf.takes.arrangement(id), json.loads(shelf.takes.report(id))["praise"]) == ("zero", "Good.")


def test_takes_are_listed_by_student_and_tune_the_latest_first(shelf: Shelf) -> None:
    one, two = add_tune(shelf, "One"), add_tune(shelf, "Two")
    ada, bo = shelf.takes.add_student("Ada"), shelf.takes.add_student("Bo")
    for day, (tune, student) in enumerate(((one, ada), (two, ada), (one, bo), (one, ada)), start=1):
        add_take(shelf, tune, student, taken_at=f"2025-03-0{day}T10:00:00.000+00:00", is_kept=True)
    assert [take.taken_at[9] for take in shelf.takes.takes(student_id=ada)] == ["4", "2", "1"]
    assert [take.taken_at[9] for take in shelf.takes.takes(student_id=ada, tune_id=one)] == ["4", "1"]
    assert [student.name for student in shelf.takes.students()] == ["Ada", "Bo"]


@pytest.mark.parametrize(
    ("name", "words"), [(" ", "needs a name"), ("x" * 81, "80 is the limit"), ("ADA", "already")]
)
def test_names_are_checked(shelf: Shelf, name: str, words: str) -> None:
    ada, bo = shelf.takes.add_student("Ada"), shelf.takes.add_student("Bo")
    with pytest.raises(OptionError, match=words):
        shelf.takes.add_student(name)
    with pytest.raises(OptionError, match=words):
        shelf.takes.rename_student(bo, name)
    shelf.takes.rename_student(ada, "ada")
    assert shelf.takes.student(ada).name == "ada"


@pytest.mark.parametrize("gone", ["take", "student", "tune"])
def test_recordings_go_with_their_takes(shelf: Shelf, gone: str) -> None:
    tune, other = add_tune(shelf), add_tune(shelf)
    student = shelf.takes.add_student("Ada")
    id, stays = add_take(shelf, tune, student), add_take(shelf, other)
    match gone:
        case "take":
            shelf.takes.remove(id)
        case "student":
            shelf.takes.remove_student(student)
        case _:
            shelf.remove_tune(tune)
    with pytest.raises(NotOnShelfError):
        shelf.takes.take(id)
    assert [path.stem for path in shelf.takes.recordings.folder.iterdir()] == [stays]


def test_a_recording_of_which_nothing_was_heard_can_be_given_up(shelf: Shelf) -> None:
    recording = shelf.takes.recordings.add(wav())
    shelf.takes.remove(recording.id)
    assert list(shelf.takes.recordings.folder.iterdir()) == []
    with pytest.raises(NotOnShelfError):
        shelf.takes.remove(recording.id)


def test_a_take_of_an_arrangement_that_is_gone_stays(shelf: Shelf) -> None:
    tune = add_tune(shelf)
    arrangement = shelf.add_arrangement(tune, "first", "zero")
    id = add_take(shelf, tune, arrangement_id=arrangement)
    with sqlite3.connect(shelf.path) as connection:
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("DELETE FROM arrangements")
    assert shelf.takes.take(id).arrangement_id is None
    assert shelf.takes.take(add_take(shelf, tune, arrangement_id=99)).arrangement_id is None


def test_nothing_is_kept_for_a_tune_or_student_that_is_not_there(shelf: Shelf) -> None:
    tune = add_tune(shelf)
    for values in ({"tune": 99}, {"tune": tune, "student": 99}):
        with pytest.raises(NotOnShelfError):
            add_take(shelf, **values)
    with pytest.raises(NotOnShelfError):
        shelf.takes.keep(add_take(shelf, tune), 99)
    with pytest.raises(NotOnShelfError):
        shelf.takes.keep("0123456789abcdef", None)


# Archive


def archived(shelf: Shelf) -> io.BytesIO:
    file = io.BytesIO()
    write_archive(shelf, file)
    return file


def filled(shelf: Shelf) -> None:
    tune = add_tune(shelf)
    arrangement = shelf.add_arrangement(tune, "first", "zero")
    ada = shelf.takes.add_student("Ada")
    shelf.takes.add_student("Bo")
    add_take(shelf, tune, ada, arrangement_id=arrangement, is_kept=True, taken_at="2025-03-01T10:00:00.000+00:00")
    add_take(shelf, tune, is_kept=True, taken_at="2025-03-02T10:00:00.000+00:00")
    add_take(shelf, tune)


def test_students_takes_and_recordings_come_out_and_in_again(shelf: Shelf, tmp_path: Path) -> None:
    filled(shelf)
    other = Shelf(tmp_path / "other")
    other.takes.add_student("ADA")
    assert restore(other, archived(shelf)).added == 1
    assert [student.name for student in other.takes.students()] == ["ADA", "Bo"]
    mine = [take for take in shelf.takes.takes() if take.is_kept]
    theirs = other.takes.takes()
    assert [(t.taken_at, t.facts, t.student.lower()) for t in mine] == [
        (t.taken_at, t.facts, t.student.lower()) for t in theirs
    ]
    assert theirs[1].arrangement_id == other.tunes()[0].versions[0].id
    assert theirs[0].arrangement_id is None
    for take in theirs:
        kept, _ = soundfile.read(other.takes.recordings.path(take.recording), dtype="int16")
        assert np.array_equal(kept, samples())
        assert other.takes.report(take.id) == '{"praise": "Good."}'
    other.close()


def test_an_archive_of_the_first_version_is_still_read(shelf: Shelf, tmp_path: Path) -> None:
    filled(shelf)
    whole = archived(shelf)
    manifest = json.loads(zipfile.ZipFile(whole).read("shelf.json"))
    del manifest["students"], manifest["tunes"][0]["takes"]
    older = io.BytesIO(rewritten(whole.getvalue(), manifest | {"version": 1}))
    other = Shelf(tmp_path / "other")
    assert restore(other, older).added == 1
    assert other.takes.takes() == []
    other.close()


@pytest.mark.parametrize("damage", ["recording", "report", "missing", "of"])
def test_a_damaged_take_is_refused_and_nothing_is_added(shelf: Shelf, tmp_path: Path, damage: str) -> None:
    filled(shelf)
    whole = archived(shelf)
    manifest = json.loads(zipfile.ZipFile(whole).read("shelf.json"))
    take = manifest["tunes"][0]["takes"][0]
    changed = {take["recording"]: b"no sound"} if damage == "recording" else {}
    if damage == "report":
        changed = {take["report"]: b"{no json"}
    elif damage == "missing":
        take["recording"] = "tunes/elsewhere.flac"
    elif damage == "of":
        take["of"] = 7
    other = Shelf(tmp_path / "other")
    with pytest.raises(ReadError):
        restore(other, io.BytesIO(rewritten(whole.getvalue(), manifest, changed)))
    assert other.tunes() == []
    assert not other.takes.recordings.folder.exists()
    other.close()


def test_an_archive_that_names_one_recording_a_thousand_times_is_refused(shelf: Shelf, tmp_path: Path) -> None:
    filled(shelf)
    whole = archived(shelf)
    manifest = json.loads(zipfile.ZipFile(whole).read("shelf.json"))
    manifest["tunes"][0]["takes"] *= 1000
    other = Shelf(tmp_path / "other")
    with pytest.raises(ReadError, match="twice"):
        restore(other, io.BytesIO(rewritten(whole.getvalue(), manifest)))
    assert other.tunes() == []
    assert not other.takes.recordings.folder.exists()
    other.close()


def test_an_archive_that_unpacks_to_a_thousand_times_its_size_is_refused(shelf: Shelf, tmp_path: Path) -> None:
    filled(shelf)
    whole = archived(shelf)
    names = zipfile.ZipFile(whole).namelist()
    (source,) = (name for name in names if name.endswith(".abc"))
    data = rewritten(whole.getvalue(), zipfile.ZipFile(whole).read("shelf.json"), {source: bytes(60_000_000)})
    assert len(data) < 200_000
    other = Shelf(tmp_path / "other")
    with pytest.raises(ReadError, match="is the limit"):
        restore(other, io.BytesIO(data))
    assert other.tunes() == []
    other.close()


def test_what_fails_while_it_is_added_is_taken_back(shelf: Shelf, tmp_path: Path) -> None:
    """Tags are counted only when they are added: the second tune has too many."""
    filled(shelf)
    add_tune(shelf)
    whole = archived(shelf)
    manifest = json.loads(zipfile.ZipFile(whole).read("shelf.json"))
    manifest["tunes"][1]["tags"] = [f"tag {number}" for number in range(30)]
    other = Shelf(tmp_path / "other")
    other.takes.add_student("Ada")
    with pytest.raises(OptionError, match="tags"):
        restore(other, io.BytesIO(rewritten(whole.getvalue(), manifest)), doubles="copy")
    assert other.tunes() == [] == other.takes.takes()
    assert [student.name for student in other.takes.students()] == ["Ada"]
    assert list(other.takes.recordings.folder.iterdir()) == []
    other.close()


def test_tunes_that_stand_already_are_asked_about_left_doubled_or_replaced(shelf: Shelf) -> None:
    filled(shelf)
    whole = archived(shelf)
    (before,) = shelf.tunes()
    assert restore(shelf, whole, doubles="ask") == Restored(0, 1)
    assert restore(shelf, whole) == Restored(0, 1)
    assert [tune.id for tune in shelf.tunes()] == [before.id]
    assert restore(shelf, whole, doubles="replace") == Restored(1, 1)
    (after,) = shelf.tunes()
    assert after.id != before.id
    assert len(shelf.takes.takes()) == 2
    assert restore(shelf, whole, doubles="copy") == Restored(1, 1)
    assert len(shelf.tunes()) == 2
    assert len(shelf.takes.students()) == 2


@pytest.mark.skipif(sys.platform == "win32", reason="POSIX permissions")
def test_nobody_else_may_look_at_what_children_have_played(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    shelf = Shelf(folder)
    filled(shelf)
    modes = {path.name: path.stat().st_mode & 0o777 for path in (folder, *folder.rglob("*"))}
    assert {modes[name] for name in ("data", "recordings")} == {0o700}
    assert {mode for name, mode in modes.items() if "." in name} == {0o600}
    shelf.close()
    folder.chmod(0o755)
    (folder / "shelf.db").chmod(0o644)
    Shelf(folder).close()
    assert folder.stat().st_mode & 0o777 == 0o700
    assert (folder / "shelf.db").stat().st_mode & 0o777 == 0o600


# A kill in the middle


WRITER = """
import sys
from pathlib import Path
from fioritura.shelf.store import Shelf
from fioritura.shelf.takes import NewTake
shelf, tune, data = Shelf(Path(sys.argv[1])), int(sys.argv[2]), Path(sys.argv[3])
while True:
    with data.open("rb") as file:
        recording = shelf.takes.recordings.add(file)
    shelf.takes.add(NewTake(recording.id, tune, None, None, recording.name, {}, "zero", "{}"))
    print(recording.id, flush=True)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="needs POSIX signals")
@pytest.mark.parametrize("times", [2, pytest.param(50, marks=pytest.mark.slow)])
def test_a_kill_leaves_every_confirmed_take_with_its_whole_recording(
    shelf: Shelf, tmp_path: Path, times: int
) -> None:
    tune, data = add_tune(shelf), tmp_path / "take.wav"
    data.write_bytes(wav(5.0).getvalue())
    confirmed: set[str] = set()
    for kill in range(times):
        command = [sys.executable, "-c", WRITER, str(shelf.path.parent), str(tune), str(data)]
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
            assert process.stdout is not None
            confirmed |= {process.stdout.readline().strip() for _ in range(2 + kill % 4)}
            time.sleep(0.003 * (kill % 7))
            os.kill(process.pid, signal.SIGKILL)
            confirmed |= set(process.stdout.read().split("\n")[:-1])
    found = shelf.takes.takes()
    assert confirmed <= {take.id for take in found}
    for take in found:
        kept, _ = soundfile.read(shelf.takes.recordings.path(take.recording), dtype="int16")
        assert np.array_equal(kept, samples(5.0))
