"""How a tune's eighths are played: what the file says, else what the idiom does by custom. This is the one place that decides.

Jazz swings unless the file says otherwise, in metres of quarters and halves (common practice); folk is even. What a file
says is its style: swing, straight eighths, bossa and so on (`fioritura.tune.Style`).
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from fioritura.players.idiom import Idiom, tradition_of
from fioritura.tune import Feel, Style, Tune
from fioritura.words import Message, message

__all__ = ["BALLAD_BELOW", "GENTLE_BELOW", "UP_ABOVE", "feel_by_custom", "feel_of", "styled"]

BALLAD_BELOW: Final = 90.0
UP_ABOVE: Final = 180.0
"""Quarter notes a minute: slower is a ballad, faster is up, the rest medium (common practice)."""

GENTLE_BELOW: Final = 88.0
"""Quarter notes a minute: what is slower is played quietly, and its swing slurred like even eighths."""

_SWINGING: Final = frozenset({"swing", "shuffle", "ballad"})
"""Styles whose eighths are long and short; those of a jazz ballad are, gently."""

_LONGEST_UNIT: Final = 4
"""Metres counted in shorter notes than quarters do not swing by custom."""


def feel_of(tune: Tune, idiom: Idiom) -> Feel:
    """The feel of a tune in an idiom, where nobody asks for another."""
    if tune.style is not None:
        return _feel_of_style(tune.style, idiom)
    return "swing" if tune.feel == "swing" or _swings_by_custom(tune, idiom) else "straight"


def feel_by_custom(tune: Tune, idiom: Idiom) -> Message | None:
    """Says that the tune swings by custom alone; None where its file says how it goes, or it does not swing."""
    if tune.style is None and tune.feel != "swing" and _swings_by_custom(tune, idiom):
        return message("feel-by-custom")
    return None


def styled(tune: Tune, feel: Feel, idiom: Idiom) -> Tune:
    """The tune as it is played in a feel: its own style where that agrees, else the one that has to be said."""
    if tune.style is not None and _feel_of_style(tune.style, idiom) == feel:
        return replace(tune, feel=feel)
    is_told = feel == "straight" and (tune.feel == "swing" or _swings_by_custom(tune, idiom))
    return replace(tune, feel=feel, style="straight" if is_told else None)


def _feel_of_style(style: Style, idiom: Idiom) -> Feel:
    if style == "ballad" and tradition_of(idiom) != "jazz":
        return "straight"
    return "swing" if style in _SWINGING else "straight"


def _swings_by_custom(tune: Tune, idiom: Idiom) -> bool:
    return tradition_of(idiom) == "jazz" and not tune.metre.is_compound and tune.metre.unit <= _LONGEST_UNIT
