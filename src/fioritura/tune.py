"""The model: a plain tune, exact in time and spelling.

All values are frozen; functions return new ones. Time is in ticks (1680 a quarter note) from the first note or
rest of the first bar. Pitches are sounding (concert) pitches. A note tied over a bar line is one `Note`; rests
are the gaps between notes. Bars stand in written order, with their repeat signs; `fioritura.unfold` plays them out.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from functools import cached_property, lru_cache
from typing import Final, Literal

from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.metre import Metre
from fioritura.theory.pitch import Interval, Pitch
from fioritura.theory.position import Position, position_in
from fioritura.words import Message

__all__ = [
    "DYNAMIC_MARKS",
    "HAIRPIN_MARKS",
    "LEVEL_MARKS",
    "ORNAMENT_MARKS",
    "Bar",
    "ChordSpan",
    "Dance",
    "Feel",
    "Jump",
    "Mark",
    "Note",
    "Style",
    "Tempo",
    "Tune",
    "hairpins",
    "key_interval",
    "transpose",
]

Feel = Literal["straight", "swing"]

Style = Literal["swing", "shuffle", "straight", "bossa", "ballad", "soul", "funk"]
"""What a file can say of how it is played."""

Dance = Literal[
    "reel", "jig", "slip-jig", "slide", "hornpipe", "polka", "strathspey", "mazurka", "march", "waltz", "air"
]
"""The dance, or other kind of folk tune, that a file can say it is."""


class Mark(StrEnum):
    """A sign on a note that adds no written note: articulations, dynamics, ornament signs and wind effects.

    A level (`PIANISSIMO` to `FORTISSIMO`) holds from its note on. A hairpin (`CRESCENDO`, `DIMINUENDO`) opens with its note and
    closes at the end of the note that has `HAIRPIN_STOP`.
    """

    STACCATO = "staccato"
    TENUTO = "tenuto"
    ACCENT = "accent"
    MARCATO = "marcato"
    FERMATA = "fermata"
    BREATH = "breath"
    SLUR_START = "slur-start"
    SLUR_STOP = "slur-stop"
    TRILL = "trill"
    TURN = "turn"
    INVERTED_TURN = "inverted-turn"
    MORDENT = "mordent"
    INVERTED_MORDENT = "inverted-mordent"
    ROLL = "roll"
    CRAN = "cran"
    SHAKE = "shake"
    SCOOP = "scoop"
    FALL = "fall"
    DOIT = "doit"
    GHOST = "ghost"
    VIBRATO = "vibrato"
    PIANISSIMO = "pp"
    PIANO = "p"
    MEZZO_PIANO = "mp"
    MEZZO_FORTE = "mf"
    FORTE = "f"
    FORTISSIMO = "ff"
    CRESCENDO = "crescendo"
    DIMINUENDO = "diminuendo"
    HAIRPIN_STOP = "hairpin-stop"


ORNAMENT_MARKS: Final = frozenset(
    {
        Mark.TRILL,
        Mark.TURN,
        Mark.INVERTED_TURN,
        Mark.MORDENT,
        Mark.INVERTED_MORDENT,
        Mark.ROLL,
        Mark.CRAN,
        Mark.SHAKE,
        Mark.SCOOP,
        Mark.FALL,
        Mark.DOIT,
    }
)
"""Marks that make a note an ornamented one already; such a note is left alone."""

LEVEL_MARKS: Final = (
    Mark.PIANISSIMO,
    Mark.PIANO,
    Mark.MEZZO_PIANO,
    Mark.MEZZO_FORTE,
    Mark.FORTE,
    Mark.FORTISSIMO,
)
"""The levels, softest first."""

HAIRPIN_MARKS: Final = frozenset({Mark.CRESCENDO, Mark.DIMINUENDO, Mark.HAIRPIN_STOP})

DYNAMIC_MARKS: Final = frozenset({*LEVEL_MARKS, *HAIRPIN_MARKS})


class Jump(StrEnum):
    """A sign that changes the order of play; it stands at the start (segno, coda) or end of its bar."""

    SEGNO = "segno"
    CODA = "coda"
    TO_CODA = "to-coda"
    FINE = "fine"
    DA_CAPO = "da-capo"
    DAL_SEGNO = "dal-segno"


@dataclass(frozen=True, slots=True)
class Note:
    """One sounding note.

    `anchor` is the number of the plain note that this note is or stands for (None for an added note), and
    `figures` the numbers of the figures of a rendition that made, moved or marked it; both stay empty in a file's
    own tune until a rendition fills them, and so does `phrase`, the number of the phrase that it belongs to. `graces` are
    the grace notes before it, in order.
    """

    onset_ticks: int
    duration_ticks: int
    pitch: Pitch
    graces: tuple[Pitch, ...] = ()
    marks: tuple[Mark, ...] = ()
    lyric: str = ""
    anchor: int | None = None
    figures: tuple[int, ...] = ()
    phrase: int | None = None

    @property
    def end_ticks(self) -> int:
        """Where the note stops."""
        return self.onset_ticks + self.duration_ticks

    @property
    def is_ornamented(self) -> bool:
        """True when the note carries grace notes or an ornament sign already."""
        return bool(self.graces) or any(mark in ORNAMENT_MARKS for mark in self.marks)


@dataclass(frozen=True, slots=True)
class ChordSpan:
    """A chord symbol and how long it holds. `chord` is None for N.C. and for a text that can't be read."""

    onset_ticks: int
    duration_ticks: int
    chord: Chord | None
    text: str
    is_inferred: bool = False

    @property
    def end_ticks(self) -> int:
        """Where the next chord begins or the tune ends."""
        return self.onset_ticks + self.duration_ticks


@dataclass(frozen=True, slots=True)
class Bar:
    """One written bar. `number` is as printed (a pickup is 0); `repeats` counts the times its end repeat sends
    the player back (1 for a plain repeat sign); `endings` are the passes for which the bar is played."""

    number: int
    start_ticks: int
    duration_ticks: int
    metre: Metre
    key: Key
    opens_repeat: bool = False
    repeats: int = 0
    endings: tuple[int, ...] = ()
    jumps: tuple[Jump, ...] = ()
    ends_section: bool = False
    """True when a double bar line closes the bar."""
    is_pickup: bool = False
    """True for a short bar that begins a section: its beats count back from its end, as those of bar 0 do."""
    goes_on: bool = False
    """True for the last bar of an excerpt after which the tune goes on: no final bar line closes it."""

    @property
    def end_ticks(self) -> int:
        """The bar line's place."""
        return self.start_ticks + self.duration_ticks

    @property
    def metre_offset_ticks(self) -> int:
        """Where the bar's first tick lies in a full bar of its metre: > 0 only for a pickup bar."""
        if self.number != 0 and not self.is_pickup:
            return 0
        return max(0, self.metre.bar_ticks - self.duration_ticks)


@dataclass(frozen=True, slots=True)
class Tempo:
    """From `onset_ticks` on, `quarters_per_minute`."""

    onset_ticks: int
    quarters_per_minute: float


@dataclass(frozen=True, repr=False)
class Tune:
    """A plain melody with what stands around it. Notes, chords, bars and tempos are in order of onset."""

    title: str
    notes: tuple[Note, ...]
    bars: tuple[Bar, ...]
    chords: tuple[ChordSpan, ...] = ()
    tempos: tuple[Tempo, ...] = ()
    feel: Feel = "straight"
    composer: str = ""
    part_name: str = ""
    """Which part of the file the melody was taken from."""
    warnings: tuple[Message, ...] = field(default=(), compare=False)
    """What the reader had to leave out or guess, with bar and text."""
    style: Style | None = None
    """How the file says that it is played; None where it says nothing (`feel` is straight then, which nobody said)."""
    dance: Dance | None = None
    """The dance that the file says it is."""
    origin: str = ""
    """Where the file says that it comes from, as ``"Ireland"``."""

    def __repr__(self) -> str:
        return f"<Tune {self.title!r}: {len(self.notes)} notes, {len(self.bars)} bars>"

    @property
    def key(self) -> Key:
        """The key of the first bar."""
        return self.bars[0].key

    @property
    def metre(self) -> Metre:
        """The metre of the first bar."""
        return self.bars[0].metre

    @property
    def quarters_per_minute(self) -> float:
        """The first tempo; 120 where none is given (MIDI's default)."""
        return self.tempos[0].quarters_per_minute if self.tempos else 120.0

    @property
    def duration_ticks(self) -> int:
        """Length of all bars as written."""
        return self.bars[-1].end_ticks if self.bars else 0

    @property
    def pickup_ticks(self) -> int:
        """Length of the pickup bar, 0 without one."""
        return self.bars[0].duration_ticks if self.bars and self.bars[0].number == 0 else 0

    @cached_property
    def _bar_starts(self) -> list[int]:
        return [bar.start_ticks for bar in self.bars]

    @cached_property
    def _chord_starts(self) -> list[int]:
        return [span.onset_ticks for span in self.chords]

    def bar_at(self, ticks: int) -> Bar:
        """The bar that holds a place; the last bar for a place past the end."""
        return self.bars[max(0, bisect_right(self._bar_starts, ticks) - 1)]

    def chord_at(self, ticks: int) -> ChordSpan | None:
        """The chord symbol in force at a place."""
        number = bisect_right(self._chord_starts, ticks) - 1
        return self.chords[number] if number >= 0 and ticks < self.chords[number].end_ticks else None

    def beat_at(self, ticks: int) -> tuple[int, float]:
        """Bar number and beat (from 1.0) of a place; in a pickup the beats count as in a full bar."""
        bar = self.bar_at(ticks)
        return bar.number, float(bar.metre.beat_at(ticks - bar.start_ticks + bar.metre_offset_ticks))

    def position_at(self, ticks: int) -> Position:
        """Where a time stands in its bar, to be said in words."""
        bar = self.bar_at(ticks)
        offset = ticks - bar.start_ticks + bar.metre_offset_ticks
        return position_in(bar.metre, offset, bar.number, is_pickup=bar.number == 0)

    def strength_at(self, ticks: int) -> float:
        """Metrical weight of a place, 1.0 on a downbeat to 0.0 (see `Metre.strength`)."""
        bar = self.bar_at(ticks)
        return bar.metre.strength(ticks - bar.start_ticks + bar.metre_offset_ticks)


def hairpins(line: Sequence[Note]) -> Iterator[tuple[int, int, Mark]]:
    """The numbers of the first and last note of every hairpin, and which it is; unpaired signs are left out."""
    opened: tuple[int, Mark] | None = None
    for index, note in enumerate(line):
        kind = next((mark for mark in note.marks if mark in (Mark.CRESCENDO, Mark.DIMINUENDO)), None)
        opened = (index, kind) if kind else opened
        if opened and Mark.HAIRPIN_STOP in note.marks:
            yield opened[0], index, opened[1]
            opened = None


def transpose(tune: Tune, interval: Interval) -> Tune:
    """The tune an interval higher: notes, grace notes, chords and keys.

    Where the key signature would pass six accidentals it is respelled, and notes and chords with it.
    """
    if interval == Interval(0, 0):
        return tune
    bars = tuple(replace(bar, key=bar.key.transposed(interval)) for bar in tune.bars)

    def shift(ticks: int) -> Interval:
        number = bisect_right(tune._bar_starts, ticks) - 1
        return key_interval(tune.bars[number].key, bars[number].key, interval)

    def moved(note: Note) -> Note:
        by = shift(note.onset_ticks)
        graces = tuple(grace.up(by) for grace in note.graces)
        return replace(note, pitch=note.pitch.up(by), graces=graces)

    chords = tuple(
        span
        if span.chord is None
        else replace(span, chord=(chord := span.chord.up(shift(span.onset_ticks))), text=chord.text)
        for span in tune.chords
    )
    return replace(tune, notes=tuple(map(moved, tune.notes)), bars=bars, chords=chords)


@lru_cache(maxsize=1024)
def key_interval(source: Key, target: Key, interval: Interval) -> Interval:
    """`interval` respelled so that it leads from one key's tonic to the other's (same semitones)."""
    steps = target.tonic.letter - source.tonic.letter
    octaves = round((interval.steps - steps) / 7)
    return Interval(steps + 7 * octaves, interval.semitones)
