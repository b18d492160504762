"""How far two lists of notes, or of figures, agree: precision, recall and F-measure.

Notes are compared by the conventions of the field's evaluations of transcription (Raffel et al., "mir_eval: a
transparent implementation of common MIR metrics", ISMIR 2014): an estimated note matches a reference note when its
onset is within 50 ms and its pitch within 50 cents; each note matches one other at most, and as many match as can.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence
from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from fioritura.arrange.rendition import Rendition
from fioritura.errors import OptionError
from fioritura.library import rendition
from fioritura.listening.naming import NamedFigure
from fioritura.listening.notes import Take
from fioritura.techniques.figure import Figure

__all__ = ["Agreement", "compare_figures", "compare_notes"]

_DIGITS: Final = 4
"""Of a time in seconds: a difference of just the tolerance is within it."""


class Agreement(NamedTuple):
    """How far an estimate agrees with a reference, 0.0 to 1.0; `matched` are pairs of their numbers, in order."""

    precision: float
    recall: float
    f1: float
    matched: tuple[tuple[int, int], ...]


def compare_notes(
    reference: Rendition | Take | NDArray[Any],
    estimate: Rendition | Take | NDArray[Any],
    *,
    onset_sec: float = 0.05,
    pitch_cents: float = 50.0,
) -> Agreement:
    """How far two lines of notes agree.

    Args:
        reference: a rendition, a take, or an array with fields ``onset_sec`` and ``pitch`` (MIDI, whole or not).
        estimate: what is measured against it, of any of these kinds.
        onset_sec: how far onsets may lie apart.
        pitch_cents: how far pitches may lie apart.

    Examples:
        >>> notes = np.array([(0.0, 60), (0.5, 62), (1.0, 64)], [("onset_sec", float), ("pitch", float)])
        >>> compare_notes(notes, notes[:2])
        Agreement(precision=1.0, recall=0.6666666666666666, f1=0.8, matched=((0, 0), (1, 1)))

    Raises:
        OptionError: an array lacks a field, or a tolerance is negative.
    """
    if not (onset_sec >= 0.0 and pitch_cents >= 0.0):
        raise OptionError("library-tolerance", onset=onset_sec, pitch=pitch_cents)
    own, other = _notes(reference), _notes(estimate)
    order = np.argsort(other[:, 0], kind="stable")
    onsets = other[order, 0]
    partners: list[list[int]] = []
    for onset, pitch in own:
        start = np.searchsorted(onsets, onset - onset_sec - 1e-3)
        stop = np.searchsorted(onsets, onset + onset_sec + 1e-3, side="right")
        near = order[start:stop]
        is_near = np.round(np.abs(other[near, 0] - onset), _DIGITS) <= onset_sec
        is_same = np.abs(other[near, 1] - pitch) * 100.0 <= pitch_cents
        partners.append(near[is_near & is_same].tolist())
    return _agreement(_matched(partners), len(own), len(other))


def compare_figures(reference: Iterable[Figure | NamedFigure], estimate: Iterable[Figure | NamedFigure]) -> Agreement:
    """How far two lists of figures of one tune agree: the same technique at the same plain note is the same figure.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> rendition = fioritura.ornament(tune, only=["turn"])
        >>> compare_figures(rendition.figures, fioritura.name(tune, rendition).figures).f1
        1.0
    """
    own, other = ([(one.technique, one.anchors[0]) for one in figures] for figures in (reference, estimate))
    places: dict[Hashable, list[int]] = {}
    for number, figure in enumerate(other):
        places.setdefault(figure, []).append(number)
    return _agreement(_matched([places.get(figure, []) for figure in own]), len(own), len(other))


def _notes(given: Rendition | Take | NDArray[Any]) -> NDArray[np.float64]:
    """Onset (seconds) and pitch (MIDI) of each note: shape (notes, 2). Grace notes of a rendition are left out: on
    paper they have no time of their own."""
    if isinstance(given, Take):
        rows = [(note.onset_sec, 69.0 + note.pitch_cents / 100.0) for note in given.notes]
        return np.array(rows, float).reshape(-1, 2)
    if isinstance(given, Rendition):
        notes = rendition.Rendition.of(given).note_array()
        return _notes(notes[~notes["is_grace"]])
    missing = {"onset_sec", "pitch"} - set(given.dtype.names or ())
    if missing:
        raise OptionError("library-no-field", field=min(missing))
    return np.stack([given["onset_sec"], given["pitch"]], axis=1).astype(float)


def _matched(partners: Sequence[Sequence[int]]) -> dict[int, int]:
    """The largest matching, by augmenting paths (Kuhn 1955): for each matched estimate its reference."""
    owner: dict[int, int] = {}
    for start in range(len(partners)):
        _augment(start, partners, owner)
    return owner


def _augment(start: int, partners: Sequence[Sequence[int]], owner: dict[int, int]) -> None:
    """Match one more reference where a path of exchanges frees an estimate for it."""
    seen: set[int] = set()
    path: list[tuple[int, int]] = []
    stack = [(start, iter(partners[start]))]
    while stack:
        reference, rest = stack[-1]
        estimate = next((one for one in rest if one not in seen), None)
        if estimate is None:
            stack.pop()
            if path:
                path.pop()
            continue
        seen.add(estimate)
        path.append((reference, estimate))
        if estimate not in owner:
            owner.update((taken, by) for by, taken in path)
            return
        stack.append((owner[estimate], iter(partners[owner[estimate]])))


def _agreement(matched: dict[int, int], references: int, estimates: int) -> Agreement:
    precision = len(matched) / estimates if estimates else 0.0
    recall = len(matched) / references if references else 0.0
    both = precision + recall
    pairs = tuple(sorted((reference, estimate) for estimate, reference in matched.items()))
    return Agreement(precision, recall, 2 * precision * recall / both if both else 0.0, pairs)
