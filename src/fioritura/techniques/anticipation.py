"""Anticipation: a note arrives before its beat."""

from __future__ import annotations

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, SIXTEENTH


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
    name = "an eighth" if early == EIGHTH else "a sixteenth"
    chord = "and brings the new chord in early" if _chord_changes(context) else "and pushes the line forward"
    yield Figure(
        "anticipation",
        (context.index,),
        tail(before.index),
        head(context.index),
        onset - early,
        onset,
        notes=(FigureNote(onset - early, early, context.note.pitch, context.index, joins=True),),
        why=f"A note on a beat that can come {name} early {chord}.",
    )


def _chord_changes(context: Context) -> bool:
    return context.previous is not None and context.chord is not None and context.chord != context.previous.chord


TECHNIQUES = (
    Technique(
        id="anticipation",
        name="Anticipation",
        label="early",
        family="anticipations",
        level=2,
        find=_anticipation,
        text="The note comes early, by a sixteenth (in swing by an eighth), and is held over its beat.",
        how="Tongue the early note clearly and hold it; feel the beat pass under it without playing again.",
        when="On a note of a beat or two that starts on a beat, best where the chord changes with it.",
        fault="Everything after it comes early as well.",
        cure="Tap the beat with the foot and speak the rhythm before you play it.",
    ),
)
