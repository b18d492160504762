"""A staff told in words: ``"bar 2: A5 dotted half with a grace note G sharp 5 before it; quarter rest."``"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fioritura.notation.alternative import BarAlternative, EventAlternative, StaffAlternative
from fioritura.theory.pitch import Pitch
from fioritura.words import Message, Value, message, say, verbatim

__all__ = ["told"]


def told(staves: Sequence[StaffAlternative]) -> str:
    """The bars of the staves in the language that is spoken, staff after staff; a staff alone is not named."""
    bars = [" ".join(map(_bar, staff.bars)) for staff in staves]
    if len(bars) == 1:
        return bars[0]
    names = [staff.name or message("told-unnamed-staff", number=number) for number, staff in enumerate(staves, 1)]
    heads = [say(message("told-staff", name=name)) for name in names]
    return " ".join(f"{head} {words}" for head, words in zip(heads, bars, strict=True))


def _bar(bar: BarAlternative) -> str:
    """A bar: its parts are put together here and not in a text, as a bar may hold a hundred notes."""
    head = say(message("told-bar", number=bar.number))
    return f"{head} {'; '.join(map(say, _items(bar))).removesuffix('.')}."


def _items(bar: BarAlternative) -> Iterator[Message]:
    if bar.key is not None:
        yield message("told-key", key=bar.key.message.form("inline"))
    if bar.metre is not None:
        yield message("told-metre", metre=str(bar.metre))
    if bar.opens_repeat:
        yield message("told-repeat-begins")
    if bar.endings:
        yield message("told-endings", numbers=", ".join(map(str, bar.endings)), count=len(bar.endings))
    for jump, words in bar.jumps:
        if not words:
            yield message("told-jump", jump=str(jump))
    yield from map(_event, bar.events)
    if bar.repeats:
        yield message("told-repeat-ends", count=bar.repeats + 1)
    if bar.ends_section:
        yield message("told-double-bar")
    yield from (verbatim(words) for _, words in bar.jumps if words)


def _event(event: EventAlternative) -> Message:
    """What stands over an event, the event, and its signs."""
    parts: list[Value] = [message("told-chord", text=text) for text in event.chords]
    parts += [message("told-label", text=text) for text in event.labels]
    value = message("told-value", value=event.value, dots=event.dots, tuplet=event.tuplet[0] if event.tuplet else 0)
    if event.pitch is None:
        parts.append(message("told-bar-rest") if event.fills_bar else message("told-rest", value=value))
        return message("told-event", parts=tuple(parts))
    note = message("told-note", pitch=_pitch(event.pitch), value=value)
    if event.graces:
        graces = tuple(map(_pitch, event.graces))
        note = message("told-note-with-graces", note=note, graces=graces, count=len(graces))
    parts.append(note)
    parts += [message("told-mark", mark=str(mark)) for mark in event.marks]
    if event.ties_on:
        parts.append(message("told-tie"))
    if event.lyric:
        parts.append(message("told-lyric", text=event.lyric))
    return message("told-event", parts=tuple(parts))


def _pitch(pitch: Pitch) -> Message:
    return message("told-pitch", letter=pitch.letter, alter=pitch.alter, octave=pitch.octave)
