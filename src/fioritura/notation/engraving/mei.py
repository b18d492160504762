"""MusicXML through the engraver's own importer into MEI, dressed for the page.

What the importer leaves out is carried over here: the ids of labels and chord symbols, wind effects (returned by
note id, to be drawn later), and the signs of shakes, vibrato and rolls. Labels are made small. The opening tempo
mark is taken out, to be set above the first system rather than between the chord symbols and the staff. A label is
a slanted direction that has no effect on playing. Element names: MEI 5, MusicXML 4.0.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count
from typing import TYPE_CHECKING, Final

from lxml import etree

from fioritura.errors import ToolError
from fioritura.notation.engraving.svg import LABEL_CLASS, LABEL_PADDING, Effect, joined_words
from fioritura.words import message

if TYPE_CHECKING:
    import verovio

__all__ = ["MeiBar", "Piece", "read_piece", "with_breaks"]

_MEI: Final = "{http://www.music-encoding.org/ns/mei}"
_XML_ID: Final = "{http://www.w3.org/XML/1998/namespace}id"
_LABEL_SIZE: Final = "80%"
_CHORD_SIZE: Final = "112%"
_EFFECTS: Final[tuple[Effect, ...]] = ("scoop", "plop", "falloff", "doit")
_SIGNS: Final = {"shake": "\ue59d\ue59d\ue59d", "wavy-line": "\ueaa4\ueaa4\ueaa4", "other-ornament": "~"}
"""Signs above a note, in SMuFL: a zigzag for a shake, a smooth wave for vibrato; a tilde for a roll."""

_LABEL_MARK: Final = "figure:"
"""Begins the font family of a label on its way through the importer, which keeps no ids of directions."""

_CLOSING_JUMPS: Final = frozenset({"dacapo", "dalsegno", "fine", "tocoda"})
"""The importer's types of words that stand at the end of a bar: they end at its bar line."""

_SECTION_ENDS: Final = frozenset({"dbl", "end", "rptend", "rptboth"})


@dataclass(frozen=True, slots=True)
class MeiBar:
    """What the choice of systems needs to know of a bar: its number, whether it is a full bar with a number of its
    own (else `number` is that of the bar after it), and what stands at its bar lines."""

    number: str
    is_full: bool
    begins_system: bool
    ends_section: bool


@dataclass(frozen=True)
class Piece:
    """A piece ready for layout: its MEI, its bars, its opening tempo mark, and wind effects by note id."""

    mei: etree._Element
    bars: tuple[MeiBar, ...]
    staff_count: int
    tempo: str
    effects: dict[str, list[Effect]]


def read_piece(toolkit: verovio.toolkit, musicxml: bytes) -> Piece:
    """The piece in a MusicXML document.

    Raises:
        ToolError: the engraver can't read the document; its own words are given.
    """
    score = _parsed(musicxml)
    effects, signs = _note_signs(score)
    _mark_labels(score)
    _drop_unprinted_degrees(score)
    toolkit.setOptions({"breaks": "none"})
    if not toolkit.loadData(etree.tostring(score, encoding="unicode")):
        raise ToolError("engraver-can-not-read", reason=toolkit.getLog().strip() or message("no-reason-given"))
    mei = etree.fromstring(toolkit.getMEI().encode(), etree.XMLParser(collect_ids=False))
    measures = list(mei.iter(f"{_MEI}measure"))
    if not measures:
        raise ToolError("engraver-no-bars")
    begins = _take_breaks(mei)
    tempo = _take_tempo(measures[0])
    _set_directions(mei)
    _set_chords(mei, score)
    _add_signs(mei, signs)
    first = measures[0]
    if len(first.findall(f"{_MEI}staff")) == 1:
        for name in list(mei.iter(f"{_MEI}label", f"{_MEI}labelAbbr")):
            _remove(name)
    return Piece(
        mei=mei,
        bars=tuple(_bars(measures, begins)),
        staff_count=len(first.findall(f"{_MEI}staff")),
        tempo=tempo,
        effects=effects,
    )


def with_breaks(piece: Piece, starts: list[int]) -> str:
    """The piece's MEI as text, with a page break before each bar of `starts` but the first.

    A system that begins with a bar without a number, the second half of a bar that a repeat sign divides, bears
    the number of the bar that follows.
    """
    for old in list(piece.mei.iter(f"{_MEI}pb", f"{_MEI}mNum")):
        _remove(old)
    measures = list(piece.mei.iter(f"{_MEI}measure"))
    for start in starts:
        if start:
            place = measures[start]
            if not place.get("n", "").isdecimal():
                etree.SubElement(place, f"{_MEI}mNum").text = piece.bars[start].number
            parent = place.getparent()
            if parent is not None and parent.tag == f"{_MEI}ending" and parent[0] is place:
                place = parent
            place.addprevious(etree.Element(f"{_MEI}pb"))
    return etree.tostring(piece.mei, encoding="unicode")


def _parsed(musicxml: bytes) -> etree._Element:
    parser = etree.XMLParser(resolve_entities=False, no_network=True, load_dtd=False)
    try:
        return etree.fromstring(musicxml, parser)
    except etree.XMLSyntaxError as error:
        raise ToolError("engraver-music-damaged", reason=str(error)) from None


def _note_signs(score: etree._Element) -> tuple[dict[str, list[Effect]], dict[str, str]]:
    """Effects and signs above by note id; notes that need an id for it are given one."""
    effects: dict[str, list[Effect]] = {}
    signs: dict[str, str] = {}
    fresh = (f"marked-{number}" for number in count(1))
    for notations in score.iter("notations"):
        found = [effect for effect in _EFFECTS if notations.find(f"articulations/{effect}") is not None]
        sign = next((name for name in _SIGNS if _begins(notations.find(f"ornaments/{name}"))), None)
        note = notations.getparent()
        if note is None or not (found or sign):
            continue
        ident = note.get("id") or next(fresh)
        note.set("id", ident)
        if found:
            effects[ident] = found
        if sign:
            signs[ident] = _SIGNS[sign]
            _drop(notations, f"ornaments/{sign}")
    return effects, signs


def _drop(parent: etree._Element, path: str) -> None:
    for element in parent.findall(path):
        _remove(element)


def _drop_unprinted_degrees(score: etree._Element) -> None:
    """Verovio prints every degree of a chord symbol, also one that the symbol's own text holds already."""
    for degree in list(score.iter("degree")):
        if degree.get("print-object") == "no":
            _remove(degree)


def _mark_labels(score: etree._Element) -> None:
    for direction in score.iter("direction"):
        if direction.find("sound") is None:
            for words in direction.iter("words"):
                if words.get("font-style") == "italic" and words.get("font-weight") != "bold":
                    words.set("font-family", _LABEL_MARK + words.get("id", ""))


def _begins(sign: etree._Element | None) -> bool:
    return sign is not None and sign.get("type", "start") == "start"


def _take_breaks(mei: etree._Element) -> set[str]:
    """Remove page and system breaks; the ids of the bars that followed one."""
    begins: set[str] = set()
    pending = False
    for element in list(mei.iter(f"{_MEI}sb", f"{_MEI}pb", f"{_MEI}measure")):
        if element.tag != f"{_MEI}measure":
            pending = True
            _remove(element)
        else:
            if pending:
                begins.add(element.get(_XML_ID, ""))
            pending = False
    return begins


def _take_tempo(measure: etree._Element) -> str:
    """Remove the tempo marks at the start of a bar; their text, its signs in Unicode."""
    texts = []
    for tempo in measure.findall(f"{_MEI}tempo"):
        if float(tempo.get("tstamp", "1")) <= 1.0:
            texts.append(joined_words(_texts(tempo)))
            _remove(tempo)
    return "  ".join(texts)


def _texts(element: etree._Element) -> Iterator[str]:
    for text in element.itertext():
        yield str(text)


def _set_directions(mei: etree._Element) -> None:
    """Labels small, words of repetition flush with the bar line."""
    for direction in mei.iter(f"{_MEI}dir"):
        for rend in direction.findall(f"{_MEI}rend"):
            if direction.get("type") in _CLOSING_JUMPS:
                rend.set("halign", "right")
                rend.set("fontweight", "bold")
            family = rend.get("fontfam", "")
            if family.startswith(_LABEL_MARK):
                del rend.attrib["fontfam"]
                rend.set("fontsize", _LABEL_SIZE)
                rend.text = (rend.text or "") + LABEL_PADDING
                direction.set("type", LABEL_CLASS)
                direction.set(_XML_ID, family.removeprefix(_LABEL_MARK) or direction.get(_XML_ID, ""))


def _set_chords(mei: etree._Element, score: etree._Element) -> None:
    """Chord symbols a little larger than other text, under the ids that they have in the MusicXML."""
    names = {
        str(number): [harmony.get("id", "") for harmony in part.iter("harmony")]
        for number, part in enumerate(score.iter("part"), start=1)
    }
    harms: dict[str, list[etree._Element]] = {}
    for harm in mei.iter(f"{_MEI}harm"):
        harms.setdefault(harm.get("staff", ""), []).append(harm)
        rend = etree.Element(f"{_MEI}rend", fontsize=_CHORD_SIZE)
        rend.text = "".join(_texts(harm))
        for child in list(harm):
            harm.remove(child)
        harm.text = None
        harm.append(rend)
    for staff, found in harms.items():
        if len(names.get(staff, ())) == len(found):
            for harm, name in zip(found, names[staff], strict=True):
                if name:
                    harm.set(_XML_ID, name)


def _add_signs(mei: etree._Element, signs: dict[str, str]) -> None:
    for note in list(mei.iter(f"{_MEI}note")) if signs else []:
        ident = note.get(_XML_ID, "")
        if ident not in signs:
            continue
        measure = next(note.iterancestors(f"{_MEI}measure"))
        staff = next(note.iterancestors(f"{_MEI}staff"))
        place = {"place": "above", "startid": f"#{ident}", "staff": staff.get("n", "1"), "type": "sign"}
        sign = etree.Element(f"{_MEI}dir", place)
        measure.insert(len(measure.findall(f"{_MEI}staff")), sign)
        rend = etree.SubElement(sign, f"{_MEI}rend")
        if signs[ident] != "~":
            rend.set("glyph.auth", "smufl")
        rend.text = signs[ident]


def _bars(measures: list[etree._Element], begins: set[str]) -> Iterator[MeiBar]:
    for measure, following in zip(measures, [*measures[1:], None], strict=True):
        opens_next = following is not None and following.get("left") == "rptstart"
        number = measure.get("n", "")
        has_number = number.isdecimal()
        yield MeiBar(
            number=number if has_number or following is None else following.get("n", ""),
            is_full=has_number and number != "0",
            begins_system=measure.get(_XML_ID, "") in begins,
            ends_section=opens_next or measure.get("right") in _SECTION_ENDS,
        )


def _remove(element: etree._Element) -> None:
    parent = element.getparent()
    if parent is not None:
        parent.remove(element)
