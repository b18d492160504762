"""Which soundfont sounds: the one that is set, else one that the system has, else the one of the pretty_midi wheel.

A soundfont is a SoundFont 2 file (RIFF form ``sfbk``), or a compressed one (SF3), which is unpacked when it is played.
None is part of this package.
"""

from __future__ import annotations

import os
import struct
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from fioritura.errors import ToolError
from fioritura.sound.sf3 import is_compressed, unpacked

__all__ = ["SOUNDFONT_VARIABLE", "Origin", "Soundfont", "find_soundfont", "read_soundfont"]

SOUNDFONT_VARIABLE: Final = "FIORITURA_SOUNDFONT"
"""Environment variable that names a soundfont file."""

Origin = Literal["set", "system", "fallback"]

_FOLDERS: Final = (
    "~/.local/share/soundfonts",
    "~/.local/share/sounds/sf2",
    "~/Library/Audio/Sounds/Banks",
    "/usr/local/share/soundfonts",
    "/usr/share/soundfonts",
    "/usr/share/sounds/sf2",
    "/opt/homebrew/share/soundfonts",
    "C:/soundfonts",
)
_PREFERRED: Final = ("fluidr3_gm", "fluidr3", "generaluser", "musescore_general", "default")
_LICENCES: Final = {"fluidr3": "MIT", "musescore_general": "MIT", "timgm6mb": "GPL-2 (as Debian lists it)"}
_INFO_LIMIT: Final = 65536


@dataclass(frozen=True, slots=True)
class Soundfont:
    """A soundfont file: where it is, what it calls itself, its licence as far as known, and why it was taken."""

    path: Path
    name: str
    licence: str
    origin: Origin
    is_compressed: bool = False

    @property
    def plain_path(self) -> Path:
        """A SoundFont 2 file with its sounds: its own, or one that is unpacked from it.

        Raises:
            ToolError: it can't be unpacked.
        """
        return unpacked(self.path) if self.is_compressed else self.path


def find_soundfont(chosen: Path | None = None) -> Soundfont:
    """The soundfont to use: `chosen`, else the environment variable's, else a system one, else the fallback.

    Raises:
        ToolError: the chosen file is not a soundfont, or there is none at all.
    """
    setting = os.environ.get(SOUNDFONT_VARIABLE, "").strip()
    if chosen or setting:
        return read_soundfont(chosen or Path(setting), "set")
    for path in sorted(_system_files(), key=_preference):
        try:
            return read_soundfont(path, "system")
        except ToolError:
            continue
    fallback = _fallback_file()
    if fallback is None:
        raise ToolError("no-soundfont", variable=SOUNDFONT_VARIABLE)
    return read_soundfont(fallback, "fallback")


def read_soundfont(path: Path, origin: Origin = "set") -> Soundfont:
    """A soundfont by its file, its name and copyright taken from the file's own INFO list.

    Raises:
        ToolError: the file is missing or is not a SoundFont 2 file.
    """
    try:
        with path.open("rb") as file:
            head = file.read(_INFO_LIMIT)
    except OSError as error:
        raise ToolError("soundfont-unreadable", path=str(path), reason=str(error.strerror)) from None
    if head[:4] != b"RIFF" or head[8:12] != b"sfbk":
        raise ToolError("not-a-soundfont", path=str(path))
    info = dict(_info_texts(head))
    stem = path.stem.lower()
    known = next((licence for name, licence in _LICENCES.items() if name in stem), None)
    licence = known or (f"see its notice: {info['ICOP']}" if info.get("ICOP") else "not stated in the file")
    return Soundfont(path, info.get("INAM") or path.stem, licence, origin, is_compressed(head))


def _system_files() -> Iterator[Path]:
    for folder in _FOLDERS:
        place = Path(folder).expanduser()
        if place.is_dir():
            yield from place.glob("*.sf[23]")


def _preference(path: Path) -> tuple[int, str]:
    stem = path.stem.lower()
    rank = next((number for number, name in enumerate(_PREFERRED) if stem.startswith(name)), len(_PREFERRED))
    return rank, stem + path.suffix.lower()


def _fallback_file() -> Path | None:
    from importlib.util import find_spec

    spec = find_spec("pretty_midi")
    if spec is None or spec.origin is None:
        return None
    return next(iter(sorted(Path(spec.origin).parent.glob("*.sf2"))), None)


def _info_texts(head: bytes) -> Iterator[tuple[str, str]]:
    """Texts of the INFO list at the start of a soundfont: (four-letter id, text)."""
    if head[12:16] != b"LIST" or head[20:24] != b"INFO":
        return
    place, end = 24, min(len(head), 20 + struct.unpack("<I", head[16:20])[0])
    while place + 8 <= end:
        size = struct.unpack("<I", head[place + 4 : place + 8])[0]
        text = head[place + 8 : place + 8 + size].split(b"\0")[0]
        yield head[place : place + 4].decode("ascii", "replace"), text.decode("utf-8", "replace").strip()
        place += 8 + size + size % 2
