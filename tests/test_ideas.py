"""An idea and what becomes of it: repeated once, then varied or extended."""

from __future__ import annotations

from collections import Counter

import pytest

from fioritura.arrange.arranger import best_figures, choose_figures
from fioritura.arrange.ideas import gesture
from fioritura.arrange.rendition import Rendition
from fioritura.arrange.survey import survey
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.tune import Tune
from tests.tunes import line_of

STROPHE = "C5/2 E5/2 G5/4 F5/2 D5/2 C5/4"


def rendition(level: int, times: int = 4) -> tuple[Tune, Rendition]:
    tune = line_of(" ".join([STROPHE] * times), chords=" ".join(["C C Dm7 C"] * times))
    return tune, choose_figures(survey(tune, Setting(Player.of("concert", level), 100.0)))


def literal_copies(tune: Tune, of: Rendition) -> Counter[object]:
    """Figures that write the same notes on the same note of the tune, counted here by what sounds."""
    own = []
    for figure in of.figures:
        start = tune.notes[figure.anchors[0]].onset_ticks
        written = [(note.onset_ticks - start, note.duration_ticks, str(note.pitch)) for note in figure.notes]
        main = tune.notes[figure.anchors[0]].pitch
        own.append((figure.technique, str(main), tuple(map(str, figure.graces)), tuple(written)))
    return Counter(own)


@pytest.mark.parametrize("level", [2, 3, 4, 5])
def test_bars_that_are_the_same_are_not_always_ornamented_the_same(level: int) -> None:
    """Four times the same strophe: hardly a third literal copy, and no two strophes alike."""
    tune, chosen = rendition(level)
    copies = literal_copies(tune, chosen)
    assert sum(max(count - 2, 0) for count in copies.values()) <= 0.1 * len(chosen.figures)
    length = len(STROPHE.split())
    strophes = [
        tuple(gesture(tune, one) for one in chosen.figures if start <= one.anchors[0] < start + length)
        for start in range(0, len(tune.notes), length)
    ]
    assert len(set(strophes)) == len(strophes) == 4


@pytest.mark.parametrize("level", [3, 5])
def test_a_statement_takes_up_places_of_the_first_with_other_gestures(level: int) -> None:
    tune, chosen = rendition(level)
    length = len(STROPHE.split())
    places = {one.first_slot: gesture(tune, one) for one in chosen.figures}
    first = {slot for slot in places if slot < 2 * length}
    again = [(slot, slot + 2 * length * n) for slot in first for n in range(1, 4) if slot + 2 * length * n in places]
    assert again, "places are taken up"
    assert sum(places[slot] != places[later] for slot, later in again) >= len(again) / 2


def test_what_is_told_is_the_same_for_the_best_without_quotas() -> None:
    tune, chosen = rendition(3)
    found = survey(tune, chosen.setting)
    assert chosen.score <= best_figures(found).score + 1e-6
