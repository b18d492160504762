"""A player: an instrument, a level, and tables that answer at once how short a note may be."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import Final, cast

import numpy as np

from fioritura.players.fingering import FREE_COST, Matrix, chart_of, cheapest_moves
from fioritura.players.instruments import Instrument, instrument_named
from fioritura.players.limits import Limits, limits_of, slurred_sec

__all__ = ["Player"]

MIDI_NUMBERS: Final = 128
GRACE_SHARE: Final = 0.4
"""A grace note is a single burst: it needs this share of the time of a note in a steady run."""

Table = list[list[float]]


@dataclass(frozen=True)
class Player:
    """An instrument in the hands of a player of some level.

    The three tables are indexed by sounding MIDI numbers (0 to 127), `table[from][to]`, hold seconds, and say
    `math.inf` where a note lies outside the instrument. They are built at the first use (some milliseconds).
    """

    instrument: Instrument
    level: int
    limits: Limits

    @classmethod
    def of(cls, instrument_id: str, level: int = 3) -> Player:
        """The player of a level (1 to 5); the same object for the same arguments.

        Raises:
            OptionError: there is no such instrument or level.
        """
        return _player(instrument_id, level)

    @cached_property
    def slurred_sec(self) -> Table:
        """Shortest sensible time from the onset of a slurred note to that of the next."""
        return self._table(self._seconds())

    @cached_property
    def tongued_sec(self) -> Table:
        """The same for notes that are each tongued."""
        return self._table(np.maximum(self._seconds(), 1 / self.limits.tongue_rate))

    @cached_property
    def grace_sec(self) -> Table:
        """Shortest length of a grace note before a note, in seconds."""
        return self._table(np.maximum(self._seconds() * GRACE_SHARE, self.limits.grace_sec))

    def min_duration_sec(self, sounding_midi_a: int, sounding_midi_b: int, tongued: bool = False) -> float:
        """Shortest sensible time from the onset of note a to that of note b; `math.inf` out of range.

        A repeated note is tongued in any case.
        """
        return (self.tongued_sec if tongued else self.slurred_sec)[sounding_midi_a][sounding_midi_b]

    def graces_sec(self, sounding_midis: Sequence[int]) -> float:
        """Shortest time for a group of grace notes: MIDI numbers of the graces and, last, of their main note."""
        table = self.grace_sec
        return sum(table[a][b] for a, b in pairwise(sounding_midis))

    def strain(self, sounding_midis: Sequence[int], durations_sec: Sequence[float], tongued: bool = False) -> float:
        """Needed over given time at the tightest place of a run: at most 1 is playable, `math.inf` out of range.

        `durations_sec` holds the time from each note to the next: one entry fewer than there are notes.
        """
        table = self.tongued_sec if tongued else self.slurred_sec
        moves = zip(sounding_midis, sounding_midis[1:], durations_sec, strict=False)
        return max((table[a][b] / seconds for a, b, seconds in moves), default=0.0)

    def _seconds(self) -> Matrix:
        """Slurred seconds for each pair of the instrument's notes, from its lowest to its highest."""
        low, high = self.instrument.lowest.midi, self.instrument.highest.midi
        chart = chart_of(self.instrument)
        if chart is None:
            costs = np.full((high - low + 1, high - low + 1), FREE_COST)
        else:
            rows, cheapest = cheapest_moves(chart)
            inside = [rows[midi] for midi in range(low, high + 1)]
            costs = cheapest[np.ix_(inside, inside)]
        seconds = slurred_sec(self.limits, costs)
        np.fill_diagonal(seconds, 1 / self.limits.tongue_rate)
        return seconds

    def _table(self, seconds: Matrix) -> Table:
        table = np.full((MIDI_NUMBERS, MIDI_NUMBERS), math.inf)
        notes = slice(self.instrument.lowest_midi, self.instrument.highest_midi + 1)
        table[notes, notes] = seconds
        return cast(Table, table.tolist())


@lru_cache(maxsize=64)
def _player(instrument_id: str, level: int) -> Player:
    instrument = instrument_named(instrument_id)
    return Player(instrument, level, limits_of(instrument, level))
