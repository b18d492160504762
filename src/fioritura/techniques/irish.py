"""Ornaments of Irish dance music: cuts and strikes, which articulate; rolls and crans, made of both; triplets and trebles.

Names, signs and places are common practice. A cut is written as a grace note a step above though the finger makes
hardly a pitch, a roll as ``~``; a cran has no sign of its own and is named. Where a tune lets a player choose, the books
say how often (see `arrange.irish_taste`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import pairwise
from typing import Final

from fioritura.players.idiom import dance_of
from fioritura.techniques.context import Context
from fioritura.techniques.definition import STEP_SEMITONES, Definition, Group, is_step
from fioritura.techniques.families import GRACES, NEIGHBOURS, PASSING_NOTES, REPETITIONS, TURNS
from fioritura.techniques.figure import NO_REASON, Figure, FigureNote, head, tail
from fioritura.techniques.technique import Technique, instead, with_graces, with_mark
from fioritura.theory.metre import EIGHTH, SIXTEENTH, THIRTYSECOND
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark
from fioritura.words import Message, message

_SHORT_ROLL_SEC: Final = 0.22
_LONG_ROLL_SEC: Final = 0.33
"""A roll on a quicker note has no time for its strokes."""

_NO_STRIKE: Final = frozenset({"trumpet", "flugelhorn", "trombone"})
"""A lip and a slide don't tap a hole shut."""
_ALL_CLOSED: Final = frozenset({"flute", "irish-flute", "tin-whistle", "concert"})
_LOWEST_D: Final = (62, 74)
"""On flute and whistle no finger is left to strike with below the written low D, nor an octave higher, where the first
hole alone is open."""

_OF_THE_TUNE: Final = 2.7
"""How much likelier a roll is where the tune itself says one note for three beats of the unit."""
_PARTING: Final = 1.4
"""How much a cut is worth where it parts a note from the same one and a step down follows: other figures stand back."""
_IN_REELS: Final = 2.6
"""How much likelier a roll is on a dotted quarter of a reel, of which the books have few (68.8 % of 16 bear one) for a model
to learn from."""
_IN_HORNPIPES: Final = 1.2
"""How much likelier a triplet is there than in a reel."""
_REWRITING: Final = -0.8
"""How much less likely a figure is that puts one note in the place of others, before the tune has been heard."""


def unit_ticks(context: Context) -> int:
    """The note value that the dance runs in: an eighth; a sixteenth in reels and hornpipes that are written in 2/4.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> unit_ticks(contexts(tune, fioritura.Setting().on(tune))[0])
        840
    """
    metre = context.bar.metre
    is_narrow = (metre.beats, metre.unit) == (2, 4) and dance_of(context.tune) in ("reel", "hornpipe")
    return SIXTEENTH if is_narrow else EIGHTH


def _above(context: Context) -> Pitch:
    return context.key.step(context.note.pitch, 1)


def _below(context: Context) -> Pitch:
    return context.key.step(context.note.pitch, -1)


def _on_pulse(context: Context, unit: int) -> bool:
    """True on a beat of the dance: dotted in jigs, else two units."""
    span = 3 * unit if context.bar.metre.is_compound else 2 * unit
    bar = context.bar
    return (context.note.onset_ticks - bar.start_ticks + bar.metre_offset_ticks) % span == 0


def _coming(context: Context) -> str:
    came = context.interval_in
    return "first" if came is None else "repeated" if came == 0 else "below" if came > 0 else "above"


def _cut(context: Context) -> Iterator[Figure]:
    if context.is_free and context.note.duration_ticks >= unit_ticks(context):
        why = message("irish-cut-why", where=context.where, coming=_coming(context))
        parts = context.interval_in == 0 and -STEP_SEMITONES <= (context.interval_out or 0) < 0
        yield replace(with_graces("irish-cut", context, [_above(context)], why), merit=_PARTING if parts else 0.0)


def _strike(context: Context) -> Iterator[Figure]:
    comes = context.interval_in
    if not context.is_free or comes is None or _lacks_strike(context):
        return
    if context.note.duration_ticks >= unit_ticks(context) and (comes == 0 or comes <= -STEP_SEMITONES - 1):
        why = message("irish-strike-why", coming=_coming(context))
        yield with_graces("irish-strike", context, [_below(context)], why)


def _lacks_strike(context: Context) -> bool:
    instrument = context.setting.instrument
    if instrument.id in _NO_STRIKE:
        return True
    written = context.midi + instrument.transposition.semitones
    return written in _LOWEST_D if instrument.id in _ALL_CLOSED else context.midi == instrument.lowest_midi


def _lasts(context: Context, ticks: int, seconds: float) -> bool:
    return context.is_free and context.setting.seconds(ticks) >= seconds


def _short_roll(context: Context) -> Iterator[Figure]:
    length = 2 * unit_ticks(context)
    is_long_enough = context.note.duration_ticks == length and _lasts(context, length, _SHORT_ROLL_SEC)
    if is_long_enough and not _lacks_strike(context):
        yield with_mark(
            "irish-short-roll", context, Mark.ROLL, message("irish-short-roll-why"), at_head=True, at_tail=True
        )


def _long_roll(context: Context) -> Iterator[Figure]:
    if not _lacks_strike(context):
        yield from _rolled("irish-long-roll", context, Mark.ROLL, "irish-long-roll-why")


def _cran(context: Context) -> Iterator[Figure]:
    if _lacks_strike(context) and context.setting.instrument.id not in _NO_STRIKE:
        yield from _rolled("irish-cran", context, Mark.CRAN, "irish-cran-why")


def _rolled(technique: str, context: Context, mark: Mark, why: str) -> Iterator[Figure]:
    """A sign on a note of three units, or on one that stands for several that circle it in the tune."""
    length = 3 * unit_ticks(context)
    if not _lasts(context, length, _LONG_ROLL_SEC):
        return
    if context.note.duration_ticks == length:
        merit = 0.0 if context.bar.metre.is_compound else _IN_REELS
        figure = with_mark(technique, context, mark, message(why, form="held"), at_head=True, at_tail=True)
        yield replace(figure, merit=merit)
        return
    group = _around(context, length)
    if group and _on_pulse(context, unit_ticks(context)):
        form = "circled" if len(group) == 3 else "said-again"
        merit = _OF_THE_TUNE if form == "said-again" else 0.0 if context.phrase.statement > 1 else _REWRITING
        yield _joined(technique, context, group, length, message(why, form=form), merit, (mark,))


def _around(context: Context, length: int) -> tuple[Context, ...]:
    """The place and those after it that fill `length` with one pitch, or with it and a step from it and back."""
    group, total = [context], context.note.duration_ticks
    while total < length and group[-1].leads_directly and (after := group[-1].next):
        group.append(after)
        total += after.note.duration_ticks
    moves = [place.midi - context.midi for place in group[1:]]
    if total != length or not all(place.is_free for place in group) or not moves:
        return ()
    is_said_again = moves == [0] and context.note.duration_ticks > group[1].note.duration_ticks
    is_circled = len(moves) == 2 and moves[1] == 0 and is_step(moves[0])
    return tuple(group) if is_said_again or is_circled else ()


def _joined(
    technique: str,
    context: Context,
    group: Sequence[Context],
    length: int,
    why: Message,
    merit: float,
    marks: tuple[Mark, ...] = (),
) -> Figure:
    """One note in the place of several."""
    onset = context.note.onset_ticks
    note = FigureNote(onset, length, context.note.pitch, context.index, marks=marks)
    anchors = tuple(place.index for place in group)
    first, last = head(context.index), tail(anchors[-1])
    return Figure(technique, anchors, first, last, onset, onset + length, notes=(note,), why=why, merit=merit)


def _triplet(context: Context) -> Iterator[Figure]:
    unit, after = unit_ticks(context), context.next
    third = 2 * unit // 3
    is_reel = not context.bar.metre.is_compound
    if after is None or not context.is_free or not is_reel or not _on_pulse(context, unit):
        return
    move, goal = after.midi - context.midi, after.note.pitch
    values = (third,) * 3
    merit = _IN_HORNPIPES if dance_of(context.tune) == "hornpipe" else 0.0
    length = context.note.duration_ticks
    if length in (unit, 3 * unit // 2) and length + after.note.duration_ticks == 2 * unit and context.leads_directly:
        inside = _between(context, goal)
        if len(inside) == 1 and after.is_free:
            yield replace(_third_filled(context, inside[0], third), merit=merit)
    elif length == 2 * unit:
        inside = _between(context, goal)
        if len(inside) == 2:
            why = message("irish-triplet-why", form="fourth")
            figure = instead("irish-triplet", context, [context.note.pitch, *inside], values, why)
            yield replace(figure, merit=merit)
        elif -4 <= move < 0:
            main, why = context.note.pitch, message("irish-triplet-why", form="neighbour")
            figure = instead("irish-triplet", context, [main, _above(context), main], values, why)
            yield replace(figure, merit=merit)


def _between(context: Context, goal: Pitch) -> list[Pitch]:
    """The notes of the key between this note and the goal, where they are reached by step."""
    places = goal.step - context.note.pitch.step
    way = 1 if places > 0 else -1
    found = [context.key.step(context.note.pitch, way * n) for n in range(1, abs(places))]
    line = [context.note.pitch.midi, *(pitch.midi for pitch in found), goal.midi]
    return found if all(is_step(b - a) for a, b in pairwise(line)) else []


def _third_filled(context: Context, inside: Pitch, third: int) -> Figure:
    onset, first = context.note.onset_ticks, context.index
    pitches = (context.note.pitch, inside, context.tune.notes[first + 1].pitch)
    notes = tuple(
        FigureNote(onset + place * third, third, pitch, anchor)
        for place, (pitch, anchor) in enumerate(zip(pitches, (first, None, first + 1), strict=True))
    )
    slots, why = (head(first), tail(first + 1)), message("irish-triplet-why", form="third")
    return Figure("irish-triplet", (first, first + 1), *slots, onset, onset + 3 * third, notes=notes, why=why)


def _treble(context: Context) -> Iterator[Figure]:
    unit = unit_ticks(context)
    if context.is_free and context.note.duration_ticks == 2 * unit and not context.bar.metre.is_compound:
        values = (2 * unit // 3,) * 3
        if _on_pulse(context, unit):
            yield instead("irish-treble", context, [context.note.pitch] * 3, values, message("irish-treble-why"))


def _divided(context: Context) -> Iterator[Figure]:
    """A note of two units becomes two of one: itself, and a third below or a step above, whatever leads on."""
    unit, after = unit_ticks(context), context.next
    if not context.is_free or context.note.duration_ticks != 2 * unit or after is None:
        return
    for merit, steps in ((0.0, -2), (-0.3, 1), (-0.6, 2)):
        other = context.key.step(context.note.pitch, steps)
        fits = context.chord is None or steps == 1 or other.midi % 12 in context.chord.pitch_classes
        if fits and 0 < abs(other.midi - after.midi) <= 7 and other.midi != context.midi:
            why = message("irish-divided-note-why", side="above" if steps > 0 else "below")
            notes = (
                FigureNote(context.note.onset_ticks, unit, context.note.pitch, context.index),
                FigureNote(context.note.onset_ticks + unit, unit, other),
            )
            slots = head(context.index), tail(context.index)
            times = context.note.onset_ticks, context.note.end_ticks
            yield Figure("irish-divided-note", (context.index,), *slots, *times, notes=notes, why=why, merit=merit)
            return


def _held(context: Context) -> Iterator[Figure]:
    """Two notes of one unit become one of two, where the second only passes; rather when the phrase has been heard."""
    unit, after = unit_ticks(context), context.next
    if after is None or not _on_pulse(context, unit) or not (context.is_free and after.is_free):
        return
    is_pair = context.note.duration_ticks == unit == after.note.duration_ticks and context.leads_directly
    leads_on = after.leads_directly and is_step(after.midi - context.midi) and is_step(after.interval_out or 0)
    if is_pair and leads_on:
        is_known = context.phrase.statement > 1
        why = message("irish-held-note-why", heard="before" if is_known else "first")
        yield _joined("irish-held-note", context, (context, after), 2 * unit, why, 0.0 if is_known else _REWRITING)


def _realised_roll(technique: str, units: int, context: Context) -> Iterator[Figure]:
    """The strokes of a roll as a player makes them, each as short as a thirty-second."""
    length, quick = units * unit_ticks(context), THIRTYSECOND
    if context.note.duration_ticks != length or _lacks_strike(context):
        return
    main, unit = context.note.pitch, unit_ticks(context)
    pitches = [main, _above(context), main, _below(context), main]
    values = [unit, quick, unit - quick, quick, unit - quick]
    if units == 2:
        pitches, values = pitches[1:], values[1:]
    if context.is_free and unit > quick:
        yield instead(technique, context, pitches, values, NO_REASON)


def _is_one_quick(direction: int, g: Group) -> bool:
    return g.is_quick and len(g.inner) == 1 and g.after is not None and 1 <= g.around(g.after)[0] * direction <= 4


def _is_rolled(strokes: int, g: Group) -> bool:
    """A cut, the note, a strike: on the note before (long), or before the note itself."""
    main = g.before if strokes == 3 else g.after
    found = [s for s in g.around(main) if s]
    return g.is_quick and len(found) == 2 and 1 <= found[0] <= 4 and -STEP_SEMITONES <= found[1] < 0


def _is_cranned(g: Group) -> bool:
    """Cuts alone, two and more, on one note."""
    found = [s for s in g.around(g.before) if s]
    return g.is_quick and len(g.inner) >= 3 and len(found) >= 2 and all(s > 0 for s in found)


def _is_triplet(g: Group) -> bool:
    return g.is_light and len(g.inner) == 1 and g.is_between and g.goes_one_way and all(map(is_step, g.moves))


def _is_treble(g: Group) -> bool:
    return g.is_light and len(g.inner) == 2 and set(g.inner) == {g.before}


CUT = Technique("irish-cut", GRACES.id, 1, _cut, Definition(partial(_is_one_quick, 1), breadth=12), side="above")
STRIKE = Technique(
    "irish-strike", GRACES.id, 2, _strike, Definition(partial(_is_one_quick, -1), breadth=14), side="below"
)
SHORT_ROLL = Technique(
    id="irish-short-roll",
    family=TURNS.id,
    level=3,
    find=_short_roll,
    definition=Definition(partial(_is_rolled, 2), breadth=86),
    is_sign=True,
    realisations=partial(_realised_roll, "irish-short-roll", 2),
)
LONG_ROLL = Technique(
    id="irish-long-roll",
    family=TURNS.id,
    level=3,
    find=_long_roll,
    definition=Definition(partial(_is_rolled, 3), breadth=84),
    signs=(Mark.ROLL,),
    is_sign=True,
    realisations=partial(_realised_roll, "irish-long-roll", 3),
)
CRAN = Technique(
    id="irish-cran",
    family=TURNS.id,
    level=4,
    find=_cran,
    definition=Definition(_is_cranned, breadth=82),
    signs=(Mark.CRAN,),
    is_sign=True,
)
TRIPLET = Technique("irish-triplet", PASSING_NOTES.id, 2, _triplet, Definition(_is_triplet, breadth=118))
TREBLE = Technique(
    "irish-treble", REPETITIONS.id, 4, _treble, Definition(_is_treble, breadth=116), repeats_pitch=True
)
DIVIDED_NOTE = Technique("irish-divided-note", NEIGHBOURS.id, 2, _divided)
HELD_NOTE = Technique("irish-held-note", REPETITIONS.id, 2, _held)

TECHNIQUES = (CUT, STRIKE, SHORT_ROLL, LONG_ROLL, CRAN, TRIPLET, TREBLE, DIVIDED_NOTE, HELD_NOTE)
