"""When each note of a line sounds and how it joins the next: swing, the soloist's delay, human timing, slurs.

A deviation of 10 ms is well within the 30 to 50 ms of ensembles (Rasch 1979) and below the 22 ms at which the order
of onsets is heard (Friberg & Sundberg 1995).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from fioritura.chance import Chance
from fioritura.sound.clock import Clock
from fioritura.sound.swing import SwingGrid, soloist_delay_sec, soloist_ratio
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Feel, Mark, Note, Tune

__all__ = ["Span", "drifts_sec", "humanised", "slurs", "written_spans"]

HUMAN_DEVIATION_SEC: Final = 0.010
HUMAN_MEMORY: Final = 0.6
"""How much of one note's deviation the next one keeps: players drift, they do not jitter."""


@dataclass(frozen=True, slots=True)
class Span:
    """When a note would sound if it were held for its full written length."""

    onset_sec: float
    end_sec: float

    @property
    def duration_sec(self) -> float:
        """Length in seconds."""
        return self.end_sec - self.onset_sec


def written_spans(tune: Tune, line: Sequence[Note], clock: Clock, feel: Feel, *, is_late: bool) -> list[Span]:
    """One span a note, swung where the feel is; `is_late` puts a swing line behind the beat as soloists are."""
    grid = SwingGrid.of(tune, (note.onset_ticks for note in line))

    def sounding_sec(ticks: int) -> float:
        if feel != "swing":
            return clock.seconds(ticks)
        tempo = clock.tempo_at(ticks)
        late = soloist_delay_sec(tempo) if is_late else 0.0
        return clock.seconds(grid.swung(ticks, soloist_ratio(tempo))) + late

    return [Span(sounding_sec(note.onset_ticks), sounding_sec(note.end_ticks)) for note in line]


def humanised(spans: Sequence[Span], chance: Chance) -> list[Span]:
    """The spans with onsets that drift around the grid, in order; each note ends with its successor's drift."""
    drifts = drifts_sec(len(spans), chance)
    for number, (before, span) in enumerate(pairwise(spans), start=1):
        half = (span.onset_sec - before.onset_sec) / 2
        drifts[number] = max(drifts[number], drifts[number - 1] - half)
    return [
        Span(max(0.0, span.onset_sec + drift), span.end_sec + next_drift)
        for span, drift, next_drift in zip(spans, drifts, [*drifts[1:], *drifts[-1:]], strict=True)
    ]


def drifts_sec(count: int, chance: Chance, deviation_sec: float = HUMAN_DEVIATION_SEC) -> list[float]:
    """Deviations from the grid with a given standard deviation, each like the one before, within twice of it."""
    drift, fresh = chance.normal(deviation_sec), (1.0 - HUMAN_MEMORY**2) ** 0.5
    drifts: list[float] = []
    for _ in range(count):
        drifts.append(max(-2 * deviation_sec, min(2 * deviation_sec, drift)))
        drift = HUMAN_MEMORY * drift + fresh * chance.normal(deviation_sec)
    return drifts


def slurs(line: Sequence[Note], feel: Feel) -> list[bool]:
    """For each note whether it is slurred into the next.

    A swing tune without slurs (other than those of its figures) is tongued as the custom is: on the eighths off the
    beat, slurred onto the beat.
    """
    is_marked = any(Mark.SLUR_START in note.marks and not note.figures for note in line)
    slurred: list[bool] = []
    is_open = False
    for note in line:
        if Mark.SLUR_STOP in note.marks:
            is_open = False
        if Mark.SLUR_START in note.marks:
            is_open = True
        by_custom = feel == "swing" and not is_marked and note.onset_ticks % QUARTER == EIGHTH
        slurred.append(is_open or by_custom)
    return slurred
