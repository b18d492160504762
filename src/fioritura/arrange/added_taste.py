"""The taste of plugins: weights for their own techniques, of the same form as ours (see `taste_jazz.json`)."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from numbers import Real

from fioritura.plugins import leave_out
from fioritura.techniques.table import plugin_techniques

__all__ = ["added_taste"]

Weights = dict[str, dict[str, float]]


def added_taste(idiom: str, features: Collection[str]) -> tuple[dict[str, float], dict[str, float], Weights]:
    """Base, share and weights of places that plugins give to their techniques in an idiom.

    A plugin whose taste is not of the right form has none: its techniques are chosen only when they are asked for.
    """
    base: dict[str, float] = {}
    share: dict[str, float] = {}
    place: Weights = {}
    for plugin, techniques in plugin_techniques().items():
        own = {technique.id for technique in techniques}
        taste = getattr(plugin.module, "TASTE", {})
        try:
            problem = _problem(taste, own, features)
        except (AttributeError, TypeError) as error:
            problem = f"it is not of the right form ({error})"
        if problem:
            leave_out(f"{plugin}'s TASTE", problem)
            continue
        for_idiom = taste.get(idiom, {})
        base.update(for_idiom.get("base", {}))
        share.update(for_idiom.get("share", {}))
        place.update({id: dict(weights) for id, weights in for_idiom.get("place", {}).items()})
    return base, share, place


def _problem(
    taste: Mapping[str, Mapping[str, Mapping[str, object]]], own: set[str], features: Collection[str]
) -> str:
    """What is wrong with a plugin's taste; empty where nothing is."""
    for idiom, tables in taste.items():
        if unknown := set(tables) - {"base", "share", "place"}:
            return f"it has {min(unknown)!r} for {idiom}: give base, share and place"
        for name in ("base", "share", "place"):
            if strangers := set(tables.get(name, {})) - own:
                return f"it weighs {min(strangers)!r}, which is none of the plugin's techniques"
        for weight in (*tables.get("base", {}).values(), *tables.get("share", {}).values()):
            if not isinstance(weight, Real):
                return f"the weight {weight!r} is no number"
        for weights in tables.get("place", {}).values():
            if not isinstance(weights, Mapping) or not all(isinstance(one, Real) for one in weights.values()):
                return "weights of places are numbers by feature"
            if unknown := set(weights) - set(features):
                return f"places have no feature {min(unknown)!r}: choose among {', '.join(features)}"
    return ""
