"""Students and takes on the shelf.

A student is a name. A take belongs to a tune, and to a student or to nobody in particular; it holds the recording, the
arrangement as it was to be played, and the report. One that was heard but not yet kept waits for that decision.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from sqlalchemy import delete, func, select
from sqlalchemy.orm import Session

from fioritura.errors import OptionError
from fioritura.shelf.database import Database, NotOnShelfError, now, packed, standing, unpacked
from fioritura.shelf.recordings import Recordings
from fioritura.shelf.schema import ArrangementRow, StudentRow, TakeRow, TuneRow

__all__ = ["NewTake", "StudentEntry", "TakeEntry", "Takes"]

LONGEST_NAME: Final = 80
MOST_STUDENTS: Final = 2000


@dataclass(frozen=True, slots=True)
class StudentEntry:
    """A student, how many takes are kept, and when the last of them was made (empty for none)."""

    id: int
    name: str
    added_at: str
    takes: int
    last_at: str


@dataclass(frozen=True, slots=True)
class NewTake:
    """A take to be put on the shelf; `facts` say what lists show, `taken_at` is now where it is empty."""

    id: str
    tune_id: int
    arrangement_id: int | None
    student_id: int | None
    recording: str
    facts: Mapping[str, Any]
    arrangement: str
    report: str
    is_kept: bool = False
    taken_at: str = ""


@dataclass(frozen=True, slots=True)
class TakeEntry:
    """A take as lists show it."""

    id: str
    tune_id: int
    tune: str
    arrangement_id: int | None
    student_id: int | None
    student: str
    taken_at: str
    is_kept: bool
    recording: str
    facts: Mapping[str, Any]


class Takes:
    """Students and takes in the shelf's database, with their recordings in a folder beside it."""

    def __init__(self, database: Database) -> None:
        self._database = database
        self.recordings = Recordings(database.path.parent / "recordings")
        with database.reading() as session:
            self.recordings.sweep(frozenset(session.scalars(select(TakeRow.recording))))

    # Students ------------------------------------------------------------------------------------------------------

    def students(self) -> list[StudentEntry]:
        """All students by name."""
        query = (
            select(StudentRow, func.count(TakeRow.id), func.max(TakeRow.taken_at))
            .outerjoin(TakeRow, (TakeRow.student_id == StudentRow.id) & TakeRow.is_kept)
            .group_by(StudentRow.id)
            .order_by(func.lower(StudentRow.name))
        )
        with self._database.reading() as session:
            found = session.execute(query).all()
            return [StudentEntry(row.id, row.name, row.added_at, int(n), last or "") for row, n, last in found]

    def student(self, id: int) -> StudentEntry:
        """One student.

        Raises:
            NotOnShelfError: there is none of that number.
        """
        found = next((student for student in self.students() if student.id == id), None)
        if found is None:
            raise NotOnShelfError("not-on-shelf", kind="student", number=id)
        return found

    def add_student(self, name: str) -> int:
        """A new student; returns the number. Names may stand once, whatever their case.

        Raises:
            OptionError: no name, too long a name, one that stands already, or too many students.
        """
        with self._database.writing() as session:
            wanted = _checked_name(session, name)
            if session.scalars(select(func.count(StudentRow.id))).one() >= MOST_STUDENTS:
                raise OptionError("shelf-full-of-students", limit=MOST_STUDENTS)
            row = StudentRow(name=wanted, added_at=now())
            session.add(row)
            session.flush()
            return row.id

    def rename_student(self, id: int, name: str) -> None:
        """Give a student another name.

        Raises:
            NotOnShelfError: there is none of that number.
            OptionError: no name, too long a name, or one that stands already.
        """
        with self._database.writing() as session:
            row = _student(session, id)
            row.name = _checked_name(session, name, besides=id)

    def remove_student(self, id: int) -> None:
        """Take a student off the shelf, with all takes and recordings.

        Raises:
            NotOnShelfError: there is none of that number.
        """
        with self._database.writing() as session:
            row = _student(session, id)
            recordings = _recordings(session, TakeRow.student_id == id)
            session.execute(delete(TakeRow).where(TakeRow.student_id == id))
            session.delete(row)
        self.recordings.remove(recordings)

    # Takes ---------------------------------------------------------------------------------------------------------

    def add(self, take: NewTake) -> None:
        """Put a take on the shelf, whose recording is in its folder already.

        Raises:
            NotOnShelfError: there is no such tune or student.
        """
        with self._database.writing() as session:
            if session.get(TuneRow, take.tune_id) is None:
                raise NotOnShelfError("not-on-shelf", kind="tune", number=take.tune_id)
            if take.student_id is not None:
                _student(session, take.student_id)
            arrangement = session.get(ArrangementRow, take.arrangement_id) if take.arrangement_id else None
            session.add(
                TakeRow(
                    id=take.id,
                    tune_id=take.tune_id,
                    arrangement_id=arrangement.id if arrangement else None,
                    student_id=take.student_id,
                    taken_at=take.taken_at or now(),
                    is_kept=take.is_kept,
                    recording=take.recording,
                    facts=json.dumps(dict(take.facts)),
                    arrangement=packed(take.arrangement),
                    report=packed(take.report),
                )
            )

    def takes(self, *, student_id: int | None = None, tune_id: int | None = None) -> list[TakeEntry]:
        """Takes, the latest first; of a student or a tune where these are given."""
        query = select(TakeRow).order_by(TakeRow.taken_at.desc(), TakeRow.id)
        if student_id is not None:
            query = query.where(TakeRow.student_id == student_id)
        if tune_id is not None:
            query = query.where(TakeRow.tune_id == tune_id)
        with self._database.reading() as session:
            return [_entry(row) for row in session.scalars(query)]

    def take(self, id: str) -> TakeEntry:
        """One take.

        Raises:
            NotOnShelfError: there is none of that name.
        """
        with self._database.reading() as session:
            return _entry(_take(session, id))

    def report(self, id: str) -> str:
        """The report on a take, as it was put there.

        Raises:
            NotOnShelfError: there is none of that name.
        """
        with self._database.reading() as session:
            return unpacked(_take(session, id).report)

    def arrangement(self, id: str) -> str:
        """The arrangement as it was to be played.

        Raises:
            NotOnShelfError: there is none of that name.
        """
        with self._database.reading() as session:
            return unpacked(_take(session, id).arrangement)

    def keep(self, id: str, student_id: int | None) -> TakeEntry:
        """Keep a take, as that of a student or of nobody in particular.

        Raises:
            NotOnShelfError: there is no such take or student.
        """
        with self._database.writing() as session:
            row = _take(session, id)
            if student_id is not None:
                _student(session, student_id)
            row.is_kept, row.student_id = True, student_id
            session.flush()
            session.refresh(row)
            return _entry(row)

    def remove(self, id: str) -> None:
        """Take a take off the shelf, with its recording; or just the recording where nothing was heard of it yet.

        Raises:
            NotOnShelfError: there is none of that name.
        """
        with self._database.writing() as session:
            row = session.get(TakeRow, id)
            names = [row.recording] if row else self.recordings.named(id)
            if not names:
                raise _no_take()
            if row:
                session.delete(row)
        self.recordings.remove(names)

    def recordings_of(self, tune_id: int) -> list[str]:
        """The recordings of a tune's takes."""
        with self._database.reading() as session:
            return _recordings(session, TakeRow.tune_id == tune_id)


def _recordings(session: Session, condition: Any) -> list[str]:
    return list(session.scalars(select(TakeRow.recording).where(condition)))


def _student(session: Session, id: int) -> StudentRow:
    return standing(session, StudentRow, id, "student")


def _take(session: Session, id: str) -> TakeRow:
    row = session.get(TakeRow, id)
    if row is None:
        raise _no_take()
    return row


def _no_take() -> NotOnShelfError:
    return NotOnShelfError("take-gone")


def _checked_name(session: Session, name: str, besides: int | None = None) -> str:
    wanted = " ".join(name.split())
    if not wanted:
        raise OptionError("student-needs-name")
    if len(wanted) > LONGEST_NAME:
        raise OptionError("name-too-long", count=len(wanted), limit=LONGEST_NAME)
    standing = session.scalar(select(StudentRow.id).where(func.lower(StudentRow.name) == wanted.lower()))
    if standing is not None and standing != besides:
        raise OptionError("student-name-taken", name=wanted)
    return wanted


def _entry(row: TakeRow) -> TakeEntry:
    return TakeEntry(
        id=row.id,
        tune_id=row.tune_id,
        tune=row.tune.title,
        arrangement_id=row.arrangement_id,
        student_id=row.student_id,
        student=row.student.name if row.student else "",
        taken_at=row.taken_at,
        is_kept=row.is_kept,
        recording=row.recording,
        facts=json.loads(row.facts),
    )
