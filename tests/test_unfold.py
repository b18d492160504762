"""Playing order against music21's `repeat.Expander`; da capo and dal segno as worked examples of common practice."""

from __future__ import annotations

from dataclasses import replace
from itertools import groupby
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from music21 import bar as m21_bar
from music21 import note as m21_note
from music21 import repeat as m21_repeat
from music21 import spanner as m21_spanner
from music21 import stream as m21_stream

from fioritura.errors import TuneError
from fioritura.theory.chord_symbol import read_chord
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER, WHOLE, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, ChordSpan, Jump, Note, Tempo, Tune
from fioritura.unfold import playing_order, unfolded

METRE, KEY = Metre(4, 4), Key(0)


def bars_of(*changes: dict[str, Any]) -> list[Bar]:
    """Full bars in 4/4, one for each dictionary of changes."""
    return [
        replace(Bar(number, (number - 1) * WHOLE, WHOLE, METRE, KEY), **change)
        for number, change in enumerate(changes, start=1)
    ]


def m21_order(bars: list[Bar]) -> list[int]:
    """The order in which music21 plays the bars."""
    part = m21_stream.Part()
    measures = []
    for index, bar in enumerate(bars):
        measure = m21_stream.Measure(number=bar.number)
        measure.append(m21_note.Note(midi=36 + index, quarterLength=4))
        if bar.opens_repeat:
            measure.leftBarline = m21_bar.Repeat(direction="start")
        if bar.repeats:
            measure.rightBarline = m21_bar.Repeat(direction="end", times=bar.repeats + 1)
        for jump in bar.jumps:
            measure.append(M21_JUMPS[jump]())
        part.append(measure)
        measures.append(measure)
    for index, bar in enumerate(bars):
        if bar.endings and (index == 0 or bars[index - 1].endings != bar.endings):
            last = index
            while last + 1 < len(bars) and bars[last + 1].endings == bar.endings:
                last += 1
            number = ",".join(map(str, bar.endings))
            part.insert(0, m21_spanner.RepeatBracket(measures[index : last + 1], number=number))
    return [note.pitch.midi - 36 for note in m21_repeat.Expander(part).process().recurse().notes]


M21_JUMPS = {
    Jump.SEGNO: m21_repeat.Segno,
    Jump.CODA: m21_repeat.Coda,
    Jump.FINE: m21_repeat.Fine,
    Jump.DA_CAPO: m21_repeat.DaCapoAlFine,
    Jump.DAL_SEGNO: m21_repeat.DalSegnoAlFine,
}


@st.composite
def repeated_sections(draw: st.DrawFn) -> list[Bar]:
    """Sections that are played once, repeated, or repeated with a first and second ending."""
    changes: list[dict[str, object]] = []
    for number in range(draw(st.integers(1, 4))):
        kind = draw(st.sampled_from(["once", "repeat", "endings"]))
        body: list[dict[str, object]] = [{} for _ in range(draw(st.integers(1, 3)))]
        if kind != "once" and (number or draw(st.booleans())):
            body[0]["opens_repeat"] = True
        if kind == "repeat":
            body[-1]["repeats"] = draw(st.integers(1, 2))
        if kind == "endings":
            first: list[dict[str, object]] = [{"endings": (1,)} for _ in range(draw(st.integers(1, 2)))]
            second: list[dict[str, object]] = [{"endings": (2,)} for _ in range(draw(st.integers(1, 2)))]
            first[-1]["repeats"] = 1
            body += first + second
        changes += body
    return bars_of(*changes)


@settings(max_examples=60, deadline=None)
@given(repeated_sections())
def test_repeats_and_endings_play_as_in_music21(bars: list[Bar]) -> None:
    assert playing_order(bars) == m21_order(bars)


@pytest.mark.parametrize(
    "bars",
    [
        bars_of({}, {"jumps": (Jump.FINE,)}, {}, {"jumps": (Jump.DA_CAPO,)}),
        bars_of({}, {"jumps": (Jump.SEGNO,)}, {"jumps": (Jump.FINE,)}, {"jumps": (Jump.DAL_SEGNO,)}),
    ],
)
def test_da_capo_and_dal_segno_al_fine_play_as_in_music21(bars: list[Bar]) -> None:
    assert playing_order(bars) == m21_order(bars)


@pytest.mark.parametrize(
    ("bars", "order"),
    [
        # Three passes under a first ending for two of them.
        (bars_of({}, {"endings": (1, 2), "repeats": 2}, {"endings": (3,)}), [0, 1, 0, 1, 0, 2]),
        # Da capo al fine does not repeat again.
        (
            bars_of({"opens_repeat": True}, {"repeats": 1, "jumps": (Jump.FINE,)}, {}, {"jumps": (Jump.DA_CAPO,)}),
            [0, 1, 0, 1, 2, 3, 0, 1],
        ),
        # Da capo takes the last ending.
        (
            bars_of({}, {"endings": (1,), "repeats": 1}, {"endings": (2,)}, {"jumps": (Jump.DA_CAPO,)}),
            [0, 1, 0, 2, 3, 0, 2, 3],
        ),
        # Dal segno al coda leaves at To Coda.
        (
            bars_of(
                {},
                {"jumps": (Jump.SEGNO,)},
                {"jumps": (Jump.TO_CODA,)},
                {"jumps": (Jump.DAL_SEGNO,)},
                {"jumps": (Jump.CODA,)},
            ),
            [0, 1, 2, 3, 1, 2, 4],
        ),
        # Da capo al coda.
        (
            bars_of({}, {"jumps": (Jump.TO_CODA,)}, {"jumps": (Jump.DA_CAPO,)}, {"jumps": (Jump.CODA,)}, {}),
            [0, 1, 2, 0, 1, 3, 4],
        ),
        # A second ending to which no repeat leads is played all the same.
        (bars_of({}, {"endings": (2,)}, {}), [0, 1, 2]),
        (bars_of({}, {"endings": (1,), "repeats": 1}, {}, {"endings": (2,)}), [0, 1, 0, 2, 3]),
    ],
)
def test_worked_orders(bars: list[Bar], order: list[int]) -> None:
    assert playing_order(bars) == order


def test_a_da_capo_is_taken_once() -> None:
    assert playing_order(bars_of({}, {"jumps": (Jump.DA_CAPO,)})) == [0, 1, 0, 1]


def test_jumps_past_every_note_are_refused() -> None:
    tune = tune_of(bars_of({"jumps": (Jump.DA_CAPO, Jump.TO_CODA)}, {}, {"jumps": (Jump.CODA,)}))
    skipped = tune.bars[1]
    silent = replace(
        tune, notes=tuple(note for note in tune.notes if skipped.start_ticks <= note.onset_ticks < skipped.end_ticks)
    )
    with pytest.raises(TuneError, match="every note"):
        unfolded(silent)


def test_too_many_repeats_are_refused() -> None:
    with pytest.raises(TuneError, match="5,000"):
        playing_order(bars_of({"repeats": 6000}))


def tune_of(bars: list[Bar]) -> Tune:
    """A tune of two half notes a bar with a chord over each bar and a tempo at the start of each."""
    notes = tuple(
        Note(bar.start_ticks + half * WHOLE // 2, WHOLE // 2, Pitch(28 + 2 * bar.number + half))
        for bar in bars
        for half in (0, 1)
    )
    chord = read_chord("C7")
    chords = tuple(ChordSpan(bar.start_ticks, WHOLE, chord, f"C{bar.number}") for bar in bars)
    tempos = tuple(Tempo(bar.start_ticks, 60.0 + bar.number) for bar in bars)
    return Tune("", notes, tuple(bars), chords, tempos)


@settings(max_examples=60, deadline=None)
@given(repeated_sections())
def test_unfolding_carries_notes_chords_and_tempos_along(bars: list[Bar]) -> None:
    tune = tune_of(bars)
    order = playing_order(bars)
    played = unfolded(tune)
    assert [note.pitch.step for note in played.notes] == [
        28 + 2 * bars[index].number + half for index in order for half in (0, 1)
    ]
    assert [note.onset_ticks for note in played.notes] == [n * WHOLE // 2 for n in range(2 * len(order))]
    assert [bar.start_ticks for bar in played.bars] == [n * WHOLE for n in range(len(order))]
    assert [bar.number for bar in played.bars] == list(range(1, len(order) + 1))
    assert [span.text for span in played.chords] == [f"C{bars[index].number}" for index in order]
    assert sum(span.duration_ticks for span in played.chords) == played.duration_ticks
    changes = [number for number, _ in groupby(60.0 + bars[index].number for index in order)]
    assert [tempo.quarters_per_minute for tempo in played.tempos] == changes
    assert unfolded(played) == played


def test_a_bar_that_a_repeat_sign_splits_becomes_one() -> None:
    first = Bar(0, 0, QUARTER, METRE, KEY, opens_repeat=True)
    middle = Bar(1, QUARTER, WHOLE, METRE, KEY)
    last = Bar(2, QUARTER + WHOLE, 3 * QUARTER, METRE, KEY, repeats=1)
    notes = (
        Note(0, QUARTER, Pitch(28)),
        Note(QUARTER, WHOLE, Pitch(29)),
        Note(QUARTER + WHOLE, 3 * QUARTER, Pitch(30)),
    )
    played = unfolded(Tune("", notes, (first, middle, last)))
    assert [(bar.number, bar.duration_ticks) for bar in played.bars] == [
        (0, QUARTER), (1, WHOLE), (2, WHOLE), (3, WHOLE), (4, 3 * QUARTER)
    ]  # fmt: skip
    assert [note.pitch.step for note in played.notes] == [28, 29, 30, 28, 29, 30]
