"""The exercise sheets: hard places drilled, sight-reading variants, and staves to write on, with answers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from typing import Final

from fioritura.accompany.excerpt import excerpt
from fioritura.lesson.drill import Cell, around_the_keys, cell_at, isolated, rhythm_names, rhythms
from fioritura.lesson.example import Example
from fioritura.lesson.geometry import tinted
from fioritura.lesson.handout import TINT, example_engraving, hard_place_heading
from fioritura.lesson.lesson import Drawn, Engraving, Lesson
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.page import (
    Block,
    Bullets,
    Caption,
    Columns,
    Document,
    Heading,
    Keep,
    Music,
    PageBreak,
    Paragraph,
    Run,
    Table,
    Text,
    TitleBlock,
)
from fioritura.notation.engraving.sheet import COMPARISON_STAFF_MM, LINE_STAFF_MM
from fioritura.notation.score import Score, Staff
from fioritura.players.playability import HardPlace
from fioritura.players.setting import Setting
from fioritura.tune import Tune
from fioritura.words import Message, language_tag, message, say

__all__ = ["exercise_document", "exercise_engravings"]

_TURNS: Final = 4
_READING_BARS: Final = 8
_READING_SEEDS: Final = (11, 12, 13)
_DRILL_STAFF_MM: Final = 5.6
_GUTTER_MM: Final = 8.0


def exercise_engravings(lesson: Lesson) -> list[Engraving]:
    """The music of the exercise sheets."""
    found: list[Engraving] = []
    for place in lesson.hard_places:
        found += _drills(lesson, place).values()
    found += _readings(lesson)
    for example in _turns(lesson):
        found += (_blank(lesson, example), example_engraving(lesson, example))
    return found


def exercise_document(lesson: Lesson, drawn: Drawn) -> Document:
    """The exercise sheets as a document; `drawn` holds its `exercise_engravings`."""
    title = say(message("exercises-title"))
    blocks: list[Block] = [
        TitleBlock(lesson.title, title, lesson.instrument_line, lesson.composer),
        Paragraph(say(message("exercises-intro"))),
    ]
    for number, place in enumerate(lesson.hard_places, start=1):
        blocks += _place(lesson, number, place, drawn)
    blocks += _opening(message("exercises-reading"), message("exercises-reading-intro"))
    for number, reading in enumerate(_readings(lesson), start=1):
        systems = drawn[reading]
        blocks.append(Caption(say(message("exercises-reading-variant", number=number))))
        blocks.append(Music(systems, 5.0))
    turns = _turns(lesson)
    blocks += _opening(message("exercises-turn"), message("exercises-turn-intro"))
    blocks += [
        _turn(lesson, number, example, drawn, is_answer=False) for number, example in enumerate(turns, start=1)
    ]
    blocks += _opening(message("exercises-answers"), message("exercises-answers-intro"))
    blocks += [_turn(lesson, number, example, drawn, is_answer=True) for number, example in enumerate(turns, start=1)]
    footer = f"{lesson.title} · {title}"
    return Document(lesson.title, tuple(blocks), lesson.composer, footer, lesson.paper, language_tag())


def _opening(heading: Message, intro: Message) -> tuple[Block, ...]:
    return PageBreak(), Heading(say(heading)), Paragraph(say(intro))


def _cell(lesson: Lesson, place: HardPlace) -> Cell:
    return cell_at(lesson.tune, lesson.rendition.line, lesson.onset_of(place))


def _drills(lesson: Lesson, place: HardPlace) -> dict[str, Engraving]:
    """The drills of a place by name."""
    cell = _cell(lesson, place)
    half = (lesson.width_mm - _GUTTER_MM) / 2
    found = {"isolated": _engraving(lesson, isolated(cell), half)}
    for name in rhythm_names(cell.metre):
        found[name] = _engraving(lesson, rhythms(cell, name), half)
    found["keys"] = _engraving(lesson, around_the_keys(cell, lesson.instrument), lesson.width_mm)
    return found


def _engraving(lesson: Lesson, tune: Tune, width_mm: float) -> Engraving:
    score = Score(tune, (Staff(tune.notes, "", lesson.instrument),))
    return Engraving(score, width_mm, _DRILL_STAFF_MM, shows_tempo=False)


def _place(lesson: Lesson, number: int, place: HardPlace, drawn: Drawn) -> Iterator[Block]:
    drills = _drills(lesson, place)
    if number > 1:
        yield PageBreak()
    yield Heading(f"{number}  {hard_place_heading(lesson, place)}")
    yield Paragraph(say(place.why))
    yield Bullets(tuple(map(say, place.practice)))
    cells = [(say(message(f"exercises-drill-{name}")), drawn[drills[name]]) for name in drills if name != "keys"]
    for pair in _pairs(cells):
        yield Columns(tuple((Caption(caption), Music(systems)) for caption, systems in pair), (1.0, 1.0), _GUTTER_MM)
    yield Caption(say(message("exercises-keys")))
    yield Music(drawn[drills["keys"]], 4.5)
    row: tuple[Text, ...] = tuple("☐" for _ in place.tempos)
    header = tuple(lesson.tempo_text(tempo) for tempo in place.tempos)
    yield Keep((Caption(say(message("exercises-tempos"))), Table(header, (row,))))


def _pairs(cells: list[tuple[str, tuple[System, ...]]]) -> Iterator[tuple[tuple[str, tuple[System, ...]], ...]]:
    """Two by two; an empty cell at the end where one is missing."""
    filled = [*cells, ("", ())] if len(cells) % 2 else cells
    yield from zip(filled[::2], filled[1::2], strict=True)


@lru_cache(maxsize=4)
def _readings_of(tune: Tune, setting: Setting) -> tuple[Tune, ...]:
    from fioritura.arrange.arranger import ornament

    numbers = list(dict.fromkeys(bar.number for bar in tune.bars if not bar.endings))
    count = min(_READING_BARS, len(numbers))
    found = []
    for place, seed in enumerate(_READING_SEEDS):
        start = min(place * count, max(len(numbers) - count, 0))
        other = ornament(tune, setting, seed=seed)
        whole = replace(tune, notes=other.line)
        cut = excerpt(whole, numbers[start], numbers[start + count - 1])
        found.append(replace(cut, title="", composer=""))
    return tuple(found)


def _readings(lesson: Lesson) -> list[Engraving]:
    found = []
    for tune in _readings_of(lesson.once, lesson.setting):
        score = Score(tune, (Staff(tune.notes, "", lesson.instrument),))
        found.append(Engraving(score, lesson.width_mm, LINE_STAFF_MM))
    return found


def _turns(lesson: Lesson) -> list[Example]:
    """Examples to write oneself: those the performance uses, in different bars, easiest first."""
    chosen: list[Example] = []
    for example in sorted(lesson.examples, key=lambda example: not example.bars):
        if all(example.first_bar != other.first_bar for other in chosen):
            chosen.append(example)
    return sorted(chosen[:_TURNS], key=lambda example: example.number)


def _blank(lesson: Lesson, example: Example) -> Engraving:
    """The plain phrase over an empty staff."""
    plain, own = say(message("line-plain")), say(message("exercises-yours"))
    staves = (
        Staff(example.tune.notes, plain, lesson.instrument),
        Staff((), own, lesson.instrument, shows_chords=False, shows_rests=False),
    )
    return Engraving(Score(example.tune, staves), lesson.width_mm, COMPARISON_STAFF_MM + 0.9, shows_tempo=False)


def _turn(lesson: Lesson, number: int, example: Example, drawn: Drawn, *, is_answer: bool) -> Keep:
    shift = next(b.start_ticks for b in lesson.tune.bars if b.number == example.first_bar)
    where = lesson.tune.position_at(example.mark + shift)
    if not is_answer:
        name, inside = lesson.of(example.technique, "name"), where.bar_message.form("at")
        task = say(message("exercises-turn-task", technique=name, bar=inside, where=where))
        heading: Text = (Run(f"{number}  ", bold=True), Run(task))
        return Keep((Paragraph(heading), Music(drawn[_blank(lesson, example)])))
    systems = drawn[example_engraving(lesson, example)]
    marked = tuple(tinted(system, 2, example.figure_notes, TINT) for system in systems)
    name, bar = lesson.heading(example.technique), say(where.bar_message)
    heading = (Run(f"{number}  ", bold=True), Run(name), Run(f"  {bar}", italic=True))
    return Keep((Paragraph(heading), Music(marked), Paragraph(lesson.of(example.technique, "text"))))
