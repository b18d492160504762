"""Families of techniques: what they are called, how they are drawn, and what holds for all techniques of one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from fioritura.words import Message, message

__all__ = ["FAMILIES", "Family"]


@dataclass(frozen=True, slots=True)
class Family:
    """Techniques that are taught, chosen and shown together.

    `icon` is the path of a drawing in a box of −10 to 10, a second sign beside its colour, so that neither is needed
    alone; it is filled, or drawn as a line where `is_line`. `hue` is that of the colour, in degrees (OKLCH), None for
    grey. What holds for its techniques: they are grace notes (`are_graces`); their notes belong to the plain note
    after them (`lead_on`), are meant to be early or late (`move`), or to be equal (`are_even`).
    """

    id: str
    icon: str = "M-8 0a8 8 0 1 0 16 0a8 8 0 1 0 -16 0Z"
    is_line: bool = False
    hue: int | None = None
    are_graces: bool = False
    lead_on: bool = False
    move: bool = False
    are_even: bool = False

    @property
    def name(self) -> Message:
        """What it is called: "passing notes"."""
        return message(f"family-{self.id}")


GRACES: Final = Family(
    "graces",
    "M-4.5 4.5a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0ZM3 -9h2.6v13.5h-2.6Z",
    hue=35,
    are_graces=True,
    lead_on=True,
)
INFLECTIONS: Final = Family("inflections", "M-9 7c9 0 12 -4 16 -14", is_line=True, hue=65)
REPETITIONS: Final = Family("repetitions", "M-9 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0ZM1 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0Z")
ANTICIPATIONS: Final = Family("anticipations", "M7 -9L-9 0L7 9Z", hue=125, lead_on=True, move=True)
NEIGHBOURS: Final = Family("neighbours", "M0 -9L9 0L0 9L-9 0Z", hue=300)
PASSING_NOTES: Final = Family("passing-notes", "M-8 7h6v-7h6v-7h5", is_line=True, hue=260)
APPROACHES: Final = Family("approaches", "M-7 -7L2 0L-7 7M8 -7v14", is_line=True, hue=230)
DELAYS: Final = Family("delays", "M-7 -9L9 0L-7 9Z", hue=95, move=True)
FILLS: Final = Family("fills", "M-8 -8h16v16h-16Z", hue=150)
RUNS: Final = Family("runs", "M-9 8L9 -9V8Z", hue=195, are_even=True)
ENDINGS: Final = Family("endings", "M-9 -7h11v14h-11ZM5 -9h4v18h-4Z", hue=275)
TURNS: Final = Family("turns", "M-9 1c3 -9 7 -7 9 0s6 9 9 0", is_line=True, hue=355, are_even=True)
CHORD_NOTES: Final = Family("chord-notes", "M-9 4h5v5h-5ZM-3 -3h5v5h-5ZM3 -9h5v5h-5Z", hue=175)
PARAPHRASES: Final = Family(
    "paraphrases", "M-9 -4c6 -6 12 6 18 0M-9 5c6 -6 12 6 18 0", is_line=True, hue=325, move=True
)

FAMILIES: Final = (
    GRACES,
    INFLECTIONS,
    REPETITIONS,
    ANTICIPATIONS,
    NEIGHBOURS,
    PASSING_NOTES,
    CHORD_NOTES,
    APPROACHES,
    DELAYS,
    PARAPHRASES,
    FILLS,
    RUNS,
    TURNS,
    ENDINGS,
)
"""In the order in which they are shown. A file with techniques of a family of its own has its `FAMILIES` too."""
