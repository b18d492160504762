"""Typeset a `Document` to PDF or PNG with typst.

The program that typst runs is the look of `templates/page.typ` and one call that holds the document. Text enters it
as string literals only, so a title is never taken for markup. The same document gives the same bytes: time stamps
are fixed, and system fonts are consulted only for scripts that the text face lacks.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final, Literal
from xml.sax.saxutils import unescape

from fioritura.errors import OptionError, ToolError
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.fonts import MUSIC_SIGNS, font_folder
from fioritura.notation.engraving.page import (
    MARGINS_MM,
    Block,
    Bullets,
    Canvas,
    Caption,
    Caution,
    Columns,
    Contents,
    Document,
    Gap,
    Heading,
    Keep,
    LeadSheet,
    Legend,
    Music,
    PageBreak,
    Paragraph,
    Placed,
    Small,
    Table,
    Text,
    TitleBlock,
    paper_mm,
    print_area_mm,
)

if TYPE_CHECKING:
    import typst

__all__ = ["canvas_png", "pdf", "pngs"]

_POINTS_PER_INCH: Final = 72.0
_LINE_BREAKS: Final = re.compile("[\t-\r\x85\u2028\u2029]+")
_LABEL: Final = re.compile(r'<svg [^>]*?aria-label="([^"]*)"')
_UNPRINTABLE: Final = re.compile("[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")


def pdf(document: Document) -> bytes:
    """The document as a PDF.

    Raises:
        OptionError: no such paper.
        ToolError: the typesetter is missing or failed.
    """
    (made,) = _typeset(_program(document, "white"), "pdf")
    return made


def pngs(document: Document, *, dots_per_inch: float = 144.0, is_transparent: bool = False) -> list[bytes]:
    """The document as one PNG a page, on white or without a background.

    Raises:
        OptionError: no such paper, or a resolution outside 20 to 1200 dots an inch.
        ToolError: the typesetter is missing or failed.
    """
    if not 20.0 <= dots_per_inch <= 1200.0:
        raise OptionError("resolution-outside", given=f"{dots_per_inch:g}")
    return _typeset(_program(document, "none" if is_transparent else "white"), "png", dots_per_inch)


def canvas_png(canvas: Canvas) -> bytes:
    """A canvas as a PNG, a pixel for a pixel.

    Raises:
        OptionError: a side outside 16 to 8192 pixels.
        ToolError: the typesetter is missing or failed.
    """
    for side in (canvas.width, canvas.height):
        if not 16 <= side <= 8192:
            raise OptionError("picture-size-outside", width=canvas.width, height=canvas.height)
    fill = "none" if canvas.is_transparent else "white"
    items = _sequence(map(_placed, canvas.items))
    program = f"\n#canvas({canvas.width}pt, {canvas.height}pt, {fill}, {items})\n"
    (made,) = _typeset(program, "png", _POINTS_PER_INCH)
    return made


def _placed(item: Placed) -> str:
    place = f"{item.x:.2f}pt, {item.y:.2f}pt, {item.width:.2f}pt"
    if isinstance(item.content, str):
        return f"placed-words({place}, {item.size:.2f}pt, {str(item.is_quiet).lower()}, {_string(item.content)})"
    return f"placed-drawing({place}, {_string(item.content.svg)})"


def _typeset(program: str, kind: Literal["pdf", "png"], dots_per_inch: float | None = None) -> list[bytes]:
    try:
        import typst
    except ImportError as error:
        raise ToolError("typesetter-missing", reason=str(error)) from None
    source = _template() + program
    try:
        compiler = typst.Compiler(
            source.encode(), root=str(font_folder()), font_paths=_fonts(_needs_system_fonts(program))
        )
        made = compiler.compile(format=kind, ppi=dots_per_inch, timestamp=0)
    except RuntimeError as error:
        raise ToolError("typesetter-failed", reason=str(error)) from None
    if made is None:
        raise ToolError("typesetter-made-no-page")
    return list(made) if isinstance(made, list) else [made]


@lru_cache(maxsize=2)
def _fonts(with_system_fonts: bool) -> typst.Fonts:
    import typst

    return typst.Fonts(include_system_fonts=with_system_fonts, font_paths=[str(font_folder())])


def _needs_system_fonts(text: str) -> bool:
    """True when the text has letters beyond Latin, Greek and Cyrillic, which the text face lacks."""
    return any(
        char > "\u052f"
        and not "\u1e00" <= char <= "\u2bff"
        and not "\ue000" <= char <= "\uf8ff"
        and char not in MUSIC_SIGNS
        for char in set(text)
    )


@lru_cache(maxsize=1)
def _template() -> str:
    return files("fioritura.notation.engraving").joinpath("templates/page.typ").read_text(encoding="utf-8")


def _program(document: Document, background: str) -> str:
    width, height = paper_mm(document.paper)
    margins = ", ".join(f"{side}: {_mm(size)}" for side, size in MARGINS_MM.items())
    arguments = (
        _string(document.title),
        _string(document.author),
        _string(document.language),
        f"({_mm(width)}, {_mm(height)})",
        f"({margins})",
        _string(document.footer) if document.footer else "none",
        background,
        _sequence(_block(block, document) for block in document.blocks),
    )
    return f"\n#document-page({', '.join(arguments)})\n"


def _block(block: Block, document: Document) -> str:
    """The call that sets a block."""
    match block:
        case Heading(text, level):
            return f"section({level}, {_string(text)})"
        case Paragraph(text):
            return f"paragraph({_text(text)})"
        case Caption(text):
            return f"caption({_text(text)})"
        case Small(text):
            return f"small({_text(text)})"
        case Caution(text):
            return f"caution({_text(text)})"
        case Bullets(items, is_numbered):
            return _call("numbered" if is_numbered else "bullets", *map(_text, items))
        case Music(systems, space_mm):
            return _call("music", _mm(space_mm), *map(_drawing, systems))
        case Table():
            return _table(block)
        case Columns(columns, widths, space_mm):
            cells = (_sequence(_block(inner, document) for inner in column) for column in columns)
            return _call("side-by-side", _shares(widths, len(columns)), _mm(space_mm), *cells)
        case Keep(blocks):
            return _call("keep", _sequence(_block(inner, document) for inner in blocks))
        case Contents(heading):
            return _call("contents", _string(heading))
        case TitleBlock(title, subtitle, left, right):
            parts = (_string(part) if part else "none" for part in (subtitle, left, right))
            return _call("title-block", _string(title), *parts)
        case Legend(heading, entries):
            rows = (f"({_string(e.label)}, {_string(e.name)}, {_string(e.bars)})" for e in entries)
            return _call("legend", _string(heading), *rows)
        case Gap(height_mm):
            return f"gap({_mm(height_mm)})"
        case PageBreak():
            return "pagebreak(weak: true)"
        case LeadSheet():
            return _lead_sheet(block, document)


def _table(table: Table) -> str:
    cells = (_text(cell) for row in table.rows for cell in row)
    header = _tuple(map(_string, table.header))
    name = "dense-table" if table.is_dense else "grid-table"
    return _call(name, _shares(table.widths, len(table.header)), header, *cells)


def _lead_sheet(sheet: LeadSheet, document: Document) -> str:
    width, height = print_area_mm(document.paper)
    parts = (
        _sequence(_block(block, document) for block in part) if part else "none"
        for part in (sheet.opening, sheet.closing, sheet.foot)
    )
    lengths = map(_mm, (width, height, sheet.min_space_mm, sheet.max_space_mm))
    return "pagebreak(weak: true)\n" + _call("lead-sheet", *lengths, *parts, *map(_drawing, sheet.systems))


def _drawing(system: System) -> str:
    """A drawing with its alternative text, which a plot has as its label."""
    label = _LABEL.match(system.svg)
    words = system.words or (unescape(label[1], {"&quot;": '"'}) if label else "")
    return f"drawing({_string(system.svg)}, {_mm(system.width_mm)}, alt: {_string(words) if words else 'none'})"


def _text(text: Text) -> str:
    if isinstance(text, str):
        return _string(text)
    flags = {True: "true", False: "false"}
    return (
        " + ".join(f"run({_string(run.text)}, bold: {flags[run.bold]}, italic: {flags[run.italic]})" for run in text)
        or '""'
    )


def _sequence(calls: Iterable[str]) -> str:
    """A block of code whose results are set one after the other."""
    return "{\n" + "\n".join(calls) + "\n}"


def _call(name: str, *arguments: str) -> str:
    return f"{name}({', '.join(arguments)})"


def _tuple(parts: Iterable[str]) -> str:
    return "(" + "".join(f"{part}, " for part in parts) + ")"


def _shares(widths: tuple[float, ...], count: int) -> str:
    """Column widths: shares of the page, 0 for a column as wide as its text."""
    return _tuple(f"{share:g}fr" if share else "auto" for share in widths or (1.0,) * count)


def _mm(length: float) -> str:
    return f"{length:.3f}mm"


def _string(text: str) -> str:
    """A string literal that stands for just this text, in one line.

    Control characters, those of writing direction too, and unpaired surrogates are left out.
    """
    shown = _UNPRINTABLE.sub("", _LINE_BREAKS.sub(" ", text))
    escaped = shown.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
