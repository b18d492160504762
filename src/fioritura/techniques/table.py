"""The one table of techniques: every `TECHNIQUES` of every module in this folder, and those of plugins.

To add a technique, add it to its family's file, or add a file; nothing else changes. One in a package of its own is a
plugin (see docs/plugins.md).
"""

from __future__ import annotations

import pkgutil
from collections.abc import Iterable
from functools import cache
from importlib import import_module

from fioritura.errors import OptionError
from fioritura.plugins import Plugin
from fioritura.techniques.added import added_techniques
from fioritura.techniques.technique import Technique

__all__ = ["all_techniques", "plugin_techniques", "technique_named", "wanted_techniques"]


@cache
def all_techniques() -> dict[str, Technique]:
    """All techniques by id, easiest first, families together within a level."""
    found = [*_own_techniques(), *(technique for offered in plugin_techniques().values() for technique in offered)]
    return {technique.id: technique for technique in sorted(found, key=lambda t: (t.level, t.family, t.id))}


@cache
def plugin_techniques() -> dict[Plugin, tuple[Technique, ...]]:
    """The techniques of each plugin that is in order."""
    return added_techniques({technique.id for technique in _own_techniques()})


@cache
def _own_techniques() -> tuple[Technique, ...]:
    package = __package__ or "fioritura.techniques"
    found: list[Technique] = []
    for module in pkgutil.iter_modules(import_module(package).__path__):
        found += getattr(import_module(f"{package}.{module.name}"), "TECHNIQUES", ())
    return tuple(found)


def technique_named(id: str) -> Technique:
    """The technique with an id such as ``"lower-grace-semitone"``.

    Raises:
        OptionError: there is no such technique; the message lists those there are.
    """
    try:
        return all_techniques()[id]
    except KeyError:
        raise OptionError(f"No technique {id!r}; choose among {', '.join(sorted(all_techniques()))}.") from None


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
        raise OptionError("Every technique asked for is also refused: leave one out of --without.")
    return found


def _expanded(names: Iterable[str]) -> frozenset[str]:
    families: dict[str, set[str]] = {}
    for technique in all_techniques().values():
        families.setdefault(technique.family, set()).add(technique.id)
    ids: set[str] = set()
    for name in names:
        ids |= families.get(name) or {technique_named(name).id}
    return frozenset(ids)
