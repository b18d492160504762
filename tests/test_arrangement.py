"""Arrangements: decisions are kept, can be taken back, and reopen exactly from their file."""

from __future__ import annotations

import json
import random
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fioritura.arrange.arrangement import Arrangement, arranged, rearranged
from fioritura.arrange.arrangement_file import arrangement_from_json, arrangement_to_json
from fioritura.errors import FiorituraError, OptionError, ReadError
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.techniques.figure import Figure
from tests.tunes import random_tune


@pytest.fixture(scope="module")
def start() -> Arrangement:
    return arranged(random_tune(1, bars=16), Setting(Player.of("alto-sax", 3), 110.0), seed=5)


def ids(arrangement: Arrangement) -> list[str]:
    return [figure.id for figure in arrangement.rendition.figures]


def test_accepted_figures_stand_and_refused_ones_fall(start: Arrangement) -> None:
    poorest = min(start.survey.figures, key=lambda figure: figure.score).id
    accepted = start.accept(poorest)
    assert poorest in ids(accepted)
    refused = accepted.refuse(poorest)
    assert poorest not in ids(refused)
    assert poorest in ids(refused.accept(poorest))


def test_undo_takes_back_one_decision_at_a_time(start: Arrangement) -> None:
    one = start.refuse(ids(start)[0])
    two = one.refuse(ids(one)[0])
    assert ids(two.undo()) == ids(one)
    assert ids(two.undo().undo()) == ids(start)
    with pytest.raises(OptionError, match="Nothing to take back"):
        start.undo()


def test_a_swap_puts_the_alternative_in_place(start: Arrangement) -> None:
    old = ids(start)[2]
    alternatives = start.alternatives(old)
    assert [a.worth for a in alternatives] == sorted((a.worth for a in alternatives), reverse=True)
    assert sum(a.stands for a in alternatives) >= 1
    new = next(a.figure.id for a in alternatives if not a.stands)
    swapped = start.swap(old, new)
    assert new in ids(swapped)
    assert old not in ids(swapped)


def test_what_stands_is_never_worth_less_than_its_alternatives(start: Arrangement) -> None:
    """It was chosen as the best of the candidates; a figure that was none (see `_Field`) can add a trifle at most."""
    for id in ids(start):
        alternatives = start.alternatives(id)
        assert len(alternatives) > 1
        standing = max(a.worth for a in alternatives if a.stands)
        assert standing >= 0.995 * max(a.worth for a in alternatives)


def test_alternatives_are_ranked_beside_locked_neighbours(start: Arrangement) -> None:
    """Some of them collide with a neighbour that is locked: it would give way, as it does when they are accepted."""
    locked = start
    for id in ids(start):
        locked = locked.accept(id)
    for id in ids(locked):
        others = [one for one in locked.alternatives(id, count=40) if not one.stands]
        assert others and all(one.worth < locked.rendition.score + 5.0 for one in others)


def test_one_pitch_can_be_bent_and_the_rest_is_chosen_anew(start: Arrangement) -> None:
    bent = 0
    for figure in start.rendition.figures:
        for note in range(len(figure.graces) + len(figure.notes)):
            try:
                changed = start.bend(figure.id, note, 1)
            except OptionError:
                continue
            own = changed.decisions.own[-1]
            assert own.id in ids(changed)
            before = [pitch.midi for pitch in figure.graces] + [n.pitch.midi for n in figure.notes]
            after = [pitch.midi for pitch in own.graces] + [n.pitch.midi for n in own.notes]
            assert [b - a for a, b in zip(before, after, strict=True)] == [int(n == note) for n in range(len(before))]
            assert ids(changed.undo()) == ids(start)
            bent += 1
    assert bent >= 2


def phrase_and_figure(arrangement: Arrangement, id: str) -> tuple[int, Figure]:
    """The phrase that a figure counts in, and the figure."""
    figure = arrangement.survey.candidates[arrangement.survey.by_id[id]]
    return arrangement.survey.contexts[figure.first_slot // 2].phrase.number, figure


def decided(arrangement: Arrangement, kind: str, dice: random.Random) -> tuple[Arrangement, str] | None:
    """The arrangement after a decision of some kind on a figure, with that figure; None where there is none to decide."""
    one = dice.choice(ids(arrangement))
    match kind:
        case "keep":
            return arrangement.accept(one), one
        case "release":
            one = dice.choice(arrangement.decisions.locked or (one,))
            return arrangement.release(one), one
        case "refuse":
            return arrangement.refuse(one), one
        case "swap":
            others = [each.figure.id for each in arrangement.alternatives(one, count=4) if not each.stands]
            other = dice.choice(others) if others else one
            return (arrangement.swap(one, other), other) if others else None
        case "add":
            one = dice.choice(arrangement.survey.figures).id
            return arrangement.accept(one), one
    try:
        after = arrangement.bend(one, 0, dice.choice((-1, 1)))
    except OptionError:
        return None
    return after, after.decisions.own[-1].id


@pytest.mark.parametrize("number", range(20))
def test_decisions_are_local(number: int) -> None:
    """Twelve tries on each of twenty tunes: what is kept or released changes no note; all else changes its phrase at most,
    and what a figure that is put in collides with at the phrase's edge. Undoing brings back just what stood."""
    dice = random.Random(f"local {number}")
    tune = random_tune(number, bars=24, metre=("4/4", "3/4", "6/8")[number % 3])
    arrangement = arranged(tune, Setting(Player.of("tenor-sax", 1 + number % 5), 110.0), seed=number % 2)
    for turn in range(12):
        kind = ("keep", "refuse", "swap", "bend", "add", "release")[turn % 6]
        tried = decided(arrangement, kind, dice)
        if tried is None:
            continue
        after, one = tried
        standing = ids(arrangement)
        if kind in ("keep", "release"):
            assert after.rendition.line == arrangement.rendition.line
        phrase, decided_on = phrase_and_figure(after, one)
        assert {phrase_and_figure(after, id)[0] for id in set(ids(after)) - set(standing)} <= {phrase}
        for gone in set(standing) - set(ids(after)):
            where, figure = phrase_and_figure(after, gone)
            assert where == phrase or figure.collides(decided_on)
        assert after.undo().rendition == arrangement.rendition
        arrangement = after


def test_the_rest_is_chosen_anew_when_that_is_decided(start: Arrangement) -> None:
    one = start.refuse(ids(start)[1]).accept(ids(start)[4])
    anew = one.anew()
    decisions = one.decisions
    best = arranged(start.tune, start.setting, seed=5, locked=decisions.locked, refused=decisions.refused)
    assert ids(anew) == ids(best)
    assert ids(anew.undo()) == ids(one)
    assert anew.decisions == decisions


def test_an_arrangement_file_reopens_exactly(start: Arrangement) -> None:
    changed = start.refuse(ids(start)[0]).accept(start.survey.figures[10].id)
    text = arrangement_to_json(changed)
    again = arrangement_from_json(text)
    assert again == changed
    assert again.rendition.line == changed.rendition.line
    assert arrangement_to_json(again) == text
    assert ids(again.undo()) == ids(changed.undo())


def test_decisions_hold_under_another_setting(start: Arrangement) -> None:
    kept, out = ids(start)[:2]
    decided = start.accept(kept).refuse(out)
    sparse = rearranged(decided, decided.setting.changed(density=0.5))
    assert kept in ids(sparse)
    assert out not in ids(sparse)
    assert len(ids(sparse)) < len(ids(decided))
    assert arrangement_from_json(arrangement_to_json(sparse)).setting == sparse.setting


def a_figure_s_note(data: dict[str, Any]) -> dict[str, Any]:
    """The last note of the first figure that has notes of its own."""
    found: dict[str, Any] = next(figure["notes"][-1] for figure in data["figures"] if figure["notes"])
    return found


@pytest.mark.parametrize(
    "damage",
    [
        lambda data: data.pop("tune"),
        lambda data: data.update(version=99),
        lambda data: data["tune"]["notes"][0].update(pitch="H4"),
        lambda data: data["tune"]["notes"][0].update(ticks=[0, -5]),
        lambda data: data["figures"][0].update(anchors=[9999]),
        lambda data: data["figures"].append(data["figures"][0]),
        lambda data: a_figure_s_note(data).update(ticks=[a_figure_s_note(data)["ticks"][0], 10**17]),
        lambda data: data["setting"].update(level="9" * 5000),
        lambda data: data["setting"].update(player="kazoo"),
        lambda data: data["tune"]["bars"][0].update(metre=[0, 0]),
        lambda data: data["tune"]["bars"][0].update(key=[40, "major"]),
    ],
)
def test_damaged_files_are_refused(start: Arrangement, damage: Callable[[Any], object]) -> None:
    data = json.loads(arrangement_to_json(start))
    damage(data)
    with pytest.raises(ReadError):
        arrangement_from_json(json.dumps(data))


@given(
    st.text()
    | st.recursive(st.none() | st.integers() | st.text(), lambda c: st.lists(c) | st.dictionaries(st.text(), c)).map(
        json.dumps
    )
)
@settings(max_examples=200, deadline=None)
def test_no_text_breaks_the_reader(text: str) -> None:
    with pytest.raises(FiorituraError):
        arrangement_from_json(text)
