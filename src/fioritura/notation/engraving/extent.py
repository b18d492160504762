"""How far up and down a drawing of the engraver reaches, read from the drawing itself.

Lengths are the engraver's drawing units; y runs downwards. Curves count with their control points, so that an extent is
never too small.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import Final

__all__ = ["vertical_extent"]

_OUTLINE: Final = re.compile(r' (?:d|points)="([^"]*)"')
_OUTLINE_Y: Final = re.compile(r"(?:[ML]-?[\d.]+ |\d,)(-?[\d.]+)")
_RECTANGLE: Final = re.compile(r'<rect [^>]*?\by="(-?[\d.]+)"[^>]*? height="([\d.]+)"')
_GLYPH_USE: Final = re.compile(
    r'href="#([0-9A-F]+)-[^"]*" transform="translate\([^,]+,\s*(-?[\d.]+)\) scale\(([\d.]+)'
)
_GLYPH_PATH: Final = re.compile(r' d="([^"]*)"')
_COMMAND: Final = re.compile(r"([A-Za-z])([^A-Za-z]*)")
_NUMBER: Final = re.compile(r"-?[\d.]+")
_POINTS_OF: Final = {"m": 1, "l": 1, "t": 1, "q": 2, "s": 2, "c": 3}
"""Points of each drawing command (SVG 1.1); the last one is where the next command begins."""


def vertical_extent(system: str, glyphs: Mapping[str, str]) -> tuple[float, float]:
    """Top and bottom of a drawing's lines and glyphs; `glyphs` holds each glyph's own drawing by its code point."""
    places = [float(y) for y in _OUTLINE_Y.findall(" ".join(_OUTLINE.findall(system)))]
    for y, height in _RECTANGLE.findall(system):
        places += (float(y), float(y) + float(height))
    for code, y, scale in set(_GLYPH_USE.findall(system)):
        top, bottom = _glyph_extent(glyphs[code])
        places += (float(y) + float(scale) * top, float(y) + float(scale) * bottom)
    return min(places, default=0.0), max(places, default=0.0)


@lru_cache(maxsize=256)
def _glyph_extent(glyph: str) -> tuple[float, float]:
    """Top and bottom of a glyph, which is drawn with y upwards and turned round."""
    heights = [height for path in _GLYPH_PATH.findall(glyph) for height in _heights(path)]
    return -max(heights, default=0.0), -min(heights, default=0.0)


def _heights(path: str) -> Iterator[float]:
    """The y of every point of an outline, control points too."""
    here = 0.0
    for command, text in _COMMAND.findall(path):
        numbers = [float(number) for number in _NUMBER.findall(text)]
        kind = command.lower()
        if kind in "hz":
            continue
        values = numbers if kind == "v" else numbers[1::2]
        step = _POINTS_OF.get(kind, 1)
        for place in range(0, len(values), step):
            points = [value + (here if command.islower() else 0.0) for value in values[place : place + step]]
            yield from points
            here = points[-1]
