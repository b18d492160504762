"""Engraving for the page: whole arrangements in systems, and the little staves of single figures."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from fioritura.accompany.excerpt import excerpt
from fioritura.arrange.arrangement import Arrangement
from fioritura.arrange.rendition import Rendition, laid_out
from fioritura.lesson.edition import sounding_start
from fioritura.notation.engraving.engrave import System, engrave_systems
from fioritura.notation.engraving.svg import described
from fioritura.notation.score import Label, Score, Staff
from fioritura.techniques.figure import Figure
from fioritura.techniques.table import technique_named
from fioritura.tune import Note, Tune
from fioritura.web.engraver import Engraver
from fioritura.words import message, say

__all__ = ["PageSize", "bars_of", "engraved", "engraved_tune", "little_staff", "renamed"]

_NARROW_MM: Final = 130.0
"""On a page narrower than this the staves have no names."""

_LITTLE_MM: Final = 95.0
_LITTLE_STAFF_MM: Final = 5.5


@dataclass(frozen=True, slots=True)
class PageSize:
    """How large the page is: its width and a staff's height in millimetres."""

    width_mm: float
    staff_mm: float


def engraved(
    engraver: Engraver,
    arrangement: Arrangement,
    sheet: PageSize,
    other: Rendition | None = None,
    like: Sequence[System] = (),
) -> tuple[System, ...]:
    """Plain over ornamented, and under both another version where one is given; see `engrave_systems` for `like`."""
    rendition = arrangement.rendition
    staves = [_staff("plain", rendition), _staff("ornamented", rendition, rendition.line, _labels(rendition))]
    if other is not None:
        staves[1] = replace(staves[1], name=_staff_name("this"))
        staves.append(_staff("other", other, other.line, _labels(other)))
    if sheet.width_mm < _NARROW_MM:
        staves = [replace(staff, name="\N{NO-BREAK SPACE}") for staff in staves]
    score = Score(rendition.tune, tuple(staves))
    return engraver.engrave(score, sheet.width_mm, sheet.staff_mm, like)


def engraved_tune(tune: Tune, sheet: PageSize) -> tuple[System, ...]:
    """A tune alone, at sounding pitch."""
    score = Score(tune, (Staff(tune.notes),), is_concert=True)
    return engrave_systems(score, width_mm=sheet.width_mm, staff_mm=sheet.staff_mm)


def little_staff(tune: Tune, rendition: Rendition, figure: Figure) -> str:
    """One figure over the plain tune, on a staff of the bars it touches."""
    first, last = bars_of(tune, figure)
    line = excerpt(replace(tune, notes=laid_out(tune, (figure,))), first, last).notes
    part = excerpt(tune, first, last)
    staff = Staff(line, instrument=rendition.setting.instrument)
    systems = engrave_systems(
        Score(part, (staff,)), width_mm=_LITTLE_MM, staff_mm=_LITTLE_STAFF_MM, shows_tempo=False
    )
    return described(systems[0].svg, "", systems[0].words)


def bars_of(tune: Tune, figure: Figure) -> tuple[int, int]:
    """The printed numbers of the first and last bar that a figure and its plain notes touch."""
    ends = [note.onset_ticks + note.duration_ticks - 1 for note in figure.notes]
    places = [tune.notes[anchor].onset_ticks for anchor in figure.anchors] + ends + [sounding_start(tune, figure)]
    return tune.bar_at(min(places)).number, tune.bar_at(max(places)).number


def renamed(svg: str, prefix: str) -> str:
    """The SVG with a prefix before all its ids, so that it can stand on a page beside others."""
    return re.sub(r'(\sid="|href="#)', rf"\g<1>{prefix}", svg)


def _staff_name(line: str) -> str:
    return say(message("staff-name", line=line))


def _staff(
    name: str, rendition: Rendition, line: Sequence[Note] | None = None, labels: tuple[Label, ...] = ()
) -> Staff:
    notes = rendition.tune.notes if line is None else tuple(line)
    return Staff(notes, _staff_name(name), rendition.setting.instrument, labels, shows_chords=line is None)


def _labels(rendition: Rendition) -> tuple[Label, ...]:
    return tuple(
        Label(sounding_start(rendition.tune, figure), say(technique_named(figure.technique).label), number)
        for number, figure in enumerate(rendition.figures)
    )
