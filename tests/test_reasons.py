"""No false reason: what is said of a figure holds in its place."""

from __future__ import annotations

import re
from dataclasses import replace
from importlib.resources import files

import pytest

from fioritura.arrange.survey import survey
from fioritura.arrange.taste import FEATURES, context_features
from fioritura.players.player import Player
from fioritura.players.setting import Idiom, Setting
from fioritura.techniques.context import Context
from fioritura.words import Message
from tests.corpus_tunes import corpus_tunes
from tests.judged import offers
from tests.reasons import CLAIMS, false_reasons
from tests.tunes import random_tune


def test_every_reason_is_judged() -> None:
    folder = files("fioritura.techniques")
    texts = [file.read_text("utf-8") for file in folder.iterdir() if file.name.endswith(".en.ftl")]
    assert set(re.findall(r"^([a-z-]+-why[a-z-]*) =", "\n".join(texts), re.M)) == set(CLAIMS)


@pytest.mark.parametrize("idiom", ["jazz", "folk"])
def test_no_false_reason_in_twenty_thousand_figures(idiom: Idiom) -> None:
    """Ten thousand in each idiom, in tunes of the corpus and in tunes made at random."""
    count, heard = 0, set()
    metres = ("4/4", "3/4", "6/8", "2/4", "5/4")
    made = [random_tune(n, 24, metres[n % 5], mode="minor" if n % 3 == 2 else "major") for n in range(10)]
    for tune in (*corpus_tunes(600), *made):
        setting, figures = offers(tune, idiom)
        assert [(tune.title, figure) for figure in false_reasons(tune, setting, figures)] == []
        count += len(figures)
        heard |= {figure.why.id for figure in figures}
    assert count >= 10_000
    assert len(heard) >= len(CLAIMS) - 4


def test_the_judge_sees_a_false_reason() -> None:
    """Each reason given to another figure's place, or with another argument, is found out."""
    tune = random_tune(3, 24)
    setting, figures = offers(tune, "jazz")
    turned = {"up": "down", "down": "up", "above": "below", "below": "above", "at-once": "after", "after": "at-once"}
    wrong = []
    for figure in figures:
        args = tuple((name, turned.get(str(value), value)) for name, value in figure.why.args)
        if args != figure.why.args:
            wrong.append(replace(figure, why=Message(figure.why.id, args)))
    assert len(wrong) > 100
    assert len(list(false_reasons(tune, setting, wrong))) == len(wrong)


def _claimed(context: Context) -> dict[str, bool]:
    """What the features that are true or false say, looked up in the tune."""
    notes, index = context.tune.notes, context.index
    pitch = notes[index].pitch.midi
    before = notes[index - 1].pitch.midi if index else None
    after = notes[index + 1].pitch.midi if index + 1 < len(notes) else None
    came = None if before is None else pitch - before
    leaves = None if after is None else after - pitch
    span = context.tune.chord_at(notes[index].onset_ticks)
    chord = span.chord if span else None
    return {
        "peak": came is not None and came > 0 and (leaves is None or leaves < 0),
        "repeated note": came == 0,
        "reached by leap": came is not None and abs(came) >= 5,
        "reached by step up": came in (1, 2),
        "reached by step down": came in (-1, -2),
        "left by leap": leaves is not None and abs(leaves) >= 5,
        "chord note": chord is None or pitch % 12 in chord.pitch_classes,
    }


def test_features_say_what_is_so() -> None:
    for tune in (*corpus_tunes(900)[:4], random_tune(8)):
        found = survey(tune, Setting(Player.of("concert", 3), 100.0))
        for context in found.contexts:
            values = dict(zip(FEATURES, context_features(context), strict=True))
            for name, is_so in _claimed(context).items():
                assert values[name] == float(is_so), (tune.title, context.index, name)
