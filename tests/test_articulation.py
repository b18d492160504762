"""The second pass over a line: slurs, signs, levels and hairpins. What is expected is common practice of wind playing."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise, product
from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import fioritura
from fioritura import Setting
from fioritura.notation.written_part import slurs
from fioritura.players import articulation
from fioritura.players.articulation import articulated
from fioritura.players.shading import shaded
from fioritura.sound.dynamics import loudness_of
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import DYNAMIC_MARKS, Bar, Mark, Note, Tune, hairpins
from tests.corpus_tunes import corpus_tunes

COMMON = Metre(4, 4)
SIGNS = {Mark.STACCATO, Mark.TENUTO, Mark.ACCENT, Mark.MARCATO}


def tune_of(*notes: tuple[str | None, int], **marks: tuple[Mark, ...]) -> Tune:
    """A tune of (pitch, ticks); None is a rest."""
    line: list[Note] = []
    at = 0
    for name, ticks in notes:
        if name is not None:
            line.append(Note(at, ticks, Pitch.parse(name), anchor=len(line), phrase=0))
        at += ticks
    count = -(-at // COMMON.bar_ticks)
    bars = tuple(Bar(n + 1, n * COMMON.bar_ticks, COMMON.bar_ticks, COMMON, Key(0)) for n in range(count))
    return Tune("", tuple(line), bars)


def unsigned_tunes() -> list[Tune]:
    """Tunes of the corpus (every twentieth of those read) without signs of their own."""
    return [tune for tune in corpus_tunes()[::100] if not any(note.marks for note in tune.notes)]


def swing(level: int = 4, tempo: float = 140, **changes: object) -> Setting:
    return Setting("alto-sax", level=level, tempo=tempo, feel="swing").changed(**changes)


def test_swing_eighths_are_slurred_onto_the_beat_and_tongued_off_it() -> None:
    tune = tune_of(*((name, EIGHTH) for name in ["C4", "D4", "E4", "F4", "G4", "A4", "B4", "C5"]))
    assert list(slurs(articulated(tune, tune.notes, swing()))) == [(1, 2), (3, 4), (5, 6)]


def test_an_off_beat_held_over_the_beat_is_accented() -> None:
    off = tune_of(("G4", EIGHTH), (None, QUARTER), ("C5", QUARTER), (None, EIGHTH))
    assert Mark.ACCENT in articulated(off, off.notes, swing())[1].marks
    assert not SIGNS & set(articulated(off, off.notes, swing(level=2))[1].marks)


def test_a_repeated_note_is_tongued_and_held_in_a_ballad() -> None:
    tune = tune_of(("C5", QUARTER), ("C5", QUARTER), ("B4", QUARTER), ("A4", QUARTER))
    line = articulated(tune, tune.notes, swing(tempo=66))
    assert Mark.TENUTO in line[1].marks
    assert list(slurs(line)) == [(1, 3)]


def test_what_is_too_quick_for_the_tongue_is_slurred() -> None:
    tune = tune_of(*((name, EIGHTH // 2) for name in ["C4", "D4", "E4", "F4", "G4", "F4", "E4", "D4"]))
    line = articulated(tune, tune.notes, swing(tempo=160, level=5))
    assert list(slurs(line)) == [(0, 7)]


@given(
    st.lists(
        st.tuples(st.sampled_from(("C4", "D4", "Eb4", "F#4", "G4", "C5", "D5")), st.sampled_from((EIGHTH, QUARTER))),
        min_size=2,
        max_size=9,
    ),
    st.sampled_from((70.0, 150.0)),
    st.integers(1, 5),
    st.sampled_from(("jazz", "folk")),
)
@settings(max_examples=60, deadline=None)
def test_the_division_under_slurs_is_the_cheapest_of_all(
    notes: list[tuple[str, int]], tempo: float, level: int, idiom: str
) -> None:
    """Against every division of the phrase."""
    tune = tune_of(*notes)
    writing = articulation._Writing(tune, tune.notes, swing(level=level, tempo=tempo, idiom=idiom))
    longest = articulation._LONGEST_SLUR[level]
    joints = [writing._slurring(number) for number in range(len(notes) - 1)]

    def cost(groups: list[tuple[int, int]]) -> float:
        inside = sum(
            sum(joints[start : stop - 1]) + articulation._EDGE * (stop - start > 1) for start, stop in groups
        )
        return inf if any(stop - start > longest for start, stop in groups) else inside

    divisions = []
    for cuts in product((True, False), repeat=len(notes) - 1):
        edges = [0, *(number + 1 for number, is_cut in enumerate(cuts) if is_cut), len(notes)]
        divisions.append(cost(list(pairwise(edges))))
    assert cost(writing.groups(0, len(notes) - 1)) == pytest.approx(min(divisions))


@pytest.mark.parametrize("level", [1, 3, 5])
def test_no_slur_goes_over_a_rest_a_breath_or_the_same_note_twice(level: int) -> None:
    for tune in unsigned_tunes():
        line = fioritura.ornament(tune, Setting("alto-sax", level=level)).line
        for start, stop in slurs(line):
            for before, note in pairwise(line[start : stop + 1]):
                if not before.figures and not note.figures:
                    assert before.end_ticks == note.onset_ticks and Mark.BREATH not in before.marks
                    assert before.pitch.midi != note.pitch.midi
        signed = [SIGNS & set(note.marks) for note in line]
        assert not any(signed) or level > 1
        assert max(map(len, signed), default=0) <= 1


def test_a_tune_with_signs_of_its_own_gets_no_others() -> None:
    tune = tune_of(("C4", EIGHTH), ("D4", EIGHTH), ("E4", QUARTER), ("G4", 2 * QUARTER))
    first, *others = tune.notes
    tune = replace(tune, notes=(replace(first, marks=(Mark.STACCATO, Mark.MEZZO_PIANO)), *others))
    assert articulated(tune, tune.notes, swing()) == shaded(tune, tune.notes, swing()) == tune.notes


def test_levels_and_hairpins_pair_and_are_few() -> None:
    for tune in unsigned_tunes():
        line = fioritura.ornament(tune, Setting("alto-sax", level=4)).line
        phrases = len({note.phrase for note in line})
        wedges = list(hairpins(line))
        assert len(wedges) <= phrases
        assert 2 * len(wedges) == sum(
            mark in {Mark.CRESCENDO, Mark.DIMINUENDO, Mark.HAIRPIN_STOP} for note in line for mark in note.marks
        )
        assert sum(kind is not None for *_, kind in wedges) == len(wedges)
        for start, stop, kind in wedges:
            if kind is Mark.CRESCENDO:
                assert line[stop + 1].pitch.midi > line[start].pitch.midi


def test_what_is_printed_is_played() -> None:
    """A level is louder than the one below it; a note under a crescendo is louder than without, the later the more."""
    names = ["C4", "D4", "E4", "F4", "G4", "G4", "G4", "G4"]
    plain = tune_of(*((name, QUARTER) for name in names))

    def played(**marks: tuple[Mark, ...]) -> list[float]:
        line = [replace(note, marks=marks.get(f"n{number}", ())) for number, note in enumerate(plain.notes)]
        return loudness_of(plain, line, "straight", [(0, 7)])

    soft, loud = played(n0=(Mark.PIANO,)), played(n0=(Mark.FORTE,))
    assert all(one < other - 20 for one, other in zip(soft, loud, strict=True))
    grown = played(n0=(Mark.PIANO, Mark.CRESCENDO), n3=(Mark.HAIRPIN_STOP,))
    gains = [one - other for one, other in zip(grown, soft, strict=True)]
    assert gains[0] == 0 < gains[1] < gains[2] < gains[3]
    assert played(n0=(Mark.PIANO, Mark.CRESCENDO), n3=(Mark.HAIRPIN_STOP,), n4=(Mark.FORTE,))[4:] == loud[4:]


def test_the_plain_line_stays_plain() -> None:
    tune = fioritura.demo_tune()
    rendition = fioritura.ornament(tune, Setting("alto-sax", level=4))
    assert not any((SIGNS | DYNAMIC_MARKS | {Mark.SLUR_START}) & set(note.marks) for note in rendition.plain_line)
