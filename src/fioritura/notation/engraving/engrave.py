"""Engrave MusicXML: one SVG a system, or one for the whole piece.

The engraver is verovio, which reads MusicXML into MEI. The MEI is dressed for a method book
(`fioritura.notation.engraving.mei`), divided into systems (`fioritura.notation.engraving.breaking`), laid out, and its SVG finished
(`fioritura.notation.engraving.svg`). Note ids of the MusicXML are the ids of the notes' groups in the SVG, and the same bytes
give the same SVG. Text stands in the fonts of `fioritura.notation.engraving.fonts`; there is no background.

Lengths are millimetres; `staff_mm` is the height of a five-line staff.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from importlib.resources import files
from itertools import accumulate
from typing import TYPE_CHECKING, Any, Final
from zlib import crc32

from lxml import etree

from fioritura.errors import OptionError, ToolError
from fioritura.notation.engraving.breaking import BarWidth, system_starts
from fioritura.notation.engraving.fonts import ENGRAVING_FONT
from fioritura.notation.engraving.mei import Piece, read_piece, with_breaks
from fioritura.notation.engraving.svg import STAFF_UNITS, Drawing, dress, standalone, to_svg, with_text_above
from fioritura.words import message

if TYPE_CHECKING:
    import verovio

__all__ = ["System", "engrave_page", "engrave_systems"]

_SVG: Final = "{http://www.w3.org/2000/svg}"
_UNITS_PER_PIXEL: Final = 10
_BRACKET_PIXELS: Final = 20
_WIDE_PIXELS: Final = 12_000
"""Page width at which natural bar widths are measured: so wide that only whole bars decide its breaks."""

_LOOSEST: Final = 1.45
"""How far beyond its natural width an only system is spread at most."""

_NEARLY_FULL: Final = 0.65
"""A last system at least this full is spread over the whole width after all."""

_WIDENING: Final = 1.025
"""How much smaller the staff gets in each try where a system turns out overfull after all."""

_TRIES: Final = 8
_TEMPO_SIZE: Final = 440
_OPTIONS: Final[dict[str, Any]] = {
    "inputFrom": "auto",
    "font": ENGRAVING_FONT,
    "header": "none",
    "footer": "none",
    "smuflTextFont": "none",
    "svgViewBox": True,
    "svgFormatRaw": True,
    "adjustPageHeight": True,
    "pageHeight": 60_000,
    "pageMarginTop": 0,
    "pageMarginBottom": 0,
    "pageMarginRight": 0,
    "minLastJustification": 0.0,
    "spacingLinear": 0.2,
    "spacingNonLinear": 0.55,
    "spacingStaff": 9,
    "mnumInterval": 0,
    "lyricSize": 4.2,
    "slurMidpointThickness": 0.5,
}


@dataclass(frozen=True, slots=True)
class System:
    """One engraved system: its SVG, its size, and the bars on it (`first_bar` as printed)."""

    svg: str
    width_mm: float
    height_mm: float
    first_bar: str
    bar_count: int
    mm_per_unit: float
    """Size of a drawing unit of the engraver."""


@dataclass(frozen=True, slots=True)
class _Line:
    drawing: Drawing
    start: int
    bar_count: int


def engrave_systems(
    musicxml: bytes,
    *,
    width_mm: float = 180.0,
    staff_mm: float = 7.0,
    bars_per_system: int | None = None,
    keeps_breaks: bool = False,
    shows_tempo: bool = True,
    like: Sequence[System] = (),
) -> tuple[System, ...]:
    """The piece as one SVG a system, none wider than `width_mm`.

    Systems end with phrases of four bars where they can; dense music has fewer bars a system, sparse music more.
    `bars_per_system` asks for a number of bars instead, and `keeps_breaks` for a new system wherever the
    MusicXML has one; a system that would be overfull is divided all the same. A last system is spread like the
    others, not stretched over the page. A single bar too wide for `width_mm` makes the staff smaller. The opening
    tempo mark stands over the first system unless `shows_tempo` is False.

    With the systems of an earlier engraving as `like`, of a piece with as many bars and at the same width, every bar
    keeps its system: little moves when a few notes have changed, and a third of the time is saved.

    Raises:
        OptionError: a width, height or number of bars outside its limits.
        ToolError: the engraver is missing or can't read the MusicXML.
    """
    piece, lines, mm_per_unit = _engraved(
        musicxml, width_mm, staff_mm, bars_per_system, keeps_breaks, shows_tempo, like
    )
    return tuple(
        System(
            svg=to_svg([line.drawing], 0.0, mm_per_unit),
            width_mm=line.drawing.width * mm_per_unit,
            height_mm=line.drawing.height * mm_per_unit,
            first_bar=piece.bars[line.start].number,
            bar_count=line.bar_count,
            mm_per_unit=mm_per_unit,
        )
        for line in lines
    )


def engrave_page(
    musicxml: bytes,
    *,
    width_mm: float = 180.0,
    staff_mm: float = 7.0,
    bars_per_system: int | None = None,
    keeps_breaks: bool = False,
    shows_tempo: bool = True,
    gap_mm: float = 7.0,
) -> str:
    """The whole piece as one SVG that shows right in any viewer, its systems `gap_mm` apart.

    Options and errors are those of `engrave_systems`.
    """
    _, lines, mm_per_unit = _engraved(musicxml, width_mm, staff_mm, bars_per_system, keeps_breaks, shows_tempo)
    return standalone(to_svg([line.drawing for line in lines], gap_mm / mm_per_unit, mm_per_unit))


def _engraved(
    musicxml: bytes,
    width_mm: float,
    staff_mm: float,
    bars_per_system: int | None,
    keeps_breaks: bool,
    shows_tempo: bool,
    like: Sequence[System] = (),
) -> tuple[Piece, list[_Line], float]:
    _check(width_mm, staff_mm, bars_per_system)
    toolkit = _toolkit(crc32(musicxml) & 0x7FFF_FFFF or 1)
    piece = read_piece(toolkit, musicxml)
    if piece.staff_count > 1:
        toolkit.setOptions({"pageMarginLeft": _BRACKET_PIXELS})
    if like and sum(system.bar_count for system in like) == len(piece.bars):
        starts = [0, *accumulate(system.bar_count for system in like[:-1])]
        line_units = width_mm / like[0].mm_per_unit
        last_units = like[-1].width_mm / like[0].mm_per_unit
    else:
        bars = _natural_widths(toolkit, piece, keeps_breaks)
        widest = max(bar.width + bar.head for bar in bars)
        line_units = max(width_mm * STAFF_UNITS / staff_mm, widest)
        starts = system_starts(bars, line_units, bars_per_system)
        last_units = _last_width(bars, starts, line_units)
    drawings = _laid_out(toolkit, piece, starts, line_units, last_units)
    for _ in range(_TRIES):
        if drawings is not None:
            break
        line_units, last_units = _WIDENING * line_units, _WIDENING * last_units
        drawings = _laid_out(toolkit, piece, starts, line_units, last_units)
    if drawings is None:
        raise ToolError("engraver-no-room", systems=len(starts))
    if piece.tempo and shows_tempo:
        drawings[0] = with_text_above(drawings[0], piece.tempo, _TEMPO_SIZE)
    counts = [end - start for start, end in zip(starts, [*starts[1:], len(piece.bars)], strict=True)]
    lines = [_Line(*line) for line in zip(drawings, starts, counts, strict=True)]
    return piece, lines, width_mm / line_units


def _check(width_mm: float, staff_mm: float, bars_per_system: int | None) -> None:
    if not 2.0 <= staff_mm <= 40.0:
        raise OptionError("staff-height-outside", given=f"{staff_mm:g}")
    if not 5.0 * staff_mm <= width_mm <= 200.0 * staff_mm:
        low, high = f"{5 * staff_mm:g}", f"{200 * staff_mm:g}"
        raise OptionError("page-width-outside", given=f"{width_mm:g}", staff=f"{staff_mm:g}", low=low, high=high)
    if bars_per_system is not None and not 1 <= bars_per_system <= 32:
        raise OptionError("bars-per-system-outside", given=bars_per_system)


def _toolkit(seed: int) -> verovio.toolkit:
    """A fresh toolkit. The engraver knows where its fonts are in the thread that imported it only: each is told anew."""
    try:
        import verovio
    except ImportError as error:
        raise ToolError("engraver-missing", reason=str(error)) from None
    verovio.enableLog(verovio.LOG_OFF)
    verovio.setDefaultResourcePath(str(files("verovio") / "data"))
    toolkit = verovio.toolkit()
    toolkit.setOptions({**_OPTIONS, "pageMarginLeft": 0, "xmlIdSeed": seed})
    return toolkit


def _pages(toolkit: verovio.toolkit, mei: str, *, is_last: bool = False, **options: Any) -> Iterator[str]:
    """The SVG of each page of a layout, or of the last one alone."""
    toolkit.setOptions(options)
    if not toolkit.loadData(mei):
        raise ToolError("engraver-no-layout", reason=toolkit.getLog().strip() or message("no-reason-given"))
    count = toolkit.getPageCount()
    for number in range(count if is_last else 1, count + 1):
        yield toolkit.renderToSVG(number)


def _natural_widths(toolkit: verovio.toolkit, piece: Piece, keeps_breaks: bool) -> list[BarWidth]:
    """The width of every bar at its narrowest good spacing."""
    spans: list[tuple[float, float]] = []
    head = 0.0
    layout = _pages(
        toolkit,
        with_breaks(piece, []),
        breaks="auto",
        noJustification=True,
        systemMaxPerPage=0,
        pageWidth=_WIDE_PIXELS,
    )
    for page in layout:
        for system in etree.fromstring(page.encode()).iter(f"{_SVG}g"):
            if system.get("class") != "system":
                continue
            measures = [group for group in system.iter(f"{_SVG}g") if group.get("class") == "measure"]
            places = [_staff_span(measure) for measure in measures]
            if not spans:
                head = _head_width(measures[0])
                places[0] = (0.0, places[0][1])
            elif places:
                places[0] = (places[0][0] + head, places[0][1])
            spans += places
    if len(spans) != len(piece.bars):
        raise ToolError("engraver-lost-bars", drawn=len(spans), bars=len(piece.bars))
    return [
        BarWidth(
            width=right - left,
            head=head if number else 0.0,
            must_begin=keeps_breaks and bar.begins_system,
            ends_section=bar.ends_section,
            counts=bar.is_full,
        )
        for number, (bar, (left, right)) in enumerate(zip(piece.bars, spans, strict=True))
    ]


def _staff_span(measure: etree._Element) -> tuple[float, float]:
    """Left and right end of a bar's staff lines."""
    for path in measure.iter(f"{_SVG}path"):
        left, _, right, _ = path.get("d", "").replace("M", "").replace("L", "").split()
        return float(left), float(right)
    return 0.0, 0.0


def _head_width(measure: etree._Element) -> float:
    """Width of clef and key signature at the beginning of a system."""
    left, _ = _staff_span(measure)
    for kind in ("meterSig", "note", "rest", "mRest"):
        for group in measure.iter(f"{_SVG}g"):
            if group.get("class") == kind:
                for use in group.iter(f"{_SVG}use"):
                    return float(use.get("transform", "")[len("translate(") :].split(",")[0]) - left
    return 0.0


def _laid_out(
    toolkit: verovio.toolkit, piece: Piece, starts: list[int], line_units: float, last_units: float
) -> list[Drawing] | None:
    """One drawing a system; the last is narrower where full width would stretch it beyond the others.

    None where the engraver, short of room by a hair, divides a system.
    """
    mei = with_breaks(piece, starts)
    pages = list(_system_pages(toolkit, mei, line_units))
    if len(pages) != len(starts):
        return None
    if last_units < line_units - _UNITS_PER_PIXEL:
        pages[-1] = list(_system_pages(toolkit, mei, last_units, is_last=True))[-1]
    return [dress(page, piece.effects) for page in pages]


def _system_pages(toolkit: verovio.toolkit, mei: str, width_units: float, *, is_last: bool = False) -> Iterator[str]:
    return _pages(
        toolkit,
        mei,
        is_last=is_last,
        breaks="encoded",
        noJustification=False,
        systemMaxPerPage=1,
        pageWidth=round(width_units / _UNITS_PER_PIXEL),
    )


def _last_width(bars: list[BarWidth], starts: list[int], line_units: float) -> float:
    """How wide the last system should be, so that its notes stand as close as those before it."""
    natural = [
        bars[start].head + sum(bar.width for bar in bars[start:end])
        for start, end in zip(starts, [*starts[1:], len(bars)], strict=True)
    ]
    before = natural[:-1]
    spread = line_units * len(before) / sum(before) if before else _LOOSEST
    width = natural[-1] * spread
    return line_units if width >= _NEARLY_FULL * line_units else width
