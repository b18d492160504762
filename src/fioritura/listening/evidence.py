"""How much speaks for a slip: how clearly the note was heard, how long it is, and whether the ear errs so of itself."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from fioritura.listening.align import Alignment
from fioritura.listening.naming import Slip, SlipKind
from fioritura.techniques.figure import Figure

__all__ = ["missed_evidence", "slip_evidence"]

_CLEAR_SEC: Final = 0.3
"""A note of this length is hardly overheard, or heard where there is none."""
_REPEATED: Final = 0.5
"""What is struck again on one pitch runs together in a room."""
_OCTAVE_SHARE: Final = 0.5
"""An octave above or below what is written is the error of the ear as often as the player's."""


def slip_evidence(alignment: Alignment, slip: Slip) -> float:
    """The evidence (0 to 1) for a wrong, left-out or added note."""
    tune = alignment.tune
    if slip.event is None:
        assert slip.plain is not None
        seconds = tune.notes[slip.plain].duration_ticks / alignment.ticks_per_unit
        beside = tune.notes[max(slip.plain - 1, 0) : slip.plain + 2]
        if sum(note.pitch.midi == tune.notes[slip.plain].pitch.midi for note in beside) > 1:
            return _REPEATED
        return 0.4 + 0.5 * min(seconds / _CLEAR_SEC, 1.0)
    event = alignment.events[slip.event]
    length = min(event.duration / _CLEAR_SEC, 1.0)
    if slip.kind is SlipKind.ADDED:
        near = [alignment.midi(n) for n in (slip.event - 1, slip.event + 1) if 0 <= n < len(alignment.events)]
        is_echo = any((alignment.midi(slip.event) - midi) % 12 == 0 for midi in near)
        length = 0.5 + 0.5 * length
    else:
        assert slip.plain is not None
        is_echo = (alignment.midi(slip.event) - tune.notes[slip.plain].pitch.midi) % 12 == 0
        length = 0.8 + 0.2 * length
    return event.confidence * length * (_OCTAVE_SHARE if is_echo else 1.0)


def missed_evidence(alignment: Alignment, figure: Figure) -> float:
    """The evidence (0 to 1) that an ornament that was not heard was not played: grace notes, and notes that are struck again,
    are overheard most easily."""
    if figure.graces or not figure.notes:
        return _REPEATED + 0.03 * max(0, len(figure.graces) - 1)
    midis = [alignment.tune.notes[figure.anchors[0]].pitch.midi, *(note.pitch.midi for note in figure.notes)]
    if sum(one == after for one, after in pairwise(midis)) * 2 > len(figure.notes):
        return _REPEATED
    shortest = min(note.duration_ticks for note in figure.notes) / alignment.ticks_per_unit
    return 0.55 + 0.4 * min(shortest / _CLEAR_SEC, 1.0)
