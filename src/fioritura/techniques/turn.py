"""Turns, mordents and shakes: quick movement around a note that stays where it is."""

from __future__ import annotations

from collections.abc import Iterator

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, instead
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH, THIRTYSECOND
from fioritura.theory.pitch import Pitch


def _turn_rhythms(context: Context) -> Iterator[tuple[int, ...]]:
    """Five values for main, first, main, second, main: the turn at once, or after the note has been heard."""
    length, shortest = context.note.duration_ticks, context.setting.shortest_ticks
    for quick in (SIXTEENTH, THIRTYSECOND):
        if quick < shortest or length % SIXTEENTH:
            continue
        if length > 4 * quick:
            yield (quick, quick, quick, quick, length - 4 * quick)
        if context.next and length >= 8 * quick:
            yield (length - 4 * quick, quick, quick, quick, quick)
        return


def _turn(context: Context) -> Iterator[Figure]:
    if context.is_free and context.note.duration_ticks >= QUARTER:
        main, above, below = context.note.pitch, context.step_above, context.step_below
        for values in _turn_rhythms(context):
            when = "at once" if values[0] < values[-1] else "after the note has been heard"
            why = f"A note with time for a turn ({when}): upper and lower scale step around it."
            yield instead("turn", context, [main, above, main, below, main], values, why)
            if context.midi - below.midi == 2:
                raised = context.leading_note
                why = f"A note with time for a turn ({when}), its lower note raised to a leading semitone."
                yield instead("turn", context, [main, above, main, raised, main], values, why)


def _inverted_turn(context: Context) -> Iterator[Figure]:
    if context.is_free and context.note.duration_ticks >= QUARTER:
        main, above, below = context.note.pitch, context.step_above, context.step_below
        for values in _turn_rhythms(context):
            why = "A note with time for a turn that dips first: lower, then upper scale step."
            yield instead("inverted-turn", context, [main, below, main, above, main], values, why)


def _flicked(technique: str, context: Context, other: Pitch, why: str) -> Iterator[Figure]:
    length, shortest = context.note.duration_ticks, context.setting.shortest_ticks
    for quick in (THIRTYSECOND, SIXTEENTH):
        if quick >= shortest and length >= 4 * quick and length % quick == 0:
            main = context.note.pitch
            yield instead(technique, context, [main, other, main], [quick, quick, length - 2 * quick], why)
            return


def _mordent(context: Context) -> Iterator[Figure]:
    if context.is_free and context.strength >= 0.25:
        why = "The attack is sharpened by one quick dip to the step below."
        yield from _flicked("mordent", context, context.step_below, why)


def _upper_mordent(context: Context) -> Iterator[Figure]:
    if context.is_free and context.strength >= 0.25:
        why = "The attack is brightened by one quick flick to the step above."
        yield from _flicked("upper-mordent", context, context.step_above, why)


def _shake(context: Context) -> Iterator[Figure]:
    length, shortest = context.note.duration_ticks, context.setting.shortest_ticks
    if not context.is_free or length < QUARTER + EIGHTH or length % EIGHTH:
        return
    for quick in (THIRTYSECOND, SIXTEENTH):
        pairs = min((length - QUARTER // 2) // (2 * quick), 8)
        if quick < shortest or pairs < 2:
            continue
        main, above = context.note.pitch, context.step_above
        values = [quick] * (2 * pairs)
        why = "A long note that can carry excitement: rapid alternation with the step above, then it settles."
        yield instead("shake", context, [main, above] * pairs + [main], [*values, length - sum(values)], why)
        return


TECHNIQUES = (
    Technique(
        id="turn",
        name="Turn",
        label="turn",
        family="turns",
        level=3,
        find=_turn,
        text="Main note, upper step, main note, lower step, main note, in the scale of the chord.",
        how="Slur the whole turn; keep it even and let the last note sing.",
        when="On a note of a beat or more, best on its way to the next one.",
        fault="The turn is squeezed at the start and the last note is late.",
        cure="Play it in slow even notes with the metronome, then halve the values.",
    ),
    Technique(
        id="inverted-turn",
        name="Inverted turn",
        label="inv. turn",
        family="turns",
        level=4,
        find=_inverted_turn,
        text="Main note, lower step, main note, upper step, main note.",
        how="As the turn, but it opens upwards: grow a little to the upper note.",
        when="Before a melody note that lies higher.",
        fault="It is mixed up with the turn.",
        cure="Say 'down first' and look where the melody goes next.",
    ),
    Technique(
        id="mordent",
        name="Mordent",
        label="mordent",
        family="turns",
        level=3,
        find=_mordent,
        text="Main note, a quick dip to the step below, and back.",
        how="One flick of one finger; the tongue plays only the first note.",
        when="On a strong note that is approached from above or repeated.",
        fault="Three equal notes: a triplet instead of a flick.",
        cure="Play the long note, add the flick at its very start, as late and as fast as you can.",
    ),
    Technique(
        id="upper-mordent",
        name="Upper mordent",
        label="upper mord.",
        family="turns",
        level=3,
        find=_upper_mordent,
        text="Main note, a quick flick to the step above, and back.",
        how="Flick the finger up, not down: light and near the key.",
        when="On a strong note that is approached from below or repeated.",
        fault="The upper note is accented.",
        cure="Accent the main note and let the flick ride on the same air.",
    ),
    Technique(
        id="shake",
        name="Shake",
        label="shake",
        family="turns",
        level=5,
        find=_shake,
        text="Rapid alternation of a long note with the step above, settling on the main note.",
        how="Start slower than you can, speed up, and stop in time to let the note ring.",
        when="On a long high note at a climax; once in a chorus is plenty.",
        fault="It goes on to the end of the note.",
        cure="Decide the beat on which it settles and practise arriving there.",
    ),
)
