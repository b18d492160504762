"""Written rhythm.

Outside checks: music21 for the length of every note value, dot and tuplet; Gould, "Behind Bars", and Read, "Music
Notation", for the table of examples (both from memory, so read it as common practice).
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import pairwise

import music21
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.errors import TuneError
from fioritura.notation.rhythm import TYPE_NAMES, WrittenBar, WrittenEvent, written_bars
from fioritura.theory.key import Key
from fioritura.theory.metre import QUARTER, Metre
from fioritura.theory.pitch import Pitch
from fioritura.tune import Bar, Note
from tests.notation_strategies import METRES, Lines, bar_rows, beat_lines, grid_lines, odd_lines

Case = tuple[tuple[Note, ...], tuple[Bar, ...]]
_LETTERS = {1: "w", 2: "h", 4: "q", 8: "e", 16: "s", 32: "t", 64: "x"}


def spelled(metre_text: str, rhythm: str, pickup: bool = False) -> str:
    """A rhythm in quarters ("1 1/2 r1/2"), written: letters for values, ~ ties, r rests, 3:2(...) tuplets,
    [...] around each beamed group."""
    metre = Metre.parse(metre_text)
    place, line = 0, []
    for word in rhythm.split():
        length = Fraction(word.removeprefix("r")) * QUARTER
        assert length.denominator == 1
        if not word.startswith("r"):
            line.append(Note(place, int(length), Pitch(30)))
        place += int(length)
    full = metre.bar_ticks
    if pickup:
        bars = [Bar(0, 0, place, metre, Key(0))]
    else:
        bars = [Bar(n + 1, n * full, full, metre, Key(0)) for n in range(-(-place // full))]
    return " | ".join(" ".join(map(_spelled_event, bar.events)) for bar in written_bars(line, bars))


def _spelled_event(event: WrittenEvent) -> str:
    opens = f"{event.tuplet.actual}:{event.tuplet.normal}(" if event.tuplet and event.tuplet.starts else ""
    closes = ")" if event.tuplet and event.tuplet.stops else ""
    beam = event.beams[0] if event.beams else ""
    text = ("r" if event.is_rest else "") + _LETTERS[event.value] + "." * event.dots + "~" * event.ties_on
    return opens + "[" * (beam == "begin") + text + "]" * (beam == "end") + closes


EXAMPLES = [
    # The middle of a 4/4 bar stays visible; half notes on the second beat and dotted halves may cross it.
    ("4/4", "1 2 1", "q h q"),
    ("4/4", "1 3", "q h."),
    ("4/4", "3 1", "h. q"),
    ("4/4", "4", "w"),
    ("4/4", "1/2 1 1 1 1/2", "e q e~ e q e"),
    ("4/4", "1/2 1 1/2 3/2 1/2", "e q e q. e"),
    ("4/4", "1/2 3/2 1/2 3/2", "e q. e q."),
    ("4/4", "1 3/2 3/2", "q q~ e q."),
    ("4/4", "7/2 1/2", "h~ q. e"),
    ("4/4", "5/2 3/2", "h~ e q."),
    ("4/4", "5/4 3/4 2", "q~ [s e.] h"),
    # Sixteenths show every beat.
    ("4/4", "3/4 1/4 1/4 3/4 1/4 1/2 1/4 1", "[e. s] [s e.] [s e s] q"),
    ("4/4", "3/4 1/2 3/4 2", "[e. s~] [s e.] h"),
    ("2/4", "3/4 1 1/4", "[e. s~] [e. s]"),
    # Eighths by half-bars in 4/4, by beats as soon as anything is shorter; a rest breaks the beam.
    ("4/4", " ".join(["1/2"] * 8), "[e e e e] [e e e e]"),
    ("4/4", "1/2 1/4 1/4 1/2 1/2 r1/2 1/2 1/2 1/2", "[e s s] [e e] re [e e e]"),
    ("3/4", " ".join(["1/2"] * 6), "[e e] [e e] [e e]"),
    ("2/2", " ".join(["1/2"] * 8), "[e e e e] [e e e e]"),
    # Rests fill cells: never across the middle, not syncopated; an empty bar has a whole rest in any metre.
    ("4/4", "r1/2 1/2 r3/2 1/4 r1/4 r1", "re e rq re s rs rq"),
    ("4/4", "1 r2 1", "q rq rq q"),
    ("4/4", "1 r3", "q rq rh"),
    ("4/4", "r3 1", "rh rq q"),
    ("4/4", "r3/4 1/4 3", "re rs s h."),
    ("3/4", "1 r2", "q rq rq"),
    ("3/4", "1 1 1 r3", "q q q | rw"),
    ("6/8", "3 r3", "h. | rw"),
    ("6/8", "r1 1/2 1/2 r1", "rq e e re re"),
    ("12/8", "r3 3", "rh. h."),
    # Three beats.
    ("3/4", "3/2 3/2", "q. q."),
    ("3/4", "5/2 1/2", "h~ [e e]"),
    ("3/4", "1/2 1 1 1/2", "e q q e"),
    # Compound metres by dotted beats.
    ("6/8", "1 1/2 1/2 1", "q e e q"),
    ("6/8", "1 1 1", "q e~ e q"),
    ("6/8", "2 1", "q.~ e q"),
    ("6/8", "3/4 1/4 1/2 1/2 1/2 1/2", "[e. s e] [e e e]"),
    ("6/8", "3/4 3/4 3/2", "[e. e.] q."),
    ("6/8", "3/8 3/8 3/8 3/8 3/2", "4:3([e e e e]) q."),
    ("9/8", "9/2", "h.~ q."),
    ("9/8", "3/2 3", "q. h."),
    ("12/8", "3/2 3 3/2", "q. h. q."),
    ("12/8", "6", "w."),
    # Uneven metres by groups (3+2, 2+2+3).
    ("5/8", " ".join(["1/2"] * 5), "[e e e] [e e]"),
    ("7/8", " ".join(["1/2"] * 7), "[e e] [e e] [e e e]"),
    ("5/8", "5/2", "q.~ q"),
    ("5/4", "5", "h.~ h"),
    ("7/8", "2 3/2", "h q."),
    # Tuplets: per beat, per half-bar, tied from before, inside an eighth, with rests.
    ("4/4", "1/3 1/3 1/3 2/3 1/3 1/3 2/3 1", "3:2([e e e]) 3:2(q e) 3:2(e q) q"),
    ("4/4", "2/3 2/3 2/3 2/3 1/3 1/3 2/3", "3:2(q q q) 3:2(q e) 3:2(e q)"),
    ("4/4", "4/3 4/3 4/3", "3:2(h h h)"),
    ("4/4", "4/3 1/3 1/3 2", "q~ 3:2([e e e]) h"),
    ("4/4", "1/2 1/6 1/6 1/6 3", "e 3:2([s s s]) h."),
    ("4/4", " ".join(["1/6"] * 6) + " 3", "6:4([s s s s s s]) h."),
    ("4/4", "1/6 1/6 1/3 1/3 3", "3:2([s s e e]) h."),
    ("4/4", " ".join(["1/5"] * 5) + " " + " ".join(["1/7"] * 7) + " 2", "5:4([s s s s s]) 7:4([s s s s s s s]) h"),
    ("4/4", " ".join(["2/5"] * 5) + " 2", "5:4([e e e e e]) h"),
    ("4/4", "1/3 r1/3 1/3 r2/3 1/3 2", "3:2(e re e) 3:2(rq e) h"),
    ("2/2", " ".join(["1/3"] * 6) + " 2", "3:2([e e e]) 3:2([e e e]) h"),
]


@pytest.mark.parametrize(("metre", "rhythm", "expected"), EXAMPLES)
def test_common_practice(metre: str, rhythm: str, expected: str) -> None:
    assert spelled(metre, rhythm) == expected


@pytest.mark.parametrize(
    ("metre", "rhythm", "expected"),
    [("4/4", "1/2 1/2", "[e e]"), ("4/4", "1 3/2", "e~ e q."), ("4/4", "1/3", "3:2(e)"), ("6/8", "1/2 1", "e q")],
)
def test_a_pickup_lies_at_the_end_of_its_metre(metre: str, rhythm: str, expected: str) -> None:
    assert spelled(metre, rhythm, pickup=True) == expected


@st.composite
def lines_in_bars(draw: st.DrawFn, lines: Lines = grid_lines) -> Case:
    bars = draw(bar_rows())
    return draw(lines(bars)), bars


def merged(bars: Iterable[WrittenBar]) -> list[tuple[int, int, Pitch]]:
    """Notes put together again from their written pieces."""
    notes: list[tuple[int, int, Pitch]] = []
    for event in (event for bar in bars for event in bar.events if not event.is_rest):
        assert event.note is not None
        if event.tied_from_before:
            onset, length, pitch = notes.pop()
            assert onset + length == event.onset_ticks
            assert pitch == event.note.pitch
            notes.append((onset, length + event.duration_ticks, pitch))
        else:
            notes.append((event.onset_ticks, event.duration_ticks, event.note.pitch))
    return notes


def check_sums(line: Sequence[Note], bars: tuple[Bar, ...], written: Sequence[WrittenBar]) -> None:
    assert tuple(bar.bar for bar in written) == bars
    for bar in written:
        place = bar.bar.start_ticks
        for event in bar.events:
            assert event.onset_ticks == place
            assert event.duration_ticks > 0
            place = event.end_ticks
        assert place == bar.bar.end_ticks
    assert merged(written) == [(note.onset_ticks, note.duration_ticks, note.pitch) for note in line]
    events = [event for bar in written for event in bar.events]
    for first, second in pairwise(events):
        assert first.ties_on == second.tied_from_before
        assert first.index != second.index or first.ties_on or first.is_rest
    assert all(event.is_rest if event.index is None else line[event.index] is event.note for event in events)


@given(lines_in_bars())
def test_pieces_fill_the_bars_and_join_to_the_line(case: Case) -> None:
    line, bars = case
    check_sums(line, bars, written_bars(line, bars))


@given(lines_in_bars(odd_lines))
def test_any_ticks_at_all_keep_their_sums(case: Case) -> None:
    line, bars = case
    check_sums(line, bars, written_bars(line, bars))


def reference_length(event: WrittenEvent) -> Fraction:
    """music21's length of a note value with its dots and tuplet, in ticks."""
    duration = music21.duration.Duration(type=TYPE_NAMES[event.value], dots=event.dots)
    if event.tuplet:
        duration.appendTuplet(music21.duration.Tuplet(event.tuplet.actual, event.tuplet.normal))
    return Fraction(duration.quarterLength).limit_denominator(10000) * QUARTER


@given(lines_in_bars(beat_lines))
@settings(max_examples=200)
def test_note_values_last_as_long_as_they_say(case: Case) -> None:
    line, bars = case
    for bar in written_bars(line, bars):
        for event in bar.events:
            assert event.fills_bar or reference_length(event) == event.duration_ticks


def tuplet_groups(events: Iterable[WrittenEvent]) -> list[list[WrittenEvent]]:
    groups: list[list[WrittenEvent]] = []
    for event in events:
        if event.tuplet is None:
            continue
        if event.tuplet.starts:
            groups.append([])
        groups[-1].append(event)
    return groups


@given(lines_in_bars())
def test_tuplets_are_whole(case: Case) -> None:
    line, bars = case
    for bar in written_bars(line, bars):
        groups = tuplet_groups(bar.events)
        for group in groups:
            tuplets = [event.tuplet for event in group if event.tuplet]
            tuplet = tuplets[0]
            assert [one.starts for one in tuplets] == [True] + [False] * (len(group) - 1)
            assert [one.stops for one in tuplets] == [False] * (len(group) - 1) + [True]
            assert {(one.actual, one.normal, one.unit, one.count) for one in tuplets} == {
                (tuplet.actual, tuplet.normal, tuplet.unit, len(group))
            }
            assert [e.onset_ticks for e in group[1:]] == [e.end_ticks for e in group[:-1]]
            length = sum(event.duration_ticks for event in group)
            full = tuplet.normal * 4 * QUARTER // tuplet.unit
            cut_off = group[0] is bar.events[0] or group[-1] is bar.events[-1]
            assert length == full or (length < full and cut_off and bar.bar.duration_ticks < bar.bar.metre.bar_ticks)


@given(lines_in_bars())
def test_beams_are_well_formed(case: Case) -> None:
    line, bars = case
    for bar in written_bars(line, bars):
        for level in range(4):
            is_open = False
            for event in bar.events:
                state = event.beams[level] if len(event.beams) > level else None
                assert is_open == (state in ("continue", "end")), "a beam goes on exactly where it was begun"
                is_open = state in ("begin", "continue")
            assert not is_open
        for event in bar.events:
            flags = {8: 1, 16: 2, 32: 3, 64: 4}.get(event.value, 0)
            assert len(event.beams) in (0, flags)
            assert not (event.is_rest and event.beams)


@given(lines_in_bars())
def test_nothing_short_crosses_the_middle_of_common_time(case: Case) -> None:
    line, bars = case
    for bar in written_bars(line, bars):
        if str(bar.bar.metre) != "4/4" or bar.bar.duration_ticks != 4 * QUARTER:
            continue
        middle = bar.bar.start_ticks + 2 * QUARTER
        for event in bar.events:
            if event.onset_ticks < middle < event.end_ticks and not event.fills_bar:
                fills_bar = event.tuplet and event.tuplet.unit == 2
                assert fills_bar or not event.is_rest
                assert fills_bar or event.value <= 2 or event.tuplet


@pytest.mark.parametrize("metre", METRES, ids=str)
def test_an_empty_bar_is_one_rest(metre: Metre) -> None:
    (bar,) = written_bars((), (Bar(1, 0, metre.bar_ticks, metre, Key(0)),))
    (event,) = bar.events
    assert event.fills_bar and event.is_rest and event.value == 1


def test_an_overfull_bar_is_written_as_it_is() -> None:
    metre = Metre(4, 4)
    bars = (Bar(1, 0, 9 * QUARTER, metre, Key(0)),)
    line = (Note(0, 9 * QUARTER, Pitch(30)),)
    written = written_bars(line, bars)
    check_sums(line, bars, written)
    assert [event.type_name for event in written[0].events] == ["whole", "whole", "quarter"]


def test_graces_stand_before_the_first_piece_only() -> None:
    bars = tuple(Bar(n + 1, n * 6720, 6720, Metre(4, 4), Key(0)) for n in range(2))
    note = Note(3360, 6720, Pitch(30), graces=(Pitch(29),))
    pieces = [event for bar in written_bars((note,), bars) for event in bar.events if not event.is_rest]
    assert [piece.graces for piece in pieces] == [(Pitch(29),), ()]
    assert [piece.piece for piece in pieces] == [0, 1]


@pytest.mark.parametrize(
    "line",
    [
        (Note(0, 1680, Pitch(30)), Note(840, 840, Pitch(31))),
        (Note(0, 0, Pitch(30)),),
        (Note(-840, 1680, Pitch(30)),),
        (Note(5040, 3360, Pitch(30)),),
    ],
    ids=["overlap", "no length", "before the bars", "past the bars"],
)
def test_a_line_that_does_not_fit_is_refused_in_words(line: tuple[Note, ...]) -> None:
    with pytest.raises(TuneError, match=r"Note [12] \("):
        written_bars(line, (Bar(1, 0, 6720, Metre(4, 4), Key(0)),))


def test_no_bars_and_no_notes_are_nothing() -> None:
    assert written_bars((), ()) == ()
