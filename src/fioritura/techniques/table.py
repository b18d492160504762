"""The one table of techniques: every `TECHNIQUES` of every module in this folder, and those of plugins.

To add a technique, add it to its family's file, or add a file; nothing else changes. One in a package of its own is a
plugin (see docs/plugins.md).
"""

from __future__ import annotations

import pkgutil
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache
from importlib import import_module

from fioritura.errors import OptionError
from fioritura.plugins import Plugin
from fioritura.techniques.added import added_families, added_techniques, checked_techniques, take_in_words
from fioritura.techniques.families import FAMILIES, Family
from fioritura.techniques.technique import Technique
from fioritura.tune import Mark

__all__ = [
    "all_families",
    "all_techniques",
    "family_of",
    "introduced",
    "plugin_techniques",
    "technique_named",
    "technique_of_sign",
    "wanted_techniques",
]


@cache
def all_techniques() -> dict[str, Technique]:
    """All techniques by id, easiest first, families together within a level.

    Examples:
        >>> all_techniques()["turn"].level
        3
    """
    found = [*_own_techniques(), *(technique for offered in plugin_techniques().values() for technique in offered)]
    return {technique.id: technique for technique in sorted(found, key=lambda t: (t.level, t.family, t.id))}


@cache
def all_families() -> dict[str, Family]:
    """All families that have techniques by id, in the order in which they are shown.

    Examples:
        >>> list(all_families())[:3]
        ['graces', 'inflections', 'repetitions']
    """
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
    """The techniques of each plugin that is in order.

    Examples:
        >>> plugin_techniques()  # with no plugin installed
        {}
    """
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


def introduced(techniques: Iterable[Technique]) -> tuple[Technique, ...]:
    """Techniques that are in no table, checked; from here on they are known by name, and offered to nobody else.

    Each raises an `OptionError` where it gives what is no figure of the place. One without words is called by its id.

    Examples:
        >>> own = Technique("octave-kick", "octave-graces", 2, lambda context: iter(()))
        >>> introduced([own])[0].id, technique_named("octave-kick").level, "octave-kick" in all_techniques()
        ('octave-kick', 2, False)

    Raises:
        OptionError: one is not of the right form.
    """
    found = checked_techniques(tuple(techniques), set(all_techniques()))
    _introduced.update((technique.id, technique) for technique in found)
    return found


_introduced: dict[str, Technique] = {}


def technique_named(id: str) -> Technique:
    """The technique with an id such as ``"turn"``.

    Examples:
        >>> technique_named("turn").family
        'turns'

    Raises:
        OptionError: there is no such technique; the message lists those there are.
    """
    try:
        return all_techniques().get(id) or _introduced[id]
    except KeyError:
        raise OptionError("no-such-technique", given=id, known=tuple(sorted(all_techniques()))) from None


def family_of(technique: Technique) -> Family:
    """The family of a technique; a plain one where a technique that is in no table names one that nobody knows.

    Examples:
        >>> family_of(technique_named("turn")).are_even
        True
    """
    return all_families().get(technique.family) or Family(technique.family)


@lru_cache(maxsize=64)
def technique_of_sign(mark: Mark) -> Technique | None:
    """The technique for which a sign of notation stands; None for a sign of articulation or phrasing.

    Examples:
        >>> technique_of_sign(Mark.TURN).id, technique_of_sign(Mark.STACCATO)
        ('turn', None)
    """
    return next((one for one in all_techniques().values() if mark in one.signs), None)


def wanted_techniques(
    level: int, only: Iterable[str] = (), without: Iterable[str] = (), own: Iterable[Technique] = ()
) -> tuple[Technique, ...]:
    """The techniques of a level, or just those in `only` whatever their level, less those in `without`.

    `own` techniques stand beside those of the table, under the same rules.

    Names in `only` and `without` may be ids or whole families (``"graces"``).

    Examples:
        >>> [technique.id for technique in wanted_techniques(5, only=["turns"], without=["shake"])]
        ['irish-long-roll', 'irish-short-roll', 'mordent', 'turn', 'upper-mordent', 'inverted-turn', 'irish-cran']

    Raises:
        OptionError: an unknown name, or nothing left.
    """
    known = {**all_techniques(), **{technique.id: technique for technique in own}}
    chosen = _expanded(only, known)
    refused = _expanded(without, known)
    found = tuple(
        technique
        for technique in known.values()
        if technique.id not in refused and (technique.id in chosen if chosen else technique.level <= level)
    )
    if not found:
        raise OptionError("every-technique-refused")
    return found


def _expanded(names: Iterable[str], known: Mapping[str, Technique]) -> frozenset[str]:
    families: dict[str, set[str]] = {}
    for technique in known.values():
        families.setdefault(technique.family, set()).add(technique.id)
    ids: set[str] = set()
    for name in names:
        if name not in families and name not in known:
            raise OptionError("no-such-technique", given=name, known=tuple(sorted(known)))
        ids |= families.get(name, {name})
    return frozenset(ids)
