"""The form of a performance: count-in, choruses, pickup, endings (common practice where no source is named)."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from fioritura.accompany.excerpt import bar_range, excerpt
from fioritura.accompany.form import ENDINGS, Chorus, Ending, Form, form_of
from fioritura.errors import OptionError
from fioritura.theory.metre import QUARTER, WHOLE
from fioritura.tune import Tempo, Tune
from fioritura.unfold import unfolded
from tests.charts import BLUES, chart
from tests.notation_strategies import tunes
from tests.tunes import line_of

MELODY = "F4 A4 C5 A4 F4 A4 C5 A4"


def blues(pickup: int = 0) -> Tune:
    return chart(BLUES, key="F major", melody=MELODY, pickup=pickup)


def heads(tune: Tune, count: int = 1) -> list[Chorus]:
    return [Chorus("head", tune.notes)] * count


def check(form: Form) -> None:
    """Bars follow without gaps, chords and notes stay inside, one note at a time."""
    tune = form.tune
    assert tune.bars[0].start_ticks == 0
    assert all(a.end_ticks == b.start_ticks for a, b in pairwise(tune.bars))
    assert all(a.end_ticks <= b.onset_ticks for a, b in pairwise(tune.notes))
    assert all(a.end_ticks <= b.onset_ticks for a, b in pairwise(tune.chords))
    assert all(span.duration_ticks > 0 for span in tune.chords)
    assert all(note.onset_ticks >= 0 for note in tune.notes)
    assert not tune.chords or tune.chords[-1].end_ticks <= tune.duration_ticks
    assert [a.end_ticks for a in form.sections[:-1]] == [b.start_ticks for b in form.sections[1:]]
    assert form.sections[-1].end_ticks == tune.duration_ticks
    assert all(a.onset_ticks < b.onset_ticks for a, b in pairwise(tune.tempos))
    assert tune.tempos[0].onset_ticks == 0


def test_count_in_head_solos_and_last_head_follow_each_other() -> None:
    tune = blues()
    form = form_of(
        tune, [Chorus("head", tune.notes), Chorus("solo 1"), Chorus("solo 2"), Chorus("last head", tune.notes)]
    )
    check(form)
    names = [section.name for section in form.sections]
    assert names[:5] == ["count-in", "head", "solo 1", "solo 2", "last head"]
    assert form.count_in_ticks == WHOLE
    solos = [note for note in form.tune.notes if form.section_at(note.onset_ticks).name.startswith("solo")]
    assert not solos
    assert len([n for n in form.tune.notes if form.section_at(n.onset_ticks).name == "head"]) == len(tune.notes)


def test_a_pickup_is_played_in_the_last_beats_of_the_count_in() -> None:
    form = form_of(blues(pickup=2), heads(blues(pickup=2), 2))
    check(form)
    assert form.tune.notes[0].onset_ticks == WHOLE - QUARTER
    second = form.sections[2].start_ticks
    assert [n.onset_ticks for n in form.tune.notes if second - QUARTER <= n.onset_ticks < second] == [
        second - QUARTER,
        second - QUARTER // 2,
    ]


def test_a_last_bar_that_makes_room_for_the_pickup_becomes_a_full_bar() -> None:
    tune = line_of("G4/1 C5/4 G4/4 C5/3", key="C major")
    bars = list(tune.bars)
    starts = [0, QUARTER, QUARTER + WHOLE, QUARTER + 2 * WHOLE]
    lengths = [QUARTER, WHOLE, WHOLE, 3 * QUARTER]
    bars = [
        replace(bars[0], number=n, start_ticks=start, duration_ticks=length)
        for n, (start, length) in enumerate(zip(starts, lengths, strict=True))
    ]
    tune = replace(tune, bars=tuple(bars), chords=())
    form = form_of(tune, heads(tune, 2), holds_last=False)
    check(form)
    assert {bar.duration_ticks for bar in form.tune.bars} == {WHOLE}
    assert len(form.tune.bars) == 1 + 2 * 3


def test_a_tonic_under_the_last_note_is_the_last_chord_and_turnarounds_are_dropped() -> None:
    tune = line_of("C4/4 D4/4 B3/4 C4/4 r/4", chords="C Dm7 G7 C6 Dm7")
    form = form_of(tune, heads(tune), ending="straight")
    check(form)
    assert form.final_ticks == 4 * WHOLE
    assert form.tune.duration_ticks == 5 * WHOLE
    assert form.tune.chords[-1].text == "C6"
    assert form.tune.chords[-1].end_ticks == form.tune.duration_ticks


def test_otherwise_a_bar_with_the_tonic_is_added() -> None:
    form = form_of(blues(), heads(blues()), ending="straight")
    check(form)
    assert form.sections[-1].name == "last chord"
    assert form.tune.chords[-1].text == "F7"
    assert form.final_ticks == form.tune.bars[-1].start_ticks


def test_a_tag_plays_the_last_four_bars_again() -> None:
    straight = form_of(blues(), heads(blues()), ending="straight")
    tag = form_of(blues(), heads(blues()), ending="tag")
    check(tag)
    assert len(tag.tune.bars) == len(straight.tune.bars) + 4
    start = next(section.start_ticks for section in tag.sections if section.name == "tag")
    assert [s.text for s in tag.tune.chords if start <= s.onset_ticks][:6] == ["Gm7", "C7", "F7", "D7", "Gm7", "C7"]


def test_a_ritard_slows_down_into_the_last_chord_and_nowhere_else() -> None:
    tune = replace(blues(), tempos=(Tempo(0, 120.0),))
    form = form_of(tune, heads(tune), ending="ritard")
    check(form)
    assert form.final_ticks is not None
    slow = [t for t in form.tune.tempos if t.onset_ticks > 0]
    assert slow[0].onset_ticks == form.final_ticks - 2 * WHOLE
    assert all(a.quarters_per_minute > b.quarters_per_minute for a, b in pairwise(form.tune.tempos))
    assert 0.6 <= slow[-1].quarters_per_minute / 120 <= 0.85


def test_phrase_ends_rank_fours_sections_and_choruses() -> None:
    tune = chart(" | ".join(["C"] * 32), melody=MELODY)
    form = form_of(tune, heads(tune), holds_last=False)
    ranks = {index - 1: rank for index, rank in form.phrase_ends.items()}
    assert ranks == {3: 1, 7: 2, 11: 1, 15: 2, 19: 1, 23: 2, 27: 1, 31: 3}


def test_nonsense_is_refused() -> None:
    with pytest.raises(OptionError, match="at least 1"):
        form_of(blues(), [])
    with pytest.raises(OptionError, match="20,000 is the limit"):
        form_of(blues(), heads(blues(), 3000))


@settings(max_examples=50, deadline=None)
@given(tunes(), st.integers(1, 3), st.sampled_from(sorted(ENDINGS)), st.integers(0, 2), st.booleans())
def test_any_tune_makes_a_sound_form(tune: Tune, count: int, ending: Ending, count_in: int, holds_last: bool) -> None:
    played = unfolded(tune)
    assume(len(played.bars) > 1 or (played.bars and not played.pickup_ticks))
    form = form_of(played, heads(played, count), count_in_bars=count_in, ending=ending, holds_last=holds_last)
    check(form)
    if holds_last:
        assert form.final_ticks is not None
        assert form.final_ticks < form.tune.duration_ticks


@pytest.mark.parametrize(("text", "expected"), [("5-8", (5, 8)), ("3", (3, 3)), (" 0 – 2 ", (0, 2))])
def test_bar_ranges_are_read(text: str, expected: tuple[int, int]) -> None:
    assert bar_range(text) == expected


@pytest.mark.parametrize("text", ["", "8-5", "a-b", "-3", "1-2-3"])
def test_what_is_no_range_is_refused(text: str) -> None:
    with pytest.raises(OptionError, match="5-8"):
        bar_range(text)


def test_an_excerpt_is_its_bars_from_tick_zero() -> None:
    cut = excerpt(blues(), 5, 8)
    assert [bar.number for bar in cut.bars] == [5, 6, 7, 8]
    assert cut.bars[0].start_ticks == 0
    assert [span.text for span in cut.chords] == ["Bb7", "Bdim7", "F7", "Am7b5", "D7"]
    assert len(cut.notes) == 4 * 8
    assert cut.notes[0].onset_ticks == 0
    with pytest.raises(OptionError, match="has 1 to 12"):
        excerpt(blues(), 5, 40)


def test_an_excerpt_cuts_notes_and_chords_that_reach_over_its_ends() -> None:
    tune = line_of("C4/6 D4/6 E4/4", chords="C % %".replace(" %", ""))
    cut = excerpt(tune, 2, 3)
    assert [(note.pitch.letter, note.onset_ticks, note.duration_ticks) for note in cut.notes] == [
        ("D", 2 * QUARTER, 6 * QUARTER)
    ]
    assert cut.chords[0].onset_ticks == 0
