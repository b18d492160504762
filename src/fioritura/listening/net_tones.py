"""The net's notes laid over the tracker's frames, so that what is inside them can be measured."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import log
from typing import Final

import numpy as np

from fioritura.listening.decode import NetNote
from fioritura.listening.inflect import Tone, pitch_line
from fioritura.listening.neural import Heard, seconds_of
from fioritura.listening.pitch import HOP, RATE, Track

__all__ = ["net_tones"]

JOINED_SEC: Final = 0.025
"""A note that begins so soon after another's end follows it without a rest."""
_HOME_CENTS: Final = 60.0
_RISE_FRAMES: Final = 8
_ONSET_DB: Final = -15.0
_SILENCE_DB: Final = 20.0


def net_tones(heard: Heard, track: Track) -> list[Tone]:
    """A tone for each of the net's notes, in order; one that follows directly begins where the one before ends."""
    found: list[Tone] = []
    gap = round(JOINED_SEC * RATE / HOP)
    for note in heard.notes:
        start, stop = (_frame(seconds_of(place), track) for place in (note.start, note.stop))
        if not found or start - found[-1].stop > gap:
            start = _risen(start, stop, found[-1].stop if found else 0, track)
        if stop - start < 2:
            continue
        odds = log((note.onset + 1e-3) / (1.001 - note.onset))
        core = _core(note, start, stop, heard.tuning_cents, track)
        found.append(
            Tone(start, *core, stop, note.midi, note.onset > 0.5, odds, note.confidence, tuple(_faint(note)))
        )
    for place, (tone, follower) in enumerate(pairwise(found)):
        if follower.start - tone.stop <= gap:
            found[place] = replace(tone, stop=follower.start, core_stop=min(tone.core_stop, follower.start))
    return found


def _frame(second: float, track: Track) -> int:
    """The frame whose left edge is nearest to a time, within the track."""
    return int(np.clip(round((second - track.time(-0.5)) * RATE / HOP), 0, len(track)))


def _risen(start: int, stop: int, earliest: int, track: Track) -> int:
    """Where near `start` a note out of silence comes to `_ONSET_DB` under its level; `start` where there is no silence."""
    level = track.level_db
    loud = float(np.percentile(level[start : max(stop, start + 1)], 75))
    first = max(earliest, start - _RISE_FRAMES)
    near = level[first : min(stop, start + _RISE_FRAMES)]
    below = np.flatnonzero(near < loud + _ONSET_DB)
    if not near.size or near.min() > loud - _SILENCE_DB or not below.size:
        return start
    return min(first + int(below[-1]) + 1, stop - 2)


def _core(note: NetNote, start: int, stop: int, tuning_cents: float, track: Track) -> tuple[int, int]:
    """The frames from the first to the last that are at the note's own pitch; all of it where hardly any are."""
    home = 100.0 * (note.midi - 69) + tuning_cents
    line = pitch_line(track, start, stop, home)
    near = np.flatnonzero(np.abs(line - home) < _HOME_CENTS)
    return (start + int(near[0]), start + int(near[-1]) + 1) if near.size > 2 else (start, stop)


def _faint(note: NetNote) -> Iterator[tuple[float, float]]:
    for frame, share in note.faint:
        yield round(seconds_of(frame), 4), round(share, 2)
