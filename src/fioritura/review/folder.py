"""All files of a review in one folder: the report for machines, for the screen and for print, pictures, and progress."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Final

from fioritura.files import staged_folder
from fioritura.notation.engraving.page import Paper
from fioritura.notation.engraving.svg import standalone
from fioritura.notation.engraving.typeset import pdf
from fioritura.review.document import review_document, sheet_of
from fioritura.review.page import review_page
from fioritura.review.progress import TakeRow, rows_text, shown
from fioritura.review.take_review import Review

__all__ = ["PROGRESS_FILE", "write_review"]

PROGRESS_FILE: Final = "progress.json"


def write_review(
    review: Review,
    rows: Sequence[TakeRow],
    folder: Path,
    paper: Paper = "a4",
    progress: Callable[[str], None] = lambda name: None,
) -> list[Path]:
    """Write a review, all files or none, and return their paths in order.

    Args:
        rows: those of all takes that are known, this one's among them; kept in the folder for the next take.
        progress: is told the name of each file when it is begun.

    Raises:
        OutputError: the folder can't be written.
        ToolError: the engraver or the typesetter is missing or failed.
    """
    progress("pictures")
    sheet = sheet_of(review, shown(rows, review.tune), paper)
    with staged_folder(folder) as stage:
        record = json.dumps(review.to_dict(), indent=2, ensure_ascii=False) + "\n"
        (stage / "report.json").write_text(record, encoding="utf-8")
        progress("report.html")
        (stage / "report.html").write_text(review_page(sheet), encoding="utf-8")
        progress("report.pdf")
        (stage / "report.pdf").write_bytes(pdf(review_document(sheet, paper)))
        (stage / PROGRESS_FILE).write_text(rows_text(rows), encoding="utf-8")
        pictures = stage / "pictures"
        pictures.mkdir()
        for name, systems in sheet.pictures.items():
            for number, system in enumerate(systems, start=1):
                ending = f"-{number}" if len(systems) > 1 else ""
                (pictures / f"{name}{ending}.svg").write_text(standalone(system.svg), encoding="utf-8")
        names = sorted(path.relative_to(stage) for path in stage.rglob("*") if path.is_file())
    return [folder / name for name in names]
