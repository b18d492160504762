"""One part of a MusicXML score, walked bar by bar into raw bars and the notes of all its voices.

Time inside a bar follows the file's own cursor (note, backup, forward). Where a note's type, dots and tuplet say a
length that the file's divisions only round, the exact length counts. All pitches, keys and chords come out sounding.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import takewhile
from typing import Final

from lxml import etree

from fioritura.errors import ReadError, TuneError
from fioritura.notation.assemble import RawBar, RawNote, RawTempo, quarter_notes
from fioritura.notation.musicxml import signs
from fioritura.notation.musicxml.signs import Ticks
from fioritura.theory.key import Key, Mode
from fioritura.theory.metre import QUARTER, Metre
from fioritura.theory.pitch import Interval, Pitch
from fioritura.tune import Feel, Jump, Mark, key_interval
from fioritura.words import Message, message

__all__ = ["Measure", "PartContent", "VoiceNote", "settle_codas", "walk_part"]

Element = etree._Element

_DOUBLE_BARS: Final = frozenset({"light-light", "light-heavy", "heavy-light", "heavy-heavy"})
_MOST_DIVISIONS: Final = 1_000_000


@dataclass(frozen=True, slots=True)
class Measure:
    """One measure of one part: its attributes (`number`, `implicit`) and its content in order."""

    attributes: Mapping[str, str]
    content: Sequence[Element]


@dataclass(slots=True)
class VoiceNote:
    """A note with the bar (index), voice and staff it stands in, and what had to be changed about it: the signs
    that have no place here, and whether its place or length was rounded to a tick."""

    bar: int
    voice: str
    staff: int
    note: RawNote
    left_out: tuple[str, ...] = ()
    is_rounded: bool = False


@dataclass(slots=True)
class PartContent:
    """All that one part holds. The bars hold no notes yet: those of all voices are in `notes`."""

    bars: list[RawBar] = field(default_factory=list)
    notes: list[VoiceNote] = field(default_factory=list)
    words: list[str] = field(default_factory=list)
    feel: Feel | None = None
    warnings: list[Message] = field(default_factory=list)
    bars_without_mode: set[int] = field(default_factory=set)
    """Indices of bars whose key signature names no mode."""
    voices_ending_in_graces: set[str] = field(default_factory=set)


def walk_part(measures: Iterable[Measure]) -> PartContent:
    """Walk a whole part.

    Raises:
        ReadError: a number, pitch or duration that makes no sense; the message names the line.
        TuneError: a key or metre that can't be worked with.
    """
    walk = _Walk()
    for measure in measures:
        walk.measure(measure)
    return walk.finished()


class _Walk:
    """The state of the walk: what holds on from bar to bar, and the cursor inside the bar."""

    def __init__(self) -> None:
        self.content = PartContent()
        self.division_ticks: Ticks = QUARTER
        self.metre = Metre(4, 4)
        self.is_free = True
        self.written_key = Key(0)
        self.key = Key(0)
        self.has_mode = False
        self.transposition = Interval(0, 0)
        self.shift = Interval(0, 0)
        self.ending: tuple[int, ...] = ()
        self.graces: dict[str, list[Pitch]] = {}
        self.grace_slurs: Counter[str] = Counter()
        self.dynamics: tuple[Mark, ...] = ()
        """Levels and hairpins that begin with the next note."""
        self.verse: str | None = None
        self.jump_signs: list[tuple[Ticks, Jump]] = []
        self.jumps_ahead: tuple[Jump, ...] = ()
        self.place: Ticks = 0
        self.end: Ticks = 0
        self.chord_start: Ticks = 0
        self.exact: dict[Ticks, Ticks] = {}

    @property
    def bar(self) -> RawBar:
        return self.content.bars[-1]

    @property
    def index(self) -> int:
        return len(self.content.bars) - 1

    def measure(self, measure: Measure) -> None:
        is_implicit = (
            measure.attributes.get("implicit") == "yes" or not measure.attributes.get("number", "1").isdecimal()
        )
        bar = RawBar(self.metre, self.key, is_implicit=is_implicit, is_free=self.is_free, endings=self.ending)
        bar.jumps, self.jumps_ahead = self.jumps_ahead, ()
        self.content.bars.append(bar)
        self.place = self.end = self.chord_start = 0
        self.exact = {0: 0}
        self.jump_signs = []
        for element in measure.content:
            match element.tag:
                case "note":
                    self._note(element)
                case "backup":
                    self._move(element, -1)
                case "forward":
                    self._move(element, 1)
                case "attributes":
                    self._attributes(element)
                case "direction" | "sound":
                    self._direction(element)
                case "harmony":
                    self._harmony(element)
                case "barline":
                    self._barline(element)
        self._close_bar()

    def finished(self) -> PartContent:
        self.content.voices_ending_in_graces = {voice for voice, graces in self.graces.items() if graces}
        return self.content

    def _attributes(self, element: Element) -> None:
        if element.find("divisions") is not None:
            divisions = signs.number(element, "divisions")
            if not 0 < divisions <= _MOST_DIVISIONS:
                problem = message("xml-divisions", given=str(divisions), limit=_MOST_DIVISIONS)
                raise ReadError(signs.at_line(element, problem))
            exact = Fraction(QUARTER) / divisions
            self.division_ticks = int(exact) if exact.denominator == 1 else exact
        transpose = element.find("transpose")
        if transpose is not None:
            self.transposition = signs.transposition_of(transpose)
        key = _for_first_staff(element, "key")
        if key is not None:
            fifths, mode = signs.key_and_mode(key)
            self._set_key(fifths, mode)
        elif transpose is not None:
            self._set_key(self.written_key.fifths, self.written_key.mode if self.has_mode else None)
        time = _for_first_staff(element, "time")
        if time is not None:
            self._set_metre(time)

    def _set_key(self, fifths: int, mode: Mode | None) -> None:
        self.written_key = Key(fifths, mode or "major")
        self.has_mode = mode is not None
        self.key = self.written_key
        if self.transposition != Interval(0, 0):
            self.key = self.written_key.transposed(self.transposition)
        self.shift = key_interval(self.written_key, self.key, self.transposition)
        if self.place == 0:
            self.bar.key = self.key

    def _set_metre(self, time: Element) -> None:
        try:
            metre = signs.metre_of(time)
        except TuneError as error:
            raise TuneError(signs.at_line(time, error.message)) from None
        self.is_free = metre is None
        self.metre = metre or self.metre
        if self.place == 0:
            self.bar.metre, self.bar.is_free = self.metre, self.is_free

    def _ticks(self, element: Element) -> Ticks:
        """The file's own duration of an element."""
        duration = signs.number(element, "duration")
        if duration < 0:
            raise ReadError(signs.at_line(element, message("xml-negative-duration")))
        ticks = duration * self.division_ticks
        return ticks if isinstance(ticks, int) or ticks.denominator != 1 else int(ticks)

    def _move(self, element: Element, sign: int) -> None:
        self.place += sign * self._ticks(element)
        if self.place < 0:
            raise ReadError(signs.at_line(element, message("xml-backup-too-far")))
        self.end = max(self.end, self.place)

    def _note(self, element: Element) -> None:
        voice = (element.findtext("voice") or "1").strip()
        if element.find("grace") is not None:
            self._grace(element, voice)
            return
        start = self.chord_start
        length = self._ticks(element)
        exact_length = self._exact_length(element, length)
        if element.find("chord") is None:
            start = self.chord_start = self.place
            self.place += length
            self.end = max(self.end, self.place)
        exact_start = self.exact.get(start, start)
        self.exact.setdefault(start + length, exact_start + exact_length)
        pitch = signs.pitch_of(element)
        if pitch is None or element.find("cue") is not None:
            return
        if (element.findtext("notehead") or "").strip() == "slash":
            return
        self._add_note(element, voice, pitch, exact_start, exact_start + exact_length)

    def _exact_length(self, element: Element, length: Ticks) -> Ticks:
        """The nominal length where the file's own is that, rounded to its divisions."""
        nominal = signs.nominal_ticks(element)
        if nominal is None or nominal == length:
            return length
        return nominal if _gap(nominal, length) < self.division_ticks else length

    def _add_note(self, element: Element, voice: str, pitch: Pitch, start: Ticks, end: Ticks) -> None:
        onset, stop = round(start), round(end)
        if stop <= onset:
            length = quarter_notes(Fraction(end) - start)
            raise TuneError(signs.at_line(element, message("xml-note-too-short", pitch=pitch, length=length)))
        marks = self._with_grace_slurs(signs.marks_on(element), voice) + self.dynamics
        self.dynamics = ()
        graces = tuple(self.graces.pop(voice, ())) if element.find("chord") is None else ()
        note = RawNote(
            onset, stop - onset, pitch.up(self.shift), _starts_tie(element), graces, marks, self._lyric(element)
        )
        staff = signs.whole_number(element, "staff", 1)
        is_rounded = onset != start or stop != end
        self.content.notes.append(
            VoiceNote(self.index, voice, staff, note, tuple(signs.left_out(element)), is_rounded)
        )

    def _grace(self, element: Element, voice: str) -> None:
        """Keep a grace note for the note that follows; of several at once the highest."""
        pitch = signs.pitch_of(element)
        if pitch is None or element.find("cue") is not None:
            return
        graces, pitch = self.graces.setdefault(voice, []), pitch.up(self.shift)
        if element.find("chord") is not None and graces:
            graces[-1] = max(graces[-1], pitch, key=lambda grace: grace.midi)
            return
        graces.append(pitch)
        marks = signs.marks_on(element)
        self.grace_slurs[voice] += marks.count(Mark.SLUR_START) - marks.count(Mark.SLUR_STOP)

    def _with_grace_slurs(self, marks: tuple[Mark, ...], voice: str) -> tuple[Mark, ...]:
        """A slur from a grace to its main note goes without saying; one that leads on starts at the main note."""
        waiting = self.grace_slurs.pop(voice, 0)
        if not waiting:
            return marks
        kept = list(marks)
        while waiting > 0 and Mark.SLUR_STOP in kept:
            kept.remove(Mark.SLUR_STOP)
            waiting -= 1
        if waiting < 0:
            kept.insert(0, Mark.SLUR_STOP)
        return (*kept, *[Mark.SLUR_START] * max(0, waiting))

    def _lyric(self, element: Element) -> str:
        """The syllable of the first verse met."""
        for lyric in element.iterfind("lyric"):
            verse = str(lyric.get("number", lyric.get("name", "1")))
            self.verse = self.verse or verse
            if verse == self.verse:
                return signs.lyric_text(lyric)
        return ""

    def _direction(self, element: Element) -> None:
        tempo = signs.tempo_of(element)
        if tempo is not None:
            self.bar.tempos.append(RawTempo(round(max(0, self._offset_place(element))), tempo))
        self.content.feel = self.content.feel or signs.swing_of(element)
        self.content.words += (words.text or "" for words in element.iter("words"))
        self.jump_signs += ((self.place, jump) for jump in signs.jumps_in(element))
        self.dynamics += signs.dynamics_in(element)
        if self.content.notes and any(wedge.get("type") == "stop" for wedge in element.iter("wedge")):
            self.content.notes[-1].note.marks += (Mark.HAIRPIN_STOP,)

    def _harmony(self, element: Element) -> None:
        chord = signs.chord_symbol(element, round(max(0, self._offset_place(element))), self.shift)
        if chord is not None:
            self.bar.chords.append(chord)

    def _offset_place(self, element: Element) -> Ticks:
        """Where a direction or chord symbol counts: the cursor, moved by its offset."""
        return self.exact.get(self.place, self.place) + signs.number(element, "offset", 0) * self.division_ticks

    def _barline(self, element: Element) -> None:
        is_left = element.get("location") == "left"
        ending = element.find("ending")
        if ending is not None:
            self._ending(ending)
        repeat = element.find("repeat")
        if repeat is not None and repeat.get("direction") == "forward":
            self.bar.opens_repeat = True
        elif repeat is not None:
            times = str(repeat.get("times", "2"))
            self.bar.repeats = (
                max(1, int(times) - 1) if times.isascii() and times.isdecimal() and len(times) < 4 else 1
            )
        elif (element.findtext("bar-style") or "").strip() in _DOUBLE_BARS:
            if not is_left:
                self.bar.ends_section = True
            elif self.index:
                self.content.bars[-2].ends_section = True
        jumps = [
            jump for name, jump in (("segno", Jump.SEGNO), ("coda", Jump.CODA)) if element.find(name) is not None
        ]
        if is_left:
            self.bar.jumps += tuple(jumps)
        else:
            self.jumps_ahead += tuple(jumps)

    def _ending(self, ending: Element) -> None:
        if ending.get("type") == "start":
            previous = self.content.bars[-2].endings if self.index else ()
            passes = signs.ending_numbers(str(ending.get("number", "")) or (ending.text or ""))
            self.ending = passes or ((max(previous) + 1,) if previous else (1,))
            self.bar.endings = self.ending
        else:
            self.ending = ()

    def _fit_notes(self, end: int, full: int) -> None:
        """Let the notes that stop where the file ends the bar, one rounding off, stop at the bar line."""
        for found in takewhile(lambda found: found.bar == self.index, reversed(self.content.notes)):
            if found.note.end_ticks == end and found.note.offset_ticks < full:
                found.note.duration_ticks = full - found.note.offset_ticks

    def _close_bar(self) -> None:
        bar = self.bar
        full = bar.metre.bar_ticks
        if self.end:
            is_full = not bar.is_free and _gap(self.end, full) < self.division_ticks
            bar.content_ticks = full if is_full else max(1, round(self.exact.get(self.end, self.end)))
            self._fit_notes(round(self.exact.get(self.end, self.end)), bar.content_ticks)
        if bar.repeats:
            self.ending = ()
        for place, jump in self.jump_signs:
            if jump in (Jump.SEGNO, Jump.CODA) and self.end and place >= self.end:
                self.jumps_ahead += (jump,)
            else:
                bar.jumps += (jump,)
        bar.jumps = tuple(dict.fromkeys(bar.jumps))
        if not self.has_mode:
            self.content.bars_without_mode.add(self.index)


def _for_first_staff(attributes: Element, tag: str) -> Element | None:
    found = attributes.findall(tag)
    return next((element for element in found if element.get("number", "1") == "1"), None)


def _starts_tie(note: Element) -> bool:
    ties = [tie.get("type") for tie in note.iterfind("tie")]
    return "start" in (ties or [tied.get("type") for tied in note.iterfind("notations/tied")])


def _gap(left: Ticks, right: Ticks) -> Ticks:
    return left - right if left > right else right - left


def settle_codas(bars: Sequence[RawBar]) -> None:
    """Where two bare coda signs stand and no "To Coda", the first is where the player leaves."""
    holders = [bar for bar in bars if Jump.CODA in bar.jumps]
    if len(holders) > 1 and not any(Jump.TO_CODA in bar.jumps for bar in bars):
        first = holders[0]
        first.jumps = tuple(Jump.TO_CODA if jump is Jump.CODA else jump for jump in first.jumps)
