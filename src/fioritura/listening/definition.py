"""What an added group of notes is by definition, where it is no figure that the technique table would write itself.

Each technique has its own definition (`techniques.definition`); here they are put to a group, the narrower before the
wider, and a group that is no one technique is parted into several.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import groupby

from fioritura.techniques.definition import Definition, Group
from fioritura.techniques.table import all_techniques

__all__ = ["Group", "technique_of", "techniques_of"]


@cache
def _definitions() -> tuple[tuple[str, Definition], ...]:
    """Techniques with their definitions, the narrower before the wider."""
    found = [(one.id, one.definition) for one in all_techniques().values() if one.definition is not None]
    return tuple(sorted(found, key=lambda pair: (pair[1].breadth, pair[0])))


def technique_of(group: Group) -> str | None:
    """The id of the first technique whose definition the group meets, None for a group that meets none.

    A note said again is the same note: repeats are left out, where they are not all that was added.
    """
    bare = replace(group, inner=_without_repeats(group))
    return next((technique for technique, definition in _definitions() if definition.is_met(bare)), None)


def techniques_of(group: Group) -> list[tuple[str, int, int]]:
    """The group as one technique, or as few after one another as will do: (id, first, stop) of the added notes.

    A part is embellished by the next: its note after is the first of the next part. Empty where it can't be parted.
    """
    best: dict[int, list[tuple[str, int, int]]] = {0: []}
    count = len(group.inner)
    for stop in range(1, count + 1):
        for first in range(stop):
            if first not in best or (stop in best and len(best[stop]) <= len(best[first]) + 1):
                continue
            part = replace(
                group,
                inner=group.inner[first:stop],
                before=group.inner[first - 1] if first else group.before,
                after=group.inner[stop] if stop < count else group.after,
            )
            technique = technique_of(part)
            if technique:
                best[stop] = [*best[first], (technique, first, stop)]
    return best.get(count, [])


def _without_repeats(group: Group) -> tuple[int, ...]:
    if group.is_quick:
        return group.inner
    inner = [midi for midi, _ in groupby(group.inner)]
    if len(inner) > 1 and inner[0] == group.before:
        inner = inner[1:]
    if len(inner) > 1 and inner[-1] == group.after:
        inner = inner[:-1]
    return tuple(inner)
