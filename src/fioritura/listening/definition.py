"""What an added group of notes is by definition, where it is no figure that the technique table would write itself.

Each technique has its own definition (`techniques.definition`); here they are put to a group, the narrower before the
wider, and a group that is no one technique is parted into several.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import groupby
from math import inf

from fioritura.arrange.weights import is_at_home
from fioritura.paths import best_division
from fioritura.players.idiom import Idiom
from fioritura.techniques.definition import Definition, Group
from fioritura.techniques.table import all_techniques

__all__ = ["Group", "technique_of", "techniques_of"]


@lru_cache(maxsize=8)
def _definitions(idiom: Idiom) -> tuple[tuple[str, Definition], ...]:
    """Techniques with their definitions, the narrower before the wider; in Irish music its own go first, elsewhere those
    of other idioms are left out."""
    found = []
    for one in all_techniques().values():
        if one.definition is not None and (idiom == "irish" or is_at_home(one, idiom)):
            found.append((not is_at_home(one, idiom), one.definition.breadth, one.id, one.definition))
    return tuple((id, definition) for _, _, id, definition in sorted(found, key=lambda entry: entry[:3]))


def technique_of(group: Group, idiom: Idiom = "jazz") -> str | None:
    """The id of the first technique whose definition the group meets, None for a group that meets none.

    A note said again is the same note: repeats are left out, where they are not all that was added.
    """
    bare = replace(group, inner=_without_repeats(group))
    return next((technique for technique, definition in _definitions(idiom) if definition.is_met(bare)), None)


def techniques_of(group: Group, idiom: Idiom = "jazz") -> list[tuple[str, int, int]]:
    """The group as one technique, or as few after one another as will do: (id, first, stop) of the added notes.

    A part is embellished by the next: its note after is the first of the next part. Empty where it can't be parted.
    """
    count = len(group.inner)
    named: dict[tuple[int, int], str] = {}

    def ways_to(stop: int, totals: Sequence[float]) -> Iterator[tuple[int, float]]:
        fewest = inf
        for first in range(stop):
            if totals[first] + 1 >= fewest:
                continue
            part = replace(
                group,
                inner=group.inner[first:stop],
                before=group.inner[first - 1] if first else group.before,
                after=group.inner[stop] if stop < count else group.after,
            )
            technique = technique_of(part, idiom)
            if technique:
                named[first, stop], fewest = technique, totals[first] + 1
                yield first, fewest

    return [(named[part], *part) for part in best_division(count, ways_to)]


def _without_repeats(group: Group) -> tuple[int, ...]:
    if group.is_quick:
        return group.inner
    inner = [midi for midi, _ in groupby(group.inner)]
    if len(inner) > 1 and inner[0] == group.before:
        inner = inner[1:]
    if len(inner) > 1 and inner[-1] == group.after:
        inner = inner[:-1]
    return tuple(inner)
