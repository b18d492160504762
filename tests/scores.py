"""Scores for tests of engraving and typesetting: random tunes ornamented, with a label over each figure."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from fioritura.arrange.arranger import ornament
from fioritura.arrange.prepare import prepared
from fioritura.notation.score import Label, Score, Staff
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.techniques.table import technique_named
from fioritura.tune import Tempo, Tune
from fioritura.words import say
from tests.tunes import random_tune


@cache
def ornamented(
    seed: int, *, staves: int = 2, bars: int = 16, metre: str = "4/4", level: int = 5, title: str = "Lantern Street"
) -> Score:
    """A score of one staff (the ornamented line) or two (plain over ornamented) for alto saxophone."""
    tune = replace(
        random_tune(seed, bars, metre), tempos=(Tempo(0, 126.0),), feel="swing", title=title, composer="A. Composer"
    )
    return score_of(tune, Player.of("alto-sax", level), staves=staves)


def score_of(tune: Tune, player: Player, *, staves: int = 2, idiom: Idiom = "jazz") -> Score:
    """A tune ornamented for a player, at its own tempo and feel."""
    setting = Setting(player, tune.quarters_per_minute, tune.feel, idiom)
    rendition = ornament(prepared(tune, player.instrument), setting)
    labels = tuple(
        Label(
            figure.notes[0].onset_ticks if figure.notes else rendition.tune.notes[figure.anchors[0]].onset_ticks,
            say(technique_named(figure.technique).label),
            number,
        )
        for number, figure in enumerate(rendition.figures)
    )
    plain = Staff(rendition.tune.notes, "plain", player.instrument)
    line = Staff(rendition.line, "ornamented", player.instrument, labels, shows_chords=staves == 1)
    return Score(rendition.tune, (plain, line) if staves == 2 else (line,), subtitle=f"level {player.level}, {idiom}")
