"""The first sentence of a report, what went well, and what to practise next: kind in tone, true in figures.

The first sentence names the one thing that matters most (`happening`). What happened becomes advice, the weightiest
first, three pieces at most and no two of one subject; where nothing is to be mended, one next step is given.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

from fioritura.listening.happening import LEAST, SURE, Happening, Kind
from fioritura.listening.rows import Report, Status
from fioritura.listening.words import bar_named, bars_named
from fioritura.techniques.table import all_techniques
from fioritura.theory.pitch import Pitch
from fioritura.words import Message, Value, message

__all__ = ["Advice", "Subject", "advice_on", "headline_of", "praise_for"]

MOST: Final = 3
_NEARLY_ALL: Final = 0.9
_SPREAD_MS: Final = 35.0
_FASTER: Final = 1.08


class Subject(StrEnum):
    """What a piece of advice is about."""

    FORM = "form"
    ORNAMENT = "ornament"
    NOTES = "notes"
    PITCH = "pitch"
    TIME = "time"
    EVENNESS = "evenness"
    LEVEL = "level"
    NEXT_STEP = "next step"


_SUBJECTS: Final = {
    Kind.STOP: Subject.FORM,
    Kind.AGAIN: Subject.FORM,
    Kind.SKIPPED: Subject.FORM,
    Kind.PART: Subject.FORM,
    Kind.OCTAVE: Subject.NOTES,
    Kind.TRANSPOSED: Subject.NOTES,
    Kind.KEY: Subject.NOTES,
    Kind.WRONG: Subject.NOTES,
    Kind.LEFT_OUT: Subject.NOTES,
    Kind.ADDED: Subject.NOTES,
    Kind.TUNING: Subject.PITCH,
    Kind.NOTE: Subject.PITCH,
    Kind.ORNAMENTS: Subject.ORNAMENT,
    Kind.UNEVEN: Subject.EVENNESS,
    Kind.LEVEL: Subject.LEVEL,
}
"""All other kinds are about time."""
_OFF_COURSE: Final = frozenset({Kind.STOP, Kind.SPAN, Kind.DRIFT, Kind.LATE, Kind.RHYTHM, Kind.UNSTEADY})


@dataclass(frozen=True, slots=True)
class Advice:
    """One thing to practise: what was measured, what to do, and in which bars, the one to begin with first.

    `technique` is the ornament that it is about, `note` the note as the player reads it, empty and None where
    there is none.
    """

    subject: Subject
    title: Message
    finding: Message
    practice: Message
    bars: tuple[int, ...] = ()
    technique: str = ""
    weight: float = 0.0
    note: Pitch | None = None


def headline_of(report: Report) -> Message:
    """The first sentence: the one thing that matters most; what went well where nothing is to be mended."""
    first = next(iter(report.happenings), None)
    if first is None:
        return praise_for(report)
    if first.kind is not Kind.ORNAMENTS or sum(one.kind is Kind.ORNAMENTS for one in report.happenings) < 2:
        return first.words
    missed = [row for row in report.figures if row.status is Status.MISSED]
    surely = [row for row in missed if row.confidence >= SURE]
    counted = surely or [row for row in missed if row.confidence >= LEAST]
    bars = tuple(sorted({row.bar for row in counted}))
    asked = len(missed) + report.count(Status.DONE)
    values: dict[str, Value] = {"missed": len(counted), "asked": asked, "bars": bars_named(bars)}
    words = message("happened-ornaments" if len(counted) == len(missed) else "happened-ornaments-least", **values)
    return words if surely else message("perhaps", words=words)


def praise_for(report: Report) -> Message:
    """One true sentence about what went well."""
    done = [row for row in report.figures if row.status is Status.DONE]
    asked = len(done) + report.count(Status.MISSED)
    right, wanted = report.right, report.wanted
    if report.is_asked and asked and len(done) == asked:
        return message("praise-all-ornaments", asked=asked)
    if report.is_asked and len(done) * 2 >= asked and done:
        best = max(done, key=lambda row: row.confidence)
        return message("praise-ornaments", done=len(done), asked=asked, technique=best.name, bar=bar_named(best.bar))
    if wanted and right >= _NEARLY_ALL * wanted:
        is_safe = right == wanted and not report.slips and not report.happenings
        return message("praise-notes-safe" if is_safe else "praise-notes", right=right, wanted=wanted)
    is_steady = report.notes and report.timing.spread_ms <= _SPREAD_MS
    if is_steady and not any(one.kind in _OFF_COURSE for one in report.happenings):
        return message("praise-beat", ms=round(report.timing.spread_ms))
    return message("praise-tune")


def advice_on(report: Report, level: int = 3) -> tuple[Advice, ...]:
    """What to practise next, the most urgent first: one to three pieces.

    Args:
        level: the player's level, 1 to 5, for the next ornament to try.
    """
    chosen: list[Advice] = []
    for one in map(_advice, report.happenings):
        is_new = one.subject is Subject.ORNAMENT or all(one.subject is not other.subject for other in chosen)
        if is_new and len(chosen) < MOST:
            chosen.append(one)
    return tuple(chosen) or (next(_next_steps(report, level)),)


def _advice(of: Happening) -> Advice:
    """Advice whose title and practice are two forms of one text."""
    subject = _SUBJECTS.get(of.kind, Subject.TIME)
    bars = () if of.kind is Kind.PART else of.bars
    found = Advice(subject, of.cure, of.words, of.cure.form("practice"), bars, of.technique, of.weight)
    return replace(found, note=of.note)


def _next_steps(report: Report, level: int) -> Iterator[Advice]:
    known = {row.technique for row in report.figures}
    fresh = next((one for one in all_techniques().values() if one.level <= level and one.id not in known), None)
    tempo = report.timing.quarters_per_minute
    if fresh:
        values: dict[str, Value] = {"name": fresh.name, "when": fresh.when}
        yield _step("advice-add", message("advice-add-finding", text=fresh.text), fresh.id, values)
    finding = message("advice-faster-finding", tempo=round(tempo))
    yield _step("advice-faster", finding, "", {"tempo": round(_FASTER * tempo)})


def _step(id: str, finding: Message, technique: str, values: dict[str, Value]) -> Advice:
    said = message(id, **values)
    return Advice(Subject.NEXT_STEP, said, finding, said.form("practice"), technique=technique)
