"""Loudness against pyloudnorm and the test signals of EBU Tech 3341; true peak against the signals of the same paper."""

from __future__ import annotations

import numpy as np
import pyloudnorm
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.filters import Biquad, StereoFilter, without_rumble
from fioritura.sound.loudness import SILENCE_LUFS, LoudnessMeter, integrated_loudness, true_peak_db
from fioritura.sound.master import CEILING_DBTP, TARGET_LUFS, master, mastering_of
from fioritura.sound.scratch import BLOCK_FRAMES, blocks_of, in_memory, recorded


def tone(level_db: float, seconds: float, hertz: float = 1000.0) -> Audio:
    """The same sine on both channels; 0 dB is a full-scale sine."""
    times = np.arange(round(seconds * SAMPLE_RATE)) / SAMPLE_RATE
    wave = 10 ** (level_db / 20) * np.sin(2 * np.pi * hertz * times)
    return np.stack([wave, wave], axis=1).astype(np.float32)


def noise(seed: int, seconds: float, crest: float = 1.0) -> Audio:
    """Noise whose loudness wanders, with louder bursts the higher `crest` is."""
    dice = np.random.default_rng(seed)
    audio = 0.05 * dice.standard_normal((round(seconds * SAMPLE_RATE), 2))
    audio *= np.repeat(dice.uniform(0.1, 1.0, len(audio) // 4800 + 1), 4800)[: len(audio), None]
    for start in dice.integers(0, len(audio) - 500, 12):
        audio[start : start + 400] *= crest
    return audio.astype(np.float32)


@pytest.mark.parametrize(
    ("pieces", "expected"),
    [
        ([(-23, 20)], -23.0),
        ([(-33, 20)], -33.0),
        ([(-36, 10), (-23, 60), (-36, 10)], -23.0),
        ([(-72, 10), (-36, 10), (-23, 60), (-36, 10), (-72, 10)], -23.0),
        ([(-26, 20), (-20, 20.1), (-26, 20)], -23.0),
    ],
)
def test_the_minimum_requirements_signals_measure_as_they_must(
    pieces: list[tuple[float, float]], expected: float
) -> None:
    # EBU Tech 3341 (2016), table 1, cases 1 to 5: within 0.1 LU.
    audio = np.concatenate([tone(level, seconds) for level, seconds in pieces])
    assert integrated_loudness(audio) == pytest.approx(expected, abs=0.1)


@pytest.mark.parametrize("seed", range(6))
def test_loudness_is_what_pyloudnorm_measures(seed: int) -> None:
    audio = noise(seed, 7.3)
    meter = pyloudnorm.Meter(SAMPLE_RATE, filter_class="DeMan")
    assert integrated_loudness(audio) == pytest.approx(meter.integrated_loudness(audio.astype(float)), abs=0.02)


def test_each_channel_counts() -> None:
    audio = noise(3, 5)
    left = audio.copy()
    left[:, 1] = 0
    meter = pyloudnorm.Meter(SAMPLE_RATE, filter_class="DeMan")
    assert integrated_loudness(left) == pytest.approx(meter.integrated_loudness(left.astype(float)), abs=0.02)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.integers(1, 200_000), min_size=1, max_size=6))
def test_loudness_does_not_depend_on_how_the_audio_is_cut(sizes: list[int]) -> None:
    audio = noise(1, 6)
    meter, place = LoudnessMeter(), 0
    for size in [*sizes, len(audio)]:
        meter.add(audio[place : place + size])
        place += size
    assert meter.integrated() == pytest.approx(integrated_loudness(audio), abs=0.001)


def test_silence_and_less_than_a_block_have_no_loudness() -> None:
    assert integrated_loudness(np.zeros((SAMPLE_RATE, 2), np.float32)) == SILENCE_LUFS
    assert integrated_loudness(tone(-20, 0.3)) == SILENCE_LUFS


@pytest.mark.parametrize(
    ("divisor", "phase_degrees", "amplitude", "expected"),
    [(4, 0, 0.5, -6.0), (4, 45, 0.5, -6.0), (6, 60, 0.5, -6.0), (8, 67.5, 0.5, -6.0), (4, 45, 1.41, 3.0)],
)
def test_true_peaks_between_samples_are_found(
    divisor: int, phase_degrees: float, amplitude: float, expected: float
) -> None:
    # EBU Tech 3341 (2016), table 1, cases 15 to 19: within +0.2 and -0.4 dB.
    places = np.arange(SAMPLE_RATE)
    wave = amplitude * np.sin(2 * np.pi * places / divisor + np.radians(phase_degrees))
    fade = np.minimum(1.0, np.minimum(places, places[::-1]) / 2400)
    measured = true_peak_db(np.stack([wave * fade, wave * fade], axis=1).astype(np.float32))
    assert expected - 0.4 <= measured <= expected + 0.2


@pytest.mark.parametrize("crest", [1.0, 4.0, 12.0, 30.0])
@pytest.mark.parametrize("level", [0.01, 1.0, 3.0])
def test_mastered_audio_has_the_target_loudness_under_the_ceiling(crest: float, level: float) -> None:
    # EBU R 128 and ITU-R BS.1770: measured by pyloudnorm, and by our meter, which the tests above check.
    mastered = master(noise(5, 12, crest) * np.float32(level))
    meter = pyloudnorm.Meter(SAMPLE_RATE, filter_class="DeMan")
    assert meter.integrated_loudness(mastered.astype(float)) == pytest.approx(TARGET_LUFS, abs=0.2)
    assert true_peak_db(mastered) <= CEILING_DBTP


def test_the_gain_moves_smoothly() -> None:
    gains = mastering_of(in_memory(noise(5, 12, 20.0))).gains
    assert gains.min() < 0.9 * gains.max()
    steps_db = np.abs(np.diff(20 * np.log10(gains)))
    assert steps_db.max() < 6.0


def test_quiet_crests_are_not_limited_at_all() -> None:
    audio = tone(-30, 10)
    gains = mastering_of(in_memory(audio)).gains
    assert gains.min() == gains.max()


def test_silence_stays_silent() -> None:
    assert not master(np.zeros((2 * SAMPLE_RATE, 2), np.float32)).any()


def test_mastering_does_not_depend_on_where_the_recording_is_kept() -> None:
    audio = noise(2, 25, 10.0)
    with recorded(np.array_split(audio, 7)) as spool:
        assert spool.frames == len(audio)
        assert np.array_equal(
            spool.read(BLOCK_FRAMES - 5, BLOCK_FRAMES + 5), audio[BLOCK_FRAMES - 5 : BLOCK_FRAMES + 5]
        )
        mastering = mastering_of(spool)
        spooled = np.concatenate([mastering.applied(block, start) for start, block in blocks_of(spool)])
    assert np.allclose(spooled, master(audio), atol=1e-6)


@settings(max_examples=20, deadline=None)
@given(st.floats(20.0, 200.0), st.lists(st.integers(1, 150_000), max_size=4))
def test_filters_are_run_as_scipy_runs_them(hertz: float, cuts: list[int]) -> None:
    from scipy import signal

    b, a = signal.butter(2, hertz, "high", fs=SAMPLE_RATE)
    audio, filtering, place, found = noise(4, 4), StereoFilter((Biquad(tuple(b), tuple(a[1:])),)), 0, []
    for size in [*cuts, len(audio)]:
        found.append(filtering.filtered(audio[place : place + size]))
        place += size
    expected = signal.lfilter(b, a, audio.astype(float), axis=0)
    mine = np.concatenate(found)
    assert np.allclose(np.stack([mine.real, mine.imag], axis=1), expected, atol=1e-5)


def centred(audio: Audio) -> Audio:
    return np.concatenate(list(without_rumble([audio])))


def test_what_lies_below_hearing_is_taken_out_and_the_lowest_bass_note_stays() -> None:
    off_centre = tone(-20, 2, 41.2) + np.float32(0.3)
    cleaned = centred(off_centre)[SAMPLE_RATE // 2 : -SAMPLE_RATE // 2]
    assert np.abs(cleaned.mean(axis=0)).max() < 0.002
    assert np.abs(cleaned).max() == pytest.approx(0.1, rel=0.1)


@pytest.mark.parametrize(("hertz", "least_db", "most_db"), [(5, -60, -20), (10, -60, -10), (16.4, -8, -4)])
def test_rumble_fades_below_the_lowest_note_of_the_band(hertz: float, least_db: float, most_db: float) -> None:
    before = tone(0, 3, hertz)
    after = centred(before)[SAMPLE_RATE:-SAMPLE_RATE]
    assert least_db < 20 * np.log10(after.std() / before[SAMPLE_RATE:-SAMPLE_RATE].std()) < most_db


@given(st.floats(41.2, 15_000), st.integers(0, 200))
@settings(max_examples=30, deadline=None)
def test_every_note_keeps_its_level_when_rumble_is_taken_out(hertz: float, odd_frames: int) -> None:
    before = tone(0, 1, hertz)[odd_frames:]
    middle = slice(SAMPLE_RATE // 4, -SAMPLE_RATE // 4)
    loss_db = 20 * np.log10(centred(before)[middle].std() / before[middle].std())
    assert loss_db == pytest.approx(0.0, abs=0.3)


@pytest.mark.parametrize("sizes", [(0,), (1,), (96, 0, 500), (4800, 48000, 7)])
def test_rumble_is_taken_out_alike_whatever_the_blocks(sizes: tuple[int, ...]) -> None:
    audio = noise(3, 2)[: sum(sizes)]
    blocks = list(without_rumble(np.split(audio, np.cumsum(sizes)[:-1])))
    assert np.concatenate(blocks).shape == audio.shape
    assert np.allclose(np.concatenate(blocks), centred(audio), atol=1e-3)
