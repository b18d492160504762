"""Techniques by what they are: tests name none by its id, nor guess by a part of one."""

from __future__ import annotations

from fioritura.techniques.table import all_techniques, family_of, technique_named, technique_of_sign
from fioritura.techniques.technique import Technique
from fioritura.tune import Mark

__all__ = ["grace_techniques", "is_grace", "technique_with"]


def is_grace(id: str) -> bool:
    """True for the id of a technique of grace notes."""
    return family_of(technique_named(id)).are_graces


def grace_techniques() -> tuple[Technique, ...]:
    """All techniques of grace notes."""
    return tuple(one for one in all_techniques().values() if is_grace(one.id))


def technique_with(sign: Mark) -> Technique:
    """The technique for which a sign of notation stands."""
    found = technique_of_sign(sign)
    assert found is not None, f"no technique has the sign {sign}"
    return found
