"""How loud each note of a line is played: contour, metre, phrase and signs (common practice of wind playing).

A line grows a little as it climbs, leans on strong beats (in swing on the eighths between them), and arches over
the phrase; accents stand out and ghost notes hide. Added short notes are lighter than the tune that they adorn, and
grow towards its next note.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import LEVEL_MARKS, Feel, Mark, Note, Tune, hairpins

__all__ = ["loudness_of"]

BASE: Final = 82
"""Of a line without levels."""

LEVELS: Final = dict(zip(LEVEL_MARKS, (46.0, 58.0, 70.0, 82.0, 95.0, 108.0), strict=True))
HAIRPIN: Final = {Mark.CRESCENDO: 12.0, Mark.DIMINUENDO: -12.0}
"""What a hairpin comes to: a step of level."""

PER_SEMITONE: Final = 0.9
CONTOUR_LIMIT: Final = 9.0
METRE_SHARE: Final = 9.0
OFFBEAT_LIFT: Final = 5.0
ARCH: Final = 6.0
ARCH_PEAK: Final = 0.62
ADDED_DROP: Final = -9.0
ADDED_GROWTH: Final = 2.0
"""What an added short note loses, and how much of it each further one in a row regains."""

SIGN_LIFT: Final = {Mark.ACCENT: 16.0, Mark.MARCATO: 20.0, Mark.TENUTO: 3.0}
GHOST_SHARE: Final = 0.5


def loudness_of(tune: Tune, line: Sequence[Note], feel: Feel, phrases: Sequence[tuple[int, int]]) -> list[float]:
    """A velocity of 1 to 127 for each note of the line, not yet rounded; `phrases` are first and last note numbers.

    Levels and hairpins of the line are played as written. After a hairpin half of its way is kept until the next level.
    """
    velocities: list[float] = []
    added = 0
    bases = _bases(line)
    for first, last in phrases:
        phrase = line[first : last + 1]
        centre = sum(note.pitch.midi for note in phrase) / len(phrase)
        start, length = phrase[0].onset_ticks, max(1, phrase[-1].onset_ticks - phrase[0].onset_ticks)
        for note, base in zip(phrase, bases[first : last + 1], strict=True):
            contour = (note.pitch.midi - centre) * PER_SEMITONE
            value = base + max(-CONTOUR_LIMIT, min(CONTOUR_LIMIT, contour))
            value += _metre_lift(tune, note, feel)
            value += ARCH * _arch((note.onset_ticks - start) / length) if len(phrase) > 2 else 0.0
            added = added + 1 if _is_added(note) else 0
            value += min(0.0, ADDED_DROP + ADDED_GROWTH * (added - 1)) if added else 0.0
            value += sum(SIGN_LIFT.get(mark, 0.0) for mark in note.marks)
            value *= GHOST_SHARE if Mark.GHOST in note.marks else 1.0
            velocities.append(max(1.0, min(127.0, value)))
    return velocities


def _bases(line: Sequence[Note]) -> list[float]:
    """The level of each note, and how far the hairpin over it has come; the next level ends what a hairpin reached."""
    level, reached = float(BASE), 0.0
    closing = {stop: (start, HAIRPIN[kind]) for start, stop, kind in hairpins(line)}
    bases: list[float] = []
    for number, note in enumerate(line):
        for mark in note.marks:
            level, reached = (LEVELS[mark], 0.0) if mark in LEVELS else (level, reached)
        bases.append(level + reached)
        if number in closing:
            start, moved = closing[number]
            length = max(1, note.end_ticks - line[start].onset_ticks)
            for inside in range(start, number + 1):
                bases[inside] += moved * (line[inside].onset_ticks - line[start].onset_ticks) / length
            reached += moved / 2
    return bases


def _is_added(note: Note) -> bool:
    """True for a short note that a figure added to the tune."""
    return note.anchor is None and bool(note.figures) and note.duration_ticks <= EIGHTH


def _metre_lift(tune: Tune, note: Note, feel: Feel) -> float:
    if feel == "swing" and note.onset_ticks % QUARTER:
        return OFFBEAT_LIFT
    return METRE_SHARE * (tune.strength_at(note.onset_ticks) - 0.5)


def _arch(share: float) -> float:
    """−0.5 at both ends of a phrase, 0.5 at its peak."""
    rise = share / ARCH_PEAK if share < ARCH_PEAK else (1.0 - share) / (1.0 - ARCH_PEAK)
    return rise - 0.5
