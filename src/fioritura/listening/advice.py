"""What went well, and the three things to practise next: kind in tone, true in figures.

Every weakness that the report shows becomes a piece of advice with a weight; the three heaviest are given, no two of
one kind but for ornaments. Limits are common practice, so chosen that a good amateur's take passes most of them.
Where fewer than three weaknesses are left, the next steps of a sound practice plan fill the list.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from fioritura.listening.naming import SlipKind
from fioritura.listening.report import FigureRow, Report, Status
from fioritura.techniques.grace import LOWER_GRACE_SEMITONE
from fioritura.techniques.table import all_techniques, technique_named
from fioritura.tune import Feel
from fioritura.words import capital, say

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

    `technique` is the ornament that it is about, `note` the name of the note, empty where there is none.
    """

    subject: Subject
    title: str
    finding: str
    practice: str
    bars: tuple[int, ...] = ()
    technique: str = ""
    weight: float = 0.0
    note: str = ""


def praise_for(report: Report) -> str:
    """One true sentence about what went well."""
    done = [row for row in report.figures if row.status is Status.DONE]
    asked = len(done) + report.count(Status.MISSED)
    right = sum(note.is_right for note in report.notes)
    if report.is_asked and asked and len(done) == asked:
        return f"All {asked} ornaments came out." if asked > 1 else "The ornament came out."
    if report.is_asked and len(done) * 2 >= asked and done:
        best = max(done, key=lambda row: row.confidence)
        return f"{len(done)} of {asked} ornaments came out; the clearest was the {_short(best)} in bar {best.bar}."
    if report.notes and right >= 0.95 * len(report.notes):
        return f"{right} of {len(report.notes)} melody notes were right: the tune is safely in the fingers."
    if report.notes and report.timing.spread_ms <= _SPREAD_MS:
        return f"The beat was steady: two notes of three lie within {report.timing.spread_ms:.0f} ms of it."
    return "The tune can be recognised from beginning to end, and that is what ornaments stand on."


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
        yield Advice(
            Subject.LEVEL,
            "Let the line grow and fade",
            f"Soft and loud notes are only {report.level.range_db:.0f} dB apart.",
            "Play each phrase as one breath that grows to its highest note and fades to its end.",
            weight=0.3,
        )


def _ornaments(report: Report) -> Iterator[Advice]:
    missed: dict[str, list[FigureRow]] = {}
    for row in report.figures:
        if row.status is Status.MISSED:
            missed.setdefault(row.technique, []).append(row)
    for id, rows in missed.items():
        technique = technique_named(id)
        asked = len(rows) + sum(row.status is Status.DONE and row.technique == id for row in report.figures)
        bars = _bars(rows)
        yield Advice(
            Subject.ORNAMENT,
            capital(say(technique.name)),
            f"{len(rows)} of {asked} could not be heard ({_bar_words(bars)}). A common fault: {say(technique.fault)}",
            say(technique.cure),
            bars,
            id,
            weight=0.5 + 0.15 * min(len(rows), 3) + 0.2 * len(rows) / asked,
        )


def _notes(report: Report) -> Iterator[Advice]:
    slips = [slip for slip in report.slips if slip.kind is not SlipKind.ADDED]
    if len(slips) <= max(1.0, _SLIP_SHARE * len(report.notes)):
        return
    counts: dict[int, int] = {}
    for slip in slips:
        counts[slip.bar] = counts.get(slip.bar, 0) + 1
    worst = max(counts, key=lambda bar: counts[bar])
    examples = "; ".join(slip.words for slip in slips if slip.bar == worst)
    bars = (worst, *sorted(set(counts) - {worst}))
    yield Advice(
        Subject.NOTES,
        "Make the plain tune safe first",
        f"{len(slips)} melody notes were other than written; bar {worst}: {examples}.",
        f"Play bar {worst} alone and slowly, without ornaments, three times right in a row; then with the bars around it.",
        bars,
        weight=min(1.2, 0.4 + 8 * len(slips) / max(len(report.notes), 1)),
    )


def _pitch(report: Report) -> Iterator[Advice]:
    tuning = report.tuning_cents
    if abs(tuning) > _TUNING_CENTS:
        side, move = ("sharp", "out") if tuning > 0 else ("flat", "in")
        yield Advice(
            Subject.PITCH,
            "Tune before you play",
            f"The whole take is {abs(tuning):.0f} cents {side} of A = 440 Hz.",
            f"Warm up, tune a long note to a tuner, and pull the mouthpiece or head joint {move} until it agrees.",
            weight=min(1.0, abs(tuning) / 40),
        )
    often = [row for row in report.by_note if row.count >= _NOTE_COUNT]
    worst = max(often, key=lambda row: abs(row.cents), default=None)
    if worst and abs(worst.cents) >= _NOTE_CENTS:
        side = "sharp" if worst.cents > 0 else "flat"
        yield Advice(
            Subject.PITCH,
            f"Listen to {worst.name}",
            f"{worst.name} is {abs(worst.cents):.0f} cents {side} against your own tuning, in {worst.count} notes.",
            f"Hold {worst.name} with a drone, hear where it settles, and play it there from the notes before and after it.",
            weight=abs(worst.cents) / 30,
            note=worst.name,
        )


def _time(report: Report, feel: Feel) -> Iterator[Advice]:
    timing = report.timing
    if abs(timing.drift_percent) >= _DRIFT_PERCENT:
        faster = timing.drift_percent > 0
        yield Advice(
            Subject.TIME,
            "Keep the tempo to the end" if faster else "Carry the tempo to the end",
            f"The end is {abs(timing.drift_percent):.0f} percent {'faster' if faster else 'slower'} than the beginning.",
            "Play with a click on two and four only, and record the last eight bars again.",
            weight=min(1.0, abs(timing.drift_percent) / 12),
        )
    if timing.spread_ms >= _SPREAD_MS:
        worst = max(timing.beats, key=lambda row: abs(row.late_ms), default=None)
        where = ""
        if worst and worst.count >= _NOTE_COUNT and abs(worst.late_ms) >= 15:
            side = "late" if worst.late_ms > 0 else "early"
            where = f"; notes on {worst.name} come {abs(worst.late_ms):.0f} ms {side}".replace(
                "on between", "between"
            )
        yield Advice(
            Subject.TIME,
            "Place the notes on the beat",
            f"One note of three strays by more than {timing.spread_ms:.0f} ms from your own beat{where}.",
            "Clap the rhythm of a phrase with the click, speak it, then play it on one note, then as written.",
            weight=min(1.0, timing.spread_ms / 80),
        )
    if feel == "swing" and timing.swing_ratio < _EVEN_SWING and timing.quarters_per_minute < 200:
        yield Advice(
            Subject.TIME,
            "Let the eighths swing",
            f"Long and short eighths are {timing.swing_ratio:.2f} to 1, nearly even.",
            "Sing 'doo-da' over a slow click, the second syllable late and light; recorded soloists play about 1.3 to 1.",
            weight=0.45,
        )
    if feel == "straight" and timing.swing_ratio > _UNASKED_SWING:
        yield Advice(
            Subject.TIME,
            "Play the eighths even",
            f"The eighths swing, {timing.swing_ratio:.2f} to 1; the tune is written straight.",
            "Set the click to eighths and match every one of them.",
            weight=0.45,
        )
    if timing.grace_ms is not None and timing.grace_ms > _GRACE_MS:
        yield Advice(
            Subject.TIME,
            "Shorten the grace notes",
            f"Grace notes last {timing.grace_ms:.0f} ms; they sound like melody notes.",
            "Play the main note alone with a click, then let the grace note in without moving it.",
            technique=LOWER_GRACE_SEMITONE.id,
            weight=min(0.9, 0.4 + (timing.grace_ms - _GRACE_MS) / 200),
        )


def _evenness(report: Report) -> Iterator[Advice]:
    worst = max(report.evenness, key=lambda row: row.spread_percent, default=None)
    if worst and worst.spread_percent > _UNEVEN_PERCENT:
        technique = technique_named(worst.technique)
        yield Advice(
            Subject.EVENNESS,
            f"Even fingers: {say(technique.name)}",
            f"In bar {worst.bar} the quick notes differ by {worst.spread_percent:.0f} percent in length.",
            "Play it in dotted rhythms both ways, then even, at half the tempo; add five beats a minute at a time.",
            (worst.bar,),
            worst.technique,
            weight=min(0.9, worst.spread_percent / 50),
        )


def _next_steps(report: Report, level: int) -> Iterator[Advice]:
    known = {row.technique for row in report.figures}
    fresh = next((one for one in all_techniques().values() if one.level <= level and one.id not in known), None)
    tempo = report.timing.quarters_per_minute
    if fresh:
        yield Advice(
            Subject.NEXT_STEP,
            f"Add an ornament: {say(fresh.name)}",
            say(fresh.text),
            say(fresh.when),
            technique=fresh.id,
        )
    yield Advice(
        Subject.NEXT_STEP,
        "A little faster",
        f"This take was at {tempo:.0f} quarter notes a minute.",
        f"Play it at {1.08 * tempo:.0f} with the same ornaments.",
    )
    yield Advice(
        Subject.NEXT_STEP,
        "By heart",
        "The notes are there.",
        "Play the tune from memory, and choose the ornaments as you go.",
    )


def _short(row: FigureRow) -> str:
    return row.name[0].lower() + row.name[1:]


def _bars(rows: Sequence[FigureRow]) -> tuple[int, ...]:
    return tuple(sorted({row.bar for row in rows}))


def _bar_words(bars: Sequence[int]) -> str:
    if len(bars) == 1:
        return f"bar {bars[0]}"
    return f"bars {', '.join(map(str, bars[:-1]))} and {bars[-1]}"
