"""A small room around a voice: stereo reverberation, worked out at a quarter of the audio's rate, since rooms swallow highs."""

from __future__ import annotations

from functools import cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.chance import Chance
from fioritura.sound.audio import SAMPLE_RATE, Audio

__all__ = ["TAIL_SEC", "placed_in_room"]

TAIL_SEC: Final = 0.9
RT60_SEC: Final = 0.85
PREDELAY_SEC: Final = 0.012
WET: Final = 0.18
"""Share of the sound's height that comes from the room at a usual reverberation (40 of 127)."""

USUAL: Final = 40
SLOWER: Final = 4
"""The room's rate against that of audio."""

TAPS: Final = 8
_BLOCK: Final = 1 << 15
_CHUNK: Final = 1 << 14

Mono = NDArray[np.float32]


def placed_in_room(dry: Mono, reverb: int, pan: int, onto: Audio) -> Audio:
    """A mono signal placed in a room, added to audio of shape (frames, 2), which is made longer where the room rings on.

    `reverb` and `pan` are 0 to 127 as in MIDI.
    """
    angle = np.pi / 2 * np.clip(pan, 0, 127) / 128
    sides = np.float32(np.sqrt(2)) * np.array([np.cos(angle), np.sin(angle)], np.float32)
    frames = len(dry) + (round(TAIL_SEC * SAMPLE_RATE) if reverb else 0)
    if len(onto) < frames:
        onto = np.pad(onto, ((0, frames - len(onto)), (0, 0)))
    if reverb and len(dry):
        wet = _wet(dry) * np.float32(WET * reverb / USUAL)
        for start in range(0, frames, _CHUNK):
            raised = _raised(wet, start // SLOWER)
            onto[start : min(frames, start + _CHUNK)] += raised[: frames - start]
    for start in range(0, len(dry), _CHUNK):
        part = dry[start : start + _CHUNK]
        onto[start : start + len(part)] += part[:, None] * sides
    return onto


def _wet(dry: Mono) -> NDArray[np.float32]:
    """The room's answer at the room's rate, shape (frames, 2), by overlapped blocks: both ears at once, as the real and
    the imaginary part."""
    whole = len(dry) // SLOWER * SLOWER
    signal = dry[:whole].reshape(-1, SLOWER).mean(axis=1)
    response, length = _response()
    step = _BLOCK - length
    result = np.zeros(len(signal) + length, np.complex64)
    for start in range(0, len(signal), step):
        half = np.fft.rfft(signal[start : start + step], _BLOCK)
        block = np.fft.ifft(np.concatenate([half, half[-2:0:-1].conj()]) * response)
        end = min(len(result), start + _BLOCK)
        result[start:end] += block[: end - start]
    return result.view(np.float32).reshape(-1, 2)


def _raised(wet: NDArray[np.float32], start: int) -> Audio:
    """A chunk of the room's answer at the rate of audio, from a place at the room's rate on."""
    count = _CHUNK // SLOWER
    known = np.zeros((count + TAPS - 1, 2), np.float32)
    inside = wet[start : start + len(known)]
    known[: len(inside)] = inside
    windows = np.lib.stride_tricks.sliding_window_view(known.ravel(), 2 * TAPS)[::2]
    raised: Audio = (windows @ _between()).reshape(-1, 2)
    return raised


@cache
def _between() -> NDArray[np.float32]:
    """What leads from `TAPS` values of both ears at the room's rate to `SLOWER` at that of audio: a low-pass filter."""
    place = np.arange(SLOWER * TAPS) - (SLOWER * TAPS - 1) / 2
    taps = np.sinc(0.85 * place / SLOWER) * np.kaiser(SLOWER * TAPS, 6.0)
    taps *= SLOWER / taps.sum()
    matrix = np.zeros((TAPS, 2, SLOWER, 2), np.float32)
    for phase in range(SLOWER):
        for ear in range(2):
            matrix[:, ear, phase, ear] = taps[phase::SLOWER][::-1]
    return matrix.reshape(2 * TAPS, 2 * SLOWER)


@cache
def _response() -> tuple[NDArray[np.complex64], int]:
    """The room's spectrum for both ears and its length in frames: noise that dies away, its highs sooner."""
    rate = SAMPLE_RATE // SLOWER
    length = round(TAIL_SEC * rate) - 2
    after = np.arange(length) / rate
    share = np.exp(-after / 0.12)
    ears = []
    for ear in range(2):
        noise = Chance.of(ear, "voice", "room").normals(length)
        dull = np.convolve(noise, np.hanning(7) / np.hanning(7).sum(), "same")
        response = (share * noise + (1 - share) * 1.6 * dull) * 10 ** (-3 * after / RT60_SEC)
        response[: round(PREDELAY_SEC * rate)] = 0.0
        ears.append(response / np.sqrt((response**2).sum()))
    both = np.array(ears[0] + 1j * ears[1], np.complex64)
    return np.fft.fft(both, _BLOCK).astype(np.complex64), length
