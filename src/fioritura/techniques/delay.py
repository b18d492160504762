"""Delay: notes start late, hurry, and arrive in time; or a note is held over into the next one's place."""

from __future__ import annotations

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.families import DELAYS
from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH
from fioritura.words import Message, message

_MOST_NOTES = 4
_PLAIN_START = 0.25
"""A late start stands on a beat or an even part of one; half of a dotted beat is a rest that nobody counts."""


def _delay(context: Context) -> Iterator[Figure]:
    """Notes from here to the next strong arrival start late, at half their value; the arrival keeps its beat."""
    if context.strength < 0.5 or not context.is_free:
        return
    group = [context]
    while (following := group[-1].next) is not None and len(group) <= _MOST_NOTES:
        arrival = following
        span = arrival.note.onset_ticks - context.note.onset_ticks
        if group[-1].gap_ticks or span > HALF:
            return
        if arrival.strength >= 0.5 and arrival.strength >= max(member.strength for member in group[1:] or [arrival]):
            yield from _compressed(group, span)
            return
        if not arrival.is_free:
            return
        group.append(arrival)


def _compressed(group: list[Context], span_ticks: int) -> Iterator[Figure]:
    first, last = group[0], group[-1]
    halves = [member.note.duration_ticks // 2 for member in group]
    shortest = max(SIXTEENTH, first.setting.shortest_ticks)
    if any(value < shortest or value % SIXTEENTH for value in halves) or sum(halves) * 2 != span_ticks:
        return
    onset = first.note.onset_ticks + span_ticks // 2
    if first.strength_at(onset) < _PLAIN_START:
        return
    notes = []
    for member, value in zip(group, halves, strict=True):
        notes.append(FigureNote(onset, value, member.note.pitch, member.index))
        onset += value
    yield Figure(
        "delay",
        tuple(member.index for member in group),
        head(first.index),
        tail(last.index),
        first.note.onset_ticks,
        last.note.end_ticks,
        notes=tuple(notes),
        why=message("delay-why", count=len(group)),
    )


def _held_over(context: Context, interval: tuple[int, ...], technique: str, why: Message) -> Iterator[Figure]:
    before = context.previous
    if before is None or not context.is_free or not context.follows_directly or context.strength < 0.5:
        return
    if context.interval_in not in interval or context.note.duration_ticks < QUARTER or not before.is_free:
        return
    if before.note.duration_ticks < EIGHTH or not _resolves(before, context):
        return
    late = _lateness(context)
    onset = context.note.onset_ticks
    yield Figure(
        technique,
        (before.index, context.index),
        tail(before.index),
        tail(context.index),
        onset,
        onset + late,
        notes=(FigureNote(onset, late, before.note.pitch, before.index, joins=True),),
        why=why,
    )


def _resolves(held: Context, context: Context) -> bool:
    """True when the note before clashes with the chord that the melody note belongs to."""
    chord = context.chord
    return chord is not None and context.is_chord_tone and held.midi % 12 not in chord.pitch_classes


def _lateness(context: Context) -> int:
    """How long the note before is held over: an eighth of a shorter note, a beat of a longer one."""
    beat = context.bar.metre.beat_ticks if context.bar.metre.is_compound else QUARTER
    return beat if context.note.duration_ticks >= 2 * beat else EIGHTH


def _suspension(context: Context) -> Iterator[Figure]:
    yield from _held_over(context, (-1, -2), "suspension", message("suspension-why"))


def _retardation(context: Context) -> Iterator[Figure]:
    yield from _held_over(context, (1, 2), "retardation", message("retardation-why"))


DELAY = Technique(
    id="delay",
    family=DELAYS.id,
    level=3,
    find=_delay,
)

SUSPENSION = Technique(
    id="suspension",
    family=DELAYS.id,
    level=3,
    find=_suspension,
    side="above",
)

RETARDATION = Technique(
    id="retardation",
    family=DELAYS.id,
    level=4,
    find=_retardation,
    side="below",
)

TECHNIQUES = (DELAY, SUSPENSION, RETARDATION)
