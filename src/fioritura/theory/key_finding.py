"""The key of a melody that names none, found by correlation with probe-tone profiles, and its notes' spelling.

Source: C. L. Krumhansl and E. J. Kessler, "Tracing the dynamic changes in perceived tonal organization in a spatial
representation of musical keys", Psychological Review 89 (1982) 334-368; the method is Krumhansl's (Cognitive
Foundations of Musical Pitch, 1990, chapter 4): the key whose profile correlates best with how long each pitch class
sounds.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt
from typing import Final

from fioritura.theory.key import Direction, Key
from fioritura.theory.pitch import Pitch

__all__ = ["MAJOR_PROFILE", "MINOR_PROFILE", "find_key", "find_mode", "spell_between"]

MAJOR_PROFILE: Final = (6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88)
MINOR_PROFILE: Final = (6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17)

_LAST_NOTE_BONUS: Final = 0.1
"""What the tonic gains when the melody ends on it (common practice; keeps relative keys apart)."""

_RAISED_IN_MAJOR: Final = frozenset({1, 6, 8})
_RAISED_IN_MINOR: Final = frozenset({4, 6, 9})
_ALWAYS_RAISED_IN_MINOR: Final = frozenset({4, 9})
_LEADING_NOTE: Final = 11
"""Semitones above the tonic that are written as the raised note below rather than the lowered one above."""


def find_key(weights: Sequence[float], last_pitch_class: int | None = None) -> Key:
    """The major or minor key that fits best.

    `weights` holds 12 values >= 0, how long each pitch class sounds (C = 0), in any unit; `last_pitch_class` is
    where the melody ends. Signatures run from six flats to six sharps.

    Examples:
        >>> str(find_key([2, 0, 1, 0, 2, 1, 0, 2, 0, 1, 0, 1], last_pitch_class=0))
        'C major'
    """
    candidates = [Key(fifths, mode) for fifths in range(-5, 7) for mode in ("major", "minor")]
    return max(candidates, key=lambda key: _fit(key, weights, last_pitch_class))


def find_mode(fifths: int, weights: Sequence[float], last_pitch_class: int | None = None) -> Key:
    """The better of a signature's major key and its relative minor; arguments as in `find_key`.

    Examples:
        >>> str(find_mode(0, [2, 0, 1, 0, 2, 0, 0, 0, 1, 3, 0, 1], last_pitch_class=9))
        'A minor'
    """
    return max(Key(fifths), Key(fifths, "minor"), key=lambda key: _fit(key, weights, last_pitch_class))


def spell_between(key: Key, midi: int, before: int | None, after: int | None) -> Pitch:
    """Spell a MIDI number by its key and by the MIDI numbers of its neighbours in the line (None at the ends).

    A semitone on to the next note, or inside a chromatic line, the way the line goes decides; else the degree: raised
    first, fourth and fifth in major, raised third, fourth, sixth and seventh in minor, all others lowered. The leading
    note of a minor key keeps its letter, as E sharp in F sharp minor (common practice).

    Examples:
        >>> str(spell_between(Key.of("C"), 66, before=65, after=67)), str(spell_between(Key.of("C"), 66, before=67, after=65))
        ('F#4', 'Gb4')
    """
    degree = (midi - key.tonic.pitch_class) % 12
    if key.is_minor and degree == _LEADING_NOTE:
        tonic = key.spell(midi + 1)
        return Pitch(tonic.step - 1, midi - Pitch(tonic.step - 1).midi)
    direction: Direction
    if key.is_minor and degree in _ALWAYS_RAISED_IN_MINOR:
        direction = "up"
    elif after is not None and abs(after - midi) == 1:
        direction = "up" if after > midi else "down"
    elif before is not None and after is not None and abs(before - midi) == 1 and abs(after - midi) == 2:
        direction = "up" if before > midi else "down"
    else:
        direction = "up" if degree in (_RAISED_IN_MINOR if key.is_minor else _RAISED_IN_MAJOR) else "down"
    return key.spell(midi, direction)


def _fit(key: Key, weights: Sequence[float], last_pitch_class: int | None) -> float:
    tonic = key.tonic.pitch_class
    profile = MINOR_PROFILE if key.is_minor else MAJOR_PROFILE
    turned = [weights[(tonic + place) % 12] for place in range(12)]
    return _correlation(turned, profile) + (_LAST_NOTE_BONUS if tonic == last_pitch_class else 0.0)


def _correlation(left: Sequence[float], right: Sequence[float]) -> float:
    """Pearson's r; 0 when one side is constant."""
    left_mean, right_mean = sum(left) / len(left), sum(right) / len(right)
    left_parts = [value - left_mean for value in left]
    right_parts = [value - right_mean for value in right]
    scale = sqrt(sum(value * value for value in left_parts) * sum(value * value for value in right_parts))
    return sum(a * b for a, b in zip(left_parts, right_parts, strict=True)) / scale if scale else 0.0
