"""What a printed page is made of: headings, text, tables, music, and whole lead sheets.

These are plain values; `fioritura.notation.engraving.typeset` turns a `Document` of them into PDF or PNG. Text is plain text
throughout: nothing in it is ever taken for markup. Lengths are millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from fioritura.errors import OptionError
from fioritura.notation.engraving.engrave import System

__all__ = [
    "MARGINS_MM",
    "Block",
    "Bullets",
    "Canvas",
    "Caption",
    "Caution",
    "Columns",
    "Contents",
    "Document",
    "Gap",
    "Heading",
    "Keep",
    "LeadSheet",
    "Legend",
    "LegendEntry",
    "Music",
    "PageBreak",
    "Paper",
    "Paragraph",
    "Placed",
    "Run",
    "Small",
    "Table",
    "Text",
    "TitleBlock",
    "paper_mm",
    "print_area_mm",
]

Paper = Literal["a4", "letter"]

_PAPERS_MM: Final[dict[str, tuple[float, float]]] = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
"""Width and height (ISO 216; ANSI A)."""

MARGINS_MM: Final = {"left": 16.0, "right": 16.0, "top": 13.0, "bottom": 16.0}


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text in one style."""

    text: str
    bold: bool = False
    italic: bool = False


Text = str | tuple[Run, ...]
"""Plain text, or runs of text in several styles."""


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the largest, 3 the smallest. It never stands alone at the foot of a page."""

    text: str
    level: Literal[1, 2, 3] = 1


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running text."""

    text: Text


@dataclass(frozen=True, slots=True)
class Caption:
    """A small slanted line that stays with what follows it."""

    text: Text


@dataclass(frozen=True, slots=True)
class Small:
    """Small print: rights, sources."""

    text: Text


@dataclass(frozen=True, slots=True)
class Caution:
    """A remark set off by a line at its left."""

    text: Text


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list, numbered on request."""

    items: tuple[Text, ...]
    is_numbered: bool = False


@dataclass(frozen=True, slots=True)
class Music:
    """Engraved systems one below the other; a page may break between two of them, never inside one."""

    systems: tuple[System, ...]
    space_mm: float = 4.0


@dataclass(frozen=True, slots=True)
class Table:
    """A table with a header row; `widths` are shares of the page's width, 0 for a column as wide as its text."""

    header: tuple[str, ...]
    rows: tuple[tuple[Text, ...], ...]
    widths: tuple[float, ...] = ()
    is_dense: bool = False
    """True for small type and close rows, so that many rows stand on one page."""


@dataclass(frozen=True, slots=True)
class Columns:
    """Blocks side by side; `widths` are shares of the page's width."""

    columns: tuple[tuple[Block, ...], ...]
    widths: tuple[float, ...] = ()
    space_mm: float = 8.0


@dataclass(frozen=True, slots=True)
class Keep:
    """Blocks that stay together on one page."""

    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Contents:
    """The headings of level 1 with their pages, under a small heading."""

    heading: str


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """A title with a line below it, and an instrument (left) over against a composer (right)."""

    title: str
    subtitle: str = ""
    left: str = ""
    right: str = ""


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """What a label above the staff stands for, and where it is found (``"bars 3, 7"``)."""

    label: str
    name: str
    bars: str


@dataclass(frozen=True, slots=True)
class Legend:
    """The labels of a page explained, in two columns."""

    heading: str
    entries: tuple[LegendEntry, ...]


@dataclass(frozen=True, slots=True)
class Gap:
    """Vertical space."""

    height_mm: float


@dataclass(frozen=True, slots=True)
class PageBreak:
    """What follows begins a new page."""


@dataclass(frozen=True, slots=True)
class LeadSheet:
    """A piece on pages of its own: an opening, its systems spread well over the pages, a closing after the last of
    them, and what stands at the foot of the last page.

    The space between systems lies between the two limits; no system is alone on the last page where another can
    join it.
    """

    opening: tuple[Block, ...]
    systems: tuple[System, ...]
    closing: tuple[Block, ...] = ()
    foot: tuple[Block, ...] = ()
    min_space_mm: float = 2.8
    max_space_mm: float = 15.0


Block = (
    Heading
    | Paragraph
    | Caption
    | Small
    | Caution
    | Bullets
    | Music
    | Table
    | Columns
    | Keep
    | Contents
    | TitleBlock
    | Legend
    | Gap
    | PageBreak
    | LeadSheet
)


@dataclass(frozen=True, slots=True)
class Document:
    """Pages of blocks. `footer` stands at the foot of each page before the page number; without it there is none."""

    title: str
    blocks: tuple[Block, ...]
    author: str = ""
    footer: str = ""
    paper: Paper = "a4"
    language: str = "en"


@dataclass(frozen=True, slots=True)
class Placed:
    """A drawing, or a line of text `size` high, on a canvas: its left and top edge and its width, in pixels."""

    content: System | str
    x: float
    y: float
    width: float
    size: float = 0.0
    is_quiet: bool = False


@dataclass(frozen=True, slots=True)
class Canvas:
    """A picture of a size in pixels, on white or without a background."""

    width: int
    height: int
    items: tuple[Placed, ...]
    is_transparent: bool = False


def paper_mm(paper: Paper) -> tuple[float, float]:
    """Width and height of a sheet of paper.

    Raises:
        OptionError: no such paper.
    """
    try:
        return _PAPERS_MM[paper]
    except KeyError:
        raise OptionError("no-such-paper", given=str(paper), known=tuple(_PAPERS_MM)) from None


def print_area_mm(paper: Paper) -> tuple[float, float]:
    """Width and height of a page between its margins.

    Raises:
        OptionError: no such paper.
    """
    width, height = paper_mm(paper)
    return width - MARGINS_MM["left"] - MARGINS_MM["right"], height - MARGINS_MM["top"] - MARGINS_MM["bottom"]
