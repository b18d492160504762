"""How loud each phrase of a line is, and where it grows and fades: levels and hairpins, printed and played.

A phrase has one level, a step or two about what is usual in the style: more where it lies high and the tune comes to its
peak, another one where it says the same again (an echo). The levels of all phrases are found together, exactly; a level is
printed where it changes. Inside a phrase the line grows towards a peak that it climbs to, and fades where it sinks to
its end or holds a long last note (common practice of wind playing).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

import numpy as np

from fioritura.paths import best_path
from fioritura.phrase import phrases
from fioritura.players.feel import GENTLE_BELOW
from fioritura.players.phrasing import line_phrases
from fioritura.players.setting import Setting
from fioritura.theory.metre import HALF, QUARTER
from fioritura.tune import DYNAMIC_MARKS, LEVEL_MARKS, Mark, Note, Tune

__all__ = ["shaded"]

_QUIET, _USUAL = 2.0, 3.0
"""Levels of a ballad and of most tunes, on the scale of `LEVEL_MARKS`."""

_SOFTEST, _LOUDEST = 1, 4

_HEIGHT_GAIN: Final = 0.5
_PEAK_GAIN: Final = 0.7
_CHANGE: Final = 0.45
_ECHO: Final = 0.5
_NEVER: Final = 100.0
"""What a change of level costs around a phrase of a few notes."""

_HAIRPINS_FROM: Final = 2
"""The level from which hairpins are asked for."""

_CLIMB_SEMITONES: Final = 5
_SHORTEST_HAIRPIN: Final = 3 * QUARTER
_LONGEST_HAIRPIN: Final = 8 * QUARTER


def shaded(
    tune: Tune, line: Sequence[Note], setting: Setting, leans: Sequence[float] | None = None
) -> tuple[Note, ...]:
    """A phrased line (see `phrasing.phrased`) with levels and hairpins for a player in a setting.

    `leans` says for each note of the line by how many levels the plan of the performance has it louder than usual.
    A tune that has levels or hairpins of its own keeps them and gets no others; folk dances have none (common practice).

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> line = fioritura.ornament(tune, fioritura.Setting("alto-sax", level=3)).line
        >>> line[0].marks[-1] in LEVEL_MARKS
        True
    """
    is_dance = setting.tradition == "folk" and setting.quarters_per_minute >= GENTLE_BELOW
    if not line or is_dance or any(DYNAMIC_MARKS & set(note.marks) for note in tune.notes):
        return tuple(line)
    spans = line_phrases(tune, line)
    added: list[list[Mark]] = [[] for _ in line]
    before = None
    for (first, last), level in zip(spans, _levels(tune, line, spans, setting, leans), strict=True):
        if level != before:
            added[first].append(LEVEL_MARKS[level])
            before = level
        if setting.level >= _HAIRPINS_FROM:
            for start, stop, kind in _hairpins(line, first, last):
                added[start].append(kind)
                added[stop].append(Mark.HAIRPIN_STOP)
    return tuple(
        replace(note, marks=(*note.marks, *marks)) if marks else note for note, marks in zip(line, added, strict=True)
    )


def _levels(
    tune: Tune,
    line: Sequence[Note],
    spans: Sequence[tuple[int, int]],
    setting: Setting,
    leans: Sequence[float] | None,
) -> tuple[int, ...]:
    """The level of each phrase: near what its height and place ask for, seldom changing, other where it is an echo."""
    steps = np.arange(_SOFTEST, _LOUDEST + 1, dtype=np.float64)
    usual = _QUIET if setting.quarters_per_minute < GENTLE_BELOW else _USUAL
    centre, peak = _height(line), max(note.pitch.midi for note in line)
    highest = max(
        number
        for number, (first, last) in enumerate(spans)
        if any(note.pitch.midi == peak for note in line[first : last + 1])
    )
    models = _models(tune, line, spans)
    nodes, arcs = [], []
    for number, (first, last) in enumerate(spans):
        goal = usual + _HEIGHT_GAIN * (_height(line[first : last + 1]) - centre) / 4.0
        goal += leans[first] if leans else 0.0
        goal += _PEAK_GAIN if number == highest and len(spans) > 1 else 0.0
        nodes.append((steps - goal) ** 2)
        if number:
            shortest = min(
                line[stop].end_ticks - line[start].onset_ticks for start, stop in (spans[number - 1], (first, last))
            )
            change = (_CHANGE if shortest >= 3 * QUARTER else _NEVER) * np.abs(steps[:, None] - steps[None, :])
            is_echo = models[number] is not None and models[number] == models[number - 1]
            arcs.append(change + (_ECHO * np.eye(len(steps)) if is_echo else 0.0))
    return tuple(_SOFTEST + place for place in best_path(nodes, arcs).places)


def _height(notes: Sequence[Note]) -> float:
    """Mean MIDI number, each note by its length."""
    total = sum(note.duration_ticks for note in notes)
    return sum(note.pitch.midi * note.duration_ticks for note in notes) / total


def _models(tune: Tune, line: Sequence[Note], spans: Sequence[tuple[int, int]]) -> list[int | None]:
    """For each phrase of the line the number of the one of the tune that had its idea first."""
    model_of = {index: phrase.model for phrase in phrases(tune) for index in range(phrase.first, phrase.last + 1)}
    found = []
    for first, last in spans:
        anchors = (note.anchor for note in line[first : last + 1] if note.anchor is not None)
        found.append(next((model_of.get(anchor) for anchor in anchors), None))
    return found


def _hairpins(line: Sequence[Note], first: int, last: int) -> Iterator[tuple[int, int, Mark]]:
    """The hairpin of a phrase, if it has one: to its peak or from it, whichever moves further; first and last note."""
    notes = line[first : last + 1]
    top = max(range(len(notes)), key=lambda place: (notes[place].pitch.midi, notes[place].duration_ticks, place))
    near = [place for place in range(top) if notes[top].onset_ticks - notes[place].onset_ticks <= _LONGEST_HAIRPIN]
    held = notes[-1]
    climb, fall = 0, notes[top].pitch.midi - held.pitch.midi
    if near:
        low = min(near, key=lambda place: (notes[place].pitch.midi, -place))
        if notes[top].onset_ticks - notes[low].onset_ticks >= _SHORTEST_HAIRPIN:
            climb = notes[top].pitch.midi - notes[low].pitch.midi
    if climb >= max(_CLIMB_SEMITONES, fall):
        yield first + low, first + top - 1, Mark.CRESCENDO
    elif fall >= _CLIMB_SEMITONES and held.onset_ticks - notes[top].onset_ticks >= HALF:
        start = next(
            place
            for place in range(top, len(notes))
            if held.end_ticks - notes[place].onset_ticks <= _LONGEST_HAIRPIN or place == len(notes) - 1
        )
        yield first + start, last, Mark.DIMINUENDO
    elif last == len(line) - 1 and held.duration_ticks >= _SHORTEST_HAIRPIN:
        yield last, last, Mark.DIMINUENDO
