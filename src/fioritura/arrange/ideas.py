"""An idea and what becomes of it: repeated once, then varied or extended.

When the best set of figures is known, its scores are told of what stands where, and the whole is chosen again at these
scores (see `arranger`). What stands in a phrase that comes again is the idea: at the same place of a later statement
another gesture is worth more, and more still one with more notes. A third literal copy of a gesture costs, wherever it
stands; the two that score best, or are locked, stay as they are.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.phrase import phrases
from fioritura.techniques.figure import Figure
from fioritura.tune import Tune

if TYPE_CHECKING:
    from fioritura.arrange.field import Field, Terms

__all__ = ["gesture", "tell", "tell_of"]

COPY_COST: Final = 1.0
"""What each literal copy of a gesture after the second loses."""

TAKEN_UP: Final = 0.2
"""What another gesture at the place of the first statement's is worth beyond its score, and ..."""
LARGER: Final = 0.1
"""... each note that it adds beyond those of the first, up to three."""

_COPIES: Final = 2
_MOST_LARGER: Final = 3

Gesture = tuple[object, ...]


def gesture(tune: Tune, figure: Figure) -> Gesture:
    """What makes two figures literal copies: the technique, the note that is ornamented, and what is written, by time
    from that note.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> figure = fioritura.find(tune, fioritura.Setting("alto-sax", level=3).on(tune)).figures[0]
        >>> gesture(tune, figure) == gesture(tune, figure)
        True
    """
    main = tune.notes[figure.anchors[0]]
    written = tuple(
        (note.onset_ticks - main.onset_ticks, note.duration_ticks, note.pitch.midi) for note in figure.notes
    )
    return figure.technique, main.pitch.midi, tuple(pitch.midi for pitch in figure.graces), written


def tell(field: Field, terms: Terms) -> tuple[tuple[int, ...], float]:
    """Tell a field's scores of the best set of figures, and once more of the copies in what is best then; the best set
    at the scores as they are told, and its worth.

    Examples:
        >>> import fioritura
        >>> from fioritura.arrange.field import Field, Terms, constraints_of
        >>> tune = fioritura.demo_tune()
        >>> found = fioritura.find(tune, fioritura.Setting("alto-sax", level=3).on(tune))
        >>> field = Field(found, constraints_of(found, 0, (), ()))
        >>> numbers, worth = tell(field, Terms(0))
        >>> worth == field.best(field.scores)[1]
        True
    """
    tell_of(field, field.best(field.priced(terms))[0])
    best = field.best(field.priced(terms))
    return field.best(field.priced(terms)) if _charge_copies(field, best[0]) else best


def tell_of(field: Field, numbers: Sequence[int]) -> None:
    """Tell a field's scores of some figures that stand.

    Examples:
        >>> import fioritura
        >>> from fioritura.arrange.field import Field, constraints_of
        >>> tune = fioritura.demo_tune()
        >>> found = fioritura.find(tune, fioritura.Setting("alto-sax", level=3).on(tune))
        >>> field = Field(found, constraints_of(found, 0, (), ()))
        >>> before = field.scores
        >>> tell_of(field, ())
        >>> bool((field.scores == before).all())
        True
    """
    field.scores = field.scores.copy()
    _take_up(field, numbers)
    _charge_copies(field, numbers)


def _charge_copies(field: Field, numbers: Sequence[int]) -> bool:
    """Lower the scores of literal copies of the gestures that stand more than twice; False where none does."""
    tune, figures = field.found.tune, field.found.candidates
    copies: dict[Gesture, list[int]] = {}
    for number in numbers:
        copies.setdefault(gesture(tune, figures[number]), []).append(number)
    crowds = {own: group for own, group in copies.items() if len(group) > _COPIES}
    if not crowds:
        return False
    kinds = _kinds(field)
    order = np.argsort(kinds, kind="stable")
    ordered = kinds[order]
    for own, group in crowds.items():
        ranked = sorted(group, key=lambda number: (not field.is_fixed[number], -field.scores[number], number))
        start, stop = np.searchsorted(ordered, [kinds[group[0]], kinds[group[0]] + 1])
        alike = [number for number in order[start:stop].tolist() if gesture(tune, figures[number]) == own]
        field.scores[alike] -= COPY_COST
        field.scores[ranked[:_COPIES]] += COPY_COST
    return True


def _kinds(field: Field) -> NDArray[np.int64]:
    """One number for each technique and pitch of the note that is ornamented."""
    notes = np.array([note.pitch.midi for note in field.found.tune.notes], dtype=np.int64)
    anchors = np.fromiter((figure.anchors[0] for figure in field.found.candidates), dtype=np.int64)
    kinds: NDArray[np.int64] = field.technique * 256 + notes[anchors]
    return kinds


def _take_up(field: Field, numbers: Sequence[int]) -> None:
    figures, tune = field.found.candidates, field.found.tune
    found = phrases(tune)
    first = {phrase.model: phrase for phrase in found if phrase.statement == 1}
    standing: dict[int, list[int]] = {}
    for number in numbers:
        standing.setdefault(field.phrase_of(number), []).append(number)
    for phrase in found:
        model = first[phrase.model]
        if phrase.statement == 1:
            continue
        for number in standing.get(model.number, ()):
            one = figures[number]
            shift = phrase.first - model.first
            if one.anchors[0] + shift > phrase.last:
                continue
            slot = one.first_slot + 2 * shift
            start, stop = np.searchsorted(field.places, [slot, slot + 1])
            for other in field.by_place[start:stop].tolist():
                if field.technique[other] == field.technique[number]:
                    continue
                more = figures[other].added_notes - one.added_notes
                field.scores[other] += TAKEN_UP + LARGER * min(max(more, 0), _MOST_LARGER)
