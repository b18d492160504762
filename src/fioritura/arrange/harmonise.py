"""Chords for a tune that has none: inferred from the melody, or given as a line of text.

The inference is a hidden Markov model (`fioritura.arrange.harmony_model`) whose likeliest path is found exactly
(Viterbi). A chord may change at each bar line, in the middle of a bar with an even count of beats, and on the last
beat of a triple one.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, groupby, pairwise
from math import log
from typing import Final

import numpy as np

from fioritura.arrange.harmony_model import State, moves, states
from fioritura.errors import OptionError, TuneError
from fioritura.paths import best_path
from fioritura.theory.chord import Chord
from fioritura.theory.chord_symbol import read_chord
from fioritura.tune import Bar, ChordSpan, Tune

__all__ = ["chords_from_text", "harmonise"]

_EVIDENCE: Final = 6.0
"""How many independent notes the melody of a bar counts for."""

_CHANGE_AT_BAR: Final = 0.75
_CHANGE_AT_HALF: Final = 0.35
_CHANGE_AT_LAST_BEAT: Final = 0.3
"""How often the chord changes at a bar line, in the middle of a bar, and on the last beat of a triple one."""

_OPENING: Final = 1.5
_ENDING: Final = 4.0
_CADENCE: Final = 1.0
_HALF_CADENCE: Final = 1.0
_APPROACH: Final = 1.0
"""What the tonic gains at the tune's start, at its end and at a section's end; what the dominant gains at a section's
end and just before it."""


@dataclass(frozen=True, slots=True)
class _Step:
    """A stretch of a bar that holds one chord.

    `change` is how often the chord changes at its start; `closes` and `approaches` tell the last step of a section
    and those from the bar line before it on.
    """

    start_ticks: int
    end_ticks: int
    bar: Bar
    change: float
    closes: bool = False
    approaches: bool = False


def harmonise(tune: Tune) -> Tune:
    """Give a tune the chords that its melody suggests, marked as inferred; a tune with chords stays as it is.

    The upbeat stays without a chord. The result is the likeliest sequence under the model, found exactly.
    """
    steps = _with_cadences(_steps(tune))
    if tune.chords or not steps:
        return tune
    path = _best_path(tune, steps)
    spans: list[ChordSpan] = []
    for chord, group in groupby(zip(path, steps, strict=True), key=lambda pair: pair[0]):
        held = [step for _, step in group]
        start = held[0].start_ticks
        spans.append(ChordSpan(start, held[-1].end_ticks - start, chord, chord.text, is_inferred=True))
    return replace(tune, chords=tuple(spans))


def _steps(tune: Tune) -> list[_Step]:
    steps: list[_Step] = []
    for bar in tune.bars:
        if bar.number == 0 or bar.duration_ticks <= 0:
            continue
        places = [(place, change) for place, change in _chord_places(bar) if place < bar.duration_ticks]
        edges = [*(bar.start_ticks + place for place, _ in places), bar.end_ticks]
        steps += (_Step(*edge, bar, change) for edge, (_, change) in zip(pairwise(edges), places, strict=True))
    return steps


def _chord_places(bar: Bar) -> list[tuple[int, float]]:
    """Offsets in the bar at which the chord may change, each with how often it does."""
    groups = bar.metre.groups_ticks
    upbeat = bar.metre_offset_ticks
    places = [(0, _CHANGE_AT_HALF if upbeat else _CHANGE_AT_BAR)]
    if len(groups) == 3:
        places.append((groups[0] + groups[1] - upbeat, _CHANGE_AT_LAST_BEAT))
    elif len(groups) % 2 == 0:
        places.append((sum(groups[: len(groups) // 2]) - upbeat, _CHANGE_AT_HALF))
    return [(place, change) for place, change in places if place >= 0]


def _with_cadences(steps: list[_Step]) -> list[_Step]:
    """Mark each section's last step, and the steps that lead to it: those of its bar, and the one before."""
    found = list(steps)
    for number, step in enumerate(steps):
        following = steps[number + 1].bar if number + 1 < len(steps) else None
        if following is step.bar or not _closes_section(step.bar, following):
            continue
        found[number] = replace(step, closes=True)
        first = number
        while first > 0 and steps[first].bar is step.bar:
            first -= 1
            found[first] = replace(found[first], approaches=True)
    return found


def _closes_section(bar: Bar, following: Bar | None) -> bool:
    return following is None or bar.ends_section or bar.repeats > 0 or following.opens_repeat


def _best_path(tune: Tune, steps: Sequence[_Step]) -> list[Chord]:
    """The likeliest chord for each step, by dynamic programming over all sequences."""
    fits = _fits(tune, steps)
    opening = states(steps[0].bar.key)
    fits[0] = [fit + log(s.weight) + _OPENING * s.is_tonic for s, fit in zip(opening, fits[0], strict=True)]
    likelihoods = (moves(before.bar.key, step.bar.key, step.change) for before, step in pairwise(steps))
    places = best_path((-np.array(fit) for fit in fits), (-logs for logs in likelihoods)).places
    return [states(step.bar.key)[place].chord for step, place in zip(steps, places, strict=True)]


def _fits(tune: Tune, steps: Sequence[_Step]) -> list[list[float]]:
    """For each step, the log probability of its melody under each chord, with what cadences add."""
    end = tune.notes[-1].end_ticks if tune.notes else 0
    fits: list[list[float]] = []
    first = 0
    for number, step in enumerate(steps):
        while first < len(tune.notes) and tune.notes[first].end_ticks <= step.start_ticks:
            first += 1
        heard = _heard(tune, first, step)
        closes_tune = step.end_ticks >= end or number + 1 == len(steps)
        fits.append(
            [
                sum(weight * state.melody_logs[strength][pitch_class] for pitch_class, strength, weight in heard)
                + _cadence_gain(state, step, closes_tune)
                for state in states(step.bar.key)
            ]
        )
    return fits


def _cadence_gain(state: State, step: _Step, closes_tune: bool) -> float:
    if closes_tune:
        return _ENDING * state.is_tonic
    if step.closes:
        return _CADENCE * state.is_tonic + _HALF_CADENCE * state.is_dominant
    return _APPROACH * (step.approaches and state.is_dominant)


def _heard(tune: Tune, first: int, step: _Step) -> list[tuple[int, float, float]]:
    """Pitch class, metrical weight and share of the bar's evidence of each note that sounds in the step.

    A note held over from before counts as a weak one.
    """
    heard: list[tuple[int, float, float]] = []
    metre = step.bar.metre
    for number in range(first, len(tune.notes)):
        note = tune.notes[number]
        if note.onset_ticks >= step.end_ticks:
            break
        start, end = max(note.onset_ticks, step.start_ticks), min(note.end_ticks, step.end_ticks)
        strength = metre.strength(start - step.bar.start_ticks + step.bar.metre_offset_ticks)
        if note.onset_ticks < start:
            strength = min(strength, 0.5)
        heard.append((note.pitch.midi % 12, strength, _EVIDENCE * (end - start) / metre.bar_ticks))
    return heard


def chords_from_text(tune: Tune, text: str) -> Tune:
    """Give a tune the chords of a line such as ``"C | Am7 | Dm7 G7 | C"``.

    Bars stand between bar lines; ``%`` repeats the bar before. The chords of a bar share its beats evenly, the first
    ones taking what is left over. A line that is shorter than the tune, and divides it, is repeated. The upbeat has
    no chord. Bars count as written: both endings of a repeat, once each.

    Raises:
        OptionError: a bar is empty or its chords can't be read or fitted, or the count of bars is not the tune's.
    """
    bars = _counted_bars(tune.bars)
    cells = _cells(text)
    repeats, rest = divmod(len(bars), len(cells))
    if rest or not repeats:
        raise OptionError("chords-other-count", given=len(cells), bars=len(bars))
    spans: list[ChordSpan] = []
    for bar, cell in zip(bars, cells * repeats, strict=True):
        for (start, end), (chord, symbol) in zip(_shares(bar, len(cell)), cell, strict=True):
            last = spans[-1] if spans else None
            if last and last.text == symbol:
                spans[-1] = replace(last, duration_ticks=end - last.onset_ticks)
            else:
                spans.append(ChordSpan(start, end - start, chord, symbol))
    return replace(tune, chords=tuple(spans))


def _counted_bars(bars: Sequence[Bar]) -> list[Bar]:
    """The bars as a player counts them: without upbeats, and a bar that a repeat sign splits as one."""
    counted: list[Bar] = []
    for bar in bars:
        if counted and counted[-1].number == bar.number:
            whole = counted[-1].duration_ticks + bar.duration_ticks
            counted[-1] = replace(counted[-1], duration_ticks=whole)
        elif bar.number != 0 and not bar.is_pickup:
            counted.append(bar)
    return counted


def _cells(text: str) -> list[list[tuple[Chord | None, str]]]:
    """The chords of each bar of a line of text."""
    cells: list[list[tuple[Chord | None, str]]] = []
    for number, cell in enumerate(re.sub(r"^\s*\|+|\|+\s*$", "", text).replace("||", "|").split("|"), start=1):
        symbols = cell.split()
        if symbols == ["%"] and cells:
            cells.append(cells[-1])
        elif symbols and "%" not in symbols:
            cells.append([_read(symbol, number) for symbol in symbols])
        else:
            raise OptionError("chords-no-cell", number=number, given=cell.strip() or "nothing")
    return cells


def _read(symbol: str, number: int) -> tuple[Chord | None, str]:
    try:
        return read_chord(symbol), symbol
    except TuneError as error:
        raise OptionError("chords-unreadable", number=number, reason=error.message) from None


def _shares(bar: Bar, count: int) -> list[tuple[int, int]]:
    """Start and end of each of `count` chords in a bar, by whole beats, or by smaller units where they are many.

    Raises:
        OptionError: the bar has fewer units than chords.
    """
    metre = bar.metre
    for lengths in (metre.groups_ticks, (metre.unit_ticks,) * metre.beats):
        places = [place for place in accumulate(lengths, initial=0) if place < bar.duration_ticks]
        if len(places) >= count:
            base, extra = divmod(len(places), count)
            firsts = [number * base + min(number, extra) for number in range(count)]
            edges = [*(bar.start_ticks + places[first] for first in firsts), bar.end_ticks]
            return list(pairwise(edges))
    raise OptionError("chords-too-many", number=bar.number, given=count, room=len(places), metre=str(metre))
