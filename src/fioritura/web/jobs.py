"""Long work in processes of its own: bounded, told of as it goes, cancelled at once, and no danger to the server.

A job is a function of a module, called in a fresh process with a `Bench` and what it was given. Each job leads a group of
processes, so that a cancelled one takes along whatever it has started; one that dies fails with words that say so::

    def count(bench: Bench, most: int) -> Made:
        for number in range(most):
            bench.tell("counting", number + 1, most)
        (bench.folder / "sum.txt").write_text(str(most))
        return Made({"most": most}, file="sum.txt")

    job = jobs.start("count", "Count to ten", count, 10)
"""

from __future__ import annotations

import multiprocessing
import os
import secrets
import shutil
import signal
import sys
import tempfile
import time
import traceback
from collections import OrderedDict
from collections.abc import Callable, Mapping
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass, field, replace
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from pathlib import Path
from threading import RLock
from typing import Any, Final, Literal

from fioritura.errors import FiorituraError, OptionError
from fioritura.words import Message, language, message, speaking, verbatim

__all__ = ["Bench", "Job", "Jobs", "Made", "NoJobError", "Status", "TooManyJobsError"]

AT_ONCE: Final = 2
MOST_WAITING: Final = 20
MOST_KEPT: Final = 30
MOST_SEC: Final = 1800.0
_NICENESS: Final = 5
_PRELOADED: Final = ("fioritura.web.jobs", "fioritura.web.packing", "fioritura.web.engraver")

State = Literal["waiting", "running", "done", "failed", "cancelled"]


class NoJobError(OptionError):
    """There is no job of that name."""


class TooManyJobsError(OptionError):
    """So many jobs wait that no other is taken."""


@dataclass(frozen=True, slots=True)
class Made:
    """What a job has made: plain data, and the name of a file in its folder that is to be given out (or none)."""

    data: Mapping[str, Any]
    file: str = ""


@dataclass(frozen=True, slots=True)
class Bench:
    """Where a job works: a folder of its own, and whom it tells of a step, how much of it is done, and of how much."""

    folder: Path
    tell: Callable[[str, int, int], None]


Function = Callable[..., Made]


@dataclass(frozen=True, slots=True)
class Status:
    """How a job stands. `steps` give each step's (done, total) in the order in which they began; `number` grows with each
    change; `problem` says why the job failed."""

    state: State = "waiting"
    steps: Mapping[str, tuple[int, int]] = field(default_factory=dict)
    made: Made | None = None
    problem: Message | None = None
    number: int = 0

    @property
    def is_over(self) -> bool:
        """True when nothing more will change."""
        return self.state in ("done", "failed", "cancelled")


@dataclass
class Job:
    """A job: its name, its kind and title, its folder, and how it stands (replaced whole, so any thread may look)."""

    id: str
    kind: str
    title: Message
    folder: Path
    about: str = ""
    """What the job is for, such as ``"lesson 3"``."""
    language: str = ""
    """The language of who asked for it, in which it is done."""
    status: Status = field(default_factory=Status)
    process: BaseProcess | None = None

    @property
    def file(self) -> Path | None:
        """The file to give out, when there is one."""
        made = self.status.made
        return self.folder / made.file if made and made.file else None


class Jobs:
    """The jobs of a server. Safe to use from several threads."""

    def __init__(
        self,
        *,
        at_once: int = AT_ONCE,
        most_waiting: int = MOST_WAITING,
        most_kept: int = MOST_KEPT,
        most_sec: float = MOST_SEC,
    ) -> None:
        """`at_once` jobs run, `most_waiting` may wait, `most_kept` are remembered with what they made, none runs longer
        than `most_sec` seconds."""
        self.most_waiting, self.most_kept, self.most_sec = most_waiting, most_kept, most_sec
        self._folder = Path(tempfile.mkdtemp(prefix="fioritura-jobs-"))
        self._jobs: OrderedDict[str, Job] = OrderedDict()
        self._attendants = ThreadPoolExecutor(at_once, "job")
        self._lock = RLock()
        self._is_closed = False
        self._context = _context()

    def start(
        self,
        kind: str,
        title: Message | str,
        function: Function,
        *given: Any,
        about: str = "",
        then: Callable[[Made], Made | None] | None = None,
    ) -> Job:
        """Have a job done as soon as there is room.

        `then` is called here with what it made, before it counts as done; what it gives back is remembered instead.

        It is done in the language that is spoken now. `function` must be one of a module, and what is given to it must be picklable.

        Raises:
            TooManyJobsError: too many are waiting.
        """
        with self._lock:
            waiting = sum(job.status.state == "waiting" for job in self._jobs.values())
            if waiting >= self.most_waiting or self._is_closed:
                raise TooManyJobsError("too-many-jobs", waiting=waiting)
            id = secrets.token_hex(8)
            said = title if isinstance(title, Message) else verbatim(title)
            job = self._jobs[id] = Job(id, kind, said, self._folder / id, about, language())
            self._forget_oldest()
        self._attendants.submit(self._attend, job, function, given, then)
        return job

    def job(self, id: str) -> Job:
        """A job by its name.

        Raises:
            NoJobError: there is none, or it was long ago.
        """
        job = self._jobs.get(id)
        if job is None:
            raise NoJobError("no-such-job")
        return job

    def jobs(self) -> list[Job]:
        """All jobs that are remembered, the latest first."""
        with self._lock:
            return list(reversed(self._jobs.values()))

    def cancel(self, id: str) -> Job:
        """Stop a job; one that is over stays as it is.

        Raises:
            NoJobError: there is none.
        """
        job = self.job(id)
        with self._lock:
            self._change(job, state="cancelled")
            if job.process is not None:
                _end(job.process)
        return job

    def close(self) -> None:
        """Stop all jobs and forget what they made."""
        with self._lock:
            self._is_closed = True
            for id in list(self._jobs):
                self.cancel(id)
        self._attendants.shutdown()
        shutil.rmtree(self._folder, ignore_errors=True)

    def _change(self, job: Job, **values: Any) -> None:
        """Put a job into another state, unless it is over."""
        with self._lock:
            if not job.status.is_over:
                job.status = replace(job.status, number=job.status.number + 1, **values)

    def _forget_oldest(self) -> None:
        over = [job for job in self._jobs.values() if job.status.is_over]
        for job in over[: max(0, len(self._jobs) - self.most_kept)]:
            del self._jobs[job.id]
            shutil.rmtree(job.folder, ignore_errors=True)

    def _attend(self, job: Job, function: Function, given: tuple[Any, ...], then: Any) -> None:
        """Start a job's process and see it to its end."""
        with speaking(job.language):
            self._see_through(job, function, given, then)

    def _see_through(self, job: Job, function: Function, given: tuple[Any, ...], then: Any) -> None:
        try:
            receiver, sender = self._context.Pipe(duplex=False)
            with receiver:
                with sender, self._lock:
                    if job.status.is_over:
                        return
                    job.folder.mkdir(parents=True)
                    process = self._context.Process(
                        target=_work, args=(sender, job.folder, job.language, function, given)
                    )
                    process.start()
                    job.process = process
                    self._change(job, state="running")
                self._listen(job, process, receiver, then)
        except FiorituraError as error:
            self._change(job, state="failed", problem=error.message)
        except Exception as error:
            traceback.print_exc()
            self._change(job, state="failed", problem=_fault(error))
        finally:
            if job.process is not None:
                _end(job.process)
                job.process.join()
            if job.status.state != "done":
                shutil.rmtree(job.folder, ignore_errors=True)

    def _listen(
        self, job: Job, process: BaseProcess, receiver: Connection, then: Callable[[Made], Made | None] | None
    ) -> None:
        """Take in what a process tells until it has made its work, failed, died, or used up its time."""
        last = time.monotonic() + self.most_sec
        while not job.status.is_over:
            wait([receiver, process.sentinel], max(0.0, last - time.monotonic()))
            if receiver.poll():
                try:
                    word, value = receiver.recv()
                except EOFError:
                    word, value = "died", None
            elif time.monotonic() >= last:
                word, value = "failed", message("job-too-long", minutes=round(self.most_sec / 60, 2))
            elif not process.is_alive():
                word, value = "died", None
            else:
                continue
            if word == "step":
                name, done, total = value
                self._change(job, steps={**job.status.steps, name: (done, total)})
            elif word == "made":
                made = then(value) if then is not None else None
                self._change(job, state="done", made=made or value)
            elif word == "failed":
                self._change(job, state="failed", problem=value)
            else:
                process.join(1.0)
                self._change(job, state="failed", problem=_death(process.exitcode))


def _context() -> Any:
    """Processes from one that is still clean, as this one has threads; what most jobs need is loaded there once."""
    if "forkserver" not in multiprocessing.get_all_start_methods():
        return multiprocessing.get_context("spawn")
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(list(_PRELOADED))
    return context


def _work(sender: Connection, folder: Path, language: str, function: Function, given: tuple[Any, ...]) -> None:
    """In the job's own process: do the work in a language, and tell of it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if sys.platform != "win32":
        os.setsid()
        os.nice(_NICENESS)

    def tell(step: str, done: int, total: int) -> None:
        try:
            sender.send(("step", (step, done, total)))
        except OSError:
            os._exit(1)

    try:
        with speaking(language):
            sender.send(("made", function(Bench(folder, tell), *given)))
    except FiorituraError as error:
        sender.send(("failed", error.message))
    except Exception as error:
        traceback.print_exc()
        sender.send(("failed", _fault(error)))


def _end(process: BaseProcess) -> None:
    """End a process and all that it has started."""
    if process.pid is not None and sys.platform != "win32":
        with suppress(ProcessLookupError, PermissionError):
            os.killpg(process.pid, signal.SIGKILL)
    process.kill()


def _fault(error: Exception) -> Message:
    return message("job-failed", reason=f"{type(error).__name__}: {str(error)[:300]}")


def _death(code: int | None) -> Message:
    is_signal = code is not None and code < 0
    return message(
        "job-died", how="signal" if is_signal else "code", number=str(abs(code)) if code is not None else "?"
    )
