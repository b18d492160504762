"""Alignment: known truth, brute force, and the repeat signs as music21 plays them.

The least F1 of pairs (0.97 with wrong, added and left-out notes, 0.93 with a restart or a skipped phrase) is the
project's own measure, taken here on a sample of the test half; `benchmarks/name_bench.py` prints it for more tunes.
"""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import replace
from itertools import product

import numpy as np
import pytest

from fioritura.listening.align import align
from fioritura.listening.event import Event, events_of_line
from fioritura.listening.matching import Moves, best_steps
from fioritura.listening.tempo_map import exact_shift, long_share, mapped, median_slope, straightened
from fioritura.notation.abc.reader import read_abc
from fioritura.techniques.families import PARAPHRASES
from fioritura.techniques.table import technique_named
from fioritura.theory.metre import EIGHTH, QUARTER
from fioritura.tune import Tune
from fioritura.unfold import unfolded
from tests import played_lines as lines
from tests.tunes import random_tune

REPEATED = """X:1
T:Two Doors
M:4/4
L:1/4
K:G
|: G A B c | d2 B2 | c A F D |1 G2 D2 :|2 G4 || d e f g | a2 f2 | e c A F | G4 |]
"""


@pytest.fixture(scope="module")
def sample() -> list[Tune]:
    return list(lines.tunes("test", 18))


def f1(pairs: list[tuple[set[tuple[int, int]], set[tuple[int, int]]]]) -> float:
    right = sum(len(truth & found) for truth, found in pairs)
    return 2 * right / sum(len(truth) + len(found) for truth, found in pairs)


def base_line(tune: Tune, number: int) -> list[lines.Sounded]:
    """Every sixth line is the plain tune, the others are renditions of all levels."""
    if number % 6 == 0:
        return lines.plainly(tune)
    return lines.sounded(tune, lines.rendition_of(tune, number).line)


def moved_in_phrases(tune: Tune, number: int) -> set[int]:
    """The plain notes that figures of whole phrases take."""
    if number % 6 == 0:
        return set()
    figures = lines.rendition_of(tune, number).figures
    return {a for one in figures if technique_named(one.technique).family == PARAPHRASES.id for a in one.anchors}


@pytest.mark.parametrize("jumps, least", [(False, 0.97), (True, 0.93)])
def test_takes_with_slips_are_followed(sample: list[Tune], jumps: bool, least: float) -> None:
    pairs = []
    for number, tune in enumerate(sample):
        dice = random.Random(number)
        line = lines.disturbed(base_line(tune, number), dice)
        line = lines.timed(lines.restarted_or_skipped(line, tune, dice) if jumps else line, dice)
        pairs.append((lines.truth_of(line), set(align(tune, lines.events_of(line)).pairs)))
    assert f1(pairs) >= least


def test_written_lines_are_followed_to_the_tick(sample: list[Tune]) -> None:
    """Where a phrase comes late or early as a whole, a note that is said again may be taken for the one before."""
    pairs, in_place = [], []
    for number, tune in enumerate(sample):
        line = base_line(tune, number)
        found = align(tune, lines.events_of(line, is_written=True), is_written=True)
        pairs.append((lines.truth_of(line), set(found.pairs)))
        moved = moved_in_phrases(tune, number)
        truth, paired = ({pair for pair in own if pair[0] not in moved} for own in pairs[-1])
        in_place.append((truth, paired))
        assert len(found.passes) == 1
        assert np.array_equal(found.passes[0].ticks, [note.onset for note in line])
    assert f1(in_place) >= 0.99
    assert f1(pairs) >= 0.98


def test_takes_of_other_tunes_are_refused(sample: list[Tune]) -> None:
    takes = []
    for number, tune in enumerate(sample):
        dice = random.Random(number)
        takes.append(lines.events_of(lines.timed(lines.disturbed(base_line(tune, number), dice), dice)))
    assert all(align(tune, take).is_this_tune for tune, take in zip(sample, takes, strict=True))
    others = [align(tune, take).is_this_tune for tune, take in zip(sample, takes[1:] + takes[:1], strict=True)]
    assert sum(others) == 0


@pytest.mark.parametrize("semitones", [-21, -14, -12, -9, -2, 1, 7, 12, 24])
def test_another_key_or_octave_is_said(semitones: int) -> None:
    """A minor thirteenth, a major ninth, a sixth and a whole tone lower are the distances of transposing winds."""
    tune = random_tune(4, bars=12)
    moved = [replace(event, midi=event.midi + semitones) for event in events_of_line(tune.notes)]
    found = align(tune, moved, is_written=True)
    assert found.semitones == semitones
    assert found.is_in_key == (semitones % 12 == 0)
    assert found.pairs == [(number, number) for number in range(len(tune.notes))]


def test_a_phrase_in_another_octave_does_not_throw_it_off() -> None:
    tune = random_tune(6, bars=12)
    count = len(tune.notes)
    raised = [
        replace(event, midi=event.midi + 12 * (count // 3 < number < 2 * count // 3))
        for number, event in enumerate(events_of_line(tune.notes))
    ]
    assert align(tune, raised, is_written=True).pairs == [(number, number) for number in range(count)]


def test_repeats_are_followed_as_music21_plays_them() -> None:
    """Reference: music21's `expandRepeats`, whose pitches are played here in order."""
    from music21 import converter

    (tune,) = read_abc(REPEATED)
    expanded = converter.parse(REPEATED, format="abc").parts[0].expandRepeats()
    played = [
        Event(float(note.offset) * QUARTER, float(note.quarterLength) * QUARTER, note.pitch.midi, number)
        for number, note in enumerate(expanded.flatten().notes)
    ]
    found = align(tune, played, is_written=True)
    assert [one.is_expected for one in found.passes] == [True] * len(found.passes)
    assert len(found.passes) == 3
    assert [tune.notes[plain].pitch.midi for plain, _ in found.pairs] == [event.midi for event in played]
    assert Counter(plain for plain, _ in found.pairs)[0] == 2
    once = align(tune, events_of_line(tune.notes), is_written=True)
    assert len(once.passes) == 1


def test_several_choruses_are_passes() -> None:
    tune = random_tune(3, bars=8)
    chorus = events_of_line(tune.notes)
    length = tune.duration_ticks
    played = [replace(e, onset=(e.onset + turn * length) / 3000) for turn in range(3) for e in chorus]
    found = align(tune, [replace(e, duration=e.duration / 3000) for e in played])
    assert len(found.passes) == 3
    assert all(one.is_expected for one in found.passes)
    assert [plain for plain, _ in found.pairs] == [*range(len(chorus))] * 3


def test_a_restart_is_no_expected_jump() -> None:
    tune = unfolded(random_tune(8, bars=16))
    starts = [number for number, note in enumerate(tune.notes) if note.onset_ticks == tune.bars[8].start_ticks]
    first = starts[0] if starts else len(tune.notes) // 2
    events = events_of_line(tune.notes)
    late = events[first + 5].onset - events[first].onset
    played = events[: first + 5] + [replace(event, onset=event.onset + late) for event in events[first:]]
    found = align(tune, played, is_written=True)
    assert [one.is_expected for one in found.passes] == [True, False]
    assert found.passes[1].spans[0].plain == first


def test_nothing_to_align() -> None:
    tune = random_tune(1)
    assert not align(tune, []).is_this_tune
    assert not align(replace(tune, notes=()), events_of_line(tune.notes)).is_this_tune
    (one,) = [align(tune, events_of_line(tune.notes[:1]))]
    assert len(one.events) == 1


def brute_force(match: np.ndarray, added: np.ndarray, moves: Moves) -> float:
    """The least cost over all readings of the events, tried one by one."""
    events, notes = match.shape
    behind = np.concatenate([[0.0], np.cumsum(moves.missing)])

    def move(start: int, goal: int) -> float:
        costs = [behind[goal] - behind[start]] if goal >= start else []
        for place in range(start, notes + 1):
            walked = behind[place] - behind[start]
            costs.append(walked + moves.leave[place] + moves.land[goal])
            costs.append(walked + moves.expected.get((place, goal), 1e9))
        return float(min(costs))

    def begin(goal: int) -> float:
        starts = [min(behind[place], moves.enter + moves.land[place]) for place in range(notes + 1)]
        return float(min(start + move(place, goal) for place, start in enumerate(starts)))

    best = 1e9
    for plan in product(range(2 * notes + 1), repeat=events):
        cost, place = 0.0, None
        for event, choice in enumerate(plan):
            goal, is_match = (choice, True) if choice < notes else (choice - notes, False)
            cost += begin(goal) if place is None else move(place, goal)
            cost += match[event, goal] if is_match else added[event, goal]
            place = goal + is_match
        assert place is not None
        cost += min(behind[-1] - behind[place], moves.finish + moves.leave[place])
        best = min(best, cost)
    return best


@pytest.mark.parametrize("seed", range(12))
def test_the_programme_finds_the_least_cost(seed: int) -> None:
    dice = np.random.default_rng(seed)
    events, notes = 3, 4
    moves = Moves(
        missing=dice.uniform(0.2, 2, notes),
        leave=dice.uniform(0, 1, notes + 1),
        land=dice.uniform(0.5, 2, notes + 1),
        expected={(3, 1): 0.1, (4, 0): 0.2},
        enter=float(dice.uniform(-0.5, 1)),
        finish=float(dice.uniform(0, 1)),
    )
    match, added = dice.uniform(0, 2, (events, notes)), dice.uniform(0, 2, (events, notes + 1))
    steps, cost = best_steps(match, added, moves)
    assert cost == pytest.approx(brute_force(match, added, moves))
    assert len(steps) == events


def test_time_is_mapped_through_strays() -> None:
    """A straight line is found again exactly (arithmetic), whatever a few notes far off say."""
    times = np.linspace(0, 20, 60)
    ticks = 1500 * times + 700
    strayed = ticks.copy()
    strayed[[7, 23, 24, 41]] += [2500, -1800, 1900, 3000]
    assert median_slope(times, ticks) == pytest.approx(1500)
    asked = np.array([1.05, 7.3, 13.91])
    assert mapped(times, ticks, asked, 1500) == pytest.approx(1500 * asked + 700)
    assert mapped(times, strayed, asked, 1500) == pytest.approx(1500 * asked + 700, abs=QUARTER / 20)
    assert exact_shift(ticks - 420, ticks) == 420
    assert exact_shift(times, ticks) is None


def test_time_follows_a_wandering_tempo() -> None:
    """A tempo that swings by an eighth over some ten seconds (formula) is followed within a thirty-second."""
    times = np.arange(0, 40, 0.25)
    ticks = 3000 * (times + 0.2 * np.sin(2 * np.pi * times / 10))
    asked = np.arange(1, 39, 0.1)
    truth = 3000 * (asked + 0.2 * np.sin(2 * np.pi * asked / 10))
    assert np.abs(mapped(times, ticks, asked, 3000) - truth).max() < QUARTER / 8


@pytest.mark.parametrize("ratio", [1.0, 1.5, 2.0, 3.0])
def test_swing_is_measured_and_taken_out(ratio: float) -> None:
    """A long-short ratio r puts the second eighth at r / (r + 1) of the beat (arithmetic)."""
    share = ratio / (ratio + 1)
    plain = np.arange(0, 32 * QUARTER, EIGHTH)
    played = np.where(plain % QUARTER, plain - EIGHTH + share * QUARTER, plain)
    lateness = [(int(tick % QUARTER), float(late - tick - 50)) for tick, late in zip(plain, played, strict=True)]
    assert long_share(lateness) == pytest.approx(share)
    assert straightened(played, share) == pytest.approx(plain)
