"""The pages of takes and students."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated

from fastapi import FastAPI, Query, Request
from fastapi import Path as InPath
from fastapi.responses import RedirectResponse, Response

from fioritura.shelf.recordings import MOST_BYTES, MOST_SEC
from fioritura.shelf.store import Shelf

__all__ = ["add_take_pages"]

Page = Callable[..., Response]


def add_take_pages(app: FastAPI, shelf: Shelf, page: Page, latest: Callable[[], int | None]) -> None:
    """Add them; `page` renders a template, `latest` gives the arrangement that was last worked on."""

    @app.get("/take", include_in_schema=False)
    def latest_take(student: Annotated[int | None, Query(ge=1, le=2**53)] = None) -> Response:
        id, whose = latest(), f"?student={student}" if student else ""
        return RedirectResponse("/bring" if id is None else f"/take/{id}{whose}", 303)

    @app.get("/take/{id}", include_in_schema=False)
    def take(request: Request, id: Annotated[int, InPath(ge=1, le=2**53)]) -> Response:
        step = shelf.step(id)
        return page(
            request,
            "take",
            id=id,
            tune=shelf.tune(step.tune_id),
            students=shelf.takes.students(),
            most_sec=int(MOST_SEC),
            most_bytes=MOST_BYTES,
        )

    @app.get("/takes/{take_id}", include_in_schema=False)
    def heard(request: Request, take_id: Annotated[str, InPath(pattern="^[0-9a-f]{16}$")]) -> Response:
        entry = shelf.takes.take(take_id)
        return page(
            request,
            "take_report",
            take=entry,
            id=entry.arrangement_id,
            tune=shelf.tune(entry.tune_id),
            students=shelf.takes.students(),
        )

    @app.get("/students", include_in_schema=False)
    def students(request: Request) -> Response:
        return page(request, "take_students", folder=shelf.path.parent)

    @app.get("/students/{student_id}", include_in_schema=False)
    def student(request: Request, student_id: Annotated[int, InPath(ge=0, le=2**53)]) -> Response:
        entry = shelf.takes.student(student_id) if student_id else None
        return page(request, "take_progress", student=entry)
