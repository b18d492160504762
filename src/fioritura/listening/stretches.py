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

Floats = NDArray[np.float64]

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
        is_own = right[run.first : run.stop].mean() > _OWN_SHARE
        if is_free and not is_own and (_is_long(run, found) or any(_goes_on(run, other) for other in kept)):
            kept.append(run)
    return _joined(sorted(kept, key=lambda run: run.first))


def _runs(found: Alignment, ticks: Floats) -> Iterator[Stretch]:
    """Longest runs of equal intervals that lie off, about where the tune has them."""
    midis = np.array([event.midi for event in found.events]) - found.semitones
    plain = np.array([note.pitch.midi for note in found.tune.notes])
    onsets = np.array([note.onset_ticks for note in found.tune.notes])
    lengths = np.ones(len(plain), dtype=np.int64)
    for event in range(1, len(midis) + 1):
        after = np.ones(len(plain), dtype=np.int64)
        goes_on = np.zeros(len(plain), dtype=np.bool_)
        if event < len(midis):
            goes_on[:-1] = np.diff(plain) == midis[event] - midis[event - 1]
            after[1:] += np.where(goes_on[:-1], lengths[:-1], 0)
        for last in np.flatnonzero((lengths > 1) & ~goes_on):
            count = int(lengths[last])
            run = Stretch(event - count, event, int(last) - count + 1, int(midis[event - 1] - plain[last]))
            places = slice(run.plain, run.plain + count)
            is_near = np.nanmedian(np.abs(ticks[run.first : event] - onsets[places])) <= _FAR_TICKS
            if run.semitones and abs(run.semitones) <= _FARTHEST_SEMITONES and is_near:
                yield run
        lengths = after


def _is_long(run: Stretch, found: Alignment) -> bool:
    """True for a run that is too long for chance."""
    count, is_octave = run.stop - run.first, run.semitones % 12 == 0
    pitches = {event.midi for event in found.events[run.first : run.stop]}
    return (
        count >= _FEWEST_OCTAVE and len(pitches) > 1 if is_octave else count >= _FEWEST and len(pitches) >= _DISTINCT
    )


def _goes_on(run: Stretch, other: Stretch) -> bool:
    """True for a run that goes on with a longer one, a slip or two between them."""
    apart = max(run.first - other.stop, other.first - run.stop)
    return run.semitones == other.semitones and apart <= _GAP and abs(run.diagonal - other.diagonal) <= _GAP


def _joined(found: list[Stretch]) -> list[Stretch]:
    """Stretches that lie equally far off, with a few wrong notes between them, are one."""
    line: list[Stretch] = []
    for run in found:
        last = line[-1] if line else None
        if last is not None and _goes_on(run, last):
            line[-1] = Stretch(last.first, run.stop, last.plain, run.semitones)
        else:
            line.append(run)
    return line
