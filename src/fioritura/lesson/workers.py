"""Work spread over processes, results as they come."""

from __future__ import annotations

import multiprocessing
import os
import signal
import sys
import threading
import warnings
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from typing import TypeVar

from fioritura.errors import ToolError
from fioritura.plugins import PluginWarning
from fioritura.words import Naming, language, naming, speaking

__all__ = ["Workers", "start_method", "worker_count", "worker_setup"]

Given = TypeVar("Given")
Made = TypeVar("Made")


def worker_count() -> int:
    """As many processes as this one may use cores."""
    return max(1, len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1)


def start_method() -> str:
    """Fork where it is safe, as that starts at once; else from a process that is still clean.

    A fork keeps one thread only. Where others run, Python's own or those of the typesetter, which stay once it has
    worked, a forked process would wait for them for ever.
    """
    if sys.platform == "linux" and threading.active_count() == 1 and "typst" not in sys.modules:
        return "fork"
    return "forkserver" if "forkserver" in multiprocessing.get_all_start_methods() else "spawn"


def worker_setup() -> None:
    """What each worker process begins with: an interrupt from the keyboard, which reaches every process, is left to
    the first one, which ends the work in order; when that one is gone, however it ended, so is the worker; and what is
    wrong with plugins is said once, by the first one."""
    warnings.simplefilter("ignore", PluginWarning)
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def _spoken(said: tuple[str, Naming], function: Callable[[Given], Made], item: Given) -> Made:
    with speaking(*said):
        return function(item)


class Workers:
    """A pool of processes; with a count of 1 everything is done here."""

    def __init__(self, count: int | None = None) -> None:
        self.count = worker_count() if count is None else max(1, count)
        self._pool: ProcessPoolExecutor | None = None

    def __enter__(self) -> Workers:
        if self.count > 1:
            context = multiprocessing.get_context(start_method())
            self._pool = ProcessPoolExecutor(self.count, mp_context=context, initializer=worker_setup)
        return self

    def __exit__(self, kind: type[BaseException] | None, *rest: object) -> None:
        if self._pool is None:
            return
        if kind is not None:
            for process in list((getattr(self._pool, "_processes", None) or {}).values()):
                process.terminate()
        self._pool.shutdown(cancel_futures=True)

    def spread(self, function: Callable[[Given], Made], given: Sequence[Given]) -> Iterator[tuple[int, Made]]:
        """The function's results with the numbers of what they were made from, in the order in which they are done.

        The function speaks the language that is spoken here.

        Raises:
            ToolError: a process was ended from outside; whatever the function raises.
        """
        if self._pool is None or len(given) < 2:
            yield from enumerate(map(function, given))
            return
        said = language(), naming()
        numbers: dict[Future[Made], int] = {
            self._pool.submit(_spoken, said, function, item): number for number, item in enumerate(given)
        }
        waiting = set(numbers)
        try:
            while waiting:
                done, waiting = wait(waiting, return_when=FIRST_COMPLETED)
                for future in done:
                    yield numbers[future], future.result()
        except BrokenProcessPool:
            raise ToolError("worker-ended") from None
        finally:
            for future in waiting:
                future.cancel()
