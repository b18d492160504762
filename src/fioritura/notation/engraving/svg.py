"""From the engraver's SVG to one that prints and embeds alike everywhere.

The engraver's page is stripped to its drawing: no style sheet, no nested images, text in the page's own faces,
chord symbols set properly, and the wind effects that the engraver leaves out drawn in. Lengths in here are the
engraver's drawing units, of which a staff is `STAFF_UNITS` high; y runs downwards.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Final, Literal, NamedTuple
from xml.sax.saxutils import escape

from lxml import etree

from fioritura.errors import ToolError
from fioritura.notation.chord_text import chord_pieces
from fioritura.notation.engraving.extent import vertical_extent
from fioritura.notation.engraving.fonts import MUSIC_SIGNS, SIGN_FONT, TEXT_FONT, plain_signs, sign_font_css
from fioritura.notation.written_part import clean

__all__ = [
    "LABEL_CLASS",
    "LABEL_PADDING",
    "STAFF_UNITS",
    "Drawing",
    "Effect",
    "described",
    "dressed",
    "standalone",
    "to_svg",
    "with_text_above",
]

STAFF_UNITS: Final = 720
"""Height of a five-line staff in drawing units."""

LABEL_CLASS: Final = "figure"
"""Class of the group of a label above the staff."""

LABEL_PADDING: Final = "\N{NO-BREAK SPACE}" * 2
"""Stands after a label while it is laid out, so that the next one keeps its distance."""

Effect = Literal["scoop", "falloff", "doit"]

_QUOTE: Final = {'"': "&quot;"}
_SPACES: Final = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
_FACES: Final = f"'{TEXT_FONT}', 'Times New Roman', Times, serif"
_WEIGHTS: Final = {"harm": "600", "tempo": "600", "voltaBracket": "600"}
_NUMBER_SIZE: Final = 0.95
_ITALIC: Final = frozenset({"dir", "dynam"})
_TEXT_PER_MUSIC_SIZE: Final = 0.5625
_OVER_CHORDS: Final = ("harm", "voltaBracket", "tempo")
_CLEARANCE: Final = 80
_ASCENT: Final = 0.8
_DESCENT: Final = 0.28
_CURVE_DEPTH: Final = 360
_HEAD_WIDTH: Final = 212
_DOT_WIDTH: Final = 150

_PAGE: Final = re.compile(
    r'class="definition-scale"[^>]* viewBox="0 0 (?P<width>[\d.]+) [\d.]+"[^>]*>'
    r'<g class="page-margin" transform="(?P<margin>[^"]*)">(?P<content>.*)</g></svg></svg>',
    re.DOTALL,
)
_GLYPH: Final = re.compile(r'<g id="([0-9A-F]+)-\w+">(.*?)</g>')
_USE: Final = re.compile(r'href="#([0-9A-F]+)-\w+"')
_SYSTEM: Final = re.compile(r'(?=<g [^>]*class="system">)')
_STAFF: Final = re.compile(r'class="staff"><path [^>]*?\bd="M(-?[\d.]+) (-?[\d.]+)')
_TEXT: Final = re.compile(
    r'(?P<group><g (?:id="[^"]*" )?class="(?P<class>[^"]*)")>(?P<text><text\b.*?</text>)', re.DOTALL
)
_SIGN_SPAN: Final = re.compile(rf'font-family="{SIGN_FONT}">([^<]*)<')
_GROUP_TAG: Final = re.compile(r"<g\b|</g>")
_HEAD: Final = re.compile(r'class="notehead"><use [^>]*translate\((-?[\d.]+), *(-?[\d.]+)\)')
_LEFT: Final = re.compile(r"<use [^>]*translate\((-?[\d.]+),")
_CURVE_START: Final = re.compile(r'<path class="(?:scoop|falloff|doit)" d="M-?[\d.]+ (-?[\d.]+)')

_CLEANING: Final = tuple(
    (re.compile(pattern), words)
    for pattern, words in (
        (r' id="[^"-]*"', ""),
        (r" id-\w+", ""),
        (r'<g class="[^"]*\bplaceholder\b[^"]*"><ellipse [^>]*/></g>', ""),
        (r"<(?:g|text)(?: [^>]*)?/>", ""),
        (r'<(path|polygon|polyline|rect|ellipse) (?![^>]* stroke=")', r'<\1 stroke="currentColor" '),
    )
)
"""What is changed in a system's drawing; ids of the music have a hyphen, the engraver's own have none."""

_CURVES: Final[Mapping[Effect, str]] = {
    "scoop": "m-290 220c90 -10 200 -70 250 -190",
    "falloff": "m45 10c110 0 190 120 230 330",
    "doit": "m45 -10c110 0 190 -120 230 -330",
}
"""Curves drawn at a note head: from its left edge (scoop) or its right edge (fall, doit)."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing in engraver's units: SVG elements, the left end and the top edge of their staff and of all, its size."""

    content: str
    left: float
    top: float
    width: float
    height: float


class _Run(NamedTuple):
    """A piece of text in one size (units), style and weight, `raised` above its line."""

    text: str
    size: float
    style: str = "normal"
    weight: str = "400"
    raised: float = 0.0


def dressed(page: str, effects: Mapping[str, Sequence[Effect]], name: str) -> list[Drawing]:
    """The systems on one of the engraver's pages, each made self-contained.

    `effects` lists wind effects by note id; `name` tells the glyphs of the drawings from those of others.

    Raises:
        ToolError: the page is not as the engraver draws one.
    """
    found = _PAGE.search(page)
    if found is None:
        raise ToolError("engraver-page-unread")
    glyphs = dict(_GLYPH.findall(page, 0, found.start()))
    width, opening = float(found["width"]), f'<g class="page-margin" transform="{found["margin"]}">'
    drawings = []
    for number, system in enumerate(map(_cleaned, _SYSTEM.split(found["content"])[1:])):
        suffix = f"{name}-{number}"
        top, bottom = vertical_extent(system, glyphs)
        used = sorted(set(_USE.findall(system)))
        defs = "".join(f'<g id="{glyph}-{suffix}">{glyphs[glyph]}</g>' for glyph in used)
        music = _USE.sub(rf'href="#\g<1>-{suffix}"', system)
        for note, curves in effects.items():
            music = _with_effects(music, note, curves)
        staff = _STAFF.search(music)
        left, staff_top = (float(staff[1]), float(staff[2])) if staff else (0.0, 0.0)
        texts = list(_texts(music))
        lift = _chord_lift(texts, staff_top)
        music = _with_texts(music, texts, lift)
        top = min([top, *(text.y - _ASCENT * text.size for text in texts)]) - lift.height
        bottom = max([bottom, *(text.y + _DESCENT * text.size for text in texts), *_curve_depths(music)])
        content = f'<g fill="currentColor"><defs>{defs}</defs>{opening}{music}</g></g>'
        drawings.append(Drawing(content, left, top, width, bottom - top))
    return drawings


def with_text_above(drawing: Drawing, words: str, size: float) -> Drawing:
    """The drawing made higher by a line over its top, which begins at the left end of the staff."""
    height = size * 1.6
    top = drawing.top - height
    runs = [_Run(words, size, weight=_WEIGHTS["tempo"])]
    line = _text_svg(drawing.left, top + size, runs)
    content = drawing.content.removesuffix("</g>") + line + "</g>"
    return replace(drawing, content=content, top=top, height=drawing.height + height)


def to_svg(drawings: Sequence[Drawing], gap: float, mm_per_unit: float) -> str:
    """One SVG with the drawings one below the other, `gap` units apart, sized in millimetres; no background."""
    width = max(drawing.width for drawing in drawings)
    height = sum(drawing.height for drawing in drawings) + gap * (len(drawings) - 1)
    size = f'width="{width * mm_per_unit:.3f}mm" height="{height * mm_per_unit:.3f}mm" viewBox="0 0 {width:g} {height:g}"'
    parts = [f"<svg {_SPACES} {size}>"]
    y = 0.0
    for drawing in drawings:
        parts.append(f'<g transform="translate(0 {y - drawing.top:g})">{drawing.content}</g>')
        y += drawing.height + gap
    return "".join((*parts, "</svg>"))


def standalone(svg: str) -> str:
    """The SVG with the signs it uses inside text embedded as a font, for a viewer that has only its own fonts.

    Raises:
        ToolError: the engraver's package holds no music font.
    """
    signs = frozenset(char for words in _SIGN_SPAN.findall(svg) for char in words)
    if not signs:
        return svg
    start = svg.index(">") + 1
    return f"{svg[:start]}<style>{sign_font_css(signs)}</style>{svg[start:]}"


def described(svg: str, name: str, words: str) -> str:
    """The SVG as an image for who can't see it: its short name, if there is one, and what it shows (WAI-ARIA 1.2).

    `words` go into `desc` (SVG 1.1), which no browser shows when the pointer is over the drawing.
    """
    label = f' aria-label="{escape(clean(name), _QUOTE)}"' if name else ""
    start = svg.index(">")
    told = f"<desc>{escape(clean(words))}</desc>" if words else ""
    return f'{svg[:start]} role="img"{label}>{told}{svg[start + 1 :]}'


def _cleaned(system: str) -> str:
    """Without the engraver's own ids and hidden and empty parts; each line with the stroke of its style sheet."""
    for pattern, words in _CLEANING:
        system = pattern.sub(words, system)
    return system


# --- Text ------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Text:
    """A text set anew in its group: where both stand in the drawing's source, and how high and large the text is."""

    start: int
    end: int
    opening: str
    role: str
    types: tuple[str, ...]
    y: float
    runs: tuple[_Run, ...]
    svg: str

    @property
    def size(self) -> float:
        """The largest font size in it."""
        return max(run.size for run in self.runs)


class _Lift(NamedTuple):
    """What stands at `line` or above it rises by `height`."""

    line: float
    height: float


def _texts(music: str) -> Iterator[_Text]:
    """The texts of a system: one level of runs, page faces, signs in the sign font."""
    for found in _TEXT.finditer(music):
        role, *types = found["class"].split()
        text = etree.fromstring(found["text"])
        runs = _reset_runs(text, role, types)
        if runs:
            x, y = float(text.get("x", "0")), float(text.get("y", "0"))
            anchor = "start" if role == "mNum" else text.get("text-anchor", "start")
            svg = _text_svg(x, y, runs, anchor)
            yield _Text(found.start(), found.end(), found["group"], role, tuple(types), y, tuple(runs), svg)


def _with_texts(music: str, texts: Sequence[_Text], lift: _Lift) -> str:
    """The system with its texts set anew, and those over the chord symbols raised with them."""
    parts: list[str] = []
    place = 0
    for text in texts:
        rises = lift.height > 0.0 and text.role in _OVER_CHORDS and text.y <= lift.line
        raised = f' transform="translate(0 {-lift.height:g})"' if rises else ""
        parts += (music[place : text.start], f"{text.opening}{raised}>", text.svg)
        place = text.end
    return "".join((*parts, music[place:]))


def _chord_lift(texts: Sequence[_Text], staff_top: float) -> _Lift:
    """How far the chord symbols of the top staff must rise to stand clear above its labels."""
    line = min((text.y for text in texts if text.role == "harm"), default=staff_top)
    labels = (text.y - 0.75 * text.size for text in texts if LABEL_CLASS in text.types and text.y < staff_top)
    height = line - min(labels, default=staff_top) + _CLEARANCE
    return _Lift(line, height if line < staff_top and height > 0.0 else 0.0)


def _reset_runs(text: etree._Element, role: str, types: Sequence[str]) -> list[_Run]:
    style = "italic" if role in _ITALIC and "sign" not in types else "normal"
    runs = _with_plain_signs(list(_runs(text, 0.0, style, _WEIGHTS.get(role, "400"))))
    if not runs:
        return []
    words = "".join(run.text for run in runs)
    if role == "harm":
        size = runs[0].size
        runs = [
            _Run(piece.text, size * piece.size, weight=_WEIGHTS["harm"], raised=size * piece.raised)
            for piece in chord_pieces(words)
        ]
    elif role == "voltaBracket" and words.isdecimal():
        runs = [runs[0]._replace(text=f"{words}.")]
    elif LABEL_CLASS in types:
        runs[-1] = runs[-1]._replace(text=runs[-1].text.removesuffix(LABEL_PADDING))
    elif role == "mNum":
        runs = [run._replace(size=run.size * _NUMBER_SIZE) for run in runs]
    return runs


def _with_plain_signs(runs: Sequence[_Run]) -> list[_Run]:
    """Musical signs as Unicode characters, in the size of the words around them (the music font's is larger)."""
    words = [run.size for run in runs if not _is_sign(run.text[0])]
    changed = []
    for run in runs:
        text = plain_signs(run.text)
        is_music_size = text != run.text and _is_sign(run.text[0])
        size = (words[0] if words else run.size * _TEXT_PER_MUSIC_SIZE) if is_music_size else run.size
        changed.append(run._replace(text=text, size=size))
    return changed


def _runs(element: etree._Element, size: float, style: str, weight: str) -> Iterator[_Run]:
    """The runs below a text element, each with the size, style and weight it inherits."""
    size = float((element.get("font-size") or f"{size}").removesuffix("px"))
    style = element.get("font-style") or style
    weight = {"bold": "700", "normal": "400"}.get(element.get("font-weight", ""), weight)
    if element.text and size:
        yield _Run(element.text, size, style, weight)
    for child in element:
        yield from _runs(child, size, style, weight)


def _text_svg(x: float, y: float, runs: Sequence[_Run], anchor: str = "start") -> str:
    """A text element; its runs follow one another.

    Each run has its own y, which makes it a text chunk of its own: else a renderer that looks for one font with
    all characters of the chunk takes a lighter face for a chord symbol because that face has a flat sign too.
    """
    spans: list[str] = []
    for run in runs:
        for is_sign, chars in groupby(run.text, _is_sign):
            place = f' y="{y - run.raised:g}"' if anchor == "start" and spans else ""
            if is_sign:
                face = f' font-family="{SIGN_FONT}"'
            else:
                weight = f' font-weight="{run.weight}"' if run.weight != "400" else ""
                face = weight + (f' font-style="{run.style}"' if run.style != "normal" else "")
            spans.append(f'<tspan font-size="{run.size:g}"{place}{face}>{escape("".join(chars))}</tspan>')
    anchored = f' text-anchor="{anchor}"' if anchor != "start" else ""
    return f'<text x="{x:g}" y="{y:g}" font-family="{_FACES}" stroke="none"{anchored}>{"".join(spans)}</text>'


def _is_sign(char: str) -> bool:
    return char in MUSIC_SIGNS or "\ue000" <= char <= "\uf8ff"


# --- Wind effects ------------------------------------------------------------------------------------------------------


def _with_effects(music: str, note: str, effects: Sequence[Effect]) -> str:
    """The system with scoops, falls and doits drawn at the head of a note, if the note stands here."""
    start = music.find(f'<g id="{note}" ')
    if start < 0:
        return music
    end = _group_end(music, start)
    group = music[start:end]
    curves = "".join(_curve(group, effect) for effect in effects)
    return music[:end] + curves + music[end:]


def _group_end(music: str, start: int) -> int:
    """Where the end tag of the group that begins at `start` stands."""
    depth = 0
    for tag in _GROUP_TAG.finditer(music, start):
        depth += 1 if tag[0] == "<g" else -1
        if not depth:
            return tag.start()
    raise ToolError("engraver-drawing-damaged")


def _curve(note: str, effect: Effect) -> str:
    head = _HEAD.search(note)
    if head is None:
        return ""
    x, y = float(head[1]), float(head[2])
    if effect == "scoop":
        x = min(float(left) for left in _LEFT.findall(note))
    else:
        x += _HEAD_WIDTH + (_DOT_WIDTH if 'class="dots"' in note else 0)
    return (
        f'<path class="{effect}" d="M{x:g} {y:g}{_CURVES[effect]}" fill="none" stroke="currentColor" '
        'stroke-width="30" stroke-linecap="round"/>'
    )


def _curve_depths(music: str) -> Iterator[float]:
    """How far down the curves drawn here may reach."""
    for y in _CURVE_START.findall(music):
        yield float(y) + _CURVE_DEPTH
