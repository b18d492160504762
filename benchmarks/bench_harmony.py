"""Speed of the harmonic ground: chord symbols, chord scales, steps in a scale, and inferred chords.

Run with ``pytest benchmarks/bench_harmony.py --benchmark-only``. Places of a tune look scales and steps up many
thousand times; chords are inferred once for a tune, in 10 ms at most for 32 bars.
"""

from __future__ import annotations

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from fioritura.arrange.harmonise import harmonise
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.theory.scale import chord_scale
from fioritura.tune import Bar, Note, Tune

ROOTS = ("C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B")
SUFFIXES = ("", "m", "7", "m7", "maj7", "m7b5", "dim7", "7(b9,#11)", "7alt", "6/9", "13sus4", "m(maj7)")
SYMBOLS = [f"{root}{suffix}" for root in ROOTS for suffix in SUFFIXES]


def tune_of(bars: int) -> Tune:
    """Broken chords in quarter notes; invented."""
    names = ("C4", "E4", "G4", "E4", "F4", "A4", "C5", "A4", "G4", "B4", "D5", "F5", "C5", "B4", "A4", "G4")
    notes = (Note(n * QUARTER, QUARTER, Pitch.parse(names[n % len(names)])) for n in range(4 * bars))
    metre = Metre(4, 4)
    measures = (Bar(n + 1, n * metre.bar_ticks, metre.bar_ticks, metre, Key(0)) for n in range(bars))
    return Tune("Benchmark", tuple(notes), tuple(measures))


def bench_144_symbols_read_anew(benchmark: BenchmarkFixture) -> None:
    benchmark(lambda: [read_chord.__wrapped__(symbol) for symbol in SYMBOLS])


def bench_144_chord_scales_found_anew(benchmark: BenchmarkFixture) -> None:
    chords = [read_chord(symbol) for symbol in SYMBOLS]
    benchmark(lambda: [chord_scale.__wrapped__(chord, Key(0)) for chord in chords])


def bench_1000_steps(benchmark: BenchmarkFixture) -> None:
    scale = chord_scale(read_chord("G7alt"), Key(0))
    pitches = [Pitch(21 + n % 28) for n in range(1000)]
    benchmark(lambda: [scale.step(pitch, 1) for pitch in pitches])


@pytest.mark.parametrize("bars", [32, 512])
def bench_chords_inferred(benchmark: BenchmarkFixture, bars: int) -> None:
    tune = tune_of(bars)
    assert benchmark(harmonise, tune).chords
