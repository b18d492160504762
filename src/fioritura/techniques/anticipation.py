"""Anticipation: a note arrives before its beat."""

from __future__ import annotations

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition, Group
from fioritura.techniques.families import ANTICIPATIONS
from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, SIXTEENTH
from fioritura.words import message


def _anticipation(context: Context) -> Iterator[Figure]:
    before = context.previous
    if before is None or not context.is_free or context.strength < 0.5 or before.midi == context.midi:
        return
    early = EIGHTH if context.setting.feel == "swing" else SIXTEENTH
    if before.reach_ticks < 2 * early or before.note.duration_ticks + before.gap_ticks - early < early:
        return
    if context.note.duration_ticks < EIGHTH:
        return
    onset = context.note.onset_ticks
    yield Figure(
        "anticipation",
        (context.index,),
        tail(before.index),
        head(context.index),
        onset - early,
        onset,
        notes=(FigureNote(onset - early, early, context.note.pitch, context.index, joins=True),),
        why=message(
            "anticipation-why", value="eighth" if early == EIGHTH else "sixteenth", brings=_chord_changes(context)
        ),
    )


def _chord_changes(context: Context) -> bool:
    return context.previous is not None and context.chord is not None and context.chord != context.previous.chord


def _is_early(g: Group) -> bool:
    is_same = len(g.inner) == 1 and g.inner[0] == g.after and g.before != g.after
    return g.is_light and not g.is_quick and is_same


ANTICIPATION = Technique(
    id="anticipation",
    family=ANTICIPATIONS.id,
    level=2,
    find=_anticipation,
    definition=Definition(_is_early, breadth=280),
)

TECHNIQUES = (ANTICIPATION,)
