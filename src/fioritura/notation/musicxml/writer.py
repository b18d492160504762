"""Write a score as MusicXML 4.0 (partwise), valid against the W3C's schema.

One part a staff; staves share bars, so that bar stands under bar. Pitches and keys are written for the staff's
instrument, with `transpose`, or as they sound when the score is in concert pitch. The output holds no date unless
one is given: the same score is the same bytes.

Conventions:

* Durations are in ticks, 1680 divisions a quarter note.
* Notes carry ids (see `NoteWriter`), labels ``"s2-l0"`` (label 0 of staff 2) and chord symbols ``"s1-c0"``, which
  an engraver can keep.
* A chord symbol's `kind` has the suffix as players write it in `text`, which holds the degrees too: the `degree`
  elements are there for their meaning and not printed. "N.C." is the kind "none"; a text that is no known chord is
  the kind "other" under that text. An inferred chord stands in parentheses, with an editorial `level`.
* Tempo, feel and jumps stand in the first part only, once for all staves.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Sequence
from datetime import date
from functools import cache
from importlib.metadata import version
from typing import Final

from lxml import etree

from fioritura.errors import OptionError
from fioritura.notation.musicxml.notes import Element, NoteWriter, add
from fioritura.notation.rhythm import TYPE_NAMES
from fioritura.notation.score import Score, Staff
from fioritura.notation.written_part import (
    WrittenPart,
    beat_value,
    check_score,
    chord_words,
    clean,
    closes_ending,
    closing_jumps,
    decimal_text,
    is_split_bar,
    opens_ending,
    tempo_marks,
    written_part,
)
from fioritura.players.instruments import Clef
from fioritura.theory.metre import QUARTER, Metre
from fioritura.theory.pitch import Interval, NoteName
from fioritura.tune import Bar, ChordSpan, Jump, Tempo, Tune
from fioritura.words import say

__all__ = ["write_musicxml"]

_DOCTYPE: Final = (
    '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" '
    '"http://www.musicxml.org/dtds/partwise.dtd">'
)
_CLEFS: Final[dict[Clef, tuple[str, int]]] = {"treble": ("G", 2), "bass": ("F", 4)}
_UNISON: Final = Interval(0, 0)
_DRUM_CHANNEL: Final = 10
_ITALIC: Final = {"font-style": "italic"}
_SMALL: Final = {**_ITALIC, "font-size": "8"}

Sign = tuple[int, Element]
"""Something above the staff and its place in ticks."""


def write_musicxml(score: Score, *, bars_per_system: int | None = None, encoded_on: date | None = None) -> bytes:
    """The score as an uncompressed MusicXML 4.0 file, in UTF-8.

    With `bars_per_system` a new system begins after every so many bars, a pickup not counted. `encoded_on` is
    written as the encoding date.

    Raises:
        OptionError: `bars_per_system` is less than 1.
        OutputError: the score has no staff or no bars, or a note lies outside MusicXML's octaves 0 to 9.
        TuneError: notes of a line overlap or lie outside the bars.
    """
    if bars_per_system is not None and bars_per_system < 1:
        raise OptionError("no-bars-per-system", given=bars_per_system)
    check_score(score)
    root = etree.Element("score-partwise", version="4.0")
    _header(root, score, encoded_on)
    _part_list(root, score.staves)
    for number in range(1, len(score.staves) + 1):
        _PartWriter(written_part(score, number), bars_per_system).write(add(root, "part", id=f"P{number}"))
    return bytes(
        etree.tostring(
            root, xml_declaration=True, encoding="UTF-8", pretty_print=True, doctype=_DOCTYPE, standalone=False
        )
    )


@cache
def _software() -> str:
    return f"Fioritura {version('fioritura')}"


def _header(root: Element, score: Score, encoded_on: date | None) -> None:
    title, composer = clean(score.tune.title), clean(score.tune.composer)
    if title:
        add(add(root, "work"), "work-title", title)
    identification = add(root, "identification")
    if composer:
        add(identification, "creator", composer, type="composer")
    encoding = add(identification, "encoding")
    add(encoding, "software", _software())
    if encoded_on is not None:
        add(encoding, "encoding-date", encoded_on.isoformat())
    for element in ("accidental", "beam"):
        add(encoding, "supports", element=element, type="yes")
    if score.subtitle:
        for kind, words in (("title", title), ("subtitle", clean(score.subtitle)), ("composer", composer)):
            if words:
                credit = add(root, "credit", page="1")
                add(credit, "credit-type", kind)
                add(credit, "credit-words", words)


def _part_list(root: Element, staves: Sequence[Staff]) -> None:
    parts = add(root, "part-list")
    if len(staves) > 1:
        group = add(parts, "part-group", type="start", number="1")
        add(group, "group-symbol", "bracket")
        add(group, "group-barline", "yes")
    channels = (channel for channel in range(1, 1000) if channel % 16 != _DRUM_CHANNEL)
    for number, (staff, channel) in enumerate(zip(staves, channels, strict=False), start=1):
        instrument = staff.instrument
        part = add(parts, "score-part", id=f"P{number}")
        add(part, "part-name", clean(staff.name) or say(instrument.title))
        if not staff.name and instrument.abbreviation:
            add(part, "part-abbreviation", say(instrument.abbreviation))
        sound = add(part, "score-instrument", id=f"P{number}-I1")
        add(sound, "instrument-name", say(instrument.title))
        midi = add(part, "midi-instrument", id=f"P{number}-I1")
        add(midi, "midi-channel", (channel - 1) % 16 + 1)
        add(midi, "midi-program", instrument.program)
    if len(staves) > 1:
        add(parts, "part-group", type="stop", number="1")


class _PartWriter:
    """Writes one staff as a part, bar by bar."""

    def __init__(self, part: WrittenPart, bars_per_system: int | None) -> None:
        self._part = part
        self._bars_per_system = bars_per_system
        self._notes = NoteWriter(part)
        self._signs = deque(sorted(self._all_signs(), key=lambda sign: sign[0]))

    def write(self, element: Element) -> None:
        """Append all measures."""
        bars, is_first = self._part.tune.bars, self._part.number == 1
        for index, written in enumerate(self._part.bars):
            bar = written.bar
            measure = self._measure(element, index)
            self._system_break(measure, index)
            self._attributes(measure, index)
            _left_barline(measure, bars, index)
            if is_first:
                _opening_jumps(measure, bar)
            self._notes.open_bar(bar.key)
            for event in written.events:
                while self._signs and self._signs[0][0] < event.end_ticks:
                    onset, sign = self._signs.popleft()
                    _place(measure, sign, max(0, onset - event.onset_ticks))
                self._notes.write(measure, event)
            if is_first:
                _closing_jumps(measure, bar, bars)
            _right_barline(measure, bars, index)

    def _measure(self, part: Element, index: int) -> Element:
        """A pickup is measure 0; the second half of a bar that a repeat sign splits has no number of its own."""
        bars = self._part.tune.bars
        number = bars[index].number
        if is_split_bar(bars, index):
            return add(part, "measure", number=f"X{number}", implicit="yes")
        measure = add(part, "measure", number=str(number))
        if number == 0:
            measure.set("implicit", "yes")
        return measure

    def _system_break(self, measure: Element, index: int) -> None:
        if self._bars_per_system is None:
            return
        bars = self._part.tune.bars
        full = index - (1 if bars[0].metre_offset_ticks and len(bars) > 1 else 0)
        if full > 0 and full % self._bars_per_system == 0:
            add(measure, "print", **{"new-system": "yes"})

    def _attributes(self, measure: Element, index: int) -> None:
        part, bar, by = self._part, self._part.tune.bars[index], self._part.shifts[index]
        is_new_key, is_new_metre = part.has_new_key(index), part.has_new_metre(index)
        if not (is_new_key or is_new_metre):
            return
        attributes = add(measure, "attributes")
        if index == 0:
            add(attributes, "divisions", QUARTER)
        if is_new_key:
            key = add(attributes, "key")
            add(key, "fifths", bar.key.fifths)
            add(key, "mode", bar.key.mode)
        if is_new_metre:
            time = add(attributes, "time")
            add(time, "beats", bar.metre.beats)
            add(time, "beat-type", bar.metre.unit)
        if index == 0:
            sign, line = _CLEFS[part.clef]
            clef = add(attributes, "clef")
            add(clef, "sign", sign)
            add(clef, "line", line)
        if is_new_key and by != _UNISON:
            _transposition(attributes, by)

    def _all_signs(self) -> Iterator[Sign]:
        """What stands above the staff, from the top down where several share a place."""
        part, tune = self._part, self._part.tune
        if part.number == 1:
            yield from _tempo_signs(tune)
        if part.staff.shows_chords:
            for number, span in enumerate(tune.chords):
                yield span.onset_ticks, _harmony(span, f"s{part.number}-c{number}")
        for number, label in enumerate(part.staff.labels):
            direction = _words(label.text, id=f"s{part.number}-l{number}", **_SMALL)
            yield label.onset_ticks, direction


def _transposition(attributes: Element, by: Interval) -> None:
    """From written to sounding pitch, whole octaves apart."""
    octaves = abs(by.steps) // 7 * (-1 if by.steps > 0 else 1)
    rest = -by - Interval(7 * octaves, 12 * octaves)
    element = add(attributes, "transpose")
    add(element, "diatonic", rest.steps)
    add(element, "chromatic", rest.semitones)
    if octaves:
        add(element, "octave-change", octaves)


def _place(measure: Element, sign: Element, offset_ticks: int) -> None:
    """Append a sign that holds `offset_ticks` after the next note begins."""
    if offset_ticks:
        later = next((child for child in sign if child.tag in ("sound", "level")), None)
        offset = etree.Element("offset")
        offset.text = str(offset_ticks)
        sign.insert(len(sign) if later is None else sign.index(later), offset)
    measure.append(sign)


def _direction(kind: str | None = None) -> Element:
    direction = etree.Element("direction", placement="above")
    if kind:
        add(add(direction, "direction-type"), kind)
    return direction


def _words(text: str, **attributes: str) -> Element:
    direction = _direction()
    add(add(direction, "direction-type"), "words", clean(text), **attributes)
    return direction


def _tempo_signs(tune: Tune) -> Iterator[Sign]:
    """Tempo marks; the feel stands before the first."""
    for onset, word, tempo in tempo_marks(tune):
        direction = _direction()
        if word:
            add(add(direction, "direction-type"), "words", word, **{"font-weight": "bold"})
        if tempo:
            _metronome(direction, tempo, tune.bar_at(tempo.onset_ticks).metre)
        sound = add(direction, "sound")
        if tempo:
            sound.set("tempo", decimal_text(tempo.quarters_per_minute))
        if word and tune.feel == "straight":
            add(add(sound, "swing"), "straight")
        elif word:
            swing = add(sound, "swing")
            for tag, value in (("first", "2"), ("second", "1"), ("swing-type", "eighth")):
                add(swing, tag, value)
        yield onset, direction


def _metronome(direction: Element, tempo: Tempo, metre: Metre) -> None:
    unit, is_dotted = beat_value(metre)
    metronome = add(add(direction, "direction-type"), "metronome", parentheses="no")
    add(metronome, "beat-unit", TYPE_NAMES[unit])
    if is_dotted:
        add(metronome, "beat-unit-dot")
    add(metronome, "per-minute", decimal_text(tempo.quarters_per_minute * QUARTER / metre.beat_ticks))


def _harmony(span: ChordSpan, name: str) -> Element:
    harmony = etree.Element("harmony", id=name)
    chord = span.chord
    if chord is None:
        add(add(harmony, "root"), "root-step", "C", text="")
        text = clean(chord_words(span))
        add(harmony, "kind", "none" if text == "N.C." else "other", text=text)
        return harmony
    opens, closes = ("(", ")") if span.is_inferred else ("", "")
    bass = f"/{chord.bass.display}" if chord.bass else ""
    suffix = chord.display.removeprefix(chord.root.display).removesuffix(bass)
    _name(harmony, "root", chord.root, opens, "")
    add(harmony, "kind", chord.kind, text=suffix if chord.bass else suffix + closes)
    if chord.bass:
        _name(harmony, "bass", chord.bass, "", closes)
    for degree in chord.degrees:
        element = add(harmony, "degree", **{"print-object": "no"})
        add(element, "degree-value", degree.value)
        add(element, "degree-alter", degree.alter)
        add(element, "degree-type", degree.type)
    if span.is_inferred:
        add(harmony, "level", "inferred", parentheses="yes")
    return harmony


def _name(harmony: Element, tag: str, name: NoteName, opens: str, closes: str) -> None:
    """A root or bass; what is printed around it goes into the `text` of its step."""
    element = add(harmony, tag)
    letter = str(NoteName(name.letter))
    step = add(element, f"{tag}-step", letter)
    if opens or closes:
        step.set("text", f"{opens}{letter if opens else name.display}{closes}")
    if name.alter:
        alter = add(element, f"{tag}-alter", name.alter)
        if closes:
            alter.set("print-object", "no")


def _barline(measure: Element, location: str, style: str = "") -> Element:
    barline = add(measure, "barline", location=location)
    if style:
        add(barline, "bar-style", style)
    return barline


def _left_barline(measure: Element, bars: Sequence[Bar], index: int) -> None:
    bar = bars[index]
    begins_ending = opens_ending(bars, index)
    if not (bar.opens_repeat or begins_ending):
        return
    barline = _barline(measure, "left", "heavy-light" if bar.opens_repeat else "")
    if begins_ending:
        add(barline, "ending", number=", ".join(map(str, bar.endings)), type="start")
    if bar.opens_repeat:
        add(barline, "repeat", direction="forward")


def _right_barline(measure: Element, bars: Sequence[Bar], index: int) -> None:
    bar = bars[index]
    is_last = index + 1 == len(bars) and not bar.goes_on
    ends_ending = closes_ending(bars, index)
    style = "light-heavy" if bar.repeats or is_last else "light-light" if bar.ends_section else ""
    if not (style or ends_ending):
        return
    barline = _barline(measure, "right", style)
    if ends_ending:
        kind = "stop" if style else "discontinue"
        add(barline, "ending", number=", ".join(map(str, bar.endings)), type=kind)
    if bar.repeats:
        repeat = add(barline, "repeat", direction="backward")
        if bar.repeats > 1 and not bar.endings:
            repeat.set("times", str(bar.repeats + 1))


def _opening_jumps(measure: Element, bar: Bar) -> None:
    for jump in bar.jumps:
        if jump in (Jump.SEGNO, Jump.CODA):
            direction = _direction(jump.value)
            add(direction, "sound", **{jump.value: jump.value})
            measure.append(direction)


def _closing_jumps(measure: Element, bar: Bar, bars: Sequence[Bar]) -> None:
    meanings = {
        Jump.TO_CODA: ("tocoda", "coda"),
        Jump.FINE: ("fine", "yes"),
        Jump.DA_CAPO: ("dacapo", "yes"),
        Jump.DAL_SEGNO: ("dalsegno", "segno"),
    }
    for jump, text in closing_jumps(bar, bars):
        attribute, value = meanings[jump]
        direction = _words(text, **_ITALIC)
        add(direction, "sound", **{attribute: value})
        measure.append(direction)
