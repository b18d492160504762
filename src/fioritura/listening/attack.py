"""Attacks inside a line that goes on: where a tongue, a new breath or a restarted tone breaks it.

Four things are seen at such a moment within some 45 ms either way: the level sags between two louder moments, in the
low bands and the high ones alike; the levels of the bands are others after it than before; the tone is less periodic
than before and after; and the wave is less like itself 10 to 16 ms later, since a new tone does not go on in the phase
of the old one, even where it begins under its tail. In a room vibrato moves the levels too, but here in one band and
there in another, so it is the mean of all bands but the one that moves most that counts. Logistic regressions over
takes of the train half of the benchmark's tunes (by formula and two soundfonts; dry, and in rooms near and far) weigh
the signs: one tells a note struck again from a note held, another, by level and hiss alone, a tongued change of notes
from a slurred one.
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

_STRUCK_WEIGHTS: Final = (0.67, 0.52, 0.69, 0.82)
_STRUCK_BIAS: Final = -6.47
_TONGUED_WEIGHTS: Final = (0.99, 1.26)
_TONGUED_BIAS: Final = -4.56
_MOST_DB: Final = 15.0
_MOST_STEP_DB: Final = 12.0
_STEP_FRAMES: Final = 4
_APERIODIC_FLOOR: Final = 0.01


def struck_odds(track: Track) -> Floats:
    """Log-odds that a note was struck again, in the frames where they are a peak; −∞ elsewhere."""
    return _peaks(_articulation(track))


def _articulation(track: Track) -> Floats:
    """Log-odds of a new attack at each frame: above 0 more likely than not."""
    heard = track.heard
    far = np.where(np.isfinite(heard.cents[:, -1]), np.minimum(heard.aperiodicity[:, -1], 1), 1)
    signs = (
        _but_the_most([_sag(band) for band in track.bands_db.T]),
        _but_the_most([_step(band) for band in track.bands_db.T]),
        _burst(heard.aperiodicity.min(axis=1)),
        _burst(far),
    )
    odds = sum(weight * sign for weight, sign in zip(_STRUCK_WEIGHTS, signs, strict=True))
    return np.asarray(odds + _STRUCK_BIAS, np.float32)


def _but_the_most(bands: list[Floats]) -> Floats:
    """The mean over bands at each frame, the greatest left out."""
    return np.asarray(np.sort(bands, axis=0)[:-1].mean(axis=0), np.float32)


def _burst(aperiodicity: Floats) -> Floats:
    """How many times each frame is less periodic than the frames before and after, in octaves, 0 and more."""
    bits = np.log2(aperiodicity + _APERIODIC_FLOOR)
    beside = np.maximum(around(bits, -REACH, -3, np.min), around(bits, 3, REACH, np.min))
    return np.asarray(np.maximum(around(bits, -2, 2, np.max) - beside, 0), np.float32)


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


def _step(level_db: Floats) -> Floats:
    """How far the level after each frame lies from that before it, 0 to `_MOST_STEP_DB`."""
    change = around(level_db, 1, _STEP_FRAMES, np.mean) - around(level_db, -_STEP_FRAMES, -1, np.mean)
    return np.asarray(np.minimum(np.abs(change), _MOST_STEP_DB), np.float32)


def _sag(level_db: Floats) -> Floats:
    """How far each frame lies under the softer of its two louder surroundings, 0 to `_MOST_DB`."""
    beside = np.minimum(around(level_db, -REACH, -2, np.max), around(level_db, 2, REACH, np.max))
    return np.clip(beside - around(level_db, -1, 1, np.min), 0, _MOST_DB)
