"""The graded path: one tune at levels 1 to 5, a sheet for each, and a plan of the weeks with goals."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from fioritura.arrange.arranger import ornament
from fioritura.arrange.levels import LEVELS
from fioritura.arrange.rendition import Rendition
from fioritura.lesson.lesson import Drawn, Engraving, Lesson, figure_labels, figure_legend
from fioritura.notation.engraving.page import (
    Block,
    Bullets,
    Document,
    Heading,
    Keep,
    LeadSheet,
    Paragraph,
    Run,
    Table,
    Text,
    TitleBlock,
)
from fioritura.notation.engraving.sheet import LINE_STAFF_MM
from fioritura.notation.score import Score, Staff
from fioritura.players.player import Player
from fioritura.techniques.table import technique_named
from fioritura.words import capital, language_tag, message, say

__all__ = ["Stage", "course_document", "stage_document", "stage_engraving", "stage_score", "stages"]

WEEKS: Final = 2
"""Weeks that a level takes (common practice of weekly lessons)."""

_TEMPO_SHARES: Final = (0.75, 1.0)


@dataclass(frozen=True)
class Stage:
    """One level of the path: its rendition, and the techniques that no easier level has used."""

    level: int
    rendition: Rendition
    new: tuple[str, ...]


def stages(lesson: Lesson) -> tuple[Stage, ...]:
    """The five levels of a tune, once through; the lesson's own level is its performance where that goes over it once."""
    found: list[Stage] = []
    seen: set[str] = set()
    setting = lesson.setting
    for level in LEVELS:
        if level == setting.level and lesson.own is None:
            rendition = lesson.rendition
        else:
            player = Player.of(lesson.instrument.id, level)
            rendition = ornament(lesson.once, setting.changed(player=player), seed=lesson.rendition.seed)
        used = dict.fromkeys(figure.technique for figure in rendition.figures)
        new = tuple(id for id in used if id not in seen)
        seen.update(new)
        found.append(Stage(level, rendition, new))
    return tuple(found)


def stage_score(lesson: Lesson, stage: Stage) -> Score:
    """The line of a level with its labels."""
    labels = figure_labels(lesson, stage.rendition)
    name = capital(say(lesson.instrument.name))
    return Score(lesson.once, (Staff(stage.rendition.line, name, lesson.instrument, labels),))


def stage_engraving(lesson: Lesson, stage: Stage) -> Engraving:
    """The music of a level's sheet."""
    return Engraving(stage_score(lesson, stage), lesson.width_mm, LINE_STAFF_MM)


def stage_document(lesson: Lesson, stage: Stage, drawn: Drawn) -> Document:
    """The sheet of a level."""
    level = say(message("lesson-level", level=stage.level))
    opening = TitleBlock(lesson.title, level, lesson.instrument_line, lesson.composer)
    legend = figure_legend(lesson, stage.rendition)
    goal = Paragraph((Run(f"{say(message('course-goal'))}. ", bold=True), Run(_goal(stage))))
    sheet = LeadSheet((opening, goal), drawn[stage_engraving(lesson, stage)], legend)
    footer = f"{lesson.title} · {level}"
    return Document(lesson.title, (sheet,), lesson.composer, footer, lesson.paper, language_tag())


def course_document(lesson: Lesson, path: tuple[Stage, ...]) -> Document:
    """The plan of the weeks."""
    title = say(message("course-title"))
    blocks: list[Block] = [
        TitleBlock(lesson.title, title, lesson.instrument_line, lesson.composer),
        Paragraph(say(message("course-intro", weeks=WEEKS * len(path), folder="levels"))),
    ]
    names = ("week", "level", "new", "tempo", "files", "done")
    header = tuple(say(message(f"course-column-{name}")) for name in names)
    blocks.append(Table(header, tuple(_weeks(lesson, path)), (0, 0, 4, 0, 2.4, 0)))
    blocks.append(Heading(say(message("course-goals")), 2))
    for stage in path:
        level = say(message("lesson-level", level=stage.level))
        blocks.append(Keep((Heading(level, 3), Paragraph(_goal(stage)))))
    checks = tuple(say(message(f"course-check-{number}")) for number in range(1, 5))
    blocks.append(Keep((Heading(say(message("course-check")), 2), Bullets(checks))))
    footer = f"{lesson.title} · {title}"
    return Document(lesson.title, tuple(blocks), lesson.composer, footer, lesson.paper, language_tag())


def _goal(stage: Stage) -> str:
    return say(message(f"course-goal-{stage.level}"))


def _weeks(lesson: Lesson, path: tuple[Stage, ...]) -> Iterator[tuple[Text, ...]]:
    goal = lesson.ladder[-1]
    week = 0
    for stage in path:
        names = [lesson.heading(technique_named(id)) for id in stage.new]
        half = -(-len(names) // 2)
        for share, group in zip(_TEMPO_SHARES, (names[:half], names[half:]), strict=True):
            week += 1
            new = ", ".join(group) or say(message("course-again"))
            files = f"levels/level-{stage.level}"
            yield str(week), str(stage.level), new, lesson.tempo_text(round(goal * share)), files, "☐"
