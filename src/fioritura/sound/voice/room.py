"""A small room around a voice: stereo reverberation, worked out at half the rate of the audio, since rooms swallow highs."""

from __future__ import annotations

from functools import cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.sound.audio import SAMPLE_RATE, Audio

__all__ = ["TAIL_SEC", "in_room"]

TAIL_SEC: Final = 0.9
RT60_SEC: Final = 0.85
PREDELAY_SEC: Final = 0.012
WET: Final = 0.18
"""Share of the sound's height that comes from the room at a usual reverberation (40 of 127)."""

USUAL: Final = 40
_BLOCK: Final = 1 << 16

Mono = NDArray[np.float32]


def in_room(dry: Mono, reverb: int, pan: int) -> Audio:
    """A mono signal placed in a room, with the room's tail: shape (frames, 2). `reverb` and `pan` are 0 to 127 as in MIDI."""
    angle = np.pi / 2 * np.clip(pan, 0, 127) / 128
    sides = np.float32(np.sqrt(2)) * np.array([np.cos(angle), np.sin(angle)], np.float32)
    if not reverb or not len(dry):
        return np.outer(dry, sides)
    audio = np.empty((len(dry) + round(TAIL_SEC * SAMPLE_RATE) // 2 * 2, 2), np.float32)
    wet = _wet(dry, len(audio) // 2 + 1) * np.float32(WET * reverb / USUAL)
    odd = len(audio) % 2
    audio[0::2] = wet[: len(audio) // 2 + odd]
    audio[1::2] = (wet[: len(audio) // 2] + wet[1 : len(audio) // 2 + 1]) / 2
    for channel in range(2):
        audio[: len(dry), channel] += dry * sides[channel]
    return audio


def _wet(dry: Mono, frames: int) -> NDArray[np.float32]:
    """The room's answer at half the rate, shape (frames, 2), by overlapped blocks: both ears at once, as the real and the
    imaginary part."""
    signal = (dry[0 : len(dry) // 2 * 2 : 2] + dry[1::2]) / 2
    response, length = _response()
    step = _BLOCK - length
    result = np.zeros(max(frames, len(signal) + length), np.complex64)
    for start in range(0, len(signal), step):
        half = np.fft.rfft(signal[start : start + step], _BLOCK)
        block = np.fft.ifft(np.concatenate([half, half[-2:0:-1].conj()]) * response)
        end = min(len(result), start + _BLOCK)
        result[start:end] += block[: end - start]
    return result[:frames].view(np.float32).reshape(-1, 2)


@cache
def _response() -> tuple[NDArray[np.complex64], int]:
    """The room's spectrum for both ears and its length in frames: noise that dies away, its highs sooner."""
    rate = SAMPLE_RATE // 2
    length = round(TAIL_SEC * rate) - 2
    after = np.arange(length) / rate
    share = np.exp(-after / 0.12)
    ears = []
    for ear in range(2):
        noise = np.random.default_rng(ear + 1).standard_normal(length)
        dull = np.convolve(noise, np.hanning(9) / np.hanning(9).sum(), "same")
        response = (share * noise + (1 - share) * 1.6 * dull) * 10 ** (-3 * after / RT60_SEC)
        response[: round(PREDELAY_SEC * rate)] = 0.0
        ears.append(response / np.sqrt((response**2).sum()))
    both = np.array(ears[0] + 1j * ears[1], np.complex64)
    return np.fft.fft(both, _BLOCK).astype(np.complex64), length
