"""What may come at each moment of a take whose tune is known: the plain notes, where the alignment puts them.

Only takes of which the net is not sure are heard again; nothing is expected of a take that is not the tune.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Final

import numpy as np

from fioritura.listening.align import Alignment, align
from fioritura.listening.decode import Expected
from fioritura.listening.event import Event
from fioritura.listening.neural import Heard, seconds_of
from fioritura.listening.rejoin import rejoined
from fioritura.listening.spectra import STEP_SEC
from fioritura.tune import Tune

__all__ = ["informed"]

SURE: Final = 0.96
"""A take whose notes are likelier than this is heard once."""


def informed(heard: Heard, tune: Tune) -> Heard:
    """The take heard again with the tune in mind; as it was where the net is sure, or where it is another tune."""
    if heard.sureness >= SURE:
        return heard
    alignment = align(tune, rejoined(_events(heard), frozenset()))
    return heard.informed(list(_expected(alignment))) if alignment.is_this_tune else heard


def _events(heard: Heard) -> list[Event]:
    return [
        Event(
            seconds_of(note.start),
            seconds_of(note.stop - note.start),
            note.midi,
            number,
            confidence=note.confidence,
            apartness=note.onset if place_joined else 1.0,
        )
        for number, (note, place_joined) in enumerate(zip(heard.notes, _joined(heard), strict=True))
    ]


def _joined(heard: Heard) -> list[bool]:
    """Whether each note follows another directly."""
    return [False, *(after.start - before.stop < 1 for before, after in pairwise(heard.notes))][: len(heard.notes)]


def _expected(alignment: Alignment) -> Iterator[Expected]:
    times = np.array([event.onset for event in alignment.events])
    notes = alignment.tune.notes
    for one in alignment.passes:
        if len(one.ticks) < 2 or not one.spans:
            continue
        here = times[one.first_event : one.stop_event]
        order = np.argsort(one.ticks, kind="stable")
        for span in one.spans:
            note = notes[span.plain]
            edges = np.interp([note.onset_ticks, note.end_ticks], one.ticks[order], here[order]) / STEP_SEC
            yield Expected(round(edges[0]), round(edges[1]), note.pitch.midi + alignment.semitones)
