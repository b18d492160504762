"""The lesson screen, of a lesson on the shelf or of one that is about to be made."""

from __future__ import annotations

from collections.abc import Callable
from importlib.util import find_spec
from typing import Annotated, Any

from fastapi import FastAPI, Request
from fastapi import Path as InPath
from fastapi.responses import RedirectResponse, Response

from fioritura.lesson.pack import SECTIONS
from fioritura.lesson.plan import AUDIO, LessonPlan
from fioritura.shelf.store import Shelf
from fioritura.web.languages import NAMES
from fioritura.words import LANGUAGES, language_tag

__all__ = ["add_lesson_pages"]

Page = Callable[..., Response]
Id = Annotated[int, InPath(ge=1, le=2**53)]


def add_lesson_pages(app: FastAPI, shelf: Shelf, page: Page, latest: Callable[[], int | None]) -> None:
    """Add the screen's addresses; `page` renders a template, `latest` gives the arrangement last worked on."""

    def screen(request: Request, arrangement: int, lesson: int | None) -> Response:
        tune = shelf.tune(shelf.step(arrangement).tune_id)
        return page(
            request,
            "lesson",
            id=arrangement,
            tune=tune,
            lesson=lesson,
            others=shelf.lessons.lessons(arrangement_id=arrangement),
            usual=LessonPlan(language=language_tag()).data(),
            **_choices(),
        )

    @app.get("/lesson", include_in_schema=False)
    def latest_lesson() -> Response:
        id = latest()
        return RedirectResponse("/bring" if id is None else f"/lesson/for/{id}", 303)

    @app.get("/lesson/for/{arrangement}", include_in_schema=False)
    def lesson_for(arrangement: Id) -> Response:
        latest = next(iter(shelf.lessons.lessons(arrangement_id=arrangement)), None)
        return RedirectResponse(f"/lesson/{latest.id}" if latest else f"/lesson/new/{arrangement}", 303)

    @app.get("/lesson/new/{arrangement}", include_in_schema=False)
    def new_lesson(request: Request, arrangement: Id) -> Response:
        return screen(request, arrangement, None)

    @app.get("/lesson/{id}", include_in_schema=False)
    def lesson(request: Request, id: Id) -> Response:
        return screen(request, shelf.lessons.lesson(id).arrangement_id, id)


def _choices() -> dict[str, Any]:
    can_film = find_spec("av") is not None
    sections = [name for name in SECTIONS if name != "clips" or can_film]
    return {
        "sections": sections,
        "audio": AUDIO,
        "lesson_languages": [(code, NAMES[code]) for code in LANGUAGES],
    }
