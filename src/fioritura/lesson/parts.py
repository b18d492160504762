"""Parts for a class: the tune and its performance for each instrument, in an octave and a key that it reads well."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from fioritura.lesson.lesson import Drawn, Engraving, Lesson, figure_labels, figure_legend
from fioritura.notation.engraving.page import Block, Document, LeadSheet, Small, TitleBlock
from fioritura.notation.engraving.sheet import LINE_STAFF_MM, instrument_title
from fioritura.notation.score import Score, Staff
from fioritura.players.instruments import Instrument
from fioritura.theory.pitch import Interval
from fioritura.tune import Note, Tune, transpose
from fioritura.words import capital, language_tag, message, say

__all__ = ["CLASS_SET", "Part", "part_document", "part_engravings", "part_for", "part_scores"]

CLASS_SET: Final = (
    "concert",
    "soprano-sax",
    "alto-sax",
    "tenor-sax",
    "baritone-sax",
    "clarinet",
    "trumpet",
    "flute",
    "trombone",
)
"""Who is given a part unless others are asked for."""

_OCTAVES: Final = (0, -1, 1, -2, 2, -3, 3)
_DISCOMFORT: Final = 3.0
"""A third of the notes outside the comfortable range is as bad as an octave off the customary one."""


@dataclass(frozen=True)
class Part:
    """The tune `once`, and the ornamented line over the performance's `tune`, for one instrument; `octave` is counted from
    where it reads by custom."""

    instrument: Instrument
    once: Tune
    tune: Tune
    line: tuple[Note, ...]
    octave: int

    @property
    def name(self) -> str:
        """For file names."""
        return self.instrument.id


def part_for(lesson: Lesson, instrument: Instrument) -> Part | None:
    """The part of an instrument, or None where no octave holds all of the line.

    The octave is the one in which the instrument reads lead sheets by custom, unless notes lie outside its range
    there, or so many outside its comfortable range that another octave is worth the change.
    """
    custom = instrument.reading_octave - lesson.octave
    sounding = [p for note in (*lesson.tune.notes, *lesson.rendition.line) for p in (note.pitch, *note.graces)]
    best: tuple[float, int] | None = None
    for octave in _OCTAVES:
        moved = [pitch.midi + 12 * octave for pitch in sounding]
        if not all(instrument.lowest_midi <= midi <= instrument.highest_midi for midi in moved):
            continue
        cost = _DISCOMFORT * _outside_comfort(instrument, moved) + abs(octave - custom)
        if best is None or cost < best[0]:
            best = cost, octave
    if best is None:
        return None
    by = Interval(7 * best[1], 12 * best[1])
    ornamented = replace(lesson.tune, notes=lesson.rendition.line)
    once, tune = transpose(lesson.once, by), transpose(lesson.tune, by)
    return Part(instrument, once, tune, transpose(ornamented, by).notes, best[1] - custom)


def _outside_comfort(instrument: Instrument, midis: Sequence[int]) -> float:
    """The share of notes outside the comfortable range."""
    low, high = (
        pitch.midi - instrument.transposition.semitones
        for pitch in (instrument.comfortable_low, instrument.comfortable_high)
    )
    return sum(not low <= midi <= high for midi in midis) / max(len(midis), 1)


def part_scores(lesson: Lesson, part: Part) -> tuple[Score, Score]:
    """The plain tune and the performance, as written for the instrument."""
    labels = figure_labels(lesson, lesson.rendition)
    name = capital(say(part.instrument.name))
    plain = Score(part.once, (Staff(part.once.notes, name, part.instrument),))
    return plain, Score(part.tune, (Staff(part.line, name, part.instrument, labels),))


def part_engravings(lesson: Lesson, part: Part) -> list[Engraving]:
    """The music of a part's sheet: plain tune and performance."""
    return [Engraving(score, lesson.width_mm, LINE_STAFF_MM) for score in part_scores(lesson, part)]


def part_document(lesson: Lesson, part: Part, drawn: Drawn) -> Document:
    """The sheet of a part: the performance, then the plain tune."""
    plain, performance = part_engravings(lesson, part)
    title = instrument_title(part.instrument)
    blocks: list[Block] = [
        LeadSheet(
            (
                TitleBlock(lesson.title, say(message("handout-performance")), title, lesson.composer),
                *_remark(lesson, part),
            ),
            drawn[performance],
            figure_legend(lesson, lesson.rendition),
            (Small(lesson.overrides.get("rights", say(message("care-rights.short")))),),
        ),
        LeadSheet((TitleBlock(lesson.title, say(message("handout-plain")), title, lesson.composer),), drawn[plain]),
    ]
    footer = f"{lesson.title} · {title}"
    return Document(lesson.title, tuple(blocks), lesson.composer, footer, lesson.paper, language_tag())


def _remark(lesson: Lesson, part: Part) -> Iterator[Block]:
    if part.octave:
        direction = "lower" if part.octave < 0 else "higher"
        yield Small(say(message(f"part-octave-{direction}", octaves=abs(part.octave))))
