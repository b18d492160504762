"""From performance to audio: the built-in synth with the soundfont at hand, and the chain around it with a fake."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile

from fioritura.errors import OptionError, OutputError, ToolError
from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound import render as rendering
from fioritura.sound import soundfont as soundfonts
from fioritura.sound import synth as synths
from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.calibrate import attack_sec, calibrated
from fioritura.sound.clock import Clock
from fioritura.sound.coverage import mended
from fioritura.sound.loudness import integrated_loudness, true_peak_db
from fioritura.sound.mixdown import write_audio
from fioritura.sound.performance import CurvePoint, Performance, PerformedNote, PerformedPart
from fioritura.sound.render import render
from fioritura.sound.soundfont import SOUNDFONT_VARIABLE, find_soundfont, read_soundfont
from fioritura.sound.synth import BuiltInSynth, FluidsynthProgram, synth_named
from fioritura.theory.key import Key
from fioritura.tune import Tempo
from tests.sound_fakes import SineSynth
from tests.tunes import line_of


def performance(*notes: PerformedNote, program: int = 67, **part: Any) -> Performance:
    made = PerformedPart("Melody", program, tuple(notes), **part)
    return Performance("Test", Key(0), Clock((Tempo(0, 120.0),)), line_of("C4/4").bars, (made,))


def scattered(seconds: float, seed: int = 0) -> Performance:
    dice = np.random.default_rng(seed)
    onsets = np.sort(dice.uniform(0, seconds, round(4 * seconds)))
    return performance(*(PerformedNote(float(t), 0.3, int(dice.integers(50, 80)), 90) for t in onsets))


def frequency(audio: Audio, near_hertz: float) -> float:
    """The frequency of a steady tone by autocorrelation over about 40 periods (independent of the program)."""
    wave = audio.mean(axis=1) * np.hanning(len(audio))
    size = 4 * len(wave)
    correlation = np.fft.irfft(np.abs(np.fft.rfft(wave, size)) ** 2)[: len(wave)]
    window = np.fft.irfft(np.abs(np.fft.rfft(np.hanning(len(wave)), size)) ** 2)[: len(wave)]
    correlation = correlation / np.maximum(window, 1e-9)
    periods = max(1, int(0.05 * near_hertz))
    lag = SAMPLE_RATE * periods / near_hertz
    first, last = int(0.985 * lag), int(1.015 * lag) + 2
    peak = first + int(np.argmax(correlation[first:last]))
    left, middle, right = correlation[peak - 1 : peak + 2]
    return float(SAMPLE_RATE * periods / (peak + (left - right) / (2 * (left - 2 * middle + right))))


def cents(hertz: float, midi: float) -> float:
    return float(1200 * np.log2(hertz / (440 * 2 ** ((midi - 69) / 12))))


@pytest.mark.parametrize("instrument", ["tenor-sax", "clarinet", "trombone", "trumpet"])
def test_rendered_notes_are_in_tune(instrument: str) -> None:
    # ISO 16: A4 = 440 Hz; within 10 cents.
    chosen = INSTRUMENTS[instrument]
    numbers = range(chosen.lowest_midi + 2, min(chosen.highest_midi - 4, 84), 5)
    audio = render(
        performance(*(PerformedNote(n * 1.0, 0.8, m, 90) for n, m in enumerate(numbers)), program=chosen.program)
    )
    for place, midi in enumerate(numbers):
        start = round((place + 0.25) * SAMPLE_RATE)
        hertz = frequency(audio[start : start + SAMPLE_RATE // 2], 440 * 2 ** ((midi - 69) / 12))
        assert abs(cents(hertz, midi)) <= 10


@pytest.mark.parametrize("semitones", [-5.0, -1.0, 0.5, 2.0, 7.0])
def test_bends_sound_at_their_pitch(semitones: float) -> None:
    note = PerformedNote(0.0, 1.0, 60, 90, bend=(CurvePoint(0.0, semitones),))
    audio = render(performance(note))
    start = SAMPLE_RATE // 4
    hertz = frequency(audio[start : start + SAMPLE_RATE // 2], 440 * 2 ** ((60 + semitones - 69) / 12))
    assert abs(cents(hertz, 60 + semitones)) <= 10


@pytest.mark.parametrize("instrument", [id for id in INSTRUMENTS if id != "concert"])
def test_every_note_of_every_instrument_sounds(instrument: str) -> None:
    chosen = INSTRUMENTS[instrument]
    numbers = range(chosen.lowest_midi, chosen.highest_midi + 1)
    notes = (PerformedNote(0.5 * n, 0.3, midi, 90) for n, midi in enumerate(numbers))
    audio = render(performance(*notes, program=chosen.program, reverb=0))
    heights = [np.abs(audio[24000 * n + 4800 : 24000 * n + 12000]).max() for n in range(len(numbers))]
    assert min(heights) > 0.15 * float(np.median(heights))


def test_a_key_that_the_soundfont_lacks_is_played_by_its_neighbour_bent() -> None:
    keys = frozenset(range(40, 80)) - {60}
    part = performance(
        PerformedNote(0.0, 1.0, 60, 90),
        PerformedNote(1.0, 1.0, 60, 90, bend=(CurvePoint(0.2, 0.5),)),
        PerformedNote(2.0, 1.0, 61, 90),
        PerformedNote(3.0, 1.0, 100, 90),
    ).parts[0]
    plain, bent, near, far = mended(part, keys).notes
    assert (plain.midi, plain.bend) == (59, (CurvePoint(0.0, 1.0),))
    assert (bent.midi, bent.bend) == (59, (CurvePoint(0.0, 1.0), CurvePoint(0.2, 1.5)))
    assert (near.midi, near.bend) == (61, ())
    assert far.midi == 100, "too far away to be bent"


def test_the_tail_is_kept_and_dies_away() -> None:
    audio = render(performance(PerformedNote(0.0, 1.0, 60, 100)))
    assert len(audio) == 4 * SAMPLE_RATE
    assert np.abs(audio[round(1.05 * SAMPLE_RATE) :]).max() > 1e-4
    assert np.abs(audio[-SAMPLE_RATE // 10 :]).max() < 1e-3


@pytest.mark.parametrize("bounds", [[0, 7, 13, 21], [0, 1, 2, 21], [0, 21]])
def test_pieces_fit_together_as_if_rendered_in_one(bounds: list[int], monkeypatch: pytest.MonkeyPatch) -> None:
    music, synth = scattered(20.0), SineSynth()
    whole = render(music, synth)
    monkeypatch.setattr(rendering, "_bounds", lambda end_sec, workers: bounds)
    pieces = list(rendering.render_blocks(music, synth))
    assert len(pieces) == len(bounds), "the pieces, and what is left when they are done"
    assert np.allclose(np.concatenate(pieces), whole, atol=1e-4)


def test_pieces_of_the_real_synth_fit_without_a_click(monkeypatch: pytest.MonkeyPatch) -> None:
    music = scattered(9.0)
    whole = render(music)
    monkeypatch.setattr(rendering, "_bounds", lambda end_sec, workers: [0, 3, 6, 10])
    assert np.abs(render(music) - whole).max() < 2e-3


def test_long_music_is_cut_into_bounded_pieces_for_all_workers() -> None:
    for seconds, workers in ((5, 2), (185, 2), (3600, 2), (3600, 8)):
        bounds = rendering._bounds(float(seconds), workers)
        lengths = np.diff(bounds)
        assert bounds[0] == 0
        assert bounds[-1] > seconds
        assert lengths.max() <= rendering.LONGEST_PIECE_SEC + 1
        assert seconds < 60 or len(lengths) % workers == 0


def test_audio_that_would_clip_is_rendered_softer_and_made_up_for() -> None:
    music = performance(*(PerformedNote(0.0, 0.5, 60, 127) for _ in range(1)), volume=127)
    quiet, loud = render(music, SineSynth(0.5)), render(music, SineSynth(2.0))
    assert np.abs(loud).max() > 1.5
    assert np.allclose(loud, 4 * quiet, atol=0.03)


def test_parts_are_rendered_early_by_their_attack() -> None:
    music = performance(PerformedNote(1.0, 0.3, 60, 100))
    early = replace(music, parts=tuple(replace(part, attack_sec=0.02) for part in music.parts))
    for made, onset in ((music, 1.0), (early, 0.98)):
        first = int(np.argmax(np.abs(render(made, SineSynth())).max(axis=1) > 1e-3))
        assert first / SAMPLE_RATE == pytest.approx(onset, abs=0.002)


def test_calibration_puts_parts_at_their_levels_and_measures_attacks() -> None:
    low, high = scattered(10, 1).parts[0], scattered(10, 2).parts[0]
    parts = (replace(low, name="Bass", program=33, level_lu=-6.0, volume=127), replace(high, volume=40))
    made = calibrated(replace(scattered(10), parts=parts))
    levels = [integrated_loudness(render(made.only([part.name]))) for part in made.parts]
    assert levels[0] - levels[1] == pytest.approx(-6.0, abs=2.0)
    assert all(0.0 < part.attack_sec < 0.05 for part in made.parts)
    assert max(part.volume for part in made.parts) == 120


def test_attack_is_the_time_to_a_third_of_the_height() -> None:
    audio = np.zeros((SAMPLE_RATE, 2), np.float32)
    ramp = np.minimum(1.0, np.arange(SAMPLE_RATE // 2) / (0.06 * SAMPLE_RATE))
    audio[SAMPLE_RATE // 4 : SAMPLE_RATE // 4 + len(ramp)] = ramp[:, None]
    assert attack_sec(audio, 0.25) == pytest.approx(0.02, abs=0.003)
    assert attack_sec(np.zeros_like(audio), 0.25) == 0.0


@pytest.mark.parametrize("ending", ["mp3", "wav", "flac"])
def test_a_written_file_has_the_loudness_and_peak_it_should(tmp_path: Path, ending: str) -> None:
    write_audio(scattered(12.0), tmp_path / f"music.{ending}")
    audio, rate = soundfile.read(tmp_path / f"music.{ending}", dtype="float32")
    assert rate == SAMPLE_RATE
    assert integrated_loudness(audio) == pytest.approx(-16.0, abs=0.15)
    assert true_peak_db(audio) <= -1.0


def test_stems_add_up_to_their_mix(tmp_path: Path) -> None:
    one, two = scattered(15, 1).parts[0], replace(scattered(15, 2).parts[0], name="Bass", program=33)
    mix = replace(scattered(15), parts=(one, two))
    mastering = write_audio(mix, tmp_path / "mix.wav")
    for name in ("Melody", "Bass"):
        write_audio(mix.only([name]), tmp_path / f"{name}.wav", mastering=mastering)
    whole, melody, bass = (
        soundfile.read(tmp_path / f"{name}.wav", dtype="float32")[0] for name in ("mix", "Melody", "Bass")
    )
    assert len(whole) == len(melody) == len(bass)
    assert np.abs(whole - melody - bass).max() < 5e-3


def test_a_failing_synth_leaves_no_file_behind(tmp_path: Path) -> None:
    class Broken(SineSynth):
        def render(self, midi: bytes) -> Audio:
            raise ToolError("no sound today")

    (tmp_path / "music.mp3").write_bytes(b"earlier")
    with pytest.raises(ToolError, match="no sound today"):
        write_audio(scattered(3), tmp_path / "music.mp3", synth=Broken())
    assert [path.name for path in tmp_path.iterdir()] == ["music.mp3"]
    assert (tmp_path / "music.mp3").read_bytes() == b"earlier"


def test_an_interrupt_leaves_no_file_behind(tmp_path: Path) -> None:
    def stop(share: float) -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        write_audio(scattered(3), tmp_path / "music.mp3", synth=SineSynth(), progress=stop)
    assert not list(tmp_path.iterdir())


def test_a_file_in_the_place_of_the_folder_is_refused(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a file")
    with pytest.raises(OutputError):
        write_audio(scattered(1), tmp_path / "out" / "music.wav", synth=SineSynth())


def font_bytes(name: str = "Some Font", form: bytes = b"sfbk") -> bytes:
    text = name.encode() + b"\0" * (2 - len(name) % 2)
    info = (
        b"INFO" + b"INAM" + len(text).to_bytes(4, "little") + text + b"ICOP" + (6).to_bytes(4, "little") + b"Maker\0"
    )
    body = form + b"LIST" + len(info).to_bytes(4, "little") + info
    return b"RIFF" + len(body).to_bytes(4, "little") + body


def test_the_set_soundfont_goes_before_the_systems_and_the_fallback(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv(SOUNDFONT_VARIABLE, raising=False)
    monkeypatch.setattr(soundfonts, "_FOLDERS", (str(tmp_path / "none"),))
    assert find_soundfont().origin == "fallback"
    folder = tmp_path / "system"
    folder.mkdir()
    for name in ("zither.sf2", "FluidR3_GM.sf2", "broken.sf2"):
        (folder / name).write_bytes(font_bytes(name) if name != "broken.sf2" else b"no font")
    monkeypatch.setattr(soundfonts, "_FOLDERS", (str(folder),))
    found = find_soundfont()
    assert (found.path.name, found.origin, found.licence) == ("FluidR3_GM.sf2", "system", "MIT")
    (tmp_path / "mine.sf2").write_bytes(font_bytes("Mine"))
    monkeypatch.setenv(SOUNDFONT_VARIABLE, str(tmp_path / "mine.sf2"))
    assert (find_soundfont().name, find_soundfont().origin) == ("Mine", "set")
    assert "Maker" in find_soundfont().licence


@pytest.mark.parametrize(
    "data",
    [b"", b"RIFF", b"RIFF0000WAVE", bytes(range(100)), font_bytes(form=b"sfpk")],
    ids=["empty", "RIFF only", "WAVE", "binary", "compressed"],
)
def test_what_is_no_soundfont_is_refused_by_name(data: bytes, tmp_path: Path) -> None:
    (tmp_path / "x.sf2").write_bytes(data)
    with pytest.raises(ToolError, match=r"x\.sf2 is not a SoundFont 2"):
        read_soundfont(tmp_path / "x.sf2")


def test_missing_tools_are_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(ToolError, match="can't be read"):
        read_soundfont(tmp_path / "nowhere.sf2")
    with pytest.raises(OptionError, match="built-in or fluidsynth"):
        synth_named("organ")
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(synths, "_has_built_in", lambda: False)
    with pytest.raises(ToolError, match="install the fluidsynth program"):
        synth_named()
    with pytest.raises(ToolError, match="not installed"):
        FluidsynthProgram(find_soundfont()).render(b"")


def test_fluidsynth_takes_over_where_there_is_no_built_in_synth(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    program = tmp_path / "fluidsynth"
    program.write_text("#!/bin/sh\nexit 3\n")
    program.chmod(0o755)
    monkeypatch.setenv("PATH", f"{tmp_path}{os.pathsep}{os.environ['PATH']}")
    assert isinstance(synth_named(), BuiltInSynth)
    monkeypatch.setattr(synths, "_has_built_in", lambda: False)
    synth = synth_named()
    assert isinstance(synth, FluidsynthProgram)
    with pytest.raises(ToolError, match="fluidsynth failed \\(3\\)"):
        synth.render(b"")


def test_a_soundfont_that_the_synth_cannot_use_is_reported_not_a_crash(tmp_path: Path) -> None:
    (tmp_path / "hollow.sf2").write_bytes(font_bytes())
    with pytest.raises(ToolError, match="lacks tables"):
        render(scattered(1), synth_named("built-in", tmp_path / "hollow.sf2"))
    with pytest.raises(ToolError, match="built-in synth failed"):
        synth_named().render(b"no MIDI at all")


def test_a_file_ends_soon_after_the_last_audible_sound_but_never_before_its_last_bar(tmp_path: Path) -> None:
    note = performance(PerformedNote(0.0, 1.0, 60, 100))
    for name, played in (("short", note), ("long", replace(note, lasts_sec=2.5))):
        write_audio(played, tmp_path / f"{name}.wav")
    short, long = (soundfile.read(tmp_path / f"{name}.wav", dtype="float32")[0] for name in ("short", "long"))
    last = int(np.flatnonzero(np.abs(short).max(axis=1) > 10 ** (-66 / 20))[-1])
    assert 0.2 * SAMPLE_RATE <= len(short) - last <= 0.3 * SAMPLE_RATE
    assert len(long) == 2.5 * SAMPLE_RATE
