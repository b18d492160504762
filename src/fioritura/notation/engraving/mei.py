"""Write a score as MEI for the engraver.

Staves share bars, so that bar stands under bar. Pitches and keys are written for the staff's instrument, or as they
sound when the score is in concert pitch. Element names: MEI 5.

* Notes, labels and chord symbols have the ids that they have in MusicXML: ``"s1-n0"``, ``"s1-n0-2"`` for its second
  tied piece, ``"s1-n0-g1"`` for its first grace note, ``"s2-l0"``, ``"s1-c0"``.
* A label is a `dir` of the type `LABEL_CLASS`; shakes, vibrato and rolls are signs in a `dir` of the type "sign".
* Tempo, feel and jumps stand over the first staff only, once for all. The opening tempo mark is no part of the MEI:
  it is to be set above the first system rather than between the chord symbols and the staff.
* Systems begin where the reader of `Piece` asks for it.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final
from xml.sax.saxutils import escape

from fioritura.notation.engraving.mei_notes import LayerWriter
from fioritura.notation.engraving.svg import LABEL_CLASS, LABEL_PADDING, Effect
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
from fioritura.theory.key import Key
from fioritura.theory.metre import BEAT_SIGNS, QUARTER, Metre
from fioritura.tune import Bar, Jump, Tempo
from fioritura.words import say

__all__ = ["MeiBar", "Piece", "piece_of"]

_LABEL_SIZE: Final = "80%"
_CHORD_SIZE: Final = "112%"
_CLEFS: Final[dict[Clef, str]] = {"treble": 'shape="G" line="2"', "bass": 'shape="F" line="4"'}
_JUMP_TYPES: Final = {
    Jump.TO_CODA: "tocoda",
    Jump.FINE: "fine",
    Jump.DA_CAPO: "dacapo",
    Jump.DAL_SEGNO: "dalsegno",
}
_OPENING: Final = (
    '<mei xmlns="http://www.music-encoding.org/ns/mei" meiversion="5.0"><meiHead><fileDesc><titleStmt><title/>'
    "</titleStmt><pubStmt/></fileDesc></meiHead><music><body><mdiv><score>"
)
_CLOSING: Final = "</section></score></mdiv></body></music></mei>"


@dataclass(frozen=True, slots=True)
class MeiBar:
    """What the choice of systems needs to know of a bar: its number, whether it is a full bar with a number of its
    own (else `number` is that of the bar after it), and whether a section ends at its bar line."""

    number: str
    is_full: bool
    ends_section: bool


@dataclass(frozen=True, slots=True)
class _Sign:
    """An element above the staff."""

    onset_ticks: int
    tag: str
    attributes: str
    words: str


@dataclass(frozen=True, slots=True)
class _Measure:
    """A `measure` in parts: what stands before it, the start tag of an ending that begins here, the measure without
    its end tag, its end tags, and its number where it must be told."""

    before: str
    ending: str
    body: str
    end: str
    told_number: str


@dataclass(frozen=True)
class Piece:
    """A score ready for layout: its parts and bars, its opening tempo mark, and wind effects by note id."""

    parts: tuple[WrittenPart, ...]
    head: str
    measures: tuple[_Measure, ...]
    bars: tuple[MeiBar, ...]
    tempo: str
    effects: Mapping[str, Sequence[Effect]]

    def mei(self, starts: Sequence[int] = (), *, last_on_page: bool = False) -> str:
        """The MEI, with a system break before each bar of `starts` but the first; with `last_on_page` the last system
        has a page of its own.

        A system that begins with a bar without a number, the second half of a bar that a repeat sign divides, bears
        the number of the bar that follows.
        """
        breaks = dict.fromkeys(starts, "<sb/>")
        if starts and last_on_page:
            breaks[starts[-1]] = "<pb/>"
        breaks.pop(0, None)
        parts = [self.head]
        for index, measure in enumerate(self.measures):
            parts += (measure.before, breaks.get(index, ""), measure.ending, measure.body)
            if index in breaks and measure.told_number:
                parts.append(f"<mNum>{measure.told_number}</mNum>")
            parts.append(measure.end)
        parts.append(_CLOSING)
        return "".join(parts)


def piece_of(score: Score) -> Piece:
    """The piece that a score is.

    Raises:
        OutputError: the score has no staff or no bars, or a note lies outside the octaves 0 to 9.
        TuneError: notes of a line overlap or lie outside the bars.
    """
    check_score(score)
    parts = [written_part(score, number) for number in range(1, len(score.staves) + 1)]
    layers = [LayerWriter(part) for part in parts]
    bars = parts[0].tune.bars
    facts = tuple(_bar_facts(bars))
    contents = [
        list(zip(layer.bars(), _above_bars(part), strict=True)) for part, layer in zip(parts, layers, strict=True)
    ]
    measures = []
    for index, bar in enumerate(bars):
        staves, events = [], [*_opening_jumps(bar)]
        for number, content in enumerate(contents, start=1):
            (layer, attached), above = content[index]
            staves.append(f'<staff n="{number}"><layer n="1">{layer}</layer></staff>')
            events += (above, attached)
            if number == 1:
                events += _closing_jumps(bar, bars)
        tag = f"<measure {_number(bars, index)}{_bar_lines(bars, index)}>"
        measures.append(
            _Measure(
                before=_changes(parts, index),
                ending=_ending(bars, index),
                body="".join((tag, *staves, *events)),
                end="</measure></ending>" if closes_ending(bars, index) else "</measure>",
                told_number=facts[index].number if is_split_bar(bars, index) else "",
            )
        )
    return Piece(
        parts=tuple(parts),
        head=f"{_OPENING}<scoreDef>{_staff_group(parts)}</scoreDef><section>",
        measures=tuple(measures),
        bars=facts,
        tempo=_opening_tempo(parts[0]),
        effects={name: found for layer in layers for name, found in layer.effects.items()},
    )


# --- Staves, keys and metres ---------------------------------------------------------------------------------------


def _staff_group(parts: Sequence[WrittenPart]) -> str:
    """The definitions of the staves; a staff alone has no name."""
    staves = []
    for part in parts:
        names = _names(part.staff) if len(parts) > 1 else ""
        bar = part.tune.bars[0]
        signs = f"<clef {_CLEFS[part.clef]}/>{_key(bar.key)}{_metre(bar.metre)}"
        staves.append(f'<staffDef n="{part.number}" lines="5">{names}{signs}</staffDef>')
    bracket = ' symbol="bracket" bar.thru="true"' if len(parts) > 1 else ""
    return f"<staffGrp{bracket}>{''.join(staves)}</staffGrp>"


def _names(staff: Staff) -> str:
    name = _text(staff.name) or _text(say(staff.instrument.title))
    short = "" if staff.name else _text(say(staff.instrument.abbreviation))
    return f"<label>{name}</label>" + (f"<labelAbbr>{short}</labelAbbr>" if short else "")


def _key(key: Key) -> str:
    sign = f"{abs(key.fifths)}{'s' if key.fifths > 0 else 'f'}" if key.fifths else "0"
    return f'<keySig sig="{sign}" mode="{key.mode}"/>'


def _metre(metre: Metre) -> str:
    return f'<meterSig count="{metre.beats}" unit="{metre.unit}"/>'


def _changes(parts: Sequence[WrittenPart], index: int) -> str:
    """New keys and a new metre before a bar."""
    keys = [part.has_new_key(index) for part in parts]
    metre = _metre(parts[0].tune.bars[index].metre) if parts[0].has_new_metre(index) else ""
    if index == 0 or not (metre or any(keys)):
        return ""
    signs = {_key(part.tune.bars[index].key) if is_new else "" for part, is_new in zip(parts, keys, strict=True)}
    if len(signs) == 1:
        return f"<scoreDef>{signs.pop()}{metre}</scoreDef>"
    staves = (
        f'<staffDef n="{part.number}">{_key(part.tune.bars[index].key) if is_new else ""}{metre}</staffDef>'
        for part, is_new in zip(parts, keys, strict=True)
    )
    return f"<scoreDef><staffGrp>{''.join(staves)}</staffGrp></scoreDef>"


# --- Bars ----------------------------------------------------------------------------------------------------------


def _number(bars: Sequence[Bar], index: int) -> str:
    """A pickup is bar 0; the second half of a bar that a repeat sign splits has no number of its own."""
    bar = bars[index]
    is_split = is_split_bar(bars, index)
    fills_metre = bar.duration_ticks == bar.metre.bar_ticks and bar.number != 0 and not is_split
    return f'n="{"X" if is_split else ""}{bar.number}"' + ("" if fills_metre else ' metcon="false"')


def _bar_lines(bars: Sequence[Bar], index: int) -> str:
    left = ' left="rptstart"' if bars[index].opens_repeat else ""
    right = _right_line(bars, index)
    return f'{left} right="{right}"' if right else left


def _right_line(bars: Sequence[Bar], index: int) -> str:
    bar = bars[index]
    if bar.repeats:
        return "rptend"
    return "end" if index + 1 == len(bars) and not bar.goes_on else "dbl" if bar.ends_section else ""


def _ending(bars: Sequence[Bar], index: int) -> str:
    """The start tag of the ending that a bar opens; its bracket is closed at the right where a section ends."""
    if not opens_ending(bars, index):
        return ""
    last = index
    while not closes_ending(bars, last):
        last += 1
    numbers = ", ".join(map(str, bars[index].endings))
    return f'<ending n="{numbers}" lendsym="{"angledown" if _right_line(bars, last) else "none"}">'


def _bar_facts(bars: Sequence[Bar]) -> Iterator[MeiBar]:
    for index, bar in enumerate(bars):
        following = bars[index + 1] if index + 1 < len(bars) else None
        is_split = is_split_bar(bars, index)
        borrowed = is_split and following is not None
        opens_next = following is not None and following.opens_repeat
        yield MeiBar(
            number=str(following.number if borrowed and following is not None else bar.number),
            is_full=not is_split and bar.number != 0,
            ends_section=opens_next or bool(_right_line(bars, index)),
        )


# --- What stands above the staff -------------------------------------------------------------------------------------


def _above(part: WrittenPart) -> Iterator[_Sign]:
    """Tempo marks, then chord symbols, then labels, each in order."""
    tune, number = part.tune, part.number
    if number == 1:
        for onset, word, tempo in tempo_marks(tune):
            if onset > tune.bars[0].start_ticks:
                yield _Sign(onset, "tempo", ' place="above"', _tempo_words(word, tempo, tune.bar_at(onset).metre))
    if part.staff.shows_chords:
        for index, span in enumerate(tune.chords):
            words = f'<rend fontsize="{_CHORD_SIZE}">{_text(chord_words(span))}</rend>'
            yield _Sign(span.onset_ticks, "harm", f' xml:id="s{number}-c{index}"', words)
    for index, label in enumerate(part.staff.labels):
        words = f'<rend fontstyle="italic" fontsize="{_LABEL_SIZE}">{_text(label.text)}{LABEL_PADDING}</rend>'
        attributes = f' xml:id="s{number}-l{index}" place="above" type="{LABEL_CLASS}"'
        yield _Sign(label.onset_ticks, "dir", attributes, words)


def _above_bars(part: WrittenPart) -> Iterator[str]:
    """What stands above the staff, bar by bar."""
    waiting = deque(sorted(_above(part), key=lambda sign: sign.onset_ticks))
    for bar in part.tune.bars:
        found = []
        while waiting and waiting[0].onset_ticks < bar.end_ticks:
            sign = waiting.popleft()
            place = _time_stamp(bar, max(sign.onset_ticks, bar.start_ticks))
            found.append(f'<{sign.tag}{sign.attributes} staff="{part.number}" {place}>{sign.words}</{sign.tag}>')
        yield "".join(found)


def _time_stamp(bar: Bar, ticks: int) -> str:
    return f'tstamp="{1 + (ticks - bar.start_ticks) / bar.metre.unit_ticks:.6g}"'


def _opening_tempo(part: WrittenPart) -> str:
    """The tempo mark at the beginning as one text, its signs in Unicode (``"Swing ♩ = 126"``)."""
    tune = part.tune
    start = tune.bars[0].start_ticks
    marks = [_tempo_words(word, tempo, tune.metre) for onset, word, tempo in tempo_marks(tune) if onset <= start]
    return "  ".join(marks)


def _tempo_words(word: str, tempo: Tempo | None, metre: Metre) -> str:
    words = [_text(word)] if word else []
    if tempo:
        value, is_dotted = beat_value(metre)
        sign = BEAT_SIGNS[value] + ("\N{MUSICAL SYMBOL COMBINING AUGMENTATION DOT}" if is_dotted else "")
        words.append(f"{sign} = {decimal_text(tempo.quarters_per_minute * QUARTER / metre.beat_ticks)}")
    return " ".join(words)


def _opening_jumps(bar: Bar) -> Iterator[str]:
    for jump in bar.jumps:
        if jump in (Jump.SEGNO, Jump.CODA):
            yield f'<repeatMark place="above" staff="1" tstamp="1" func="{jump.value}"/>'


def _closing_jumps(bar: Bar, bars: Sequence[Bar]) -> Iterator[str]:
    """Words of repetition, flush with the bar line."""
    for jump, words in closing_jumps(bar, bars):
        rend = f'<rend fontstyle="italic" fontweight="bold" halign="right">{words}</rend>'
        place = _time_stamp(bar, bar.end_ticks)
        yield f'<dir type="{_JUMP_TYPES[jump]}" place="above" staff="1" {place}>{rend}</dir>'


def _text(text: str) -> str:
    return escape(clean(text))
