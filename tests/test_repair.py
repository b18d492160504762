"""Bars that do not add up, mended as a copyist would (common practice): what was wrong, and what was done, is said."""

from __future__ import annotations

import pytest

from fioritura.errors import TuneError
from fioritura.notation.abc.reader import read_abc
from fioritura.notation.assemble import Irregular
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.theory.metre import QUARTER
from fioritura.tune import Tune
from fioritura.words import say

from .musicxml_text import attributes, notes, score

HEAD = "X:1\nT:Test\nM:4/4\nL:1/4\nK:C\n"


def abc(music: str, irregular: Irregular = "repair") -> Tune:
    return read_abc(HEAD + music, irregular=irregular)[0]


def places(tune: Tune) -> list[tuple[float, float]]:
    return [(note.onset_ticks / QUARTER, note.duration_ticks / QUARTER) for note in tune.notes]


def lengths(tune: Tune) -> list[float]:
    return [bar.duration_ticks / QUARTER for bar in tune.bars]


def said(tune: Tune) -> list[str]:
    return [say(warning) for warning in tune.warnings]


def test_a_tune_that_adds_up_is_left_alone() -> None:
    music = "G|CDEF|GABc|(3C/2D/2E/2 DEF|c3|]"
    assert abc(music) == abc(music, "refuse")
    assert not abc(music).warnings


def test_what_is_refused_offers_the_repair_in_plain_words() -> None:
    with pytest.raises(TuneError, match="have the bars mended, or keep them as they are"):
        abc("CDEF|CDE|CDEF|CDEF|", "refuse")


def test_triplets_without_their_sign_are_set() -> None:
    tune = abc("CDEF|C/2D/2E/2 F G A|c4|")
    assert lengths(tune) == [4, 4, 4]
    assert places(tune)[4:8] == [(4, 1 / 3), (4 + 1 / 3, 1 / 3), (4 + 2 / 3, 1 / 3), (5, 1)]
    assert said(tune) == ["bar 2 holds 4.5 quarter notes where 4/4 has 4: three equal notes are read as a triplet"]
    many = abc("CDEF|C/2D/2E/2 F/2G/2A/2 B/2c/2d/2 e/2d/2c/2|c4|")
    assert lengths(many) == [4, 4, 4]
    assert "read as 4 triplets" in said(many)[0]


def test_chords_move_with_the_notes_of_a_triplet() -> None:
    tune = abc('"C"CDEF|"F"C/2D/2E/2 "G7"F "C"G A|c4|')
    assert [span.onset_ticks / QUARTER for span in tune.chords] == [0, 4, 5, 6]


def test_a_rounding_is_taken_off_or_added() -> None:
    bars = (
        attributes() + notes("C4:4 D4:4 E4:4 F4:4"),
        notes("C4:4 D4:4 E4:4 F4:3.9"),
        notes("C4:4 D4:4 E4:4 F4:4.1"),
    )
    tune = read_musicxml(score(*bars, notes("C4:16")), irregular="repair")
    assert lengths(tune) == [4, 4, 4, 4]
    assert places(tune)[7] == (7, 1) and places(tune)[11] == (11, 1)


def test_rests_that_do_not_fit_are_taken_off() -> None:
    tune = abc("CDEF|CDEFz|c4|")
    assert lengths(tune) == [4, 4, 4]
    assert said(tune) == ["bar 2 holds 5 quarter notes where 4/4 has 4: the rest that does not fit is taken off"]


def test_a_first_bar_with_its_pickup_in_it_is_parted() -> None:
    tune = abc("GCDEF|GABc|c3|")
    assert [(bar.number, bar.duration_ticks / QUARTER) for bar in tune.bars] == [(0, 1), (1, 4), (2, 4), (3, 3)]
    assert said(tune) == ["the pickup holds 5 quarter notes where 4/4 has 4: read as a pickup and a bar"]


def test_lost_bar_lines_are_set_and_notes_over_them_are_one_note() -> None:
    tune = abc("CDEF|CDE2-E2GA|c4|")
    assert lengths(tune) == [4, 4, 4, 4]
    assert (6, 4) in places(tune)
    assert "a missing bar line is set" in said(tune)[0]


def test_a_bar_split_by_a_line_is_one_bar() -> None:
    tune = abc("CDEF|CD|EF|c4|")
    assert [bar.number for bar in tune.bars] == [1, 2, 2, 3]
    assert "one bar with the short one after it" in said(tune)[0]


def test_a_short_bar_gets_the_rest_that_it_lacks() -> None:
    behind = abc("CDEF|CDE|CDEF|c4|")
    assert lengths(behind) == [4, 4, 4, 4]
    assert places(behind)[7] == (8, 1)
    assert said(behind) == [
        "bar 2 holds 3 quarter notes where 4/4 has 4: a rest of 1 quarter note is added behind its notes"
    ]
    before = abc("CDEF|c4|G|CDEF|c4|")
    assert (11, 1) in places(before)
    assert "a rest of 3 quarter notes is added before its notes" in said(before)[0]


def test_what_no_repair_fits_is_kept() -> None:
    tune = abc("CDEF|CDEFG|CDEF|c4|")
    assert lengths(tune) == [4, 5, 4, 4]
    assert said(tune) == ["bar 2 holds 5 quarter notes where 4/4 has 4: kept as it is"]
