"""Recordings read in blocks: WAV, FLAC, MP3 and OGG, any rate, mono or stereo, as mono at the ear's rate."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.errors import OptionError, ReadError
from fioritura.listening.pitch import RATE, Floats
from fioritura.words import Value, message

__all__ = ["Block", "blocks_of_array", "blocks_of_file"]

BLOCK_SEC: Final = 2.0
MIN_RATE: Final = 4000
MAX_RATE: Final = 384_000


@dataclass(frozen=True, slots=True)
class Block:
    """Some seconds of a recording: `raw` as it came (frames, channels; full scale ±1), `mono` at the ear's rate."""

    raw: Floats
    mono: Floats


def blocks_of_file(path: Path) -> Iterator[Block]:
    """Read a recording a few seconds at a time.

    Raises:
        ReadError: the file is missing, a folder, or not audio that can be read.
    """
    import soundfile

    if not path.exists():
        raise ReadError("recording-missing", file=str(path))
    if path.is_dir():
        raise ReadError("recording-is-folder", file=str(path))
    try:
        with soundfile.SoundFile(str(path)) as file:
            size = int(BLOCK_SEC * file.samplerate)
            yield from _mono(_read(file, size), file.samplerate, path.name)
    except soundfile.LibsndfileError as error:
        reason = str(error.error_string).rstrip(".")
        raise ReadError("audio-unreadable", file=str(path), reason=reason) from None


def blocks_of_array(samples: NDArray[Any], rate: int) -> Iterator[Block]:
    """A recording that is in memory already: shape (frames,) or (frames, channels), full scale ±1.

    Raises:
        OptionError: another shape, whole numbers, samples that are not finite, or a rate out of bounds.
    """
    is_table = samples.ndim == 1 or (samples.ndim == 2 and samples.shape[1] > 0)
    if not is_table or not np.issubdtype(samples.dtype, np.floating):
        raise OptionError("recording-shape", shape=str(samples.shape), type=str(samples.dtype))
    table = (samples[:, None] if samples.ndim == 1 else samples).astype(np.float32, copy=False)
    size = int(BLOCK_SEC * max(rate, 1))
    yield from _mono(
        (table[start : start + size] for start in range(0, len(table), size)), rate, message("the-recording")
    )


def _read(file: Any, size: int) -> Iterator[Floats]:
    """The samples to their end, whatever the file says of its length: some damaged ones say nothing."""
    while len(block := file.read(size, dtype="float32", always_2d=True)):
        yield block


def _mono(blocks: Iterator[Floats], rate: int, name: Value) -> Iterator[Block]:
    """Mix to mono and resample, without a seam between blocks."""
    import soxr

    if not MIN_RATE <= rate <= MAX_RATE:
        raise OptionError("audio-rate", rate=rate, low=MIN_RATE, high=MAX_RATE, name=name, usual=44100)
    stream = soxr.ResampleStream(rate, RATE, 1, dtype="float32")
    empty = np.zeros((0, 1), np.float32)
    for raw in blocks:
        if not np.isfinite(raw).all():
            raise ReadError("recording-not-numbers", name=name)
        yield Block(raw, stream.resample_chunk(np.ascontiguousarray(raw.mean(axis=1))))
    yield Block(empty, stream.resample_chunk(np.zeros(0, np.float32), last=True))
