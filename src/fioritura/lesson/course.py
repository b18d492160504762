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
    """The five levels of a tune; the lesson's own level is its performance."""
    found: list[Stage] = []
    seen: set[str] = set()
    setting = lesson.setting
    for level in LEVELS:
        if level == setting.level:
            rendition = lesson.rendition
        else:
            player = Player.of(lesson.instrument.id, level)
            rendition = ornament(lesson.tune, setting.changed(player=player), seed=lesson.rendition.seed)
        used = dict.fromkeys(figure.technique for figure in rendition.figures)
        new = tuple(id for id in used if id not in seen)
        seen.update(new)
        found.append(Stage(level, rendition, new))
    return tuple(found)


def stage_score(lesson: Lesson, stage: Stage) -> Score:
    """The line of a level with its labels."""
    labels = figure_labels(lesson, stage.rendition)
    name = lesson.words.instrument(lesson.instrument)
    return Score(lesson.tune, (Staff(stage.rendition.line, name, lesson.instrument, labels),))


def stage_engraving(lesson: Lesson, stage: Stage) -> Engraving:
    """The music of a level's sheet."""
    return Engraving(stage_score(lesson, stage), lesson.width_mm, LINE_STAFF_MM)


def stage_document(lesson: Lesson, stage: Stage, drawn: Drawn) -> Document:
    """The sheet of a level."""
    words = lesson.words
    level = words("level", level=stage.level)
    opening = TitleBlock(lesson.title, level, lesson.instrument_line, lesson.composer)
    legend = figure_legend(lesson, stage.rendition)
    goal = Paragraph((Run(f"{words('course.goal')}. ", bold=True), Run(words(f"course.goal.{stage.level}"))))
    sheet = LeadSheet((opening, goal), drawn[stage_engraving(lesson, stage)], legend)
    footer = f"{lesson.title} · {level}"
    return Document(lesson.title, (sheet,), lesson.composer, footer, lesson.paper, words.language)


def course_document(lesson: Lesson, path: tuple[Stage, ...]) -> Document:
    """The plan of the weeks."""
    words = lesson.words
    blocks: list[Block] = [
        TitleBlock(lesson.title, words("course.title"), lesson.instrument_line, lesson.composer),
        Paragraph(words("course.intro", weeks=WEEKS * len(path))),
    ]
    header = tuple(words(f"course.{name}") for name in ("week", "level", "new", "tempo", "files", "done"))
    blocks.append(Table(header, tuple(_weeks(lesson, path)), (0, 0, 4, 0, 2.4, 0)))
    blocks.append(Heading(words("course.goals"), 2))
    for stage in path:
        blocks.append(
            Keep(
                (
                    Heading(words("level", level=stage.level), 3),
                    Paragraph(words(f"course.goal.{stage.level}")),
                )
            )
        )
    blocks.append(
        Keep((Heading(words("course.check"), 2), Bullets(tuple(words(f"course.check.{n}") for n in range(1, 5)))))
    )
    footer = f"{lesson.title} · {words('course.title')}"
    return Document(lesson.title, tuple(blocks), lesson.composer, footer, lesson.paper, words.language)


def _weeks(lesson: Lesson, path: tuple[Stage, ...]) -> Iterator[tuple[Text, ...]]:
    goal = lesson.ladder[-1]
    week = 0
    for stage in path:
        names = [lesson.of(technique_named(id), "name") for id in stage.new]
        half = -(-len(names) // 2)
        for share, group in zip(_TEMPO_SHARES, (names[:half], names[half:]), strict=True):
            week += 1
            new = ", ".join(group) or lesson.words("course.again")
            files = f"levels/level-{stage.level}"
            yield str(week), str(stage.level), new, lesson.tempo_text(round(goal * share)), files, "☐"
