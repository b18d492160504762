"""Played over plain, engraved: the named ornaments tinted, and the pitch as it sounded drawn behind the notes.

The line of pitch runs through the note heads of the played staff from onset to onset. Where the player is higher or
lower than the note, by the player's own tuning, it lies above or below the head: a semitone is a staff space, twice
what it is in notation, so that ten cents can be seen. It is drawn in one colour in tune, in others sharp and flat.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from statistics import median
from typing import Final

from fioritura.lesson.geometry import Layout, layout_of, tinted
from fioritura.listening.notes import CONTOUR_SEC, InflectionKind, PlayedNote
from fioritura.listening.rows import Status
from fioritura.notation.engraving.engrave import System, engrave_systems
from fioritura.notation.engraving.svg import STAFF_UNITS
from fioritura.review.colours import ADDED, DONE, FLAT, IN_TUNE, MISSED, SHARP, SLIP
from fioritura.review.played import Passage
from fioritura.review.take_review import Review

__all__ = ["IN_TUNE_CENTS", "passage_systems"]

STAFF_MM: Final = 5.6
IN_TUNE_CENTS: Final = 15.0
"""How far a note may lie off and still be drawn as in tune."""

_MOST_CENTS: Final = 220.0
_SPACE: Final = STAFF_UNITS / 4
_HEAD_WIDTH: Final = 225.0
_STRAY_CENTS: Final = 60.0
_LINE_WIDTH: Final = 70


def passage_systems(review: Review, passage: Passage, width_mm: float) -> tuple[System, ...]:
    """The staves of a passage, system by system.

    Raises:
        ToolError: the engraver is missing or failed.
    """
    drawn = engrave_systems(passage.score, width_mm=width_mm, staff_mm=STAFF_MM, shows_tempo=False)
    layouts = [layout_of(system) for system in drawn]
    traced = [
        replace(system, svg=_behind(system.svg, "".join(_traces(review, passage, layout))))
        for system, layout in zip(drawn, layouts, strict=True)
    ]
    return tuple(_with_tints(system, passage, review.report.is_asked) for system in traced)


def _with_tints(system: System, passage: Passage, is_asked: bool) -> System:
    for row, notes in passage.figures:
        system = tinted(system, 1, notes, ADDED if row.status is Status.ADDED and is_asked else DONE)
    for notes in passage.missed:
        system = tinted(system, 2, notes, MISSED)
    for number in passage.wrong:
        system = tinted(system, 1, (number,), SLIP)
    for number in passage.left_out:
        system = tinted(system, 2, (number,), SLIP)
    return system


def _behind(svg: str, drawing: str) -> str:
    start = svg.index(">") + 1
    return svg[:start] + drawing + svg[start:]


# The line of pitch ---------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Point:
    """An event on a system: when it begins, where its head stands, and what was heard."""

    seconds: float
    x: float
    y: float
    note: PlayedNote


def _traces(review: Review, passage: Passage, layout: Layout) -> Iterator[str]:
    points = sorted(_points(review, passage, layout), key=lambda point: point.seconds)
    right = layout.staves[0].right if layout.staves else layout.width
    ends = [*(point.x for point in points[1:]), right]
    steps = [(after.seconds - here.seconds) / max(after.x - here.x, 1) for here, after in pairwise(points)]
    usual = median(steps) if steps else 0.001
    for point, end in zip(points, ends, strict=True):
        after = next((other.seconds for other in points if other.seconds > point.seconds), None)
        last = after if after is not None else point.seconds + usual * (end - point.x)
        yield _trace(point, end, last, review.take.tuning_cents)


def _points(review: Review, passage: Passage, layout: Layout) -> Iterator[_Point]:
    staff, alignment = passage.score.staves[0], review.naming.alignment
    heads: list[tuple[float, int]] = []
    for number, note in enumerate(staff.line):
        box = layout.notes.get((1, number))
        if box is not None and not note.graces:
            heads.append(((box.top + box.bottom) / 2, _step(review, number, passage)))
    if not heads:
        return
    zero = median(y + step * _SPACE / 2 for y, step in heads)
    for (number, grace), event in passage.events.items():
        left = layout.heads.get((1, number))
        if left is None:
            continue
        box, note = layout.notes[1, number], staff.line[number]
        x = left if grace is None else box.left + (left - box.left) * grace / len(note.graces)
        y = zero - _step(review, number, passage, grace) * _SPACE / 2
        played = review.take.notes[alignment.events[event].source]
        yield _Point(played.onset_sec, x + _HEAD_WIDTH / 2, y, played)


def _step(review: Review, number: int, passage: Passage, grace: int | None = None) -> int:
    """The diatonic step of a sign as it is written."""
    note = passage.score.staves[0].line[number]
    pitch = review.instrument.written(note.pitch if grace is None else note.graces[grace])
    return pitch.step


def _trace(point: _Point, end_x: float, end_sec: float, tuning_cents: float) -> str:
    note = point.note
    home = 100.0 * (note.midi - 69) + tuning_cents
    off = note.pitch_cents - home
    first, last = _own_part(note)
    scale = (end_x - point.x) / max(end_sec - point.seconds, 1e-3)
    places = []
    for number, cents in enumerate(note.contour[:last]):
        if number < first:
            continue
        x = point.x + number * CONTOUR_SEC * scale
        if x > end_x:
            break
        away = max(-_MOST_CENTS, min(_MOST_CENTS, cents - home))
        places.append(f"{x:.0f} {point.y - away / 100 * _SPACE:.0f}")
    if len(places) < 2:
        return ""
    colour = IN_TUNE if abs(off) <= IN_TUNE_CENTS else SHARP if off > 0 else FLAT
    return (
        f'<path d="M{"L".join(places)}" fill="none" stroke="{colour}" stroke-width="{_LINE_WIDTH}" '
        'stroke-linecap="round" stroke-linejoin="round"/>'
    )


def _own_part(note: PlayedNote) -> tuple[int, int]:
    """First point and end of the contour without what still sounds of the note before, or already of the next."""
    near = [n for n, cents in enumerate(note.contour) if abs(cents - note.pitch_cents) < _STRAY_CENTS]
    if not near:
        return 0, 0
    keeps_end = note.inflection(InflectionKind.FALL) or note.inflection(InflectionKind.DOIT)
    first = 0 if note.inflection(InflectionKind.SCOOP) else near[0]
    return first, len(note.contour) if keeps_end else near[-1] + 1
