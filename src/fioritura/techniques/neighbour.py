"""Neighbour notes: a step out and back; the double neighbour; and the escape tone, which steps out and leaps on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.definition import STEP_SEMITONES, Definition, Group, is_step
from fioritura.techniques.families import NEIGHBOURS
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next, instead
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.theory.pitch import Pitch
from fioritura.words import message

_LONGEST_ESCAPE_SEMITONES: Final = 7
"""The widest leap out of a note that is recognised as an escape tone."""


def _out_and_back(technique: str, context: Context, neighbour: Pitch, which: str) -> Iterator[Figure]:
    if not context.is_free:
        return
    main, length = context.note.pitch, context.note.duration_ticks
    if context.interval_out == 0 and context.leads_directly:
        for value in (EIGHTH, SIXTEENTH):
            if value * 2 <= length and value >= context.setting.shortest_ticks:
                why = message("neighbour-why-repeated", which=which)
                yield before_next(technique, context, [neighbour], [value], why)
                return
    if context.next is None or (context.leads_directly and context.next.midi == neighbour.midi):
        return
    quick = _quick_ticks(context)
    if quick >= max(context.setting.shortest_ticks, SIXTEENTH):
        why = message("neighbour-why-long", which=which)
        yield instead(technique, context, [main, neighbour, main], [length - 2 * quick, quick, quick], why)


def _quick_ticks(context: Context) -> int:
    """The value of a neighbour inside one note and of the return: even with the beat; 0 where there is none."""
    length, metre = context.note.duration_ticks, context.bar.metre
    if metre.is_compound:
        return metre.unit_ticks if length >= metre.beat_ticks and length % metre.unit_ticks == 0 else 0
    if length % QUARTER:
        return 0
    return QUARTER if length == 3 * QUARTER else min(length // 4, QUARTER)


def _upper(context: Context) -> Iterator[Figure]:
    if above := context.ending.step_above:
        yield from _out_and_back("neighbour-upper", context, above, "upper")


def _lower(context: Context) -> Iterator[Figure]:
    ending = context.ending
    below = ending.step_below
    if below:
        yield from _out_and_back("neighbour-lower", context, below, "lower")
    if ending.is_led_to and (below is None or context.midi - below.midi == 2):
        yield from _out_and_back("neighbour-lower", context, ending.leading_note, "chromatic")


def _double(context: Context) -> Iterator[Figure]:
    if not context.is_free:
        return
    main, length = context.note.pitch, context.note.duration_ticks
    ending = context.ending
    above, below = (
        ending.step_above,
        ending.leading_note if context.setting.tradition == "jazz" else ending.step_below,
    )
    if above is None or below is None:
        return
    pair = [above, below]
    shortest = context.setting.shortest_ticks
    for order, first in ((pair, "above"), (pair[::-1], "below")):
        if context.interval_out == 0 and context.leads_directly:
            for value in (EIGHTH, SIXTEENTH):
                if value * 4 <= length and value >= shortest:
                    why = message("double-neighbour-why-repeated", first=first)
                    yield before_next("double-neighbour", context, order, [value, value], why)
                    break
        elif context.next and length >= QUARTER and length % QUARTER == 0 and shortest <= length // 4 <= EIGHTH:
            why = message("double-neighbour-why-long", first=first)
            yield instead("double-neighbour", context, [main, *order, main], [length // 4] * 4, why)


def _escape(context: Context) -> Iterator[Figure]:
    out = context.interval_out
    if not (context.is_free and context.leads_directly and context.next and out) or abs(out) > 4:
        return
    away = context.ending.step_above if out < 0 else context.ending.step_below
    if away is None or abs(context.next.midi - away.midi) < 3:
        return
    for value in (EIGHTH, SIXTEENTH):
        if value * 2 <= context.note.duration_ticks and value >= context.setting.shortest_ticks:
            why = message("escape-tone-why", direction="down" if out < 0 else "up")
            yield before_next("escape-tone", context, [away], [value], why)
            return


def _appoggiatura(context: Context) -> Iterator[Figure]:
    came, length = context.interval_in, context.note.duration_ticks
    if not context.is_free or came is None or context.previous is None or context.strength < 0.5 or length < QUARTER:
        return
    value = length // 3 if context.bar.metre.is_compound and length % 3 == 0 else length // 2
    if value % SIXTEENTH or value < context.setting.shortest_ticks or not context.is_chord_tone:
        return
    leaning: Sequence[tuple[Pitch | None, str]] = ((context.step_above, "above"), (context.step_below, "below"))
    for pitch, side in leaning:
        if pitch is None:
            continue
        is_foreign = context.chord is None or pitch.midi % 12 not in context.chord.pitch_classes
        if is_foreign and abs(pitch.midi - context.previous.midi) >= 3:
            foreign = context.chord is not None
            why = message("appoggiatura-why", side=side, foreign=foreign)
            yield instead("appoggiatura", context, [pitch, context.note.pitch], [value, length - value], why)


def _steps_out(direction: int, g: Group) -> bool:
    """A step out of a note and back to it."""
    found = g.around(g.before)
    if not found or not 1 <= found[0] * direction <= STEP_SEMITONES or not (g.is_diatonic or found[0] == -1):
        return False
    return (len(found) == 1 and g.before == g.after) or found[1:] == (0,)


def _is_double(g: Group) -> bool:
    found = g.around(g.before)
    if len(found) == 2 and g.before != g.after:
        return False
    sides = len(found) >= 2 and is_step(found[0]) and is_step(found[1]) and found[0] * found[1] < 0
    return sides and found[2:] in ((), (0,))


def _escapes(g: Group) -> bool:
    if not (g.is_between and len(g.inner) == 1 and g.is_diatonic):
        return False
    away, on = g.moves
    return g.is_light and is_step(away) and STEP_SEMITONES < abs(on) <= _LONGEST_ESCAPE_SEMITONES and away * on < 0


def _leans(g: Group) -> bool:
    if not (g.is_between and len(g.inner) == 1 and g.is_diatonic):
        return False
    return abs(g.moves[0]) > STEP_SEMITONES and is_step(g.moves[1])


NEIGHBOUR_UPPER = Technique(
    id="neighbour-upper",
    family=NEIGHBOURS.id,
    level=2,
    find=_upper,
    definition=Definition(partial(_steps_out, 1), breadth=130),
    side="above",
)

NEIGHBOUR_LOWER = Technique(
    id="neighbour-lower",
    family=NEIGHBOURS.id,
    level=2,
    find=_lower,
    definition=Definition(partial(_steps_out, -1), breadth=140),
    side="below",
)

DOUBLE_NEIGHBOUR = Technique(
    id="double-neighbour",
    family=NEIGHBOURS.id,
    level=4,
    find=_double,
    definition=Definition(_is_double, breadth=150),
)

ESCAPE_TONE = Technique(
    id="escape-tone",
    family=NEIGHBOURS.id,
    level=4,
    find=_escape,
    definition=Definition(_escapes, breadth=250),
)

APPOGGIATURA = Technique(
    id="appoggiatura",
    family=NEIGHBOURS.id,
    level=4,
    find=_appoggiatura,
    definition=Definition(_leans, breadth=270),
)

TECHNIQUES = (NEIGHBOUR_UPPER, NEIGHBOUR_LOWER, DOUBLE_NEIGHBOUR, ESCAPE_TONE, APPOGGIATURA)
