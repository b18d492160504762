"""What the net hears: two log-frequency spectra a frame, in decibels.

A frame is centred on every `HOP`th sample at `RATE` Hz. *Fine* bins come from 93 ms (Hann window), three to a semitone
from a third of a semitone below MIDI 36 up; *quick* bins from 35 ms, one to a semitone from MIDI 48 up. Each bin is a
triangle over the power spectrum, a neighbouring bin's distance to either side and at least one line of the transform.
A sine of full scale has 0 dB in its bin.
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from fioritura.listening.pitch import RATE, Floats

__all__ = [
    "BINS_A_SEMITONE",
    "FINE_BINS",
    "FINE_WINDOW",
    "HOP",
    "LOWEST_MIDI",
    "QUICK_BINS",
    "QUICK_WINDOW",
    "STEP_SEC",
    "Spectra",
    "filters",
    "scaled",
]

HOP: Final = 220
STEP_SEC: Final = HOP / RATE
LOWEST_MIDI: Final = 36
BINS_A_SEMITONE: Final = 3
FINE_BINS: Final = 264
QUICK_BINS: Final = 76
FINE_WINDOW: Final = 2048
QUICK_WINDOW: Final = 768
QUICK_FFT: Final = 1024

_QUICK_LOWEST_MIDI: Final = 48
_FLOOR: Final = 1e-10
_RANGE_DB: Final = 80.0
_UNIT_DB: Final = 30.0
_LEVEL_PERCENTILE: Final = 95
_BATCH: Final = 256


@cache
def filters() -> tuple[Floats, Floats]:
    """The triangles of the fine and the quick bins; shapes (lines of the transform, bins)."""
    fine = LOWEST_MIDI + (np.arange(FINE_BINS) - 1) / BINS_A_SEMITONE
    quick = _QUICK_LOWEST_MIDI + np.arange(QUICK_BINS, dtype=np.float64)
    return (
        _triangles(fine, 1 / BINS_A_SEMITONE, FINE_WINDOW, FINE_WINDOW),
        _triangles(quick, 1.0, QUICK_WINDOW, QUICK_FFT),
    )


def _triangles(midis: NDArray[np.float64], step: float, window: int, fft: int) -> Floats:
    line_hz = RATE / fft
    hertz = 440 * 2 ** ((midis - 69) / 12)
    half = np.maximum(hertz * (2 ** (step / 12) - 1), line_hz)
    lines = np.arange(fft // 2 + 1)[:, None] * line_hz
    weights = np.maximum(1 - np.abs(lines - hertz) / half, 0)
    return np.asarray(weights * 16 / window**2, np.float32)


def scaled(decibels: Floats, level_db: float) -> Floats:
    """Decibels against the take's level as the net takes them: 0 for 80 dB below it and less."""
    return np.asarray(np.clip(decibels - level_db + _RANGE_DB, 0, None) / _UNIT_DB, np.float32)


class Spectra:
    """Builds the spectra of a stream of blocks; the frames kept in half precision."""

    def __init__(self) -> None:
        half = FINE_WINDOW // 2
        self._pending: Floats = np.zeros(half, np.float32)
        self._samples = 0
        self._frames = 0
        self._parts: list[NDArray[np.float16]] = []
        self._levels: list[Floats] = []

    def feed(self, samples: Floats) -> None:
        """Take the next samples, at `RATE` Hz."""
        self._samples += samples.size
        self._pending = np.concatenate([self._pending, samples])
        while self._pending.size >= FINE_WINDOW + (_BATCH - 1) * HOP:
            self._analyse(_BATCH)

    def finish(self) -> tuple[NDArray[np.float16], float]:
        """The spectra in dB, shape (frames, `FINE_BINS` + `QUICK_BINS`), and the take's level in dB.

        The level is the 95th percentile of the frames'; there is a frame for every `HOP` samples begun.
        """
        left = -(-self._samples // HOP) - self._frames
        need = FINE_WINDOW + (left - 1) * HOP
        self._pending = np.concatenate([self._pending, np.zeros(max(0, need - self._pending.size), np.float32)])
        while left > 0:
            self._analyse(min(left, _BATCH))
            left -= _BATCH
        if not self._parts:
            return np.zeros((0, FINE_BINS + QUICK_BINS), np.float16), float(10 * np.log10(_FLOOR))
        parts, self._parts = self._parts, []
        return np.concatenate(parts), float(np.percentile(np.concatenate(self._levels), _LEVEL_PERCENTILE))

    def _analyse(self, count: int) -> None:
        frames = sliding_window_view(self._pending, FINE_WINDOW)[::HOP][:count]
        self._pending = self._pending[count * HOP :]
        fine, quick = filters()
        power = _power(frames, FINE_WINDOW, FINE_WINDOW)
        margin = (FINE_WINDOW - QUICK_WINDOW) // 2
        inner = _power(frames[:, margin : margin + QUICK_WINDOW], QUICK_WINDOW, QUICK_FFT)
        bins = np.concatenate([power @ fine, inner @ quick], axis=1)
        self._parts.append((10 * np.log10(bins + _FLOOR)).astype(np.float16))
        self._levels.append(np.asarray(10 * np.log10(power.sum(axis=1) * 8 / FINE_WINDOW**2 + _FLOOR), np.float32))
        self._frames += count


def _power(frames: Floats, window: int, fft: int) -> Floats:
    return np.asarray(np.abs(np.fft.rfft(frames * _hann(window), fft)) ** 2, np.float32)


@lru_cache(maxsize=4)
def _hann(window: int) -> Floats:
    return np.asarray(0.5 - 0.5 * np.cos(2 * np.pi * np.arange(window) / window), np.float32)
