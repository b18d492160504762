"""Fit a performance to the soundfont in use: how loud each part is, and how long its notes take to be heard.

Soundfonts differ by several decibels, and by tens of milliseconds of attack, from instrument to instrument. So each
part's busiest seconds and a few of its notes alone are rendered one after the other. From the loudness (ITU-R BS.1770)
come volumes that put the parts at the wanted levels; from the lone notes the time to a third of their height, by which
the renderer starts the part's notes early, so that they are heard when they are meant.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import isfinite
from statistics import median
from typing import Final

import numpy as np

from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.loudness import integrated_loudness
from fioritura.sound.performance import Performance, PerformedNote, PerformedPart
from fioritura.sound.render import render_short
from fioritura.sound.synth import Synth, synth_named

__all__ = ["attack_sec", "calibrated"]

EXCERPT_SEC: Final = 2.5
LONE_SEC: Final = 3.8
"""When the lone notes begin: the excerpt has died away by then."""

LONE_STEP_SEC: Final = 0.7
LONE_NOTE_SEC: Final = 0.3
LONE_SHARES: Final = (0.25, 0.5, 0.75)
"""Which notes are taken, by their rank in pitch among all notes of the part."""

SLOT_SEC: Final = LONE_SEC + LONE_STEP_SEC * len(LONE_SHARES)

LOUDEST_VOLUME: Final = 120
SOFTEST_VOLUME: Final = 20

ATTACK_SHARE: Final = 1 / 3
ATTACK_FRAMES: Final = SAMPLE_RATE // 10
_ENVELOPE_FRAMES: Final = SAMPLE_RATE // 500


@dataclass(frozen=True, slots=True)
class _Measured:
    loudness_lufs: float
    attack_sec: float


def calibrated(performance: Performance, synth: Synth | None = None) -> Performance:
    """The performance with volumes that give each part its `level_lu`, and with each part's attack time.

    Raises:
        ToolError: the synth is missing or failed.
    """
    sounding = [part for part in performance.parts if part.notes]
    if not sounding:
        return performance
    probes = tuple(_probe(part, number * SLOT_SEC) for number, part in enumerate(sounding))
    audio = render_short(replace(performance, parts=probes, lasts_sec=0.0), synth or synth_named())
    measured = {part.name: _measure(audio, number * SLOT_SEC) for number, part in enumerate(sounding)}
    return replace(performance, parts=_fitted(performance.parts, measured))


def attack_sec(audio: Audio, onset_sec: float) -> float:
    """How long a lone note that starts at `onset_sec` takes to a third of its height in its first tenth of a second."""
    start = round(onset_sec * SAMPLE_RATE)
    power = (audio[start : start + ATTACK_FRAMES] ** 2).mean(axis=1)
    if not power.any():
        return 0.0
    envelope = np.sqrt(np.convolve(power, np.ones(_ENVELOPE_FRAMES) / _ENVELOPE_FRAMES, "same"))
    return float(np.argmax(envelope >= ATTACK_SHARE * envelope.max()) / SAMPLE_RATE)


def _probe(part: PerformedPart, to_sec: float) -> PerformedPart:
    """The busiest stretch of a part and some of its notes alone, moved to a time."""
    start = _busiest_sec(part)
    notes = [
        replace(note, onset_sec=note.onset_sec - start + to_sec, duration_sec=min(note.duration_sec, EXCERPT_SEC))
        for note in part.notes
        if start <= note.onset_sec < start + EXCERPT_SEC
    ]
    ranked = sorted(part.notes, key=lambda note: note.midi)
    for number, share in enumerate(LONE_SHARES):
        note = ranked[int(share * len(ranked))]
        onset_sec = to_sec + LONE_SEC + number * LONE_STEP_SEC
        notes.append(PerformedNote(onset_sec, LONE_NOTE_SEC, note.midi, note.velocity))
    return replace(part, notes=tuple(notes), attack_sec=0.0)


def _busiest_sec(part: PerformedPart) -> float:
    """The onset from which most notes follow within an excerpt, among the first few minutes' onsets."""
    onsets = [note.onset_sec for note in part.notes[:2000]]
    best, most, end = 0, 0, 0
    for start, onset in enumerate(onsets):
        while end < len(onsets) and onsets[end] < onset + EXCERPT_SEC:
            end += 1
        if end - start > most:
            best, most = start, end - start
    return onsets[best]


def _measure(audio: Audio, start_sec: float) -> _Measured:
    first, last = round(start_sec * SAMPLE_RATE), round((start_sec + LONE_SEC) * SAMPLE_RATE)
    lone = (start_sec + LONE_SEC + number * LONE_STEP_SEC for number in range(len(LONE_SHARES)))
    return _Measured(integrated_loudness(audio[first:last]), median(attack_sec(audio, onset) for onset in lone))


def _fitted(parts: Sequence[PerformedPart], measured: Mapping[str, _Measured]) -> tuple[PerformedPart, ...]:
    """Parts with volumes that change each by what it needs, with room for the one that needs most.

    A channel's volume acts as the square of its value (General MIDI's 40 log10 law).
    """
    wanted = {
        part.name: part.volume * 10 ** ((part.level_lu - measured[part.name].loudness_lufs) / 40)
        for part in parts
        if part.name in measured and isfinite(measured[part.name].loudness_lufs)
    }
    scale = LOUDEST_VOLUME / max(wanted.values(), default=LOUDEST_VOLUME)
    fitted = []
    for part in parts:
        if part.name in wanted:
            volume = max(SOFTEST_VOLUME, round(wanted[part.name] * scale))
            part = replace(part, volume=volume, attack_sec=measured[part.name].attack_sec)
        fitted.append(part)
    return tuple(fitted)
