"""Workers on other machines: the same jobs on a dask.distributed cluster, results sent back to be written here."""

from __future__ import annotations

import logging
import time
from collections.abc import Callable, Iterator
from itertools import islice
from types import TracebackType
from typing import Any, Final

from fioritura.batch.job import Made, TuneTask
from fioritura.batch.pool import Lost
from fioritura.errors import ToolError

__all__ = ["Cluster"]

_AHEAD: Final = 3
_CONNECT_SEC: Final = 10
_FIRST_WORKER_SEC: Final = 60


class Cluster:
    """The workers of a scheduler at an address such as ``tcp://192.168.1.20:8786``.

    Raises:
        ToolError: the extra is not installed, the scheduler does not answer, or it has no worker.
    """

    def __init__(self, address: str) -> None:
        self.address = address
        self._workers, self._count_again = 1, 0.0

    def __enter__(self) -> Cluster:
        try:
            from distributed import Client
        except ImportError:
            raise ToolError("cluster-not-installed") from None
        logging.getLogger("distributed.client").setLevel(logging.CRITICAL)
        try:
            self._client: Any = Client(self.address, timeout=_CONNECT_SEC, set_as_default=False)
        except (OSError, ValueError, TimeoutError) as error:
            raise ToolError("no-scheduler", address=self.address, reason=str(error)) from None
        try:
            self._client.wait_for_workers(1, timeout=_FIRST_WORKER_SEC)
        except TimeoutError:
            self._client.close()
            raise ToolError("no-cluster-worker", address=self.address) from None
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._client.close()

    def spread(
        self, make: Callable[[TuneTask], Made], jobs: Iterator[TuneTask]
    ) -> Iterator[tuple[TuneTask, Made | Lost]]:
        """What comes of the jobs, as it comes. A job whose worker dies is given to another by the scheduler; one that
        was there at the death of several is tried once more when all others are done, alone.

        Raises:
            ToolError: the scheduler has gone, or Fioritura is not installed on a worker; whatever `make` raises.
        """
        suspects: list[TuneTask] = []
        for job, outcome in self._together(make, jobs):
            if outcome is None:
                suspects.append(job)
            else:
                yield job, outcome
        for suspect in suspects:
            for job, outcome in self._together(make, iter([suspect])):
                yield job, outcome or Lost("it ended one worker after the other: try it alone, or leave it out")

    def _together(
        self, make: Callable[[TuneTask], Made], jobs: Iterator[TuneTask]
    ) -> Iterator[tuple[TuneTask, Made | None]]:
        """The jobs with what comes of them; None for one that the scheduler has given up."""
        from distributed import CancelledError, KilledWorker, as_completed

        at_hand: dict[Any, TuneTask] = {}
        coming = as_completed(loop=self._client.loop)
        while True:
            for job in islice(jobs, max(0, self._room() - len(at_hand))):
                future = self._client.submit(make, job, pure=False)
                at_hand[future] = job
                coming.add(future)
            if not at_hand:
                return
            future = next(coming)
            job = at_hand.pop(future)
            try:
                yield job, future.result()
            except KilledWorker:
                yield job, None
            except CancelledError:
                raise ToolError("scheduler-gone", address=self.address) from None
            except ModuleNotFoundError as error:
                raise ToolError("worker-lacks", name=str(error.name)) from None

    def _room(self) -> int:
        """How many jobs are to be at hand, with the workers that there are now; looked up once a second."""
        now = time.monotonic()
        if now >= self._count_again:
            self._count_again = now + 1.0
            self._workers = max(1, len(self._client.nthreads()))
        return _AHEAD * self._workers
