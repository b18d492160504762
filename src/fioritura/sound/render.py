"""A performance as audio, in pieces that synths render side by side and that fit together seamlessly.

Every note belongs to the piece in which it starts and rings on into the next ones, where the pieces are added; as
a synth's notes sound independently of each other, the sum is what one pass would give. So memory stays bounded
however long the music is. Pieces start on whole seconds, where the synth's own blocks start.
"""

from __future__ import annotations

import math
import os
from bisect import bisect_left
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import replace
from functools import partial
from itertools import pairwise
from operator import itemgetter
from typing import Final

import numpy as np

from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.clock import Clock
from fioritura.sound.coverage import mended
from fioritura.sound.filters import without_rumble
from fioritura.sound.midi_writer import END_SEC, write_midi
from fioritura.sound.performance import Performance, PerformedNote, PerformedPart
from fioritura.sound.synth import Synth, synth_named
from fioritura.sound.voice.breath import runs
from fioritura.sound.voice.part import with_voice
from fioritura.tune import Tempo

__all__ = ["OnShare", "render", "render_blocks", "render_short"]

LONGEST_PIECE_SEC: Final = 35
SHORTEST_PIECE_SEC: Final = 15
EVEN_CLOCK: Final = Clock((Tempo(0, 400.0),))
"""Fast, so that a tick is short: a tenth of a millisecond."""

FULL_SCALE: Final = 32767 / 32768
SOFTER: Final = 0.6

OnShare = Callable[[float], None]
"""Called with the share done, 0 to 1."""


def render(performance: Performance, synth: Synth | None = None) -> Audio:
    """The whole audio, until the last release has died away.

    Raises:
        ToolError: the synth is missing or failed.
    """
    return np.concatenate(list(render_blocks(performance, synth)))


def render_blocks(
    performance: Performance,
    synth: Synth | None = None,
    progress: OnShare | None = None,
    *,
    at_once: int | None = None,
) -> Iterator[Audio]:
    """The audio in consecutive blocks; all of them together are `render`'s.

    `at_once` synths run side by side, as many as there are cores unless told.

    Raises:
        ToolError: the synth is missing or failed.
    """
    yield from without_rumble(_mixed(performance, synth or synth_named(), at_once or os.cpu_count() or 1, progress))


def _mixed(performance: Performance, synth: Synth, workers: int, progress: OnShare | None) -> Iterator[Audio]:
    """The synth's audio in blocks, as many synths at once as there are workers."""
    bounds = _bounds(performance.duration_sec, workers)
    total = round((performance.duration_sec + END_SEC) * SAMPLE_RATE)
    tasks = (partial(_rendered, piece, synth) for piece in _pieces(performance, bounds))
    ringing = np.zeros((0, 2), np.float32)
    done = 0
    for end, piece in zip(bounds[1:], _in_order(tasks, workers), strict=True):
        frames = total - done if end == bounds[-1] else end * SAMPLE_RATE - done
        piece = _padded(piece, max(frames, len(ringing)))
        piece[: len(ringing)] += ringing
        block, ringing = piece[:frames], piece[frames:]
        done += frames
        yield block
        if progress:
            progress(done / total)


def render_short(performance: Performance, synth: Synth) -> Audio:
    """The audio of a performance in one piece, for performances of up to a few minutes.

    Raises:
        ToolError: the synth is missing or failed.
    """
    (piece,) = _pieces(performance, [0, math.ceil(performance.duration_sec) + 1])
    return np.concatenate(list(without_rumble([_rendered(piece, synth)])))


def _in_order(tasks: Iterable[Callable[[], Audio]], workers: int) -> Iterator[Audio]:
    """The results of tasks in their order; all workers go on while a result is in use."""
    with ThreadPoolExecutor(workers) as pool:
        waiting: deque[Future[Audio]] = deque()
        for task in tasks:
            waiting.append(pool.submit(task))
            if len(waiting) > workers:
                yield waiting.popleft().result()
        while waiting:
            yield waiting.popleft().result()


def _bounds(end_sec: float, workers: int) -> list[int]:
    """Whole seconds at which pieces start, and the end; as many pieces as workers, or a multiple."""
    total = math.ceil(end_sec) + 1
    count = max(1, min(workers, total // SHORTEST_PIECE_SEC))
    while total / count > LONGEST_PIECE_SEC:
        count += workers
    return [round(total * number / count) for number in range(count + 1)]


def _pieces(performance: Performance, bounds: Sequence[int]) -> Iterator[Performance]:
    """The notes that start between each two times, each early by its part's attack, moved to the beginning.

    A voice's notes that hang together stay together, in the piece in which the first of them starts.
    """
    starts = [_starts(part) for part in performance.parts]
    for start, end in pairwise(bounds):
        parts = []
        for part, placed in zip(performance.parts, starts, strict=True):
            inside = placed[
                bisect_left(placed, start, key=itemgetter(0)) : bisect_left(placed, end, key=itemgetter(0))
            ]
            if inside:
                early = (replace(note, onset_sec=onset_sec - start) for _, onset_sec, note in inside)
                parts.append(replace(part, notes=tuple(early)))
        yield replace(performance, clock=EVEN_CLOCK, bars=performance.bars[:1], parts=tuple(parts), lasts_sec=0.0)


def _starts(part: PerformedPart) -> list[tuple[float, float, PerformedNote]]:
    """For each note when its run starts, when it starts itself, and the note, in order."""
    early = [(max(0.0, note.onset_sec - part.attack_sec), note) for note in part.notes]
    if not part.voice:
        return sorted(((onset_sec, onset_sec, note) for onset_sec, note in early), key=itemgetter(0))
    first_of = [run[0].onset_sec for run in runs(part.notes) for _ in run]
    return [
        (max(0.0, first - part.attack_sec), onset_sec, note)
        for first, (onset_sec, note) in zip(first_of, early, strict=True)
    ]


def _rendered(piece: Performance, synth: Synth) -> Audio:
    """The piece's audio: voices sing, the synth plays the other parts."""
    audio = _played(replace(piece, parts=tuple(part for part in piece.parts if not part.voice)), synth)
    for part in piece.parts:
        if part.voice:
            audio = with_voice(part, audio)
    return audio


def _played(piece: Performance, synth: Synth) -> Audio:
    """The synth's audio; keys that the soundfont lacks are mended, and what would clip is rendered softer and made up.

    A channel's volume acts as the square of its value (General MIDI's 40 log10 law).
    """
    if not piece.parts:
        return np.zeros((0, 2), np.float32)
    heard = tuple(part if part.is_drums else mended(part, synth.keys(part.program)) for part in piece.parts)
    audio = synth.render(write_midi(replace(piece, parts=heard)))
    if np.abs(audio).max(initial=0.0) < FULL_SCALE:
        return audio
    softer = [replace(part, volume=round(part.volume * SOFTER)) for part in piece.parts]
    raised = _played(replace(piece, parts=tuple(softer)), synth)
    return raised / np.float32(SOFTER * SOFTER)


def _padded(audio: Audio, frames: int) -> Audio:
    """The audio with silence up to a number of frames, at least."""
    return audio if len(audio) >= frames else np.pad(audio, ((0, frames - len(audio)), (0, 0)))
