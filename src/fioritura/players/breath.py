"""Where to breathe in a line: at its rests, and between them where a breath costs the music least.

A breath needs about a third of a second. In a rest it is free; elsewhere it is stolen from the end of the note
before, which must keep at least half its length. Phrase ends and long notes are the good places (common practice).
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf
from typing import Final, Literal

from fioritura.errors import OptionError
from fioritura.paths import best_division
from fioritura.players.player import Player
from fioritura.theory.metre import QUARTER
from fioritura.tune import Mark, Note

__all__ = ["BREATH_SEC", "HASTY_BREATH_SEC", "Breath", "BreathPlan", "breath_marks"]

BREATH_SEC: Final = 0.35
"""Length of an unhurried catch breath (common practice)."""

HASTY_BREATH_SEC: Final = 0.2
"""Length of the shortest catch breath, where the notes leave no time for more (common practice)."""

BreathKind = Literal["rest", "phrase end", "long note", "quick"]

_LONG_NOTE_SEC: Final = 4 * BREATH_SEC
_PLACE_COST: Final = 1.0
_PHRASE_END_COST: Final = 0.3
_STOLEN_COST: Final = 2.0
"""For the whole of a note; a half costs half of it."""
_SLUR_COST: Final = 1.0
_HASTE_COST: Final = 1.0
_EXCESS_COST: Final = 100.0
"""For each second beyond the breath: far more than any place costs."""


@dataclass(frozen=True, slots=True)
class Breath:
    """A breath after note `after` of a line; `stolen_sec` is taken from the end of that note."""

    after: int
    kind: BreathKind
    stolen_sec: float = 0.0


@dataclass(frozen=True, slots=True)
class BreathPlan:
    """Breaths in order, and the longest time from one to the next; `is_playable` when the player's breath holds."""

    breaths: tuple[Breath, ...]
    longest_sec: float
    is_playable: bool


def breath_marks(
    player: Player,
    line: Sequence[Note],
    quarters_per_minute: float,
    *,
    phrase_ends: Collection[int] = (),
    taken: Collection[int] = (),
) -> BreathPlan:
    """The least costly places to breathe, exactly, by dynamic programming between the rests.

    `phrase_ends` are numbers of notes of the line after which a phrase ends. After those in `taken` and after a note
    marked `Mark.BREATH` a breath is taken in any case.

    Raises:
        OptionError: the tempo is not above 0.
    """
    if not quarters_per_minute > 0:
        raise OptionError("tempo-not-above-0", given=f"{quarters_per_minute:g}")
    sec = 60 / (quarters_per_minute * QUARTER)
    marked = {number for number, note in enumerate(line) if Mark.BREATH in note.marks} | set(taken)
    places = _places(line, sec, set(phrase_ends) | marked, marked)
    breaths: list[Breath] = []
    spans: list[float] = []
    start = 0
    for stop in range(len(line)):
        is_taken = stop in places and (places[stop][0].kind == "rest" or stop in marked)
        if is_taken or stop == len(line) - 1:
            chosen = _cheapest(line, places, start, stop, sec, player.limits.breath_sec)
            breaths += (places[number][0] for number in chosen)
            breaths += [places[stop][0]] if is_taken else []
            edges = [start, *(number + 1 for number in chosen), stop + 1]
            spans += (_span_sec(line, a, b - 1, sec) for a, b in pairwise(edges))
            start = stop + 1
    longest = max(spans, default=0.0)
    return BreathPlan(tuple(breaths), longest, longest <= player.limits.breath_sec + 1e-6)


def _span_sec(line: Sequence[Note], first: int, last: int, sec: float) -> float:
    return (line[last].end_ticks - line[first].onset_ticks) * sec


def _places(
    line: Sequence[Note], sec: float, phrase_ends: Collection[int], marked: Collection[int]
) -> dict[int, tuple[Breath, float]]:
    """The breath that each note but the last allows after it, with its cost; too short notes are left out."""
    places: dict[int, tuple[Breath, float]] = {}
    is_slurred = False
    for number, (note, following) in enumerate(pairwise(line)):
        is_slurred = (is_slurred or Mark.SLUR_START in note.marks) and Mark.SLUR_STOP not in note.marks
        gap, length = (following.onset_ticks - note.end_ticks) * sec, note.duration_ticks * sec
        missing = max(0.0, BREATH_SEC - gap)
        is_hasty = 2 * missing > length
        if is_hasty:
            missing = max(0.0, HASTY_BREATH_SEC - gap)
        if missing == 0.0 and not is_hasty:
            places[number] = (Breath(number, "rest"), 0.0)
        elif 2 * missing <= length or number in marked:
            at_end = number in phrase_ends
            kind: BreathKind = "phrase end" if at_end else "long note" if length >= _LONG_NOTE_SEC else "quick"
            cost = (_PHRASE_END_COST if at_end else _PLACE_COST) + _STOLEN_COST * missing / length
            cost += _SLUR_COST * is_slurred + _HASTE_COST * is_hasty
            places[number] = (Breath(number, kind, min(missing, length / 2)), cost)
    if len(line) - 1 in marked:
        length = line[-1].duration_ticks * sec
        places[len(line) - 1] = (Breath(len(line) - 1, "phrase end", min(BREATH_SEC, length / 2)), 0.0)
    return places


def _cheapest(
    line: Sequence[Note],
    places: dict[int, tuple[Breath, float]],
    start: int,
    stop: int,
    sec: float,
    breath_sec: float,
) -> list[int]:
    """Notes after which to breathe inside the notes `start` to `stop`."""
    nodes = [start - 1, *(number for number in range(start, stop) if number in places), stop]
    costs = [places[node][1] if start <= node < stop else 0.0 for node in nodes]

    def ways_to(here: int, totals: Sequence[float]) -> Iterator[tuple[int, float]]:
        best = inf
        for before in range(here - 1, -1, -1):
            excess = _EXCESS_COST * max(0.0, _span_sec(line, nodes[before] + 1, nodes[here], sec) - breath_sec)
            if excess >= best:
                break
            total = totals[before] + costs[before] + excess
            best = min(best, total)
            yield before, total

    return [nodes[last] for _, last in best_division(len(nodes) - 1, ways_to)[:-1]]
