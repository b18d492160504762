"""A taste of one's own: an idiom's weights, changed by a table that is given as an argument.

A table names techniques and families, or ``"all"``. A number lifts or lowers whatever is named; a mapping does it in
detail, in the form of the files of weights: ``base`` and ``place`` are added to the idiom's own, ``share`` (of single
techniques) takes its place. ``"figure"`` adds to the weights of the figure's own features.

Examples:
    >>> table = {"turn": 0.5, "graces": {"place": {"peak": 0.4}}, "run-scale": {"base": -0.3, "share": 0.05}}
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from math import isfinite
from types import MappingProxyType
from typing import Any, Final

from fioritura.arrange.taste import FEATURES, FIGURE_FEATURES, Taste
from fioritura.arrange.weights import in_idiom, problem_of_tables, problem_of_taste
from fioritura.errors import OptionError
from fioritura.techniques.technique import Technique
from fioritura.words import Message, message

__all__ = ["NO_CHANGE", "TasteTable", "changed_taste", "own_weights"]

TasteTable = Mapping[str, float | Mapping[str, Any]]
"""By technique, family, ``"all"`` or ``"figure"``: a number, or a mapping of ``base``, ``share`` and ``place``."""

NO_CHANGE: Final[TasteTable] = MappingProxyType({})


def own_weights(techniques: Iterable[Technique], idiom: str) -> TasteTable:
    """What techniques that are in no table have as their own taste in an idiom.

    Examples:
        >>> from fioritura.techniques.technique import Technique
        >>> own = Technique("kick", "graces", 1, lambda context: iter(()), taste={"jazz": {"base": 0.4}})
        >>> own_weights([own], "jazz"), own_weights([own], "folk")
        ({'kick': {'base': 0.4}}, {})

    Raises:
        OptionError: a taste is not of the right form.
    """
    found: dict[str, Mapping[str, Any]] = {}
    for technique in techniques:
        if problem := problem_of_taste(technique, FEATURES):
            raise OptionError("taste-refused", what=message("taste-of", id=technique.id), problem=problem)
        if (tables := in_idiom(technique.taste, idiom)) is not None:
            found[technique.id] = tables
    return found


def changed_taste(taste: Taste, table: TasteTable, techniques: Sequence[Technique]) -> Taste:
    """A taste with the changes of a table, which may name any of `techniques` and their families.

    Examples:
        >>> from fioritura.arrange.taste import taste_of
        >>> from fioritura.techniques.turn import TURN
        >>> jazz = taste_of("jazz")
        >>> lifted = changed_taste(jazz, {"turn": 0.5}, [TURN])
        >>> round(lifted.base["turn"] - jazz.base["turn"], 6)
        0.5

    Raises:
        OptionError: the table names what is neither, or is not of the right form.
    """
    if not table:
        return taste
    share, base, figure = dict(taste.share), dict(taste.base), dict(taste.figure)
    context = {name: dict(weights) for name, weights in taste.context.items()}
    for name, given in table.items():
        if name == "figure":
            _add(figure, _figure_weights(given))
            continue
        ids = _named(name, techniques)
        tables = _tables(name, given, is_one=ids == [name])
        _add(base, dict.fromkeys(ids, tables.get("base", 0.0)))
        share |= {name: tables["share"]} if "share" in tables else {}
        _add(context.setdefault(name, {}), tables.get("place", {}))
    return replace(taste, share=share, base=base, context=context, figure=figure)


def _add(weights: dict[str, float], more: Mapping[str, float]) -> None:
    for name, weight in more.items():
        weights[name] = weights.get(name, 0.0) + weight


def _named(name: str, techniques: Collection[Technique]) -> list[str]:
    """Ids of the techniques that a table means."""
    ids = [one.id for one in techniques if name in ("all", one.family, one.id)]
    if not ids:
        known = dict.fromkeys([one.id for one in techniques] + [one.family for one in techniques])
        raise OptionError("taste-names-nothing", given=str(name), known=tuple(sorted(known)))
    return ids


def _tables(name: str, given: object, *, is_one: bool) -> Mapping[str, Any]:
    tables: Mapping[str, Any] = given if isinstance(given, Mapping) else {"base": given}
    problem = problem_of_tables(tables, name, FEATURES)
    if problem is None and "share" in tables and not (is_one and 0.0 < tables["share"] <= 1.0):
        problem = message("taste-no-share", given=repr(tables["share"]))
    if problem:
        raise _refused(problem)
    return tables


def _figure_weights(given: object) -> Mapping[str, float]:
    if not isinstance(given, Mapping):
        raise _refused(message("taste-no-number", given=repr(given)))
    weights: Mapping[str, Any] = given
    if unknown := set(weights) - set(FIGURE_FEATURES):
        raise _refused(message("taste-no-figure-feature", given=str(min(unknown)), known=FIGURE_FEATURES))
    for weight in weights.values():
        if isinstance(weight, bool) or not isinstance(weight, int | float) or not isfinite(weight):
            raise _refused(message("taste-no-number", given=repr(weight)))
    return weights


def _refused(problem: Message) -> OptionError:
    return OptionError("taste-refused", what=message("taste-given"), problem=problem)
