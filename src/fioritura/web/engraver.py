"""Engraving in processes of its own, so that one user's page does not keep another's waiting; and the pages of late.

Choosing figures and engraving them take about equally long, and Python does one thing at a time in a process.
"""

from __future__ import annotations

import multiprocessing
import pickle
import sys
from collections import OrderedDict
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass, replace
from threading import Lock
from typing import Final

from fioritura.errors import ToolError
from fioritura.lesson.workers import worker_setup
from fioritura.notation.engraving.engrave import System, engrave_systems
from fioritura.notation.score import Score

__all__ = ["Engraver", "Music"]

MOST_KEPT: Final = 48
_TRIES: Final = 2


@dataclass(frozen=True, slots=True)
class Music:
    """What is to be engraved: a packed score, the page's width and a staff's height in millimetres, and the systems of
    an earlier engraving without their drawings, for `engrave_systems`."""

    score: bytes
    width_mm: float
    staff_mm: float
    like: tuple[System, ...] = ()


class Engraver:
    """Engraves with `count` processes once they are warm; before, or with none, here. Safe to use from several threads."""

    def __init__(self, count: int = 0) -> None:
        self.count = count
        self._pool: ProcessPoolExecutor | None = None
        self._is_warm = False
        self._kept: OrderedDict[Music, tuple[System, ...]] = OrderedDict()
        self._lock = Lock()

    def engrave(
        self, score: Score, width_mm: float, staff_mm: float, like: Sequence[System] = ()
    ) -> tuple[System, ...]:
        """The score's systems, see `engrave_systems`; what was engraved lately is at hand.

        Raises:
            ToolError: the engraver can't set the music, or its processes were ended again and again.
        """
        places = tuple(replace(system, svg="", staves=()) for system in like)
        music = Music(pickle.dumps(score, pickle.HIGHEST_PROTOCOL), width_mm, staff_mm, places)
        with self._lock:
            found = self._kept.get(music)
        if found is None:
            found = self._made(music) if self._is_warm else _engraved(music)
            with self._lock:
                self._kept[music] = found
                while len(self._kept) > MOST_KEPT:
                    self._kept.popitem(last=False)
        return found

    def warm(self) -> None:
        """Start the processes, and use them from now on."""
        if self.count:
            list(self._ready().map(_warmed, range(self.count)))
            self._is_warm = True

    def close(self) -> None:
        """End the processes."""
        with self._lock:
            if self._pool is not None:
                self._pool.shutdown(cancel_futures=True)
            self._pool, self._is_warm = None, False

    def _made(self, music: Music) -> tuple[System, ...]:
        for _ in range(_TRIES):
            pool = self._ready()
            try:
                return pool.submit(_engraved, music).result()
            except BrokenProcessPool:
                with self._lock:
                    if self._pool is pool:
                        self._pool = None
        raise ToolError("engraver-ended")

    def _ready(self) -> ProcessPoolExecutor:
        with self._lock:
            if self._pool is None:
                method = "forkserver" if sys.platform != "win32" else "spawn"
                context = multiprocessing.get_context(method)
                self._pool = ProcessPoolExecutor(self.count, mp_context=context, initializer=worker_setup)
            return self._pool


def _warmed(number: int) -> int:
    import verovio

    verovio.toolkit()
    return number


def _engraved(music: Music) -> tuple[System, ...]:
    score: Score = pickle.loads(music.score)
    return engrave_systems(score, width_mm=music.width_mm, staff_mm=music.staff_mm, like=music.like)
