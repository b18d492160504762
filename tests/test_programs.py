"""The programs of docs/programs.md: short, on the facade alone, typed; and they print what the page says."""

from __future__ import annotations

import ast
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

import fioritura

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "docs" / "programs.md"
BLOCK = re.compile(r"^## (.+?)$.*?^```python\n(.*?)^```\n\n```text\n(.*?)^```$", re.MULTILINE | re.DOTALL)
MOST_LINES = 15
CACHE = ROOT / ".mypy_cache" / "programs"
BESIDE = {"fioritura", "io", "mido", "music21", "numpy", "pandas", "pathlib"}


class Program(NamedTuple):
    title: str
    code: str
    printed: str


PROGRAMS = [Program(*found) for found in BLOCK.findall(PAGE.read_text(encoding="utf-8"))]
EACH = pytest.mark.parametrize("program", PROGRAMS, ids=[program.title for program in PROGRAMS])


def test_there_are_ten() -> None:
    text = PAGE.read_text(encoding="utf-8")
    assert len(PROGRAMS) == 10 == text.count("```python") == text.count("\n## ")


@EACH
def test_a_program_is_short_and_stands_on_the_facade(program: Program) -> None:
    assert sum(1 for line in program.code.splitlines() if line.strip()) <= MOST_LINES
    assert all(len(line) <= 118 for line in program.code.splitlines())
    for node in ast.walk(ast.parse(program.code)):
        if isinstance(node, ast.Import):
            assert {name.name for name in node.names} <= BESIDE
        if isinstance(node, ast.ImportFrom):
            assert node.module in BESIDE
            assert node.module != "fioritura" or {name.name for name in node.names} <= set(fioritura.__all__)
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "fioritura":
            assert node.attr in fioritura.__all__


@EACH
def test_a_program_prints_what_the_page_says(program: Program, tmp_path: Path) -> None:
    shutil.copy(ROOT / "docs" / "gallery" / "saints.abc", tmp_path / "tune.abc")
    ended = run(program, tmp_path)
    assert ended.returncode == 0, ended.stderr
    assert ended.stdout == program.printed


def run(program: Program, folder: Path) -> subprocess.CompletedProcess[str]:
    (folder / "program.py").write_text(program.code, encoding="utf-8")
    source = Path(fioritura.__file__).parents[1]
    environment = os.environ | {"PYTHONPATH": str(source), "PYTHONWARNINGS": "error:::fioritura"}
    return subprocess.run(
        [sys.executable, "program.py"], cwd=folder, env=environment, capture_output=True, text=True, check=False
    )


def test_the_programs_pass_strict_type_checking(tmp_path: Path) -> None:
    paths = [tmp_path / f"program_{number}.py" for number in range(len(PROGRAMS))]
    for path, program in zip(paths, PROGRAMS, strict=True):
        path.write_text(program.code, encoding="utf-8")
    config = tmp_path / "mypy.ini"
    outside = "[mypy-pandas.*,music21.*,mido.*]\nignore_missing_imports = True\nfollow_imports = skip\n"
    config.write_text(f"[mypy]\nstrict = True\n{outside}", encoding="utf-8")
    environment = os.environ | {"MYPYPATH": str(Path(fioritura.__file__).parents[1])}
    ended = subprocess.run(
        [
            sys.executable,
            "-m",
            "mypy",
            "--config-file",
            config,
            "--follow-imports",
            "silent",
            "--cache-dir",
            CACHE,
            *paths,
        ],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert ended.returncode == 0, ended.stdout
