"""Files kept by their content's key, so that a second run makes anew only what has changed.

A key is a digest of everything that a file is made from, the program's own code included. Entries are written beside
and renamed, so that two runs at once never see half a file; the oldest go when the cache grows over its limit.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import fields, is_dataclass
from functools import lru_cache
from hashlib import blake2b
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any, Final

from fioritura.errors import OutputError
from fioritura.files import cache_folder, write_beside
from fioritura.plugins import plugin_files

__all__ = ["CACHE_VARIABLE", "Cache", "code_digest", "digest"]

CACHE_VARIABLE: Final = "FIORITURA_CACHE"
"""Environment variable that names the cache folder."""

LIMIT_BYTES: Final = 1024 * 1024 * 1024
_TOOLS: Final = ("verovio", "typst", "lameenc", "midirenderer", "numpy", "av")


class Cache:
    """A folder of files by key, bounded in bytes."""

    def __init__(self, folder: Path | None = None, limit_bytes: int = LIMIT_BYTES) -> None:
        self.folder = folder or _usual_folder()
        self.limit_bytes = limit_bytes

    def get(self, key: str) -> bytes | None:
        """What is kept under a key; None where nothing is."""
        path = self._path(key)
        try:
            data = path.read_bytes()
            os.utime(path)
        except OSError:
            return None
        return data

    def put(self, key: str, data: bytes) -> None:
        """Keep something under a key. A cache that can't be written is no error: nothing is kept then."""
        with suppress(OutputError):
            write_beside(self._path(key), data)

    def fetch(self, key: str, target: Path) -> bool:
        """Copy what is kept under a key to a file; False where nothing is."""
        path = self._path(key)
        try:
            shutil.copyfile(path, target)
            os.utime(path)
        except FileNotFoundError:
            return False
        return True

    def keep(self, key: str, source: Path) -> None:
        """Keep a file's content under a key."""
        self.put(key, source.read_bytes())

    def trim(self) -> None:
        """Drop the entries that were not used for longest until the rest stays under the limit."""
        entries = []
        for path in self.folder.glob("??/*"):
            with suppress(OSError):
                state = path.stat()
                entries.append((state.st_mtime, state.st_size, path))
        total = sum(size for _, size, _ in entries)
        for _, size, path in sorted(entries):
            if total <= self.limit_bytes:
                break
            path.unlink(missing_ok=True)
            total -= size

    def _path(self, key: str) -> Path:
        return self.folder / key[:2] / key[2:]


def digest(*parts: object) -> str:
    """A key for what is made from these values, by this code: bytes as they are, values by all their fields (the short
    `repr` of some hides them), all else by its `repr`."""
    hasher = blake2b(code_digest().encode(), digest_size=20)
    for part in parts:
        data = part if isinstance(part, bytes) else "".join(_told(part)).encode()
        hasher.update(len(data).to_bytes(8, "big"))
        hasher.update(data)
    return hasher.hexdigest()


def _told(value: object) -> Iterator[str]:
    """A value in text, down to what has no fields."""
    if isinstance(value, str | int | float | None):
        yield repr(value)
    elif is_dataclass(value) and not isinstance(value, type):
        yield f"{type(value).__qualname__}("
        for field in _fields(type(value)):
            yield from _told(getattr(value, field))
        yield ")"
    elif isinstance(value, list | tuple):
        yield "("
        for item in value:
            yield from _told(item)
        yield ")"
    elif isinstance(value, Mapping):
        yield "{"
        for key, item in value.items():
            yield from _told(key)
            yield from _told(item)
        yield "}"
    else:
        yield repr(value)
    yield ","


@lru_cache(maxsize=256)
def _fields(kind: type[Any]) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind) if field.repr)


@lru_cache(maxsize=1)
def code_digest() -> str:
    """A digest of this package's files, of the plugins', and of the versions of the tools that are used."""
    hasher = blake2b(digest_size=20)
    root = Path(__file__).parents[1]
    for path in sorted(_code_files(root)):
        hasher.update(path.relative_to(root).as_posix().encode())
        hasher.update(path.read_bytes())
    for path in plugin_files():
        hasher.update(path.name.encode())
        hasher.update(path.read_bytes())
    for tool in _TOOLS:
        with suppress(PackageNotFoundError):
            hasher.update(f"{tool} {version(tool)}".encode())
    return hasher.hexdigest()


def _code_files(root: Path) -> Iterable[Path]:
    return (
        path
        for path in root.rglob("*")
        if path.suffix in {".py", ".ftl", ".json", ".typ", ".html", ".css", ".js", ".abc"}
    )


def _usual_folder() -> Path:
    chosen = os.environ.get(CACHE_VARIABLE, "").strip()
    if chosen:
        return Path(chosen) / "lessons"
    return cache_folder() / "lessons"
