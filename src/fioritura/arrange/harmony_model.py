"""What chords a key's tunes use, how well each explains a melody, and how readily one follows another.

The model behind `fioritura.arrange.harmonise`. All scores are natural logarithms of probabilities or of their ratios.

Sources: the shares of melody notes outside the chord are measured on the Nottingham Music Database (9 % on
downbeats, 26 % over all, 37 % on half-beats); the vocabulary and the motions of roots are common practice, the
gains and rates of change settled by trial on some twenty traditional tunes that carry chords.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import log
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.theory.chord import Chord
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key, Mode
from fioritura.theory.pitch import Interval
from fioritura.theory.scale import chord_scale, key_scale

__all__ = ["State", "moves", "states"]

_VOCABULARY: Final[dict[Mode, str]] = {
    "major": "P1:10 P4:6 P5:4 P5-7:5 M6-m:3 M2-m:3 M3-m:0.8 M2-7:0.8 M6-7:0.4 M3-7:0.4 P1-7:0.4 m7:0.4 P4-m:0.1",
    "minor": "P1-m:10 P5-7:5 P4-m:4 m7:4 m3:4 m6:3 m7-7:1 P5:1 P5-m:0.6 P4:0.5 M2-m7b5:0.4 P1-7:0.3 M2-7:0.2",
    "dorian": "P1-m:10 m7:6 P4:3 m3:2 P5-m:2 M2-m:0.8 P4-m:0.5 P5-7:0.8 m6:0.3",
    "mixolydian": "P1:10 m7:6 P4:5 P5:2 P5-m:2 M2-m:2 M6-m:1.5 P5-7:1",
    "phrygian": "P1-m:10 m2:6 m3:3 P4-m:2 m6:3 m7-m:3",
    "lydian": "P1:10 P5:5 M2:5 M6-m:3 M3-m:2 M7-m:1",
    "locrian": "P1-dim:8 m2:4 m3-m:4 d5:4 m6:4 P4-m:2 m7-m:3",
}
"""For each mode the chords of its tunes, as interval above the tonic and suffix, with how common they are."""

_ROOT_MOTION: Final = (0.6, 0.8, 1.3, 0.8, 0.6, 2.5, 0.3, 1.5, 0.9, 1.2, 1.0, 0.4)
"""How readily the root moves up by 0 to 11 semitones to another chord; 5 is the fall of a fifth."""

_RESOLUTION: Final = 4.0
_ASTRAY: Final = 0.3
"""How much likelier a dominant moves to its target than the motion of roots says, and how much less elsewhere."""

_OUTSIDE: Final = {1.0: 0.09, 0.75: 0.15, 0.5: 0.20, 0.25: 0.37, 0.125: 0.40, 0.0: 0.45}
"""Share of melody notes outside the chord at each metrical weight (see `Metre.strength`)."""

_FOREIGN: Final = 0.04
"""Share of those that lie outside the chord's scale as well."""

_TONE_WEIGHTS: Final = {0: 1.2, 2: 1.0, 4: 1.0, 6: 0.4}
"""Chord tones by their steps above the root, against each other."""


@dataclass(frozen=True, slots=True)
class State:
    """A chord as the model sees it.

    `weight` is how common it is in the key; `melody_logs` the log probability of each pitch class (0-11) at each
    metrical weight; `target` the pitch class of the root that a dominant leads to.
    """

    chord: Chord
    weight: float
    melody_logs: dict[float, tuple[float, ...]]
    target: int | None
    is_tonic: bool
    is_dominant: bool


@lru_cache(maxsize=128)
def states(key: Key) -> tuple[State, ...]:
    """The chords that tunes in the key use."""
    return tuple(_state(key, entry) for entry in _VOCABULARY[key.mode].split())


def _state(key: Key, entry: str) -> State:
    place, weight = entry.split(":")
    interval, _, suffix = place.partition("-")
    root = key.tonic.up(Interval.parse(interval))
    chord = read_chord(f"{root}{suffix}")
    if chord is None:
        raise ValueError(entry)
    foreign = not chord.pitch_classes <= key_scale(key).pitch_classes
    is_fifth = interval == "P5" and chord.is_major
    leads = chord.is_dominant or is_fifth or (chord.is_major and foreign)
    return State(
        chord,
        float(weight),
        {strength: _melody_logs(chord, key, outside) for strength, outside in _OUTSIDE.items()},
        root.up(Interval(3, 5)).pitch_class if leads else None,
        is_tonic=interval == "P1" and not leads,
        is_dominant=is_fifth,
    )


def _melody_logs(chord: Chord, key: Key, outside: float) -> tuple[float, ...]:
    """Log probability of each pitch class over the chord when a share `outside` of the notes is outside it."""
    tones = {(chord.root.pitch_class + tone.semitones) % 12: _TONE_WEIGHTS[tone.steps] for tone in chord.intervals}
    scale = chord_scale(chord, key).pitch_classes - chord.pitch_classes
    foreign = 12 - len(scale) - len(tones)

    def share(pitch_class: int) -> float:
        if pitch_class in tones:
            return (1 - outside) * tones[pitch_class] / sum(tones.values())
        if pitch_class in scale:
            return outside * (1 - _FOREIGN) / len(scale)
        return outside * _FOREIGN / foreign

    return tuple(log(share(pitch_class)) for pitch_class in range(12))


@lru_cache(maxsize=256)
def moves(source: Key, target: Key, change: float) -> NDArray[np.float64]:
    """Log probability of each chord of the target key (columns) after each chord of the source key (rows).

    `change` is the probability that the chord changes at all.
    """
    after = states(target)
    rows: list[list[float]] = []
    for state in states(source):
        weights = [_readiness(state, following) for following in after]
        total = sum(weights)
        changes = change if 0.0 in weights else 1.0
        rows.append([log(changes * weight / total) if weight else log(1 - changes) for weight in weights])
    logs = np.array(rows)
    logs.setflags(write=False)
    return logs


def _readiness(state: State, following: State) -> float:
    """How readily one chord is followed by another one, not normalised; 0 for itself."""
    if state.chord == following.chord:
        return 0.0
    root, target = state.chord.root.pitch_class, following.chord.root.pitch_class
    weight = following.weight * _ROOT_MOTION[(target - root) % 12]
    if state.target is not None:
        weight *= _RESOLUTION if target == state.target else _ASTRAY
    return weight
