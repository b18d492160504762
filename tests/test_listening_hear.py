"""Hearing a take: known answers by formula, tunes of the test half, spoilt recordings, and refusals."""

from pathlib import Path

import mir_eval
import numpy as np
import pytest
import soundfile

from fioritura.errors import OptionError, ReadError
from fioritura.listening.hear import hear
from fioritura.listening.notes import Attack, InflectionKind, PlayedNote, QualityKind, Take
from tests.listening_takes import TIMBRES, Truth, formula_take, noise, render, room, tune_names

RATE = 44100


def sung(cents: np.ndarray, level: np.ndarray | float = 1.0) -> np.ndarray:
    """A tone whose pitch at each sample is given in cents above A4 = 440 Hz (ISO 16:1975)."""
    phase = 2 * np.pi * np.cumsum(440.0 * 2 ** (cents / 1200)) / RATE
    wave: np.ndarray = sum(np.sin(n * phase) / n**1.3 for n in range(1, 9))
    edge = np.minimum(1, np.minimum(np.arange(cents.size), np.arange(cents.size)[::-1]) / (0.01 * RATE))
    return 0.2 * wave * edge * level


def held(seconds: float, cents: float = 0.0) -> np.ndarray:
    return np.full(int(seconds * RATE), cents)


def in_silence(wave: np.ndarray) -> np.ndarray:
    silence = np.zeros(int(0.3 * RATE))
    return np.concatenate([silence, wave, silence])


def only(take: Take) -> PlayedNote:
    assert len(take.notes) == 1, take.notes
    return take.notes[0]


# Known answers ------------------------------------------------------------------------------------------------


def test_concert_a_is_heard_at_its_place() -> None:
    note = only(hear(in_silence(sung(held(0.6))), RATE))
    assert note.midi == 69
    assert note.pitch_cents == pytest.approx(0, abs=1)
    assert note.frequency_hz == pytest.approx(440, abs=0.3)
    assert note.onset_sec == pytest.approx(0.3, abs=0.02)
    assert note.offset_sec == pytest.approx(0.9, abs=0.03)
    assert note.attack is Attack.TONGUED
    assert note.vibrato is None and not note.inflections
    assert note.confidence > 0.9


@pytest.mark.parametrize("midi", [36, 48, 60, 72, 84, 96])
def test_every_register(midi: int) -> None:
    """From the baritone saxophone's low A (sounding C2) to the flute's C7."""
    note = only(hear(in_silence(sung(held(0.5, 100.0 * (midi - 69)))), RATE))
    assert note.midi == midi
    assert note.pitch_cents == pytest.approx(100 * (midi - 69), abs=3)


@pytest.mark.parametrize(("rate_hz", "extent"), [(4.5, 20.0), (5.5, 30.0), (6.5, 45.0), (5.0, 60.0)])
def test_vibrato_of_known_rate_and_extent(rate_hz: float, extent: float) -> None:
    time = np.arange(int(1.2 * RATE)) / RATE
    note = only(hear(in_silence(sung(extent * np.sin(2 * np.pi * rate_hz * time))), RATE))
    assert note.vibrato is not None
    assert note.vibrato.rate_hz == pytest.approx(rate_hz, abs=0.1)
    assert note.vibrato.extent_cents == pytest.approx(extent, rel=0.1)
    assert note.pitch_cents == pytest.approx(0, abs=10)


@pytest.mark.parametrize(("depth", "seconds"), [(80.0, 0.08), (150.0, 0.12), (200.0, 0.14)])
def test_scoop_of_known_depth_and_length(depth: float, seconds: float) -> None:
    way = np.linspace(-depth, 0, int(seconds * RATE))
    note = only(hear(in_silence(sung(np.concatenate([way, held(0.5)]))), RATE))
    scoop = note.inflection(InflectionKind.SCOOP)
    assert note.midi == 69 and scoop is not None
    assert scoop.extent_cents == pytest.approx(-depth, abs=30)
    assert scoop.duration_sec == pytest.approx(seconds, abs=0.03)
    assert scoop.extent_cents / scoop.duration_sec == pytest.approx(-depth / seconds, rel=0.35)


@pytest.mark.parametrize(("extent", "kind"), [(-300.0, InflectionKind.FALL), (250.0, InflectionKind.DOIT)])
def test_fall_and_doit(extent: float, kind: InflectionKind) -> None:
    way = np.linspace(0, extent, int(0.15 * RATE))
    note = only(hear(in_silence(sung(np.concatenate([held(0.5), way]))), RATE))
    found = note.inflection(kind)
    assert note.midi == 69 and found is not None
    assert found.duration_sec == pytest.approx(0.15, abs=0.05)
    assert abs(found.extent_cents) == pytest.approx(abs(extent), rel=0.35)


def test_bend_in_the_middle() -> None:
    dip = -70 * np.sin(np.linspace(0, np.pi, int(0.25 * RATE)))
    note = only(hear(in_silence(sung(np.concatenate([held(0.4), dip, held(0.4)]))), RATE))
    bend = note.inflection(InflectionKind.BEND)
    assert bend is not None
    assert bend.extent_cents == pytest.approx(-70, abs=12)
    assert bend.onset_sec == pytest.approx(0.7, abs=0.06)


def test_a_grace_note_is_a_note_and_no_scoop() -> None:
    notes = hear(in_silence(sung(np.concatenate([held(0.06, -200), held(0.5)]))), RATE).notes
    assert [note.midi for note in notes] == [67, 69]
    assert all(note.inflection(InflectionKind.SCOOP) is None for note in notes)
    assert notes[1].attack is Attack.SLURRED


def test_tongued_repeats_are_parted_and_slurs_are_slurred() -> None:
    level = np.ones(int(1.2 * RATE))
    for start in (0.4, 0.8):
        place = int(start * RATE)
        gap = int(0.02 * RATE)
        level[place - gap : place + gap] = np.abs(np.linspace(-1, 1, 2 * gap)) * 0.97 + 0.03
    notes = hear(in_silence(sung(held(1.2), level)), RATE).notes
    assert [note.midi for note in notes] == [69, 69, 69]
    assert [note.onset_sec for note in notes] == pytest.approx([0.3, 0.7, 1.1], abs=0.03)
    slurred = hear(in_silence(sung(np.concatenate([held(0.3), held(0.3, 200), held(0.3, 400)]))), RATE).notes
    assert [note.attack for note in slurred] == [Attack.TONGUED, Attack.SLURRED, Attack.SLURRED]


@pytest.mark.parametrize("tuning", [25.0, -30.0, 0.0])
def test_a_detuned_player_is_measured_and_read_right(tuning: float) -> None:
    midis = [60, 62, 64, 65, 67, 69, 71, 72]
    line = np.concatenate([held(0.3, 100.0 * (midi - 69) + tuning) for midi in midis])
    take = hear(in_silence(sung(line)), RATE)
    assert take.tuning_cents == pytest.approx(tuning, abs=1.5)
    assert [note.midi for note in take.notes] == midis
    assert [note.pitch_cents - 100 * (note.midi - 69) for note in take.notes] == pytest.approx([tuning] * 8, abs=3)


def test_level_is_in_db_of_full_scale() -> None:
    loud, soft = (only(hear(in_silence(sung(held(0.5)) * gain), RATE)) for gain in (1.0, 0.5))
    assert loud.level_db - soft.level_db == pytest.approx(6.02, abs=0.2)


# Tunes --------------------------------------------------------------------------------------------------------


def f1(truth: tuple[Truth, ...], take: Take) -> float:
    """Note F1 of mir_eval: onset within 50 ms, pitch within 50 cents."""
    return float(
        mir_eval.transcription.precision_recall_f1_overlap(
            np.array([(note.onset_sec, note.offset_sec) for note in truth]),
            np.array([440 * 2 ** ((note.midi - 69) / 12) for note in truth]),
            np.array([(note.onset_sec, note.offset_sec) for note in take.notes]),
            np.array([note.frequency_hz for note in take.notes]),
            offset_ratio=None,
        )[2]
    )


@pytest.mark.parametrize(
    ("condition", "least"), [("dry", 0.96), ("room", 0.9), ("noise 10 dB pink", 0.9), ("backing -24 dB", 0.9)]
)
def test_held_out_tunes(condition: str, least: float) -> None:
    """Two takes only, as a guard; `benchmarks/listen_bench.py` measures."""
    names = tune_names("test", 2)
    takes = [
        formula_take(name, condition, instrument, (9, place), quarters=16)
        for place, (name, instrument) in enumerate(zip(names, ("saxophone", "clarinet"), strict=True))
    ]
    assert np.mean([f1(take.notes, hear(take.wave, take.rate)) for take in takes]) >= least


def test_the_halves_share_no_tune() -> None:
    assert not set(tune_names("train", 500)) & set(tune_names("test", 500))


# Files --------------------------------------------------------------------------------------------------------


def scale() -> np.ndarray:
    return in_silence(sung(np.concatenate([held(0.25, step) for step in (0.0, 200.0, 400.0, 500.0)])))


@pytest.mark.parametrize(("suffix", "rate"), [("wav", 44100), ("flac", 48000), ("ogg", 44100), ("mp3", 44100)])
@pytest.mark.parametrize("channels", [1, 2])
def test_files_of_every_kind(tmp_path: Path, suffix: str, rate: int, channels: int) -> None:
    import soxr

    wave = soxr.resample(scale(), RATE, rate)
    path = tmp_path / f"take.{suffix}"
    soundfile.write(path, np.stack([wave] * channels, axis=1), rate)
    take = hear(path)
    assert [note.midi for note in take.notes] == [69, 71, 73, 74]
    assert take.duration_sec == pytest.approx(len(wave) / rate, abs=0.12)
    assert not take.findings


@pytest.mark.parametrize("rate", [8000, 16000, 22050, 96000])
def test_any_rate(rate: int) -> None:
    import soxr

    take = hear(soxr.resample(scale(), RATE, rate), rate)
    assert [note.midi for note in take.notes] == [69, 71, 73, 74]


def test_refusals_say_what_to_do(tmp_path: Path) -> None:
    text = tmp_path / "notes.wav"
    text.write_text("no sound")
    empty = tmp_path / "empty.wav"
    empty.write_bytes(b"")
    for path in (tmp_path / "missing.wav", tmp_path, text, empty):
        with pytest.raises(ReadError, match=r": (check|name|save)"):
            hear(path)
    for samples in (np.zeros(100, int), np.zeros((2, 2, 2)), np.zeros((0, 0))):
        with pytest.raises(OptionError, match="give floats"):
            hear(samples)
    with pytest.raises(ReadError, match="not numbers"):
        hear(np.full(RATE, np.nan))
    with pytest.raises(OptionError, match="resample"):
        hear(np.zeros(RATE), 1000)


# Quality ------------------------------------------------------------------------------------------------------


def test_silence_gives_no_notes_and_says_so() -> None:
    for wave in (np.zeros(2 * RATE), np.zeros(0), 1e-4 * np.random.default_rng(0).normal(size=2 * RATE)):
        take = hear(wave, RATE)
        assert take.notes == ()
        assert take.finding(QualityKind.SILENCE) is not None


def test_clipping_is_found() -> None:
    assert hear(np.clip(scale() * 12, -1, 1), RATE).finding(QualityKind.CLIPPING) is not None
    assert hear(scale() / np.abs(scale()).max() * 0.97, RATE).finding(QualityKind.CLIPPING) is None


def two_players(rng: np.random.Generator) -> np.ndarray:
    lines = [[Truth(0.3 + 0.4 * n, 0.68 + 0.4 * n, midi) for n, midi in enumerate(part)] for part in PARTS]
    waves = [render(line, TIMBRES[name], rng) for line, name in zip(lines, ("trumpet", "saxophone"), strict=True)]
    return (waves[0] + waves[1]) / 2


PARTS = ([72, 74, 76, 77, 79, 77, 76, 74], [65, 67, 60, 62, 64, 69, 67, 65])


def test_two_players_are_found_and_one_in_a_room_is_not() -> None:
    rng = np.random.default_rng(3)
    assert hear(two_players(rng), RATE).finding(QualityKind.POLYPHONY) is not None
    alone = render(
        [Truth(0.3 + 0.4 * n, 0.68 + 0.4 * n, midi) for n, midi in enumerate(PARTS[0])], TIMBRES["trumpet"], rng
    )
    for wave in (alone, room(alone, rng), noise(alone, rng, snr_db=10, colour="pink")):
        assert hear(wave, RATE).finding(QualityKind.POLYPHONY) is None


def test_noise_alone_is_not_made_into_a_tune() -> None:
    take = hear(np.random.default_rng(5).normal(0, 0.1, 4 * RATE), RATE)
    assert take.finding(QualityKind.NOISE) is not None
    assert len(take.notes) < 4


def test_a_recording_that_can_only_be_read_forward_is_heard(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    soundfile.write(tmp_path / "scale.wav", scale(), RATE)
    expected = hear(tmp_path / "scale.wav").notes
    monkeypatch.setattr(soundfile.SoundFile, "seekable", lambda self: False)
    assert hear(tmp_path / "scale.wav").notes == expected


@pytest.mark.slow
def test_memory_stays_bounded_for_an_hour(tmp_path: Path) -> None:
    import tracemalloc

    path = tmp_path / "hour.flac"
    wave = np.tile(scale(), 60).astype(np.float32)
    with soundfile.SoundFile(path, "w", RATE, 1) as file:
        for _ in range(int(3600 * RATE / wave.size)):
            file.write(wave)
    tracemalloc.start()
    take = hear(path)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert take.duration_sec > 3500
    assert peak < 700e6
