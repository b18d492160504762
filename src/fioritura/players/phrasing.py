"""The phrasing of a line for a player: its phrases, and where the player breathes. Planned here once; the chooser, the
printed page, the sound and the review all read this plan."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise

from fioritura.phrase import phrases
from fioritura.players.breath import BreathPlan, breath_marks
from fioritura.players.player import Player
from fioritura.tune import Mark, Note, Tune

__all__ = ["Phrasing", "line_phrases", "phrased", "phrasing_of"]


@dataclass(frozen=True, slots=True)
class Phrasing:
    """First and last note number of each phrase of a line, its breaths, and the notes after which they are signed:
    those for which no rest is written, and those before a repeat."""

    phrases: tuple[tuple[int, int], ...]
    breaths: BreathPlan
    signed: frozenset[int]


def phrasing_of(tune: Tune, line: Sequence[Note], player: Player, quarters_per_minute: float) -> Phrasing:
    """The phrasing of a line over a tune's bars at a tempo.

    Breaths that are marked in the line are taken, and one before each repeat.

    Raises:
        OptionError: the tempo is not above 0.
    """
    spans = line_phrases(tune, line)
    ends = frozenset(last for _, last in spans)
    turns = _before_repeats(tune, line)
    plan = breath_marks(player, line, quarters_per_minute, phrase_ends=ends, taken=turns)
    signed = frozenset(breath.after for breath in plan.breaths if breath.kind != "rest")
    return Phrasing(spans, plan, signed | turns)


def line_phrases(tune: Tune, line: Sequence[Note]) -> tuple[tuple[int, int], ...]:
    """First and last note number of each phrase of the tune, as a line plays it.

    A line that is phrased already (see `phrased`) keeps its phrases, wherever it is played. Else the notes between the
    last note of a phrase and the first of the next (a fill, a run) are parted at the longest rest among them, where there
    are several at the last; without a rest they lead into the next phrase.
    """
    if not line:
        return ()
    starts = _phrased_starts(line) if line[0].phrase is not None else _starts(tune, line)
    return tuple(zip(starts, [*(start - 1 for start in starts[1:]), len(line) - 1], strict=True))


def phrased(line: Sequence[Note], phrasing: Phrasing) -> tuple[Note, ...]:
    """The line with the number of its phrase in each note, and its breaths signed."""
    made: list[Note] = []
    for phrase, (first, last) in enumerate(phrasing.phrases):
        for number in range(first, last + 1):
            note = line[number]
            is_new = number in phrasing.signed and Mark.BREATH not in note.marks
            made.append(replace(note, marks=(*note.marks, Mark.BREATH) if is_new else note.marks, phrase=phrase))
    return tuple(made)


def _phrased_starts(line: Sequence[Note]) -> list[int]:
    """Where the phrase changes, or one that is played again begins."""
    starts = [0]
    heard = -1
    for number, (before, note) in enumerate(pairwise(line), start=1):
        heard = heard if before.anchor is None else before.anchor
        again = note.anchor is not None and note.anchor < heard
        if note.phrase != before.phrase or again:
            starts.append(number)
            heard = -1
    return starts


def _starts(tune: Tune, line: Sequence[Note]) -> list[int]:
    numbers = {note.anchor: number for number, note in reversed(list(enumerate(line))) if note.anchor is not None}
    if not numbers:
        of_onset = {note.onset_ticks: index for index, note in enumerate(tune.notes)}
        known = ((of_onset.get(note.onset_ticks), number) for number, note in enumerate(line))
        numbers = {index: number for index, number in known if index is not None}
    order = sorted(numbers)
    latest = list(accumulate((numbers[index] for index in order), max))
    starts = [0]
    for phrase in phrases(tune)[1:]:
        heads = [numbers[index] for index in range(phrase.first, phrase.last + 1) if index in numbers]
        if heads and min(heads) > starts[-1]:
            count = bisect_left(order, phrase.first)
            tail = latest[count - 1] if count else -1
            starts.append(_parting(line, tail if -1 < tail < min(heads) else min(heads) - 1, min(heads)))
    return sorted(set(starts))


def _before_repeats(tune: Tune, line: Sequence[Note]) -> frozenset[int]:
    """The notes after which a repeat sign sends back."""
    ends = [note.end_ticks for note in line]
    stops = (bar.end_ticks for bar in tune.bars if bar.repeats)
    return frozenset(number - 1 for stop in stops if (number := bisect_right(ends, stop)))


def _parting(line: Sequence[Note], tail: int, head: int) -> int:
    """The note with which the phrase of `head` begins, of those after `tail`."""
    rests = {n: line[n].onset_ticks - line[n - 1].end_ticks for n in range(tail + 1, head + 1)}
    longest = max(rests.values(), default=0)
    if longest <= 0:
        return tail + 1
    return max(number for number, rest in rests.items() if rest == longest)
