"""The recordings of takes: one audio file each, in a folder beside the shelf's database.

A recording is read through before it is kept, so that whatever is in the folder can be played. It is written beside its
name and renamed, and only then told of in the database; a file that the database does not know is left from a crash.
"""

from __future__ import annotations

import secrets
import shutil
import time
from collections.abc import Collection, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any, Final

from fioritura.errors import ReadError
from fioritura.files import opened_beside, private_folder

__all__ = ["MOST_BYTES", "MOST_SEC", "Recording", "Recordings", "check_recording", "media_type_of"]

MOST_BYTES: Final = 64 * 1024 * 1024
MOST_SEC: Final = 600.0
_LEAST_SEC: Final = 1.0
_MOST_CHANNELS: Final = 8
_RATES: Final = (8_000, 192_000)
_ABANDONED_SEC: Final = 24 * 3600.0
_BLOCK: Final = 1 << 16

_SUFFIXES: Final = {"WAV": ".flac", "WAVEX": ".flac", "RF64": ".flac", "FLAC": ".flac", "MP3": ".mp3", "OGG": ".ogg"}
"""How a recording is kept, by the format it came in: WAV becomes FLAC, which loses nothing of 16 and 24 bits."""

_MEDIA_TYPES: Final = {".flac": "audio/flac", ".mp3": "audio/mpeg", ".ogg": "audio/ogg"}


@dataclass(frozen=True, slots=True)
class Recording:
    """A kept recording: its name in the folder, and its length."""

    name: str
    seconds: float

    @property
    def id(self) -> str:
        """The name without its ending: 16 hexadecimal digits that nobody can guess."""
        return Path(self.name).stem


class Recordings:
    """Recordings in a folder, which is made when the first one comes."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def add(self, file: IO[bytes]) -> Recording:
        """Read a recording through and keep it under a new name.

        Raises:
            ReadError: it is no WAV, FLAC, MP3 or OGG, damaged, too long or too short.
            OutputError: the folder can't be written.
        """
        with suppress(OSError):
            private_folder(self.folder, "")
        with _opened(file) as source:
            path = self.folder / (secrets.token_hex(8) + _checked_suffix(source))
            seconds = _kept(source, file, path)
        return Recording(path.name, round(seconds, 3))

    def path(self, name: str) -> Path:
        """Where a recording is."""
        return self.folder / name

    def named(self, id: str) -> list[str]:
        """The recordings with an id: one, or none."""
        return [name for ending in _MEDIA_TYPES if self.path(name := id + ending).is_file()]

    def remove(self, names: Collection[str]) -> None:
        """Delete recordings."""
        for name in names:
            self.path(name).unlink(missing_ok=True)

    def sweep(self, known: Collection[str]) -> None:
        """Delete what was left by a crash: files older than a day that are not among the known ones."""
        if not self.folder.is_dir():
            return
        for path in self.folder.iterdir():
            is_old = path.is_file() and time.time() - path.stat().st_mtime > _ABANDONED_SEC
            if is_old and path.name not in known:
                path.unlink(missing_ok=True)


def check_recording(file: IO[bytes]) -> None:
    """Read a recording through.

    Raises:
        ReadError: it could not be kept.
    """
    with _opened(file) as source:
        _checked_suffix(source)
        _check_seconds(sum(len(block) for block in _blocks(source)) / source.samplerate)


def media_type_of(name: str) -> str:
    """The media type of a recording."""
    return _MEDIA_TYPES[Path(name).suffix]


@contextmanager
def _opened(file: IO[bytes]) -> Iterator[Any]:
    import soundfile

    try:
        file.seek(0)
        with soundfile.SoundFile(file) as source:
            yield source
    except soundfile.LibsndfileError as error:
        reason = str(error.error_string).rstrip(".")
        raise ReadError("recording-unreadable", reason=reason) from None


def _checked_suffix(source: Any) -> str:
    suffix = _SUFFIXES.get(source.format)
    if suffix is None:
        raise ReadError("recording-type", given=str(source.format))
    low, high = _RATES
    if not low <= source.samplerate <= high:
        raise ReadError("recording-rate", given=source.samplerate, low=low, high=high)
    if source.channels > _MOST_CHANNELS:
        raise ReadError("recording-channels", given=source.channels)
    return suffix


def _kept(source: Any, file: IO[bytes], path: Path) -> float:
    """Write a recording under a path; returns its seconds."""
    with opened_beside(path, is_private=True) as target:
        if source.format in ("FLAC", "MP3", "OGG"):
            frames = sum(len(block) for block in _blocks(source))
            file.seek(0)
            shutil.copyfileobj(file, target)
        else:
            frames = _written_as_flac(source, target)
        seconds = float(frames / source.samplerate)
        _check_seconds(seconds)
    return seconds


def _check_seconds(seconds: float) -> None:
    if seconds < _LEAST_SEC:
        raise ReadError("recording-too-short", seconds=round(seconds, 2))


def _written_as_flac(source: Any, target: IO[bytes]) -> int:
    import soundfile

    subtype = "PCM_16" if source.subtype == "PCM_16" else "PCM_24"
    frames = 0
    with soundfile.SoundFile(target, "w", source.samplerate, source.channels, subtype, format="FLAC") as flac:
        for block in _blocks(source):
            flac.write(block)
            frames += len(block)
    return frames


def _blocks(source: Any) -> Iterator[Any]:
    """The samples, no more than may be kept: what a file says of its own length is not believed."""
    dtype = "int32" if source.subtype.startswith("PCM") else "float32"
    frames = 0
    while len(block := source.read(_BLOCK, dtype=dtype, always_2d=True)):
        frames += len(block)
        if frames > MOST_SEC * source.samplerate:
            raise ReadError("recording-too-long", limit=MOST_SEC / 60)
        yield block
