"""What is to sound, in seconds: performed notes, parts and the whole performance.

Pitches are MIDI numbers, velocities 1 to 127 as in MIDI, bends in semitones from the note's own pitch.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final, Literal

from fioritura.sound.clock import Clock
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER
from fioritura.tune import Bar

__all__ = ["BEND_RANGE", "CurvePoint", "Inhaled", "Joint", "Performance", "PerformedNote", "PerformedPart"]

BEND_RANGE: Final = 12.0
"""Semitones that a bend can reach either way."""


Joint = Literal["tongue", "soft", "slur"]
"""How a note begins: with the tongue, with a tongue so soft that the air goes on, or slurred from the note before."""


@dataclass(frozen=True, slots=True)
class CurvePoint:
    """A value reached `after_sec` from the note's onset; the curve is straight between points."""

    after_sec: float
    value: float


@dataclass(frozen=True, slots=True)
class Inhaled:
    """Air that is drawn in from `after_sec` after a note's onset, for `duration_sec`."""

    after_sec: float
    duration_sec: float


@dataclass(frozen=True, slots=True)
class PerformedNote:
    """One sounding note.

    `bend` is its pitch curve in semitones and `level` its loudness curve from 0 to 1; empty means 0 and 1
    throughout. `source` is the number of the written note that it comes from, None for a note of the band. A player with
    a voice begins it as `joint` says, ends it with the tongue where it `is_stopped`, half voices it where it `is_ghost`,
    and is heard to draw `breath` after it; MIDI knows nothing of these.
    """

    onset_sec: float
    duration_sec: float
    midi: int
    velocity: int
    bend: tuple[CurvePoint, ...] = ()
    level: tuple[CurvePoint, ...] = ()
    source: int | None = None
    joint: Joint = "tongue"
    is_stopped: bool = False
    is_ghost: bool = False
    breath: Inhaled | None = None

    @property
    def end_sec(self) -> float:
        """When the note is let go."""
        return self.onset_sec + self.duration_sec


@dataclass(frozen=True, slots=True)
class PerformedPart:
    """One part of the mix.

    `program` is a General MIDI program from 1, for drums the kit; `volume`, `pan` (64 is the middle) and `reverb` are
    0 to 127 as in MIDI. `level_lu` is how loud the part should be against the melody, in loudness units; `attack_sec`
    how long its sound takes to be heard, by which it is rendered early. Notes are in order of onset. A part with a `voice`
    (see `fioritura.sound.voice`) sings with it; the others, and all in MIDI files, play their program.
    """

    name: str
    program: int
    notes: tuple[PerformedNote, ...]
    volume: int = 100
    pan: int = 64
    reverb: int = 40
    is_drums: bool = False
    level_lu: float = 0.0
    attack_sec: float = 0.0
    voice: str = ""

    @property
    def end_sec(self) -> float:
        """When the last note is let go."""
        return max((note.end_sec for note in self.notes), default=0.0)


@dataclass(frozen=True)
class Performance:
    """Parts over one clock. Second 0 is tick 0 of `clock`; nothing sounds before it."""

    title: str
    key: Key
    clock: Clock
    bars: tuple[Bar, ...]
    parts: tuple[PerformedPart, ...]
    lasts_sec: float = 0.0
    """At least how long it lasts, though all parts may have ended: stems are as long as their mix."""

    @property
    def beats_per_minute(self) -> float:
        """The first tempo in beats of the first metre: dotted quarters in 6/8."""
        beat_ticks = self.bars[0].metre.beat_ticks if self.bars else QUARTER
        return self.clock.tempo_at(0) * QUARTER / beat_ticks

    @property
    def end_sec(self) -> float:
        """When the last note of any part is let go."""
        return max((part.end_sec for part in self.parts), default=0.0)

    @property
    def duration_sec(self) -> float:
        """How long it lasts, without the tail."""
        return max(self.lasts_sec, self.end_sec)

    def only(self, names: Iterable[str]) -> Performance:
        """The performance with just these parts, as long as it was."""
        wanted = {name.casefold() for name in names}
        kept = tuple(part for part in self.parts if part.name.casefold() in wanted)
        return replace(self, parts=kept, lasts_sec=self.duration_sec)

    def without(self, names: Iterable[str]) -> Performance:
        """The performance with these parts left out, as long as it was."""
        unwanted = {name.casefold() for name in names}
        kept = tuple(part for part in self.parts if part.name.casefold() not in unwanted)
        return replace(self, parts=kept, lasts_sec=self.duration_sec)

    def with_voice(self, voice: str) -> Performance:
        """The performance with another voice in every part that has one; none is the General MIDI program."""
        return replace(self, parts=tuple(replace(part, voice=voice) if part.voice else part for part in self.parts))

    def with_parts(self, parts: Iterable[PerformedPart]) -> Performance:
        """The performance with more parts."""
        return replace(self, parts=self.parts + tuple(parts))
