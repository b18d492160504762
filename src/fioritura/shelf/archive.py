"""The whole shelf as one ZIP file, and back: nothing in it needs this program to be read.

``shelf.json`` lists the students, the tunes and what belongs to them; every tune has a folder with the file that it came
from, one JSON document (`fioritura.arrange.arrangement_file`) for each step of each arrangement, and for each take the
recording, the arrangement that was to be played, and the report. Restoring adds to what is on the shelf; a student whose
name stands there already is taken for the same, and a tune that came from the same file, read in the same way, is the
same tune (see `Doubles`).

An archive is not trusted: each of its files may be named once, all of them together are bounded, also by the size of the
archive itself, and everything is read and checked before anything is added. When adding fails, what was added is taken
back.
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
from typing import IO, Any, Final, Literal, get_args

from fioritura.errors import FiorituraError, ReadError
from fioritura.files import ZIP_DAMAGE
from fioritura.shelf.recordings import check_recording
from fioritura.shelf.store import Shelf, TuneEntry, content_key
from fioritura.shelf.takes import NewTake
from fioritura.words import message

__all__ = ["DOUBLES", "FORMAT", "Checks", "Doubles", "Restored", "restore", "write_archive"]

Doubles = Literal["ask", "skip", "copy", "replace"]
"""What becomes of tunes that stand on the shelf already: nothing is added at all (ask), they stay as they are on the
shelf (skip), stand twice (copy), or give way to those of the archive (replace)."""

DOUBLES: Final[tuple[Doubles, ...]] = get_args(Doubles)

FORMAT: Final = "fioritura shelf"
VERSION: Final = 2
_READ_VERSIONS: Final = (1, VERSION)
MOST_ENTRIES: Final = 200_000
MOST_ENTRY_BYTES: Final = 64 * 1024 * 1024
MOST_BYTES: Final = 2 * 1024 * 1024 * 1024
"""Of all entries together, unpacked."""

_FREE_BYTES: Final = 4 * 1024 * 1024
_MOST_TIMES_PACKED: Final = 100
"""How many times the size of the archive its entries may have together, beyond the first few megabytes: texts shrink to a
twentieth, recordings not at all."""

_LONGEST_WORDS: Final = 4000
_LONGEST_FACTS: Final = 65536


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
    facts; the plan of a lesson; the facts of a tune, how it is read from its file, and the file's name and content."""

    arrangement: Callable[[str], object] = _anything
    take: Callable[[str, Mapping[str, Any]], object] = _is_json
    plan: Callable[[Mapping[str, Any]], object] = _anything
    tune: Callable[[Mapping[str, Any], Mapping[str, Any], str, bytes], object] = _anything


@dataclass(frozen=True, slots=True)
class Restored:
    """What restoring has done: tunes added, and tunes of the archive that stood on the shelf already. Where it was to
    ask first and `doubles` is not 0, nothing was added."""

    added: int
    doubles: int


def restore(shelf: Shelf, file: IO[bytes], checks: Checks = Checks(), doubles: Doubles = "skip") -> Restored:
    """Add what an archive holds to the shelf, all of it or nothing.

    Raises:
        ReadError: it is no such archive, or it is damaged, too large, or of a later version.
    """
    with _damage_told(), zipfile.ZipFile(file) as zipped:
        archive = _Contents(zipped, _size(file))
        manifest = json.loads(archive.once("shelf.json"))
        if not isinstance(manifest, dict) or manifest.get("format") != FORMAT:
            raise ReadError("no-shelf-archive")
        if manifest.get("version") not in _READ_VERSIONS:
            raise ReadError("archive-version", given=str(manifest.get("version")), known=str(VERSION))
        names = [str(name) for name in manifest.get("students", [])]
        found = [_read(archive, record, checks) for record in manifest["tunes"]]
        standing = {entry.content: entry.id for entry in shelf.contents()}
        known = [one.content in standing for one in found]
        if doubles == "ask" and any(known):
            return Restored(0, sum(known))
        wanted = [one for one, is_known in zip(found, known, strict=True) if not (is_known and doubles == "skip")]
        _add_all(shelf, wanted, names)
        if doubles == "replace":
            for content in {one.content for one in wanted} & set(standing):
                shelf.remove_tune(standing[content])
    return Restored(len(wanted), sum(known))


def _add_all(shelf: Shelf, wanted: Sequence[_Found], names: Sequence[str]) -> None:
    """Add tunes with all that belongs to them, or none of them."""
    before = {student.id for student in shelf.takes.students()}
    added: list[int] = []
    try:
        students = _students(shelf, names) if wanted else {}
        for one in wanted:
            one.add(shelf, students, added)
    except BaseException:
        for id in added:
            shelf.remove_tune(id)
        for student in shelf.takes.students():
            if student.id not in before:
                shelf.takes.remove_student(student.id)
        raise


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


class _Contents:
    """The files of an archive, each of which may be named once; then it may be read again."""

    def __init__(self, archive: zipfile.ZipFile, packed_bytes: int) -> None:
        entries = archive.infolist()
        total = sum(entry.file_size for entry in entries)
        limit = min(MOST_BYTES, _FREE_BYTES + _MOST_TIMES_PACKED * packed_bytes)
        if len(entries) > MOST_ENTRIES or total > limit:
            raise ReadError("archive-too-large", files=len(entries), size=total, limit=limit)
        if len({entry.filename for entry in entries}) < len(entries):
            raise ReadError("archive-damaged", reason=message("archive-named-twice"))
        self._archive = archive
        self._named: set[str] = set()

    def once(self, name: Any) -> bytes:
        """The content of a file that was not named before."""
        if not isinstance(name, str) or name in self._named:
            raise ReadError("archive-damaged", reason=message("archive-named-twice"))
        self._named.add(name)
        return self.again(name)

    def again(self, name: str) -> bytes:
        """The content of a file; never more of it than it may hold, whatever it says of itself."""
        with self._archive.open(name) as file:
            data = file.read(MOST_ENTRY_BYTES + 1)
        if len(data) > MOST_ENTRY_BYTES:
            raise ReadError("archive-entry-too-large", name=name, limit=MOST_ENTRY_BYTES)
        return data


@dataclass(frozen=True, slots=True)
class _Found:
    """A tune of the archive: by what it is recognised, and what adds it to a shelf (its number goes into the list)."""

    content: str
    add: Callable[[Shelf, Mapping[str, int], list[int]], None]


def _read(archive: _Contents, record: Any, checks: Checks) -> _Found:
    """One tune of the archive, checked."""
    source = archive.once(record["source"])
    facts, reading = dict(record["facts"]), dict(record["reading"])
    if len(json.dumps([facts, reading])) > _LONGEST_FACTS:
        raise ReadError("archive-damaged", reason=message("archive-words-long"))
    _check(checks.tune, facts, reading, str(record["source_name"]), source)
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

    def add(shelf: Shelf, students: Mapping[str, int], added: list[int]) -> None:
        id = shelf.add_tune(
            str(record["title"])[:200],
            str(record["composer"])[:200],
            facts=facts,
            source_name=_plain(str(record["source_name"])),
            source=source,
            reading=reading,
            tags=tuple(map(str, record["tags"])),
        )
        added.append(id)
        versions = [shelf.add_history(id, name, position, steps) for name, position, steps in arrangements]
        for take in takes:
            _add_take(shelf, archive, take, id, versions, students)
        for of, title, plan in lessons:
            shelf.lessons.add(versions[of], title, plan)

    return _Found(content_key(source, reading), add)


def _history(archive: _Contents, arrangement: Any, checks: Checks) -> tuple[str, int, list[tuple[int, str, str]]]:
    """The name of an arrangement, the step at which it stands, and its steps."""
    steps = [(int(s["number"]), str(s["words"]), archive.once(s["file"]).decode()) for s in arrangement["steps"]]
    numbers = [number for number, _, _ in steps]
    if int(arrangement["position"]) not in numbers or numbers != list(range(numbers[0], numbers[0] + len(numbers))):
        raise ReadError("archive-damaged", reason=message("archive-no-steps"))
    for _, words, text in steps:
        if len(words) > _LONGEST_WORDS:
            raise ReadError("archive-damaged", reason=message("archive-words-long"))
        _check(checks.arrangement, text)
    return str(arrangement["name"])[:200], int(arrangement["position"]), steps


def _check_take(archive: _Contents, take: Any, arrangements: int, checks: Checks) -> None:
    _check(checks.arrangement, archive.once(take["arrangement"]).decode())
    _check(checks.take, archive.once(take["report"]).decode(), dict(take["facts"]))
    datetime.fromisoformat(take["taken_at"])
    if not isinstance(take["student"], str | None):
        raise ReadError("archive-damaged", reason=message("archive-no-name"))
    check_recording(io.BytesIO(archive.once(take["recording"])))
    if take["of"] not in (None, *range(arrangements)):
        raise ReadError("archive-damaged", reason=message("archive-no-arrangement"))


def _add_take(
    shelf: Shelf,
    archive: _Contents,
    take: Any,
    tune_id: int,
    versions: Sequence[int],
    students: Mapping[str, int],
) -> None:
    recording = shelf.takes.recordings.add(io.BytesIO(archive.again(take["recording"])))
    of = take["of"]
    shelf.takes.add(
        NewTake(
            id=recording.id,
            tune_id=tune_id,
            arrangement_id=None if of is None else versions[of],
            student_id=students.get(take["student"] or ""),
            recording=recording.name,
            facts=dict(take["facts"]),
            arrangement=archive.again(take["arrangement"]).decode(),
            report=archive.again(take["report"]).decode(),
            is_kept=True,
            taken_at=take["taken_at"],
        )
    )


def _check(check: Callable[..., object], *held: Any) -> None:
    try:
        check(*held)
    except FiorituraError as error:
        raise ReadError("archive-bad-content", reason=error.message) from None


def _size(file: IO[bytes]) -> int:
    file.seek(0, io.SEEK_END)
    size = file.tell()
    file.seek(0)
    return size


def _plain(text: str) -> str:
    """A harmless file name."""
    return re.sub(r"[^\w.()' -]", "_", text).strip(". ")[:80] or "tune"
