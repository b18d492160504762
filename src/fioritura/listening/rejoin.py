"""Notes of a recording that may be one: a held note whose attack was heard twice.

In a room, vibrato makes the level of a held note sag as a soft tongue does. Where the ear is not sure that a note was
struck again, the reading of the line decides (`reading`): two notes are two where the tune, or a figure, has two.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import inf, log
from typing import Final

from fioritura.listening.event import Event

__all__ = ["rejoined", "repeat_odds"]

_SURE: Final = 0.995
_UNSURE: Final = 0.01
_LEAD_ODDS: Final = 1.5
"""Chosen on the train half of the benchmark's tunes, dry and in a room."""
_GRACE_SEC: Final = 0.15
_GRACE_SEMITONES: Final = 2


def repeat_odds(events: Sequence[Event]) -> Iterator[float]:
    """Log-odds that each event is a note of its own; infinite where it can't be the event before going on.

    They are better where a grace note that repeats the note before would stand than in the middle of a note.
    """
    for number, event in enumerate(events):
        before = events[number - 1] if number else None
        is_doubtful = before is not None and before.midi == event.midi and event.apartness < _SURE
        apartness = min(max(event.apartness, _UNSURE), _SURE)
        odds = log(apartness / (1 - apartness)) + _LEAD_ODDS * _leads(events, number)
        yield odds if is_doubtful else inf


def _leads(events: Sequence[Event], number: int) -> bool:
    """True where an event may be a grace note that repeats the note before: short, and a step follows at once."""
    event = events[number]
    after = events[number + 1] if number + 1 < len(events) else None
    is_step = after is not None and 0 < abs(after.midi - event.midi) <= _GRACE_SEMITONES
    return event.duration <= _GRACE_SEC and after is not None and is_step and after.onset - event.end < _GRACE_SEC / 4


def rejoined(events: Sequence[Event], explained: frozenset[int]) -> list[Event]:
    """The events, those that may be the one before going on, and that nothing explains, joined to it."""
    line: list[Event] = []
    for number, (event, odds) in enumerate(zip(events, repeat_odds(events), strict=True)):
        if odds == inf or number in explained:
            line.append(event)
        else:
            before = line[-1]
            line[-1] = replace(before, duration=event.end - before.onset, marks=before.marks | event.marks)
    return line
