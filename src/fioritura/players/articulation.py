"""How a line is tongued and slurred, and which of its notes are leaned on, held or cut short: the second pass over a
finished line, so that page and sound agree.

What a wind player does (common practice):

* Swing eighths are tongued off the beat and slurred onto it; a note off the beat that lasts over the beat is accented;
  one before a rest is short.
* A ballad and straight eighths are slurred by step within the bar; a repeated note is tongued, and held.
* Folk is slurred within the beat, seldom across it, and has no other signs.
* The same note twice is tongued; so are wide leaps, most first notes of a bar, and what follows a rest or a breath.
* What is too quick for the tongue is slurred.

Each phrase is divided into groups under one slur exactly, by a dynamic programme over the costs below. A line that has
articulations of its own keeps them and gets no others.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import inf
from typing import Final

from fioritura.paths import best_division
from fioritura.players.feel import GENTLE_BELOW
from fioritura.players.setting import Setting
from fioritura.theory.metre import EIGHTH, HALF, QUARTER
from fioritura.tune import Mark, Note, Tune

__all__ = ["articulated"]

_ARTICULATIONS: Final = frozenset({Mark.STACCATO, Mark.TENUTO, Mark.ACCENT, Mark.MARCATO})
_EFFECTS: Final = frozenset(
    {Mark.GHOST, Mark.FALL, Mark.DOIT, Mark.SCOOP, Mark.FERMATA, Mark.SHAKE, Mark.TRILL, Mark.ROLL}
)
"""Notes with these say already how they are played."""

_OWN_SHARE: Final = 0.04
"""A tune is articulated where so many of its notes are."""

_LONGEST_SLUR: Final = {1: 3, 2: 4, 3: 6, 4: 8, 5: 10}
"""Notes under one slur, by level."""

_EDGE: Final = 0.35
"""What a slur costs by itself."""

_MARKED_FROM: Final = {Mark.TENUTO: 2, Mark.STACCATO: 3, Mark.ACCENT: 3, Mark.MARCATO: 4}
"""From which level a sign is asked for."""


def articulated(tune: Tune, line: Sequence[Note], setting: Setting) -> tuple[Note, ...]:
    """A phrased line (see `phrasing.phrased`) with slurs and articulation signs for a player in a setting.

    Slurs of figures stay as they are.

    Examples:
        >>> import fioritura
        >>> tune = fioritura.demo_tune()
        >>> line = fioritura.ornament(tune, fioritura.Setting("alto-sax", level=3)).line
        >>> starts, stops = (sum(mark in note.marks for note in line) for mark in (Mark.SLUR_START, Mark.SLUR_STOP))
        >>> 0 < starts == stops
        True
    """
    if not line or _is_articulated(tune):
        return tuple(line)
    writing = _Writing(tune, tuple(line), setting)
    marks: list[tuple[Mark, ...]] = [note.marks for note in line]
    for first, last in _phrases(line):
        for start, stop in writing.groups(first, last):
            for number in range(start, stop):
                sign = writing.sign(number, is_first=number == start, is_last=number == stop - 1)
                marks[number] += (sign,) if sign else ()
            if stop - start > 1 and not writing.is_bound(start, stop):
                marks[start] += (Mark.SLUR_START,)
                marks[stop - 1] = (Mark.SLUR_STOP, *marks[stop - 1])
    return tuple(
        replace(note, marks=signs) if signs != note.marks else note for note, signs in zip(line, marks, strict=True)
    )


def _is_articulated(tune: Tune) -> bool:
    own = sum(bool(_ARTICULATIONS & set(note.marks)) or Mark.SLUR_START in note.marks for note in tune.notes)
    return own > _OWN_SHARE * len(tune.notes)


def _phrases(line: Sequence[Note]) -> Iterator[tuple[int, int]]:
    """First and last note number of each stretch without a rest or a breath inside a phrase."""
    first = 0
    for number, (note, following) in enumerate(pairwise(line)):
        parts = note.phrase != following.phrase or following.onset_ticks > note.end_ticks or Mark.BREATH in note.marks
        if parts:
            yield first, number
            first = number + 1
    yield first, len(line) - 1


class _Writing:
    """A line with what its joints and notes cost; joint n is between notes n and n + 1."""

    def __init__(self, tune: Tune, line: tuple[Note, ...], setting: Setting) -> None:
        self.tune, self.line, self.setting = tune, line, setting
        self.is_swung = setting.feel == "swing" and setting.quarters_per_minute >= GENTLE_BELOW
        self.bound: list[bool] = []
        """Joints under a slur that stands already."""
        is_open = False
        for note in line:
            is_open = Mark.SLUR_START in note.marks or (is_open and Mark.SLUR_STOP not in note.marks)
            self.bound.append(is_open)

    def is_bound(self, start: int, stop: int) -> bool:
        """True when a slur stands over some of these notes already."""
        return any(self.bound[start : stop - 1])

    def groups(self, first: int, last: int) -> list[tuple[int, int]]:
        """The cheapest division of notes into groups under one slur, as (start, stop)."""
        longest = _LONGEST_SLUR[self.setting.level]
        costs = [self._slurring(number) for number in range(first, last)]

        def ways_to(stop: int, totals: Sequence[float]) -> Iterator[tuple[int, float]]:
            """A group that is bound is just that; an unslurred note may stand alone."""
            cost = 0.0
            for start in range(stop - 1, -1, -1):
                here = first + start
                if start < stop - 1:
                    joint = costs[start]
                    if joint == inf:
                        return
                    cost += joint
                binds = [self.bound[number] for number in range(here, first + stop - 1)]
                cuts = (start and self.bound[here - 1]) or (first + stop - 1 < last and self.bound[first + stop - 1])
                if cuts or (any(binds) and not all(binds)):
                    continue
                if stop - start > longest and not any(binds):
                    return
                yield start, totals[start] + cost + (_EDGE if stop - start > 1 and not any(binds) else 0.0)

        return [(first + start, first + stop) for start, stop in best_division(last - first + 1, ways_to)]

    def _slurring(self, number: int) -> float:
        """What it costs to slur a note into the next, rather than to tongue it; infinite where it can't be."""
        note, following = self.line[number], self.line[number + 1]
        if self.bound[number]:
            return 0.0
        if note.pitch.midi == following.pitch.midi or Mark.SCOOP in following.marks:
            return inf
        seconds = self.setting.seconds(note.duration_ticks)
        if seconds < 1.0 / self.setting.player.limits.tongue_rate:
            return -3.0
        leap = abs(note.pitch.midi - following.pitch.midi)
        cost = 0.0 if leap <= 2 else 0.25 if leap <= 5 else 0.8 if leap <= 9 else 2.0
        cost += 0.5 if following.lyric and following.anchor is not None and following.anchor != note.anchor else 0.0
        cost += 0.5 if note.duration_ticks >= HALF else 0.0
        strength = self.tune.strength_at(following.onset_ticks)
        return cost + (
            self._in_swing(note, following) if self.is_swung else self._in_even_time(note, following, strength)
        )

    def _in_swing(self, note: Note, following: Note) -> float:
        """Off the beat onto the beat is slurred; from the beat off it, tongued."""
        if note.duration_ticks > EIGHTH:
            return 0.6
        goes_onto_beat = following.onset_ticks % QUARTER == 0
        is_off = note.onset_ticks % QUARTER != 0
        return -0.9 if is_off and goes_onto_beat else -0.2 if is_off else 0.45

    def _in_even_time(self, note: Note, following: Note, strength: float) -> float:
        """Within the bar and the beat rather than across; folk keeps to the beat."""
        across = {1.0: 1.1, 0.75: 0.35, 0.5: 0.2}.get(strength, 0.0)
        if self.setting.tradition == "folk":
            across *= 2.0
            return across - (0.45 if note.duration_ticks <= EIGHTH else 0.0)
        return across - (0.6 if note.duration_ticks <= QUARTER else 0.25)

    def sign(self, number: int, *, is_first: bool, is_last: bool) -> Mark | None:
        """The sign that a note of a group is worth, if the level asks for it."""
        note = self.line[number]
        if (
            self.setting.tradition == "folk"
            or _EFFECTS & set(note.marks)
            or (number and self.line[number - 1].end_ticks > note.onset_ticks)
        ):
            return None
        sign = (
            self._swung_sign(number, is_first, is_last)
            if self.is_swung
            else self._even_sign(number, is_first, is_last)
        )
        return sign if sign and self.setting.level >= _MARKED_FROM[sign] else None

    def _rest_after(self, number: int) -> int:
        following = self.line[number + 1].onset_ticks if number + 1 < len(self.line) else self.tune.duration_ticks
        return following - self.line[number].end_ticks

    def _swung_sign(self, number: int, is_first: bool, is_last: bool) -> Mark | None:
        note = self.line[number]
        is_off = note.onset_ticks % QUARTER == EIGHTH
        if is_off and note.duration_ticks >= QUARTER and is_first:
            return Mark.ACCENT
        stands_alone = is_last and self._rest_after(number) >= EIGHTH
        if stands_alone and note.duration_ticks <= EIGHTH:
            return (
                (Mark.MARCATO if is_first and self.setting.level >= _MARKED_FROM[Mark.MARCATO] else Mark.STACCATO)
                if is_off
                else None
            )
        if stands_alone and note.duration_ticks == QUARTER and not is_off and is_first:
            return Mark.STACCATO
        return None

    def _even_sign(self, number: int, is_first: bool, is_last: bool) -> Mark | None:
        """A note that is tongued on the pitch of the one before is held; so is the lone long first of a phrase."""
        note = self.line[number]
        again = number > 0 and self.line[number - 1].pitch.midi == note.pitch.midi
        joined = number > 0 and self.line[number - 1].end_ticks == note.onset_ticks
        if is_first and again and joined and EIGHTH <= note.duration_ticks <= HALF:
            return Mark.TENUTO
        return None
