"""What the package declares and carries: its dependencies are those that it imports, and the wheel is complete."""

import ast
import sys
import zipfile
from pathlib import Path

import pytest

from tools.environments import ROOT, declared, lowest, missing_files

SOURCE = ROOT / "src" / "fioritura"

OPTIONAL = {"av", "distributed"}
"""Imported only for what the extras `clips` and `cluster` are for."""

NEVER_IMPORTED = {
    "brotli": "fonttools reads and writes WOFF2 fonts with it",
    "midirenderer": "asked for by name, in a process of its own",
    "pretty_midi": "carries the soundfont that is used where there is no other",
    "python-multipart": "starlette reads forms with it",
}
"""Declared, but for others: name and reason."""

MODULES = {"fontTools": "fonttools", "fluent": "fluent.runtime"}
"""Packages that import under another name."""


def imported() -> set[str]:
    """The packages that the sources import, by the names under which they are installed."""
    found: set[str] = set()
    for path in SOURCE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                found |= {alias.name.split(".")[0] for alias in node.names}
            elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
                found.add(node.module.split(".")[0])
    return {MODULES.get(name, name) for name in found - set(sys.stdlib_module_names) - {"fioritura"}}


def test_what_is_imported_is_declared_and_the_other_way_round() -> None:
    names = {lowest(requirement).split("==")[0] for requirement in declared()}
    assert imported() - OPTIONAL == names - NEVER_IMPORTED.keys()
    assert names >= NEVER_IMPORTED.keys()


@pytest.mark.parametrize(
    ("requirement", "narrowed"),
    [
        ("numpy>=2.0", "numpy==2.0"),
        ("verovio>=6.0,<7", "verovio==6.0"),
        ("pretty_midi>=0.2.11.post0", "pretty_midi==0.2.11.post0"),
        ("midirenderer>=0.1.3; platform_machine != 'aarch64'", "midirenderer==0.1.3; platform_machine != 'aarch64'"),
    ],
)
def test_a_requirement_is_narrowed_to_its_lowest_release(requirement: str, narrowed: str) -> None:
    assert lowest(requirement) == narrowed


@pytest.mark.parametrize("requirement", ["numpy", "numpy<3", "numpy==2.0", "numpy>=2.0,!=2.1"])
def test_a_requirement_without_a_plain_lower_bound_is_refused(requirement: str) -> None:
    with pytest.raises(ValueError, match="lower bound"):
        lowest(requirement)


def test_files_that_a_wheel_lacks_are_named(tmp_path: Path) -> None:
    source = tmp_path / "src"
    for name in (
        "package/__init__.py",
        "package/data/tune.abc",
        "package/__pycache__/x.pyc",
        "package.egg-info/PKG-INFO",
    ):
        (source / name).parent.mkdir(parents=True, exist_ok=True)
        (source / name).touch()
    with zipfile.ZipFile(tmp_path / "package.whl", "w") as wheel:
        wheel.writestr("package/__init__.py", "")
    assert missing_files(tmp_path / "package.whl", source) == ["package/data/tune.abc"]
