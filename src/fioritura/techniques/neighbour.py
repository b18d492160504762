"""Neighbour notes: a step out and back; the double neighbour; and the escape tone, which steps out and leaps on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next, instead
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.theory.pitch import Pitch


def _out_and_back(technique: str, context: Context, neighbour: Pitch, side: str) -> Iterator[Figure]:
    if not context.is_free:
        return
    main, length = context.note.pitch, context.note.duration_ticks
    if context.interval_out == 0 and context.leads_directly:
        for value in (EIGHTH, SIXTEENTH):
            if value * 2 <= length and value >= context.setting.shortest_ticks:
                why = f"The melody repeats a note: the {side} neighbour between gives it somewhere to return from."
                yield before_next(technique, context, [neighbour], [value], why)
                return
    if context.next is None or (context.leads_directly and context.next.midi == neighbour.midi):
        return
    quick = _quick_ticks(context)
    if quick >= max(context.setting.shortest_ticks, SIXTEENTH):
        why = f"The note is long enough to step out to its {side} neighbour and back."
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
    yield from _out_and_back("neighbour-upper", context, context.ending.step_above, "upper")


def _lower(context: Context) -> Iterator[Figure]:
    ending = context.ending
    yield from _out_and_back("neighbour-lower", context, ending.step_below, "lower")
    if context.midi - ending.step_below.midi == 2:
        yield from _out_and_back("neighbour-lower", context, ending.leading_note, "chromatic lower")


def _double(context: Context) -> Iterator[Figure]:
    if not context.is_free:
        return
    main, length = context.note.pitch, context.note.duration_ticks
    ending = context.ending
    pair = [ending.step_above, ending.leading_note if context.setting.idiom == "jazz" else ending.step_below]
    shortest = context.setting.shortest_ticks
    for order, words in ((pair, "above, then below"), (pair[::-1], "below, then above")):
        if context.interval_out == 0 and context.leads_directly:
            for value in (EIGHTH, SIXTEENTH):
                if value * 4 <= length and value >= shortest:
                    why = f"The melody repeats a note: both neighbours ({words}) dance around it."
                    yield before_next("double-neighbour", context, order, [value, value], why)
                    break
        elif context.next and length >= QUARTER and length % QUARTER == 0 and shortest <= length // 4 <= EIGHTH:
            why = f"A long note circles through both neighbours ({words}) and comes home."
            yield instead("double-neighbour", context, [main, *order, main], [length // 4] * 4, why)


def _escape(context: Context) -> Iterator[Figure]:
    out = context.interval_out
    if not (context.is_free and context.leads_directly and context.next and out) or abs(out) > 4:
        return
    away = context.ending.step_above if out < 0 else context.ending.step_below
    if abs(context.next.midi - away.midi) < 3:
        return
    for value in (EIGHTH, SIXTEENTH):
        if value * 2 <= context.note.duration_ticks and value >= context.setting.shortest_ticks:
            turn = "down" if out < 0 else "up"
            why = f"The melody goes {turn}: a step the other way first, then the leap, gives it a catch of breath."
            yield before_next("escape-tone", context, [away], [value], why)
            return


def _appoggiatura(context: Context) -> Iterator[Figure]:
    came, length = context.interval_in, context.note.duration_ticks
    if not context.is_free or came is None or context.previous is None or context.strength < 0.5 or length < QUARTER:
        return
    value = length // 3 if context.bar.metre.is_compound and length % 3 == 0 else length // 2
    if value % SIXTEENTH or value < context.setting.shortest_ticks or not context.is_chord_tone:
        return
    leaning: Sequence[tuple[Pitch, str]] = ((context.step_above, "above"), (context.step_below, "below"))
    for pitch, side in leaning:
        is_foreign = context.chord is None or pitch.midi % 12 not in context.chord.pitch_classes
        if is_foreign and abs(pitch.midi - context.previous.midi) >= 3:
            why = (
                f"A chord note on a beat: a leap to the step {side}, foreign to the chord, leans on it and resolves."
            )
            yield instead("appoggiatura", context, [pitch, context.note.pitch], [value, length - value], why)


TECHNIQUES = (
    Technique(
        id="neighbour-upper",
        name="Upper neighbour note",
        label="upper nbr",
        family="neighbours",
        level=2,
        find=_upper,
        text="A step up from the melody note and back again.",
        how="The neighbour is lighter than the note it belongs to.",
        when="On a repeated note or a long note that should move a little.",
        fault="The return is late.",
        cure="Finger the three notes silently in time first.",
    ),
    Technique(
        id="neighbour-lower",
        name="Lower neighbour note",
        label="lower nbr",
        family="neighbours",
        level=2,
        find=_lower,
        text="A step (or a semitone) down from the melody note and back again.",
        how="Slur down and up in one gesture.",
        when="On a repeated note or a long note; the semitone is stronger, the scale step softer.",
        fault="The lower note is flat.",
        cure="Keep the air fast on the way down.",
    ),
    Technique(
        id="double-neighbour",
        name="Double neighbour",
        label="double nbr",
        family="neighbours",
        level=4,
        find=_double,
        text="Both neighbours of a note, one after the other, before it returns.",
        how="Four even notes, the first and last the same.",
        when="Between two equal notes, or inside a long one.",
        fault="The two middle notes blur.",
        cure="Slow practice with an accent on the second note, then on the third.",
    ),
    Technique(
        id="escape-tone",
        name="Escape tone",
        label="escape",
        family="neighbours",
        level=4,
        find=_escape,
        text="A step against the direction of the melody, then a leap to the next melody note.",
        how="Throw it away: short and light.",
        when="Where the melody moves down (or up) by step or third and the first note has time.",
        fault="It sounds like a missed note.",
        cure="Give the melody notes on both sides full length and weight.",
    ),
    Technique(
        id="appoggiatura",
        name="Appoggiatura",
        label="appogg.",
        family="neighbours",
        level=4,
        find=_appoggiatura,
        text="The melody leaps to the note beside the chord note, leans on it, and resolves by step.",
        how="Full weight on the leaning note, none on the resolution, no tongue between.",
        when="On a long chord note on a beat that is reached by leap.",
        fault="The resolution gets an accent.",
        cure="Sing it on a sigh: 'AH-ah'.",
    ),
)
