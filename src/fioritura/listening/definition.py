"""What an added group of notes is by definition, where it is no figure that the technique table would write itself.

Players and other arrangers choose other rhythms, other scales and other places than our table. Their additions are
named by how they are approached and left: Open Music Theory, "Embellishing tones" (passing: step in and out the same
way; neighbour: step out and back; appoggiatura: leap in, step out; escape tone: step in, leap out the other way;
anticipation: the next note early), and common practice for grace notes, turns, runs and approaches.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import groupby, pairwise
from math import inf
from typing import Final

from fioritura.paths import best_division

__all__ = ["DEFINITIONS", "Group", "technique_of", "techniques_of"]

_STEP: Final = 2
_LONGEST_FILL_LEAP: Final = 9
_LONGEST_ESCAPE_LEAP: Final = 7


@dataclass(frozen=True)
class Group:
    """Added notes between two notes that are the tune's: MIDI numbers in order.

    `before` and `after` are None at the ends of the line. `is_quick` tells notes of a grace note's length, `is_light`
    notes too short to be a step of the tune themselves, `is_fill` that the note before is long enough to be answered.
    `scale`, `five` and `chord` are pitch classes.
    """

    before: int | None
    inner: tuple[int, ...]
    after: int | None
    is_quick: bool = False
    is_light: bool = True
    is_fill: bool = False
    scale: frozenset[int] = frozenset(range(12))
    five: frozenset[int] = frozenset()
    chord: frozenset[int] = frozenset()

    @cached_property
    def path(self) -> tuple[int, ...]:
        """The added notes with the notes around them."""
        return tuple(midi for midi in (self.before, *self.inner, self.after) if midi is not None)

    @cached_property
    def moves(self) -> tuple[int, ...]:
        """Semitones from note to note."""
        return tuple(after - before for before, after in pairwise(self.path))

    @property
    def goes_one_way(self) -> bool:
        """True when every move rises, or every move falls."""
        return all(move > 0 for move in self.moves) or all(move < 0 for move in self.moves)

    @property
    def is_between(self) -> bool:
        """True when there is a note on both sides."""
        return self.before is not None and self.after is not None

    def around(self, main: int | None) -> tuple[int, ...]:
        """The added notes as semitones above a note; empty without one."""
        return () if main is None else tuple(midi - main for midi in self.inner)

    @property
    def is_diatonic(self) -> bool:
        """True when every added note belongs to the scale."""
        return self.all_in(self.scale)

    def all_in(self, classes: frozenset[int]) -> bool:
        """True when every added note belongs to some pitch classes."""
        return all(midi % 12 in classes for midi in self.inner)


def technique_of(group: Group) -> str | None:
    """The id of the first technique whose definition the group meets, None for a group that meets none.

    A note said again is the same note: repeats are left out, where they are not all that was added.
    """
    bare = replace(group, inner=_without_repeats(group))
    return next((technique for technique, is_one in DEFINITIONS if is_one(bare)), None)


def techniques_of(group: Group) -> list[tuple[str, int, int]]:
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
            technique = technique_of(part)
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


def _is_step(move: int) -> bool:
    return 1 <= abs(move) <= _STEP


def _grace(*semitones: int) -> Callable[[Group], bool]:
    """One quick note, so far from the note after."""
    return lambda g: g.is_quick and g.after is not None and g.around(g.after) in {(s,) for s in semitones}


def _upper_semitone_grace(g: Group) -> bool:
    return _grace(1)(g) and g.before is not None and g.after is not None and g.before - g.after == 2


def _double_grace_lower(g: Group) -> bool:
    found = g.around(g.after)
    return g.is_quick and len(found) == 2 and -5 <= found[0] < found[1] < 0 and found[1] >= -_STEP


def _double_grace_around(g: Group) -> bool:
    found = g.around(g.after)
    return (
        g.is_quick and len(found) == 2 and _is_step(found[0]) and found[0] > 0 and _is_step(found[1]) and found[1] < 0
    )


def _repeated(g: Group) -> bool:
    return g.is_light and not g.is_quick and len(set(g.inner)) == 1 and g.inner[0] == g.before


def _anticipation(g: Group) -> bool:
    is_same = len(g.inner) == 1 and g.inner[0] == g.after and g.before != g.after
    return g.is_light and not g.is_quick and is_same


def _flick(direction: int) -> Callable[[Group], bool]:
    """Out by step and back, quickly, on the note before."""

    def is_one(g: Group) -> bool:
        found = g.around(g.before)
        return g.is_quick and len(found) == 2 and found[1] == 0 and 1 <= found[0] * direction <= _STEP

    return is_one


def _turn(direction: int) -> Callable[[Group], bool]:
    """Both neighbours of one note in turn, with the note between them or not, and the note again."""

    def is_one(g: Group) -> bool:
        for main in (g.before, g.after):
            found = [s for s in g.around(main) if s]
            if len(found) == 2 and len(g.inner) >= 3:
                sides = 1 <= found[0] * direction <= _STEP and 1 <= -found[1] * direction <= _STEP
                if sides and len(g.inner) <= 4:
                    return True
        return False

    return is_one


def _shake(g: Group) -> bool:
    for main in (g.before, g.after):
        found = g.around(main)
        others = {s for s in found if s}
        if len(found) >= 3 and len(others) == 1 and _is_step(*others) and all(a != b for a, b in pairwise(found)):
            return True
    return False


def _neighbour(direction: int) -> Callable[[Group], bool]:
    """A step out of a note and back to it."""

    def is_one(g: Group) -> bool:
        found = g.around(g.before)
        if not found or not 1 <= found[0] * direction <= _STEP or not (g.is_diatonic or found[0] == -1):
            return False
        return (len(found) == 1 and g.before == g.after) or found[1:] == (0,)

    return is_one


def _double_neighbour(g: Group) -> bool:
    found = g.around(g.before)
    if len(found) == 2 and g.before != g.after:
        return False
    sides = len(found) >= 2 and _is_step(found[0]) and _is_step(found[1]) and found[0] * found[1] < 0
    return sides and found[2:] in ((), (0,))


def _surround(g: Group) -> bool:
    found = g.around(g.after)
    return len(found) == 2 and _is_step(found[0]) and _is_step(found[1]) and found[0] * found[1] < 0


def _chromatic_passing(g: Group) -> bool:
    return g.is_between and g.moves in ((1, 1), (-1, -1))


def _passing(count: int) -> Callable[[Group], bool]:
    def is_one(g: Group) -> bool:
        return (
            g.is_between
            and len(g.inner) == count
            and g.goes_one_way
            and all(map(_is_step, g.moves))
            and g.is_diatonic
        )

    return is_one


def _chromatic_run(g: Group) -> bool:
    return g.is_between and len(g.inner) >= 2 and set(g.moves) in ({1}, {-1})


def _run(classes: Callable[[Group], frozenset[int]], widest: int, least: int = 1) -> Callable[[Group], bool]:
    """A way of `least` notes or more through some pitch classes, in one direction, from the note before to the note
    after."""

    def is_one(g: Group) -> bool:
        if len(g.inner) < least or not g.is_between or not g.goes_one_way or max(map(abs, g.moves)) > widest:
            return False
        return g.all_in(classes(g))

    return is_one


def _chromatic_approach(g: Group) -> bool:
    return g.around(g.after) in ((-2, -1), (2, 1))


def _escape(g: Group) -> bool:
    if not (g.is_between and len(g.inner) == 1 and g.is_diatonic):
        return False
    away, on = g.moves
    return g.is_light and _is_step(away) and _STEP < abs(on) <= _LONGEST_ESCAPE_LEAP and away * on < 0


def _approach(g: Group) -> bool:
    return g.is_between and len(g.inner) == 1 and abs(g.moves[0]) > _STEP and g.moves[1] == 1


def _appoggiatura(g: Group) -> bool:
    if not (g.is_between and len(g.inner) == 1 and g.is_diatonic):
        return False
    return abs(g.moves[0]) > _STEP and _is_step(g.moves[1])


def _fill(g: Group) -> bool:
    if not g.is_fill or len(g.inner) < 3 or g.after is None:
        return False
    inside = [b - a for a, b in pairwise(g.inner)]
    turns = sum(a * b < 0 for a, b in pairwise(inside))
    return _is_step(g.moves[-1]) and turns <= 2 and 0 not in inside and max(map(abs, inside)) <= _LONGEST_FILL_LEAP


DEFINITIONS: Final[tuple[tuple[str, Callable[[Group], bool]], ...]] = (
    ("upper-grace-semitone", _upper_semitone_grace),
    ("lower-grace-semitone", _grace(-1)),
    ("lower-grace-step", _grace(-2)),
    ("upper-grace-step", _grace(1, 2)),
    ("double-grace-lower", _double_grace_lower),
    ("double-grace-upper-lower", _double_grace_around),
    ("mordent", _flick(-1)),
    ("upper-mordent", _flick(1)),
    ("turn", _turn(1)),
    ("inverted-turn", _turn(-1)),
    ("shake", _shake),
    ("repeated-notes", _repeated),
    ("neighbour-upper", _neighbour(1)),
    ("neighbour-lower", _neighbour(-1)),
    ("double-neighbour", _double_neighbour),
    ("passing-note-chromatic", _chromatic_passing),
    ("passing-note", _passing(1)),
    ("passing-notes-pair", _passing(2)),
    ("surround", _surround),
    ("approach-chromatic", _chromatic_approach),
    ("run-chromatic", _chromatic_run),
    ("run-scale", _run(lambda g: g.scale, 3)),
    ("run-arpeggio", _run(lambda g: g.chord, 9)),
    ("run-pentatonic", _run(lambda g: g.five, 4, 2)),
    ("escape-tone", _escape),
    ("approach-note", _approach),
    ("appoggiatura", _appoggiatura),
    ("anticipation", _anticipation),
    ("answer-fill", _fill),
)
"""Techniques with their definitions, the narrower before the wider."""
