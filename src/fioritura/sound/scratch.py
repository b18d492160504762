"""Recordings that can be read again and again: in memory, or on disk where they grow long."""

from __future__ import annotations

import tempfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import IO, Final, Protocol

import numpy as np

from fioritura.sound.audio import SAMPLE_RATE, Audio

__all__ = ["BLOCK_FRAMES", "Recording", "blocks_of", "in_memory", "recorded"]

BLOCK_FRAMES: Final = 10 * SAMPLE_RATE
"""Blocks are whole milliseconds, and tenths of a second."""

_MEMORY_BYTES: Final = 96 * 1024 * 1024
_FRAME_BYTES: Final = 8


class Recording(Protocol):
    """Stereo audio of known length that can be read anywhere."""

    @property
    def frames(self) -> int:
        """Length in frames."""
        ...

    def read(self, start: int, stop: int) -> Audio:
        """The frames from `start` up to `stop`."""
        ...


@dataclass(frozen=True, slots=True)
class _Memory:
    audio: Audio

    @property
    def frames(self) -> int:
        return len(self.audio)

    def read(self, start: int, stop: int) -> Audio:
        return self.audio[start:stop]


@dataclass(frozen=True, slots=True)
class _Spool:
    file: IO[bytes]
    frames: int

    def read(self, start: int, stop: int) -> Audio:
        self.file.seek(start * _FRAME_BYTES)
        data = self.file.read((min(stop, self.frames) - start) * _FRAME_BYTES)
        return np.frombuffer(data, np.float32).reshape(-1, 2)


def in_memory(audio: Audio) -> Recording:
    """Audio of shape (frames, 2) as a recording."""
    return _Memory(audio)


@contextmanager
def recorded(blocks: Iterable[Audio]) -> Iterator[Recording]:
    """Audio that comes in blocks as a recording: up to four minutes in memory, more in a temporary file."""
    with tempfile.SpooledTemporaryFile(max_size=_MEMORY_BYTES) as file:
        frames = 0
        for block in blocks:
            file.write(np.ascontiguousarray(block, np.float32).data)
            frames += len(block)
        yield _Spool(file, frames)


def blocks_of(recording: Recording) -> Iterator[tuple[int, Audio]]:
    """Each block with the frame at which it starts."""
    for start in range(0, recording.frames, BLOCK_FRAMES):
        yield start, recording.read(start, min(recording.frames, start + BLOCK_FRAMES))
