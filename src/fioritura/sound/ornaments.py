"""Ornament signs and wind effects as sound: which short notes a sign stands for, and how effects bend a note.

Signs are realised as common practice has them (the main note first in trills and mordents, a turn from above).
Speeds are those of wind playing: a trill of about twelve notes a second, cuts and taps of Irish rolls as short as
fingers make them.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from fioritura.sound.expression import Curve, Vibrato, drop_start_sec, sampled, wave_of
from fioritura.sound.performance import CurvePoint
from fioritura.theory.key import Key
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark

__all__ = ["SubNote", "bend_curve", "realised"]

TRILL_NOTE_SEC: Final = 0.08
TURN_NOTE_SEC: Final = 0.1
MORDENT_NOTE_SEC: Final = 0.065
CUT_SEC: Final = 0.04
SHAKE_SEMITONES: Final = 3
LONG_ROLL_SEC: Final = 0.4
"""Below it a roll has two main notes (short roll), from it on three (long roll)."""

SCOOP_SEMITONES: Final = -1.5
SCOOP_SEC: Final = 0.13
FALL_SEMITONES: Final = 5.0


@dataclass(frozen=True, slots=True)
class SubNote:
    """A piece of a realised note: seconds after the onset, length in seconds, MIDI number."""

    after_sec: float
    duration_sec: float
    midi: int


def realised(pitch: Pitch, marks: Iterable[Mark], key: Key, duration_sec: float) -> list[SubNote]:
    """The notes that a note with an ornament sign stands for; the note itself where it bears none."""
    upper, lower = key.step(pitch, 1).midi, key.step(pitch, -1).midi
    main = pitch.midi
    for mark in marks:
        match mark:
            case Mark.TRILL:
                return _alternation(main, upper, duration_sec, TRILL_NOTE_SEC)
            case Mark.SHAKE:
                return _alternation(main, main + SHAKE_SEMITONES, duration_sec, TRILL_NOTE_SEC)
            case Mark.TURN:
                return _quick_then_held([upper, main, lower], main, duration_sec, TURN_NOTE_SEC)
            case Mark.INVERTED_TURN:
                return _quick_then_held([lower, main, upper], main, duration_sec, TURN_NOTE_SEC)
            case Mark.MORDENT:
                return _quick_then_held([main, lower], main, duration_sec, MORDENT_NOTE_SEC)
            case Mark.INVERTED_MORDENT:
                return _quick_then_held([main, upper], main, duration_sec, MORDENT_NOTE_SEC)
            case Mark.ROLL:
                return _roll(main, upper, lower, duration_sec)
            case Mark.CRAN:
                return _flicked(main, [None, key.step(pitch, 2).midi, upper], duration_sec)
    return [SubNote(0.0, duration_sec, main)]


def _alternation(main: int, other: int, duration_sec: float, unit_sec: float) -> list[SubNote]:
    """main-other-main ..., an odd number of equal notes so that it ends on the main one."""
    count = max(3, round(duration_sec / unit_sec) // 2 * 2 + 1)
    length = duration_sec / count
    return [SubNote(n * length, length, other if n % 2 else main) for n in range(count)]


def _quick_then_held(quick: list[int], held: int, duration_sec: float, unit_sec: float) -> list[SubNote]:
    """Short notes, then the last one for what is left; on a short note all are equally long."""
    unit = min(unit_sec, duration_sec / (len(quick) + 1))
    notes = [SubNote(n * unit, unit, midi) for n, midi in enumerate(quick)]
    start = unit * len(quick)
    return [*notes, SubNote(start, duration_sec - start, held)]


def _roll(main: int, upper: int, lower: int, duration_sec: float) -> list[SubNote]:
    """An Irish roll: the note parted by a cut from above and a tap from below; a short one begins with the cut."""
    is_long = duration_sec >= LONG_ROLL_SEC
    return _flicked(main, [None, upper, lower] if is_long else [upper, lower], duration_sec)


def _flicked(main: int, flicks: Sequence[int | None], duration_sec: float) -> list[SubNote]:
    """The note said once for each of the flicks before it; None for none. A cran has cuts of two fingers, no tap."""
    pieces: list[SubNote] = []
    length = duration_sec / len(flicks)
    flick_sec = min(CUT_SEC, length / 3)
    for number, flick in enumerate(flicks):
        start = number * length
        if flick is None:
            pieces.append(SubNote(start, length, main))
            continue
        pieces.append(SubNote(start, flick_sec, flick))
        pieces.append(SubNote(start + flick_sec, length - flick_sec, main))
    return pieces


def bend_curve(marks: Iterable[Mark], duration_sec: float, vibrato: Vibrato | None) -> tuple[CurvePoint, ...]:
    """The pitch curve, in semitones, of a note with scoop, fall, doit or vibrato; empty for a level note."""
    found = set(marks)
    curves: list[Curve] = []
    if Mark.SCOOP in found:
        curves.append(_scoop(min(SCOOP_SEC, 0.4 * duration_sec)))
    if Mark.FALL in found or Mark.DOIT in found:
        goal = -FALL_SEMITONES if Mark.FALL in found else FALL_SEMITONES
        curves.append(_drop(goal, drop_start_sec(duration_sec), duration_sec))
    if vibrato:
        wave = wave_of(vibrato)
        curves.append(lambda after: vibrato.depth * wave(after))
    if not curves:
        return ()
    return sampled(lambda after: sum(curve(after) for curve in curves), duration_sec)


def _scoop(length_sec: float) -> Curve:
    def curve(after: float) -> float:
        left = max(0.0, 1.0 - after / length_sec)
        return SCOOP_SEMITONES * math.pow(left, 1.5)

    return curve


def _drop(goal: float, start_sec: float, end_sec: float) -> Curve:
    def curve(after: float) -> float:
        share = min(1.0, max(0.0, (after - start_sec) / (end_sec - start_sec)))
        return goal * math.pow(share, 1.6)

    return curve
