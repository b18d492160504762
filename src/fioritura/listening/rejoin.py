"""Notes of a recording that may be one: a held note whose attack was heard twice.

In a room, vibrato makes the level of a held note sag as a soft tongue does. Where the ear is not sure that a note was
struck again, the tune decides: two notes are two where it, or a figure that was asked for, has two.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from fioritura.listening.align import Alignment
from fioritura.listening.event import Event
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import SIXTEENTH

__all__ = ["rejoined"]

SURE: Final = 0.95
"""From this apartness on two notes of a pitch are two, whatever the tune has."""

GRACE_SEC: Final = 0.15
GRACE_SEMITONES: Final = 2


def rejoined(alignment: Alignment, asked: Sequence[Figure] = ()) -> list[Event]:
    """The events of an alignment with its tune, doubtful repetitions that neither the tune nor `asked` has made one."""
    plain = {span.event for one in alignment.passes for span in one.spans if span.event is not None}
    wanted = plain | set(_asked_events(alignment, asked))
    line: list[Event] = []
    last = -1
    for number, event in enumerate(alignment.events):
        before = line[-1] if line else None
        is_doubtful = before is not None and before.midi == event.midi and event.apartness < SURE
        if before is None or not is_doubtful or {last, number} <= wanted or _leads(alignment.events, number):
            line.append(event)
            last = number
            continue
        marks = before.marks | event.marks
        line[-1] = replace(before, duration=event.end - before.onset, marks=marks)
        last = number if number in wanted else last
    return line


def _leads(events: Sequence[Event], number: int) -> bool:
    """True where an event may be a grace note that repeats the note before: short, and another pitch follows at once."""
    event = events[number]
    after = events[number + 1] if number + 1 < len(events) else None
    is_step = after is not None and 0 < abs(after.midi - event.midi) <= GRACE_SEMITONES
    return event.duration <= GRACE_SEC and after is not None and is_step and after.onset - event.end < GRACE_SEC / 4


def _asked_events(alignment: Alignment, asked: Sequence[Figure]) -> Iterator[int]:
    """Events at the place and pitch of a note of an asked figure that repeats a pitch."""
    places = [
        (note.onset_ticks, note.pitch.midi)
        for figure in asked
        if technique_named(figure.technique).repeats_pitch
        for note in figure.notes
    ]
    if not places:
        return
    for one in alignment.passes:
        for number, ticks in enumerate(one.ticks, start=one.first_event):
            midi = alignment.events[number].midi - alignment.semitones
            if any(midi == pitch and abs(ticks - onset) <= SIXTEENTH for onset, pitch in places):
                yield number
