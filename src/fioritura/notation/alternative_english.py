"""A staff told in English: ``"bar 2: A5 dotted half with a grace note G sharp 5 before it; quarter rest."``

All words stand in `TERMS`; names of values and signs are the trade's.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from fioritura.notation.alternative import BarAlternative, EventAlternative, StaffAlternative
from fioritura.theory.pitch import Pitch
from fioritura.tune import Jump, Mark

__all__ = ["TERMS", "in_english"]

TERMS: Final[Mapping[object, str]] = {
    ("value", 1): "whole",
    ("value", 2): "half",
    ("value", 4): "quarter",
    ("value", 8): "eighth",
    ("value", 16): "sixteenth",
    ("value", 32): "thirty-second",
    ("value", 64): "sixty-fourth",
    ("dots", 0): "{value}",
    ("dots", 1): "dotted {value}",
    ("tuplet", 2): "duplet {value}",
    ("tuplet", 3): "triplet {value}",
    ("tuplet", 4): "quadruplet {value}",
    ("tuplet", 5): "quintuplet {value}",
    ("tuplet", 6): "sextuplet {value}",
    ("tuplet", 7): "septuplet {value}",
    ("alter", -2): "{letter} double flat {octave}",
    ("alter", -1): "{letter} flat {octave}",
    ("alter", 0): "{letter}{octave}",
    ("alter", 1): "{letter} sharp {octave}",
    ("alter", 2): "{letter} double sharp {octave}",
    "note": "{pitch} {value}",
    "rest": "{value} rest",
    "bar rest": "whole-bar rest",
    "grace": "with a grace note {pitches} before it",
    "graces": "with grace notes {pitches} before it",
    "tie": "tied on",
    "chord": "chord {text}",
    "label": "figure {text}",
    "lyric": "sung “{text}”",
    Mark.STACCATO: "staccato",
    Mark.TENUTO: "tenuto",
    Mark.ACCENT: "accented",
    Mark.MARCATO: "marcato",
    Mark.FERMATA: "with a fermata",
    Mark.BREATH: "breath mark after it",
    Mark.SLUR_START: "slur begins",
    Mark.SLUR_STOP: "slur ends",
    Mark.TRILL: "trill",
    Mark.TURN: "turn",
    Mark.INVERTED_TURN: "inverted turn",
    Mark.MORDENT: "mordent",
    Mark.INVERTED_MORDENT: "inverted mordent",
    Mark.ROLL: "roll",
    Mark.SHAKE: "shake",
    Mark.SCOOP: "scooped",
    Mark.FALL: "with a fall",
    Mark.DOIT: "with a doit",
    Mark.GHOST: "ghost note",
    Mark.VIBRATO: "vibrato",
    Jump.SEGNO: "segno",
    Jump.CODA: "coda sign",
    "pickup": "pickup",
    "bar": "bar {number}",
    "key": "key of {key}",
    "metre": "{metre} time",
    "repeat begins": "repeat begins",
    "endings": "ending {numbers}",
    "repeat": "repeat ends",
    "repeats": "repeat ends, played {count} times",
    "double bar": "double bar line",
    "staff": "{name}: {bars}",
    "unnamed staff": "staff {number}",
    "bar line": "{bar}: {events}.",
}
"""Every word of the renderer: by a kind and a number, by a sign, or by a name."""


def in_english(staves: Sequence[StaffAlternative]) -> str:
    """The bars of the staves in words, staff after staff; a staff alone is not named."""
    told = [" ".join(_bar(bar) for bar in staff.bars) for staff in staves]
    if len(told) == 1:
        return told[0]
    names = [
        staff.name or TERMS["unnamed staff"].format(number=number) for number, staff in enumerate(staves, start=1)
    ]
    return " ".join(TERMS["staff"].format(name=name, bars=bars) for name, bars in zip(names, told, strict=True))


def _bar(bar: BarAlternative) -> str:
    head = TERMS["bar"].format(number=bar.number) if bar.number else TERMS["pickup"]
    return TERMS["bar line"].format(bar=head, events="; ".join(_items(bar)).removesuffix("."))


def _items(bar: BarAlternative) -> Iterator[str]:
    if bar.key is not None:
        yield TERMS["key"].format(key=bar.key.display)
    if bar.metre is not None:
        yield TERMS["metre"].format(metre=bar.metre)
    if bar.opens_repeat:
        yield TERMS["repeat begins"]
    if bar.endings:
        yield TERMS["endings"].format(numbers=", ".join(map(str, bar.endings)))
    yield from (TERMS[jump] for jump, words in bar.jumps if not words)
    for event in bar.events:
        yield ", ".join(_event(event))
    if bar.repeats:
        yield TERMS["repeat" if bar.repeats == 1 else "repeats"].format(count=bar.repeats + 1)
    if bar.ends_section:
        yield TERMS["double bar"]
    yield from (words for _, words in bar.jumps if words)


def _event(event: EventAlternative) -> Iterator[str]:
    """What stands over an event, the event, and its signs; grace notes follow without a comma."""
    yield from (TERMS["chord"].format(text=text) for text in event.chords)
    yield from (TERMS["label"].format(text=text) for text in event.labels)
    value = TERMS["dots", event.dots].format(value=TERMS["value", event.value])
    if event.tuplet:
        value = TERMS["tuplet", event.tuplet[0]].format(value=value)
    if event.pitch is None:
        yield TERMS["bar rest"] if event.fills_bar else TERMS["rest"].format(value=value)
        return
    note = TERMS["note"].format(pitch=_pitch(event.pitch), value=value)
    if event.graces:
        pitches = ", ".join(map(_pitch, event.graces))
        note += " " + TERMS["grace" if len(event.graces) == 1 else "graces"].format(pitches=pitches)
    yield note
    yield from (TERMS[mark] for mark in event.marks)
    if event.ties_on:
        yield TERMS["tie"]
    if event.lyric:
        yield TERMS["lyric"].format(text=event.lyric)


def _pitch(pitch: Pitch) -> str:
    return TERMS["alter", pitch.alter].format(letter=pitch.letter, octave=pitch.octave)
