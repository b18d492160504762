"""Passing notes: real notes that fill a leap by step, in one direction."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition, Group, is_step
from fioritura.techniques.families import PASSING_NOTES
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.metre import EIGHTH, SIXTEENTH
from fioritura.theory.pitch import Pitch
from fioritura.words import message


def _room(context: Context, count: int) -> Iterator[int]:
    """Values that leave the plain note at least half its length: an eighth where there is time, and a sixteenth."""
    if context.leads_directly and context.is_free:
        end = context.note.end_ticks
        for value in (EIGHTH, SIXTEENTH):
            fits = count * value * 2 <= context.note.duration_ticks and value >= context.setting.shortest_ticks
            is_off_beat = context.strength_at(end - value) < 0.5
            if fits and is_off_beat and context.beat_offset(end - value) % value == 0:
                yield value


def between(context: Context) -> list[Pitch]:
    """The scale notes between this plain note and the next, in playing order, one on each letter and none more than a
    whole tone from the one before (an augmented second is a leap to the ear); empty where no scale has them.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> from fioritura.techniques.context import contexts
        >>> place = contexts(tune, fioritura.Setting().on(tune))[2]
        >>> [str(pitch) for pitch in between(place)]
        ['Bb4']
    """
    if context.next is None:
        return []
    goal = context.next.note.pitch
    places = goal.step - context.note.pitch.step
    count = abs(places) - 1
    return list(context.ending.steps(count if places > 0 else -count, goal)) if count > 0 else []


def _diatonic(context: Context) -> Iterator[Figure]:
    inside = between(context)
    if len(inside) == 1 and abs(context.interval_out or 0) in (3, 4):
        for value in _room(context, 1):
            yield before_next("passing-note", context, inside, [value], message("passing-note-why"))


def _pair(context: Context) -> Iterator[Figure]:
    inside = between(context)
    if len(inside) == 2 and abs(context.interval_out or 0) in (5, 6):
        for value in _room(context, 2):
            why = message("passing-notes-pair-why")
            yield before_next("passing-notes-pair", context, inside, [value, value], why)


def _chromatic(context: Context) -> Iterator[Figure]:
    out = context.interval_out
    if out in (2, -2) and context.next is not None:
        middle = context.ending.spell(context.midi + out // 2, "up" if out > 0 else "down")
        if middle.step not in (context.note.pitch.step, context.next.note.pitch.step):
            middle = context.key.spell(middle.midi, "up" if out > 0 else "down")
        for value in _room(context, 1):
            why = message("passing-note-chromatic-why")
            yield before_next("passing-note-chromatic", context, [middle], [value], why)


def _walks(count: int, g: Group) -> bool:
    is_through = g.is_between and len(g.inner) == count and g.goes_one_way
    return is_through and all(map(is_step, g.moves)) and g.is_diatonic


def _is_chromatic(g: Group) -> bool:
    return g.is_between and g.moves in ((1, 1), (-1, -1))


PASSING_NOTE = Technique(
    id="passing-note",
    family=PASSING_NOTES.id,
    level=2,
    find=_diatonic,
    definition=Definition(partial(_walks, 1), breadth=170),
)

PASSING_NOTES_PAIR = Technique(
    id="passing-notes-pair",
    family=PASSING_NOTES.id,
    level=3,
    find=_pair,
    definition=Definition(partial(_walks, 2), breadth=180),
)

PASSING_NOTE_CHROMATIC = Technique(
    id="passing-note-chromatic",
    family=PASSING_NOTES.id,
    level=3,
    find=_chromatic,
    definition=Definition(_is_chromatic, breadth=160),
)

TECHNIQUES = (PASSING_NOTE, PASSING_NOTES_PAIR, PASSING_NOTE_CHROMATIC)
