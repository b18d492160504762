"""What went well, and the three things to practise next: kind in tone, true in figures.

Every weakness that the report shows becomes a piece of advice with a weight; the three heaviest are given, no two of
one kind but for ornaments. Limits are common practice, so chosen that a good amateur's take passes most of them.
Where fewer than three weaknesses are left, the next steps of a sound practice plan fill the list.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

from fioritura.listening.naming import SlipKind
from fioritura.listening.report import FigureRow, Report, Status
from fioritura.listening.words import bar_named, bars_named, in_a_row
from fioritura.techniques.grace import LOWER_GRACE_SEMITONE
from fioritura.techniques.table import all_techniques, technique_named
from fioritura.theory.pitch import Pitch
from fioritura.tune import Feel
from fioritura.words import Message, Value, message

__all__ = ["Advice", "Subject", "advice_on", "praise_for"]

MOST: Final = 3
_TUNING_CENTS: Final = 12.0
_NOTE_CENTS: Final = 12.0
_NOTE_COUNT: Final = 3
_DRIFT_PERCENT: Final = 5.0
_SPREAD_MS: Final = 35.0
_GRACE_MS: Final = 130.0
_UNEVEN_PERCENT: Final = 20.0
_EVEN_SWING: Final = 1.1
_UNASKED_SWING: Final = 1.25
_LEVEL_DB: Final = 4.0
_SLIP_SHARE: Final = 0.02
_LATE_MS: Final = 15.0
_FASTER: Final = 1.08


class Subject(StrEnum):
    """What a piece of advice is about."""

    ORNAMENT = "ornament"
    NOTES = "notes"
    PITCH = "pitch"
    TIME = "time"
    EVENNESS = "evenness"
    LEVEL = "level"
    NEXT_STEP = "next step"


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


def praise_for(report: Report) -> Message:
    """One true sentence about what went well."""
    done = [row for row in report.figures if row.status is Status.DONE]
    asked = len(done) + report.count(Status.MISSED)
    right = sum(note.is_right for note in report.notes)
    wanted = len(report.notes) + sum(slip.kind is SlipKind.LEFT_OUT for slip in report.slips)
    if report.is_asked and asked and len(done) == asked:
        return message("praise-all-ornaments", asked=asked)
    if report.is_asked and len(done) * 2 >= asked and done:
        best = max(done, key=lambda row: row.confidence)
        return message("praise-ornaments", done=len(done), asked=asked, technique=best.name, bar=bar_named(best.bar))
    if wanted and right >= 0.95 * wanted:
        is_safe = len(report.slips) <= _slips_allowed(report)
        return message("praise-notes-safe" if is_safe else "praise-notes", right=right, wanted=wanted)
    if report.notes and report.timing.spread_ms <= _SPREAD_MS:
        return message("praise-beat", ms=round(report.timing.spread_ms))
    return message("praise-tune")


def _slips_allowed(report: Report) -> float:
    return max(1.0, _SLIP_SHARE * len(report.notes))


def advice_on(report: Report, feel: Feel = "straight", level: int = 3) -> tuple[Advice, ...]:
    """The three things to practise next, the most urgent first.

    Args:
        feel: how the tune was to be played.
        level: the player's level, 1 to 5, for the next ornament to try.
    """
    found = sorted(_weaknesses(report, feel), key=lambda one: -one.weight)
    chosen: list[Advice] = []
    for one in (*found, *_next_steps(report, level)):
        is_new = one.subject is Subject.ORNAMENT or all(one.subject is not other.subject for other in chosen)
        if (is_new or one.subject is Subject.NEXT_STEP) and len(chosen) < MOST:
            chosen.append(one)
    return tuple(chosen)


def _weaknesses(report: Report, feel: Feel) -> Iterator[Advice]:
    yield from _ornaments(report)
    yield from _notes(report)
    yield from _pitch(report)
    yield from _time(report, feel)
    yield from _evenness(report)
    if len(report.notes) > 8 and report.level.range_db < _LEVEL_DB:
        finding = message("advice-level-finding", db=round(report.level.range_db))
        yield _advice(Subject.LEVEL, "advice-level", finding, weight=0.3)


def _advice(
    subject: Subject,
    id: str,
    finding: Message,
    bars: tuple[int, ...] = (),
    technique: str = "",
    weight: float = 0.0,
    **values: Value,
) -> Advice:
    """Advice whose title and practice are two forms of one text."""
    said = message(id, **values)
    return Advice(subject, said, finding, said.form("practice"), bars, technique, weight)


def _ornaments(report: Report) -> Iterator[Advice]:
    missed: dict[str, list[FigureRow]] = {}
    for row in report.figures:
        if row.status is Status.MISSED:
            missed.setdefault(row.technique, []).append(row)
    for id, rows in missed.items():
        technique = technique_named(id)
        asked = len(rows) + sum(row.status is Status.DONE and row.technique == id for row in report.figures)
        bars = tuple(sorted({row.bar for row in rows}))
        finding = message(
            "advice-ornament-finding", missed=len(rows), asked=asked, bars=bars_named(bars), fault=technique.fault
        )
        weight = 0.5 + 0.15 * min(len(rows), 3) + 0.2 * len(rows) / asked
        values: dict[str, Value] = {"name": technique.name, "cure": technique.cure}
        yield _advice(Subject.ORNAMENT, "advice-ornament", finding, bars, id, weight, **values)


def _notes(report: Report) -> Iterator[Advice]:
    slips = [slip for slip in report.slips if slip.kind is not SlipKind.ADDED]
    if len(slips) <= _slips_allowed(report):
        return
    counts: dict[int, int] = {}
    for slip in slips:
        counts[slip.bar] = counts.get(slip.bar, 0) + 1
    worst = max(counts, key=lambda bar: counts[bar])
    bar = bar_named(worst)
    examples = in_a_row([slip.words for slip in slips if slip.bar == worst])
    finding = message("advice-notes-finding", count=len(slips), bar=bar, examples=examples)
    bars = (worst, *sorted(set(counts) - {worst}))
    weight = min(1.2, 0.4 + 8 * len(slips) / max(len(report.notes), 1))
    yield _advice(Subject.NOTES, "advice-notes", finding, bars, weight=weight, bar=bar)


def _pitch(report: Report) -> Iterator[Advice]:
    tuning = report.tuning_cents
    if abs(tuning) > _TUNING_CENTS:
        side = "sharp" if tuning > 0 else "flat"
        finding = message("advice-tuning-finding", cents=round(abs(tuning)), side=side)
        yield _advice(Subject.PITCH, "advice-tuning", finding, weight=min(1.0, abs(tuning) / 40), side=side)
    often = [row for row in report.by_note if row.count >= _NOTE_COUNT]
    worst = max(often, key=lambda row: abs(row.cents), default=None)
    if worst and abs(worst.cents) >= _NOTE_CENTS and isinstance(worst.name, Pitch):
        finding = message(
            "advice-note-finding",
            note=worst.name,
            cents=round(abs(worst.cents)),
            side="sharp" if worst.cents > 0 else "flat",
            count=worst.count,
        )
        found = _advice(Subject.PITCH, "advice-note", finding, weight=abs(worst.cents) / 30, note=worst.name)
        yield replace(found, note=worst.name)


def _time(report: Report, feel: Feel) -> Iterator[Advice]:
    timing = report.timing
    if abs(timing.drift_percent) >= _DRIFT_PERCENT:
        way = "faster" if timing.drift_percent > 0 else "slower"
        finding = message("drift", percent=round(abs(timing.drift_percent)), way=way)
        weight = min(1.0, abs(timing.drift_percent) / 12)
        yield _advice(Subject.TIME, "advice-drift", finding, weight=weight, way=way)
    if timing.spread_ms >= _SPREAD_MS:
        weight = min(1.0, timing.spread_ms / 80)
        yield _advice(Subject.TIME, "advice-beat", _strays(report), weight=weight)
    if feel == "swing" and timing.swing_ratio < _EVEN_SWING and timing.quarters_per_minute < 200:
        finding = message("advice-swing-finding", ratio=timing.swing_ratio)
        yield _advice(Subject.TIME, "advice-swing", finding, weight=0.45, usual=1.3)
    if feel == "straight" and timing.swing_ratio > _UNASKED_SWING:
        finding = message("advice-straight-finding", ratio=timing.swing_ratio)
        yield _advice(Subject.TIME, "advice-straight", finding, weight=0.45)
    if timing.grace_ms is not None and timing.grace_ms > _GRACE_MS:
        finding = message("advice-graces-finding", ms=round(timing.grace_ms))
        weight = min(0.9, 0.4 + (timing.grace_ms - _GRACE_MS) / 200)
        yield _advice(Subject.TIME, "advice-graces", finding, technique=LOWER_GRACE_SEMITONE.id, weight=weight)


def _strays(report: Report) -> Message:
    """How far the notes stray from the beat, and which beat is the worst."""
    strays = message("advice-beat-finding", ms=round(report.timing.spread_ms))
    worst = max(report.timing.beats, key=lambda row: abs(row.late_ms), default=None)
    if worst is None or worst.count < _NOTE_COUNT or abs(worst.late_ms) < _LATE_MS:
        return strays.form("alone")
    side = "late" if worst.late_ms > 0 else "early"
    return message(
        "advice-beat-finding-worst", strays=strays, beats=worst.name, ms=round(abs(worst.late_ms)), side=side
    )


def _evenness(report: Report) -> Iterator[Advice]:
    worst = max(report.evenness, key=lambda row: row.spread_percent, default=None)
    if worst and worst.spread_percent > _UNEVEN_PERCENT:
        finding = message("advice-evenness-finding", bar=bar_named(worst.bar), percent=round(worst.spread_percent))
        yield _advice(
            Subject.EVENNESS,
            "advice-evenness",
            finding,
            (worst.bar,),
            worst.technique,
            min(0.9, worst.spread_percent / 50),
            name=worst.name,
        )


def _next_steps(report: Report, level: int) -> Iterator[Advice]:
    known = {row.technique for row in report.figures}
    fresh = next((one for one in all_techniques().values() if one.level <= level and one.id not in known), None)
    tempo = report.timing.quarters_per_minute
    if fresh:
        values: dict[str, Value] = {"name": fresh.name, "when": fresh.when}
        finding = message("advice-add-finding", text=fresh.text)
        yield _advice(Subject.NEXT_STEP, "advice-add", finding, (), fresh.id, 0.0, **values)
    finding = message("advice-faster-finding", tempo=round(tempo))
    yield _advice(Subject.NEXT_STEP, "advice-faster", finding, tempo=round(_FASTER * tempo))
    yield _advice(Subject.NEXT_STEP, "advice-by-heart", message("advice-by-heart-finding"))
