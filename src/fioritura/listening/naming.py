"""What a line is, against a tune: named figures, slips, and the alignment that they rest on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final

from fioritura.listening.align import Alignment
from fioritura.techniques.figure import Figure

__all__ = ["PLAIN", "NamedFigure", "Naming", "Slip", "SlipKind"]

PLAIN: Final = "plain"
"""The other reading of a figure that may be no figure at all."""


class SlipKind(StrEnum):
    """What went otherwise than the tune, and is no ornament."""

    WRONG = "wrong"
    LEFT_OUT = "left out"
    ADDED = "added"


@dataclass(frozen=True, slots=True)
class NamedFigure:
    """One ornament that was recognised.

    `anchors` are plain notes, `events` the played notes that make it; `bar` and `beat` say where it begins, `passage`
    (from 1) in which passage of the line. `other` is the nearest other reading: a technique, or ``"plain"``.
    `is_exact` is False for a figure that only meets the definition; `figure` is the one of the table, as it is written.
    """

    technique: str
    bar: int
    beat: float
    confidence: float
    other: str
    other_confidence: float
    anchors: tuple[int, ...]
    events: tuple[int, ...]
    passage: int = 1
    is_exact: bool = True
    figure: Figure | None = field(default=None, repr=False, compare=False)


@dataclass(frozen=True, slots=True)
class Slip:
    """A wrong, left-out or added note: the plain note (None for an added one) and the event (None for a missing one)."""

    kind: SlipKind
    bar: int
    beat: float
    plain: int | None
    event: int | None
    passage: int = 1


@dataclass(frozen=True)
class Naming:
    """What a line is, against a tune. For a line of another tune there are neither figures nor slips.

    `standing` holds, for each passage, the event that stands for each plain note played in it.
    """

    alignment: Alignment = field(repr=False)
    figures: tuple[NamedFigure, ...]
    slips: tuple[Slip, ...]
    standing: tuple[Mapping[int, int], ...] = field(repr=False, default=())
    long_share: float = 0.5
    """Where in the beat the second of two eighths falls: 0.5 straight, 0.67 triplet swing; as played."""
