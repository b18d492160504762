"""Stretches of a line that lie an octave, or another interval, off the tune: found by their intervals.

A run of played notes that goes step for step as the tune does, but higher or lower, and that stands about where the tune
has those notes, is a stretch. Melodies repeat themselves a step higher, too: a run counts only where most of its notes
are not the tune's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.theory.metre import QUARTER

if TYPE_CHECKING:
    from fioritura.listening.align import Alignment

__all__ = ["Stretch", "stretches"]

_FEWEST_OCTAVE: Final = 3
_FEWEST: Final = 7
_DISTINCT: Final = 4
_OWN_SHARE: Final = 0.4
"""A run of which more notes are the tune's own is no stretch."""
_FAR_TICKS: Final = 10 * QUARTER
_FARTHEST_SEMITONES: Final = 24
_GAP: Final = 3
"""Wrong notes between two runs that lie equally far off belong to the stretch."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """Events `first` to `stop` (excluded) that lie so many semitones off; they begin with plain note `plain`."""

    first: int
    stop: int
    plain: int
    semitones: int

    @property
    def diagonal(self) -> int:
        """How many events the stretch lies behind the tune's notes."""
        return self.first - self.plain


def stretches(found: Alignment) -> list[Stretch]:
    """The stretches of an aligned line that lie off, in order."""
    right = np.zeros(len(found.events), dtype=np.bool_)
    ticks = np.full(len(found.events), np.nan)
    for one in found.passes:
        ticks[one.first_event : one.stop_event] = one.ticks
        for span in one.spans:
            if span.event is not None and span.is_right:
                right[span.event] = True
    kept: list[Stretch] = []
    for run in sorted(_runs(found, ticks), key=lambda run: (run.first - run.stop, run.first)):
        is_free = all(run.stop <= other.first or other.stop <= run.first for other in kept)
        if is_free and right[run.first : run.stop].mean() <= _OWN_SHARE:
            kept.append(run)
    return _joined(sorted(kept, key=lambda run: run.first))


def _runs(found: Alignment, ticks: NDArray[np.float64]) -> Iterator[Stretch]:
    """Longest runs of equal intervals that lie off, about where the tune has them."""
    midis = np.array([event.midi for event in found.events]) - found.semitones
    plain = np.array([note.pitch.midi for note in found.tune.notes])
    onsets = np.array([note.onset_ticks for note in found.tune.notes])
    lengths = np.zeros(len(plain), dtype=np.int64)
    before: NDArray[np.int64] = np.array([], dtype=np.int64)
    for event in range(len(midis) + 1):
        after = np.zeros(len(plain), dtype=np.int64)
        if event < len(midis):
            after[:] = 1
            if event:
                goes_on = np.diff(plain) == midis[event] - midis[event - 1]
                after[1:] += np.where(goes_on, lengths[:-1], 0)
        # a run ends at (event - 1, place) where the next pair does not go on
        ended = lengths.copy()
        ended[:-1] = np.where(after[1:] > 1, 0, lengths[:-1])
        for place in np.flatnonzero(ended >= _FEWEST_OCTAVE):
            yield from _stretch(
                event, int(place), int(ended[place]), midis, plain, np.abs(ticks[:event, None] - onsets)
            )
        lengths = after
    del before


def _stretch(
    stop: int,
    place: int,
    count: int,
    midis: NDArray[np.int64],
    plain: NDArray[np.int64],
    away: NDArray[np.float64],
) -> Iterator[Stretch]:
    semitones = int(midis[stop - 1] - plain[place])
    distinct = len(set(midis[stop - count : stop].tolist()))
    is_octave = semitones % 12 == 0
    is_long = count >= _FEWEST_OCTAVE and distinct > 1 if is_octave else count >= _FEWEST and distinct >= _DISTINCT
    if semitones and abs(semitones) <= _FARTHEST_SEMITONES and is_long:
        first, start = stop - count, place - count + 1
        if np.nanmedian(away[range(first, stop), range(start, place + 1)]) <= _FAR_TICKS:
            yield Stretch(first, stop, start, semitones)


def _joined(found: list[Stretch]) -> list[Stretch]:
    """Stretches that lie equally far off, with a few wrong notes between them, are one."""
    line: list[Stretch] = []
    for run in found:
        last = line[-1] if line else None
        if (
            last is not None
            and last.semitones == run.semitones
            and run.first - last.stop <= _GAP
            and abs(last.diagonal - run.diagonal) <= _GAP
        ):
            line[-1] = Stretch(last.first, run.stop, last.plain, run.semitones)
        else:
            line.append(run)
    return line
