"""What a review says, as blocks of a page: for print by the typesetter, for the screen by `fioritura.review.page`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from fioritura.listening.advice import Advice
from fioritura.listening.naming import PLAIN
from fioritura.listening.rows import FigureRow, Report, Status
from fioritura.listening.words import bars_from_to, in_a_row
from fioritura.notation.engraving.engrave import System
from fioritura.notation.engraving.page import (
    Block,
    Bullets,
    Caption,
    Caution,
    Columns,
    Document,
    Heading,
    Keep,
    Music,
    Paper,
    Paragraph,
    Run,
    Small,
    Table,
    Text,
    TitleBlock,
    print_area_mm,
)
from fioritura.review.colours import ADDED, DONE, FLAT, IN_TUNE, INK, MISSED, SHARP, SLIP
from fioritura.review.exercise import Exercise, Snippet, exercise_for
from fioritura.review.pictures import Pictures, pictures_of
from fioritura.review.played import passages
from fioritura.review.plots import Drawing
from fioritura.review.progress import MEASURES, Measure, TakeRow, progress_plot, progress_words
from fioritura.review.take_review import Review
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import QUARTER
from fioritura.theory.position import Position
from fioritura.words import Message, capital, language_tag, message, say

__all__ = ["ReviewSheet", "review_blocks", "review_document", "sheet_of", "title_of"]

SURE: Final = 0.9
_SWUNG: Final = 1.05
MOST_TOGETHER: Final = 30
"""A table of no more rows is not divided between pages."""

_STATUS: Final = {
    Status.DONE: message("review-status-done"),
    Status.MISSED: message("review-status-missed"),
    Status.ADDED: message("review-status-added"),
}


@dataclass(frozen=True)
class ReviewSheet:
    """A review with what its pages show: pictures, an exercise for each piece of advice, and the rows of all takes."""

    review: Review
    pictures: Pictures
    exercises: tuple[Exercise | None, ...]
    rows: tuple[TakeRow, ...] = ()
    width_mm: float = 178.0


def sheet_of(review: Review, rows: Sequence[TakeRow] = (), paper: Paper = "a4") -> ReviewSheet:
    """Draw all that the pages of a review show; `rows` are those of the takes of this tune, the last one its own.

    Raises:
        ToolError: the engraver is missing or failed.
        OptionError: no such paper.
    """
    width = print_area_mm(paper)[0]
    exercises = tuple(exercise_for(review, advice, width) for advice in review.advice)
    return ReviewSheet(review, pictures_of(review, width), exercises, tuple(rows), width)


def review_document(sheet: ReviewSheet, paper: Paper = "a4") -> Document:
    """The review for print."""
    title = title_of(sheet)
    footer = f"{title} · {sheet.review.name}"
    blocks = tuple(review_blocks(sheet))
    return Document(title, blocks, sheet.review.tune.composer, footer, paper, language_tag())


def title_of(sheet: ReviewSheet) -> str:
    """What stands over a review."""
    return sheet.review.report.title or say(message("review-untitled"))


def review_blocks(sheet: ReviewSheet) -> Iterator[Block]:
    """All that the review says, in the order of reading."""
    review = sheet.review
    yield TitleBlock(
        title_of(sheet),
        say(message("review-subtitle")),
        say(review.instrument.full_title),
        review.name,
    )
    praise = "" if review.praise == review.headline else f" {say(review.praise)}"
    yield Paragraph((Run(say(review.headline), bold=True), Run(praise + _around(review))))
    yield _at_a_glance(review)
    for finding in review.take.findings:
        yield Caution((Run(f"{say(message('review-recording'))} ", bold=True), Run(say(finding.advice))))
    yield Heading(say(message("review-next")))
    for number, (advice, exercise) in enumerate(zip(review.advice, sheet.exercises, strict=True), start=1):
        yield Keep(tuple(_advice(sheet, number, advice, exercise)))
    yield from _progress(sheet)
    yield from _played(sheet)
    yield from _ornaments(review.report)
    yield from _slips(review.report)
    yield from _time(sheet)
    yield from _tuning(sheet)
    yield from _level(sheet)
    yield Small(say(message("review-how-measured")))


def _around(review: Review) -> str:
    passages = review.report.passages
    return f" {say(message('review-passages', count=passages))}" if passages > 1 else ""


def _at_a_glance(review: Review) -> Table:
    report, timing = review.report, review.report.timing
    beat = review.tune.metre.beat_ticks / QUARTER
    cells = [(message("glance-notes"), message("glance-of", right=report.right, wanted=report.wanted))]
    if report.is_asked:
        done, missed = report.count(Status.DONE), report.count(Status.MISSED)
        cells.insert(0, (message("glance-ornaments"), message("glance-of", right=done, wanted=done + missed)))
    else:
        cells.insert(0, (message("glance-ornaments"), message("glance-count", count=len(report.figures))))
    is_swung = timing.swing_ratio > _SWUNG
    swing = message("glance-swing", ratio=round(timing.swing_ratio, 1)) if is_swung else message("glance-even")
    cells += [
        (message("glance-tempo"), message("beats-a-minute", tempo=round(timing.quarters_per_minute / beat))),
        (message("glance-time"), message("glance-within", ms=round(timing.spread_ms))),
        (message("glance-eighths"), swing),
        (message("glance-tuning"), _cents(report.tuning_cents)),
    ]
    header, row = zip(*((say(name), say(value)) for name, value in cells), strict=True)
    return Table(header, (row,), (1.0,) * len(cells))


def _cents(cents: float) -> Message:
    if abs(cents) < 1:
        return message("in-tune-with-440")
    return message("cents-off", cents=round(abs(cents)), side="sharp" if cents > 0 else "flat")


def _offset(cents: float) -> Message:
    """Cents in tables and lists: none, or how far to which side."""
    return _cents(cents) if abs(cents) >= 1 else message("in-tune")


# To practise ---------------------------------------------------------------------------------------------------


def _advice(sheet: ReviewSheet, number: int, advice: Advice, exercise: Exercise | None) -> Iterator[Block]:
    yield Heading(f"{number}  {say(advice.title)}", 2)
    yield Paragraph((Run(f"{say(advice.finding)} ", italic=True), Run(say(advice.practice))))
    if exercise is None:
        return
    if exercise.steps:
        yield Bullets(tuple(map(say, exercise.steps)))
    narrow = [piece for piece in exercise.pieces if not piece.is_wide]
    for pair in zip(narrow[::2], [*narrow[1::2], None], strict=False):
        columns = tuple(_piece(piece) if piece else () for piece in pair)
        yield Columns(columns, (1.0, 1.0))
    for piece in exercise.pieces:
        if piece.is_wide:
            yield from _piece(piece)
    yield Small(say(message("review-ladder", start=exercise.start_tempo, goal=exercise.goal_tempo)))


def _piece(piece: Snippet) -> tuple[Block, ...]:
    return Caption(say(piece.caption)), Music(piece.systems)


# What was played -----------------------------------------------------------------------------------------------


def _played(sheet: ReviewSheet) -> Iterator[Block]:
    review = sheet.review
    opening: list[Block] = [
        Heading(say(message("review-played"))),
        Paragraph(say(message("review-played-about", below="asked" if review.asked else "plain"))),
        Music((_key_to_colours(review, sheet.width_mm),)),
    ]
    found = list(passages(review))
    for passage in found:
        first, *others = sheet.pictures[f"passage-{passage.number}"]
        if len(found) > 1:
            bars = bars_from_to(passage.first_bar, passage.last_bar)
            opening.append(
                Caption(say(message("review-passage", number=passage.number, count=len(found), bars=bars)))
            )
        yield Keep((*opening, Music((first,))))
        opening = []
        if others:
            yield Music(tuple(others), 5.0)


def _key_to_colours(review: Review, width_mm: float) -> System:
    is_asked = review.report.is_asked
    patches = [(DONE, message("colour-as-asked") if is_asked else message("colour-ornament"))]
    if is_asked:
        patches += [(ADDED, _STATUS[Status.ADDED]), (MISSED, message("colour-missed"))]
    patches.append((SLIP, message("colour-slip")))
    drawing, x = Drawing(10 * width_mm, 50), 0.0
    for colour, said in patches:
        words = say(said)
        drawing.box(x, 10, 44, 28, colour)
        drawing.words(x + 54, 34, words, colour=INK)
        x += 84 + 14.0 * len(words)
    lines = (IN_TUNE, message("in-tune")), (SHARP, message("sharp")), (FLAT, message("flat"))
    for colour, said in lines:
        words = say(said)
        drawing.line(x, 26, x + 44, 26, colour, 9)
        drawing.words(x + 54, 34, words, colour=INK)
        x += 84 + 14.0 * len(words)
    return drawing.system(say(message("colours", names=tuple(said for _, said in (*patches, *lines)))))


def _ornaments(report: Report) -> Iterator[Block]:
    if not report.figures:
        yield Paragraph(say(message("review-no-ornament")))
        return
    several = report.passages > 1
    names = message("column-bar"), message("column-beat"), message("column-ornament")
    header = (
        *((say(message("column-passage")),) if several else ()),
        *map(say, names),
        "",
        say(message("column-sure")),
    )
    rows = [
        (
            *((str(row.passage),) if several else ()),
            _bar(row.position),
            _place(row.position),
            *_ornament(report, row),
        )
        for row in report.figures
    ]
    widths = (*((0.0,) if several else ()), 0.0, 0.0, 3.0, 1.5, 3.0)
    listing = (
        Heading(say(message("review-ornaments")), 2),
        Table(header, tuple(rows), widths, is_dense=len(rows) > 12),
    )
    yield from listing if len(rows) > MOST_TOGETHER else (Keep(listing),)


def _bar(position: Position) -> str:
    """A bar as a cell of a table shows it."""
    return say(message("column-pickup")) if position.is_pickup else str(position.bar)


def _place(position: Position) -> str:
    """A place in a bar as a cell of a table shows it."""
    return capital(say(position.message.form("name")))


def _ornament(report: Report, row: FigureRow) -> tuple[Text, Text, Text]:
    name, status = capital(say(row.name)), say(_STATUS[row.status]) if report.is_asked else ""
    if row.status is Status.MISSED:
        return name, (Run(status, italic=True),), "–"
    sure = message("share", share=round(row.confidence, 2))
    if row.confidence < SURE and row.other:
        other = message("no-ornament") if row.other == PLAIN else technique_named(row.other).name
        sure = message("sure-else", share=sure, other=other)
    return name, status, say(sure)


def _slips(report: Report) -> Iterator[Block]:
    if report.slips:
        yield Heading(say(message("review-slips")), 2)
        where = [(slip.position.message.form("full"), slip.words) for slip in report.slips]
        yield Bullets(tuple(say(message("review-slip", where=place, words=words)) for place, words in where))


# Time, tuning, level -------------------------------------------------------------------------------------------


def _time(sheet: ReviewSheet) -> Iterator[Block]:
    report = sheet.review.report
    timing = report.timing
    if "time" not in sheet.pictures:
        return
    said = [message("review-spread", ms=round(timing.spread_ms))]
    if abs(timing.drift_percent) >= 1:
        way = "faster" if timing.drift_percent > 0 else "slower"
        said.append(message("drift", percent=round(abs(timing.drift_percent)), way=way))
    else:
        said.append(message("review-no-drift"))
    if timing.swing_ratio > _SWUNG:
        said.append(message("review-swing", ratio=round(timing.swing_ratio, 1)))
    if timing.grace_ms is not None:
        said.append(message("review-graces", ms=round(timing.grace_ms)))
    words = " ".join(map(say, said))
    yield Keep((Heading(say(message("glance-time"))), Paragraph(words), Music(sheet.pictures["time"])))
    if report.evenness:
        rows = tuple(
            (
                _bar(row.position),
                _place(row.position),
                capital(say(row.name)),
                say(message("percent", percent=round(row.spread_percent))),
                say(_evenness(row.spread_percent)),
            )
            for row in report.evenness
        )
        columns = message("column-bar"), message("column-beat"), message("column-figure"), message("column-uneven")
        header = (*map(say, columns), "")
        yield Keep(
            (
                Heading(say(message("review-evenness")), 2),
                Table(header, rows, (0, 0, 3, 2, 2), is_dense=len(rows) > 8),
            )
        )


def _evenness(percent: float) -> Message:
    if percent <= 10:
        return message("glance-even")
    return message("nearly-even") if percent <= 20 else message("to-practise")


def _tuning(sheet: ReviewSheet) -> Iterator[Block]:
    report = sheet.review.report
    if "tuning" not in sheet.pictures:
        return
    said = message("review-tuning", off=_cents(report.tuning_cents)), message("review-tuning-about")
    parts: list[Block] = [
        Heading(say(message("glance-tuning"))),
        Paragraph(" ".join(map(say, said))),
        Music(sheet.pictures["tuning"]),
    ]
    registers = [
        message("review-register", register=row.name, off=_offset(row.cents), count=row.count)
        for row in report.by_register
    ]
    if registers:
        parts.append(Paragraph(say(message("review-registers", registers=in_a_row(registers)))))
    yield Keep(tuple(parts))


def _level(sheet: ReviewSheet) -> Iterator[Block]:
    if "level" in sheet.pictures:
        words = say(message("review-level", db=round(sheet.review.report.level.range_db)))
        yield Keep((Heading(say(message("review-level-heading"))), Paragraph(words), Music(sheet.pictures["level"])))


# Progress ------------------------------------------------------------------------------------------------------


def _progress(sheet: ReviewSheet) -> Iterator[Block]:
    rows = sheet.rows
    if len(rows) < 2:
        return
    parts: list[Block] = [Heading(say(message("review-progress"))), Paragraph(say(progress_words(rows)))]
    plot = progress_plot(rows, sheet.width_mm)
    if plot is not None:
        parts.append(Music((plot,)))
    header = ("", *(f"{row.take}, {row.day}" for row in rows))
    table = [
        (capital(say(measure.name)), *(_value(row, measure) for row in rows))
        for measure in MEASURES
        if any(measure.id in row.measures for row in rows)
    ]
    parts.append(Table(header, tuple(table), (2.4, *(1.0 for _ in rows)), is_dense=True))
    yield Keep(tuple(parts))


def _value(row: TakeRow, measure: Measure) -> str:
    return say(measure.amount(row.measures[measure.id])) if measure.id in row.measures else "–"
