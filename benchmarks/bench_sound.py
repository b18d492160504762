"""Speed and memory of the sound chain.

Ceilings: a 3-minute four-part mix in MP3 at least 60 times faster than real time on two cores, and within 1.3 times
the raw synth plus the raw encoder of the same run; under 600 MB of memory, however long the music is.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from time import perf_counter, sleep

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from fioritura.accompany.feels import FEELS
from fioritura.accompany.form import Chorus
from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound.audio import SAMPLE_RATE
from fioritura.sound.calibrate import calibrated
from fioritura.sound.encode import encode_audio
from fioritura.sound.loudness import LoudnessMeter
from fioritura.sound.midi_writer import write_midi
from fioritura.sound.mixdown import write_audio
from fioritura.sound.performance import Performance
from fioritura.sound.session import Session, played
from fioritura.sound.synth import synth_named
from tests.charts import MINOR_FOURTHS, chart

ROUNDS = 3


def mix(minutes: float) -> Performance:
    """A swing session of about so many minutes: melody, bass, chords, drums."""
    tune = chart(MINOR_FOURTHS, key="E minor", melody="E4 G4 B4 G4 E4 G4 A4 B4", tempo=160)
    chorus_sec = tune.duration_ticks / 1680 * 60 / 160
    choruses = (Chorus("head", tune.notes),) * max(1, round(60 * minutes / chorus_sec) - 1)
    return played(Session(tune, choruses, INSTRUMENTS["tenor-sax"], FEELS["swing"]))


def bench_three_minutes_to_mp3_against_real_time_and_raw_tools(tmp_path: Path) -> None:
    music, synth = mix(3.0), synth_named()
    ready = calibrated(music, synth)
    whole, raw = [], []
    for _ in range(ROUNDS):
        start = perf_counter()
        audio = synth.render(write_midi(ready))
        encode_audio(audio, "mp3")
        raw.append(perf_counter() - start)
        start = perf_counter()
        write_audio(calibrated(music, synth), tmp_path / "mix.mp3", synth=synth)
        whole.append(perf_counter() - start)
    fastest = min(whole)
    print(
        f"\nwhole {fastest:.2f} s, raw {min(raw):.2f} s: {music.duration_sec / fastest:.0f} times real time; {fastest / min(raw):.2f} of raw synth and encoder"
    )
    assert fastest <= 1.3 * min(raw)
    assert music.duration_sec / fastest >= 60


def bench_performing_a_session(benchmark: BenchmarkFixture) -> None:
    benchmark.pedantic(mix, (3.0,), rounds=ROUNDS, warmup_rounds=1)
    assert benchmark.stats["median"] < 1.0


def bench_loudness_of_a_minute(benchmark: BenchmarkFixture) -> None:
    audio = np.random.default_rng(0).standard_normal((60 * SAMPLE_RATE, 2)).astype(np.float32)
    benchmark.pedantic(lambda: LoudnessMeter().add(audio), rounds=ROUNDS)
    assert benchmark.stats["median"] < 0.5


@pytest.mark.parametrize("minutes", [3, 60])
@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="reads Linux's /proc")
def bench_memory_stays_bounded(minutes: int, tmp_path: Path) -> None:
    code = (
        "import sys; sys.path.insert(0, '.'); from pathlib import Path\n"
        "from benchmarks.bench_sound import mix\n"
        "from fioritura.sound.mixdown import write_audio\n"
        f"write_audio(mix({minutes}), Path({str(tmp_path / 'long.mp3')!r}))"
    )
    process = subprocess.Popen([sys.executable, "-c", code], cwd=Path(__file__).parent.parent)
    peak = 0.0
    while process.poll() is None:
        peak = max(peak, resident_mb(process.pid))
        sleep(0.02)
    assert process.returncode == 0
    print(f"\n{minutes} minutes: {peak:.0f} MB")
    assert 50 < peak < 600


def resident_mb(pid: int) -> float:
    """Resident memory of a process and its children, in megabytes."""
    total = 0
    try:
        status = Path(f"/proc/{pid}/status").read_text(encoding="ascii")
        total = sum(int(line.split()[1]) for line in status.splitlines() if line.startswith("VmRSS"))
        children = Path(f"/proc/{pid}/task").glob("*/children")
        pids = {int(child) for path in children for child in path.read_text(encoding="ascii").split()}
    except OSError:
        return total / 1024
    return total / 1024 + sum(resident_mb(child) for child in pids)
