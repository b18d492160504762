"""The example of CONTRIBUTING, word for word as a new file in a copy of the program, passes the suite there."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

HOME = Path(__file__).parents[1]
COPIED = ("src", "tests", "tools", "benchmarks", "examples")
SUITE = (
    "tests/test_one_place.py",
    "tests/test_rule_lists.py",
    "tests/test_page_words.py",
    "tests/test_arrangement.py",
    "tests/test_qa_regressions.py",
)
"""What looks at all techniques, whole files; of those that judge each technique only what is about the new one."""

JUDGES = (
    "tests/test_words.py",
    "tests/test_techniques.py",
    "tests/test_name.py",
    "tests/test_cli.py",
    "tests/test_web.py",
    "tests/test_plugins.py",
)
PICKED = "octave-doubling or techniques- or every_text or every_technique or groups_are_named or quick_notes or listed_as_a_table or like_any"


def example() -> str:
    """The code block that is a whole file."""
    text = (HOME / "CONTRIBUTING.md").read_text(encoding="utf-8")
    section = text[text.index("## Add a technique in one file") :]
    found = re.search(r"^```python\n(.*?)^```$", section, re.MULTILINE | re.DOTALL)
    assert found is not None
    return found[1]


def test_the_example_passes_the_suite(tmp_path: Path) -> None:
    for folder in COPIED:
        shutil.copytree(
            HOME / folder, tmp_path / folder, ignore=shutil.ignore_patterns("__pycache__", "*.svg", "*.mp3")
        )
    shutil.copy(HOME / "pyproject.toml", tmp_path)
    (tmp_path / "src" / "fioritura" / "techniques" / "doubling.py").write_text(example(), encoding="utf-8")
    paths = os.pathsep.join([str(tmp_path / "src"), str(tmp_path)])
    environment = os.environ | {"PYTHONPATH": paths, "PYTHONDONTWRITEBYTECODE": "1"}

    def run(*arguments: str) -> subprocess.CompletedProcess[str]:
        command = [sys.executable, "-m", *arguments]
        return subprocess.run(command, cwd=tmp_path, env=environment, capture_output=True, text=True, check=False)

    options = ("-q", "-p", "no:cacheprovider", "-o", "addopts=")
    for chosen in (SUITE, (*JUDGES, "-k", PICKED)):
        ended = run("pytest", *options, *chosen)
        assert ended.returncode == 0, ended.stdout[-6000:]
    listed = run("fioritura", "techniques").stdout
    assert "octave-doubling            Octave doubling\n" in listed
    offered = run("fioritura", "spots", "src/fioritura/data/lanterns.abc", "--only", "doublings", "--why")
    assert "has time to answer itself." in offered.stdout, offered.stderr
