"""Twenty tunes whose form is known, made for the tests: each is a plan of sections of four bars each, from material of
our own. A letter is new or heard before; a small letter after it marks another ending."""

from __future__ import annotations

import random
from dataclasses import replace

from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, Note, Tune

FORMS: dict[str, tuple[str, int]] = {
    "song": ("AABA", 8),
    "song, other endings": ("A A' B A'", 8),
    "song in three": ("AABA", 8),
    "two halves": ("ABAC", 8),
    "two halves, other ending": ("A B A B'", 8),
    "blues": ("AAB", 4),
    "blues with a turn": ("A A' B", 4),
    "reel": ("AABB", 8),
    "reel, other endings": ("A A' B B'", 8),
    "rondo": ("ABACA", 8),
    "verse and bridge": ("AAB", 8),
    "bar form": ("AABC", 8),
    "strains": ("AABBCC", 8),
    "march": ("A A' B B' A", 8),
    "short song": ("AABA", 4),
    "long song": ("AABA", 16),
    "through-composed": ("ABCD", 8),
    "double period": ("A A'", 8),
    "refrain": ("ABAB", 8),
    "coda": ("AABAC", 8),
}
"""Name: the sections in order, and how many bars each has."""

_CELLS: dict[str, tuple[tuple[float, ...], ...]] = {
    "4/4": ((1, 1, 1, 1), (1.5, 0.5, 1, 1), (2, 1, 1), (1, 1, 2), (0.5, 0.5, 1, 2), (1, 0.5, 0.5, 1, 1)),
    "3/4": ((1, 1, 1), (2, 1), (1.5, 0.5, 1), (1, 0.5, 0.5, 1)),
}
_CLOSES = {"4/4": (3.0, -1.0), "3/4": (2.0, -1.0)}


def sections_of(name: str) -> list[str]:
    """The sections of a form: letters, those with another ending with a dash."""
    plan = FORMS[name][0]
    return plan.split() if " " in plan else list(plan)


def form_tune(name: str) -> tuple[Tune, list[tuple[str, int, int]]]:
    """A tune of that form, and each section's letter with its first and last tick.

    Phrases of four bars close with a long note and a rest. Every third tune has a pickup to each section.
    """
    metre = Metre.parse("3/4" if "three" in name else "4/4")
    number = list(FORMS).index(name)
    length = FORMS[name][1]
    key = Key(number % 5 - 2, "major")
    bars: list[list[tuple[float, Pitch | None]]] = []
    spans = []
    pickup = number % 3 == 2
    for section in sections_of(name):
        letter = section[0]
        made = _section(f"{number}{letter}", length, metre, key)
        if section.endswith("'"):
            made[-1] = _section(f"{number}{section}", length, metre, key)[-1]
        spans.append((letter, len(bars) * metre.bar_ticks, (len(bars) + length) * metre.bar_ticks))
        bars += made
    frame = tuple(Bar(n + 1, n * metre.bar_ticks, metre.bar_ticks, metre, key) for n in range(len(bars)))
    notes = [note for bar, made in zip(frame, bars, strict=True) for note in _notes(bar.start_ticks, made)]
    tune = Tune(name, tuple(notes), frame)
    if pickup:
        tune = _with_pickups(tune, [start for _, start, _ in spans])
    return tune, spans


def _section(seed: str, length: int, metre: Metre, key: Key) -> list[list[tuple[float, Pitch | None]]]:
    dice = random.Random(seed)
    pitch = key.step(Pitch.parse("A4"), dice.randrange(-2, 3))
    made: list[list[tuple[float, Pitch | None]]] = []
    text = str(metre)
    for number in range(length):
        values = _CLOSES[text] if number % 4 == 3 else dice.choice(_CELLS[text])
        bar: list[tuple[float, Pitch | None]] = []
        for value in values:
            if value > 0:
                moved = key.step(pitch, dice.choice([-3, -2, -1, -1, 1, 1, 2, 3, 4, -4]))
                pitch = moved if 60 <= moved.midi <= 79 else key.step(pitch, 1 if pitch.midi < 69 else -1)
            bar.append((abs(value), pitch if value > 0 else None))
        made.append(bar)
    return made


def _notes(start: int, made: list[tuple[float, Pitch | None]]) -> list[Note]:
    notes, onset = [], start
    for value, pitch in made:
        ticks = int(value * QUARTER)
        if pitch is not None:
            notes.append(Note(onset, ticks, pitch))
        onset += ticks
    return notes


def _with_pickups(tune: Tune, starts: list[int]) -> Tune:
    """A quarter note before each section but the first, in the rest at the end of the section before it."""
    added = [Note(start - QUARTER, QUARTER, Pitch.parse("G4")) for start in starts if start]
    return replace(tune, notes=tuple(sorted((*tune.notes, *added), key=lambda note: note.onset_ticks)))
