"""Runs: quick notes that sweep from one melody note to the next."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from operator import attrgetter
from typing import Final

from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition, Group
from fioritura.techniques.families import RUNS
from fioritura.techniques.figure import Figure
from fioritura.techniques.passing import between
from fioritura.techniques.technique import Technique, before_next
from fioritura.theory.key import Direction
from fioritura.theory.pitch import Pitch
from fioritura.theory.scale import Scale
from fioritura.words import Message, message

_FURTHEST_SEMITONES: Final = 16
_FEWEST_NOTES: Final = 3
"""A scale run goes a fifth or further."""


def _run(technique: str, context: Context, pitches: Sequence[Pitch], why: Message) -> Iterator[Figure]:
    """Even quick notes in at most half of the time before the next note (two thirds of it over a rest)."""
    reach = context.reach_ticks
    available = max(reach // 2, reach - context.note.duration_ticks if context.gap_ticks else 0)
    value = context.even_value(len(pitches), available, context.note.onset_ticks + reach)
    if value:
        yield before_next(technique, context, pitches, [value] * len(pitches), why)


def _can_run(context: Context) -> bool:
    return context.next is not None and context.is_free and context.gap_ticks <= context.note.duration_ticks


def _direction(context: Context) -> str:
    return "up" if (context.interval_out or 0) > 0 else "down"


def _chromatic(context: Context) -> Iterator[Figure]:
    out = context.interval_out or 0
    if _can_run(context) and context.next and 3 <= abs(out) <= 5:
        direction = 1 if out > 0 else -1
        places = abs(context.next.note.pitch.step - context.note.pitch.step)
        if places != (3 if abs(out) == 5 else 2):
            return
        leading: Direction = "up" if out > 0 else "down"
        pitches = [context.key.spell(context.midi + direction * n, leading) for n in range(1, abs(out))]
        size = "fourth" if abs(out) == 5 else "third"
        why = message("run-chromatic-why", direction=_direction(context), size=size)
        yield from _run("run-chromatic", context, pitches, why)


def _scale(context: Context) -> Iterator[Figure]:
    if _can_run(context) and 6 <= abs(context.interval_out or 0) <= _FURTHEST_SEMITONES:
        inside = between(context)
        if len(inside) >= _FEWEST_NOTES:
            why = message("run-scale-why", direction=_direction(context))
            yield from _run("run-scale", context, inside, why)


def _inside(scale: Scale, context: Context) -> list[Pitch]:
    assert context.next is not None
    low, high = sorted((context.note.pitch, context.next.note.pitch), key=lambda pitch: pitch.midi)
    found = [pitch for pitch in scale.between(low, high) if low.midi < pitch.midi < high.midi]
    return found if context.next.midi > context.midi else found[::-1]


def _pentatonic(context: Context) -> Iterator[Figure]:
    if _can_run(context) and context.next and 7 <= abs(context.interval_out or 0) <= _FURTHEST_SEMITONES:
        ending = context.ending
        leading: Direction = "up" if context.next.midi > context.midi else "down"
        pitches = [ending.spell(pitch.midi, leading) for pitch in _inside(ending.pentatonic, context)]
        if len(pitches) >= 2 and pitches[-1].step != context.next.note.pitch.step:
            why = message("run-pentatonic-why", direction=_direction(context))
            yield from _run("run-pentatonic", context, pitches, why)


def _arpeggio(context: Context) -> Iterator[Figure]:
    out = context.interval_out or 0
    chord = context.ending.chord
    if not (_can_run(context) and chord and context.next and 7 <= abs(out) <= _FURTHEST_SEMITONES):
        return
    low, high = sorted((context.midi, context.next.midi))
    tones = [midi for midi in range(low + 1, high) if midi % 12 in chord.pitch_classes]
    if len(tones) >= 2:
        pitches = [
            context.ending.spell(midi, "up" if out > 0 else "down") for midi in (tones if out > 0 else tones[::-1])
        ]
        if pitches[-1].step == context.next.note.pitch.step:
            return
        why = message("run-arpeggio-why", direction=_direction(context))
        yield from _run("run-arpeggio", context, pitches, why)


def _is_chromatic(g: Group) -> bool:
    return g.is_between and len(g.inner) >= 2 and set(g.moves) in ({1}, {-1})


def _runs_through(classes: Callable[[Group], frozenset[int]], widest: int, least: int, g: Group) -> bool:
    """A way of `least` notes or more through some pitch classes, in one direction, from the note before to the note
    after."""
    if len(g.inner) < least or not g.is_between or not g.goes_one_way or max(map(abs, g.moves)) > widest:
        return False
    return g.all_in(classes(g))


RUN_CHROMATIC = Technique(
    id="run-chromatic",
    family=RUNS.id,
    level=3,
    find=_chromatic,
    definition=Definition(_is_chromatic, breadth=210),
)

RUN_SCALE = Technique(
    id="run-scale",
    family=RUNS.id,
    level=4,
    find=_scale,
    definition=Definition(partial(_runs_through, attrgetter("scale"), 3, 1), breadth=220),
)

RUN_PENTATONIC = Technique(
    id="run-pentatonic",
    family=RUNS.id,
    level=3,
    find=_pentatonic,
    definition=Definition(partial(_runs_through, attrgetter("five"), 4, 2), breadth=240),
)

RUN_ARPEGGIO = Technique(
    id="run-arpeggio",
    family=RUNS.id,
    level=4,
    find=_arpeggio,
    definition=Definition(partial(_runs_through, attrgetter("chord"), 9, 1), breadth=230),
)

TECHNIQUES = (RUN_CHROMATIC, RUN_SCALE, RUN_PENTATONIC, RUN_ARPEGGIO)
