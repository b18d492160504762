"""Read ABC: one tune, a whole book, or single tunes of a book of thousands.

Source: the abc music standard 2.1 (December 2011), abcnotation.com; earlier dialects are understood where they do
not contradict it. The work is shared: `abc_lexer` cuts the text, `abc_fields` and `abc_signs` say what it means,
`abc_sheet` sorts header and voices, `abc_voice` and `abc_bars` make notes and bars, `assemble` checks the whole.

Known deviations: macros (m:) are not expanded, an ornament sign stays a sign; of several verses the first is kept;
voices other than the melody, and voice overlays, are left out. All of it is said in the tune's warnings.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from fioritura.notation.abc.faults import AbcError, Faults, UnreadableError
from fioritura.notation.abc.fields import read_properties, text_string
from fioritura.notation.abc.lexer import TuneText, header_fields, split_book
from fioritura.notation.abc.notes import note_parts
from fioritura.notation.abc.sheet import Voice, read_sheet
from fioritura.notation.abc.signs import is_chord_text
from fioritura.notation.abc.voice import VoiceReader
from fioritura.notation.assemble import Irregular, RawTune, assemble
from fioritura.notation.line import TOP, Line
from fioritura.notation.part_choice import PartSummary, choose_part, part_list
from fioritura.theory.pitch import Interval, Pitch
from fioritura.tune import Tune, transpose
from fioritura.words import Message, message

__all__ = ["AbcEntry", "AbcError", "iter_abc", "list_abc", "read_abc"]

_STEPS: Final = (0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6)
"""Staff places of the interval of 0 to 11 semitones that a transposing part is written at."""


@dataclass(frozen=True, slots=True)
class AbcEntry:
    """A tune of a book that has not been read yet. `number` is its X: field (None where that is no number),
    `line` where it begins."""

    number: int | None
    titles: tuple[str, ...]
    line: int
    text: TuneText
    is_alone: bool = True

    @property
    def title(self) -> str:
        """The first T: field."""
        return self.titles[0] if self.titles else ""

    @property
    def source(self) -> Message | None:
        """How messages name the tune: "tune X:12, The Swallow"; None for the only tune of a text."""
        if self.is_alone:
            return None
        place = f"X:{self.number}" if self.number is not None else message("abc-at-line", line=self.line)
        return (
            message("abc-tune-titled", place=place, title=self.title)
            if self.title
            else message("abc-tune", place=place)
        )

    def read(self, *, irregular: Irregular = "refuse", part: str | int | None = None, line: Line = TOP) -> Tune:
        """The tune. `part` names a voice (its id, its name or its number from 1); else the melody is chosen. `line` says
        which of several notes at once is read.

        Raises:
            AbcError: a place can't be read, with line and column (``irregular="refuse"``).
            TuneError: no notes, or bars that do not add up.
            OptionError: there is no such voice.
        """
        faults = Faults(is_lenient=irregular != "refuse")
        sheet = read_sheet(self.text, faults)
        voice = _melody(sheet.voices, part, faults)
        reader = VoiceReader(sheet.settings(voice), faults, line)
        bars = reader.read(voice.tokens)
        raw = RawTune(
            bars=bars,
            title=self.title,
            composer="; ".join(sheet.header.composers),
            part_name=voice.name,
            source=self.source,
            words=sheet.header.words + reader.words,
            origin="; ".join(sheet.header.origins),
            warnings=faults.warnings,
        )
        return _at_sounding_pitch(assemble(raw, irregular=irregular), sheet.semitones(voice))


def list_abc(text: str) -> list[AbcEntry]:
    """The tunes of a text by number, title and line; their music is not read.

    Raises:
        AbcError: a line is longer than 100,000 characters.
    """
    tunes = split_book(text)
    return [_entry(tune, is_alone=len(tunes) == 1) for tune in tunes]


def iter_abc(text: str, *, irregular: Irregular = "refuse") -> Iterator[Tune]:
    """The tunes of a text one after the other, each read when it is asked for; errors as in `AbcEntry.read`."""
    return (entry.read(irregular=irregular) for entry in list_abc(text))


def read_abc(text: str, *, irregular: Irregular = "refuse", part: str | int | None = None) -> list[Tune]:
    """All tunes of a text; errors as in `AbcEntry.read`."""
    return [entry.read(irregular=irregular, part=part) for entry in list_abc(text)]


def _entry(tune: TuneText, *, is_alone: bool) -> AbcEntry:
    number: int | None = None
    titles: list[str] = []
    for letter, text, _ in header_fields(tune.lines):
        if letter == "X" and text.isascii() and text.isdecimal():
            number = int(text[:9])
        elif letter == "T" and text:
            titles.append(text_string(text))
        elif letter == "K":
            break
    return AbcEntry(number, tuple(titles), tune.lines[0].number, tune, is_alone)


def _melody(voices: list[Voice], wanted: str | int | None, faults: Faults) -> Voice:
    """The voice to read; the others are named in a warning."""
    if len(voices) == 1 and wanted is None:
        return voices[0]
    summaries = [_summary(voice) for voice in voices]
    index = choose_part(summaries, wanted)
    if len(voices) > 1:
        others = part_list([summary for place, summary in enumerate(summaries) if place != index])
        faults.remark(message("abc-melody-voice", name=summaries[index].called, others=others))
    return voices[index]


def _summary(voice: Voice) -> PartSummary:
    pitches: list[int] = []
    stacks = 0
    has_chords = False
    for token in voice.tokens:
        if token.kind == "note":
            pitches.append(_midi(token.text))
        elif token.kind in {"chord", "overlay"}:
            stacks += 1
        elif token.kind == "quoted":
            has_chords = has_chords or is_chord_text(token.text[1:-1])
    properties = read_properties(voice.properties)
    shift = 12 * (properties.octaves or 0) + (properties.semitones or 0)
    return PartSummary(
        name=voice.name,
        note_count=len(pitches),
        mean_midi=sum(pitches) / len(pitches) + shift if pitches else 60.0,
        overlap_share=min(1.0, 2 * stacks / len(pitches)) if pitches else 0.0,
        has_chord_symbols=has_chords,
        is_percussion=properties.is_percussion,
        has_bass_clef=properties.is_bass,
    )


def _midi(text: str) -> int:
    try:
        return Pitch(note_parts(text)[1]).midi
    except UnreadableError:
        return 60


def _at_sounding_pitch(tune: Tune, semitones: int) -> Tune:
    """The tune of a transposing part as it sounds (``transpose=``, section 4.6)."""
    octaves, rest = divmod(abs(semitones), 12)
    interval = Interval(_STEPS[rest] + 7 * octaves, abs(semitones))
    return transpose(tune, -interval if semitones < 0 else interval)
