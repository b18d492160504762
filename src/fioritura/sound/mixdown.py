"""From a performance to a finished audio file: render, master, encode, in bounded memory.

The encoder runs in a thread of its own while the next block is mastered.
"""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from pathlib import Path

from fioritura.files import opened_beside
from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.encode import OVERSHOOT_DB, encode_blocks, format_named, tags_of
from fioritura.sound.master import CEILING_DBTP, TARGET_LUFS, Master, MixMeter
from fioritura.sound.performance import Performance
from fioritura.sound.render import OnShare, render_blocks
from fioritura.sound.scratch import Recording, blocks_of, recorded
from fioritura.sound.synth import Synth

__all__ = ["write_audio"]


def write_audio(
    performance: Performance,
    path: Path,
    *,
    synth: Synth | None = None,
    artist: str = "",
    target_lufs: float = TARGET_LUFS,
    ceiling_dbtp: float = CEILING_DBTP,
    mastering: Master | None = None,
    progress: OnShare | None = None,
    at_once: int | None = None,
) -> Master:
    """Write a performance as the audio format that the file's ending names; whole or not at all.

    `at_once` synths run side by side, as many as there are cores unless told.

    Returns what mastering did. Given to the stems of the same mix as `mastering`, it makes them add up to the mix.

    Raises:
        OptionError: the ending is none of mp3, wav and flac.
        ToolError: the synth is missing or failed.
        OutputError: the file can't be written.
    """
    kind = format_named(path.suffix)
    meter = MixMeter()
    with recorded(meter.watched(render_blocks(performance, synth, progress, at_once=at_once))) as mix:
        least_frames = round(performance.duration_sec * SAMPLE_RATE)
        ceiling_dbtp -= OVERSHOOT_DB[kind]
        mastering = mastering or meter.mastering(mix, target_lufs, ceiling_dbtp, least_frames)
        with opened_beside(path) as file:
            encode_blocks(_ahead(_mastered(mix, mastering)), kind, file, tags_of(performance, artist))
    return mastering


def _mastered(mix: Recording, mastering: Master) -> Iterator[Audio]:
    for start, block in blocks_of(mix):
        if start < mastering.frames:
            yield mastering.applied(block[: mastering.frames - start], start)


def _ahead(blocks: Iterator[Audio]) -> Iterator[Audio]:
    """The same blocks, each prepared while its predecessor is in use."""
    with ThreadPoolExecutor(1) as pool:
        upcoming: Future[Audio | None] = pool.submit(next, blocks, None)
        while (block := upcoming.result()) is not None:
            upcoming = pool.submit(next, blocks, None)
            yield block
