"""The language of the blues: the blue third that is bent up to the third, the flat fifth in passing, the blue third above
the key note.

Common practice: the third of the key is played between minor and major; a saxophone bends it or plays both. The flat fifth
passes between fifth and fourth, more down than up, and off the beat.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition, Group
from fioritura.techniques.families import GRACES, PASSING_NOTES
from fioritura.techniques.figure import Figure
from fioritura.techniques.technique import Technique, before_next, instead, with_graces
from fioritura.theory.metre import EIGHTH, HALF, QUARTER, SIXTEENTH
from fioritura.theory.pitch import Interval, Pitch
from fioritura.words import message

_MINOR_THIRD: Final = Interval.parse("m3")
_THIRD, _FOURTH, _FIFTH, _BLUE_THIRD = 4, 5, 7, 3
"""Degrees over the key note, in semitones."""
_OF_ANOTHER_CHORD: Final = -0.4
_WRITTEN_OUT: Final = -0.2


def _degree(context: Context) -> int:
    return (context.midi - context.key.tonic.pitch_class) % 12


def _is_third(context: Context) -> bool:
    """True for the third of a major or dominant chord."""
    chord = context.chord
    if chord is None:
        return _degree(context) == _THIRD
    return (context.midi - chord.root.pitch_class) % 12 == _THIRD and not chord.is_minor


def _blue_third(context: Context) -> Iterator[Figure]:
    came = context.interval_in
    if not (context.is_free and _is_third(context)) or came == -1:
        return
    length, main = context.note.duration_ticks, context.note.pitch
    if length < QUARTER:
        return
    blue = Pitch(main.step, main.alter - 1)
    merit = 0.0 if _degree(context) == _THIRD else _OF_ANOTHER_CHORD
    why = message("blue-third-why", where=context.where)
    yield replace(with_graces("blue-third", context, [blue], why), merit=merit)
    if length >= HALF and context.setting.shortest_ticks <= EIGHTH and context.strength >= 0.5:
        values = (EIGHTH, length - EIGHTH)
        yield replace(instead("blue-third", context, [blue, main], values, why), merit=merit + _WRITTEN_OUT)


def _flat_fifth(context: Context) -> Iterator[Figure]:
    after = context.next
    if not (context.is_free and context.leads_directly and after) or context.note.duration_ticks < QUARTER:
        return
    degrees = (_degree(context), _degree(after))
    move = after.midi - context.midi
    if degrees not in ((_FIFTH, _FOURTH), (_FOURTH, _FIFTH), (_FIFTH, _BLUE_THIRD)) or abs(move) > _FOURTH:
        return
    midi = context.midi + (-1 if degrees[0] == _FIFTH else 1)
    line = [context.spell(midi, "down" if move < 0 else "up")]
    if degrees[1] == _BLUE_THIRD:
        line.append(context.key.spell(midi - 1, "down"))
    for value in (EIGHTH, SIXTEENTH):
        total = value * len(line)
        is_light = context.strength_at(context.note.end_ticks - total) < 0.5
        if value >= context.setting.shortest_ticks and 2 * total <= context.note.duration_ticks and is_light:
            why = message("flat-fifth-why", way="down" if move < 0 else "up")
            yield before_next("flat-fifth", context, line, [value] * len(line), why)
            return


def _blue_drop(context: Context) -> Iterator[Figure]:
    is_key_note = _degree(context) == 0 and context.note.duration_ticks >= QUARTER
    if context.is_free and is_key_note and context.strength >= 0.5 and context.interval_in not in (_BLUE_THIRD, None):
        blue = context.note.pitch.up(_MINOR_THIRD)
        yield with_graces("blue-drop", context, [blue], message("blue-drop-why"))


def _is_blue_third(g: Group) -> bool:
    if not (g.is_quick and g.after is not None and g.around(g.after) == (-1,)):
        return False
    return {(g.after - _THIRD) % 12, (g.after + _BLUE_THIRD) % 12} <= g.chord


def _is_flat_fifth(g: Group) -> bool:
    """A semitone between two notes a whole tone apart, of which the upper is the fifth of the chord."""
    if not (g.is_light and len(g.inner) == 1 and g.is_between and set(g.moves) in ({1}, {-1})):
        return False
    return (max(g.path) - _FIFTH) % 12 in g.chord and max(g.path) % 12 in g.chord


def _is_blue_drop(g: Group) -> bool:
    return g.is_quick and g.after is not None and g.around(g.after) == (_BLUE_THIRD,)


BLUE_THIRD = Technique("blue-third", GRACES.id, 1, _blue_third, Definition(_is_blue_third, breadth=6), side="below")
FLAT_FIFTH = Technique("flat-fifth", PASSING_NOTES.id, 2, _flat_fifth, Definition(_is_flat_fifth, breadth=127))
BLUE_DROP = Technique("blue-drop", GRACES.id, 3, _blue_drop, Definition(_is_blue_drop, breadth=8))

TECHNIQUES = (BLUE_THIRD, FLAT_FIFTH, BLUE_DROP)
