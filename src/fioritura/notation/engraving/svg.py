"""From the engraver's SVG to one that prints and embeds alike everywhere.

The engraver's page is stripped to its drawing: no style sheet, no nested images, text in the page's own faces,
chord symbols set properly, and the wind effects that the engraver leaves out drawn in. Lengths in here are the
engraver's drawing units, of which a staff is `STAFF_UNITS` high; y runs downwards.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Final, Literal

from lxml import etree

from fioritura.notation.chord_text import chord_pieces
from fioritura.notation.engraving.fonts import MUSIC_SIGNS, SIGN_FONT, TEXT_FONT, plain_signs, sign_font_css

__all__ = [
    "LABEL_CLASS",
    "LABEL_PADDING",
    "STAFF_UNITS",
    "Drawing",
    "Effect",
    "dress",
    "joined_words",
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

Effect = Literal["scoop", "plop", "falloff", "doit"]

_SVG: Final = "{http://www.w3.org/2000/svg}"
_EMPTY: Final = '<{} xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"/>'
_FACES: Final = f"'{TEXT_FONT}', 'Times New Roman', Times, serif"
_LINES: Final = tuple(_SVG + name for name in ("path", "polygon", "polyline", "rect", "ellipse"))
_WEIGHTS: Final = {"harm": "600", "tempo": "600", "reh": "700", "voltaBracket": "600"}
_SIZES: Final = {"mNum": 0.95}
_ITALIC: Final = frozenset({"dir", "dynam"})
_DOT: Final = "\N{MUSICAL SYMBOL COMBINING AUGMENTATION DOT}"
_TEXT_PER_MUSIC_SIZE: Final = 0.5625
_OVER_CHORDS: Final = frozenset({"harm", "voltaBracket", "reh", "tempo"})
_CLEARANCE: Final = 80
_ASCENT: Final = 0.8
_DESCENT: Final = 0.28
_CURVE_DEPTH: Final = 360
_HEAD_WIDTH: Final = 212
_DOT_WIDTH: Final = 150

_CURVES: Final[Mapping[Effect, str]] = {
    "scoop": "m-290 220c90 -10 200 -70 250 -190",
    "plop": "m-270 -330c10 150 90 270 230 310",
    "falloff": "m45 10c110 0 190 120 230 330",
    "doit": "m45 -10c110 0 190 -120 230 -330",
}
"""Curves drawn at a note head: from its left edge (scoop, plop) or its right edge (fall, doit)."""


@dataclass(frozen=True)
class Drawing:
    """A drawing in engraver's units: its elements, its top edge, and its size."""

    content: etree._Element
    top: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class _Run:
    """A piece of text in one size (units), style and weight, `raised` above its line."""

    text: str
    size: float
    style: str = "normal"
    weight: str = "400"
    raised: float = 0.0


def dress(page: str, effects: Mapping[str, Sequence[Effect]]) -> Drawing:
    """The drawing on one of the engraver's pages, made self-contained; `effects` lists wind effects by note id."""
    root = etree.fromstring(page.encode())
    inner = root.find(f"{_SVG}svg")
    canvas = root if inner is None else inner
    _, _, width, height = (float(part) for part in canvas.get("viewBox", "0 0 0 0").split())
    content = etree.fromstring(_EMPTY.format("g"))
    content.set("fill", "currentColor")
    content.extend(canvas.findall(f"{_SVG}g"))
    _strip(content)
    for text in list(content.iter(f"{_SVG}text")):
        _reset_text(text)
    if effects:
        for group in list(content.iter(f"{_SVG}g")):
            for effect in effects.get(group.get("id", ""), ()):
                _draw_effect(group, effect)
    top = min([0.0, *_text_tops(content)]) - _raise_chords(content)
    bottom = max([height, *_depths(content)])
    defs = root.find(f"{_SVG}defs")
    if defs is not None:
        content.insert(0, defs)
    return Drawing(content, top, width, bottom - top)


def with_text_above(drawing: Drawing, words: str, size: float) -> Drawing:
    """The drawing made higher by a line over its top, which begins at the left end of the staff."""
    height = size * 1.6
    top = drawing.top - height
    staff = next((group for group in drawing.content.iter(f"{_SVG}g") if group.get("class") == "staff"), None)
    x = _start(staff)[0] if staff is not None else 0.0
    drawing.content.append(_text_element(x, top + size, [_Run(plain_signs(words), size, weight=_WEIGHTS["tempo"])]))
    return replace(drawing, top=top, height=drawing.height + height)


def joined_words(parts: Iterable[str]) -> str:
    """The parts of a tempo mark as one text, its signs in Unicode (``"Swing ♩ = 126"``)."""
    return " ".join(word for part in parts for word in plain_signs(part).split()).replace(f" {_DOT}", _DOT)


def to_svg(drawings: Sequence[Drawing], gap: float, mm_per_unit: float) -> str:
    """One SVG with the drawings one below the other, `gap` units apart, sized in millimetres; no background."""
    width = max(drawing.width for drawing in drawings)
    height = sum(drawing.height for drawing in drawings) + gap * (len(drawings) - 1)
    root = etree.fromstring(_EMPTY.format("svg"))
    root.set("width", f"{width * mm_per_unit:.3f}mm")
    root.set("height", f"{height * mm_per_unit:.3f}mm")
    root.set("viewBox", f"0 0 {width:g} {height:g}")
    y = 0.0
    for drawing in drawings:
        group = etree.SubElement(root, f"{_SVG}g", transform=f"translate(0 {y - drawing.top:g})")
        group.append(drawing.content)
        y += drawing.height + gap
    return etree.tostring(root, encoding="unicode")


def standalone(svg: str) -> str:
    """The SVG with the signs it uses inside text embedded as a font, for a viewer that has only its own fonts.

    Raises:
        ToolError: the engraver's package holds no music font.
    """
    root = etree.fromstring(svg.encode())
    signs = frozenset(
        char for span in root.iter(f"{_SVG}tspan") if span.get("font-family") == SIGN_FONT for char in span.text or ""
    )
    if signs:
        style = etree.Element(f"{_SVG}style")
        style.text = sign_font_css(signs)
        root.insert(0, style)
    return etree.tostring(root, encoding="unicode")


def _strip(content: etree._Element) -> None:
    """Drop hidden and empty parts, and give each line the stroke that the engraver's style sheet gave it."""
    for element in list(content.iter()):
        parent = element.getparent()
        if parent is None:
            continue
        is_hidden = "placeholder" in (element.get("class") or "").split()
        if is_hidden or (element.tag in (f"{_SVG}g", f"{_SVG}text") and len(element) == 0):
            parent.remove(element)
        elif element.tag in _LINES and element.get("stroke") is None:
            element.set("stroke", "currentColor")


def _text_tops(content: etree._Element) -> Iterator[float]:
    """Upper edges of the texts."""
    for text in content.iter(f"{_SVG}text"):
        yield float(text.get("y", "0")) - _ASCENT * max(float(span.get("font-size", "0")) for span in text)


def _depths(content: etree._Element) -> Iterator[float]:
    """Lower edges of texts and of the curves drawn here."""
    for text in content.iter(f"{_SVG}text"):
        yield float(text.get("y", "0")) + _DESCENT * max(float(span.get("font-size", "0")) for span in text)
    for path in content.iter(f"{_SVG}path"):
        if path.get("class") in _CURVES:
            yield _top(path) + _CURVE_DEPTH


def _reset_text(text: etree._Element) -> None:
    """Set a text element anew: one level of runs, page faces, signs in the sign font."""
    group = text.getparent()
    if group is None:
        return
    role, *types = (group.get("class") or "").split() or [""]
    style = "italic" if role in _ITALIC and "sign" not in types else "normal"
    runs = _with_plain_signs(list(_runs(text, _Run("", 0.0, style, _WEIGHTS.get(role, "400")))))
    if not runs:
        group.remove(text)
        return
    words = "".join(run.text for run in runs)
    if role == "harm":
        size = runs[0].size
        runs = [
            _Run(piece.text, size * piece.size, weight=_WEIGHTS["harm"], raised=size * piece.raised)
            for piece in chord_pieces(words)
        ]
    elif role == "tempo":
        runs = [replace(runs[0], text=joined_words(run.text for run in runs))]
    elif role == "voltaBracket" and words.isdecimal():
        runs = [replace(runs[0], text=f"{words}.")]
    elif LABEL_CLASS in types:
        runs[-1] = replace(runs[-1], text=runs[-1].text.removesuffix(LABEL_PADDING))
    shrink = _SIZES.get(role, 1.0)
    runs = [replace(run, size=run.size * shrink) for run in runs]
    anchor = "start" if role == "mNum" else text.get("text-anchor", "start")
    group.replace(text, _text_element(float(text.get("x", "0")), float(text.get("y", "0")), runs, anchor))


def _with_plain_signs(runs: Sequence[_Run]) -> list[_Run]:
    """Musical signs as Unicode characters, in the size of the words around them (the music font's is larger)."""
    words = [run.size for run in runs if not _is_sign(run.text[0])]
    changed = []
    for run in runs:
        text = plain_signs(run.text)
        is_music_size = text != run.text and _is_sign(run.text[0])
        size = (words[0] if words else run.size * _TEXT_PER_MUSIC_SIZE) if is_music_size else run.size
        changed.append(replace(run, text=text, size=size))
    return changed


def _runs(element: etree._Element, outer: _Run) -> Iterator[_Run]:
    """The runs below a text element, each with the size, style and weight it inherits."""
    here = replace(
        outer,
        size=float((element.get("font-size") or f"{outer.size}").removesuffix("px")),
        style=element.get("font-style") or outer.style,
        weight={"bold": "700", "normal": "400"}.get(element.get("font-weight", ""), outer.weight),
    )
    if element.text and here.size:
        yield replace(here, text=element.text)
    for child in element:
        yield from _runs(child, here)


def _text_element(x: float, y: float, runs: Sequence[_Run], anchor: str = "start") -> etree._Element:
    """A text element; its runs follow one another.

    Each run has its own y, which makes it a text chunk of its own: else a renderer that looks for one font with
    all characters of the chunk takes a lighter face for a chord symbol because that face has a flat sign too.
    """
    text = etree.Element(f"{_SVG}text", {"x": f"{x:g}", "y": f"{y:g}", "font-family": _FACES, "stroke": "none"})
    if anchor != "start":
        text.set("text-anchor", anchor)
    for run in runs:
        for is_sign, chars in groupby(run.text, _is_sign):
            span = etree.SubElement(text, f"{_SVG}tspan")
            span.text = "".join(chars)
            span.set("font-size", f"{run.size:g}")
            if anchor == "start" and len(text) > 1:
                span.set("y", f"{y - run.raised:g}")
            if is_sign:
                span.set("font-family", SIGN_FONT)
                continue
            if run.weight != "400":
                span.set("font-weight", run.weight)
            if run.style != "normal":
                span.set("font-style", run.style)
    return text


def _is_sign(char: str) -> bool:
    return char in MUSIC_SIGNS or "\ue000" <= char <= "\uf8ff"


def _raise_chords(content: etree._Element) -> float:
    """Lift the chord symbols of the top staff, with what stands over them, clear above its labels; by how much."""
    groups = [(group, classes) for group in content.iter(f"{_SVG}g") if (classes := _classes(group))]
    staff_top = next((_top(group) for group, classes in groups if classes[0] == "staff"), 0.0)
    chord_line = min((_top(group) for group, classes in groups if classes[0] == "harm"), default=staff_top)
    label_tops = (
        _top(group) - 0.75 * float(span.get("font-size", "0"))
        for group, classes in groups
        if LABEL_CLASS in classes and _top(group) < staff_top
        for span in group.iter(f"{_SVG}tspan")
    )
    lift = chord_line - min(label_tops, default=staff_top) + _CLEARANCE
    if chord_line >= staff_top or lift <= 0.0:
        return 0.0
    for group, classes in groups:
        if classes[0] in _OVER_CHORDS and _top(group) <= chord_line:
            group.set("transform", f"translate(0 {-lift:g})")
    return lift


def _classes(element: etree._Element) -> list[str]:
    return (element.get("class") or "").split()


def _top(group: etree._Element) -> float:
    """The y of the first text or line in a group."""
    return _start(group)[1]


def _start(group: etree._Element) -> tuple[float, float]:
    """Where the first text or line in a group begins."""
    for element in group.iter(f"{_SVG}text", f"{_SVG}path", f"{_SVG}rect"):
        if element.get("y"):
            return float(element.get("x", "0")), float(element.get("y", "0"))
        found = re.match(r"M(-?[\d.]+) (-?[\d.]+)", element.get("d", ""))
        if found:
            return float(found[1]), float(found[2])
    return 0.0, float("inf")


def _draw_effect(note: etree._Element, effect: Effect) -> None:
    """Draw a scoop, plop, fall or doit at a note's head."""
    places = [_place(use) for use in note.iter(f"{_SVG}use")]
    heads = [_place(use) for head in note.iter(f"{_SVG}g") if head.get("class") == "notehead" for use in head]
    if not heads or not places:
        return
    x, y = heads[0]
    if effect in ("scoop", "plop"):
        x = min(place[0] for place in places)
    else:
        x += _HEAD_WIDTH + (_DOT_WIDTH if any(g.get("class") == "dots" for g in note.iter()) else 0)
    etree.SubElement(
        note,
        f"{_SVG}path",
        {
            "class": effect,
            "d": f"M{x:g} {y:g}{_CURVES[effect]}",
            "fill": "none",
            "stroke": "currentColor",
            "stroke-width": "30",
            "stroke-linecap": "round",
        },
    )


def _place(use: etree._Element) -> tuple[float, float]:
    found = re.match(r"translate\((-?[\d.]+),? *(-?[\d.]+)\)", use.get("transform", ""))
    return (float(found[1]), float(found[2])) if found else (0.0, 0.0)
