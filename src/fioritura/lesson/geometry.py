"""Where notes stand in an engraved system: to tint a figure, and to let a marker follow the sound.

Lengths are the drawing's own units, those of its `viewBox`; y runs downwards.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from lxml import etree

from fioritura.notation.engraving.engrave import System

__all__ = ["Box", "Layout", "layout_of", "tinted"]

_SVG: Final = "{http://www.w3.org/2000/svg}"
_TRANSLATE: Final = re.compile(r"translate\(\s*(-?[\d.]+)[ ,]+(-?[\d.]+)\s*\)")
_NOTE: Final = re.compile(r"s(\d+)-n(\d+)(?:-g\d+|-\d+)?")
_NUMBER: Final = re.compile(r"-?\d+(?:\.\d+)?")
_HEAD_WIDTH: Final = 225.0
_HEAD_HEIGHT: Final = 180.0
_PADDING: Final = 110.0


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle."""

    left: float
    top: float
    right: float
    bottom: float

    def joined(self, other: Box) -> Box:
        """The smallest box around both."""
        return Box(
            min(self.left, other.left),
            min(self.top, other.top),
            max(self.right, other.right),
            max(self.bottom, other.bottom),
        )


@dataclass(frozen=True)
class Layout:
    """A system's size, its staves from the top, and the boxes of its note heads by (staff from 1, note number).

    A note's box holds its grace notes and tied continuations too; `heads` are the left edges of main heads alone.
    """

    width: float
    height: float
    staves: tuple[Box, ...]
    notes: Mapping[tuple[int, int], Box]
    heads: Mapping[tuple[int, int], float]

    def around(self, staff: int, notes: Iterable[int]) -> Box | None:
        """The box around some notes of a staff and the staff's own height; None where none of them stands here."""
        boxes = [self.notes[staff, number] for number in notes if (staff, number) in self.notes]
        if not boxes:
            return None
        whole = boxes[0]
        for box in boxes[1:]:
            whole = whole.joined(box)
        lines = self.staves[staff - 1]
        return replace(whole, top=min(whole.top, lines.top), bottom=max(whole.bottom, lines.bottom))


def layout_of(system: System) -> Layout:
    """Read the places of staves and notes from a system's drawing."""
    root = etree.fromstring(system.svg.encode())
    _, _, width, height = (float(part) for part in root.get("viewBox", "0 0 0 0").split())
    reader = _Reader()
    reader.read(root, 0.0, 0.0)
    count = reader.per_measure or 1
    staves = [reader.staves[n] for n in range(count)] if reader.staves else []
    for number, box in enumerate(reader.staves):
        staves[number % count] = staves[number % count].joined(box)
    return Layout(width, height, tuple(staves), reader.notes, reader.heads)


class _Reader:
    """Walks through a drawing with its translations."""

    def __init__(self) -> None:
        self.staves: list[Box] = []
        self.per_measure = 0
        self.notes: dict[tuple[int, int], Box] = {}
        self.heads: dict[tuple[int, int], float] = {}

    def read(self, element: etree._Element, x: float, y: float) -> None:
        """Note what an element and all in it draw, from an origin."""
        found = _TRANSLATE.search(element.get("transform", ""))
        if found and element.tag == f"{_SVG}g":
            x, y = x + float(found[1]), y + float(found[2])
        kind = element.get("class", "")
        if kind == "measure" and not self.per_measure:
            self.per_measure = sum(child.get("class") == "staff" for child in element)
        elif kind == "staff":
            self._staff(element, x, y)
        elif kind == "note" and (named := _NOTE.fullmatch(element.get("id", ""))):
            self._note((int(named[1]), int(named[2])), element, x, y)
        for child in element:
            if isinstance(child.tag, str):
                self.read(child, x, y)

    def _staff(self, staff: etree._Element, x: float, y: float) -> None:
        lines = [[float(n) for n in _NUMBER.findall(path.get("d", ""))] for path in staff.findall(f"{_SVG}path")[:5]]
        if lines:
            left, right = min(line[0] for line in lines), max(line[2] for line in lines)
            self.staves.append(Box(x + left, y + lines[0][1], x + right, y + lines[-1][1]))

    def _note(self, key: tuple[int, int], note: etree._Element, x: float, y: float) -> None:
        is_grace = "-g" in note.get("id", "")
        for use in note.iter(f"{_SVG}use"):
            found = _TRANSLATE.search(use.get("transform", ""))
            if not found:
                continue
            left, middle = x + float(found[1]), y + float(found[2])
            box = Box(left, middle - _HEAD_HEIGHT / 2, left + _HEAD_WIDTH, middle + _HEAD_HEIGHT / 2)
            self.notes[key] = self.notes[key].joined(box) if key in self.notes else box
            parent = use.getparent()
            if not is_grace and parent is not None and parent.get("class") == "notehead":
                self.heads.setdefault(key, left)


def tinted(system: System, staff: int, notes: Iterable[int], colour: str) -> System:
    """The system with a tint behind some notes of a staff."""
    layout = layout_of(system)
    box = layout.around(staff, notes)
    if box is None:
        return system
    rectangle = (
        f'<rect x="{box.left - _PADDING:.0f}" y="{box.top - 2 * _PADDING:.0f}" '
        f'width="{box.right - box.left + 2 * _PADDING:.0f}" height="{box.bottom - box.top + 4 * _PADDING:.0f}" '
        f'rx="120" fill="{colour}"/>'
    )
    start = system.svg.index(">") + 1
    return replace(system, svg=system.svg[:start] + rectangle + system.svg[start:])
