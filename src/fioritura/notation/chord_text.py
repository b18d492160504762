"""How a chord symbol is set: the root large, its quality smaller, the figures raised.

A symbol comes as text (``"F♯m7♭5"``, ``"E♭7(♯9)"``, ``"C6/9/A"``) and leaves as pieces, each with its size and how
far it is raised. The order of the characters never changes, so text taken out of a page reads as it was written.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

__all__ = ["ChordPiece", "chord_pieces"]

_ACCIDENTAL: Final = "[♭♯\N{MUSICAL SYMBOL DOUBLE FLAT}\N{MUSICAL SYMBOL DOUBLE SHARP}]{0,2}"
_SYMBOL: Final = re.compile(
    rf"(?P<root>[A-G]{_ACCIDENTAL})(?P<quality>m(?!aj)|-|−|min|dim|aug|\+|°|ø|[Δ△])?"
    rf"(?P<figures>.*?)(?P<bass>/[A-G]{_ACCIDENTAL})?"
)
_FIGURE_SIZE: Final = 0.74
_FIGURE_RAISE: Final = 0.26
_SMALL_SIZE: Final = 0.88


@dataclass(frozen=True, slots=True)
class ChordPiece:
    """A run of a chord symbol; `size` is a share of the symbol's font size, `raised` a share of it in em."""

    text: str
    size: float = 1.0
    raised: float = 0.0


def chord_pieces(text: str) -> tuple[ChordPiece, ...]:
    """The runs of a chord symbol, whole or in brackets; one plain run for a text that isn't one (``"N.C."``)."""
    has_brackets = text.startswith("(") and text.endswith(")")
    opens, closes = ("(", ")") if has_brackets else ("", "")
    found = _SYMBOL.fullmatch(text[1:-1] if has_brackets else text)
    if found is None:
        return (ChordPiece(text),)
    pieces = (
        ChordPiece(opens + found["root"]),
        ChordPiece(found["quality"] or "", _SMALL_SIZE),
        ChordPiece(found["figures"], _FIGURE_SIZE, _FIGURE_RAISE),
        ChordPiece((found["bass"] or "") + closes),
    )
    return tuple(piece for piece in pieces if piece.text)
