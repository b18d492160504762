"""The API of long work: how a job stands, told once or as it goes, its end, and the file that it made."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from typing import Annotated, Any, Final, Literal

from fastapi import APIRouter, Request, Response
from fastapi import Path as InPath
from fastapi.responses import FileResponse, StreamingResponse
from pydantic import BaseModel

from fioritura.web.jobs import Job, Jobs, NoJobError
from fioritura.words import say

__all__ = ["JobStep", "JobView", "job_view", "jobs_api", "jobs_of"]

jobs_api: Final = APIRouter(prefix="/api/jobs", tags=["jobs"])

Id = Annotated[str, InPath(pattern="^[0-9a-f]{16}$")]

_LOOK_SEC: Final = 0.1
_BEAT_SEC: Final = 15.0
"""How often a silent stream says that it is still there."""


class JobStep(BaseModel):
    """A step of a job: `done` of `total`."""

    name: str
    done: int
    total: int


class JobView(BaseModel):
    """A job as it stands. `about` says what it is for, `result` is what it made, `file` where its file can be fetched (empty where there is none)."""

    id: str
    kind: str
    title: str
    about: str
    state: Literal["waiting", "running", "done", "failed", "cancelled"]
    steps: list[JobStep]
    problem: str
    result: dict[str, Any] | None
    file: str


def jobs_of(request: Request) -> Jobs:
    """The jobs of the application."""
    jobs: Jobs = request.app.state.jobs
    return jobs


def job_view(job: Job) -> JobView:
    """What is told of a job."""
    status = job.status
    return JobView(
        id=job.id,
        kind=job.kind,
        title=say(job.title),
        about=job.about,
        state=status.state,
        steps=[JobStep(name=name, done=done, total=total) for name, (done, total) in status.steps.items()],
        problem=say(status.problem) if status.problem else "",
        result=dict(status.made.data) if status.made else None,
        file=f"/api/jobs/{job.id}/file" if status.made and status.made.file else "",
    )


@jobs_api.get("")
def all_jobs(request: Request) -> list[JobView]:
    """The jobs that are remembered, the latest first."""
    return [job_view(job) for job in jobs_of(request).jobs()]


@jobs_api.get("/{id}")
def one_job(request: Request, id: Id) -> JobView:
    """How a job stands."""
    return job_view(jobs_of(request).job(id))


@jobs_api.get("/{id}/events", response_class=StreamingResponse)
async def follow(request: Request, id: Id) -> Response:
    """Server-sent events: the job as it stands, at each change, to its end."""
    job = jobs_of(request).job(id)
    return StreamingResponse(_events(job), media_type="text/event-stream")


@jobs_api.delete("/{id}")
def cancel(request: Request, id: Id) -> JobView:
    """Stop a job; one that is over stays as it is."""
    return job_view(jobs_of(request).cancel(id))


@jobs_api.get("/{id}/file", response_class=FileResponse)
def fetch(request: Request, id: Id) -> Response:
    """The file that a job has made."""
    file = jobs_of(request).job(id).file
    if file is None or not file.is_file():
        raise NoJobError("job-without-file")
    return FileResponse(file, filename=file.name)


async def _events(job: Job) -> AsyncIterator[str]:
    told, silent_sec = -1, 0.0
    while True:
        status = job.status
        if status.number != told:
            told, silent_sec = status.number, 0.0
            yield f"id: {told}\ndata: {job_view(job).model_dump_json()}\n\n"
        if status.is_over:
            return
        await asyncio.sleep(_LOOK_SEC)
        silent_sec += _LOOK_SEC
        if silent_sec >= _BEAT_SEC:
            silent_sec = 0.0
            yield ": still here\n\n"
