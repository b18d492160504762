"""Ticks to seconds and back, by a tune's tempos: the only bridge between written and sounding time."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from typing import Final

from fioritura.errors import OptionError
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tempo, Tune

__all__ = ["MAX_TEMPO", "MIN_TEMPO", "Clock", "checked_tempo"]

MIN_TEMPO: Final = 20.0
MAX_TEMPO: Final = 400.0
_TEMPO_TOLERANCE: Final = 1e-9


def checked_tempo(quarters_per_minute: float) -> float:
    """A tempo that can be played.

    Raises:
        OptionError: it lies outside 20 to 400 quarters a minute.
    """
    if MIN_TEMPO <= quarters_per_minute <= MAX_TEMPO:
        return quarters_per_minute
    raise OptionError("tempo-out-of-reach", given=f"{quarters_per_minute:g}", low=MIN_TEMPO, high=MAX_TEMPO)


@dataclass(frozen=True)
class Clock:
    """Piecewise constant tempo. Tick 0 sounds at second 0; places before it go on at the first tempo."""

    tempos: tuple[Tempo, ...]

    @classmethod
    def of(cls, tune: Tune, tempo: float | None = None) -> Clock:
        """The tune's own tempos; with `tempo` all of them scaled so that the first becomes it.

        Raises:
            OptionError: a tempo outside 20 to 400 quarters a minute.
        """
        factor = 1.0 if tempo is None else checked_tempo(tempo) / tune.quarters_per_minute
        written = tune.tempos or (Tempo(0, tune.quarters_per_minute),)
        scaled = [Tempo(t.onset_ticks, checked_tempo(t.quarters_per_minute * factor)) for t in written]
        scaled[0] = replace(scaled[0], onset_ticks=min(0, scaled[0].onset_ticks))
        return cls(tuple(scaled))

    def seconds(self, ticks: float) -> float:
        """When a place sounds."""
        piece = max(0, bisect_right(self._starts_ticks, ticks) - 1)
        tempo = self.tempos[piece]
        return self._starts_sec[piece] + (ticks - tempo.onset_ticks) * 60.0 / (QUARTER * tempo.quarters_per_minute)

    def ticks(self, seconds: float) -> float:
        """The place that sounds at a time."""
        piece = max(0, bisect_right(self._starts_sec, seconds) - 1)
        tempo = self.tempos[piece]
        return tempo.onset_ticks + (seconds - self._starts_sec[piece]) * QUARTER * tempo.quarters_per_minute / 60.0

    def tempo_at(self, ticks: float) -> float:
        """Quarters a minute at a place."""
        return self.tempos[max(0, bisect_right(self._starts_ticks, ticks) - 1)].quarters_per_minute

    def slowed(self, spans: Iterable[tuple[int, int, float]]) -> Clock:
        """The clock with the tempo multiplied by a factor inside each span (start, end, factor): holds, ritards."""
        tempos = self.tempos
        for start, end, factor in spans:
            tempos = _with_span(tempos, start, end, factor)
        return Clock(tempos)

    @cached_property
    def _starts_ticks(self) -> list[int]:
        return [tempo.onset_ticks for tempo in self.tempos]

    @cached_property
    def _starts_sec(self) -> list[float]:
        first = self.tempos[0]
        starts = [first.onset_ticks * 60.0 / (QUARTER * first.quarters_per_minute)]
        for before, after in pairwise(self.tempos):
            length_ticks = after.onset_ticks - before.onset_ticks
            starts.append(starts[-1] + length_ticks * 60.0 / (QUARTER * before.quarters_per_minute))
        return starts


def _with_span(tempos: Sequence[Tempo], start: int, end: int, factor: float) -> tuple[Tempo, ...]:
    """`tempos` with extra changes at `start` and `end`, and every tempo between them multiplied."""
    places = sorted({tempo.onset_ticks for tempo in tempos} | {start, end})
    starts = [tempo.onset_ticks for tempo in tempos]
    changed: list[Tempo] = []
    for place in places:
        tempo = tempos[max(0, bisect_right(starts, place) - 1)].quarters_per_minute
        tempo *= factor if start <= place < end else 1.0
        if not changed or abs(changed[-1].quarters_per_minute - tempo) > _TEMPO_TOLERANCE:
            changed.append(Tempo(place, tempo))
    return tuple(changed)
