"""Grace notes: one or two quick notes that belong to the note they lead into and take no written time."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from fioritura.techniques.context import Context
from fioritura.techniques.definition import STEP_SEMITONES, Definition, Group, is_step
from fioritura.techniques.families import GRACES
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, with_graces
from fioritura.theory.metre import SIXTEENTH
from fioritura.words import message

_LEAST_MAIN_TICKS = SIXTEENTH
_LEAST_WEAK_SEC = 0.3
"""A shorter note off the beat has no time to be heard after a grace note."""


def _takes_grace(context: Context) -> bool:
    is_heard = context.strength >= 0.5 or context.setting.seconds(context.note.duration_ticks) >= _LEAST_WEAK_SEC
    return context.is_free and is_heard and context.note.duration_ticks > _LEAST_MAIN_TICKS


def _lower_semitone(context: Context) -> Iterator[Figure]:
    if _takes_grace(context) and context.is_led_to:
        why = message("lower-grace-semitone-why", note=context.note_there)
        yield with_graces("lower-grace-semitone", context, [context.leading_note], why)


def _lower_step(context: Context) -> Iterator[Figure]:
    below = context.step_below
    if below and _takes_grace(context) and context.midi - below.midi == 2 and context.interval_in != 1:
        why = message("lower-grace-step-why", note=context.note_there)
        yield with_graces("lower-grace-step", context, [below], why)


def _upper_step(context: Context) -> Iterator[Figure]:
    came, above = context.interval_in, context.step_above
    if above and _takes_grace(context) and not (came == -1 and above.midi - context.midi == 2):
        coming = "repeated" if came == 0 else "below" if came is not None and came > 0 else "above"
        why = message("upper-grace-step-why", where=context.where, coming=coming)
        yield with_graces("upper-grace-step", context, [above], why)


def _upper_semitone(context: Context) -> Iterator[Figure]:
    if _takes_grace(context) and context.interval_in == -2:
        why = message("upper-grace-semitone-why")
        yield with_graces("upper-grace-semitone", context, [context.semitones(1, "down")], why)


def _double_below(context: Context) -> Iterator[Figure]:
    below = context.steps(-2)
    if below and _takes_grace(context):
        why = message("double-grace-lower-why", where=context.where)
        yield with_graces("double-grace-lower", context, below[::-1], why)


def _double_around(context: Context) -> Iterator[Figure]:
    above = context.step_above
    if above and _takes_grace(context) and context.is_led_to:
        why = message("double-grace-upper-lower-why", note=context.note_there)
        yield with_graces("double-grace-upper-lower", context, [above, context.leading_note], why)


def _is_one_quick(semitones: tuple[int, ...], g: Group) -> bool:
    """One quick note, so far from the note after."""
    return g.is_quick and g.after is not None and g.around(g.after) in {(s,) for s in semitones}


def _is_upper_semitone(g: Group) -> bool:
    return _is_one_quick((1,), g) and g.before is not None and g.after is not None and g.before - g.after == 2


def _are_two_below(g: Group) -> bool:
    found = g.around(g.after)
    return g.is_quick and len(found) == 2 and -5 <= found[0] < found[1] < 0 and found[1] >= -STEP_SEMITONES


def _are_two_around(g: Group) -> bool:
    found = g.around(g.after)
    return g.is_quick and len(found) == 2 and is_step(found[0]) and is_step(found[1]) and found[1] < 0 < found[0]


LOWER_GRACE_SEMITONE = Technique(
    id="lower-grace-semitone",
    family=GRACES.id,
    level=1,
    find=_lower_semitone,
    definition=Definition(partial(_is_one_quick, (-1,)), breadth=20),
    side="below",
)

LOWER_GRACE_STEP = Technique(
    id="lower-grace-step",
    family=GRACES.id,
    level=1,
    find=_lower_step,
    definition=Definition(partial(_is_one_quick, (-2,)), breadth=30),
    side="below",
)

UPPER_GRACE_STEP = Technique(
    id="upper-grace-step",
    family=GRACES.id,
    level=1,
    find=_upper_step,
    definition=Definition(partial(_is_one_quick, (1, 2)), breadth=40),
    side="above",
)

UPPER_GRACE_SEMITONE = Technique(
    id="upper-grace-semitone",
    family=GRACES.id,
    level=2,
    find=_upper_semitone,
    definition=Definition(_is_upper_semitone, breadth=10),
    side="above",
)

DOUBLE_GRACE_LOWER = Technique(
    id="double-grace-lower",
    family=GRACES.id,
    level=3,
    find=_double_below,
    definition=Definition(_are_two_below, breadth=50),
    side="below",
)

DOUBLE_GRACE_UPPER_LOWER = Technique(
    id="double-grace-upper-lower",
    family=GRACES.id,
    level=4,
    find=_double_around,
    definition=Definition(_are_two_around, breadth=60),
)

TECHNIQUES = (
    LOWER_GRACE_SEMITONE,
    LOWER_GRACE_STEP,
    UPPER_GRACE_STEP,
    UPPER_GRACE_SEMITONE,
    DOUBLE_GRACE_LOWER,
    DOUBLE_GRACE_UPPER_LOWER,
)
