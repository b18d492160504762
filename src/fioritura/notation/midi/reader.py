"""Read the melody of a Standard MIDI File (formats 0 and 1), played or exported from notation.

Source: The Complete MIDI 1.0 Detailed Specification, "Standard MIDI Files 1.0". The melody track is chosen as the
part of a score is; `midi_rhythm` finds the written rhythm. A key that the file does not name is found from the notes.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterable, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any, Final

from fioritura.errors import ReadError, TuneError
from fioritura.notation.assemble import MAX_BARS, Irregular, RawBar, RawChord, RawNote, RawTempo, RawTune, assemble
from fioritura.notation.midi.rhythm import (
    CrowdedBeatError,
    PlayedNote,
    WrittenNote,
    beats_of,
    swing_place,
    written_rhythm,
)
from fioritura.notation.part_choice import PartSummary, choose_part, part_list
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.key_finding import find_key, spell_between
from fioritura.theory.metre import QUARTER, SIXTEENTH, Metre
from fioritura.theory.pitch import NoteName, Pitch
from fioritura.tune import Tune
from fioritura.words import Message, message, say

__all__ = ["MAX_MIDI_BYTES", "read_midi"]

MAX_MIDI_BYTES: Final = 2 * 1024 * 1024
_DRUM_CHANNEL: Final = 9
_LEAST_CHORD_TEXTS: Final = 3
_PLAINLY_ANOTHER_KEY: Final = 0.15
"""By how much more of the sounding time another key's scale must hold than C major's."""
_RUNAWAY: Final = re.compile(rb"[\x80-\xff]{1000}")
"""Bytes that would be one endless variable-length number; no real file holds so many in a row."""

_FAMILIES: Final = (
    "piano",
    "chromatic-percussion",
    "organ",
    "guitar",
    "bass",
    "strings",
    "ensemble",
    "brass",
    "reed",
    "pipe",
    "synth-lead",
    "synth-pad",
    "synth-effects",
    "ethnic",
    "percussive",
    "sound-effects",
)
"""General MIDI 1 instrument families, eight programs each."""


@dataclass(slots=True)
class _Part:
    """The notes of one channel of one track; `title` is its name where it has one, with its sound or without."""

    name: str
    title: str | Message
    sound: str
    is_percussion: bool
    notes: list[PlayedNote] = field(default_factory=list)


@dataclass(slots=True)
class _Content:
    """All that the file holds, times in ticks."""

    parts: list[_Part] = field(default_factory=list)
    metres: list[tuple[int, Metre]] = field(default_factory=list)
    keys: list[tuple[int, Key]] = field(default_factory=list)
    tempos: list[tuple[int, float]] = field(default_factory=list)
    texts: list[tuple[int, str]] = field(default_factory=list)
    lyrics: list[tuple[int, str]] = field(default_factory=list)
    title: str = ""
    tolerance: float = 0.0


@dataclass(slots=True)
class _Span:
    """Where a bar lies, before the tune's own start is known."""

    start_ticks: int
    length_ticks: int
    metre: Metre
    is_implicit: bool = False

    @property
    def end_ticks(self) -> int:
        return self.start_ticks + self.length_ticks


def read_midi(data: bytes, *, part: str | int | None = None, irregular: Irregular = "refuse") -> Tune:
    """The melody of a MIDI file.

    `part` (a track's name, part of one, or a number from 1) overrides the choice of the track.

    Raises:
        ReadError: damaged or truncated data, SMPTE timing, format 2, or more than 2 MB.
        TuneError: no melody, several notes at once in it, or a metre or tempo that can't be worked with.
        OptionError: there is no such track.
    """
    content = _content(data)
    summaries = [_summary(source) for source in content.parts]
    chosen = content.parts[choose_part(summaries, part)]
    if not chosen.notes:
        raise TuneError("midi-part-empty", part=chosen.title, parts=part_list(summaries))
    spans = _spans(content.metres, max(note.end for note in chosen.notes))
    notes = _one_at_a_time(chosen.notes, spans, summaries)
    beats = [beat for span in spans for beat in beats_of(span.metre, span.start_ticks, span.length_ticks)]
    swing = swing_place([note.start for note in notes], beats)
    try:
        written = written_rhythm(notes, beats, content.tolerance, swing)
    except CrowdedBeatError as error:
        number = next((n for n, span in enumerate(spans, 1) if error.start_ticks < span.end_ticks), len(spans))
        raise TuneError("midi-bar-crowded", bar=message("bar-name", number=number)) from None
    warnings: list[Message] = []
    if len(summaries) > 1 and part is None:
        warnings.append(message("melody-taken-from", part=chosen.title, parts=part_list(summaries)))
    if swing is not None:
        warnings.append(message("midi-swing-read"))
    bars = _bars(spans, written, content, warnings)
    return assemble(
        RawTune(
            bars,
            title=content.title,
            part_name=say(chosen.title),
            words=[text for _, text in content.texts],
            feel=None if swing is None else "swing",
            warnings=warnings,
        ),
        irregular=irregular,
    )


def _content(data: bytes) -> _Content:
    midi = _parsed(data)
    content = _Content(tolerance=QUARTER / midi.ticks_per_beat * (1.0 if midi.ticks_per_beat >= 96 else 0.5))
    for number, track in enumerate(midi.tracks):
        name = _read_track(track, QUARTER / midi.ticks_per_beat, content)
        if number == 0 and (len(midi.tracks) == 1 or not content.parts):
            content.title = name
    content.keys.sort(key=lambda event: event[0])
    content.metres.sort(key=lambda event: event[0])
    content.tempos.sort(key=lambda event: event[0])
    content.texts.sort(key=lambda event: event[0])
    return content


def _parsed(data: bytes) -> Any:
    """The file as mido reads it (mido has no types)."""
    import mido

    if len(data) > MAX_MIDI_BYTES or _RUNAWAY.search(data):
        raise ReadError("midi-damaged-or-large", limit=MAX_MIDI_BYTES)
    try:
        midi = mido.MidiFile(file=io.BytesIO(data))
    except EOFError:
        raise ReadError("midi-breaks-off") from None
    except (OSError, ValueError, LookupError, TypeError, ArithmeticError, mido.KeySignatureError) as error:
        raise ReadError("midi-damaged", reason=str(error)) from None
    if midi.ticks_per_beat <= 0:
        raise ReadError("midi-smpte")
    if midi.type not in (0, 1):
        raise ReadError("midi-format", given=str(midi.type))
    return midi


def _read_track(track: Any, scale: float, content: _Content) -> str:
    """Sort a track's events into the content; `scale` is ticks for one tick of the file. Gives the track's name."""
    time = 0
    name = ""
    programs: dict[int, int] = {}
    sounding: dict[tuple[int, int], list[float]] = {}
    notes: dict[int, list[PlayedNote]] = {}
    for event in track:
        time += event.time
        place = time * scale
        match event.type:
            case "note_on" if event.velocity:
                sounding.setdefault((event.channel, event.note), []).append(place)
            case "note_on" | "note_off":
                starts = sounding.get((event.channel, event.note))
                if starts and place > starts[0]:
                    notes.setdefault(event.channel, []).append(PlayedNote(starts.pop(0), place, event.note))
            case "program_change":
                programs.setdefault(event.channel, event.program)
            case "track_name":
                name = name or _text(event.name)
            case _ if event.is_meta:
                _read_meta(event, round(place), content)
    for (channel, midi), starts in sounding.items():
        notes.setdefault(channel, []).extend(
            PlayedNote(start, time * scale, midi) for start in starts if time * scale > start
        )
    content.parts += _parts_of_track(name, notes, programs)
    return name


def _parts_of_track(name: str, notes: dict[int, list[PlayedNote]], programs: dict[int, int]) -> list[_Part]:
    """A part for each channel of a track; channels that take turns on one sound, as for bends, are one part."""
    for found in notes.values():
        found.sort(key=lambda note: (note.start, note.midi))
    together = sorted((note for found in notes.values() for note in found), key=lambda note: (note.start, note.midi))
    is_one_sound = len({programs.get(channel) for channel in notes}) == 1 and _DRUM_CHANNEL not in notes
    if len(notes) > 1 and is_one_sound and not any(_is_overlap(*pair) for pair in pairwise(together)):
        notes = {min(notes): together}
    parts: list[_Part] = []
    for channel, found in sorted(notes.items()):
        sound = _FAMILIES[programs[channel] // 8] if channel in programs else ""
        said = message("midi-family", family=sound) if sound else message("midi-channel", number=channel + 1)
        title = (name if len(notes) == 1 else message("midi-part", name=name, sound=said)) if name else said
        parts.append(_Part(name, title, sound, channel == _DRUM_CHANNEL, found))
    return parts


def _read_meta(event: Any, place: int, content: _Content) -> None:
    match event.type:
        case "set_tempo":
            content.tempos.append((place, round(60_000_000 / event.tempo, 2) if event.tempo else float("inf")))
        case "time_signature":
            content.metres.append((place, Metre.parse(f"{event.numerator}/{event.denominator}")))
        case "key_signature":
            content.keys.append((place, _key(event.key)))
        case "marker" | "text" | "cue_marker":
            content.texts.append((place, _text(event.text)))
        case "lyrics":
            content.lyrics.append((place, _text(event.text).strip("/\\ ")))


def _text(text: str) -> str:
    """A text as UTF-8 where it is that (mido hands out the bytes as Latin-1)."""
    with suppress(UnicodeError):
        text = text.encode("latin-1").decode("utf-8")
    return " ".join("".join(sign if sign.isprintable() else " " for sign in text).split())


def _key(name: str) -> Key:
    return Key.of(NoteName.parse(name.removesuffix("m")), "minor" if name.endswith("m") else "major")


def _summary(part: _Part) -> PartSummary:
    together = sum(_is_overlap(first, second) for first, second in pairwise(part.notes))
    count = len(part.notes)
    return PartSummary(
        part.name,
        count,
        mean_midi=sum(note.midi for note in part.notes) / count if count else 0.0,
        overlap_share=together / count if count else 0.0,
        is_percussion=part.is_percussion,
        sound=part.sound,
        title=part.title if isinstance(part.title, Message) else None,
    )


def _is_overlap(first: PlayedNote, second: PlayedNote) -> bool:
    """True when two notes sound together for longer than a legato player lets them."""
    allowed = min(SIXTEENTH, (first.end - first.start) / 2)
    return first.end - second.start > allowed and first.midi != second.midi


def _one_at_a_time(
    notes: Sequence[PlayedNote], spans: Sequence[_Span], summaries: Sequence[PartSummary]
) -> list[PlayedNote]:
    """The notes with legato overlaps cut.

    Raises:
        TuneError: two notes sound together.
    """
    line: list[PlayedNote] = []
    for note in notes:
        if line and _is_overlap(line[-1], note):
            number = next((n for n, span in enumerate(spans, 1) if note.start < span.end_ticks), len(spans))
            raise TuneError(
                "midi-notes-at-once",
                bar=message("bar-name", number=number),
                pitch=Key(0).spell(line[-1].midi),
                other=Key(0).spell(note.midi),
                parts=part_list(summaries),
            )
        if line and line[-1].end > note.start:
            line[-1] = PlayedNote(line[-1].start, note.start, line[-1].midi)
            if line[-1].end <= line[-1].start:
                line.pop()
        line.append(note)
    return line


def _spans(metres: Sequence[tuple[int, Metre]], end: float) -> list[_Span]:
    """The bars up to `end`, one more for what rounding may add; a short first metre is the pickup of the second."""
    changes = dict(metres)
    if 0 not in changes:
        changes[0] = Metre(4, 4)
    places = sorted(changes)
    spans: list[_Span] = []
    for index, place in enumerate(places):
        metre = changes[place]
        stop = places[index + 1] if index + 1 < len(places) else None
        start = place
        while (start < stop) if stop is not None else (not spans or start <= end):
            length = min(metre.bar_ticks, stop - start) if stop is not None else metre.bar_ticks
            spans.append(_Span(start, length, metre, is_implicit=length < metre.bar_ticks))
            start += length
            if len(spans) > MAX_BARS:
                raise TuneError("midi-too-many-bars", limit=MAX_BARS)
        if start > end and spans:
            break
    if len(spans) > 1 and spans[0].length_ticks < spans[1].metre.bar_ticks and spans[0].metre != spans[1].metre:
        spans[0].metre = spans[1].metre
    return spans


def _bars(
    spans: Sequence[_Span], notes: Sequence[WrittenNote], content: _Content, warnings: list[Message]
) -> list[RawBar]:
    spans = _trimmed(spans, notes, warnings)
    begin = spans[0].start_ticks
    tempos = _from(begin, content.tempos)
    chords = _from(begin, _chord_texts(content.texts))
    keys = _settled_keys(content.keys, notes, warnings)
    bars: list[RawBar] = []
    place = 0
    for span in spans:
        key = [key for time, key in keys if time <= span.start_ticks or time == keys[0][0]][-1]
        bar = RawBar(span.metre, key, span.length_ticks, is_implicit=span.is_implicit)
        while place < len(notes) and notes[place].onset_ticks < span.end_ticks:
            before = notes[place - 1].midi if place else None
            after = notes[place + 1].midi if place + 1 < len(notes) else None
            pitch = spell_between(key, notes[place].midi, before, after)
            bar.notes.append(_raw_note(notes[place], pitch, span, key, content))
            place += 1
        bar.tempos = [RawTempo(time - span.start_ticks, value) for time, value in tempos if _inside(time, span)]
        bar.chords = [RawChord(time - span.start_ticks, text) for time, text in chords if _inside(time, span)]
        bars.append(bar)
    return bars


def _raw_note(note: WrittenNote, pitch: Pitch, span: _Span, key: Key, content: _Content) -> RawNote:
    graces = tuple(key.spell(midi, "up" if midi < note.midi else "down") for midi in note.graces)
    lyric = next((text for time, text in content.lyrics if abs(time - note.onset_ticks) < SIXTEENTH // 2), "")
    return RawNote(note.onset_ticks - span.start_ticks, note.duration_ticks, pitch, graces=graces, lyric=lyric)


def _inside(time: int, span: _Span) -> bool:
    return span.start_ticks <= time < span.end_ticks


def _from(begin: int, events: Iterable[tuple[int, Any]]) -> list[tuple[int, Any]]:
    """The events from `begin` on, with the one in force there; one that changes nothing is left out."""
    found: list[tuple[int, Any]] = []
    for time, value in events:
        if found and (time <= begin or found[-1][0] == time):
            found.pop()
        if not found or found[-1][1] != value:
            found.append((max(time, begin), value))
    return found


def _trimmed(spans: Sequence[_Span], notes: Sequence[WrittenNote], warnings: list[Message]) -> list[_Span]:
    """The bars from the first note's to the last one's; a first bar that begins late becomes a pickup."""
    first, end = notes[0].onset_ticks, max(note.onset_ticks + note.duration_ticks for note in notes)
    kept = [span for span in spans if span.end_ticks > first and span.start_ticks < end]
    silent = spans.index(kept[0])
    if silent:
        warnings.append(message("midi-silent-bars", count=silent))
    late = first - kept[0].start_ticks
    if len(kept) > 1 and 2 * late >= kept[0].length_ticks and not kept[0].is_implicit:
        beats = beats_of(kept[0].metre, kept[0].start_ticks, kept[0].length_ticks)
        start = max(beat.start_ticks for beat in beats if beat.start_ticks <= first)
        kept[0] = _Span(start, kept[0].end_ticks - start, kept[0].metre)
    return kept


def _chord_texts(texts: Sequence[tuple[int, str]]) -> list[tuple[int, str]]:
    """The texts that are chord symbols, where chord symbols are what the file's texts are for."""
    chords = [(time, text) for time, text in texts if _is_chord(text)]
    letters = {text for _, text in chords if len(text) == 1}
    are_marks = len(letters) == len({text for _, text in chords}) and sorted(letters) == list(
        "ABCDEFG"[: len(letters)]
    )
    if len(chords) < _LEAST_CHORD_TEXTS or 2 * len(chords) < len(texts) or are_marks:
        return []
    return [(round(time / SIXTEENTH) * SIXTEENTH, text) for time, text in chords]


def _is_chord(text: str) -> bool:
    try:
        read_chord(text)
    except TuneError:
        return False
    return True


def _settled_keys(
    keys: Sequence[tuple[int, Key]], notes: Sequence[WrittenNote], warnings: list[Message]
) -> list[tuple[int, Key]]:
    """The file's keys, or the one found from the notes where it names none, or only the C major that programs write
    when they know none and the notes are plainly of another key."""
    weights = [0.0] * 12
    for note in notes:
        weights[note.midi % 12] += note.duration_ticks
    found = find_key(weights, notes[-1].midi % 12)
    if not keys:
        warnings.append(message("midi-key-found", key=found))
        return [(0, found)]
    is_default = all(key == Key(0) for _, key in keys)
    if is_default and _share_in(found, weights) - _share_in(Key(0), weights) > _PLAINLY_ANOTHER_KEY:
        warnings.append(message("midi-key-doubted", said=Key(0), key=found))
        return [(0, found)]
    return list(keys)


def _share_in(key: Key, weights: Sequence[float]) -> float:
    return sum(weights[name.pitch_class] for name in key.scale) / sum(weights)
