"""Music told in words, and where the words stand in drawings and PDFs.

Outside references: ISO 32000-1 14.7 to 14.9 (tagged PDF, `Alt` of a figure), SVG 1.1 (`desc`), WAI-ARIA 1.2 (`img`).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

import pypdf
import pytest
from hypothesis import given, settings
from lxml import etree

import fioritura
from fioritura.notation.abc.reader import list_abc
from fioritura.notation.alternative import EventAlternative, StaffAlternative, staff_alternative
from fioritura.notation.alternative_words import told as in_words
from fioritura.notation.engraving.engrave import engrave_page, engrave_systems
from fioritura.notation.engraving.sheet import comparison_pdf
from fioritura.notation.engraving.svg import described
from fioritura.notation.score import Label, Score, Staff
from fioritura.notation.written_part import written_part
from fioritura.players.instruments import INSTRUMENTS
from fioritura.theory.pitch import Pitch
from fioritura.tune import Jump, Mark
from tests.notation_strategies import scores
from tests.scores import ornamented
from tests.test_mei import rich

WORDS = Path(fioritura.__file__).parent / "words"


def staff_of(abc: str, *labels: Label, instrument: str = "concert") -> StaffAlternative:
    tune = list_abc(abc)[0].read(irregular="keep")
    score = Score(tune, (Staff(tune.notes, "", INSTRUMENTS[instrument], labels),))
    return staff_alternative(written_part(score, 1))


def test_a_bar_is_told_event_by_event() -> None:
    abc = 'X:1\nM:4/4\nL:1/4\nK:C\n"C"CDEF|{^G}a3z|(3:2:3c/d/e/ !fermata!_B2-B|z4|]\n'
    assert in_words([staff_of(abc)]) == (
        "bar 1: key of C major; 4/4 time; chord C, C4 quarter; D4 quarter; E4 quarter; F4 quarter. "
        "bar 2: A5 dotted half with a grace note G sharp 4 before it; quarter rest. "
        "bar 3: C5 triplet eighth; D5 triplet eighth; E5 triplet eighth; B flat 4 dotted half, with a fermata. "
        "bar 4: whole-bar rest."
    )


def test_the_player_is_told_written_pitch() -> None:
    staff = staff_of("X:1\nM:4/4\nL:1/1\nK:Eb\nE|]\n", instrument="alto-sax")
    assert [event.pitch for event in staff.bars[0].events] == [Pitch.parse("C5")]
    assert in_words([staff]) == "bar 1: key of C major; 4/4 time; C5 whole."


def test_repeats_endings_ties_and_labels_are_told() -> None:
    abc = "X:1\nM:2/4\nL:1/4\nK:C\n|:CD-|1 D2:|2 G2||\n"
    assert in_words([staff_of(abc, Label(0, "turn"))]) == (
        "bar 1: key of C major; 2/4 time; repeat begins; figure turn, C4 quarter; D4 quarter, tied on. "
        "bar 2: ending 1; D4 half; repeat ends. "
        "bar 3: ending 2; G4 half."
    )


@given(scores())
@settings(max_examples=40, deadline=None)
def test_every_note_chord_and_label_is_told_in_its_bar(score: Score) -> None:
    for number, staff in enumerate(score.staves, start=1):
        part = written_part(score, number)
        told = staff_alternative(part)
        assert [bar.number for bar in told.bars] == [bar.number for bar in part.tune.bars]
        events = [event for bar in told.bars for event in bar.events]
        firsts = [event for bar in part.bars for event in bar.events if event.note and event.piece == 0]
        assert sum(event.pitch is not None for event in events) >= len(firsts) == len(staff.line)
        assert [pitch for event in events for pitch in event.graces] == [
            pitch for note in part.tune.notes for pitch in note.graces
        ]
        assert sum(len(event.labels) for event in events) == len(staff.labels)
        assert in_words([told])


@pytest.mark.parametrize("term", [*Mark, Jump.SEGNO, Jump.CODA])
def test_there_are_words_for_every_sign(term: Mark | Jump) -> None:
    name = "told-mark" if isinstance(term, Mark) else "told-jump"
    text = (WORDS / "en/score.ftl").read_text(encoding="utf-8")
    (entry,) = re.findall(rf"^{name} = .*?^}}$", text, re.MULTILINE | re.DOTALL)
    assert str(term) in re.findall(r"\[([a-z-]+)\]", entry)


def test_staves_are_told_one_after_the_other_by_name() -> None:
    words = in_words([StaffAlternative("plain", ()), StaffAlternative("", ())])
    assert words == "plain:  staff 2: "


def test_an_event_is_a_value() -> None:
    event = EventAlternative(Pitch.parse("C4"), 4)
    assert event == EventAlternative(Pitch.parse("C4"), 4)
    assert hash(event) == hash(EventAlternative(Pitch.parse("C4"), 4))


# Where the words stand ---------------------------------------------------------------------------------------------


def test_systems_have_the_words_of_their_own_bars() -> None:
    score = rich(staves=2)
    systems = engrave_systems(score, bars_per_system=3)
    staves = [staff_alternative(written_part(score, number)) for number in (1, 2)]
    told = [sum(f"bar {bar.number}:" in system.words for system in systems) for bar in staves[0].bars[1:]]
    assert told == [1] * len(told)
    assert all(system.words.count("bar ") >= 2 * (system.bar_count - 1) for system in systems)


def test_a_drawing_has_its_words_as_description_and_a_role() -> None:
    svg = etree.fromstring(engrave_page(rich(staves=1)).encode())
    assert (svg.get("role"), svg.get("aria-label")) == ("img", "All of it")
    (desc,) = svg.findall("{http://www.w3.org/2000/svg}desc")
    assert desc.getparent() is svg and svg[0] is desc
    assert "bar 1: repeat begins" in (desc.text or "")


def test_a_description_is_never_taken_for_markup() -> None:
    svg = etree.fromstring(
        described('<svg xmlns="http://www.w3.org/2000/svg"/>'.replace("/>", "></svg>"), '"<a>&', "<b>&\x07")
    )
    assert (svg.get("aria-label"), svg[0].text) == ('"<a>&', "<b>&")


def figures_of(node: Any, seen: set[int]) -> Iterator[str | None]:
    """The alternative texts of the figures below a node of a PDF's structure tree."""
    node = node.get_object()
    if isinstance(node, list):
        for child in node:
            yield from figures_of(child, seen)
    elif isinstance(node, dict) and id(node) not in seen:
        seen.add(id(node))
        if node.get("/S") == "/Figure":
            yield node.get("/Alt")
        if "/K" in node:
            yield from figures_of(node["/K"], seen)


def test_a_pdf_is_tagged_and_every_system_has_its_words() -> None:
    score = ornamented(3, bars=16)
    root: Any = pypdf.PdfReader(BytesIO(comparison_pdf(score))).trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    told = list(figures_of(root["/StructTreeRoot"], set()))
    assert told == [system.words for system in engrave_systems(score, width_mm=178, staff_mm=6.3)]
    assert all(words and "plain: bar " in words and "ornamented: bar " in words for words in told)


def test_drawings_of_every_page_are_described() -> None:
    from fioritura.lesson.handout import handout_engravings
    from fioritura.lesson.lesson import drawn_here
    from fioritura.lesson.web_page import web_page
    from fioritura.review.page import _Drawings
    from fioritura.web.views import system_views
    from tests.lessons import demo_lesson

    systems = engrave_systems(rich(staves=1))
    lesson = demo_lesson(level=1)
    lesson_page = web_page(lesson, drawn_here(handout_engravings(lesson)))
    shown = {
        lesson_page: lesson_page.count('class="marker"'),
        "".join(map(_Drawings().drawing, systems)): len(systems),
        "".join(view.svg for view in system_views(systems)): len(systems),
    }
    for page, count in shown.items():
        told = re.findall(r"<desc>([^<]*)</desc>", page)
        assert len(told) == count > 0
        assert page.count('role="img"') >= count
        assert all("bar " in words or "pickup: " in words for words in told)


def test_a_bar_that_ends_with_an_abbreviation_has_one_full_stop() -> None:
    assert in_words([staff_of("X:1\nM:2/4\nL:1/2\nK:C\n!segno!C|D!D.S.!|]\n")]).endswith("bar 2: D4 half; D.S.")
