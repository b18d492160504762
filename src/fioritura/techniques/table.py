"""The one table of techniques: every `TECHNIQUES` of every module in this folder, and those of plugins.

To add a technique, add it to its family's file, or add a file; nothing else changes. One in a package of its own is a
plugin (see docs/plugins.md).
"""

from __future__ import annotations

import pkgutil
from collections.abc import Iterable
from functools import cache, lru_cache
from importlib import import_module

from fioritura.errors import OptionError
from fioritura.plugins import Plugin
from fioritura.techniques.added import added_families, added_techniques, take_in_words
from fioritura.techniques.families import FAMILIES, Family
from fioritura.techniques.technique import Technique
from fioritura.tune import Mark

__all__ = [
    "all_families",
    "all_techniques",
    "family_of",
    "plugin_techniques",
    "technique_named",
    "technique_of_sign",
    "wanted_techniques",
]


@cache
def all_techniques() -> dict[str, Technique]:
    """All techniques by id, easiest first, families together within a level."""
    found = [*_own_techniques(), *(technique for offered in plugin_techniques().values() for technique in offered)]
    return {technique.id: technique for technique in sorted(found, key=lambda t: (t.level, t.family, t.id))}


@cache
def all_families() -> dict[str, Family]:
    """All families that have techniques by id, in the order in which they are shown."""
    own = (family for family in _gathered("FAMILIES") if isinstance(family, Family))
    offered = [*FAMILIES, *own, *added_families(plugin_techniques())]
    known = {family.id: family for family in reversed(offered)}
    used = {technique.family for technique in all_techniques().values()}
    order = dict.fromkeys([*(family.id for family in offered), *sorted(used)])
    found = {id: known.get(id) or Family(id) for id in order if id in used}
    take_in_words(found.values())
    return found


@cache
def plugin_techniques() -> dict[Plugin, tuple[Technique, ...]]:
    """The techniques of each plugin that is in order."""
    return added_techniques({technique.id for technique in _own_techniques()})


@cache
def _own_techniques() -> tuple[Technique, ...]:
    found = tuple(technique for technique in _gathered("TECHNIQUES") if isinstance(technique, Technique))
    take_in_words(found)
    return found


def _gathered(name: str) -> list[object]:
    """What the modules of this folder have under a name."""
    package = __package__ or "fioritura.techniques"
    found: list[object] = []
    for module in pkgutil.iter_modules(import_module(package).__path__):
        found += getattr(import_module(f"{package}.{module.name}"), name, ())
    return found


def technique_named(id: str) -> Technique:
    """The technique with an id such as ``"turn"``.

    Raises:
        OptionError: there is no such technique; the message lists those there are.
    """
    try:
        return all_techniques()[id]
    except KeyError:
        raise OptionError("no-such-technique", given=id, known=tuple(sorted(all_techniques()))) from None


def family_of(technique: Technique) -> Family:
    """The family of a technique; a plain one where a technique that is in no table names one that nobody knows."""
    return all_families().get(technique.family) or Family(technique.family)


@lru_cache(maxsize=64)
def technique_of_sign(mark: Mark) -> Technique | None:
    """The technique for which a sign of notation stands; None for a sign of articulation or phrasing."""
    return next((one for one in all_techniques().values() if mark in one.signs), None)


def wanted_techniques(level: int, only: Iterable[str] = (), without: Iterable[str] = ()) -> tuple[Technique, ...]:
    """The techniques of a level, or just those in `only` whatever their level, less those in `without`.

    Names in `only` and `without` may be ids or whole families (``"graces"``).

    Raises:
        OptionError: an unknown name, or nothing left.
    """
    chosen = _expanded(only)
    refused = _expanded(without)
    found = tuple(
        technique
        for technique in all_techniques().values()
        if technique.id not in refused and (technique.id in chosen if chosen else technique.level <= level)
    )
    if not found:
        raise OptionError("every-technique-refused")
    return found


def _expanded(names: Iterable[str]) -> frozenset[str]:
    families: dict[str, set[str]] = {}
    for technique in all_techniques().values():
        families.setdefault(technique.family, set()).add(technique.id)
    ids: set[str] = set()
    for name in names:
        ids |= families.get(name) or {technique_named(name).id}
    return frozenset(ids)
