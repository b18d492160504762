"""Mastering: bring a mix to a loudness and keep its true peaks under a ceiling.

The mix is measured in frames of one millisecond. Its loudness gives a gain, a little higher where the limiter will
take some loudness away; frames whose true peak would then pass the ceiling ask for a reduction, which sets in 5 ms
before the peak and is let go by 60 dB a second, smoothed so that it makes no click.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.loudness import TAPS, LoudnessMeter, gated_loudness, oversampled_peaks
from fioritura.sound.scratch import BLOCK_FRAMES, Recording, blocks_of, in_memory

__all__ = ["CEILING_DBTP", "TARGET_LUFS", "Master", "MixMeter", "master", "mastering_of"]

TARGET_LUFS: Final = -16.0
CEILING_DBTP: Final = -1.0
MARGIN_DB: Final = 0.2
"""How far under the ceiling the limiter aims, for what its own moving gain adds between samples."""

FRAME: Final = SAMPLE_RATE // 1000
HOP_FRAMES: Final = 100
AHEAD: Final = 5
"""Frames by which a reduction sets in before its peak."""

RELEASE_DB: Final = 0.06
"""Reduction let go in each frame."""

SURE_SHARE: Final = 0.5
"""A frame whose samples stay under this share of the ceiling is not oversampled: its true peak is below, too."""

LARGEST_GAIN_DB: Final = 60.0
INAUDIBLE: Final = np.float32(10 ** (-66 / 20))
"""What a tail is let go below: 50 dB under the loudness of the whole (from memory, the hush of a quiet room)."""

LET_GO: Final = 250
"""Frames that are kept after the last audible one."""

_ROUNDS: Final = 20
_CLOSE_LU: Final = 0.02
_SMOOTHING: Final = np.hanning(2 * AHEAD + 3)[1:-1] / np.hanning(2 * AHEAD + 3).sum()

Frames = NDArray[np.float32]
"""One value a millisecond."""


@dataclass(frozen=True)
class Master:
    """What mastering does to one recording: a gain factor at the middle of each millisecond, and how many frames of it
    are kept (what has died away at the end is not)."""

    gains: Frames
    gain_db: float
    frames: int

    def applied(self, block: Audio, start: int) -> Audio:
        """The frames of the recording from `start` on, with the gain."""
        first, last = start // FRAME, min(len(self.gains), (start + len(block)) // FRAME + 2)
        around = self.gains[max(0, first - 1) : last]
        if not len(around) or around.min() == around.max():
            return block * (around[0] if len(around) else np.float32(1.0))
        places = np.arange(start, start + len(block), dtype=np.float64)
        centres = np.arange(max(0, first - 1), last) * FRAME + (FRAME - 1) / 2
        return block * np.interp(places, centres, around).astype(np.float32)[:, None]


@dataclass(slots=True)
class MixMeter:
    """Measures a mix that comes in blocks of whole milliseconds, of which the last may be cut short."""

    _loudness: LoudnessMeter = field(default_factory=LoudnessMeter)
    _peaks: list[Frames] = field(default_factory=list)

    def watched(self, blocks: Iterable[Audio]) -> Iterator[Audio]:
        """The same blocks, each measured as it passes."""
        for block in blocks:
            self._loudness.add(block)
            self._peaks.append(_frame_peaks(block))
            yield block

    def mastering(
        self,
        recording: Recording,
        target_lufs: float = TARGET_LUFS,
        ceiling_dbtp: float = CEILING_DBTP,
        least_frames: int | None = None,
    ) -> Master:
        """The gain and limiting for the recording that was measured; silence stays as it is.

        All frames are kept, or with `least_frames` so many and what can still be heard after them.
        """
        sample_peaks = np.concatenate(self._peaks) if self._peaks else np.zeros(0, np.float32)
        ceiling = np.float32(10 ** ((ceiling_dbtp - MARGIN_DB) / 20))
        gain_db = _gain_db(self._loudness.hop_powers(), sample_peaks, target_lufs, ceiling)
        gain = np.float32(10 ** (gain_db / 20))
        true_peaks = _true_peaks(recording, sample_peaks, SURE_SHARE * ceiling / gain)
        gains = gain * 10 ** (-_smoothed(_released(_reductions_db(true_peaks * gain, ceiling))) / 20)
        frames = recording.frames
        if least_frames is not None:
            audible = np.flatnonzero(sample_peaks * gain > INAUDIBLE)
            heard = (int(audible[-1]) + 1 + LET_GO) * FRAME if len(audible) else 0
            frames = min(frames, max(least_frames, heard))
        return Master(gains.astype(np.float32), gain_db, frames)


def mastering_of(
    recording: Recording, target_lufs: float = TARGET_LUFS, ceiling_dbtp: float = CEILING_DBTP
) -> Master:
    """Measure a recording from beginning to end and work out its gain and limiting."""
    meter = MixMeter()
    for _ in meter.watched(block for _, block in blocks_of(recording)):
        pass
    return meter.mastering(recording, target_lufs, ceiling_dbtp)


def master(audio: Audio, target_lufs: float = TARGET_LUFS, ceiling_dbtp: float = CEILING_DBTP) -> Audio:
    """Audio of shape (frames, 2) at a loudness in LUFS, its true peaks at most `ceiling_dbtp`."""
    recording = in_memory(audio)
    mastering = mastering_of(recording, target_lufs, ceiling_dbtp)
    return np.concatenate([mastering.applied(block, start) for start, block in blocks_of(recording)])


def _frame_peaks(block: Audio) -> Frames:
    """The highest sample of each millisecond, the last of which may be cut short."""
    highest = np.maximum(np.abs(block[:, 0]), np.abs(block[:, 1]))
    missing = -len(highest) % FRAME
    peaks: Frames = np.pad(highest, (0, missing)).reshape(-1, FRAME).max(axis=1)
    return peaks


def _gain_db(powers: Frames, peaks: Frames, target_lufs: float, ceiling: np.float32) -> float:
    """The gain after which the limited mix has the target loudness; 0 for silence.

    How much of each 100 ms' power the limiter leaves is told by the peaks of its milliseconds.
    """
    measured = gated_loudness(powers)
    if not np.isfinite(measured):
        return 0.0
    peaks = peaks[: len(powers) * HOP_FRAMES]
    squares = np.maximum(peaks.reshape(-1, HOP_FRAMES), np.float32(1e-9)) ** 2
    shares = squares / squares.sum(axis=1, keepdims=True)
    gain_db = target_lufs - measured
    for _ in range(_ROUNDS):
        reductions = _smoothed(_released(_reductions_db(peaks * np.float32(10 ** (gain_db / 20)), ceiling)))
        if not reductions.any():
            break
        kept = (shares * 10 ** (-reductions.reshape(-1, HOP_FRAMES) / 10)).sum(axis=1)
        missing = target_lufs - gain_db - gated_loudness((powers * kept).astype(np.float32))
        gain_db += missing
        if abs(missing) < _CLOSE_LU:
            break
    return min(gain_db, LARGEST_GAIN_DB)


def _true_peaks(recording: Recording, sample_peaks: Frames, unsure_from: np.float32) -> Frames:
    """`sample_peaks` with the true peak in the frames that reach `unsure_from`."""
    peaks = sample_peaks.copy()
    around = np.arange(-TAPS // 2, FRAME + TAPS // 2)
    for start in range(0, recording.frames, BLOCK_FRAMES):
        first = start // FRAME
        loud = np.flatnonzero(sample_peaks[first : first + BLOCK_FRAMES // FRAME] >= unsure_from)
        if not len(loud):
            continue
        block = _with_margins(recording, start)
        windows = block[(loud * FRAME + TAPS // 2)[:, None] + around]
        peaks[first + loud] = np.maximum(peaks[first + loud], oversampled_peaks(windows))
    return peaks


def _with_margins(recording: Recording, start: int) -> Audio:
    """One block and half a filter's length of what lies on either side, silence beyond the ends."""
    margin = TAPS // 2
    end = start + BLOCK_FRAMES + margin
    block = recording.read(max(0, start - margin), min(recording.frames, end))
    return np.pad(block, ((max(0, margin - start), max(0, end - recording.frames)), (0, 0)))


def _reductions_db(peaks: Frames, ceiling: np.float32) -> Frames:
    reductions: Frames = 20 * np.log10(np.maximum(peaks / ceiling, np.float32(1.0)))
    return reductions


def _released(reductions: Frames) -> Frames:
    """Each reduction let go slowly: never less than any earlier one less the release since."""
    slope = RELEASE_DB * np.arange(len(reductions))
    released: Frames = np.maximum(np.maximum.accumulate(reductions + slope) - slope, 0.0).astype(np.float32)
    return released


def _smoothed(reductions: Frames) -> Frames:
    """Reductions that come in gradually, and are nowhere less than was asked for a frame on either side."""
    if not reductions.any():
        return reductions
    reach = 2 * AHEAD + 1
    padded = np.pad(reductions, reach, mode="edge")
    highest = np.lib.stride_tricks.sliding_window_view(padded, 2 * (AHEAD + 1) + 1).max(axis=1)
    return np.convolve(highest, _SMOOTHING, "valid").astype(np.float32)
