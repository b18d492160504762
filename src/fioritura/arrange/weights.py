"""The weights of techniques and families: those of ours lie beside their files, any other technique has its own with it.

``techniques/grace.taste.json`` holds for each technique and family of ``grace.py``, by idiom: ``base``, what a figure
scores before any feature of its place counts; ``share``, the most of all figures that the technique may make up;
``place``, weights of the features of a place; and ``part`` (jazz) or ``appeal`` (folk), from which
``tools/calibrate_taste.py`` sets the base. Blues is jazz with what stands under ``blues`` in place of what stands under
``jazz``; Irish music has nothing but what stands under ``irish``.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Mapping
from functools import cache, lru_cache
from importlib.resources import files
from math import isfinite
from numbers import Real
from typing import Any

from fioritura.players.idiom import IDIOMS, Idiom
from fioritura.plugins import leave_out
from fioritura.techniques.table import all_techniques
from fioritura.techniques.technique import Technique
from fioritura.words import Message, message

__all__ = ["in_idiom", "is_at_home", "problem_of_tables", "problem_of_taste", "weights_of"]

_TABLES = ("base", "share", "place")


def weights_of(idiom: str, features: Collection[str]) -> dict[str, Mapping[str, Any]]:
    """The weights in an idiom, by technique and family.

    A technique whose own taste is not of the right form has none: it is chosen only when it is asked for.

    Examples:
        >>> from fioritura.arrange.taste import FEATURES
        >>> sorted(weights_of("folk", FEATURES)["turn"])
        ['appeal', 'base']
    """
    found = {id: tables for id, by_idiom in _shipped().items() if (tables := in_idiom(by_idiom, idiom)) is not None}
    for technique in all_techniques().values():
        if not technique.taste:
            continue
        problem = problem_of_taste(technique, features)
        if problem:
            leave_out(message("taste-of", id=technique.id), problem)
        elif (tables := in_idiom(technique.taste, idiom)) is not None:
            found[technique.id] = tables
    return found


def in_idiom(by_idiom: Mapping[str, Mapping[str, Any]], idiom: str) -> Mapping[str, Any] | None:
    """The tables that hold in an idiom: its own, for blues on top of those of jazz; None where there are none.

    Examples:
        >>> in_idiom({"jazz": {"base": 1.0}, "blues": {"share": 0.2}}, "blues")
        {'base': 1.0, 'share': 0.2}
    """
    if idiom != "blues":
        return by_idiom.get(idiom)
    if not {"jazz", "blues"} & set(by_idiom):
        return None
    jazz, blues = by_idiom.get("jazz", {}), by_idiom.get("blues", {})
    place = {**jazz.get("place", {}), **blues.get("place", {})}
    return {**jazz, **blues, **({"place": place} if place else {})}


@lru_cache(maxsize=512)
def is_at_home(technique: Technique, idiom: Idiom) -> bool:
    """True where an idiom has the technique unasked: one with weights for jazz or folk is at home in jazz, blues and folk,
    any other in the idioms that it has weights for, one without weights everywhere.

    Examples:
        >>> from fioritura.techniques.turn import TURN
        >>> is_at_home(TURN, "folk"), is_at_home(TURN, "irish")
        (True, False)
    """
    known = {name for name in (*_shipped().get(technique.id, {}), *technique.taste) if name in IDIOMS}
    return not known or idiom in known or (idiom != "irish" and bool(known & {"jazz", "folk"}))


@cache
def _shipped() -> dict[str, Mapping[str, Mapping[str, Any]]]:
    found: dict[str, Mapping[str, Mapping[str, Any]]] = {}
    folder = files("fioritura.techniques")
    for file in sorted(
        (file for file in folder.iterdir() if file.name.endswith(".taste.json")), key=lambda f: f.name
    ):
        found |= json.loads(file.read_text(encoding="utf-8"))
    return found


def problem_of_taste(technique: Technique, features: Collection[str]) -> Message | None:
    """What is wrong with a technique's own taste; None where nothing is.

    Examples:
        >>> from fioritura.techniques.turn import TURN
        >>> problem_of_taste(TURN, ())
    """
    try:
        for idiom, tables in technique.taste.items():
            if idiom not in IDIOMS:
                return message("taste-no-idiom", given=str(idiom), known=IDIOMS)
            if problem := problem_of_tables(tables, idiom, features):
                return problem
    except (AttributeError, TypeError) as error:
        return message("taste-not-of-the-form", error=str(error))
    return None


def problem_of_tables(tables: Mapping[str, Any], whose: str, features: Collection[str]) -> Message | None:
    """What is wrong with weights (``base``, ``share``, ``place``); None where nothing is. `whose` they are is named.

    Examples:
        >>> str(problem_of_tables({"base": "much"}, "jazz", ()))
        "the weight 'much' is no number"
    """
    if unknown := set(tables) - set(_TABLES):
        return message("taste-no-table", given=str(min(unknown)), idiom=whose, known=_TABLES)
    place = tables.get("place", {})
    if not isinstance(place, Mapping):
        return message("taste-no-number", given=repr(place))
    for weight in (tables.get("base", 0.0), tables.get("share", 0.0), *place.values()):
        if isinstance(weight, bool) or not isinstance(weight, Real) or not isfinite(weight):
            return message("taste-no-number", given=repr(weight))
    if unknown := set(place) - set(features):
        return message("taste-no-feature", given=str(min(unknown)), known=tuple(features))
    return None
