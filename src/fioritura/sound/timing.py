"""When each note of a line sounds and how it joins the next: swing, the soloist's delay, human timing, slurs.

Over a band a soloist's off-beats fall with the ride cymbal's and only the notes on the beat come late: that is how a
soloist's ratio comes to be lower than the drummer's (Friberg & Sundström 2002).

A deviation of 10 ms is well within the 30 to 50 ms of ensembles (Rasch 1979) and below the 22 ms at which the order
of onsets is heard (Friberg & Sundberg 1995).
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from fioritura.chance import Chance
from fioritura.sound.clock import Clock
from fioritura.sound.swing import SwingGrid, soloist_delay_sec, soloist_ratio
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Feel, Mark, Note, Tune

__all__ = ["Ratio", "Span", "drifts_sec", "humanised", "slurs", "written_spans"]

HUMAN_DEVIATION_SEC: Final = 0.010
HUMAN_MEMORY: Final = 0.6
"""How much of one note's deviation the next one keeps: players drift, they do not jitter."""


TIGHT_SHARE: Final = 0.2
FAST_TEMPO: Final = 200.0
"""From here on eighths are slurred in fours, tongued on the "and" of every other beat (common practice)."""

Ratio = Callable[[float], float]
"""Long to short eighth at a tempo."""


@dataclass(frozen=True, slots=True)
class Span:
    """When a note would sound if it were held for its full written length."""

    onset_sec: float
    end_sec: float

    @property
    def duration_sec(self) -> float:
        """Length in seconds."""
        return self.end_sec - self.onset_sec


def written_spans(
    tune: Tune, line: Sequence[Note], clock: Clock, feel: Feel, *, is_late: bool, ratio: Ratio = soloist_ratio
) -> list[Span]:
    """One span a note, swung where the feel is by the `ratio` of a tempo; `is_late` puts a swing line's notes on the beat
    behind it, as soloists' are, and leaves those off the beat where they are."""
    grid = SwingGrid.of(tune, (note.onset_ticks for note in line))

    def sounding_sec(ticks: int) -> float:
        if feel != "swing":
            return clock.seconds(ticks)
        tempo = clock.tempo_at(ticks)
        late = soloist_delay_sec(tempo) * grid.on_beat(ticks) if is_late else 0.0
        return clock.seconds(grid.swung(ticks, ratio(tempo))) + late

    return [Span(sounding_sec(note.onset_ticks), sounding_sec(note.end_ticks)) for note in line]


def humanised(spans: Sequence[Span], chance: Chance, tight: Collection[int] = ()) -> list[Span]:
    """The spans with onsets that drift around the grid, in order; each note ends with its successor's drift. The `tight`
    ones drift less: those that are played with another's stroke."""
    drifts = drifts_sec(len(spans), chance)
    for number in tight:
        drifts[number] *= TIGHT_SHARE
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


def slurs(line: Sequence[Note], feel: Feel, quarters_per_minute: float = 120.0) -> list[bool]:
    """For each note whether it is slurred into the next.

    A swing tune without slurs (other than those of its figures) is tongued as the custom is: on the eighths off the
    beat, slurred onto the beat; at a fast tempo on every other one of them.
    """
    by_custom = feel == "swing" and not any(Mark.SLUR_START in note.marks and not note.figures for note in line)
    slurred: list[bool] = []
    is_open = False
    for note in line:
        if Mark.SLUR_STOP in note.marks:
            is_open = False
        if Mark.SLUR_START in note.marks:
            is_open = True
        slurred.append(is_open or (by_custom and _is_slurred_by_custom(note, quarters_per_minute)))
    return slurred


def _is_slurred_by_custom(note: Note, quarters_per_minute: float) -> bool:
    beat, phase = divmod(note.onset_ticks, QUARTER)
    if phase == EIGHTH:
        return True
    return phase == 0 and note.duration_ticks == EIGHTH and quarters_per_minute >= FAST_TEMPO and beat % 2 == 0
