"""Plots of a take as SVG: time and tempo along the bars, tuning note by note, tone level along the bars.

Lengths in the drawings are tenths of a millimetre; text stands in the face of the printed pages.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from html import escape
from itertools import pairwise
from statistics import median
from typing import Final

from fioritura.listening.rows import NoteRow, Report
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.fonts import TEXT_FONT
from fioritura.review.colours import FLAT, GRID, IN_TUNE, INK, QUIET, SHARP
from fioritura.review.staves import IN_TUNE_CENTS
from fioritura.theory.metre import QUARTER
from fioritura.theory.pitch import Pitch
from fioritura.tune import Tune
from fioritura.words import Message, message, say

__all__ = ["Drawing", "level_plot", "time_plot", "tuning_plot"]

TOGETHER_MS: Final = 30.0
"""How far players who play together lie apart (Rasch 1979: 30 to 50 ms)."""

_LEFT: Final = 200.0
_RIGHT: Final = 30.0
_TEXT: Final = 29.0
_CHARACTER: Final = 13.5
"""About the width of a letter."""
_MOST_MS: Final = 160.0
_MOST_CENTS: Final = 60.0
_MOST_TICKS: Final = 24


@dataclass
class Drawing:
    """An SVG in the making, `width` and `height` in tenths of a millimetre."""

    width: float
    height: float
    parts: list[str] = field(default_factory=list)

    def line(self, x1: float, y1: float, x2: float, y2: float, colour: str = GRID, width: float = 2.5) -> None:
        """A straight line."""
        self.parts.append(
            f'<path d="M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}" stroke="{colour}" stroke-width="{width:g}" fill="none"/>'
        )

    def curve(self, places: Sequence[tuple[float, float]], colour: str = INK, width: float = 5.0) -> None:
        """A line through places."""
        if len(places) > 1:
            path = "L".join(f"{x:.1f} {y:.1f}" for x, y in places)
            self.parts.append(
                f'<path d="M{path}" stroke="{colour}" stroke-width="{width:g}" fill="none" stroke-linejoin="round"/>'
            )

    def box(self, x: float, y: float, width: float, height: float, colour: str) -> None:
        """A filled rectangle."""
        self.parts.append(
            f'<rect x="{x:.1f}" y="{y:.1f}" width="{width:.1f}" height="{height:.1f}" fill="{colour}"/>'
        )

    def dot(self, x: float, y: float, radius: float, colour: str, *, is_open: bool = False) -> None:
        """A filled or open circle."""
        fill = "#ffffff" if is_open else colour
        self.parts.append(
            f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{radius:g}" fill="{fill}" stroke="{colour}" stroke-width="4"/>'
        )

    def words(
        self, x: float, y: float, text: str, anchor: str = "start", colour: str = QUIET, size: float = _TEXT
    ) -> None:
        """A line of text whose baseline is at y."""
        self.parts.append(
            f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size:g}" text-anchor="{anchor}" fill="{colour}" '
            f"font-family=\"'{TEXT_FONT}', Georgia, serif\">{escape(text)}</text>"
        )

    def system(self, label: str) -> System:
        """The drawing as it stands on a page; `label` says what it shows to those who can't see it."""
        svg = (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {self.width:g} {self.height:g}" '
            f'width="{self.width / 10:g}mm" height="{self.height / 10:g}mm" role="img" aria-label="{escape(label)}">'
            f"{''.join(self.parts)}</svg>"
        )
        return System(svg, self.width / 10, self.height / 10, "", 0, 0.1)


@dataclass(frozen=True)
class _Course:
    """The bars of a take in the order in which they were played, along an axis."""

    tune: Tune
    notes: tuple[NoteRow, ...]
    starts: tuple[tuple[int, int, int], ...]
    """Passage, first tick of it in the tune, and where that lies on the axis, in ticks."""
    length: int

    def place(self, note: NoteRow) -> float:
        """Where a note lies, 0 to 1."""
        start, shift = next((start, shift) for passage, start, shift in self.starts if passage == note.passage)
        return (self.tune.notes[note.plain].onset_ticks - start + shift) / self.length

    def bars(self) -> Iterator[tuple[float, int]]:
        """Place and number of each bar line."""
        for passage, start, shift in self.starts:
            ticks = [self.tune.notes[note.plain].onset_ticks for note in self.notes if note.passage == passage]
            for bar in self.tune.bars:
                if start <= bar.start_ticks <= max(ticks):
                    yield (bar.start_ticks - start + shift) / self.length, bar.number


def _course(tune: Tune, report: Report) -> _Course | None:
    starts, shift = [], 0
    for passage in sorted({note.passage for note in report.notes}):
        plains = [note.plain for note in report.notes if note.passage == passage]
        first, last = tune.notes[min(plains)], tune.notes[max(plains)]
        start = tune.bar_at(first.onset_ticks).start_ticks
        end = tune.bar_at(last.onset_ticks).end_ticks
        starts.append((passage, start, shift))
        shift += end - start
    return _Course(tune, report.notes, tuple(starts), shift) if shift else None


def _frame(drawing: Drawing, course: _Course, top: float, bottom: float, *, numbers: bool) -> float:
    """Bar lines and their numbers; returns the width of the axis."""
    width = drawing.width - _LEFT - _RIGHT
    bars = list(course.bars())
    step = -(-len(bars) // _MOST_TICKS)
    for count, (place, number) in enumerate(bars):
        x = _LEFT + place * width
        drawing.line(x, top, x, bottom)
        if numbers and number and count % step == 0:
            drawing.words(x, bottom + 34, str(number), "middle")
    drawing.line(_LEFT + width, top, _LEFT + width, bottom)
    return width


def time_plot(tune: Tune, report: Report, width_mm: float) -> System | None:
    """Each note's place against the player's own beat, and the tempo bar by bar; None where nothing was placed."""
    course = _course(tune, report)
    placed = [note for note in report.notes if note.late_ms is not None]
    if course is None or not placed:
        return None
    drawing = Drawing(10 * width_mm, 640)
    top, bottom = 50.0, 370.0
    middle, scale = (top + bottom) / 2, (bottom - top) / 2 / _MOST_MS
    axis = drawing.width - _LEFT - _RIGHT
    drawing.box(_LEFT, middle - TOGETHER_MS * scale, axis, 2 * TOGETHER_MS * scale, "#e9f2ee")
    _frame(drawing, course, top, bottom, numbers=False)
    drawing.line(_LEFT, middle, _LEFT + axis, middle, QUIET)
    for ms in (-100, 0, 100):
        words = message("axis-on-the-beat")
        if ms:
            words = message("axis-off-the-beat", ms=abs(ms), side="late" if ms > 0 else "early")
        drawing.words(_LEFT - 12, middle + ms * scale + 10, say(words), "end")
    for note in placed:
        late = max(-_MOST_MS, min(_MOST_MS, note.late_ms or 0.0))
        x = _LEFT + course.place(note) * axis
        drawing.dot(x, middle + late * scale, 9, INK, is_open=note.beat != int(note.beat))
    _key_to_dots(drawing)
    _tempo_course(drawing, course, report, 420.0, 590.0)
    return drawing.system(say(message("plot-time")))


def _key_to_dots(drawing: Drawing) -> None:
    """What the dots and the band of the plot of time mean, one beside the other."""
    on, between = say(message("axis-on-a-beat")), say(message("beats-between"))
    drawing.dot(_LEFT + 12, 20, 9, INK)
    drawing.words(_LEFT + 32, 30, on)
    x = _LEFT + 80 + _CHARACTER * len(on)
    drawing.dot(x, 20, 9, INK, is_open=True)
    drawing.words(x + 20, 30, between)
    x += 60 + _CHARACTER * len(between)
    drawing.box(x, 8, 44, 26, "#e9f2ee")
    drawing.words(x + 56, 30, say(message("axis-together", ms=round(TOGETHER_MS))))


def _tempo_course(drawing: Drawing, course: _Course, report: Report, top: float, bottom: float) -> None:
    beat = course.tune.metre.beat_ticks / QUARTER
    places = list(_tempos(course, report, beat))
    axis = _frame(drawing, course, top, bottom, numbers=True)
    usual = report.timing.quarters_per_minute / beat
    reach = max(0.08, *(abs(tempo / usual - 1) for _, tempo in places)) if places else 0.08
    reach = min(reach, 0.4) * 1.15
    middle = (top + bottom) / 2

    def y(tempo: float) -> float:
        share = max(-1.0, min(1.0, (tempo / usual - 1) / reach))
        return middle - share * (bottom - top) / 2

    drawing.line(_LEFT, middle, _LEFT + axis, middle, QUIET)
    drawing.words(_LEFT - 12, middle + 10, say(message("axis-tempo", tempo=round(usual))), "end")
    edge = usual * (1 + reach / 1.15)
    drawing.words(_LEFT - 12, y(edge) + 10, f"{edge:.0f}", "end")
    drawing.words(_LEFT - 12, y(2 * usual - edge) + 10, f"{2 * usual - edge:.0f}", "end")
    drawing.curve([(_LEFT + place * axis, y(tempo)) for place, tempo in places])


def _tempos(course: _Course, report: Report, beat_quarters: float) -> Iterator[tuple[float, float]]:
    """Place and tempo in beats a minute of each bar, from note to note that were played in their place."""
    bars: dict[tuple[int, int], list[tuple[float, int, float]]] = {}
    for one, after in pairwise(report.notes):
        if (
            after.passage != one.passage
            or after.plain != one.plain + 1
            or one.late_ms is None
            or after.late_ms is None
        ):
            continue
        onset = course.tune.notes[one.plain].onset_ticks
        ticks, seconds = course.tune.notes[after.plain].onset_ticks - onset, after.onset_sec - one.onset_sec
        if seconds > 0:
            key = one.passage, course.tune.bar_at(onset).start_ticks
            bars.setdefault(key, []).append((course.place(one), ticks, seconds))
    bar_quarters = course.tune.metre.bar_ticks / QUARTER
    for steps in bars.values():
        quarters = sum(step[1] for step in steps) / QUARTER
        if 2 * quarters >= bar_quarters:
            middle = (steps[0][0] + steps[-1][0]) / 2
            yield middle, 60 * quarters / beat_quarters / sum(step[2] for step in steps)


def tuning_plot(report: Report, width_mm: float) -> System | None:
    """Every note's cents against the player's own tuning, by pitch from low to high; None where there is none."""
    heard: dict[Pitch, list[float]] = {}
    for note in report.notes:
        if note.cents is not None:
            heard.setdefault(note.pitch, []).append(note.cents)
    if not heard:
        return None
    drawing = Drawing(10 * width_mm, 420)
    top, bottom = 20.0, 340.0
    middle, scale = (top + bottom) / 2, (bottom - top) / 2 / _MOST_CENTS
    axis = drawing.width - _LEFT - _RIGHT
    drawing.box(_LEFT, middle - IN_TUNE_CENTS * scale, axis, 2 * IN_TUNE_CENTS * scale, "#e9f2ee")
    for edge in (50, 25, 0, -25, -50):
        y = middle - edge * scale
        drawing.line(_LEFT, y, _LEFT + axis, y, GRID if edge else QUIET)
        if edge % 50 == 0:
            words: Message = message("in-tune")
            if edge:
                words = message("axis-cents", cents=abs(edge), side="sharp" if edge > 0 else "flat")
            drawing.words(_LEFT - 12, y + 10, say(words), "end", size=26)
    pitches = sorted(heard, key=lambda pitch: (pitch.midi, pitch.step))
    for number, pitch in enumerate(pitches):
        x = _LEFT + axis * (number + 0.5) / len(pitches)
        for cents in heard[pitch]:
            drawing.line(x - 12, _held(middle, scale, cents), x + 12, _held(middle, scale, cents), "#9a9a9a", 4)
        centre = median(heard[pitch])
        colour = IN_TUNE if abs(centre) <= IN_TUNE_CENTS else SHARP if centre > 0 else FLAT
        drawing.dot(x, _held(middle, scale, centre), 11, colour)
        drawing.words(x, bottom + 36, say(pitch), "middle", INK)
        drawing.words(x, bottom + 68, f"{len(heard[pitch])}×", "middle", size=24)
    return drawing.system(say(message("plot-tuning")))


def _held(middle: float, scale: float, cents: float) -> float:
    return middle - scale * max(-_MOST_CENTS, min(_MOST_CENTS, cents))


def level_plot(tune: Tune, report: Report, width_mm: float) -> System | None:
    """The level of each plain note along the bars, in dB against the take's usual one; None for too few notes."""
    course = _course(tune, report)
    if course is None or len(report.notes) < 2:
        return None
    drawing = Drawing(10 * width_mm, 300)
    top, bottom, reach = 20.0, 250.0, 12.0
    middle, scale = (top + bottom) / 2, (bottom - top) / 2 / reach
    axis = _frame(drawing, course, top, bottom, numbers=True)
    drawing.line(_LEFT, middle, _LEFT + axis, middle, QUIET)
    for decibels, words in ((9, message("louder")), (0, message("usual-level")), (-9, message("softer"))):
        drawing.words(_LEFT - 12, middle - decibels * scale + 10, say(words), "end")
    places = []
    for note in report.notes:
        away = max(-reach, min(reach, note.level_db - report.level.usual_db))
        places.append((_LEFT + course.place(note) * axis, middle - away * scale))
    drawing.curve(_smooth(places), QUIET, 4)
    for x, y in places:
        drawing.dot(x, y, 7, INK)
    return drawing.system(say(message("plot-level")))


def _smooth(places: Iterable[tuple[float, float]], reach: int = 2) -> list[tuple[float, float]]:
    found = list(places)
    return [
        (
            x,
            sum(y for _, y in found[max(0, n - reach) : n + reach + 1])
            / len(found[max(0, n - reach) : n + reach + 1]),
        )
        for n, (x, _) in enumerate(found)
    ]
