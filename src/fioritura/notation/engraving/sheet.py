"""Sheets to play from: the plain staff over the ornamented one, or one line alone, as PDF or PNG.

A sheet has a title block, its systems spread over the pages, a legend of the labels above the staff, a small note
at the foot, and a footer with title and page. Staves are large enough to read from a stand: 7.2 mm for a single
line, 6.3 mm for two staves.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from textwrap import shorten
from typing import Final

from fioritura.errors import OptionError
from fioritura.notation.engraving.engrave import engrave_systems
from fioritura.notation.engraving.page import (
    Document,
    LeadSheet,
    Legend,
    LegendEntry,
    Paper,
    Small,
    TitleBlock,
    print_area_mm,
)
from fioritura.notation.engraving.typeset import pdf, pngs
from fioritura.notation.score import Score
from fioritura.players.instruments import Instrument
from fioritura.words import Message, capital, language_tag, message, say

__all__ = [
    "COMPARISON_STAFF_MM",
    "LINE_STAFF_MM",
    "RIGHTS_NOTE",
    "SheetText",
    "bar_numbers",
    "comparison_pdf",
    "instrument_title",
    "legend_entries",
    "legend_of",
    "line_pdf",
    "page_png",
    "sheet_document",
]

LINE_STAFF_MM: Final = 7.2
COMPARISON_STAFF_MM: Final = 6.3

_FOOTER_PART: Final = 50

RIGHTS_NOTE: Final = message("care-rights.short")


@dataclass(frozen=True, slots=True)
class SheetText:
    """What stands around the music. `note` is small print at the end, such as a word on rights."""

    title: str
    subtitle: str = ""
    composer: str = ""
    instrument: str = ""
    note: str = ""
    legend: tuple[LegendEntry, ...] = ()


def comparison_pdf(
    score: Score,
    *,
    paper: Paper = "a4",
    legend: Iterable[tuple[str, str, str]] = (),
    note: Message | str = RIGHTS_NOTE,
    staff_mm: float = COMPARISON_STAFF_MM,
) -> bytes:
    """A PDF of staves that share bars, such as the plain line over the ornamented one.

    `legend` explains the labels above the staff: label, full name, and bars (see `legend_entries`). The same
    score gives the same bytes.

    Raises:
        OptionError: no such paper, or a staff height outside 2 to 40 mm.
        OutputError, TuneError: the score can't be written (see `engrave_systems`).
        ToolError: the engraver or the typesetter is missing or failed.
    """
    return pdf(_score_document(score, paper, legend, note, staff_mm))


def line_pdf(
    score: Score,
    *,
    paper: Paper = "a4",
    legend: Iterable[tuple[str, str, str]] = (),
    note: Message | str = RIGHTS_NOTE,
    staff_mm: float = LINE_STAFF_MM,
) -> bytes:
    """A PDF of a single line; arguments and errors as for `comparison_pdf`."""
    return pdf(_score_document(score, paper, legend, note, staff_mm))


def page_png(
    score: Score,
    *,
    page: int = 1,
    dots_per_inch: float = 144.0,
    is_transparent: bool = False,
    paper: Paper = "a4",
    legend: Iterable[tuple[str, str, str]] = (),
    note: Message | str = RIGHTS_NOTE,
    staff_mm: float | None = None,
) -> bytes:
    """One page of the sheet as a PNG; `page` counts from 1.

    Raises:
        OptionError: no such page or paper, or a resolution outside 20 to 1200 dots an inch.
        OutputError, TuneError, ToolError: as for `comparison_pdf`.
    """
    usual_mm = LINE_STAFF_MM if len(score.staves) == 1 else COMPARISON_STAFF_MM
    document = _score_document(score, paper, legend, note, staff_mm or usual_mm)
    images = pngs(document, dots_per_inch=dots_per_inch, is_transparent=is_transparent)
    if not 1 <= page <= len(images):
        raise OptionError("no-such-page", page=page, pages=len(images))
    return images[page - 1]


def _score_document(
    score: Score, paper: Paper, legend: Iterable[tuple[str, str, str]], note: Message | str, staff_mm: float
) -> Document:
    instrument = score.staves[-1].instrument
    text = SheetText(
        title=score.tune.title,
        subtitle=score.subtitle,
        composer=score.tune.composer,
        instrument=instrument_title(instrument, score.is_concert),
        note=say(note),
        legend=tuple(LegendEntry(*entry) for entry in legend),
    )
    return sheet_document(score, text, staff_mm=staff_mm, paper=paper)


def sheet_document(
    score: Score,
    text: SheetText,
    *,
    staff_mm: float = LINE_STAFF_MM,
    paper: Paper = "a4",
    bars_per_system: int | None = None,
) -> Document:
    """The sheet of an engraved piece, ready for `fioritura.notation.engraving.typeset`.

    Raises:
        OptionError: no such paper, or a staff height or number of bars outside its limits.
        ToolError: the engraver is missing or can't lay out the music.
    """
    width_mm, _ = print_area_mm(paper)
    systems = engrave_systems(score, width_mm=width_mm, staff_mm=staff_mm, bars_per_system=bars_per_system)
    closing = (legend_of(text.legend),) if text.legend else ()
    foot = (Small(text.note),) if text.note else ()
    opening = TitleBlock(text.title, text.subtitle, text.instrument, text.composer)
    footer = " · ".join(
        shorten(part, _FOOTER_PART, placeholder="…") for part in (text.title, text.instrument) if part
    )
    return Document(
        title=text.title,
        author=text.composer,
        footer=footer,
        paper=paper,
        language=language_tag(),
        blocks=(LeadSheet((opening,), systems, closing, foot),),
    )


def instrument_title(instrument: Instrument, is_concert: bool = False) -> str:
    """The instrument as a part names it: ``"Alto saxophone in E♭"``, ``"Flute"``, ``"Flute, concert pitch"``."""
    if is_concert and instrument.id != "concert":
        return say(message("instrument-at-concert-pitch", instrument=instrument.name))
    return say(instrument.full_title)


def legend_of(entries: tuple[LegendEntry, ...]) -> Legend:
    """The labels over the staff explained, under their heading."""
    return Legend(say(message("sheet-legend")), entries)


def legend_entries(uses: Iterable[tuple[str, str, int]]) -> tuple[LegendEntry, ...]:
    """A legend from uses (label, name, bar number), in order of first use; bars are gathered: ``"1, 5–8"``."""
    bars: dict[tuple[str, str], list[int]] = {}
    for label, name, bar in uses:
        bars.setdefault((label, name), []).append(bar)
    return tuple(LegendEntry(label, capital(name), bar_numbers(found)) for (label, name), found in bars.items())


def bar_numbers(numbers: Sequence[int]) -> str:
    """``"3"``, ``"1, 5–8"``; bar 0 is the pickup."""
    pickup = say(message("sheet-pickup"))
    spans: list[list[int]] = []
    for number in sorted(set(numbers)):
        if spans and number == spans[-1][-1] + 1:
            spans[-1].append(number)
        else:
            spans.append([number])
    words = ((str(span[0] or pickup), str(span[-1])) for span in spans)
    return ", ".join(first if first == last or last == "0" else f"{first}–{last}" for first, last in words)
