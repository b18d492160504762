"""The recordings of a batch: which take is of which tune, by the names of the files.

A folder of takes is laid out like the folder of tunes. The takes of ``waltz.abc`` are ``waltz.wav``,
``waltz-anna.wav`` or whatever lies in a folder ``waltz``; those of a book's twelfth tune are ``book/12.wav`` or
``book/12-anna.wav``.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from pathlib import Path, PurePosixPath
from typing import Final

from fioritura.errors import ReadError

__all__ = ["TAKE_SUFFIXES", "Takes"]

TAKE_SUFFIXES: Final = (".wav", ".flac", ".mp3", ".ogg")

_NUMBER: Final = re.compile(r"0*(\d+)(?!\d)")


class Takes:
    """The takes below a folder.

    Raises:
        ReadError: it is no folder, or there is no recording in it.
    """

    def __init__(self, folder: Path) -> None:
        if not folder.is_dir():
            raise ReadError("takes-no-folder", path=str(folder))
        self._by_folder: dict[PurePosixPath, list[Path]] = {}
        self._free: set[Path] = set()
        for path in sorted(folder.rglob("*")):
            if path.suffix.lower() in TAKE_SUFFIXES and path.name[0] != ".":
                place = PurePosixPath(path.parent.relative_to(folder).as_posix())
                self._by_folder.setdefault(place, []).append(path)
                self._free.add(path)
        if not self._free:
            raise ReadError("takes-no-recording", path=str(folder), known=tuple(TAKE_SUFFIXES))
        self.folder = folder

    def of_tune(self, name: PurePosixPath, stems: Collection[str]) -> tuple[Path, ...]:
        """The takes of a tune that has a file for itself; `stems` are the names of all tunes in its folder."""
        own = name.name.casefold()
        longer = [stem for stem in stems if len(stem) > len(own) and _begins(stem, own)]
        beside = [
            path
            for path in self._by_folder.get(name.parent, [])
            if _begins(path.stem.casefold(), own) and not any(_begins(path.stem.casefold(), stem) for stem in longer)
        ]
        return self._taken([*beside, *self._by_folder.get(name, [])])

    def of_book(self, name: PurePosixPath, place: int) -> tuple[Path, ...]:
        """The takes of a book's tune."""
        within = self._by_folder.get(name, [])
        found = [path for path in within if (number := _NUMBER.match(path.stem)) and int(number[1]) == place]
        return self._taken(found)

    def unclaimed(self) -> list[Path]:
        """The takes that no tune has asked for."""
        return sorted(self._free)

    def _taken(self, paths: list[Path]) -> tuple[Path, ...]:
        """The paths that belong to no earlier tune."""
        found = tuple(path for path in paths if path in self._free)
        self._free.difference_update(found)
        return found


def _begins(text: str, name: str) -> bool:
    """True when a text is the name, or goes on after it with another word."""
    return text.startswith(name) and not text[len(name) : len(name) + 1].isalnum()
