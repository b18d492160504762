"""Examples as pictures to lay over a video: large PNG without background, and SVG."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from fioritura.lesson.geometry import tinted
from fioritura.lesson.handout import TINT
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.page import Canvas, Placed
from fioritura.notation.engraving.svg import standalone
from fioritura.notation.engraving.typeset import canvas_png

__all__ = ["write_overlay_png", "write_overlay_svg"]

WIDTH: Final = 1920
_GAP: Final = 40.0
_MARGIN: Final = 24.0


def write_overlay_png(marked: tuple[int, ...], systems: tuple[System, ...], path: Path) -> None:
    """The systems one below the other, 1920 pixels wide, the figure's notes on a tint, no background.

    Raises:
        ToolError: the typesetter is missing or failed.
    """
    widest = max(system.width_mm for system in systems)
    scale = (WIDTH - 2 * _MARGIN) / widest
    items: list[Placed] = []
    y = _MARGIN
    for system in systems:
        items.append(Placed(tinted(system, 2, marked, TINT), _MARGIN, y, system.width_mm * scale))
        y += system.height_mm * scale + _GAP
    path.write_bytes(canvas_png(Canvas(WIDTH, round(y - _GAP + _MARGIN), tuple(items), is_transparent=True)))


def write_overlay_svg(marked: tuple[int, ...], systems: tuple[System, ...], path: Path) -> None:
    """The first system as an SVG that shows right in any viewer."""
    path.write_text(standalone(tinted(systems[0], 2, marked, TINT).svg), encoding="utf-8")
