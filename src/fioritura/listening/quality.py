"""What spoils a recording: silence, clipping, a second player, noise; each with what to do about it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.listening.neural import Heard
from fioritura.listening.notes import Finding, QualityKind
from fioritura.listening.pitch import FRAME_SEC, RATE, Floats, Track
from fioritura.listening.segment import gate_db
from fioritura.words import message

__all__ = ["ClipMeter", "PartMeter", "PlayerShare", "findings", "player_share"]

SILENT_DB: Final = -60.0
CLIPPED_SHARE: Final = 1e-4
SECOND_SHARE: Final = 0.25
NOISY_SHARE: Final = 0.5
PLAYER_SHARE: Final = 0.1
"""Of what sounds at least so much should be the player's: less is a band alone, or speech."""
SURE: Final = 0.8
"""The net's notes of one player, in any room and over a band, are likelier than this; of two players less likely.
Chosen on the trial takes: 0.91 and more of one, 0.69 and less of two as loud as each other."""
CLEAN_SHARE: Final = 0.78
"""A take whose frames are clean for so long holds one tone at a time, and little more; chosen on trial takes and the
train half of the benchmark's: dry ones have 0.80 and more, but for a saxophone whose attacks crack (0.73 and less)."""
_CLEAN: Final = 0.02
_FULL_SCALE: Final = 0.985
_FLAT: Final = 1e-3
_NOISY: Final = 0.4

_FRAME: Final = 2048
_FFT: Final = 4096
_HANN: Final = np.hanning(_FRAME)
_BIN_HZ: Final = RATE / _FFT
_LOWEST_HZ: Final = 60.0
_HIGHEST_HZ: Final = 5000.0
_PEAKS: Final = 16
_PEAK_SHARE: Final = 3e-3
_HELD: Final = 10**-0.15
_SECOND_ENERGY: Final = 0.03
_LEAST_PAIRS: Final = 12
_LOW_HARMONICS: Final = 8

Reals = NDArray[np.float64]


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


@dataclass(frozen=True, slots=True)
class _Partials:
    """The strongest peaks of a spectrum: frequencies, powers, and which the tone on `base_hz` explains."""

    base_hz: float
    hertz: Reals
    power: Reals
    is_explained: NDArray[np.bool_]


class PartMeter:
    """Looks for a second part: partials that hold or grow beside a tone that goes on.

    What a room keeps of an earlier note sinks; what another player sounds does not.
    """

    def __init__(self) -> None:
        self._pending: Floats = np.zeros(0, np.float32)
        self._last: _Partials | None = None
        self._loudest = 0.0
        self._pairs = 0
        self._second = 0

    def feed(self, mono: Floats) -> None:
        """Take the next samples, at `RATE` Hz."""
        self._pending = np.concatenate([self._pending, mono])
        count = self._pending.size // _FRAME
        for frame in self._pending[: count * _FRAME].reshape(count, _FRAME):
            self._hear(frame)
        self._pending = self._pending[count * _FRAME :]

    @property
    def share(self) -> float:
        """Share of the moments of a steady tone in which another part sounds, 0 to 1."""
        return self._second / self._pairs if self._pairs >= _LEAST_PAIRS else 0.0

    def _hear(self, frame: Floats) -> None:
        energy = float(np.mean(frame**2))
        self._loudest = max(energy, 0.995 * self._loudest)
        partials = _partials(frame) if energy > 0.01 * self._loudest and energy > 1e-8 else None
        last, self._last = self._last, partials
        if partials is None or last is None or abs(np.log2(partials.base_hz / last.base_hz)) > 0.04:
            return
        self._pairs += 1
        self._second += _held_beside(partials, last) > _SECOND_ENERGY


def _held_beside(now: _Partials, last: _Partials) -> float:
    """Share of the power in unexplained partials that were there before and have not sunk."""
    held = 0.0
    for hertz, power in zip(now.hertz[~now.is_explained], now.power[~now.is_explained], strict=True):
        before = last.power[np.abs(last.hertz / hertz - 1) < 0.015]
        if before.size and power > _HELD * before.max():
            held += power
    return held / float(now.power.sum())


def _partials(frame: Floats) -> _Partials | None:
    spectrum = np.abs(np.fft.rfft(frame * _HANN, _FFT)) ** 2
    spectrum = spectrum[: int(_HIGHEST_HZ / _BIN_HZ)]
    places = np.flatnonzero((spectrum[1:-1] > spectrum[:-2]) & (spectrum[1:-1] >= spectrum[2:])) + 1
    places = places[(places * _BIN_HZ > _LOWEST_HZ) & (spectrum[places] > _PEAK_SHARE * spectrum.max())]
    places = places[np.argsort(spectrum[places])[::-1][:_PEAKS]]
    if not places.size:
        return None
    before, here, after = (np.log(spectrum[places + offset] + 1e-20) for offset in (-1, 0, 1))
    hertz = (places + 0.5 * (before - after) / (before - 2 * here + after)) * _BIN_HZ
    power = spectrum[places].astype(np.float64)
    bases = (hertz[:4, None] / np.arange(1, 7)).ravel()
    bases = bases[bases > _LOWEST_HZ]
    base = float(bases[np.argmax(_fits(bases, hertz, power))])
    return _Partials(base, hertz, power, _harmonics(np.array([base]), hertz)[0] > 0)


def _harmonics(bases_hz: Reals, hertz: Reals) -> NDArray[np.intp]:
    """The number of the harmonic that each partial is of each base, 0 for none; shape (bases, partials)."""
    number = np.rint(hertz / bases_hz[:, None]).astype(np.intp)
    away = np.abs(hertz - number * bases_hz[:, None])
    return np.where(away < np.maximum(10, 0.012 * hertz), number, 0)


def _fits(bases_hz: Reals, hertz: Reals, power: Reals) -> Reals:
    """Power that harmonics of each base explain, less a charge for harmonics that should be there and are not."""
    number = _harmonics(bases_hz, hertz)
    top = np.minimum(number.max(axis=1), _LOW_HARMONICS)
    present = (number[:, :, None] == np.arange(1, _LOW_HARMONICS + 1)).any(axis=1)
    charge = 0.6 * (1 - present.sum(axis=1) / np.maximum(top, 1)) + np.where(present[:, 0], 0.0, 0.3)
    return np.asarray(np.where(top == 0, -1.0, (number > 0) @ power / power.sum() - charge))


@dataclass(frozen=True, slots=True)
class PlayerShare:
    """What is a player's: the share of the sounding time, how sure the net is of the notes (0 to 1), and whether the
    take is clean, though the net hears no player: then the frames alone tell its notes."""

    share: float
    sureness: float
    is_clean: bool


def player_share(track: Track, heard: Heard, second_share: float) -> PlayerShare:
    """How much of what sounds is a player, by the net and by the frames."""
    sounding = track.level_db > max(gate_db(track.level_db), SILENT_DB)
    share = heard.sounding_sec / max(float(sounding.sum()) * FRAME_SEC, FRAME_SEC)
    clean = float((track.heard.best()[1][sounding] < _CLEAN).mean()) if sounding.any() else 0.0
    is_clean = clean >= CLEAN_SHARE and second_share <= SECOND_SHARE and share < PLAYER_SHARE
    return PlayerShare(min(1.0, share), heard.sureness, is_clean)


def findings(
    track: Track, clipped_share: float, second_share: float, least_db: float, player: PlayerShare | None = None
) -> Iterator[Finding]:
    """All that is wrong, the worst first; with what the net says of the player, where it listened."""
    sounding = track.level_db > max(least_db, SILENT_DB)
    sounding_share = float(sounding.mean())
    if float(np.percentile(track.level_db, 99)) < SILENT_DB or sounding_share < 0.01:
        yield Finding(QualityKind.SILENCE, round(1 - sounding_share, 3), message("recording-silent"))
        return
    noisy = float((track.heard.best()[1][sounding] > _NOISY).mean())
    has_player = player is not None and (player.share >= PLAYER_SHARE or player.is_clean)
    if noisy > NOISY_SHARE and not has_player:
        yield Finding(QualityKind.NOISE, round(noisy, 3), message("recording-noisy"))
    elif second_share > SECOND_SHARE and not (has_player and player is not None and player.sureness >= SURE):
        yield Finding(QualityKind.POLYPHONY, round(second_share, 3), message("recording-of-several"))
    elif player is not None and not has_player:
        yield Finding(QualityKind.NO_PLAYER, round(1 - player.share, 3), message("recording-without-player"))
    if clipped_share > CLIPPED_SHARE:
        yield Finding(QualityKind.CLIPPING, round(clipped_share, 5), message("recording-clipped"))
