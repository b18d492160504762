"""Phrases: where the melody breathes, and which phrases are statements of the same idea.

Bars that come again note for note are found first (see `repeats`): what is repeated begins with a phrase each time, and
is cut alike each time. A phrase ends where several signs agree (common practice): a rest, a note longer than its
neighbours, the end of a group of two or four bars or of a section, and a place after which an earlier idea begins again.
The best division of the whole tune is found exactly, by a dynamic programme over the possible ends.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import log2
from typing import Final

from fioritura.paths import best_division
from fioritura.repeats import repeats
from fioritura.theory.metre import QUARTER
from fioritura.tune import Mark, Note, Tune

__all__ = ["Phrase", "phrases"]

_USUAL_BARS: Final = 4.0
_LONGEST_BARS: Final = 9.0
_ALIKE: Final = 0.7
_CERTAIN: Final = 100.0
"""The weight of an end that is known."""


@dataclass(frozen=True, slots=True)
class Phrase:
    """Notes `first` to `last` (inclusive) of the tune.

    `statement` counts from 1 how often the idea has been heard by now; `model` is the number of the phrase that
    stated it first (the phrase's own number for a new idea).
    """

    number: int
    first: int
    last: int
    start_ticks: int
    end_ticks: int
    model: int
    statement: int


@lru_cache(maxsize=8)
def phrases(tune: Tune) -> tuple[Phrase, ...]:
    """Divide a tune into phrases that together hold every note; empty for a tune without notes."""
    if not tune.notes:
        return ()
    ends = _ends(tune)
    found: list[Phrase] = []
    ideas: dict[int, frozenset[tuple[int, int]]] = {}
    heard: Counter[int] = Counter()
    first = 0
    for number, last in enumerate(ends):
        shape = _shape(tune, tune.notes[first : last + 1])
        model = max(ideas, key=lambda idea: (_likeness(shape, ideas[idea]), -idea), default=number)
        if model != number and _likeness(shape, ideas[model]) < _ALIKE:
            model = number
        ideas.setdefault(model, shape)
        heard[model] += 1
        stop = tune.notes[last + 1].onset_ticks if last + 1 < len(tune.notes) else tune.duration_ticks
        start = tune.notes[first].onset_ticks
        found.append(Phrase(number, first, last, start, max(stop, tune.notes[last].end_ticks), model, heard[model]))
        first = last + 1
    return tuple(found)


def _ends(tune: Tune) -> list[int]:
    """The last note of each phrase."""
    weights = _end_weights(tune)
    blocks = repeats(tune)
    if not blocks:
        return _best_ends(tune, weights)
    onsets = [note.onset_ticks for note in tune.notes]
    begins = {ticks for block in blocks for ticks in (block.source_ticks, block.start_ticks)}
    certain = {end for ticks in begins if (end := _end_before(tune, onsets, ticks, weights)) is not None}
    for end in certain:
        weights[end] = _CERTAIN
    starts = {onsets[end + 1] for end in _best_ends(tune, weights)[:-1]}
    for block in blocks:
        for begin in (block.source_ticks, block.start_ticks):
            first = bisect_left(onsets, begin)
            last = bisect_left(onsets, begin + block.end_ticks - block.start_ticks)
            for index in range(first + 1, last):
                is_start = onsets[index] - begin + block.source_ticks in starts
                if index - 1 not in certain:
                    weights[index - 1] = _CERTAIN if is_start else -_CERTAIN
    return _best_ends(tune, weights)


def _end_before(tune: Tune, onsets: Sequence[int], ticks: int, weights: Sequence[float]) -> int | None:
    """The likeliest last note before a bar line with which a section begins; a pickup goes with the section."""
    line = bisect_left(onsets, ticks)
    if not 0 < line < len(onsets):
        return None
    earliest = bisect_left(onsets, ticks - tune.bar_at(ticks).metre.bar_ticks // 2)
    return max(range(max(earliest, 1), line + 1), key=lambda index: (weights[index - 1], index)) - 1


def _end_weights(tune: Tune) -> list[float]:
    """For each note, how strongly a phrase seems to end with it."""
    notes = tune.notes
    typical = sorted(note.duration_ticks for note in notes)[len(notes) // 2]
    numbers = {bar.start_ticks: index for index, bar in enumerate(tune.bars)}
    grid_from = 1 if tune.pickup_ticks else 0
    openings = _recurring_openings(notes)
    weights = []
    for index, note in enumerate(notes[:-1]):
        following = notes[index + 1]
        rest = following.onset_ticks - note.end_ticks
        reach = following.onset_ticks - note.onset_ticks
        weight = 1.6 * min(rest / QUARTER, 2.0) if rest > 0 else 0.0
        weight += 0.8 * max(0.0, min(log2(reach / max(typical, 1)), 2.5))
        if reach > notes[index - 1].duration_ticks and reach > following.duration_ticks:
            weight += 0.3
        if Mark.BREATH in note.marks or Mark.FERMATA in note.marks:
            weight += 2.0
        bar_number = _next_barline(tune, note, following, numbers)
        if bar_number is not None:
            before = tune.bars[bar_number - 1]
            weight += {0: 1.2, 2: 0.5}.get((bar_number - grid_from) % 4, 0.0)
            weight += 1.5 if before.ends_section or before.repeats else 0.0
        if index + 1 in openings:
            weight += 1.0
        weights.append(weight)
    return [*weights, 0.0]


def _next_barline(tune: Tune, note: Note, following: Note, numbers: dict[int, int]) -> int | None:
    """Index of the bar whose line the next phrase would start at or reach by a pickup shorter than half a bar."""
    bar = tune.bar_at(following.onset_ticks)
    if following.onset_ticks == bar.start_ticks:
        return numbers[bar.start_ticks] or None
    left = bar.end_ticks - following.onset_ticks
    if left <= bar.duration_ticks // 2 and bar.end_ticks in numbers and note.end_ticks > bar.start_ticks:
        return numbers[bar.end_ticks]
    return None


def _recurring_openings(notes: Sequence[Note], length: int = 5) -> frozenset[int]:
    """Notes with which `length` notes begin whose intervals and durations were heard before."""
    seen: set[tuple[tuple[int, int], ...]] = set()
    found = set()
    for index in range(len(notes) - length):
        group = tuple(
            (notes[n + 1].pitch.step - notes[n].pitch.step, notes[n].duration_ticks)
            for n in range(index, index + length)
        )
        if group in seen and len(set(group)) > 1:
            found.add(index)
        seen.add(group)
    return frozenset(found)


def _best_ends(tune: Tune, weights: Sequence[float]) -> list[int]:
    """The set of last notes with the highest sum of weights less the cost of unusual phrase lengths."""
    onsets = [*(note.onset_ticks for note in tune.notes), tune.duration_ticks]
    bar_ticks = max(tune.metre.bar_ticks, QUARTER)
    longest_ticks = _LONGEST_BARS * bar_ticks
    costs: dict[int, float] = {}

    def ways_to(stop: int, totals: Sequence[float]) -> Iterator[tuple[int, float]]:
        end_ticks, weight = onsets[stop], weights[stop - 1]
        for first in range(stop - 1, -1, -1):
            ticks = end_ticks - onsets[first]
            if ticks > longest_ticks and first < stop - 1:
                break
            cost = costs.get(ticks)
            if cost is None:
                cost = costs[ticks] = 1.1 * abs(log2(max(ticks / bar_ticks, 0.125) / _USUAL_BARS)) ** 1.5
            yield first, totals[first] - weight + cost + 0.6

    return [stop - 1 for _, stop in best_division(len(tune.notes), ways_to)]


def _shape(tune: Tune, notes: Sequence[Note]) -> frozenset[tuple[int, int]]:
    """Each note's place and staff step, counted from the first note; a pickup of half a bar at most does not count."""
    bar = tune.bar_at(notes[0].onset_ticks)
    is_pickup = (
        bar.start_ticks < notes[0].onset_ticks and 2 * (bar.end_ticks - notes[0].onset_ticks) <= bar.metre.bar_ticks
    )
    line = [note for note in notes if not is_pickup or note.onset_ticks >= bar.end_ticks] or notes
    return frozenset((note.onset_ticks - line[0].onset_ticks, note.pitch.step - line[0].pitch.step) for note in line)


def _likeness(one: frozenset[tuple[int, int]], other: frozenset[tuple[int, int]]) -> float:
    """0.0-1.0: the share of notes that two shapes have in common; 0.0 where their sizes differ too much."""
    longer, shorter = max(len(one), len(other)), min(len(one), len(other))
    return len(one & other) / longer if shorter >= _ALIKE * longer else 0.0
