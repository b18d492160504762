"""Which of a file's parts holds the melody.

A part is judged by what a copyist sees: its name, whether chord symbols stand over it, whether it sounds one note
at a time, how high it lies and how much it plays. The weights are common practice, not measured.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from fioritura.errors import OptionError, TuneError
from fioritura.notation.lists import first_named
from fioritura.words import Message, message, say

__all__ = ["PartSummary", "choose_part", "part_list"]

_LISTED_PARTS: Final = 20
_MELODY_NAMES: Final = re.compile(
    r"\b(melod|lead\b|tune\b|head\b|theme|voice\b|vocal|vox\b|sing|soprano|cantus|canto|superius|discant|song\b)",
    re.IGNORECASE,
)
_WIND_NAMES: Final = re.compile(
    r"sax|flute|flauto|fl[öo]te|piccolo|clarinet|klarinette|oboe|trumpet|cornet|flugel|trombone|recorder|whistle|"
    r"violin|fiddle|horn\b|\breed\b|\bpipe\b|\bbrass\b",
    re.IGNORECASE,
)
_BACKING_NAMES: Final = re.compile(
    r"drum|perc|\bbass\b|contrabass|double bass|piano|keyboard|guitar|banjo|ukulele|organ|harp|strings|\bpad\b|"
    r"chord|accomp|rhythm|continuo|left hand|\blh\b|click|metronome|choir|ensemble|tenor\b(?! sax)|\balto\b(?! sax)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class PartSummary:
    """What one part looks like. `overlap_share` is the share of its notes that sound together with another one of
    the part (0-1); `mean_midi` its mean pitch as a MIDI number; `sound` what plays it, where the name does not say;
    `title` what it is called in lists, where that is not its name."""

    name: str
    note_count: int
    mean_midi: float = 60.0
    overlap_share: float = 0.0
    has_chord_symbols: bool = False
    is_percussion: bool = False
    has_bass_clef: bool = False
    sound: str = ""
    title: Message | None = None

    @property
    def called(self) -> str | Message:
        """What a message calls it."""
        return self.title or self.name or message("part-unnamed")


def choose_part(parts: Sequence[PartSummary], wanted: str | int | None = None) -> int:
    """The index of the melody part, or of the one that `wanted` names (a name, part of one, or a number from 1).

    Raises:
        OptionError: `wanted` names no part, or several; the message lists them all.
        TuneError: no part has pitched notes.
    """
    if wanted is not None:
        return _wanted_part(parts, wanted)
    playable = [index for index, part in enumerate(parts) if part.note_count and not part.is_percussion]
    if not playable:
        if any(part.has_chord_symbols for part in parts):
            raise TuneError("chords-without-melody")
        raise TuneError("no-pitched-notes")
    most = max(parts[index].note_count for index in playable)
    return max(playable, key=lambda index: (_melody_likeness(parts[index], most), -index))


def part_list(parts: Sequence[PartSummary]) -> tuple[str | Message, ...]:
    """The parts for a message that lists them: "1 Flute", "2 Piano"; at most 20 are named."""
    named = [message("part-in-list", number=number, name=part.called) for number, part in enumerate(parts, start=1)]
    return first_named(named, _LISTED_PARTS)


def _melody_likeness(part: PartSummary, most_notes: int) -> float:
    name = f"{part.name} {part.sound}"
    likeness = (part.mean_midi - 60.0) / 12.0
    likeness += 3.0 * bool(_MELODY_NAMES.search(name))
    likeness += 1.0 * bool(_WIND_NAMES.search(name))
    likeness -= 2.0 * bool(_BACKING_NAMES.search(name))
    likeness += 2.0 * part.has_chord_symbols
    likeness -= 1.0 * part.has_bass_clef
    likeness -= 4.0 * part.overlap_share
    likeness -= 2.0 * max(0.0, 1.0 - 2.0 * part.note_count / most_notes)
    return likeness


def _wanted_part(parts: Sequence[PartSummary], wanted: str | int) -> int:
    text = str(wanted).strip().casefold()
    names = [say(part.called).casefold() if part.name or part.title else "" for part in parts]
    matches = [index for index, name in enumerate(names) if name == text]
    if not matches and text.isascii() and text.isdecimal() and 1 <= int(text[:6]) <= len(parts):
        matches = [int(text[:6]) - 1]
    if not matches and text:
        matches = [index for index, name in enumerate(names) if text in name]
    if len(matches) == 1:
        return matches[0]
    if matches:
        raise OptionError("part-in-doubt", given=str(wanted), parts=part_list(parts))
    raise OptionError("no-such-part", given=str(wanted), parts=part_list(parts))
