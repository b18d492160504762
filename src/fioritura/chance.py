"""Chance that repeats: the same seed, the same notes, whatever the versions of Python and numpy.

The numbers are those of SplitMix64 (Steele, Lea & Flood, "Fast splittable pseudorandom number generators", 2014): a
counter goes up by the golden ratio's fraction and each value is mixed into 64 bits. That is exact in whole numbers,
so that one number at a time and arrays of them agree bit by bit. Logarithms and cosines are the platform's own, which
may differ from another platform's in the last bit.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from hashlib import blake2b
from itertools import accumulate
from typing import Final, TypeVar

import numpy as np
from numpy.typing import NDArray

__all__ = ["EULER", "Chance"]

EULER: Final = 0.5772156649015329
"""The mean of a standard Gumbel variate (Euler's constant)."""

_STEP: Final = 0x9E3779B97F4A7C15
_FIRST: Final = 0xBF58476D1CE4E5B9
_SECOND: Final = 0x94D049BB133111EB
_MASK: Final = 2**64 - 1

Item = TypeVar("Item")


class Chance:
    """A stream of numbers that hangs on where it starts alone, any whole number (taken modulo 2⁶⁴).

    Examples:
        >>> chance = Chance.of(7, "bass")
        >>> chance.pick(["root", "fifth", "octave"])
        'fifth'
        >>> [chance.below(6) for _ in range(5)]
        [2, 3, 4, 5, 1]
    """

    __slots__ = ("_path", "_state")

    def __init__(self, start: int, path: str = "") -> None:
        self._state = start & _MASK
        self._path = path

    @classmethod
    def of(cls, seed: int, *names: str) -> Chance:
        """The stream of a seed for a purpose: other names, another stream, as good as independent (by BLAKE2b)."""
        return cls._at("\0".join((str(seed), *names)))

    @classmethod
    def _at(cls, path: str) -> Chance:
        return cls(int.from_bytes(blake2b(path.encode(), digest_size=8).digest(), "little"), path)

    def child(self, name: str) -> Chance:
        """The stream of a part of the purpose, the same however far this one has gone."""
        return self._at(f"{self._path}\0{name}")

    def bits(self) -> int:
        """64 bits as a whole number."""
        self._state = state = (self._state + _STEP) & _MASK
        state = ((state ^ state >> 30) * _FIRST) & _MASK
        state = ((state ^ state >> 27) * _SECOND) & _MASK
        return state ^ state >> 31

    def unit(self) -> float:
        """A number from 0.0 to below 1.0, even, in steps of 2⁻⁵³."""
        return (self.bits() >> 11) * 2.0**-53

    def happens(self, probability: float) -> bool:
        """True with a probability from 0.0 to 1.0."""
        return self.unit() < probability

    def below(self, count: int) -> int:
        """A whole number from 0 to `count` - 1; none is likelier than another by more than `count` / 2⁶⁴.

        Raises:
            ValueError: `count` is below 1.
        """
        if count < 1:
            raise ValueError(f"no whole number lies from 0 to {count} - 1")
        return self.bits() * count >> 64

    def pick(self, items: Sequence[Item], weights: Sequence[float] | None = None) -> Item:
        """One of the items, by their weights (alike without).

        Raises:
            ValueError: there are no items, or the weights are not one each, 0 or more, and above 0 in all.
        """
        if weights is None:
            return items[self.below(len(items))]
        reached = list(accumulate(weights))
        if len(reached) != len(items) or min(weights, default=0.0) < 0 or not reached[-1] > 0:
            raise ValueError(f"{len(items)} items can't be picked by the weights {list(weights)}")
        place = self.unit() * reached[-1]
        return next(item for item, bound in zip(items, reached, strict=True) if place < bound)

    def normal(self, deviation: float = 1.0) -> float:
        """A normal variate of mean 0 (Box & Muller 1958); two numbers of the stream make one."""
        radius = math.sqrt(-2.0 * math.log(self._inside()))
        return deviation * radius * math.cos(2.0 * math.pi * self.unit())

    def gumbel(self) -> float:
        """A standard Gumbel variate: what is added to scores so that the best choice is a fair draw."""
        return -math.log(-math.log(self._inside()))

    def gumbels(self, *shape: int) -> NDArray[np.float64]:
        """An array of standard Gumbel variates, from as many numbers of the stream."""
        inside = ((self.many_bits(math.prod(shape)) >> np.uint64(12)).astype(np.float64) + 0.5) * 2.0**-52
        return np.asarray(-np.log(-np.log(inside))).reshape(shape)

    def units(self, count: int) -> NDArray[np.float64]:
        """What `unit` would give in `count` calls, as an array."""
        return np.asarray((self.many_bits(count) >> np.uint64(11)).astype(np.float64) * 2.0**-53)

    def normals(self, count: int) -> NDArray[np.float64]:
        """An array of normal variates of mean 0 and deviation 1 (Box & Muller 1958), from twice as many numbers."""
        radius = np.sqrt(-2.0 * np.log(1.0 - self.units(count)))
        return np.asarray(radius * np.cos(2.0 * np.pi * self.units(count)))

    def many_bits(self, count: int) -> NDArray[np.uint64]:
        """What `bits` would give in `count` calls, as an array."""
        states = np.uint64(self._state) + np.arange(1, count + 1, dtype=np.uint64) * np.uint64(_STEP)
        self._state = (self._state + count * _STEP) & _MASK
        states = (states ^ states >> np.uint64(30)) * np.uint64(_FIRST)
        states = (states ^ states >> np.uint64(27)) * np.uint64(_SECOND)
        return states ^ states >> np.uint64(31)

    def _inside(self) -> float:
        """A number between 0.0 and 1.0, never either."""
        return ((self.bits() >> 12) + 0.5) * 2.0**-52
