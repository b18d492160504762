"""Repeated notes: a long note becomes several of the same pitch."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, instead
from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH

_DOTTED_QUARTER: Final = QUARTER + EIGHTH

_EVEN_TICKS: Final = {
    QUARTER: (EIGHTH, EIGHTH),
    _DOTTED_QUARTER: (QUARTER, EIGHTH),
    HALF: (QUARTER, QUARTER),
    HALF + QUARTER: (HALF, QUARTER),
}

_LIVELY_TICKS: Final = {
    QUARTER: ((EIGHTH, SIXTEENTH, SIXTEENTH), (SIXTEENTH, SIXTEENTH, EIGHTH)),
    _DOTTED_QUARTER: ((EIGHTH, EIGHTH, EIGHTH), (QUARTER, SIXTEENTH, SIXTEENTH)),
    HALF: ((EIGHTH, QUARTER, EIGHTH), (QUARTER, EIGHTH, EIGHTH), (_DOTTED_QUARTER, EIGHTH)),
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
        why = "A note long enough to be said twice: the pitch stays, the rhythm moves."
        yield instead("repeated-notes", context, [context.note.pitch] * len(values), values, why)


def _lively(context: Context) -> Iterator[Figure]:
    table = _LIVELY_COMPOUND_TICKS if context.bar.metre.is_compound else _LIVELY_TICKS
    for values in table.get(context.note.duration_ticks, ()):
        if _can_repeat(context, min(values)):
            count = {2: "two", 3: "three", 4: "four"}[len(values)]
            why = f"A long note becomes a rhythm of {count} on one pitch, while the melody waits."
            yield instead("repeated-notes-lively", context, [context.note.pitch] * len(values), values, why)


def _can_repeat(context: Context, quickest_ticks: int) -> bool:
    tongued_ticks = context.setting.shortest_ticks * 1.15
    return (
        context.is_free and quickest_ticks >= tongued_ticks and context.strength >= 0.25 and not context.is_syncopated
    )


TECHNIQUES = (
    Technique(
        id="repeated-notes",
        name="Repeated notes",
        label="repeat",
        family="repetitions",
        level=1,
        find=_even,
        text="A quarter note becomes two eighths, a half two quarters: the same pitch, said again.",
        how="Tongue each note lightly, 'dah-dah', with the air running through.",
        when="On a note longer than its neighbours, where the line would otherwise stand still.",
        fault="The air stops with each tongue stroke.",
        cure="Play the note long, then touch it with the tongue without changing the air.",
        repeats_pitch=True,
    ),
    Technique(
        id="repeated-notes-lively",
        name="Repeated notes in a rhythm",
        label="rhythm",
        family="repetitions",
        level=3,
        find=_lively,
        text="A long note becomes a small rhythm on one pitch, often syncopated.",
        how="Shape it: one of the notes is the loud one, the others lead to it or fall from it.",
        when="On a held note while the band plays on, or to wake up a plain ending.",
        fault="All notes are equally loud.",
        cure="Speak the rhythm with one accented syllable, then tongue just that.",
        repeats_pitch=True,
    ),
)
