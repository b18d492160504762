"""The whole shelf as one ZIP file, and back: nothing in it needs this program to be read.

``shelf.json`` lists the tunes and what belongs to them; every tune has a folder with the file that it came from and,
for each arrangement, one JSON document (`fioritura.arrange.arrangement_file`) for each step. Restoring adds to what is
on the shelf, and takes back nothing.
"""

from __future__ import annotations

import json
import re
import zipfile
from collections.abc import Callable, Iterator
from typing import IO, Any, Final

from fioritura.errors import FiorituraError, ReadError
from fioritura.shelf.store import Shelf, TuneEntry

__all__ = ["FORMAT", "restore", "write_archive"]

FORMAT: Final = "fioritura shelf"
VERSION: Final = 1
MOST_ENTRIES: Final = 200_000
MOST_ENTRY_BYTES: Final = 64 * 1024 * 1024
MOST_BYTES: Final = 2 * 1024 * 1024 * 1024
"""Of all entries together, unpacked."""


def write_archive(shelf: Shelf, file: IO[bytes]) -> None:
    """Write everything on the shelf into an open file."""
    listed = []
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as archive:
        for entry in reversed(shelf.tunes()):
            folder = f"tunes/{entry.id:04}-{_plain(entry.title)}"
            source = f"{folder}/{entry.source_name}"
            archive.writestr(source, shelf.source(entry.id))
            listed.append(
                _record(entry, source) | {"arrangements": list(_arrangements(shelf, entry, folder, archive))}
            )
        manifest = {"format": FORMAT, "version": VERSION, "tunes": listed}
        archive.writestr("shelf.json", json.dumps(manifest, indent=1, ensure_ascii=False))


def restore(shelf: Shelf, file: IO[bytes], check: Callable[[str], object]) -> int:
    """Add what an archive holds to the shelf; returns how many tunes. `check` raises where a text is no arrangement.

    Everything is read and checked before anything is added.

    Raises:
        ReadError: it is no such archive, or it is damaged, too large, or of a later version.
    """
    try:
        with zipfile.ZipFile(file) as archive:
            _check_size(archive)
            manifest = json.loads(_entry(archive, "shelf.json"))
            if not isinstance(manifest, dict) or manifest.get("format") != FORMAT:
                raise ReadError("This is no archive of a shelf: choose one that the shelf page has given out.")
            if manifest.get("version") != VERSION:
                raise ReadError(f"The archive has version {manifest.get('version')}; {VERSION} can be read.")
            found = [_read(archive, record, check) for record in manifest["tunes"]]
    except (
        zipfile.BadZipFile,
        KeyError,
        TypeError,
        ValueError,
        AttributeError,
        NotImplementedError,
        EOFError,
    ) as error:
        raise ReadError(f"The archive is damaged ({type(error).__name__}: {error}): export it again.") from None
    for add in found:
        add(shelf)
    return len(found)


def _record(entry: TuneEntry, source: str) -> dict[str, Any]:
    return {
        "title": entry.title,
        "composer": entry.composer,
        "facts": dict(entry.facts),
        "tags": list(entry.tags),
        "source_name": entry.source_name,
        "source": source,
        "reading": dict(entry.reading),
    }


def _arrangements(shelf: Shelf, entry: TuneEntry, folder: str, archive: zipfile.ZipFile) -> Iterator[dict[str, Any]]:
    for version in entry.versions:
        steps = []
        for step in shelf.steps(version.id):
            name = f"{folder}/arrangement-{version.id}/{step.number:04}.json"
            archive.writestr(name, step.text)
            steps.append({"number": step.number, "words": step.words, "file": name})
        yield {"name": version.name, "position": version.position, "steps": steps}


def _read(archive: zipfile.ZipFile, record: Any, check: Callable[[str], object]) -> Callable[[Shelf], None]:
    """What adds one tune of the archive to a shelf."""
    source = _entry(archive, record["source"])
    arrangements = []
    for arrangement in record["arrangements"]:
        steps = [
            (int(s["number"]), str(s["words"]), _entry(archive, s["file"]).decode()) for s in arrangement["steps"]
        ]
        numbers = [number for number, _, _ in steps]
        if int(arrangement["position"]) not in numbers or numbers != list(
            range(numbers[0], numbers[0] + len(numbers))
        ):
            raise ReadError("The archive is damaged (steps are missing): export it again.")
        for _, _, text in steps:
            try:
                check(text)
            except FiorituraError as error:
                raise ReadError(f"The archive holds a damaged arrangement: {error}") from None
        arrangements.append((str(arrangement["name"])[:200], int(arrangement["position"]), steps))

    def add(shelf: Shelf) -> None:
        id = shelf.add_tune(
            str(record["title"])[:200],
            str(record["composer"])[:200],
            facts=dict(record["facts"]),
            source_name=_plain(str(record["source_name"])),
            source=source,
            reading=dict(record["reading"]),
            tags=tuple(map(str, record["tags"])),
        )
        for name, position, steps in arrangements:
            shelf.add_history(id, name, position, steps)

    return add


def _check_size(archive: zipfile.ZipFile) -> None:
    entries = archive.infolist()
    total = sum(entry.file_size for entry in entries)
    if len(entries) > MOST_ENTRIES or total > MOST_BYTES:
        raise ReadError(f"The archive holds {len(entries)} files of {total:,} bytes: {MOST_BYTES:,} is the limit.")


def _entry(archive: zipfile.ZipFile, name: str) -> bytes:
    """One file of the archive; never more of it than it may hold, whatever it says of itself."""
    with archive.open(name) as file:
        data = file.read(MOST_ENTRY_BYTES + 1)
    if len(data) > MOST_ENTRY_BYTES:
        raise ReadError(f"{name} in the archive is larger than {MOST_ENTRY_BYTES:,} bytes.")
    return data


def _plain(text: str) -> str:
    """A harmless file name."""
    return re.sub(r"[^\w.()' -]", "_", text).strip(". ")[:80] or "tune"
