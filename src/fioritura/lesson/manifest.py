"""The manifest of a pack: its files with checksums, what they were made from, and with which versions."""

from __future__ import annotations

import json
import shutil
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any, Final

from fioritura.errors import OptionError, ReadError
from fioritura.files import read_bytes
from fioritura.lesson.edition import plan_record
from fioritura.lesson.lesson import Lesson
from fioritura.words import say

__all__ = ["MANIFEST", "PackSource", "read_manifest", "write_manifest"]

MANIFEST: Final = "manifest.json"
_FORM: Final = 1
_TOOLS: Final = ("verovio", "typst", "lameenc", "midirenderer", "av")


@dataclass(frozen=True, slots=True)
class PackSource:
    """The files that a pack is made from: the tune's own, and the teacher's overrides where there are any."""

    tune: Path
    overrides: Path | None = None


def write_manifest(
    lesson: Lesson,
    folder: Path,
    source: PackSource | None,
    settings: Mapping[str, Any],
    left_out: Sequence[Mapping[str, str]],
    moved: Mapping[str, int],
) -> dict[str, Any]:
    """Put the sources and the manifest into a pack's folder; return the manifest. It holds no date."""
    record: dict[str, Any] = {
        "form": _FORM,
        "program": f"fioritura {version('fioritura')}",
        "tools": {name: found for name in _TOOLS if (found := _version(name))},
        "title": lesson.title,
        "key": str(lesson.tune.key),
        "seed": lesson.rendition.seed,
        "settings": dict(settings),
        "source": _copied(folder, source),
        "plan": plan_record(lesson.rendition),
        "techniques": [example.technique.id for example in lesson.examples],
        "left_out": list(left_out),
        "moved_octaves": dict(moved),
        "warnings": [say(warning) for warning in lesson.tune.warnings],
    }
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    record["files"] = [
        {
            "path": path.relative_to(folder).as_posix(),
            "bytes": path.stat().st_size,
            "sha256": sha256(path.read_bytes()).hexdigest(),
        }
        for path in files
    ]
    text = json.dumps(record, indent=2, ensure_ascii=False) + "\n"
    (folder / MANIFEST).write_text(text, encoding="utf-8")
    return record


def _copied(folder: Path, source: PackSource | None) -> dict[str, str]:
    """The sources, copied into the pack, by their paths in it."""
    if source is None:
        return {}
    place = folder / "source"
    place.mkdir(exist_ok=True)
    found = {}
    for name, path in (("tune", source.tune), ("overrides", source.overrides)):
        if path is not None:
            shutil.copyfile(path, place / path.name)
            found[name] = f"source/{path.name}"
    return found


def _version(package: str) -> str:
    try:
        return version(package)
    except PackageNotFoundError:
        return ""


def read_manifest(path: Path) -> tuple[dict[str, Any], PackSource]:
    """A manifest's settings, and the sources that lie beside it, their checksums checked.

    Raises:
        ReadError: the file can't be read or is no manifest.
        OptionError: a source is missing, or is not the one that the pack was made from.
    """
    try:
        record = json.loads(read_bytes(path).decode("utf-8"))
        sums = {file["path"]: file["sha256"] for file in record["files"]}
        sources = {name: path.parent / place for name, place in record["source"].items()}
        settings: dict[str, Any] = dict(record["settings"])
        tune = sources["tune"]
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        raise ReadError("manifest-damaged", file=str(path), name=MANIFEST) from None
    for name, place in record["source"].items():
        if sha256(read_bytes(sources[name])).hexdigest() != sums.get(place):
            raise OptionError("manifest-other-file", file=str(sources[name]))
    return settings, PackSource(tune, sources.get("overrides"))
