"""Plans of lessons: they show what was chosen, in the teacher's words, and a pack made by one can be made again."""

from __future__ import annotations

import json
import zipfile
from pathlib import Path

import pytest

from fioritura.arrange.arrangement import Arrangement, arranged
from fioritura.arrange.arrangement_file import arrangement_to_json
from fioritura.arrange.prepare import prepared
from fioritura.cli import main
from fioritura.errors import OptionError
from fioritura.lesson.manifest import PackSource
from fioritura.lesson.pack import write_pack
from fioritura.lesson.plan import LessonPlan, phrase_of, plan_of, planned_lesson
from fioritura.phrase import phrases
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.players.setting import Setting
from fioritura.techniques.turn import TURN
from tests.lessons import demo_tune


@pytest.fixture(scope="module")
def arrangement() -> Arrangement:
    tune = prepared(demo_tune(), instrument_named("alto-sax"))
    return arranged(tune, Setting(Player.of("alto-sax", 3), tune.quarters_per_minute, tune.feel, "jazz"))


def shown(arrangement: Arrangement, plan: LessonPlan) -> list[str]:
    return [example.technique.id for example in planned_lesson(arrangement, plan).examples]


def test_a_lesson_shows_the_techniques_of_its_arrangement_unless_others_are_chosen(arrangement: Arrangement) -> None:
    used = {figure.technique for figure in arrangement.rendition.figures}
    assert set(shown(arrangement, LessonPlan())) == used
    offered = {figure.technique for figure in arrangement.survey.figures}
    chosen = sorted(offered - used)[:2] + sorted(used)[:1]
    assert set(shown(arrangement, LessonPlan(techniques=tuple(chosen)))) == set(chosen)


def test_examples_lie_in_the_chosen_phrases(arrangement: Arrangement) -> None:
    parts = phrases(arrangement.tune)
    offered = tuple({figure.technique for figure in arrangement.survey.figures})
    for number in (0, len(parts) - 1):
        plan = LessonPlan(techniques=offered, phrases=(number,))
        lesson = planned_lesson(arrangement, plan)
        assert lesson.examples
        for example in lesson.examples:
            assert parts[number].first <= example.figure.anchors[0] <= parts[number].last
            assert phrase_of(arrangement.tune, parts, example.figure) == number


def test_the_performance_is_the_arrangement_with_its_decisions(arrangement: Arrangement) -> None:
    decided = arrangement.with_seed(3)
    assert planned_lesson(decided, LessonPlan()).rendition == decided.rendition
    easier = planned_lesson(decided, LessonPlan(level=1)).rendition
    assert easier.setting.level == 1
    assert len(easier.figures) < len(decided.rendition.figures)


def test_nothing_to_show_is_refused(arrangement: Arrangement) -> None:
    with pytest.raises(OptionError, match="choose another technique or phrase"):
        planned_lesson(arrangement, LessonPlan(phrases=()))


def test_a_plan_survives_as_plain_data() -> None:
    plan = plan_of(
        {
            "techniques": [TURN.id],
            "phrases": [0, 2],
            "level": 2,
            "language": "de",
            "players": ["flute"],
            "sections": ["handout"],
            "overrides": {"words": {"title": "Für Anna", "studio": " "}, "techniques": {TURN.id: {"how": "A wave."}}},
        }
    )
    assert plan.overrides.words == {"title": "Für Anna"}
    assert plan_of(json.loads(json.dumps(plan.data()))) == plan


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"language": "xx"}, "No language “xx”"),
        ({"paper": "a3"}, "paper"),
        ({"techniques": ["whistle"]}, "whistle"),
        ({"players": ["kazoo"]}, "kazoo"),
        ({"sections": ["film"]}, "film"),
        ({"level": 9}, "Level 9"),
        ({"phrases": "all"}, "“a” is no phrase"),
        ({"phrases": [-1]}, "“-1” is no phrase"),
        ({"phrases": 3}, "no plan"),
        ({"colour": "red"}, "no plan"),
        ({"overrides": {"words": {"price": "5"}}}, "price"),
        ({"overrides": {"words": {"notes": "x" * 4001}}}, "4,000 is the limit"),
        ({"overrides": {"techniques": {TURN.id: {"sound": "loud"}}}}, "sound"),
    ],
)
def test_a_plan_that_names_what_there_is_not_is_refused(wrong: dict[str, object], said: str) -> None:
    with pytest.raises(OptionError, match=said):
        plan_of(wrong)


def test_a_pack_made_by_a_plan_can_be_made_again(
    arrangement: Arrangement, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("FIORITURA_CACHE", str(tmp_path / "cache"))
    plan = plan_of({"sections": ["handout"], "overrides": {"words": {"title": "Our Evening"}}, "language": "de"})
    source = tmp_path / "arrangement.json"
    source.write_text(arrangement_to_json(arrangement))
    lesson = planned_lesson(arrangement, plan)
    settings = {"plan": plan.data(), "octave": 0}
    first = write_pack(lesson, tmp_path / "first.zip", plan.options, source=PackSource(source), settings=settings)
    assert first["title"] == "Our Evening"
    zipfile.ZipFile(tmp_path / "first.zip").extractall(tmp_path)
    assert main(["lesson", str(tmp_path / "first" / "manifest.json"), "--out", str(tmp_path / "again")]) == 0
    again = json.loads((tmp_path / "again" / "manifest.json").read_text())
    assert again["files"] == json.loads(json.dumps(first))["files"]
