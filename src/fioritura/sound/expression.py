"""How a held note lives: its swell, the taper at the end of a phrase, the bite of an accent, and vibrato.

Vibrato sets in when half of a long note is over and grows in depth, rate and level together (common practice; jazz players
let a note stand first). Levels are shares of the full one, as in `PerformedNote.level`: a tenth is 40 dB less.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from fioritura.sound.performance import CurvePoint
from fioritura.tune import Feel, Mark

__all__ = ["Curve", "Vibrato", "drop_start_sec", "level_curve", "sampled", "vibrato_of", "wave_of"]

LONG_NOTE_SEC: Final = 0.55
MARKED_NOTE_SEC: Final = 0.3
TAPERED_NOTE_SEC: Final = 0.2

SWELL: Final = ((0.0, -4.5), (0.45, 0.0), (1.0, -4.5))
SWELL_AWAY: Final = ((0.0, -3.5), (0.3, 0.0), (0.6, -1.5), (1.0, -8.0))
"""A long note inside a phrase and at its end: share of the note, decibels."""

HAIRPINS: Final = {
    Mark.CRESCENDO: ((0.0, -6.0), (0.9, 0.0), (1.0, -0.5)),
    Mark.DIMINUENDO: ((0.0, -0.5), (0.1, 0.0), (1.0, -7.0)),
}
"""A long note over which a hairpin opens."""

TAPER: Final = ((0.0, 0.0), (0.5, 0.0), (1.0, -5.0))
BITE: Final = ((0.0, 0.0), (0.04, 0.0), (0.14, -3.5))
"""An accent: seconds, decibels; the note goes on at its last level."""

FALL_DB: Final = -21.0
FALL_SEC: Final = 0.32
STEP_SEC: Final = 0.008
_SHORT: Final = frozenset({Mark.STACCATO, Mark.MARCATO, Mark.GHOST})

GROWN_AT: Final = 0.8
"""The share of its time at which vibrato is at its widest."""

DEPTHS_SEMITONES: Final = {57: 0.13, 58: 0.12, 69: 0.14, 72: 0.06, 74: 0.13}
"""Depth either way by General MIDI program; clarinets hardly use it."""

SAXOPHONE_DEPTH_SEMITONES: Final = 0.2
LEVELS_DB: Final = {69: 1.5, 72: 0.3, 74: 2.0}
"""How far the level swings either way: flutes' and oboes' vibrato is one of breath more than of pitch."""

USUAL_LEVEL_DB: Final = 0.8

Curve = Callable[[float], float]
Points = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class _Manner:
    """When vibrato sets in, as a share of the note; its rate there and at its widest; its depth against the usual."""

    sets_in: float
    slow_hz: float
    quick_hz: float
    depth: float


MANNERS: Final[dict[Feel, _Manner]] = {
    "swing": _Manner(0.55, 4.2, 5.4, 1.0),
    "straight": _Manner(0.5, 4.6, 5.6, 0.8),
}


@dataclass(frozen=True, slots=True)
class Vibrato:
    """A wave around pitch and level that sets in at `delay_sec` and is fully grown at `grown_sec`: depth in semitones and
    decibels either way, rate in hertz at its beginning and when it is grown."""

    depth: float
    level_db: float
    slow_hz: float
    quick_hz: float
    delay_sec: float
    grown_sec: float

    def growth(self, after_sec: float) -> float:
        """0 before it sets in, 1 when it is grown."""
        return min(1.0, max(0.0, (after_sec - self.delay_sec) / (self.grown_sec - self.delay_sec)))


def vibrato_of(marks: Iterable[Mark], program: int, feel: Feel, duration_sec: float) -> Vibrato | None:
    """The vibrato of a note of an instrument (General MIDI program): on long notes, and where it is marked, wider."""
    is_marked = Mark.VIBRATO in set(marks)
    if duration_sec < (MARKED_NOTE_SEC if is_marked else LONG_NOTE_SEC):
        return None
    manner = MANNERS[feel]
    depth = DEPTHS_SEMITONES.get(program, SAXOPHONE_DEPTH_SEMITONES) * manner.depth * (1.5 if is_marked else 1.0)
    delay = manner.sets_in * duration_sec
    grown = delay + GROWN_AT * (duration_sec - delay)
    level_db = LEVELS_DB.get(program, USUAL_LEVEL_DB) * (1.5 if is_marked else 1.0)
    return Vibrato(depth, level_db, manner.slow_hz, manner.quick_hz, delay, grown)


def wave_of(vibrato: Vibrato) -> Curve:
    """The wave, −1 to 1, grown and ever quicker."""
    length = vibrato.grown_sec - vibrato.delay_sec

    def wave(after_sec: float) -> float:
        since = after_sec - vibrato.delay_sec
        if since <= 0.0:
            return 0.0
        rise = vibrato.quick_hz - vibrato.slow_hz
        growing = min(since, length)
        turns = vibrato.slow_hz * since + rise * (growing**2 / (2 * length) + max(0.0, since - length))
        return vibrato.growth(after_sec) * math.sin(2 * math.pi * turns)

    return wave


def level_curve(
    marks: Iterable[Mark], duration_sec: float, vibrato: Vibrato | None = None, *, ends_phrase: bool = False
) -> tuple[CurvePoint, ...]:
    """The level of a note from its onset, 0 to 1; empty for one that is level throughout."""
    found = set(marks)
    curves: list[Curve] = []
    if {Mark.FALL, Mark.DOIT} & found:
        start = drop_start_sec(duration_sec)
        curves.append(_line(((0.0, 0.0), (start, 0.0), (duration_sec, FALL_DB)), 1.0))
    elif duration_sec >= LONG_NOTE_SEC and not found & _SHORT:
        hairpin = next((HAIRPINS[mark] for mark in HAIRPINS if mark in found), None)
        curves.append(_line(hairpin or (SWELL_AWAY if ends_phrase else SWELL), duration_sec))
    elif ends_phrase and duration_sec >= TAPERED_NOTE_SEC:
        curves.append(_line(TAPER, duration_sec))
    if {Mark.ACCENT, Mark.MARCATO} & found:
        curves.append(_line(BITE, 1.0))
    if vibrato:
        wave = wave_of(vibrato)
        curves.append(lambda after: vibrato.level_db * (wave(after) - vibrato.growth(after)))
    if not curves:
        return ()
    return sampled(lambda after: 10 ** (min(0.0, sum(curve(after) for curve in curves)) / 40), duration_sec)


def drop_start_sec(duration_sec: float) -> float:
    """When a note that falls or rises off begins to."""
    return max(0.4 * duration_sec, duration_sec - FALL_SEC)


def sampled(curve: Curve, duration_sec: float) -> tuple[CurvePoint, ...]:
    """The curve at even steps, without points that lie between two of the same value."""
    places = [step * STEP_SEC for step in range(math.ceil(duration_sec / STEP_SEC))] + [duration_sec]
    points: list[CurvePoint] = []
    for place in places:
        value = round(curve(place), 4)
        if len(points) > 1 and value == points[-1].value == points[-2].value:
            points.pop()
        points.append(CurvePoint(place, value))
    return tuple(points)


def _line(points: Points, unit_sec: float) -> Curve:
    """The polygon through points whose places are shares of a length."""

    def curve(after_sec: float) -> float:
        place = after_sec / unit_sec
        for (left, low), (right, high) in pairwise(points):
            if place <= right:
                return low + (high - low) * (place - left) / (right - left)
        return points[-1][1]

    return curve
