"""Filters for stereo audio: recursive ones over blocks that come one after the other, and one against rumble.

Both channels go through at once, left as the real and right as the imaginary part of a complex signal, since the
filters are real. Recursive filters are applied in the frequency domain: blocks overlap by a stretch after which what is
left of a filter's response to an impulse lies below the precision of float32.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import chain
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.sound.audio import SAMPLE_RATE, Audio

__all__ = ["Biquad", "StereoFilter", "without_rumble"]

_BLOCK: Final = 1 << 17
_TAIL: Final = 1 << 13

STEP: Final = SAMPLE_RATE // 500
"""Frames over which rumble is taken to run straight."""

_HANN: Final = np.hanning(33)[1:-1] / np.hanning(33).sum()
"""64 ms: half is gone at 16 Hz, and less than half a decibel at the lowest note of the bass (E1, 41 Hz)."""

REACH: Final = len(_HANN) // 2
MARGIN: Final = (REACH + 2) * STEP
"""How far the running mean, and the lines between its values, look on either side."""

_BEFORE: Final = (0.5 - (np.arange(STEP // 2) + 0.5) / STEP).astype(np.float32)
"""How much the value before a step's own counts in the step's first half."""

Signal = NDArray[np.complex64]


@dataclass(frozen=True, slots=True)
class Biquad:
    """A second-order filter: numerator, and denominator after its leading 1."""

    b: tuple[float, float, float]
    a: tuple[float, float]


@dataclass(slots=True)
class StereoFilter:
    """One or more filters in a row over a stream of stereo blocks."""

    stages: tuple[Biquad, ...]
    _before: Signal = field(default_factory=lambda: np.zeros(_TAIL, np.complex64))

    def filtered(self, block: Audio) -> Signal:
        """The next frames, shape (frames, 2), filtered; left and right as real and imaginary part."""
        signal = _signal(block)
        done = np.empty_like(signal)
        for start in range(0, len(signal), _BLOCK - _TAIL):
            chunk = np.concatenate([self._before, signal[start : start + _BLOCK - _TAIL]])
            done[start : start + _BLOCK - _TAIL] = self._convolved(chunk)[_TAIL:]
            self._before = chunk[-_TAIL:]
        return done

    def _convolved(self, chunk: Signal) -> Signal:
        size = 1 << (len(chunk) - 1).bit_length()
        spectrum = np.fft.fft(chunk, size) * _response(self.stages, size)
        return np.fft.ifft(spectrum)[: len(chunk)].astype(np.complex64, copy=False)


def without_rumble(blocks: Iterable[Audio]) -> Iterator[Audio]:
    """Consecutive blocks of shape (frames, 2) without what lies below hearing: some soundfonts' samples are off centre.

    What is taken away is a running mean, worked out at every `STEP` frames and drawn straight between them. It needs to
    see `MARGIN` frames ahead, so the last of what comes out are a block of their own.
    """
    known = np.zeros((MARGIN, 2), np.float32)
    for block in chain(blocks, [np.zeros((MARGIN, 2), np.float32)]):
        known = np.concatenate([known, block])
        if len(known) >= 2 * MARGIN:
            yield _centred(known)[MARGIN:-MARGIN]
            known = known[-2 * MARGIN :]


def _centred(audio: Audio) -> Audio:
    """The audio less its running mean, right but for `MARGIN` frames at either end."""
    steps = len(audio) // STEP + 1
    signal = np.zeros(steps * STEP, np.complex64)
    signal[: len(audio)] = _signal(audio)
    rows = signal.reshape(steps, STEP)
    smooth = np.convolve(rows.mean(axis=1), _HANN)[REACH - 1 : REACH + steps + 1, None].astype(np.complex64)
    before, here, after = smooth[:-2], smooth[1:-1], smooth[2:]
    rows[:, : STEP // 2] -= here + (before - here) * _BEFORE
    rows[:, STEP // 2 :] -= here + (after - here) * _BEFORE[::-1]
    return signal[: len(audio)].view(np.float32).reshape(-1, 2)


def _signal(audio: Audio) -> Signal:
    return np.ascontiguousarray(audio, np.float32).view(np.complex64)[:, 0]


@lru_cache(maxsize=16)
def _response(stages: Sequence[Biquad], size: int) -> Signal:
    """The frequency response at the places of a discrete Fourier transform of a size."""
    delay = np.exp(-2j * np.pi * np.arange(size) / size)
    response = np.ones(size, np.complex128)
    for stage in stages:
        (b0, b1, b2), (a1, a2) = stage.b, stage.a
        response *= (b0 + delay * (b1 + delay * b2)) / (1.0 + delay * (a1 + delay * a2))
    return response.astype(np.complex64)
