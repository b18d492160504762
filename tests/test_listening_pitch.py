"""The pitch track against tones of known frequency (ISO 16:1975: A4 = 440 Hz)."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.listening.pitch import FRAME_SEC, RATE, Dips, Track, Tracker


def tone(frequency_hz: float, seconds: float = 0.4, harmonics: int = 12) -> np.ndarray:
    """Harmonics of falling strength, none above 10 kHz."""
    time = np.arange(int(seconds * RATE)) / RATE
    numbers = [n for n in range(1, harmonics + 1) if n * frequency_hz < 10_000]
    wave = sum(np.sin(2 * np.pi * n * frequency_hz * time) / n for n in numbers)
    return np.asarray(0.3 * wave, np.float32)


def tracked(samples: np.ndarray, block: int | None = None) -> Track:
    tracker = Tracker()
    for start in range(0, len(samples), block or len(samples)):
        tracker.feed(samples[start : start + (block or len(samples))])
    return tracker.finish()


@pytest.mark.parametrize("midi", range(36, 97, 5))
def test_pitch_is_within_three_cents_from_c2_to_c7(midi: int) -> None:
    track = tracked(tone(440.0 * 2 ** ((midi - 69) / 12)))
    cents, unclear = track.heard.best()
    inner = slice(8, -12)
    assert np.abs(cents[inner] - 100 * (midi - 69)).max() < 3
    assert unclear[inner].max() < 0.06


@pytest.mark.parametrize("even", [0.0, 1.0])
def test_a_tone_without_even_harmonics_keeps_its_octave(even: float) -> None:
    """A clarinet's low register has weak even harmonics (textbook acoustics, from memory)."""
    time = np.arange(int(0.4 * RATE)) / RATE
    wave = sum((1.0 if n % 2 else even) * np.sin(2 * np.pi * n * 196 * time) / n for n in range(1, 12))
    cents, _ = tracked(np.asarray(0.3 * wave, np.float32)).heard.best()
    assert np.median(cents) == pytest.approx(1200 * np.log2(196 / 440), abs=3)


@given(block=st.integers(min_value=37, max_value=9000))
@settings(max_examples=12, deadline=None)
def test_blocks_of_any_size_give_the_same_track(block: int) -> None:
    rng = np.random.default_rng(0)
    samples = np.concatenate([tone(330, 0.3), tone(440, 0.3)]) + 0.01 * rng.normal(size=2 * int(0.3 * RATE))
    samples = samples.astype(np.float32)
    whole, parts = tracked(samples), tracked(samples, block)
    assert len(whole) == len(parts) == pytest.approx(len(samples) / RATE / FRAME_SEC, abs=8)
    np.testing.assert_allclose(whole.heard.cents, parts.heard.cents, atol=0.5)
    np.testing.assert_allclose(whole.level_db, parts.level_db, atol=0.01)


def test_silence_has_no_dips() -> None:
    track = tracked(np.zeros(RATE, np.float32))
    assert not np.isfinite(track.heard.cents).any()
    assert track.level_db.max() < -90


def test_noise_is_unclear() -> None:
    rng = np.random.default_rng(1)
    _, unclear = tracked(rng.normal(0, 0.1, RATE).astype(np.float32)).heard.best()
    assert np.median(unclear) > 0.4


def test_a_new_tone_is_heard_under_the_tail_of_the_old() -> None:
    """311 Hz rings on for 100 ms as loud as 440 Hz that begins: the comb leaves 440 Hz alone."""
    old, new = tone(311.13, 0.5), tone(440, 0.4)
    samples = np.zeros(int(0.8 * RATE), np.float32)
    samples[: len(old)] += old
    samples[int(0.4 * RATE) :][: len(new)] += new
    track = tracked(samples)
    mixed = slice(int(0.425 / FRAME_SEC), int(0.46 / FRAME_SEC))
    cents, unclear = track.fresh.best()
    assert np.abs(cents[mixed]).max() < 5
    assert unclear[mixed].max() < 0.1


def test_the_common_multiple_of_two_periods_is_doubted() -> None:
    cents = np.full((1, 7), np.nan, np.float32)
    unclear = np.ones((1, 7), np.float32)
    for band, (pitch, deep) in {2: (700, 0.3), 3: (0, 0.3), 5: (-1200, 0.02)}.items():
        cents[0, band], unclear[0, band] = pitch, deep
    assert Dips(cents, unclear).doubt()[0, 5] == pytest.approx(0.4)
    assert Dips(cents, unclear).doubt()[0, 3] == 0
