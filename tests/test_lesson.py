"""The lesson's examples, handout and words."""

import io
import re
from collections import defaultdict
from itertools import pairwise
from typing import Any

import numpy as np
import pypdf
import pytest
from PIL import Image

from fioritura.arrange.prepare import prepared
from fioritura.arrange.survey import survey
from fioritura.errors import OptionError
from fioritura.lesson.example import bars_around, sounding_window
from fioritura.lesson.geometry import layout_of
from fioritura.lesson.handout import example_engraving, handout, handout_engravings
from fioritura.lesson.lesson import Lesson, drawn_here
from fioritura.lesson.overrides import parse_overrides
from fioritura.notation.engraving.page import Document, paper_mm
from fioritura.notation.engraving.typeset import pdf, pngs
from fioritura.techniques.table import technique_named
from fioritura.techniques.turn import TURN
from fioritura.words import message, say

from .lessons import demo_lesson, demo_tune

MM_PER_POINT = 25.4 / 72


@pytest.fixture(scope="module")
def lesson() -> Lesson:
    return demo_lesson()


@pytest.fixture(scope="module")
def document(lesson: Lesson) -> Document:
    return handout(lesson, drawn_here(handout_engravings(lesson)))


@pytest.fixture(scope="module")
def pages(document: Document) -> list[pypdf.PageObject]:
    return list(pypdf.PdfReader(io.BytesIO(pdf(document))).pages)


# Examples ------------------------------------------------------------------------------------------------------


def test_every_technique_on_offer_has_one_example_those_of_the_performance_first(lesson: Lesson) -> None:
    offered = {figure.technique for figure in survey(lesson.tune, lesson.setting).figures}
    shown = [example.technique.id for example in lesson.examples]
    assert sorted(shown) == sorted(offered)
    used = {figure.technique for figure in lesson.rendition.figures}
    assert [example.technique.id for example in lesson.taught] == [id for id in shown if id in used]
    for part in (lesson.taught, lesson.examples[len(lesson.taught) :]):
        levels = [example.technique.level for example in part]
        assert levels == sorted(levels)
    assert [example.number for example in lesson.examples] == list(range(1, len(shown) + 1))


def test_an_example_is_a_stretch_of_the_tune_with_one_figure(lesson: Lesson) -> None:
    for example in lesson.examples:
        bars = [bar for bar in lesson.tune.bars if example.first_bar <= bar.number <= example.last_bar]
        start, end = bars[0].start_ticks, bars[-1].end_ticks
        source = [note.pitch.midi for note in lesson.tune.notes if start <= note.onset_ticks < end]
        assert [note.pitch.midi for note in example.tune.notes] == source
        assert example.figure_notes, example.name
        # What the figure has not made or moved begins or ends where the plain note does.
        begins = {(note.onset_ticks, note.pitch) for note in example.tune.notes}
        ends = {(note.end_ticks, note.pitch) for note in example.tune.notes}
        for note in example.line:
            assert note.figures or (note.onset_ticks, note.pitch) in begins or (note.end_ticks, note.pitch) in ends
        assert example.line != example.tune.notes


def test_examples_do_not_play_on_over_a_repeat_sign(lesson: Lesson) -> None:
    tune = lesson.tune
    for figure in survey(tune, lesson.setting).figures[::5]:
        first, last = bars_around(tune, *sounding_window(tune, figure))
        inside = [bar for bar in tune.bars if first <= bar.number <= last]
        for bar, following in pairwise(inside):
            assert not bar.repeats
            assert not (bar.endings and following.endings and bar.endings != following.endings)


def test_the_figure_is_tinted_where_its_notes_are(lesson: Lesson) -> None:
    example = lesson.examples[-1]
    layout = layout_of(example_engraving(lesson, example).systems()[0])
    heads = [layout.heads[2, number] for number in example.figure_notes]
    assert heads == sorted(heads)
    box = layout.around(2, example.figure_notes)
    assert box is not None
    assert box.left <= heads[0]
    assert box.right >= heads[-1]
    others = set(range(len(example.line))) - set(example.figure_notes)
    assert not [n for n in others if heads[0] <= layout.heads[2, n] <= heads[-1]]


def test_examples_are_engraved_on_a_narrow_page_too(lesson: Lesson) -> None:
    for example in lesson.examples[::3]:
        systems = example_engraving(lesson, example, 92.0).systems()
        assert sum(system.bar_count for system in systems) == len(example.tune.bars)
        assert all(system.width_mm <= 92.5 for system in systems)


# The handout ---------------------------------------------------------------------------------------------------


def test_the_pdf_has_every_heading_and_every_text(lesson: Lesson, pages: list[pypdf.PageObject]) -> None:
    text = _squeezed("".join(page.extract_text() for page in pages))
    for id in ("techniques", "summary", "performance", "plan", "care", "hard"):
        assert _squeezed(say(message(f"handout-{id}"))) in text
    for example in lesson.examples:
        assert _squeezed(lesson.heading(example.technique)) in text
        for field in ("text", "how", "when", "fault", "cure"):
            assert _squeezed(lesson.of(example.technique, field)) in text, (example.name, field)
    for caution in lesson.cautions:
        assert _squeezed(caution) in text


def test_the_pdf_has_the_bar_number_of_each_system(lesson: Lesson, pages: list[pypdf.PageObject]) -> None:
    drawn = drawn_here(handout_engravings(lesson)[:2])
    first_page = pages[0].extract_text()
    chart = next(page.extract_text() for page in pages if page.extract_text().startswith("The performance"))
    for systems, text in zip(drawn.values(), (first_page, chart), strict=True):
        numbers = [system.first_bar for system in systems if system.first_bar not in ("0", "1")]
        assert len(numbers) >= 4
        for number in numbers:
            assert re.search(rf"(?<!\d){number}(?!\d)", text)


def test_the_summary_fits_on_one_page(pages: list[pypdf.PageObject], lesson: Lesson) -> None:
    texts = [_squeezed(page.extract_text()) for page in pages]
    (summary,) = [text for text in texts if text.startswith(_squeezed("All techniques at a glance"))]
    assert all(_squeezed(lesson.heading(example.technique)) in summary for example in lesson.examples)


def test_no_page_is_empty_and_nothing_stands_in_the_margins(document: Document) -> None:
    width_mm, _ = paper_mm(document.paper)
    for png in pngs(document, dots_per_inch=50):
        ink = np.array(Image.open(io.BytesIO(png)).convert("L")) < 128
        assert ink.mean() > 0.004
        margin = round(12 / width_mm * ink.shape[1])
        assert not ink[:, :margin].any()
        assert not ink[:, -margin:].any()
        assert not ink[: margin // 2].any()


def test_no_line_of_text_stands_over_another(pages: list[pypdf.PageObject]) -> None:
    """Lines that begin at the same place must be apart by most of the height of their letters."""
    for number, page in enumerate(pages, start=1):
        lines: dict[int, list[tuple[float, float]]] = defaultdict(list)

        def seen(
            text: str,
            matrix: list[float],
            text_matrix: list[float],
            font: Any,
            size: float,
            lines: dict[int, list[tuple[float, float]]] = lines,
        ) -> None:
            if text.strip() and font and "Libertinus" in str(font.get("/BaseFont", "")):
                scale = abs(matrix[3]) or 1.0
                x = matrix[0] * text_matrix[4] + matrix[4]
                y = matrix[3] * text_matrix[5] + matrix[5]
                lines[round(x)].append((round(y, 1), size * scale))

        page.extract_text(visitor_text=seen)
        for starts in lines.values():
            for (low, size), (high, _) in pairwise(sorted(set(starts))):
                assert high - low > 0.7 * size or high == low, f"page {number}"


def test_letter_paper_and_the_highest_level() -> None:
    from dataclasses import replace

    lesson = replace(demo_lesson("clarinet", 5), paper="letter")
    document = handout(lesson, drawn_here(handout_engravings(lesson)))
    reader = pypdf.PdfReader(io.BytesIO(pdf(document)))
    box = reader.pages[0].mediabox
    assert round(float(box.width) * MM_PER_POINT, 1) == 215.9  # ANSI A
    assert round(float(box.height) * MM_PER_POINT, 1) == 279.4
    starts = [_squeezed(page.extract_text()) for page in reader.pages]
    summary = next(n for n, text in enumerate(starts) if text.startswith(_squeezed("All techniques at a glance")))
    assert starts[summary + 1].startswith(_squeezed("The performance"))


def _squeezed(text: str) -> str:
    """Without spaces and hyphens, which line breaks change."""
    return re.sub(r"[\s\-\u00ad‐]+", "", text)


# The teacher's words ---------------------------------------------------------------------------------------------


OVERRIDES = """\
title: Lanterns for Anna
studio: Harbour Street Studio
notes: Learn the plain tune by heart.
    Then choose three ornaments.

    Bring a pencil.
# a remark
[turn]
how: Think of a small wave.
"""


def test_overrides_replace_title_notes_studio_line_and_texts() -> None:
    own = parse_overrides(OVERRIDES)
    lesson = demo_lesson(overrides=own)
    assert lesson.title == "Lanterns for Anna"
    assert lesson.of(technique_named(TURN.id), "how") == "Think of a small wave."
    assert lesson.of(technique_named(TURN.id), "when") == say(TURN.when)
    document = handout(lesson, drawn_here(handout_engravings(lesson)))
    first = pypdf.PdfReader(io.BytesIO(pdf(document))).pages[0].extract_text()
    for words in ("Lanterns for Anna", "Harbour Street Studio", "Then choose three ornaments.", "Bring a pencil."):
        assert words in first


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        ("colour: blue", "Line 1"),
        ("just words", "Line 1"),
        ("[no-such]\nhow: x", "no-such"),
        ("[turn]\ntitle: x", "Line 2"),
        (f"title: {'x' * 5000}", "5,000"),
    ],
)
def test_bad_overrides_are_named(text: str, complaint: str) -> None:
    with pytest.raises(OptionError, match=complaint):
        parse_overrides(text)


# The tune ---------------------------------------------------------------------------------------------------------


def test_the_demo_tune_is_left_as_it_was(lesson: Lesson) -> None:
    assert lesson.tune == prepared(demo_tune(), lesson.setting.player.instrument)
