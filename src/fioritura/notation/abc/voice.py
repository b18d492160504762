"""From the tokens of one ABC voice to notes: pitches, lengths, ties, slurs, tuplets, signs and texts.

Source: the abc music standard 2.1, sections 4 and 5.

Conventions: accidentals hold to the bar line for the letter in every octave (section 11.3's default) unless
``propagate-accidentals`` says otherwise, those of grace notes in their own octave only; a tie carries them over the
bar line, and one that is only understood at the end of a line ends none. A tie between different pitches is a slur,
as in old books, and an ``x`` with a sign over it is a spacer, as they use it. What can't be read goes to `Faults`. Of
several notes at once one is read (`fioritura.notation.line`); of the voices of an overlay the first is the top one.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from fioritura.notation.abc.bars import BarBuilder, Sound, Ticks, scaled
from fioritura.notation.abc.faults import Faults, UnreadableError
from fioritura.notation.abc.fields import (
    AbcKey,
    read_key,
    read_metre,
    read_properties,
    read_tempo,
    read_unit,
    text_string,
)
from fioritura.notation.abc.lexer import NOTE, Kind, Token
from fioritura.notation.abc.lyrics import Slots
from fioritura.notation.abc.notes import Accidentals, Slurs, length_parts, note_parts
from fioritura.notation.abc.signs import (
    DECORATIONS,
    HAIRPIN_ENDS,
    chord_text,
    is_chord_text,
    jump_named,
    mark_in_words,
)
from fioritura.notation.assemble import RawBar, RawNote, bar_message, bar_numbers
from fioritura.notation.line import TOP, Line, line_taken, pick
from fioritura.theory.metre import WHOLE, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark
from fioritura.words import message

__all__ = ["VoiceReader", "VoiceSettings", "define_symbol"]

MAX_NOTE_WHOLES: Final = 64
MAX_TUPLET: Final = 32

_PLACED: Final = "^_<>@"
_GRACE: Final = re.compile(NOTE)
_GRACE_SIGNS: Final = re.compile(r"[\s/()~.<>\-H-Wh-w`]*")


@dataclass(slots=True)
class VoiceSettings:
    """What the header sets and the body may change. `unit` is the unit note length in ticks; `metre` is None in
    free metre; `symbols` are the short forms of decorations; `propagation` is ``not``, ``octave`` or ``pitch``."""

    key: AbcKey
    metre: Metre | None
    unit: Ticks
    symbols: dict[str, str]
    tempo: float = 0.0
    octaves: int = 0
    propagation: str = "pitch"
    is_strict: bool = False


@dataclass(slots=True)
class _Tuplet:
    """`actual` notes in the time of `normal`, for the next `left` notes."""

    actual: int
    normal: int
    left: int


@dataclass(slots=True)
class _Broken:
    """A broken rhythm that waits for its second note: what the first and the second are scaled by."""

    first: Sound
    by: tuple[int, int]
    then: tuple[int, int]


@dataclass(slots=True)
class _Stack:
    """A chord in the making: its notes with their lengths, and the pitches that are tied."""

    token: Token
    notes: list[tuple[Pitch, int, int]] = field(default_factory=list)
    tied: set[Pitch] = field(default_factory=set)


class VoiceReader:
    """Reads the tokens of one voice. After `read`, `words` are the texts that may name a feel."""

    def __init__(self, settings: VoiceSettings, faults: Faults, line: Line = TOP) -> None:
        self.words: list[str] = []
        self._settings = settings
        self._faults = faults
        self._bars = BarBuilder(settings.key.key, settings.metre, settings.tempo)
        self._slots = Slots(settings.is_strict)
        self._accidentals = Accidentals()
        self._marks: list[Mark] = []
        self._graces: list[Pitch] = []
        self._slurs = Slurs()
        self._last: Sound | None = None
        self._tied: RawNote | None = None
        self._tuplet: _Tuplet | None = None
        self._broken: _Broken | None = None
        self._stack: _Stack | None = None
        self._line: Line = line
        self._chosen: list[int] = []
        self._handlers: dict[Kind, Callable[[Token], None]] = {
            "note": self._note,
            "rest": self._rest,
            "bar_rest": self._bar_rest,
            "bar": self._bar_line,
            "ending": self._ending,
            "quoted": self._quoted,
            "graces": self._grace_notes,
            "tuplet": self._tuplet_sign,
            "slur_start": self._slur_start,
            "slur_stop": self._slur_stop,
            "tie": self._tie,
            "broken": self._broken_rhythm,
            "decoration": self._long_decoration,
            "sign": self._short_decoration,
            "chord": self._stack_start,
            "chord_end": self._stack_end,
            "field": self._field,
            "reserved": self._reserved,
            "line_end": self._line_end,
            "other": self._other,
        }

    def read(self, tokens: Iterable[Token]) -> list[RawBar]:
        """The bars of the voice.

        Raises:
            AbcError: something can't be read (with ``irregular="refuse"``).
        """
        handlers = self._handlers
        for token in self._without_overlays(tokens):
            try:
                handlers[token.kind](token)
            except UnreadableError as fault:
                self._faults.meet(token, fault)
        self._slurs.end()
        bars = self._bars.finish()
        if self._bars.cut_endings:
            self._faults.remark(message("abc-ending-cut"))
        if self._chosen and bars:
            first = bar_message(bar_numbers(bars)[min(self._chosen[0], len(bars) - 1)])
            self._faults.remark(line_taken(len(self._chosen), first, self._line))
        return bars

    def _without_overlays(self, tokens: Iterable[Token]) -> Iterator[Token]:
        """The tokens with one of its voices for every bar that has several."""
        voices: list[list[Token]] = [[]]
        for token in tokens:
            if token.kind == "overlay":
                voices.append([])
            elif token.kind != "bar":
                voices[-1].append(token)
            else:
                yield from self._one_voice(voices)
                voices = [[]]
                yield token
        yield from self._one_voice(voices)

    def _one_voice(self, voices: Sequence[Sequence[Token]]) -> Iterator[Token]:
        yield from voices[pick(len(voices), self._line)]
        if len(voices) > 1:
            self._chosen.append(len(self._bars.bars))

    # Notes and rests

    def _note(self, token: Token) -> None:
        alter, step, numerator, denominator = note_parts(token.text)
        pitch = self._spelled(alter, step)
        if self._stack:
            self._stack.notes.append((pitch, numerator, denominator))
            return
        self._sound(pitch, numerator, denominator)

    def _rest(self, token: Token) -> None:
        numerator, denominator = length_parts(token.text[1:])
        if self._stack:
            raise UnreadableError("abc-rest-in-chord")
        if not (self._marks and token.text == "x"):
            self._last = self._bars.add(self._length(numerator, denominator), None)
            self._end_tie()
        for mark in self._marks:
            self._faults.leave_out(message("abc-sign-on-rest", sign=f"!{mark}!"))
        self._marks.clear()

    def _bar_rest(self, token: Token) -> None:
        digits = token.text[1:]
        if len(digits) > 3 or digits in {"0", "00", "000"}:
            raise UnreadableError("abc-bar-rest-count")
        self._bars.add_bar_rests(int(digits or 1))
        self._end_tie()

    def _spelled(self, alter: int | None, step: int, *, is_grace: bool = False) -> Pitch:
        settings = self._settings
        tied = self._tied.pitch if self._tied else None
        propagation = "octave" if is_grace and settings.propagation == "pitch" else settings.propagation
        return self._accidentals.pitch(alter, step + 7 * settings.octaves, settings.key.alters, tied, propagation)

    def _length(self, numerator: int, denominator: int) -> Ticks:
        length = scaled(self._settings.unit, numerator, denominator)
        if self._tuplet:
            length = scaled(length, self._tuplet.normal, self._tuplet.actual)
        if self._broken:
            self._bars.stretch(self._broken.first, *self._broken.by)
            length = scaled(length, *self._broken.then)
        if not 1 <= length <= MAX_NOTE_WHOLES * WHOLE:
            raise UnreadableError("abc-note-length", shortest=f"1/{WHOLE}", longest=MAX_NOTE_WHOLES)
        self._broken = None
        if self._tuplet:
            self._tuplet.left -= 1
            if not self._tuplet.left:
                self._tuplet = None
        return length

    def _sound(self, pitch: Pitch, numerator: int, denominator: int) -> Sound:
        note = RawNote(0, 0, pitch)
        sound = self._bars.add(self._length(numerator, denominator), note)
        self._slots.add(sound)
        self._last = sound
        if self._tied and self._tied.pitch.midi != pitch.midi:
            self._read_as_slur(self._tied, note)
        self._tied = None
        if self._graces:
            note.graces = tuple(self._graces)
            self._graces.clear()
        if self._marks:
            note.marks += tuple(dict.fromkeys(self._marks))
            self._marks.clear()
        self._slurs.meet(note)
        return sound

    # Ties, slurs, tuplets

    def _tie(self, token: Token) -> None:
        if self._stack:
            if self._stack.notes:
                self._stack.tied.add(self._stack.notes[-1][0])
        elif self._last and self._last.note:
            self._last.note.is_tied = True
            self._tied = self._last.note
        else:
            self._faults.warn(token, message("abc-tie-loose"))

    def _end_tie(self) -> None:
        if self._tied:
            self._tied.is_tied = False
            self._tied = None

    def _read_as_slur(self, first: RawNote, second: RawNote) -> None:
        first.is_tied = False
        self._faults.count("abc-ties-as-slurs")
        self._slurs.join(first, second)

    def _slur_start(self, _: Token) -> None:
        self._slurs.start()

    def _slur_stop(self, token: Token) -> None:
        if not self._slurs.stop(self._last.note if self._last else None):
            self._faults.warn(token, message("abc-slur-end-loose"))

    def _tuplet_sign(self, token: Token) -> None:
        pieces = [int(piece[:4] or 0) for piece in token.text[1:].split(":")]
        actual, normal, count = (*pieces, 0, 0)[:3]
        if not normal:
            metre = self._settings.metre
            normal = {2: 3, 3: 2, 4: 3, 6: 2, 8: 3}.get(actual) or (3 if metre and metre.is_compound else 2)
        count = count or actual
        if not (2 <= actual <= MAX_TUPLET and normal <= MAX_TUPLET and count <= 2 * MAX_TUPLET):
            raise UnreadableError("abc-tuplet-outside", limit=MAX_TUPLET)
        self._tuplet = _Tuplet(actual, normal, count)

    def _broken_rhythm(self, token: Token) -> None:
        if self._last is None or self._broken or len(token.text) > 3:
            raise UnreadableError("abc-broken-misplaced")
        half = 2 ** len(token.text)
        long, short = (2 * half - 1, half), (1, half)
        first, second = (long, short) if token.text[0] == ">" else (short, long)
        self._broken = _Broken(self._last, first, second)

    def _grace_notes(self, token: Token) -> None:
        graces: list[Pitch] = []
        place = 1
        for match in _GRACE.finditer(token.text, 1, len(token.text) - 1):
            self._check_between_graces(token, place, match.start())
            alter, step, _, _ = note_parts(match[0])
            graces.append(self._spelled(alter, step, is_grace=True))
            place = match.end()
        self._check_between_graces(token, place, len(token.text) - 1)
        self._graces += graces

    @staticmethod
    def _check_between_graces(token: Token, start: int, end: int) -> None:
        if not _GRACE_SIGNS.fullmatch(token.text, start, end):
            raise UnreadableError("abc-among-graces", given=token.text[start:end].strip())

    # Several notes at once

    def _stack_start(self, token: Token) -> None:
        if self._stack:
            raise UnreadableError("abc-chord-in-chord")
        self._stack = _Stack(token)

    def _stack_end(self, token: Token) -> None:
        stack, self._stack = self._stack, None
        if stack is None or not stack.notes:
            raise UnreadableError("abc-chord-end-loose")
        pitches = {pitch.midi: pitch for pitch, _, _ in stack.notes}
        taken = pitches[sorted(pitches, reverse=True)[pick(len(pitches), self._line)]]
        numerator, denominator = length_parts(token.text[1:])
        _, inner_numerator, inner_denominator = stack.notes[0]
        sound = self._sound(taken, numerator * inner_numerator, denominator * inner_denominator)
        if len(pitches) > 1:
            self._chosen.append(sound.bar.index)
        if taken in stack.tied:
            self._tie(token)

    # Bar lines and lines

    def _bar_line(self, token: Token) -> None:
        if self._stack:
            self._stack = None
            raise UnreadableError("abc-chord-open")
        if self._broken:
            self._broken = None
            raise UnreadableError("abc-broken-open")
        if self._bars.bar_line(token.text):
            self._accidentals.end_bar()
            if ":" in token.text:
                self._end_tie()

    def _ending(self, token: Token) -> None:
        self._bars.start_ending(token.text[1:])

    def _line_end(self, _: Token) -> None:
        if self._bars.end_line():
            self._faults.count("abc-bar-lines-understood")
        self._slots.end_line()

    # Signs and texts

    def _short_decoration(self, token: Token) -> None:
        name = self._settings.symbols.get(token.text)
        if name is None:
            self._faults.leave_out(token.text)
        elif name[0] == '"':
            self._text(name[1:])
        else:
            self._decorate(name)

    def _long_decoration(self, token: Token) -> None:
        name = token.text[1:-1]
        if token.text[0] == "+" and not self._is_decoration(name) and _GRACE.match(name):
            self._old_chord(token)
            return
        self._decorate(name)

    def _old_chord(self, token: Token) -> None:
        """A chord between plus signs, as in the first versions of ABC (section 10.2.3)."""
        self._stack_start(token)
        for match in _GRACE.finditer(token.text):
            self._note(token._replace(text=match[0]))
        self._stack_end(token._replace(text="]"))

    @staticmethod
    def _is_decoration(name: str) -> bool:
        return name.lower() in DECORATIONS or name.lower() in HAIRPIN_ENDS or jump_named(name) is not None

    def _decorate(self, name: str) -> None:
        mark = DECORATIONS.get(name.lower())
        jump = None if mark else jump_named(name)
        if mark:
            self._marks.append(mark)
        elif jump:
            self._bars.add_jump(jump)
        elif name.lower() in HAIRPIN_ENDS:
            self._end_hairpin()
        elif name.lower() not in {"nil", "none", "trill)"}:
            self._faults.leave_out(f"!{name}!")

    def _end_hairpin(self) -> None:
        if self._last and self._last.note:
            self._last.note.marks += (Mark.HAIRPIN_STOP,)

    def _quoted(self, token: Token) -> None:
        self._text(token.text[1:-1])

    def _text(self, quoted: str) -> None:
        """A chord symbol, or a text that may say where to jump or what mark to play."""
        is_placed = quoted[:1] in _PLACED and quoted != ""
        text = text_string(quoted[1:] if is_placed else quoted)
        jump, mark = jump_named(text), mark_in_words(quoted)
        if jump:
            self._bars.add_jump(jump)
        elif not is_placed and is_chord_text(text):
            self._bars.add_chord(chord_text(text))
        elif mark:
            self._marks.append(mark)
        elif text and quoted != ">)":
            self.words.append(text)
            self._faults.leave_out(f'"{text}"')

    def _reserved(self, token: Token) -> None:
        self._faults.leave_out(token.text)

    def _other(self, _: Token) -> None:
        raise UnreadableError("abc-unknown-sign")

    # Fields in the body

    def _field(self, token: Token) -> None:
        letter, text = token.text[0], token.text[2:].strip()
        settings = self._settings
        if letter == "K":
            self._set_key(text)
        elif letter == "M":
            settings.metre, warning = read_metre(text)
            self._bars.set_metre(settings.metre)
            if warning:
                self._faults.warn(token, warning)
        elif letter == "L":
            settings.unit = read_unit(text)
        elif letter == "Q":
            tempo = read_tempo(text, settings.unit)
            self.words.append(tempo.words)
            if tempo.quarters_per_minute:
                self._bars.add_tempo(tempo.quarters_per_minute)
        elif letter == "R":
            self.words.append(text_string(text))
        elif letter == "U":
            define_symbol(settings.symbols, text)
        elif letter == "I":
            self._instruction(text)
        elif letter == "w":
            if not self._slots.set_lyrics(text):
                self._faults.leave_out(message("abc-further-verses"))
        elif letter == "s":
            self._symbol_line(text)

    def _set_key(self, text: str) -> None:
        properties = read_properties(text)
        if properties.octaves is not None:
            self._settings.octaves = properties.octaves
        key = read_key(text, is_lenient=self._faults.is_lenient)
        if key:
            self._settings.key = key
            self._bars.set_key(key.key)
            self._faults.remark(key.warning)

    def _instruction(self, text: str) -> None:
        name, _, value = text.partition(" ")
        if name == "propagate-accidentals" and value.strip() in {"not", "octave", "pitch"}:
            self._settings.propagation = value.strip()

    def _symbol_line(self, text: str) -> None:
        for sound, symbol in self._slots.symbols(text):
            name = symbol[1:-1]
            mark = DECORATIONS.get(name.lower())
            if symbol[0] == '"' and name[:1] not in _PLACED and is_chord_text(text_string(name)):
                sound.bar.chords.append((sound.start, chord_text(text_string(name))))
            elif mark and sound.note:
                sound.note.marks += (mark,)
            else:
                self._faults.leave_out(symbol)


def define_symbol(symbols: dict[str, str], text: str) -> None:
    """Take a definition of a U: field, ``T = !trill!``, into a table of short forms (section 4.16)."""
    match = re.fullmatch(r'([H-Wh-w~])\s*=\s*(?:!([^!\s]+)!|\+([^+\s]+)\+|("[^"]*)"?)\s*', text.strip())
    if not match:
        raise UnreadableError("abc-no-definition")
    symbols[match[1]] = match[2] or match[3] or match[4]
