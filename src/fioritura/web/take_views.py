"""From takes and lines to what the page shows of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from pydantic import ValidationError

from fioritura.arrange.arrangement import Arrangement
from fioritura.errors import ReadError
from fioritura.notation.engraving.engrave import engrave_systems
from fioritura.notation.score import Label, Score, Staff
from fioritura.shelf.takes import StudentEntry, TakeEntry
from fioritura.web.staves import PageSize
from fioritura.web.take_models import (
    FigureResult,
    LineNote,
    LineView,
    Report,
    StudentView,
    TakeFacts,
    TakeLine,
    TakeSummary,
    TakeView,
    Which,
)
from fioritura.web.views import system_views
from fioritura.words import say

__all__ = ["check_take", "checked_report", "line_view", "student_view", "take_line", "take_summary", "take_view"]


def line_view(arrangement: Arrangement, which: Which, sheet: PageSize, labels: Sequence[Label] = ()) -> LineView:
    """The plain or the ornamented line of an arrangement, engraved alone for its player."""
    rendition, tune = arrangement.rendition, arrangement.tune
    instrument = rendition.setting.instrument
    line = tune.notes if which == "plain" else rendition.line
    score = Score(tune, (Staff(tuple(line), "", instrument, tuple(labels)),))
    systems = engrave_systems(score, width_mm=sheet.width_mm, staff_mm=sheet.staff_mm)
    return LineView(
        systems=system_views(systems),
        bar_numbers=[bar.number for bar in tune.bars],
        ends_ticks=[bar.end_ticks for bar in tune.bars],
        notes=[
            LineNote(
                element=f"s1-n{number}",
                onset_ticks=note.onset_ticks,
                step=instrument.written(note.pitch).step,
            )
            for number, note in enumerate(line)
        ],
    )


def take_line(arrangement: Arrangement, which: Which, report: Report, passage: int, sheet: PageSize) -> TakeLine:
    """What was to be played with what was played in a passage (from 1); figures are labelled by their number."""
    if not 1 <= passage <= len(report.passages):
        raise ReadError("no-such-passage", count=len(report.passages), given=passage)
    labels = [_label(number, row) for number, row in enumerate(report.figures) if row.passage == passage]
    shown = line_view(arrangement, which, sheet, labels)
    return TakeLine(**shown.model_dump(), passage=passage, trace=report.passages[passage - 1])


def _label(number: int, row: FigureResult) -> Label:
    return Label(max(0, row.onset_ticks), say(row.label), number)


def take_summary(entry: TakeEntry) -> TakeSummary:
    """A take as lists show it."""
    return TakeSummary(
        id=entry.id,
        tune_id=entry.tune_id,
        tune=entry.tune,
        arrangement=entry.arrangement_id,
        student_id=entry.student_id,
        student=entry.student,
        taken_at=entry.taken_at,
        is_kept=entry.is_kept,
        facts=TakeFacts.model_validate(entry.facts),
    )


def take_view(entry: TakeEntry, report: str) -> TakeView:
    """A take with its report."""
    return TakeView(**take_summary(entry).model_dump(), report=checked_report(report))


def student_view(entry: StudentEntry) -> StudentView:
    """A student on the shelf."""
    return StudentView(id=entry.id, name=entry.name, takes=entry.takes, last_at=entry.last_at)


def checked_report(text: str) -> Report:
    """A report from its text.

    Raises:
        ReadError: it is no such report.
    """
    try:
        return Report.model_validate_json(text)
    except ValidationError as error:
        raise ReadError("report-damaged", count=error.error_count()) from None


def check_take(report: str, facts: Mapping[str, Any]) -> None:
    """Make sure that a report and facts from elsewhere can be shown.

    Raises:
        ReadError: they can't.
    """
    checked_report(report)
    try:
        TakeFacts.model_validate(facts)
    except ValidationError as error:
        raise ReadError("take-facts-damaged", count=error.error_count()) from None
