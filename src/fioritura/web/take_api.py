"""The JSON API of students and takes."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Final

from fastapi import APIRouter, File, Form, Query, Request, Response, UploadFile
from fastapi import Path as InPath
from fastapi.responses import FileResponse

from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.shelf.recordings import media_type_of
from fioritura.shelf.store import NotOnShelfError, Shelf
from fioritura.shelf.takes import NewTake
from fioritura.web.hearing import Sounds, hearing
from fioritura.web.jobs import Made
from fioritura.web.jobs_api import JobView, job_view, jobs_of
from fioritura.web.staves import PageSize
from fioritura.web.take_job import Order, PlayedBar, listen
from fioritura.web.take_models import (
    Keeping,
    LineView,
    Name,
    Started,
    StudentView,
    TakeLine,
    TakeSummary,
    TakeView,
    Which,
)
from fioritura.web.take_print import player_and_day, print_report, rows_before
from fioritura.web.take_views import checked_report, line_view, student_view, take_line, take_summary, take_view

__all__ = ["take_api"]

take_api: Final = APIRouter(prefix="/api")

Width = Annotated[float, Query(ge=60, le=600, description="Width of the page in millimetres")]
Staff = Annotated[float, Query(ge=4, le=14, description="Height of a staff in millimetres")]
Number = Annotated[int, InPath(ge=1, le=2**53)]
TakeId = Annotated[str, InPath(pattern="^[0-9a-f]{16}$")]
Wanted = Annotated[int | None, Query(ge=1, le=2**53)]


def _shelf(request: Request) -> Shelf:
    shelf: Shelf = request.app.state.workspace.shelf
    return shelf


@take_api.get("/students", tags=["students"])
def students(request: Request) -> list[StudentView]:
    """All students by name."""
    return [student_view(entry) for entry in _shelf(request).takes.students()]


@take_api.post("/students", tags=["students"], status_code=201)
def add_student(request: Request, name: Name) -> StudentView:
    """A new student: a name, and nothing else is kept."""
    takes = _shelf(request).takes
    return student_view(takes.student(takes.add_student(name.name)))


@take_api.patch("/students/{id}", tags=["students"])
def rename_student(request: Request, id: Number, name: Name) -> StudentView:
    """Give a student another name."""
    takes = _shelf(request).takes
    takes.rename_student(id, name.name)
    return student_view(takes.student(id))


@take_api.delete("/students/{id}", tags=["students"], status_code=204)
def remove_student(request: Request, id: Number) -> Response:
    """Take a student off the shelf, with all takes and recordings."""
    _shelf(request).takes.remove_student(id)
    return Response(status_code=204)


@take_api.get("/arrangements/{id}/line", tags=["takes"])
def line(request: Request, id: Number, which: Which, width: Width = 180, staff: Staff = 7) -> LineView:
    """One line of an arrangement, engraved alone, to be played from."""
    work = request.app.state.workspace.open(id)
    with work.lock:
        arrangement = work.arrangement
    return line_view(arrangement, which, PageSize(width, staff))


@take_api.post("/takes", tags=["takes"], status_code=202)
def bring_take(
    request: Request,
    recording: Annotated[UploadFile, File(description="WAV, FLAC, MP3 or OGG, up to ten minutes and 64 MB")],
    arrangement: Annotated[int, Form(ge=1, le=2**53)],
    line: Annotated[Which, Form(description="The line that was to be played")],
    tempo: Annotated[float, Form(ge=5, le=800, description="Beats a minute")],
    feel: Annotated[str, Form(max_length=40, description="The band's feel, as for hearing")] = "",
    offset: Annotated[
        float | None,
        Form(ge=-60, le=600, description="Where in the time of what was heard the recording begins, in seconds"),
    ] = None,
    student: Annotated[int | None, Form(ge=1, le=2**53)] = None,
) -> Started:
    """A recording of an arrangement. It is listened to in a job; the take then waits to be kept or discarded."""
    shelf = _shelf(request)
    step = shelf.step(arrangement)
    if student is not None:
        shelf.takes.student(student)
    bars = () if offset is None else _bars(request, step.text, tempo, feel)
    kept = shelf.takes.recordings.add(recording.file)
    order = Order(
        path=shelf.takes.recordings.path(kept.name),
        arrangement=step.text,
        line=line,
        tempo=tempo,
        feel=feel,
        seconds=kept.seconds,
        offset_sec=offset or 0.0,
        bars=bars,
    )

    def shelve(made: Made) -> Made:
        shelf.takes.add(
            NewTake(
                id=kept.id,
                tune_id=step.tune_id,
                arrangement_id=arrangement,
                student_id=student,
                recording=kept.name,
                facts=made.data["facts"],
                arrangement=step.text,
                report=made.data["report"],
            )
        )
        return Made({"take": kept.id})

    try:
        job = jobs_of(request).start("take", shelf.tune(step.tune_id).title, listen, order, then=shelve)
    except BaseException:
        shelf.takes.recordings.remove([kept.name])
        raise
    return Started(take=kept.id, job=job_view(job))


@take_api.get("/takes", tags=["takes"])
def takes(request: Request, student: Wanted = None, tune: Wanted = None) -> list[TakeSummary]:
    """Takes, the latest first; of a student or a tune where these are given."""
    return [take_summary(entry) for entry in _shelf(request).takes.takes(student_id=student, tune_id=tune)]


@take_api.get("/takes/{id}", tags=["takes"])
def take(request: Request, id: TakeId) -> TakeView:
    """A take with its report."""
    shelf = _shelf(request)
    return take_view(shelf.takes.take(id), shelf.takes.report(id))


@take_api.put("/takes/{id}", tags=["takes"])
def keep_take(request: Request, id: TakeId, keeping: Keeping) -> TakeSummary:
    """Keep a take, as that of a student or of nobody in particular; or give it to another student."""
    return take_summary(_shelf(request).takes.keep(id, keeping.student))


@take_api.delete("/takes/{id}", tags=["takes"], status_code=204)
def discard_take(request: Request, id: TakeId) -> Response:
    """Discard a take and its recording."""
    _shelf(request).takes.remove(id)
    return Response(status_code=204)


@take_api.get("/takes/{id}/line", tags=["takes"])
def played_line(
    request: Request,
    id: TakeId,
    width: Width = 180,
    staff: Staff = 7,
    passage: Annotated[int, Query(ge=1, le=10_000)] = 1,
) -> TakeLine:
    """What was to be played, engraved, with what was played in a passage."""
    shelf = _shelf(request)
    entry = take_summary(shelf.takes.take(id))
    report = checked_report(shelf.takes.report(id))
    arrangement = arrangement_from_json(shelf.takes.arrangement(id))
    return take_line(arrangement, entry.facts.line, report, passage, PageSize(width, staff))


@take_api.post("/takes/{id}/print", tags=["takes"], status_code=202)
def print_take(request: Request, id: TakeId) -> JobView:
    """The report with its exercises as PDF, made in a job."""
    takes = _shelf(request).takes
    entry, arrangement = takes.take(id), takes.arrangement(id)
    facts = take_summary(entry).facts
    order = Order(
        path=_recording(request, entry.recording),
        arrangement=arrangement,
        line=facts.line,
        tempo=facts.tempo,
        feel=facts.feel,
        seconds=facts.seconds,
        name=", ".join(player_and_day(entry)),
    )
    rows = rows_before(takes.takes(tune_id=entry.tune_id), entry, arrangement)
    return job_view(jobs_of(request).start("print", entry.tune, print_report, order, rows, player_and_day(entry)))


@take_api.get("/takes/{id}/sound", tags=["takes"], response_class=FileResponse)
def recorded_sound(request: Request, id: TakeId) -> Response:
    """The recording of a take."""
    shelf = _shelf(request)
    name = shelf.takes.take(id).recording
    return FileResponse(
        _recording(request, name),
        media_type=media_type_of(name),
        headers={"Cache-Control": "private, max-age=86400, immutable"},
    )


def _recording(request: Request, name: str) -> Path:
    path = _shelf(request).takes.recordings.path(name)
    if not path.is_file():
        raise NotOnShelfError("recording-gone", folder=str(path.parent), name=name)
    return path


def _bars(request: Request, text: str, tempo: float, feel: str) -> tuple[PlayedBar, ...]:
    sounds: Sounds = request.app.state.sounds
    heard = hearing(arrangement_from_json(text), sounds, beats_per_minute=tempo, feel=feel)
    return tuple((bar.start, bar.end, bar.bar) for bar in heard.bars)
