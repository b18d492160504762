"""Fonts for printed pages: a music font for signs inside text, and the text faces that are surely there.

The engraver draws notes as outlines but writes signs inside text (the accidentals of chord symbols, the note of a
tempo mark, dynamics) as characters of a music font that only a browser would find. `font_folder` takes that font
out of the engraver's package and adds to it the musical characters of Unicode (♭ ♯ ♮ ♩ and others), drawn with the
music font's own outlines at the size and height that suit running text. Code points: SMuFL 1.4 and the Unicode
blocks Miscellaneous Symbols and Musical Symbols.
"""

from __future__ import annotations

import base64
import re
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, NamedTuple
from zlib import crc32

from fioritura.errors import OutputError, ToolError
from fioritura.files import cache_folder, write_beside

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont

__all__ = [
    "ENGRAVING_FONT",
    "MUSIC_SIGNS",
    "SIGN_FONT",
    "TEXT_FONT",
    "font_folder",
    "plain_signs",
    "sign_font_css",
]

ENGRAVING_FONT: Final = "Leland"
"""The SMuFL font in which notes are drawn."""

TEXT_FONT: Final = "Libertinus Serif"
"""The text face: the typesetter carries it, in regular, semibold and bold, upright and italic."""

SIGN_FONT: Final = "Fioritura Signs"
"""The family name of the font of `font_folder`."""


class _Sign(NamedTuple):
    """A character of running text: its SMuFL source, its scale, and how far it is raised (units of 1/1000 em)."""

    smufl: int
    scale: float
    raised: float


_SIGNS: Final[dict[str, _Sign]] = {
    "♭": _Sign(0xE260, 1.15, 216),
    "♮": _Sign(0xE261, 1.08, 330),
    "♯": _Sign(0xE262, 1.05, 330),
    "\N{MUSICAL SYMBOL DOUBLE SHARP}": _Sign(0xE263, 1.1, 330),
    "\N{MUSICAL SYMBOL DOUBLE FLAT}": _Sign(0xE264, 1.15, 216),
    "\N{MUSICAL SYMBOL WHOLE NOTE}": _Sign(0xECA2, 0.78, 134),
    "\N{MUSICAL SYMBOL HALF NOTE}": _Sign(0xECA3, 0.78, 114),
    "♩": _Sign(0xECA5, 0.78, 114),
    "♪": _Sign(0xECA7, 0.78, 114),
    "\N{MUSICAL SYMBOL SIXTEENTH NOTE}": _Sign(0xECA9, 0.78, 114),
    "\N{MUSICAL SYMBOL COMBINING AUGMENTATION DOT}": _Sign(0xECB7, 0.78, 114),
    "\N{MUSICAL SYMBOL SEGNO}": _Sign(0xE047, 0.85, -40),
    "\N{MUSICAL SYMBOL CODA}": _Sign(0xE048, 0.85, 20),
}

MUSIC_SIGNS: Final = frozenset(_SIGNS)
"""The Unicode characters that are set in the sign font rather than in the text face."""

_PLAIN: Final = {chr(sign.smufl): char for char, sign in _SIGNS.items()} | {
    "\ued60": "♭",
    "\ued61": "♮",
    "\ued62": "♯",
    "\ued63": "\N{MUSICAL SYMBOL DOUBLE SHARP}",
    "\ued64": "\N{MUSICAL SYMBOL DOUBLE FLAT}",
    "\uea63": "\N{MUSICAL SYMBOL DOUBLE FLAT}",
    "\uea64": "♭",
    "\uea65": "♮",
    "\uea66": "♯",
    "\uea67": "\N{MUSICAL SYMBOL DOUBLE SHARP}",
}


def plain_signs(text: str) -> str:
    """`text` with SMuFL's private characters replaced by Unicode's own where there is one (U+EA64 to ``"♭"``)."""
    return "".join(_PLAIN.get(char, char) for char in text)


@lru_cache(maxsize=1)
def font_folder() -> Path:
    """The folder that holds the sign font, in the user's cache; made on first use.

    Its name tells the engraver's version and how the signs are drawn, so that an older font is never taken for it.

    Raises:
        ToolError: the engraver's package holds no music font, or the cache folder can't be written.
    """
    folder = cache_folder() / f"fonts-{_engraver_version()}-{crc32(repr(_SIGNS).encode()):08x}"
    target = folder / "FiorituraSigns.ttf"
    if not target.is_file():
        try:
            write_beside(target, _sign_font_bytes())
        except OutputError as error:
            raise ToolError("font-not-stored", reason=error.message, variable="XDG_CACHE_HOME") from None
    return folder


@lru_cache(maxsize=64)
def sign_font_css(characters: frozenset[str]) -> str:
    """A CSS ``@font-face`` rule that carries the sign font's glyphs for `characters` in WOFF2, for a lone SVG.

    Raises:
        ToolError: the engraver's package holds no music font.
    """
    from fontTools import subset

    font = _open_font((font_folder() / "FiorituraSigns.ttf").read_bytes())
    options = subset.Options()
    options.notdef_outline = True
    options.recalc_timestamp = False
    subsetter = subset.Subsetter(options)
    subsetter.populate(text="".join(sorted(characters)))
    subsetter.subset(font)
    font.flavor = "woff2"
    data = base64.b64encode(_saved(font)).decode("ascii")
    return f'@font-face{{font-family:"{SIGN_FONT}";src:url(data:font/woff2;base64,{data}) format("woff2")}}'


def _engraver_version() -> str:
    from importlib.metadata import version

    return version("verovio")


def _sign_font_bytes() -> bytes:
    """The engraver's music font, renamed, with the Unicode signs added to it."""
    font = _open_font(_engraver_font_bytes())
    glyphs = font.getGlyphSet()
    smufl_names = dict(font.getBestCmap())
    _add_full_unicode_table(font)
    for char, sign in _SIGNS.items():
        if sign.smufl not in smufl_names:
            raise ToolError("font-lacks-sign", font=ENGRAVING_FONT, sign=char)
        _add_glyph(font, glyphs, char, smufl_names[sign.smufl], sign)
    for record in font["name"].names:
        if record.nameID in (1, 3, 4, 16):
            record.string = SIGN_FONT
        elif record.nameID == 6:
            record.string = SIGN_FONT.replace(" ", "")
    return _saved(font)


def _add_glyph(font: TTFont, glyphs: Any, char: str, source: str, sign: _Sign) -> None:
    from fontTools.pens.transformPen import TransformPen
    from fontTools.pens.ttGlyphPen import TTGlyphPen

    em = font["head"].unitsPerEm / 1000
    pen = TTGlyphPen(None)
    glyphs[source].draw(TransformPen(pen, (sign.scale, 0, 0, sign.scale, 35 * em, sign.raised * em)))
    name = f"text.{source}"
    font["glyf"][name] = pen.glyph()
    font["hmtx"][name] = (round((glyphs[source].width * sign.scale) + 60 * em), round(35 * em))
    for table in font["cmap"].tables:
        if table.isUnicode() and (table.format == 12 or ord(char) <= 0xFFFF):
            table.cmap[ord(char)] = name


def _add_full_unicode_table(font: TTFont) -> None:
    """A character map that reaches beyond the first 65,536 code points, where most musical symbols stand."""
    from fontTools.ttLib.tables._c_m_a_p import CmapSubtable

    table = CmapSubtable.newSubtable(12)
    table.platformID, table.platEncID, table.language = 3, 10, 0
    table.cmap = dict(font.getBestCmap())
    font["cmap"].tables.append(table)


def _engraver_font_bytes() -> bytes:
    from importlib.util import find_spec

    spec = find_spec("verovio")
    style = Path(spec.origin).parent / "data" / f"{ENGRAVING_FONT}.css" if spec and spec.origin else None
    if style is None or not style.is_file():
        raise ToolError("font-not-found", font=ENGRAVING_FONT)
    found = re.search(r"base64,([A-Za-z0-9+/=]+)", style.read_text(encoding="utf-8"))
    if found is None:
        raise ToolError("font-empty", file=style.name)
    return base64.b64decode(found[1])


def _open_font(data: bytes) -> TTFont:
    from fontTools.ttLib import TTFont

    font = TTFont(BytesIO(data), recalcTimestamp=False)
    font.flavor = None
    if "FFTM" in font:
        del font["FFTM"]
    return font


def _saved(font: TTFont) -> bytes:
    out = BytesIO()
    font.save(out, reorderTables=None)
    return out.getvalue()
