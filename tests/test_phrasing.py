"""Phrases and breaths are planned once: the printed page, the sound and the review have the same ones."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from fioritura.arrange.arranger import ornament
from fioritura.arrange.prepare import nearest_octave, prepared
from fioritura.arrange.rendition import Rendition
from fioritura.phrase import phrases
from fioritura.players.instruments import INSTRUMENTS
from fioritura.players.phrasing import line_phrases, phrased, phrasing_of
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.sound.perform import perform
from fioritura.tune import Mark, Note, Tune
from fioritura.unfold import unfolded
from tests.corpus_tunes import corpus_tunes
from tests.tunes import random_tune

ALTO = INSTRUMENTS["alto-sax"]
LEVELS = (1, 3, 5)


def renditions() -> list[Rendition]:
    """Twenty tunes of the open books, each for an alto saxophone at one of three levels."""
    found = []
    for number, tune in enumerate(corpus_tunes(step=401)[:20]):
        ready = prepared(tune, ALTO, octave=nearest_octave(tune, ALTO))
        level = LEVELS[number % len(LEVELS)]
        found.append(ornament(ready, Setting("alto-sax", idiom="folk", level=level).on(ready)))
    return found


RENDITIONS = renditions()


def as_played(rendition: Rendition) -> Tune:
    return unfolded(replace(rendition.tune, notes=rendition.line))


@pytest.mark.parametrize("rendition", RENDITIONS, ids=lambda rendition: rendition.tune.title)
def test_the_sound_breathes_where_the_page_says_and_nowhere_else(rendition: Rendition) -> None:
    played, setting = as_played(rendition), rendition.setting
    plan = phrasing_of(played, played.notes, setting.player, setting.quarters_per_minute)
    breaths = {breath.after for breath in plan.breaths.breaths if breath.kind != "rest"}
    signed = {number for number, note in enumerate(played.notes) if Mark.BREATH in note.marks}
    assert breaths <= signed
    silent = {breath.after for breath in plan.breaths.breaths if breath.kind == "rest"}
    assert signed <= breaths | silent | {len(played.notes) - 1}
    sound = perform(
        played, played.notes, instrument=ALTO, player=setting.player, tempo=setting.quarters_per_minute, exact=True
    )
    heard = {note.source: note for note in sound.parts[0].notes}
    for number in signed - {len(played.notes) - 1}:
        if number + 1 in heard and number in heard:
            gap = heard[number + 1].onset_sec - heard[number].end_sec
            assert gap > 0.04 or played.notes[number + 1].graces


@pytest.mark.parametrize("rendition", RENDITIONS, ids=lambda rendition: rendition.tune.title)
def test_phrases_of_the_line_are_those_of_the_tune_wherever_it_is_played(rendition: Rendition) -> None:
    tune, line = rendition.tune, rendition.line
    own = {
        index: number for number, phrase in enumerate(phrases(tune)) for index in range(phrase.first, phrase.last + 1)
    }
    for note in line:
        if note.anchor is not None:
            assert own[note.anchor] == note.phrase
    assert line_phrases(tune, line) == rendition.phrasing.phrases
    played = as_played(rendition)
    for first, last in line_phrases(played, played.notes):
        assert len({note.phrase for note in played.notes[first : last + 1]}) == 1
    for (_, last), (first, _) in pairwise(line_phrases(played, played.notes)):
        assert played.notes[last].phrase != played.notes[first].phrase or first == last + 1


@pytest.mark.parametrize("rendition", RENDITIONS, ids=lambda rendition: rendition.tune.title)
def test_nobody_runs_out_of_breath(rendition: Rendition) -> None:
    plain = phrasing_of(
        rendition.tune, rendition.tune.notes, rendition.setting.player, rendition.setting.quarters_per_minute
    )
    limit = max(rendition.setting.player.limits.breath_sec, plain.breaths.longest_sec)
    assert rendition.phrasing.breaths.longest_sec <= limit + 1e-9


def test_a_slow_version_has_the_printed_breaths_and_more() -> None:
    rendition = RENDITIONS[1]
    played, player = as_played(rendition), rendition.setting.player
    slow = phrasing_of(played, played.notes, player, rendition.setting.quarters_per_minute / 2)
    breaths = {breath.after for breath in slow.breaths.breaths}
    assert {n for n, note in enumerate(played.notes) if Mark.BREATH in note.marks} - {
        len(played.notes) - 1
    } <= breaths


def test_a_fill_after_a_rest_begins_the_next_phrase() -> None:
    tune = random_tune(3, bars=8)
    first = phrases(tune)[0].last
    before, after = tune.notes[first], tune.notes[first + 1]
    room = after.onset_ticks - before.onset_ticks
    short = replace(before, duration_ticks=max(room // 4, 1))
    fill = Note(after.onset_ticks - room // 4, room // 4, after.pitch)
    anchored = [replace(note, anchor=index) for index, note in enumerate(tune.notes)]
    line = [*anchored[:first], replace(short, anchor=first), fill, *anchored[first + 1 :]]
    assert line_phrases(tune, line)[1][0] == first + 1
    made = phrased(line, phrasing_of(tune, line, Player.of("alto-sax"), 100.0))
    assert made[first + 1].phrase == 1
