"""Lessons on the shelf: each belongs to an arrangement and holds a plan, as plain data; what stands in a plan is
`fioritura.lesson.plan`'s."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from fioritura.errors import OptionError
from fioritura.shelf.database import Database, NotOnShelfError, StaleError, now, standing
from fioritura.shelf.schema import ArrangementRow, LessonRow, TuneRow

__all__ = ["LessonEntry", "Lessons"]

MOST_LESSONS: Final = 5000
LONGEST_TITLE: Final = 200


@dataclass(frozen=True, slots=True)
class LessonEntry:
    """A lesson. `revision` counts its changes; `tune` is the title of the tune that it is on."""

    id: int
    arrangement_id: int
    tune_id: int
    tune: str
    title: str
    plan: Mapping[str, Any]
    revision: int
    changed_at: str


class Lessons:
    """The lessons in the shelf's database."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def lessons(self, *, arrangement_id: int | None = None, tune_id: int | None = None) -> list[LessonEntry]:
        """Lessons, those changed last first; on an arrangement or a tune where these are given."""
        query = select(LessonRow).join(ArrangementRow).order_by(LessonRow.changed_at.desc(), LessonRow.id.desc())
        if arrangement_id is not None:
            query = query.where(LessonRow.arrangement_id == arrangement_id)
        if tune_id is not None:
            query = query.where(ArrangementRow.tune_id == tune_id)
        with self._database.reading() as session:
            return [_entry(session, row) for row in session.scalars(query)]

    def lesson(self, id: int) -> LessonEntry:
        """One lesson.

        Raises:
            NotOnShelfError: there is none of that number.
        """
        with self._database.reading() as session:
            return _entry(session, _lesson(session, id))

    def add(self, arrangement_id: int, title: str, plan: Mapping[str, Any]) -> LessonEntry:
        """A new lesson on an arrangement.

        Raises:
            NotOnShelfError: there is no such arrangement.
            OptionError: there are too many lessons.
        """
        with self._database.writing() as session:
            if session.get(ArrangementRow, arrangement_id) is None:
                raise NotOnShelfError("not-on-shelf", kind="arrangement", number=arrangement_id)
            if session.scalars(select(func.count(LessonRow.id))).one() >= MOST_LESSONS:
                raise OptionError("shelf-full-of-lessons", limit=MOST_LESSONS)
            row = LessonRow(
                arrangement_id=arrangement_id,
                title=title.strip()[:LONGEST_TITLE],
                plan=json.dumps(dict(plan)),
                revision=0,
                changed_at=now(),
            )
            session.add(row)
            session.flush()
            return _entry(session, row)

    def change(self, id: int, at: int, title: str, plan: Mapping[str, Any]) -> LessonEntry:
        """Give a lesson that stands at revision `at` another title and plan.

        Raises:
            NotOnShelfError: there is none of that number.
            StaleError: it was changed elsewhere.
        """
        with self._database.writing() as session:
            row = _lesson(session, id)
            if row.revision != at:
                raise StaleError("lesson-changed-elsewhere", stands=row.revision, given=at)
            row.title, row.plan = title.strip()[:LONGEST_TITLE], json.dumps(dict(plan))
            row.revision, row.changed_at = at + 1, now()
            session.flush()
            return _entry(session, row)

    def remove(self, id: int) -> None:
        """Take a lesson off the shelf.

        Raises:
            NotOnShelfError: there is none of that number.
        """
        with self._database.writing() as session:
            session.delete(_lesson(session, id))


def _lesson(session: Session, id: int) -> LessonRow:
    return standing(session, LessonRow, id, "lesson")


def _entry(session: Session, row: LessonRow) -> LessonEntry:
    tune = session.scalars(select(TuneRow).join(ArrangementRow).where(ArrangementRow.id == row.arrangement_id)).one()
    return LessonEntry(
        id=row.id,
        arrangement_id=row.arrangement_id,
        tune_id=tune.id,
        tune=tune.title,
        title=row.title,
        plan=json.loads(row.plan),
        revision=row.revision,
        changed_at=row.changed_at,
    )
