"""Reading MIDI. Standard MIDI Files 1.0 says what the bytes mean; music21 writes files of its own for comparison;
players are simulated (normal timing errors, random gates), which is invented data, so those bounds say only how much
disorder the reader bears."""

from __future__ import annotations

import random
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.errors import FiorituraError, OptionError, ReadError, TuneError
from fioritura.notation.midi.reader import read_midi
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune
from fioritura.unfold import unfolded
from fioritura.words import say

from .corpus import content
from .midi_files import TICKS, Event, melody, meta, metre, midi_file, played, sounded
from .tunes import random_tune

SCALE = melody(*[(midi, 1) for midi in (60, 62, 64, 65, 67, 69, 71, 72)])


def lengths(tune: Tune) -> list[float]:
    return [note.duration_ticks / QUARTER for note in tune.notes]


def onsets(tune: Tune) -> list[float]:
    return [note.onset_ticks / QUARTER for note in tune.notes]


def one_track(line: Iterable[tuple[float, float, int]], *events: Event) -> bytes:
    return midi_file([metre(4, 4), *events, *sounded(line)])


def test_names_key_metre_and_tempo_are_kept() -> None:
    head = [
        meta("track_name", name="The Weir"),
        metre(3, 4),
        meta("key_signature", key="Gm"),
        meta("set_tempo", tempo=400_000),
    ]
    line = melody((67, 1), (70, 1), (74, 1), (66, 2), (67, 1))
    tune = read_midi(midi_file(head, [meta("track_name", name="Flute"), *sounded(line)]))
    assert (tune.title, tune.part_name, str(tune.key), str(tune.metre)) == ("The Weir", "Flute", "G minor", "3/4")
    assert tune.quarters_per_minute == 150.0
    assert [str(note.pitch) for note in tune.notes] == ["G4", "Bb4", "D5", "F#4", "G4"]
    assert lengths(tune) == [1, 1, 1, 2, 1]


def test_triplets_sixteenths_and_quintuplets_are_exact() -> None:
    line = melody(
        *[(60 + n, 1 / 3) for n in range(3)],
        *[(64 + n, 0.25) for n in range(4)],
        *[(70 + n, 0.2) for n in range(5)],
        (60, 1),
    )
    tune = read_midi(one_track(line))
    assert [note.duration_ticks for note in tune.notes] == [560] * 3 + [420] * 4 + [336] * 5 + [1680]


@pytest.mark.parametrize("gate", [0.95, 0.9, 0.8, 0.6])
def test_a_gate_is_undone_and_rests_are_kept(gate: float) -> None:
    """A sequencer's gate shortens all notes alike."""
    pattern = [(60, 1), (62, 0.5), (0, 0.5), (64, 2), (65, 1.5), (67, 0.5), (69, 1), (0, 1), (60, 3), (62, 1)]
    tune = read_midi(one_track(melody(*pattern, gate=gate)))
    assert lengths(tune) == [1, 0.5, 2, 1.5, 0.5, 1, 3, 1]


def test_written_rests_of_an_exact_file_are_kept() -> None:
    tune = read_midi(one_track(melody((60, 0.5), (0, 0.5), (62, 0.75), (64, 0.25), (65, 1), (0, 1))))
    assert list(zip(onsets(tune), lengths(tune), strict=True)) == [(0, 0.5), (1, 0.75), (1.75, 0.25), (2, 1)]


def test_short_overlaps_are_legato_and_long_ones_polyphony() -> None:
    legato = [(0.0, 1.1, 60), (1.0, 2.05, 62), (2.0, 4.0, 64)]
    assert lengths(read_midi(one_track(legato))) == [1, 1, 2]
    chords = [(0.0, 1.0, 60), (0.0, 1.0, 64), (1.0, 2.0, 62)]
    with pytest.raises(TuneError, match=r"bar 1 has C4 and E4 at once.*\(1 Channel 1\)"):
        read_midi(one_track(chords))


def test_a_note_struck_just_before_another_is_its_grace_note() -> None:
    line = [(0.0, 0.93, 60), (0.93, 1.0, 63), (1.0, 2.0, 64), (2.0, 4.0, 65)]
    tune = read_midi(one_track(line))
    assert [[str(grace) for grace in note.graces] for note in tune.notes] == [[], ["D#4"], []]
    assert onsets(tune) == [0, 1, 2]


def test_triplet_eighth_pairs_throughout_are_swing() -> None:
    pairs = [(60 + n % 7, length) for n in range(12) for length in (2 / 3, 1 / 3)]
    tune = read_midi(one_track(melody(*pairs)))
    assert tune.feel == "swing"
    assert set(lengths(tune)) == {0.5}
    assert "swing feel" in " ".join(map(say, tune.warnings))


def test_true_triplets_and_dotted_rhythms_are_not_swing() -> None:
    triplets = [(60 + n % 5, 1 / 3) for n in range(24)]
    dotted = [(60 + n % 5, length) for n in range(8) for length in (0.75, 0.25)]
    assert read_midi(one_track(melody(*triplets))).feel == "straight"
    tune = read_midi(one_track(melody(*dotted)))
    assert (tune.feel, lengths(tune)[:2]) == ("straight", [0.75, 0.25])


def test_compound_metre_divides_in_three() -> None:
    jig = melody(*[(67 + n % 3, 0.5) for n in range(12)])
    tune = read_midi(midi_file([metre(6, 8), *sounded(jig)]))
    assert set(lengths(tune)) == {0.5}
    assert [str(bar.metre) for bar in tune.bars] == ["6/8", "6/8"]


def test_a_late_first_note_makes_a_pickup_and_silent_bars_go() -> None:
    tune = read_midi(one_track(melody((67, 1), *[(60 + n, 1) for n in range(8)], start=11.0)))
    assert [(bar.number, bar.duration_ticks // QUARTER) for bar in tune.bars] == [(0, 1), (1, 4), (2, 4)]
    assert "2 silent bars before the melody left out" in map(say, tune.warnings)


def test_a_rest_at_the_start_of_a_full_bar_stays() -> None:
    tune = read_midi(one_track(melody((60, 1), (62, 2), (64, 4), start=1.0)))
    assert [bar.number for bar in tune.bars] == [1, 2]
    assert onsets(tune) == [1, 2, 4]


def test_a_short_first_metre_is_the_pickup_of_the_next() -> None:
    line = melody(*[(60 + n % 5, 1) for n in range(9)])
    tune = read_midi(midi_file([metre(1, 4), metre(4, 4, 1.0), *sounded(line)]))
    assert [(bar.number, str(bar.metre), bar.duration_ticks // QUARTER) for bar in tune.bars] == [
        (0, "4/4", 1),
        (1, "4/4", 4),
        (2, "4/4", 4),
    ]


def test_the_melody_track_is_chosen_and_others_can_be_asked_for() -> None:
    high = [meta("track_name", name="Melody"), *sounded(SCALE)]
    low = [meta("track_name", name="Bass"), *sounded(melody((36, 4), (43, 4)), channel=1)]
    drums = [meta("track_name", name="Kit"), *sounded(melody(*[(76, 0.5)] * 16), channel=9)]
    data = midi_file([metre(4, 4)], drums, low, high)
    tune = read_midi(data)
    assert tune.part_name == "Melody"
    assert "there are: 1 Kit, 2 Bass and 3 Melody" in say(tune.warnings[0])
    assert read_midi(data, part="bass").part_name == "Bass"
    with pytest.raises(OptionError, match="1 Kit, 2 Bass and 3 Melody"):
        read_midi(data, part="oboe")


def test_channels_of_a_format_0_file_are_parts_named_by_their_program() -> None:
    from mido import Message

    programs = [
        (0.0, Message("program_change", program=65, channel=2)),
        (0.0, Message("program_change", program=0, channel=0)),
    ]
    chords = [note for start in (0, 4) for note in sounded([(start, start + 4, m) for m in (48, 52, 55)])]
    data = midi_file([metre(4, 4), *programs, *chords, *sounded(SCALE, channel=2)], kind=0)
    assert read_midi(data).part_name == "Reed"


def test_chord_symbols_in_markers_and_lyrics() -> None:
    texts = ["C", "Am7", "Dm7", "G7(b9)"]
    marks = [meta("marker", 2.0 * n, text=text) for n, text in enumerate(texts)]
    words = [meta("lyrics", float(n), text=text) for n, text in enumerate(["Down", "by", "the", "ri-", "ver"])]
    tune = read_midi(one_track(SCALE, *marks, *words))
    assert [(span.text, span.onset_ticks // QUARTER) for span in tune.chords] == list(
        zip(texts, (0, 2, 4, 6), strict=True)
    )
    assert [note.lyric for note in tune.notes[:5]] == ["Down", "by", "the", "ri-", "ver"]


def test_rehearsal_letters_are_not_chords() -> None:
    marks = [meta("marker", 2.0 * n, text=letter) for n, letter in enumerate("ABCD")]
    assert read_midi(one_track(SCALE, *marks)).chords == ()


def test_channels_that_take_turns_are_one_part() -> None:
    """As in files that give bent notes a channel of their own."""
    first, second = SCALE[::2], SCALE[1::2]
    data = midi_file([metre(4, 4)], [meta("track_name", name="Sax"), *sounded(first), *sounded(second, channel=1)])
    tune = read_midi(data)
    assert (tune.part_name, len(tune.notes)) == ("Sax", 8)


def test_a_c_major_that_is_only_a_default_gives_way_to_the_notes() -> None:
    line = melody(*[(midi, 1) for midi in (69, 71, 73, 74, 76, 78, 80, 81)])
    tune = read_midi(one_track(line, meta("key_signature", key="C")))
    assert str(tune.key) == "A major"
    assert "the file says C major, but its notes are those of A major" in " ".join(map(say, tune.warnings))
    assert str(read_midi(one_track(line, meta("key_signature", key="F"))).key) == "F major"


def test_a_key_is_found_where_the_file_names_none() -> None:
    tune = read_midi(one_track(melody(*[(midi, 1) for midi in (74, 76, 77, 79, 81, 73, 76, 74)])))
    assert str(tune.key) == "D minor"
    assert "the file names no key; D minor was found from the notes" in map(say, tune.warnings)


def test_key_changes_hold_from_their_bar() -> None:
    keys = [meta("key_signature", 0.0, key="C"), meta("key_signature", 4.0, key="Eb")]
    assert [str(bar.key) for bar in read_midi(one_track(SCALE, *keys)).bars] == ["C major", "Eb major"]


@pytest.mark.parametrize("name, fifths", [("Cb", -7), ("F#m", 3), ("C#", 7), ("Abm", -7)])
def test_every_signature_is_read(name: str, fifths: int) -> None:
    assert read_midi(one_track(SCALE, meta("key_signature", key=name))).key.fifths == fifths


def agreement(seeds: range, metres: tuple[str, ...], **touch: Any) -> float:
    """The share of notes whose onset, pitch and duration come back."""
    right = total = 0
    for seed in seeds:
        tune = random_tune(seed, metre=metres[seed % len(metres)])
        back = read_midi(played(tune, seed, **touch), irregular="keep")
        shift = tune.notes[0].onset_ticks - back.notes[0].onset_ticks
        found = {(n.onset_ticks + shift, n.duration_ticks, n.pitch.midi) for n in back.notes}
        right += sum((n.onset_ticks, n.duration_ticks, n.pitch.midi) in found for n in tune.notes)
        total += len(tune.notes)
    return right / total


def test_played_files_come_back_as_written() -> None:
    """8 ms and 15 ms of spread at 120 quarter notes a minute."""
    metres = ("4/4", "3/4", "6/8", "2/4")
    assert agreement(range(16), metres, spread=0.0, gate=(1.0, 1.0)) == 1.0
    assert agreement(range(16), metres, spread=0.016, gate=(0.8, 1.0)) > 0.97
    assert agreement(range(16), metres, spread=0.03, gate=(0.75, 1.05)) > 0.93


def test_swing_eighths_come_back_as_even_ones() -> None:
    metres = ("4/4", "3/4")
    assert agreement(range(12), metres, spread=0.01, gate=(0.85, 1.0), long_share=0.64) > 0.9


CORPUS_SAMPLE = [
    "bach/bwv66.6.mxl",
    "bach/bwv269.mxl",
    "bach/bwv101.7.mxl",
    "trecento/PMFC_06_Piero_2-Chavalcando.xml",
]


@pytest.mark.parametrize("name", CORPUS_SAMPLE)
def test_files_written_by_music21_read_like_the_score(name: str) -> None:
    music21 = pytest.importorskip("music21")
    path = Path(music21.__file__).parent / "corpus" / name
    score = music21.converter.parse(path).toSoundingPitch()
    written = music21.midi.translate.streamToMidiFile(score.parts[0]).writestr()
    ours, theirs = (
        read_midi(written, irregular="keep"),
        unfolded(read_musicxml(content(path), part=1, irregular="keep")),
    )
    start = theirs.notes[0].onset_ticks - ours.notes[0].onset_ticks
    assert [(n.onset_ticks + start, n.duration_ticks, n.pitch) for n in ours.notes] == [
        (n.onset_ticks, n.duration_ticks, n.pitch) for n in theirs.notes
    ]


@pytest.mark.parametrize(
    "data, message",
    [
        (b"MThd\x00\x00\x00\x06\x00\x01\x00\x01\xe7\x28MTrk\x00\x00\x00\x04\x00\xff\x2f\x00", "SMPTE"),
        (b"MThd\x00\x00\x00\x06\x00\x01\x00\x01\x00\x00MTrk\x00\x00\x00\x04\x00\xff\x2f\x00", "SMPTE"),
        (midi_file(sounded(SCALE), kind=2), "format 2"),
        (one_track(SCALE)[:60], "breaks off"),
        (one_track(SCALE).replace(b"MTrk", b"MTxx"), "damaged"),
        (b"MThd\x00\x00\x00\x06\x00\x01\x00\x01\x01\xe0MTrk\x00\x00\xff\xff" + b"\xff" * 5000, "damaged"),
        (b"MThd" + b"\x00" * 3_000_000, "larger than 2,097,152 bytes"),
    ],
)
def test_files_that_can_not_be_read(data: bytes, message: str) -> None:
    with pytest.raises(ReadError, match=message):
        read_midi(data)


@pytest.mark.parametrize(
    "events, message",
    [
        ([metre(4, 4)], "no pitched notes"),
        ([metre(4, 4), *sounded(SCALE, channel=9)], "no pitched notes"),
        ([metre(99, 8), *sounded(SCALE)], "99/8"),
        ([metre(4, 4), meta("set_tempo", tempo=1), *sounded(SCALE)], "tempo of 6e"),
        ([metre(4, 4), meta("set_tempo", tempo=0), *sounded(SCALE)], "tempo of inf"),
        ([metre(4, 4), *sounded([(0.0, 1.0, 60), (500_000.0, 500_001.0, 62)])], "more than 10,000 bars"),
    ],
)
def test_tunes_that_can_not_be_worked_with(events: list[tuple[float, Event]], message: str) -> None:
    with pytest.raises(TuneError, match=message):
        read_midi(midi_file(events))


@settings(max_examples=200, deadline=None)
@given(seed=st.integers(0, 2**32))
def test_mutated_files_give_nothing_but_deliberate_errors(seed: int) -> None:
    dice = random.Random(seed)
    data = bytearray(
        one_track(SCALE, meta("key_signature", key="C"), meta("marker", text="C"), meta("set_tempo", tempo=500_000))
    )
    for _ in range(dice.randint(1, 8)):
        place = dice.randrange(4, len(data))
        if dice.random() < 0.7:
            data[place] = dice.randrange(256)
        else:
            del data[place : place + dice.randrange(1, 9)]
    try:
        read_midi(bytes(data))
    except FiorituraError as error:
        assert str(error)


def test_a_low_resolution_is_exact_too() -> None:
    data = midi_file(
        [metre(4, 4), *sounded(melody((60, 1 / 3), (62, 1 / 3), (64, 1 / 3), (65, 0.25), (67, 0.75), (60, 2)))],
        ticks=24,
    )
    assert [note.duration_ticks for note in read_midi(data).notes] == [560, 560, 560, 420, 1260, 3360]
    assert TICKS == 480
