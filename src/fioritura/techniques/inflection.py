"""Inflections: what a wind player does to a note without writing another: scoop, fall, doit, ghost, vibrato."""

from __future__ import annotations

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, with_mark
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Mark

_LONG_SEC = 0.45
_VIBRATO_SEC = 0.8
_LEAVING_SEC = 0.9
"""How long a note must be to be left early where no rest follows."""
_LONGEST_LEFT_SEC = 3.0
"""A longer note is held to its end: it dies away, it does not drop (common practice)."""


def _scoop(context: Context) -> Iterator[Figure]:
    long_enough = context.setting.seconds(context.note.duration_ticks) >= _LONG_SEC
    if context.is_free and long_enough and context.strength >= 0.25 and context.interval_in != -1:
        role = "a peak" if context.is_peak else "the start of a phrase" if context.is_phrase_start else "a long note"
        why = f"This is {role}: it can be bent up into from below."
        yield with_mark("scoop", context, Mark.SCOOP, why, at_head=True, at_tail=False)


def _lets_go(context: Context) -> bool:
    seconds = context.setting.seconds(context.note.duration_ticks)
    rests = context.gap_ticks >= EIGHTH or context.next is None
    is_left = seconds >= _LONG_SEC if rests else context.is_phrase_end and seconds >= _LEAVING_SEC
    return context.is_free and is_left and seconds <= _LONGEST_LEFT_SEC


def _fall(context: Context) -> Iterator[Figure]:
    if _lets_go(context):
        why = "The phrase lets go of this note: it may drop off downwards."
        yield with_mark("fall", context, Mark.FALL, why, at_head=False, at_tail=True)


def _doit(context: Context) -> Iterator[Figure]:
    if _lets_go(context) and (context.interval_in or 0) >= 0:
        why = "The phrase lets go of this note after a rise: it may shoot off upwards."
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
        why = "A short note off the beat between stronger ones: it can be half swallowed."
        yield with_mark("ghost-note", context, Mark.GHOST, why, at_head=True, at_tail=True)


def _vibrato(context: Context) -> Iterator[Figure]:
    duration = context.note.duration_ticks
    if context.is_free and duration >= QUARTER and context.setting.seconds(duration) >= _VIBRATO_SEC:
        why = "A note long enough to start straight and warm up towards its end."
        yield with_mark("vibrato", context, Mark.VIBRATO, why, at_head=True, at_tail=True)


TECHNIQUES = (
    Technique(
        id="scoop",
        name="Scoop",
        label="scoop",
        family="inflections",
        level=2,
        find=_scoop,
        text="The note starts a little flat and is bent up to pitch.",
        how="Reeds: loosen the jaw for the attack, then firm it; flute: roll in and back; brass: start under the note. No finger moves.",
        when="On long notes, peaks and phrase starts; seldom twice in a phrase.",
        fault="Every long note is scooped.",
        cure="Allow yourself one in four bars and choose it beforehand.",
    ),
    Technique(
        id="fall",
        name="Fall",
        label="fall",
        family="inflections",
        level=2,
        find=_fall,
        text="At its end the note drops off downwards, without a goal.",
        how="Let the air and the fingers go together, fading as you fall.",
        when="At the end of a phrase, before a rest.",
        fault="It is loud to the end and lands on a pitch.",
        cure="Fade to nothing before the last finger moves.",
    ),
    Technique(
        id="doit",
        name="Doit",
        label="doit",
        family="inflections",
        level=4,
        find=_doit,
        text="At its end the note shoots off upwards.",
        how="Tighten the embouchure and throw the fingers up, in one quick gesture.",
        when="At the end of a bright phrase that rises.",
        fault="It is as long as the note.",
        cure="Hold the note for its value and use only the last moment.",
    ),
    Technique(
        id="ghost-note",
        name="Ghost note",
        label="ghost",
        family="inflections",
        level=2,
        find=_ghost,
        text="A note half swallowed: more felt than heard.",
        how="Let the tongue all but stop the note (reeds: touch the reed) and keep the air going.",
        when="On a weak eighth between two stronger notes.",
        fault="The note disappears altogether or its pitch is wrong.",
        cure="Play it full, then bring the tongue closer by degrees.",
    ),
    Technique(
        id="vibrato",
        name="Vibrato towards the end",
        label="vib.",
        family="inflections",
        level=1,
        find=_vibrato,
        text="The long note starts straight and begins to swing in pitch towards its end.",
        how="Saxophone and brass: a small movement of the jaw, about five a second; flute and oboe: the breath. Start after half the note.",
        when="On notes longer than about a second, most of all at endings.",
        fault="It begins with the attack and never varies.",
        cure="Count the note: straight for the first half, vibrato for the second.",
    ),
)
