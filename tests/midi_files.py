"""MIDI files for reader tests, made with mido: times in quarter notes, so that no test counts ticks."""

from __future__ import annotations

import io
import random
from collections.abc import Iterable

import mido

from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune

TICKS = 480

Event = tuple[float, mido.Message | mido.MetaMessage]


def sounded(line: Iterable[tuple[float, float, int]], channel: int = 0) -> list[Event]:
    """Notes (start, end, MIDI number) as events."""
    events: list[Event] = []
    for start, end, midi in line:
        events.append((end, mido.Message("note_off", note=midi, channel=channel)))
        events.append((start, mido.Message("note_on", note=midi, velocity=80, channel=channel)))
    return events


def melody(*notes: tuple[int, float], gate: float = 1.0, start: float = 0.0) -> list[tuple[float, float, int]]:
    """One note after the other from (MIDI number, quarters); a number 0 is a rest."""
    line, place = [], start
    for midi, length in notes:
        if midi:
            line.append((place, place + gate * length, midi))
        place += length
    return line


def metre(beats: int, unit: int, place: float = 0.0) -> Event:
    return place, mido.MetaMessage("time_signature", numerator=beats, denominator=unit)


def meta(kind: str, place: float = 0.0, **values: str | float) -> Event:
    return place, mido.MetaMessage(kind, **values)


def midi_file(*tracks: list[Event], kind: int = 1, ticks: int = TICKS) -> bytes:
    """A file of tracks; of two events at one time, note-offs go first."""
    file = mido.MidiFile(type=kind, ticks_per_beat=ticks)
    for events in tracks:
        track = mido.MidiTrack()
        last = 0
        for place, message in sorted(events, key=lambda event: (round(event[0] * ticks), event[1].type == "note_on")):
            now = round(place * ticks)
            track.append(message.copy(time=now - last))
            last = now
        file.tracks.append(track)
    buffer = io.BytesIO()
    file.save(file=buffer)
    return buffer.getvalue()


def played(tune: Tune, seed: int, spread: float, gate: tuple[float, float], long_share: float = 0.5) -> bytes:
    """A tune as someone plays it: onsets off by a normal error (`spread` in quarters), notes shortened at random
    between the two shares of `gate`, and the first of two eighths taking `long_share` of the beat."""
    dice = random.Random(seed)
    line = []
    for note in tune.notes:
        start, end = (swung(ticks / QUARTER, long_share) for ticks in (note.onset_ticks, note.end_ticks))
        late = max(0.0, start + dice.gauss(0, spread))
        line.append((late, max(late + 0.06, start + (end - start) * dice.uniform(*gate)), note.pitch.midi))
    signature = tune.metre
    return midi_file([metre(signature.beats, signature.unit), *sounded(line)])


def swung(place: float, long_share: float) -> float:
    whole, part = divmod(place, 1)
    if part <= 0.5:
        return whole + part * 2 * long_share
    return whole + long_share + (part - 0.5) * 2 * (1 - long_share)
