"""From performed notes to how a player's breath, reed and fingers move: pitch, level and joints, 750 times a second.

Notes that are joined make a run: one breath of air through which the pitch moves. Slurred notes follow each other in
about 20 ms without a new attack; a soft tongue dents the air; a tongue stops it, so that the next note begins a new run
with the sound of the tongue. A run ends at once where the tongue ends it, else it dies away.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.performance import CurvePoint, PerformedNote

__all__ = ["STEP", "Air", "air_of", "runs"]

STEP: Final = 64
"""Frames between two control values."""

RATE: Final = SAMPLE_RATE / STEP
JOINED_SEC: Final = 0.04
"""A gap that a soft tongue may leave: the air goes on through it."""

LONGEST_RUN_SEC: Final = 20.0
SLUR: Final = np.hanning(27)[1:-1] / np.hanning(27).sum()
"""How a finger change spreads: 33 ms, half of it within 12 (from memory)."""

DENT_DB: Final = 11.0
DENT: Final = np.hanning(33)[1:-1]
"""A soft tongue's dent in the level: 41 ms."""

STOPPED_SEC: Final = 0.02
RELEASED_SEC: Final = 0.07
QUIETEST_DB: Final = -48.0
SPEAKING_DB: Final = -28.0
"""Under the full level: what a note starts from."""

VELOCITY_DB: Final = 40.0
"""A tenth of a velocity is so much softer, and so is a tenth of a level (General MIDI's 40 log10 law)."""

SOFT_VELOCITY: Final = 45.0
LOUD_VELOCITY: Final = 113.0
"""The velocities of the measured soft and loud layers: they lie 16 dB apart (from memory, the range of a saxophone)."""

DARKEST: Final = -0.2
BRIGHTEST: Final = 1.1

Curve = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Air:
    """One run: when it starts, and at every `STEP` frames the pitch in semitones (MIDI numbers), the level in dB under full
    velocity, and how loud the colour is (0 soft, 1 loud). `firsts` are the values at which its notes begin, and the end."""

    start_frame: int
    pitch: Curve
    level_db: Curve
    colour: Curve
    firsts: tuple[int, ...]


def runs(notes: Sequence[PerformedNote]) -> Iterator[tuple[PerformedNote, ...]]:
    """The notes parted where a new attack begins, and in the longest breath that nobody has."""
    run: list[PerformedNote] = []
    for note in notes:
        is_joined = run and note.joint != "tongue" and note.onset_sec <= run[-1].end_sec + JOINED_SEC
        if run and not (is_joined and note.onset_sec < run[0].onset_sec + LONGEST_RUN_SEC):
            yield tuple(run)
            run = []
        run.append(note)
    if run:
        yield tuple(run)


def air_of(run: Sequence[PerformedNote], attack_sec: float, colour: float = 0.0) -> Air:
    """How a run is blown. `attack_sec` is the time from 20 to 3 dB under the full level; `colour` shifts all colours."""
    start = round(run[0].onset_sec * RATE)
    firsts = [round(note.onset_sec * RATE) - start for note in run]
    fade_sec = STOPPED_SEC if run[-1].is_stopped else RELEASED_SEC
    end = max(firsts[-1] + 2, round(run[-1].end_sec * RATE) - start)
    total = end + max(2, round(fade_sec * RATE))
    firsts.append(total)
    pitch, level_db = np.empty(total), np.empty(total)
    for number, note in enumerate(run):
        first, last = firsts[number], max(firsts[number] + 1, firsts[number + 1])
        after = np.arange(last - first) / RATE
        pitch[first:last] = note.midi + _on(note.bend, after, 0.0)
        share = np.maximum(_on(note.level, after, 1.0), 0.01) * (note.velocity / 127)
        level_db[first:last] = VELOCITY_DB * np.log10(share)
    if len(run) > 1:
        pitch, level_db = _slurred(pitch), _slurred(level_db)
        for number, note in enumerate(run[1:], start=1):
            if note.joint == "soft":
                _dent(level_db, firsts[number])
    level_db += _attack_db(total, attack_sec, run[0].velocity)
    level_db[end - 1 :] += np.linspace(0.0, QUIETEST_DB, total - end + 1)
    soft, loud = (VELOCITY_DB * np.log10(velocity / 127) for velocity in (SOFT_VELOCITY, LOUD_VELOCITY))
    colours = np.clip((level_db - soft) / (loud - soft) + colour, DARKEST, BRIGHTEST)
    return Air(start * STEP, pitch, level_db, colours, tuple(firsts))


def _on(points: Sequence[CurvePoint], after: Curve, usual: float) -> Curve | float:
    if not points:
        return usual
    found: Curve = np.interp(after, [point.after_sec for point in points], [point.value for point in points])
    return found


def _slurred(curve: Curve) -> Curve:
    reach = len(SLUR) // 2
    smooth: Curve = np.convolve(np.pad(curve, reach, mode="edge"), SLUR, "valid")
    return smooth


def _dent(level_db: Curve, place: int) -> None:
    first = max(0, place - len(DENT) // 2)
    last = min(len(level_db), first + len(DENT))
    level_db[first:last] -= DENT_DB * DENT[: last - first]


def _attack_db(total: int, attack_sec: float, velocity: int) -> Curve:
    """The rise of the level at a run's start: from `SPEAKING_DB`, 20 dB under after a seventh of its way, then rounding off.

    Loud notes speak a little faster than soft ones.
    """
    length = max(4.0, 1.9 * attack_sec * RATE * (1.25 - 0.5 * velocity / 127))
    share = np.minimum(1.0, (np.arange(total) + 1) / length)
    rise: Curve = SPEAKING_DB * (1 - share) ** 2.2
    return rise
