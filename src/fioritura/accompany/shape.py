"""How the band takes a plan: each statement as a chorus, with its energy and its manner.

The first chorus is in two, the next ones in four; the one before the climax builds up to a pedal, the climax has all that
the band has, and after it the band drops to two for a section (common practice).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from fioritura.accompany.form import Chorus, Manner
from fioritura.arrange.plan import Plan, Role
from fioritura.tune import Note
from fioritura.words import say

__all__ = ["manner_of", "planned_choruses"]

_MANNERS: Final[dict[Role, Manner]] = {
    "only": "four",
    "head": "two",
    "fuller": "four",
    "climax": "shout",
    "return": "drop",
}


def manner_of(plan: Plan, number: int) -> Manner:
    """How the band plays the statement of a number, from 0."""
    role = plan.role(number)
    return "build" if role == "fuller" and plan.climax == number + 1 else _MANNERS[role]


def planned_choruses(plan: Plan, lines: Sequence[tuple[Note, ...] | None] = ()) -> tuple[Chorus, ...]:
    """The choruses of a plan with the lines that are played in them (none: left to a soloist)."""
    return tuple(
        Chorus(
            say(plan.name(number)),
            lines[number] if lines else None,
            each.energy,
            manner_of(plan, number),
        )
        for number, each in enumerate(plan.statements)
    )
