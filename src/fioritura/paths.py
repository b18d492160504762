"""The best way through layers of states, and the best division of a line into spans, both found exactly.

Both are dynamic programmes: whatever the best whole is, its beginnings are best ones too (Bellman 1957). Less is better;
who wants the most turns the signs, which changes no rounding. Ties are broken the same way always, as each function
says.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf

import numpy as np
from numpy.typing import NDArray

__all__ = ["Costs", "Path", "Places", "Step", "best_division", "best_path", "best_walk"]

Costs = NDArray[np.float64]
"""A cost for each state of a layer, or for each move from a state (row) to a state of the next layer (column)."""

Places = NDArray[np.intp]
"""For each state of a layer the state of the layer before from which it is reached best."""

Step = Callable[[Costs], tuple[Costs, Places]]
"""From the costs of having come to each state of a layer to those of the next layer, and where each came from."""


@dataclass(frozen=True, slots=True)
class Path:
    """The number of the state in each layer, and what the whole way costs."""

    places: tuple[int, ...]
    cost: float


def best_path(nodes: Iterable[Costs], arcs: Iterable[Costs]) -> Path:
    """The cheapest way through layers of states, one state in each.

    Args:
        nodes: what it costs to stand on each state, an array of shape (states,) a layer; at least one layer, and at
            least one state in each.
        arcs: what it costs to move, an array of shape (states, states of the next layer) for each two neighbouring
            layers.

    Of ways that cost the same to a state, the one through the first state before it is taken; of last states, the
    first. Time grows with the sum of the sizes of `arcs`.

    Raises:
        ValueError: no layer, or not one array of arcs between each two layers.

    >>> nodes = [np.array([0.0, 1.0]), np.array([5.0, 0.0]), np.array([0.0, 0.0])]
    >>> arcs = [np.array([[0.0, 4.0], [0.0, 1.0]]), np.array([[0.0, 0.0], [2.0, 3.0]])]
    >>> best_path(nodes, arcs)
    Path(places=(1, 1, 0), cost=4.0)
    """
    layers = iter(nodes)
    totals = next(layers, None)
    if totals is None:
        raise ValueError("a way needs at least one layer of states")
    came_from: list[Places] = []
    for moves, costs in zip(arcs, layers, strict=True):
        reached = totals[:, None] + moves
        came_from.append(reached.argmin(axis=0))
        totals = np.minimum.reduce(reached, axis=0) + costs
    return _traced(totals, came_from)


def best_walk(opening: Costs, steps: Iterable[Step], closing: Costs | float = 0.0) -> Path:
    """The cheapest way through layers of states where the steps from layer to layer are better worked out than listed.

    Args:
        opening: what it costs to begin in each state of the first layer, shape (states,).
        steps: one for each further layer; each is called once, in order.
        closing: what it costs to end in each state of the last layer.

    The steps break ties; of last states the first of the cheapest is taken.

    >>> def next_door(totals):  # stay, or move one state up for 1
    ...     moved = np.concatenate([[np.inf], totals[:-1] + 1.0])
    ...     states = np.arange(len(totals))
    ...     return np.minimum(totals, moved), np.where(moved < totals, states - 1, states)
    >>> best_walk(np.array([0.0, 9.0, 9.0]), [next_door] * 3, np.array([5.0, 5.0, 0.0]))
    Path(places=(0, 1, 2, 2), cost=2.0)
    """
    totals = opening
    came_from: list[Places] = []
    for step in steps:
        totals, origins = step(totals)
        came_from.append(origins)
    return _traced(totals + closing, came_from)


def _traced(totals: Costs, came_from: Sequence[Places]) -> Path:
    place = int(totals.argmin())
    cost = float(totals[place])
    places = [place]
    for origins in reversed(came_from):
        place = int(origins[place])
        places.append(place)
    return Path(tuple(reversed(places)), cost)


def best_division(
    count: int, ways_to: Callable[[int, Sequence[float]], Iterable[tuple[int, float]]]
) -> list[tuple[int, int]]:
    """The cheapest division of the line 0 to `count` into spans that follow each other: (start, stop) of each.

    Args:
        count: where the line ends, 0 or more.
        ways_to: called with each stop from 1 to `count`, and with what the best ways to all places before it cost
            (infinity where there is none); it gives the spans that may end there, each as its start and the total:
            the cost of the way to its start and its own. Spans longer than a limit, or that can't win, it leaves out.

    Of ways to a stop that cost the same, the one that was given first is taken. Empty for a line of length 0, and
    where no spans divide the line.

    >>> best_division(7, lambda stop, costs: ((start, costs[start] + (stop - start - 3.2) ** 2) for start in range(stop)))
    [(0, 3), (3, 7)]
    >>> best_division(5, lambda stop, costs: [(stop - 2, costs[stop - 2] + 1.0)] if stop % 2 == 0 else [])
    []
    """
    totals = [0.0]
    came_from = [0]
    for stop in range(1, count + 1):
        best, origin = inf, 0
        for start, total in ways_to(stop, totals):
            if total < best:
                best, origin = total, start
        totals.append(best)
        came_from.append(origin)
    if totals[count] == inf:
        return []
    edges = [count]
    while edges[-1] > 0:
        edges.append(came_from[edges[-1]])
    return list(pairwise(reversed(edges)))
