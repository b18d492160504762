"""Measure real notes of wind instruments: strengths of harmonics, breath noise, attack and unsteadiness, by instrument,
pitch and dynamic level, for `fioritura.sound.voice`.

    python -m tools.measure_winds FOLDER

FOLDER holds ``mtg/INSTRUMENT/LAYER/MIDI.flac`` ("MTG Solo Saxophones", Music Technology Group, CC BY 4.0) and
``iowa/INSTRUMENT/MIDI.flac`` (University of Iowa Musical Instrument Samples, free of restriction). One in five, chosen by a
hash of their names, is left out: `tests/test_voice_tone.py` holds the voice against those.
"""

from __future__ import annotations

import json
import math
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from hashlib import blake2b
from itertools import pairwise
from pathlib import Path
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from fioritura.files import write_beside

__all__ = ["RealNote", "left_out", "measured_voices", "real_notes", "steady_part"]

SOURCE: Final = (
    "Measured on MTG Solo Saxophones (Music Technology Group, Universitat Pompeu Fabra; CC BY 4.0) "
    "and the University of Iowa Musical Instrument Samples (free of restriction)."
)
TARGET: Final = Path(__file__).parent.parent / "src/fioritura/sound/voice/winds.json"
LEFT_OUT: Final = 5
STEADY_SEC: Final = (0.25, 0.9)
"""The part of a note, after its onset, of which colour and noise are taken."""

ONSET_DB: Final = -25.0
TOP_HERTZ: Final = 16_000.0
FLOOR_DB: Final = -127.0
NOISE_EDGES: Final = tuple(float(edge) for edge in np.geomspace(60.0, 20_000.0, 25))
IOWA_LAYER: Final = "f"
LAYERS: Final = ("p", "f")

Signal = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class RealNote:
    """A recorded note: mono samples from its onset on, and frames a second."""

    instrument: str
    layer: str
    midi: int
    signal: Signal
    rate: int


def left_out(instrument: str, midis: Iterable[int]) -> set[int]:
    """The fifth of an instrument's notes that the measuring never sees: those whose names have the lowest hashes."""
    ranked = sorted(set(midis), key=lambda midi: blake2b(f"{instrument}/{midi}".encode()).digest())
    return set(ranked[: math.ceil(len(ranked) / LEFT_OUT)])


def real_notes(folder: Path) -> Iterator[RealNote]:
    """All notes of a folder, in order.

    Raises:
        OSError: a file can't be read.
    """
    import soundfile

    for path in sorted(folder.glob("mtg/*/*/*.flac")) + sorted(folder.glob("iowa/*/*.flac")):
        signal, rate = soundfile.read(path, dtype="float64")
        is_layered = path.parts[-4] == "mtg"
        instrument, layer = (path.parts[-3], path.parts[-2]) if is_layered else (path.parts[-2], IOWA_LAYER)
        yield RealNote(instrument, layer, int(path.stem), signal[onset_of(signal, rate) :], rate)


def onset_of(signal: Signal, rate: int) -> int:
    """The frame from which a note is less than 25 dB under its highest level."""
    levels = level_db(signal, rate)
    return int(np.argmax(levels > levels.max() + ONSET_DB)) * (rate // 200)


def level_db(signal: Signal, rate: int) -> Signal:
    """The level of every 5 ms in dB."""
    hop = rate // 200
    power = (signal[: len(signal) // hop * hop].reshape(-1, hop) ** 2).mean(axis=1)
    levels: Signal = 10 * np.log10(power + 1e-12)
    return levels


def steady_part(note: RealNote) -> Signal:
    """What lies between 0.25 and 0.9 s after the onset."""
    first, last = (round(at * note.rate) for at in STEADY_SEC)
    return note.signal[first:last]


def measured(note: RealNote) -> dict[str, list[int]]:
    """Harmonics and noise (a hertz) of one note, in half decibels against the level of its steady part."""
    part = steady_part(note)
    power = float((part**2).mean())
    nominal = 440 * 2 ** ((note.midi - 69) / 12)
    size = 8192 if nominal < 160 else 4096
    window = _blackman_harris(size)
    starts = range(0, len(part) - size + 1, size // 8)
    spectra = np.array([np.abs(np.fft.rfft(part[s : s + size] * window, 2 * size)) ** 2 for s in starts])
    per_bin = note.rate / (2 * size)
    hertz = [_pitch(spectrum, nominal, per_bin) for spectrum in spectra]
    count = int(min(TOP_HERTZ, 0.45 * note.rate) / nominal)
    sine = (window.sum() / 2) ** 2
    flat = (window**2).sum()
    peaks = np.array([_peaks(s, f, count, per_bin) for s, f in zip(spectra, hertz, strict=True)])
    noise = _noise(spectra, float(np.median(hertz)), per_bin) / flat
    strengths = peaks.mean(axis=0) / sine / 2 / power
    bands = _in_bands(noise, per_bin, note.rate) / power
    return {"harmonics": _halves(strengths), "noise": _halves(bands)}


def _blackman_harris(size: int) -> Signal:
    """A window whose side lobes lie 92 dB down, so that strong harmonics don't hide the noise between them."""
    turn = 2 * np.pi * np.arange(size) / size
    window: Signal = 0.35875 - 0.48829 * np.cos(turn) + 0.14128 * np.cos(2 * turn) - 0.01168 * np.cos(3 * turn)
    return window


def attack_sec(note: RealNote) -> float:
    """Seconds from 20 to 3 dB under the level of the steady part."""
    levels = level_db(note.signal, note.rate)
    steady = float(np.median(levels[50:180]))
    start = int(np.argmax(levels > steady - 20))
    return float(np.argmax(levels > steady - 3) - start) / 200


def flutter_db(note: RealNote) -> float:
    """How far the level of the steady part strays from its own running mean over 0.3 s (standard deviation)."""
    levels = level_db(steady_part(note), note.rate)
    slow = np.convolve(np.pad(levels, 30, mode="edge"), np.ones(61) / 61, "valid")
    return float((levels - slow).std())


def _pitch(spectrum: Signal, nominal: float, per_bin: float) -> float:
    """The frequency near a nominal one whose first harmonics together are strongest."""
    tried = nominal * 2 ** (np.arange(-80, 81) / 1200)
    numbers = np.arange(1, 13)
    places = tried[:, None] * numbers / per_bin
    places = np.minimum(places, len(spectrum) - 2)
    low = places.astype(int)
    value = spectrum[low] * (1 - places + low) + spectrum[low + 1] * (places - low)
    return float(tried[np.argmax(np.sqrt(value).sum(axis=1))])


def _peaks(spectrum: Signal, hertz: float, count: int, per_bin: float) -> Signal:
    found = np.zeros(count)
    for number in range(1, count + 1):
        centre = number * hertz / per_bin
        reach = min(0.3 * hertz / per_bin, 2.0 + 0.004 * centre)
        first, last = int(centre - reach), int(centre + reach) + 2
        if last < len(spectrum):
            found[number - 1] = spectrum[first:last].max()
    return found


def _noise(spectra: Signal, hertz: float, per_bin: float) -> Signal:
    """The power between the harmonics, one value a bin; where there is no room between them, that of the neighbours."""
    power = np.median(spectra, axis=0) / np.log(2)
    places = np.arange(len(power)) * per_bin / hertz
    distance = np.abs(places - np.round(places)) * hertz / per_bin
    clear = distance > min(9.0, 0.4 * hertz / per_bin)
    filled: Signal = np.interp(np.arange(len(power)), np.flatnonzero(clear), power[clear])
    return filled


def _in_bands(noise: Signal, per_bin: float, rate: int) -> Signal:
    """Noise power a hertz in each band."""
    hertz = np.arange(len(noise)) * per_bin
    bands = []
    for low, high in pairwise(NOISE_EDGES):
        inside = noise[(hertz >= low) & (hertz < high)]
        bands.append(float(inside.mean()) if len(inside) else float(np.interp((low + high) / 2, hertz, noise)))
    return 2 * np.array(bands) / rate


def _halves(power: Signal) -> list[int]:
    """Decibels, in halves."""
    return [round(2 * value) for value in np.maximum(10 * np.log10(power + 1e-20), FLOOR_DB)]


def measured_voices(notes: Sequence[RealNote], *, with_left_out: bool = True) -> dict[str, Any]:
    """All voices by instrument: notes by layer and MIDI number, attack and flutter by layer (medians)."""
    voices: dict[str, Any] = {}
    for instrument in sorted({note.instrument for note in notes}):
        own = [note for note in notes if note.instrument == instrument]
        unseen = set() if with_left_out else left_out(instrument, (note.midi for note in own))
        layers: dict[str, Any] = {}
        for layer in sorted({note.layer for note in own} & set(LAYERS)):
            seen = [note for note in own if note.layer == layer and note.midi not in unseen]
            layers[layer] = {
                "attack_sec": round(float(np.median([attack_sec(note) for note in seen])), 4),
                "flutter_db": round(float(np.median([flutter_db(note) for note in seen])), 2),
                "notes": {str(note.midi): measured(note) for note in seen},
            }
        voices[instrument] = layers
    return voices


def main() -> None:
    """Measure a folder and write the voices' table."""
    voices = measured_voices(list(real_notes(Path(sys.argv[1]))))
    about = {"source": SOURCE, "noise_edges_hertz": [round(edge, 1) for edge in NOISE_EDGES], "unit_db": 0.5}
    text = json.dumps({**about, "voices": voices}, separators=(",", ":"))
    write_beside(TARGET, (text.replace('},"', '},\n"') + "\n").encode())


if __name__ == "__main__":
    main()
