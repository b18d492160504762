"""Walking bass: one note a beat, the best line through the changes.

An exact dynamic programme over beats and pitches weighs what a bass player weighs (common practice): the root where a
chord begins, chord tones on strong beats, an approach by step or by a fifth into the next root, small steps, few
repeated notes, a turn after a leap, the middle of the instrument. Random draws added to the scores make another
good line of another seed.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise, takewhile
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.accompany.harmony import Beat, bass_class, scale_classes
from fioritura.chance import Chance
from fioritura.paths import Costs, Places, Step, best_walk
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key

__all__ = ["HIGHEST", "LOWEST", "walk"]

LOWEST: Final = 28
HIGHEST: Final = 55
"""E1, the open low string, to G3."""

HOME: Final = 39
EASY_REACH: Final = 7
FORBIDDEN: Final = 1e6
VARIETY: Final = 0.45

_PITCHES: Final = np.arange(LOWEST, HIGHEST + 1)
_COUNT: Final = len(_PITCHES)
_STEPS: Final = _PITCHES[None, :] - _PITCHES[:, None]
"""Semitones from the pitch of the row to that of the column."""

_LEAP_COST: Final = np.array([2.2, 0.1, 0.0, 0.45, 0.55, 0.6, 2.2, 0.7, 1.7, 1.9, 2.4, 3.2, 1.1])

_SAME, _STEP_UP, _STEP_DOWN, _LEAP_UP, _LEAP_DOWN = range(5)
_MOVES: Final = np.select(
    [_STEPS == 0, (_STEPS > 0) & (_STEPS <= 2), (_STEPS < 0) & (_STEPS >= -2), _STEPS > 2],
    [_SAME, _STEP_UP, _STEP_DOWN, _LEAP_UP],
    _LEAP_DOWN,
)
_AFTER: Final = np.array(
    [
        [2.5, 0.0, 0.0, 0.0, 0.0],
        [0.3, -0.1, 0.1, 0.1, 0.2],
        [0.3, 0.1, -0.1, 0.2, 0.1],
        [0.3, 0.35, -0.35, 0.7, 0.15],
        [0.3, -0.35, 0.35, 0.15, 0.7],
    ]
)
"""Cost of a move (column) after a move (row), in the order of `_SAME` and the rest."""


def walk(
    beats: Sequence[Beat], chance: Chance, *, after: int | None = None, lifts: Sequence[int] | None = None
) -> list[int | None]:
    """A MIDI number for each beat; None where there is no chord.

    The line goes on from the note `after`, no more than an octave away; `lifts` says by how many semitones each beat
    lies higher than usual.
    """
    line: list[int | None] = []
    start = 0
    while start < len(beats):
        if beats[start].chord is None:
            line.append(None)
            start += 1
            continue
        stretch = list(takewhile(lambda beat: beat.chord is not None, beats[start:]))
        chords = [beat.chord for beat in stretch if beat.chord is not None]
        lifted = [0] * len(stretch) if lifts is None else lifts[start : start + len(stretch)]
        line += _best_line(stretch, chords, chance, after if start == 0 else None, lifted)
        start += len(stretch)
    return line


@lru_cache(maxsize=64)
def _register(lift: int) -> Costs:
    """What each pitch costs by its distance from the middle of the instrument, which lies higher by the lift."""
    cost: Costs = 0.16 * np.maximum(0, np.abs(_PITCHES - HOME - lift) - EASY_REACH)
    return cost


def _best_line(
    beats: Sequence[Beat], chords: Sequence[Chord], chance: Chance, after: int | None, lifts: Sequence[int]
) -> list[int]:
    """The cheapest pitches for beats and their chords. State: the kind of move that led to a pitch, and the pitch."""
    noise = VARIETY * chance.gumbels(len(beats), _COUNT)
    stands = [
        _fit(beat, chord) + _register(lift) - own
        for beat, chord, lift, own in zip(beats, chords, lifts, noise, strict=True)
    ]
    opening = np.full((len(_AFTER), _COUNT), FORBIDDEN)
    opening[_SAME] = stands[0]
    if after is not None:
        reach = np.abs(_PITCHES - after)
        opening[_SAME] += np.where(reach <= 12, 0.2 * reach, FORBIDDEN)
    arrivals = (
        _arrival(chord, before.key, upcoming, beat.is_new and before.leads_on)
        for (before, beat), (chord, upcoming) in zip(pairwise(beats), pairwise(chords), strict=True)
    )
    steps = (_step(arrival, stand) for arrival, stand in zip(arrivals, stands[1:], strict=True))
    return [int(_PITCHES[place % _COUNT]) for place in best_walk(opening.ravel(), steps).places]


def _step(arrival: Costs, stand: Costs) -> Step:
    """From one beat to the next: the best move before each move, then the best pitch before each pitch and move."""

    def step(totals: Costs) -> tuple[Costs, Places]:
        into = totals.reshape(-1, _COUNT, 1) + _AFTER[:, _MOVES]
        move_before = into.argmin(axis=0)
        cost = np.take_along_axis(into, move_before[None], axis=0)[0] + arrival
        by_move = np.where(_MOVES[None] == np.arange(len(_AFTER))[:, None, None], cost[None], FORBIDDEN)
        pitch_before = by_move.argmin(axis=1)
        best = np.take_along_axis(by_move, pitch_before[:, None], axis=1)[:, 0] + stand
        origins = move_before[pitch_before, np.arange(_COUNT)] * _COUNT + pitch_before
        return best.ravel(), origins.ravel()

    return step


def _fit(beat: Beat, chord: Chord) -> Costs:
    """How well each pitch fits the beat by itself."""
    return _fit_of(chord, beat.key, beat.is_new, beat.number % 2 == 0, beat.leads_on)


@lru_cache(maxsize=2048)
def _fit_of(chord: Chord, key: Key, is_new: bool, is_strong: bool, leads_on: bool) -> Costs:
    bass, root = bass_class(chord), chord.root.pitch_class
    fifth = chord.fifth.pitch_class if chord.fifth else -1
    scale = scale_classes(chord, key)
    by_class = []
    for pitch_class in range(12):
        in_chord = pitch_class in chord.pitch_classes or pitch_class == bass
        if is_new:
            cost = 0.0 if pitch_class == bass else 3.2 if pitch_class == fifth and bass == root else FORBIDDEN
            if cost == FORBIDDEN and in_chord and bass == root:
                cost = 4.2
        elif in_chord:
            cost = {bass: 0.25, fifth: 0.0}.get(pitch_class, 0.2) + (0.25 if leads_on else 0.0)
        elif pitch_class in scale:
            cost = 1.5 if is_strong else 0.45
        else:
            cost = 1.1 if leads_on else FORBIDDEN if is_strong else 2.4
        by_class.append(cost)
    return np.array([by_class[pitch % 12] for pitch in _PITCHES])


@lru_cache(maxsize=4096)
def _arrival(chord: Chord, key: Key, upcoming: Chord, is_due: bool) -> Costs:
    """Cost of every move from a pitch over `chord` (row) to one over the next beat's (column).

    Notes outside the chord are not leapt to, nor left by a leap; chromatic ones lead on by a semitone. `is_due` is
    true where a new root comes, which wants to be approached.
    """
    size = np.abs(_STEPS)
    cost = np.where(size <= 12, _LEAP_COST[np.minimum(size, 12)], FORBIDDEN)
    is_leap = size > 2
    if is_due:
        kinds = [size == 1, size == 2, (size == 5) | (size == 7), size == 0]
        cost = cost + np.select(kinds, [-1.7, -1.1, -0.5, 2.0], 0.6)
    foreign, foreign_next = _outside(chord), _outside(upcoming)
    cost = cost + np.where(is_leap & foreign[:, None], 0.5 if is_due else 1.0, 0.0)
    cost = cost + np.where(is_leap & foreign_next[None, :], 2.4, 0.0)
    known = scale_classes(chord, key) | chord.pitch_classes | {bass_class(chord)}
    is_chromatic = np.array([pitch % 12 not in known for pitch in _PITCHES])
    return cost + np.where(is_chromatic[:, None] & (size != 1), FORBIDDEN, 0.0)


def _outside(chord: Chord) -> NDArray[np.bool_]:
    """For each pitch whether it is no chord tone."""
    inside = chord.pitch_classes | {bass_class(chord)}
    return np.array([pitch % 12 not in inside for pitch in _PITCHES])
