"""Takes of recorded notes for the listening benchmark: tunes played on voices that the net was not trained on.

The notes are those of `tools.train_listener.notes.TEST_VOICES`: the tenor saxophone and the clarinet, kept out of the
training and of every choice. The tunes are those of the test half, with grace notes, scoops, falls and vibrato
(`tests.listening_takes.played`). Rooms and phone are those of `tools.train_listener.trials`, which the training does
not use; the backing is that of `tests.listening_takes`, the band the program's own on chords of its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Final

import numpy as np

from fioritura.listening.pitch import RATE, Floats
from tests.listening_takes import Half, Sounding, Truth, Wave, backing, fitted, melody, played, tune_names
from tools.train_listener import dry
from tools.train_listener.bands import band_alone
from tools.train_listener.lines import Event
from tools.train_listener.notes import TEST_VOICES, RecordedNote, Voices, read_notes
from tools.train_listener.trials import CONDITIONS

__all__ = ["RECORDED_TARGETS", "held_takes", "recorded_takes", "test_voices"]

RECORDED_TARGETS: Final = {
    "dry": 0.995,
    "room": 0.985,
    "very wet": 0.97,
    "phone": 0.97,
    "backing -20 dB": 0.99,
    "backing -10 dB": 0.965,
    "own band in the room -5 dB": 0.97,
}
"""F1 of notes that is asked under each condition."""
MOST_SPLIT: Final = 0.01
MOST_OCTAVES: Final = 0.003
_BAND_SEED: Final = 90_000


def test_voices(folder: Path) -> Voices:
    """The voices kept for tests, of a folder of recorded notes."""
    return {name: read_notes(folder / name)["."] for name in TEST_VOICES}


def recorded_takes(voices: Voices, count: int, half: Half = "test") -> Iterator[tuple[str, Sounding]]:
    """Takes under every condition with its name, `count` to a condition; the same lines in all."""
    names = tune_names(half, count)
    for place, name in enumerate(names):
        voice = list(voices)[place % len(voices)]
        notes, wave = _line(name, voices[voice], (7, place))
        band = band_alone(_BAND_SEED + place)
        for row, (condition, spoil) in enumerate(CONDITIONS.items()):
            dice = np.random.default_rng((8, place, row))
            other = _backing_alone(wave, np.random.default_rng((9, place)))
            heard = spoil(wave, dice, other, band)
            yield condition, Sounding(voice, tuple(notes), _loud(heard), RATE)


def held_takes(voices: Voices) -> Iterator[tuple[str, Sounding]]:
    """Long notes with a vibrato of 40 cents to either side, dry and in a room."""
    for name, voice in voices.items():
        dice = np.random.default_rng(11)
        midis = sorted({round(note.midi) for note in voice})[2::4]
        truth = [
            Truth(0.4 + 2.0 * place, 2.0 + 2.0 * place, midi, vibrato=(float(dice.uniform(4.5, 6.5)), 40.0))
            for place, midi in enumerate(midis)
        ]
        wave = _sounded(truth, voice, dice)
        for condition in ("dry", "room"):
            yield condition, Sounding(name, tuple(truth), _loud(CONDITIONS[condition](wave, dice, wave, wave)), RATE)


def _line(name: str, voice: Sequence[RecordedNote], seed: Sequence[int]) -> tuple[list[Truth], Floats]:
    """A tune on a voice, dry: its truth and its sound."""
    rng = np.random.default_rng(list(seed))
    midis = [round(note.midi) for note in voice]
    line = fitted(melody(name, 32.0), min(midis), max(midis))
    notes = played(line, rng, rng.uniform(84, 126))
    return notes, _sounded(notes, voice, rng)


def _sounded(notes: Sequence[Truth], voice: Sequence[RecordedNote], dice: np.random.Generator) -> Floats:
    events = [
        Event(
            note.onset_sec,
            note.offset_sec,
            note.midi,
            note.is_tongued,
            note.level_db + 14,
            note.closure_db,
            float(dice.normal(0, 5)),
            note.scoop,
            (-note.fall[0], note.fall[1]) if note.fall else None,
            (*note.vibrato, 1.0, 0.12) if note.vibrato else None,
        )
        for note in notes
    ]
    return dry.played(events, voice, dice, float(dice.normal(0, 12)), int((notes[-1].offset_sec + 0.5) * RATE))


def _loud(wave: Floats) -> Wave:
    return np.asarray(wave / np.abs(wave).max() * 0.5, np.float64)


def _backing_alone(like: Floats, rng: np.random.Generator) -> Floats:
    """What `backing` puts under a take, by itself."""
    quiet = np.full(like.size, 1e-3)
    return np.asarray(backing(quiet, rng, below_db=-60, rate=RATE), np.float32)
