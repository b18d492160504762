"""The families of techniques as the page shows them: name, icon and colour, from the table of techniques."""

from __future__ import annotations

from typing import Any

from fioritura.techniques.table import all_families
from fioritura.words import capital, say

__all__ = ["family_data", "family_styles"]

_GREY = "oklch(var(--l) 0.03 60)"


def family_data() -> dict[str, dict[str, Any]]:
    """Name and drawing of each family by id, in the order in which they are shown."""
    return {
        family.id: {"name": capital(say(family.name)), "icon": family.icon, "is_line": family.is_line}
        for family in all_families().values()
    }


def family_styles() -> str:
    """A style sheet that gives each family's class its colour."""
    hues = ((family.id, family.hue) for family in all_families().values())
    colours = ((id, _GREY if hue is None else f"oklch(var(--l) var(--c) {hue})") for id, hue in hues)
    return "".join(f".fam-{id} {{ --fam: {colour}; }}\n" for id, colour in colours)
