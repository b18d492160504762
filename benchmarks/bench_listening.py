"""Speed of the ear, stage by stage, on half a minute of a saxophone in a room::

pytest benchmarks/bench_listening.py --benchmark-columns=median,ops
"""

import sys
from pathlib import Path
from typing import Any

import numpy as np
import pytest

sys.path.insert(0, str(Path(__file__).parents[1]))

from fioritura.listening.attack import struck_odds
from fioritura.listening.hear import hear, notes_of
from fioritura.listening.notes import Take
from fioritura.listening.pitch import RATE, Floats, Track, Tracker
from fioritura.listening.segment import segments
from fioritura.listening.transcribe import transcribe
from tests.listening_takes import Sounding, formula_take, tune_names

LEAST_SPEED = 60
"""Times real time that all stages together must reach on one core."""


@pytest.fixture(scope="module")
def sounding() -> Sounding:
    return formula_take(tune_names("test", 1)[0], "room", "saxophone", (5, 0), quarters=48)


@pytest.fixture(scope="module")
def samples(sounding: Sounding) -> Floats:
    import soxr

    return np.asarray(soxr.resample(sounding.wave.astype(np.float32), sounding.rate, RATE))


def tracked(samples: Floats) -> Track:
    tracker = Tracker()
    tracker.feed(samples)
    return tracker.finish()


@pytest.fixture(scope="module")
def track(samples: Floats) -> Track:
    return tracked(samples)


@pytest.fixture(scope="module")
def take(sounding: Sounding) -> Take:
    return hear(sounding.wave, sounding.rate)


def bench_pitch(benchmark: Any, samples: Floats) -> None:
    assert len(benchmark(tracked, samples)) > 100


def bench_segments(benchmark: Any, track: Track) -> None:
    assert len(benchmark(segments, track, 0.0, struck_odds(track))) > 20


def bench_notes(benchmark: Any, track: Track) -> None:
    assert len(benchmark(lambda: list(notes_of(track)))) > 20


def bench_all_stages(benchmark: Any, sounding: Sounding) -> None:
    benchmark(hear, sounding.wave, sounding.rate)
    assert sounding.wave.size / sounding.rate / benchmark.stats.stats.min > LEAST_SPEED


def bench_transcription(benchmark: Any, take: Take) -> None:
    assert benchmark(transcribe, take, beats_per_minute=100).notes
