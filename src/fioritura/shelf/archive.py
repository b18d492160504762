"""The whole shelf as one ZIP file, and back: nothing in it needs this program to be read.

``shelf.json`` lists the students, the tunes and what belongs to them; every tune has a folder with the file that it came
from, one JSON document (`fioritura.arrange.arrangement_file`) for each step of each arrangement, and for each take the
recording, the arrangement that was to be played, and the report. Restoring adds to what is on the shelf, and takes back
nothing; a student whose name stands there already is taken for the same.
"""

from __future__ import annotations

import io
import json
import re
import zipfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from typing import IO, Any, Final

from fioritura.errors import FiorituraError, ReadError
from fioritura.files import ZIP_DAMAGE
from fioritura.shelf.recordings import check_recording
from fioritura.shelf.store import Shelf, TuneEntry
from fioritura.shelf.takes import NewTake
from fioritura.words import message

__all__ = ["FORMAT", "Checks", "restore", "write_archive"]

FORMAT: Final = "fioritura shelf"
VERSION: Final = 2
_READ_VERSIONS: Final = (1, VERSION)
MOST_ENTRIES: Final = 200_000
MOST_ENTRY_BYTES: Final = 64 * 1024 * 1024
MOST_BYTES: Final = 2 * 1024 * 1024 * 1024
"""Of all entries together, unpacked."""


def write_archive(shelf: Shelf, file: IO[bytes]) -> None:
    """Write everything on the shelf into an open file."""
    listed = []
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as archive:
        for entry in reversed(shelf.tunes()):
            folder = f"tunes/{entry.id:04}-{_plain(entry.title)}"
            source = f"{folder}/{entry.source_name}"
            archive.writestr(source, shelf.source(entry.id))
            arrangements = list(_arrangements(shelf, entry, folder, archive))
            takes = list(_takes(shelf, entry, folder, archive))
            lessons = list(_lessons(shelf, entry))
            listed.append(_record(entry, source) | {"arrangements": arrangements, "takes": takes, "lessons": lessons})
        students = [student.name for student in shelf.takes.students()]
        manifest = {"format": FORMAT, "version": VERSION, "students": students, "tunes": listed}
        archive.writestr("shelf.json", json.dumps(manifest, indent=1, ensure_ascii=False))


def _anything(*held: Any) -> None:
    pass


def _is_json(report: str, facts: Mapping[str, Any]) -> None:
    json.loads(report)


@dataclass(frozen=True, slots=True)
class Checks:
    """What raises where something in an archive can't be used: the text of an arrangement; the report on a take, and its
    facts; the plan of a lesson; the facts of a tune, and how it is read from its file."""

    arrangement: Callable[[str], object] = _anything
    take: Callable[[str, Mapping[str, Any]], object] = _is_json
    plan: Callable[[Mapping[str, Any]], object] = _anything
    tune: Callable[[Mapping[str, Any], Mapping[str, Any]], object] = _anything


def restore(shelf: Shelf, file: IO[bytes], checks: Checks = Checks()) -> int:
    """Add what an archive holds to the shelf; returns how many tunes. Everything is read and checked before anything is
    added.

    Raises:
        ReadError: it is no such archive, or it is damaged, too large, or of a later version.
    """
    with _damage_told(), zipfile.ZipFile(file) as archive:
        _check_size(archive)
        manifest = json.loads(_entry(archive, "shelf.json"))
        if not isinstance(manifest, dict) or manifest.get("format") != FORMAT:
            raise ReadError("no-shelf-archive")
        if manifest.get("version") not in _READ_VERSIONS:
            raise ReadError("archive-version", given=str(manifest.get("version")), known=str(VERSION))
        names = [str(name) for name in manifest.get("students", [])]
        found = [_read(archive, record, checks) for record in manifest["tunes"]]
        students = _students(shelf, names)
        for add in found:
            add(shelf, students)
    return len(found)


@contextmanager
def _damage_told() -> Iterator[None]:
    try:
        yield
    except (*ZIP_DAMAGE, KeyError, TypeError, IndexError, AttributeError) as error:
        raise ReadError("archive-damaged", reason=f"{type(error).__name__}: {error}") from None


def _students(shelf: Shelf, names: Sequence[str]) -> dict[str, int]:
    """The numbers of students by name; those who are not on the shelf yet are added."""
    standing = {student.name.lower(): student.id for student in shelf.takes.students()}
    return {name: standing.get(name.lower()) or shelf.takes.add_student(name) for name in dict.fromkeys(names)}


def _record(entry: TuneEntry, source: str) -> dict[str, Any]:
    return {
        "title": entry.title,
        "composer": entry.composer,
        "facts": dict(entry.facts),
        "tags": list(entry.tags),
        "source_name": entry.source_name,
        "source": source,
        "reading": dict(entry.reading),
    }


def _arrangements(shelf: Shelf, entry: TuneEntry, folder: str, archive: zipfile.ZipFile) -> Iterator[dict[str, Any]]:
    for version in entry.versions:
        steps = []
        for step in shelf.steps(version.id):
            name = f"{folder}/arrangement-{version.id}/{step.number:04}.json"
            archive.writestr(name, step.text)
            steps.append({"number": step.number, "words": step.words, "file": name})
        yield {"name": version.name, "position": version.position, "steps": steps}


def _takes(shelf: Shelf, entry: TuneEntry, folder: str, archive: zipfile.ZipFile) -> Iterator[dict[str, Any]]:
    places = {version.id: place for place, version in enumerate(entry.versions)}
    for take in reversed(shelf.takes.takes(tune_id=entry.id)):
        recording = shelf.takes.recordings.path(take.recording)
        if not take.is_kept or not recording.is_file():
            continue
        names = {kind: f"{folder}/take-{take.id}/{kind}.json" for kind in ("arrangement", "report")}
        archive.writestr(names["arrangement"], shelf.takes.arrangement(take.id))
        archive.writestr(names["report"], shelf.takes.report(take.id))
        names["recording"] = f"{folder}/take-{take.id}/{take.recording}"
        archive.write(recording, names["recording"], zipfile.ZIP_STORED)
        yield names | {
            "student": take.student or None,
            "taken_at": take.taken_at,
            "facts": dict(take.facts),
            "of": places.get(take.arrangement_id or 0),
        }


def _lessons(shelf: Shelf, entry: TuneEntry) -> Iterator[dict[str, Any]]:
    places = {version.id: place for place, version in enumerate(entry.versions)}
    for lesson in reversed(shelf.lessons.lessons(tune_id=entry.id)):
        yield {"title": lesson.title, "plan": dict(lesson.plan), "of": places[lesson.arrangement_id]}


Add = Callable[[Shelf, Mapping[str, int]], None]


def _read(archive: zipfile.ZipFile, record: Any, checks: Checks) -> Add:
    """What adds one tune of the archive to a shelf."""
    source = _entry(archive, record["source"])
    facts, reading = dict(record["facts"]), dict(record["reading"])
    _check(checks.tune, facts, reading)
    arrangements = [_history(archive, arrangement, checks) for arrangement in record["arrangements"]]
    takes = list(record.get("takes", []))
    for take in takes:
        _check_take(archive, take, len(arrangements), checks)
    lessons = [
        (range(len(arrangements))[lesson["of"]], str(lesson["title"]), dict(lesson["plan"]))
        for lesson in record.get("lessons", [])
    ]
    for _, _, plan in lessons:
        _check(checks.plan, plan)

    def add(shelf: Shelf, students: Mapping[str, int]) -> None:
        id = shelf.add_tune(
            str(record["title"])[:200],
            str(record["composer"])[:200],
            facts=facts,
            source_name=_plain(str(record["source_name"])),
            source=source,
            reading=reading,
            tags=tuple(map(str, record["tags"])),
        )
        versions = [shelf.add_history(id, name, position, steps) for name, position, steps in arrangements]
        for take in takes:
            _add_take(shelf, archive, take, id, versions, students)
        for of, title, plan in lessons:
            shelf.lessons.add(versions[of], title, plan)

    return add


def _history(
    archive: zipfile.ZipFile, arrangement: Any, checks: Checks
) -> tuple[str, int, list[tuple[int, str, str]]]:
    """The name of an arrangement, the step at which it stands, and its steps."""
    steps = [(int(s["number"]), str(s["words"]), _entry(archive, s["file"]).decode()) for s in arrangement["steps"]]
    numbers = [number for number, _, _ in steps]
    if int(arrangement["position"]) not in numbers or numbers != list(range(numbers[0], numbers[0] + len(numbers))):
        raise ReadError("archive-damaged", reason=message("archive-no-steps"))
    for _, _, text in steps:
        _check(checks.arrangement, text)
    return str(arrangement["name"])[:200], int(arrangement["position"]), steps


def _check_take(archive: zipfile.ZipFile, take: Any, arrangements: int, checks: Checks) -> None:
    _check(checks.arrangement, _entry(archive, take["arrangement"]).decode())
    _check(checks.take, _entry(archive, take["report"]).decode(), dict(take["facts"]))
    datetime.fromisoformat(take["taken_at"])
    if not isinstance(take["student"], str | None):
        raise ReadError("archive-damaged", reason=message("archive-no-name"))
    check_recording(io.BytesIO(_entry(archive, take["recording"])))
    if take["of"] not in (None, *range(arrangements)):
        raise ReadError("archive-damaged", reason=message("archive-no-arrangement"))


def _add_take(
    shelf: Shelf,
    archive: zipfile.ZipFile,
    take: Any,
    tune_id: int,
    versions: Sequence[int],
    students: Mapping[str, int],
) -> None:
    recording = shelf.takes.recordings.add(io.BytesIO(_entry(archive, take["recording"])))
    of = take["of"]
    shelf.takes.add(
        NewTake(
            id=recording.id,
            tune_id=tune_id,
            arrangement_id=None if of is None else versions[of],
            student_id=students.get(take["student"] or ""),
            recording=recording.name,
            facts=dict(take["facts"]),
            arrangement=_entry(archive, take["arrangement"]).decode(),
            report=_entry(archive, take["report"]).decode(),
            is_kept=True,
            taken_at=take["taken_at"],
        )
    )


def _check(check: Callable[..., object], *held: Any) -> None:
    try:
        check(*held)
    except FiorituraError as error:
        raise ReadError("archive-bad-content", reason=error.message) from None


def _check_size(archive: zipfile.ZipFile) -> None:
    entries = archive.infolist()
    total = sum(entry.file_size for entry in entries)
    if len(entries) > MOST_ENTRIES or total > MOST_BYTES:
        raise ReadError("archive-too-large", files=len(entries), size=total, limit=MOST_BYTES)


def _entry(archive: zipfile.ZipFile, name: str) -> bytes:
    """One file of the archive; never more of it than it may hold, whatever it says of itself."""
    with archive.open(name) as file:
        data = file.read(MOST_ENTRY_BYTES + 1)
    if len(data) > MOST_ENTRY_BYTES:
        raise ReadError("archive-entry-too-large", name=name, limit=MOST_ENTRY_BYTES)
    return data


def _plain(text: str) -> str:
    """A harmless file name."""
    return re.sub(r"[^\w.()' -]", "_", text).strip(". ")[:80] or "tune"
