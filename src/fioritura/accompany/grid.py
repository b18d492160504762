"""Rhythms as text: one sign for each equal share of a bar, so that a pattern can be read like a score.

Signs that start something differ by part (``x`` a stroke, ``X`` a loud one, ``o`` a soft one; for the bass the chord
tone); ``-`` holds what sounds, ``.`` is silence. A bar of another length takes beats of the pattern in turn.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import exp
from typing import Final, TypeVar

from fioritura.chance import Chance

__all__ = ["LOUDNESS", "Dealer", "Hit", "fitted", "hits", "weights_for"]

LOUDNESS: Final = {"X": 1.0, "x": 0.82, "o": 0.55}

_WIDTH: Final = 0.35
"""How far, in shares of the way from the sparsest to the busiest pattern, the choice wanders from the energy."""

Item = TypeVar("Item")


@dataclass(frozen=True, slots=True)
class Hit:
    """A sign that starts something: where in the bar, for how long it is held, and the sign."""

    offset_ticks: int
    duration_ticks: int
    sign: str


def hits(pattern: str, bar_ticks: int) -> Iterator[Hit]:
    """The hits of a pattern that is spread over a bar."""
    unit, place = bar_ticks // len(pattern), 0
    while place < len(pattern):
        end = place + 1
        while end < len(pattern) and pattern[end] == "-":
            end += 1
        if pattern[place] not in ".-":
            yield Hit(place * unit, (end - place) * unit, pattern[place])
        place = end


def fitted(pattern: str, pattern_beats: int, beats: int) -> str:
    """The pattern for a bar of `beats` beats: cut off, or begun again, as is needed."""
    per_beat = len(pattern) // pattern_beats
    return "".join(pattern[(n % pattern_beats) * per_beat : (n % pattern_beats + 1) * per_beat] for n in range(beats))


@lru_cache(maxsize=1024)
def weights_for(patterns: tuple[str, ...], energy: float) -> tuple[float, ...]:
    """How likely each pattern is at an energy (0 to 1): sparse ones at a low energy, busy ones at a high one.

    A pattern may have several rows, each with the name of its piece before it.
    """
    counts = [
        sum(sign not in ".-" for row in text.strip().splitlines() for sign in row.split()[-1]) for text in patterns
    ]
    low, high = min(counts), max(counts)
    ranks = [(count - low) / (high - low) if high > low else energy for count in counts]
    return tuple(exp(-(((rank - energy) / _WIDTH) ** 2)) for rank in ranks)


class Dealer:
    """Deals items at random, each at most twice in a row where there is a choice."""

    def __init__(self, chance: Chance) -> None:
        self._chance = chance
        self._dealt: list[object] = []

    def deal(self, items: Sequence[Item], weights: Sequence[float] | None = None) -> Item:
        """One of the items, by their weights."""
        item = self._chance.pick(items, weights)
        if len(items) > 1 and self._dealt[-2:] == [item, item]:
            others = [number for number, other in enumerate(items) if other != item]
            if others:
                shares = [weights[number] for number in others] if weights else None
                item = items[self._chance.pick(others, shares)]
        self._dealt = [*self._dealt[-1:], item]
        return item

    def happens(self, probability: float) -> bool:
        """True with a probability."""
        return self._chance.happens(probability)
