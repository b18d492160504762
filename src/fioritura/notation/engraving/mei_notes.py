"""Notes, grace notes and rests of one staff as MEI, with all that hangs on them.

Beams and tuplets are elements around their notes; slurs, ties, ornaments, fermatas and breath marks are elements of
the bar that point to their notes. Element names and values: MEI 5. Its `mordent` of the form "lower" is the sign with
the line; an Irish roll has no element and is a tilde, shakes and vibrato are zigzags and waves of SMuFL.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final
from xml.sax.saxutils import escape

from fioritura.errors import OutputError
from fioritura.notation.accidentals import AccidentalMemory
from fioritura.notation.engraving.svg import Effect
from fioritura.notation.rhythm import WrittenBar, WrittenEvent
from fioritura.notation.written_part import WrittenPart, clean, slurs
from fioritura.theory.pitch import Pitch
from fioritura.tune import LEVEL_MARKS, Mark, Note, hairpins

__all__ = ["LayerWriter"]

_ACCIDENTALS: Final = {-2: "ff", -1: "f", 0: "n", 1: "s", 2: "x"}
_ARTICULATIONS: Final = {
    Mark.ACCENT: "acc",
    Mark.MARCATO: "marc",
    Mark.STACCATO: "stacc",
    Mark.TENUTO: "ten",
    Mark.SCOOP: "scoop",
}
_CLOSING_ARTICULATIONS: Final = {Mark.FALL: "fall", Mark.DOIT: "doit"}
"""These belong to the end of a tied note."""

_ORNAMENTS: Final = {
    Mark.TRILL: "<trill {}/>",
    Mark.TURN: '<turn {} form="upper"/>',
    Mark.INVERTED_TURN: '<turn {} form="lower"/>',
    Mark.MORDENT: '<mordent {} form="lower"/>',
    Mark.INVERTED_MORDENT: '<mordent {} form="upper"/>',
    Mark.SHAKE: '<dir {} place="above" type="sign"><rend glyph.auth="smufl">\ue59d\ue59d\ue59d</rend></dir>',
    Mark.VIBRATO: '<dir {} place="above" type="sign"><rend glyph.auth="smufl">\ueaa4\ueaa4\ueaa4</rend></dir>',
    Mark.ROLL: '<dir {} place="above" type="sign"><rend>~</rend></dir>',
    Mark.CRAN: '<dir {} place="above" type="sign"><rend fontstyle="italic">cran</rend></dir>',
}
_EFFECTS: Final[dict[Mark, Effect]] = {Mark.SCOOP: "scoop", Mark.FALL: "falloff", Mark.DOIT: "doit"}
_HAIRPINS: Final = {Mark.CRESCENDO: "cres", Mark.DIMINUENDO: "dim"}
_BREATH_BEFORE_END: Final = 0.1
"""How long before the end of its note a breath mark stands, in units of the metre."""


class LayerWriter:
    """Writes a part's bars once, in order; fills `effects`, the wind effects by note id."""

    def __init__(self, part: WrittenPart) -> None:
        self._part = part
        self._slur_ends = dict(slurs(part.tune.notes))
        self._last_pieces = {
            event.index: event.piece for bar in part.bars for event in bar.events if event.index is not None
        }
        self._hairpins = {start: (stop, kind) for start, stop, kind in hairpins(part.tune.notes)}
        self._key = part.tune.key
        self._accidentals = AccidentalMemory()
        self._inside_word = False
        self.effects: dict[str, list[Effect]] = {}

    def bars(self) -> Iterator[tuple[str, str]]:
        """Each bar's layer, and the elements of the bar that point to its notes.

        Raises:
            OutputError: a note lies outside the octaves 0 to 9.
        """
        for written in self._part.bars:
            self._key = written.bar.key
            self._accidentals.open_bar(self._key)
            attached: list[str] = []
            content = "".join(self._event(written, event, attached) for event in written.events)
            yield content, "".join(attached)

    def _event(self, written: WrittenBar, event: WrittenEvent, attached: list[str]) -> str:
        """An event with the beam and tuplet that begin or stop at it, and its grace notes before them."""
        if event.note is None:
            graces, element = "", self._rest(event)
        else:
            graces = self._graces(event, event.note)
            element = self._note(event, event.note)
            attached += self._attached(written, event, event.note)
        tuplet = event.tuplet
        beam = event.beams[0] if event.beams else None
        opens = ["<beam>"] if beam == "begin" else []
        closes = ["</beam>"] if beam == "end" else []
        if tuplet and tuplet.starts:
            bracket = "true" if tuplet.has_bracket else "false"
            tag = f'<tuplet num="{tuplet.actual}" numbase="{tuplet.normal}" bracket.visible="{bracket}">'
            opens.insert(0, tag)
        if tuplet and tuplet.stops:
            closes.append("</tuplet>")
        return "".join((graces, *opens, element, *closes))

    def _note(self, event: WrittenEvent, note: Note) -> str:
        pitch = note.pitch
        if event.tied_from_before:
            self._accidentals.carry(pitch)
            altered, accidental = self._sounding(pitch), ""
        else:
            altered, accidental = self._accidental(pitch)
        head = ' head.mod="paren"' if Mark.GHOST in note.marks else ""
        lyric = self._lyric(note.lyric) if note.lyric and event.piece == 0 else ""
        signs = "".join(f'<artic artic="{sign}"/>' for sign in self._articulations(event, note))
        attributes = f'xml:id="{self._id(event.index, event.piece)}" {_value(event)} {_place(pitch)}{altered}{head}'
        return f"<note {attributes}>{accidental}{lyric}{signs}</note>"

    def _graces(self, event: WrittenEvent, note: Note) -> str:
        """One grace note is a slashed eighth, several are beamed sixteenths."""
        if not event.graces:
            return ""
        is_alone = len(event.graces) == 1
        kind = (
            'grace="unacc" dur="8" stem.dir="up" stem.mod="1slash"'
            if is_alone
            else 'grace="acc" dur="16" stem.dir="up"'
        )
        found = []
        for number, pitch in enumerate(event.graces, start=1):
            altered, accidental = self._accidental(pitch)
            name = f"{self._id(event.index)}-g{number}"
            found.append(f'<note xml:id="{name}" {kind} {_place(pitch)}{altered}>{accidental}</note>')
        return found[0] if is_alone else f"<beam>{''.join(found)}</beam>"

    def _rest(self, event: WrittenEvent) -> str:
        names = ("mRest", "rest") if self._part.staff.shows_rests else ("mSpace", "space")
        return f"<{names[0]}/>" if event.fills_bar else f"<{names[1]} {_value(event)}/>"

    def _id(self, index: int | None, piece: int = 0) -> str:
        return f"s{self._part.number}-n{index}" + (f"-{piece + 1}" if piece else "")

    def _accidental(self, pitch: Pitch) -> tuple[str, str]:
        """The attribute of an accidental that is not written, the element of one that is."""
        need = self._accidentals.need(pitch)
        if need == "none":
            return self._sounding(pitch), ""
        courtesy = ' func="caution"' if need == "courtesy" else ""
        return "", f'<accid accid="{_ACCIDENTALS[pitch.alter]}"{courtesy}/>'

    def _sounding(self, pitch: Pitch) -> str:
        """The attribute of an alteration that has no sign at the note."""
        is_altered = pitch.alter or self._key.alter(pitch.step % 7)
        return f' accid.ges="{_ACCIDENTALS[pitch.alter]}"' if is_altered else ""

    def _articulations(self, event: WrittenEvent, note: Note) -> Iterator[str]:
        """Signs at the note head; the wind effects, which the engraver does not draw, are put down too."""
        for mark in note.marks:
            if event.piece == 0 and mark in _ARTICULATIONS and not (mark is Mark.SCOOP and event.graces):
                sign = _ARTICULATIONS[mark]
            elif not event.ties_on and mark in _CLOSING_ARTICULATIONS:
                sign = _CLOSING_ARTICULATIONS[mark]
            else:
                continue
            if mark in _EFFECTS:
                self.effects.setdefault(self._id(event.index, event.piece), []).append(_EFFECTS[mark])
            yield sign

    def _attached(self, written: WrittenBar, event: WrittenEvent, note: Note) -> Iterator[str]:
        """Curves that begin at an event, and signs over it. A scoop from grace notes is a slide from the last."""
        staff, name = f'staff="{self._part.number}"', self._id(event.index, event.piece)
        here = f'{staff} startid="#{name}"'
        if event.graces:
            first = f"{self._id(event.index)}-g1"
            last = f"{self._id(event.index)}-g{len(event.graces)}"
            if Mark.SCOOP in note.marks:
                yield f'<gliss {staff} startid="#{last}" endid="#{name}" type="slide"/>'
            else:
                yield f'<slur {staff} startid="#{first}" endid="#{name}"/>'
        if event.ties_on:
            yield f'<tie {staff} startid="#{name}" endid="#{self._id(event.index, event.piece + 1)}"/>'
        end = self._slur_ends.get(event.index) if event.index is not None and event.piece == 0 else None
        if end is not None:
            yield f'<slur {here} endid="#{self._id(end, self._last_pieces[end])}"/>'
        if event.piece == 0 and event.index in self._hairpins:
            stop, kind = self._hairpins[event.index]
            yield f'<hairpin {here} place="below" form="{_HAIRPINS[kind]}" tstamp2="{self._end_stamp(written, stop)}"/>'
        for mark in note.marks:
            if mark in LEVEL_MARKS and event.piece == 0:
                yield f'<dynam {here} place="below">{mark.value}</dynam>'
                continue
            if mark in _ORNAMENTS and event.piece == 0:
                yield _ORNAMENTS[mark].format(here)
            elif mark is Mark.FERMATA and not event.ties_on:
                yield f'<fermata {here} place="above"/>'
            elif mark is Mark.BREATH and not event.ties_on:
                end_units = (event.end_ticks - written.bar.start_ticks) / written.bar.metre.unit_ticks
                yield f'<breath {staff} tstamp="{1 + end_units - _BREATH_BEFORE_END:.6g}"/>'

    def _end_stamp(self, written: WrittenBar, stop: int) -> str:
        """The end of a note, in bars from a written bar and beats of the bar that it falls in."""
        end_ticks = self._part.tune.notes[stop].end_ticks
        bars = [bar.bar for bar in self._part.bars]
        here = bars.index(written.bar)
        there = max(number for number, bar in enumerate(bars) if number == here or bar.start_ticks < end_ticks)
        units = (end_ticks - bars[there].start_ticks) / bars[there].metre.unit_ticks
        return f"{there - here}m+{1 + units:.6g}"

    def _lyric(self, text: str) -> str:
        goes_on = len(text) > 1 and text.endswith("-")
        came_on, self._inside_word = self._inside_word, goes_on
        place = ("m" if goes_on else "t") if came_on else "i" if goes_on else "s"
        words = escape(clean(text.removesuffix("-") if goes_on else text))
        return f'<verse n="1"><syl con="{"d" if goes_on else "s"}" wordpos="{place}">{words}</syl></verse>'


def _value(event: WrittenEvent) -> str:
    return f'dur="{event.value}" dots="{event.dots}"' if event.dots else f'dur="{event.value}"'


def _place(pitch: Pitch) -> str:
    if not 0 <= pitch.octave <= 9:
        raise OutputError("page-octave-outside", pitch=pitch)
    return f'pname="{pitch.letter.lower()}" oct="{pitch.octave}"'
