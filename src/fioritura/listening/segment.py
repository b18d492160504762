"""From frames to notes: one dynamic programme over the track.

At every frame the player is in one of these states:

- *rest*: silence, breath or noise;
- *note k*: holding MIDI pitch k, on the player's own tuning. A note must last `SHORTEST` frames, so it is a chain of
  that many states of which the last one may be held;
- *glide*: between pitches, on the way of a scoop, a fall or a bend.

The path of least cost is found exactly (Viterbi; a note-state chain as in Ryynänen & Klapuri 2005, from memory). A
frame costs what it deviates from its state: a note pays for distance in pitch, for aperiodicity of its best dip and
for each octave that it lies lower (the same dips recur at every multiple of the period); a rest pays for level and
periodicity; a glide for standing still or jumping. A move between states costs a fixed sum. See `Costs`.

The path knows no repeated notes. Two passes finish it: notes are parted where an attack breaks them, and each
beginning is pulled back to where the tone before it stops being whole.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import Enum
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from fioritura.listening.attack import start_of_change
from fioritura.listening.pitch import FRAME_SEC, Dips, Floats, Track

__all__ = ["DEFAULT_COSTS", "STRUCK_MARGIN", "Costs", "Segment", "State", "gate_db", "segments"]

LOWEST_MIDI: Final = 35
HIGHEST_MIDI: Final = 97
SHORTEST: Final = 4
"""Frames that a note lasts at least, 23 ms."""
STRUCK_MARGIN: Final = 9
"""Frames from the ends of a note within which a break belongs to the moves there."""

_PITCHES: Final = HIGHEST_MIDI - LOWEST_MIDI + 1
_REST: Final = _PITCHES
_GLIDE: Final = _PITCHES + 1
_NEVER: Final = np.float32(1e9)
_LONGEST_CHUNK: Final = 4000
_SILENT_FRAMES: Final = 8
_PULL: Final = 12
_PULL_SHARE: Final = 0.4
_WHOLE: Final = 0.02
_ATTACK_DB: Final = 8.0
_PARTED_ODDS: Final = -0.5
"""Log-odds of an attack from which on it parts a note; chosen on the train half of the benchmark's tunes."""


class State(Enum):
    """What the player does in a segment."""

    REST = "rest"
    NOTE = "note"
    GLIDE = "glide"


@dataclass(frozen=True, slots=True)
class Segment:
    """Frames `start` to `stop` (excluded) in one state; `midi` is 0 but for a note.

    `is_struck` is True where the frames show a new attack at its start; `struck_odds` are its log-odds where nothing
    else parts the note from one before it.
    """

    state: State
    start: int
    stop: int
    midi: int = 0
    is_struck: bool = False
    struck_odds: float = np.inf


@dataclass(frozen=True, slots=True)
class Costs:
    """The prices of the programme, in nats, chosen on the train half of the benchmark's tunes."""

    pitch_cents: float = 35.0
    """Deviation that costs a note half a nat a frame; the cost grows with its square."""
    pitch_limit: float = 3.0
    """No deviation costs more, so that a stray frame can be passed over."""
    aperiodic: float = 4.0
    """A frame of a note, for each unit of aperiodicity."""
    octave: float = 0.4
    """A frame of a note, for each octave that it lies under the highest."""
    fresh: float = 0.1
    """A frame of a note that is heard only under the tail of another."""
    chord: float = 3.0
    """A frame of a note that two higher ones explain together."""
    quiet: float = 0.25
    """A frame of a note, for each dB under the gate; a rest pays the same for each dB above it."""
    quiet_limit: float = 2.0
    """The most that level adds to a frame."""
    rest_periodic: float = 2.0
    """A frame of rest that is fully periodic."""
    glide: float = 1.2
    """A frame of glide that moves smoothly."""
    glide_limit: float = 8.0
    """A frame of glide that stands still or jumps."""
    start: float = 3.0
    """A note or glide begins after a rest, or ends in one."""
    change: float = 7.0
    """One note moves to another."""
    leap: float = 0.3
    """The same, for each semitone."""
    into_glide: float = 3.0
    """A note bends away into a glide, or a glide settles on a note."""


DEFAULT_COSTS: Final = Costs()


def segments(track: Track, tuning_cents: float, struck: Floats, costs: Costs = DEFAULT_COSTS) -> list[Segment]:
    """The path of least cost, as segments in order that leave no frame out; `struck` are the track's `struck_odds`.

    The track is cut where it is silent, so that memory and time grow with the length alone.
    """
    evidence = _Evidence(track, tuning_cents, struck, costs)
    found: list[Segment] = []
    for start, stop, is_silent in _chunks(evidence.is_silent):
        if is_silent:
            found.append(Segment(State.REST, start, stop))
        else:
            found += (
                replace(one, start=start + one.start, stop=start + one.stop) for one in evidence.path(start, stop)
            )
    return _pulled_back([part for segment in found for part in _parted(segment, struck)], evidence)


def gate_db(level_db: Floats) -> float:
    """The level between rest and tone: above the noise, below all but the softest notes."""
    floor, peak = np.percentile(level_db, [5, 95])
    return float(np.clip(floor + 6, peak - 42, peak - 15))


def _chunks(is_silent: NDArray[np.bool_]) -> Iterator[tuple[int, int, bool]]:
    """Stretches (start, stop, is silent); a short silence belongs to the sound around it."""
    edges = np.flatnonzero(np.diff(is_silent.astype(np.int8))) + 1
    runs = [0, *edges.tolist(), is_silent.size]
    start = 0
    for first, last in pairwise(runs):
        if is_silent[first] and last - first >= _SILENT_FRAMES:
            yield from _pieces(start, first)
            yield first, last, True
            start = last
    yield from _pieces(start, is_silent.size)


def _pieces(start: int, stop: int) -> Iterator[tuple[int, int, bool]]:
    while stop - start > _LONGEST_CHUNK:
        yield start, start + _LONGEST_CHUNK, False
        start += _LONGEST_CHUNK
    if stop > start:
        yield start, stop, False


class _Evidence:
    """The track seen as costs: what each frame says for and against each state."""

    def __init__(self, track: Track, tuning_cents: float, struck: Floats, costs: Costs) -> None:
        self.track, self._tuning, self.struck, self._costs = track, tuning_cents, struck, costs
        gate = gate_db(track.level_db)
        self.is_silent = track.level_db < gate - 10
        above = np.clip((track.level_db - gate) * costs.quiet, -costs.quiet_limit, costs.quiet_limit)
        best = track.heard.aperiodicity.min(axis=1)
        self._rest = np.maximum(above, 0) + costs.rest_periodic * np.clip(1 - 2 * best, 0, 1)
        self._quiet = np.maximum(-above, 0)
        self._glide = self._quiet + np.where(_is_gliding(track), costs.glide, costs.glide_limit)

    def path(self, start: int, stop: int) -> list[Segment]:
        """The best path over some frames, counted from `start`."""
        span = slice(start, stop)
        return _viterbi(self._note_costs(span), self._rest[span], self._glide[span], self._costs)

    def start_of_change(self, old: Segment, frame: int) -> int:
        """Where before `frame` the note `old` is struck off, or is no longer whole."""
        earliest = max(old.start + SHORTEST, frame - _PULL, frame - int(_PULL_SHARE * (frame - old.start)))
        if earliest >= frame:
            return frame
        heard = self.track.heard
        away = np.abs(heard.cents[old.start : frame] - self._tuning - 100 * (old.midi - 69))
        left = np.where(away < 60, heard.aperiodicity[old.start : frame], 1).min(axis=1)
        whole = left < max(_WHOLE, 2 * float(np.median(left)))
        start = old.start + start_of_change(whole, frame - old.start, earliest - old.start)
        struck = np.flatnonzero(self.struck[earliest:frame] > 0)
        return min(start, earliest + int(struck[0])) if struck.size else start

    def _note_costs(self, span: slice) -> Floats:
        """Cost of each note (from `LOWEST_MIDI` up) at each frame, shape (frames, notes)."""
        costs = self._costs
        unheard = costs.pitch_limit + costs.aperiodic * 0.5
        table = np.full((span.stop - span.start, _PITCHES + 4), unheard, np.float32)
        self._offer(table, self.track.heard.part(span), 0.0)
        self._offer(table, self.track.fresh.part(span), costs.fresh)
        return np.asarray(table[:, 2:-2] + self._quiet[span, None], np.float32)

    def _offer(self, table: Floats, dips: Dips, extra: float) -> None:
        """Lower the table's costs to what these dips offer."""
        costs = self._costs
        place = (dips.cents - self._tuning + 6900) / 100 - LOWEST_MIDI
        place = np.where(np.isfinite(place), place, -9)
        own = costs.aperiodic * np.minimum(dips.aperiodicity, 1) + costs.chord * dips.doubt() + extra
        own += costs.octave * (_PITCHES - 1 - place) / 12
        rows = np.arange(len(table))
        for band in range(place.shape[1]):
            nearest = np.rint(place[:, band]).astype(int)
            for offset in (-1, 0, 1):
                column = np.clip(nearest + offset + 2, 0, table.shape[1] - 1)
                away = 100 * (nearest + offset - place[:, band]) / costs.pitch_cents
                cost = np.minimum(0.5 * away**2, costs.pitch_limit) + own[:, band]
                table[rows, column] = np.minimum(table[rows, column], cost)


def _is_gliding(track: Track) -> NDArray[np.bool_]:
    """True where the pitch moves smoothly, by 0.8 to 10 cents a millisecond, over 35 ms."""
    line, unclear = track.heard.best()
    windows = sliding_window_view(np.pad(line, 3, mode="edge"), 7)
    time = np.arange(-3, 4) * FRAME_SEC * 1000
    slope = windows @ time / (time @ time)
    stray = np.abs(windows - windows.mean(axis=1, keepdims=True) - slope[:, None] * time).max(axis=1)
    speed = np.abs(slope)
    smooth = (speed > 0.8) & (speed < 10) & (stray < 12 + 2 * speed)
    return np.asarray(smooth & (unclear < 0.3))


@dataclass(frozen=True, slots=True)
class _Steps:
    """Where the best path to each state came from, at each frame."""

    note_from: NDArray[np.int16]
    """The state before the note's first frame; shape (frames, notes)."""
    is_held: NDArray[np.bool_]
    """True where a note's last state was held, not newly reached; shape (frames, notes)."""
    rest_from: NDArray[np.int16]
    glide_from: NDArray[np.int16]
    last: int
    """The state of the last frame."""


def _viterbi(notes: Floats, rest: Floats, glide: Floats, costs: Costs) -> list[Segment]:
    return _traced(_forward(notes, rest, glide, costs))


def _forward(notes: Floats, rest: Floats, glide: Floats, costs: Costs) -> _Steps:
    frames = len(notes)
    pitch = np.arange(_PITCHES)
    move = (costs.change + costs.leap * np.abs(pitch[:, None] - pitch)).astype(np.float32)
    np.fill_diagonal(move, _NEVER)
    note_from = np.empty((frames, _PITCHES), np.int16)
    is_held = np.empty((frames, _PITCHES), np.bool_)
    rest_from, glide_from = np.empty(frames, np.int16), np.empty(frames, np.int16)
    chain = np.full((SHORTEST, _PITCHES), _NEVER, np.float32)
    at_rest, at_glide = 0.0, float(_NEVER)
    for t in range(frames):
        steady = chain[-1]
        moves = steady[:, None] + move
        source = moves.argmin(axis=0)
        enter = moves[source, pitch]
        outside, origin = min((at_rest + costs.start, _REST), (at_glide + costs.into_glide, _GLIDE))
        note_from[t] = np.where(enter <= outside, source, origin)
        out = int(steady.argmin())
        leave = float(steady[out])
        rest_now, rest_from[t] = min((at_rest, _REST), (leave + costs.start, out), (at_glide + costs.start, _GLIDE))
        glide_now, glide_from[t] = min(
            (at_glide, _GLIDE), (leave + costs.into_glide, out), (at_rest + costs.start, _REST)
        )
        is_held[t] = steady <= chain[-2]
        last = np.minimum(steady, chain[-2])
        chain[1:-1] = chain[:-2]
        chain[0] = np.minimum(enter, outside)
        chain[-1] = last
        chain += notes[t]
        at_rest, at_glide = rest_now + float(rest[t]), glide_now + float(glide[t])
    out = int(chain[-1].argmin())
    _, final = min((float(chain[-1, out]) + costs.start, out), (at_rest, _REST), (at_glide + costs.start, _GLIDE))
    return _Steps(note_from, is_held, rest_from, glide_from, final)


def _traced(steps: _Steps) -> list[Segment]:
    """The segments of the best path, read backwards from its end."""
    found: list[Segment] = []
    state, stop = steps.last, len(steps.rest_from)
    while stop > 0:
        t = stop - 1
        if state < _PITCHES:
            while t >= 0 and steps.is_held[t, state]:
                t -= 1
            start = max(t - SHORTEST + 1, 0)
            found.append(Segment(State.NOTE, start, stop, LOWEST_MIDI + state))
            state = int(steps.note_from[start, state])
        else:
            origin = steps.rest_from if state == _REST else steps.glide_from
            while t > 0 and origin[t] == state:
                t -= 1
            start = t
            found.append(Segment(State.REST if state == _REST else State.GLIDE, start, stop))
            state = int(origin[start])
        stop = start
    return found[::-1]


def _parted(segment: Segment, struck: Floats) -> Iterator[Segment]:
    """A note, parted where an attack breaks it; a break close to its ends belongs to the moves there."""
    if segment.state is State.NOTE:
        first = segment.start + STRUCK_MARGIN
        for frame in first + np.flatnonzero(struck[first : segment.stop - STRUCK_MARGIN] > _PARTED_ODDS):
            if frame - segment.start >= STRUCK_MARGIN:
                yield replace(segment, stop=int(frame))
                segment = replace(segment, start=int(frame), is_struck=True, struck_odds=float(struck[frame]))
    yield segment


def _pulled_back(found: list[Segment], evidence: _Evidence) -> list[Segment]:
    """Each note that follows another begins where the tone before it stops being whole, or where it was struck.

    The programme changes notes where the new one explains the sound better than the old; a soft attack begins
    earlier, and an attack without a clear pitch is taken for a rest, though the level does not sink.
    """
    line: list[Segment] = []
    for segment in found:
        if len(line) > 1 and segment.state is not State.REST and _is_attack(line[-2], line[-1], evidence.track):
            segment = replace(segment, start=line.pop().start)
        if segment.state is State.NOTE and not segment.is_struck:
            near = evidence.struck[max(0, segment.start - 3) : segment.start + 4]
            segment = replace(segment, is_struck=bool((near > 0).any()))
        if line and line[-1].state is State.NOTE and segment.state is not State.REST:
            start = evidence.start_of_change(line[-1], segment.start)
            line[-1], segment = replace(line[-1], stop=start), replace(segment, start=start)
        line.append(segment)
    return line


def _is_attack(old: Segment, rest: Segment, track: Track) -> bool:
    """True for a short rest as loud as the note before it."""
    if old.state is not State.NOTE or rest.state is not State.REST or rest.stop - rest.start > _PULL:
        return False
    level = track.level_db
    return bool(level[rest.start : rest.stop].min() > np.median(level[old.start : old.stop]) - _ATTACK_DB)
