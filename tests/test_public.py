"""What `fioritura` hands on: exactly these names, documented and typed, each imported when it is first used."""

from __future__ import annotations

import ast
import inspect
import subprocess
import sys
import typing
from importlib.metadata import version
from importlib.resources import files
from pathlib import Path

import pytest

import fioritura
from fioritura.errors import FiorituraError, OptionError

FUNCTIONS = [
    "all_techniques",
    "before_next",
    "choose",
    "compare_figures",
    "compare_notes",
    "demo_tune",
    "find",
    "hear",
    "instead",
    "listen",
    "message",
    "name",
    "ornament",
    "ornament_all",
    "plain",
    "read",
    "say",
    "speaking",
    "verbatim",
    "with_graces",
    "with_mark",
    "write",
]
ERRORS = [
    "FiorituraError",
    "OptionError",
    "OtherTuneError",
    "OutputError",
    "RangeError",
    "ReadError",
    "ToolError",
    "TuneError",
]
TYPES = [
    "Agreement",
    "Bar",
    "Chord",
    "ChordSpan",
    "Context",
    "Figure",
    "FigureNote",
    "Instrument",
    "Interval",
    "Key",
    "Mark",
    "Message",
    "Metre",
    "NamedFigure",
    "Naming",
    "Note",
    "NoteName",
    "Pitch",
    "Plan",
    "PlayedNote",
    "Player",
    "Rendition",
    "Setting",
    "Slip",
    "Statement",
    "Survey",
    "Take",
    "Technique",
    "Tune",
]
OTHERS = ["TasteTable", "__version__"]

HEAVY = {"numpy", "fastapi", "verovio", "mido", "soundfile", "sqlalchemy", "lxml", "jinja2", "fluent"}


def test_exactly_these_names_are_handed_on() -> None:
    assert sorted(fioritura.__all__) == sorted([*FUNCTIONS, *ERRORS, *TYPES, *OTHERS])
    assert set(fioritura.__all__) <= set(dir(fioritura))
    for name in fioritura.__all__:
        assert getattr(fioritura, name) is getattr(fioritura, name)
    assert not any(inspect.isclass(getattr(fioritura, name)) for name in FUNCTIONS)
    assert all(inspect.isclass(getattr(fioritura, name)) for name in ERRORS + TYPES)
    assert all(issubclass(getattr(fioritura, name), FiorituraError) for name in ERRORS)


def test_what_a_type_checker_sees_is_what_there_is() -> None:
    """The imports for type checkers and the table of homes say the same."""
    source = Path(fioritura.__file__).read_text(encoding="utf-8")
    (guarded,) = [node for node in ast.parse(source).body if isinstance(node, ast.If)]
    seen = {
        alias.name: node.module
        for node in guarded.body
        if isinstance(node, ast.ImportFrom) and node.module
        for alias in node.names
    }
    assert seen == {name: f"fioritura.{home}" for name, home in fioritura._HOME_OF.items()}
    assert {*seen, "__version__"} == set(fioritura.__all__)


@pytest.mark.parametrize("name", sorted(FUNCTIONS + ERRORS + TYPES))
def test_each_is_documented(name: str) -> None:
    one = getattr(fioritura, name)
    assert inspect.getdoc(one)
    if not inspect.isclass(one):
        return
    assert one.__doc__ and not one.__doc__.startswith(f"{name}("), "a dataclass's own signature is no documentation"
    for member, value in vars(one).items():
        if not member.startswith("_") and (inspect.isfunction(value) or isinstance(value, property)):
            assert inspect.getdoc(value), f"{name}.{member}"


@pytest.mark.parametrize("name", FUNCTIONS)
def test_each_function_is_typed(name: str) -> None:
    function = getattr(fioritura, name)
    hints = set(function.__annotations__)
    assert hints == {*inspect.signature(function).parameters, "return"} and typing.Any not in hints


def test_types_are_handed_on_with_the_package() -> None:
    assert files("fioritura").joinpath("py.typed").is_file()


def test_the_version_is_that_of_the_package() -> None:
    assert fioritura.__version__ == version("fioritura")


def test_there_is_nothing_else() -> None:
    with pytest.raises(AttributeError, match="has no attribute 'find_all'"):
        fioritura.find_all  # noqa: B018


def test_importing_the_package_imports_nothing_heavy() -> None:
    code = "import sys, fioritura; print(*{name.partition('.')[0] for name in sys.modules})"
    ended = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    before = subprocess.run([sys.executable, "-c", code.replace(", fioritura", "")], capture_output=True, text=True)
    loaded = set(ended.stdout.split()) - set(before.stdout.split())
    assert not loaded & HEAVY
    assert "fioritura" in loaded


@pytest.mark.parametrize("argument", ["player", "level", "idiom", "feel", "quarters_per_minute"])
def test_what_was_given_twice_is_said_to_belong_to_the_setting(argument: str) -> None:
    tune = fioritura.demo_tune()
    calls = (lambda **old: fioritura.find(tune, **old), lambda **old: fioritura.ornament(tune, **old))
    for call in calls:
        with pytest.raises(OptionError, match=rf"“{argument}” .* pass fioritura.Setting\(\"alto-sax\", level=3\)"):
            call(**{argument: "alto-sax"})
    with pytest.raises(OptionError, match=r"'alto-sax' is no setting: pass one such as fioritura.Setting"):
        fioritura.find(tune, "alto-sax")  # type: ignore[arg-type]
    with pytest.raises(OptionError, match=r"'alto-sax' is no setting"):
        fioritura.demo_tune("alto-sax")  # type: ignore[arg-type]
    with pytest.raises(OptionError, match="“player” is given once"):
        fioritura.read(b"X:1\nK:C\nC4|]", player="alto-sax")  # type: ignore[call-arg]
    with pytest.raises(TypeError, match="unexpected keyword argument 'colour'"):
        fioritura.find(tune, colour="blue")  # type: ignore[call-arg]
