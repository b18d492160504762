"""The documentation site: it builds without a warning, and shows what the program does.

Links are followed by a checker of our own; sounds are decoded by soundfile and measured by pyloudnorm (ITU-R BS.1770);
accessibility is judged by axe-core's rules for WCAG 2.2 A and AA in Debian's Chromium, driven by Playwright.
"""

from __future__ import annotations

import contextlib
import fcntl
import inspect
import io
import json
import os
import re
import shlex
import shutil
import subprocess
import sys
import threading
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import pyloudnorm
import pytest
import soundfile
from lxml import etree, html

import fioritura
from fioritura.cli import COMMANDS, command_parser, main
from fioritura.techniques.table import all_techniques
from fioritura.words import capital, say

pytest.importorskip("mkdocs", reason="the site is built with mkdocs: pip install '.[docs]'")

from tools.docs_site.ornaments import TUNES

ROOT = Path(__file__).parents[1]
DEMO = ROOT / "src" / "fioritura" / "data" / "lanterns.abc"
RULES = {"runOnly": {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}}
FETCHED = {"link": "href", "script": "src", "img": "src", "audio": "src", "source": "srcset", "iframe": "src"}


@dataclass(frozen=True)
class Site:
    """The built site, and what was said while it was built."""

    folder: Path
    log: str
    code: int

    @property
    def pages(self) -> list[Path]:
        return sorted(path for path in self.folder.rglob("*.html") if path.name != "404.html")


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """The site, built once for all test processes."""
    base = tmp_path_factory.getbasetemp()
    shared = (base.parent if "PYTEST_XDIST_WORKER" in os.environ else base) / "docs-site"
    shared.mkdir(exist_ok=True)
    record = shared / "record.json"
    with (shared / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not record.exists():
            command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(shared / "site")]
            environment = os.environ | {"NO_MKDOCS_2_WARNING": "1"}
            done = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, check=False)
            record.write_text(json.dumps([done.stdout + done.stderr, done.returncode]))
    return Site(shared / "site", *json.loads(record.read_text()))


@cache
def parsed(page: Path) -> html.HtmlElement:
    return html.fromstring(page.read_bytes())


@cache
def targets(page: Path) -> list[tuple[str, str]]:
    """Tag and address of all that a page links to or loads."""
    named = [
        (element.tag, element.get(FETCHED.get(element.tag, "href"))) for element in parsed(page).iter("a", *FETCHED)
    ]
    return [(tag, address) for tag, address in dict.fromkeys(named) if address]


@cache
def ids(page: Path) -> set[str]:
    return {element.get("id") for element in parsed(page).iter() if element.get("id")}


def led_to(page: Path, address: str) -> Path:
    """The file that a relative address on a page means."""
    path = Path(os.path.normpath(page.parent / unquote(address))) if address else page
    return path / "index.html" if path.is_dir() else path


def section(site: Site, family: str, id: str) -> html.HtmlElement:
    """The part of a family's page from a technique's heading to the next one."""
    [heading] = parsed(site.folder / "ornaments" / f"{family}.html").xpath(f"//h2[@id='{id}']")
    part = html.Element("div")
    for element in heading.itersiblings():
        if element.tag == "h2":
            break
        part.append(html.fromstring(html.tostring(element)))
    return part


def test_it_builds_without_a_warning(site: Site) -> None:
    assert site.code == 0, site.log
    assert "WARNING" not in site.log
    assert len(site.pages) > 30


def test_every_link_leads_somewhere(site: Site) -> None:
    broken = []
    for page in site.pages:
        for _, address in targets(page):
            parts = urlsplit(address)
            if parts.scheme:
                continue
            path = led_to(page, parts.path)
            if not path.is_file() or (parts.fragment and path.suffix == ".html" and parts.fragment not in ids(path)):
                broken.append(f"{page.relative_to(site.folder)}: {address}")
    assert broken == []


def test_every_page_is_reached_from_the_first(site: Site) -> None:
    waiting, reached = [site.folder / "index.html"], set()
    while waiting:
        page = waiting.pop()
        reached.add(page)
        for tag, address in targets(page):
            parts = urlsplit(address)
            path = led_to(page, parts.path)
            if tag == "a" and not parts.scheme and path.suffix == ".html" and path not in reached:
                waiting.append(path)
    assert set(site.pages) <= reached


def test_nothing_is_asked_of_another_host(site: Site) -> None:
    asked = [
        (page.name, address)
        for page in site.pages
        for tag, address in targets(page)
        if tag in FETCHED and "//" in address
    ]
    styles = [
        path.name for path in site.folder.rglob("*.css") if re.search(r"url\(['\"]?(https?:)?//", path.read_text())
    ]
    assert asked == []
    assert styles == []


def test_each_technique_is_shown_where_the_engine_finds_it(site: Site, capsys: pytest.CaptureFixture[str]) -> None:
    found: dict[str, set[str]] = {}
    for tune, player in TUNES:
        assert main(["spots", str(tune), "--player", player, "--level", "5", "--json"]) == 0
        for spot in json.loads(capsys.readouterr().out):
            place = f"{capital(spot['place'])}. {spot['reason']}"
            found.setdefault(spot["technique"], set()).add(place)
    for technique in all_techniques().values():
        shown = section(site, technique.family, technique.id)
        words = " ".join(shown.text_content().split())
        for text in map(say, (technique.text, technique.how, technique.when, technique.fault, technique.cure)):
            assert " ".join(text.split()) in words
        assert shown.findtext(".//figcaption") in found[technique.id]
        assert "def " in shown.xpath("string(.//details[last()]//code)")


def test_each_technique_is_engraved_plain_over_ornamented(site: Site) -> None:
    for technique in all_techniques().values():
        [picture] = section(site, technique.family, technique.id).xpath(".//figure//img")
        assert capital(say(technique.name)) in picture.get("alt")
        wide = (site.folder / "ornaments" / picture.get("src")).read_text(encoding="utf-8")
        narrow = (site.folder / "ornaments" / picture.get("src").replace(".svg", "-narrow.svg")).read_text(
            encoding="utf-8"
        )
        for drawing in (wide, narrow):
            words = "".join(map(str, etree.fromstring(drawing.encode()).itertext()))
            assert "plain" in words
            assert "ornamented" in words
            assert say(technique.label) in words
            assert 'fill="#f0d9cb"' in drawing, "the figure's notes are tinted"
        assert width_mm(narrow) < 100 < width_mm(wide)


def width_mm(drawing: str) -> float:
    found = re.search(r'<svg[^>]* width="([\d.]+)mm"', drawing)
    assert found
    return float(found[1])


def test_each_sound_is_music_at_the_usual_loudness(site: Site) -> None:
    sounds = sorted(site.folder.rglob("*.mp3"))
    assert len(sounds) == len(all_techniques()) + 11
    shown = {
        (page.parent / address).resolve() for page in site.pages for tag, address in targets(page) if tag == "audio"
    }
    assert shown == {path.resolve() for path in sounds}
    for path in sounds:
        audio, rate = soundfile.read(path)
        assert 5 < len(audio) / rate < 90, path.name
        assert abs(pyloudnorm.Meter(rate).integrated_loudness(audio) + 16.0) < 1.5, path.name


def test_every_sound_has_native_controls_and_waits_to_be_played(site: Site) -> None:
    for page in site.pages:
        for player in parsed(page).iter("audio"):
            assert player.get("controls") is not None
            assert player.get("autoplay") is None
            assert player.get("aria-label")
            assert "softly" in parsed(page).text_content()


@pytest.mark.parametrize("command", COMMANDS)
def test_every_option_is_in_the_reference(site: Site, command: str) -> None:
    printed = io.StringIO()
    with contextlib.redirect_stdout(printed), pytest.raises(SystemExit):
        main([command, "--help"])
    [heading] = parsed(site.folder / "reference" / "commands.html").xpath(f"//h2[@id='{command}']")
    shown = ""
    for element in heading.itersiblings():
        if element.tag == "h2":
            break
        shown += element.text_content() if element.tag != "details" else ""
    options = set(re.findall(r"(?<![\w-])--[a-z][a-z-]*", printed.getvalue())) - {"--help"}
    assert {option for option in options if option not in shown} == set()


def test_all_that_is_public_is_in_the_reference(site: Site) -> None:
    named = set().union(*(ids(page) for page in (site.folder / "reference").glob("*.html")))
    for name in set(fioritura.__all__) - {"__version__"}:
        one = inspect.unwrap(getattr(fioritura, name))
        is_named = inspect.isclass(one) or inspect.isroutine(one)
        home = one.__module__ if is_named else f"fioritura.{fioritura._HOME_OF[name]}"
        assert f"{home}.{name}" in named


def test_the_gallery_is_what_the_command_makes(site: Site, capsys: pytest.CaptureFixture[str]) -> None:
    page = parsed(site.folder / "gallery" / "index.html")
    commands = [code.text_content().split() for code in page.xpath("//pre/code")]
    assert len(commands) == 10
    program, *arguments = commands[4]
    assert program == "fioritura"
    arguments = [str(ROOT / part) if part.startswith("docs/") else part for part in arguments]
    arguments[0] = "spots"
    seed = arguments.index("--seed")
    assert main([*arguments[:seed], "--json"]) == 0
    offered = {spot["reason"] for spot in json.loads(capsys.readouterr().out)}
    rows = page.xpath("(//details)[5]//tbody/tr/td[3]")
    assert rows
    assert {row.text_content() for row in rows} <= offered


WRITTEN = [ROOT / "README.md", *sorted((ROOT / "docs").rglob("*.md")), ROOT / "examples" / "plugin" / "README.md"]


def blocks(page: Path, language: str) -> list[str]:
    """The code of a language on a written page."""
    return re.findall(rf"^```{language}\n(.*?)^```", page.read_text(encoding="utf-8"), re.DOTALL | re.MULTILINE)


SHOWN = [
    arguments
    for page in WRITTEN
    for line in "".join(blocks(page, "sh")).splitlines()
    for program, *arguments in [shlex.split(line, comments=True) or [""]]
    if program == "fioritura"
]


@pytest.mark.parametrize("arguments", SHOWN, ids=" ".join)
def test_every_command_on_a_page_is_one_that_the_program_takes(arguments: list[str]) -> None:
    assert command_parser().parse_args(arguments).run


def test_the_pages_show_every_command() -> None:
    assert {arguments[0] for arguments in SHOWN} == set(COMMANDS)


def test_the_library_is_used_as_the_developer_s_page_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    shutil.copy(ROOT / "docs" / "gallery" / "saints.abc", tmp_path)
    monkeypatch.chdir(tmp_path)
    page = ROOT / "docs" / "learn" / "developer.md"
    names: dict[str, Any] = {}
    for block in blocks(page, "python"):
        exec(block, names)
    printed = capsys.readouterr().out
    [quoted] = re.findall(r"lines like `([^`]+)`", page.read_text(encoding="utf-8"))
    assert " ".join(quoted.split()) in printed
    assert {path.suffix for path in (tmp_path / "out").iterdir()} == {".pdf", ".mp3"}
    assert printed.rstrip().endswith("}")


CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")


@pytest.mark.skipif(CHROMIUM is None, reason="the page is tested in Chromium: apt-get install chromium")
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1280, 375])
def test_pages_are_accessible_and_fit_every_screen(site: Site, width: int, scheme: str) -> None:
    driving = pytest.importorskip("playwright.sync_api", reason="pip install playwright")
    axe = pytest.importorskip(
        "axe_playwright_python.sync_playwright", reason="pip install axe-playwright-python"
    ).Axe()
    faults: list[str] = []
    with served(site.folder) as address, driving.sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        page: Any = browser.new_page(viewport={"width": width, "height": 860}, color_scheme=scheme)
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.on(
            "request", lambda asked: None if asked.url.startswith((address, "data:")) else faults.append(asked.url)
        )
        for path in ("index.html", "ornaments/turns.html", "learn/student.html", "reference/library.html"):
            page.goto(f"{address}/{path}")
            page.wait_for_load_state("networkidle")
            assert page.evaluate("document.documentElement.scrollWidth") <= width, path
            results = axe.run(page, options=RULES).response
            faults += [f"{path}: {fault['id']} {fault['nodes'][0]['html']}" for fault in results["violations"]]
        browser.close()
    assert faults == []


@contextlib.contextmanager
def served(folder: Path) -> Iterator[str]:
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Say nothing."""
