"""How often a claim of the report is right, by the evidence for it: evidence in, confidence out."""

from __future__ import annotations

from enum import StrEnum
from typing import Final

import numpy as np

__all__ = ["POINTS", "Claim", "calibrated"]


class Claim(StrEnum):
    """What is claimed: a happening of a kind (`happening.Kind`), a slip, an ornament."""

    STOP = "stop"
    AGAIN = "begun-again"
    SKIPPED = "skipped"
    PART = "part-only"
    OCTAVE = "octave"
    TRANSPOSED = "transposed"
    KEY = "key-signature"
    WRONG = "wrong-notes"
    LEFT_OUT = "left-out"
    ADDED = "added"
    RHYTHM = "rhythm"
    TEMPO = "tempo"
    SPAN = "faster-or-slower-bars"
    DRIFT = "growing-tempo"
    LATE = "late"
    UNSTEADY = "unsteady"
    SWUNG = "swung"
    EVEN = "even"
    TUNING = "tuning"
    NOTE = "note-out-of-tune"
    ORNAMENTS = "ornaments-missed"
    GRACES = "long-grace-notes"
    UNEVEN = "uneven-figure"
    LEVEL = "level"
    SLIP_WRONG = "slip-wrong"
    SLIP_LEFT_OUT = "slip-left_out"
    SLIP_ADDED = "slip-added"
    FIGURE_DONE = "figure-done"
    FIGURE_MISSED = "figure-missed"
    FIGURE_ADDED = "figure-added"


POINTS: Final[dict[Claim, tuple[tuple[float, float], ...]]] = {}
"""(evidence, confidence), between which lines are drawn; a claim that is not here is as sure as its evidence."""


def calibrated(claim: Claim, evidence: float) -> float:
    """The confidence (0 to 1) of a claim with so much evidence (0 to 1) for it."""
    points = POINTS.get(claim)
    if points is None:
        return round(min(max(evidence, 0.0), 1.0), 3)
    known, sure = zip(*points, strict=True)
    return round(float(np.interp(evidence, known, sure)), 3)
