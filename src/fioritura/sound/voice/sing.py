"""Notes to a measured voice's sound: one oscillator a run, whose colour moves with its level, and the noise of the breath.

An oscillator reads one period of the pitch's soft and loud colour at a running phase, so that bends, vibrato and slurs are
changes of speed and never of waveform. Slurred pitches fade into each other at the same phase.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.chance import Chance
from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.performance import Inhaled, PerformedNote
from fioritura.sound.voice.breath import RATE, SLUR, STEP, Air, air_of, runs
from fioritura.sound.voice.winds import NOISE_FRAMES, PERIOD, Wind

__all__ = ["faded", "reach_of", "spread", "sung"]

FULL: Final = 0.22
"""Root mean square of a note at full velocity and level."""

WANDER_CENTS: Final = 1.2
"""How far a held pitch strays (standard deviation; measured on the steady notes of saxophones: 1 to 2)."""

TONGUE_GAIN: Final = 8.0
TONGUE_SEC: Final = 0.005
TONGUE_AFTER_SEC: Final = 0.006
"""The reed is heard as it begins to sound, not before."""

INHALED: Final = 0.0045
"""Root mean square of an audible breath, some 25 dB under a usual note (from memory)."""

GHOST_TONE: Final = 0.45
GHOST_NOISE: Final = 1.6
_A4_HERTZ: Final = 440.0
_LATE: Final = 0.3
_WAVERING: Final = 1 << 13

Mono = NDArray[np.float32]
Control = NDArray[np.float64]


def sung(wind: Wind, notes: Sequence[PerformedNote]) -> Mono:
    """Mono audio of notes in order of onset, from second 0 until the last one has died away."""
    end_sec = max(
        (
            note.onset_sec + note.breath.after_sec + note.breath.duration_sec if note.breath else note.end_sec
            for note in notes
        ),
        default=0.0,
    )
    audio = np.zeros(round((end_sec + _LATE) * SAMPLE_RATE), np.float32)
    for run in runs(notes):
        _sing(wind, run, air_of(run, wind.attack_sec, wind.colour), audio)
    return audio


def _sing(wind: Wind, run: Sequence[PerformedNote], air: Air, audio: Mono) -> None:
    place = _place(run[0])
    count = len(air.pitch)
    wavering = np.take(_wavering(), np.arange(place, place + count), mode="wrap")
    cents = WANDER_CENTS * wavering
    turns = PERIOD * _A4_HERTZ / SAMPLE_RATE * 2 ** ((air.pitch - 69 + cents / 100) / 12)
    flutter = wind.flutter_db * np.take(_wavering(), np.arange(place + 3000, place + 3000 + count), mode="wrap")
    height = FULL * 10 ** ((air.level_db + flutter) / 20)
    index = _places(turns)
    soft, loud = spread(height * (1 - air.colour)), spread(height * air.colour)
    for number, note in enumerate(run):
        first, last = reach_of(air.firsts, number, len(run), count)
        frames = slice(first * STEP, last * STEP)
        tone = wind.tone(note.midi)
        wave = np.take(tone.period, index[frames])
        noise = _noise(tone.noise, place * STEP + frames.start, len(wave))
        if note.is_ghost:
            wave = GHOST_TONE * wave + GHOST_NOISE * noise
        else:
            wave += noise
        made = soft[first:last].ravel() * wave.real
        made += loud[first:last].ravel() * wave.imag
        faded(made, number, len(run))
        start = air.start_frame + frames.start
        audio[start : start + len(made)] += made[: len(audio) - start]
        if note.breath:
            _inhale(audio, note.onset_sec, note.breath, place)
    _tongue(wind, run[0], air, audio, place)


def _place(note: PerformedNote) -> int:
    """Where in the wavering and the noise a run begins: told by the note itself, so that it sounds alike wherever it is."""
    return (note.midi * 7919 + round(note.duration_sec * 1e5) * 31 + note.velocity * 101) % _WAVERING


def _places(turns: Control) -> NDArray[np.int64]:
    """Where in the period the oscillator reads, frame by frame, when its speed at control values is `turns` places a frame."""
    rise = np.diff(turns, append=turns[-1:])
    starts = np.cumsum(STEP * turns + rise * (STEP - 1) / 2)
    starts = np.concatenate([[0.0], starts[:-1]]) % PERIOD
    number = np.arange(STEP, dtype=np.float32)
    places = turns.astype(np.float32)[:, None] * number
    places += rise.astype(np.float32)[:, None] * (number * (number - 1) / (2 * STEP))
    places += starts.astype(np.float32)[:, None]
    index = places.ravel().astype(np.int64)
    index &= PERIOD - 1
    return index


def spread(values: Control) -> Mono:
    """Control values drawn straight from each to the next: shape (values, STEP)."""
    here = values.astype(np.float32)
    rise = np.diff(here, append=here[-1:])
    spread: Mono = rise[:, None] * (np.arange(STEP, dtype=np.float32) / np.float32(STEP))
    spread += here[:, None]
    return spread


def reach_of(firsts: Sequence[int], number: int, notes: int, count: int) -> tuple[int, int]:
    """The control values in which a note of a run is heard: its own, and those of the slurs at its ends."""
    reach = len(SLUR) // 2
    first = 0 if number == 0 else max(0, firsts[number] - reach)
    last = count if number == notes - 1 else min(count, firsts[number + 1] - reach + len(SLUR))
    return first, last


def faded(made: Mono, number: int, notes: int) -> None:
    """Fade a note of a run in and out where it is slurred from and into others."""
    rise = _rise()
    if number:
        made[: len(rise)] *= rise[: len(made)]
    if number < notes - 1:
        made[-len(rise) :] *= (1 - rise)[-len(made) :]


@cache
def _rise() -> Mono:
    """How a slurred note fades in, while the one before it fades out as much, around its onset."""
    rise: Mono = spread(np.concatenate([[0.0], np.cumsum(SLUR)])[:-1]).ravel()
    return rise


def _noise(table: NDArray[np.complex64], start: int, length: int) -> NDArray[np.complex64]:
    start %= NOISE_FRAMES
    if start + length <= NOISE_FRAMES:
        return table[start : start + length]
    return np.take(table, np.arange(start, start + length), mode="wrap")


def _tongue(wind: Wind, note: PerformedNote, air: Air, audio: Mono, place: int) -> None:
    """The tongue leaving the reed: the voice's own noise, for a few milliseconds and much louder than in the tone."""
    length = round(6 * TONGUE_SEC * SAMPLE_RATE)
    noise = _noise(wind.tone(note.midi).noise, place * STEP + 977, length).imag
    after = np.arange(length) / SAMPLE_RATE
    shape = after / TONGUE_SEC * np.exp(1 - after / TONGUE_SEC)
    height = FULL * TONGUE_GAIN * (note.velocity / 127) ** 2
    start = air.start_frame + round(TONGUE_AFTER_SEC * SAMPLE_RATE)
    end = max(start, min(len(audio), start + length))
    audio[start:end] += (height * shape * noise)[: end - start].astype(np.float32)


def _inhale(audio: Mono, onset_sec: float, breath: Inhaled, place: int) -> None:
    """Air drawn in after a note that began at a time."""
    length = round(breath.duration_sec * SAMPLE_RATE)
    start = round((onset_sec + breath.after_sec) * SAMPLE_RATE)
    shape = np.sin(np.pi * (np.arange(length) / max(1, length)) ** 0.7) ** 2
    air = np.take(_inhaled(), np.arange(place * 5, place * 5 + length), mode="wrap")
    end = max(start, min(len(audio), start + length))
    audio[start:end] += (INHALED * shape * air)[: end - start].astype(np.float32)


@cache
def _wavering() -> Control:
    """Slow unsteadiness, standard deviation 1, in control values: what is left of noise between 0.7 and 9 hertz."""
    hertz = np.arange(_WAVERING // 2 + 1) * RATE / _WAVERING
    turns = np.exp(2j * np.pi * Chance.of(0, "voice", "wavering").units(len(hertz)))
    curve = np.fft.irfft(turns * ((hertz > 0.7) & (hertz < 9.0)) / np.sqrt(1 + (hertz / 3) ** 2))
    steady: Control = curve / curve.std()
    return steady


@cache
def _inhaled() -> Mono:
    """Noise of a mouth drawing air, root mean square 1: most of it between 1 and 5 kHz (from memory)."""
    hertz = np.maximum(np.arange(NOISE_FRAMES // 2 + 1) * SAMPLE_RATE / NOISE_FRAMES, 1.0)
    turns = np.exp(2j * np.pi * Chance.of(0, "voice", "inhaled").units(len(hertz)))
    octaves = np.log2(hertz / 2200)
    noise = np.fft.irfft(turns * np.exp(-(octaves**2) / 1.6) / np.sqrt(hertz))
    steady: Mono = (noise / noise.std()).astype(np.float32)
    return steady
