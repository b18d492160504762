"""How often a claim of the report is right, by the evidence for it: evidence in, confidence out."""

from __future__ import annotations

from enum import StrEnum
from typing import Final

import numpy as np

from fioritura.listening.happening import Kind

__all__ = ["POINTS", "Claim", "calibrated"]


class Claim(StrEnum):
    """What is claimed besides the happenings of a take: a slip, an ornament."""

    SLIP_WRONG = "slip-wrong"
    SLIP_LEFT_OUT = "slip-left_out"
    SLIP_ADDED = "slip-added"
    FIGURE_DONE = "figure-done"
    FIGURE_MISSED = "figure-missed"
    FIGURE_ADDED = "figure-added"


POINTS: Final[dict[Claim | Kind, tuple[tuple[float, float], ...]]] = {
    Kind.STOP: ((0.6, 0.35), (0.75, 0.6), (0.9, 0.92), (1.0, 0.99)),
    Claim.SLIP_WRONG: ((0.6, 0.3), (0.72, 0.5), (0.82, 0.8), (0.95, 0.97)),
    Claim.SLIP_LEFT_OUT: ((0.5, 0.3), (0.7, 0.5), (0.85, 0.85), (0.9, 0.93)),
    Claim.SLIP_ADDED: ((0.45, 0.3), (0.6, 0.5), (0.8, 0.75), (0.95, 0.95)),
    Claim.FIGURE_DONE: ((0.5, 0.85), (0.62, 0.95), (0.9, 0.99)),
    Claim.FIGURE_MISSED: ((0.5, 0.3), (0.56, 0.5), (0.62, 0.7), (0.72, 0.93), (0.95, 0.98)),
    Claim.FIGURE_ADDED: ((0.55, 0.35), (0.65, 0.55), (0.75, 0.7), (0.85, 0.8), (0.95, 0.9)),
}
"""(evidence, confidence), between which lines are drawn; a claim that is not here is as sure as its evidence.

Read off `benchmarks/fault_bench.py --half train --evidence` with recorded notes (soprano and baritone saxophone, three tunes,
two rooms); the bench shows on other tunes, players and instruments how far they hold.
"""


def calibrated(claim: Claim | Kind, evidence: float) -> float:
    """The confidence (0 to 1) of a claim with so much evidence (0 to 1) for it."""
    points = POINTS.get(claim)
    if points is None:
        return round(min(max(evidence, 0.0), 1.0), 3)
    known, sure = zip(*points, strict=True)
    return round(float(np.interp(evidence, known, sure)), 3)
