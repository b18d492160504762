"""The one form in which a played line is read, be it notation, MIDI or a recording."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from statistics import median
from typing import Final

from fioritura.listening.notes import InflectionKind, Take
from fioritura.theory.metre import THIRTYSECOND
from fioritura.tune import Mark, Note

__all__ = ["Event", "events_of_line", "events_of_take"]

GRACE_TICKS: Final = THIRTYSECOND // 2
"""How long a written grace note is taken to last; it ends where its main note begins."""

LONG_SEC: Final = 0.8
"""A note of this length can carry vibrato."""
_HABIT_SHARE: Final = 0.34
_FAINT_DB: Final = 22.0

_MARK_OF: Final = {
    InflectionKind.SCOOP: Mark.SCOOP,
    InflectionKind.FALL: Mark.FALL,
    InflectionKind.DOIT: Mark.DOIT,
}


@dataclass(frozen=True, slots=True)
class Event:
    """One sounding note of a played line. `onset` and `duration` are in ticks or in seconds, as the line is.

    `source` is the number of the line's note that it comes from: a written grace note that of its main note.
    `is_grace` is True for a written grace note; in a recording short notes are just short. `confidence` (0 to 1) says
    how clearly the note was heard, `apartness` how sure it is that it does not just go on from the one before.
    """

    onset: float
    duration: float
    midi: int
    source: int
    is_grace: bool = False
    marks: frozenset[Mark] = frozenset()
    confidence: float = 1.0
    apartness: float = 1.0

    @property
    def end(self) -> float:
        """Where the note stops."""
        return self.onset + self.duration


def events_of_line(line: Sequence[Note]) -> list[Event]:
    """The events of a written line, in ticks; grace notes stand before their main note."""
    return [event for number, note in enumerate(line) for event in _written(number, note)]


def _written(number: int, note: Note) -> Iterator[Event]:
    count = len(note.graces)
    for place, grace in enumerate(note.graces):
        onset = note.onset_ticks - (count - place) * GRACE_TICKS
        yield Event(onset, GRACE_TICKS, grace.midi, number, is_grace=True)
    yield Event(note.onset_ticks, note.duration_ticks, note.pitch.midi, number, marks=frozenset(note.marks))


def events_of_take(take: Take) -> list[Event]:
    """The events of a recording, in seconds; scoops, falls, doits and vibrato become signs.

    Vibrato on a third of the long notes or more is the player's tone, and no sign. What is far softer than the notes of the take
    is a tail or a noise, and no note. A note with faint attacks is parted there, with little apartness.
    """
    usual_db = median(note.level_db for note in take.notes) if take.notes else 0.0
    long_notes = [note for note in take.notes if note.duration_sec >= LONG_SEC]
    is_tone = sum(note.vibrato is not None for note in long_notes) >= _HABIT_SHARE * len(long_notes)
    found: list[Event] = []
    for number, note in enumerate(take.notes):
        if note.level_db < usual_db - _FAINT_DB:
            continue
        marks = {_MARK_OF[one.kind] for one in note.inflections if one.kind in _MARK_OF}
        if note.vibrato is not None and not is_tone:
            marks.add(Mark.VIBRATO)
        sure = note.confidence, note.apartness
        whole = Event(note.onset_sec, note.duration_sec, note.midi, number, False, frozenset(marks), *sure)
        found += _parted(whole, note.faint_attacks)
    return found


def _parted(whole: Event, attacks: Sequence[tuple[float, float]]) -> Iterator[Event]:
    """The event up to the first attack, and what follows each; signs stay with the first part."""
    edges = [*(onset for onset, _ in attacks), whole.end]
    yield replace(whole, duration=edges[0] - whole.onset)
    for (onset, apartness), end in zip(attacks, edges[1:], strict=True):
        yield replace(whole, onset=onset, duration=end - onset, marks=frozenset(), apartness=apartness)
