"""Sampled instruments: what is read of an SFZ file, and that its samples sound at the pitches of a performance."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import soundfile

from fioritura.errors import ToolError
from fioritura.sound.performance import CurvePoint, PerformedNote
from fioritura.sound.voice.sfz import read_sfz
from tests.test_synth import cents, frequency
from tests.voice_sound import Signal, levels_db, sung, within

RATE = 32_000


def instrument(folder: Path, text: str, *midis: int) -> Path:
    """An SFZ file with samples of sawtooth-like tones, 0.6 s long, in a folder beside it."""
    (folder / "tones").mkdir(exist_ok=True)
    for midi in midis:
        turns = 2 * np.pi * 440 * 2 ** ((midi - 69) / 12) * np.arange(round(0.6 * RATE)) / RATE
        tone = sum(np.sin(n * turns) / n for n in range(1, 6)) * np.minimum(1.0, np.arange(len(turns)) / 300)
        soundfile.write(folder / "tones" / f"{midi}.wav", 0.2 * tone, RATE)
    (folder / "reed.sfz").write_text(text, encoding="utf-8")
    return folder / "reed.sfz"


TEXT = """
// a remark
#define $low 48
<control> default_path=tones\\
<global> volume=-3
<group> lovel=0 hivel=127 trigger=attack
<region> sample=60.wav lokey=$low hikey=62 pitch_keycenter=c4
<region> sample=67.wav lokey=63 hikey=80 pitch_keycenter=67 tune=0 loop_mode=loop_continuous loop_start=6400 loop_end=12800
<group> trigger=release
<region> sample=60.wav key=60
"""


def hertz(midi: float) -> float:
    return float(440 * 2 ** ((midi - 69) / 12))


def heard(audio: Signal, midi: float, start: float, end: float) -> float:
    piece = np.repeat(within(audio, start, end)[:, None], 2, axis=1).astype(np.float32)
    return cents(frequency(piece, hertz(midi)), midi)


def test_regions_are_read_with_what_stands_above_them(tmp_path: Path) -> None:
    read = read_sfz(instrument(tmp_path, TEXT, 60, 67))
    low, high = read.regions
    assert (low.path, low.keys, low.centre, low.volume_db) == (tmp_path / "tones/60.wav", (48, 62), 60, -3.0)
    assert (high.keys, high.centre, high.loop) == ((63, 80), 67, (6400, 12800))
    assert read.region(55, 90) == low
    assert read.region(90, 90) == high, "the nearest where there is none"


@pytest.mark.parametrize(("midi", "bend"), [(60, 0.0), (55, 0.0), (62, 0.6), (67, 0.0), (72, -2.0)])
def test_samples_sound_at_the_pitch_of_the_performance_however_long_the_note(
    midi: int, bend: float, tmp_path: Path
) -> None:
    path = instrument(tmp_path, TEXT, 60, 67)
    audio = sung(str(path), PerformedNote(0.0, 2.5, midi, 90, bend=(CurvePoint(0.0, bend),)), reverb=0)
    assert abs(heard(audio, midi + bend, 0.15, 0.45)) <= 8
    assert levels_db(within(audio, 0.2, 2.4)).min() > levels_db(within(audio, 0.2, 2.4)).max() - 6


def test_a_slurred_sample_is_entered_behind_its_attack(tmp_path: Path) -> None:
    path = instrument(tmp_path, TEXT, 60, 67)
    first = PerformedNote(0.0, 0.4, 60, 90)
    dips = {}
    for joint in ("slur", "tongue"):
        gap = 0.0345 if joint == "tongue" else 0.0
        notes = (
            PerformedNote(0.0, 0.4 - gap, 60, 90, is_stopped=gap > 0),
            PerformedNote(0.4, 0.4, 62, 90, joint=joint),
        )
        audio = sung(str(path), *notes, reverb=0)
        dips[joint] = np.median(levels_db(within(audio, 0.2, 0.35))) - levels_db(within(audio, 0.33, 0.47)).min()
    assert first.end_sec == 0.4
    assert dips["slur"] < 6 < dips["tongue"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("<region> sample=gone.wav key=60", r"gone\.wav"),
        ("<region> sample=*sine key=60", "no sample"),
        ("", "no sample"),
    ],
)
def test_what_cannot_sound_is_refused_by_name(text: str, said: str, tmp_path: Path) -> None:
    path = instrument(tmp_path, text)
    with pytest.raises(ToolError, match=said):
        sung(str(path), PerformedNote(0.0, 0.3, 60, 90))
    with pytest.raises(ToolError, match="nowhere"):
        read_sfz(tmp_path / "nowhere.sfz")
