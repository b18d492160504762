"""What spoils a recording: silence, clipping, a second player, noise; each with what to do about it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import numpy as np

from fioritura.listening.notes import Finding, QualityKind
from fioritura.listening.pitch import Floats, Track

__all__ = ["ClipMeter", "findings"]

SILENT_DB: Final = -60.0
CLIPPED_SHARE: Final = 1e-4
SECOND_SHARE: Final = 0.25
NOISY_SHARE: Final = 0.5
_FULL_SCALE: Final = 0.985
_FLAT: Final = 1e-3
_PERIODIC: Final = 0.25
_UNCLEAR: Final = 0.15


class ClipMeter:
    """Counts samples that lie flat at full scale, over a stream of blocks."""

    def __init__(self) -> None:
        self._clipped = 0
        self._total = 0

    def feed(self, raw: Floats) -> None:
        """Take the next samples as they came, shape (frames, channels)."""
        if len(raw) > 1:
            is_loud = np.abs(raw[1:]) > _FULL_SCALE
            self._clipped += int((is_loud & (np.abs(np.diff(raw, axis=0)) < _FLAT)).any(axis=1).sum())
        self._total += len(raw)

    @property
    def share(self) -> float:
        """Share of clipped samples, 0 to 1."""
        return self._clipped / max(self._total, 1)


def findings(track: Track, clipped_share: float, gate_db: float) -> Iterator[Finding]:
    """All that is wrong, the worst first."""
    sounding = track.level_db > max(gate_db, SILENT_DB)
    sounding_share = float(sounding.mean())
    if float(np.percentile(track.level_db, 99)) < SILENT_DB or sounding_share < 0.01:
        yield Finding(
            QualityKind.SILENCE,
            1 - sounding_share,
            "Hardly anything is to be heard: check the microphone and its level, and record again.",
        )
        return
    second = second_player_share(track, sounding)
    if second > SECOND_SHARE:
        yield Finding(
            QualityKind.POLYPHONY,
            second,
            "Two or more parts sound at once: record the melody alone, or with the backing on headphones.",
        )
    elif (noisy := float((track.heard.best()[1][sounding] > NOISY_SHARE).mean())) > NOISY_SHARE:
        yield Finding(
            QualityKind.NOISE,
            noisy,
            "Most of it is noise without a pitch: go nearer to the microphone, and away from the noise.",
        )
    if clipped_share > CLIPPED_SHARE:
        yield Finding(
            QualityKind.CLIPPING,
            clipped_share,
            "The loud moments are cut off: turn the recording level down until the meter stays below the red.",
        )


def second_player_share(track: Track, sounding: np.ndarray) -> float:
    """Share of the sounding frames in which another steady tone is left when the main tone is taken out."""
    _, unclear = track.heard.best()
    _, left = track.fresh.best()
    return float(((unclear > _UNCLEAR) & (left < _PERIODIC))[sounding].mean())
