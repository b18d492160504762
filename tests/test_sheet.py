"""Sheets as PDF and PNG: read back with pypdf, and looked at as pixels.

Checked against outside sources: paper sizes (ISO 216, ANSI/ASME Y14.1), the shapes of the signs (bounding boxes that
the engraver's package publishes for its music font), and the text as another program reads it.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import numpy as np
import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from fioritura.errors import OptionError, ToolError
from fioritura.notation.engraving import fonts, typeset
from fioritura.notation.engraving.engrave import engrave_systems
from fioritura.notation.engraving.fonts import ENGRAVING_FONT, MUSIC_SIGNS, font_folder, plain_signs
from fioritura.notation.engraving.page import (
    Block,
    Bullets,
    Caption,
    Caution,
    Columns,
    Document,
    Gap,
    Heading,
    LeadSheet,
    Legend,
    LegendEntry,
    Music,
    PageBreak,
    Paper,
    Paragraph,
    Run,
    Small,
    Table,
    TitleBlock,
    print_area_mm,
)
from fioritura.notation.engraving.sheet import (
    RIGHTS_NOTE,
    comparison_pdf,
    instrument_title,
    legend_entries,
    line_pdf,
    page_png,
)
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.notation.score import Score, Staff
from fioritura.players.instruments import INSTRUMENTS
from fioritura.words import say
from tests.scores import ornamented

HOSTILE = [
    '#let x = 1 $ * _ @ < \\ "',
    "*bold* _slanted_ `raw` = heading - list + enum / term",
    "#pagebreak() ] } ) // comment /* more",
    "\\u{41} \\n \\\\ \"quoted\" 'q' <label> @reference ~ -- --- ...",
    '")); #panic("out") ((("',
]
LEGEND = (("grace below", "Grace note a scale step below", "1, 5–8"), ("vib.", "Vibrato towards the end", "12"))


def reader(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(BytesIO(pdf))


def squeezed(text: str) -> str:
    """A text without its spaces, which a PDF keeps as distances."""
    return re.sub(r"\s", "", text)


def text_of(pdf: bytes) -> str:
    return squeezed("".join(page.extract_text() for page in reader(pdf).pages))


def ink(png: bytes) -> np.ndarray:
    """The dark pixels of a page."""
    return np.asarray(Image.open(BytesIO(png)).convert("L")) < 128


def ink_box(png: bytes) -> tuple[int, int]:
    """Width and height of all ink."""
    dark = ink(png)
    rows, columns = np.flatnonzero(dark.any(axis=1)), np.flatnonzero(dark.any(axis=0))
    return int(np.ptp(columns)) + 1, int(np.ptp(rows)) + 1


def only(*blocks: Block, **options: Any) -> Document:
    return Document("Test", blocks, **options)


# The sheet ---------------------------------------------------------------------------------------------------------


def test_a_sheet_names_tune_composer_instrument_page_legend_and_rights() -> None:
    pdf = comparison_pdf(ornamented(3, bars=32), legend=LEGEND)
    pages = reader(pdf).pages
    text = text_of(pdf)
    expected = ("Lantern Street", "A. Composer", "Alto saxophone in E♭", "Swing ♩ = 126", say(RIGHTS_NOTE))
    for words in (*expected, *(part for entry in LEGEND for part in entry)):
        assert squeezed(words) in text, words
    for number, page in enumerate(pages, start=1):
        assert squeezed(f"{number}/{len(pages)}") in squeezed(page.extract_text())
    information = reader(pdf).metadata
    assert information is not None
    assert (information.title, information.author) == ("Lantern Street", "A. Composer")


def test_chord_symbols_can_be_read_out_of_the_pdf() -> None:
    score = ornamented(2, staves=1)
    text = text_of(line_pdf(score))
    instrument = score.staves[0].instrument
    assert all(
        squeezed(span.chord.up(instrument.transposition).display) in text for span in score.tune.chords if span.chord
    )


def test_bar_numbers_stand_at_the_beginning_of_systems() -> None:
    words = reader(line_pdf(ornamented(3, staves=1))).pages[0].extract_text().split()
    assert {"5", "9", "13"} <= set(words)


def test_all_fonts_are_embedded_and_only_those_that_every_machine_has() -> None:
    names = set()
    for page in reader(comparison_pdf(ornamented(3), legend=LEGEND)).pages:
        resources: Any = page["/Resources"]
        for font in resources["/Font"].values():
            descriptor = font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()
            assert "/FontFile2" in descriptor or "/FontFile3" in descriptor
            names.add(str(font.get_object()["/BaseFont"]).split("+")[1].split("-")[0])
    assert names == {"LibertinusSerif", "FiorituraSigns"}


def test_the_same_score_gives_the_same_bytes() -> None:
    score = ornamented(6)
    assert comparison_pdf(score, legend=LEGEND) == comparison_pdf(score, legend=LEGEND)
    assert page_png(score) == page_png(score)


@pytest.mark.parametrize(("paper", "size_mm"), [("a4", (210.0, 297.0)), ("letter", (215.9, 279.4))])
def test_paper(paper: Paper, size_mm: tuple[float, float]) -> None:
    (box,) = {tuple(page.mediabox)[2:] for page in reader(line_pdf(ornamented(3), paper=paper)).pages}
    assert [float(side) / 72 * 25.4 for side in box] == pytest.approx(size_mm, abs=0.05)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("bars", [4, 16, 24, 32, 48, 64])
def test_no_page_is_empty_or_overfull_and_no_system_alone_on_the_last(bars: int, paper: Paper) -> None:
    document_pages = typeset.pngs(lead_sheet(bars, paper), dots_per_inch=50)
    pdf_pages = reader(typeset.pdf(lead_sheet(bars, paper))).pages
    assert len(document_pages) == len(pdf_pages)
    for png in document_pages:
        dark = ink(png)
        height, width = dark.shape
        assert dark.mean() > 0.003
        assert not dark[: round(height * 0.03)].any()
        assert not dark[round(height * 0.985) :].any()
        assert not dark[:, : round(width * 0.05)].any()
        assert not dark[:, round(width * 0.95) :].any()
    if len(pdf_pages) > 1:
        starts = [word for word in pdf_pages[-1].extract_text().split() if word.isdigit() and int(word) % 4 == 1]
        assert len(starts) >= 2


def lead_sheet(bars: int, paper: Paper) -> Document:
    width_mm, _ = print_area_mm(paper)
    systems = engrave_systems(ornamented(9, bars=bars), width_mm=width_mm, staff_mm=6.3)
    sheet = LeadSheet((TitleBlock("T"),), systems, foot=(Small("Rights."),))
    return Document("T", (sheet,), footer="Test", paper=paper)


def test_png_size_and_ground() -> None:
    white = Image.open(BytesIO(page_png(ornamented(3), dots_per_inch=100)))
    clear = Image.open(BytesIO(page_png(ornamented(3), dots_per_inch=100, is_transparent=True)))
    assert white.size == clear.size == (827, 1169)
    assert white.convert("RGBA").getpixel((2, 2)) == (255, 255, 255, 255)
    pixel = clear.convert("RGBA").getpixel((2, 2))
    assert isinstance(pixel, tuple) and pixel[3] == 0


@pytest.mark.parametrize(
    ("options", "message"),
    [({"page": 9}, "no page 9"), ({"dots_per_inch": 5.0}, "20 to 1200"), ({"paper": "b5"}, "a4 or letter")],
)
def test_options_outside_their_limits(options: dict[str, Any], message: str) -> None:
    with pytest.raises(OptionError, match=message):
        page_png(ornamented(3), **options)


@pytest.mark.parametrize(
    ("id", "title"),
    [
        ("alto-sax", "Alto saxophone in E♭"),
        ("tenor-sax", "Tenor saxophone in B♭"),
        ("baritone-sax", "Baritone saxophone in E♭"),
        ("clarinet", "Clarinet in B♭"),
        ("flute", "Flute"),
    ],
)
def test_an_instrument_is_named_with_its_key(id: str, title: str) -> None:
    """Keys of the instruments: common practice."""
    assert instrument_title(INSTRUMENTS[id]) == title
    assert instrument_title(INSTRUMENTS["alto-sax"], is_concert=True) == "Alto saxophone, concert pitch"


def test_a_legend_gathers_bars() -> None:
    uses = [("t", "Turn", bar) for bar in (5, 3, 4, 9, 5)] + [("f", "Fall", 0), ("s", "Scoop", 0), ("s", "Scoop", 1)]
    assert [entry.bars for entry in legend_entries(uses)] == ["3–5, 9", "pickup", "pickup–1"]


# Text is only text -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("title", HOSTILE)
def test_a_title_is_never_taken_for_markup(title: str) -> None:
    score = ornamented(3, title=title)
    text = text_of(comparison_pdf(score, legend=[(title, title, title)], note=title))
    assert text.count(squeezed(title)) >= 3


EVERYTHING = [
    lambda text: Heading(text),
    lambda text: Paragraph((Run(text, bold=True), Run(text, italic=True))),
    lambda text: Bullets((text,), is_numbered=True),
    lambda text: Caption(text),
    lambda text: Caution(text),
    lambda text: Small(text),
    lambda text: Table((text,), ((text,), (text,))),
    lambda text: Columns(((Paragraph(text),), (Paragraph(text),))),
    lambda text: TitleBlock(text, text, text, text),
    lambda text: Legend(text, (LegendEntry(text, text, text),)),
]


@pytest.mark.parametrize("make", EVERYTHING)
def test_no_block_takes_its_text_for_markup(make: Callable[[str], Block]) -> None:
    for text in HOSTILE:
        assert squeezed(text) in text_of(typeset.pdf(only(make(text))))


@settings(max_examples=40, deadline=None)
@given(st.text(max_size=60))
def test_any_text_can_be_typeset(text: str) -> None:
    assert reader(typeset.pdf(only(TitleBlock(text, text), footer=text))).pages


def test_control_characters_and_writing_direction_are_left_out() -> None:
    assert "Twowords" in text_of(typeset.pdf(only(Paragraph("Two\nwo\x00rds\u202e \ud800"))))


# Signs in text -----------------------------------------------------------------------------------------------------


def published_box(code: int) -> tuple[float, float]:
    """Width and height of a sign as the engraver's package publishes them for its music font."""
    import verovio

    table = Path(verovio.__file__).parent / "data" / f"{ENGRAVING_FONT}.xml"
    glyph = next(g for g in ElementTree.parse(table).iter("g") if g.get("c") == f"{code:04X}")
    return float(glyph.get("w", "0")), float(glyph.get("h", "0"))


@pytest.mark.parametrize(
    ("sign", "code"), [("♭", 0xE260), ("♮", 0xE261), ("♯", 0xE262), ("𝄪", 0xE263), ("𝄫", 0xE264)]
)
def test_an_accidental_in_text_has_the_shape_of_the_music_font_and_is_no_box(sign: str, code: int) -> None:
    (png,) = typeset.pngs(only(TitleBlock(sign)), dots_per_inch=400)
    width, height = ink_box(png)
    expected_width, expected_height = published_box(code)
    assert width / height == pytest.approx(expected_width / expected_height, rel=0.05)
    (missing,) = typeset.pngs(only(TitleBlock("\ue999")), dots_per_inch=400)
    missing_width, missing_height = ink_box(missing)
    assert missing_width / missing_height != pytest.approx(width / height, rel=0.05)


def test_an_accidental_in_a_chord_symbol_is_drawn_with_the_sign_font() -> None:
    """The flat in B♭ as pixels of the page, against the flat alone."""
    bar = (
        '<measure number="1"><attributes><divisions>1</divisions><clef><sign>G</sign><line>2</line></clef></attributes>'
        "<harmony><root><root-step>B</root-step><root-alter>-1</root-alter></root><kind>major</kind></harmony>"
        "<note><pitch><step>C</step><octave>4</octave></pitch><duration>4</duration><type>whole</type></note></measure>"
    )
    musicxml = (
        '<score-partwise version="4.0"><part-list><score-part id="P1"><part-name/></score-part></part-list>'
        f'<part id="P1">{bar}</part></score-partwise>'
    )
    tune = read_musicxml(musicxml.encode())
    pdf = typeset.pdf(only(Music(engrave_systems(Score(tune, (Staff(tune.notes),))))))
    page = reader(pdf).pages[0]
    used = {}
    page.extract_text(visitor_text=lambda text, *rest: used.update({text.strip(): rest[2]}))
    names = {text: str(font["/BaseFont"]) for text, font in used.items() if font and text}
    assert "FiorituraSigns" in next(name for text, name in names.items() if "♭" in text)
    assert "LibertinusSerif-Semibold" in next(name for text, name in names.items() if "B" in text)


def test_signs_of_the_music_font_become_characters_that_can_be_searched() -> None:
    """SMuFL 1.4: accidentalFlat U+E260, csymAccidentalSharp U+ED62, metNoteQuarterUp U+ECA5."""
    assert plain_signs("B\ue260 F\ued62 \ueca5 = 120") == "B♭ F♯ ♩ = 120"
    assert all(len(sign) == 1 for sign in MUSIC_SIGNS)


def test_the_font_is_kept_in_the_users_cache_and_made_whole_or_not_at_all(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    font_folder.cache_clear()
    try:
        folder = font_folder()
        assert folder.is_relative_to(tmp_path)
        assert [path.name for path in folder.iterdir()] == ["FiorituraSigns.ttf"]
        (tmp_path / "blocked").write_text("a file where a folder should be")
        monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "blocked"))
        font_folder.cache_clear()
        with pytest.raises(ToolError, match="XDG_CACHE_HOME"):
            font_folder()
    finally:
        font_folder.cache_clear()


def test_a_missing_music_font_is_a_tool_error(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(fonts, "ENGRAVING_FONT", "Nowhere")
    with pytest.raises(ToolError, match="reinstall"):
        fonts._sign_font_bytes()


# Documents ---------------------------------------------------------------------------------------------------------


def test_a_heading_never_stands_alone_at_the_foot_of_a_page() -> None:
    for lines in range(34, 52):
        blocks = [Paragraph(f"Line {number}") for number in range(lines)]
        pages = reader(typeset.pdf(only(*blocks, Heading("Lonely"), Paragraph("Company")))).pages
        texts = [page.extract_text() for page in pages]
        assert [("Lonely" in text) for text in texts] == [("Company" in text) for text in texts]


def test_music_is_not_divided_inside_a_system_and_pages_break_where_asked() -> None:
    systems = engrave_systems(ornamented(3), width_mm=178, staff_mm=6.3)
    document = only(Paragraph("One"), Gap(150.0), Music(systems), PageBreak(), Heading("Two"))
    pages = [page.extract_text() for page in reader(typeset.pdf(document)).pages]
    assert "Two" in pages[-1]
    assert "One" in pages[0]
    assert len(pages) >= 3
    heights = sum(system.height_mm for system in systems)
    assert heights > print_area_mm("a4")[1] - 150.0
