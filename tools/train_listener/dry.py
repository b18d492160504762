"""From a line to sound without a room: recorded notes, bent and joined; and what may sound beside it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.pitch import RATE
from tools.train_listener.lines import Event
from tools.train_listener.notes import RecordedNote

__all__ = ["formula_voice", "played", "read_at", "struck_tones", "talk"]

Wave = NDArray[np.float32]
Line = NDArray[np.float64]
Dice = np.random.Generator

_PRE_SEC: Final = 0.05
_NEAR_SEMITONES: Final = 2.6


def played(
    events: Sequence[Event],
    voice: Sequence[RecordedNote],
    dice: Dice,
    tuning_cents: float,
    size: int,
    tape_semitones: float = 0.0,
    drift_cents: float = 2.0,
) -> Wave:
    """The line on a voice, `size` samples at the ear's rate; some 0.1 root mean square where it sounds.

    Notes are read from the recordings nearest to them, or from ones `tape_semitones` lower, played so much faster. The tuning
    wanders by `drift_cents` from one twelfth of the line to the next.
    """
    wave = np.zeros(size, np.float64)
    breath = float(dice.uniform(-60, -22)) if dice.random() < 0.5 else -90.0
    click = float(dice.uniform(-45, -12)) if dice.random() < 0.4 else -90.0
    is_subtone = dice.random() < 0.08
    drift = np.interp(np.arange(0, size, 220), np.linspace(0, size, 12), np.cumsum(dice.normal(0, drift_cents, 12)))
    for place, event in enumerate(events):
        before = events[place - 1] if place else None
        follower = events[place + 1] if place + 1 < len(events) else None
        source = _source(event.midi + tuning_cents / 100 - tape_semitones, voice, dice)
        _add(wave, event, before, follower, source, dice, tuning_cents, drift)
        if click > -90:
            _click(wave, event.onset_sec, click + event.level_db, dice)
            if dice.random() < 0.3:
                _click(wave, event.offset_sec, click + event.level_db, dice)
    if is_subtone:
        wave, breath = _muffled(wave, float(dice.uniform(350, 1300))), float(dice.uniform(-26, -8))
    elif dice.random() < 0.04:
        growl = np.sin(2 * np.pi * float(dice.uniform(22, 70)) * np.arange(size) / RATE + dice.normal())
        wave *= 1 + float(dice.uniform(0.2, 0.7)) * growl
    if breath > -90:
        smooth = np.sqrt(np.convolve(wave[::44] ** 2, np.ones(12) / 12, mode="same"))
        level = np.interp(np.arange(size), np.arange(smooth.size) * 44, smooth)
        wave += _coloured(dice, size) * level * 10 ** (breath / 20)
    return wave.astype(np.float32)


def _add(
    wave: Line,
    event: Event,
    before: Event | None,
    follower: Event | None,
    source: RecordedNote,
    dice: Dice,
    tuning_cents: float,
    drift: Line,
) -> None:
    is_slurred = before is not None and not event.is_tongued
    cross = float(dice.uniform(0.004, 0.025))
    lead = cross / 2 if is_slurred else _PRE_SEC
    joins = follower is not None and follower.onset_sec - event.offset_sec < 0.012
    tail = cross / 2 if joins and follower is not None and not follower.is_tongued else 0.012
    start, stop = round((event.onset_sec - lead) * RATE), round((event.offset_sec + tail) * RATE)
    start, stop = max(0, start), min(wave.size, stop)
    if stop - start < 60:
        return
    time = (np.arange(start, stop) / RATE) - event.onset_sec
    cents = _cents(event, before if is_slurred else None, time) + np.interp(
        np.arange(start, stop), np.arange(drift.size) * 220, drift
    )
    ratio = 2 ** ((event.midi + (tuning_cents + cents) / 100 - source.midi) / 12)
    position = np.cumsum(ratio)
    usable = source.end - source.onset
    anchor = source.onset + (float(dice.uniform(0.1, 0.3)) * usable if is_slurred else 0.0)
    position += anchor - position[min(max(0, round(event.onset_sec * RATE) - start), position.size - 1)]
    sound = read_at(source.wave, _folded(position, source.onset + 0.25 * usable, source.onset + 0.8 * usable))
    wave[start:stop] += (
        sound * _gain(event, follower, time, lead, tail, is_slurred, joins) * (0.1 / _loudness(source))
    )


def _source(midi: float, voice: Sequence[RecordedNote], dice: Dice) -> RecordedNote:
    """One of the voice's notes near a pitch, by chance; the nearest where none is."""
    away = np.array([abs(note.midi - midi) for note in voice])
    near = np.flatnonzero(away < max(_NEAR_SEMITONES, float(away.min()) + 0.1))
    weights = np.exp(-away[near])
    return voice[int(dice.choice(near, p=weights / weights.sum()))]


def _cents(event: Event, before: Event | None, time: Line) -> Line:
    """How far the pitch is from the note's own at each moment."""
    cents = np.full_like(time, event.detune_cents)
    length = event.offset_sec - event.onset_sec
    if before is not None and event.glide_sec:
        way = np.clip(0.5 + time / event.glide_sec, 0, 1)
        cents += 100 * (before.midi - event.midi) * 0.5 * (1 + np.cos(np.pi * way))
    if event.scoop:
        depth, lasts = event.scoop
        cents -= depth * 0.5 * (1 + np.cos(np.pi * np.clip(time / lasts, 0, 1)))
    if event.fall:
        depth, lasts = event.fall
        cents += depth * np.clip((time - length + lasts) / lasts, 0, 1) ** 1.3
    if event.bend:
        depth, middle, lasts = event.bend
        cents += depth * 0.5 * (1 + np.cos(2 * np.pi * np.clip((time - middle) / lasts, -0.5, 0.5)))
    if event.vibrato:
        hertz, extent, _, wait = event.vibrato
        cents += extent * np.clip((time - wait) / 0.2, 0, 1) * np.sin(2 * np.pi * hertz * (time - wait))
    return cents


def _gain(
    event: Event, follower: Event | None, time: Line, lead: float, tail: float, is_slurred: bool, joins: bool
) -> Line:
    """Linear gain at each moment: level, swell, throb of the vibrato, and how the note begins and ends."""
    length = event.offset_sec - event.onset_sec
    decibels = event.level_db + event.swell_db * (np.clip(time / length, 0, 1) - 0.5)
    if event.vibrato:
        hertz, _, depth, wait = event.vibrato
        decibels = decibels + depth * np.clip((time - wait) / 0.2, 0, 1) * np.sin(2 * np.pi * hertz * (time - wait))
    rise = np.clip((time + lead) / (2 * lead if is_slurred else 0.6 * lead), 0, 1)
    fall = np.clip((length + tail - time) / (2 * tail if joins else tail), 0, 1)
    gain = 10 ** (decibels / 20) * np.sin(np.pi / 2 * rise) ** (1 if is_slurred else 2) * np.sin(np.pi / 2 * fall)
    if follower is None or follower.is_tongued:
        depth = follower.closure_db if joins and follower is not None else 40.0
        closing = min(0.018 if joins else 0.04, 0.4 * length)
        gain = gain * 10 ** (-depth / 20 * np.clip((time - length + closing) / closing, 0, 1) ** 2)
    return np.asarray(gain)


def _loudness(note: RecordedNote) -> float:
    start = note.onset + RATE // 20
    body = note.wave[start : max(start + 200, min(note.end, start + RATE // 2))]
    return float(np.sqrt(np.mean(body**2))) + 1e-4


def read_at(wave: Wave, position: Line) -> Line:
    """A wave between its samples, by cubic (Hermite) interpolation; silence outside it."""
    whole = np.floor(position).astype(np.intp)
    part = position - whole
    inside = (whole >= 1) & (whole < wave.size - 2)
    whole = np.clip(whole, 1, wave.size - 3)
    a, b, c, d = (wave[whole + shift] for shift in (-1, 0, 1, 2))
    slope_b, slope_c = 0.5 * (c - a), 0.5 * (d - b)
    rest = b - c
    value = (
        ((2 * rest + slope_b + slope_c) * part - 3 * rest - 2 * slope_b - slope_c) * part * part + slope_b * part + b
    )
    return np.where(inside, value, 0.0)


def _folded(position: Line, low: float, high: float) -> Line:
    """Positions beyond `high` run back and forth between `low` and `high`."""
    beyond = np.mod(position - high, 2 * (high - low))
    turned = np.where(beyond < high - low, high - beyond, low + beyond - (high - low))
    return np.where(position < high, position, turned)


def _click(wave: Line, second: float, level_db: float, dice: Dice) -> None:
    """A key's noise."""
    start = int((second + dice.normal(0, 0.01)) * RATE)
    length = int(dice.uniform(0.002, 0.012) * RATE)
    if 0 <= start < wave.size - length:
        noise = dice.normal(0, 1, length) * np.exp(-4 * np.arange(length) / length)
        if dice.random() < 0.4:
            noise *= np.sin(2 * np.pi * float(dice.uniform(300, 3000)) / RATE * np.arange(length))
        wave[start : start + length] += 0.3 * 10 ** (level_db / 20) * np.convolve(noise, [0.5, 0.5], mode="same")


def _muffled(wave: Line, hertz: float) -> Line:
    """Less of what lies above some frequency, 12 dB an octave: a subtone."""
    lines = np.fft.rfftfreq(wave.size, 1 / RATE)
    return np.asarray(np.fft.irfft(np.fft.rfft(wave) / (1 + (lines / hertz) ** 2), wave.size))


def _coloured(dice: Dice, size: int) -> Line:
    """Noise with a broad hump somewhere between 0.5 and 4 kHz; root mean square about 1."""
    length = 64
    hertz = float(dice.uniform(500, 4000)) / RATE
    shape = np.hanning(length) * np.cos(2 * np.pi * hertz * np.arange(length))
    noise = np.convolve(dice.standard_normal(size + length - 1, dtype=np.float32), shape, mode="valid")
    return np.asarray(noise / (noise.std() + 1e-9), np.float64)


# Voices by formula --------------------------------------------------------------------------------------------


def formula_voice(dice: Dice, low: int = 36, high: int = 97) -> list[RecordedNote]:
    """A voice made by addition, a note every third semitone: tones that no instrument of the recordings has."""
    rolloff, even = float(dice.uniform(0.8, 3.0)), float(dice.choice([1.0, 1.0, 0.15, 0.4]))
    humps = [
        (float(dice.uniform(300, 3500)), float(dice.uniform(0, 4)), float(dice.uniform(150, 900))) for _ in range(3)
    ]
    breath = 10 ** (float(dice.uniform(-60, -34)) / 20)
    voice = []
    for midi in range(low, high + 1, 3):
        hertz, time = 440 * 2 ** ((midi - 69) / 12), np.arange(int(1.6 * RATE)) / RATE
        tone = np.zeros_like(time)
        for number in range(1, min(24, int(0.45 * RATE / hertz)) + 1):
            shape = 1 + sum(height * np.exp(-(((hertz * number - at) / width) ** 2)) for at, height, width in humps)
            gain = number**-rolloff * shape * (even if number % 2 == 0 else 1.0)
            tone += gain * np.sin(2 * np.pi * hertz * number * time + float(dice.uniform(0, 6.28)))
        tone = tone / np.abs(tone).max() + breath * dice.normal(0, 1, time.size)
        rise = float(dice.uniform(0.005, 0.05))
        tone *= np.clip((time - 0.05) / rise, 0, 1) ** 1.5 + 1e-4
        wave = (tone / np.abs(tone).max()).astype(np.float32)
        voice.append(RecordedNote(float(midi), int((0.05 + 0.35 * rise) * RATE), wave.size, wave))
    return voice


# Beside the player --------------------------------------------------------------------------------------------


def struck_tones(dice: Dice, size: int, tone: Callable[[float, float], Wave], share_low: float = 0.4) -> Wave:
    """Chance chords and bass notes in a chance metre; `tone` gives a sound for a pitch (MIDI) and a length (seconds)."""
    wave = np.zeros(size, np.float32)
    beat = float(dice.uniform(0.25, 0.8))
    root = int(dice.integers(36, 48))
    now = 0.0
    while now < size / RATE:
        if dice.random() < 0.3:
            root = int(dice.integers(36, 50))
        chord = [
            root + step for step in ((12, 16, 19, 22), (12, 15, 19), (24, 28, 31), (15, 22, 26))[dice.integers(4)]
        ]
        midis = [root] if dice.random() < share_low else chord
        for midi in midis:
            sound = tone(midi + float(dice.normal(0, 0.03)), beat * float(dice.uniform(0.5, 2.5)))
            start = int((now + float(dice.uniform(0, 0.015))) * RATE)
            part = sound[: max(0, size - start)]
            wave[start : start + part.size] += part
        now += beat * float(dice.choice([0.5, 1.0, 1.0, 2.0]))
    return wave


def plucked(dice: Dice) -> Callable[[float, float], Wave]:
    """Tones that die away, with partials a little out of tune."""
    decay, rolloff, stretch = float(dice.uniform(1, 9)), float(dice.uniform(0.7, 2.2)), float(dice.uniform(0, 4e-4))

    def tone(midi: float, seconds: float) -> Wave:
        time = np.arange(int(seconds * RATE), dtype=np.float32) / RATE
        hertz = 440 * 2 ** ((midi - 69) / 12)
        sound = np.zeros_like(time)
        for number in range(1, 9):
            at = hertz * number * np.sqrt(1 + stretch * number**2)
            if at < 0.45 * RATE:
                sound += (
                    np.sin(np.float32(2 * np.pi * at) * time) * np.exp(-decay * number**0.5 * time) / number**rolloff
                )
        return np.asarray(sound * np.minimum(1, (seconds - time) / 0.02), np.float32)

    return tone


def held(dice: Dice, voice: Sequence[RecordedNote]) -> Callable[[float, float], Wave]:
    """Tones of recorded notes, as of other players."""

    def tone(midi: float, seconds: float) -> Wave:
        event = Event(0.06, 0.06 + max(seconds, 0.1), round(midi))
        return played([event], voice, dice, 100 * (midi - round(midi)), int((seconds + 0.2) * RATE))

    return tone


def drummed(dice: Dice, size: int) -> Wave:
    """Brushes, cymbals and drums: bursts of noise, and low tones that sink."""
    wave = np.zeros(size, np.float32)
    beat, now = float(dice.uniform(0.12, 0.5)), 0.0
    while now < size / RATE:
        start, length = int(now * RATE), int(float(dice.uniform(0.03, 0.3)) * RATE)
        length = min(length, size - start)
        time = np.arange(length, dtype=np.float32) / RATE
        if dice.random() < 0.2:
            phase = 2 * np.pi * (60 * time + 30 * 0.03 * (1 - np.exp(-time / 0.03)))
            wave[start : start + length] += 2 * np.sin(phase) * np.exp(-time / 0.06)
        else:
            noise = dice.standard_normal(length, dtype=np.float32)
            noise = np.diff(noise, prepend=0) if dice.random() < 0.6 else noise
            wave[start : start + length] += (
                float(dice.uniform(0.1, 1)) * noise * np.exp(-time / float(dice.uniform(0.01, 0.1)))
            )
        now += beat * float(dice.choice([0.5, 1.0, 1.0, 2.0]))
    return wave


def talk(dice: Dice, size: int) -> Wave:
    """Something like speech: buzz on a gliding pitch through moving resonances, hisses and pauses; no words."""
    time = np.arange(size) / RATE
    knots = np.arange(0, time[-1] + 0.4, 0.17)
    base = float(dice.uniform(85, 230))
    hertz = np.interp(time, knots, base * 2 ** (dice.normal(0, 0.25, knots.size)))
    phase = np.mod(np.cumsum(hertz) / RATE, 1.0)
    buzz = np.diff(np.where(phase < 0.6, phase**2 * (0.6 - phase), 0), prepend=0)
    hiss = dice.standard_normal(size)
    kinds = dice.choice([0, 1, 1, 1, 2], knots.size)
    voiced = np.interp(time, knots, (kinds == 1) * dice.uniform(0.3, 1, knots.size))
    wave = np.zeros(size)
    block = 512
    window = np.hanning(2 * block)
    lines = np.arange(block + 1) * RATE / (2 * block)
    source = buzz / (np.abs(buzz).max() + 1e-9) * voiced + 0.02 * hiss * np.interp(time, knots, kinds == 2)
    for start in range(0, size - 2 * block, block):
        if start % (8 * block) == 0 or start == 0:
            centres = (dice.uniform(250, 850), dice.uniform(800, 2300), dice.uniform(2200, 3400))
        curve = sum(np.exp(-(((lines - at) / 130) ** 2)) for at in centres) + 0.01
        wave[start : start + 2 * block] += np.fft.irfft(
            np.fft.rfft(source[start : start + 2 * block] * window) * curve
        )
    return np.asarray(0.1 * wave / (wave.std() + 1e-9), np.float32)
