"""Pitch by frames: YIN, vectorised over many frames at once, and heard through the tail of the note before.

A frame compares `WINDOW` samples with the same number of samples `lag` later, for all lags at once (de Cheveigné &
Kawahara 2002, JASA 111(4), equations 6 and 8). The difference is normalised by its mean over shorter lags; what is
left at a dip is the frame's *aperiodicity*: 0 for a perfectly periodic tone, about 1 for noise. Instead of deciding
on one dip, a frame keeps the deepest dip of each of seven bands of lags. Which of them is the note, its octave or a
strong partial is decided later, by the notes around it (`fioritura.listening.segment`).

In a room, or where a key is released slowly, the note before still sounds under the attack of the next. So a frame
that is not clean is heard twice: as it is, and with the last clean tone taken out by a comb (the frame less itself
one period of that tone earlier).

Conventions: samples are mono at `RATE` Hz; pitches are in cents relative to A4 = 440 Hz (ISO 16); levels in dB
relative to full scale; a frame's time is the middle of its comparison.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

__all__ = ["BANDS_HZ", "FRAME_SEC", "RATE", "Dips", "Floats", "Track", "Tracker"]

Floats = NDArray[np.float32]

RATE: Final = 22050
HOP: Final = 128
FRAME_SEC: Final = HOP / RATE
WINDOW: Final = 384
LAG_BANDS: Final = ((8, 14), (14, 24), (24, 41), (41, 71), (71, 122), (122, 208), (208, 356))
"""Ranges of lags, in samples, each less than an octave, so that a period and its double never meet in one: from
2756 Hz, above a flute's C7, to 62 Hz, below a baritone saxophone's low A."""

BANDS_HZ: Final = (600, 1200, 2400, 4800)
"""Edges between the bands in which a frame's level is measured."""

_BAND_FFT: Final = 512
_BAND_STARTS: Final = [0, *(-(-edge * _BAND_FFT // RATE) for edge in BANDS_HZ)]
_HANN: Final = np.hanning(WINDOW).astype(np.float32)
_MAX_LAG: Final = LAG_BANDS[-1][1]
_FRAME: Final = WINDOW + _MAX_LAG
_FINE_LAG: Final = 120
_PAST: Final = _MAX_LAG + 4
_FFT: Final = 768
_CENTRE: Final = 280
_BATCH: Final = 512
_FLOOR: Final = 1e-10
_CLEAN: Final = 0.1
_MIXED: Final = 0.03
_OTHER_CENTS: Final = 60.0
_AGE_FRAMES: Final = (8, 40)


@dataclass(frozen=True)
class Dips:
    """The candidates for a frame's pitch; arrays run over frames and lag bands. No dip: `cents` is not a number."""

    cents: Floats
    aperiodicity: Floats

    def part(self, span: slice) -> Dips:
        """The dips of some frames."""
        return Dips(self.cents[span], self.aperiodicity[span])

    def doubt(self) -> Floats:
        """How well two shorter periods together explain what each dip explains, 0 to 1.

        The common multiple of two tones' periods is a dip too, though nobody plays that low note.
        """
        doubt = np.zeros_like(self.aperiodicity)
        first = np.ones(len(doubt), np.float32)
        second = np.ones_like(first)
        first_cents = np.full_like(first, np.nan)
        for band in range(doubt.shape[1]):
            doubt[:, band] = np.maximum(1 - first - second, 0)
            cents, here = self.cents[:, band], np.minimum(self.aperiodicity[:, band], 1)
            ratio = np.exp2((first_cents - cents) / 1200)
            is_same_tone = np.abs(ratio / np.maximum(np.rint(ratio), 1) - 1) < 0.015
            second = np.where(is_same_tone, second, np.minimum(second, np.maximum(first, here)))
            first_cents = np.where((here < first) & ~is_same_tone, cents, first_cents)
            first = np.minimum(first, here)
        return doubt

    def best(self) -> tuple[Floats, Floats]:
        """Cents of each frame's most likely dip, the shortest of nearly equal ones, and how unclear it is.

        Unclear is a dip that is not deep, or that two shorter periods explain together: 0 for a clean tone.
        """
        unclear = self.aperiodicity + 0.5 * self.doubt()
        rank = unclear + np.linspace(0, 0.25, self.cents.shape[1], dtype=np.float32)
        rows, band = np.arange(len(rank)), rank.argmin(axis=1)
        return self.cents[rows, band], unclear[rows, band]


@dataclass(frozen=True)
class Track:
    """What each frame holds.

    `heard` are the dips of the frame as it is, `fresh` those that are left when the last clean tone is taken out.
    `level_db` is the level of the frame, `hiss_db` that of what lies above some 4 kHz, `bands_db` those of the octaves
    parted at `BANDS_HZ`, shape (frames, bands).
    """

    heard: Dips
    fresh: Dips
    level_db: Floats
    hiss_db: Floats
    bands_db: Floats

    def __len__(self) -> int:
        return len(self.level_db)

    @property
    def duration_sec(self) -> float:
        """Length of what was fed, to a frame."""
        return len(self) * FRAME_SEC

    def time(self, frame: float) -> float:
        """Middle of a frame, in seconds."""
        return (frame * HOP + _CENTRE) / RATE


class Tracker:
    """Builds a `Track` from a stream of blocks, with no more memory than the track itself needs.

    `passes` is how often a frame is heard through the tail of another tone: once will do where the frames only measure.
    """

    def __init__(self, *, passes: int = 2) -> None:
        self._passes = passes
        self._pending: Floats = np.zeros(_PAST, np.float32)
        self._parts: list[tuple[Floats, ...]] = []
        self._held: Floats = np.full(_AGE_FRAMES[1], np.nan, np.float32)

    def feed(self, samples: Floats) -> None:
        """Take the next samples, at `RATE` Hz."""
        self._pending = np.concatenate([self._pending, samples])
        while self._pending.size >= _PAST + _FRAME + (_BATCH - 1) * HOP:
            self._analyse(_BATCH)

    def finish(self) -> Track:
        """The track of all that was fed; the last frames are filled up with silence."""
        self._pending = np.concatenate([self._pending, np.zeros(_FRAME, np.float32)])
        while (frames := min(_BATCH, 1 + (self._pending.size - _PAST - _FRAME) // HOP)) > 1 or not self._parts:
            self._analyse(frames)
        columns = [np.concatenate(column) for column in zip(*self._parts, strict=True)]
        return Track(Dips(*columns[:2]), Dips(*columns[2:4]), *columns[4:])

    def _analyse(self, count: int) -> None:
        samples = self._pending[: _PAST + _FRAME + (count - 1) * HOP]
        now = samples[_PAST:]
        self._pending = self._pending[count * HOP :]
        heard = _dips(sliding_window_view(now, _FRAME)[::HOP])
        fresh = self._fresh(samples, heard)
        middle = _CENTRE - WINDOW // 2
        level = _running_energy(now)[middle::HOP][:count] / WINDOW
        hiss = _running_energy(np.diff(now, 2, prepend=0, append=0))[middle::HOP][:count] / WINDOW
        bands = _band_energies(sliding_window_view(now, WINDOW)[middle::HOP][:count])
        levels = tuple(_decibels(energy) for energy in (level, hiss, bands))
        self._parts.append((heard.cents, heard.aperiodicity, fresh.cents, fresh.aperiodicity, *levels))

    def _fresh(self, samples: Floats, heard: Dips) -> Dips:
        """The dips once the last clean tone is out, for frames that are not clean themselves or sound another tone.

        A second pass corrects what the first takes for clean: the common multiple of an old and a new tone.
        """
        fresh = Dips(np.full_like(heard.cents, np.nan), np.ones_like(heard.cents))
        cents, unclear = heard.best()
        clean = np.where(unclear < _CLEAN, cents, np.nan)
        used = np.full_like(cents, np.nan)
        for _ in range(self._passes):
            known = np.concatenate([self._held, clean])
            before = _last_finite(known)[_AGE_FRAMES[1] - _AGE_FRAMES[0] :][: len(cents)]
            is_wanted = np.isfinite(before) & ((unclear > _MIXED) | (np.abs(cents - before) > _OTHER_CENTS))
            rows = np.flatnonzero(is_wanted & (before != used))
            if rows.size:
                left, share = _combed(samples, rows, RATE / 440.0 * 2 ** (-before[rows] / 1200))
                found = _dips(left)
                fresh.cents[rows] = np.where(share[:, None] > _MIXED, found.cents, np.nan)
                fresh.aperiodicity[rows] = found.aperiodicity
            used = before
            fresh_cents, fresh_unclear = fresh.best()
            is_other = (fresh_unclear < _CLEAN) & (np.abs(fresh_cents - cents) > _OTHER_CENTS)
            clean = np.where(is_other, np.nan, clean)
        self._held = np.concatenate([self._held, clean])[-_AGE_FRAMES[1] :]
        return fresh


def _last_finite(values: Floats) -> Floats:
    """At each place the last finite value, unless it is older than the oldest age that is let through."""
    places = np.arange(values.size)
    last = np.maximum.accumulate(np.where(np.isfinite(values), places, 0))
    return np.where(places - last <= _AGE_FRAMES[1] - _AGE_FRAMES[0], values[last], np.float32(np.nan))


def _combed(samples: Floats, rows: NDArray[np.intp], lags: NDArray[np.floating]) -> tuple[Floats, Floats]:
    """Frames less themselves a lag earlier (cubic interpolation), and the share of the energy that is left."""
    windows = sliding_window_view(samples, _FRAME)
    start = _PAST + rows * HOP
    whole = np.floor(lags).astype(np.intp)
    part = (lags - whole)[:, None].astype(np.float32)
    weights = (
        -part * (part - 1) * (part - 2) / 6,
        (part + 1) * (part - 1) * (part - 2) / 2,
        -(part + 1) * part * (part - 2) / 2,
        (part + 1) * part * (part - 1) / 6,
    )
    now = windows[start]
    left = now - sum(
        weight * windows[start - whole - shift] for shift, weight in zip((-1, 0, 1, 2), weights, strict=True)
    )
    share = np.square(left).sum(axis=1) / np.maximum(2 * np.square(now).sum(axis=1), _FLOOR)
    return left, share


def _running_energy(samples: Floats) -> NDArray[np.float64]:
    """Energy of the `WINDOW` samples from each sample on; shape (samples - WINDOW + 1,)."""
    total = np.concatenate([[0.0], np.cumsum(samples.astype(np.float64) ** 2)])
    return np.asarray(total[WINDOW:] - total[:-WINDOW])


def _band_energies(frames: Floats) -> NDArray[np.float64]:
    """Energy between the edges of `BANDS_HZ`, by a Hann window; shape (frames, bands)."""
    power = np.abs(np.fft.rfft(frames * _HANN, _BAND_FFT)) ** 2
    return np.asarray(np.add.reduceat(power, _BAND_STARTS, axis=1) / (WINDOW * _BAND_FFT / 4), np.float64)


def _normalised_difference(frames: Floats) -> Floats:
    """YIN's cumulative mean normalised difference, shape (frames, lags 0 to `_MAX_LAG`)."""
    later = np.fft.rfft(frames, _FFT)
    now = np.fft.rfft(frames[:, :WINDOW], _FFT)
    product = np.fft.irfft(later * now.conj(), _FFT)[:, : _MAX_LAG + 1]
    total = np.cumsum(np.square(frames), axis=1)
    energies = total[:, WINDOW - 1 :].copy()
    energies[:, 1:] -= total[:, : _FRAME - WINDOW]
    difference = np.maximum(energies[:, :1] + energies - 2 * product, 0).astype(np.float32)
    mean = np.cumsum(difference[:, 1:], axis=1) / np.arange(1, _MAX_LAG + 1, dtype=np.float32)
    normalised: Floats = np.ones_like(difference)
    np.divide(difference[:, 1:], mean, out=normalised[:, 1:], where=mean > _FLOOR)
    return normalised


def _dips(frames: Floats) -> Dips:
    """The deepest dip in each band of lags of each frame."""
    normalised = _normalised_difference(frames)
    rows = np.arange(len(normalised))
    cents = np.empty((len(rows), len(LAG_BANDS)), np.float32)
    aperiodicity = np.empty_like(cents)
    inner = normalised[:, 1:-1]
    is_dip = (inner <= normalised[:, :-2]) & (inner < normalised[:, 2:])
    depth = np.where(is_dip, inner, np.float32(2))
    for band, (low, high) in enumerate(LAG_BANDS):
        lag = low + np.argmin(depth[:, low - 1 : high - 1], axis=1)
        found = is_dip[rows, lag - 1]
        shift, least = _bottom(normalised, rows, lag)
        if high <= _FINE_LAG // 2:
            shift = _finer(normalised, rows, lag, shift)
        with np.errstate(invalid="ignore", divide="ignore"):
            cents[:, band] = np.where(found, 1200 * np.log2(RATE / 440.0 / (lag + shift)), np.nan)
        aperiodicity[:, band] = np.where(found, np.maximum(least, 0), 1)
    return Dips(cents, aperiodicity)


def _bottom(normalised: Floats, rows: NDArray[np.intp], lag: NDArray[np.intp]) -> tuple[Floats, Floats]:
    """Where between the lags a dip's parabola has its bottom (−1 to 1), and its depth there."""
    before, here, after = (normalised[rows, lag + offset] for offset in (-1, 0, 1))
    bend = np.maximum(before - 2 * here + after, _FLOOR)
    shift = np.clip(0.5 * (before - after) / bend, -1, 1)
    return shift, here - 0.25 * (before - after) * shift


def _finer(normalised: Floats, rows: NDArray[np.intp], lag: NDArray[np.intp], shift: Floats) -> Floats:
    """A short lag's shift, measured at a high multiple of it, where the error of the parabola weighs less."""
    times = _FINE_LAG // lag
    far = np.rint(times * (lag + shift)).astype(np.intp)
    far += np.argmin([normalised[rows, far + offset] for offset in (-1, 0, 1)], axis=0) - 1
    far_shift, _ = _bottom(normalised, rows, far)
    finer = (far + far_shift) / times - lag
    return np.where(np.abs(finer - shift) < 0.25, finer, shift)


def _decibels(power: NDArray[np.float64]) -> Floats:
    return np.asarray(10 * np.log10(np.maximum(power, _FLOOR)), np.float32)
