"""Answer fills: drawn from people's figures, chosen by what the place asks for.

Bars are those of the project: what people's short phrases are like was counted in recorded jazz wind solos (Weimar Jazz
Database, by way of its authors' open R data package). The whole measure is slow and runs with ``-m slow``.
"""

from __future__ import annotations

import os

import pytest

from benchmarks.taste_fills import Chosen, blues, has_blue_note, measures
from fioritura.arrange.arranger import choose_figures
from fioritura.arrange.survey import survey
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from fioritura.techniques.fill import ANSWER_FILL
from fioritura.techniques.fill_rhythm import fill_tables
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH
from fioritura.theory.scale import key_scale
from fioritura.tune import Tune
from tests.tunes import line_of

WAITING = "C5/1 A4/1 G4/1 E4/1 D4/4 F4/1 A4/1 G4/1 F4/1 E4/4 G4/1 E4/1 D4/1 B3/1 C4/4"


def waiting() -> Tune:
    """Phrases that end on whole notes (invented)."""
    return line_of(WAITING, chords="C G7 Dm7 C G7 C")


def fills(level: int, tempo: float = 120.0, tune: Tune | None = None) -> list[Figure]:
    setting = Setting("tenor-sax", tempo, "swing", level=level)
    return list(survey(tune or waiting(), setting, only=[ANSWER_FILL.id]).candidates)


def midis(fill: Figure) -> tuple[int, ...]:
    return tuple(note.pitch.midi for note in fill.notes)


@pytest.mark.parametrize("level", [2, 3, 4, 5])
def test_a_place_is_offered_eight_fills_and_more(level: int) -> None:
    found = fills(level)
    for place in {fill.anchors[0] for fill in found}:
        assert len({midis(fill) for fill in found if fill.anchors[0] == place}) >= 8


def test_fills_of_low_levels_are_short_and_plain() -> None:
    inside = key_scale(waiting().key).pitch_classes
    for level, most in ((1, 4), (2, 5)):
        for fill in fills(level):
            assert 3 <= len(fill.notes) <= most
            assert min(note.duration_ticks for note in fill.notes) >= (EIGHTH if level == 1 else SIXTEENTH)
    assert all(midi % 12 in inside for fill in fills(1) for midi in midis(fill))


def test_fills_grow_with_level() -> None:
    mean = {level: sum(len(fill.notes) for fill in fills(level)) / len(fills(level)) for level in (1, 3, 5)}
    assert mean[1] + 1 <= mean[3]
    assert mean[3] + 0.5 <= mean[5]


def test_ballads_are_filled_in_double_time() -> None:
    """People's ballads: 43 % of the values in short phrases are quicker than a sixteenth, 19 % sixteenths."""

    def quick(tempo: float) -> float:
        values = [note.duration_ticks for fill in fills(5, tempo) for note in fill.notes[:-1]]
        return sum(value <= SIXTEENTH for value in values) / len(values)

    assert quick(60.0) > 0.5 > quick(190.0)


def test_a_fill_takes_up_its_phrase() -> None:
    """An echo of four notes stands in 18 % of people's phrases, 11 % by chance."""
    found = [fill for tune in (waiting(), *map(blues, range(6))) for fill in fills(4, tune=tune)]
    echoes = sum(dict(fill.why.args)["idea"] == "echo" for fill in found)
    assert 0.1 <= echoes / len(found) <= 0.4


def test_folk_players_fill_in_even_notes_of_the_key() -> None:
    tune = waiting()
    inside = key_scale(tune.key).pitch_classes
    found = survey(tune, Setting("flute", 110.0, "straight", "folk", level=5), only=[ANSWER_FILL.id]).candidates
    assert found
    assert {midi % 12 for fill in found for midi in midis(fill)} <= inside
    assert {note.duration_ticks % EIGHTH for fill in found for note in fill.notes} == {0}


def test_seeds_choose_other_fills() -> None:
    offered = survey(waiting(), Setting("tenor-sax", 120.0, "swing", level=4), only=[ANSWER_FILL.id])
    by_place: dict[int, set[str]] = {}
    for seed in range(1, 6):
        for fill in choose_figures(offered, seed=seed).figures:
            by_place.setdefault(fill.anchors[0], set()).add(fill.id)
    assert max(map(len, by_place.values())) >= 4


def test_the_tables_name_their_source_and_licence() -> None:
    tables = fill_tables()
    assert "Weimar Jazz Database" in tables["source"]
    assert "MIT" in tables["licence"]


def test_fills_in_a_blues_speak_its_language() -> None:
    """A blue third or flat fifth in a quarter of the fills at least (people: a third of short phrases in blues)."""
    setting = Setting("tenor-sax", 110.0, "swing", level=4)
    found = []
    for number in range(4):
        tune = blues(number)
        found += [Chosen(tune, setting, 0, fill) for fill in survey(tune, setting, only=[ANSWER_FILL.id]).candidates]
    assert sum(map(has_blue_note, found)) / len(found) >= 0.25
    for fill in found:
        held = fill.tune.notes[fill.figure.anchors[0]]
        assert fill.figure.notes[0].onset_ticks - held.onset_ticks >= QUARTER


@pytest.mark.slow
def test_fills_are_like_peoples() -> None:
    """Without the measure's folder in HUMAN_FIGURES only shapes and variety are judged."""
    if not os.environ.get("HUMAN_FIGURES"):
        print("likeness to people's phrases is not judged: HUMAN_FIGURES names no folder")
    missed = [
        (name, value)
        for name, value, low, high, _ in measures(24)
        if (low is not None and value < low) or (high is not None and value > high)
    ]
    assert missed == []
