"""Answer fills: where the melody waits on a long note or a rest, a short phrase of its own kind answers it.

A fill is searched, not copied. Rhythms come from the tune's motifs (as they are, or in half the value) and from stock
cells; pitches are found by a dynamic programme over the scale of each moment's chord, along a contour with one peak
(or one valley), or follow a motif's contour, upright or inverted. The last note is a step or a semitone from the
next plain note. The held note speaks first, and a breath stands before the fill.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise
from math import inf
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from fioritura.paths import Costs, best_path
from fioritura.techniques.context import Context
from fioritura.techniques.definition import Definition, Group, is_step
from fioritura.techniques.families import FILLS
from fioritura.techniques.figure import Figure, FigureNote, head, tail
from fioritura.techniques.technique import Technique
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.theory.pitch import Pitch
from fioritura.theory.scale import Scale, blues_scale, chord_scale, pentatonic
from fioritura.words import Message, message

Shape = Literal["arch", "valley", "falling", "rising"]
Origin = Literal[
    "phrase",
    "opening",
    "eighths",
    "triplet",
    "eighth-triplet",
    "eighth-pair",
    "to-triplet",
    "to-pair",
    "from-triplet",
    "from-pair",
    "from-long",
]

_TRIPLET: Final = QUARTER // 3
_CELLS: Final = (
    (EIGHTH, EIGHTH),
    (_TRIPLET, _TRIPLET, _TRIPLET),
    (EIGHTH, SIXTEENTH, SIXTEENTH),
    (SIXTEENTH, SIXTEENTH, EIGHTH),
    (QUARTER,),
)
_LONGEST_QUARTERS: Final = 4
_FEWEST_NOTES, _MOST_NOTES = 3, 9
_MOST_FILLS: Final = 5
_REACH_SEMITONES: Final = 11
_LEAP_COST: Final = np.array([9.0, 0.0, 0.0, 0.35, 0.4, 0.7, 2.5, 1.0, 2.0, 2.0, 3.0, 6.0, 2.5])
"""Cost of a move by 0-12 semitones inside a fill; a repeated note and a seventh are as good as forbidden."""

_CLASH_COST: Final = 1.4
"""Cost of a note outside the chord on a beat."""

_GUIDE_TONE_GAIN: Final = 0.2
"""What the third and seventh of the chord are preferred by on the beats."""

_LONGEST_LEAP: Final = 9
"""The widest leap inside what is recognised as a fill, in semitones."""

_TARGET_COST: Final = 0.6
_NEVER: Final = 1e6
_TURNING: Final = frozenset({"arch", "valley"})


@dataclass(frozen=True, slots=True)
class _Source:
    """Where a rhythm comes from: the tune itself, also in half the value, or stock cells."""

    origin: Origin
    is_halved: bool = False

    @property
    def is_own(self) -> bool:
        return self.origin in ("phrase", "opening")


@dataclass(frozen=True, slots=True)
class _Gap:
    """Where a fill may stand: the plain note stops at `cut_ticks`, the fill takes `start_ticks` to `end_ticks`."""

    cut_ticks: int
    start_ticks: int
    end_ticks: int

    @property
    def length_ticks(self) -> int:
        return self.end_ticks - self.start_ticks


def _gap(context: Context) -> _Gap | None:
    """The time for a fill after the held note has spoken and a breath has been taken, or None."""
    if context.next is None or not (context.is_free and context.next.is_free):
        return None
    beat = max(context.bar.metre.beat_ticks, QUARTER)
    onset, end = context.note.onset_ticks, context.note.onset_ticks + context.reach_ticks
    if context.reach_ticks < 3 * QUARTER:
        return None
    rests = context.gap_ticks >= 2 * QUARTER
    earliest = context.note.end_ticks if rests else onset + max(beat, context.reach_ticks * 2 // 5)
    start = max(earliest + EIGHTH, end - _LONGEST_QUARTERS * QUARTER)
    start += -(start - end) % EIGHTH
    if end - start < QUARTER + EIGHTH:
        start = earliest + -(earliest - end) % EIGHTH
    if end - start < QUARTER:
        return None
    breath = EIGHTH if start - EIGHTH - onset >= QUARTER else 0
    cut = min(context.note.end_ticks, start - breath)
    return _Gap(cut, start, end)


def _rhythms(context: Context, gap: _Gap) -> Iterator[tuple[tuple[int, ...], _Source]]:
    """Note values that fill the gap to its end, each with where they come from."""
    shortest = context.setting.shortest_ticks
    seen: set[tuple[int, ...]] = set()
    for values, source in (*_motif_rhythms(context, gap), *_stock_rhythms(gap)):
        fits = _FEWEST_NOTES <= len(values) <= _MOST_NOTES and min(values) >= shortest
        if fits and values not in seen and sum(values) <= gap.length_ticks:
            seen.add(values)
            yield values, source


def _motif_rhythms(context: Context, gap: _Gap) -> Iterator[tuple[tuple[int, ...], _Source]]:
    notes = context.tune.notes
    phrase = context.phrase
    origins: tuple[tuple[int, int, Origin], ...] = (
        (phrase.first, phrase.last + 2, "phrase"),
        (0, len(notes), "opening"),
    )
    for first, stop, origin in origins:
        onsets = [note.onset_ticks for note in notes[first : min(first + _MOST_NOTES + 1, stop)]]
        values = [after - before for before, after in pairwise(onsets)]
        for scale in (1, 2):
            scaled = [value // scale for value in values if value % (scale * SIXTEENTH) == 0]
            total, count = 0, 0
            for value in scaled:
                if total + value > gap.length_ticks:
                    break
                total, count = total + value, count + 1
            if len(scaled) == len(values) and (gap.end_ticks - total) % EIGHTH == 0:
                yield tuple(scaled[:count]), _Source(origin, is_halved=scale == 2)


def _stock_rhythms(gap: _Gap) -> Iterator[tuple[tuple[int, ...], _Source]]:
    beats, rest = divmod(gap.length_ticks, QUARTER)
    upbeat = (EIGHTH,) if rest >= EIGHTH else ()
    eighths, triplets, tumble, skip, long = _CELLS
    yield (*upbeat, *eighths * beats), _Source("eighths")
    if beats:
        lead = len(upbeat) + 2 * (beats - 1)
        names: tuple[Origin, ...] = ("triplet", "eighth-triplet", "to-triplet")
        yield (*upbeat, *eighths * (beats - 1), *triplets), _Source(names[min(lead, 2)])
        yield (*upbeat, *eighths * (beats - 1), *skip), _Source("to-pair" if lead else "eighth-pair")
    if beats >= 2:
        yield (*upbeat, *triplets, *eighths * (beats - 1)), _Source("from-triplet")
        yield (*upbeat, *tumble, *eighths * (beats - 1)), _Source("from-pair")
        yield (*long, *eighths * (beats - 1)), _Source("from-long")


def _answers(context: Context) -> Iterator[Figure]:
    gap = _gap(context)
    if gap is None or context.next is None:
        return
    found: list[tuple[float, _Source, Shape, tuple[int, ...], list[Pitch]]] = []
    for values, source in _rhythms(context, gap):
        start = gap.end_ticks - sum(values)
        onsets = [start + sum(values[:number]) for number in range(len(values))]
        pools = _pools(context, onsets)
        for shape in _shapes(context):
            solved = _solved(context, pools, shape)
            if solved is not None:
                cost, pitches = solved
                found.append((cost / len(values) - 0.35 * source.is_own, source, shape, values, pitches))
    found.sort(key=lambda entry: entry[0])
    chosen: list[tuple[int, ...]] = []
    for cost, source, _, values, pitches in found:
        tune_of_it = tuple(pitch.midi for pitch in pitches)
        if any(_alike(tune_of_it, other) for other in chosen):
            continue
        chosen.append(tune_of_it)
        why = message(
            "answer-fill-why",
            rests=context.gap_ticks >= EIGHTH,
            origin=source.origin,
            halved=source.is_halved,
            shape=_said_shape(pitches),
        )
        yield _figure(context, gap, values, pitches, why, merit=-0.25 * (len(chosen) - 1) - 0.1 * max(cost, 0.0))
        if len(chosen) == _MOST_FILLS:
            return


def _shapes(context: Context) -> tuple[Shape, ...]:
    """Contours that suit what lies ahead: towards a higher note a valley or a rise, else an arch or a fall."""
    return ("arch", "rising", "valley") if (context.interval_out or 0) > 0 else ("arch", "falling", "valley")


def _said_shape(pitches: Sequence[Pitch]) -> Shape:
    """The contour as it came out: a turn on the first or the last note is none."""
    rises = [after.midi > before.midi for before, after in pairwise(pitches)]
    if rises[0] == rises[-1]:
        return "rising" if rises[0] else "falling"
    return "arch" if rises[0] else "valley"


def _alike(one: tuple[int, ...], other: tuple[int, ...]) -> bool:
    shared = sum(a == b for a, b in zip(one, other, strict=False))
    return shared >= 0.6 * max(len(one), len(other))


def _figure(
    context: Context, gap: _Gap, values: Sequence[int], pitches: Sequence[Pitch], why: Message, merit: float
) -> Figure:
    onset = gap.end_ticks - sum(values)
    notes = []
    for pitch, value in zip(pitches, values, strict=True):
        notes.append(FigureNote(onset, value, pitch))
        onset += value
    return Figure(
        "answer-fill",
        (context.index, context.index + 1),
        tail(context.index),
        head(context.index + 1),
        gap.cut_ticks,
        gap.end_ticks,
        notes=tuple(notes),
        why=why,
        merit=round(merit, 4),
    )


@dataclass(frozen=True, eq=False)
class _Pool:
    """The notes that a fill may use at one moment, with the cost of standing on each. Equal only to itself."""

    pitches: tuple[Pitch, ...]
    midis: NDArray[np.int64]
    costs: NDArray[np.float64]


def _pool(context: Context, onset_ticks: int) -> _Pool:
    span = context.tune.chord_at(onset_ticks)
    chord = span.chord if span else None
    scale = chord_scale(chord, context.key)
    five = pentatonic(chord, context.key)
    is_strong = context.strength_at(onset_ticks) >= 0.5
    tones = chord.pitch_classes if chord else scale.pitch_classes
    blue = blues_scale(context.key) if context.setting.tradition == "jazz" and chord and chord.is_dominant else None
    instrument = context.setting.instrument
    low = max(instrument.lowest_midi, context.midi - _REACH_SEMITONES)
    high = min(instrument.highest_midi, context.midi + _REACH_SEMITONES)
    guides = frozenset(tone.pitch_class for tone in chord.guide_tones) if chord and is_strong else frozenset()
    return _filled_pool(scale, five, blue, tones, guides, is_strong, low, high)


@lru_cache(maxsize=4096)
def _filled_pool(
    scale: Scale,
    five: Scale,
    blue: Scale | None,
    tones: frozenset[int],
    guides: frozenset[int],
    is_strong: bool,
    low: int,
    high: int,
) -> _Pool:
    names: dict[int, Pitch] = {}
    usual: dict[int, float] = {}
    for source, cost in ((scale, 0.2), (five, 0.0), (blue, 0.45)):
        if source is None:
            continue
        pitch = source.step(Pitch((low // 12 - 2) * 7), 1)
        while pitch.midi <= high:
            if pitch.midi >= low:
                names.setdefault(pitch.midi, pitch)
                usual[pitch.midi] = min(cost, usual.get(pitch.midi, cost))
            pitch = source.step(pitch, 1)
    costs = [
        usual[m]
        + (0.0 if not is_strong or m % 12 in tones else _CLASH_COST)
        - (_GUIDE_TONE_GAIN if m % 12 in guides else 0.0)
        for m in sorted(names)
    ]
    pitches = tuple(names[midi] for midi in sorted(names))
    return _Pool(pitches, np.array([pitch.midi for pitch in pitches], dtype=np.int64), np.array(costs))


def _pools(context: Context, onsets: Sequence[int]) -> list[_Pool]:
    """The notes of each moment: all but the last avoid giving the next plain note away, the last leads into it."""
    assert context.next is not None
    *others, final = [_pool(context, onset) for onset in onsets]
    target = context.next.midi
    instrument = context.setting.instrument
    leads = context.setting.tradition == "jazz" and instrument.lowest_midi <= target - 1 <= instrument.highest_midi
    leading = context.next.leading_note if leads else None
    last = _leading_pool(final, target, leading, context.strength_at(onsets[-1]) >= 0.5)
    return [*(_without_target(pool, target) for pool in others), last]


@lru_cache(maxsize=4096)
def _leading_pool(pool: _Pool, target: int, leading: Pitch | None, is_strong: bool) -> _Pool:
    """The notes a step or a semitone from the target; the leading semitone is welcome, but not on a beat, where it
    would clash."""
    near = [
        (pitch, float(cost))
        for pitch, cost in zip(pool.pitches, pool.costs, strict=True)
        if abs(pitch.midi - target) in (1, 2)
    ]
    if leading is not None and leading.midi not in {pitch.midi for pitch, _ in near}:
        near.append((leading, 0.15 + _CLASH_COST * is_strong))
    pitches = tuple(pitch for pitch, _ in near)
    midis = np.array([pitch.midi for pitch in pitches], dtype=np.int64)
    return _Pool(pitches, midis, np.array([cost for _, cost in near]))


@lru_cache(maxsize=4096)
def _without_target(pool: _Pool, target: int) -> _Pool:
    """The pool with the next plain note made dear: a fill that gives it away leads nowhere."""
    return replace(pool, costs=pool.costs + _TARGET_COST * (pool.midis == target))


@lru_cache(maxsize=4096)
def _moves(before: _Pool, pool: _Pool, shape: Shape) -> Costs:
    """Cost of each move between two moments along a contour; a move the other way is never made.

    In a contour that turns each note stands twice, before the turn and after it; there is no way back.
    """
    moves = pool.midis[None, :] - before.midis[:, None]
    cost = np.where(np.abs(moves) > 12, _NEVER, _LEAP_COST[np.minimum(np.abs(moves), 12)])
    up, down = np.where(moves > 0, cost, _NEVER), np.where(moves < 0, cost, _NEVER)
    first, second = (up, down) if shape in ("arch", "rising") else (down, up)
    return np.block([[first, second], [np.full_like(cost, inf), second]]) if shape in _TURNING else first


def _solved(context: Context, pools: Sequence[_Pool], shape: Shape) -> tuple[float, list[Pitch]] | None:
    """The cheapest line of pitches along a contour that turns where it should, or None where there is none."""
    if any(not pool.pitches for pool in pools):
        return None
    opening = np.abs(pools[0].midis - context.midi)
    nodes = [pool.costs for pool in pools]
    nodes[0] = nodes[0] + np.where(opening > 7, 2.0, np.where(opening == 0, 0.5, 0.08 * opening))
    if shape in _TURNING:
        nodes = [np.concatenate([costs, costs]) for costs in nodes]
        nodes[0][len(pools[0].pitches) :] = inf
        nodes[-1][: len(pools[-1].pitches)] = inf
    path = best_path(nodes, (_moves(before, pool, shape) for before, pool in pairwise(pools)))
    if path.cost >= _NEVER / 2:
        return None
    numbered = zip(pools, path.places, strict=True)
    return path.cost, [pool.pitches[number % len(pool.pitches)] for pool, number in numbered]


def _is_fill(g: Group) -> bool:
    if not g.is_fill or len(g.inner) < 3 or g.after is None:
        return False
    inside = [b - a for a, b in pairwise(g.inner)]
    turns = sum(a * b < 0 for a, b in pairwise(inside))
    return is_step(g.moves[-1]) and turns <= 2 and 0 not in inside and max(map(abs, inside)) <= _LONGEST_LEAP


ANSWER_FILL = Technique(
    id="answer-fill",
    family=FILLS.id,
    level=3,
    find=_answers,
    definition=Definition(_is_fill, breadth=290),
)

TECHNIQUES = (ANSWER_FILL,)
