"""Takes to measure by, spoilt by other means than those of training: rooms of feedback delays, a phone of its own.

A condition is a function of the dry wave and a generator of chance. Waves are at the ear's rate.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.pitch import RATE

__all__ = ["CONDITIONS", "f_measure", "matched", "phone", "room"]

Wave = NDArray[np.float32]
Dice = np.random.Generator
Played = tuple[float, float, float]
"""Onset and offset in seconds, pitch as a MIDI number with a fraction."""

_FFT: Final = 65536


def room(wave: Wave, dice: Dice, seconds: tuple[float, float], direct_db: tuple[float, float]) -> Wave:
    """In a room made by twelve delays that feed each other (Jot & Chaigne 1991, from memory)."""
    lasts, direct = float(dice.uniform(*seconds)), float(dice.uniform(*direct_db))
    delays = np.sort(dice.uniform(0.006, 0.055, 12))
    hertz = np.arange(_FFT // 2 + 1) * RATE / _FFT
    decay = lasts / (1 + (hertz / float(dice.uniform(3000, 7000))) ** 2)[:, None]
    around = 10 ** (-3 * delays / np.maximum(decay, 0.02)) * np.exp(-2j * np.pi * hertz[:, None] * delays)
    mixing = np.eye(12) - 2 / 12
    signs = dice.choice([-1.0, 1.0], 12)
    inner = np.linalg.solve(
        np.eye(12) - mixing * around[:, None, :], np.broadcast_to(signs[:, None], (len(hertz), 12, 1))
    )
    answer = np.fft.irfft((inner[..., 0] * around).sum(axis=1))
    answer *= 10 ** (-direct / 20) / np.sqrt((answer**2).sum())
    answer[0] += 1
    size = wave.size + _FFT
    return np.fft.irfft(np.fft.rfft(wave, size) * np.fft.rfft(answer, size), size)[: wave.size].astype(np.float32)


def phone(wave: Wave, dice: Dice) -> Wave:
    """Through a phone in a room: 300 to 3400 Hz, levelled within 50 ms, 8-bit mu-law."""
    wave = room(wave, dice, (0.25, 0.5), (2, 8))
    spectrum, hertz = np.fft.rfft(wave), np.fft.rfftfreq(wave.size, 1 / RATE)
    spectrum *= np.clip((hertz - 200) / 150, 0, 1) * np.clip((3900 - hertz) / 600, 0, 1)
    wave = np.fft.irfft(spectrum, wave.size).astype(np.float32)
    level = np.sqrt(np.convolve(wave**2, np.ones(1103) / 1103, mode="same"))
    wave = wave / (level + 0.03 * level.max()) ** 0.6
    wave = wave / np.abs(wave).max()
    curve = np.round(127 * np.sign(wave) * np.log1p(255 * np.abs(wave)) / np.log(256)) / 127
    return np.asarray(np.sign(curve) * (256 ** np.abs(curve) - 1) / 255, np.float32)


def beside(wave: Wave, other: Wave, below_db: float) -> Wave:
    """With something beside it, so many dB under it (root mean squares over the take)."""
    part = np.resize(other, wave.size)
    return np.asarray(wave + part * (wave.std() / (part.std() + 1e-9)) * 10 ** (-below_db / 20), np.float32)


Condition = Callable[[Wave, Dice, Wave, Wave], Wave]
"""From the dry wave, chance, some backing and the program's own band."""

CONDITIONS: Final[dict[str, Condition]] = {
    "dry": lambda wave, dice, backing, band: wave,
    "room": lambda wave, dice, backing, band: room(wave, dice, (0.3, 0.6), (3, 8)),
    "very wet": lambda wave, dice, backing, band: room(wave, dice, (0.8, 1.4), (-3, 1)),
    "phone": lambda wave, dice, backing, band: phone(wave, dice),
    "backing -20 dB": lambda wave, dice, backing, band: beside(wave, backing, 20),
    "backing -10 dB": lambda wave, dice, backing, band: beside(wave, backing, 10),
    "own band in the room -5 dB": lambda wave, dice, backing, band: room(
        beside(wave, band, 5), dice, (0.3, 0.6), (3, 8)
    ),
}


def matched(truth: Sequence[Played], found: Sequence[Played]) -> int:
    """Notes that agree within 50 ms and 50 cents, each used once, earliest first."""
    used = [False] * len(found)
    count = 0
    for onset, _, midi in truth:
        for place, (start, _, other) in enumerate(found):
            if not used[place] and abs(start - onset) <= 0.05 and abs(other - midi) <= 0.5:
                used[place] = True
                count += 1
                break
    return count


def f_measure(right: int, wanted: int, found: int) -> float:
    """F1 of counts."""
    return 2 * right / max(1, wanted + found)
