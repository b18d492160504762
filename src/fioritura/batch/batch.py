"""Run a batch: find what is still to be done, have it made, put it away, and say what failed."""

from __future__ import annotations

import time
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from fioritura.batch.job import LIMIT_SEC, Failure, Made, TakeFile, TuneTask, make, soundfont_id
from fioritura.batch.pool import Lost, Team
from fioritura.batch.sources import Found, Sources
from fioritura.batch.store import Store
from fioritura.batch.wishes import Output, Wishes
from fioritura.errors import FiorituraError
from fioritura.files import read_bytes
from fioritura.lesson.cache import code_digest, digest

__all__ = ["OnSummary", "Summary", "run_batch"]


@dataclass
class Summary:
    """What came of a batch so far. `made` and `done_before` count pieces, `failed` tunes of which something failed;
    `share` is the part of the work that is done, `cpu_sec` the workers' processor time by stage."""

    tunes: int = 0
    made: int = 0
    done_before: int = 0
    failed: int = 0
    share: float = 0.0
    seconds: float = 0.0
    reasons: Counter[str] = field(default_factory=Counter)
    cpu_sec: Counter[str] = field(default_factory=Counter)


MAX_TAKE_BYTES: Final = 512 * 1024 * 1024
"""The largest recording: it is sent to the worker whole."""

OnSummary = Callable[[Summary], None]
"""Told how far the batch is, after each tune."""


def run_batch(
    sources: Sources,
    out: Path,
    wishes: Wishes,
    team: Team,
    progress: OnSummary = lambda summary: None,
    limit_sec: float = LIMIT_SEC,
) -> Summary:
    """Make all pieces of all tunes that do not lie in `out` already; see `Store` for what `out` holds then.

    A tune that takes longer than `limit_sec` is given up; on a cluster there is no such limit.

    Nothing is ever half-written: after any stop the same call goes on, and ends with the same files.

    Raises:
        OutputError: `out` can't be written, or another batch is at work in it.
        ToolError: the workers are gone, or do not run this version.
    """
    with Store(out) as store, team:
        run = _Run(sources, wishes, store, progress, limit_sec)
        for job, outcome in team.spread(make, run.jobs()):
            run.take_in(job, outcome)
        run.close()
    return run.summary


@dataclass(frozen=True, slots=True)
class _Open:
    """A job that is being done: its tune's number and share, the keys of its pieces, and takes that can't be read."""

    number: int
    share: float
    keys: dict[Output, str]
    refused: tuple[Failure, ...]


class _Run:
    """A batch at work. Results come in any order; failures are written in the order of the tunes."""

    def __init__(self, sources: Sources, wishes: Wishes, store: Store, progress: OnSummary, limit_sec: float) -> None:
        self.sources, self.wishes, self.store, self.progress = sources, wishes, store, progress
        self.limit_sec = limit_sec
        self.summary = Summary()
        self.started = time.monotonic()
        needs_sound = bool({"sound", "pack"} & set(wishes.kinds))
        self.soundfont = soundfont_id() if needs_sound else None
        self.code = code_digest()
        self._open: dict[str, _Open] = {}
        self._outcomes: dict[int, tuple[Failure, ...]] = {}
        self._written = 0

    def jobs(self) -> Iterator[TuneTask]:
        """The jobs that are still to be done; what is done is counted on the way."""
        for number, found in enumerate(self.sources):
            self.summary.tunes += 1
            try:
                job = self._job(number, found)
            except FiorituraError as error:
                self._end(number, found.share, (Failure(found.source, "", type(error).__name__, str(error)),))
                continue
            if job is not None:
                yield job

    def _job(self, number: int, found: Found) -> TuneTask | None:
        """The job of a tune; None where all is done, which is noted."""
        if found.error or found.tune is None:
            raise found.error or AssertionError(found.name)
        content = found.tune.content
        keys = {piece: self._key(piece, content) for piece in self.wishes.pieces()}
        refused: list[Failure] = []
        takes = list(self._takes(found, refused))
        keys |= {take.piece: self._key(take.piece, content, take.data) for take in takes}
        done = self.store.done(found.name, keys)
        self.summary.done_before += len(done)
        todo = tuple(piece for piece in keys if piece not in done)
        if not todo:
            self._end(number, found.share, tuple(refused))
            return None
        self._open[found.name] = _Open(number, found.share, keys, tuple(refused))
        heard = tuple(take for take in takes if take.piece in todo)
        font = self.soundfont if any(piece.needs_sound for piece in todo) else None
        return TuneTask(
            found.name, found.source, found.tune, self.wishes, todo, heard, self.code, font, self.limit_sec
        )

    def _key(self, piece: Output, content: bytes, *more: bytes) -> str:
        font = self.soundfont if piece.needs_sound else None
        return digest("batch", content, *more, piece, *self.wishes.bearing_on(piece), font)

    def _takes(self, found: Found, refused: list[Failure]) -> Iterator[TakeFile]:
        """The takes of a tune that can be read; the others are `refused`."""
        for path in found.takes if "report" in self.wishes.kinds else ():
            piece = Output("report", f"takes/{path.name}.json", max(self.wishes.levels))
            try:
                yield TakeFile(piece, path.name, read_bytes(path, MAX_TAKE_BYTES))
            except FiorituraError as error:
                refused.append(Failure(found.source, piece.path, type(error).__name__, str(error)))

    def take_in(self, job: TuneTask, outcome: Made | Lost) -> None:
        """Put away what came of a job."""
        begun = self._open.pop(job.name)
        if isinstance(outcome, Lost):
            outcome = Made(failures=(Failure(job.source, "", "WorkerLost", outcome.reason),))
        self.store.keep(job, outcome, begun.keys)
        self.summary.made += len(outcome.pieces)
        self.summary.cpu_sec.update(outcome.cpu_sec)
        self._end(begun.number, begun.share, begun.refused + outcome.failures)

    def _end(self, number: int, share: float, failures: tuple[Failure, ...]) -> None:
        self.summary.failed += bool(failures)
        self.summary.reasons.update(failure.kind for failure in failures)
        self.summary.share = min(1.0, self.summary.share + share)
        self.summary.seconds = time.monotonic() - self.started
        self._outcomes[number] = failures
        while self._written in self._outcomes:
            self.store.fail(self._outcomes.pop(self._written))
            self._written += 1
        self.progress(self.summary)

    def close(self) -> None:
        """Note the takes of no tune, and write the report."""
        for path in self.sources.takes.unclaimed() if self.sources.takes else ():
            reason = "no tune of the batch has the beginning of its name: name it after its tune"
            self.store.fail([Failure(str(path.name), "", "TakeOfNoTune", reason)])
            self.summary.reasons["TakeOfNoTune"] += 1
        self.store.finish(self._report())

    def _report(self) -> dict[str, Any]:
        """The same after any number of stops: what was made when is not in it."""
        summary = self.summary
        return {
            "tunes": summary.tunes,
            "pieces": summary.made + summary.done_before,
            "failed_tunes": summary.failed,
            "reasons": dict(sorted(summary.reasons.items())),
        }
