"""Plugins: the example package does its work everywhere, and a broken one is named and left out."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from pypdf import PdfReader

import fioritura
from fioritura.techniques.table import all_techniques
from fioritura.techniques.turn import TURN

EXAMPLE = Path(__file__).parents[1] / "examples" / "plugin"
SOURCE = Path(fioritura.__file__).parents[1]
AIR = Path(__file__).parents[1] / "src" / "fioritura" / "data" / "lanterns.abc"

TECHNIQUE = """
from fioritura.techniques.technique import Technique, with_graces
from fioritura.techniques.table import technique_named
from fioritura.techniques.figure import Figure
from fioritura.words import message

WORDS = '''
{id} = own grace
    .label = own
    .text = {text}
    .how = Lightly.
    .when = Often.
    .fault = None.
    .cure = None.
own-grace-why = Because.
'''

def find(place):
    {find}

TECHNIQUES = (
    Technique(id={id!r}, family="own-graces", level={level!r}, find=find, words={{{language!r}: WORDS}}, taste={taste}),
)
"""
NOTES = ("note: The plugin own (of own-plugin 2.5)", "note: The plugin the taste of own-grace")
GRACE = 'yield with_graces("own-grace", place, [place.step_above], message("own-grace-why"))'


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example package, built and installed into a folder of its own."""
    folder = tmp_path_factory.mktemp("plugin")
    shutil.copytree(EXAMPLE, folder / "source")
    options = ("--no-deps", "--no-build-isolation", "--no-index", "--quiet", "--target")
    command = [sys.executable, "-m", "pip", "install", *options, str(folder / "installed"), str(folder / "source")]
    subprocess.run(command, check=True, capture_output=True)
    return folder / "installed"


@pytest.fixture(scope="module")
def plain_spots(tmp_path_factory: pytest.TempPathFactory) -> list[object]:
    """The spots of a tune without any plugin."""
    found: list[object] = json.loads(run(tmp_path_factory.mktemp("none"), "spots", AIR, "--json").stdout)
    return found


def run(plugins: Path, *arguments: str | Path, module: str = "fioritura") -> subprocess.CompletedProcess[str]:
    """A command of a fresh process that finds the plugins of a folder."""
    environment = os.environ | {"PYTHONPATH": f"{plugins}{os.pathsep}{SOURCE}"}
    command = [sys.executable, "-m", module, *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, check=False, env=environment)


def offer(folder: Path, code: str, *, group: str = "techniques", value: str = "own_plugin") -> Path:
    """A package in a folder, as an installer leaves it, with one plugin."""
    (folder / "own_plugin.py").write_text(code, encoding="utf-8")
    info = folder / "own_plugin-2.5.dist-info"
    info.mkdir()
    (info / "METADATA").write_text("Metadata-Version: 2.1\nName: own-plugin\nVersion: 2.5\n")
    (info / "entry_points.txt").write_text(f"[fioritura.{group}]\nown = {value}\n")
    return folder


def test_the_example_passes_its_own_tests(installed: Path) -> None:
    options = ("-q", "-o", "addopts=", "-p", "no:cacheprovider")
    ended = run(installed, *options, EXAMPLE / "tests", module="pytest")
    assert ended.returncode == 0, ended.stdout
    assert "3 passed" in ended.stdout


def test_a_technique_of_a_plugin_is_one_like_any(installed: Path, tmp_path: Path) -> None:
    """In the table, among the spots with its reasons, in the choice, in the labels and in the handout's words."""
    table = json.loads(run(installed, "techniques", "--json").stdout)
    assert len(table) == len(all_techniques()) + 1
    spots = json.loads(run(installed, "spots", AIR, "--only", "octave-grace-lower", "--json").stdout)
    assert spots
    ended = run(
        installed,
        "ornament",
        AIR,
        "--only",
        "octave-grace-lower",
        "--out",
        tmp_path / "out",
        "--formats",
        "json,musicxml",
    )
    assert ended.returncode == 0, ended.stderr
    figures = json.loads((tmp_path / "out" / "figures.json").read_text(encoding="utf-8"))
    assert {figure["technique"] for figure in figures} == {"octave-grace-lower"}
    assert "grace 8ve" in (tmp_path / "out" / "ornamented.musicxml").read_text(encoding="utf-8")
    lesson = ("lesson", AIR, "--out", tmp_path / "pack", "--sections", "handout", "--workers", "2")
    assert run(installed, *lesson, "--only", "octave-grace-lower,graces").returncode == 0
    text = " ".join(page.extract_text() for page in PdfReader(tmp_path / "pack" / "handout.pdf").pages)
    assert "Grace note an octave below" in text
    assert "Slur the octave slowly, evenly and softly" in " ".join(text.split())


def test_a_technique_of_a_plugin_is_chosen_by_its_taste(tmp_path: Path) -> None:
    """Without being asked for, where its weights say so; never where it has none."""
    loved = {"jazz": {"base": 3.5, "place": {"strong": 0.5}}}
    for name, taste, is_chosen in (("loved", loved, True), ("unloved", {}, False)):
        (tmp_path / name).mkdir()
        plugins = offer(tmp_path / name, fine(level=2, taste=taste))
        ended = run(plugins, "ornament", AIR, "--out", tmp_path / name / "out", "--formats", "json", "--json")
        assert ended.returncode == 0, ended.stderr
        figures = json.loads((tmp_path / name / "out" / "figures.json").read_text(encoding="utf-8"))
        assert ("own-grace" in {figure["technique"] for figure in figures}) == is_chosen


def test_a_player_of_a_plugin_is_one_like_any(installed: Path, tmp_path: Path) -> None:
    ended = run(
        installed, "ornament", AIR, "--player", "english-horn", "--out", tmp_path / "out", "--formats", "musicxml,mid"
    )
    assert ended.returncode == 0, ended.stderr
    written = (tmp_path / "out" / "ornamented.musicxml").read_text(encoding="utf-8")
    assert "<part-name>English horn</part-name>" in written
    assert "<chromatic>-7</chromatic>" in written
    assert "english-horn" in run(installed, "ornament", AIR, "--player", "kazoo").stderr


def fine(**values: object) -> str:
    return TECHNIQUE.format(
        **({"find": GRACE, "id": "own-grace", "level": 1, "text": "A.", "language": "en", "taste": {}} | values)
    )


@pytest.mark.parametrize(
    ("code", "problem"),
    [
        ("import no_such_module", "can't be loaded (ModuleNotFoundError: No module named 'no_such_module')"),
        ("raise SystemExit(3)", "can't be loaded (SystemExit: 3)"),
        ("TECHNIQUES = ()", "it has no TECHNIQUES"),
        ("TECHNIQUES = 5", "no tuple of techniques"),
        (f"TECHNIQUES = ({TURN.id!r},)", f"{TURN.id!r} in its TECHNIQUES is no technique"),
        (fine(id=TURN.id), f"there is a technique “{TURN.id}” already"),
        (fine(id="Own Grace"), "not of the form lower-case-words"),
        (fine(level=9), "the level of “own-grace” is 9, not 1 to 5"),
        (fine().replace("    .text = A.\n", ""), "“own-grace” has no text in en"),
        (fine(language="de"), "“own-grace” has no words in en"),
        (fine(taste={"jazz": {"base": 1.0, "place": {"red": 1.0}}}), "places have no feature “red”"),
        (fine(taste={"jazz": {"weights": {}}}), "it has “weights” for jazz: give base, share and place"),
        (fine(taste={"jazz": {"base": "much"}}), "the weight 'much' is no number"),
        (fine(taste={"rock": {"base": 1.0}}), "there is no idiom “rock”: choose jazz, blues, folk or irish"),
        (
            fine(find="raise KeyError('lost')", taste={"jazz": {"base": 1.0}}),
            "failed (KeyError: 'lost')",
        ),
        (fine(find="yield 'figure'"), "something that is not its own figure"),
        (fine(find='yield Figure("own-grace", (9999,), 0, 0, 0, 0)'), "notes that the tune does not have"),
        (fine(find='yield Figure("own-grace", (0,), 3, 1, 0, 0)'), "ends before it begins"),
    ],
)
def test_a_broken_technique_is_named_and_left_out(
    tmp_path: Path, code: str, problem: str, plain_spots: list[object]
) -> None:
    """All else goes on as without it."""
    plugins = offer(tmp_path, code)
    ended = run(plugins, "spots", AIR, "--json")
    assert ended.returncode == 0, ended.stderr
    notes = [line for line in ended.stderr.splitlines() if line.startswith(NOTES)]
    assert len(notes) == 1, ended.stderr
    assert problem in notes[0]
    assert [spot for spot in json.loads(ended.stdout) if spot["technique"] != "own-grace"] == plain_spots


@pytest.mark.parametrize(
    ("change", "problem"),
    [
        ("INSTRUMENTS = ()", "it has no INSTRUMENTS"),
        ("INSTRUMENTS = ('kazoo',)", "is no instrument"),
        ("INSTRUMENTS = (replace(INSTRUMENTS[0], id='oboe'),)", "there is an instrument “oboe” already"),
        ("INSTRUMENTS = (replace(INSTRUMENTS[0], program=0),)", "out of bounds"),
        ("INSTRUMENTS = (replace(INSTRUMENTS[0], lowest=Pitch.parse('C2')),)", "lacks written MIDI number 36"),
        ("BREATH = {'english-horn': 60}", "outside 0.2 to 5 times"),
        ("CHARTS = {'shawm': oboe.CHART}", "“shawm”, which is none of its instruments"),
        ("CHARTS = 7", "not of the right form"),
    ],
)
def test_a_broken_player_is_named_and_left_out(tmp_path: Path, change: str, problem: str) -> None:
    code = (EXAMPLE / "src" / "fioritura_example" / "english_horn.py").read_text(encoding="utf-8")
    plugins = offer(tmp_path, f"{code}\nfrom dataclasses import replace\n{change}\n", group="players")
    ended = run(plugins, "ornament", AIR, "--player", "english-horn", "--out", tmp_path / "out")
    assert ended.returncode == 2
    note, refusal = ended.stderr.splitlines()
    assert note.startswith("note: The plugin own (of own-plugin 2.5) is left out: ")
    assert problem in note
    assert refusal.startswith("fioritura: No instrument “english-horn”")


def test_an_object_is_no_plugin(tmp_path: Path) -> None:
    plugins = offer(tmp_path, fine(), value="own_plugin:TECHNIQUES")
    assert "own_plugin:TECHNIQUES is no module" in run(plugins, "techniques").stderr


def test_plugins_are_loaded_only_when_they_are_needed(tmp_path: Path) -> None:
    """Help comes without a look at what is installed."""
    plugins = offer(tmp_path, "print('loaded')")
    assert "loaded" not in run(plugins, "--help").stdout
    assert "loaded" in run(plugins, "techniques").stdout
    script = (
        "import sys; from fioritura.cli import main\n"
        "try: main(['--help'])\n"
        "except SystemExit: print('importlib.metadata' in sys.modules)"
    )
    ended = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert ended.stdout.split()[-1] == "False"


def test_results_made_with_a_plugin_have_another_key(installed: Path) -> None:
    script = "from fioritura.lesson.cache import code_digest; print(code_digest())"
    digests = set()
    for folder in (installed, installed.parent):
        environment = os.environ | {"PYTHONPATH": f"{folder}{os.pathsep}{SOURCE}"}
        made = subprocess.run(
            [sys.executable, "-c", script], capture_output=True, text=True, check=True, env=environment
        )
        digests.add(made.stdout)
    assert len(digests) == 2
