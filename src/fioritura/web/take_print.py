"""A take's report for print, made in a process of its own: the review's pages, with the exercises and the earlier takes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.notation.engraving.typeset import pdf
from fioritura.review.document import review_document, sheet_of
from fioritura.review.progress import TakeRow, measures_of, shown, tune_digest
from fioritura.shelf.takes import TakeEntry
from fioritura.web.jobs import Bench, Made
from fioritura.web.take_job import Order, reviewed
from fioritura.web.take_models import TakeFacts
from fioritura.words import message, say

__all__ = ["player_and_day", "print_report", "rows_before"]

_FILE: Final = "report.pdf"


def rows_before(takes: Sequence[TakeEntry], take: TakeEntry, arrangement: str) -> tuple[TakeRow, ...]:
    """The kept takes of the same tune and student that were made before a take, the earliest first."""
    digest = tune_digest(arrangement_from_json(arrangement).tune)
    return tuple(
        _row(other, digest)
        for other in reversed(takes)
        if other.is_kept and other.student_id == take.student_id and other.taken_at < take.taken_at
    )


def print_report(bench: Bench, order: Order, rows: tuple[TakeRow, ...], own: tuple[str, str]) -> Made:
    """Listen again, and set the report; `rows` are those of the takes before this one, `own` its player and day."""
    bench.tell("listening", 0, 1)
    review = reviewed(order)
    bench.tell("listening", 1, 1)
    bench.tell("documents", 0, 1)
    row = TakeRow(*own, tune_digest(review.tune), order.path.stem, measures_of(review.report))
    sheet = sheet_of(review, shown((*rows, row), review.tune))
    (bench.folder / _FILE).write_bytes(pdf(review_document(sheet)))
    bench.tell("documents", 1, 1)
    return Made({}, file=_FILE)


def _row(take: TakeEntry, digest: str) -> TakeRow:
    facts = TakeFacts.model_validate(take.facts)
    measures = {"tempo": facts.quarters, "spread_ms": facts.spread_ms, "pitch_cents": facts.pitch_cents}
    if facts.asked:
        measures["ornaments"] = round(100 * facts.done / facts.asked, 1)
    if facts.notes:
        measures["right_notes"] = round(100 * facts.right / facts.notes, 1)
    return TakeRow(*player_and_day(take), digest, take.id, measures)


def player_and_day(take: TakeEntry) -> tuple[str, str]:
    """Who played, and the day as ISO 8601 has it."""
    return take.student or say(message("review-untitled")), take.taken_at[:10]
