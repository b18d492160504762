"""Loudness and true peak as ITU-R BS.1770-4 has them, block by block, for stereo at 48 kHz.

Loudness: K-weighting, mean square over 400 ms every 100 ms, an absolute gate at −70 LUFS and a relative one 10 LU
below the loudness of what passed it (EBU R 128 uses the same). True peak: four-fold oversampling with the filter of
the recommendation's annex 2.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.filters import Biquad, StereoFilter

__all__ = [
    "SILENCE_LUFS",
    "LoudnessMeter",
    "gated_loudness",
    "integrated_loudness",
    "oversampled_peaks",
    "true_peak_db",
]

SILENCE_LUFS: Final = float("-inf")
"""The loudness of audio that never passes the absolute gate."""

HOP: Final = SAMPLE_RATE // 10
BLOCK_HOPS: Final = 4
ABSOLUTE_GATE_LUFS: Final = -70.0
RELATIVE_GATE_LU: Final = -10.0
_OFFSET_LU: Final = -0.691

_K_WEIGHTING: Final = (
    Biquad((1.53512485958697, -2.69169618940638, 1.19839281085285), (-1.69065929318241, 0.73248077421585)),
    Biquad((1.0, -2.0, 1.0), (-1.99004745483398, 0.99007225036621)),
)
"""The two stages at 48 kHz (BS.1770-4, tables 1 and 2)."""

_BLOCK: Final = 1 << 17

_QUARTER: Final = (
    *(0.001708984375, 0.010986328125, -0.0196533203125, 0.033203125, -0.0594482421875, 0.1373291015625),
    *(0.97216796875, -0.102294921875, 0.047607421875, -0.026611328125, 0.014892578125, -0.00830078125),
)
_HALF: Final = (
    *(-0.0291748046875, 0.029296875, -0.0517578125, 0.089111328125, -0.16650390625, 0.465087890625),
    *(0.77978515625, -0.2003173828125, 0.1015625, -0.0582275390625, 0.0330810546875, -0.0189208984375),
)
_PHASES: Final = np.array([_QUARTER, _HALF, _HALF[::-1], _QUARTER[::-1]], dtype=np.float32)
"""Interpolation filter (BS.1770-4, annex 2): four phases of twelve taps."""

TAPS: Final = _PHASES.shape[1]


@dataclass(slots=True)
class LoudnessMeter:
    """Measures audio that comes in blocks."""

    hops: list[NDArray[np.float32]] = field(default_factory=list)
    _filter: StereoFilter = field(default_factory=lambda: StereoFilter(_K_WEIGHTING))
    _power: NDArray[np.float32] = field(default_factory=lambda: np.zeros(0, np.float32))

    def add(self, block: Audio) -> None:
        """Take the next frames, shape (frames, 2)."""
        weighted = self._filter.filtered(block)
        power = np.concatenate([self._power, weighted.real**2 + weighted.imag**2])
        whole = len(power) // HOP * HOP
        self.hops.append(power[:whole].reshape(-1, HOP).mean(axis=1))
        self._power = power[whole:]

    def hop_powers(self) -> NDArray[np.float32]:
        """Weighted mean square, summed over the channels, of each whole 100 ms so far."""
        return np.concatenate(self.hops) if self.hops else np.zeros(0, np.float32)

    def integrated(self) -> float:
        """Gated loudness so far, in LUFS; `SILENCE_LUFS` when nothing passes the gate."""
        return gated_loudness(self.hop_powers())


def gated_loudness(hop_powers: NDArray[np.float32]) -> float:
    """Integrated loudness in LUFS from the weighted powers of consecutive 100 ms."""
    if len(hop_powers) < BLOCK_HOPS:
        return SILENCE_LUFS
    sums = np.convolve(hop_powers.astype(np.float64), np.ones(BLOCK_HOPS), "valid")
    blocks = np.maximum(sums / BLOCK_HOPS, 1e-20)
    loud = blocks[_lufs(blocks) > ABSOLUTE_GATE_LUFS]
    if not len(loud):
        return SILENCE_LUFS
    gate = float(_lufs(loud.mean())) + RELATIVE_GATE_LU
    return float(_lufs(loud[_lufs(loud) > gate].mean()))


def _lufs(power: NDArray[np.float64] | np.float64) -> NDArray[np.float64]:
    return _OFFSET_LU + 10.0 * np.log10(power)


def integrated_loudness(audio: Audio) -> float:
    """Gated loudness of audio of shape (frames, 2) in LUFS; `SILENCE_LUFS` for silence."""
    meter = LoudnessMeter()
    meter.add(audio)
    return meter.integrated()


def true_peak_db(audio: Audio) -> float:
    """The highest true peak of audio of shape (frames, 2), in dBTP; minus infinity for silence."""
    padded = np.pad(audio, ((TAPS, TAPS), (0, 0)))
    highest = max(
        float(oversampled_peaks(padded[None, start : start + _BLOCK + TAPS - 1])[0])
        for start in range(0, len(padded) - TAPS, _BLOCK)
    )
    return 20.0 * float(np.log10(highest)) if highest > 0 else SILENCE_LUFS


def oversampled_peaks(windows: Audio) -> NDArray[np.float32]:
    """The true peak inside each of many stretches of audio, shape (stretches, frames, 2), at least `TAPS` frames."""
    taps = np.lib.stride_tricks.sliding_window_view(windows, TAPS, axis=1)
    peaks: NDArray[np.float32] = np.abs(taps @ _PHASES[:, ::-1].T).max(axis=(1, 2, 3))
    return peaks
