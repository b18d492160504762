"""Progress over takes of one tune: a row of measures a take, kept in a file beside the report, as table and plots.

A row is known by the content of its recording, so that hearing a take again replaces its row and adds none.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from datetime import date
from hashlib import blake2s
from pathlib import Path
from statistics import median
from typing import Any, Final, Literal

from fioritura.errors import ReadError
from fioritura.files import read_bytes
from fioritura.listening.rows import Report, Status
from fioritura.listening.words import in_a_row
from fioritura.notation.engraving.engrave import System
from fioritura.review.colours import GRID, INK, QUIET
from fioritura.review.plots import Drawing
from fioritura.review.take_review import Review
from fioritura.tune import Tune
from fioritura.words import Message, capital, message, say

__all__ = [
    "MEASURES",
    "Measure",
    "TakeRow",
    "joined",
    "progress_plot",
    "progress_words",
    "read_rows",
    "row_of",
    "rows_text",
    "shown",
]

MOST_ROWS: Final = 200
MOST_SHOWN: Final = 6

Unit = Literal["percent", "ms", "cents", "db", "tempo"]


@dataclass(frozen=True, slots=True)
class Measure:
    """One measure of a take: how it is named and printed, and which way is better (1 more, −1 less, 0 neither)."""

    id: str
    name: Message
    unit: Unit
    better: int = 0

    def amount(self, value: float) -> Message:
        """A value as it is printed."""
        return message(f"amount-{self.unit}", amount=round(value))


MEASURES: Final = (
    Measure("ornaments", message("measure-ornaments"), "percent", 1),
    Measure("right_notes", message("measure-notes"), "percent", 1),
    Measure("spread_ms", message("measure-spread"), "ms", -1),
    Measure("drift_percent", message("measure-drift"), "percent"),
    Measure("pitch_cents", message("measure-pitch"), "cents", -1),
    Measure("uneven_percent", message("measure-uneven"), "percent", -1),
    Measure("range_db", message("measure-level"), "db"),
    Measure("tempo", message("measure-tempo"), "tempo"),
)


@dataclass(frozen=True, slots=True)
class TakeRow:
    """What is kept of a take: its name, the day of the recording, its tune and sound by digest, and the measures."""

    take: str
    day: str
    tune: str
    sound: str
    measures: dict[str, float]


def measures_of(report: Report) -> dict[str, float]:
    """The measures of a report by id; one that nothing speaks for is left out."""
    found: dict[str, float] = {"tempo": report.timing.quarters_per_minute}
    done, missed = report.count(Status.DONE), report.count(Status.MISSED)
    if done + missed:
        found["ornaments"] = round(100 * done / (done + missed), 1)
    if report.notes:
        found["right_notes"] = round(100 * report.right / max(report.wanted, 1), 1)
        found["spread_ms"] = report.timing.spread_ms
        found["drift_percent"] = report.timing.drift_percent
        found["range_db"] = report.level.range_db
    cents = [abs(note.cents) for note in report.notes if note.cents is not None]
    if cents:
        found["pitch_cents"] = round(median(cents), 1)
    if report.evenness:
        found["uneven_percent"] = round(median(row.spread_percent for row in report.evenness), 1)
    return found


def row_of(review: Review, path: Path) -> TakeRow:
    """The row of a take that was read from a file."""
    sound = blake2s(digest_size=8)
    with path.open("rb") as file:
        while block := file.read(1 << 20):
            sound.update(block)
    day = date.fromtimestamp(path.stat().st_mtime).isoformat()
    return TakeRow(review.name, day, tune_digest(review.tune), sound.hexdigest(), measures_of(review.report))


def tune_digest(tune: Tune) -> str:
    """A short text that is the same for the same melody in the same rhythm, in whatever key."""
    first = tune.notes[0].pitch.midi
    notes = [(note.onset_ticks, note.duration_ticks, note.pitch.midi - first) for note in tune.notes]
    return blake2s(repr(notes).encode(), digest_size=8).hexdigest()


def joined(earlier: Sequence[TakeRow], row: TakeRow) -> tuple[TakeRow, ...]:
    """Earlier rows and a new one; a row of the same tune and sound gives way to it."""
    kept = [other for other in earlier if (other.tune, other.sound) != (row.tune, row.sound)]
    return (*kept, row)[-MOST_ROWS:]


def shown(rows: Sequence[TakeRow], tune: Tune) -> tuple[TakeRow, ...]:
    """The latest rows of one tune."""
    digest = tune_digest(tune)
    return tuple(row for row in rows if row.tune == digest)[-MOST_SHOWN:]


def rows_text(rows: Sequence[TakeRow]) -> str:
    """The rows as the text of a file."""
    return json.dumps([asdict(row) for row in rows], indent=2, ensure_ascii=False) + "\n"


def read_rows(path: Path) -> tuple[TakeRow, ...]:
    """Rows that an earlier review left; none where there is no such file.

    Raises:
        ReadError: the file is not one of these.
    """
    if not path.exists():
        return ()
    try:
        return tuple(_row(data) for data in json.loads(read_bytes(path)))
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError):
        raise ReadError("not-earlier-takes", file=str(path)) from None


def _row(data: dict[str, Any]) -> TakeRow:
    take, day, tune, sound = (str(data[name]) for name in ("take", "day", "tune", "sound"))
    known = {measure.id for measure in MEASURES}
    return TakeRow(
        take, day, tune, sound, {id: float(value) for id, value in data["measures"].items() if id in known}
    )


def progress_plot(rows: Sequence[TakeRow], width_mm: float) -> System | None:
    """Each measure with a better side over the takes, in small plots beside each other; None for fewer than two."""
    wanted = [
        measure for measure in MEASURES if measure.better and sum(measure.id in row.measures for row in rows) > 1
    ]
    if len(rows) < 2 or not wanted:
        return None
    drawing = Drawing(10 * width_mm, 330)
    gap = 40.0
    width = (drawing.width - gap * (len(wanted) - 1)) / len(wanted)
    for number, measure in enumerate(wanted):
        _small_plot(drawing, measure, rows, number * (width + gap), width)
    return drawing.system(say(message("plot-progress")))


def progress_words(rows: Sequence[TakeRow]) -> Message:
    """What has grown since the first take, and what has not."""
    first, last = rows[0].measures, rows[-1].measures
    better, other = [], []
    for measure in MEASURES:
        if not measure.better or measure.id not in first or measure.id not in last:
            continue
        change = measure.better * (last[measure.id] - first[measure.id])
        then, now = measure.amount(first[measure.id]), measure.amount(last[measure.id])
        words = message("then-and-now", measure=measure.name, then=then, now=now)
        if change > 0.5:
            better.append(words)
        elif change < -0.5:
            other.append(words)
    found = message("progress-takes", count=len(rows))
    if better:
        found = message("progress-better", before=found, measures=in_a_row(better))
    if other:
        found = message("progress-worse", before=found, measures=in_a_row(other))
    return found


def _small_plot(drawing: Drawing, measure: Measure, rows: Sequence[TakeRow], left: float, width: float) -> None:
    top, bottom = 90.0, 270.0
    values = [(n, row.measures[measure.id]) for n, row in enumerate(rows) if measure.id in row.measures]
    low, high = min(value for _, value in values), max(value for _, value in values)
    if measure.better > 0:
        low, high = min(low, 90.0), 100.0
    reach = max(high - low, 0.2 * max(abs(high), 1.0))
    middle = (low + high) / 2
    step = (width - 100) / max(len(rows) - 1, 1)
    for number, words in enumerate(_two_lines(capital(say(measure.name)))):
        drawing.words(left, 24 + 32 * number, words, size=26)
    drawing.line(left, bottom + 10, left + width, bottom + 10, GRID)
    places = []
    for number, value in values:
        share = (value - middle) / reach + 0.5
        places.append((left + 40 + number * step, bottom - share * (bottom - top)))
    drawing.curve(places, QUIET, 4)
    for place, (x, y) in enumerate(places):
        drawing.dot(x, y, 9, INK)
        if place in (0, len(places) - 1):
            drawing.words(x, y - 22, say(measure.amount(values[place][1])), "middle", INK, 26)


def _two_lines(text: str) -> list[str]:
    words = text.split()
    half = max(1, (len(words) + 1) // 2)
    return [" ".join(words[:half]), " ".join(words[half:])]
