"""Long work: told of as it goes, bounded, cancelled with all that it has started, and surviving a worker's death."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from fastapi import FastAPI
from starlette.testclient import TestClient

from fioritura.errors import OptionError
from fioritura.shelf.store import Shelf
from fioritura.web.app import create_app
from fioritura.web.guard import hosts_of
from fioritura.web.jobs import Bench, Job, Jobs, Made, NoJobError, TooManyJobsError

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="needs POSIX signals")

PATIENCE_SEC = 30.0


def count(bench: Bench, most: int) -> Made:
    for number in range(most):
        bench.tell("counting", number + 1, most)
    (bench.folder / "sum.txt").write_text(str(most))
    return Made({"most": most}, file="sum.txt")


def refuse(bench: Bench) -> Made:
    raise OptionError("There are 9 of them: 8 is the limit, take one away.")


def stumble(bench: Bench) -> Made:
    raise ZeroDivisionError("by zero")


def die(bench: Bench) -> Made:
    os.kill(os.getpid(), signal.SIGKILL)
    return Made({})


def sleep_with_a_child(bench: Bench, note: Path) -> Made:
    child = subprocess.Popen(["sleep", "600"])
    note.write_text(str(child.pid))
    bench.tell("sleeping", 0, 1)
    child.wait()
    return Made({})


@pytest.fixture
def jobs() -> Iterator[Jobs]:
    jobs = Jobs(at_once=1, most_waiting=2, most_kept=3)
    yield jobs
    jobs.close()


def until(holds: Callable[[], bool]) -> None:
    last = time.monotonic() + PATIENCE_SEC
    while not holds():
        assert time.monotonic() < last
        time.sleep(0.02)


def finished(job: Job) -> Job:
    until(lambda: job.status.is_over)
    return job


def lives(pid: int) -> bool:
    try:
        return Path(f"/proc/{pid}/stat").read_text().split()[2] != "Z"
    except FileNotFoundError:
        return False


def test_a_job_tells_of_its_steps_and_leaves_its_file(jobs: Jobs) -> None:
    seen: list[Made] = []
    job = finished(jobs.start("count", "To ten", count, 10, then=seen.append))
    assert job.status.state == "done", job.status.problem
    assert job.status.steps == {"counting": (10, 10)}
    assert job.status.number >= 11
    assert job.file is not None
    assert job.file.read_text() == "10"
    assert seen == [Made({"most": 10}, "sum.txt")]


@pytest.mark.parametrize(
    ("work", "problem"),
    [(refuse, "8 is the limit"), (stumble, "ZeroDivisionError"), (die, "signal 9")],
)
def test_a_job_that_fails_says_why_and_the_next_one_is_done(
    jobs: Jobs, work: Callable[[Bench], Made], problem: str
) -> None:
    job = finished(jobs.start("bad", "Bad", work))
    assert job.status.state == "failed"
    assert problem in str(job.status.problem)
    assert finished(jobs.start("count", "To two", count, 2)).status.state == "done"
    until(lambda: not job.folder.exists())


def test_a_cancelled_job_takes_along_what_it_has_started(jobs: Jobs, tmp_path: Path) -> None:
    job = jobs.start("sleep", "Sleep", sleep_with_a_child, tmp_path / "pid")
    until(lambda: "sleeping" in job.status.steps)
    child = int((tmp_path / "pid").read_text())
    assert lives(child)
    assert jobs.cancel(job.id).status.state == "cancelled"
    until(lambda: not lives(child))
    until(lambda: not job.folder.exists())


def test_waiting_jobs_are_bounded_and_can_be_cancelled(jobs: Jobs, tmp_path: Path) -> None:
    running = jobs.start("sleep", "Sleep", sleep_with_a_child, tmp_path / "pid")
    until(lambda: running.status.state == "running")
    waiting = [jobs.start("count", "Count", count, 1) for _ in range(2)]
    with pytest.raises(TooManyJobsError, match="2 jobs are waiting"):
        jobs.start("count", "One too many", count, 1)
    jobs.cancel(waiting[0].id)
    jobs.cancel(running.id)
    assert finished(waiting[1]).status.state == "done"
    assert waiting[0].status.state == "cancelled"


def test_a_job_that_takes_too_long_is_ended(tmp_path: Path) -> None:
    jobs = Jobs(most_sec=1.5)
    job = finished(jobs.start("sleep", "Sleep", sleep_with_a_child, tmp_path / "pid"))
    assert "more than" in str(job.status.problem)
    jobs.close()


def test_old_jobs_are_forgotten_with_their_files(jobs: Jobs) -> None:
    made = [finished(jobs.start("count", "Count", count, 1)) for _ in range(5)]
    with pytest.raises(NoJobError):
        jobs.job(made[0].id)
    assert not made[0].folder.exists()
    assert jobs.job(made[-1].id) is made[-1]


def test_closing_ends_everything(tmp_path: Path) -> None:
    jobs = Jobs()
    job = jobs.start("sleep", "Sleep", sleep_with_a_child, tmp_path / "pid")
    until(lambda: "sleeping" in job.status.steps)
    jobs.close()
    until(lambda: not lives(int((tmp_path / "pid").read_text())))
    assert not job.folder.parent.exists()


def test_the_server_streams_a_job_to_its_end(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    guard = create_app(shelf, hosts_of(8420))
    assert isinstance(guard.app, FastAPI)
    with TestClient(guard, base_url="http://127.0.0.1:8420") as client:
        job = guard.app.state.jobs.start("count", "To three", count, 3)
        with client.stream("GET", f"/api/jobs/{job.id}/events") as answer:
            assert answer.headers["content-type"].startswith("text/event-stream")
            told = [json.loads(line[6:]) for line in answer.iter_lines() if line.startswith("data: ")]
        assert told[-1]["state"] == "done"
        assert told[-1]["result"] == {"most": 3}
        fetched = client.get(told[-1]["file"])
        assert fetched.text == "3"
        assert 'filename="sum.txt"' in fetched.headers["content-disposition"]
        assert [one["id"] for one in client.get("/api/jobs").json()] == [job.id]
        assert client.delete(f"/api/jobs/{job.id}").json()["state"] == "done"
        assert client.get("/api/jobs/0123456789abcdef").status_code == 404
    shelf.close()
