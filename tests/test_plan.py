"""Plans: a tune written out as often as it is played, and a lead that follows the curve (common practice of jazz)."""

from __future__ import annotations

import json
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from statistics import mean

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.stats import spearmanr

import fioritura
from fioritura import Plan, Setting, Statement
from fioritura.arrange.arrangement import Arrangement, arranged
from fioritura.arrange.arrangement_file import arrangement_from_json, arrangement_to_json
from fioritura.arrange.plan import usual_count
from fioritura.arrange.rendition import Rendition
from fioritura.cli import main
from fioritura.errors import OptionError
from fioritura.lesson.edition import figure_records, plan_record
from fioritura.lesson.handout import performance_score
from fioritura.lesson.lesson import Lesson, lesson_of
from fioritura.lesson.plan import LessonPlan
from fioritura.lesson.plan import planned_lesson as planned_lesson_of
from fioritura.lesson.soundtrack import backing_session, ladder_session, performance_session, tracks
from fioritura.theory.metre import EIGHTH, WHOLE
from fioritura.tune import Tune
from fioritura.unfold import unfolded, written_out
from fioritura.words import say
from tests.charts import BLUES, chart
from tests.notation_strategies import tunes

MELODY = "F4 A4 C5 A4 Eb5 C5 A4 F4"


@settings(max_examples=60, deadline=None)
@given(tunes(), st.integers(2, 4))
def test_any_tune_written_out_is_itself_so_many_times(tune: Tune, times: int) -> None:
    played = unfolded(tune)
    assume(not played.pickup_ticks or len(played.bars) > 1)
    found = written_out(tune, times)
    assert all(one.end_ticks == other.start_ticks for one, other in pairwise(found.bars))
    assert [bar.number for bar in found.bars] == list(
        range(found.bars[0].number, found.bars[0].number + len(found.bars))
    )
    assert all(one.end_ticks <= other.onset_ticks for one, other in pairwise(found.notes))
    assert all(one.end_ticks <= other.onset_ticks for one, other in pairwise(found.chords))
    assert all(one.onset_ticks < other.onset_ticks for one, other in pairwise(found.tempos))
    plan = Plan.usual(times).checked(found)
    starts = [plan.start_ticks(found, number) for number in range(times)]
    body = [note for note in played.notes if note.onset_ticks >= played.pickup_ticks]
    held = played.notes[-1].end_ticks if not played.pickup_ticks else 0
    for number, start in enumerate(starts):
        own = [(n.onset_ticks - start + starts[0], n.pitch) for n in found.notes if n.onset_ticks >= start][
            : len(body)
        ]
        wanted = [(note.onset_ticks, note.pitch) for note in body]
        if number == times - 1:
            assert own == wanted
        elif held:
            assert own[: len(wanted)] == wanted


def test_a_pickup_is_played_over_the_end_of_the_chorus_before() -> None:
    tune = chart(BLUES, key="F major", melody=MELODY, pickup=2)
    found = written_out(tune, 2)
    second = tune.pickup_ticks + 12 * WHOLE
    pickup = [note for note in found.notes if second - 2 * EIGHTH <= note.onset_ticks < second]
    assert [note.pitch for note in pickup] == [note.pitch for note in tune.notes[:2]]
    assert len(found.bars) == 1 + 2 * 12
    assert found.bars[12].ends_section
    assert not found.bars[-1].ends_section
    plan = Plan.usual(2)
    assert plan.number_at(found, second - EIGHTH) == 1, "a pickup belongs to what it leads to"
    first, again = plan.parted(found, found.notes)
    assert [note.pitch for note in first][: len(again) - 2] == [note.pitch for note in again][: len(again) - 2]


def test_the_usual_plan_begins_nearly_plain_and_has_one_climax_late() -> None:
    for count in range(2, 12):
        plan = Plan.usual(count)
        densities = [each.density for each in plan.statements]
        assert densities[0] == min(densities)
        assert plan.climax is not None
        assert plan.climax >= count // 2
        assert densities.count(max(densities)) == 1
        assert [plan.role(number) for number in range(count)].count("climax") == 1
        assert all(each.size * (each.density - 1) >= 0 for each in plan.statements)


def test_nonsense_is_refused() -> None:
    for wrong in ([], [1.0] * 201, [-0.1], [float("nan")]):
        with pytest.raises(OptionError):
            Plan.of(wrong)
    with pytest.raises(OptionError, match="−1 to 1"):
        Plan((Statement(1.0, size=1.5),))
    tune = chart(BLUES, key="F major", melody=MELODY)
    with pytest.raises(OptionError, match="as often as the plan says"):
        fioritura.find(replace(tune, bars=tune.bars[:11]), Setting(), plan=Plan.usual(2))


def by_statement(rendition: Rendition) -> list[list[fioritura.Figure]]:
    plan, tune = rendition.plan, rendition.tune
    assert plan is not None
    found: list[list[fioritura.Figure]] = [[] for _ in range(plan.count)]
    for figure in rendition.figures:
        found[plan.number_at(tune, tune.notes[figure.anchors[0]].onset_ticks)].append(figure)
    return found


@pytest.mark.parametrize("level", [1, 3, 5])
@pytest.mark.parametrize("count", [3, 5])
def test_the_lead_follows_the_plan_in_number_size_and_level(level: int, count: int) -> None:
    plan = Plan.usual(count)
    rendition = fioritura.ornament(fioritura.demo_tune(), Setting("alto-sax", level=level), plan=plan)
    densities = [each.density for each in plan.statements]
    figures = by_statement(rendition)
    assert spearmanr(densities, [len(own) for own in figures]).statistic >= 0.9 - 1e-9
    assert spearmanr(densities, [sum(one.added_notes for one in own) for own in figures]).statistic >= 0.9 - 1e-9
    assert max(len(own) for own in figures) >= 1.8 * len(figures[0]), "the first chorus is nearly plain"
    loud = [mean(levels) for levels in _levels(rendition)]
    assert loud[0] == min(loud)
    assert loud[plan.climax or 0] == max(loud)


def _levels(rendition: Rendition) -> list[list[float]]:
    """The dynamic level at each note, by statements."""
    from fioritura.tune import LEVEL_MARKS

    plan = rendition.plan
    assert plan is not None
    found: list[list[float]] = [[] for _ in range(plan.count)]
    level = 0.0
    for note in rendition.line:
        level = next((float(LEVEL_MARKS.index(mark)) for mark in note.marks if mark in LEVEL_MARKS), level)
        found[plan.number_at(rendition.tune, note.onset_ticks)].append(level)
    return found


def test_a_place_is_taken_up_with_another_figure_or_a_larger_one() -> None:
    # A literal repeat is what listeners notice first (the taking up of a place is common practice of variation).
    taken = again = 0
    for seed in range(3):
        rendition = fioritura.ornament(
            fioritura.demo_tune(), Setting("alto-sax", level=4), seed=seed, plan=Plan.usual(3)
        )
        starts = [_place(rendition, figure) for figure in rendition.figures]
        for number, (place, figure) in enumerate(zip(starts, rendition.figures, strict=True)):
            earlier = [rendition.figures[n] for n in range(number) if starts[n] == place]
            taken += bool(earlier)
            again += any(
                one.technique == figure.technique and one.added_notes >= figure.added_notes for one in earlier
            )
    assert taken >= 60
    assert again <= 0.15 * taken


def _place(rendition: Rendition, figure: fioritura.Figure) -> int:
    plan, tune = rendition.plan, rendition.tune
    assert plan is not None
    return tune.notes[figure.anchors[0]].onset_ticks % (plan.start_ticks(tune, 1) - plan.start_ticks(tune, 0))


def arrangement(count: int = 2) -> Arrangement:
    plan = Plan.usual(count)
    return arranged(plan.written_out(fioritura.demo_tune()), Setting("alto-sax"), plan=plan)


def test_the_plan_is_kept_in_the_file_and_can_be_changed() -> None:
    made = arrangement()
    again = arrangement_from_json(arrangement_to_json(made))
    assert again.plan == made.plan == again.rendition.plan
    assert again.rendition.line == made.rendition.line
    assert again.survey.plan == made.plan
    turned = again.with_plan(Plan.of([1.4, 0.3]))
    first, second = by_statement(turned.rendition)
    assert len(first) > 1.5 * len(second)
    with pytest.raises(OptionError, match="one density for each chorus"):
        again.with_plan(Plan.usual(3))
    damaged = json.loads(arrangement_to_json(made))
    damaged["plan"] = damaged["plan"] * 7
    with pytest.raises(fioritura.ReadError):
        arrangement_from_json(json.dumps(damaged))


def test_a_chorus_of_density_0_is_the_plain_tune() -> None:
    plan = Plan.of([0.0, 1.0])
    rendition = fioritura.ornament(fioritura.demo_tune(), Setting("flute", level=5), plan=plan)
    first, second = by_statement(rendition)
    assert not first
    assert second


def test_one_chorus_has_its_density_too() -> None:
    counts = []
    for density in (0.3, 1.0, 1.8):
        plan = Plan.of([density])
        counts.append(len(fioritura.ornament(fioritura.demo_tune(), Setting("flute", level=4), plan=plan).figures))
    assert counts[0] < 0.6 * counts[1] < 0.6 * counts[2]


def test_records_say_which_chorus() -> None:
    rendition = arrangement().rendition
    record = plan_record(rendition)
    assert [entry["role"] for entry in record] == ["head", "climax"]
    assert record[0]["bars"][1] + 1 == record[1]["bars"][0]
    assert sum(entry["figures"] for entry in record) == len(rendition.figures)
    choruses = [entry["chorus"] for entry in figure_records(rendition)]
    assert choruses == sorted(choruses)
    assert set(choruses) == {1, 2}


def planned_lesson() -> Lesson:
    tune = fioritura.demo_tune()
    return lesson_of(tune, Setting("alto-sax").on(tune), plan=Plan.usual(usual_count(tune)))


def test_the_performance_of_a_pack_has_its_choruses_written_out_and_named() -> None:
    lesson = planned_lesson()
    score = performance_score(lesson)
    named = [label.text for label in score.staves[0].labels if label.figure is None]
    assert named == ["Chorus 1, nearly plain", "Chorus 2, the climax"]
    assert len(score.tune.bars) == 65
    assert len(lesson.once.bars) == 27, "the lead sheet keeps its repeats"
    session = performance_session(lesson)
    assert [chorus.manner for chorus in session.choruses] == ["two", "shout"]
    assert [chorus.line is None for chorus in session.choruses] == [False, False]
    assert [chorus.energy for chorus in backing_session(lesson).choruses] == [c.energy for c in session.choruses]
    assert len(ladder_session(lesson, 0.6).choruses) == 1
    assert {track.name for track in tracks(lesson)} >= {"backing", "performance", "plain"}


def test_a_lesson_on_a_planned_arrangement_knows_the_tune_once() -> None:
    made = arrangement()
    lesson = planned_lesson_of(made, LessonPlan())
    played = unfolded(fioritura.demo_tune())
    assert lesson.rendition == made.rendition
    assert [note.pitch for note in lesson.once.notes] == [note.pitch for note in played.notes]
    assert lesson.once.duration_ticks == played.duration_ticks


def test_the_curve_is_said_and_the_choruses_are_asked_for(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "air.abc"
    path.write_text("X:1\nT:Air\nM:4/4\nL:1/4\nK:G\nGABc|d2B2|cBAG|G4|GABc|e2c2|dBAF|G4|]", encoding="utf-8")
    asked = ("ornament", str(path), "--formats", "json", "--out", str(tmp_path / "air"), "--curve", "0.2,1.5")
    assert main([*asked, "--json"]) == 0
    summary = json.loads(capsys.readouterr().out)
    assert [entry["density"] for entry in summary["plan"]] == [0.2, 1.5]
    assert summary["plan"][1]["bars"] == [9, 16]
    assert main(asked) == 0
    text = capsys.readouterr().out
    assert all(say(told) in text for told in Plan.of([0.2, 1.5]).told)
    kept = tmp_path / "air" / "arrangement.json"
    assert main(["revise", str(kept), "--curve", "1.5,0.2", "--formats", "json", "--json"]) == 0
    assert [entry["density"] for entry in json.loads(capsys.readouterr().out)["plan"]] == [1.5, 0.2]
