"""The JSON API, which the page itself uses; its OpenAPI document is at ``/api/openapi.json``."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path
from typing import Annotated, Any, Final

from fastapi import APIRouter, Depends, File, Form, Query, Request, Response, UploadFile
from fastapi import Path as InPath
from fastapi.responses import FileResponse, JSONResponse
from starlette.background import BackgroundTask

from fioritura.arrange.arrangement import Arrangement
from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.errors import FiorituraError, OptionError, ReadError
from fioritura.notation.assemble import Irregular
from fioritura.players.idiom import AskedIdiom, asked_idiom
from fioritura.shelf.archive import Checks, Doubles, restore, write_archive
from fioritura.techniques.table import technique_named
from fioritura.web.bringing import TYPED, Choices, arrange_all, each_arranged, problem_of, shelved
from fioritura.web.hearing import Sounds, figure_sound, hearing
from fioritura.web.intake import MOST_TUNES, Source, check_tune, source_of
from fioritura.web.jobs import Made
from fioritura.web.jobs_api import JobView, job_view, jobs_of
from fioritura.web.lesson_views import check_plan
from fioritura.web.models import (
    AbcText,
    AbcView,
    AlternativeView,
    ArrangementView,
    Copied,
    Decision,
    HearingView,
    NewCopy,
    Problem,
    RestoredView,
    SettingChange,
    StepChange,
    TuneChange,
    TuneView,
    Typed,
    Welcome,
)
from fioritura.web.staves import PageSize, engraved_tune
from fioritura.web.take_views import check_take
from fioritura.web.views import alternative_views, arrangement_view, system_views, tune_view
from fioritura.web.workspace import OpenArrangement, WantedSetting, Workspace
from fioritura.words import Message, kept, message, say

__all__ = ["api"]

api: Final = APIRouter(prefix="/api")

Id = Annotated[int, InPath(ge=1, le=2**53)]
Width = Annotated[float, Query(ge=60, le=600, description="Width of the page in millimetres")]
Staff = Annotated[float, Query(ge=4, le=14, description="Height of a staff in millimetres")]
Seed = Annotated[int | None, Query(ge=0, le=1_000_000, description="The version to show beside this one")]
Tempo = Annotated[float, Query(ge=5, le=800, description="Beats a minute")]
FigureName = Annotated[str, Query(max_length=120)]


Files = Annotated[list[UploadFile], File(description="MusicXML, ABC or MIDI files")]


def _choices(
    player: Annotated[str, Form(max_length=40)] = "alto-sax",
    level: Annotated[int, Form(ge=1, le=5)] = 3,
    idiom: Annotated[AskedIdiom, Form()] = "file",
    unfolds: Annotated[bool, Form()] = True,
    tags: Annotated[str, Form(max_length=200)] = "",
) -> Choices:
    return Choices(player, level, asked_idiom(idiom), unfolds, tuple(tags.split(",")))


def _workspace(request: Request) -> Workspace:
    workspace: Workspace = request.app.state.workspace
    return workspace


def _sounds(request: Request) -> Sounds:
    sounds: Sounds = request.app.state.sounds
    return sounds


@api.get("/arrangements/{id}", tags=["arrangements"])
def show(request: Request, id: Id, width: Width = 180, staff: Staff = 7, seed: Seed = None) -> ArrangementView:
    """An arrangement, engraved: plain over ornamented, and another version under them when a seed is given."""
    work = _workspace(request).open(id)
    return _shown(request, work, PageSize(width, staff), seed)


@api.post("/arrangements/{id}/decisions", tags=["arrangements"])
def decide(
    request: Request, id: Id, decision: Decision, width: Width = 180, staff: Staff = 7, seed: Seed = None
) -> ArrangementView:
    """Keep, leave out or replace a figure, or raise or lower one of its notes; the rest is chosen anew around it."""

    def change(arrangement: Arrangement) -> Arrangement:
        return _decided(arrangement, decision)

    work = _workspace(request).open(id)
    with work.lock:
        name = _name_of(work.arrangement, decision.figure)
        said = message("step-decided", kind=decision.kind, figure=name)
        work = _workspace(request).decide(id, decision.at, said, change)
        return _shown(request, work, PageSize(width, staff), seed, keeps=True)


@api.post("/arrangements/{id}/undo", tags=["arrangements"])
def undo(
    request: Request, id: Id, change: StepChange, width: Width = 180, staff: Staff = 7, seed: Seed = None
) -> ArrangementView:
    """Take the last step back."""
    return _shown(request, _workspace(request).move(id, change.at, -1), PageSize(width, staff), seed, keeps=True)


@api.post("/arrangements/{id}/redo", tags=["arrangements"])
def redo(
    request: Request, id: Id, change: StepChange, width: Width = 180, staff: Staff = 7, seed: Seed = None
) -> ArrangementView:
    """Make the step again that was taken back."""
    return _shown(request, _workspace(request).move(id, change.at, 1), PageSize(width, staff), seed, keeps=True)


@api.put("/arrangements/{id}/setting", tags=["arrangements"])
def set_up(
    request: Request, id: Id, change: SettingChange, width: Width = 180, staff: Staff = 7, seed: Seed = None
) -> ArrangementView:
    """Arrange anew for another player, level, idiom, feel, tempo, choice of techniques or seed."""
    wanted = WantedSetting(
        change.player,
        change.level,
        change.idiom,
        change.feel,
        change.tempo,
        tuple(change.only),
        tuple(change.without),
        change.seed,
        change.density,
    )
    return _shown(request, _workspace(request).set(id, change.at, wanted), PageSize(width, staff), seed)


@api.post("/arrangements/{id}/copy", tags=["arrangements"], status_code=201)
def copy(request: Request, id: Id, wanted: NewCopy) -> Copied:
    """Make another arrangement of the same tune, as this one stands, without its history."""
    workspace = _workspace(request)
    step = workspace.shelf.step(id)
    return Copied(
        id=workspace.shelf.add_arrangement(
            step.tune_id, wanted.name.strip() or kept(message("arrangement-copy")), step.text
        )
    )


@api.delete("/arrangements/{id}", tags=["arrangements"], status_code=204)
def remove_arrangement(request: Request, id: Id) -> Response:
    """Take one of several arrangements of a tune off the shelf, with its lessons; the last one stays with its tune."""
    workspace = _workspace(request)
    workspace.shelf.remove_arrangement(id)
    workspace.forget([id])
    return Response(status_code=204)


@api.get("/arrangements/{id}/alternatives", tags=["arrangements"])
def alternatives(
    request: Request, id: Id, figure: FigureName, count: Annotated[int, Query(ge=1, le=12)] = 6
) -> list[AlternativeView]:
    """What could stand where a figure stands, best first, each with its little staff."""
    work = _workspace(request).open(id)
    with work.lock:
        arrangement = work.arrangement
    return alternative_views(arrangement, arrangement.alternatives(figure, count))


@api.get("/arrangements/{id}/figure-sound", tags=["sound"], response_class=Response)
def hear_figure(request: Request, id: Id, figure: FigureName) -> Response:
    """A figure in its bars, as FLAC."""
    work = _workspace(request).open(id)
    with work.lock:
        arrangement = work.arrangement
        number = arrangement.survey.by_id.get(figure)
        if number is None:
            raise OptionError("no-figure-here", given=figure)
        found = arrangement.survey.candidates[number]
        standing = {own.id for own in arrangement.rendition.figures}
        shown = arrangement if figure in standing else arrangement.accept(figure)
    key = figure_sound(shown, found, shown.rendition.line, _sounds(request))
    return Response(_sounds(request).get(key), media_type="audio/flac")


@api.get("/arrangements/{id}/hearing", tags=["sound"])
def hear(
    request: Request,
    id: Id,
    tempo: Tempo,
    feel: Annotated[str, Query(max_length=40)] = "",
    seed: Seed = None,
) -> HearingView:
    """What there is to hear at a tempo, and when each note sounds."""
    work = _workspace(request).open(id)
    with work.lock:
        arrangement = work.arrangement
        other = None if seed is None else _workspace(request).other(work, seed)
    heard = hearing(arrangement, _sounds(request), beats_per_minute=tempo, feel=feel, other=other)
    _workspace(request).look_ahead(work)
    return heard


@api.get("/sounds/{key}", tags=["sound"], response_class=Response)
def sound(request: Request, key: str) -> Response:
    """A line or a band part, as FLAC."""
    data = _sounds(request).get(key) if len(key) == 40 and key.isalnum() else None
    if data is None:
        return JSONResponse({"problem": say(message("no-such-sound"))}, 404)
    return Response(data, media_type="audio/flac", headers={"Cache-Control": "private, max-age=86400, immutable"})


@api.post("/abc", tags=["tunes"])
def look_at_abc(typed: AbcText) -> AbcView:
    """Typed ABC, engraved at sounding pitch; and what is wrong with it, and where. What can be read is shown even so."""
    from fioritura.notation.abc.reader import list_abc

    view = AbcView()
    ways: tuple[Irregular, ...] = ("refuse", "keep")
    for way in ways:
        try:
            entries = list_abc(typed.text)
            if not entries:
                raise ReadError("no-tune-yet")
            tune = entries[0].read(irregular=way)
            view.systems = system_views(engraved_tune(tune, PageSize(typed.width, 7.0)))
            view.warnings = [say(warning) for warning in tune.warnings] if way == "refuse" else []
            break
        except FiorituraError as error:
            view.problem = view.problem or problem_of(error)
    return view


@api.post("/tunes/typed", tags=["tunes"])
def bring_typed(request: Request, typed: Typed) -> Welcome:
    """Put typed ABC on the shelf and arrange it."""
    source = source_of(TYPED, typed.text.encode())
    choices = Choices(typed.player, typed.level, asked_idiom(typed.idiom), typed.unfolds)
    return shelved(_workspace(request).shelf, list(each_arranged(source, choices)), ())


@api.post("/tunes", tags=["tunes"])
def bring_files(request: Request, files: Files, choices: Annotated[Choices, Depends(_choices)]) -> Welcome:
    """Put a few files on the shelf, every tune of each, and arrange them."""
    sources, problems = _sources(files)
    found = [one for source in sources for one in each_arranged(source, choices)]
    return shelved(_workspace(request).shelf, [*problems, *found], choices.tags)


@api.post("/tunes/import", tags=["tunes"], status_code=202)
def bring_many(request: Request, files: Files, choices: Annotated[Choices, Depends(_choices)]) -> JobView:
    """The same for many files, as a job; its result says what was brought in, as of `/api/tunes`."""
    shelf = _workspace(request).shelf
    sources, problems = _sources(files)

    def shelve(made: Made) -> Made:
        return Made(shelved(shelf, [*problems, *made.data["found"]], choices.tags).model_dump())

    title = message("job-files", count=len(sources))
    return job_view(jobs_of(request).start("import", title, arrange_all, sources, choices, then=shelve))


@api.get("/tunes", tags=["shelf"])
def tunes(
    request: Request,
    search: Annotated[str, Query(max_length=200)] = "",
    tag: Annotated[str, Query(max_length=60)] = "",
) -> list[TuneView]:
    """The tunes on the shelf, those worked on last first."""
    return [tune_view(entry) for entry in _workspace(request).shelf.tunes(search, tag)]


@api.patch("/tunes/{id}", tags=["shelf"])
def describe(request: Request, id: Id, change: TuneChange) -> TuneView:
    """Give a tune another title or other tags."""
    tags = None if change.tags is None else tuple(change.tags)
    return tune_view(_workspace(request).shelf.describe(id, title=change.title, tags=tags))


@api.delete("/tunes/{id}", tags=["shelf"], status_code=204)
def remove(request: Request, id: Id) -> Response:
    """Take a tune and its arrangements off the shelf."""
    workspace = _workspace(request)
    versions = [version.id for version in workspace.shelf.tune(id).versions]
    workspace.shelf.remove_tune(id)
    workspace.forget(versions)
    return Response(status_code=204)


@api.get("/export", tags=["shelf"], response_class=Response)
def export(request: Request) -> Response:
    """Everything on the shelf as a ZIP file."""
    handle, name = tempfile.mkstemp(prefix="fioritura-", suffix=".zip")
    try:
        with os.fdopen(handle, "w+b") as file:
            write_archive(_workspace(request).shelf, file)
    except BaseException:
        Path(name).unlink()
        raise
    gone = BackgroundTask(Path(name).unlink, missing_ok=True)
    return FileResponse(name, media_type="application/zip", filename="fioritura-shelf.zip", background=gone)


@api.post("/restore", tags=["shelf"])
def restore_archive(
    request: Request,
    archive: Annotated[UploadFile, File(description="A shelf's ZIP file")],
    doubles: Annotated[Doubles, Form(description="What becomes of tunes that stand on the shelf already")] = "skip",
) -> RestoredView:
    """Add what an exported ZIP file holds to the shelf, all of it or nothing."""
    workspace = _workspace(request)
    standing = workspace.shelf.tunes() if doubles == "replace" else []
    checks = Checks(arrangement_from_json, check_take, check_plan, check_tune)
    done = restore(workspace.shelf, archive.file, checks, doubles)
    workspace.forget(version.id for entry in standing for version in entry.versions)
    return RestoredView(tunes=done.added, doubles=done.doubles)


@api.get("/techniques", tags=["tables"])
def techniques() -> list[dict[str, Any]]:
    """The table of ornaments, level by level."""
    from fioritura.lesson.edition import technique_record
    from fioritura.techniques.table import all_techniques

    fields = ("id", "name", "label", "family", "level", "text", "how", "when", "fault", "cure")
    return [technique_record(technique, fields) for technique in all_techniques().values()]


def _shown(
    request: Request, work: OpenArrangement, sheet: PageSize, seed: int | None, *, keeps: bool = False
) -> ArrangementView:
    workspace = _workspace(request)
    with work.lock:
        systems = workspace.engrave(work, sheet, seed, keeps=keeps)
        other = None if seed is None else workspace.other(work, seed)
        title = workspace.shelf.tune(work.step.tune_id).title
        return arrangement_view(work.step, work.arrangement, systems, title, other)


def _name_of(arrangement: Arrangement, id: str) -> Message | str:
    number = arrangement.survey.by_id.get(id)
    if number is None:
        raise OptionError("no-figure-here", given=id)
    return technique_named(arrangement.survey.candidates[number].technique).name


def _decided(arrangement: Arrangement, decision: Decision) -> Arrangement:
    match decision.kind:
        case "keep":
            return arrangement.accept(decision.figure)
        case "release":
            return arrangement.release(decision.figure)
        case "leave-out":
            return arrangement.refuse(decision.figure)
        case "replace":
            if decision.other is None:
                raise OptionError("replace-needs-other")
            return arrangement.swap(decision.figure, decision.other)
        case "raise" | "lower":
            if decision.note is None:
                raise OptionError("bend-needs-note")
            return arrangement.bend(decision.figure, decision.note, 1 if decision.kind == "raise" else -1)


def _sources(files: list[UploadFile]) -> tuple[list[Source], list[Problem]]:
    """Uploads as sources, and what is wrong with the others."""
    found: list[Source] = []
    problems: list[Problem] = []
    for file in files[:MOST_TUNES]:
        try:
            found.append(source_of(file.filename or "tune", file.file.read()))
        except FiorituraError as error:
            said = message("upload-problem", file=_shown_name(file.filename), problem=error.message)
            problems.append(Problem(problem=say(said)))
    return found, problems


def _shown_name(name: str | None) -> str:
    return (name or "?").replace("\\", "/").rsplit("/", 1)[-1][:80]
