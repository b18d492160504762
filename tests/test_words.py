"""What is said to people: every text is there in every language, is used, and gets the arguments that it needs.

The texts are Project Fluent (its reference parser, `fluent.syntax`, reads them here).
"""

from __future__ import annotations

import ast
import builtins
import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

import pytest
from fluent.syntax import FluentParser
from fluent.syntax import ast as ftl
from fluent.syntax.visitor import Visitor

import fioritura
from fioritura.techniques.table import all_techniques
from fioritura.theory.key import Key
from fioritura.theory.metre import EIGHTH, QUARTER, SIXTEENTH, Metre
from fioritura.theory.pitch import Pitch
from fioritura.theory.position import position_in
from fioritura.words import LANGUAGES, add_words, capital, message, say, speaking, verbatim
from fioritura.words.notes import note_name

SOURCE = Path(fioritura.__file__).parent
MAKERS = ("message", "Message")
DYNAMIC = ("hint-",)
"""Beginnings of ids that are put together of parts where they are used."""


class _Variables(Visitor):
    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: ftl.VariableReference) -> None:  # noqa: N802
        self.names.add(node.id.name)


def _variables(node: ftl.BaseNode) -> frozenset[str]:
    visitor = _Variables()
    visitor.visit(node)
    return frozenset(visitor.names)


def _paths(language: str) -> list[Path]:
    return sorted([*SOURCE.glob(f"words/{language}/*.ftl"), *SOURCE.glob(f"techniques/*.{language}.ftl")])


def _room(path: Path) -> str:
    return path.parent.name if path.parent.name == "techniques" else path.stem


@lru_cache(maxsize=8)
def texts(language: str) -> dict[str, dict[str, tuple[str, frozenset[str]]]]:
    """Of each room the ids (and ids.attributes) with the arguments of each."""
    found: dict[str, dict[str, tuple[str, frozenset[str]]]] = {}
    read = [(_room(path), str(path), path.read_text(encoding="utf-8")) for path in _paths(language)]
    own = (one for one in all_techniques().values() if language in one.words)
    read += [("techniques", f"the words of {one.id}", one.words[language]) for one in own]
    for name, source, text in read:
        room = found.setdefault(name, {})
        for entry in FluentParser().parse(text).body:
            assert not isinstance(entry, ftl.Junk), f"{source}: {entry.content}"
            if isinstance(entry, ftl.Message):
                assert entry.id.name not in room, f"{source}: {entry.id.name} twice"
                room[entry.id.name] = ("", _variables(entry.value) if entry.value else frozenset())
                for attribute in entry.attributes:
                    room[f"{entry.id.name}.{attribute.id.name}"] = ("", _variables(attribute.value))
    return found


ROOMS = sorted(texts("en"))


@pytest.mark.parametrize("language", LANGUAGES[1:])
@pytest.mark.parametrize("room", ROOMS)
def test_languages_have_the_same_texts(room: str, language: str) -> None:
    source, other = texts("en")[room], texts(language).get(room, {})
    plain = {id for id in source if "." not in id}
    assert plain - set(other) == set(), "texts are missing"
    assert {id for id in other if "." not in id} - plain == set(), "texts that English does not have"


def _calls() -> Iterator[tuple[Path, ast.Call, str]]:
    """Calls that make a message, by the id they name."""
    for path in sorted(SOURCE.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call) or not node.args:
                continue
            name = node.func.id if isinstance(node.func, ast.Name) else ""
            if name in MAKERS or name.endswith("Error"):
                first = node.args[0]
                if isinstance(first, ast.Constant) and isinstance(first.value, str):
                    yield path, node, first.value


def _all_ids() -> dict[str, frozenset[str]]:
    """The arguments that a text takes in any language."""
    found: dict[str, frozenset[str]] = {}
    for language in LANGUAGES:
        for room in texts(language).values():
            for id, (_, arguments) in room.items():
                found[id] = found.get(id, frozenset()) | arguments
    return found


def test_ids_are_there_once() -> None:
    rooms = texts("en")
    every = [id for room in rooms.values() for id in room]
    assert len(every) == len(set(every)), sorted(id for id in set(every) if every.count(id) > 1)


def test_errors_and_messages_name_a_text_and_give_what_it_needs() -> None:
    known, problems = _all_ids(), []
    for path, call, id in _calls():
        name = call.func.id if isinstance(call.func, ast.Name) else getattr(call.func, "attr", "")
        where = f"{path.relative_to(SOURCE)}:{call.lineno}"
        if name.endswith("Error") and name in vars(builtins):
            continue
        if " " in id:
            problems.append(f"{where}: a sentence in the code: {id[:60]!r}")
            continue
        needed = known.get(id.partition(".")[0])
        if needed is None:
            if name in MAKERS:
                problems.append(f"{where}: no text {id!r}")
            continue
        needed = known.get(id, needed)
        given = {keyword.arg for keyword in call.keywords}
        if None not in given and needed - given:
            problems.append(f"{where}: {id} lacks {sorted(needed - given)}")
    assert problems == []


def test_no_error_is_raised_with_an_f_string() -> None:
    problems = []
    for path in sorted(SOURCE.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call) and node.exc.args:
                name = getattr(node.exc.func, "id", "")
                if name in vars(builtins):
                    continue
                joined = isinstance(node.exc.args[0], ast.JoinedStr) and len(node.exc.args[0].values) > 0
                if (
                    name.endswith("Error")
                    and joined
                    and any(
                        isinstance(part, ast.Constant) and " " in str(part.value)
                        for part in node.exc.args[0].values  # type: ignore[attr-defined]
                    )
                ):
                    problems.append(f"{path.relative_to(SOURCE)}:{node.lineno}")
    assert problems == []


@pytest.mark.parametrize("room", ROOMS)
def test_every_text_is_used(room: str) -> None:
    code = "\n".join(
        path.read_text(encoding="utf-8")
        for ending in ("*.py", "*.js", "*.html", "*.typ")
        for path in SOURCE.rglob(ending)
    )
    own = "\n".join(path.read_text(encoding="utf-8") for path in _paths("en"))
    names = set(re.findall(r"[a-z][a-z0-9-]*", code))
    inside = set(re.findall(r"\{ ?-?([a-z][a-z0-9-]*)", own))
    beginnings = set(re.findall(r"([a-z][a-z0-9]*(?:-[a-z0-9]+)*-)\{", code))
    beginnings |= set(re.findall(r"\"([a-z][a-z0-9-]*-)\" \+", code))
    unused = [
        id
        for id in texts("en")[room]
        if "." not in id
        and id not in names | inside
        and not id.startswith(DYNAMIC)
        and not any(id.startswith(beginning) for beginning in beginnings)
    ]
    assert unused == []


@pytest.mark.parametrize(
    ("language", "ticks", "words"),
    [
        ("en", 0, "on the downbeat"),
        ("en", 2 * QUARTER, "on beat 3"),
        ("en", QUARTER + EIGHTH, "on the off-beat after 2"),
        ("en", 2 * QUARTER // 3, "on the third triplet of beat 1"),
        ("en", SIXTEENTH, "on the second sixteenth of beat 1"),
        ("de", 0, "auf der Eins"),
        ("de", QUARTER // 3, "auf dem zweiten Triolenton von Schlag 1"),
        ("fr", QUARTER + EIGHTH, "sur le contretemps du temps 2"),
        ("es", 3 * SIXTEENTH, "en la cuarta semicorchea del tiempo 1"),
    ],
)
def test_places_in_the_bar_are_said_as_musicians_say_them(language: str, ticks: int, words: str) -> None:
    with speaking(language):
        assert say(position_in(Metre(4, 4), ticks, 5)) == words


def test_a_pickup_is_no_bar_0() -> None:
    position = position_in(Metre(4, 4), 3 * QUARTER, 0, is_pickup=True)
    assert say(position.message.form("full")) == "the pickup, beat 4"


def test_compound_beats_are_counted_in_their_own_notes() -> None:
    assert say(position_in(Metre(6, 8), 2 * EIGHTH, 1)) == "on the third eighth of beat 1"


@pytest.mark.parametrize(
    ("name", "german"),
    [
        ("Bb4", "B4"),
        ("B4", "H4"),
        ("F#3", "Fis3"),
        ("Eb5", "Es5"),
        ("Ab4", "As4"),
        ("Bbb2", "Heses2"),
        ("B#3", "His3"),
        ("Abb4", "Asas4"),
    ],
)
def test_german_note_names(name: str, german: str) -> None:
    """German note names (common practice; "Heses" and "Asas" are the usual double flats)."""
    with speaking("de"):
        assert say(Pitch.parse(name)) == german


def test_note_names_of_every_letter() -> None:
    assert [note_name(letter, 0, "solfege", "fr") for letter in "CDEFGAB"] == [
        "Do",
        "Ré",
        "Mi",
        "Fa",
        "Sol",
        "La",
        "Si",
    ]
    assert [note_name(letter, -1, "german", "de") for letter in "CDEFGAB"] == [
        "Ces",
        "Des",
        "Es",
        "Fes",
        "Ges",
        "As",
        "B",
    ]


def test_keys_are_named() -> None:
    with speaking("de"):
        assert say(Key(-2, "major")) == "B-Dur"
        assert say(Key(-2, "minor")) == "g-Moll"


def test_lists_and_verbatim_text() -> None:
    add_words({"en": 'test-shelf = { LIST($things, "or") } of { CAPITAL($whose) }\n'})
    said = message("test-shelf", things=("reeds", verbatim("swabs"), Pitch.parse("C4")), whose="mine")
    assert say(said) == "reeds, swabs or C4 of Mine"
    with speaking("fr"):
        assert say(said).startswith("reeds, swabs ou Do4")


def test_what_can_not_be_said_is_an_error() -> None:
    with pytest.raises(LookupError):
        say(message("no-such-text-anywhere"))
    add_words({"en": "test-needs = { $this }\n"})
    with pytest.raises(ValueError, match="this"):
        say(message("test-needs"))


def test_the_pseudo_language_disguises_every_letter() -> None:
    with speaking("pseudo"):
        assert not re.search("[a-z]", say(position_in(Metre(4, 4), 0, 1)))


def test_capital_leaves_the_rest() -> None:
    assert capital("double grace note") == "Double grace note"
