"""The shelf's file: one SQLite database in write-ahead mode, opened and brought up to date.

A block of `Database.writing` that has ended is on disk: a crash, or a kill in the middle of a later write, loses nothing
of it.
"""

from __future__ import annotations

import os
import zlib
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Final, TypeVar

from sqlalchemy import create_engine, event
from sqlalchemy.engine import Connection
from sqlalchemy.exc import DatabaseError
from sqlalchemy.orm import Session, sessionmaker

from fioritura.errors import OptionError, OutputError, ReadError
from fioritura.files import private_folder
from fioritura.shelf.schema import migrate

__all__ = ["LIKE", "Database", "NotOnShelfError", "StaleError", "now", "packed", "standing", "unpacked"]

LIKE: Final = str.maketrans({"%": "\\%", "_": "\\_", "\\": "\\\\"})
"""Escapes what has a meaning in a LIKE pattern."""

_BUSY_MS: Final = 10_000
_WRITES: Final = "writes"

Row = TypeVar("Row")


class NotOnShelfError(OptionError):
    """There is nothing of that number."""


class StaleError(OptionError):
    """The arrangement has moved on since it was looked at."""


class Database:
    """The database in a folder; made when it is not there. Safe to use from several threads."""

    def __init__(self, folder: Path) -> None:
        """Open or make it.

        Raises:
            OutputError: the folder can't be made or written.
            ReadError: its file is no shelf, or one of a later version.
        """
        self.path = folder / "shelf.db"
        try:
            private_folder(folder, self.path.name)
            self._close_to_others()
        except OSError as error:
            raise OutputError("shelf-folder-unmade", path=str(folder), reason=str(error.strerror)) from None
        self._engine = create_engine(f"sqlite:///{self.path}", connect_args={"timeout": _BUSY_MS / 1000})
        event.listen(self._engine, "connect", _prepare)
        event.listen(self._engine, "begin", _begin)
        self._sessions = sessionmaker(self._engine)
        try:
            with self.writing() as session:
                migrate(session.connection())
        except OutputError as error:
            raise ReadError("shelf-unopened", path=str(self.path), reason=str(error)) from None

    def _close_to_others(self) -> None:
        """Make the file and its logs readable for this user alone; new logs are as the file is."""
        with suppress(FileExistsError):
            os.close(os.open(self.path, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
        for path in (self.path, *(Path(f"{self.path}{ending}") for ending in ("-wal", "-shm"))):
            with suppress(FileNotFoundError, PermissionError):
                path.chmod(0o600)

    def close(self) -> None:
        """Close all connections."""
        self._engine.dispose()

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A session that sees one state of the database."""
        with self._sessions() as session:
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A session that alone may write; what it has written is on disk when the block has ended well.

        Raises:
            OutputError: the file can't be written.
        """
        try:
            with self._sessions.begin() as session:
                session.connection(execution_options={_WRITES: True})
                yield session
        except DatabaseError as error:
            raise OutputError("shelf-unwritable", path=str(self.path), reason=str(error.orig)) from None


def standing(session: Session, kind: type[Row], id: int, name: str) -> Row:
    """The row of that number; `name` is what it is called on the shelf.

    Raises:
        NotOnShelfError: there is none.
    """
    row = session.get(kind, id)
    if row is None:
        raise NotOnShelfError("not-on-shelf", kind=name, number=id)
    return row


def now() -> str:
    """This moment, as the shelf writes it: ISO 8601 in UTC, to the millisecond."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")


def packed(text: str) -> bytes:
    """A text as it is kept."""
    return zlib.compress(text.encode(), 6)


def unpacked(data: bytes) -> str:
    """A text that was kept."""
    return zlib.decompress(data).decode()


def _prepare(connection: Any, record: object) -> None:
    """Write-ahead log, every commit on disk, references enforced; transactions are begun by us, not by the driver."""
    connection.isolation_level = None
    for pragma in ("journal_mode = WAL", "synchronous = FULL", "foreign_keys = ON", f"busy_timeout = {_BUSY_MS}"):
        connection.execute(f"PRAGMA {pragma}")


def _begin(connection: Connection) -> None:
    """A writer takes the write lock at once, so that what it has read still holds when it writes."""
    connection.exec_driver_sql("BEGIN IMMEDIATE" if connection.get_execution_options().get(_WRITES) else "BEGIN")
