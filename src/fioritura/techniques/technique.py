"""What a technique is, and the few ways in which one writes its figures."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from fioritura.techniques.context import Context
from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark

__all__ = ["Technique", "before_next", "instead", "with_graces", "with_mark"]


@dataclass(frozen=True, slots=True)
class Technique:
    """A rewriting rule over a melody, with the words that teach it.

    `find` yields every figure that the rule allows at a place, whatever its taste. `label` is the short name above
    the staff, `level` (1-5) the player's level from which it is offered. The texts are for the handout: what it is
    (`text`), how it is played, when it fits, a common fault and its cure.
    """

    id: str
    name: str
    label: str
    family: str
    level: int
    find: Callable[[Context], Iterator[Figure]]
    text: str
    how: str
    when: str
    fault: str
    cure: str
    repeats_pitch: bool = False
    """True where playing the same pitch twice in a row is the point of the technique."""


def with_graces(technique: str, context: Context, graces: Sequence[Pitch], why: str) -> Figure:
    """Grace notes before the place's note, which itself stays as it is."""
    slot, onset = head(context.index), context.note.onset_ticks
    return Figure(technique, (context.index,), slot, slot, onset, onset, graces=tuple(graces), why=why)


def with_mark(technique: str, context: Context, mark: Mark, why: str, *, at_head: bool, at_tail: bool) -> Figure:
    """A sign on the place's note, claiming its attack, its end, or both."""
    first = head(context.index) if at_head else tail(context.index)
    last = tail(context.index) if at_tail else head(context.index)
    onset = context.note.onset_ticks
    return Figure(technique, (context.index,), first, last, onset, onset, marks=(mark,), why=why)


def before_next(
    technique: str, context: Context, pitches: Sequence[Pitch], values_ticks: Sequence[int], why: str
) -> Figure:
    """Added notes that take their time from the end of the place's note (and the rest after it) and lead into the
    next plain note, whose attack they claim."""
    end = context.note.onset_ticks + context.reach_ticks
    start = onset = end - sum(values_ticks)
    notes = []
    for pitch, value in zip(pitches, values_ticks, strict=True):
        notes.append(FigureNote(onset, value, pitch))
        onset += value
    anchors = (context.index, context.index + 1) if context.next else (context.index,)
    last = head(context.index + 1) if context.next else tail(context.index)
    return Figure(
        technique, anchors, tail(context.index), last, start, end, notes=tuple(notes), why=why, is_slurred=True
    )


def instead(
    technique: str, context: Context, pitches: Sequence[Pitch], values_ticks: Sequence[int], why: str
) -> Figure:
    """Notes in place of the whole plain note; the first of its pitch stands for it. Values sum to its duration."""
    onset = context.note.onset_ticks
    notes = []
    anchor: int | None = context.index
    for pitch, value in zip(pitches, values_ticks, strict=True):
        is_anchor = anchor is not None and pitch.midi == context.midi
        notes.append(FigureNote(onset, value, pitch, anchor if is_anchor else None))
        anchor = None if is_anchor else anchor
        onset += value
    return Figure(
        technique,
        (context.index,),
        head(context.index),
        tail(context.index),
        context.note.onset_ticks,
        context.note.end_ticks,
        notes=tuple(notes),
        why=why,
        is_slurred=any(pitch.midi != context.midi for pitch in pitches),
    )
