"""Takes of recorded notes for the listening benchmark: tunes played on voices that the net was not trained on.

The notes are those of `tools.train_listener.notes.TEST_VOICES`: the tenor saxophone and the clarinet, kept out of the
training and of every choice. The tunes are those of the test half, with grace notes, scoops, falls and vibrato
(`tests.listening_takes.played`). Rooms and phone are those of `tools.train_listener.trials`, which the training does
not use; the backing is that of `tests.listening_takes`, the band the program's own on chords of its own. Renditions of
the arranger are those of `tests.played_lines`, on the test half of its tunes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

import numpy as np

from fioritura.listening.pitch import RATE, Floats
from fioritura.players.setting import Setting
from fioritura.sound.perform import perform
from fioritura.techniques.figure import Figure
from fioritura.tune import Note, Tune
from tests import played_lines
from tests.listening_takes import Half, Sounding, Truth, Wave, backing, fitted, melody, played, tune_names
from tools.train_listener import dry
from tools.train_listener.bands import band_alone
from tools.train_listener.lines import Event
from tools.train_listener.notes import TEST_VOICES, RecordedNote, Voices, read_notes
from tools.train_listener.trials import CONDITIONS

__all__ = ["Asked", "asked_takes", "held_takes", "recorded_takes", "test_voices"]

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


@dataclass(frozen=True)
class Asked:
    """A take of a rendition: the plain tune, the figures that were asked for and played, and the sound."""

    tune: Tune
    figures: tuple[Figure, ...]
    wave: Wave


def asked_takes(voices: Voices, count: int, *, is_plain: bool = False) -> Iterator[tuple[str, Asked]]:
    """Renditions as `perform` plays them, without scoops, falls and other inflections, under every condition;
    with `is_plain` the plain tunes."""
    for place, tune in enumerate(played_lines.tunes("test", count, seed=8)):
        rendition = played_lines.rendition_of(tune, place)
        name = list(voices)[place % len(voices)]
        line = tune.notes if is_plain else rendition.line
        wave = _performed(tune, line, rendition.setting, voices[name], (12, place))
        band = band_alone(_BAND_SEED + 100 + place)
        for row, (condition, spoil) in enumerate(CONDITIONS.items()):
            other = _backing_alone(wave, np.random.default_rng((13, place)))
            heard = spoil(wave, np.random.default_rng((14, place, row)), other, band)
            yield condition, Asked(tune, () if is_plain else tuple(rendition.figures), _loud(heard))


def _performed(
    tune: Tune, line: Sequence[Note], setting: Setting, voice: Sequence[RecordedNote], seed: Sequence[int]
) -> Floats:
    """A line on a voice, in the octave that the voice reaches best; half of the notes that touch are slurred."""
    dice = np.random.default_rng(list(seed))
    tempo = setting.quarters_per_minute
    instrument, feel = setting.instrument, setting.feel
    played_tune = replace(tune, notes=tuple(line))
    performance = perform(
        played_tune, played_tune.notes, instrument=instrument, tempo=tempo, feel=feel, seed=seed[-1]
    )
    notes = sorted(performance.parts[0].notes, key=lambda note: note.onset_sec)
    midis = [note.midi for note in voice]
    middle = float(np.median([note.midi for note in notes]))
    shift = 12 * round(((min(midis) + max(midis)) / 2 - middle) / 12)
    events: list[Event] = []
    for number, note in enumerate(notes):
        end = notes[number + 1].onset_sec if number + 1 < len(notes) else note.end_sec
        before = events[-1] if events else None
        touches = before is not None and 0.3 + note.onset_sec - before.offset_sec < 0.012
        is_short = before is not None and before.offset_sec - before.onset_sec < 0.12
        same = before is not None and before.midi == note.midi + shift
        is_tongued = not touches or same or (not is_short and dice.random() < 0.5)
        level = float(dice.normal(0, 1.5))
        onset, offset = 0.3 + note.onset_sec, 0.3 + max(min(note.end_sec, end), note.onset_sec + 0.025)
        events.append(Event(onset, offset, note.midi + shift, is_tongued, level, 20.0, float(dice.normal(0, 5))))
    size = int((events[-1].offset_sec + 0.5) * RATE)
    return dry.played(events, voice, dice, float(dice.normal(0, 12)), size)


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
