"""The chooser's model, stated once more for an independent solver (OR-Tools CP-SAT, Apache-2.0).

It shares no code with `fioritura.arrange.choose`: there a dynamic programme, here Boolean variables for "this figure is
chosen", "the last figure before this slot uses this technique" and "the one before it is of this family".
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from fioritura.arrange.choose import Model
from fioritura.arrange.survey import Survey

SCALE = 100_000


@dataclass(frozen=True)
class Quotas:
    """The rule of `fioritura.arrange.shares`, stated once more: `share[t]` and `side[t]` of technique t, and the part of
    the single grace notes that comes from above (None where that is left to the place)."""

    share: Sequence[float]
    side: Sequence[int]
    above: float | None


def quotas_of(found: Survey) -> Quotas:
    """What the taste says of each technique, in the order of the model."""
    taste, ordered = found.taste, sorted(found.techniques, key=lambda technique: technique.family)
    singles = {figure.technique for figure in found.candidates if len(figure.graces) == 1}
    return Quotas(
        share=[max(taste.share.get(one.id, taste.share["usual"]), 1.6 / len(ordered)) for one in ordered],
        side=[{"above": 1, "below": -1, None: 0}[one.side] if one.id in singles else 0 for one in ordered],
        above=None if taste.below is None else 1.0 - taste.below,
    )


def cp_sat_worth(model: Model, seconds: float = 60.0, quotas: Quotas | None = None) -> tuple[float, list[int]]:
    """The optimum's worth and a set that has it, proved optimal; AssertionError when the proof takes too long."""
    from ortools.sat.python import cp_model

    problem, chosen, worth = _stated(model, quotas)
    problem.maximize(worth)
    solver, status = _solved(problem, seconds)
    assert status == cp_model.OPTIMAL, solver.status_name(status)
    return solver.objective_value / SCALE, [n for n, x in enumerate(chosen) if solver.value(x)]


def offers_another(model: Model, quotas: Quotas, least: float, seconds: float = 60.0) -> bool | None:
    """Whether some set within the quotas is worth so much; None when neither is proved in that time."""
    from ortools.sat.python import cp_model

    problem, _, worth = _stated(model, quotas)
    problem.add(worth >= round(SCALE * least))
    _, status = _solved(problem, seconds)
    return {cp_model.OPTIMAL: True, cp_model.FEASIBLE: True, cp_model.INFEASIBLE: False}.get(status)


def _solved(problem: Any, seconds: float) -> tuple[Any, Any]:
    from ortools.sat.python import cp_model

    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = 2
    return solver, solver.solve(problem)


def _stated(model: Model, quotas: Quotas | None) -> tuple[Any, list[Any], Any]:
    """The problem, for each candidate the variable that it is chosen, and the worth of those that are."""
    from ortools.sat.python import cp_model

    problem = cp_model.CpModel()
    slots, techniques = len(model.phrase_of_slot), len(model.family)
    families = max(model.family) + 1
    chosen = [problem.new_bool_var(f"x{n}") for n in range(len(model.candidates))]
    last = [[problem.new_bool_var(f"l{s},{t}") for t in range(techniques + 1)] for s in range(slots + 1)]
    before = [[problem.new_bool_var(f"f{s},{f}") for f in range(families + 1)] for s in range(slots + 1)]
    for row in (*last, *before):
        problem.add_exactly_one(row)
    problem.add(last[0][techniques] == 1)
    problem.add(before[0][families] == 1)
    starts: list[list[int]] = [[] for _ in range(slots)]
    covers: list[list[int]] = [[] for _ in range(slots)]
    for number, candidate in enumerate(model.candidates):
        starts[candidate.first].append(number)
        for slot in range(candidate.first, min(candidate.next_free, slots)):
            covers[slot].append(number)
        if candidate.is_locked:
            problem.add(chosen[number] == 1)
    terms: list[Any] = []
    for slot in range(slots):
        problem.add_at_most_one(chosen[number] for number in covers[slot])
        starting = [chosen[number] for number in starts[slot]]
        for state in (last, before):
            for now, after in zip(state[slot], state[slot + 1], strict=True):
                problem.add_implication(now, after).only_enforce_if([s.negated() for s in starting])
        for number in starts[slot]:
            technique = model.candidates[number].technique
            problem.add_implication(chosen[number], last[slot + 1][technique])
            for other in range(techniques + 1):
                family = model.family[other] if other < techniques else families
                problem.add_bool_or(chosen[number].negated(), last[slot][other].negated(), before[slot + 1][family])
            terms.append(round(SCALE * model.candidates[number].score) * chosen[number])
            terms += _penalties(problem, model, number, chosen[number], last[slot], before[slot])
    for phrase, limit in enumerate(model.limits):
        own = [n for n, c in enumerate(model.candidates) if model.phrase_of_slot[c.first] == phrase]
        problem.add(sum(chosen[number] for number in own) <= limit)
    if quotas:
        _keep(problem, model, chosen, quotas)
    return problem, chosen, sum(terms)


def _keep(problem: Any, model: Model, chosen: list[Any], quotas: Quotas) -> None:
    """From five figures on no technique has more than its share, rounded up; from eight on none has over a quarter, where
    there are five techniques at least; from above come 18 of 100 single grace notes, rounded up or down."""
    total = sum(chosen)
    uses = [
        sum(x for x, candidate in zip(chosen, model.candidates, strict=True) if candidate.technique == technique)
        for technique in range(len(model.family))
    ]
    at_least = {count: problem.new_bool_var(f"from {count}") for count in (5, 8)}
    for count, is_reached in at_least.items():
        problem.add(total >= count).only_enforce_if(is_reached)
        problem.add(total < count).only_enforce_if(is_reached.negated())
    for share, used in zip(quotas.share, uses, strict=True):
        problem.add(SCALE * used <= round(SCALE * share) * total + SCALE - 1).only_enforce_if(at_least[5])
        if len(uses) >= 5:
            problem.add(4 * used <= total).only_enforce_if(at_least[8])
    if quotas.above is not None and {1, -1} <= set(quotas.side):
        singles, above = (
            sum(used for used, side in zip(uses, quotas.side, strict=True) if side in sides)
            for sides in ((1, -1), (1,))
        )
        wanted = round(SCALE * quotas.above) * singles
        problem.add(SCALE * above - wanted <= SCALE - 1)
        problem.add(wanted - SCALE * above <= SCALE - 1)


def _penalties(problem: Any, model: Model, number: int, x: Any, last: list[Any], before: list[Any]) -> list[Any]:
    """Terms for a chosen figure after one of its own technique or family."""
    technique = model.candidates[number].technique
    own = model.family[technique]
    kin = [last[other] for other in range(len(model.family)) if model.family[other] == own]
    cases = ((model.same_technique, [last[technique]]), (model.same_family, kin), (model.family_again, [before[own]]))
    terms = []
    for place, (penalty, states) in enumerate(cases):
        if penalty:
            applies = problem.new_bool_var(f"p{number},{place}")
            for state in states:
                problem.add_bool_or(x.negated(), state.negated(), applies)
            terms.append(-round(SCALE * penalty) * applies)
    return terms
