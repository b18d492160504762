"""Measured wind voices: what colour an instrument has at a pitch, soft and loud.

``winds.json`` holds, in half decibels, the strengths of the harmonics and of the noise between them of single notes that
real players held, written by ``tools/measure_winds.py``; its source is named in it. Where a pitch was not measured, or
to even out what is only one note's, notes nearby count by their distance. Low harmonics are taken by their number (an
odd one of a clarinet stays odd), high ones by their frequency (the body keeps its place).
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from pathlib import Path
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.chance import Chance
from fioritura.sound.audio import SAMPLE_RATE

__all__ = ["NOISE_FRAMES", "PERIOD", "Tone", "Wind", "hertz_of", "voices_source", "wind_of", "winds", "winds_from"]

PERIOD: Final = 8192
"""Places in the table of one period."""

NOISE_FRAMES: Final = 1 << 16
NOISE_STEP: Final = 3
"""Semitones that share a stretch of noise."""

REACH: Final = 1.5
"""Semitones at which a note's weight has fallen to 0.6, where every semitone was measured; further where fewer were."""

OWN_WEIGHT: Final = 8.0
"""How much more a note counts at its own pitch than one nearby."""

MOST_FLUTTER_DB: Final = 0.6
"""More is a player's vibrato, which the performance adds."""

CLOUDS_DB: Final = 1.5
"""How far the noise's level strays (standard deviation, judged by spectrograms of real notes)."""

NUMBERED: Final = {"clarinet": 8.0, "bass-clarinet": 8.0}
USUALLY_NUMBERED: Final = 1.0
"""The harmonic above which colour goes by frequency alone: a clarinet's odd harmonics stay odd far up."""

TOP_HERTZ: Final = 16_000.0
_BY_PROGRAM: Final = {
    **dict.fromkeys((57, 60), "trumpet"),
    58: "trombone",
    **dict(zip(range(65, 69), ("soprano-sax", "alto-sax", "tenor-sax", "baritone-sax"), strict=True)),
    69: "oboe",
    72: "clarinet",
    **dict.fromkeys((73, 74, 75), "flute"),
}
_A4_HERTZ: Final = 440.0
_FILE: Final = Path(__file__).with_name("winds.json")

Decibels = NDArray[np.float64]
Table = NDArray[np.complex64]


@dataclass(frozen=True, slots=True)
class Tone:
    """One period of a pitch, shape (`PERIOD`,), and its noise, shape (`NOISE_FRAMES`,): soft as the real part, loud as the
    imaginary one, each period with a mean power of 1."""

    period: Table
    noise: Table


@dataclass(frozen=True, slots=True)
class _Layer:
    midis: NDArray[np.float64]
    harmonics: tuple[Decibels, ...]
    noise: Decibels
    numbered: float

    def at(self, midi: float) -> tuple[Decibels, Decibels]:
        """Harmonics and noise of a pitch in dB."""
        spacing = (self.midis[-1] - self.midis[0]) / max(1, len(self.midis) - 1)
        distance = ((self.midis - midi) / (REACH * spacing)) ** 2 / 2
        weights = np.exp(distance.min() - distance) * np.where(self.midis == midi, OWN_WEIGHT, 1.0)
        weights /= weights.sum()
        numbers = np.arange(1, int(TOP_HERTZ / hertz_of(midi)) + 1)
        share = np.clip((numbers - 1) / self.numbered, 0.0, 1.0)
        total = np.zeros(len(numbers))
        for other, weight in zip(range(len(self.midis)), weights, strict=True):
            if weight > 1e-3:
                own = self.harmonics[other]
                ratio = 2 ** ((midi - self.midis[other]) / 12)
                known = np.arange(1, len(own) + 1)
                total += weight * (1 - share) * np.interp(numbers, known, own)
                total += weight * share * np.interp(numbers * ratio, known, own)
        return total / weights[weights > 1e-3].sum(), weights @ self.noise


@dataclass(frozen=True, eq=False)
class Wind:
    """A voice. `shift` semitones above the sounding pitch lies the measured one whose harmonics it has by number; `colour`
    is added to how loud a note is when its colour is looked up (below 0 darker)."""

    name: str
    soft: _Layer
    loud: _Layer
    noise_hertz: NDArray[np.float64]
    attack_sec: float
    flutter_db: float
    shift: int = 0
    colour: float = 0.0

    def spectra(self, midi: int) -> tuple[Decibels, Decibels, Decibels, Decibels]:
        """Harmonics and noise (a hertz) of the soft layer, then of the loud one, in dB against the whole."""
        (soft, soft_noise), (loud, loud_noise) = self.soft.at(midi + self.shift), self.loud.at(midi + self.shift)
        return soft, soft_noise, loud, loud_noise

    def tone(self, midi: int) -> Tone:
        """What the voice sounds like at a pitch."""
        return _tone(self, midi)


@lru_cache(maxsize=256)
def _tone(wind: Wind, midi: int) -> Tone:
    soft, _, loud, _ = wind.spectra(midi)
    bins = np.zeros(PERIOD // 2 + 1, np.complex128)
    tables = []
    for layer in (soft, loud):
        count = min(len(layer), int(TOP_HERTZ / hertz_of(midi)))
        bins[1 : count + 1] = PERIOD / np.sqrt(2) * 10 ** (layer[:count] / 20) * _phases(count)
        period = np.fft.irfft(bins)
        tables.append(period / np.sqrt((period**2).mean()))
    return Tone(_as_pair(*tables), _noise(wind, round(midi / NOISE_STEP) * NOISE_STEP))


@lru_cache(maxsize=64)
def _noise(wind: Wind, midi: int) -> Table:
    _, soft, _, loud = wind.spectra(midi)
    hertz = np.maximum(np.arange(NOISE_FRAMES // 2 + 1) * SAMPLE_RATE / NOISE_FRAMES, 20.0)
    turns = np.exp(2j * np.pi * Chance.of(midi, "voice", "noise").units(len(hertz)))
    tables = []
    for layer in (soft, loud):
        level = np.interp(np.log(hertz), np.log(wind.noise_hertz), layer)
        tables.append(np.fft.irfft(turns * np.sqrt(NOISE_FRAMES * SAMPLE_RATE / 2) * 10 ** (level / 20)))
    return _as_pair(*(table * _clouds(midi) for table in tables))


def _clouds(seed: int) -> NDArray[np.float64]:
    """How a breath's noise comes and goes within the stretch of noise, 4 to 25 times a second; its mean power is 1."""
    hertz = np.arange(NOISE_FRAMES // 2 + 1) * SAMPLE_RATE / NOISE_FRAMES
    turns = np.exp(2j * np.pi * Chance.of(seed, "voice", "clouds").units(len(hertz)))
    curve = np.fft.irfft(turns * ((hertz > 4.0) & (hertz < 25.0)))
    clouds = 10 ** (CLOUDS_DB * curve / curve.std() / 20)
    steady: NDArray[np.float64] = clouds / np.sqrt((clouds**2).mean())
    return steady


def hertz_of(midi: float) -> float:
    """The frequency of a MIDI number (ISO 16)."""
    return float(_A4_HERTZ * 2 ** ((midi - 69) / 12))


def winds_from(measured: Mapping[str, Any]) -> dict[str, Wind]:
    """The voices of a table as ``tools/measure_winds.py`` makes it, by name, with those that are derived from them.

    Only saxophones were measured soft and loud: the other voices grow darker in soft notes as saxophones do, harmonic by
    harmonic.
    """
    edges = np.array(measured["noise_edges_hertz"])
    centres = np.sqrt(edges[:-1] * edges[1:])
    unit = measured["unit_db"]
    layers = {
        name: {
            layer: _layer(found["notes"], unit, NUMBERED.get(name, USUALLY_NUMBERED))
            for layer, found in voice.items()
        }
        for name, voice in measured["voices"].items()
    }
    softening = _softening([both for both in layers.values() if "p" in both])
    made = {}
    for name, both in layers.items():
        soft = both.get("p") or _softened(both["f"], softening)
        how = measured["voices"][name]["f"]
        made[name] = Wind(name, soft, both["f"], centres, how["attack_sec"], min(how["flutter_db"], MOST_FLUTTER_DB))
    return made


def _layer(notes: Mapping[str, Mapping[str, Sequence[int]]], unit: float, numbered: float) -> _Layer:
    ordered = sorted((int(midi), found) for midi, found in notes.items())
    return _Layer(
        np.array([midi for midi, _ in ordered], float),
        tuple(unit * np.array(found["harmonics"], float) for _, found in ordered),
        unit * np.array([found["noise"] for _, found in ordered], float),
        numbered,
    )


def _softening(layered: Sequence[Mapping[str, _Layer]], count: int = 24) -> Decibels:
    """By how much soft notes' harmonics differ from loud ones', on the average of all pitches; the last goes on."""
    found = [
        soft[:count] - loud[:count]
        for both in layered
        for soft, loud in zip(both["p"].harmonics, both["f"].harmonics, strict=True)
        if len(soft) >= count
    ]
    mean: Decibels = np.mean(found, axis=0)
    smooth: Decibels = np.convolve(np.pad(mean, 1, mode="edge"), np.ones(3) / 3, "valid")
    return smooth


def _softened(layer: _Layer, softening: Decibels) -> _Layer:
    def soft(loud: Decibels) -> Decibels:
        changed = loud + np.pad(softening, (0, max(0, len(loud) - len(softening))), mode="edge")[: len(loud)]
        level: Decibels = changed - 10 * np.log10((10 ** (changed / 10)).sum() / (10 ** (loud / 10)).sum())
        return level

    return _Layer(layer.midis, tuple(soft(loud) for loud in layer.harmonics), layer.noise, layer.numbered)


def _phases(count: int) -> NDArray[np.complex128]:
    """The harmonics' phases, the same for all pitches, so that a slur never makes two pitches cancel."""
    turns: NDArray[np.complex128] = np.exp(2j * np.pi * Chance.of(0, "voice", "phases").units(512)[:count])
    return turns


def _as_pair(soft: NDArray[np.float64], loud: NDArray[np.float64]) -> Table:
    return (soft + 1j * loud).astype(np.complex64)


def voices_source() -> str:
    """On which recordings the voices were measured, and under which licences these are."""
    return str(_table()["source"])


@cache
def _table() -> dict[str, Any]:
    table: dict[str, Any] = json.loads(_FILE.read_text(encoding="utf-8"))
    return table


@cache
def winds() -> dict[str, Wind]:
    """The voices that were measured, and those of their near relatives, by the id of the instrument.

    Nearest measured voices: flutes and whistles have an alto flute's colours, a flugelhorn a trumpet's, darker, and a
    trombone those of a trumpet an octave above it.
    """
    measured = winds_from(_table())
    flute, trumpet = measured["alto-flute"], measured["trumpet"]
    return {
        **measured,
        **{name: replace(flute, name=name) for name in ("concert", "flute", "irish-flute", "tin-whistle")},
        "flugelhorn": replace(trumpet, name="flugelhorn", colour=-0.4),
        "trombone": replace(trumpet, name="trombone", shift=12),
    }


def wind_of(instrument_id: str, program: int) -> str:
    """The name of the voice that an instrument sings with: its own, else that of an own instrument with its General MIDI
    program (from 1); empty where no voice is near."""
    if instrument_id in winds():
        return instrument_id
    return _BY_PROGRAM.get(program, "")
