"""The weights of techniques and families: those of ours lie beside their files, any other technique has its own with it.

``techniques/grace.taste.json`` holds for each technique and family of ``grace.py``, by idiom: ``base``, what a figure
scores before any feature of its place counts; ``share``, the most of all figures that the technique may make up;
``place``, weights of the features of a place; and ``part`` (jazz) or ``appeal`` (folk), from which
``tools/calibrate_taste.py`` sets the base.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Mapping
from functools import cache
from importlib.resources import files
from numbers import Real
from typing import Any

from fioritura.plugins import leave_out
from fioritura.techniques.table import all_techniques
from fioritura.techniques.technique import Technique
from fioritura.words import Message, message

__all__ = ["weights_of"]

_TABLES = ("base", "share", "place")
_IDIOMS = ("jazz", "folk")


def weights_of(idiom: str, features: Collection[str]) -> dict[str, Mapping[str, Any]]:
    """The weights in an idiom, by technique and family.

    A technique whose own taste is not of the right form has none: it is chosen only when it is asked for.
    """
    found = {id: by_idiom[idiom] for id, by_idiom in _shipped().items() if idiom in by_idiom}
    for technique in all_techniques().values():
        if not technique.taste:
            continue
        try:
            problem = _problem(technique, features)
        except (AttributeError, TypeError) as error:
            problem = message("taste-not-of-the-form", error=str(error))
        if problem:
            leave_out(message("taste-of", id=technique.id), problem)
        elif idiom in technique.taste:
            found[technique.id] = technique.taste[idiom]
    return found


@cache
def _shipped() -> dict[str, Mapping[str, Mapping[str, Any]]]:
    found: dict[str, Mapping[str, Mapping[str, Any]]] = {}
    folder = files("fioritura.techniques")
    for file in sorted(
        (file for file in folder.iterdir() if file.name.endswith(".taste.json")), key=lambda f: f.name
    ):
        found |= json.loads(file.read_text(encoding="utf-8"))
    return found


def _problem(technique: Technique, features: Collection[str]) -> Message | None:
    """What is wrong with a technique's own taste; None where nothing is."""
    for idiom, tables in technique.taste.items():
        if idiom not in _IDIOMS:
            return message("taste-no-idiom", given=str(idiom), known=_IDIOMS)
        if unknown := set(tables) - set(_TABLES):
            return message("taste-no-table", given=min(unknown), idiom=idiom, known=_TABLES)
        for weight in (tables.get("base", 0.0), tables.get("share", 0.0), *tables.get("place", {}).values()):
            if not isinstance(weight, Real):
                return message("taste-no-number", given=repr(weight))
        if unknown := set(tables.get("place", {})) - set(features):
            return message("taste-no-feature", given=min(unknown), known=tuple(features))
    return None
