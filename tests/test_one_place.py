"""A technique is complete in one place: nothing outside `techniques/` lists ids or guesses by a part of one."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from fioritura.techniques.table import all_families, all_techniques, family_of, technique_of_sign
from fioritura.techniques.technique import WORDS
from fioritura.tune import ORNAMENT_MARKS, Mark
from fioritura.words import LANGUAGES, say, speaking
from tests.kinds import grace_techniques, technique_with

HOME = Path(__file__).parents[1]
ROOTS = ("src", "tests", "tools", "benchmarks")
ENDINGS = (".py", ".js", ".html", ".json", ".typ", ".css")
OWN = ("src/fioritura/techniques/",)

EXCEPTIONS: dict[str, str] = {
    "src/fioritura/tune.py": "`Mark` names signs of notation",
    "src/fioritura/notation/": "names of signs in MusicXML, ABC, MEI and SVG",
    "src/fioritura/listening/notes.py": "`InflectionKind` names what was heard, of which a technique may be made",
    "src/fioritura/listening/inflect.py": "`vibrato` is a function",
    "src/fioritura/web/static/take.js": "`delay` is an input of the page: the delay of the sound",
    "tests/test_musicxml_writer.py": "names of signs in MusicXML",
    "tests/test_engrave.py": "names of signs in MEI",
    "tests/test_mei.py": "names of signs in MEI",
    "tests/test_alternative.py": "the text of a label",
}
"""Files and folders in which a word that is also an id stands for something else, and for what."""


def _files() -> list[Path]:
    found = [path for root in ROOTS for path in sorted((HOME / root).rglob("*")) if path.suffix in ENDINGS]
    names = {path: path.relative_to(HOME).as_posix() for path in found}
    return [path for path in found if "__pycache__" not in names[path] and not names[path].startswith(OWN)]


def _code(path: Path) -> str:
    """A file's text; of Python without docstrings, whose examples show ids as a user writes them."""
    text = path.read_text(encoding="utf-8")
    if path.suffix != ".py":
        return text
    lines = text.splitlines()
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef) and ast.get_docstring(node) is not None:
            shown = node.body[0]
            for number in range(shown.lineno - 1, shown.end_lineno or shown.lineno):
                lines[number] = ""
    return "\n".join(lines)


def test_no_id_of_a_technique_stands_outside_its_place() -> None:
    id = re.compile("(?<![\\w=-])[\"'](" + "|".join(map(re.escape, all_techniques())) + ")[\"']")
    found, excused = [], set()
    for path in _files():
        name = path.relative_to(HOME).as_posix()
        lines = _code(path).splitlines()
        hits = [f"{name}:{number} {match[1]}" for number, line in enumerate(lines, 1) for match in id.finditer(line)]
        excuse = next((exception for exception in EXCEPTIONS if name.startswith(exception)), None)
        if excuse is None:
            found += hits
        elif hits:
            excused.add(excuse)
    assert found == []
    assert set(EXCEPTIONS) - excused <= {name for name in EXCEPTIONS if not (HOME / name).exists()}, "needless"


def test_nothing_guesses_by_a_part_of_an_id() -> None:
    guess = re.compile(
        r"\btechnique(?:\.id)?\.(?:startswith|endswith|split|partition)\(|[\"'][a-z-]+[\"'] in (?:\w+\.)*technique(?:\.id)?\b(?!s)"
    )
    found = []
    for path in _files():
        if path.suffix == ".py" and path != Path(__file__):
            lines = path.read_text(encoding="utf-8").splitlines()
            found += [
                f"{path.relative_to(HOME)}:{n} {line.strip()}"
                for n, line in enumerate(lines, 1)
                if guess.search(line)
            ]
    assert found == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_technique_has_all_its_words(language: str) -> None:
    with speaking(language):
        for technique in all_techniques().values():
            said = [say(getattr(technique, name)) for name in ("name", *WORDS)]
            assert all(text.strip() for text in said)
            assert len(said[1]) <= 20, f"{said[1]!r} is too long over a staff"
            assert "½" not in said[1]
        names = [say(family.name) for family in all_families().values()]
        assert len(set(names)) == len(names)


def test_each_family_has_a_drawing_of_its_own() -> None:
    icons = [family.icon for family in all_families().values()]
    assert len(set(icons)) == len(icons)
    assert {technique.family for technique in all_techniques().values()} == set(all_families())


def test_signs_stand_for_one_technique_each() -> None:
    signs = [sign for one in all_techniques().values() for sign in one.signs]
    assert len(set(signs)) == len(signs)
    assert set(signs) >= ORNAMENT_MARKS
    assert family_of(technique_with(Mark.TURN)) is family_of(technique_with(Mark.ROLL)), "a roll moves as a turn does"
    assert technique_of_sign(Mark.STACCATO) is None


def test_definitions_have_an_order() -> None:
    breadths = [one.definition.breadth for one in all_techniques().values() if one.definition]
    assert len(set(breadths)) == len(breadths)


def test_grace_notes_below_and_above_are_told_by_their_side() -> None:
    assert {one.side for one in grace_techniques()} == {"above", "below", None}
