"""The handout: tune, techniques with examples from it, summary, performance, practice plan and cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from fioritura.lesson.example import Example, example_score
from fioritura.lesson.geometry import tinted
from fioritura.lesson.lesson import Drawn, Engraving, Lesson, figure_labels, figure_legend
from fioritura.notation.engraving.page import (
    Block,
    Bullets,
    Caption,
    Caution,
    Columns,
    Contents,
    Document,
    Heading,
    Keep,
    LeadSheet,
    Music,
    PageBreak,
    Paragraph,
    Run,
    Small,
    Table,
    Text,
    TitleBlock,
)
from fioritura.notation.engraving.sheet import LINE_STAFF_MM, bar_numbers
from fioritura.notation.score import Score, Staff
from fioritura.players.playability import HardPlace
from fioritura.theory.position import Position
from fioritura.words import Message, capital, language_tag, message, say

__all__ = [
    "bars_text",
    "example_engraving",
    "handout",
    "handout_engravings",
    "hard_place_heading",
    "performance_score",
]

EXAMPLE_STAFF_MM: Final = 6.0
TINT: Final = "#e3e3e3"
_A_SESSION: Final = 4
"""Techniques of a session: three to five where there are so many (common practice)."""


def handout_engravings(lesson: Lesson) -> list[Engraving]:
    """The music of the handout."""
    return [_plain(lesson), _performance(lesson), *(example_engraving(lesson, each) for each in lesson.examples)]


def handout(lesson: Lesson, drawn: Drawn) -> Document:
    """The handout as a document; `drawn` holds its `handout_engravings`."""
    blocks = [
        *_opening(lesson, drawn),
        *_techniques(lesson, drawn),
        *_summary(lesson),
        *_chart(lesson, drawn),
        *_plan(lesson),
        *_care(lesson),
    ]
    footer = " · ".join(part for part in (lesson.title, lesson.overrides.get("studio")) if part)
    return Document(lesson.title, tuple(blocks), lesson.composer, footer, lesson.paper, language_tag())


def bars_text(first: int, last: int) -> str:
    """``"bar 3"``, ``"bars 3–5"``, ``"the pickup"`` for bar 0."""
    if first == last:
        return say(Position(first, 1, is_pickup=first == 0).bar_message)
    if first == 0:
        return say(message("bars-from-pickup", last=last))
    return say(message("bars-span", first=first, last=last))


def example_engraving(lesson: Lesson, example: Example, width_mm: float | None = None) -> Engraving:
    """An example's two staves, as wide as the page or as given."""
    names = (say(message("line-plain")), say(message("line-ornamented")))
    score = example_score(example, lesson.instrument, lesson.of(example.technique, "label"), names)
    return Engraving(score, width_mm or lesson.width_mm, EXAMPLE_STAFF_MM, shows_tempo=False)


def performance_score(lesson: Lesson) -> Score:
    """The ornamented line with its labels."""
    rendition = lesson.rendition
    labels = figure_labels(lesson, rendition)
    return Score(lesson.tune, (Staff(rendition.line, "", lesson.instrument, labels),))


def _plain(lesson: Lesson) -> Engraving:
    score = Score(lesson.once, (Staff(lesson.once.notes, "", lesson.instrument),))
    return Engraving(score, lesson.width_mm, LINE_STAFF_MM)


def _performance(lesson: Lesson) -> Engraving:
    return Engraving(performance_score(lesson), lesson.width_mm, LINE_STAFF_MM)


def _opening(lesson: Lesson, drawn: Drawn) -> Iterator[Block]:
    own = lesson.overrides
    title = TitleBlock(lesson.title, lesson.subtitle, lesson.instrument_line, lesson.composer)
    closing: list[Block] = []
    notes = [part.strip() for part in own.get("notes").split("\n\n") if part.strip()]
    if notes:
        closing += [Caution((Run(f"{say(message('handout-notes'))}. ", bold=True), Run(part))) for part in notes[:1]]
        closing += [Caution(part) for part in notes[1:]]
    closing.append(Contents(say(message("handout-contents"))))
    foot = tuple(Small(own.get(name)) for name in ("student", "studio") if own.get(name))
    yield LeadSheet((title,), drawn[_plain(lesson)], tuple(closing), foot)
    yield PageBreak()


def _techniques(lesson: Lesson, drawn: Drawn) -> Iterator[Block]:
    yield Heading(say(message("handout-techniques")))
    yield Paragraph(say(message("handout-techniques-intro")))
    for example in lesson.taught:
        yield _section(lesson, example, drawn)
    others = lesson.examples[len(lesson.taught) :]
    if others:
        yield Heading(say(message("handout-others")))
        yield Paragraph(say(message("handout-others-intro")))
        for example in others:
            yield _section(lesson, example, drawn)


def _section(lesson: Lesson, example: Example, drawn: Drawn) -> Keep:
    """One technique: what it is, an example from the tune, how, when, fault and cure."""
    technique = example.technique
    systems = drawn[example_engraving(lesson, example)]
    marked = tuple(tinted(system, 2, example.figure_notes, TINT) for system in systems)
    place = bars_text(example.first_bar, example.last_bar)
    left = _field(message("handout-how"), lesson.of(technique, "how")) + _field(
        message("handout-fault"), lesson.of(technique, "fault")
    )
    right = _field(message("handout-when"), lesson.of(technique, "when")) + _field(
        message("handout-cure"), lesson.of(technique, "cure")
    )
    level = say(message("lesson-level", level=technique.level))
    return Keep(
        (
            Heading(f"{example.number}  {lesson.heading(technique)}", 2),
            Paragraph((Run(lesson.of(technique, "text")), Run(f"  {level}", italic=True))),
            Caption(f"{capital(place)}. {say(example.figure.why)}"),
            Music(marked),
            Columns((left, right)),
        )
    )


def _field(name: Message, text: str) -> tuple[Block, ...]:
    return (Paragraph((Run(f"{say(name)}. ", bold=True), Run(text))),)


def _summary(lesson: Lesson) -> Iterator[Block]:
    yield PageBreak()
    yield Heading(say(message("handout-summary")))
    rows: list[tuple[Text, ...]] = []
    for example in lesson.examples:
        technique = example.technique
        rows.append(
            (
                str(example.number),
                lesson.heading(technique),
                (Run(lesson.of(technique, "label"), italic=True),),
                str(technique.level),
                lesson.of(technique, "text"),
                str(example.places),
                bar_numbers(example.bars) or "–",
            )
        )
    names = ("technique", "label", "level", "what", "places", "used")
    header = ("", *(say(message(f"handout-column-{name}")) for name in names))
    yield Table(header, tuple(rows), (0, 3, 1.9, 0, 5, 0, 1.6), is_dense=True)
    yield Small(say(message("handout-summary-intro")))


def _chart(lesson: Lesson, drawn: Drawn) -> Iterator[Block]:
    opening = (
        Heading(say(message("handout-performance"))),
        Paragraph((Run(f"{lesson.title} · {lesson.instrument_line}", italic=True),)),
        *((Small(" · ".join(map(say, plan.told))),) if (plan := lesson.rendition.plan) else ()),
    )
    yield LeadSheet(opening, drawn[_performance(lesson)], figure_legend(lesson, lesson.rendition))
    yield PageBreak()


def _plan(lesson: Lesson) -> Iterator[Block]:
    written = lesson.tune.key.transposed(lesson.instrument.transposition)
    steps = ("tone", "plain", "technique", "place", "play")
    yield Heading(say(message("handout-plan")))
    yield Heading(say(message("handout-plan-each")), 2)
    yield Bullets(tuple(say(message(f"handout-step-{step}", key=written)) for step in steps), is_numbered=True)
    yield Heading(say(message("handout-sessions")), 2)
    names = ("session", "new", "again", "tempo", "done")
    header = tuple(say(message(f"handout-session-{name}")) for name in names)
    yield Table(header, tuple(_sessions(lesson)), (0, 4, 1.2, 0, 0))
    if lesson.hard_places:
        yield Heading(say(message("handout-hard")), 2)
        yield Columns(tuple(_hard_place(lesson, place) for place in lesson.hard_places), space_mm=6.0)


def _hard_place(lesson: Lesson, place: HardPlace) -> tuple[Block, ...]:
    return (
        Heading(hard_place_heading(lesson, place), 3),
        Paragraph(say(place.why)),
        Bullets(tuple(map(say, place.practice))),
    )


def hard_place_heading(lesson: Lesson, place: HardPlace) -> str:
    """``"Bar 5, beat 2"``."""
    return capital(say(lesson.position_of(place).message.form("full")))


def _sessions(lesson: Lesson) -> Iterator[tuple[Text, ...]]:
    """Number, new techniques, numbers of those to play again, tempo and an empty box for each session."""
    groups = _shared_out(lesson.taught, max(1, round(len(lesson.taught) / _A_SESSION)))
    ladder = lesson.ladder
    again = "–"
    for number, group in enumerate(groups):
        tempo = ladder[min(number * len(ladder) // len(groups), len(ladder) - 1)]
        names = ", ".join(f"{example.number} {lesson.heading(example.technique)}" for example in group)
        if number and number == len(groups) - 1:
            again = say(message("handout-again-all"))
        yield str(number + 1), names, again, lesson.tempo_text(tempo), "☐"
        again = "–".join(dict.fromkeys(str(group[place].number) for place in (0, -1)))


def _shared_out(examples: Sequence[Example], count: int) -> list[Sequence[Example]]:
    bounds = [round(len(examples) * n / count) for n in range(count + 1)]
    return [examples[start:end] for start, end in pairwise(bounds)]


def _care(lesson: Lesson) -> Iterator[Block]:
    yield Keep((Heading(say(message("handout-care")), 2), *map(Caution, lesson.cautions)))
