"""Scores for tests of engraving and typesetting: random tunes ornamented, as the program itself makes them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from fioritura.arrange.arranger import ornament
from fioritura.arrange.prepare import prepared
from fioritura.lesson.edition import Edition, comparison_score, line_score
from fioritura.notation.score import Score
from fioritura.players.player import Player
from fioritura.techniques.place import Setting
from fioritura.tune import Tempo
from tests.tunes import random_tune


@cache
def ornamented(
    seed: int, *, staves: int = 2, bars: int = 16, metre: str = "4/4", level: int = 5, title: str = "Lantern Street"
) -> Score:
    """A score of one staff (the ornamented line) or two (plain over ornamented) for alto saxophone."""
    tune = replace(
        random_tune(seed, bars, metre), tempos=(Tempo(0, 126.0),), feel="swing", title=title, composer="A. Composer"
    )
    player = Player.of("alto-sax", level)
    rendition = ornament(prepared(tune, player.instrument), Setting(player, 126.0, "swing", "jazz"))
    edition = Edition(rendition)
    return comparison_score(edition) if staves == 2 else line_score(edition)
