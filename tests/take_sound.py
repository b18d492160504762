"""A player made by formula who plays an arrangement to the page's band: sound whose notes and times are known."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import soundfile

from fioritura.arrange.arrangement import Arrangement
from fioritura.sound.perform import perform
from fioritura.sound.performance import PerformedNote
from fioritura.theory.metre import QUARTER
from tests import listening_takes as sound


def wave_of(
    arrangement: Arrangement,
    *,
    is_plain: bool = False,
    beats_per_minute: float | None = None,
    cents: float = 0.0,
    lead_sec: float = 0.5,
) -> np.ndarray:
    """The line on a saxophone after some silence, at a tempo (else its own), mono at `listening_takes.RATE` Hz."""
    tune, setting = arrangement.tune, arrangement.setting
    tempo = setting.quarters_per_minute
    if beats_per_minute is not None:
        tempo = beats_per_minute * tune.metre.beat_ticks / QUARTER
    line = tune.notes if is_plain else arrangement.rendition.line
    played = perform(tune, line, instrument=setting.instrument, tempo=tempo, feel=setting.feel, seed=0).parts[0].notes
    truth = []
    for number, note in enumerate(played):
        before = played[number - 1] if number else None
        is_quick = note.duration_sec < 0.15 or (before is not None and before.duration_sec < 0.15)
        is_joined = before is not None and note.onset_sec - before.end_sec < 0.02 and before.midi != note.midi
        start = note.onset_sec + lead_sec
        truth.append(
            sound.Truth(
                start,
                start + note.duration_sec,
                note.midi,
                not (is_joined and is_quick),
                scoop=scoop_of(note),
                level_db=-14.0 + 4 * ((number % 4) / 3),
            )
        )
    rng = np.random.default_rng(1)
    wave = sound.render(sound._joined(truth), sound.TIMBRES["saxophone"], rng, tuning_cents=cents)
    return sound.normalised(wave)


def scoop_of(note: PerformedNote) -> tuple[float, float] | None:
    """Cents and seconds of a bend that comes up into the note."""
    if not note.bend or note.bend[0].value > -0.3:
        return None
    return -100 * note.bend[0].value, next((point.after_sec for point in note.bend if point.value > -0.05), 0.1)


def write_wav(path: Path, wave: np.ndarray, rate: int = sound.RATE) -> Path:
    """Write a mono WAV file of 16 bits."""
    soundfile.write(path, wave, rate, "PCM_16")
    return path
