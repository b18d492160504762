"""What a reader found in a file, bar by bar, before it is checked: times from the bar's start, nothing settled yet."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Feel, Jump, Mark
from fioritura.words import Message, message

__all__ = ["RawBar", "RawChord", "RawNote", "RawTempo", "RawTune", "quarter_notes"]


@dataclass(slots=True)
class RawNote:
    """A note as it stands in its bar. `is_tied` when a tie leads to the next note of the same pitch; `marks` may
    hold a slur mark several times, once for each slur, those that stop before those that start."""

    offset_ticks: int
    duration_ticks: int
    pitch: Pitch
    is_tied: bool = False
    graces: tuple[Pitch, ...] = ()
    marks: tuple[Mark, ...] = ()
    lyric: str = ""

    @property
    def end_ticks(self) -> int:
        """Where it stops, from the bar's start."""
        return self.offset_ticks + self.duration_ticks


@dataclass(slots=True)
class RawChord:
    """A chord symbol's text; `chord` where the reader knows it already from more than the text."""

    offset_ticks: int
    text: str
    chord: Chord | None = None


@dataclass(slots=True)
class RawTempo:
    """A tempo from a place in the bar on."""

    offset_ticks: int
    quarters_per_minute: float


@dataclass(slots=True)
class RawBar:
    """One written bar. `content_ticks` is what its notes and rests fill; 0 stands for a full bar of silence.

    `repeats` is how often a closing repeat sign sends the player back; under an ending any number above 0 does.
    `is_implicit` when the file itself says that the bar is not a full, counted one; `is_free` in music without
    metre, where the bar's metre follows from its content.
    """

    metre: Metre
    key: Key
    content_ticks: int = 0
    notes: list[RawNote] = field(default_factory=list)
    chords: list[RawChord] = field(default_factory=list)
    tempos: list[RawTempo] = field(default_factory=list)
    opens_repeat: bool = False
    repeats: int = 0
    endings: tuple[int, ...] = ()
    jumps: tuple[Jump, ...] = ()
    ends_section: bool = False
    is_implicit: bool = False
    is_free: bool = False


@dataclass(slots=True)
class RawTune:
    """All that a reader found. `source` names the tune in messages where a file holds several (else None);
    `words` are the texts that may name a feel or a dance (style and tempo words, not titles or lyrics)."""

    bars: list[RawBar]
    title: str = ""
    composer: str = ""
    part_name: str = ""
    source: Message | str | None = None
    words: list[str] = field(default_factory=list)
    origin: str = ""
    feel: Feel | None = None
    warnings: list[Message] = field(default_factory=list)


def quarter_notes(ticks: int | Fraction) -> Message:
    """A length: "1 quarter note", "3.5 quarter notes", "2 2/3 quarter notes"; form ``number``: "3.5"."""
    value = Fraction(ticks, QUARTER)
    whole, part = divmod(value, 1)
    if part.denominator in {1, 2, 4, 8}:
        return message("quarter-notes", count=float(value) if part else whole)
    return message("quarter-note-parts", count=f"{whole} {part}" if whole else str(part))
