"""Workers on this machine: a pool of processes that outlives the death of any of them."""

from __future__ import annotations

import multiprocessing
from collections import deque
from collections.abc import Callable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from itertools import islice
from types import TracebackType
from typing import Final, Protocol

from fioritura.batch.job import Made, TuneTask
from fioritura.lesson.workers import start_method, worker_setup

__all__ = ["Lost", "Pool", "Team"]

_AHEAD: Final = 4
"""Jobs at hand for each worker."""

_TRIES_ALONE: Final = 2


@dataclass(frozen=True, slots=True)
class Lost:
    """What came of a job that ended each worker it was given to."""

    reason: str


class Team(Protocol):
    """Workers somewhere."""

    def __enter__(self) -> Team: ...

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None: ...

    def spread(
        self, make: Callable[[TuneTask], Made], jobs: Iterator[TuneTask]
    ) -> Iterator[tuple[TuneTask, Made | Lost]]:
        """What comes of the jobs, as it comes; jobs are drawn only as fast as they are done."""


class Pool:
    """`count` worker processes on this machine."""

    def __init__(self, count: int) -> None:
        self.count = count

    def __enter__(self) -> Pool:
        self._executor = self._started()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if kind is not None:
            for process in list((getattr(self._executor, "_processes", None) or {}).values()):
                process.terminate()
        self._executor.shutdown(cancel_futures=True)

    def _started(self) -> ProcessPoolExecutor:
        context = multiprocessing.get_context(start_method())
        return ProcessPoolExecutor(self.count, mp_context=context, initializer=worker_setup)

    def spread(
        self, make: Callable[[TuneTask], Made], jobs: Iterator[TuneTask]
    ) -> Iterator[tuple[TuneTask, Made | Lost]]:
        """What comes of the jobs, as it comes. Where a worker dies, the jobs at hand are done again one by one, so
        that none is lost and the one that kills its worker is known.

        Raises:
            Whatever `make` raises.
        """
        at_hand: dict[Future[Made], TuneTask] = {}
        while True:
            suspects: deque[TuneTask] = deque()
            for job in islice(jobs, _AHEAD * self.count - len(at_hand)):
                try:
                    at_hand[self._executor.submit(make, job)] = job
                except BrokenProcessPool:
                    suspects.append(job)
                    break
            if not (at_hand or suspects):
                return
            for future in wait(at_hand, return_when=FIRST_COMPLETED).done if at_hand else ():
                job = at_hand.pop(future)
                try:
                    yield job, future.result()
                except BrokenProcessPool:
                    suspects.append(job)
            if suspects:
                suspects.extend(at_hand.values())
                at_hand.clear()
                self._restart()
                for job in suspects:
                    yield job, self._alone(make, job)

    def _alone(self, make: Callable[[TuneTask], Made], job: TuneTask) -> Made | Lost:
        for _ in range(_TRIES_ALONE):
            try:
                return self._executor.submit(make, job).result()
            except BrokenProcessPool:
                self._restart()
        return Lost("it ended its worker process twice, perhaps for want of memory: try it alone, or leave it out")

    def _restart(self) -> None:
        self._executor.shutdown(cancel_futures=True)
        self._executor = self._started()
