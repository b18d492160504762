"""Notes to the sound of a sampled instrument: as in the measured voices, the air moves pitch and level, samples the tone.

A run's first note sounds from its sample's beginning, so that its own attack is heard; a slurred note from inside its
sample, fading in at the speed at which fingers move. A sample without a loop goes back and forth over its middle.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.performance import PerformedNote
from fioritura.sound.voice.breath import STEP, VELOCITY_DB, air_of, runs
from fioritura.sound.voice.sfz import Sample, SfzInstrument, sample_of
from fioritura.sound.voice.sing import faded, reach_of, spread

__all__ = ["sampled"]

FULL: Final = 0.35
INSIDE_SEC: Final = 0.12
"""How far inside its sample a slurred note begins: past the attack (common practice of samplers)."""

ATTACK_SEC: Final = 0.008
_LATE: Final = 0.3

Mono = NDArray[np.float32]


def sampled(instrument: SfzInstrument, notes: Sequence[PerformedNote]) -> Mono:
    """Mono audio of notes in order of onset, from second 0 until the last one has died away.

    Raises:
        ToolError: a sample can't be read.
    """
    end_sec = max((note.end_sec for note in notes), default=0.0)
    audio = np.zeros(round((end_sec + _LATE) * SAMPLE_RATE), np.float32)
    for run in runs(notes):
        air = air_of(run, ATTACK_SEC)
        count = len(air.pitch)
        for number, note in enumerate(run):
            first, last = reach_of(air.firsts, number, len(run), count)
            region = instrument.region(note.midi, note.velocity)
            sample = sample_of(region)
            turns = 2 ** ((air.pitch[first:last] - region.centre + region.tune) / 12)
            places = np.cumsum(spread(turns).astype(np.float64).ravel())
            places += (INSIDE_SEC * SAMPLE_RATE if number else 0.0) - places[0]
            made = _read(sample, places)
            level = air.level_db[first:last] - VELOCITY_DB * np.log10(note.velocity / 127) * _own_share(instrument)
            made *= spread(FULL * 10 ** (level / 20)).ravel()
            faded(made, number, len(run))
            start = air.start_frame + first * STEP
            audio[start : start + len(made)] += made[: len(audio) - start]
    return audio


def _own_share(instrument: SfzInstrument) -> float:
    """How much of a velocity's level the samples have by themselves: half of it where there are layers."""
    return 0.5 if len({region.velocities for region in instrument.regions}) > 1 else 0.0


def _read(sample: Sample, places: NDArray[np.float64]) -> Mono:
    """The sample at places that may lie beyond its end, drawn straight between its frames."""
    first, last = sample.loop
    if first < last:
        inside = np.where(places < last, places, first + (places - first) % (last - first))
    else:
        first, last = round(0.35 * len(sample.audio)), round(0.8 * len(sample.audio))
        beyond = np.abs((places - last) % (2 * (last - first)) - (last - first)) + first
        inside = np.where(places < last, places, beyond)
    whole = np.minimum(inside.astype(np.int64), len(sample.audio) - 2)
    share = (inside - whole).astype(np.float32)
    here = sample.audio[whole]
    read: Mono = here + share * (sample.audio[whole + 1] - here)
    return read
