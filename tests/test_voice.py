"""The measured voices: joints, pitch, level and colour, told from their sound."""

from __future__ import annotations

import json
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from statistics import mean

import numpy as np
import pytest

from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound import render as rendering
from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.midi_writer import write_midi
from fioritura.sound.perform import perform
from fioritura.sound.performance import CurvePoint, Inhaled, Joint, PerformedNote
from fioritura.sound.render import render
from fioritura.sound.voice import winds as tables
from fioritura.sound.voice.winds import wind_of, winds
from fioritura.tune import Mark
from tests.charts import chart
from tests.test_perform import adorned
from tests.test_synth import cents, frequency
from tests.tunes import line_of
from tests.voice_sound import Signal, colour, flux, levels_db, sung, within

MIDDLE = {
    "soprano-sax": 70,
    "alto-sax": 63,
    "tenor-sax": 57,
    "baritone-sax": 50,
    "clarinet": 65,
    "bass-clarinet": 52,
    "flute": 72,
    "oboe": 70,
    "trumpet": 65,
    "flugelhorn": 62,
    "trombone": 52,
}
SAXOPHONES = ("soprano-sax", "alto-sax", "tenor-sax", "baritone-sax")
MEASURED = json.loads(Path(tables.__file__).with_name("winds.json").read_text(encoding="utf-8"))


def pair(voice: str, interval: int, joint: Joint) -> Signal:
    """Two notes of half a second, the second at 0.7 s."""
    gap = 0.0 if joint == "slur" else 0.0345
    first = PerformedNote(0.2, 0.5 - gap, MIDDLE[voice], 85, is_stopped=joint == "tongue")
    return sung(voice, first, PerformedNote(0.7, 0.5, MIDDLE[voice] + interval, 85, joint=joint))


@pytest.mark.parametrize("voice", MIDDLE)
@pytest.mark.parametrize("interval", [-4, -2, -1, 1, 2, 3])
def test_slurred_joints_have_no_dip_and_no_new_attack_and_a_soft_tongue_lies_between(
    voice: str, interval: int
) -> None:
    dips, rises = {}, {}
    for joint in ("slur", "soft", "tongue"):
        audio = pair(voice, interval, joint)
        around = [np.median(levels_db(within(audio, a, a + 0.12))) for a in (0.5, 0.85)]
        dips[joint] = min(around) - levels_db(within(audio, 0.63, 0.8)).min()
        rises[joint] = flux(within(audio, 0.6, 0.85))
    assert dips["slur"] <= 3.0
    assert dips["slur"] + 2.0 < dips["soft"] < dips["tongue"] - 2.0
    assert rises["slur"] < rises["tongue"] / 3


@pytest.mark.parametrize("voice", MIDDLE)
@pytest.mark.parametrize("semitones", [-5.0, -0.7, 0.0, 0.4, 3.0])
def test_pitches_and_bends_are_those_of_the_performance(voice: str, semitones: float) -> None:
    midi = MIDDLE[voice]
    audio = sung(voice, PerformedNote(0.0, 1.0, midi, 90, bend=(CurvePoint(0.0, semitones),)))
    hertz = 440 * 2 ** ((midi + semitones - 69) / 12)
    for start in (0.2, 0.5):
        found = frequency(np.repeat(within(audio, start, start + 0.4)[:, None], 2, axis=1).astype(np.float32), hertz)
        assert abs(cents(found, midi + semitones)) <= 8


@pytest.mark.parametrize("marks", [(), (Mark.SCOOP,), (Mark.FALL,), (Mark.VIBRATO,)])
def test_curves_of_pitch_are_sung_as_the_performance_says(marks: tuple[Mark, ...]) -> None:
    tune = line_of("C4/4")
    line = (replace(adorned(tune)[0], marks=marks),)
    note = perform(tune, line, instrument=INSTRUMENTS["tenor-sax"], tempo=80, exact=True).parts[0].notes[0]
    audio = sung("tenor-sax", note, reverb=0)
    places = np.arange(0.08, note.duration_sec - 0.1, 0.01)
    said = np.interp(places, [p.after_sec for p in note.bend], [p.value for p in note.bend])
    assert np.ptp(said) > 0.2
    heard = running_cents(audio, note.midi)[np.round(places * SAMPLE_RATE).astype(int)]
    assert np.abs(heard - 100 * said).max() <= 8


def running_cents(audio: Signal, midi: int) -> Signal:
    """How far the first harmonic is from a pitch, at every frame, seen through 20 ms."""
    hertz, size = 440 * 2 ** ((midi - 69) / 12), round(0.02 * SAMPLE_RATE)
    turned = audio * np.exp(-2j * np.pi * hertz * np.arange(len(audio)) / SAMPLE_RATE)
    smooth = np.convolve(turned, np.hanning(size) / size, "same")
    speed = np.gradient(np.unwrap(np.angle(smooth))) * SAMPLE_RATE / (2 * np.pi)
    found: Signal = 1200 * np.log2(1 + np.clip(speed, -0.9 * hertz, hertz) / hertz)
    return found


@pytest.mark.parametrize("voice", ["alto-sax", "clarinet", "flute", "trumpet"])
def test_the_level_of_long_notes_moves(voice: str) -> None:
    tune = line_of("C5/4 D5/4")
    music = perform(tune, tune.notes, instrument=INSTRUMENTS[voice], tempo=70, exact=True)
    audio = render(music).mean(axis=1).astype(np.float64)
    for note in music.parts[0].notes:
        levels = levels_db(within(audio, note.onset_sec + 0.1, note.end_sec - 0.05), 0.1)
        assert 4.0 <= levels.max() - levels.min() <= 10.0


@pytest.mark.parametrize("voice", SAXOPHONES)
def test_soft_and_loud_differ_in_colour_as_the_measured_layers_do(voice: str) -> None:
    layers = MEASURED["voices"][voice]
    correlations = []
    for midi in range(MIDDLE[voice] - 8, MIDDLE[voice] + 9, 2):
        soft, loud = (colour(within(sung(voice, PerformedNote(0.0, 1.2, midi, v)), 0.3, 1.0)) for v in (50, 110))
        real = [_third_octaves(layers[layer]["notes"][str(midi)]["harmonics"], midi) for layer in "pf"]
        made = [_third_octaves_of(sung(voice, PerformedNote(0.0, 1.2, midi, v)), midi) for v in (50, 110)]
        correlations.append(np.corrcoef(made[0] - made[1], real[0] - real[1])[0, 1])
        assert np.abs(soft - loud).max() > 1.0
    assert mean(correlations) >= 0.8


def _third_octaves(halves: list[int], midi: int) -> Signal:
    """Levels of the third-octave bands that hold harmonics, from measured ones, in half decibels."""
    power = 10 ** (np.array(halves[:40]) / 20)
    return np.array([10 * np.log10(power[band].sum()) for band in _bands(len(power), midi)])


def _third_octaves_of(audio: Signal, midi: int) -> Signal:
    piece = within(audio, 0.3, 1.0)
    spectrum = np.abs(np.fft.rfft(piece * np.hanning(len(piece)))) ** 2
    hertz, base = np.fft.rfftfreq(len(piece), 1 / SAMPLE_RATE), 440 * 2 ** ((midi - 69) / 12)
    count = min(40, int(16_000 / base))
    power = np.array([spectrum[np.abs(hertz - n * base) < 0.3 * base].sum() for n in range(1, count + 1)])
    return np.array([10 * np.log10(power[band].sum()) for band in _bands(count, midi)])


def _bands(count: int, midi: int) -> list[list[int]]:
    places = np.round(3 * np.log2(np.arange(1, count + 1))).astype(int)
    return [list(np.flatnonzero(places == place)) for place in sorted(set(places))]


def test_ghost_notes_are_half_voiced_and_breaths_are_heard_where_they_are_planned() -> None:
    full, ghost = (
        within(sung("alto-sax", PerformedNote(0.0, 0.5, 62, 60, is_ghost=is_ghost), reverb=0), 0.15, 0.45)
        for is_ghost in (False, True)
    )
    base = 440 * 2 ** ((62 - 69) / 12)
    assert _between_harmonics(ghost, base) > _between_harmonics(full, base) + 6.0
    breath = PerformedNote(0.0, 0.5, 62, 85, breath=Inhaled(0.8, 0.3))
    with_air, without = (sung("alto-sax", note, reverb=0) for note in (breath, PerformedNote(0.0, 0.5, 62, 85)))
    assert levels_db(within(with_air, 0.85, 1.05)).max() > levels_db(within(without, 0.85, 1.05)).max() + 20
    assert levels_db(within(with_air, 0.85, 1.05)).max() < levels_db(within(with_air, 0.1, 0.4)).max() - 15


def _between_harmonics(audio: Signal, base: float) -> float:
    """The level of what lies between the harmonics up to 8 kHz against that of the harmonics, in dB."""
    spectrum = np.abs(np.fft.rfft(audio * np.hanning(len(audio)))) ** 2
    hertz = np.fft.rfftfreq(len(audio), 1 / SAMPLE_RATE)
    distance = np.abs(hertz / base - np.round(hertz / base))
    is_tone = distance < 0.1
    heard = (hertz > base / 2) & (hertz < 8000)
    return float(10 * np.log10(spectrum[heard & ~is_tone].sum() / spectrum[heard & is_tone].sum()))


def test_phrases_are_drawn_breath_for_and_the_tongue_is_told_from_the_slur() -> None:
    tune = line_of("C4/1 D4/1 E4/1 F4/1 " * 16)
    notes = perform(tune, tune.notes, instrument=INSTRUMENTS["alto-sax"], tempo=100, exact=True).parts[0].notes
    drawn = [(note, following) for note, following in pairwise(notes) if note.breath]
    assert len(drawn) >= 4
    for note, following in drawn:
        assert note.breath is not None
        start = note.onset_sec + note.breath.after_sec
        assert note.end_sec <= start < start + note.breath.duration_sec <= following.onset_sec
        assert following.joint == "tongue"
    swing = chart("C", melody="C4 D4 E4 F4 G4 A4 B4 C5", tempo=140)
    joints = [n.joint for n in perform(swing, swing.notes, instrument=INSTRUMENTS["alto-sax"]).parts[0].notes]
    assert joints == ["tongue", "soft", "slur", "soft", "slur", "soft", "slur", "soft"]
    fast = [
        n.joint for n in perform(swing, swing.notes, instrument=INSTRUMENTS["alto-sax"], tempo=220).parts[0].notes
    ]
    assert fast.count("slur") > joints.count("slur")
    held = (tune.notes[0], replace(tune.notes[1], marks=(Mark.TENUTO,)))
    assert perform(tune, held, instrument=INSTRUMENTS["alto-sax"]).parts[0].notes[1].joint == "soft"


def test_pieces_of_a_voice_fit_together_as_if_sung_in_one(monkeypatch: pytest.MonkeyPatch) -> None:
    tune = chart(" | ".join(["C"] * 8), melody="C4 D4 E4 F4 G4 F4 E4 D4", tempo=140)
    music = perform(tune, tune.notes, instrument=INSTRUMENTS["alto-sax"])
    whole = render(music)
    monkeypatch.setattr(rendering, "_bounds", lambda end_sec, workers: [0, 3, 6, 10, 20])
    assert np.abs(render(music)[: len(whole)] - whole).max() < 2e-3


def test_every_own_instrument_has_a_voice_and_a_midi_file_its_program() -> None:
    for instrument in INSTRUMENTS.values():
        assert wind_of(instrument.id, instrument.program) == instrument.id
        for midi in (instrument.lowest_midi, instrument.highest_midi):
            tone = winds()[instrument.id].tone(midi)
            power = (tone.period.real**2).mean(), (tone.period.imag**2).mean()
            assert all(0.3 < value < 2.0 for value in power)
    assert wind_of("a plugin's saxophone", 66) == "alto-sax"
    assert wind_of("a plugin's bassoon", 71) == ""
    tune = line_of("C4/1 D4/1")
    music = perform(tune, tune.notes, instrument=INSTRUMENTS["alto-sax"])
    assert write_midi(music) == write_midi(music.with_voice(""))
