"""The shelf's store: tunes, their tags, their arrangements, and every step of each arrangement.

One SQLite file in write-ahead mode. A call that has returned is on disk: a crash, or a kill in the middle of a later
write, loses nothing of it. Arrangements are texts here; what stands in them is `fioritura.arrange.arrangement_file`'s.
"""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any, Final

from sqlalchemy import delete, func, select
from sqlalchemy.orm import Session

from fioritura.errors import OptionError
from fioritura.shelf.database import LIKE, Database, NotOnShelfError, StaleError, now, packed, standing, unpacked
from fioritura.shelf.lessons import Lessons
from fioritura.shelf.schema import ArrangementRow, LessonRow, StepRow, TagRow, TuneRow
from fioritura.shelf.takes import Takes

__all__ = [
    "DATA_VARIABLE",
    "Content",
    "NotOnShelfError",
    "Shelf",
    "StaleError",
    "Step",
    "TuneEntry",
    "Version",
    "content_key",
    "data_folder",
]

DATA_VARIABLE: Final = "FIORITURA_DATA"
"""Environment variable that names the folder of the shelf."""

MOST_STEPS: Final = 300
MOST_TAGS: Final = 20
LONGEST_TAG: Final = 40


@dataclass(frozen=True, slots=True)
class Version:
    """An arrangement of a tune by its number and name; `position` is the step it stands at."""

    id: int
    name: str
    position: int
    changed_at: str


@dataclass(frozen=True, slots=True)
class TuneEntry:
    """A tune on the shelf. `facts` say what it is (key, metre, bars, tempo), `reading` how its file was read."""

    id: int
    title: str
    composer: str
    facts: Mapping[str, Any]
    source_name: str
    reading: Mapping[str, Any]
    added_at: str
    tags: tuple[str, ...]
    versions: tuple[Version, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """An arrangement after a decision. `last` is the number of the newest step, `undoes` and `redoes` the words of
    what stands to be undone and redone (empty where nothing does)."""

    arrangement_id: int
    tune_id: int
    number: int
    last: int
    words: str
    text: str
    undoes: str
    redoes: str


@dataclass(frozen=True, slots=True)
class Content:
    """A tune by its number, title and `content_key`."""

    id: int
    title: str
    content: str


def content_key(source: bytes, reading: Mapping[str, Any]) -> str:
    """By what a tune is recognised: its file, and how it is read from it; 64 hexadecimal digits."""
    return sha256(json.dumps(dict(reading), sort_keys=True).encode() + b"\0" + source).hexdigest()


def data_folder() -> Path:
    """Where this user's shelf belongs: FIORITURA_DATA, else where the system keeps a user's data."""
    if os.environ.get(DATA_VARIABLE, "").strip():
        return Path(os.environ[DATA_VARIABLE].strip())
    if os.environ.get("XDG_DATA_HOME"):
        base = Path(os.environ["XDG_DATA_HOME"])
    elif sys.platform == "win32":
        base = Path(os.environ.get("APPDATA") or Path.home() / "AppData" / "Roaming")
    elif sys.platform == "darwin":
        base = Path.home() / "Library" / "Application Support"
    else:
        base = Path.home() / ".local" / "share"
    return base / "fioritura"


class Shelf:
    """The store in a folder; made when it is not there. Safe to use from several threads."""

    def __init__(self, folder: Path) -> None:
        """Open or make the shelf.

        Raises:
            OutputError: the folder can't be made or written.
            ReadError: its file is no shelf, or one of a later version.
        """
        self._database = Database(folder)
        self.path = self._database.path
        self.takes = Takes(self._database)
        """Students and takes."""
        self.lessons = Lessons(self._database)

    def close(self) -> None:
        """Close all connections."""
        self._database.close()

    def tunes(self, search: str = "", tag: str = "") -> list[TuneEntry]:
        """The tunes with all words of `search` in title, composer, tags or titles of lessons, and with `tag`; the latest worked on first."""
        query = select(TuneRow)
        for word in search.split()[:10]:
            pattern = f"%{word.translate(LIKE)}%"
            tagged = select(TagRow.tune_id).where(TagRow.tag.like(pattern, escape="\\"))
            taught = select(ArrangementRow.tune_id).join(LessonRow).where(LessonRow.title.like(pattern, escape="\\"))
            query = query.where(
                TuneRow.title.like(pattern, escape="\\")
                | TuneRow.id.in_(taught)
                | TuneRow.composer.like(pattern, escape="\\")
                | TuneRow.id.in_(tagged)
            )
        if tag:
            query = query.where(TuneRow.id.in_(select(TagRow.tune_id).where(TagRow.tag == tag)))
        with self._database.reading() as session:
            found = [_entry(row) for row in session.scalars(query)]
        return sorted(found, key=lambda e: (max((v.changed_at for v in e.versions), default=e.added_at), e.id))[::-1]

    def contents(self) -> list[Content]:
        """What each tune on the shelf is recognised by, the one that came first last."""
        query = select(TuneRow.id, TuneRow.title, TuneRow.source, TuneRow.reading).order_by(TuneRow.id.desc())
        with self._database.reading() as session:
            return [
                Content(id, title, content_key(source, json.loads(reading)))
                for id, title, source, reading in session.execute(query)
            ]

    def tags(self) -> dict[str, int]:
        """All tags, and how many tunes have each."""
        query = select(TagRow.tag, func.count()).group_by(TagRow.tag).order_by(TagRow.tag)
        with self._database.reading() as session:
            return {str(tag): int(count) for tag, count in session.execute(query)}

    def tune(self, id: int) -> TuneEntry:
        """One tune.

        Raises:
            NotOnShelfError: there is none of that number.
        """
        with self._database.reading() as session:
            return _entry(_tune(session, id))

    def source(self, id: int) -> bytes:
        """The file that a tune came from.

        Raises:
            NotOnShelfError: there is none of that number.
        """
        with self._database.reading() as session:
            return _tune(session, id).source

    def add_tune(
        self,
        title: str,
        composer: str,
        *,
        facts: Mapping[str, Any],
        source_name: str,
        source: bytes,
        reading: Mapping[str, Any],
        tags: tuple[str, ...] = (),
    ) -> int:
        """Put a tune on the shelf; returns its number."""
        row = TuneRow(
            title=title,
            composer=composer,
            facts=json.dumps(dict(facts)),
            source_name=source_name,
            source=source,
            reading=json.dumps(dict(reading)),
            added_at=now(),
            tags=[TagRow(tag=tag) for tag in _checked_tags(tags)],
        )
        with self._database.writing() as session:
            session.add(row)
            session.flush()
            return row.id

    def describe(self, id: int, *, title: str | None = None, tags: tuple[str, ...] | None = None) -> TuneEntry:
        """Give a tune another title or other tags.

        Raises:
            NotOnShelfError: there is none of that number.
            OptionError: no title, or tags that are too many or too long.
        """
        with self._database.writing() as session:
            row = _tune(session, id)
            if title is not None:
                if not title.strip():
                    raise OptionError("tune-needs-title")
                row.title = title.strip()[:200]
            if tags is not None:
                wanted = _checked_tags(tags)
                row.tags = [tag for tag in row.tags if tag.tag in wanted] + [
                    TagRow(tag=tag) for tag in wanted if tag not in {old.tag for old in row.tags}
                ]
            session.flush()
            session.refresh(row)
            return _entry(row)

    def remove_tune(self, id: int) -> None:
        """Take a tune with all its arrangements, lessons and takes off the shelf.

        Raises:
            NotOnShelfError: there is none of that number.
        """
        with self._database.writing() as session:
            recordings = self.takes.recordings_of(id)
            session.delete(_tune(session, id))
        self.takes.recordings.remove(recordings)

    def add_arrangement(self, tune_id: int, name: str, text: str, words: str = "made") -> int:
        """A new arrangement of a tune, with its first step; returns its number.

        Raises:
            NotOnShelfError: there is no such tune.
        """
        return self.add_history(tune_id, name, 0, [(0, words, text)])

    def remove_arrangement(self, id: int) -> None:
        """Take one of several arrangements of a tune off the shelf, with its lessons.

        Raises:
            NotOnShelfError: there is none of that number.
            OptionError: it is the only one of its tune.
        """
        with self._database.writing() as session:
            row = _arrangement(session, id)
            if len(_tune(session, row.tune_id).arrangements) < 2:
                raise OptionError("only-arrangement")
            session.delete(row)

    def add_history(self, tune_id: int, name: str, position: int, steps: Sequence[tuple[int, str, str]]) -> int:
        """An arrangement with all its steps (number, words, text), standing at one of them; returns its number.

        Raises:
            NotOnShelfError: there is no such tune.
        """
        with self._database.writing() as session:
            _tune(session, tune_id)
            row = ArrangementRow(tune_id=tune_id, name=name, position=position, changed_at=now())
            row.steps += [StepRow(number=number, words=words, packed=packed(text)) for number, words, text in steps]
            session.add(row)
            session.flush()
            return row.id

    def steps(self, arrangement_id: int) -> Iterator[Step]:
        """All steps of an arrangement in order.

        Raises:
            NotOnShelfError: there is no such arrangement.
        """
        with self._database.reading() as session:
            row = _arrangement(session, arrangement_id)
            for number in [step.number for step in row.steps]:
                yield _step(session, row, number)

    def step(self, arrangement_id: int, number: int | None = None) -> Step:
        """An arrangement as it stands, or as it stood after a step.

        Raises:
            NotOnShelfError: there is no such arrangement or step.
        """
        with self._database.reading() as session:
            return _step(session, _arrangement(session, arrangement_id), number)

    def add_step(self, arrangement_id: int, after: int, words: str, text: str) -> Step:
        """Decide something: a new step after step `after`, at which the arrangement must stand; what had been undone is
        forgotten, and of more than 300 steps the oldest.

        Raises:
            NotOnShelfError: there is no such arrangement.
            StaleError: it stands at another step by now.
        """
        with self._database.writing() as session:
            row = _arrangement(session, arrangement_id)
            _check_position(row, after)
            session.execute(
                delete(StepRow).where(
                    StepRow.arrangement_id == row.id,
                    (StepRow.number > after) | (StepRow.number < after - MOST_STEPS),
                )
            )
            session.add(StepRow(arrangement_id=row.id, number=after + 1, words=words, packed=packed(text)))
            row.position, row.changed_at = after + 1, now()
            session.flush()
            session.expire_all()
            return _step(session, row)

    def move(self, arrangement_id: int, at: int, by: int) -> Step:
        """Undo (−1) or redo (+1) from step `at`.

        Raises:
            NotOnShelfError: there is no such arrangement.
            StaleError: it stands at another step by now.
            OptionError: there is nothing to undo or redo.
        """
        with self._database.writing() as session:
            row = _arrangement(session, arrangement_id)
            _check_position(row, at)
            numbers = {step.number for step in row.steps}
            if at + by not in numbers:
                raise OptionError("nothing-to-undo" if by < 0 else "nothing-to-redo")
            row.position, row.changed_at = at + by, now()
            session.flush()
            return _step(session, row)


def _tune(session: Session, id: int) -> TuneRow:
    return standing(session, TuneRow, id, "tune")


def _arrangement(session: Session, id: int) -> ArrangementRow:
    return standing(session, ArrangementRow, id, "arrangement")


def _check_position(row: ArrangementRow, at: int) -> None:
    if row.position != at:
        raise StaleError("arrangement-changed-elsewhere", stands=row.position, given=at)


def _step(session: Session, row: ArrangementRow, number: int | None = None) -> Step:
    number = row.position if number is None else number
    words = {step.number: step.words for step in row.steps}
    step = session.get(StepRow, (row.id, number))
    if step is None:
        raise NotOnShelfError("no-such-step", arrangement=row.id, step=number)
    return Step(
        arrangement_id=row.id,
        tune_id=row.tune_id,
        number=number,
        last=max(words),
        words=step.words,
        text=unpacked(step.packed),
        undoes=step.words if number - 1 in words else "",
        redoes=words.get(number + 1, ""),
    )


def _entry(row: TuneRow) -> TuneEntry:
    return TuneEntry(
        id=row.id,
        title=row.title,
        composer=row.composer,
        facts=json.loads(row.facts),
        source_name=row.source_name,
        reading=json.loads(row.reading),
        added_at=row.added_at,
        tags=tuple(tag.tag for tag in row.tags),
        versions=tuple(Version(a.id, a.name, a.position, a.changed_at) for a in row.arrangements),
    )


def _checked_tags(tags: tuple[str, ...]) -> list[str]:
    wanted = list(dict.fromkeys(" ".join(tag.split()).lower() for tag in tags if tag.strip()))
    if len(wanted) > MOST_TAGS:
        raise OptionError("too-many-tags", count=len(wanted), limit=MOST_TAGS)
    for tag in wanted:
        if len(tag) > LONGEST_TAG:
            raise OptionError("tag-too-long", tag=tag[:20], count=len(tag), limit=LONGEST_TAG)
    return wanted
