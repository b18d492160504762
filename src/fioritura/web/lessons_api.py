"""The API of lessons: what an arrangement offers one, how a plan will look, the lessons on the shelf, and their packs."""

from __future__ import annotations

from typing import Annotated, Final

from fastapi import APIRouter, Query, Request, Response
from fastapi import Path as InPath

from fioritura.arrange.arrangement_file import arrangement_to_json
from fioritura.errors import FiorituraError
from fioritura.lesson.plan import plan_of, planned_lesson
from fioritura.shelf.lessons import LessonEntry
from fioritura.web.intake import ReadingOptions, Source
from fioritura.web.jobs_api import JobView, job_view, jobs_of
from fioritura.web.lesson_models import LessonChange, LessonView, NewLesson, OfferView, Plan, PreviewView
from fioritura.web.lesson_views import examples_of_plan, offer_view
from fioritura.web.packing import make_pack, moved_octaves
from fioritura.web.workspace import Workspace

__all__ = ["lesson_view", "lessons_api"]

lessons_api: Final = APIRouter(prefix="/api", tags=["lessons"])

Id = Annotated[int, InPath(ge=1, le=2**53)]


Width = Annotated[float, Query(ge=60, le=300, description="Width of the examples in millimetres")]


def _workspace(request: Request) -> Workspace:
    workspace: Workspace = request.app.state.workspace
    return workspace


@lessons_api.get("/arrangements/{id}/lesson-offer")
def offer(
    request: Request,
    id: Id,
    level: Annotated[int | None, Query(ge=1, le=5)] = None,
    language: Annotated[str, Query(max_length=12)] = "en",
    width: Width = 150,
) -> OfferView:
    """Phrases and techniques to choose among, with the techniques' usual words in a language."""
    workspace = _workspace(request)
    work = workspace.open(id)
    title = workspace.shelf.tune(work.step.tune_id).title
    return offer_view(workspace.at_level(work, level), title, language, width)


@lessons_api.post("/lessons/preview")
def preview(request: Request, wanted: NewLesson, width: Width = 150) -> PreviewView:
    """The examples that a plan leads to, as they will be printed, without keeping anything."""
    workspace = _workspace(request)
    plan = plan_of(wanted.plan.model_dump())
    work = workspace.open(wanted.arrangement)
    arrangement = workspace.at_level(work, plan.level)
    source, reading = _source(workspace, work.step.tune_id)
    try:
        lesson = planned_lesson(arrangement, plan, moved_octaves(arrangement, source, reading))
    except FiorituraError as error:
        return PreviewView(examples=[], left_out=[], problem=str(error))
    return examples_of_plan(lesson, plan, width)


@lessons_api.get("/lessons")
def lessons(request: Request, arrangement: Annotated[int | None, Query(ge=1, le=2**53)] = None) -> list[LessonView]:
    """The lessons on the shelf, those changed last first; on one arrangement where it is given."""
    return [lesson_view(entry) for entry in _workspace(request).shelf.lessons.lessons(arrangement_id=arrangement)]


@lessons_api.post("/lessons", status_code=201)
def add(request: Request, new: NewLesson) -> LessonView:
    """Put a lesson on the shelf."""
    workspace = _workspace(request)
    plan = plan_of(new.plan.model_dump())
    title = plan.overrides.get("title") or workspace.shelf.tune(workspace.open(new.arrangement).step.tune_id).title
    return lesson_view(workspace.shelf.lessons.add(new.arrangement, title, plan.data()))


@lessons_api.get("/lessons/{id}")
def one(request: Request, id: Id) -> LessonView:
    """A lesson."""
    return lesson_view(_workspace(request).shelf.lessons.lesson(id))


@lessons_api.put("/lessons/{id}")
def change(request: Request, id: Id, change: LessonChange) -> LessonView:
    """Give a lesson another plan."""
    shelf = _workspace(request).shelf
    plan = plan_of(change.plan.model_dump())
    title = plan.overrides.get("title") or shelf.lessons.lesson(id).tune
    return lesson_view(shelf.lessons.change(id, change.at, title, plan.data()))


@lessons_api.delete("/lessons/{id}", status_code=204)
def remove(request: Request, id: Id) -> Response:
    """Take a lesson off the shelf."""
    _workspace(request).shelf.lessons.remove(id)
    return Response(status_code=204)


@lessons_api.post("/lessons/{id}/pack", status_code=202)
def pack(request: Request, id: Id) -> JobView:
    """Have the pack of a lesson made; follow the job to the ZIP file. One that is being made already is given back."""
    workspace, jobs = _workspace(request), jobs_of(request)
    entry = workspace.shelf.lessons.lesson(id)
    about = f"lesson {id} at {entry.revision}"
    for job in jobs.jobs():
        if job.about == about and not job.status.is_over:
            return job_view(job)
    work = workspace.open(entry.arrangement_id)
    with work.lock:
        text = arrangement_to_json(work.arrangement)
    source, reading = _source(workspace, entry.tune_id)
    job = jobs.start(
        "pack", entry.title, make_pack, text, dict(entry.plan), entry.revision, source, reading, about=about
    )
    return job_view(job)


def lesson_view(entry: LessonEntry) -> LessonView:
    """A lesson as it stands on the shelf."""
    return LessonView(
        id=entry.id,
        arrangement=entry.arrangement_id,
        tune=entry.tune,
        title=entry.title,
        plan=Plan.model_validate(dict(entry.plan)),
        revision=entry.revision,
        changed_at=entry.changed_at,
    )


def _source(workspace: Workspace, tune_id: int) -> tuple[Source, ReadingOptions]:
    tune = workspace.shelf.tune(tune_id)
    return Source(tune.source_name, workspace.shelf.source(tune_id)), ReadingOptions.of(tune.reading)
