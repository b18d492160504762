"""What a report holds: the rows of its tables, what happened, and all of it in one value."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from fioritura.listening.happening import Happening
from fioritura.listening.naming import SlipKind
from fioritura.theory.pitch import Pitch
from fioritura.theory.position import Position
from fioritura.words import Message
from fioritura.words.record import record

__all__ = [
    "BeatRow",
    "Evenness",
    "FigureRow",
    "Level",
    "NoteRow",
    "PitchRow",
    "Report",
    "SlipRow",
    "Status",
    "Timing",
]


class Status(StrEnum):
    """What became of an ornament."""

    DONE = "done"
    MISSED = "missed"
    ADDED = "added"


@dataclass(frozen=True, slots=True)
class FigureRow:
    """One ornament: asked and done, asked and missed, or added by the player. `anchor` is the plain note it belongs to,
    `other` the nearest other reading, `confidence` (0 to 1) how sure the status is."""

    technique: str
    name: Message | str
    status: Status
    bar: int
    beat: float
    position: Position
    passage: int
    confidence: float
    anchor: int
    other: str = ""


@dataclass(frozen=True, slots=True)
class NoteRow:
    """A plain note as it was played: `pitch` as the player reads it, `midi` as it is in the tune; None where it can't
    be told."""

    plain: int
    passage: int
    bar: int
    beat: float
    pitch: Pitch
    midi: int
    is_right: bool
    onset_sec: float
    duration_sec: float
    cents: float | None
    late_ms: float | None
    level_db: float


@dataclass(frozen=True, slots=True)
class PitchRow:
    """Tuning of one note or register: how many times it was heard, and the median of its cents."""

    name: Pitch | Message
    count: int
    cents: float


@dataclass(frozen=True, slots=True)
class BeatRow:
    """Timing on one beat of the bar, or on the halves between the beats: how often, and the median lateness."""

    name: Message
    count: int
    late_ms: float


@dataclass(frozen=True, slots=True)
class Timing:
    """Tempo and time.

    `drift_percent` compares the last quarter of the take with the first (faster > 0), `spread_ms` says how
    far two notes of three lie from the beat at most, `swing_ratio` long to short of two eighths, `grace_ms` the usual grace note.
    """

    quarters_per_minute: float
    drift_percent: float
    spread_ms: float
    swing_ratio: float
    grace_ms: float | None
    beats: tuple[BeatRow, ...]


@dataclass(frozen=True, slots=True)
class Evenness:
    """How even the notes of a quick figure are: spread of their lengths as a share of their mean, in percent."""

    technique: str
    name: Message | str
    bar: int
    beat: float
    position: Position
    spread_percent: float


@dataclass(frozen=True, slots=True)
class Level:
    """Loudness: median of the notes in dB under full scale, and how far its softer and louder notes lie apart."""

    usual_db: float
    range_db: float


@dataclass(frozen=True, slots=True)
class SlipRow:
    """A wrong, left-out or added note, in words; `plain` is the plain note, None for an added one, `confidence` (0 to 1)
    how sure it is."""

    kind: SlipKind
    bar: int
    beat: float
    position: Position
    passage: int
    words: Message
    plain: int | None
    confidence: float


@dataclass(frozen=True)
class Report:
    """All that a take says.

    `semitones` is its distance from the tune's pitch in whole, `tuning_cents` what lies off besides. Of the `wanted` notes
    of the tune, those played again and those skipped each counted once, `right` were at their pitch.
    """

    title: str
    likeness: float
    duration_sec: float
    semitones: int
    tuning_cents: float
    passages: int
    right: int
    wanted: int
    happenings: tuple[Happening, ...]
    figures: tuple[FigureRow, ...]
    slips: tuple[SlipRow, ...]
    notes: tuple[NoteRow, ...]
    by_note: tuple[PitchRow, ...]
    by_register: tuple[PitchRow, ...]
    timing: Timing
    evenness: tuple[Evenness, ...]
    level: Level
    is_asked: bool
    """True when an arrangement says which ornaments were to be played."""

    def count(self, status: Status) -> int:
        """How many ornaments have a status."""
        return sum(row.status is status for row in self.figures)

    def to_dict(self) -> dict[str, Any]:
        """The report as plain data for JSON, its words in the language that is spoken."""
        found: dict[str, Any] = record(self)
        return found
