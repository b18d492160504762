"""From frames to notes: one dynamic programme over the track.

At every frame the player is in one of these states:

- *rest*: silence, breath or noise;
- *note k*: holding MIDI pitch k, on the player's own tuning. A note must last `_SHORTEST` frames, so it is a chain
  of that many states of which the last one may be held;
- *glide*: between pitches, on the way of a scoop, a fall or a bend.

The path of least cost is found exactly (Viterbi). A frame costs what it deviates from its state: a note pays for
distance in pitch and for aperiodicity of its best dip, a rest for level and periodicity, a glide for standing still
or jumping. A move costs a fixed sum less what the frame shows as *articulation*: a sag of the level between two
louder moments, and a burst of aperiodicity, which is what a tongue, a new breath or a restarted tone leaves behind.
Costs are natural logarithms of odds; see `Costs`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum
from typing import Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from fioritura.listening.attack import articulation, peaks, start_of_change
from fioritura.listening.pitch import FRAME_SEC, Dips, Floats, Track

__all__ = ["Costs", "Segment", "State", "segments"]

LOWEST_MIDI: Final = 35
HIGHEST_MIDI: Final = 97
_SHORTEST: Final = 4
_SHORTEST_REPEAT: Final = 9
_PULL: Final = 12
_WHOLE: Final = 0.02
_ATTACK_DB: Final = 8.0
_NEVER: Final = np.float32(1e9)
_LONGEST_CHUNK: Final = 4000
_SILENT_FRAMES: Final = 8


class State(Enum):
    """What the player does in a segment."""

    REST = "rest"
    NOTE = "note"
    GLIDE = "glide"


@dataclass(frozen=True, slots=True)
class Segment:
    """Frames `start` to `stop` (excluded) in one state; `midi` is 0 but for a note, `articulation` 0 to about 2."""

    state: State
    start: int
    stop: int
    midi: int = 0
    articulation: float = 0.0


@dataclass(frozen=True, slots=True)
class Costs:
    """The prices of the programme, chosen on the train half of the benchmark's tunes."""

    pitch_cents: float = 35.0
    """Deviation that costs 0.5 a frame; the cost grows with its square."""
    pitch_limit: float = 2.5
    """No deviation costs more, so that a stray frame can be passed over."""
    aperiodic: float = 5.0
    """A frame of a note, for each unit of aperiodicity."""
    octave: float = 0.35
    """A frame of a note, for each octave below the highest: the same dips recur at every multiple of the period."""
    fresh: float = 0.3
    """A frame of a note that is heard only under the tail of another."""
    chord: float = 3.0
    """A frame of a note that two higher ones explain together."""
    quiet: float = 0.25
    """A frame of a note, for each dB under the gate; a rest pays the same for each dB above it."""
    rest_limit: float = 2.0
    """The most that level adds to a frame."""
    rest_periodic: float = 2.0
    """A frame of rest that is fully periodic."""
    glide: float = 1.2
    """A frame of glide that moves smoothly."""
    glide_limit: float = 8.0
    """A frame of glide that stands still or jumps."""
    start: float = 4.0
    """A note or glide begins after a rest, or ends in one."""
    change: float = 7.0
    """One note moves to another."""
    leap: float = 0.3
    """The same, for each semitone."""
    repeat: float = 0.0
    """A note is struck again at the same pitch, less the log-odds of an attack there."""
    into_glide: float = 3.0
    """A note bends away into a glide, or a glide settles on a note."""


def segments(track: Track, tuning_cents: float, costs: Costs = Costs()) -> list[Segment]:
    """The path of least cost, as segments in order that leave no frame out.

    The track is cut where it is silent, so that memory and time grow with the length alone.
    """
    evidence = _Evidence(track, tuning_cents, costs)
    found: list[Segment] = []
    for start, stop, is_silent in _chunks(evidence.is_silent):
        if is_silent:
            found.append(Segment(State.REST, start, stop))
        else:
            found += _best_path(evidence, start, stop, costs)
    found = [part for segment in found for part in _struck_again(segment, evidence, costs.repeat)]
    return _pulled_back(found, evidence)


def _struck_again(segment: Segment, evidence: _Evidence, cost: float) -> Iterator[Segment]:
    """A note, parted where an attack breaks it; a break close to its ends belongs to the moves there."""
    start = segment.start
    if segment.state is State.NOTE:
        inside = slice(start + _SHORTEST_REPEAT, segment.stop - _SHORTEST_REPEAT)
        for frame in inside.start + np.flatnonzero(evidence.struck[inside] > cost):
            if frame - start >= _SHORTEST_REPEAT:
                yield replace(segment, start=start, stop=int(frame))
                segment = replace(segment, articulation=float(evidence.struck[frame]))
                start = int(frame)
    yield replace(segment, start=start)


def _pulled_back(found: list[Segment], evidence: _Evidence) -> list[Segment]:
    """Each note that follows another begins where the tone before it stops being whole, or where it was struck.

    The programme changes notes where the new one explains the sound better than the old; a soft attack begins
    earlier, and an attack without a clear pitch is taken for a rest, though the level does not sink.
    """
    line: list[Segment] = []
    for segment in found:
        if len(line) > 1 and segment.state is not State.REST and _is_attack(line[-2], line[-1], evidence.level_db):
            segment = replace(segment, start=line.pop().start)
        if line and line[-1].state is State.NOTE and segment.state is not State.REST:
            old = line[-1]
            start = evidence.start_of_change(old, segment.start)
            line[-1], segment = replace(old, stop=start), replace(segment, start=start)
        line.append(segment)
    return line


def _is_attack(old: Segment, rest: Segment, level_db: Floats) -> bool:
    """True for a short rest as loud as the note before it."""
    if old.state is not State.NOTE or rest.state is not State.REST or rest.stop - rest.start > _PULL:
        return False
    return bool(level_db[rest.start : rest.stop].min() > np.median(level_db[old.start : old.stop]) - _ATTACK_DB)


def _chunks(is_silent: NDArray[np.bool_]) -> Iterator[tuple[int, int, bool]]:
    """Stretches (start, stop, is silent); a short silence belongs to the sound around it."""
    edges = np.flatnonzero(np.diff(is_silent.astype(np.int8))) + 1
    runs = np.concatenate([[0], edges, [is_silent.size]])
    start = 0
    for first, last in zip(runs[:-1], runs[1:], strict=True):
        if is_silent[first] and last - first >= _SILENT_FRAMES:
            yield from _pieces(start, first)
            yield int(first), int(last), True
            start = int(last)
    yield from _pieces(start, is_silent.size)


def _pieces(start: int, stop: int) -> Iterator[tuple[int, int, bool]]:
    while stop - start > _LONGEST_CHUNK:
        yield start, start + _LONGEST_CHUNK, False
        start += _LONGEST_CHUNK
    if stop > start:
        yield start, stop, False


class _Evidence:
    """The track seen as costs: what each frame says for and against each state."""

    def __init__(self, track: Track, tuning_cents: float, costs: Costs) -> None:
        self._track, self._tuning, self._costs = track, tuning_cents, costs
        self.gate_db = gate_db(track.level_db)
        self.is_silent = track.level_db < self.gate_db - 10
        best = track.heard.aperiodicity.min(axis=1)
        self.articulation = articulation(track)
        self.struck = peaks(self.articulation)
        above = np.clip((track.level_db - self.gate_db) * costs.quiet, -costs.rest_limit, costs.rest_limit)
        self.rest = np.maximum(above, 0) + costs.rest_periodic * np.clip(1 - best / 0.5, 0, 1)
        self._quiet = np.maximum(-above, 0)
        self.glide = self._quiet + np.where(is_gliding(track), costs.glide, costs.glide_limit)

    @property
    def level_db(self) -> Floats:
        """Level of each frame."""
        return self._track.level_db

    def start_of_change(self, old: Segment, frame: int) -> int:
        """Where before `frame` the note `old` was struck off, or is no longer whole."""
        earliest = max(old.start + _SHORTEST, frame - _PULL)
        if earliest >= frame:
            return frame
        away = np.abs(self._track.heard.cents[old.start : frame] - self._tuning - 100 * (old.midi - 69))
        left = np.where(away < 60, self._track.heard.aperiodicity[old.start : frame], 1).min(axis=1)
        whole = left < max(_WHOLE, 2 * float(np.median(left)))
        start = old.start + start_of_change(whole, frame - old.start, earliest - old.start)
        struck = np.flatnonzero(self.struck[earliest:frame] > 0)
        return min(start, earliest + int(struck[0])) if struck.size else start

    def notes(self, start: int, stop: int) -> Floats:
        """Cost of each note (from `LOWEST_MIDI` up) at each frame, shape (frames, notes)."""
        costs, track = self._costs, self._track
        worst = costs.pitch_limit + costs.aperiodic * 0.5
        table = np.full((stop - start, HIGHEST_MIDI - LOWEST_MIDI + 5), worst, np.float32)
        self._enter(table, track.heard, start, stop, 0.0)
        self._enter(table, track.fresh, start, stop, costs.fresh)
        return np.asarray(table[:, 2:-2] + self._quiet[start:stop, None], np.float32)


    def _enter(self, table: Floats, dips: Dips, start: int, stop: int, extra: float) -> None:
        """Lower the table's costs to what these dips offer."""
        costs = self._costs
        cents, aperiodicity = dips.cents[start:stop], dips.aperiodicity[start:stop]
        place = (cents - self._tuning + 6900) / 100 - LOWEST_MIDI
        place = np.where(np.isfinite(place), place, -9)
        own = costs.aperiodic * np.minimum(aperiodicity, 1) + costs.chord * dips.doubt()[start:stop] + extra
        own += costs.octave * (HIGHEST_MIDI - LOWEST_MIDI - place) / 12
        rows = np.arange(stop - start)
        for band in range(cents.shape[1]):
            nearest = np.rint(place[:, band]).astype(int)
            for offset in (-1, 0, 1):
                column = np.clip(nearest + offset + 2, 0, table.shape[1] - 1)
                away = 100 * (nearest + offset - place[:, band]) / costs.pitch_cents
                cost = np.minimum(0.5 * away**2, costs.pitch_limit) + own[:, band]
                table[rows, column] = np.minimum(table[rows, column], cost)


def gate_db(level_db: Floats) -> float:
    """The level between rest and tone: above the noise, below all but the softest notes."""
    floor, peak = np.percentile(level_db, [5, 95])
    return float(np.clip(floor + 6, peak - 42, peak - 15))


def is_gliding(track: Track) -> NDArray[np.bool_]:
    """True where the pitch moves smoothly, by 0.8 to 10 cents a millisecond, over 35 ms."""
    line, unclear = track.heard.best()
    windows = sliding_window_view(np.pad(line, 3, mode="edge"), 7)
    time = np.arange(-3, 4) * FRAME_SEC * 1000
    with np.errstate(invalid="ignore"):
        slope = windows @ time / (time @ time)
        stray = np.abs(windows - windows.mean(axis=1, keepdims=True) - slope[:, None] * time).max(axis=1)
    speed = np.abs(slope)
    smooth = (speed > 0.8) & (speed < 10) & (stray < 12 + 2 * speed)
    return np.asarray(smooth & (unclear < 0.3))


def _best_path(evidence: _Evidence, start: int, stop: int, costs: Costs) -> list[Segment]:
    """Viterbi over one stretch."""
    table = evidence.notes(start, stop)
    rest, glide = evidence.rest[start:stop], evidence.glide[start:stop]
    count = table.shape[1]
    pitch = np.arange(count)
    move = costs.change + costs.leap * np.abs(pitch[:, None] - pitch).astype(np.float32)
    np.fill_diagonal(move, _NEVER)
    REST, GLIDE = count, count + 1
    frames = stop - start
    came = np.empty((frames, count), np.int16)
    held = np.empty((frames, count), np.bool_)
    rest_from = np.empty(frames, np.int16)
    glide_from = np.empty(frames, np.int16)
    chain = np.full((_SHORTEST, count), _NEVER, np.float32)
    at_rest, at_glide = np.float32(0), _NEVER
    for t in range(frames):
        steady = chain[-1]
        arrivals = steady[:, None] + move
        source = arrivals.argmin(axis=0)
        enter = arrivals[source, pitch]
        out = int(steady.argmin())
        for code, cost in ((REST, at_rest + costs.start), (GLIDE, at_glide + costs.into_glide)):
            better = cost < enter
            enter = np.where(better, cost, enter)
            source = np.where(better, code, source)
        came[t] = source
        options = (at_rest, steady[out] + costs.start, at_glide + costs.start)
        pick = int(np.argmin(options))
        rest_from[t] = (REST, out, GLIDE)[pick]
        new_rest = options[pick] + rest[t]
        options = (at_glide, steady[out] + costs.into_glide, at_rest + costs.start)
        pick = int(np.argmin(options))
        glide_from[t] = (GLIDE, out, REST)[pick]
        new_glide = options[pick] + glide[t]
        hold = steady <= chain[-2]
        held[t] = hold
        last = np.where(hold, steady, chain[-2])
        chain[1:-1] = chain[:-2]
        chain[0] = enter
        chain[-1] = last
        chain += table[t]
        at_rest, at_glide = new_rest, new_glide
    state = int(np.argmin([chain[-1].min() + costs.start, at_rest, at_glide + costs.start]))
    state = (int(chain[-1].argmin()), REST, GLIDE)[state]
    found: list[Segment] = []
    t, end = frames - 1, frames
    while t >= 0:
        if state < count:
            while t >= 0 and held[t, state]:
                t -= 1
            first = max(t - _SHORTEST + 1, 0)
            source = int(came[first, state])
            strength = evidence.articulation[start + max(0, first - 3) : start + first + 4].max()
            found.append(Segment(State.NOTE, start + first, start + end, LOWEST_MIDI + state, float(strength)))
            state, t, end = source, first - 1, first
        else:
            origin, kind = (rest_from, State.REST) if state == REST else (glide_from, State.GLIDE)
            while t > 0 and origin[t] == state:
                t -= 1
            found.append(Segment(kind, start + t, start + end))
            state, t, end = int(origin[t]), t - 1, t
    return found[::-1]
