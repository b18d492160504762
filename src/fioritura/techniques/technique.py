"""What a technique is, and the few ways in which one writes its figures."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.techniques.place import Place
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
    find: Callable[[Place], Iterator[Figure]]
    text: str
    how: str
    when: str
    fault: str
    cure: str
    repeats_pitch: bool = False
    """True where playing the same pitch twice in a row is the point of the technique."""


def with_graces(technique: str, place: Place, graces: Sequence[Pitch], why: str) -> Figure:
    """Grace notes before the place's note, which itself stays as it is."""
    slot, onset = head(place.index), place.note.onset_ticks
    return Figure(technique, (place.index,), slot, slot, onset, onset, graces=tuple(graces), why=why)


def with_mark(technique: str, place: Place, mark: Mark, why: str, *, at_head: bool, at_tail: bool) -> Figure:
    """A sign on the place's note, claiming its attack, its end, or both."""
    first = head(place.index) if at_head else tail(place.index)
    last = tail(place.index) if at_tail else head(place.index)
    onset = place.note.onset_ticks
    return Figure(technique, (place.index,), first, last, onset, onset, marks=(mark,), why=why)


def before_next(
    technique: str, place: Place, pitches: Sequence[Pitch], values_ticks: Sequence[int], why: str
) -> Figure:
    """Added notes that take their time from the end of the place's note (and the rest after it) and lead into the
    next plain note, whose attack they claim."""
    end = place.note.onset_ticks + place.reach_ticks
    start = onset = end - sum(values_ticks)
    notes = []
    for pitch, value in zip(pitches, values_ticks, strict=True):
        notes.append(FigureNote(onset, value, pitch))
        onset += value
    anchors = (place.index, place.index + 1) if place.next else (place.index,)
    last = head(place.index + 1) if place.next else tail(place.index)
    return Figure(
        technique, anchors, tail(place.index), last, start, end, notes=tuple(notes), why=why, is_slurred=True
    )


def instead(technique: str, place: Place, pitches: Sequence[Pitch], values_ticks: Sequence[int], why: str) -> Figure:
    """Notes in place of the whole plain note; the first of its pitch stands for it. Values sum to its duration."""
    onset = place.note.onset_ticks
    notes = []
    anchor: int | None = place.index
    for pitch, value in zip(pitches, values_ticks, strict=True):
        is_anchor = anchor is not None and pitch.midi == place.midi
        notes.append(FigureNote(onset, value, pitch, anchor if is_anchor else None))
        anchor = None if is_anchor else anchor
        onset += value
    return Figure(
        technique,
        (place.index,),
        head(place.index),
        tail(place.index),
        place.note.onset_ticks,
        place.note.end_ticks,
        notes=tuple(notes),
        why=why,
        is_slurred=any(pitch.midi != place.midi for pitch in pitches),
    )
