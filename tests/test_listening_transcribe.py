"""Writing a take down: beats by formula, tunes of music21's corpus (Ryan's Mammoth Collection, 1883), swing, graces."""

from collections.abc import Sequence
from dataclasses import replace
from difflib import SequenceMatcher
from fractions import Fraction

import numpy as np
import pytest

from fioritura.errors import OptionError, TuneError
from fioritura.listening.beat import PARTS, follow
from fioritura.listening.hear import hear
from fioritura.listening.metres import readings
from fioritura.listening.notes import Attack, Inflection, InflectionKind, PlayedNote, Take
from fioritura.listening.transcribe import transcribe
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Mark, Tune
from tests.listening_takes import TIMBRES, fitted, melody, played, render, tune_names

Line = Sequence[tuple[float, float, int]]
"""Onset and length in quarter notes, MIDI number."""


def note(onset: float, offset: float, midi: int, attack: Attack = Attack.TONGUED) -> PlayedNote:
    return PlayedNote(onset, offset, 100.0 * (midi - 69), midi, -15.0, attack)


def take_of(line: Line, bpm: float, *, jitter_sec: float = 0.0, share: float = 0.9, seed: int = 0) -> Take:
    """The line as notes, each sounding for a share of its length, its onset off by normal jitter."""
    rng, beat = np.random.default_rng(seed), 60 / bpm
    starts = [0.5 + onset * beat + rng.normal(0, jitter_sec) for onset, _, _ in line]
    notes = [
        note(start, start + share * length * beat, midi)
        for start, (_, length, midi) in zip(starts, line, strict=True)
    ]
    return Take(tuple(notes), notes[-1].offset_sec + 0.5, 0.0)


def swung(line: Line, ratio: float) -> list[tuple[float, float, int]]:
    """The line with the second eighth of each quarter moved to where a swing ratio puts it."""
    late = ratio / (1 + ratio)

    def place(quarters: float) -> float:
        beat, inside = divmod(quarters, 1)
        return beat + (inside * 2 * late if inside <= 0.5 else late + (inside - 0.5) * 2 * (1 - late))

    return [(place(onset), place(onset + length) - place(onset), midi) for onset, length, midi in line]


def right_shares(line: Line, tune: Tune) -> tuple[float, float]:
    """Shares of the line's notes with the right onset (against the whole) and the right length."""
    heard = [one.pitch.midi for one in tune.notes]
    blocks = SequenceMatcher(None, [midi for *_, midi in line], heard, autojunk=False).get_matching_blocks()
    pairs = [(line[block.a + step], tune.notes[block.b + step]) for block in blocks for step in range(block.size)]
    shift = np.median([found.onset_ticks / QUARTER - onset for (onset, _, _), found in pairs])
    onsets = sum(abs(found.onset_ticks / QUARTER - onset - shift) < 0.01 for (onset, _, _), found in pairs)
    lengths = sum(abs(found.duration_ticks / QUARTER - length) < 0.01 for (_, length, _), found in pairs)
    return onsets / len(line), lengths / len(line)


SCALE = [(0.0, 1.0, 67), (1.0, 0.5, 69), (1.5, 0.5, 71), (2.0, 1.0, 72), (3.0, 0.25, 74), (3.25, 0.25, 76)]
SCALE += [(3.5, 0.5, 74), (4.0, 2.0, 72), (6.0, 0.5, 71), (6.5, 0.5, 69), (7.0, 1.0, 71), (8.0, 4.0, 67)]


# Readings -----------------------------------------------------------------------------------------------------


def onsets_of(line: Line, bpm: float, seed: int = 1) -> list[float]:
    rng = np.random.default_rng(seed)
    return [0.4 + onset * 60 / bpm + rng.normal(0, 0.01) for onset, _, _ in line]


def test_a_ballad_in_quarters_at_66_is_not_counted_at_twice_that() -> None:
    beats = [0, 1, 2, 3, 4, 6, 7, 8, 9, 10, 12, 13, 14, 15, 16, 18, 19, 20, 21, 22]
    found = readings(onsets_of([(float(beat), 1.0, 60) for beat in beats], 66))
    assert found[0].beats_per_minute == pytest.approx(66, rel=0.04)
    assert 2 <= len(found) <= 3 and sum(one.likelihood for one in found) == pytest.approx(1, abs=0.02)


@pytest.mark.parametrize("place", range(6))
def test_the_metre_of_a_tune_is_among_its_readings(place: int) -> None:
    from music21 import converter

    name = tune_names("test", 6)[place]
    written = converter.parse(name).parts[0].recurse().getElementsByClass("TimeSignature")[0]
    quarters = 100.0 if written.denominator == 4 else 140.0
    metres = {str(one.metre) for one in readings(onsets_of(melody(name, 32.0), quarters))}
    alike = {"2/4": {"2/4", "4/4"}, "2/2": {"2/4", "4/4"}, "4/4": {"2/4", "4/4"}}
    assert metres & alike.get(written.ratioString, {written.ratioString})


def test_a_pickup_is_written_as_given() -> None:
    line = [(float(beat), 1.0, 60 + beat % 5) for beat in range(9)]
    tune = transcribe(take_of(line, 100), metre=Metre(4, 4), beats_per_minute=100, pickup_beats=1)
    assert tune.bars[0].duration_ticks == QUARTER and tune.bars[1].start_ticks == tune.notes[1].onset_ticks
    whole = transcribe(take_of(line, 100), metre=Metre(4, 4), beats_per_minute=100, pickup_beats=0)
    assert whole.bars[0].duration_ticks == 4 * QUARTER
    with pytest.raises(OptionError, match="4"):
        transcribe(take_of(line, 100), pickup_beats=4)


# Beats --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("bpm", [60.0, 96.0, 132.0, 180.0])
def test_an_even_line_is_followed_at_the_tempo_given(bpm: float) -> None:
    beats = [0, 1, 1.5, 2, 3, 3.25, 3.5, 4, 6, 6.5, 7, 8]
    found = follow([0.4 + beat * 60 / bpm for beat in beats], bpm * 1.1)
    assert [part / PARTS for part in found.parts] == beats
    assert found.beats_per_minute == pytest.approx(bpm, rel=0.03)
    assert found.swing_ratio == 1.0


@pytest.mark.parametrize("ratio", [1.5, 2.0, 2.5])
def test_swing_is_undone(ratio: float) -> None:
    beats = [beat + late for beat in range(12) for late in (0, 0.5)]
    times = [int(beat) + (ratio / (1 + ratio) if beat % 1 else 0) for beat in beats]
    found = follow([time * 60 / 120 for time in times], 120)
    assert [part / PARTS for part in found.parts] == beats
    assert found.swing_ratio == pytest.approx(ratio, abs=0.3)


def test_triplets_stay_triplets() -> None:
    beats = [Fraction(third, 3) for third in range(3)] + [
        Fraction(1),
        Fraction(3, 2),
        Fraction(2),
        Fraction(5, 2),
        Fraction(3),
    ]
    found = follow([float(beat) * 0.6 for beat in beats], 100)
    assert [Fraction(part, PARTS) for part in found.parts] == beats
    assert found.swing_ratio == 1.0


def test_a_tempo_that_drifts_is_followed() -> None:
    """Slowing by a third over 32 beats, as in a free performance."""
    beats = [beat + part for beat in range(0, 32, 2) for part in (0, 1, 1.5)]
    times = [beat * 0.5 * (1 + beat / 96) for beat in beats]
    found = follow(times, 100)
    assert np.mean([part / PARTS == beat for part, beat in zip(found.parts, beats, strict=True)]) == 1


# Tunes --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("free", [False, True])
def test_corpus_tunes_played_with_jitter(free: bool) -> None:
    """Jitter of 10 ms: about what players keep against a click (Rasch 1979 gives 30-50 ms between players)."""
    shares = []
    for place, name in enumerate(tune_names("test", 8)):
        line = fitted(melody(name, 32), 60, 84)
        tune = transcribe(take_of(line, 100, jitter_sec=0.01, seed=place), beats_per_minute=None if free else 104)
        shares.append(right_shares(line, tune))
    onsets, lengths = np.mean(shares, axis=0)
    assert onsets > (0.85 if free else 0.95) and lengths > 0.93


def test_a_swung_tune_is_written_even_and_said_to_swing() -> None:
    line = [(number / 2, 0.5, 60 + number % 8) for number in range(32)]
    tune = transcribe(take_of(swung(line, 2.0), 140, jitter_sec=0.008), beats_per_minute=140)
    assert tune.feel == "swing"
    assert right_shares(line, tune) == (1.0, 1.0)
    assert transcribe(take_of(line, 140, jitter_sec=0.008), beats_per_minute=140).feel == "straight"


def test_key_metre_tempo_and_bars() -> None:
    tune = transcribe(take_of(SCALE, 100), beats_per_minute=100, title="A scale")
    assert tune.title == "A scale" and tune.key == Key.of("G") and tune.metre == Metre(4, 4)
    assert tune.quarters_per_minute == pytest.approx(100, rel=0.03)
    assert [bar.duration_ticks for bar in tune.bars] == [4 * QUARTER] * 3
    assert right_shares(SCALE, tune) == (1.0, 1.0)
    assert tune.notes[0].onset_ticks == 0


def test_a_pickup_gets_its_own_bar() -> None:
    line = [(-1.0, 0.5, 62), (-0.5, 0.5, 64), (0.0, 2.0, 65), (2.0, 1.0, 64), (3.0, 1.0, 62), (4.0, 4.0, 65)]
    tune = transcribe(take_of([(onset + 1, length, midi) for onset, length, midi in line], 100), beats_per_minute=100)
    assert tune.pickup_ticks == QUARTER
    assert [bar.number for bar in tune.bars] == [0, 1, 2]
    assert tune.notes[2].onset_ticks == QUARTER


def test_compound_metre_counts_dotted_quarters() -> None:
    line = [(third / 2, 0.5, 60 + third) for third in range(6)] + [(3.0, 1.5, 67), (4.5, 1.0, 65), (5.5, 0.5, 64)]
    tune = transcribe(take_of([*line, (6.0, 3.0, 60)], 120), metre=Metre(6, 8), beats_per_minute=80)
    assert [one.onset_ticks for one in tune.notes[:6]] == [EIGHTH * third for third in range(6)]
    assert tune.notes[7].duration_ticks == QUARTER
    assert tune.quarters_per_minute == pytest.approx(120, rel=0.03)


def test_chromatic_notes_are_spelled_in_the_key() -> None:
    line = [(0.0, 1.0, 65), (1.0, 1.0, 66), (2.0, 1.0, 67), (3.0, 1.0, 70), (4.0, 4.0, 65)]
    tune = transcribe(take_of(line, 100), key=Key.of("F"), beats_per_minute=100)
    assert [str(one.pitch) for one in tune.notes] == ["F4", "F#4", "G4", "Bb4", "F4"]


def test_grace_notes_slurs_and_signs() -> None:
    scoop = Inflection(InflectionKind.SCOOP, 1.0, 0.08, -120.0)
    notes = (
        note(0.5, 0.98, 60),
        note(0.98, 1.05, 64),
        note(1.05, 1.55, 62, Attack.SLURRED),
        replace(note(1.55, 2.1, 64, Attack.SLURRED), inflections=(scoop,)),
        note(2.1, 3.0, 60),
    )
    tune = transcribe(Take(notes, 3.5, 0.0), key=Key.of("C"), beats_per_minute=110)
    assert [len(one.graces) for one in tune.notes] == [0, 1, 0, 0]
    assert tune.notes[1].graces == (Pitch.parse("E4"),)
    assert Mark.SLUR_START in tune.notes[1].marks
    assert set(tune.notes[2].marks) == {Mark.SLUR_STOP, Mark.SCOOP}
    assert [one.onset_ticks for one in tune.notes] == [0, QUARTER, 2 * QUARTER, 3 * QUARTER]


def test_fast_runs_are_no_grace_notes() -> None:
    line = [(number / 4, 0.25, 60 + number) for number in range(8)] + [(2.0, 2.0, 69)]
    slurred = tuple(replace(one, attack=Attack.SLURRED) for one in take_of(line, 150, share=1.0).notes)
    tune = transcribe(Take(slurred, 5.0, 0.0), beats_per_minute=150)
    assert sum(len(one.graces) for one in tune.notes) <= 1


def test_refusals() -> None:
    with pytest.raises(TuneError, match="No notes were heard"):
        transcribe(Take((), 2.0, 0.0))
    with pytest.raises(OptionError, match="20 to 400"):
        transcribe(take_of(SCALE, 100), beats_per_minute=1000)


# From sound ---------------------------------------------------------------------------------------------------


def test_from_sound_to_musicxml_that_music21_reads() -> None:
    from music21 import converter

    from fioritura.notation.musicxml.writer import write_musicxml
    from fioritura.notation.score import Score, Staff

    line = fitted(melody(tune_names("test", 3)[2], 24), 58, 80)
    rng = np.random.default_rng(11)
    wave = render(played(line, rng, 104, graces=0.1), TIMBRES["saxophone"], rng, tuning_cents=12)
    tune = transcribe(hear(wave, 44100), beats_per_minute=104)
    onsets, lengths = right_shares(line, tune)
    assert onsets > 0.9 and lengths > 0.85
    written = converter.parse(write_musicxml(Score(tune, (Staff(tune.notes),))), format="musicxml")
    sounding = [one for one in written.flatten().stripTies().notes if not one.duration.isGrace]
    assert [one.pitch.midi for one in sounding] == [one.pitch.midi for one in tune.notes]
