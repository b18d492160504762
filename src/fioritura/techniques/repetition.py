"""Repeated notes: a long note becomes several of the same pitch.

Only where the melody itself goes on to another pitch: beside a note that it repeats, one more would be one too many.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition, Group
from fioritura.techniques.families import REPETITIONS
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, instead
from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH
from fioritura.words import Message, message

_DOTTED_QUARTER: Final = QUARTER + EIGHTH

_EVEN_TICKS: Final = {
    QUARTER: (EIGHTH, EIGHTH),
    _DOTTED_QUARTER: (QUARTER, EIGHTH),
    HALF: (_DOTTED_QUARTER, EIGHTH),
    HALF + QUARTER: (HALF, QUARTER),
}

_LIVELY_TICKS: Final = {
    QUARTER: ((EIGHTH, SIXTEENTH, SIXTEENTH), (SIXTEENTH, SIXTEENTH, EIGHTH)),
    _DOTTED_QUARTER: ((EIGHTH, EIGHTH, EIGHTH), (QUARTER, SIXTEENTH, SIXTEENTH)),
    HALF: ((EIGHTH, QUARTER, EIGHTH), (QUARTER, EIGHTH, EIGHTH)),
    HALF + QUARTER: ((_DOTTED_QUARTER, EIGHTH, QUARTER), (QUARTER, EIGHTH, _DOTTED_QUARTER)),
    2 * HALF: ((_DOTTED_QUARTER, EIGHTH, HALF), (QUARTER, EIGHTH, EIGHTH, HALF), (HALF, EIGHTH, QUARTER, EIGHTH)),
}


_EVEN_COMPOUND_TICKS: Final = {
    QUARTER: (EIGHTH, EIGHTH),
    _DOTTED_QUARTER: (QUARTER, EIGHTH),
    2 * _DOTTED_QUARTER: (_DOTTED_QUARTER, _DOTTED_QUARTER),
}

_LIVELY_COMPOUND_TICKS: Final = {
    _DOTTED_QUARTER: ((EIGHTH, EIGHTH, EIGHTH), (QUARTER, SIXTEENTH, SIXTEENTH)),
    2 * _DOTTED_QUARTER: ((_DOTTED_QUARTER, QUARTER, EIGHTH), (QUARTER, EIGHTH, _DOTTED_QUARTER)),
}


def _even(context: Context) -> Iterator[Figure]:
    table = _EVEN_COMPOUND_TICKS if context.bar.metre.is_compound else _EVEN_TICKS
    values = table.get(context.note.duration_ticks)
    if values and _can_repeat(context, min(values)):
        why = message("repeated-notes-why", pitch=context.note.pitch.message, **_goes_on(context))
        yield instead("repeated-notes", context, [context.note.pitch] * len(values), values, why)


def _lively(context: Context) -> Iterator[Figure]:
    table = _LIVELY_COMPOUND_TICKS if context.bar.metre.is_compound else _LIVELY_TICKS
    for values in table.get(context.note.duration_ticks, ()):
        if _can_repeat(context, min(values)):
            why = message("repeated-notes-lively-why", count=len(values))
            yield instead("repeated-notes-lively", context, [context.note.pitch] * len(values), values, why)


def _can_repeat(context: Context, quickest_ticks: int) -> bool:
    tongued_ticks = context.setting.shortest_ticks * 1.15
    moves = context.interval_in != 0 != context.interval_out
    is_placed = context.strength >= 0.25 and not context.is_syncopated
    return context.is_free and moves and is_placed and quickest_ticks >= tongued_ticks


def _goes_on(context: Context) -> dict[str, Message | str]:
    """The next pitch, and whether there is one, as a keyword of the text."""
    following = context.next
    return {"next": (following or context).note.pitch.message, "end": "moves" if following else "last"}


def _is_repeated(g: Group) -> bool:
    return g.is_light and not g.is_quick and len(set(g.inner)) == 1 and g.inner[0] == g.before


REPEATED_NOTES = Technique(
    id="repeated-notes",
    family=REPETITIONS.id,
    level=1,
    find=_even,
    definition=Definition(_is_repeated, breadth=120),
    repeats_pitch=True,
)

REPEATED_NOTES_LIVELY = Technique(
    id="repeated-notes-lively",
    family=REPETITIONS.id,
    level=3,
    find=_lively,
    repeats_pitch=True,
)

TECHNIQUES = (REPEATED_NOTES, REPEATED_NOTES_LIVELY)
