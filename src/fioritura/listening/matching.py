"""The programme that lays a played line along a plain tune: which event is which note.

A place k (0 to n) means that k plain notes are behind. Every event either matches the note at a place, and moves on
to the next place, or is added there. Between events places may be passed over (notes left out) or the player may
jump: back to start a phrase again, on over a phrase, or as the repeat signs say. The path of least cost is found
exactly (Viterbi); time and memory grow with events times notes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura import paths
from fioritura.paths import best_walk

__all__ = ["Moves", "Step", "best_steps"]

Floats = NDArray[np.float64]

_NEVER: Final = 1e9


@dataclass(frozen=True, slots=True)
class Moves:
    """What it costs to move between places 0 to n without playing.

    `missing` (n,) is the cost of leaving each note out; `leave` and `land` (n + 1,) those of jumping from and to a
    place; `expected` those of the jumps that the repeat signs ask for, by (from, to); `enter` and `finish` those of
    beginning and ending elsewhere than at the ends of the tune, on top of `land` and `leave`.
    """

    missing: Floats
    leave: Floats
    land: Floats
    expected: Mapping[tuple[int, int], float]
    enter: float
    finish: float

    @property
    def behind(self) -> Floats:
        """What it costs to leave out all notes before each place, shape (n + 1,)."""
        return np.concatenate([[0.0], np.cumsum(self.missing)])

    def begins_at_start(self, place: int) -> bool:
        """True when a line that first plays the note at a place left out those before, and did not enter there."""
        return bool(self.behind[place] <= self.enter + self.land[place])

    def ends_at_end(self, place: int) -> bool:
        """True when a line that stops at a place left out the notes after it, and did not end there."""
        behind = self.behind
        return bool(behind[-1] - behind[place] <= self.finish + self.leave[place])


@dataclass(frozen=True, slots=True)
class Step:
    """What one event is: the match of plain note `place`, or added before it. `jumps` tells that the event does not
    go on from the place of the event before."""

    place: int
    is_match: bool
    jumps: bool


def best_steps(match: Floats, added: Floats, moves: Moves) -> tuple[list[Step], float]:
    """One step for each event, and the cost of the whole.

    Args:
        match: cost of each event as each plain note, shape (events, n).
        added: cost of each event as an added note at each place, shape (events, n + 1).
    """
    return _Programme(match, added, moves).solve()


class _Programme:
    """`stand[k]` is the least cost with all events so far dealt with and place k reached by the last of them.

    `matched` and `jumped` tell of each event and place how the last step led there.
    """

    def __init__(self, match: Floats, added: Floats, moves: Moves) -> None:
        self.match, self.added, self.moves = match, added, moves
        events, notes = match.shape
        self.behind = moves.behind
        self.jumped = np.zeros((events, notes + 1), np.bool_)
        self.matched = np.zeros((events, notes + 1), np.bool_)

    def _reach(self, stand: Floats) -> tuple[Floats, paths.Places, NDArray[np.bool_]]:
        """Cost of each place before the next event, where it comes from, and whether by a jump."""
        level = stand - self.behind
        lowest = np.minimum.accumulate(level)
        source = np.maximum.accumulate(np.where(level == lowest, np.arange(level.size), 0))
        walked = lowest + self.behind
        reach, jumped = walked.copy(), np.zeros(level.size, np.bool_)
        origin = int(np.argmin(walked + self.moves.leave))
        leap = walked[origin] + self.moves.leave[origin] + self.moves.land
        cheaper = leap < reach
        reach[cheaper], jumped[cheaper] = leap[cheaper], True
        walked_from = source.copy()
        source[cheaper] = walked_from[origin]
        for (start, goal), cost in self.moves.expected.items():
            if walked[start] + cost < reach[goal]:
                reach[goal], jumped[goal], source[goal] = walked[start] + cost, True, walked_from[start]
        return reach, source, jumped

    def _start(self) -> Floats:
        return np.asarray(np.minimum(self.behind, self.moves.enter + self.moves.land))

    def solve(self) -> tuple[list[Step], float]:
        left_out = self.behind[-1] - self.behind
        closing = np.minimum(left_out, self.moves.finish + self.moves.leave)
        walk = best_walk(self._start(), map(self._step, range(len(self.match))), closing)
        steps = []
        for event, place in enumerate(walk.places[1:]):
            is_match = bool(self.matched[event, place])
            steps.append(Step(place - 1 if is_match else place, is_match, bool(self.jumped[event, place])))
        return steps, walk.cost

    def _step(self, event: int) -> paths.Step:
        def step(stand: Floats) -> tuple[Floats, paths.Places]:
            reach, source, jumped = self._reach(stand)
            as_match = np.concatenate([[_NEVER], reach[:-1] + self.match[event]])
            as_added = reach + self.added[event]
            is_match = as_match < as_added
            self.matched[event] = is_match
            self.jumped[event] = np.where(is_match, np.roll(jumped, 1), jumped)
            return np.where(is_match, as_match, as_added), np.where(is_match, np.roll(source, 1), source)

        return step


def runs(steps: Sequence[Step]) -> list[tuple[int, int]]:
    """Stretches of events (first, stop) between jumps."""
    edges = [0, *(event for event, step in enumerate(steps) if step.jumps and event), len(steps)]
    return list(pairwise(edges))
