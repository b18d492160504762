"""The tables of the shelf, and the steps that bring an older file up to date.

`MIGRATIONS` is a list that only grows: a file of version N (SQLite's ``user_version``) gets the scripts from N on, all in
one transaction. The mapped classes describe the newest version.
"""

from __future__ import annotations

from typing import Final

from sqlalchemy import ForeignKey, LargeBinary
from sqlalchemy.engine import Connection
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column, relationship

from fioritura.errors import ReadError

__all__ = [
    "MIGRATIONS",
    "ArrangementRow",
    "LessonRow",
    "StepRow",
    "StudentRow",
    "TagRow",
    "TakeRow",
    "TuneRow",
    "migrate",
]

MIGRATIONS: Final = (
    (
        """CREATE TABLE tunes (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            title TEXT NOT NULL,
            composer TEXT NOT NULL,
            facts TEXT NOT NULL,
            source_name TEXT NOT NULL,
            source BLOB NOT NULL,
            reading TEXT NOT NULL,
            added_at TEXT NOT NULL)""",
        """CREATE TABLE tags (
            tune_id INTEGER NOT NULL REFERENCES tunes(id) ON DELETE CASCADE,
            tag TEXT NOT NULL,
            PRIMARY KEY (tune_id, tag)) WITHOUT ROWID""",
        """CREATE TABLE arrangements (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            tune_id INTEGER NOT NULL REFERENCES tunes(id) ON DELETE CASCADE,
            name TEXT NOT NULL,
            position INTEGER NOT NULL,
            changed_at TEXT NOT NULL)""",
        "CREATE INDEX arrangements_by_tune ON arrangements(tune_id)",
        """CREATE TABLE steps (
            arrangement_id INTEGER NOT NULL REFERENCES arrangements(id) ON DELETE CASCADE,
            number INTEGER NOT NULL,
            words TEXT NOT NULL,
            packed BLOB NOT NULL,
            PRIMARY KEY (arrangement_id, number)) WITHOUT ROWID""",
    ),
    (
        """CREATE TABLE students (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            name TEXT NOT NULL COLLATE NOCASE UNIQUE,
            added_at TEXT NOT NULL)""",
        """CREATE TABLE takes (
            id TEXT PRIMARY KEY,
            tune_id INTEGER NOT NULL REFERENCES tunes(id) ON DELETE CASCADE,
            arrangement_id INTEGER REFERENCES arrangements(id) ON DELETE SET NULL,
            student_id INTEGER REFERENCES students(id) ON DELETE CASCADE,
            taken_at TEXT NOT NULL,
            is_kept INTEGER NOT NULL,
            recording TEXT NOT NULL,
            facts TEXT NOT NULL,
            arrangement BLOB NOT NULL,
            report BLOB NOT NULL) WITHOUT ROWID""",
        "CREATE INDEX takes_by_tune ON takes(tune_id)",
        "CREATE INDEX takes_by_student ON takes(student_id)",
    ),
    (
        """CREATE TABLE lessons (
            id INTEGER PRIMARY KEY AUTOINCREMENT,
            arrangement_id INTEGER NOT NULL REFERENCES arrangements(id) ON DELETE CASCADE,
            title TEXT NOT NULL,
            plan TEXT NOT NULL,
            revision INTEGER NOT NULL,
            changed_at TEXT NOT NULL)""",
        "CREATE INDEX lessons_by_arrangement ON lessons(arrangement_id)",
    ),
)
"""Each entry is one migration: its statements in order."""


class _Base(DeclarativeBase):
    """Base of the mapped classes."""


class TuneRow(_Base):
    """A tune: what it is, and the file that it came from with how that was read (`facts`, `reading`: JSON)."""

    __tablename__ = "tunes"
    id: Mapped[int] = mapped_column(primary_key=True)
    title: Mapped[str]
    composer: Mapped[str]
    facts: Mapped[str]
    source_name: Mapped[str]
    source: Mapped[bytes] = mapped_column(LargeBinary, deferred=True)
    reading: Mapped[str]
    added_at: Mapped[str]
    tags: Mapped[list[TagRow]] = relationship(cascade="all, delete-orphan", order_by="TagRow.tag")
    arrangements: Mapped[list[ArrangementRow]] = relationship(
        cascade="all, delete-orphan", order_by="ArrangementRow.id"
    )


class TagRow(_Base):
    """A tag of a tune."""

    __tablename__ = "tags"
    tune_id: Mapped[int] = mapped_column(ForeignKey("tunes.id"), primary_key=True)
    tag: Mapped[str] = mapped_column(primary_key=True)


class ArrangementRow(_Base):
    """An arrangement: its history of steps, and at which of them it stands."""

    __tablename__ = "arrangements"
    id: Mapped[int] = mapped_column(primary_key=True)
    tune_id: Mapped[int] = mapped_column(ForeignKey("tunes.id"))
    name: Mapped[str]
    position: Mapped[int]
    changed_at: Mapped[str]
    steps: Mapped[list[StepRow]] = relationship(cascade="all, delete-orphan", order_by="StepRow.number")


class StepRow(_Base):
    """The arrangement after one decision, as packed JSON; `words` say what was decided."""

    __tablename__ = "steps"
    arrangement_id: Mapped[int] = mapped_column(ForeignKey("arrangements.id"), primary_key=True)
    number: Mapped[int] = mapped_column(primary_key=True)
    words: Mapped[str]
    packed: Mapped[bytes] = mapped_column(LargeBinary, deferred=True)


class StudentRow(_Base):
    """A student: a name, and nothing else."""

    __tablename__ = "students"
    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    added_at: Mapped[str]


class TakeRow(_Base):
    """A take: whose it is, the file of its recording, and packed JSON of what was to be played and of the report.

    `facts` (JSON) say what lists show of it.
    """

    __tablename__ = "takes"
    id: Mapped[str] = mapped_column(primary_key=True)
    tune_id: Mapped[int] = mapped_column(ForeignKey("tunes.id"))
    arrangement_id: Mapped[int | None] = mapped_column(ForeignKey("arrangements.id"))
    student_id: Mapped[int | None] = mapped_column(ForeignKey("students.id"))
    taken_at: Mapped[str]
    is_kept: Mapped[bool]
    recording: Mapped[str]
    facts: Mapped[str]
    arrangement: Mapped[bytes] = mapped_column(LargeBinary, deferred=True)
    report: Mapped[bytes] = mapped_column(LargeBinary, deferred=True)
    tune: Mapped[TuneRow] = relationship()
    student: Mapped[StudentRow | None] = relationship()


class LessonRow(_Base):
    """A lesson on an arrangement: its plan (JSON), and how often it was changed."""

    __tablename__ = "lessons"
    id: Mapped[int] = mapped_column(primary_key=True)
    arrangement_id: Mapped[int] = mapped_column(ForeignKey("arrangements.id"))
    title: Mapped[str]
    plan: Mapped[str]
    revision: Mapped[int]
    changed_at: Mapped[str]


def migrate(connection: Connection) -> None:
    """Bring a file up to the newest version; an empty file gets all tables.

    Raises:
        ReadError: the file was made by a later version of the program.
    """
    version = int(connection.exec_driver_sql("PRAGMA user_version").scalar_one())
    if version > len(MIGRATIONS):
        raise ReadError("shelf-version", given=str(version), known=str(len(MIGRATIONS)))
    for number in range(version, len(MIGRATIONS)):
        for statement in MIGRATIONS[number]:
            connection.exec_driver_sql(statement)
        connection.exec_driver_sql(f"PRAGMA user_version = {number + 1}")
