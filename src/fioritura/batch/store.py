"""The output folder of a batch: what is done, and how more is put in so that nothing is ever half there.

Files are staged in ``.batch`` and renamed into place; the record of a tune, ``tune.json``, is written after them, so a
piece that a record names is whole. Whatever ended the last run, the next one clears the stage and goes on.
"""

from __future__ import annotations

import csv
import json
import shutil
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from dataclasses import astuple, fields
from pathlib import Path
from types import TracebackType
from typing import IO, Any, Final

from fioritura.batch.job import Failure, Made, MadeOutput, TuneTask
from fioritura.batch.wishes import Output
from fioritura.errors import OutputError

__all__ = ["FAILURES", "RECORD", "REPORT", "Store", "failures_in"]

RECORD: Final = "tune.json"
FAILURES: Final = "failures.csv"
REPORT: Final = "batch.json"

_STAGE: Final = ".batch"


class Store:
    """The output folder, held by one batch at a time.

    Raises:
        OutputError: the folder can't be written, is a file, or another batch is at work in it.
    """

    def __init__(self, out: Path) -> None:
        self.out, self.stage = out, out / _STAGE
        self._count = 0

    def __enter__(self) -> Store:
        with _writing(self.out):
            if self.out.exists() and not self.out.is_dir():
                raise OutputError("out-is-file", path=str(self.out))
            self.stage.mkdir(parents=True, exist_ok=True)
            self._lock = _locked(self.stage / "lock", self.out)
            self._clear()
            self._table = (self.stage / FAILURES).open("w", newline="", encoding="utf-8")
        self._rows = csv.writer(self._table)
        self._rows.writerow(field.name for field in fields(Failure))
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._table.close()
        self._clear()
        with suppress(OSError):
            (self.stage / "lock").unlink(missing_ok=True)
            self._lock.close()
            self.stage.rmdir()

    def done(self, name: str, keys: Mapping[Output, str]) -> set[Output]:
        """Those pieces of a tune that lie here whole, made from the same."""
        kept = self._record(name).get("pieces", {})
        return {piece for piece, key in keys.items() if self._is_whole(name, piece.path, kept.get(piece.path), key)}

    def _is_whole(self, name: str, path: str, entry: Any, key: str) -> bool:
        if not isinstance(entry, dict) or entry.get("key") != key:
            return False
        place = self.out / name / path
        try:
            return all((place / file).stat().st_size == size for file, size in entry["bytes"].items())
        except (OSError, KeyError, AttributeError):
            return False

    def keep(self, job: TuneTask, made: Made, keys: Mapping[Output, str]) -> None:
        """Put the pieces that were made into the tune's folder, and then their names into its record.

        Raises:
            OutputError: the disk is full, or the folder is closed to us; nothing is half-written.
        """
        if not made.pieces:
            return
        folder = self.out / job.name
        record = self._record(job.name)
        pieces = dict(record.get("pieces", {}))
        with _writing(self.out):
            if replaced := [one.piece.path for one in made.pieces if pieces.pop(one.piece.path, None)]:
                self._put(folder / RECORD, _json({**record, "pieces": pieces}))
            for one in made.pieces:
                self._put_piece(folder / one.piece.path, one, is_new=one.piece.path not in replaced)
                pieces[one.piece.path] = {
                    "key": keys[one.piece],
                    **one.facts,
                    "bytes": {path: len(data) for path, data in one.files.items()},
                }
            record = {
                "title": made.title,
                "source": job.source,
                "warnings": list(made.warnings),
                "pieces": dict(sorted(pieces.items())),
            }
            self._put(folder / RECORD, _json(record))

    def fail(self, failures: Sequence[Failure]) -> None:
        """Note failures, in the order of the tunes."""
        self._rows.writerows(astuple(failure) for failure in failures)

    def finish(self, report: Mapping[str, Any]) -> None:
        """Write the table of failures, and the report as JSON with the failures in it.

        Raises:
            OutputError: the disk is full, or the folder is closed to us.
        """
        with _writing(self.out):
            self._table.close()
            (self.stage / FAILURES).replace(self.out / FAILURES)
            staged = self.stage / REPORT
            with staged.open("w", encoding="utf-8") as file:
                self._write_report(file, report)
            staged.replace(self.out / REPORT)

    def _write_report(self, file: IO[str], report: Mapping[str, Any]) -> None:
        """One failure after the other, so that a million of them need no memory."""
        names = [field.name for field in fields(Failure)]
        file.write(_json(report).decode().removesuffix("\n}\n") + ',\n  "failures": [')
        for number, failure in enumerate(failures_in(self.out)):
            row = json.dumps(dict(zip(names, astuple(failure), strict=True)), ensure_ascii=False)
            file.write((",\n    " if number else "\n    ") + row)
        file.write("\n  ]\n}\n")

    def _record(self, name: str) -> dict[str, Any]:
        try:
            found = json.loads((self.out / name / RECORD).read_bytes())
        except (OSError, ValueError, RecursionError):
            return {}
        return found if isinstance(found, dict) and isinstance(found.get("pieces"), dict) else {}

    def _put_piece(self, place: Path, made: MadeOutput, *, is_new: bool) -> None:
        if "" in made.files:
            self._put(place, made.files[""])
            return
        staged = self._staged()
        for path, data in made.files.items():
            target = staged / path
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(data)
        place.parent.mkdir(parents=True, exist_ok=True)
        if place.exists():
            place.replace(self._staged())
        staged.replace(place)

    def _put(self, place: Path, data: bytes) -> None:
        staged = self._staged()
        staged.write_bytes(data)
        place.parent.mkdir(parents=True, exist_ok=True)
        staged.replace(place)

    def _staged(self) -> Path:
        self._count += 1
        return self.stage / str(self._count)

    def _clear(self) -> None:
        for path in self.stage.iterdir():
            if path.is_dir():
                shutil.rmtree(path, ignore_errors=True)
            elif path.name != "lock":
                path.unlink(missing_ok=True)


def failures_in(out: Path) -> Iterator[Failure]:
    """The failures of a finished batch, in the order of its tunes."""
    with (out / FAILURES).open(newline="", encoding="utf-8") as file:
        rows = csv.reader(file)
        next(rows)
        yield from (Failure(*row) for row in rows)


@contextmanager
def _writing(out: Path) -> Iterator[None]:
    """Say in our words what the system says when it can't write."""
    try:
        yield
    except OSError as error:
        raise OutputError("batch-unwritable", path=str(out), reason=str(error.strerror)) from None


def _locked(path: Path, out: Path) -> IO[bytes]:
    """The lock file, held until it is closed or the process ends, however it ends."""
    file = path.open("wb")
    try:
        import fcntl
    except ImportError:
        return file
    try:
        fcntl.lockf(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        file.close()
        raise OutputError("batch-busy", path=str(out)) from None
    return file


def _json(record: Mapping[str, Any]) -> bytes:
    return (json.dumps(record, indent=2, ensure_ascii=False) + "\n").encode()
