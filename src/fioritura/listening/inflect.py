"""From segments to tones: scoops, falls, bends and vibrato told apart from notes.

A scoop and a grace note below both begin low and end on the main note. What tells them apart is the way between:
fingers change the pitch in some 15 ms, the embouchure takes longer. So a short low segment belongs to the note
that follows when the pitch takes more than `SLOW_SEC` over the middle 60 % of the way.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.notes import Inflection, InflectionKind, Vibrato
from fioritura.listening.pitch import FRAME_SEC, Track
from fioritura.listening.segment import Segment, State

__all__ = ["Tone", "inflections", "pitch_line", "tones", "vibrato"]

SLOW_SEC: Final = 0.019
LEAD_SEC: Final = 0.11
LEAD_SEMITONES: Final = 2
FINGERED_CENTS: Final = 85.0
TAIL_SEC: Final = 0.12
WIDEST_SEMITONES: Final = 4
SETTLED_CENTS: Final = 15.0
LEAST_CENTS: Final = 35.0
LEAST_SEC: Final = 0.04
SCOOP_SEC: Final = 0.04
SCOOP_CENTS: Final = (60.0, 350.0)
"""A scoop lasts so long at least and comes from so far below; less is an attack that is not in tune at once."""
SLUR_CENTS: Final = 15.0
"""What comes from within this distance of the note before is slurred from it."""
BEND_SEC: Final = (0.06, 0.5)
VIBRATO_MOST_LEFT: Final = 0.5
_RATES: Final = np.arange(3.5, 9.0, 0.05)
VIBRATO_LEAST_SEC: Final = 0.28
VIBRATO_LEAST_CENTS: Final = 7.0
_SLOPE_FRAMES: Final = 14
_UNCLEAR: Final = 0.4
_NEAR_CENTS: Final = 550.0
_RINGING_CENTS: Final = 40.0

Line = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Tone:
    """A note with what leads into it and out of it: frames `start` to `stop`, of which `core_start` to `core_stop`
    hold the pitch. Where the net found it, `confidence` and `faint` are the net's: see `PlayedNote`."""

    start: int
    core_start: int
    core_stop: int
    stop: int
    midi: int
    is_struck: bool
    struck_odds: float = np.inf
    confidence: float | None = None
    faint: tuple[tuple[float, float], ...] = ()


def tones(segments: Sequence[Segment], track: Track, tuning_cents: float) -> list[Tone]:
    """Notes in order, with what the embouchure did joined to the notes that it belongs to."""
    line = _with_glides(segments)
    joined: list[Tone] = []
    for place, tone in enumerate(line):
        last = joined[-1] if joined else None
        if last is None or last.stop < tone.start or not _is_slow(last, tone, track, tuning_cents):
            joined.append(tone)
            continue
        before = joined[-2] if len(joined) > 1 and joined[-2].stop == last.start else None
        is_last = place + 1 == len(line) or line[place + 1].start > tone.stop
        if _is_lead(last, tone):
            joined[-1] = replace(tone, start=last.start, is_struck=last.is_struck, struck_odds=last.struck_odds)
        elif (
            before
            and _is_bend(before, last, tone, track, tuning_cents)
            and _is_slow(before, last, track, tuning_cents)
        ):
            joined[-2:] = [replace(before, core_stop=tone.core_stop, stop=tone.stop)]
        elif is_last and (tone.stop - tone.core_start) * FRAME_SEC <= TAIL_SEC:
            joined[-1] = replace(last, stop=tone.stop)
        else:
            joined.append(tone)
    return joined


def _with_glides(segments: Sequence[Segment]) -> list[Tone]:
    """One tone a note; a glide goes with the note that it leads into, before a rest with the one that it leaves."""
    line: list[Tone] = []
    glide: Segment | None = None
    for segment in segments:
        last = line[-1] if line else None
        if segment.state is State.GLIDE:
            glide = segment
            continue
        if segment.state is State.REST:
            if glide and last and last.stop == glide.start:
                line[-1] = replace(last, stop=glide.stop)
        else:
            start = glide.start if glide else segment.start
            tone = Tone(start, segment.start, segment.stop, segment.stop, segment.midi, segment.is_struck)
            tone = replace(tone, struck_odds=segment.struck_odds)
            if last and last.stop == start and last.midi == tone.midi and not tone.is_struck:
                line[-1] = replace(last, core_stop=tone.core_stop, stop=tone.stop)
            else:
                line.append(tone)
        glide = None
    return line


def _is_lead(low: Tone, tone: Tone) -> bool:
    """True when `low` may be the beginning of a scoop into `tone`."""
    return 0 < tone.midi - low.midi <= LEAD_SEMITONES and (low.stop - low.start) * FRAME_SEC <= LEAD_SEC


def _is_bend(before: Tone, middle: Tone, after: Tone, track: Track, tuning_cents: float) -> bool:
    """True when `middle` may be a bend or a wave of vibrato, not quite a semitone away from the pitch around it."""
    is_short = (after.core_start - middle.start) * FRAME_SEC <= BEND_SEC[1]
    if not is_short or before.midi != after.midi or abs(middle.midi - after.midi) != 1:
        return False
    home = 100.0 * (after.midi - 69) + tuning_cents
    line = pitch_line(track, middle.core_start, middle.core_stop, home)
    return line.size > 0 and float(np.abs(np.median(line) - home)) < FINGERED_CENTS


def _is_slow(last: Tone, tone: Tone, track: Track, tuning_cents: float) -> bool:
    """True when the way from one pitch to the next is too slow for fingers, and no attack parts the two."""
    if tone.is_struck or last.midi == tone.midi or abs(last.midi - tone.midi) > WIDEST_SEMITONES:
        return False
    start = max(last.start, tone.core_start - _SLOPE_FRAMES)
    stop = min(tone.core_stop, tone.core_start + _SLOPE_FRAMES)
    line = pitch_line(track, start, stop, 100.0 * (tone.midi - 69) + tuning_cents)
    return _rise_sec(line if tone.midi > last.midi else -line) > SLOW_SEC


def _rise_sec(line: Line) -> float:
    """How long the pitch takes over the middle 60 % of its last way up to the top."""
    if line.size < 4:
        return 0.0
    bottom, top = np.percentile(line, 15), line[-3:].mean()
    if top - bottom < LEAST_CENTS / 2:
        return 0.0
    height = (line - bottom) / (top - bottom)
    high = _last_crossing(height, 0.8)
    return max(0.0, high - _last_crossing(height[: int(high) + 1], 0.2)) * FRAME_SEC


def _last_crossing(height: Line, share: float) -> float:
    """Where a rising line last crosses a height, between frames; 0 when it never does."""
    below = np.flatnonzero(height[:-1] < share)
    if not below.size:
        return 0.0
    last = int(below[-1])
    step = height[last + 1] - height[last]
    return last + float(np.clip((share - height[last]) / step, 0, 1)) if step > 0 else float(last)


def pitch_line(track: Track, start: int, stop: int, near_cents: float) -> Line:
    """The pitch in cents over frames, near an expected one; gaps are bridged. Empty when nothing is heard there."""
    cents = np.concatenate([track.heard.cents[start:stop], track.fresh.cents[start:stop]], axis=1)
    unclear = np.concatenate([track.heard.aperiodicity[start:stop], track.fresh.aperiodicity[start:stop]], axis=1)
    away = np.abs(cents - near_cents)
    cost = np.where(away < _NEAR_CENTS, unclear + away / 4000, np.inf)
    cost = np.where(unclear < _UNCLEAR, cost, np.inf)
    rows, best = np.arange(len(cost)), cost.argmin(axis=1)
    known = np.isfinite(cost[rows, best])
    if not known.any():
        return np.zeros(0)
    return np.asarray(np.interp(rows, rows[known], cents[rows, best][known]))


def steady_pitch(line: Line, tone: Tone) -> float:
    """Median of the core, its first and last fifth left out."""
    core = line[tone.core_start - tone.start : tone.core_stop - tone.start]
    margin = len(core) // 5
    return float(np.median(core[margin : len(core) - margin]))


def inflections(
    line: Line, tone: Tone, pitch_cents: float, start_sec: float, before: Tone | None = None
) -> Iterator[Inflection]:
    """Scoop, bend, fall or doit in a tone's pitch line; `start_sec` is the time of its first frame, `before` the tone
    that it follows without a rest."""
    away = line - pitch_cents
    settled = np.flatnonzero(np.abs(away) < SETTLED_CENTS)
    if settled.size < 3:
        return
    first, last = int(settled[0]), int(settled[-1])
    own = _own_start(away[:first], before, tone)
    lead, lowest = (first - own) * FRAME_SEC, float(away[own:first].min(initial=0.0))
    is_deep = SCOOP_CENTS[0] <= -lowest <= SCOOP_CENTS[1] and not _is_ringing(lowest, before, tone)
    if lead >= SCOOP_SEC and is_deep and _rise_sec(line[own : first + 3]) > SLOW_SEC:
        yield Inflection(InflectionKind.SCOOP, start_sec + own * FRAME_SEC, lead, lowest)
    yield from _bends(away[first : last + 1], start_sec + first * FRAME_SEC)
    tail = len(line) - 1 - last
    if tail * FRAME_SEC >= LEAST_SEC:
        end = float(np.median(away[-3:]))
        if abs(end) > 1.5 * LEAST_CENTS:
            kind = InflectionKind.FALL if end < 0 else InflectionKind.DOIT
            yield Inflection(kind, start_sec + last * FRAME_SEC, tail * FRAME_SEC, end)


def _own_start(away: Line, before: Tone | None, tone: Tone) -> int:
    """The first frame of a tone's way to its pitch that does not still hold the pitch of the tone before."""
    if before is None:
        return 0
    held = np.flatnonzero(np.abs(away - 100 * (before.midi - tone.midi)) < SLUR_CENTS)
    return int(held[-1]) + 1 if held.size else 0


def _is_ringing(lowest_cents: float, before: Tone | None, tone: Tone) -> bool:
    """True where a net's note, as in a room, begins no deeper than about the pitch of the note before."""
    if before is None or tone.confidence is None:
        return False
    return abs(lowest_cents - 100 * (before.midi - tone.midi)) < _RINGING_CENTS


def _bends(away: Line, start_sec: float) -> Iterator[Inflection]:
    """Excursions to one side that are too far and too lonely for vibrato."""
    outside = np.flatnonzero(np.abs(away) > LEAST_CENTS)
    if not outside.size:
        return
    runs = [run for run in np.split(outside, np.flatnonzero(np.diff(outside) > 1) + 1) if len(run) > 2]
    signs = {bool(away[run[0]] > 0) for run in runs}
    if len(runs) > 2 or len(signs) > 1:
        return
    for run in runs:
        inner = np.flatnonzero(np.abs(away) < SETTLED_CENTS)
        before, after = inner[inner < run[0]], inner[inner > run[-1]]
        if not before.size or not after.size:
            continue
        length = float(after[0] - before[-1]) * FRAME_SEC
        extent = float(away[run][np.argmax(np.abs(away[run]))])
        if BEND_SEC[0] <= length <= BEND_SEC[1]:
            yield Inflection(InflectionKind.BEND, start_sec + float(before[-1]) * FRAME_SEC, length, extent)


def vibrato(core: Line) -> tuple[Vibrato, float] | None:
    """The vibrato of a tone's core (cents), and the pitch that it swings around.

    It is the sinusoid that fits best from the start of the core or, as players do, from later on.
    """
    found = [_vibrato(core[int(share * core.size) :]) for share in (0.0, 0.25, 0.5)]
    return max((one for one in found if one), key=lambda one: one[0].extent_cents, default=None)


def _vibrato(core: Line) -> tuple[Vibrato, float] | None:
    """The best sinusoid over a straight line, unless it is too small or explains too little."""
    if core.size * FRAME_SEC < VIBRATO_LEAST_SEC:
        return None
    time = np.arange(core.size) * FRAME_SEC
    steady = np.stack([np.ones_like(time), time - time.mean()], axis=1)
    calm = core - (steady * _fitted(steady, core)).sum(axis=1)
    waves = np.exp(-2j * np.pi * _RATES[:, None] * time)
    rate = float(_RATES[np.argmax(np.abs((waves * (calm * np.hanning(core.size))).sum(axis=1)))])
    angle = 2 * np.pi * rate * time
    basis = np.stack([np.cos(angle), np.sin(angle), np.ones_like(time), time], axis=1)
    weights = _fitted(basis, core)
    extent = float(np.hypot(weights[0], weights[1]))
    left = float(np.var(core - (basis * weights).sum(axis=1)) / max(float(np.var(calm)), 1e-9))
    if extent < VIBRATO_LEAST_CENTS or left > VIBRATO_MOST_LEFT or rate in (_RATES[0], _RATES[-1]):
        return None
    return Vibrato(round(rate, 2), round(extent, 1)), float(weights[2] + weights[3] * time[-1] / 2)


def _fitted(basis: Line, values: Line) -> Line:
    """The weights with which the columns of a basis fit values best, without the threads of a linear-algebra library:
    for a few hundred numbers they cost more than they save."""
    return np.asarray(np.linalg.solve(np.einsum("ij,ik->jk", basis, basis), np.einsum("ij,i->j", basis, values)))
