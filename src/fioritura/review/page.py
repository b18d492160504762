"""A review as HTML: the blocks of its pages as elements, alone (`review_body`) or as one file that needs no other."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from html import escape
from importlib.resources import files
from typing import Final

from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.fonts import MUSIC_SIGNS, sign_font_css
from fioritura.notation.engraving.page import (
    Block,
    Bullets,
    Caption,
    Caution,
    Columns,
    Heading,
    Keep,
    Music,
    Paragraph,
    Small,
    Table,
    Text,
    TitleBlock,
)
from fioritura.review.document import ReviewSheet, review_blocks, title_of
from fioritura.words import message, say, written_language

__all__ = ["review_body", "review_page", "review_style"]

_IDS: Final = re.compile(r' id="s\d+-[^"]*"')
_SIZE: Final = re.compile(r' width="[\d.]+mm" height="[\d.]+mm"')
_SCREEN_SCALE: Final = 1.4
_USED: Final = re.compile(r"(id=\"|href=\"#)(E[0-9A-F]+-)")


def review_page(sheet: ReviewSheet) -> str:
    """The review as one HTML file, with its style, its music and the signs that the music needs."""
    body = review_body(sheet)
    title = escape(title_of(sheet))
    signs = frozenset(char for char in body if char in MUSIC_SIGNS or "\ue000" <= char <= "\uf8ff")
    style = f"{sign_font_css(signs)}\n{review_style()}" if signs else review_style()
    return (
        f'<!DOCTYPE html>\n<html lang="{written_language()}">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{title}</title>\n<style>\nbody {{ margin: 0; background: #fff; }}\n{style}</style>\n</head>\n<body>\n{body}</body>\n</html>\n"
    )


def review_body(sheet: ReviewSheet) -> str:
    """The review as one `<article class="review">`, for a page that has `review_style`."""
    drawings = _Drawings()
    inner = "".join(_block(block, drawings) for block in review_blocks(sheet))
    return f'<article class="review">\n{inner}</article>\n'


def review_style() -> str:
    """The style sheet of `review_body`."""
    return files("fioritura.review").joinpath("page.css").read_text(encoding="utf-8")


class _Drawings:
    """Drawings as they stand in a page: as wide as in print, or as the screen is, with ids that come once only."""

    def __init__(self) -> None:
        self.count = 0

    def figure(self, systems: Iterable[System]) -> str:
        return f'<div class="music">{"".join(map(self._one, systems))}</div>\n'

    def _one(self, system: System) -> str:
        self.count += 1
        svg = _USED.sub(rf"\g<1>r{self.count}-\g<2>", _SIZE.sub("", _IDS.sub("", system.svg)))
        if "role=" not in svg[: svg.index(">")]:
            name = say(message("music-from-bar", bar=str(system.first_bar)) if system.first_bar else message("music"))
            svg = svg.replace("<svg ", f'<svg role="img" aria-label="{escape(name)}" ', 1)
        return svg.replace("<svg ", f'<svg style="max-width:{_SCREEN_SCALE * system.width_mm:.0f}mm" ', 1)


def _block(block: Block, drawings: _Drawings) -> str:
    match block:
        case TitleBlock(title, subtitle, left, right):
            return (
                f'<header><h1>{escape(title)}</h1><p class="subtitle">{escape(subtitle)}</p>'
                f'<p class="credits"><strong>{escape(left)}</strong><span>{escape(right)}</span></p></header>\n'
            )
        case Heading(text, level):
            return f"<h{level + 1}>{escape(text)}</h{level + 1}>\n"
        case Paragraph(text):
            return f"<p>{_text(text)}</p>\n"
        case Caption(text):
            return f'<p class="caption">{_text(text)}</p>\n'
        case Small(text):
            return f'<p class="small">{_text(text)}</p>\n'
        case Caution(text):
            return f"<aside>{_text(text)}</aside>\n"
        case Bullets(items, is_numbered):
            kind = "ol" if is_numbered else "ul"
            return f"<{kind}>{''.join(f'<li>{_text(item)}</li>' for item in items)}</{kind}>\n"
        case Music(systems):
            return drawings.figure(systems)
        case Table():
            return "".join(_table(block))
        case Columns(columns):
            cells = ("".join(_block(inner, drawings) for inner in column) for column in columns)
            return f'<div class="columns">{"".join(f"<div>{cell}</div>" for cell in cells)}</div>\n'
        case Keep(blocks):
            return f"<section>\n{''.join(_block(inner, drawings) for inner in blocks)}</section>\n"
        case _:
            return ""


def _table(table: Table) -> Iterator[str]:
    yield '<div class="table"><table><thead><tr>'
    for name in table.header:
        yield f'<th scope="col">{escape(name)}</th>' if name else "<td></td>"
    yield "</tr></thead><tbody>"
    for row in table.rows:
        yield f"<tr>{''.join(f'<td>{_text(cell)}</td>' for cell in row)}</tr>"
    yield "</tbody></table></div>\n"


def _text(text: Text) -> str:
    if isinstance(text, str):
        return escape(text)
    found = []
    for run in text:
        words = escape(run.text)
        words = f"<em>{words}</em>" if run.italic else words
        found.append(f"<strong>{words}</strong>" if run.bold else words)
    return "".join(found)
