"""What was played: notes with their inflections, and the take as a whole.

Times are in seconds from the start of the recording, pitches in cents relative to A4 = 440 Hz (ISO 16), levels in
dB relative to full scale.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final

from fioritura.words import Message

__all__ = [
    "CONTOUR_SEC",
    "Attack",
    "Finding",
    "Inflection",
    "InflectionKind",
    "PlayedNote",
    "QualityKind",
    "Take",
    "Vibrato",
]

CONTOUR_SEC: Final = 256 / 22050
"""Time between two points of a note's contour."""


class Attack(StrEnum):
    """How a note begins."""

    TONGUED = "tongued"
    """By the tongue or a new breath."""
    SLURRED = "slurred"
    """Out of the note before, on the same breath."""


class InflectionKind(StrEnum):
    """A way of bending a note without playing another one."""

    SCOOP = "scoop"
    """Into the note from below."""
    FALL = "fall"
    """Away from the note downwards, at its end."""
    DOIT = "doit"
    """Away from the note upwards, at its end."""
    BEND = "bend"
    """Down or up from the note and back, in its middle."""


@dataclass(frozen=True, slots=True)
class Inflection:
    """One inflection of a note: where it begins, how long it lasts, how far it goes (cents, below the note < 0)."""

    kind: InflectionKind
    onset_sec: float
    duration_sec: float
    extent_cents: float


@dataclass(frozen=True, slots=True)
class Vibrato:
    """A periodic movement of the pitch: cycles a second, and how far it goes to either side."""

    rate_hz: float
    extent_cents: float


@dataclass(frozen=True, slots=True)
class PlayedNote:
    """One note as it was heard.

    `pitch_cents` is the pitch of its steady part, `confidence` (0 to 1) how clearly the sound speaks for it,
    `apartness` (0 to 1) how sure it is that a note of the same pitch before it does not just go on. `faint_attacks` are
    moments inside the note at which it may have been struck again: (seconds, probability).
    `contour` is the course of its pitch in cents, a point every `CONTOUR_SEC` from the onset.
    """

    onset_sec: float
    offset_sec: float
    pitch_cents: float
    midi: int
    level_db: float
    attack: Attack
    inflections: tuple[Inflection, ...] = ()
    vibrato: Vibrato | None = None
    confidence: float = 1.0
    apartness: float = 1.0
    faint_attacks: tuple[tuple[float, float], ...] = ()
    contour: tuple[float, ...] = field(default=(), repr=False)

    @property
    def duration_sec(self) -> float:
        """How long the note sounds."""
        return self.offset_sec - self.onset_sec

    @property
    def frequency_hz(self) -> float:
        """Frequency of the steady part."""
        return float(440.0 * 2.0 ** (self.pitch_cents / 1200))

    def inflection(self, kind: InflectionKind) -> Inflection | None:
        """The note's first inflection of a kind."""
        return next((one for one in self.inflections if one.kind is kind), None)


class QualityKind(StrEnum):
    """What can be wrong with a recording."""

    SILENCE = "silence"
    CLIPPING = "clipping"
    POLYPHONY = "polyphony"
    NOISE = "noise"
    NO_PLAYER = "no player"


@dataclass(frozen=True, slots=True)
class Finding:
    """Something that makes a recording hard to hear: what, how much of it (share, 0 to 1), and what to do about it."""

    kind: QualityKind
    share: float
    advice: Message


@dataclass(frozen=True, slots=True)
class Take:
    """One recording, heard: its notes in order, the player's tuning above A4 = 440 Hz, and what spoils it."""

    notes: tuple[PlayedNote, ...]
    duration_sec: float
    tuning_cents: float
    findings: tuple[Finding, ...] = ()

    def heard(self) -> list[dict[str, float]]:
        """The notes as plain records: seconds, MIDI number, cents above (or below) that note at A4 = 440 Hz, and how
        clearly it was heard (0 to 1)."""
        return [
            {
                "onset_sec": note.onset_sec,
                "offset_sec": note.offset_sec,
                "midi": note.midi,
                "cents": round(note.pitch_cents - 100 * (note.midi - 69), 1),
                "confidence": note.confidence,
            }
            for note in self.notes
        ]

    def finding(self, kind: QualityKind) -> Finding | None:
        """The finding of a kind, if there is one."""
        return next((one for one in self.findings if one.kind is kind), None)
