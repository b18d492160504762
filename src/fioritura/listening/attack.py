"""Attacks inside a line that goes on: where a tongue, a new breath or a restarted tone breaks it.

Two things are seen at such a moment within some 45 ms either way: the level sags between two louder moments, in the
low bands and the high ones alike, and the tone is less periodic than before and after. In a room vibrato makes the
level sag too, but here in one band and there in another, so it is the mean of all bands but the one that sags most
that counts. Logistic regressions over takes of the train half of the benchmark's tunes (by formula and two soundfonts;
dry, and in rooms near and far) weigh the signs: one tells a note struck again from a note held, another, by level and
hiss alone, a tongued change of notes from a slurred one.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from fioritura.listening.pitch import Floats, Track

__all__ = ["around", "start_of_change", "struck_odds", "tonguing"]

REACH: Final = 8
"""Frames looked at before and after, 46 ms."""

_STRUCK_WEIGHTS: Final = (1.0, 0.74)
_STRUCK_BIAS: Final = -4.8
_TONGUED_WEIGHTS: Final = (0.99, 1.26)
_TONGUED_BIAS: Final = -4.56
_MOST_DB: Final = 15.0
_APERIODIC_FLOOR: Final = 0.01


def struck_odds(track: Track) -> Floats:
    """Log-odds that a note was struck again, in the frames where they are a peak; −∞ elsewhere."""
    return _peaks(_articulation(track))


def _articulation(track: Track) -> Floats:
    """Log-odds of a new attack at each frame: above 0 more likely than not."""
    bits = np.log2(track.heard.aperiodicity.min(axis=1) + _APERIODIC_FLOOR)
    burst = around(bits, -2, 2, np.max)
    burst -= np.maximum(around(bits, -REACH, -3, np.min), around(bits, 3, REACH, np.min))
    sags = np.sort([_sag(band) for band in track.bands_db.T], axis=0)
    sag, unclear = _STRUCK_WEIGHTS
    return np.asarray(sag * sags[:-1].mean(axis=0) + unclear * np.maximum(burst, 0) + _STRUCK_BIAS, np.float32)


def tonguing(track: Track) -> Floats:
    """Log-odds that a change of notes at each frame is tongued, not slurred."""
    level, hiss = _TONGUED_WEIGHTS
    odds = level * _sag(track.level_db) + hiss * _sag(track.hiss_db)
    return np.asarray(odds + _TONGUED_BIAS, np.float32)


def _peaks(values: Floats) -> Floats:
    """The values where they are the largest within `REACH` frames either way; −∞ elsewhere."""
    return np.where(values == around(values, -REACH, REACH, np.max), values, np.float32(-np.inf))


def around(values: Floats, first: int, last: int, reduce: Callable[..., Any]) -> Floats:
    """`reduce` over the frames from `first` to `last` (included) seen from each frame; the ends are held."""
    margin = max(abs(first), abs(last))
    windows = sliding_window_view(np.pad(values, margin, mode="edge"), last - first + 1)
    return np.asarray(reduce(windows[margin + first :][: values.size], axis=1))


def start_of_change(whole: NDArray[np.bool_], frame: int, earliest: int) -> int:
    """The frame, not before `earliest`, from which on the old tone is no longer whole up to `frame`."""
    while frame > earliest and not whole[frame - 1]:
        frame -= 1
    return frame


def _sag(level_db: Floats) -> Floats:
    """How far each frame lies under the softer of its two louder surroundings, 0 to `_MOST_DB`."""
    beside = np.minimum(around(level_db, -REACH, -2, np.max), around(level_db, 2, REACH, np.max))
    return np.clip(beside - around(level_db, -1, 1, np.min), 0, _MOST_DB)
