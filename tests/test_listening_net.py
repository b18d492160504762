"""The net's ear: spectra by definition, decoding of known probabilities, long takes, rooms and bands, and refusals."""

from __future__ import annotations

from importlib.resources import files

import numpy as np
import pytest

from fioritura.errors import ReadError
from fioritura.listening import decode, hear, neural
from fioritura.listening.decode import SILENCE, Expected, notes_of_frames, tuning_of
from fioritura.listening.notes import QualityKind
from fioritura.listening.pitch import RATE, Tracker
from fioritura.listening.spectra import (
    BINS_A_SEMITONE,
    FINE_BINS,
    FINE_WINDOW,
    HOP,
    LOWEST_MIDI,
    Spectra,
    filters,
    scaled,
)
from fioritura.listening.words import refuse_unclear
from tests.listening_takes import WET, Sounding, formula_take, tune_names
from tests.test_listening_hear import f1, scale

# Spectra ------------------------------------------------------------------------------------------------------


def spectra_of(wave: np.ndarray, block: int = 4096) -> tuple[np.ndarray, float]:
    ear = Spectra()
    for start in range(0, wave.size, block):
        ear.feed(wave[start : start + block].astype(np.float32))
    return ear.finish()


@pytest.mark.parametrize("midi", [60, 69, 84, 96])
def test_a_sine_of_full_scale_has_0_db_in_its_bin(midi: int) -> None:
    time = np.arange(RATE) / RATE
    decibels, level = spectra_of(np.sin(2 * np.pi * 440 * 2 ** ((midi - 69) / 12) * time))
    middle = decibels[len(decibels) // 2, :FINE_BINS].astype(float)
    assert int(middle.argmax()) in range(*((midi - LOWEST_MIDI) * BINS_A_SEMITONE + edge for edge in (0, 3)))
    assert middle.max() == pytest.approx(0, abs=3.5)
    assert level == pytest.approx(0, abs=4)


def test_spectra_are_the_transform_of_the_window_around_each_frame() -> None:
    wave = np.random.default_rng(1).normal(0, 0.1, RATE)
    decibels, _ = spectra_of(wave)
    frame = 37
    part = wave[frame * HOP - FINE_WINDOW // 2 : frame * HOP + FINE_WINDOW // 2]
    turns = np.exp(-2j * np.pi * np.outer(np.arange(FINE_WINDOW // 2 + 1), np.arange(FINE_WINDOW)) / FINE_WINDOW)
    power = np.abs(turns @ (part * 0.5 * (1 - np.cos(2 * np.pi * np.arange(FINE_WINDOW) / FINE_WINDOW)))) ** 2
    expected = 10 * np.log10(power @ filters()[0] + 1e-10)
    assert decibels[frame, :FINE_BINS].astype(float) == pytest.approx(expected, abs=0.05)


def test_spectra_do_not_depend_on_blocks() -> None:
    wave = np.random.default_rng(2).normal(0, 0.1, RATE)
    whole, parts = spectra_of(wave, wave.size), spectra_of(wave, 777)
    assert whole[0].shape == (-(-wave.size // HOP), 340)
    assert np.array_equal(whole[0], parts[0]) and whole[1] == parts[1]


def test_the_net_was_trained_on_the_same_spectra() -> None:
    torch = pytest.importorskip("torch")
    from tools.train_listener.net import features

    wave = np.random.default_rng(3).normal(0, 0.1, RATE).astype(np.float32)
    decibels, level = spectra_of(wave)
    trained = features(torch.from_numpy(wave)[None])[0].numpy()
    assert np.abs(scaled(decibels.astype(np.float32), level) - trained).max() < 0.005


# Decoding -----------------------------------------------------------------------------------------------------


def probabilities(states: list[tuple[int, float | None]], tuning: float = 0.0) -> np.ndarray:
    """Sure frames: (how many, MIDI number or silence)."""
    table = np.full((sum(count for count, _ in states), SILENCE + 1), 1e-4, np.float32)
    frame = 0
    for count, midi in states:
        place = SILENCE if midi is None else (midi + tuning - LOWEST_MIDI) * BINS_A_SEMITONE + 1
        low = int(place)
        table[frame : frame + count, low] += 1 - (place - low)
        table[frame : frame + count, min(low + 1, SILENCE)] += place - low
        frame += count
    return table


def onsets(count: int, *peaks: tuple[float, float]) -> np.ndarray:
    frames = np.arange(count)
    curve = [height * np.exp(-0.5 * (frames - place) ** 2) for place, height in peaks]
    return np.asarray(np.max([np.zeros(count), *curve], axis=0), np.float32)


def test_notes_begin_at_the_peaks_of_the_onset_curve() -> None:
    likely = probabilities([(20, None), (30, 60), (30, 62), (20, None)])
    found = notes_of_frames(likely, onsets(100, (18.6, 0.9), (51.3, 0.8)), 0.0)
    assert [note.midi for note in found] == [60, 62]
    assert [note.start for note in found] == pytest.approx([18.6, 51.3], abs=0.1)
    assert [note.stop for note in found] == pytest.approx([51.3, 80], abs=0.1)


def test_a_clear_peak_inside_a_note_is_a_new_attack_and_a_faint_one_a_doubt() -> None:
    likely = probabilities([(10, None), (90, 60)])
    found = notes_of_frames(likely, onsets(100, (10, 0.9), (40, 0.7), (70, 0.2)), 0.0)
    assert [round(note.start) for note in found] == [10, 40]
    assert [place for place, _ in found[1].faint] == pytest.approx([70], abs=0.1)


def test_what_is_expected_is_believed_sooner_but_never_put_in() -> None:
    likely = probabilities([(20, None), (30, 60), (30, 67), (20, None)])
    likely[50:80] *= 0.5
    likely[50:80, (72 - LOWEST_MIDI) * BINS_A_SEMITONE + 1] += 0.4
    curve = onsets(100, (20, 0.9), (50, 0.9), (35, 0.7), (65, 0.5))
    assert [note.midi for note in notes_of_frames(likely, curve, 0.0)] == [60, 60, 67]
    expected = [Expected(20, 50, 60), Expected(50, 65, 72), Expected(65, 80, 72), Expected(80, 100, 64)]
    found = notes_of_frames(likely, curve, 0.0, expected)
    assert [(round(note.start), note.midi) for note in found] == [(20, 60), (50, 72), (65, 72)]


@pytest.mark.parametrize("tuning", [-0.4, -0.2, 0.0, 0.3])
def test_tuning_is_found_and_taken_out(tuning: float) -> None:
    likely = probabilities([(20, None), (40, 60), (40, 67), (40, 71)], tuning)
    assert tuning_of(likely) == pytest.approx(tuning, abs=0.03)
    found = notes_of_frames(likely, onsets(140, (20, 0.9), (60, 0.9), (100, 0.9)), tuning)
    assert [note.midi for note in found] == [60, 67, 71]


def test_an_attack_that_speaks_an_octave_low_is_one_note() -> None:
    likely = probabilities([(10, None), (9, 60), (60, 72)])
    assert [note.midi for note in notes_of_frames(likely, onsets(79, (10, 0.9)), 0.0)] == [72]
    leapt = notes_of_frames(likely, onsets(79, (10, 0.9), (19, 0.8)), 0.0)
    assert [note.midi for note in leapt] == [60, 72]


def test_one_odd_frame_makes_no_note() -> None:
    likely = probabilities([(30, 60), (1, 64), (30, 60)])
    assert len(notes_of_frames(likely, onsets(61, (0, 0.9)), 0.0)) == 1


# The net ------------------------------------------------------------------------------------------------------

needs_net = pytest.mark.skipif(not neural.has_net(), reason="onnxruntime is not installed")


def test_the_model_is_small() -> None:
    assert (files("fioritura.listening") / "model" / "listener.onnx").is_file()
    assert len((files("fioritura.listening") / "model" / "listener.onnx").read_bytes()) <= 2e6


@pytest.fixture(scope="module")
def wet() -> Sounding:
    return formula_take(tune_names("test", 3)[2], WET, "saxophone", (31, 0), quarters=24)


@needs_net
def test_a_wet_room_is_no_obstacle(wet: Sounding, monkeypatch: pytest.MonkeyPatch) -> None:
    """Better than the frames alone, and well."""
    by_net = f1(wet.notes, hear.hear(wet.wave, wet.rate))
    monkeypatch.setattr(hear, "has_net", lambda: False)
    assert by_net > f1(wet.notes, hear.hear(wet.wave, wet.rate))
    assert by_net >= 0.9


@needs_net
def test_a_long_take_is_heard_like_a_short_one(wet: Sounding, monkeypatch: pytest.MonkeyPatch) -> None:
    """In pieces and as a whole the notes are the same, but for one, or 0.2 % where there are many."""
    import soxr

    ear = neural.NeuralEar()
    for _ in range(4):
        ear.feed(soxr.resample(wet.wave.astype(np.float32), wet.rate, RATE))
    decibels, level = ear._spectra.finish()
    found = []
    for piece in (100_000, neural.PIECE, 1500):
        monkeypatch.setattr(neural, "PIECE", piece)
        likely, curve = neural._probabilities(decibels, level)
        found.append(notes_of_frames(likely, curve, tuning_of(likely)))
    assert len(found[0]) > 150
    for other in found[1:]:
        lost = [
            note
            for note in found[0]
            if not any(one.midi == note.midi and abs(one.start - note.start) < 1 for one in other)
        ]
        assert len(lost) <= max(1, 0.002 * len(found[0]))
        assert abs(len(other) - len(found[0])) <= max(1, 0.002 * len(found[0]))


@needs_net
def test_other_sounds_alone_are_said_to_be_no_player() -> None:
    from tools.train_listener.dry import talk

    take = hear.hear(talk(np.random.default_rng(3), 8 * RATE), RATE)
    assert take.finding(QualityKind.NO_PLAYER) or take.finding(QualityKind.NOISE)
    with pytest.raises(ReadError):
        refuse_unclear(take, "The take")


@needs_net
def test_the_band_alone_is_refused_and_a_player_over_it_is_heard(wet: Sounding) -> None:
    import soxr

    from tools.train_listener.bands import band_alone

    band = band_alone(123_456, bars=16)
    take = hear.hear(band, RATE)
    assert take.notes == ()
    with pytest.raises(ReadError):
        refuse_unclear(take, "The take")
    wave = soxr.resample(wet.wave.astype(np.float32), wet.rate, RATE)
    both = wave + np.resize(band, wave.size) * wave.std() / band.std() * 10 ** (-8 / 20)
    take = hear.hear(both, RATE)
    assert take.finding(QualityKind.POLYPHONY) is None
    assert f1(wet.notes, take) >= 0.85


def test_without_the_net_the_frames_decide(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(hear, "has_net", lambda: False)
    monkeypatch.setattr(neural, "NeuralEar", None)
    assert [note.midi for note in hear.hear(scale(), 44100).notes] == [69, 71, 73, 74]


@needs_net
def test_nothing_is_heard_in_nothing() -> None:
    heard = neural.NeuralEar().finish()
    assert heard.notes == [] and heard.sureness == 0
    assert decode.notes_of_frames(np.zeros((0, SILENCE + 1)), np.zeros(0, np.float32), 0.0) == []
    tracker = Tracker()
    tracker.feed(np.zeros(RATE, np.float32))
    assert not list(hear.notes_of(tracker.finish(), heard))
