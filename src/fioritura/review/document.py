"""What a review says, as blocks of a page: for print by the typesetter, for the screen by `fioritura.review.page`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from fioritura.listening.advice import Advice
from fioritura.listening.report import FigureRow, Report, Status
from fioritura.listening.words import key_words
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
from fioritura.notation.engraving.sheet import instrument_title
from fioritura.review.colours import ADDED, DONE, FLAT, IN_TUNE, INK, MISSED, SHARP, SLIP
from fioritura.review.exercise import Exercise, Snippet, exercise_for
from fioritura.review.pictures import Pictures, pictures_of
from fioritura.review.played import passages
from fioritura.review.plots import Drawing
from fioritura.review.progress import MEASURES, Measure, TakeRow, progress_plot, progress_words
from fioritura.review.take_review import Review
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import QUARTER
from fioritura.words import say

__all__ = ["ReviewSheet", "review_blocks", "review_document", "sheet_of"]

SURE: Final = 0.9
MOST_TOGETHER: Final = 30
"""A table of no more rows is not divided between pages."""

_STATUS_WORDS: Final = {Status.DONE: "came out", Status.MISSED: "not heard", Status.ADDED: "your own"}


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
    title = sheet.review.report.title or "A take"
    footer = f"{title} · {sheet.review.name}"
    return Document(title, tuple(review_blocks(sheet)), sheet.review.tune.composer, footer, paper)


def review_blocks(sheet: ReviewSheet) -> Iterator[Block]:
    """All that the review says, in the order of reading."""
    review = sheet.review
    yield TitleBlock(
        review.report.title or "A take",
        "what was heard, and what to practise next",
        instrument_title(review.instrument),
        review.name,
    )
    yield Paragraph((Run(review.praise, bold=True), Run(_around(review))))
    yield _at_a_glance(review)
    for finding in review.take.findings:
        yield Caution((Run("About the recording. ", bold=True), Run(finding.advice)))
    yield Heading("Three things to practise next")
    for number, (advice, exercise) in enumerate(zip(review.advice, sheet.exercises, strict=True), start=1):
        yield Keep(tuple(_advice(sheet, number, advice, exercise)))
    yield from _progress(sheet)
    yield from _played(sheet)
    yield from _ornaments(review.report)
    yield from _slips(review.report)
    yield from _time(sheet)
    yield from _tuning(sheet)
    yield from _level(sheet)
    yield Small(
        "Ornaments are named with how sure the ear is; a name that is not sure is given with the other reading. Cents "
        "count from equal temperament on the player's own A, milliseconds from the player's own beat."
    )


def _around(review: Review) -> str:
    words = key_words(review.report.semitones)
    passages = review.report.passages
    found = f" The take sounds {words}." if words else ""
    return found + (f" It was heard in {passages} passages, repeats and fresh starts among them." * (passages > 1))


def _at_a_glance(review: Review) -> Table:
    report, timing = review.report, review.report.timing
    beat = review.tune.metre.beat_ticks / QUARTER
    right = sum(note.is_right for note in report.notes)
    wanted = len(report.notes) + sum(slip.kind == "left out" for slip in report.slips)
    cells = [("Melody notes right", f"{right} of {wanted}")]
    if report.is_asked:
        done, missed = report.count(Status.DONE), report.count(Status.MISSED)
        cells.insert(0, ("Ornaments", f"{done} of {done + missed}"))
    else:
        cells.insert(0, ("Ornaments", str(len(report.figures))))
    cells.append(("Tempo", f"{timing.quarters_per_minute / beat:.0f} beats a minute"))
    cells.append(("Time", f"within {timing.spread_ms:.0f} ms"))
    cells.append(("Eighths", f"{timing.swing_ratio:.1f} to 1" if timing.swing_ratio > 1.05 else "even"))
    cells.append(("Tuning", _cents(report.tuning_cents)))
    return Table(tuple(name for name, _ in cells), (tuple(value for _, value in cells),), (1.0,) * len(cells))


def _cents(cents: float) -> str:
    if abs(cents) < 1:
        return "A = 440 Hz"
    return f"{abs(cents):.0f} cents {'sharp' if cents > 0 else 'flat'}"


# To practise ---------------------------------------------------------------------------------------------------


def _advice(sheet: ReviewSheet, number: int, advice: Advice, exercise: Exercise | None) -> Iterator[Block]:
    yield Heading(f"{number}  {advice.title}", 2)
    yield Paragraph((Run(f"{advice.finding} ", italic=True), Run(advice.practice)))
    if exercise is None:
        return
    if exercise.steps:
        yield Bullets(exercise.steps)
    narrow = [piece for piece in exercise.pieces if not piece.is_wide]
    for pair in zip(narrow[::2], [*narrow[1::2], None], strict=False):
        columns = tuple(_piece(piece) if piece else () for piece in pair)
        yield Columns(columns, (1.0, 1.0))
    for piece in exercise.pieces:
        if piece.is_wide:
            yield from _piece(piece)
    beat = sheet.review.tune.metre.beat_ticks / QUARTER
    goal = sheet.review.report.timing.quarters_per_minute / beat
    yield Small(
        f"Begin at {exercise.start_tempo} beats a minute; three times right in a row, then four faster, up to {goal:.0f}."
    )


def _piece(piece: Snippet) -> tuple[Block, ...]:
    return Caption(piece.caption), Music(piece.systems)


# What was played -----------------------------------------------------------------------------------------------


def _played(sheet: ReviewSheet) -> Iterator[Block]:
    review = sheet.review
    below = "what was asked" if review.asked else "the plain tune"
    opening: list[Block] = [
        Heading("What you played"),
        Paragraph(
            f"Above what was heard, below it {below}. The line behind the notes is your pitch: on the head it is in "
            "tune, and a staff space higher or lower is a semitone."
        ),
        Music((_key_to_colours(review, sheet.width_mm),)),
    ]
    found = list(passages(review))
    for passage in found:
        first, *others = sheet.pictures[f"passage-{passage.number}"]
        if len(found) > 1:
            bars = f"bars {passage.first_bar or 'pickup'}–{passage.last_bar}"
            opening.append(Caption(f"Passage {passage.number} of {len(found)}, {bars}"))
        yield Keep((*opening, Music((first,))))
        opening = []
        if others:
            yield Music(tuple(others), 5.0)


def _key_to_colours(review: Review, width_mm: float) -> System:
    is_asked = review.report.is_asked
    patches = [(DONE, "as asked" if is_asked else "ornament")]
    if is_asked:
        patches += [(ADDED, "your own"), (MISSED, "asked, not heard")]
    patches.append((SLIP, "other than written"))
    drawing, x = Drawing(10 * width_mm, 50), 0.0
    for colour, words in patches:
        drawing.box(x, 10, 44, 28, colour)
        drawing.words(x + 54, 34, words, colour=INK)
        x += 84 + 14.0 * len(words)
    for colour, words in ((IN_TUNE, "in tune"), (SHARP, "sharp"), (FLAT, "flat")):
        drawing.line(x, 26, x + 44, 26, colour, 9)
        drawing.words(x + 54, 34, words, colour=INK)
        x += 84 + 14.0 * len(words)
    return drawing.system("Colours: " + ", ".join(words for _, words in patches))


def _ornaments(report: Report) -> Iterator[Block]:
    if not report.figures:
        yield Paragraph("No ornament was heard: the tune was played plain.")
        return
    several = report.passages > 1
    header = (*(("Passage",) if several else ()), "Bar", "Beat", "Ornament", "", "How sure")
    rows = [
        (
            *((str(row.passage),) if several else ()),
            str(row.bar or "pickup"),
            _beat(row.beat),
            *_ornament(report, row),
        )
        for row in report.figures
    ]
    widths = (*((0.0,) if several else ()), 0.0, 0.0, 3.0, 1.5, 3.0)
    listing = (Heading("Ornaments, one by one", 2), Table(header, tuple(rows), widths, is_dense=len(rows) > 12))
    yield from listing if len(rows) > MOST_TOGETHER else (Keep(listing),)


def _beat(beat: float) -> str:
    """A beat to the nearest twelfth, which holds sixteenths and triplets."""
    return f"{round(12 * beat) / 12:.3g}"


def _ornament(report: Report, row: FigureRow) -> tuple[Text, Text, Text]:
    status = _STATUS_WORDS[row.status] if report.is_asked else ""
    if row.status is Status.MISSED:
        return row.name, (Run(status, italic=True),), "–"
    sure = f"{row.confidence:.0%}"
    if row.confidence < SURE and row.other:
        sure += f", else {'no ornament' if row.other == 'plain' else say(technique_named(row.other).name)}"
    return row.name, status, sure


def _slips(report: Report) -> Iterator[Block]:
    if report.slips:
        yield Heading("Notes other than written", 2)
        yield Bullets(tuple(f"Bar {slip.bar}, beat {_beat(slip.beat)}: {slip.words}." for slip in report.slips))


# Time, tuning, level -------------------------------------------------------------------------------------------


def _time(sheet: ReviewSheet) -> Iterator[Block]:
    report = sheet.review.report
    timing = report.timing
    if "time" not in sheet.pictures:
        return
    words = [f"Two notes of three lie within {timing.spread_ms:.0f} ms of your own beat."]
    if abs(timing.drift_percent) >= 1:
        way = "faster" if timing.drift_percent > 0 else "slower"
        words.append(f"The end is {abs(timing.drift_percent):.0f} percent {way} than the beginning.")
    else:
        words.append("The tempo at the end is that of the beginning.")
    if timing.swing_ratio > 1.05:
        words.append(f"Long and short eighths are {timing.swing_ratio:.1f} to 1.")
    if timing.grace_ms is not None:
        words.append(f"Grace notes last {timing.grace_ms:.0f} ms.")
    yield Keep((Heading("Time"), Paragraph(" ".join(words)), Music(sheet.pictures["time"])))
    if report.evenness:
        rows = tuple(
            (
                str(row.bar),
                _beat(row.beat),
                row.name,
                f"{row.spread_percent:.0f} percent",
                _evenness(row.spread_percent),
            )
            for row in report.evenness
        )
        header = ("Bar", "Beat", "Quick notes of the", "differ in length by", "")
        yield Keep((Heading("Evenness", 2), Table(header, rows, (0, 0, 3, 2, 2), is_dense=len(rows) > 8)))


def _evenness(percent: float) -> str:
    return "even" if percent <= 10 else "nearly even" if percent <= 20 else "to practise"


def _tuning(sheet: ReviewSheet) -> Iterator[Block]:
    report = sheet.review.report
    if "tuning" not in sheet.pictures:
        return
    words = (
        f"The whole take is {_cents(report.tuning_cents)}."
        if abs(report.tuning_cents) >= 1
        else "The take is at A = 440 Hz."
    )
    words += " Each stroke is a note that was held, each dot the middle of them, against your own tuning."
    parts: list[Block] = [Heading("Tuning"), Paragraph(words), Music(sheet.pictures["tuning"])]
    if report.by_register:
        registers = "; ".join(f"{row.name} {row.cents:+.0f} cents ({row.count} notes)" for row in report.by_register)
        parts.append(Paragraph(f"By register: {registers}."))
    yield Keep(tuple(parts))


def _level(sheet: ReviewSheet) -> Iterator[Block]:
    if "level" in sheet.pictures:
        words = f"Soft and loud notes lie {sheet.review.report.level.range_db:.0f} dB apart."
        yield Keep((Heading("Tone level"), Paragraph(words), Music(sheet.pictures["level"])))


# Progress ------------------------------------------------------------------------------------------------------


def _progress(sheet: ReviewSheet) -> Iterator[Block]:
    rows = sheet.rows
    if len(rows) < 2:
        return
    parts: list[Block] = [Heading("Progress"), Paragraph(progress_words(rows))]
    plot = progress_plot(rows, sheet.width_mm)
    if plot is not None:
        parts.append(Music((plot,)))
    header = ("", *(f"{row.take}, {row.day}" for row in rows))
    table = [
        (measure.name, *(_value(row, measure) for row in rows))
        for measure in MEASURES
        if any(measure.id in row.measures for row in rows)
    ]
    parts.append(Table(header, tuple(table), (2.4, *(1.0 for _ in rows)), is_dense=True))
    yield Keep(tuple(parts))


def _value(row: TakeRow, measure: Measure) -> str:
    return measure.text(row.measures[measure.id]) if measure.id in row.measures else "–"
