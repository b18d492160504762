"""Which part is the melody: what a copyist would say (common practice)."""

from __future__ import annotations

from typing import Any

import pytest

from fioritura.errors import OptionError, TuneError
from fioritura.notation.part_choice import PartSummary, choose_part, part_list
from fioritura.words import say


def part(name: str, midi: float = 65.0, count: int = 100, **traits: Any) -> PartSummary:
    return PartSummary(name, count, mean_midi=midi, **traits)


@pytest.mark.parametrize(
    "parts, melody",
    [
        ([part("Bass", 40), part("Voice", 67), part("Piano", 62, overlap_share=0.6)], "Voice"),
        ([part("Soprano", 72), part("Alto", 65), part("Tenor", 60), part("Bass", 50)], "Soprano"),
        ([part("Piano", 70, overlap_share=0.5), part("Alto Sax", 62)], "Alto Sax"),
        ([part("Violin II", 67), part("Lead Sheet", 64, has_chord_symbols=True)], "Lead Sheet"),
        ([part("", 70), part("", 60)], ""),
        ([part("Track 1", 66, sound="Piano"), part("Track 2", 62, sound="Reed")], "Track 2"),
        ([part("Flute", 80, count=4), part("Clarinet", 66)], "Clarinet"),
        ([part("Drumset", 90, is_percussion=True), part("Tuba", 45, has_bass_clef=True)], "Tuba"),
        ([part("Piano right", 72), part("Piano left", 48, has_bass_clef=True)], "Piano right"),
    ],
)
def test_the_likeliest_part(parts: list[PartSummary], melody: str) -> None:
    assert parts[choose_part(parts)].name == melody


def test_of_equals_the_first() -> None:
    assert choose_part([part("Violin"), part("Violin")]) == 0


PARTS = [part("Flute"), part("Alto Flute"), part("Piano")]


@pytest.mark.parametrize("wanted, index", [("flute", 0), ("Alto", 1), ("PIANO", 2), (3, 2), ("2", 1)])
def test_a_part_by_name_part_of_a_name_or_number(wanted: int | str, index: int) -> None:
    assert choose_part(PARTS, wanted) == index


@pytest.mark.parametrize("wanted", ["oboe", 0, 4, "", "999999999999999999999", "lute", "²"])
def test_unknown_or_ambiguous_parts_list_what_there_is(wanted: int | str) -> None:
    with pytest.raises(OptionError, match="1 Flute, 2 Alto Flute and 3 Piano"):
        choose_part(PARTS, wanted)


def test_nothing_to_choose() -> None:
    with pytest.raises(TuneError, match="no pitched notes"):
        choose_part([part("Kit", is_percussion=True), part("Empty", count=0)])
    with pytest.raises(TuneError, match="chord symbols but no melody"):
        choose_part([part("Chords", count=0, has_chord_symbols=True), part("Empty", count=0)])


def test_long_lists_are_cut() -> None:
    named = list(map(say, part_list([part(f"P{n}") for n in range(30)])))
    assert len(named) == 21 and named[-2:] == ["20 P19", "10 more"]
