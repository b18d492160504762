"""Turns, mordents and shakes: quick movement around a note that stays where it is."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from itertools import pairwise

from fioritura.techniques.context import Context
from fioritura.techniques.definition import STEP_SEMITONES, Definition, Group, is_step
from fioritura.techniques.families import TURNS
from fioritura.techniques.figure import NO_REASON, Figure
from fioritura.techniques.technique import Technique, instead
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH, THIRTYSECOND
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark
from fioritura.words import Message, message


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
        if above is None:
            return
        for values in _turn_rhythms(context):
            start = "at-once" if values[0] < values[-1] else "after"
            if below:
                why = message("turn-why", start=start)
                yield instead("turn", context, [main, above, main, below, main], values, why)
            if context.is_led_to and (below is None or context.midi - below.midi == 2):
                raised = context.leading_note
                why = message("turn-why-raised", start=start)
                yield instead("turn", context, [main, above, main, raised, main], values, why)


def _inverted_turn(context: Context) -> Iterator[Figure]:
    if context.is_free and context.note.duration_ticks >= QUARTER:
        main, above, below = context.note.pitch, context.step_above, context.step_below
        if above is None or below is None:
            return
        for values in _turn_rhythms(context):
            why = message("inverted-turn-why")
            yield instead("inverted-turn", context, [main, below, main, above, main], values, why)


def _flicked(technique: str, context: Context, other: Pitch | None, why: Message) -> Iterator[Figure]:
    if other is None:
        return
    length, shortest = context.note.duration_ticks, context.setting.shortest_ticks
    for quick in (THIRTYSECOND, SIXTEENTH):
        if quick >= shortest and length >= 4 * quick and length % quick == 0:
            main = context.note.pitch
            yield instead(technique, context, [main, other, main], [quick, quick, length - 2 * quick], why)
            return


def _mordent(context: Context) -> Iterator[Figure]:
    if context.is_free and context.strength >= 0.25:
        yield from _flicked("mordent", context, context.step_below, message("mordent-why"))


def _upper_mordent(context: Context) -> Iterator[Figure]:
    if context.is_free and context.strength >= 0.25:
        yield from _flicked("upper-mordent", context, context.step_above, message("upper-mordent-why"))


def _shake(context: Context) -> Iterator[Figure]:
    length, shortest = context.note.duration_ticks, context.setting.shortest_ticks
    above = context.step_above
    if above is None or not context.is_free or length < QUARTER + EIGHTH or length % EIGHTH:
        return
    for quick in (THIRTYSECOND, SIXTEENTH):
        pairs = min((length - QUARTER // 2) // (2 * quick), 8)
        if quick < shortest or pairs < 2:
            continue
        main = context.note.pitch
        values = [quick] * (2 * pairs)
        line, last = [main, above] * pairs + [main], length - sum(values)
        yield instead("shake", context, line, [*values, last], message("shake-why"))
        return


def _realised(technique: str, context: Context, first: Pitch | None, second: Pitch | None) -> Iterator[Figure]:
    """A sign as it is realised on the note itself: from the neighbour, without the main note before it."""
    if first is None or second is None:
        return
    main, length = context.note.pitch, context.note.duration_ticks
    pitches = (first, main, second, main)
    for quick in (SIXTEENTH, THIRTYSECOND):
        if context.is_free and length > 3 * quick:
            yield instead(technique, context, pitches, (quick, quick, quick, length - 3 * quick), NO_REASON)


def _realised_turn(context: Context) -> Iterator[Figure]:
    return _realised("turn", context, context.step_above, context.step_below)


def _realised_inverted_turn(context: Context) -> Iterator[Figure]:
    return _realised("inverted-turn", context, context.step_below, context.step_above)


def _flicks(direction: int, g: Group) -> bool:
    """Out by step and back, quickly, on the note before."""
    found = g.around(g.before)
    return g.is_quick and len(found) == 2 and found[1] == 0 and 1 <= found[0] * direction <= STEP_SEMITONES


def _has_both_sides(direction: int, g: Group) -> bool:
    """Both neighbours of one note in turn, with the note between them or not, and the note again."""
    for main in (g.before, g.after):
        found = [s for s in g.around(main) if s]
        if len(found) == 2 and 3 <= len(g.inner) <= 4:
            first, second = found[0] * direction, -found[1] * direction
            if 1 <= first <= STEP_SEMITONES and 1 <= second <= STEP_SEMITONES:
                return True
    return False


def _is_shake(g: Group) -> bool:
    for main in (g.before, g.after):
        found = g.around(main)
        others = {s for s in found if s}
        if len(found) >= 3 and len(others) == 1 and is_step(*others) and all(a != b for a, b in pairwise(found)):
            return True
    return False


TURN = Technique(
    id="turn",
    family=TURNS.id,
    level=3,
    find=_turn,
    definition=Definition(partial(_has_both_sides, 1), breadth=90),
    signs=(Mark.TURN,),
    realisations=_realised_turn,
)

INVERTED_TURN = Technique(
    id="inverted-turn",
    family=TURNS.id,
    level=4,
    find=_inverted_turn,
    definition=Definition(partial(_has_both_sides, -1), breadth=100),
    signs=(Mark.INVERTED_TURN,),
    realisations=_realised_inverted_turn,
)

MORDENT = Technique(
    id="mordent",
    family=TURNS.id,
    level=3,
    find=_mordent,
    definition=Definition(partial(_flicks, -1), breadth=70),
    side="below",
    signs=(Mark.MORDENT,),
)

UPPER_MORDENT = Technique(
    id="upper-mordent",
    family=TURNS.id,
    level=3,
    find=_upper_mordent,
    definition=Definition(partial(_flicks, 1), breadth=80),
    side="above",
    signs=(Mark.INVERTED_MORDENT,),
)

SHAKE = Technique(
    id="shake",
    family=TURNS.id,
    level=5,
    find=_shake,
    definition=Definition(_is_shake, breadth=110),
    side="above",
    signs=(Mark.TRILL, Mark.SHAKE),
)

TECHNIQUES = (TURN, INVERTED_TURN, MORDENT, UPPER_MORDENT, SHAKE)
