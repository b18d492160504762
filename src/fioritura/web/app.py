"""The application: the API, the pages, and the guard around both."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator, Callable, Container, Mapping
from concurrent.futures import ThreadPoolExecutor
from contextlib import asynccontextmanager
from functools import lru_cache
from pathlib import Path
from typing import Annotated, Any, Final

from fastapi import FastAPI, Request
from fastapi import Path as InPath
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse, RedirectResponse, Response
from fastapi.staticfiles import StaticFiles
from fastapi.templating import Jinja2Templates
from starlette.exceptions import HTTPException

from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.errors import FiorituraError, OutputError, ToolError
from fioritura.html import templates_of
from fioritura.players.instruments import all_instruments
from fioritura.shelf.lessons import LessonEntry
from fioritura.shelf.store import NotOnShelfError, Shelf, StaleError
from fioritura.techniques.table import all_techniques
from fioritura.web.api import api
from fioritura.web.bringing import Choices, each_arranged, problem_of, shelved
from fioritura.web.engraver import Engraver
from fioritura.web.families import family_data, family_styles
from fioritura.web.guard import Guard
from fioritura.web.hearing import Sounds, hearing
from fioritura.web.intake import demo_source
from fioritura.web.jobs import Jobs, NoJobError, TooManyJobsError
from fioritura.web.jobs_api import jobs_api
from fioritura.web.languages import CHOICE, NAMES, add_language_choice, reader_in
from fioritura.web.lesson_pages import add_lesson_pages
from fioritura.web.lessons_api import lessons_api
from fioritura.web.models import Problem
from fioritura.web.take_api import take_api
from fioritura.web.take_pages import add_take_pages
from fioritura.web.token_check import TokenCheck, add_entrance
from fioritura.web.views import setting_view, tune_view
from fioritura.web.words import Piece, capital_of, pieces_of, say_in_html
from fioritura.web.workspace import Workspace
from fioritura.words import Message, language, message, remembered, say
from fioritura.words.speech import locale

__all__ = ["create_app", "prepare_sound"]

_HERE: Final = Path(__file__).parent
_ABOUT: Final = (
    "Arrangements, sound, lessons, takes, students and the shelf: the interface that Fioritura's own page uses."
)
_IMPORTED: Final = re.compile(r'^import .* from "\./([\w-]+\.js)";$', re.MULTILINE)

_SAID: Final = re.compile(r'"(page-[a-z-]+)"')

_STATUSES: Final[dict[type[FiorituraError], int]] = {
    NotOnShelfError: 404,
    NoJobError: 404,
    TooManyJobsError: 429,
    StaleError: 409,
    OutputError: 503,
    ToolError: 503,
}

_LIMITS: Final = ("ge", "le", "gt", "lt", "max_length", "min_length")
"""Under which names Pydantic gives the limit that was broken."""

Page = Callable[..., Response]


def create_app(
    shelf: Shelf,
    hosts: Container[str],
    sounds: Sounds | None = None,
    engraver: Engraver | None = None,
    check: TokenCheck | None = None,
    language: str | None = None,
) -> Guard:
    """The guarded application over a shelf; a shelf without tunes is given the demo tune.

    `language` is that of readers who have chosen none on the page; None leaves it to their browsers.

    Raises:
        OptionError: nothing can be said in `language`.
    """
    reader = reader_in(language)
    jobs, workspace = Jobs(), Workspace(shelf, engraver)

    @asynccontextmanager
    async def lifespan(app: FastAPI) -> AsyncIterator[None]:
        yield
        jobs.close()
        workspace.close()

    app = FastAPI(
        title="Fioritura",
        description=_ABOUT,
        docs_url=None,
        redoc_url=None,
        openapi_url="/api/openapi.json",
        lifespan=lifespan,
    )
    app.state.workspace = workspace
    app.state.sounds = sounds or Sounds()
    app.state.jobs = jobs
    app.include_router(api)
    app.include_router(jobs_api)
    app.include_router(lessons_api)
    app.include_router(take_api)
    app.mount("/static", StaticFiles(directory=_HERE / "static"), name="static")
    page = _page_maker()
    _add_pages(app, shelf, page, check)
    _add_errors(app, page)
    if not shelf.tunes():
        _shelve_demo(shelf)
    return Guard(app, hosts, check, reader)


def prepare_sound(shelf: Shelf, sounds: Sounds) -> None:
    """Make what is to be heard of the arrangement that was last worked on, first what the page plays first."""
    id = _latest(shelf)
    if id is None:
        return
    arrangement = arrangement_from_json(shelf.step(id).text)
    view = hearing(arrangement, sounds, beats_per_minute=setting_view(arrangement).tempo)
    sounds.trim()
    lines = {line.name: line.sound for line in view.lines}
    keys = dict.fromkeys([lines["ornamented"], *reversed(view.band.values()), *lines.values()])
    with ThreadPoolExecutor(2) as pool:
        list(pool.map(sounds.get, keys))


def _latest(shelf: Shelf) -> int | None:
    return next((version.id for entry in shelf.tunes() for version in entry.versions), None)


def _shelve_demo(shelf: Shelf) -> None:
    choices = Choices("alto-sax", 3, None, unfolds=True)
    shelved(shelf, list(each_arranged(demo_source(), choices)), ("demo",))


def _add_pages(app: FastAPI, shelf: Shelf, page: Page, check: TokenCheck | None) -> None:
    @app.get("/", include_in_schema=False)
    def home() -> Response:
        id = _latest(shelf)
        return RedirectResponse("/bring" if id is None else f"/stand/{id}", 303)

    @app.get("/stand/{id}", include_in_schema=False)
    def stand(request: Request, id: Annotated[int, InPath(ge=1, le=2**53)]) -> Response:
        step = shelf.step(id)
        tune = shelf.tune(step.tune_id)
        name = next(version.name for version in tune.versions if version.id == id)
        techniques = all_techniques().values()
        return page(request, "stand", id=id, tune=tune, version=say(remembered(name)), techniques=techniques)

    @app.get("/bring", include_in_schema=False)
    def bring(request: Request) -> Response:
        return page(request, "bring")

    @app.get("/shelf", include_in_schema=False)
    def shelf_page(request: Request, search: str = "", tag: str = "") -> Response:
        found = [tune_view(entry) for entry in shelf.tunes(search[:200], tag[:60])]
        lessons: dict[int, list[LessonEntry]] = {}
        for lesson in shelf.lessons.lessons():
            lessons.setdefault(lesson.tune_id, []).append(lesson)
        return page(request, "shelf", tunes=found, lessons=lessons, tags=shelf.tags(), search=search[:200], tag=tag)

    add_language_choice(app)
    if check is not None:
        add_entrance(app, check, page)
    add_lesson_pages(app, shelf, page, lambda: _latest(shelf))
    add_take_pages(app, shelf, page, lambda: _latest(shelf))

    @app.get("/fonts/signs.ttf", include_in_schema=False)
    def signs() -> Response:
        from fioritura.notation.engraving.fonts import font_folder

        data = (font_folder() / "FiorituraSigns.ttf").read_bytes()
        return Response(data, media_type="font/ttf", headers={"Cache-Control": "private, max-age=86400"})

    @app.get("/families.css", include_in_schema=False)
    def families() -> Response:
        return Response(family_styles(), media_type="text/css")


def _page_maker() -> Page:
    """What renders a template under its name."""
    templates = Jinja2Templates(env=templates_of("fioritura.web"))
    templates.env.globals.update(
        modules=_modules,
        script_words=_script_words,
        say=say_in_html,
        capital=capital_of,
        language_choice=CHOICE,
        languages=NAMES,
    )

    def page(request: Request, name: str, status: int = 200, **values: Any) -> Response:
        shared = {"instruments": all_instruments(), "families": family_data(), "page": name, "id": None, "script": ""}
        shared |= {"language": language(), "locale": locale()}
        return templates.TemplateResponse(request, f"{name}.html", shared | values, status)

    return page


@lru_cache(maxsize=32)
def _modules(name: str) -> tuple[str, ...]:
    """A script of the page and all that it imports: a browser that knows them beforehand fetches them at once."""
    found = [name]
    for module in found:
        imported = _IMPORTED.findall((_HERE / "static" / module).read_text(encoding="utf-8"))
        found += [other for other in imported if other not in found]
    return tuple(found)


@lru_cache(maxsize=64)
def _script_words(name: str, language: str) -> dict[str, list[Piece]]:
    """The messages whose names stand in a script of the page, or in what it imports, in the language that is spoken."""
    texts = ((_HERE / "static" / module).read_text(encoding="utf-8") for module in _modules(name))
    return pieces_of({id for text in texts for id in _SAID.findall(text)})


def _add_errors(app: FastAPI, page: Page) -> None:
    """Tell what is wrong: programs as JSON, people on a page."""

    def told(request: Request, status: int, problem: Problem) -> Response:
        if request.url.path.startswith("/api/") or request.method not in ("GET", "HEAD"):
            return JSONResponse(problem.model_dump(), status)
        return page(request, "wrong", status, problem=problem.problem)

    @app.exception_handler(FiorituraError)
    async def on_error(request: Request, error: FiorituraError) -> Response:
        status = next((status for kind, status in _STATUSES.items() if isinstance(error, kind)), 422)
        return told(request, status, problem_of(error))

    @app.exception_handler(RequestValidationError)
    async def on_bad_request(request: Request, error: RequestValidationError) -> Response:
        return told(request, 422, Problem(problem=say(_unfit(error.errors()[0]))))

    @app.exception_handler(HTTPException)
    async def on_no_such_address(request: Request, error: HTTPException) -> Response:
        refused = message("address-refused", status=str(error.status_code))
        problem = message("no-such-address") if error.status_code == 404 else refused
        return told(request, error.status_code, Problem(problem=say(problem)))


def _unfit(fault: Mapping[str, Any]) -> Message:
    """What is wrong with a request, from what Pydantic says of it."""
    place = " ".join(str(part) for part in fault["loc"][1:]) or str(fault["loc"][0])
    limits = fault.get("ctx", {})
    limit = next((limits[name] for name in _LIMITS if isinstance(limits.get(name), int | float)), 0)
    return message("request-unfit", place=place, kind=str(fault["type"]), limit=limit)
