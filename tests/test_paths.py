"""The best way and the best division: brute force, scipy's shortest paths, and OR-Tools' solver as references."""

from __future__ import annotations

import doctest
from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise, product

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fioritura import paths
from fioritura.paths import Costs, Path, best_division, best_path, best_walk


@st.composite
def layers(draw: st.DrawFn, most: int = 4, whole: bool = False) -> tuple[list[Costs], list[Costs]]:
    """Some layers of states with node and arc costs; with `whole` small whole numbers, so that ties are many."""
    number: st.SearchStrategy[float] = (
        st.integers(0, 2).map(float) if whole else st.floats(-10, 10, allow_nan=False, width=32)
    )
    sizes = draw(st.lists(st.integers(1, most), min_size=1, max_size=most))
    nodes = [np.array(draw(st.lists(number, min_size=size, max_size=size))) for size in sizes]
    arcs = [
        np.array(draw(st.lists(number, min_size=a * b, max_size=a * b))).reshape(a, b) for a, b in pairwise(sizes)
    ]
    return nodes, arcs


def cost_of(nodes: Sequence[Costs], arcs: Sequence[Costs], places: Sequence[int]) -> float:
    total = float(nodes[0][places[0]])
    for arc, costs, (before, here) in zip(arcs, nodes[1:], pairwise(places), strict=True):
        total = total + float(arc[before, here]) + float(costs[here])
    return total


@given(layers())
def test_no_way_is_cheaper(given_layers: tuple[list[Costs], list[Costs]]) -> None:
    nodes, arcs = given_layers
    path = best_path(nodes, arcs)
    ways = product(*(range(len(costs)) for costs in nodes))
    assert path.cost == cost_of(nodes, arcs, path.places)
    assert path.cost == min(cost_of(nodes, arcs, way) for way in ways)


@given(layers(whole=True))
def test_of_equal_ways_the_one_with_the_first_states_from_behind_is_taken(
    given_layers: tuple[list[Costs], list[Costs]],
) -> None:
    nodes, arcs = given_layers
    ways = product(*(range(len(costs)) for costs in nodes))
    first = min(ways, key=lambda way: (cost_of(nodes, arcs, way), way[::-1]))
    assert best_path(nodes, arcs).places == first


@given(layers(most=6))
def test_scipy_finds_a_way_of_the_same_cost(given_layers: tuple[list[Costs], list[Costs]]) -> None:
    """Bellman-Ford over the layers as a graph; every edge is 100 dearer, since scipy takes 0 for no edge."""
    from scipy.sparse import lil_matrix
    from scipy.sparse.csgraph import bellman_ford

    nodes, arcs = given_layers
    firsts = np.cumsum([1, *map(len, nodes)])
    graph = lil_matrix((int(firsts[-1]) + 1,) * 2)
    graph[0, 1 : firsts[1]] = 100 + nodes[0]
    for layer, (arc, costs) in enumerate(zip(arcs, nodes[1:], strict=True)):
        before, here, stop = firsts[layer : layer + 3]
        graph[before:here, here:stop] = 100 + arc + costs
    graph[firsts[-2] : firsts[-1], firsts[-1]] = 100
    length = bellman_ford(graph.tocsr(), indices=0)[-1] - 100 * (len(nodes) + 1)
    assert best_path(nodes, arcs).cost == pytest.approx(length, abs=1e-9)


def test_layers_and_arcs_must_fit() -> None:
    with pytest.raises(ValueError, match="at least one layer"):
        best_path([], [])
    with pytest.raises(ValueError):
        best_path([np.zeros(2), np.zeros(2)], [])


@given(layers(whole=True), st.lists(st.integers(0, 3).map(float), min_size=4, max_size=4))
def test_a_walk_by_steps_is_the_path_with_what_its_end_costs(
    given_layers: tuple[list[Costs], list[Costs]], ends: list[float]
) -> None:
    nodes, arcs = given_layers

    def step(arc: Costs, costs: Costs) -> paths.Step:
        return lambda totals: (
            (totals[:, None] + arc).min(axis=0) + costs,
            (totals[:, None] + arc).argmin(axis=0),
        )

    steps = [step(arc, costs) for arc, costs in zip(arcs, nodes[1:], strict=True)]
    closing = np.array(ends[: len(nodes[-1])])
    closed = [*nodes[:-1], nodes[-1] + closing]
    assert best_walk(nodes[0], steps, closing) == best_path(closed, arcs)
    assert best_walk(nodes[0], steps) == best_path(nodes, arcs)


def test_one_layer_is_its_cheapest_state() -> None:
    assert best_path([np.array([3.0, 1.0, 1.0])], []) == Path((1,), 1.0)


# Divisions -----------------------------------------------------------------------------------------------------


Table = dict[tuple[int, int], float]


@st.composite
def tables(draw: st.DrawFn, most: int = 7) -> tuple[int, Table]:
    """A length, and the cost of each span; spans may be missing."""
    count = draw(st.integers(0, most))
    cost = st.one_of(st.none(), st.integers(-2, 4).map(float))
    spans = {(start, stop): draw(cost) for start, stop in combinations(range(count + 1), 2)}
    return count, {span: cost for span, cost in spans.items() if cost is not None}


def divided(count: int, table: Table, starts: Sequence[int] | None = None) -> list[tuple[int, int]]:
    def ways_to(stop: int, totals: Sequence[float]) -> Iterator[tuple[int, float]]:
        for start in range(stop) if starts is None else reversed(range(stop)):
            if (start, stop) in table:
                yield start, totals[start] + table[start, stop]

    return best_division(count, ways_to)


def divisions(count: int) -> Iterator[list[tuple[int, int]]]:
    for size in range(count):
        for inner in combinations(range(1, count), size):
            yield list(pairwise((0, *inner, count)))


@given(tables())
def test_no_division_is_cheaper(given_table: tuple[int, Table]) -> None:
    count, table = given_table
    possible = [found for found in divisions(count) if all(span in table for span in found)]
    found = divided(count, table)
    assert bool(found) == bool(possible)
    if possible:
        assert sum(table[span] for span in found) == min(sum(table[span] for span in other) for other in possible)
        assert found[0][0] == 0 and found[-1][1] == count
        assert all(before[1] == after[0] for before, after in pairwise(found))


@given(tables())
def test_of_equal_divisions_the_way_given_first_is_taken(given_table: tuple[int, Table]) -> None:
    """Spans given from the longest on: the division whose last span is longest, and so on before it; and the other
    way round."""
    count, table = given_table
    possible = [found for found in divisions(count) if all(span in table for span in found)]
    if not possible:
        return
    least = min(sum(table[span] for span in found) for found in possible)
    best = [found for found in possible if sum(table[span] for span in found) == least]
    assert divided(count, table) == min(best, key=lambda found: [start for start, _ in reversed(found)])
    assert divided(count, table, ()) == max(best, key=lambda found: [start for start, _ in reversed(found)])


@pytest.mark.parametrize("seed", range(12))
def test_a_solver_finds_a_division_of_the_same_cost(seed: int) -> None:
    from ortools.sat.python import cp_model

    dice = np.random.default_rng(seed)
    count = 14
    table = {span: float(dice.integers(0, 40)) for span in combinations(range(count + 1), 2) if dice.random() < 0.8}
    model = cp_model.CpModel()
    taken = {span: model.new_bool_var(str(span)) for span in table}
    for place in range(count):
        model.add_exactly_one(var for (start, stop), var in taken.items() if start <= place < stop)
    model.minimize(sum(int(table[span]) * var for span, var in taken.items()))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    assert sum(table[span] for span in divided(count, table)) == solver.objective_value


def test_the_examples_of_the_module_hold() -> None:
    outcome = doctest.testmod(paths)
    assert outcome.attempted >= 7 and not outcome.failed
