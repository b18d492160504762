"""Grace notes: one or two quick notes that belong to the note they lead into and take no written time."""

from __future__ import annotations

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, with_graces
from fioritura.theory.metre import SIXTEENTH

_LEAST_MAIN_TICKS = SIXTEENTH
_LEAST_WEAK_SEC = 0.3
"""A shorter note off the beat has no time to be heard after a grace note."""


def _takes_grace(context: Context) -> bool:
    is_heard = context.strength >= 0.5 or context.setting.seconds(context.note.duration_ticks) >= _LEAST_WEAK_SEC
    return context.is_free and is_heard and context.note.duration_ticks > _LEAST_MAIN_TICKS


def _lower_semitone(context: Context) -> Iterator[Figure]:
    if _takes_grace(context):
        why = f"The semitone below leads up into the note on {context.where} and makes it speak."
        yield with_graces("lower-grace-semitone", context, [context.leading_note], why)


def _lower_step(context: Context) -> Iterator[Figure]:
    below = context.step_below
    if _takes_grace(context) and context.midi - below.midi >= 2 and context.interval_in != 1:
        why = f"The scale step below is a whole tone here: a softer lift into the note on {context.where}."
        yield with_graces("lower-grace-step", context, [below], why)


def _upper_step(context: Context) -> Iterator[Figure]:
    came = context.interval_in
    if _takes_grace(context) and not (came == -1 and context.step_above.midi - context.midi == 2):
        reason = (
            "a repeated note is parted from the one before"
            if came == 0
            else "the melody comes from below, so the note is touched from the other side"
            if came is not None and came > 0
            else "the note is leaned on from above"
        )
        why = f"The scale step above falls onto the note on {context.where}: {reason}."
        yield with_graces("upper-grace-step", context, [context.step_above], why)


def _upper_semitone(context: Context) -> Iterator[Figure]:
    if _takes_grace(context) and context.interval_in == -2:
        why = "The melody falls a whole tone here: the semitone between fills the step on the way down."
        yield with_graces("upper-grace-semitone", context, [context.semitones(1, "down")], why)


def _double_below(context: Context) -> Iterator[Figure]:
    if _takes_grace(context):
        low = context.scale.step(context.note.pitch, -2)
        why = f"Two scale steps run up into the note on {context.where}."
        yield with_graces("double-grace-lower", context, [low, context.step_below], why)


def _double_around(context: Context) -> Iterator[Figure]:
    if _takes_grace(context):
        why = f"Scale step above, semitone below: the note on {context.where} is closed in from both sides."
        yield with_graces("double-grace-upper-lower", context, [context.step_above, context.leading_note], why)


TECHNIQUES = (
    Technique(
        id="lower-grace-semitone",
        name="Grace note a semitone below",
        label="grace ½ below",
        family="graces",
        level=1,
        find=_lower_semitone,
        text="A short note one semitone under the melody note, played just before it and slurred up into it.",
        how="Tongue the grace note lightly and slur at once to the main note, which keeps its place on the beat.",
        when="On notes that deserve weight: long notes, peaks, the first note of a phrase, notes on a beat.",
        fault="The grace note grows long and the main note comes late.",
        cure="Play the main note alone with a metronome, then let the grace note in without moving it.",
    ),
    Technique(
        id="lower-grace-step",
        name="Grace note a scale step below",
        label="grace below",
        family="graces",
        level=1,
        find=_lower_step,
        text="A short note one step of the scale under the melody note: softer in colour than the semitone.",
        how="Finger both notes before you start; only one or two fingers should move on the slur.",
        when="Where the semitone would sound too sharp-edged: ballads, and notes whose lower step is a whole tone.",
        fault="Both notes get the same weight.",
        cure="Breathe into the main note; say 'ta-DAA', never 'TA-ta'.",
    ),
    Technique(
        id="upper-grace-step",
        name="Grace note a scale step above",
        label="grace above",
        family="graces",
        level=1,
        find=_upper_step,
        text="A short note one step of the scale above the melody note, falling onto it.",
        how="Think of flicking a finger: the upper note is only a click before the main note.",
        when="On a repeated note, after a rising step, and on the strong beats of folk tunes.",
        fault="The upper note sounds like a wrong melody note.",
        cure="Make it shorter and quieter; the ear should notice the attack, not the pitch.",
    ),
    Technique(
        id="upper-grace-semitone",
        name="Grace note a semitone above, in a falling whole tone",
        label="grace ½ above",
        family="graces",
        level=2,
        find=_upper_semitone,
        text="Where the melody falls by a whole tone, the semitone that lies between is touched on the way down.",
        how="Leave the first note a moment early and slide through the middle note by finger, not by jaw.",
        when="Only where the melody really falls a whole tone to the note.",
        fault="It is used on falling semitones, where nothing lies between.",
        cure="Name the two melody notes first; if they are neighbours on the piano, choose another grace note.",
    ),
    Technique(
        id="double-grace-lower",
        name="Double grace note from below",
        label="double grace",
        family="graces",
        level=3,
        find=_double_below,
        text="Two quick scale steps that run up into the melody note.",
        how="One tongue stroke on the first, then slur all three; fingers close together on the keys.",
        when="On a strong, long note, best where the melody comes from below or from a rest.",
        fault="The two notes are uneven.",
        cure="Practise them as an even triplet with the main note, then shrink the triplet.",
    ),
    Technique(
        id="double-grace-upper-lower",
        name="Double grace note around the note (upper, lower)",
        label="grace around",
        family="graces",
        level=4,
        find=_double_around,
        text="The scale step above and the semitone below, then the note between them.",
        how="Slur all three; aim the air at the main note from the start.",
        when="On a long note or a peak on a beat, where there is time for the ear to hear the note arrive.",
        fault="The main note is cut short.",
        cure="Hold the main note for its full value and let the note before it give up the time.",
    ),
)
