"""The lines of one ABC tune as its header and the tokens of its voices (abc 2.1, sections 2.2, 3 and 7)."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Final

from fioritura.notation.abc.bars import Ticks
from fioritura.notation.abc.faults import AbcError, Faults, UnreadableError
from fioritura.notation.abc.fields import (
    AbcKey,
    default_unit,
    part_order,
    read_key,
    read_metre,
    read_properties,
    read_tempo,
    read_unit,
    text_string,
)
from fioritura.notation.abc.lexer import Field, Line, Token, TuneText, header_fields, music_tokens, read_field
from fioritura.notation.abc.parts import in_playing_order
from fioritura.notation.abc.signs import SHORT_FORMS
from fioritura.notation.abc.voice import VoiceSettings, define_symbol
from fioritura.theory.key import Key
from fioritura.theory.metre import Metre
from fioritura.words import message

__all__ = ["AbcTune", "Header", "Voice", "read_sheet"]

_NO_KEY: Final = AbcKey(Key(0), (0,) * 7)


@dataclass(slots=True)
class Header:
    """What the tune's header and the file's say. `words` are texts that may name a feel."""

    titles: list[str] = field(default_factory=list)
    composers: list[str] = field(default_factory=list)
    words: list[str] = field(default_factory=list)
    origins: list[str] = field(default_factory=list)
    key: AbcKey = _NO_KEY
    metre: Metre | None = None
    unit: Ticks = 0
    """The unit note length in ticks."""
    tempo: float = 0.0
    """Quarter notes a minute, 0 where none is given."""
    tempo_field: Field | None = None
    order: list[str] = field(default_factory=list)
    symbols: dict[str, str] = field(default_factory=lambda: dict(SHORT_FORMS))
    propagation: str = "pitch"
    breaks_at_marks: bool = False
    """True where ``!`` breaks lines and marks no decoration (``I:linebreak !``, section 6.1.1)."""
    staff: str = ""
    """The text of the K: field, for clef and transposition."""
    voices: dict[str, str] = field(default_factory=dict)
    """Properties by voice, as the V: fields give them."""
    frame: dict[str, Token] = field(default_factory=dict)
    """The K:, M: and L: fields."""


@dataclass(slots=True)
class Voice:
    """One voice's tokens, and its properties as text."""

    id: str
    properties: str = ""
    tokens: list[Token] = field(default_factory=list)

    @property
    def name(self) -> str:
        """The name that stands before the staff, else the voice's id."""
        return text_string(read_properties(self.properties).name or "") or self.id


@dataclass(slots=True)
class AbcTune:
    """A tune's header and its voices in order of appearance."""

    header: Header
    voices: list[Voice]
    is_strict: bool

    def settings(self, voice: Voice) -> VoiceSettings:
        """What a voice begins with."""
        header = self.header
        of_key, of_voice = read_properties(header.staff), read_properties(voice.properties)
        return VoiceSettings(
            key=header.key,
            metre=header.metre,
            unit=header.unit,
            symbols=dict(header.symbols),
            tempo=header.tempo,
            octaves=of_voice.octaves if of_voice.octaves is not None else of_key.octaves or 0,
            propagation=header.propagation,
            is_strict=self.is_strict,
        )

    def semitones(self, voice: Voice) -> int:
        """How far the voice sounds above what is written (``transpose=``)."""
        of_voice = read_properties(voice.properties).semitones
        return of_voice if of_voice is not None else read_properties(self.header.staff).semitones or 0


def read_sheet(tune: TuneText, faults: Faults) -> AbcTune:
    """Header and voices of a tune.

    Raises:
        AbcError: a field can't be read, or the tune has no K: field (unless the faults are lenient).
    """
    header = Header()
    start = _body_start(tune, faults)
    for piece in header_fields((*tune.file_header, *tune.lines[:start])):
        _take(header, piece, faults)
    header.unit = header.unit or default_unit(header.metre)
    _settle_tempo(header, faults)
    voices = _body(tune.lines[start:], header, faults)
    for voice in voices:
        voice.tokens, warning = in_playing_order(voice.tokens, header.order, list(header.frame.values()))
        faults.remark(warning)
    return AbcTune(header, voices, tune.is_strict)


def _body_start(tune: TuneText, faults: Faults) -> int:
    """The index of the line after the K: field, which ends the header; of the first music where K: is missing."""
    for index, line in enumerate(tune.lines):
        if line.text.startswith("K:"):
            return index + 1
    for index, line in enumerate(tune.lines):
        if _is_music(line):
            faults.remark(message("abc-no-key-field"))
            return index
    first = tune.lines[0]
    raise AbcError(message("abc-no-key-no-music"), line=first.number, column=1, text=first.text)


def _is_music(line: Line) -> bool:
    """True for a line that is certainly music code: it has a bar line and nothing strange."""
    if "|" not in line.text or read_field(line, in_body=True):
        return False
    return all(token.kind != "other" for token in music_tokens(line))


def _take(header: Header, piece: Field, faults: Faults) -> None:
    """Note one field of the header."""
    letter, text, token = piece
    if letter == "T" and text:
        header.titles.append(text_string(text))
    elif letter == "C" and text:
        header.composers.append(text_string(text))
    elif letter == "R":
        header.words.append(text_string(text))
    elif letter == "O" and text:
        header.origins.append(text_string(text))
    elif letter == "m":
        faults.warn(token, message("abc-macros"))
    elif letter == "Q":
        header.tempo_field = piece
    elif letter == "V":
        _take_voice(header, text)
    elif letter in _INSTRUCTIONS:
        if letter in "KML":
            header.frame[letter] = token._replace(text=f"{letter}:{text}")
        try:
            _INSTRUCTIONS[letter](header, text, token, faults)
        except UnreadableError as fault:
            faults.meet(token, fault)


def _take_voice(header: Header, text: str) -> None:
    name, _, properties = text.partition(" ")
    header.voices[name] = f"{header.voices.get(name, '')} {properties}".strip()


def _take_key(header: Header, text: str, _: Token, faults: Faults) -> None:
    header.staff = text
    key = read_key(text, is_lenient=faults.is_lenient)
    if key:
        header.key = key
        faults.remark(key.warning)


def _take_metre(header: Header, text: str, token: Token, faults: Faults) -> None:
    header.metre, warning = read_metre(text)
    if warning:
        faults.warn(token, warning)


def _take_unit(header: Header, text: str, _: Token, __: Faults) -> None:
    header.unit = read_unit(text)


def _settle_tempo(header: Header, faults: Faults) -> None:
    """Read the Q: field, whose oldest form counts unit notes."""
    if header.tempo_field is None:
        return
    try:
        tempo = read_tempo(header.tempo_field.text, header.unit)
    except UnreadableError as fault:
        faults.meet(header.tempo_field.token, fault)
    else:
        header.tempo = tempo.quarters_per_minute
        header.words.append(tempo.words)


def _take_order(header: Header, text: str, _: Token, __: Faults) -> None:
    header.order = part_order(text)


def _take_symbol(header: Header, text: str, _: Token, __: Faults) -> None:
    define_symbol(header.symbols, text)


def _take_instruction(header: Header, text: str, _: Token, __: Faults) -> None:
    name, _space, value = text.partition(" ")
    if name == "propagate-accidentals" and value.strip() in {"not", "octave", "pitch"}:
        header.propagation = value.strip()
    elif name == "linebreak":
        header.breaks_at_marks = "!" in value


_INSTRUCTIONS: Final[dict[str, Callable[[Header, str, Token, Faults], None]]] = {
    "K": _take_key,
    "M": _take_metre,
    "L": _take_unit,
    "P": _take_order,
    "U": _take_symbol,
    "I": _take_instruction,
}


def _body(lines: Sequence[Line], header: Header, faults: Faults) -> list[Voice]:
    """The voices of the body. Fields before the first V: hold for all of them; music there is a voice of its own."""
    unnamed = Voice("")
    voices: dict[str, Voice] = {}
    current = unnamed.tokens
    for line in _lines_of_tune(lines, faults):
        if header.breaks_at_marks:
            line = line._replace(text=line.text.replace("!", " "))
        for token in _line_tokens(line):
            if token.kind != "field" or token.text[0] != "V":
                _append(current, token)
                continue
            name, _, properties = token.text[2:].strip().partition(" ")
            if name not in voices:
                fields = [piece for piece in unnamed.tokens if piece.kind == "field" and piece.text[0] not in "ws"]
                voices[name] = Voice(name, header.voices.get(name, ""), fields)
            voices[name].properties = f"{voices[name].properties} {properties}".strip()
            current = voices[name].tokens
    has_own_music = not voices or any(token.kind != "field" for token in unnamed.tokens)
    return [unnamed] * has_own_music + list(voices.values())


def _append(tokens: list[Token], token: Token) -> None:
    """Add a token; a continuation line (``+:``) lengthens the field before it."""
    if token.kind == "field" and token.text.startswith("+:"):
        if tokens and tokens[-1].kind == "field":
            tokens[-1] = tokens[-1]._replace(text=f"{tokens[-1].text} {token.text[2:].strip()}")
    else:
        tokens.append(token)


def _line_tokens(line: Line) -> list[Token]:
    """The tokens of a line of the body; a line of music ends with one that says so, unless it is continued."""
    piece = read_field(line, in_body=True)
    if piece:
        return [piece.token._replace(text=f"{piece.letter}:{piece.text}")]
    tokens = list(music_tokens(line))
    if tokens and not line.is_continued:
        tokens.append(Token("line_end", "", line.number, len(line.text) + 1))
    return tokens


def _lines_of_tune(lines: Sequence[Line], faults: Faults) -> list[Line]:
    """The lines up to the empty line that ends the tune (section 2.2.1).

    Music after it is reported; a lenient reading takes it in, as old books have empty lines inside tunes.
    """
    end = next((index for index, line in enumerate(lines) if not line.text.strip()), len(lines))
    taken = list(lines[:end])
    for line in lines[end:]:
        if not _is_music(line):
            continue
        if not faults.is_lenient:
            faults.remark(message("abc-music-after-gap", line=line.number))
            break
        faults.remark(message("abc-music-after-gap-read", line=line.number))
        taken.append(line)
    return taken
