"""Engrave a score: one SVG a system, or one for the whole piece.

The engraver is verovio. The score is written as MEI (`fioritura.notation.engraving.mei`), divided into systems
(`fioritura.notation.engraving.breaking`), laid out, and its SVG finished (`fioritura.notation.engraving.svg`). The ids of
notes, labels and chord symbols in the MEI are those of their groups in the SVG, which holds no others but its glyphs', and
the same score gives the same SVG. Text stands in the fonts of `fioritura.notation.engraving.fonts`; there is no background.

Lengths are millimetres; `staff_mm` is the height of a five-line staff.
"""

from __future__ import annotations

import threading
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from importlib.resources import files
from itertools import accumulate
from typing import TYPE_CHECKING, Any, Final
from zlib import crc32

from lxml import etree

from fioritura.errors import OptionError, ToolError
from fioritura.notation.alternative import StaffAlternative, staff_alternative
from fioritura.notation.alternative_words import told
from fioritura.notation.engraving.breaking import BarWidth, system_starts
from fioritura.notation.engraving.fonts import ENGRAVING_FONT
from fioritura.notation.engraving.mei import Piece, piece_of
from fioritura.notation.engraving.svg import (
    STAFF_UNITS,
    Drawing,
    described,
    dressed,
    standalone,
    to_svg,
    with_text_above,
)
from fioritura.notation.score import Score
from fioritura.words import message

if TYPE_CHECKING:
    import verovio

__all__ = ["System", "engrave_page", "engrave_systems", "with_staves"]

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
    "inputFrom": "mei",
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
    "spacingSystem": 12,
    "systemMaxPerPage": 0,
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
    staves: tuple[StaffAlternative, ...] = field(default=(), repr=False)
    """What the drawing shows, bar by bar: its alternative for who can't see it."""

    @property
    def words(self) -> str:
        """The alternative in the language that is spoken."""
        return told(self.staves) if self.staves else ""


@dataclass(frozen=True, slots=True)
class _Line:
    drawing: Drawing
    start: int
    bar_count: int


def engrave_systems(
    score: Score,
    *,
    width_mm: float = 180.0,
    staff_mm: float = 7.0,
    bars_per_system: int | None = None,
    shows_tempo: bool = True,
    like: Sequence[System] = (),
) -> tuple[System, ...]:
    """The piece as one SVG a system, none wider than `width_mm`.

    Systems end with phrases of four bars where they can; dense music has fewer bars a system, sparse music more.
    `bars_per_system` asks for a number of bars instead; a system that would be overfull is divided all the same. A
    last system is spread like the others, not stretched over the page. A single bar too wide for `width_mm` makes the
    staff smaller. The opening tempo mark stands over the first system unless `shows_tempo` is False.

    With the systems of an earlier engraving as `like`, of a piece with as many bars and at the same width, every bar
    keeps its system: little moves when a few notes have changed, and a third of the time is saved.

    Raises:
        OptionError: a width, height or number of bars outside its limits.
        OutputError: the score has no staff or no bars, or a note lies outside the octaves 0 to 9.
        TuneError: notes of a line overlap or lie outside the bars.
        ToolError: the engraver is missing or can't lay out the music.
    """
    piece, lines, mm_per_unit = _engraved(score, width_mm, staff_mm, bars_per_system, shows_tempo, like)
    staves = [staff_alternative(part) for part in piece.parts]
    return tuple(
        System(
            svg=to_svg([line.drawing], 0.0, mm_per_unit),
            width_mm=line.drawing.width * mm_per_unit,
            height_mm=line.drawing.height * mm_per_unit,
            first_bar=piece.bars[line.start].number,
            bar_count=line.bar_count,
            mm_per_unit=mm_per_unit,
            staves=_bars_of(staves, line.start, line.bar_count),
        )
        for line in lines
    )


def engrave_page(
    score: Score,
    *,
    width_mm: float = 180.0,
    staff_mm: float = 7.0,
    bars_per_system: int | None = None,
    shows_tempo: bool = True,
    gap_mm: float = 7.0,
) -> str:
    """The whole piece as one SVG that shows right in any viewer, its systems `gap_mm` apart.

    Options and errors are those of `engrave_systems`.
    """
    piece, lines, mm_per_unit = _engraved(score, width_mm, staff_mm, bars_per_system, shows_tempo)
    svg = to_svg([line.drawing for line in lines], gap_mm / mm_per_unit, mm_per_unit)
    words = told([staff_alternative(part) for part in piece.parts])
    return described(standalone(svg), score.tune.title, words)


def with_staves(systems: Sequence[System], score: Score) -> tuple[System, ...]:
    """The systems of a score, which were kept without what they show, with it."""
    staves = [staff_alternative(part) for part in piece_of(score).parts]
    found, start = [], 0
    for system in systems:
        found.append(replace(system, staves=_bars_of(staves, start, system.bar_count)))
        start += system.bar_count
    return tuple(found)


def _bars_of(staves: Sequence[StaffAlternative], start: int, count: int) -> tuple[StaffAlternative, ...]:
    return tuple(replace(staff, bars=staff.bars[start : start + count]) for staff in staves)


def _engraved(
    score: Score,
    width_mm: float,
    staff_mm: float,
    bars_per_system: int | None,
    shows_tempo: bool,
    like: Sequence[System] = (),
) -> tuple[Piece, list[_Line], float]:
    _check(width_mm, staff_mm, bars_per_system)
    piece = piece_of(score)
    toolkit = _toolkit()
    toolkit.setOptions({"pageMarginLeft": _BRACKET_PIXELS if len(piece.parts) > 1 else 0, "xmlIdSeed": 1})
    if like and sum(system.bar_count for system in like) == len(piece.bars):
        starts = [0, *accumulate(system.bar_count for system in like[:-1])]
        line_units = width_mm / like[0].mm_per_unit
        last_units = like[-1].width_mm / like[0].mm_per_unit
    else:
        bars = _natural_widths(toolkit, piece)
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


_of_thread = threading.local()


def _toolkit() -> verovio.toolkit:
    """This thread's toolkit. The engraver knows where its fonts are in the thread that imported it only: each is told."""
    toolkit = getattr(_of_thread, "toolkit", None)
    if toolkit is None:
        try:
            import verovio
        except ImportError as error:
            raise ToolError("engraver-missing", reason=str(error)) from None
        verovio.enableLog(verovio.LOG_OFF)
        verovio.setDefaultResourcePath(str(files("verovio") / "data"))
        toolkit = _of_thread.toolkit = verovio.toolkit()
        toolkit.setOptions(_OPTIONS)
    return toolkit


def _load(toolkit: verovio.toolkit, mei: str, **options: Any) -> None:
    toolkit.setOptions(options)
    if not toolkit.loadData(mei):
        raise ToolError("engraver-no-layout", reason=toolkit.getLog().strip() or message("no-reason-given"))


def _natural_widths(toolkit: verovio.toolkit, piece: Piece) -> list[BarWidth]:
    """The width of every bar at its narrowest good spacing."""
    spans: list[tuple[float, float]] = []
    head = 0.0
    _load(toolkit, piece.mei(), breaks="auto", noJustification=True, pageWidth=_WIDE_PIXELS)
    for number in range(1, toolkit.getPageCount() + 1):
        page = toolkit.renderToSVG(number)
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
    is_last_short = last_units < line_units - _UNITS_PER_PIXEL
    mei = piece.mei(starts, last_on_page=is_last_short)
    name = f"{crc32(mei.encode()):08x}"
    drawings: list[Drawing] = []
    if len(starts) > 1 or not is_last_short:
        drawings += dressed(_system_page(toolkit, mei, line_units), piece.effects, name)
    if is_last_short:
        last = _system_page(toolkit, mei, last_units, is_last=True)
        drawings += dressed(last, piece.effects, f"{name}-last")
    return drawings if len(drawings) == len(starts) else None


def _system_page(toolkit: verovio.toolkit, mei: str, width_units: float, *, is_last: bool = False) -> str:
    """The SVG of the first or the last page, its systems where the MEI breaks them."""
    width = round(width_units / _UNITS_PER_PIXEL)
    _load(toolkit, mei, breaks="encoded", noJustification=False, pageWidth=width)
    return str(toolkit.renderToSVG(toolkit.getPageCount() if is_last else 1))


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
