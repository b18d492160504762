"""Recursive filters applied in the frequency domain, to stereo audio that comes in blocks.

Both channels go through at once, left as the real and right as the imaginary part of a complex signal, since the
filters are real. Blocks overlap by a stretch after which what is left of a filter's response to an impulse lies below
the precision of float32.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.sound.audio import SAMPLE_RATE, Audio

__all__ = ["Biquad", "StereoFilter", "high_pass", "without_rumble"]

_BLOCK: Final = 1 << 17
_TAIL: Final = 1 << 13

RUMBLE_HZ: Final = 25.0
"""Below the lowest note of the bass (E1, 41 Hz)."""

Signal = NDArray[np.complex64]


@dataclass(frozen=True, slots=True)
class Biquad:
    """A second-order filter: numerator, and denominator after its leading 1."""

    b: tuple[float, float, float]
    a: tuple[float, float]


def high_pass(hertz: float) -> Biquad:
    """A second-order Butterworth high-pass at 48 kHz (bilinear transform)."""
    angle = 2.0 * math.pi * hertz / SAMPLE_RATE
    alpha, cosine = math.sin(angle) / math.sqrt(2.0), math.cos(angle)
    edge = (1.0 + cosine) / 2.0 / (1.0 + alpha)
    return Biquad((edge, -2.0 * edge, edge), (-2.0 * cosine / (1.0 + alpha), (1.0 - alpha) / (1.0 + alpha)))


@dataclass(slots=True)
class StereoFilter:
    """One or more filters in a row over a stream of stereo blocks."""

    stages: tuple[Biquad, ...]
    _before: Signal = field(default_factory=lambda: np.zeros(_TAIL, np.complex64))

    def filtered(self, block: Audio) -> Signal:
        """The next frames, shape (frames, 2), filtered; left and right as real and imaginary part."""
        signal = np.ascontiguousarray(block, np.float32).view(np.complex64)[:, 0]
        done = np.empty_like(signal)
        for start in range(0, len(signal), _BLOCK - _TAIL):
            chunk = np.concatenate([self._before, signal[start : start + _BLOCK - _TAIL]])
            done[start : start + _BLOCK - _TAIL] = self._convolved(chunk)[_TAIL:]
            self._before = chunk[-_TAIL:]
        return done

    def _convolved(self, chunk: Signal) -> Signal:
        padded = np.zeros(_BLOCK, np.complex64)
        padded[: len(chunk)] = chunk
        spectrum = np.fft.fft(padded) * _response(self.stages)
        return np.fft.ifft(spectrum)[: len(chunk)].astype(np.complex64, copy=False)


def without_rumble(audio: Audio) -> Audio:
    """Audio of shape (frames, 2) without what lies below hearing: some soundfonts' samples are off centre."""
    return StereoFilter((high_pass(RUMBLE_HZ),)).filtered(audio).view(np.float32).reshape(-1, 2)


@lru_cache(maxsize=8)
def _response(stages: Sequence[Biquad]) -> Signal:
    """The frequency response at the places of a discrete Fourier transform."""
    delay = np.exp(-2j * np.pi * np.arange(_BLOCK) / _BLOCK)
    response = np.ones(_BLOCK, np.complex128)
    for stage in stages:
        (b0, b1, b2), (a1, a2) = stage.b, stage.a
        response *= (b0 + delay * (b1 + delay * b2)) / (1.0 + delay * (a1 + delay * a2))
    return response.astype(np.complex64)
