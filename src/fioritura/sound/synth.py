"""MIDI to audio behind a small interface: the built-in synth, or the fluidsynth program where it is installed.

Every synth runs as a program of its own that takes MIDI and gives WAV, so that several run side by side and none can
take the caller down.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import wave
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from typing import IO, Final, Protocol

import numpy as np

from fioritura.errors import OptionError, ToolError
from fioritura.sound.audio import SAMPLE_RATE, Audio
from fioritura.sound.coverage import sounding_keys
from fioritura.sound.soundfont import Soundfont, find_soundfont

__all__ = ["SAMPLE_RATE", "Audio", "BuiltInSynth", "FluidsynthProgram", "Synth", "synth_named"]

_BUILT_IN: Final = (
    "import sys;"
    "sys.path.append(sys.argv[1]);"
    "import midirenderer;"
    "font = open(sys.argv[2], 'rb').read();"
    "sys.stdout.buffer.write(midirenderer.render_wave_from(font, sys.stdin.buffer.read()))"
)
"""What the synth's own interpreter runs; it starts twice as fast where it looks for nothing but the synth."""

_TIMEOUT_SEC: Final = 600


class Synth(Protocol):
    """Whatever turns a MIDI file into audio."""

    def render(self, midi: bytes) -> Audio:
        """The audio of a MIDI file, from its first tick to its last.

        Raises:
            ToolError: the synth is missing or failed.
        """
        ...

    def keys(self, program: int) -> frozenset[int]:
        """The MIDI keys on which a General MIDI program (from 1) sounds."""
        ...


@dataclass(frozen=True, slots=True)
class BuiltInSynth:
    """The synth that is installed with this package."""

    soundfont: Soundfont

    def render(self, midi: bytes) -> Audio:
        """See `Synth.render`."""
        command = [sys.executable, "-I", "-S", "-c", _BUILT_IN, _home_of_built_in(), str(self.soundfont.plain_path)]
        with tempfile.TemporaryFile(prefix="fioritura-") as file:
            _run(command, midi, file, "The built-in synth")
            return _from_wave(file)

    def keys(self, program: int) -> frozenset[int]:
        """See `Synth.keys`."""
        return sounding_keys(self.soundfont.plain_path, program)


@dataclass(frozen=True, slots=True)
class FluidsynthProgram:
    """The fluidsynth program, version 2 and later."""

    soundfont: Soundfont

    def render(self, midi: bytes) -> Audio:
        """See `Synth.render`."""
        program = shutil.which("fluidsynth")
        if program is None:
            raise ToolError("fluidsynth-missing")
        with tempfile.TemporaryDirectory(prefix="fioritura-") as folder:
            source, target = Path(folder, "in.mid"), Path(folder, "out.wav")
            source.write_bytes(midi)
            options = ["-q", "-n", "-i", "-g", "0.5", "-r", str(SAMPLE_RATE), "-T", "wav", "-F", str(target)]
            command = [program, *options, str(self.soundfont.plain_path), str(source)]
            _run(command, b"", subprocess.DEVNULL, "fluidsynth")
            with target.open("rb") as file:
                return _from_wave(file)

    def keys(self, program: int) -> frozenset[int]:
        """See `Synth.keys`."""
        return sounding_keys(self.soundfont.plain_path, program)


def synth_named(name: str | None = None, soundfont: Path | None = None) -> Synth:
    """A synth by name, with the chosen or the found soundfont.

    None takes the built-in synth, or fluidsynth where the machine has no built-in one.

    Raises:
        OptionError: there is no synth of that name.
        ToolError: the synth is not installed, or there is no soundfont, or it can't be read.
    """
    if name is None:
        name = "built-in" if _has_built_in() or not shutil.which("fluidsynth") else "fluidsynth"
    match name:
        case "built-in":
            if not _has_built_in():
                raise ToolError("synth-not-installed")
            return BuiltInSynth(find_soundfont(soundfont))
        case "fluidsynth":
            return FluidsynthProgram(find_soundfont(soundfont))
    raise OptionError("no-synth", given=name, known=("built-in", "fluidsynth"))


def _has_built_in() -> bool:
    return find_spec("midirenderer") is not None


def _home_of_built_in() -> str:
    """The folder from which the built-in synth is imported."""
    spec = find_spec("midirenderer")
    if spec is None or spec.origin is None:
        raise ToolError("synth-gone")
    return str(Path(spec.origin).parents[1 if spec.submodule_search_locations else 0])


def _run(command: Sequence[str], given: bytes, output: IO[bytes] | int, name: str) -> None:
    """Run a synth's program with `given` as its input."""
    try:
        done = subprocess.run(
            command, input=given, stdout=output, stderr=subprocess.PIPE, timeout=_TIMEOUT_SEC, check=False
        )
    except (OSError, subprocess.TimeoutExpired) as error:
        raise ToolError("synth-did-not-run", name=name, reason=str(error)) from None
    if done.returncode != 0:
        reason = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise ToolError("synth-failed", name=name, reason=reason[-1] if reason else str(done.returncode))


def _from_wave(source: IO[bytes]) -> Audio:
    """A 16-bit stereo WAV file, from its first byte on, as audio."""
    source.seek(0)
    try:
        with wave.open(source, "rb") as file:
            if (file.getnchannels(), file.getsampwidth(), file.getframerate()) != (2, 2, SAMPLE_RATE):
                raise ToolError("synth-odd-audio")
            samples = np.frombuffer(file.readframes(file.getnframes()), dtype="<i2")
    except (wave.Error, EOFError) as error:
        raise ToolError("synth-no-wave", reason=str(error)) from None
    audio = samples.astype(np.float32)
    audio /= 32768
    return audio.reshape(-1, 2)
