"""The last step of every reader: bars that add up, numbers, ties, slurs, chord spans.

That a pickup is bar 0, that a short bar beside a repeat sign is the other half of one, and that ties make one note
is common practice (from memory: E. Gould, Behind Bars, on upbeats and repeats).
"""

from __future__ import annotations

from typing import Any

import pytest

from fioritura.errors import TuneError
from fioritura.notation.assemble import (
    RawBar,
    RawChord,
    RawNote,
    RawTempo,
    RawTune,
    assemble,
    bar_numbers,
    feel_in,
    free_metre,
    quarter_notes,
)
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, Jump, Mark
from fioritura.unfold import playing_order
from fioritura.words import say

FOUR, C = Metre(4, 4), Key(0)


def bar(quarters: float, **signs: Any) -> RawBar:
    """A bar of 4/4 filled with one C4."""
    ticks = int(quarters * QUARTER)
    return RawBar(FOUR, C, ticks, [RawNote(0, ticks, Pitch.parse("C4"))] if ticks else [], **signs)


def bars_of(*bars: RawBar) -> tuple[Bar, ...]:
    return assemble(RawTune(list(bars))).bars


def line(*raw_notes: tuple[str, float], **options: Any) -> RawTune:
    """A tune of 4/4 bars from (name, quarters); a name ending in ~ is tied on."""
    bars, offset = [RawBar(FOUR, C, 4 * QUARTER)], 0
    for name, quarters in raw_notes:
        if offset == 4 * QUARTER:
            bars.append(RawBar(FOUR, C, 4 * QUARTER))
            offset = 0
        ticks = int(quarters * QUARTER)
        bars[-1].notes.append(RawNote(offset, ticks, Pitch.parse(name.rstrip("~")), is_tied=name.endswith("~")))
        offset += ticks
    return RawTune(bars, **options)


def test_a_short_first_bar_is_bar_0_and_its_beats_count_back() -> None:
    tune = assemble(RawTune([bar(1), bar(4), bar(3)]))
    assert [b.number for b in tune.bars] == [0, 1, 2]
    assert tune.pickup_ticks == QUARTER
    assert tune.beat_at(0) == (0, 4.0)


def test_two_halves_around_a_repeat_sign_share_a_number_and_a_bar() -> None:
    tune = assemble(RawTune([bar(4), bar(3, repeats=1), bar(1, opens_repeat=True), bar(4)]))
    assert [b.number for b in tune.bars] == [1, 2, 2, 3]
    assert tune.beat_at(tune.bars[2].start_ticks) == (2, 4.0)


def test_a_section_may_open_with_a_pickup_of_its_own() -> None:
    tune = assemble(RawTune([bar(4), bar(4, ends_section=True), bar(1), bar(4)]))
    assert [b.number for b in tune.bars] == [1, 2, 3, 4]
    assert tune.beat_at(tune.bars[2].start_ticks) == (3, 4.0)


@pytest.mark.parametrize(
    "quarters, held", [(5, "5 quarter notes"), (3.5, "3.5 quarter notes"), (1, "1 quarter note")]
)
def test_a_bar_that_does_not_add_up_is_refused_by_number(quarters: float, held: str) -> None:
    raw = RawTune([bar(4), bar(4), bar(quarters), bar(4)])
    with pytest.raises(TuneError, match=rf"^bar 3 holds {held} where 4/4 has 4: .*keep the bars as they are\.$"):
        assemble(raw)


def test_an_irregular_bar_is_kept_at_its_own_length_on_request() -> None:
    tune = assemble(RawTune([bar(4), bar(5), bar(4)], source="tune X:3"), irregular="keep")
    assert [b.duration_ticks // QUARTER for b in tune.bars] == [4, 5, 4]
    (warning,) = map(say, tune.warnings)
    assert warning == "tune X:3: bar 2 holds 5 quarter notes where 4/4 has 4: kept as it is"


@pytest.mark.parametrize(
    "signs",
    [
        [{}, {"is_implicit": True}, {}],
        [{}, {"repeats": 1}, {}],
        [{}, {"ends_section": True}, {}],
        [{}, {"jumps": (Jump.FINE,)}, {}],
        [{"repeats": 1}, {}, {}],
    ],
)
def test_a_short_bar_beside_a_sign_or_marked_as_implicit_is_no_fault(signs: list[dict[str, Any]]) -> None:
    contents = [bar(quarters, **sign) for quarters, sign in zip((4, 3, 4), signs, strict=True)]
    assert len(bars_of(*contents)) == 3


def test_a_long_bar_is_a_fault_even_beside_a_repeat_sign() -> None:
    with pytest.raises(TuneError, match="bar 2 holds 5"):
        bars_of(bar(4), bar(5, repeats=1), bar(4))


def test_a_silent_bar_is_full_and_a_bar_without_metre_has_that_of_its_content() -> None:
    free = bar(5, is_free=True)
    bars = bars_of(bar(4), bar(0), free)
    assert [b.duration_ticks // QUARTER for b in bars] == [4, 4, 5]
    assert str(bars[2].metre) == "5/4"


@pytest.mark.parametrize("ticks, metre", [(QUARTER * 3, "3/4"), (EIGHTH * 7, "7/8"), (QUARTER * 40, "20/2")])
def test_free_metre_holds_the_content_exactly(ticks: int, metre: str) -> None:
    assert str(free_metre(ticks)) == metre
    assert free_metre(ticks).bar_ticks == ticks


def test_free_metre_refuses_what_no_metre_holds() -> None:
    with pytest.raises(TuneError, match="set bar lines"):
        free_metre(QUARTER * 400)


def test_thousands_of_short_bars_are_numbered_without_recursion() -> None:
    assert len(bar_numbers([bar(2, is_implicit=True) for _ in range(5000)])) == 5000


def test_tied_notes_become_one_over_the_bar_line() -> None:
    tune = assemble(line(("C4", 2), ("D4~", 2), ("D4~", 4), ("D4", 1), ("E4", 3)))
    assert [(str(n.pitch), n.duration_ticks // QUARTER) for n in tune.notes] == [("C4", 2), ("D4", 7), ("E4", 3)]


def test_a_tie_that_leads_nowhere_changes_nothing() -> None:
    tune = assemble(line(("C4~", 2), ("D4", 2)))
    assert [n.duration_ticks // QUARTER for n in tune.notes] == [2, 2]


def test_enharmonic_ties_join_and_a_gap_does_not() -> None:
    raw = line(("Db4~", 2), ("C#4", 1), ("C#4~", 1))
    raw.bars.append(RawBar(FOUR, C, 4 * QUARTER, [RawNote(QUARTER, QUARTER, Pitch.parse("C#4"))]))
    assert [n.duration_ticks // QUARTER for n in assemble(raw).notes] == [3, 1, 1]


def marks_after(*marks: tuple[Mark, ...]) -> list[tuple[Mark, ...]]:
    notes = [RawNote(i * QUARTER, QUARTER, Pitch(28 + i), marks=m) for i, m in enumerate(marks)]
    return [n.marks for n in assemble(RawTune([RawBar(FOUR, C, 4 * QUARTER, notes)])).notes]


START, STOP = Mark.SLUR_START, Mark.SLUR_STOP


def test_nested_slurs_become_the_outermost_one() -> None:
    assert marks_after((START,), (START,), (STOP,), (STOP,)) == [(START,), (), (), (STOP,)]


def test_slurs_that_meet_on_a_note_stay_apart() -> None:
    assert marks_after((START,), (STOP, START), (STOP,), ()) == [(START,), (STOP, START), (STOP,), ()]


def test_open_and_orphaned_slurs_are_dropped_and_other_marks_stay() -> None:
    assert marks_after((STOP, Mark.ACCENT), (START, Mark.ROLL), (), ()) == [(Mark.ACCENT,), (Mark.ROLL,), (), ()]


def order(*bars: RawBar) -> list[int]:
    return [index + 1 for index in playing_order(bars_of(*bars))]


def test_endings_play_as_their_numbers_say() -> None:
    first, second = {"endings": (1,), "repeats": 1}, {"endings": (2,)}
    assert order(bar(4), bar(4, **first), bar(4, **second), bar(4)) == [1, 2, 1, 3, 4]
    assert order(bar(4), bar(4, **first), bar(4, endings=(2,), repeats=1), bar(4)) == [1, 2, 1, 3, 4]
    both = {"endings": (1, 2), "repeats": 1}
    assert order(bar(4), bar(4, **both), bar(4, endings=(3,)), bar(4)) == [1, 2, 1, 2, 1, 3, 4]
    assert order(bar(4), bar(4, **first), bar(4, endings=(2, 3), repeats=1)) == [1, 2, 1, 3, 1, 3]


def test_chord_spans_last_to_the_next_one_and_the_last_to_the_end() -> None:
    raw = line(("C4", 4), ("D4", 4))
    raw.bars[0].chords = [RawChord(0, "C"), RawChord(2 * QUARTER, "Dm7")]
    raw.bars[1].chords = [RawChord(QUARTER, "N.C.")]
    spans = assemble(raw).chords
    assert [(s.text, s.onset_ticks // QUARTER, s.duration_ticks // QUARTER) for s in spans] == [
        ("C", 0, 2),
        ("Dm7", 2, 3),
        ("N.C.", 5, 3),
    ]
    assert spans[1].chord and spans[1].chord.kind == "minor-seventh"
    assert spans[2].chord is None


def test_a_chord_that_can_not_be_read_is_kept_as_text_and_reported() -> None:
    raw = line(("C4", 4), ("D4", 4))
    raw.bars[1].chords = [RawChord(0, "Hmm7!")]
    tune = assemble(raw)
    assert (tune.chords[0].text, tune.chords[0].chord) == ("Hmm7!", None)
    assert "bar 2: “Hmm7!” can't be read as a chord symbol" in say(tune.warnings[0])


def test_two_chords_at_one_place_are_reported() -> None:
    raw = line(("C4", 4))
    raw.bars[0].chords = [RawChord(0, "C"), RawChord(0, "F")]
    tune = assemble(raw)
    assert [span.text for span in tune.chords] == ["F"]
    assert "“C” is left out" in say(tune.warnings[0])


@pytest.mark.parametrize("tempo", [19.9, 401, 0, float("inf")])
def test_an_absurd_tempo_is_refused(tempo: float) -> None:
    raw = line(("C4", 4))
    raw.bars[0].tempos = [RawTempo(0, tempo)]
    with pytest.raises(TuneError, match=r"bar 1 has a tempo of .* 20 to 400"):
        assemble(raw)


def test_no_notes_and_chords_only_are_told_apart() -> None:
    empty = RawBar(FOUR, C)
    with pytest.raises(TuneError, match="no notes"):
        assemble(RawTune([empty]))
    empty.chords = [RawChord(0, "C")]
    with pytest.raises(TuneError, match="chord symbols but no melody"):
        assemble(RawTune([empty]))


def test_overlapping_notes_are_refused_with_a_remedy() -> None:
    raw = RawTune(
        [RawBar(FOUR, C, 4 * QUARTER, [RawNote(0, 2 * QUARTER, Pitch(28)), RawNote(QUARTER, QUARTER, Pitch(30))])]
    )
    with pytest.raises(TuneError, match=r"bar 1 has E4 while C4 still sounds.*choose another part"):
        assemble(raw)


@pytest.mark.parametrize(
    "words, feel",
    [
        (["Medium swing"], "swing"),
        (["Swingin' it"], "swing"),
        (["Slow shuffle"], "swing"),
        (["Straight eighths", "swing"], "straight"),
        (["no swing"], "straight"),
        (["Bossa nova"], None),
        ([], None),
    ],
)
def test_style_words_name_the_feel(words: list[str], feel: str | None) -> None:
    assert feel_in(words) == feel


@pytest.mark.parametrize("quarters, text", [(1, "1 quarter note"), (2.5, "2.5 quarter notes")])
def test_lengths_in_words(quarters: float, text: str) -> None:
    assert say(quarter_notes(int(quarters * QUARTER))) == text
    assert say(quarter_notes(QUARTER // 3)) == "1/3 quarter notes"
