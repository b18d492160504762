"""The MIDI file of a performance, as mido and pretty_midi read it; numbers from General MIDI 1 and RPN 0."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import Any

import mido
import pretty_midi
import pytest

from fioritura.accompany.feels import FEELS
from fioritura.accompany.form import Chorus
from fioritura.errors import OptionError
from fioritura.players.instruments import INSTRUMENTS
from fioritura.sound.midi_writer import END_SEC, write_midi
from fioritura.sound.perform import perform
from fioritura.sound.performance import BEND_RANGE, Performance
from fioritura.sound.session import Session, played
from fioritura.theory.key import Key, Mode
from fioritura.theory.metre import QUARTER
from fioritura.tune import Mark, Tempo
from tests.charts import BLUES, chart
from tests.tunes import line_of

TENOR = INSTRUMENTS["tenor-sax"]


def band(**changes: Any) -> Performance:
    tune = chart(BLUES, key="F major", melody="F4 A4 C5 A4 . C5 Eb5 .", tempo=150)
    options = {"tune": tune, "choruses": (Chorus("head", tune.notes),), "instrument": TENOR, "feel": FEELS["swing"]}
    return played(Session(**{**options, **changes}))


def mido_notes(data: bytes) -> dict[str, list[tuple[float, float, int, int]]]:
    """Track name to (onset, end, number, velocity), in seconds, by mido's own tempo arithmetic."""
    file = mido.MidiFile(file=io.BytesIO(data))
    tempos = [(0, 500000)]
    tick = 0
    for message in file.tracks[0]:
        tick += message.time
        if message.type == "set_tempo":
            tempos.append((tick, message.tempo))

    def seconds(tick: int) -> float:
        total = 0.0
        for (start, tempo), (end, _) in zip(tempos, [*tempos[1:], (10**12, 0)], strict=True):
            if tick > start:
                total += mido.tick2second(min(tick, end) - start, file.ticks_per_beat, tempo)
        return total

    found: dict[str, list[tuple[float, float, int, int]]] = {}
    for track in file.tracks[1:]:
        sounding: dict[tuple[int, int], tuple[float, int]] = {}
        notes = found.setdefault(track.name, [])
        tick = 0
        for message in track:
            tick += message.time
            if message.type == "note_on" and message.velocity:
                assert (message.channel, message.note) not in sounding, "a note that sounds is struck again"
                sounding[message.channel, message.note] = (seconds(tick), message.velocity)
            elif message.type in {"note_off", "note_on"}:
                onset, velocity = sounding.pop((message.channel, message.note))
                notes.append((onset, seconds(tick), message.note, velocity))
        assert not sounding, "a note is never let go"
        notes.sort()
    return found


@pytest.mark.parametrize("feel", ["swing", "ballad", "bossa", "funk"])
def test_mido_reads_the_same_seconds_from_named_tracks(feel: str) -> None:
    performance = band(feel=FEELS[feel])
    read = mido_notes(write_midi(performance))
    assert list(read) == [part.name for part in performance.parts]
    for part in performance.parts:
        wanted = sorted((note.onset_sec, note.midi, note.velocity) for note in part.notes)
        got = sorted((onset, midi, velocity) for onset, _, midi, velocity in read[part.name])
        assert len(got) == len(wanted)
        for one, other in zip(sorted(wanted, key=lambda n: n[1:]), sorted(got, key=lambda n: n[1:]), strict=True):
            assert other[1:] == one[1:]
        for one, other in zip(wanted, got, strict=True):
            assert other[0] == pytest.approx(one[0], abs=0.001)


def test_pretty_midi_reads_the_same_seconds_programs_and_drums() -> None:
    performance = band()
    read = pretty_midi.PrettyMIDI(io.BytesIO(write_midi(performance)))
    for part in performance.parts:
        instruments = [instrument for instrument in read.instruments if instrument.name == part.name]
        assert {instrument.program for instrument in instruments} == {part.program - 1}
        assert {instrument.is_drum for instrument in instruments} == {part.name == "Drums"}
        onsets = sorted(note.start for instrument in instruments for note in instrument.notes)
        assert onsets == pytest.approx([note.onset_sec for note in sorted(part.notes, key=_onset)], abs=0.001)


def _onset(note: Any) -> float:
    return float(note.onset_sec)


def test_programs_are_those_of_general_midi() -> None:
    # General MIDI 1, programs from 1: 33 acoustic bass, 1 piano, 67 tenor sax; drums on channel 10.
    programs = {part.name: part.program for part in band().parts}
    assert (programs["Melody"], programs["Bass"], programs["Chords"]) == (67, 33, 1)
    file = mido.MidiFile(file=io.BytesIO(write_midi(band())))
    drums = next(track for track in file.tracks if track.name == "Drums")
    assert {message.channel for message in drums if message.type == "note_on"} == {9}
    keys = {message.note for message in drums if message.type == "note_on"}
    assert all(35 <= key <= 81 for key in keys)


def test_bend_range_is_set_by_rpn_zero_and_bends_reach_their_pitch() -> None:
    tune = line_of("C4/2 G4/2")
    line = (replace(tune.notes[0], marks=(Mark.SCOOP,)), replace(tune.notes[1], marks=(Mark.FALL,)))
    performance = perform(tune, line, instrument=TENOR, exact=True, tempo=240)
    file = mido.MidiFile(file=io.BytesIO(write_midi(performance)))
    track = file.tracks[1]
    controls: dict[int, list[tuple[int, int]]] = {}
    bends: dict[int, list[int]] = {}
    for message in track:
        if message.type == "control_change":
            controls.setdefault(message.channel, []).append((message.control, message.value))
        if message.type == "pitchwheel":
            bends.setdefault(message.channel, []).append(message.pitch)
    for channel in bends:
        assert [(101, 0), (100, 0), (6, int(BEND_RANGE))] == [c for c in controls[channel] if c[0] in {101, 100, 6}][
            :3
        ]
    scoop, fall = (bends[channel] for channel in sorted(bends))
    assert scoop[0] / 8192 * BEND_RANGE == pytest.approx(-1.5, abs=0.02)
    assert scoop[-1] == 0
    assert fall[-1] / 8192 * BEND_RANGE == pytest.approx(-5, abs=0.05)


def test_a_bent_note_leaves_the_release_of_its_neighbour_alone() -> None:
    tune = line_of("C4/1 E4/1 G4/1 C5/1")
    line = (tune.notes[0], *(replace(note, marks=(Mark.SCOOP,)) for note in tune.notes[1:]))
    file = mido.MidiFile(file=io.BytesIO(write_midi(perform(tune, line, instrument=TENOR))))
    channels = [message.channel for message in file.tracks[1] if message.type == "note_on"]
    assert all(before != after for before, after in zip(channels, channels[1:], strict=False))


def test_tempo_metre_key_and_pickup_stand_in_the_conductor_track() -> None:
    tune = replace(
        chart("G | D7 | G", key="G minor", metre="3/4", pickup=2, melody="G4 A4"), tempos=(Tempo(0, 96.0),)
    )
    file = mido.MidiFile(file=io.BytesIO(write_midi(perform(tune, tune.notes, instrument=TENOR))))
    metas = [message for message in file.tracks[0] if message.is_meta]
    assert mido.tempo2bpm(next(m.tempo for m in metas if m.type == "set_tempo")) == pytest.approx(96)
    assert next(m.key for m in metas if m.type == "key_signature") == "Gm"
    signatures = [(m.numerator, m.denominator) for m in metas if m.type == "time_signature"]
    assert signatures == [(1, 4), (3, 4)]
    tick, starts = 0, []
    for message in file.tracks[0]:
        tick += message.time
        if message.type == "time_signature":
            starts.append(tick)
    assert starts == [0, QUARTER]


@pytest.mark.parametrize("fifths", range(-7, 8))
@pytest.mark.parametrize("mode", ["major", "minor", "dorian"])
def test_every_key_signature_can_be_written(fifths: int, mode: Mode) -> None:
    from music21 import converter, key

    tune = line_of("C4/4")
    tune = replace(tune, bars=tuple(replace(bar, key=Key(fifths, mode)) for bar in tune.bars))
    data = write_midi(perform(tune, tune.notes, instrument=TENOR))
    signature = next(iter(converter.parseData(data, format="midi").recurse().getElementsByClass(key.KeySignature)))
    assert signature.sharps == fifths


def test_the_file_ends_after_the_tail() -> None:
    performance = band()
    file = mido.MidiFile(file=io.BytesIO(write_midi(performance)))
    assert file.length == pytest.approx(performance.duration_sec + END_SEC, abs=0.01)


def test_more_parts_than_channels_are_refused() -> None:
    performance = band()
    with pytest.raises(OptionError, match="16 channels"):
        write_midi(performance.with_parts(performance.parts[:1] * 16))
