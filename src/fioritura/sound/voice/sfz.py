"""Sampled instruments in SFZ files: which sample sounds at a pitch and a velocity, read from the file's text.

Read are the headers ``control`` (``default_path``), ``global``, ``master``, ``group`` and ``region``, ``#define`` and ``#include``,
and the opcodes sample, key, lokey, hikey, pitch_keycenter, lovel, hivel, volume, tune, transpose, offset, loop_mode,
loop_start, loop_end and trigger. All others are passed over: envelopes, filters, LFOs, crossfades, round robin, key
switches (the region of the default switch, or without one, is taken), controllers. Level, attack, vibrato and slurs are the
performance's, as in the measured voices. (SFZ version 1, as its format is described in public.)
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray

from fioritura.errors import ToolError
from fioritura.sound.audio import SAMPLE_RATE

__all__ = ["Region", "Sample", "SfzInstrument", "read_sfz"]

_HEADER: Final = re.compile(r"<(\w+)>")
_OPCODE: Final = re.compile(r"(\w+)=(.*?)(?=\s+\w+=|\s*$)")
_NOTE: Final = re.compile(r"([a-gA-G])([#b]?)(-?\d+)")
_LEVELS: Final = ("control", "global", "master", "group", "region")
_STEPS: Final = {"c": 0, "d": 2, "e": 4, "f": 5, "g": 7, "a": 9, "b": 11}
_MOST_INCLUDED: Final = 16
_MOST_BYTES: Final = 4 * 1024 * 1024
_KEPT_SAMPLES: Final = 64


@dataclass(frozen=True, slots=True)
class Region:
    """A sample and where it sounds: keys and velocities, the key at which it has its own pitch, gain in dB, tuning in
    semitones, first frame, and loop in the file's frames."""

    path: Path
    keys: tuple[int, int]
    velocities: tuple[int, int]
    centre: int
    volume_db: float
    tune: float
    offset: int
    loop: tuple[int, int] | None


@dataclass(frozen=True, slots=True)
class Sample:
    """Mono audio at 48 kHz and the stretch of it that goes round."""

    audio: NDArray[np.float32]
    loop: tuple[int, int]


@dataclass(frozen=True, eq=False)
class SfzInstrument:
    """The regions of an SFZ file that sound when a key is struck."""

    path: Path
    regions: tuple[Region, ...]

    def region(self, midi: int, velocity: int) -> Region:
        """The region of a key and velocity; where there is none, the nearest."""

        def distance(region: Region) -> tuple[int, int, int]:
            return (
                _outside(midi, region.keys),
                _outside(velocity, region.velocities),
                abs(region.centre - midi),
            )

        return min(self.regions, key=distance)


@lru_cache(maxsize=4)
def read_sfz(path: Path) -> SfzInstrument:
    """The instrument in an SFZ file.

    Raises:
        ToolError: the file can't be read, or no region in it sounds.
    """
    try:
        text = _included(path, 0)
    except (OSError, RecursionError, ValueError) as error:
        raise ToolError("sfz-unreadable", path=str(path), reason=str(error)) from None
    regions = tuple(region for opcodes in _opcodes(text) if (region := _region(opcodes, path.parent)))
    if not regions:
        raise ToolError("sfz-no-regions", path=str(path))
    return SfzInstrument(path, regions)


@lru_cache(maxsize=_KEPT_SAMPLES)
def sample_of(region: Region) -> Sample:
    """A region's sample, both channels as one, resampled to 48 kHz.

    Raises:
        ToolError: the sample can't be read.
    """
    import soundfile
    import soxr

    try:
        frames, rate = soundfile.read(region.path, dtype="float32", always_2d=True)
    except (OSError, RuntimeError) as error:
        raise ToolError("sfz-unreadable", path=str(region.path), reason=str(error)) from None
    mono = frames[region.offset :].mean(axis=1)
    share = SAMPLE_RATE / rate
    audio = (soxr.resample(mono, rate, SAMPLE_RATE) if rate != SAMPLE_RATE else mono).astype(np.float32)
    audio *= np.float32(10 ** (region.volume_db / 20))
    first, last = region.loop or (0, 0)
    loop = round((first - region.offset) * share), min(len(audio) - 2, round((last - region.offset) * share))
    if not 0 <= loop[0] < loop[1]:
        loop = len(audio), len(audio)
    return Sample(audio, loop)


def _included(path: Path, depth: int) -> str:
    """The text of a file without remarks, what it includes put in its place."""
    if depth > _MOST_INCLUDED or path.stat().st_size > _MOST_BYTES:
        raise ValueError(path.name)
    lines = []
    for line in path.read_text(encoding="utf-8", errors="replace").splitlines():
        line = line.split("//")[0].strip()
        if included := re.match(r'#include\s+"(.+)"', line):
            line = _included(path.parent / included[1].replace("\\", "/"), depth + 1)
        lines.append(line)
    return "\n".join(lines)


def _opcodes(text: str) -> Iterator[dict[str, str]]:
    """The opcodes of each region, with those of the headers above it."""
    kept: dict[str, dict[str, str]] = {level: {} for level in _LEVELS}
    defined: dict[str, str] = {}
    header = ""
    for line in text.splitlines():
        if found := re.match(r"#define\s+(\$\w+)\s+(\S+)", line):
            defined[found[1]] = found[2]
            continue
        for name in sorted(defined, key=len, reverse=True):
            line = line.replace(name, defined[name])
        for piece in _HEADER.sub(r"\n<\1>\n", line).splitlines():
            if opened := _HEADER.fullmatch(piece.strip()):
                if header == "region":
                    yield _merged(kept)
                header = opened[1]
                for level in _LEVELS[_LEVELS.index(header) :] if header in _LEVELS else ():
                    kept[level] = {}
            elif header in kept:
                kept[header] |= {name: value.strip() for name, value in _OPCODE.findall(piece)}
    if header == "region":
        yield _merged(kept)


def _merged(kept: Mapping[str, Mapping[str, str]]) -> dict[str, str]:
    return {name: value for level in _LEVELS for name, value in kept[level].items()}


def _region(opcodes: Mapping[str, str], folder: Path) -> Region | None:
    """A region; None for one without a sample, or that is not struck by a key as it is."""
    switched = opcodes.get("sw_last")
    is_silent = opcodes.get("trigger", "attack") != "attack" or opcodes.get("sample", "*").startswith("*")
    if is_silent or (switched and switched != opcodes.get("sw_default", switched)):
        return None
    key = opcodes.get("key")
    keys = _key(opcodes.get("lokey", key or "0")), _key(opcodes.get("hikey", key or "127"))
    centre = _key(opcodes.get("pitch_keycenter", key or "60"))
    is_looped = opcodes.get("loop_mode", "no_loop") in ("loop_continuous", "loop_sustain") and "loop_end" in opcodes
    name = (opcodes.get("default_path", "") + opcodes["sample"]).replace("\\", "/")
    return Region(
        folder / name,
        keys,
        (_whole(opcodes, "lovel", 0), _whole(opcodes, "hivel", 127)),
        centre - _whole(opcodes, "transpose", 0),
        _number(opcodes, "volume", 0.0),
        _number(opcodes, "tune", 0.0) / 100,
        _whole(opcodes, "offset", 0),
        (_whole(opcodes, "loop_start", 0), _whole(opcodes, "loop_end", 0)) if is_looped else None,
    )


def _key(text: str) -> int:
    """A MIDI number, or a name in which C4 is 60."""
    if named := _NOTE.fullmatch(text):
        sign = {"#": 1, "b": -1}.get(named[2], 0)
        return 12 * (int(named[3]) + 1) + _STEPS[named[1].lower()] + sign
    return int(float(text)) if re.fullmatch(r"-?[\d.]+", text) else 60


def _number(opcodes: Mapping[str, str], name: str, usual: float) -> float:
    try:
        return float(opcodes.get(name, usual))
    except ValueError:
        return usual


def _whole(opcodes: Mapping[str, str], name: str, usual: int) -> int:
    return int(_number(opcodes, name, usual))


def _outside(value: int, span: tuple[int, int]) -> int:
    return max(span[0] - value, 0, value - span[1])
