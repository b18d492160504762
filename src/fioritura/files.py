"""Safe files: bounded reading, and writing beside the target before renaming onto it."""

from __future__ import annotations

import os
import shutil
import stat
import sys
import tempfile
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO, Final

from fioritura.errors import OutputError, ReadError

__all__ = [
    "MAX_FILE_BYTES",
    "ZIP_DAMAGE",
    "cache_folder",
    "checked_content",
    "opened_beside",
    "private_folder",
    "read_bytes",
    "read_stream",
    "staged_folder",
    "write_beside",
]

MAX_FILE_BYTES: Final = 64 * 1024 * 1024

ZIP_DAMAGE: Final = (zipfile.BadZipFile, zlib.error, EOFError, RuntimeError, ValueError)
"""What the standard library raises over an archive that is cut, garbled or packed in a way it doesn't know."""


def cache_folder() -> Path:
    """Where this user's cached files belong: under XDG_CACHE_HOME, else where the system keeps caches."""
    if os.environ.get("XDG_CACHE_HOME"):
        base = Path(os.environ["XDG_CACHE_HOME"])
    elif sys.platform == "win32":
        base = Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    elif sys.platform == "darwin":
        base = Path.home() / "Library" / "Caches"
    else:
        base = Path.home() / ".cache"
    return base / "fioritura"


def read_bytes(path: Path, limit_bytes: int = MAX_FILE_BYTES) -> bytes:
    """The whole content of a file.

    Raises:
        ReadError: the file is missing, a folder, empty, unreadable, or larger than `limit_bytes`.
    """
    try:
        if path.is_dir():
            raise ReadError("file-is-folder", path=str(path))
        size = path.stat().st_size
        if size > limit_bytes:
            raise ReadError("file-too-large", path=str(path), size=size, limit=limit_bytes)
        data = path.read_bytes()
    except FileNotFoundError:
        raise ReadError("file-missing", path=str(path)) from None
    except OSError as error:
        raise ReadError("file-unreadable", path=str(path), reason=str(error.strerror)) from None
    if not data:
        raise ReadError("file-empty", path=str(path))
    return data


def read_stream(stream: IO[bytes], limit_bytes: int = MAX_FILE_BYTES) -> bytes:
    """What is left of an open file.

    Raises:
        ReadError: there is nothing left, it is text or can't be read, or it is larger than `limit_bytes`.
    """
    try:
        data = stream.read(limit_bytes + 1)
    except OSError as error:
        raise ReadError("content-unreadable", reason=str(error.strerror or error)) from None
    if not isinstance(data, bytes):
        raise ReadError("content-is-text")
    return checked_content(data, limit_bytes)


def checked_content(data: bytes, limit_bytes: int = MAX_FILE_BYTES) -> bytes:
    """The content of a file, when it is neither empty nor too large.

    Raises:
        ReadError: it is empty, or larger than `limit_bytes`.
    """
    if not data:
        raise ReadError("content-empty")
    if len(data) > limit_bytes:
        raise ReadError("content-too-large", limit=limit_bytes)
    return data


def write_beside(path: Path, data: bytes) -> None:
    """Write a file whole or not at all: into a temporary file beside it, then renamed onto it.

    Raises:
        OutputError: the folder is missing or closed to us, or the disk is full; an earlier file is unharmed.
    """
    with opened_beside(path) as file:
        file.write(data)


@contextmanager
def opened_beside(path: Path, *, is_private: bool = False) -> Iterator[IO[bytes]]:
    """A temporary file beside `path`, open for writing; renamed onto it when the block ends well, else removed.

    With `is_private` nobody but this user may read it.

    Raises:
        OutputError: the folder is missing or closed to us, or the disk is full; an earlier file is unharmed.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    except OSError as error:
        raise _output_error(path, error) from None
    try:
        with os.fdopen(handle, "w+b") as file:
            yield file
        Path(name).chmod(0o600 if is_private else 0o666 & ~_umask())
        Path(name).replace(path)
    except BaseException as error:
        Path(name).unlink(missing_ok=True)
        if isinstance(error, OSError):
            raise _output_error(path, error) from None
        raise


@contextmanager
def staged_folder(target: Path) -> Iterator[Path]:
    """A temporary folder beside `target`; when the block ends well its files are renamed into `target`.

    Files of `target` with other names stay. When the block fails or is interrupted nothing of it remains.

    Raises:
        OutputError: the folder can't be made, `target` is a file, or the disk is full.
    """
    if target.exists() and not target.is_dir():
        raise OutputError("out-is-file", path=str(target))
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        stage = Path(tempfile.mkdtemp(prefix=f".{target.name}.", dir=target.parent))
    except OSError as error:
        raise _output_error(target, error) from None
    try:
        yield stage
        stage.chmod(0o777 & ~_umask())
        if not target.exists():
            stage.replace(target)
            return
        for source in sorted(path for path in stage.rglob("*") if path.is_file()):
            place = target / source.relative_to(stage)
            place.parent.mkdir(parents=True, exist_ok=True)
            source.replace(place)
    except OSError as error:
        raise _output_error(target, error) from None
    finally:
        shutil.rmtree(stage, ignore_errors=True)


def private_folder(folder: Path, marker: str) -> None:
    """Make a folder that nobody but this user may look into. One that is there already is closed to others if it holds the
    file `marker`, which says that it is ours alone.

    Raises:
        OSError: it can't be made.
    """
    is_new = not folder.exists()
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    if is_new or ((folder / marker).is_file() and not folder.stat().st_mode & stat.S_ISVTX):
        with suppress(PermissionError):
            folder.chmod(0o700)


def _output_error(path: Path, error: OSError) -> OutputError:
    return OutputError("out-unwritable", path=str(path), reason=str(error.strerror))


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
