"""A performance as a Standard MIDI File (format 1): one named track a part over a conductor track.

Conventions: 1680 ticks a quarter, as everywhere; the conductor holds title, tempos, metres and key signatures.
Pitched parts set the bend range by RPN 0. Notes that are bent stand on channels of their own in turn, so that a
release that still rings keeps its pitch. Drums are on channel 10 (General MIDI 1).
"""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import cycle, pairwise
from typing import TYPE_CHECKING, Final

from fioritura.errors import OptionError
from fioritura.sound.performance import BEND_RANGE, Performance, PerformedNote, PerformedPart
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER, WHOLE
from fioritura.theory.pitch import NoteName

if TYPE_CHECKING:
    import mido

__all__ = ["END_SEC", "write_midi"]

END_SEC: Final = 3.0
"""Silence kept after the last note, for releases and reverberation."""

DRUM_CHANNEL: Final = 9
BENT_CHANNELS: Final = 2
LEVEL_STEP_SEC: Final = 0.01
SHORTEST_UNIT: Final = 32
SMALL_BEND: Final = 0.5
"""Semitones up to which a bend (vibrato) may stay on the part's first channel."""

_PROGRAM, _CONTROL, _BEND, _OFF, _ON = range(5)
"""Order of messages at the same tick: set up, let go, then sound."""

Event = tuple[int, int, "mido.Message"]


def write_midi(performance: Performance, end_sec: float = END_SEC) -> bytes:
    """The file's bytes. The last event comes `end_sec` after the last note is let go.

    Raises:
        OptionError: more parts than MIDI has channels for.
    """
    import mido

    file = mido.MidiFile(type=1, ticks_per_beat=QUARTER, charset="utf-8")
    last_tick = round(performance.clock.ticks(performance.duration_sec + end_sec))
    file.tracks.append(_conductor(performance, last_tick))
    channels = iter([channel for channel in range(16) if channel != DRUM_CHANNEL])
    for part in performance.parts:
        file.tracks.append(_track(performance, part, channels, last_tick))
    buffer = io.BytesIO()
    file.save(file=buffer)
    return buffer.getvalue()


def _track(performance: Performance, part: PerformedPart, channels: Iterator[int], last_tick: int) -> mido.MidiTrack:
    import mido

    placed = [(note, _is_bent(note)) for note in part.notes]
    main = DRUM_CHANNEL if part.is_drums else _next_channel(channels)
    bent = [_next_channel(channels) for _ in range(BENT_CHANNELS)] if any(is_bent for _, is_bent in placed) else []
    turns = cycle(bent)
    events: list[Event] = []
    for channel in (main, *bent):
        events += _set_up(part, channel)
    by_channel: dict[int, list[PerformedNote]] = {main: [], **{channel: [] for channel in bent}}
    for note, is_bent in placed:
        by_channel[next(turns) if is_bent else main].append(note)
    for channel, notes in by_channel.items():
        events += _note_events(performance, notes, channel)
    track = mido.MidiTrack([mido.MetaMessage("track_name", name=part.name)])
    return _closed(track, events, last_tick)


def _is_bent(note: PerformedNote) -> bool:
    return bool(note.level) or any(abs(point.value) > SMALL_BEND for point in note.bend)


def _next_channel(channels: Iterator[int]) -> int:
    try:
        return next(channels)
    except StopIteration:
        raise OptionError("midi-channels-out") from None


def _set_up(part: PerformedPart, channel: int) -> Iterator[Event]:
    import mido

    yield 0, _PROGRAM, mido.Message("program_change", channel=channel, program=part.program - 1)
    controls = [(7, part.volume), (10, part.pan), (11, 127), (91, part.reverb), (93, 0)]
    if not part.is_drums:
        controls += [(101, 0), (100, 0), (6, int(BEND_RANGE)), (38, 0), (101, 127), (100, 127)]
    for control, value in controls:
        yield 0, _CONTROL, mido.Message("control_change", channel=channel, control=control, value=value)


def _note_events(performance: Performance, notes: list[PerformedNote], channel: int) -> Iterator[Event]:
    """On, off, bend and expression of the notes of one channel; a pitch that sounds again is let go before."""
    import mido

    def tick(seconds: float) -> int:
        return round(performance.clock.ticks(seconds))

    again_at: dict[int, int] = {}
    for note in reversed(notes):
        on = tick(note.onset_sec)
        off = max(on + 1, min(tick(note.end_sec), again_at.get(note.midi, tick(note.end_sec))))
        again_at[note.midi] = on
        yield on, _ON, mido.Message("note_on", channel=channel, note=note.midi, velocity=note.velocity)
        yield off, _OFF, mido.Message("note_off", channel=channel, note=note.midi, velocity=64)
    bend, level = 0, 127
    for note in notes:
        end = tick(note.end_sec)
        points = [(note.onset_sec, 0.0)] if not note.bend or note.bend[0].after_sec > 0 else []
        points += [(note.onset_sec + point.after_sec, point.value) for point in note.bend]
        for seconds, semitones in points:
            wanted = max(-8192, min(8191, round(8192 * semitones / BEND_RANGE)))
            if wanted != bend:
                bend = wanted
                yield min(tick(seconds), end), _BEND, mido.Message("pitchwheel", channel=channel, pitch=bend)
        for seconds, share in _level_steps(note):
            wanted = round(127 * share)
            if wanted != level:
                level = wanted
                yield (
                    min(tick(seconds), end),
                    _BEND,
                    mido.Message("control_change", channel=channel, control=11, value=level),
                )


def _level_steps(note: PerformedNote) -> Iterator[tuple[float, float]]:
    """The loudness curve as (second, share) steps of 10 ms; a note without one starts at full level."""
    yield note.onset_sec, note.level[0].value if note.level else 1.0
    for left, right in pairwise(note.level):
        length = right.after_sec - left.after_sec
        steps = max(1, round(length / LEVEL_STEP_SEC))
        for step in range(1, steps + 1):
            share = step / steps
            value = left.value + share * (right.value - left.value)
            yield note.onset_sec + left.after_sec + share * length, value


def _conductor(performance: Performance, last_tick: int) -> mido.MidiTrack:
    import mido

    track = mido.MidiTrack([mido.MetaMessage("track_name", name=performance.title)])
    events: list[Event] = []
    for tempo in performance.clock.tempos:
        message = mido.MetaMessage("set_tempo", tempo=mido.bpm2tempo(tempo.quarters_per_minute))
        events.append((max(0, tempo.onset_ticks), _PROGRAM, message))
    signature: tuple[int, int] | None = None
    key: Key | None = None
    for bar in performance.bars:
        metre = bar.metre
        wanted = (metre.beats, metre.unit)
        if bar.number == 0 and bar.duration_ticks % (WHOLE // SHORTEST_UNIT) == 0:
            beats = Fraction(bar.duration_ticks, WHOLE).limit_denominator(SHORTEST_UNIT)
            unit = max(metre.unit, beats.denominator)
            wanted = (int(beats * unit), unit)
        if wanted != signature:
            signature = wanted
            message = mido.MetaMessage("time_signature", numerator=wanted[0], denominator=wanted[1])
            events.append((bar.start_ticks, _CONTROL, message))
        if bar.key != key:
            key = bar.key
            events.append((bar.start_ticks, _CONTROL, mido.MetaMessage("key_signature", key=_key_name(key))))
    return _closed(track, events, last_tick)


def _key_name(key: Key) -> str:
    """The MIDI key with this signature: its minor where the mode's third is minor, else its major."""
    if key.is_minor:
        return f"{NoteName.from_fifths(key.fifths + 3)}m"
    return str(NoteName.from_fifths(key.fifths))


def _closed(track: mido.MidiTrack, events: Iterable[Event], last_tick: int) -> mido.MidiTrack:
    """`track` with the events in order as delta times, and its end at `last_tick`."""
    import mido

    now = 0
    for tick, _, message in sorted(events, key=lambda event: event[:2]):
        message.time = tick - now
        track.append(message)
        now = tick
    track.append(mido.MetaMessage("end_of_track", time=max(0, last_tick - now)))
    return track
