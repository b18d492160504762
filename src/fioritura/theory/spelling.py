"""How added notes are spelled among notes that stand, so that a player reads them without surprise.

Common practice: a step is another letter; no double accidental; no E sharp, F flat, B sharp or C flat unless key or
chord has it; no augmented second or diminished third from one note to the next, but where both sides of a note close
in on it, and inside a diminished seventh
chord (the upper tones of a dominant with a flat ninth are one).
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise, repeat
from typing import Final

import numpy as np

from fioritura.paths import best_path
from fioritura.theory.chord import Chord
from fioritura.theory.key import Key
from fioritura.theory.pitch import Pitch

__all__ = ["is_plain_in", "spelled_line"]

_SURPRISE: Final = 100.0
_ODD: Final = 1.0
"""From this cost of a move on, another spelling is looked for."""

_LETTERS_OF: Final = {0: 0, 1: 1, 2: 1, 3: 2, 4: 2, 5: 3, 6: 3, 7: 4}
"""Staff places that a move of so many semitones usually has."""

Reading = tuple[Pitch, bool, Key, Chord | None]
"""A note, whether it may be spelled anew, and the key and chord in which it is read."""


def is_plain_in(pitch: Pitch, key: Key, chord: Chord | None) -> bool:
    """True for a note without double accidental that is no white key by another letter, unless the signature, the
    leading note of a minor key, or root, third, fifth or seventh of the chord is just that.

    Examples:
        >>> from fioritura.theory.key import Key
        >>> from fioritura.theory.pitch import Pitch
        >>> is_plain_in(Pitch.parse("F4"), Key.of("C"), None), is_plain_in(Pitch.parse("E#4"), Key.of("C"), None)
        (True, False)
    """
    if pitch == pitch.respelled() or key.holds(pitch):
        return True
    if abs(pitch.alter) > 1:
        return False
    if key.mode == "minor" and (key.tonic.letter - 1) % 7 == pitch.step % 7 and _leads_to(pitch, key):
        return True
    named = zip(chord.intervals, chord.tones, strict=True) if chord else ()
    return any(name == pitch.name for interval, name in named if interval.steps in (0, 2, 4, 6))


def _leads_to(pitch: Pitch, key: Key) -> bool:
    return (key.tonic.pitch_class - pitch.midi) % 12 == 1


@lru_cache(maxsize=32768)
def spelled_line(
    given: tuple[Pitch, ...], added: tuple[bool, ...], key: Key, chords: tuple[Chord | None, ...]
) -> tuple[Pitch, ...] | None:
    """A line in playing order with its `added` notes spelled well; as it is where it is well spelled already; None where it can't be.

    A chromatic note takes the letter of the note that it comes from: sharps lead up, flats lead down.

    The first and the last note may be notes that stand; a leap from or to them may be of any kind.

    Examples:
        >>> from fioritura.theory.key import Key
        >>> from fioritura.theory.pitch import Pitch
        >>> line = tuple(map(Pitch.parse, ("G4", "Ab4", "A4")))
        >>> [str(pitch) for pitch in spelled_line(line, (False, True, False), Key.of("C"), (None, None, None))]
        ['G4', 'G#4', 'A4']
    """
    line: list[Reading] = list(zip(given, added, repeat(key), chords, strict=False))
    if all(is_plain_in(pitch, key, chord) for pitch, is_added, key, chord in line if is_added) and not any(
        _arc(line, number, one, other) >= _ODD for number, (one, other) in enumerate(pairwise(given))
    ):
        return given
    layers = [_choices(reading) for reading in line]
    if not all(layers):
        return None
    nodes = [
        np.array([_cost(pitch, reading) for pitch in layer]) for layer, reading in zip(layers, line, strict=True)
    ]
    arcs = [
        np.array([[_arc(line, number, a, b) for b in after] for a in before])
        for number, (before, after) in enumerate(pairwise(layers))
    ]
    path = best_path(nodes, arcs)
    if path.cost >= _SURPRISE / 2:
        return None
    return tuple(layer[place] for layer, place in zip(layers, path.places, strict=True))


def _choices(reading: Reading) -> list[Pitch]:
    pitch, is_added, key, chord = reading
    if not is_added:
        return [pitch]
    near = (Pitch(pitch.step + move) for move in (0, -1, 1, -2, 2))
    named = (Pitch(natural.step, pitch.midi - natural.midi) for natural in near)
    return [name for name in named if abs(name.alter) <= 1 and is_plain_in(name, key, chord)]


def _cost(pitch: Pitch, reading: Reading) -> float:
    """What speaks against a spelling by itself: first that it is not the key's, then not the chord's or the given."""
    given, is_added, key, chord = reading
    if not is_added:
        return 0.0
    in_chord = chord is not None and pitch.name in chord.tones
    is_white = pitch == pitch.respelled()
    return 1.0 * (not key.holds(pitch)) - 0.5 * in_chord - 0.4 * (pitch == given) + 0.6 * (not is_white)


def _arc(line: Sequence[Reading], number: int, one: Pitch, other: Pitch) -> float:
    """What speaks against two spellings side by side; what was given as a step to its goal stays one."""
    (_, first_added, _, chord), (_, second_added, _, _) = line[number], line[number + 1]
    if not (first_added or second_added):
        return 0.0
    closes_in = _closes_in(line, number)
    if closes_in and one.step != line[number][0].step and abs(line[number][0].step - line[number + 2][0].step) == 1:
        return _SURPRISE
    move = other.midi - one.midi
    letters = (other.step - one.step) * (1 if move >= 0 else -1)
    semitones = abs(move)
    if semitones > 7 or letters == _LETTERS_OF[semitones]:
        return 0.0
    if semitones == 1 and letters == 0:
        if first_added and abs(line[number + 1][0].step - line[number][0].step) == 1:
            return _SURPRISE
        return 0.4 if line[number][2].holds(one) else 1.2
    if semitones == 6 and letters == 4:
        return 0.0
    if semitones >= 4:
        return 0.6
    if closes_in:
        return 0.5
    if semitones == 3:
        is_leap = not (first_added and second_added)
        return 0.9 if is_leap or _are_diminished(one, other, chord) else _SURPRISE
    return _SURPRISE


def _closes_in(line: Sequence[Reading], number: int) -> bool:
    """True for two notes on both sides of the note that follows them, each a semitone or a whole tone from it."""
    if number + 2 >= len(line):
        return False
    first, second, goal = (line[number + place][0].midi for place in range(3))
    return (first - goal) * (second - goal) < 0 and abs(first - goal) <= 2 and abs(second - goal) <= 2


def _are_diminished(one: Pitch, other: Pitch, chord: Chord | None) -> bool:
    """True for two tones of a diminished seventh chord, also of one inside the chord: one of its thirds is written as an
    augmented second."""
    thirds = {(one.midi + semitones) % 12 for semitones in (0, 3, 6, 9)}
    return chord is not None and other.midi % 12 in thirds <= chord.pitch_classes
