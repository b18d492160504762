"""What stands on a staff, as a value to be told in words: the alternative to its picture.

A staff is told bar by bar and event by event, in written pitch as its player reads it. Nothing here is language:
`fioritura.notation.alternative_words` makes the words.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fioritura.notation.rhythm import WrittenBar, WrittenEvent
from fioritura.notation.written_part import WrittenPart, chord_words, closing_jumps
from fioritura.theory.key import Key
from fioritura.theory.metre import Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Jump, Mark

__all__ = ["BarAlternative", "EventAlternative", "StaffAlternative", "staff_alternative"]


@dataclass(frozen=True, slots=True)
class EventAlternative:
    """A note value or a rest, whose `pitch` is None.

    `value` is the part of a whole note (4 a quarter) and `tuplet` its (actual, normal) numbers. `chords` and `labels` are
    the texts that stand over it, `graces` the notes before it, `marks` its signs. `ties_on` to the next event.
    """

    pitch: Pitch | None
    value: int
    dots: int = 0
    tuplet: tuple[int, int] | None = None
    fills_bar: bool = False
    ties_on: bool = False
    chords: tuple[str, ...] = ()
    labels: tuple[str, ...] = ()
    graces: tuple[Pitch, ...] = ()
    marks: tuple[Mark, ...] = ()
    lyric: str = ""


@dataclass(frozen=True, slots=True)
class BarAlternative:
    """A bar: its printed number, a key and metre where they are new, its signs of repetition, its events.

    `jumps` are words and signs with what is printed ("D.C. al Fine", nothing for a segno or coda).
    """

    number: int
    events: tuple[EventAlternative, ...]
    key: Key | None = None
    metre: Metre | None = None
    opens_repeat: bool = False
    repeats: int = 0
    endings: tuple[int, ...] = ()
    ends_section: bool = False
    jumps: tuple[tuple[Jump, str], ...] = ()


@dataclass(frozen=True, slots=True)
class StaffAlternative:
    """A staff's name, which may be empty, and its bars."""

    name: str
    bars: tuple[BarAlternative, ...]


def staff_alternative(part: WrittenPart) -> StaffAlternative:
    """A part as a value to be told."""
    return StaffAlternative(part.staff.name.strip(), tuple(_bars(part)))


def _bars(part: WrittenPart) -> Iterator[BarAlternative]:
    bars = part.tune.bars
    chords = [(span.onset_ticks, chord_words(span)) for span in part.tune.chords] if part.staff.shows_chords else []
    labels = sorted(((label.onset_ticks, label.text) for label in part.staff.labels), key=lambda label: label[0])
    for index, written in enumerate(part.bars):
        bar = written.bar
        signs = [(jump, "") for jump in bar.jumps if jump in (Jump.SEGNO, Jump.CODA)]
        yield BarAlternative(
            number=bar.number,
            events=tuple(_events(written, _within(chords, written), _within(labels, written))),
            key=bar.key if part.has_new_key(index) else None,
            metre=bar.metre if part.has_new_metre(index) else None,
            opens_repeat=bar.opens_repeat,
            repeats=bar.repeats,
            endings=bar.endings,
            ends_section=bar.ends_section,
            jumps=(*signs, *closing_jumps(bar, bars)) if part.number == 1 else (),
        )


_Texts = list[tuple[int, str]]


def _within(texts: _Texts, written: WrittenBar) -> _Texts:
    return [text for text in texts if written.bar.start_ticks <= text[0] < written.bar.end_ticks]


def _events(written: WrittenBar, chords: _Texts, labels: _Texts) -> Iterator[EventAlternative]:
    for event in written.events:
        note = event.note
        yield EventAlternative(
            pitch=note.pitch if note else None,
            value=event.value,
            dots=event.dots,
            tuplet=(event.tuplet.actual, event.tuplet.normal) if event.tuplet else None,
            fills_bar=event.fills_bar,
            ties_on=event.ties_on,
            chords=_over(event, chords),
            labels=_over(event, labels),
            graces=event.graces,
            marks=note.marks if note and event.piece == 0 else (),
            lyric=note.lyric if note and event.piece == 0 else "",
        )


def _over(event: WrittenEvent, texts: _Texts) -> tuple[str, ...]:
    return tuple(text for onset, text in texts if event.onset_ticks <= onset < event.end_ticks)
