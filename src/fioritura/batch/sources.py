"""The tunes of a batch: a book, a single tune, or every tune below a folder, each with a name for its results."""

from __future__ import annotations

import os
import re
import unicodedata
from collections import Counter
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Final

from fioritura.batch.takes import Takes
from fioritura.errors import FiorituraError, ReadError
from fioritura.notation.read import TUNE_SUFFIXES, UnreadTune, unread_tunes

__all__ = ["Found", "Sources"]

_LONGEST_NAME: Final = 48
_NOT_IN_NAMES: Final = re.compile(r"[^a-z0-9]+")


@dataclass(frozen=True, slots=True)
class Found:
    """A tune of the batch, or a file that can't be opened (`error`).

    `name` is the folder for its results below the batch's own, with ``/``, and `source` how messages call it. `share`
    is its part of the whole work, as far as that shows in the length of files.
    """

    name: str
    source: str
    share: float
    tune: UnreadTune | None = None
    takes: tuple[Path, ...] = ()
    error: FiorituraError | None = None


class Sources:
    """The tunes below a folder or in a file, in one order for ever; results in `out` are not taken for tunes.

    Raises:
        ReadError: there is no such file or folder, or no tune in it.
    """

    def __init__(self, root: Path, out: Path, takes: Path | None = None) -> None:
        self.root, self.out = root, out.resolve()
        self.takes = Takes(takes) if takes else None
        if not root.exists():
            raise ReadError("batch-nothing-there", path=str(root))
        self.total_bytes = sum(_bytes_in(path) for folder in self._folders() for path in folder)
        if not self.total_bytes:
            raise ReadError("batch-no-tune", path=str(root), known=tuple(TUNE_SUFFIXES))

    def __iter__(self) -> Iterator[Found]:
        """Every tune once; one file is held at a time."""
        for paths in self._folders():
            stems = Counter(path.stem.casefold() for path in paths)
            for path in paths:
                alone = stems[path.stem.casefold()] == 1
                name = self._folder_of(path) / (path.stem if alone else path.name)
                yield from self._in_file(path, name, stems)

    def _folders(self) -> Iterator[list[Path]]:
        """The files of tunes, folder by folder."""
        if self.root.is_file():
            yield [self.root]
            return
        for place, folders, files in os.walk(self.root):
            here = Path(place)
            folders[:] = sorted(name for name in folders if name[0] != "." and (here / name).resolve() != self.out)
            suited = (name for name in files if name[0] != "." and Path(name).suffix.lower() in TUNE_SUFFIXES)
            yield [here / name for name in sorted(suited)]

    def _folder_of(self, path: Path) -> PurePosixPath:
        if self.root.is_file():
            return PurePosixPath()
        return PurePosixPath(path.parent.relative_to(self.root).as_posix())

    def _in_file(self, path: Path, name: PurePosixPath, stems: Collection[str]) -> Iterator[Found]:
        source = path.name if self.root.is_file() else path.relative_to(self.root).as_posix()
        share = _bytes_in(path) / self.total_bytes
        try:
            tunes = unread_tunes(path)
        except FiorituraError as error:
            yield Found(name.as_posix(), source, share, error=error)
            return
        for tune in tunes:
            if tune.label:
                own = f"{tune.place:04}{_slug(tune.title)}"
                place = PurePosixPath(own) if self.root.is_file() else name / own
                takes = self.takes.of_book(name, tune.place) if self.takes else ()
                yield Found(place.as_posix(), f"{source}, {tune.label}", share / len(tunes), tune, takes)
            else:
                takes = self.takes.of_tune(name, stems) if self.takes else ()
                yield Found(name.as_posix(), source, share, tune, takes)


def _bytes_in(path: Path) -> int:
    """A file's size; 0 where it can't be looked at, which shows when it is read."""
    try:
        return path.stat().st_size
    except OSError:
        return 0


def _slug(title: str) -> str:
    """A title as part of a file's name anywhere: ``"-the-swallow"``; empty where no letter can stand in one."""
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    words = _NOT_IN_NAMES.sub("-", plain).strip("-")
    return f"-{words[:_LONGEST_NAME].rstrip('-')}" if words else ""
