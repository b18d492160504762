"""How eighths are played: what the file says, else what the idiom does by custom; one answer for all who ask."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from fioritura.accompany.feels import default_feel
from fioritura.arrange.arrangement import arranged
from fioritura.arrange.arrangement_file import arrangement_from_json, arrangement_to_json
from fioritura.cli import main
from fioritura.lesson.edition import Edition, line_bytes, line_score
from fioritura.lesson.lesson import lesson_of
from fioritura.notation.abc.reader import read_abc
from fioritura.notation.musicxml.reader import read_musicxml
from fioritura.players.feel import feel_by_custom, feel_of
from fioritura.players.setting import Idiom, Setting
from fioritura.tune import Feel, Tune
from fioritura.words import speaking

BODY = '"C"CDEF|"G7"GAB2|"Am"cBA2|"C"c4|\n'


def tune(*, title: str = "Plain", pace: str = "", metre: str = "4/4") -> Tune:
    pace = f"Q:{pace}\n" if pace else ""
    return read_abc(f"X:1\nT:{title}\nM:{metre}\nL:1/4\n{pace}K:C\n{BODY}", irregular="keep")[0]


CASES = [
    ({}, "jazz", "swing", "swing"),
    ({"pace": "1/4=190"}, "jazz", "swing", "swing"),
    ({}, "folk", "straight", "reel"),
    ({"pace": '"Swing"'}, "folk", "swing", "swing"),
    ({"pace": '"Straight eighths" 1/4=140'}, "jazz", "straight", "bossa"),
    ({"pace": '"Bossa"'}, "jazz", "straight", "bossa"),
    ({"title": "Kitchen Bossa"}, "jazz", "straight", "bossa"),
    ({"pace": '"Slow ballad" 1/4=60'}, "jazz", "swing", "ballad"),
    ({"pace": '"Shuffle"'}, "jazz", "swing", "shuffle"),
    ({"pace": '"Rock"'}, "jazz", "straight", "soul"),
    ({"metre": "3/4"}, "jazz", "swing", "waltz"),
    ({"metre": "6/8"}, "jazz", "straight", "jig"),
    ({"title": "Ballad of the Weir"}, "folk", "straight", "reel"),
]


@pytest.mark.parametrize(("said", "idiom", "feel", "band"), CASES)
def test_what_the_file_says_then_the_idiom(said: dict[str, str], idiom: Idiom, feel: str, band: str) -> None:
    found = tune(**said)
    assert feel_of(found, idiom) == feel
    assert Setting(idiom=idiom).on(found).feel == feel
    chosen = default_feel(found, is_folk=idiom == "folk")
    assert (chosen.id, chosen.line_feel) == (band, feel)


def test_custom_is_said_and_what_is_said_is_not_custom() -> None:
    assert feel_by_custom(tune(), "jazz") is not None
    assert feel_by_custom(tune(), "folk") is None
    assert feel_by_custom(tune(pace='"Swing"'), "jazz") is None
    assert feel_by_custom(tune(metre="6/8"), "jazz") is None


def test_what_the_user_says_holds_for_line_and_band() -> None:
    straight = Setting("alto-sax", feel="straight").on(tune())
    assert straight.feel == "straight"
    assert lesson_of(tune(), straight).feel.id == "bossa"
    assert lesson_of(tune(), Setting("alto-sax").on(tune())).feel.id == "swing"


@pytest.mark.parametrize("language", ["en", "de", "fr", "es"])
@pytest.mark.parametrize("ending", ["abc", "musicxml"])
def test_the_sheet_says_it_and_comes_back_the_same(language: str, ending: str) -> None:
    cases: list[tuple[Tune, Feel | None]] = [(tune(), None), (tune(), "straight"), (tune(pace='"Bossa"'), None)]
    with speaking(language):
        for found, feel in cases:
            arrangement = arranged(found, Setting("concert", feel=feel).on(found))
            data = line_bytes(Edition(arrangement.rendition, arrangement=arrangement), ending)
            back = read_abc(data.decode())[0] if ending == "abc" else read_musicxml(data)
            assert feel_of(back, "jazz") == arrangement.setting.feel
            assert back.style == {None: found.style or "swing", "straight": "straight"}[feel]


def test_a_folk_tune_needs_no_word() -> None:
    arrangement = arranged(tune(), Setting("concert", idiom="folk").on(tune()))
    assert line_score(Edition(arrangement.rendition)).tune.style is None


def test_an_arrangement_keeps_the_style() -> None:
    found = tune(pace='"Bossa"')
    text = arrangement_to_json(arranged(found, Setting("concert").on(found)))
    assert arrangement_from_json(text).tune.style == "bossa"
    data = json.loads(text)
    del data["tune"]["style"]
    assert arrangement_from_json(json.dumps(data)).tune == replace(found, style=None)


def test_the_command_line_says_it(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "t.abc").write_text(f"X:1\nT:T\nM:4/4\nL:1/4\nQ:1/4=190\nK:C\n{BODY}", encoding="utf-8")
    argv = ["ornament", str(tmp_path / "t.abc"), "--out", str(tmp_path / "o"), "--formats", "abc", "--json"]
    assert main(argv) == 0
    summary = json.loads(capsys.readouterr().out)
    assert (summary["feel"], summary["style"]) == ("swing", None)
    assert 'Q:"Swing"' in (tmp_path / "o/ornamented.abc").read_text(encoding="utf-8")
    assert main(argv[:-1]) == 0
    assert "its eighths are swung, as jazz does by custom. (--feel)" in capsys.readouterr().err
    assert main([*argv[:-1], "--feel", "straight"]) == 0
    assert "by custom" not in capsys.readouterr().err
    assert 'Q:"Straight eighths"' in (tmp_path / "o/ornamented.abc").read_text(encoding="utf-8")
