"""Draw phrases as the voices sing them beside real notes: spectrogram, level and pitch.

    python -m tools.voice_pictures FOLDER

FOLDER holds real notes as `tools/measure_winds.py` reads them. Each picture has a phrase of the demo tune on the left: its
spectrogram up to 8 kHz, its level (60 dB) and the pitch that is heard in it, over the pitch of the written notes. On the
right are a held note of a real player and the voice's at the same pitch. Pictures go to ``docs/pictures/voice``.
"""

from __future__ import annotations

import io
import sys
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFont

import fioritura
from fioritura.files import write_beside
from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.perform import perform
from fioritura.sound.performance import Performance, PerformedNote, PerformedPart
from fioritura.sound.render import render
from tools.measure_winds import RealNote, real_notes

TARGET: Final = Path(__file__).parent.parent / "docs/pictures/voice"
WIDTH, SIDE, TALL, LOW, GAP = 560, 190, 170, 64, 22
TOP_HERTZ: Final = 8000.0
RANGE_DB: Final = 75.0
COLOURS: Final = 24

Signal = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Sight:
    """One picture: who plays which phrase of the demo tune, at which level and tempo, beside which real notes."""

    instrument: str
    phrase: int
    level: int
    tempo: float
    feel: fioritura.tune.Feel
    recorded: str
    layer: str = "f"


SIGHTS: Final = (
    Sight("alto-sax", 4, 3, 132, "swing", "alto-sax"),
    Sight("alto-sax", 1, 4, 72, "swing", "alto-sax", "p"),
    Sight("tenor-sax", 2, 4, 160, "swing", "tenor-sax"),
    Sight("tenor-sax", 3, 3, 66, "straight", "tenor-sax", "p"),
    Sight("soprano-sax", 1, 5, 120, "swing", "soprano-sax"),
    Sight("baritone-sax", 2, 3, 140, "swing", "baritone-sax"),
    Sight("clarinet", 2, 4, 132, "swing", "clarinet"),
    Sight("flute", 2, 4, 90, "straight", "alto-flute"),
    Sight("oboe", 1, 3, 80, "straight", "oboe"),
    Sight("trumpet", 5, 4, 132, "swing", "trumpet"),
)


def main() -> None:
    """Draw them all."""
    notes = list(real_notes(Path(sys.argv[1])))
    for number, sight in enumerate(SIGHTS, start=1):
        write_beside(TARGET / f"{number:02}-{sight.instrument}.png", _picture(sight, notes))


def _picture(sight: Sight, recorded: list[RealNote]) -> bytes:
    played = _phrase(sight)
    audio = _sung(sight, played)
    middle = sorted(note.midi for note in played)[len(played) // 2]
    own = [note for note in recorded if (note.instrument, note.layer) == (sight.recorded, sight.layer)]
    real = min(own, key=lambda note: abs(note.midi - middle))
    held = PerformedNote(0.05, 1.6, real.midi, 113 if sight.layer == "f" else 50)
    image = Image.new("L", (WIDTH + 2 * SIDE + 3 * GAP, TALL + 2 * LOW + 4 * GAP), 255)
    title = f"{sight.instrument}, phrase {sight.phrase + 1} at {sight.tempo:g}"
    _column(image, 0, WIDTH, audio, SAMPLE_RATE, title, played)
    at = WIDTH + GAP
    _column(
        image,
        at,
        SIDE,
        real.signal[: round(1.8 * real.rate)],
        real.rate,
        f"real {sight.recorded} {real.midi} {real.layer}",
    )
    _column(image, at + SIDE + GAP, SIDE, _sung(sight, [held])[: round(1.8 * SAMPLE_RATE)], SAMPLE_RATE, "the voice")
    buffer = io.BytesIO()
    image.quantize(COLOURS).save(buffer, "PNG", optimize=True)
    return buffer.getvalue()


def _phrase(sight: Sight) -> list[PerformedNote]:
    """The notes of a phrase as they are performed, moved to the beginning."""
    setting = fioritura.Setting(sight.instrument, level=sight.level, tempo=sight.tempo, feel=sight.feel)
    rendition = fioritura.ornament(fioritura.demo_tune(), setting, seed=3)
    instrument = setting.instrument
    music = perform(rendition.tune, rendition.line, instrument=instrument, tempo=sight.tempo, feel=sight.feel, seed=3)
    inside = {number for number, note in enumerate(rendition.line) if note.phrase == sight.phrase}
    notes = [note for note in music.parts[0].notes if note.source in inside]
    start = notes[0].onset_sec - 0.1
    return [replace(note, onset_sec=note.onset_sec - start) for note in notes]


def _sung(sight: Sight, notes: list[PerformedNote]) -> Signal:
    part = PerformedPart("Melody", 1, tuple(notes), voice=sight.instrument)
    tune = fioritura.demo_tune()
    clock = perform(tune, tune.notes, instrument=fioritura.Setting("alto-sax").instrument).clock
    audio: Signal = render(Performance("", tune.key, clock, tune.bars, (part,))).mean(axis=1).astype(np.float64)
    return audio[: round((notes[-1].end_sec + 0.4) * SAMPLE_RATE)]


def _column(
    image: Image.Image,
    left: int,
    width: int,
    audio: Signal,
    rate: int,
    title: str,
    notes: Sequence[PerformedNote] = (),
) -> None:
    draw, font = ImageDraw.Draw(image), ImageFont.load_default(11)
    draw.text((left + 2, 3), title, fill=0, font=font)
    image.paste(Image.fromarray(_spectrogram(audio, rate, width)), (left, GAP))
    top = GAP + TALL + GAP
    for label, curve in (("level, 60 dB", _level(audio, rate, width)), ("pitch", _pitch(audio, rate, width, notes))):
        draw.text((left + 2, top - 13), label, fill=90, font=font)
        draw.rectangle((left, top, left + width - 1, top + LOW), outline=200)
        for x, value in enumerate(curve):
            if 0 <= value <= 1:
                draw.point((left + x, top + round((1 - value) * LOW)), fill=0)
                draw.point((left + x, top + round((1 - value) * LOW) + 1), fill=0)
        top += LOW + GAP


def _spectrogram(audio: Signal, rate: int, width: int) -> NDArray[np.uint8]:
    size = round(0.03 * rate) // 2 * 2
    window, padded = np.hanning(size), np.pad(audio, (size // 2, size))
    starts = np.linspace(0, len(audio) - 1, width).astype(int)
    spectra = np.array([np.abs(np.fft.rfft(padded[s : s + size] * window, 4096)) for s in starts])
    rows = np.linspace(TOP_HERTZ, 0, TALL) / rate * 4096
    decibels = 20 * np.log10(spectra[:, rows.astype(int)].T + 1e-9)
    shade = np.clip((decibels - decibels.max() + RANGE_DB) / RANGE_DB, 0, 1)
    grey: NDArray[np.uint8] = np.round(255 * (1 - shade)).astype(np.uint8)
    return grey


def _level(audio: Signal, rate: int, width: int) -> Signal:
    size = round(0.015 * rate)
    power = np.convolve(audio**2, np.ones(size) / size, "same") + 1e-12
    levels = 10 * np.log10(power[np.linspace(0, len(audio) - 1, width).astype(int)])
    shares: Signal = np.clip((levels - levels.max()) / 60 + 1, 0, 1)
    return shares


def _pitch(audio: Signal, rate: int, width: int, notes: Sequence[PerformedNote]) -> Signal:
    """What is heard, as a share of the range: for a held note ±50 cents, for a phrase from a third under its lowest note."""
    size, starts = round(0.045 * rate), np.linspace(0, len(audio) - 1, width).astype(int)
    padded = np.pad(audio, (size // 2, size))
    found = np.full(width, np.nan)
    loud = np.convolve(audio**2, np.ones(size) / size, "same")
    for x, start in enumerate(starts):
        if loud[start] < 3e-4 * loud.max():
            continue
        found[x] = _midi_of(padded[start : start + size], rate)
    if notes:
        low, high = min(n.midi for n in notes) - 4, max(n.midi for n in notes) + 4
        shares: Signal = (found - low) / (high - low)
        return shares
    near = float(np.nanmedian(found))
    return (found - near) + 0.5


def _midi_of(piece: Signal, rate: int) -> float:
    """The pitch of a short piece by the first high peak of its autocorrelation."""
    spectrum = np.abs(np.fft.rfft(piece * np.hanning(len(piece)), 4 * len(piece))) ** 2
    curve = np.fft.irfft(spectrum)[: len(piece) // 2]
    curve /= np.fft.irfft(np.abs(np.fft.rfft(np.hanning(len(piece)), 4 * len(piece))) ** 2)[: len(piece) // 2]
    first = rate // 1600
    peaks = np.flatnonzero((curve[1:-1] > curve[:-2]) & (curve[1:-1] >= curve[2:])) + 1
    peaks = peaks[peaks > first]
    if not len(peaks):
        return float("nan")
    peak = int(peaks[np.argmax(curve[peaks] > 0.85 * curve[peaks].max())])
    left, middle, right = curve[peak - 1 : peak + 2]
    place = peak + (left - right) / (2 * (left - 2 * middle + right))
    return float(69 + 12 * np.log2(rate / place / 440))


if __name__ == "__main__":
    main()
