"""The rendered band: onsets, levels, silence, stuck notes and clicks, measured on the audio.

Targets: the drummer's ratio of Friberg & Sundström 2002, the soloist's delay of the jazz solo annotations,
EBU R 128 loudness and true peak. Tolerances are stated beside each check.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from statistics import median

import numpy as np
import pytest

from fioritura.accompany.feels import FEELS
from fioritura.accompany.form import Chorus
from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.calibrate import calibrated
from fioritura.sound.loudness import integrated_loudness, true_peak_db
from fioritura.sound.master import master
from fioritura.sound.performance import Performance
from fioritura.sound.render import render
from fioritura.sound.session import Session, played, session_form
from fioritura.sound.swing import drummer_ratio, soloist_delay_sec
from fioritura.tune import Mark
from tests.charts import MINOR_FOURTHS, chart

RIDE = 51


def onsets_near(audio: Audio, expected: list[float], before: float = 0.04, after: float = 0.06) -> list[float]:
    """For each expected onset the time at which the envelope, after its dip, passes a third of its rise."""
    envelope = np.sqrt(np.convolve((audio**2).mean(axis=1), np.ones(96) / 96, "same"))
    found = []
    for onset in expected:
        start = max(0, round((onset - before) * SAMPLE_RATE))
        stretch = envelope[start : round((onset + after) * SAMPLE_RATE)]
        dip = int(np.argmin(stretch[: round((before + 0.02) * SAMPLE_RATE)]))
        floor, top = stretch[dip], stretch[dip:].max()
        found.append((start + dip + int(np.argmax(stretch[dip:] >= floor + (top - floor) / 3))) / SAMPLE_RATE)
    return found


@cache
def swing(tempo: float) -> tuple[Performance, float]:
    """Staccato eighths of one pitch over a swinging band, calibrated; and when the first chorus begins."""
    tune = chart(MINOR_FOURTHS, key="E minor", melody="G4 " * 8, tempo=tempo)
    line = tuple(replace(note, marks=(Mark.STACCATO,)) for note in tune.notes)
    session = Session(tune, (Chorus("head", line),), INSTRUMENTS["alto-sax"], FEELS["swing"], ending="straight")
    performance = played(session)
    return calibrated(performance), performance.clock.seconds(session_form(session).count_in_ticks)


def ratios(onsets: list[float], beat: float, start: float) -> list[float]:
    """Long to short for every beat that has a note in its middle and one on the next beat."""
    found = []
    for first, middle, last in zip(onsets, onsets[1:], onsets[2:], strict=False):
        on_beat = abs((first - start) / beat - round((first - start) / beat)) < 0.25
        if on_beat and 0.8 < (last - first) / beat < 1.2:
            found.append((middle - first) / (last - middle))
    return found


@pytest.mark.parametrize("tempo", [90, 120, 160, 200, 220])
def test_the_soloist_is_heard_with_the_ride_off_the_beat_and_late_on_it(tempo: float) -> None:
    # Friberg & Sundström 2002: off-beats together. Tolerances: 12 ms off the beat, 8 ms of delay on it, both below the
    # 22 ms at which order is heard.
    performance, start = swing(tempo)
    melody, drums = performance.only(["melody"]), performance.only(["drums"])
    beat, delay = 60 / tempo, soloist_delay_sec(tempo)
    heard = onsets_near(render(melody), [note.onset_sec for note in melody.parts[0].notes])
    late = [onset - start - round((onset - start) / beat) * beat for onset in heard[::2]]
    assert median(late) == pytest.approx(delay, abs=0.008)
    strokes = tuple(note for note in drums.parts[0].notes if note.midi == RIDE)
    ride = onsets_near(
        render(replace(drums, parts=(replace(drums.parts[0], notes=strokes),))), [n.onset_sec for n in strokes]
    )
    pairs = [(onset, min(ride, key=lambda stroke: abs(stroke - onset))) for onset in heard[1::2]]
    apart = [onset - stroke for onset, stroke in pairs if abs(onset - stroke) < 0.06]
    assert len(apart) >= 12
    assert abs(median(apart)) <= 0.012


@pytest.mark.parametrize("tempo", [120, 160, 200, 240])
def test_the_ride_is_heard_with_the_drummers_ratio(tempo: float) -> None:
    # Tolerance: 6 % of the ratio.
    performance, start = swing(tempo)
    drums = performance.only(["drums"])
    ride = replace(drums.parts[0], notes=tuple(note for note in drums.parts[0].notes if note.midi == RIDE))
    heard = onsets_near(render(replace(drums, parts=(ride,))), [note.onset_sec for note in ride.notes])
    assert median(ratios(heard, 60 / tempo, start)) == pytest.approx(drummer_ratio(tempo), rel=0.06)


@pytest.mark.slow
@pytest.mark.parametrize("tempo", [72, 132, 220])
@pytest.mark.parametrize("feel", ["swing", "bossa", "ballad", "funk", "soul", "shuffle"])
def test_mixes_are_balanced_unclipped_and_alive(feel: str, tempo: float) -> None:
    tune = chart(MINOR_FOURTHS, key="E minor", melody="E4 G4 B4 G4 A4 . B4 .", tempo=tempo)
    session = Session(tune, (Chorus("head", tune.notes),), INSTRUMENTS["alto-sax"], FEELS[feel], tempo)
    performance = calibrated(played(session))
    raw = render(performance)
    assert np.abs(raw).max() < 1.0
    mixed = master(raw)
    assert integrated_loudness(mixed) == pytest.approx(-16.0, abs=0.5)
    assert true_peak_db(mixed) <= -1.0
    tenths = np.sqrt((mixed[: len(mixed) // 4800 * 4800] ** 2).mean(axis=1).reshape(-1, 4800).mean(axis=1))
    start = performance.clock.seconds(session_form(session).count_in_ticks)
    playing = tenths[round(10 * start) : round(10 * performance.duration_sec) - 5]
    assert (playing > 10 ** (-50 / 20)).all(), "no silence while the band plays"
    assert tenths[-2] < 10 ** (-60 / 20), "no stuck note after the end"
    left, right = (mixed**2).sum(axis=0)
    assert abs(10 * np.log10(left / right)) < 1.5, "the middle is in the middle"
    stems = {part.name: integrated_loudness(render(performance.only([part.name]))) for part in performance.parts}
    for part in performance.parts:
        if part.name != "Click":
            assert stems[part.name] - stems["Melody"] == pytest.approx(part.level_lu, abs=3.5)


def test_loop_points_do_not_click() -> None:
    # A click is a step between samples far above those around it; the joints of a loop have none.
    tune = chart("Dm7 | G7", melody="D4 F4 A4 F4 . . . .", tempo=150)
    line = (Chorus("head", tune.notes),) * 6
    session = Session(tune, line, INSTRUMENTS["alto-sax"], FEELS["bossa"], holds_last=False, exact=True)
    performance = played(session)
    bass = render(performance.only(["bass", "melody"])).mean(axis=1)
    steps = np.abs(np.diff(bass, 2))
    bar = 4 * 60 / 150
    joints = [bar + 2 * bar * n for n in range(1, 6)]
    around = [steps[round((at - 0.01) * SAMPLE_RATE) : round((at + 0.01) * SAMPLE_RATE)].max() for at in joints]
    inside = [
        steps[round((at + bar - 0.01) * SAMPLE_RATE) : round((at + bar + 0.01) * SAMPLE_RATE)].max() for at in joints
    ]
    assert max(around) <= 3 * max(inside)
