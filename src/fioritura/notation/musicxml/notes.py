"""MusicXML elements of notes, grace notes and rests, with all that hangs on them.

Element names, orders and meanings are those of the W3C MusicXML 4.0 report; mind that its `mordent` is the sign
with the line (main note, lower, main) and its `inverted-mordent` the one without. An Irish roll has no element of
its own and is written as an `other-ornament`.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from lxml import etree

from fioritura.errors import OutputError
from fioritura.notation.accidentals import ACCIDENTAL_NAMES, AccidentalMemory
from fioritura.notation.rhythm import TYPE_NAMES, WrittenEvent
from fioritura.notation.written_part import WrittenPart, clean, slurs
from fioritura.theory.key import Key
from fioritura.theory.pitch import Pitch
from fioritura.tune import LEVEL_MARKS, Mark, Note, hairpins

__all__ = ["Element", "NoteWriter", "add", "slur_numbers"]

Element = etree._Element

_GRACE_CURVE: Final = "2"
"""Slur and slide number of grace notes; the line's own slurs take the others."""
_SLUR_NUMBERS: Final = (1, 3, 4, 5, 6)

_ARTICULATIONS: Final = {
    Mark.ACCENT: "accent",
    Mark.MARCATO: "strong-accent",
    Mark.STACCATO: "staccato",
    Mark.TENUTO: "tenuto",
    Mark.SCOOP: "scoop",
}
_WEDGES: Final = {Mark.CRESCENDO: "crescendo", Mark.DIMINUENDO: "diminuendo"}
_CLOSING_ARTICULATIONS: Final = {Mark.FALL: "falloff", Mark.DOIT: "doit", Mark.BREATH: "breath-mark"}
"""These belong to the end of a tied note."""
_ORNAMENTS: Final = {
    Mark.TRILL: "trill-mark",
    Mark.TURN: "turn",
    Mark.INVERTED_TURN: "inverted-turn",
    Mark.MORDENT: "mordent",
    Mark.INVERTED_MORDENT: "inverted-mordent",
    Mark.SHAKE: "shake",
}

_Sign = tuple[str, str | None, dict[str, str]]
"""An element's tag, text and attributes."""

SlurNumbers = Mapping[int, Sequence[tuple[str, int]]]


def add(parent: Element, tag: str, content: object = None, /, **attributes: str) -> Element:
    """Append an element with text `content`."""
    child = etree.SubElement(parent, tag, None, None, **attributes)
    if content is not None:
        child.text = str(content)
    return child


def slur_numbers(line: Sequence[Note]) -> dict[int, list[tuple[str, int]]]:
    """For each note number: the slurs that stop and start on it, as (type, number); unpaired signs are left out."""
    numbers: dict[int, list[tuple[str, int]]] = {}
    opened: list[tuple[int, int]] = []
    for start, stop in slurs(line):
        closing = {number for end, number in opened if end == start}
        opened = [(end, number) for end, number in opened if end > start]
        taken = {number for _, number in opened}
        free = [number for number in _SLUR_NUMBERS if number not in taken]
        if not free:
            continue
        number = next((number for number in free if number not in closing), free[0])
        opened.append((stop, number))
        numbers.setdefault(start, []).append(("start", number))
        numbers.setdefault(stop, []).append(("stop", number))
    return numbers


class NoteWriter:
    """Writes the notes of one staff in order; ids are ``"s1-n0"`` (note 0 of staff 1), with ``"-2"`` for the second
    tied piece and ``"-g1"`` for the first grace note."""

    def __init__(self, part: WrittenPart) -> None:
        self._staff = part.number
        self._shows_rests = part.staff.shows_rests
        self._slurs: SlurNumbers = slur_numbers(part.tune.notes)
        spans = list(hairpins(part.tune.notes))
        self._hairpin_starts = {start: kind for start, _, kind in spans}
        self._hairpin_stops = {stop for _, stop, _ in spans}
        self._accidentals = AccidentalMemory()
        self._inside_word = False

    def open_bar(self, key: Key) -> None:
        """Begin a bar in a written key."""
        self._accidentals.open_bar(key)

    def write(self, measure: Element, event: WrittenEvent) -> None:
        """Append a rest, or a note with its grace notes before it."""
        if event.note is None:
            self._rest(measure, event)
            return
        if event.piece == 0:
            self._dynamics(measure, event.note, event.index)
        self._graces(measure, event)
        name = self._id(event)
        element = add(measure, "note", id=name if event.piece == 0 else f"{name}-{event.piece + 1}")
        self._pitch(element, event.note.pitch)
        add(element, "duration", event.duration_ticks)
        if event.tied_from_before:
            add(element, "tie", type="stop")
        if event.ties_on:
            add(element, "tie", type="start")
        add(element, "voice", 1)
        _type(element, event)
        if event.tied_from_before:
            self._accidentals.carry(event.note.pitch)
        else:
            self._accidental(element, event.note.pitch)
        _time_modification(element, event)
        if Mark.GHOST in event.note.marks:
            add(element, "notehead", "normal", parentheses="yes")
        _beams(element, event.beams)
        self._notations(element, event)
        if event.note.lyric and event.piece == 0:
            self._lyric(element, event.note.lyric)
        if not event.ties_on and event.index in self._hairpin_stops:
            _wedge(measure, "stop")

    def _id(self, event: WrittenEvent) -> str:
        return f"s{self._staff}-n{event.index}"

    def _rest(self, measure: Element, event: WrittenEvent) -> None:
        element = add(measure, "note")
        if not self._shows_rests:
            element.set("print-object", "no")
        if event.fills_bar:
            add(element, "rest", measure="yes")
        else:
            add(element, "rest")
        add(element, "duration", event.duration_ticks)
        add(element, "voice", 1)
        if not event.fills_bar:
            _type(element, event)
        _time_modification(element, event)
        _tuplet_signs(element, event)

    def _graces(self, measure: Element, event: WrittenEvent) -> None:
        """One grace note is a slashed eighth, several are beamed sixteenths; they are slurred to their note."""
        graces = event.graces
        is_slide = _slides(event)
        for number, pitch in enumerate(graces, start=1):
            element = add(measure, "note", id=f"{self._id(event)}-g{number}")
            add(element, "grace", slash="yes" if len(graces) == 1 else "no")
            self._pitch(element, pitch)
            add(element, "voice", 1)
            add(element, "type", "eighth" if len(graces) == 1 else "16th")
            self._accidental(element, pitch)
            add(element, "stem", "up")
            if len(graces) > 1:
                state = "begin" if number == 1 else "end" if number == len(graces) else "continue"
                _beams(element, (state, state))
            if is_slide and number == len(graces):
                add(add(element, "notations"), "slide", type="start", number=_GRACE_CURVE)
            elif not is_slide and number == 1:
                add(add(element, "notations"), "slur", type="start", number=_GRACE_CURVE)

    def _dynamics(self, measure: Element, note: Note, index: int | None) -> None:
        """The level and the hairpin that begin with a note, before it."""
        for level in (mark for mark in note.marks if mark in LEVEL_MARKS):
            direction = add(measure, "direction", placement="below")
            add(add(add(direction, "direction-type"), "dynamics"), level.value)
        if index in self._hairpin_starts:
            _wedge(measure, _WEDGES[self._hairpin_starts[index]])

    def _pitch(self, element: Element, pitch: Pitch) -> None:
        if not 0 <= pitch.octave <= 9:
            raise OutputError("xml-octave-outside", pitch=pitch)
        child = add(element, "pitch")
        add(child, "step", pitch.letter)
        if pitch.alter:
            add(child, "alter", pitch.alter)
        add(child, "octave", pitch.octave)

    def _accidental(self, element: Element, pitch: Pitch) -> None:
        need = self._accidentals.need(pitch)
        if need == "needed":
            add(element, "accidental", ACCIDENTAL_NAMES[pitch.alter])
        elif need == "courtesy":
            add(element, "accidental", ACCIDENTAL_NAMES[pitch.alter], cautionary="yes")

    def _notations(self, element: Element, event: WrittenEvent) -> None:
        note = event.note
        if note is None or event.index is None:
            return
        is_first, is_last = event.piece == 0, not event.ties_on
        if is_first and is_last and not (note.marks or note.graces or event.tuplet):
            return
        notations = add(element, "notations")
        if not is_first:
            add(notations, "tied", type="stop")
        if not is_last:
            add(notations, "tied", type="start")
        if event.graces:
            add(notations, "slide" if _slides(event) else "slur", type="stop", number=_GRACE_CURVE)
        for kind, number in self._slurs.get(event.index, ()):
            if is_last if kind == "stop" else is_first:
                add(notations, "slur", type=kind, number=str(number))
        _tuplet_signs(notations, event)
        for group, signs in (
            ("ornaments", _ornaments(note.marks, is_first, is_last)),
            ("articulations", _articulations(note.marks, is_first, is_last, _slides(event))),
        ):
            if signs:
                parent = add(notations, group)
                for tag, content, attributes in signs:
                    add(parent, tag, content, **attributes)
        if is_last and Mark.FERMATA in note.marks:
            add(notations, "fermata", type="upright")
        if not len(notations):
            element.remove(notations)

    def _lyric(self, element: Element, text: str) -> None:
        goes_on = len(text) > 1 and text.endswith("-")
        came_on, self._inside_word = self._inside_word, goes_on
        syllabic = ("middle" if goes_on else "end") if came_on else "begin" if goes_on else "single"
        lyric = add(element, "lyric", number="1")
        add(lyric, "syllabic", syllabic)
        add(lyric, "text", clean(text.removesuffix("-") if goes_on else text))


def _wedge(measure: Element, kind: str) -> None:
    direction = add(measure, "direction", placement="below")
    add(add(direction, "direction-type"), "wedge", type=kind, number="1")


def _slides(event: WrittenEvent) -> bool:
    """A scoop from grace notes is a slide from the last of them."""
    return event.note is not None and bool(event.graces) and Mark.SCOOP in event.note.marks


def _type(element: Element, event: WrittenEvent) -> None:
    add(element, "type", event.type_name)
    for _ in range(event.dots):
        add(element, "dot")


def _beams(element: Element, states: Iterable[str]) -> None:
    for level, state in enumerate(states, start=1):
        add(element, "beam", state, number=str(level))


def _time_modification(element: Element, event: WrittenEvent) -> None:
    if event.tuplet:
        child = add(element, "time-modification")
        add(child, "actual-notes", event.tuplet.actual)
        add(child, "normal-notes", event.tuplet.normal)
        add(child, "normal-type", TYPE_NAMES[event.tuplet.unit])


def _tuplet_signs(parent: Element, event: WrittenEvent) -> None:
    """Start and stop of a tuplet, into `notations` (made first for a rest)."""
    tuplet = event.tuplet
    if tuplet is None or not (tuplet.starts or tuplet.stops):
        return
    if event.is_rest:
        parent = add(parent, "notations")
    if tuplet.starts:
        add(parent, "tuplet", type="start", number="1", bracket="yes" if tuplet.has_bracket else "no")
    if tuplet.stops:
        add(parent, "tuplet", type="stop", number="1")


def _ornaments(marks: Sequence[Mark], is_first: bool, is_last: bool) -> list[_Sign]:
    signs: list[_Sign] = []
    if is_first:
        signs += ((_ORNAMENTS[mark], None, {}) for mark in marks if mark in _ORNAMENTS)
        signs += (("other-ornament", str(mark), {}) for mark in marks if mark in (Mark.ROLL, Mark.CRAN))
    if Mark.VIBRATO in marks:
        ends = ("start",) * is_first + ("stop",) * is_last
        signs += (("wavy-line", None, {"type": end, "number": "1"}) for end in ends)
    return signs


def _articulations(marks: Sequence[Mark], is_first: bool, is_last: bool, is_slide: bool) -> list[_Sign]:
    signs: list[_Sign] = []
    for mark in marks:
        if is_first and mark in _ARTICULATIONS and not (is_slide and mark is Mark.SCOOP):
            signs.append((_ARTICULATIONS[mark], None, {}))
        if is_last and mark in _CLOSING_ARTICULATIONS:
            signs.append((_CLOSING_ARTICULATIONS[mark], None, {}))
    return signs
