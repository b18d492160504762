"""Write one staff of a score as ABC 2.1 (abcnotation.com), at written or sounding pitch.

The text can be read back without loss by `abc_reader` and by other programs: the key of a transposing part carries
``transpose=``, so that what sounds is known; lengths are exact; what the standard has no sign for stands as a text
over the note.

Conventions: four bars a line, beams by the beat (notes under one beam stand together), accidentals where the bar
needs them by any rule in use (the letter in its octave, or in all), chord symbols where they change: a note that
is held under a new chord is tied there. The double repeat sign is written in full, ``:| |:``. A single grace note
is a short one, with a stroke (section 4.12). The end of an ending that nothing else shows is a double bar.
"""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from importlib.metadata import version
from itertools import pairwise
from operator import itemgetter
from typing import Final

from fioritura.errors import OutputError
from fioritura.notation.abc.notes import Accidentals
from fioritura.notation.part_spelling import written_tune
from fioritura.notation.rhythm import Tuplet, WrittenEvent, written_bars
from fioritura.notation.score import Score, Staff
from fioritura.notation.style_words import style_said
from fioritura.theory.key import Key, Mode
from fioritura.theory.metre import EIGHTH, QUARTER, WHOLE, Metre
from fioritura.theory.pitch import Interval, Pitch
from fioritura.tune import LEVEL_MARKS, Bar, Jump, Mark, Note, Tempo, Tune, hairpins
from fioritura.words import say

__all__ = ["write_abc"]

BARS_PER_LINE: Final = 4
UNIT_TICKS: Final = EIGHTH
_BASS_CLEF_BELOW_MIDI: Final = 55

_MODES: Final[dict[Mode, str]] = {
    "major": "",
    "minor": "m",
    "dorian": "dor",
    "phrygian": "phr",
    "lydian": "lyd",
    "mixolydian": "mix",
    "locrian": "loc",
}
_ACCIDENTALS: Final = {-2: "__", -1: "_", 0: "=", 1: "^", 2: "^^"}
_RULES: Final = (("octave", "octave"), ("pitch", "pitch"), ("pitch", "octave"))
"""For what readers let an accidental hold, on a note and on a grace note (see `Accidentals`)."""

_MARKS: Final[dict[Mark, str]] = {
    Mark.STACCATO: ".",
    Mark.TENUTO: "!tenuto!",
    Mark.ACCENT: "!>!",
    Mark.MARCATO: "!marcato!",
    Mark.FERMATA: "!fermata!",
    Mark.BREATH: "!breath!",
    Mark.TRILL: "!trill!",
    Mark.TURN: "!turn!",
    Mark.INVERTED_TURN: "!invertedturn!",
    Mark.MORDENT: "!lowermordent!",
    Mark.INVERTED_MORDENT: "!uppermordent!",
    Mark.ROLL: "~",
    Mark.CRAN: '"^cran"',
    Mark.SCOOP: "!slide!",
    Mark.SHAKE: '"^shake"',
    Mark.FALL: '"^fall"',
    Mark.DOIT: '"^doit"',
    Mark.GHOST: '"<("">)"',
    Mark.VIBRATO: '"^vibrato"',
    **{level: f"!{level.value}!" for level in LEVEL_MARKS},
}
"""Decorations of the standard, or texts where it has none; a ghost note stands in parentheses (section 4.19)."""

_AT_THE_END: Final = frozenset({Mark.FERMATA, Mark.BREATH, Mark.FALL, Mark.DOIT})
_JUMPS: Final[dict[Jump, str]] = {
    Jump.SEGNO: "!segno!",
    Jump.CODA: "!coda!",
    Jump.TO_CODA: "!dacoda!",
    Jump.FINE: "!fine!",
    Jump.DA_CAPO: "!D.C.!",
    Jump.DAL_SEGNO: "!D.S.!",
}
_STARTING_JUMPS: Final = (Jump.SEGNO, Jump.CODA)
_AMPERSAND: Final = re.compile(r"&(?=\S)")
_OPEN_SYLLABLE: Final = re.compile(r"(?<!\\)- ")
_USUAL_TUPLETS: Final = {(3, 2, 3): "(3", (2, 3, 2): "(2", (4, 3, 4): "(4"}


def write_abc(score: Score) -> str:
    """The first staff of a score as an ABC tune.

    Raises:
        OutputError: the score has no staff or no bars.
        TuneError: notes of the line overlap or lie outside the bars.
    """
    if not score.staves or not score.tune.bars:
        raise OutputError("score-empty")
    staff = score.staves[0]
    by = Interval(0, 0) if score.is_concert else staff.instrument.transposition
    tune = written_tune(replace(score.tune, notes=staff.line), by)
    lines = [*_header(tune, score, by), *_BodyWriter(tune, staff).lines()]
    return "\n".join(lines) + "\n"


def _header(tune: Tune, score: Score, by: Interval) -> Iterator[str]:
    yield "%abc-2.1"
    yield f"I:abc-creator Fioritura {version('fioritura')}"
    yield "X:1"
    yield f"T:{_text(tune.title)}"
    if score.subtitle:
        yield f"T:{_text(score.subtitle)}"
    if tune.composer:
        yield f"C:{_text(tune.composer)}"
    if tune.origin:
        yield f"O:{_text(tune.origin)}"
    if tune.dance:
        yield f"R:{tune.dance.replace('-', ' ')}"
    yield f"M:{tune.metre}"
    yield f"L:1/{WHOLE // UNIT_TICKS}"
    first = tune.tempos[0] if tune.tempos and tune.tempos[0].onset_ticks <= 0 else None
    said = style_said(tune)
    pace = ([f'"{say(said)}"'] if said else []) + ([_tempo(first, tune.metre)] if first else [])
    if pace:
        yield f"Q:{' '.join(pace)}"
    yield f"K:{_key(tune.key)}{_staff_properties(tune, score.staves[0], by)}"


def _staff_properties(tune: Tune, staff: Staff, by: Interval) -> str:
    pitches = sorted(note.pitch.midi for note in tune.notes)
    is_low = bool(pitches) and pitches[len(pitches) // 2] < _BASS_CLEF_BELOW_MIDI
    is_sounding = by == Interval(0, 0) and staff.instrument.transposition != by
    clef = "bass" if is_sounding and is_low else staff.instrument.clef
    properties = " clef=bass" if clef == "bass" else ""
    return properties + (f" transpose={-by.semitones}" if by.semitones else "")


@dataclass(frozen=True, slots=True)
class _Piece:
    """A note value or rest, or a part of one that a chord symbol or tempo cuts; `fields` and `texts` stand before
    it."""

    event: WrittenEvent
    onset_ticks: int
    end_ticks: int
    fields: str = ""
    texts: str = ""

    @property
    def note(self) -> Note | None:
        return self.event.note

    @property
    def is_first(self) -> bool:
        return self.note is not None and self.onset_ticks == self.note.onset_ticks

    @property
    def is_last(self) -> bool:
        return self.note is not None and self.end_ticks == self.note.end_ticks

    @property
    def continues_beam(self) -> bool:
        """True when the piece stands under one beam with what is before it."""
        if self.onset_ticks > self.event.onset_ticks:
            return True
        return bool(self.event.beams) and self.event.beams[0] in {"continue", "end"}


class _BodyWriter:
    """Writes the bars, line by line."""

    def __init__(self, tune: Tune, staff: Staff) -> None:
        self._tune = tune
        self._fields = deque(_tempo_fields(tune))
        self._texts = deque(sorted(_texts(tune, staff), key=itemgetter(0)))
        self._cuts = {tempo.onset_ticks for tempo in tune.tempos}
        self._cuts.update(span.onset_ticks for span in tune.chords if staff.shows_chords)
        self._memories = [Accidentals() for _ in _RULES]
        self._signature: tuple[int, ...] = ()
        spans = list(hairpins(tune.notes))
        self._hairpin_starts = {start: kind for start, _, kind in spans}
        self._hairpin_stops = {stop: kind for _, stop, kind in spans}

    def lines(self) -> Iterator[str]:
        """Lines of music, each with its lyrics below where the tune has any."""
        bars = self._tune.bars
        has_lyrics = any(note.lyric for note in self._tune.notes)
        music = _opening_line(bars) + _ending(bars, 0)
        syllables: list[str] = []
        for index, written in enumerate(written_bars(self._tune.notes, bars)):
            pieces = list(self._pieces(written.events, written.bar))
            music += self._bar(index, pieces)
            syllables += (_syllable(piece) for piece in pieces if piece.note)
            is_last = index + 1 == len(bars)
            ending = "" if is_last else _ending(bars, index + 1)
            if is_last or _ends_line(written.bar, bars[index + 1]):
                yield music
                if has_lyrics and syllables:
                    yield _OPEN_SYLLABLE.sub("-", f"w:{' '.join(syllables)}".rstrip("* "))
                music, syllables = ending, []
            else:
                music += _shortened(ending, music) or " "

    def _bar(self, index: int, pieces: Sequence[_Piece]) -> str:
        bars = self._tune.bars
        bar = bars[index]
        self._signature = tuple(bar.key.alter(letter) for letter in range(7))
        if index and _bar_line(bars, index - 1):
            for memory in self._memories:
                memory.end_bar()
        text = self._changes(index)
        text += "".join(_JUMPS[jump] for jump in bar.jumps if jump in _STARTING_JUMPS)
        for number, piece in enumerate(pieces):
            text += "" if number == 0 or piece.continues_beam else " "
            text += _tuplet(pieces, number) + self._piece(piece)
        closing = "".join(_JUMPS[jump] for jump in bar.jumps if jump not in _STARTING_JUMPS)
        return f"{text} {closing}{_bar_line(bars, index)}".rstrip()

    def _changes(self, index: int) -> str:
        """Inline fields where metre or key change."""
        bar, before = self._tune.bars[index], self._tune.bars[max(0, index - 1)]
        metre = f"[M:{bar.metre}]" if bar.metre != before.metre else ""
        return metre + (f"[K:{_key(bar.key)}]" if bar.key != before.key else "")

    def _pieces(self, events: Sequence[WrittenEvent], bar: Bar) -> Iterator[_Piece]:
        """The events of a bar, cut where a chord changes inside one, with the signs before each."""
        for event in events:
            inside = sorted(place for place in self._cuts if event.onset_ticks < place < event.end_ticks)
            for start, end in pairwise((event.onset_ticks, *inside, event.end_ticks)):
                yield _Piece(event, start, end, _taken(self._fields, end), _taken(self._texts, end))

    def _piece(self, piece: _Piece) -> str:
        """Texts, grace notes, marks, note, length, tie, slurs, in the standard's order (section 4.20)."""
        note = piece.note
        length = _length(piece)
        if note is None:
            return f"{piece.fields}{piece.texts}z{length}"
        slur = "(" if piece.is_first and Mark.SLUR_START in note.marks else ""
        graces = self._graces(note) if piece.is_first else ""
        marks = "".join(
            _MARKS[mark]
            for mark in note.marks
            if mark in _MARKS and (piece.is_last if mark in _AT_THE_END else piece.is_first)
        )
        tie = "" if piece.is_last else "-"
        slur_end = ")" if piece.is_last and Mark.SLUR_STOP in note.marks else ""
        index = piece.event.index
        opening = (
            f"!{self._hairpin_starts[index].value}(!" if piece.is_first and index in self._hairpin_starts else ""
        )
        closing = f"!{self._hairpin_stops[index].value})!" if piece.is_last and index in self._hairpin_stops else ""
        before = f"{piece.fields}{graces}{piece.texts}{slur}{opening}{marks}"
        return f"{before}{self._pitch(note.pitch)}{length}{tie}{slur_end}{closing}"

    def _graces(self, note: Note) -> str:
        pitches = "".join(self._pitch(grace, is_grace=True) for grace in note.graces)
        return f"{{{'/' * (len(note.graces) == 1)}{pitches}}}" if pitches else ""

    def _pitch(self, pitch: Pitch, *, is_grace: bool = False) -> str:
        """A note with the accidental that the bar needs by any of the rules in use."""
        if abs(pitch.alter) > 2:
            pitch = pitch.respelled()
        octave = pitch.octave
        name = pitch.letter.lower() + "'" * (octave - 5) if octave >= 5 else pitch.letter + "," * (4 - octave)
        if all(self._read(memory, None, pitch.step, "not") == pitch for memory in self._memories):
            return name
        for memory, (for_notes, for_graces) in zip(self._memories, _RULES, strict=True):
            self._read(memory, pitch.alter, pitch.step, for_graces if is_grace else for_notes)
        return _ACCIDENTALS[pitch.alter] + name

    def _read(self, memory: Accidentals, alter: int | None, step: int, propagation: str) -> Pitch:
        return memory.pitch(alter, step, self._signature, None, propagation)


def _tempo_fields(tune: Tune) -> Iterator[tuple[int, str]]:
    for tempo in tune.tempos:
        if tempo.onset_ticks > 0:
            yield tempo.onset_ticks, f"[Q:{_tempo(tempo, tune.bar_at(tempo.onset_ticks).metre)}]"


def _texts(tune: Tune, staff: Staff) -> Iterator[tuple[int, str]]:
    """Chord symbols and labels with their places."""
    if staff.shows_chords:
        for span in tune.chords:
            text = _quotable(span.text)
            yield span.onset_ticks, f'"({text})"' if span.is_inferred else f'"{text}"'
    for label in staff.labels:
        yield label.onset_ticks, f'"^{_quotable(label.text)}"'


def _taken(signs: deque[tuple[int, str]], end_ticks: int) -> str:
    """Take what stands before a place out of a queue of signs."""
    text = ""
    while signs and signs[0][0] < end_ticks:
        text += signs.popleft()[1]
    return text


def _ends_line(bar: Bar, following: Bar) -> bool:
    return bar.number > 0 and bar.number % BARS_PER_LINE == 0 and following.number != bar.number


def _length(piece: _Piece) -> str:
    """A length in unit notes: ``"3/2"``, ``"/"`` for a half; exact where no note value is."""
    ticks = Fraction(piece.end_ticks - piece.onset_ticks)
    tuplet = piece.event.tuplet
    units = ticks * Fraction(tuplet.actual, tuplet.normal) / UNIT_TICKS if tuplet else ticks / UNIT_TICKS
    upper = "" if units.numerator == 1 else str(units.numerator)
    lower = "" if units.denominator == 1 else "/" if units.denominator == 2 else f"/{units.denominator}"
    return upper + lower


def _tuplet(pieces: Sequence[_Piece], number: int) -> str:
    """The sign before the first note of a tuplet, with the number of notes as they are written here."""
    piece = pieces[number]
    tuplet = piece.event.tuplet
    if tuplet is None or not tuplet.starts or piece.onset_ticks > piece.event.onset_ticks:
        return ""
    count = _group_length(pieces[number:])
    group = (tuplet.actual, tuplet.normal, count)
    return _USUAL_TUPLETS.get(group) or f"({tuplet.actual}:{tuplet.normal}:{count}"


def _group_length(pieces: Sequence[_Piece]) -> int:
    last: Tuplet | None = None
    for count, piece in enumerate(pieces):
        if last is not None and last.stops and piece.onset_ticks == piece.event.onset_ticks:
            return count
        last = piece.event.tuplet
    return len(pieces)


def _opening_line(bars: Sequence[Bar]) -> str:
    return "|:" if bars[0].opens_repeat or _repeat_passes_double_bar(bars) else ""


def _repeat_passes_double_bar(bars: Sequence[Bar]) -> bool:
    """True when the first repeat goes back to the beginning over a double bar, where ABC would stop."""
    for bar in bars:
        if bar.opens_repeat:
            return False
        if bar.repeats:
            return any(other.ends_section for other in bars[: bars.index(bar)])
    return False


def _bar_line(bars: Sequence[Bar], index: int) -> str:
    """The line after a bar, with its repeats; none inside a bar that an ending splits."""
    bar = bars[index]
    following = bars[index + 1] if index + 1 < len(bars) else None
    dots = ":" * (1 if bar.endings and bar.repeats else bar.repeats)
    if following is None:
        return f"{dots}|" if dots else "|" if bars[index].goes_on else "|]"
    if following.opens_repeat:
        return f"{dots}| |:" if dots else f"{'|' * bar.ends_section}|:"
    if dots:
        return f"{dots}|"
    if bar.ends_section or (bar.endings and not following.endings):
        return "||"
    return "" if following.number == bar.number and _ending(bars, index + 1) else "|"


def _ending(bars: Sequence[Bar], index: int) -> str:
    """The numbers of an ending that begins with a bar: ``"[1 "``, ``"[1,3 "``."""
    numbers = bars[index].endings
    if not numbers or (index and bars[index - 1].endings == numbers):
        return ""
    return f"[{','.join(map(str, numbers))} "


def _shortened(ending: str, music: str) -> str:
    """``"[1 "`` after a single bar line or an end of repeat is ``"1 "`` (section 4.9)."""
    is_short = music.endswith("|") and not music.endswith("||") and "," not in ending
    return ending.removeprefix("[") if is_short else ending


def _key(key: Key) -> str:
    return f"{key.tonic}{_MODES[key.mode]}"


def _tempo(tempo: Tempo, metre: Metre) -> str:
    """The tempo by the metre's beat where that is a whole number, else by quarter notes."""
    beat = Fraction(metre.beat_ticks, WHOLE)
    rate = tempo.quarters_per_minute * QUARTER / metre.beat_ticks
    if not rate.is_integer():
        beat, rate = Fraction(1, 4), tempo.quarters_per_minute
    return f"{beat.numerator}/{beat.denominator}={f'{rate:.3f}'.rstrip('0').rstrip('.')}"


def _text(text: str) -> str:
    """A text string with what has a meaning in ABC escaped (section 8.2)."""
    plain = " ".join(text.split()).replace("\\", "\\\\")
    return _AMPERSAND.sub(r"\\&", plain.replace("%", "\\%"))


def _quotable(text: str) -> str:
    return _text(text).replace('"', "\\u0022")


def _syllable(piece: _Piece) -> str:
    """What stands under a note: its syllable, ``*`` for none; a tied piece holds the one before."""
    lyric = piece.note.lyric if piece.note and piece.is_first else ""
    if not lyric:
        return "*"
    ends_open = lyric.endswith("-") and len(lyric) > 1
    word = _text(lyric[:-1] if ends_open else lyric).replace("-", "\\-").replace(" ", "~")
    for sign, other in (("*", "\u2217"), ("_", "\uff3f"), ("|", "\u2223")):
        word = word.replace(sign, other)
    return word + ("-" if ends_open else "")
