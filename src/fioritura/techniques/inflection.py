"""Inflections: what a wind player does to a note without writing another: scoop, fall, doit, ghost, vibrato."""

from __future__ import annotations

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.families import INFLECTIONS
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, with_mark
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Mark
from fioritura.words import message

_LONG_SEC = 0.45
_VIBRATO_SEC = 0.8
_LEAP_SEMITONES = 3
_LEAVING_SEC = 0.9
"""How long a note must be to be left early where no rest follows."""
_LONGEST_LEFT_SEC = 3.0
"""A longer note is held to its end: it dies away, it does not drop (common practice)."""


def _scoop(context: Context) -> Iterator[Figure]:
    long_enough = context.setting.seconds(context.note.duration_ticks) >= _LONG_SEC
    if context.is_free and long_enough and context.strength >= 0.25 and context.interval_in != -1:
        why = message("scoop-why", role=_role(context))
        yield with_mark("scoop", context, Mark.SCOOP, why, at_head=True, at_tail=False)


def _role(context: Context) -> str:
    """What makes the note one to scoop into, as a keyword of its text."""
    if context.is_peak:
        return context.height
    if context.is_phrase_start:
        return "start"
    if (context.interval_in or 0) >= _LEAP_SEMITONES:
        return "leap"
    return "long" if context.setting.seconds(context.note.duration_ticks) >= _LEAVING_SEC else "time"


def _lets_go(context: Context) -> bool:
    seconds = context.setting.seconds(context.note.duration_ticks)
    rests = context.gap_ticks >= EIGHTH or context.next is None
    is_left = seconds >= _LONG_SEC if rests else context.is_phrase_end and seconds >= _LEAVING_SEC
    return context.is_free and is_left and seconds <= _LONGEST_LEFT_SEC


def _end(context: Context) -> str:
    return "last" if context.next is None else "rest" if context.gap_ticks >= EIGHTH else "phrase"


def _fall(context: Context) -> Iterator[Figure]:
    if _lets_go(context):
        yield with_mark(
            "fall", context, Mark.FALL, message("fall-why", end=_end(context)), at_head=False, at_tail=True
        )


def _doit(context: Context) -> Iterator[Figure]:
    if _lets_go(context) and (context.interval_in or 0) >= 0:
        why = message("doit-why", end=_end(context), rises=(context.interval_in or 0) > 0)
        yield with_mark("doit", context, Mark.DOIT, why, at_head=False, at_tail=True)


def _ghost(context: Context) -> Iterator[Figure]:
    short = context.note.duration_ticks <= EIGHTH
    if (
        context.is_free
        and short
        and context.strength <= 0.25
        and context.leads_directly
        and not context.is_phrase_start
    ):
        following = context.next
        why = message(
            "ghost-note-why", pitch=context.note.pitch.message, next=(following or context).note.pitch.message
        )
        yield with_mark("ghost-note", context, Mark.GHOST, why, at_head=True, at_tail=True)


def _vibrato(context: Context) -> Iterator[Figure]:
    duration = context.note.duration_ticks
    if context.is_free and duration >= QUARTER and context.setting.seconds(duration) >= _VIBRATO_SEC:
        end = "last" if context.next is None else "phrase" if context.is_phrase_end else "long"
        why = message("vibrato-why", end=end, pitch=context.note.pitch.message, count=duration / QUARTER)
        yield with_mark("vibrato", context, Mark.VIBRATO, why, at_head=True, at_tail=True)


SCOOP = Technique(
    id="scoop",
    family=INFLECTIONS.id,
    level=2,
    find=_scoop,
    side="below",
    signs=(Mark.SCOOP,),
    is_sign=True,
)

FALL = Technique(
    id="fall",
    family=INFLECTIONS.id,
    level=2,
    find=_fall,
    side="below",
    signs=(Mark.FALL,),
    is_sign=True,
)

DOIT = Technique(
    id="doit",
    family=INFLECTIONS.id,
    level=4,
    find=_doit,
    side="above",
    signs=(Mark.DOIT,),
    is_sign=True,
)

GHOST_NOTE = Technique(
    id="ghost-note",
    family=INFLECTIONS.id,
    level=2,
    find=_ghost,
    signs=(Mark.GHOST,),
    is_sign=True,
)

VIBRATO = Technique(
    id="vibrato",
    family=INFLECTIONS.id,
    level=1,
    find=_vibrato,
    signs=(Mark.VIBRATO,),
    is_sign=True,
)

TECHNIQUES = (SCOOP, FALL, DOIT, GHOST_NOTE, VIBRATO)
