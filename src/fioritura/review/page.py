"""A review as HTML: the blocks of its pages as elements, alone (`review_body`) or as one file that needs no other."""

from __future__ import annotations

import re
from importlib.resources import files
from typing import Any, Final

from markupsafe import Markup

from fioritura.html import templates_of
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.fonts import MUSIC_SIGNS, sign_font_css
from fioritura.notation.engraving.page import Block
from fioritura.notation.engraving.svg import described
from fioritura.review.document import ReviewSheet, review_blocks, title_of
from fioritura.words import language_tag, message, say

__all__ = ["review_body", "review_page", "review_style"]

_IDS: Final = re.compile(r' id="s\d+-[^"]*"')
_SIZE: Final = re.compile(r' width="[\d.]+mm" height="[\d.]+mm"')
_SCREEN_SCALE: Final = 1.4
_USED: Final = re.compile(r"(id=\"|href=\"#)(E[0-9A-F]+-)")


def review_page(sheet: ReviewSheet) -> str:
    """The review as one HTML file, with its style, its music and the signs that the music needs."""
    body = review_body(sheet)
    signs = frozenset(char for char in body if char in MUSIC_SIGNS or "\ue000" <= char <= "\uf8ff")
    style = f"{sign_font_css(signs)}\n{review_style()}" if signs else review_style()
    return _rendered("page.html", title=title_of(sheet), language=language_tag(), style=Markup(style), body=body)


def review_body(sheet: ReviewSheet) -> Markup:
    """The review as one `<article class="review">`, for a page that has `review_style`."""
    return _rendered("body.html", blocks=review_blocks(sheet), drawing=_Drawings().drawing, kind=_kind)


def review_style() -> str:
    """The style sheet of `review_body`."""
    return files("fioritura.review").joinpath("page.css").read_text(encoding="utf-8")


def _rendered(template: str, **values: Any) -> Markup:
    return Markup(templates_of("fioritura.review").get_template(template).render(values))


def _kind(block: Block) -> str:
    return type(block).__name__


class _Drawings:
    """Drawings as they stand in a page: as wide as in print, or as the screen is, with ids that come once only."""

    def __init__(self) -> None:
        self.count = 0

    def drawing(self, system: System) -> Markup:
        """The next drawing."""
        self.count += 1
        svg = _USED.sub(rf"\g<1>r{self.count}-\g<2>", _SIZE.sub("", _IDS.sub("", system.svg)))
        if "role=" not in svg[: svg.index(">")]:
            name = say(message("music-from-bar", bar=str(system.first_bar)) if system.first_bar else message("music"))
            svg = described(svg, name, system.words)
        return Markup(svg.replace("<svg ", f'<svg style="max-width:{_SCREEN_SCALE * system.width_mm:.0f}mm" ', 1))
