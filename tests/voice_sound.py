"""Measuring a voice's sound: levels, attacks, colours. Nothing here knows how the program makes it."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.clock import Clock
from fioritura.sound.performance import Performance, PerformedNote, PerformedPart
from fioritura.sound.render import render
from fioritura.theory.key import Key
from fioritura.tune import Tempo
from tests.tunes import line_of

__all__ = ["Signal", "colour", "difference", "flux", "levels_db", "sung", "within"]

Signal = NDArray[np.float64]
WINDOW = 2048


def sung(voice: str, *notes: PerformedNote, **part: Any) -> Signal:
    """Mono audio of notes in a voice, as every file has it before mastering."""
    made = PerformedPart("Melody", 66, notes, voice=voice, **part)
    music = Performance("Test", Key(0), Clock((Tempo(0, 120.0),)), line_of("C4/4").bars, (made,))
    audio: Signal = render(music).mean(axis=1).astype(np.float64)
    return audio


def within(audio: Signal, start_sec: float, end_sec: float, rate: int = SAMPLE_RATE) -> Signal:
    return audio[round(start_sec * rate) : round(end_sec * rate)]


def levels_db(audio: Signal, window_sec: float = 0.02) -> Signal:
    """The level every 5 ms."""
    size, hop = round(window_sec * SAMPLE_RATE), SAMPLE_RATE // 200
    power = np.convolve(audio**2, np.ones(size) / size, "valid")[::hop]
    levels: Signal = 10 * np.log10(power + 1e-12)
    return levels


def flux(audio: Signal) -> float:
    """The steepest rise of a log-mel spectrum (40 bands, 10.7 ms steps) anywhere in the audio."""
    bands = log_mel(audio, SAMPLE_RATE, 40, 512)
    rises = np.maximum(np.diff(np.maximum(bands, bands.max() - 80.0), axis=0), 0.0).sum(axis=1)
    return float(rises.max())


def log_mel(audio: Signal, rate: int, bands: int, hop: int = 512) -> Signal:
    """Spectra in decibels, shape (frames, bands), from 50 Hz to 16 kHz."""
    window = np.hanning(WINDOW)
    starts = range(0, len(audio) - WINDOW + 1, hop)
    spectra = np.array([np.abs(np.fft.rfft(audio[s : s + WINDOW] * window)) ** 2 for s in starts])
    decibels: Signal = 10 * np.log10(spectra @ _mel_bank(rate, bands).T + 1e-12)
    return decibels


def colour(audio: Signal, rate: int = SAMPLE_RATE, bands: int = 40) -> Signal:
    """The mean log-mel spectrum with its level taken off; what lies 80 dB under the highest band counts as that."""
    mean = log_mel(audio, rate, bands).mean(axis=0)
    mean = np.maximum(mean, mean.max() - 80.0)
    level_off: Signal = mean - mean.mean()
    return level_off


def difference(one: Signal, other: Signal) -> float:
    """The root mean square difference of two colours in dB."""
    return float(np.sqrt(((one - other) ** 2).mean()))


def _mel_bank(rate: int, bands: int, low: float = 50.0, high: float = 16_000.0) -> Signal:
    mels = np.linspace(2595 * np.log10(1 + low / 700), 2595 * np.log10(1 + high / 700), bands + 2)
    edges = 700 * (10 ** (mels / 2595) - 1)
    hertz = np.fft.rfftfreq(WINDOW, 1 / rate)
    rising = (hertz - edges[:-2, None]) / np.diff(edges)[:-1, None]
    falling = (edges[2:, None] - hertz) / np.diff(edges)[1:, None]
    bank: Signal = np.maximum(0.0, np.minimum(rising, falling))
    return bank
