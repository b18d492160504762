"""Lay a played line along a plain tune: repeats, restarts, skips, stops, stretches in another octave or key, any tempo.

Two things speak for an event being a plain note: its pitch, and its place in time. Where the tune stands at each
moment is not known beforehand, so the programme (`matching`) runs in rounds. The first goes by pitch, with a little
rhythm. Each round's matches give a smooth map of time (`tempo_map`), and in the next round the distance from that map
costs more. Where the player stood still the map is parted (`pieces`), so that the notes after a stop are in their place.
Stretches that lie an octave or another interval off are found by their intervals (`stretches`) and put right, and the line
is aligned anew. Costs are natural logarithms of odds, set by hand.

Known deviations: a line that is moved as a whole is aligned as well, and the alignment says by how many semitones it is
off. Two voices at once are not followed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.event import Event
from fioritura.listening.matching import Moves, Step, best_steps, runs
from fioritura.listening.rejoin import repeat_odds
from fioritura.listening.stretches import stretches
from fioritura.listening.tempo_map import exact_shift, mapped, median_slope, pieces
from fioritura.phrase import phrases
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune
from fioritura.unfold import playing_order

__all__ = ["Alignment", "Costs", "Pass", "Span", "align"]

Floats = NDArray[np.float64]

LEAST_LIKENESS: Final = 0.51
"""Below it a line is no performance of the tune. Chosen on half of the bench's tunes: takes of level 5 with wrong,
added and left-out notes and a restart have 0.53 and more, takes of other tunes 0.49 and less."""
_LIKE_ENOUGH: Final = 0.93
_DOUBT: Final = 0.05
"""By how much a line must be more like the tune without its key signature."""
_JUMP_PENALTY: Final = 4.0
_LATE_TICKS: Final = QUARTER / 2

_OCTAVES: Final = (0, 12, -12, 24, -24)
_FARTHEST_SEMITONES: Final = 24
_PROBE_EVENTS: Final = 120
_EDGE_EVENTS: Final = 8


@dataclass(frozen=True, slots=True)
class Costs:
    """The prices of the programme."""

    wrong_pitch: float = 1.8
    other_octave: float = 1.0
    grace_as_main: float = 2.5
    added: float = 1.2
    """An added note as long as the tune's usual ones; shorter ones cost less."""
    added_grace: float = 0.1
    missing: float = 1.5
    """A short plain note left out; a quarter or more costs half as much again."""
    jump: float = 3.5
    """To the start of a phrase, from the end of one."""
    jump_to_bar: float = 0.7
    """On top, to the start of a bar; to any other place twice as much and more."""
    jump_to_any: float = 2.5
    break_off: float = 1.0
    """On top, for leaving a phrase before its end."""
    expected_jump: float = 0.3
    """As the repeat signs say, or to the next chorus."""
    part_only: float = 3.0
    """Beginning or ending in the middle of the tune."""
    rhythm: float = 0.1
    """For each doubling or halving of a note's length."""
    first_discount: float = 1.5
    """How much less a jump costs in the first round: a map of time hides a jump that it has been drawn through."""
    time_weights: tuple[float, ...] = (0.0, 0.6, 1.2, 1.8)
    """How much distance from the map of time costs in each round, for each unit of `time_share` of the tune's usual
    note, but no less than `least_time_ticks`."""
    time_share: float = 0.35
    least_time_ticks: float = QUARTER / 4
    time_limit: float = 2.0


@dataclass(frozen=True, slots=True)
class Span:
    """A plain note and what was played for it.

    `event` is the number of the event that stands for it, None where it was left out; `added` are those between it
    and the next plain note's. `late_ticks` is how far behind the map of time the event came (early < 0).
    """

    plain: int
    event: int | None
    added: tuple[int, ...] = ()
    is_right: bool = False
    late_ticks: float = 0.0
    confidence: float = 0.0


@dataclass(frozen=True, eq=False)
class Pass:
    """A stretch of the tune played without a jump: spans of consecutive plain notes, and the events of the stretch.

    `lead` are events before the first span's. Event `first_event + e` sounds from the plain tick `ticks[e]` to
    `end_ticks[e]`. `is_expected` is False where the player came here by a jump that no repeat sign asks for.
    """

    spans: tuple[Span, ...]
    lead: tuple[int, ...]
    first_event: int
    ticks: Floats = field(repr=False)
    end_ticks: Floats = field(repr=False)
    is_expected: bool = True

    @property
    def stop_event(self) -> int:
        """The event after the last."""
        return self.first_event + len(self.ticks)


@dataclass(frozen=True, eq=False)
class Alignment:
    """A played line along a plain tune.

    `semitones` is how much higher the line sounds than the tune (12 for an octave; not a multiple of 12 for a line in
    another key). `ticks_per_unit` is the usual tempo: ticks to a second, 1.0 for a written line at the tune's scale.
    `likeness` (0 to 1) says how much of line and tune agree in pitch, order and time. `shifts` holds, for each event, the
    semitones that a stretch of the line lies off besides; `is_unsigned` tells that they are those of the key signature, which
    the player forgot.
    """

    tune: Tune = field(repr=False)
    events: tuple[Event, ...] = field(repr=False)
    passes: tuple[Pass, ...]
    semitones: int
    ticks_per_unit: float
    likeness: float
    shifts: tuple[int, ...] = field(default=(), repr=False)
    is_unsigned: bool = False

    def midi(self, event: int) -> int:
        """An event's pitch at the tune's own height, a moved stretch put right."""
        return self.events[event].midi - self.semitones - (self.shifts[event] if self.shifts else 0)

    @property
    def is_this_tune(self) -> bool:
        """True when the line is a performance of the tune, in whatever key."""
        return self.likeness >= LEAST_LIKENESS

    @property
    def is_in_key(self) -> bool:
        """True when the line sounds in the tune's key, in any octave."""
        return self.semitones % 12 == 0

    @property
    def pairs(self) -> list[tuple[int, int]]:
        """(plain note, event) for every plain note that was played."""
        return [(s.plain, s.event) for p in self.passes for s in p.spans if s.event is not None]


def align(
    tune: Tune,
    events: Sequence[Event],
    *,
    is_written: bool = False,
    unsigned: Sequence[int] = (),
    costs: Costs = Costs(),
) -> Alignment:
    """Align a played line with a plain tune.

    Args:
        tune: as written; its repeats may have been played or not.
        events: in order of onset. With `is_written` their times are ticks at the tune's own scale.
        unsigned: the tune's MIDI numbers without its key signature, for a player who may have forgotten it.

    Returns:
        The alignment; for a line of another tune one with a low `likeness`. Without notes or events it is empty.
    """
    if not tune.notes or not events:
        return Alignment(tune, tuple(events), (), 0, 1.0, 0.0)
    aligner = _Aligner(tune, events, is_written, costs)
    aligner.choose_key()
    found = aligner.best()
    if not is_written and aligner.put_right(found):
        found = max(aligner.best(), found, key=lambda alignment: alignment.likeness)
    if unsigned and found.likeness < _LIKE_ENOUGH:
        found = max(
            found, aligner.without_signature(unsigned), key=lambda one: one.likeness - _DOUBT * one.is_unsigned
        )
    return found


class _Aligner:
    def __init__(self, tune: Tune, events: Sequence[Event], is_written: bool, costs: Costs) -> None:
        self.tune, self.events, self.is_written, self.costs = tune, tuple(events), is_written, costs
        self.times = np.array([event.onset for event in events])
        self.ends = np.array([event.end for event in events])
        self.midis = np.array([event.midi for event in events])
        self.shifts = np.zeros(len(events), dtype=np.int64)
        self.graces = np.array([event.is_grace for event in events])
        self.repeats = np.array(list(repeat_odds(events)))
        self.onsets = np.array([note.onset_ticks for note in tune.notes], dtype=np.float64)
        self.plain = np.array([note.pitch.midi for note in tune.notes])
        self.moves = _moves(tune, costs)
        self.reaches = _reaches(self.onsets, tune.notes[-1].duration_ticks)
        self.held = _reaches(self.times, events[-1].duration)
        self.rate = self._first_rate()
        self.semitones = 0
        self.maps: list[tuple[int, int, Floats, Floats]] = []
        self.steps: list[Step] = []

    def choose_key(self) -> None:
        """Take the transposition of least cost, by pitch alone; octaves and the tune's own key go first."""
        stop = min(len(self.events), _PROBE_EVENTS)
        tried: list[tuple[float, int]] = []
        for semitones in (*_OCTAVES, *self._likely_keys()):
            self.semitones = semitones
            match, added = self._evidence(0.0, stop)
            cost = best_steps(match, added, self.moves)[1]
            own = 0.0 if semitones == 0 else 1.0 if semitones % 12 == 0 else 2.0
            tried.append((cost + own + 0.02 * abs(semitones), semitones))
        self.semitones = min(tried)[1]

    def _likely_keys(self) -> list[int]:
        """The transpositions that bring the two sets of intervals of three notes best together, octaves left out."""
        tune: dict[tuple[int, ...], list[int]] = {}
        for place in range(len(self.plain) - 2):
            first, second, third = self.plain[place : place + 3].tolist()
            tune.setdefault((second - first, third - second), []).append(first)
        main = self.midis[~self.graces]
        votes = np.zeros(2 * _FARTHEST_SEMITONES + 1)
        for place in range(len(main) - 2):
            for start in tune.get(tuple(np.diff(main[place : place + 3])), ()):
                shift = int(main[place] - start)
                if abs(shift) <= _FARTHEST_SEMITONES and shift % 12:
                    votes[shift + _FARTHEST_SEMITONES] += 1
        best = np.argsort(-votes, kind="stable")[:3]
        return [int(n) - _FARTHEST_SEMITONES for n in best if votes[n] > 0]

    def best(self) -> Alignment:
        """The alignment that finds jumps easily, or the one that does not, by likeness."""
        bold = self.aligned(self.costs.first_discount)
        if all(one.is_expected for one in bold.passes):
            return bold
        return max(self.aligned(0.0), bold, key=lambda alignment: alignment.likeness)

    def put_right(self, found: Alignment) -> bool:
        """Move stretches that lie off to their own pitch; False where there are none."""
        for stretch in stretches(found):
            self.shifts[stretch.first : stretch.stop] = stretch.semitones
        self.midis = self.midis - self.shifts
        return bool(self.shifts.any())

    def without_signature(self, unsigned: Sequence[int]) -> Alignment:
        """The line along the tune without its key signature; what the signature alters there is a shift."""
        self.midis, self.shifts = self.midis + self.shifts, np.zeros_like(self.shifts)
        moved = np.array(unsigned) - self.plain
        self.plain = np.array(unsigned)
        self.choose_key()
        found = self.best()
        shifts = np.zeros(len(self.events), dtype=np.int64)
        for plain, event in found.pairs:
            if self.midis[event] - self.semitones == unsigned[plain]:
                shifts[event] = moved[plain]
        return replace(found, shifts=tuple(shifts.tolist()), is_unsigned=True)

    def aligned(self, first_discount: float) -> Alignment:
        """All rounds, with jumps so much cheaper in the first."""
        self.rate, self.maps = self._first_rate(), []
        for weight in self.costs.time_weights:
            self.match, added = self._evidence(weight, len(self.events))
            moves = self.moves if weight else replace(self.moves, land=self.moves.land - first_discount)
            self.steps, _ = best_steps(self.match, added, moves)
            self._map_time()
        likeness = self._result().likeness
        self._map_time(is_last=True)
        return replace(self._result(), likeness=likeness)

    def _first_rate(self) -> float:
        """Ticks to a unit of time as far as the usual lengths of notes tell."""
        return 1.0 if self.is_written else float(np.median(self.reaches) / max(np.median(self.held), 1e-9))

    def _evidence(self, weight: float, stop: int) -> tuple[Floats, Floats]:
        """Costs of matching (events, n) and of adding (events, n + 1)."""
        costs = self.costs
        away = self.midis[:stop, None] - self.semitones - self.plain
        match = np.where(away == 0, 0.0, np.where(away % 12 == 0, costs.other_octave, costs.wrong_pitch))
        match += (costs.grace_as_main * self.graces + np.logaddexp(0.0, -self.repeats))[:stop, None]
        longer = np.log2(np.maximum(self.held[:stop, None] * self.rate, 1.0) / np.maximum(self.reaches, 1.0))
        match += costs.rhythm * np.minimum(np.abs(longer), 3.0)
        usual = float(np.median(self.reaches)) / self.rate
        length = np.minimum(self.held[:stop] / max(usual, 1e-9), 1.5)
        own = np.where(self.graces[:stop], costs.added_grace, costs.added * (0.4 + 0.6 * length))
        own = np.minimum(own, np.logaddexp(0.0, self.repeats[:stop]))
        added = np.repeat(own[:, None], len(self.plain) + 1, axis=1)
        if weight and self.maps:
            at_note, between = self._distances(stop)
            unit = max(costs.least_time_ticks, costs.time_share * float(np.median(self.reaches)))
            match += weight * np.minimum(at_note / unit, costs.time_limit)
            added += weight * np.minimum(between / unit, costs.time_limit)
        return match, added

    def _distances(self, stop: int) -> tuple[Floats, Floats]:
        """How far each event lies from each plain note, and from the time between each two; by the nearest map."""
        at_note = np.full((stop, len(self.plain)), np.inf)
        between = np.full((stop, len(self.plain) + 1), np.inf)
        ends = np.concatenate([self.onsets, [self.tune.duration_ticks]])
        starts = np.concatenate([[-np.inf], self.onsets])
        for first, last, ticks, _ in self.maps:
            rows = slice(max(0, first - _EDGE_EVENTS), min(stop, last + _EDGE_EVENTS))
            placed = ticks[rows, None]
            at_note[rows] = np.minimum(at_note[rows], np.abs(placed - self.onsets))
            outside = np.maximum(np.maximum(starts - placed, placed - ends), 0.0)
            between[rows] = np.minimum(between[rows], outside)
        return np.nan_to_num(at_note, posinf=0.0), np.nan_to_num(between, posinf=0.0)

    def _map_time(self, *, is_last: bool = False) -> None:
        """Map every event's time to ticks, once for each pass that has matches enough. The last map is stiff where the
        player keeps time: while matches are sought it must follow those there are."""
        passes = [(first, stop, self._matches(first, stop)) for first, stop in runs(self.steps)]
        slopes = [median_slope(self.times[found], self.onsets[plain]) for _, _, (found, plain) in passes]
        known = [slope for slope in slopes if slope > 0]
        self.rate = 1.0 if self.is_written else float(np.median(known)) if known else self.rate
        self.maps = []
        for first, stop, (found, plain) in passes:
            if not len(found):
                continue
            times, ticks = self.times[found], self.onsets[plain]
            if self.is_written and (shift := exact_shift(times, ticks)) is not None:
                self.maps.append((first, stop, self.times + shift, self.ends + shift))
                continue
            parts = [slice(0, len(found))] if self.is_written else pieces(times, ticks, self.rate)
            edges = [first, *(int(found[part.start]) for part in parts[1:]), stop]
            for part, (start, end) in zip(parts, pairwise(edges), strict=True):
                self.maps.append((start, end, *self._placed(times[part], ticks[part], is_last)))

    def _placed(self, times: Floats, ticks: Floats, is_last: bool = False) -> tuple[Floats, Floats]:
        """Ticks of every onset and end by the matched notes of a pass."""
        asked = np.concatenate([self.times, self.ends])
        onsets, ends = np.split(mapped(times, ticks, asked, self.rate, is_stiff=is_last), 2)
        return onsets, ends

    def _matches(self, first: int, stop: int) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
        """Events of a run that match a plain note in pitch, and those notes."""
        found = [
            (event, step.place)
            for event, step in zip(range(first, stop), self.steps[first:stop], strict=True)
            if step.is_match and self.midis[event] - self.semitones == self.plain[step.place]
        ]
        events, plain = zip(*found, strict=True) if found else ((), ())
        return np.array(events, dtype=np.int64), np.array(plain, dtype=np.int64)

    def _result(self) -> Alignment:
        """The passes of the last round."""
        ticks, ends = self._placed(self.times[:1], self.onsets[:1])
        for first, stop, some_ticks, some_ends in self.maps:
            ticks[first:stop], ends[first:stop] = some_ticks[first:stop], some_ends[first:stop]
        passes: list[Pass] = []
        for first, stop in runs(self.steps):
            one = self._pass(first, stop, ticks[first:stop], ends[first:stop])
            passes.append(replace(one, is_expected=not passes or self._is_expected(passes[-1], one)))
        likeness = self._likeness(passes)
        shifts = tuple(self.shifts.tolist()) if self.shifts.any() else ()
        return Alignment(self.tune, self.events, tuple(passes), self.semitones, self.rate, likeness, shifts)

    def _is_expected(self, before: Pass, after: Pass) -> bool:
        """True for a jump that a repeat sign, or another chorus, asks for (give or take two notes left out)."""
        if not (before.spans and after.spans):
            return False
        leaving, landing = before.spans[-1].plain + 1, after.spans[0].plain
        return any(abs(leaving - a) <= 2 and abs(landing - b) <= 2 for a, b in self.moves.expected)

    def _pass(self, first: int, stop: int, ticks: Floats, ends: Floats) -> Pass:
        lead: list[int] = []
        matched: dict[int, int] = {}
        added: dict[int, list[int]] = {}
        last = -1
        for number in range(first, stop):
            step = self.steps[number]
            if step.is_match:
                matched[step.place] = number
                last = step.place
            elif last < 0:
                lead.append(number)
            else:
                added.setdefault(last, []).append(number)
        if not matched:
            return Pass((), tuple(lead), first, ticks, ends)
        low, high = min(matched), max(matched) + 1
        if first == 0 and self.moves.begins_at_start(low):
            low = 0
        if stop == len(self.events) and self.moves.ends_at_end(high):
            high = len(self.plain)
        spans = []
        for plain in range(low, high):
            event = matched.get(plain)
            if event is None:
                spans.append(Span(plain, None))
                continue
            is_right = bool(self.midis[event] - self.semitones == self.plain[plain])
            late = float(ticks[event - first] - self.onsets[plain])
            sure = float(np.exp(-self.match[event, plain]))
            spans.append(Span(plain, event, tuple(added.get(plain, ())), is_right, late, round(sure, 3)))
        return Pass(tuple(spans), tuple(lead), first, ticks, ends)

    def _likeness(self, passes: Sequence[Pass]) -> float:
        """The geometric mean of the share of the tune that was played right and in time, and of the share of the line
        that is the tune, less a penalty for jumps that nothing asks for."""
        lengths = np.minimum([note.duration_ticks / QUARTER for note in self.tune.notes], 2.0)
        sounding = self.ends - self.times
        sounding = np.minimum(sounding, 2 * np.median(sounding))
        agreed = touched = heard = 0.0
        for span in (span for one in passes for span in one.spans):
            touched += lengths[span.plain]
            if span.event is not None and span.is_right:
                share = max(0.0, 1.0 - abs(span.late_ticks) / _LATE_TICKS)
                agreed += share * lengths[span.plain]
                heard += share * sounding[span.event]
        if not touched:
            return 0.0
        jumps = sum(not one.is_expected for one in passes) / len(self.events)
        likeness = float(np.sqrt(agreed / touched * heard / max(sounding.sum(), 1e-9))) - _JUMP_PENALTY * jumps
        return round(max(0.0, likeness), 4)


def _reaches(onsets: Floats, last: float) -> Floats:
    """Time from each onset to the next."""
    return np.append(np.diff(onsets), last)


def _moves(tune: Tune, costs: Costs) -> Moves:
    notes = tune.notes
    count = len(notes)
    lengths = np.array([min(note.duration_ticks / QUARTER, 1.0) for note in notes])
    leave = np.full(count + 1, costs.break_off)
    land = np.full(count + 1, costs.jump + costs.jump_to_any)
    bars = {bar.start_ticks for bar in tune.bars}
    for place, note in enumerate(notes):
        if note.onset_ticks in bars:
            land[place] = costs.jump + costs.jump_to_bar
    for phrase in phrases(tune):
        land[phrase.first] = costs.jump
        leave[phrase.last + 1] = 0.0
    return Moves(
        missing=costs.missing * (1.0 + 0.5 * lengths),
        leave=leave,
        land=land,
        expected=_expected_jumps(tune, costs.expected_jump),
        enter=costs.part_only - costs.jump,
        finish=costs.part_only,
    )


def _expected_jumps(tune: Tune, cost: float) -> dict[tuple[int, int], float]:
    """Jumps between places that the repeat signs ask for, and the one from the end to the next chorus."""
    onsets = [note.onset_ticks for note in tune.notes]
    found = {(len(onsets), 0): cost}
    for before, after in pairwise(playing_order(tune.bars)):
        if after != before + 1:
            leaving = int(np.searchsorted(onsets, tune.bars[before].end_ticks))
            landing = int(np.searchsorted(onsets, tune.bars[after].start_ticks))
            found[leaving, landing] = cost
    return found
