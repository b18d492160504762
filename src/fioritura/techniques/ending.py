"""Endings: what a player adds to the last note of a tune, a colour that is held or a short phrase that closes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition, Group
from fioritura.techniques.families import ENDINGS
from fioritura.techniques.figure import Figure, FigureNote, tail
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.words import Message, message

_COLOURS: Final = ((9, "sixth"), (14, "ninth"))
"""Semitones above the root, the more settled first."""

_NEAR_SEMITONES: Final = 3
_LEAST_HELD_TICKS: Final = QUARTER

_CLOSES: Final = ((-2, -1, 0, 1), (2, 1, 0, -1), (3, 2, 1, 0), (-2, 0, 1, 2))
"""Steps of the five-note scale from the last note: the way, and the note that is held."""


def _is_end(context: Context) -> bool:
    """True for the last note of a tune with chords."""
    is_last = context.next is None and context.is_free and context.chord is not None
    return is_last and context.setting.tradition == "jazz"


def _held_colour(context: Context) -> Iterator[Figure]:
    if not _is_end(context) or context.chord is None or not context.is_chord_tone:
        return
    beat = max(context.bar.metre.beat_ticks, QUARTER)
    left = context.note.duration_ticks - beat
    if left < _LEAST_HELD_TICKS:
        return
    start, root = context.note.onset_ticks + beat, context.chord.root.pitch_class
    for place, (above, colour) in enumerate(_COLOURS):
        move = (root + above - context.midi + 6) % 12 - 6
        pitch = context.spell(context.midi + move, "up" if move > 0 else "down")
        if 0 < abs(move) <= _NEAR_SEMITONES and pitch.midi % 12 in context.scale.pitch_classes:
            why = message("held-colour-why", colour=colour)
            yield _closing("held-colour", context, [pitch], [left], (start, start), why, merit=-0.3 * place)


def _closing_phrase(context: Context) -> Iterator[Figure]:
    if not _is_end(context) or context.reach_ticks < 3 * QUARTER or context.setting.shortest_ticks > EIGHTH:
        return
    is_long = context.reach_ticks >= 4 * QUARTER
    kept = QUARTER if context.reach_ticks < 6 * QUARTER else 2 * QUARTER
    cut = context.note.onset_ticks + kept
    start, count = (cut + EIGHTH, 3) if is_long else (cut, 2)
    held = min(context.note.onset_ticks + context.reach_ticks - start - count * EIGHTH, 2 * QUARTER)
    for place, steps in enumerate(_CLOSES):
        pitches = [_five_steps(context, step) for step in steps[-count - 1 :]]
        if pitches[0].midi != context.midi:
            why = message("closing-phrase-why", rises=pitches[-1].midi > pitches[0].midi)
            values = [EIGHTH] * count + [held]
            span = min(cut, context.note.end_ticks), start
            yield _closing("closing-phrase", context, pitches, values, span, why, merit=-0.1 * place)


def _five_steps(context: Context, steps: int) -> Pitch:
    return context.pentatonic.step(context.note.pitch, steps) if steps else context.note.pitch


def _closing(
    technique: str,
    context: Context,
    pitches: list[Pitch],
    values_ticks: list[int],
    span: tuple[int, int],
    why: Message,
    merit: float,
) -> Figure:
    """Notes after the last note: it is left at the first time of `span`, they begin at the second."""
    cut, onset = span
    notes = []
    for pitch, value in zip(pitches, values_ticks, strict=True):
        notes.append(FigureNote(onset, value, pitch))
        onset += value
    slot = tail(context.index)
    return Figure(
        technique,
        (context.index,),
        slot,
        slot,
        cut,
        max(onset, context.note.end_ticks),
        notes=tuple(notes),
        why=why,
        merit=merit,
        is_slurred=len(notes) > 1,
    )


def _is_held_colour(g: Group) -> bool:
    return g.after is None and not g.is_quick and len(g.inner) == 1 and 0 < abs(g.moves[0]) <= _NEAR_SEMITONES


def _is_closing(g: Group) -> bool:
    return g.after is None and g.before is not None and 3 <= len(g.inner) <= 8 and g.all_in(g.scale | g.five)


HELD_COLOUR = Technique(
    id="held-colour",
    family=ENDINGS.id,
    level=3,
    find=_held_colour,
    definition=Definition(_is_held_colour, breadth=300),
)

CLOSING_PHRASE = Technique(
    id="closing-phrase",
    family=ENDINGS.id,
    level=3,
    find=_closing_phrase,
    definition=Definition(_is_closing, breadth=310),
)

TECHNIQUES = (HELD_COLOUR, CLOSING_PHRASE)
