"""How loud each note of a line is played: contour, metre, phrase and signs (common practice of wind playing).

A line grows a little as it climbs, leans on strong beats (in swing on the eighths between them), and arches over
the phrase; accents stand out and ghost notes hide.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Feel, Mark, Note, Tune

__all__ = ["loudness_of", "phrase_spans"]

BASE: Final = 82
PER_SEMITONE: Final = 0.9
CONTOUR_LIMIT: Final = 9.0
METRE_SHARE: Final = 9.0
OFFBEAT_LIFT: Final = 5.0
ARCH: Final = 6.0
ARCH_PEAK: Final = 0.62
SIGN_LIFT: Final = {Mark.ACCENT: 16.0, Mark.MARCATO: 20.0, Mark.TENUTO: 3.0}
GHOST_SHARE: Final = 0.5


def phrase_spans(line: Sequence[Note]) -> list[tuple[int, int]]:
    """First and last note number of each phrase: parted by rests of an eighth and more, and by breath marks."""
    if not line:
        return []
    cuts = [
        number
        for number, (note, following) in enumerate(pairwise(line))
        if following.onset_ticks - note.end_ticks >= EIGHTH or Mark.BREATH in note.marks
    ]
    starts = [0, *(cut + 1 for cut in cuts)]
    return list(zip(starts, [*cuts, len(line) - 1], strict=True))


def loudness_of(tune: Tune, line: Sequence[Note], feel: Feel) -> list[float]:
    """A velocity of 1 to 127 for each note of the line, not yet rounded."""
    velocities: list[float] = []
    for first, last in phrase_spans(line):
        phrase = line[first : last + 1]
        centre = sum(note.pitch.midi for note in phrase) / len(phrase)
        start, length = phrase[0].onset_ticks, max(1, phrase[-1].onset_ticks - phrase[0].onset_ticks)
        for note in phrase:
            contour = (note.pitch.midi - centre) * PER_SEMITONE
            value = BASE + max(-CONTOUR_LIMIT, min(CONTOUR_LIMIT, contour))
            value += _metre_lift(tune, note, feel)
            value += ARCH * _arch((note.onset_ticks - start) / length) if len(phrase) > 2 else 0.0
            value += sum(SIGN_LIFT.get(mark, 0.0) for mark in note.marks)
            value *= GHOST_SHARE if Mark.GHOST in note.marks else 1.0
            velocities.append(max(1.0, min(127.0, value)))
    return velocities


def _metre_lift(tune: Tune, note: Note, feel: Feel) -> float:
    if feel == "swing" and note.onset_ticks % QUARTER:
        return OFFBEAT_LIFT
    return METRE_SHARE * (tune.strength_at(note.onset_ticks) - 0.5)


def _arch(share: float) -> float:
    """−0.5 at both ends of a phrase, 0.5 at its peak."""
    rise = share / ARCH_PEAK if share < ARCH_PEAK else (1.0 - share) / (1.0 - ARCH_PEAK)
    return rise - 0.5
