"""The key of a melody that names none, found by correlation with probe-tone profiles.

Source: C. L. Krumhansl and E. J. Kessler, "Tracing the dynamic changes in perceived tonal organization in a spatial
representation of musical keys", Psychological Review 89 (1982) 334-368; the method is Krumhansl's (Cognitive
Foundations of Musical Pitch, 1990, chapter 4): the key whose profile correlates best with how long each pitch class
sounds.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt
from typing import Final

from fioritura.theory.key import Key

__all__ = ["MAJOR_PROFILE", "MINOR_PROFILE", "find_key", "find_mode"]

MAJOR_PROFILE: Final = (6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88)
MINOR_PROFILE: Final = (6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17)

_LAST_NOTE_BONUS: Final = 0.1
"""What the tonic gains when the melody ends on it (common practice; keeps relative keys apart)."""


def find_key(weights: Sequence[float], last_pitch_class: int | None = None) -> Key:
    """The major or minor key that fits best.

    `weights` holds 12 values >= 0, how long each pitch class sounds (C = 0), in any unit; `last_pitch_class` is
    where the melody ends. Signatures run from six flats to six sharps.
    """
    candidates = [Key(fifths, mode) for fifths in range(-5, 7) for mode in ("major", "minor")]
    return max(candidates, key=lambda key: _fit(key, weights, last_pitch_class))


def find_mode(fifths: int, weights: Sequence[float], last_pitch_class: int | None = None) -> Key:
    """The better of a signature's major key and its relative minor; arguments as in `find_key`."""
    return max(Key(fifths), Key(fifths, "minor"), key=lambda key: _fit(key, weights, last_pitch_class))


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
