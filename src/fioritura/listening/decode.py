"""From what the net gives for each frame to notes: Viterbi over semitones and silence, beginnings where onsets peak.

The player's tuning is the circular mean of the pitches that the net takes for likely. Semitones on that tuning, and
silence, are the states of the programme; every change costs the same. A note begins at the peak of the onset curve
near its change; further peaks inside it are new attacks on the same pitch.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.pitch import Floats
from fioritura.listening.spectra import BINS_A_SEMITONE, LOWEST_MIDI

__all__ = ["SEMITONES", "SILENCE", "Expected", "NetNote", "notes_of_frames", "tuning_of"]

SEMITONES: Final = 61
"""From MIDI 36 to 96."""
SILENCE: Final = SEMITONES * BINS_A_SEMITONE
"""The column of silence, after those of pitches."""

CHANGE: Final = 4.0
"""Price of a change of state, in nats; what the net says of a frame is a natural logarithm too."""
AGAIN: Final = 0.6
"""An onset inside a note that is likelier than this is a new attack."""
AGAIN_SHORT: Final = 0.8
"""The same where less than `_SHORT_LAST` frames of the pitch follow."""
EXPECTED_ODDS: Final = 0.7
"""A nat would make a note of what the net holds for a third as likely as silence."""
AGAIN_DUE: Final = 0.4
AGAIN_AGAINST: Final = 0.75
_DUE: Final = 6
_FLOOR: Final = 1e-4
_PULL: Final = 3
_PULL_PRICE: Final = 0.1
"""A peak so much higher may lie a frame farther from a change of pitch: between short notes every frame counts."""
_APART: Final = 4
_LAST: Final = 3
_SHORT_LAST: Final = 6
"""Frames that the last part of a stretch lasts at least: a grace note on the pitch of the note before is so short."""
_LEAST: Final = 0.1
_SHORTEST: Final = 2
_CRACK_ONSET: Final = 0.1
_CRACK_FRAMES: Final = 25


@dataclass(frozen=True, slots=True)
class NetNote:
    """A note in frames, which may lie between two: where it begins and ends, its MIDI number, how likely it is at its
    frames (0 to 1), how likely its onset, and where inside it (frame, probability) there may have been another."""

    start: float
    stop: float
    midi: int
    confidence: float
    onset: float
    faint: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Expected:
    """A note that may come, where the tune is known: frames `start` to `stop`, and its MIDI number."""

    start: int
    stop: int
    midi: int


def tuning_of(likely: NDArray[Any]) -> float:
    """The tuning in semitones, −0.5 to 0.5; `likely` holds the probabilities of pitches, shape (frames, pitches)."""
    total = likely[:, :SILENCE].sum(axis=0, dtype=np.float64)
    turn = np.exp(2j * np.pi * (np.arange(SILENCE) - 1) / BINS_A_SEMITONE)
    mean = complex((total * turn).sum())
    return float(np.angle(mean) / (2 * np.pi)) if abs(mean) > 1e-6 else 0.0


def notes_of_frames(
    likely: NDArray[Any], onsets: Floats, tuning: float, expected: Sequence[Expected] = ()
) -> list[NetNote]:
    """The notes of a take, in order.

    What is `expected` is believed a little sooner: a pitch by `EXPECTED_ODDS`, an attack on the same pitch above a
    lower threshold where one is due and above a higher one in the middle of a note. Nothing is put in that the net does
    not hear.

    Args:
        likely: probabilities of pitches and silence at each frame, shape (frames, `SILENCE` + 1).
        onsets: probability of an onset at each frame.
        tuning: in semitones.
        expected: what may come, in order.
    """
    if not len(likely):
        return []
    table = _by_semitone(likely, tuning)
    score = np.log(table + _FLOOR)
    for one in expected:
        if 0 <= one.midi - LOWEST_MIDI < SEMITONES:
            score[max(0, one.start) : max(0, one.stop), one.midi - LOWEST_MIDI] += EXPECTED_ODDS
    again = _thresholds(len(score), expected)
    line = _best_path(score)
    edges = [0, *(np.flatnonzero(np.diff(line)) + 1).tolist(), len(line)]
    peaks = _peaks(onsets)
    firsts = [_first(start, stop, onsets, peaks) for start, stop in pairwise(edges)]
    found: list[NetNote] = []
    for place, (start, stop) in enumerate(pairwise(edges)):
        if line[start] < SEMITONES:
            is_followed = stop < len(line) and line[stop] < SEMITONES
            until = firsts[place + 1] if is_followed else stop - 1
            found += _parted(firsts[place], start, stop, until, int(line[start]), table, onsets, peaks, again)
    return _closed(_without_cracks(found))


def _by_semitone(likely: NDArray[Any], tuning: float) -> Floats:
    """Probabilities of semitones on a tuning, and of silence: shape (frames, `SEMITONES` + 1)."""
    place = (np.arange(SILENCE) - 1) / BINS_A_SEMITONE - tuning
    away = np.abs(place[:, None] - np.arange(SEMITONES))
    share = np.clip((1 / 2 + 1 / 6 - away) * BINS_A_SEMITONE, 0, 1).astype(np.float32)
    table = np.empty((len(likely), SEMITONES + 1), np.float32)
    for first in range(0, len(likely), 4096):
        span = slice(first, first + 4096)
        table[span, :SEMITONES] = likely[span, :SILENCE].astype(np.float32) @ share
        table[span, SEMITONES] = likely[span, SILENCE]
    return table


def _best_path(score: Floats) -> NDArray[np.int16]:
    """The best state at each frame where every change costs `CHANGE`."""
    origin = np.empty(score.shape, np.int16)
    states = np.arange(score.shape[1], dtype=np.int16)
    total = score[0].copy()
    for frame in range(1, len(score)):
        best = int(total.argmax())
        changed = total[best] - CHANGE
        stays = total >= changed
        origin[frame] = np.where(stays, states, best)
        total = np.where(stays, total, changed) + score[frame]
        if frame % 1024 == 0:
            total -= total.max()
    line = np.empty(len(score), np.int16)
    line[-1] = total.argmax()
    for frame in range(len(score) - 1, 0, -1):
        line[frame - 1] = origin[frame, line[frame]]
    return line


def _peaks(onsets: Floats) -> NDArray[np.intp]:
    """Frames where the onset curve is highest among its neighbours, and not negligible."""
    held = np.pad(onsets, 1)
    is_peak = (onsets > _LEAST) & (onsets >= held[:-2]) & (onsets > held[2:])
    return np.flatnonzero(is_peak)


def _thresholds(frames: int, expected: Sequence[Expected]) -> Floats:
    """The onset from which on a note is struck again, at each frame."""
    again = np.full(frames, AGAIN, np.float32)
    for one in expected:
        again[max(0, one.start + _DUE) : max(0, one.stop - _DUE)] = AGAIN_AGAINST
    for one in expected:
        again[max(0, one.start - _DUE) : max(0, one.start + _DUE)] = AGAIN_DUE
    return again


def _first(start: int, stop: int, onsets: Floats, peaks: NDArray[np.intp]) -> int:
    """Where a stretch of one pitch begins: at the peak near its start, or there."""
    near = peaks[(peaks >= start - _PULL) & (peaks <= min(start + _PULL, stop - _SHORTEST))]
    return int(near[np.argmax(onsets[near] - _PULL_PRICE * np.abs(near - start))]) if near.size else start


def _parted(
    first: int,
    start: int,
    stop: int,
    until: int,
    semitone: int,
    table: Floats,
    onsets: Floats,
    peaks: NDArray[np.intp],
    again: Floats,
) -> Iterator[NetNote]:
    """A stretch of one pitch as notes: from `first`, and again from each clear peak well before `until`, where the next
    stretch begins."""
    inner = peaks[(peaks > max(first, start) + _APART - 1) & (peaks <= until - _LAST)]
    begins, faint = [first], []
    for peak in inner.tolist():
        least = again[peak] if until - peak > _SHORT_LAST else max(again[peak], AGAIN_SHORT)
        if onsets[peak] > least and peak - begins[-1] >= _APART:
            begins.append(peak)
        elif peak - begins[-1] >= _APART and until - peak > _SHORT_LAST:
            faint.append(peak)
    for begin, end in zip(begins, [*begins[1:], stop], strict=True):
        if end - begin < _SHORTEST:
            continue
        inside = slice(max(start, begin), max(start, begin, end - 1) + 1)
        yield NetNote(
            _between(onsets, begin) if onsets[begin] > _LEAST else float(begin),
            _between(onsets, end) if end < stop else float(end),
            LOWEST_MIDI + semitone,
            float(table[inside, semitone].mean()),
            float(onsets[begin]),
            tuple((_between(onsets, peak), float(onsets[peak])) for peak in faint if begin < peak < end),
        )


def _between(onsets: Floats, peak: int) -> float:
    """Where between frames a bell-shaped peak lies: the top of the parabola through its logarithms."""
    if not 0 < peak < len(onsets) - 1:
        return float(peak)
    before, here, after = np.log(onsets[peak - 1 : peak + 2].astype(np.float64) + 1e-3)
    bend = before - 2 * here + after
    return peak + float(np.clip(0.5 * (before - after) / bend, -0.5, 0.5)) if bend < -1e-6 else float(peak)


def _without_cracks(notes: list[NetNote]) -> list[NetNote]:
    """Notes that speak an octave low at first, as in the upper register of reeds, taken for one: the jump has no onset."""
    line: list[NetNote] = []
    for note in notes:
        last = line[-1] if line else None
        is_crack = (
            last is not None
            and note.midi - last.midi == 12
            and note.onset < _CRACK_ONSET
            and note.start - last.stop < _APART
            and last.stop - last.start < _CRACK_FRAMES
        )
        if last is not None and is_crack:
            line[-1] = replace(note, start=last.start, onset=last.onset)
        else:
            line.append(note)
    return line


def _closed(notes: list[NetNote]) -> list[NetNote]:
    """Each note that another follows directly lasts until that begins, and none longer."""
    line: list[NetNote] = []
    for place, note in enumerate(notes):
        follower = notes[place + 1].start if place + 1 < len(notes) else np.inf
        end = follower if follower - note.stop < _PULL / 2 else note.stop
        if end - note.start >= 1:
            line.append(replace(note, stop=end))
    return line
