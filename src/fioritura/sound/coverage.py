"""Which keys of a soundfont's instruments sound at all, read from its tables (SoundFont 2.04, chapter 7).

Some soundfonts leave out a key in the middle of an instrument. Such a key is played by its neighbour, bent.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import BinaryIO, Final

from fioritura.errors import ToolError
from fioritura.sound.performance import BEND_RANGE, CurvePoint, PerformedNote, PerformedPart

__all__ = ["ALL_KEYS", "mended", "sounding_keys"]

ALL_KEYS: Final = frozenset(range(128))

_INSTRUMENT, _KEY_RANGE, _VELOCITY_RANGE, _SAMPLE = 41, 43, 44, 53
_RECORDS: Final = {
    b"phdr": "<20x3H12x",
    b"pbag": "<HH",
    b"pgen": "<HH",
    b"inst": "<20xH",
    b"ibag": "<HH",
    b"igen": "<HH",
}
"""The integers of each table's records: preset, bank, first bag; first generator; generator, amount; first bag."""

_USUAL_VELOCITIES: Final = (40, 80, 110)

Record = tuple[int, ...]
Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class _Zone:
    """What a zone of a preset leads to (an instrument) or of an instrument (a sample), and when it sounds."""

    target: int
    keys: Span
    velocities: Span

    def sounds(self, key: int, velocity: int) -> bool:
        return self.keys[0] <= key <= self.keys[1] and self.velocities[0] <= velocity <= self.velocities[1]


@lru_cache(maxsize=64)
def sounding_keys(path: Path, program: int, bank: int = 0) -> frozenset[int]:
    """The MIDI keys that a program (from 1) has samples for at usual velocities; all where the tables lack it.

    Raises:
        ToolError: the file can't be read as a SoundFont 2 file.
    """
    tables = _tables(path)
    presets = tables[b"phdr"]
    number = next((n for n, head in enumerate(presets[:-1]) if (head[0], head[1]) == (program - 1, bank)), None)
    if number is None:
        return ALL_KEYS
    zones = _zones(tables[b"pbag"], tables[b"pgen"], presets[number][2], presets[number + 1][2], _INSTRUMENT)
    reached = [(zone, list(_instrument_zones(tables, zone.target))) for zone in zones]

    def sounds(key: int, velocity: int) -> bool:
        return any(
            zone.sounds(key, velocity) and any(inner.sounds(key, velocity) for inner in inners)
            for zone, inners in reached
        )

    return frozenset(key for key in ALL_KEYS if all(sounds(key, velocity) for velocity in _USUAL_VELOCITIES))


def mended(part: PerformedPart, keys: frozenset[int]) -> PerformedPart:
    """The part with every note on a key outside `keys` played by the nearest key inside, bent to its pitch."""
    if not keys or all(note.midi in keys for note in part.notes):
        return part
    return replace(part, notes=tuple(_mended_note(note, keys) for note in part.notes))


def _mended_note(note: PerformedNote, keys: frozenset[int]) -> PerformedNote:
    if note.midi in keys:
        return note
    key = min(keys, key=lambda other: (abs(other - note.midi), other))
    offset = note.midi - key
    if abs(offset) > BEND_RANGE / 2:
        return note
    curve = note.bend if note.bend and note.bend[0].after_sec == 0 else (CurvePoint(0.0, 0.0), *note.bend)
    return replace(note, midi=key, bend=tuple(replace(point, value=point.value + offset) for point in curve))


def _instrument_zones(tables: dict[bytes, list[Record]], number: int) -> Iterator[_Zone]:
    heads = tables[b"inst"]
    return _zones(tables[b"ibag"], tables[b"igen"], heads[number][0], heads[number + 1][0], _SAMPLE)


def _zones(
    bags: Sequence[Record], generators: Sequence[Record], first: int, last: int, target: int
) -> Iterator[_Zone]:
    """The zones between two bags; one without a target at the start is global and limits the others' defaults."""
    keys, velocities = (0, 127), (0, 127)
    for bag in range(first, last):
        own = {record[0]: record[1] for record in generators[bags[bag][0] : bags[bag + 1][0]]}
        zone_keys = _span(own[_KEY_RANGE]) if _KEY_RANGE in own else keys
        zone_velocities = _span(own[_VELOCITY_RANGE]) if _VELOCITY_RANGE in own else velocities
        if target in own:
            yield _Zone(own[target], zone_keys, zone_velocities)
        elif bag == first:
            keys, velocities = zone_keys, zone_velocities


def _span(amount: int) -> Span:
    return amount & 0xFF, amount >> 8


@lru_cache(maxsize=4)
def _tables(path: Path) -> dict[bytes, list[Record]]:
    """The records of the ``pdta`` list by table."""
    try:
        with path.open("rb") as file:
            data = _preset_data(file)
        tables: dict[bytes, list[Record]] = {}
        for name, body in _chunks(data):
            if name in _RECORDS:
                size = struct.calcsize(_RECORDS[name])
                tables[name] = list(struct.iter_unpack(_RECORDS[name], body[: len(body) // size * size]))
    except (OSError, struct.error) as error:
        raise ToolError("soundfont-unreadable", path=str(path), reason=str(error)) from None
    if set(tables) != set(_RECORDS):
        raise ToolError("soundfont-incomplete", path=str(path))
    return tables


def _preset_data(file: BinaryIO) -> bytes:
    """The body of the ``pdta`` list, found without reading the samples."""
    file.seek(12)
    while head := file.read(8):
        name, size = struct.unpack("<4sI", head)
        kind = file.read(4)
        if name == b"LIST" and kind == b"pdta":
            return file.read(size - 4)
        file.seek(size - 4 + size % 2, 1)
    return b""


def _chunks(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    place = 0
    while place + 8 <= len(data):
        name, size = struct.unpack("<4sI", data[place : place + 8])
        yield name, data[place + 8 : place + 8 + size]
        place += 8 + size + size % 2
