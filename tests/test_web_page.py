"""The page in a browser: the whole story by mouse and by keyboard, on every screen without an accessibility fault.

The browser is Debian's Chromium, driven by Playwright; accessibility is judged by axe-core's rules for WCAG 2.2 A and AA.
"""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.request import Request, urlopen

import pytest

from fioritura.shelf.store import Shelf
from fioritura.theory.pitch import Pitch
from fioritura.web.server import _listener
from tests.served import cached_in, served

playwright = pytest.importorskip(
    "playwright.sync_api", reason="the page is tested with Playwright: pip install playwright"
)
axe_module = pytest.importorskip("axe_playwright_python.sync_playwright", reason="pip install axe-playwright-python")

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="the page is tested in Chromium: apt-get install chromium")

WALTZ = 'X:1\nT:Small Waltz\nM:3/4\nL:1/4\nK:D\n"D"D F A|"G"B2 A|"A7"G2 E|"D"F3|"D"D F A|"G"d2 B|"A7"A G E|"D"D3|]\n'
RULES = {"runOnly": {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}}
READY = "#music[aria-busy=false] .system svg"


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    folder = tmp_path_factory.mktemp("browser")
    shelf = Shelf(folder / "data")
    with cached_in(folder / "cache"), served(shelf, _listener(0)) as address:
        yield address
    shelf.close()


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    with playwright.sync_playwright() as driver:
        browser = driver.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        yield browser
        browser.close()


def opened(browser: Any, address: str, path: str = "/stand/1", **options: Any) -> Any:
    """A page that fails the test on any script error and on any request to elsewhere."""
    context = browser.new_context(**({"viewport": {"width": 1280, "height": 860}} | options))
    page = context.new_page()
    page.set_default_timeout(20_000)
    page.faults = []
    page.on("pageerror", lambda error: page.faults.append(str(error)))
    page.on(
        "request",
        lambda request: None if request.url.startswith((address, "data:")) else page.faults.append(request.url),
    )
    page.goto(address + path)
    if path.startswith("/stand") or path == "/":
        page.wait_for_selector(READY)
    return page


@pytest.fixture(scope="module")
def waltz(address: str) -> str:
    """The path of a small tune: its sound is soon made."""
    body = json.dumps({"text": WALTZ}).encode()
    request = Request(f"{address}/api/tunes/typed", body, {"Content-Type": "application/json"})
    with urlopen(request) as answer:
        return f"/stand/{json.load(answer)['tunes'][0]['arrangement']}"


@pytest.fixture
def short(browser: Any, address: str, waltz: str) -> Iterator[Any]:
    page = opened(browser, address, waltz)
    yield page
    assert page.faults == []
    page.context.close()


@pytest.fixture
def stand(browser: Any, address: str) -> Iterator[Any]:
    page = opened(browser, address)
    yield page
    assert page.faults == []
    page.context.close()


def figures(page: Any) -> list[str]:
    return [group.get_attribute("aria-label") for group in page.query_selector_all(".fig[role=button]")]


def first_added(page: Any) -> int:
    """The MIDI number of the first added note of the figure that is looked at, as it is written."""
    return Pitch.parse(page.inner_text(".bend b")).midi


def settle(page: Any) -> None:
    page.wait_for_timeout(60)
    page.wait_for_selector(READY)


def sounding(page: Any) -> list[str]:
    return [group.get_attribute("id") for group in page.query_selector_all(".sounding")]


def sounding_note(page: Any, staff: str = "s") -> tuple[str, int]:
    """Staff and number of the next note that is marked: between two notes there is none for a moment."""
    where, note = page.wait_for_selector(f".sounding[id^={staff}]").get_attribute("id").split("-n")
    return where, int(note.split("-")[0])


def test_a_figure_is_chosen_kept_and_left_out_by_mouse(stand: Any) -> None:
    stand.click(".fig[role=button] >> nth=1")
    stand.wait_for_selector(".alternative")
    name = stand.inner_text(".figure-head h2")
    assert figures(stand)[1].startswith(name)
    stand.click("#keep")
    settle(stand)
    assert "kept" in next(label for label in figures(stand) if label.startswith(name) and "kept" in label)
    count = len(figures(stand))
    stand.click("#leave-out")
    settle(stand)
    assert not [label for label in figures(stand) if "kept" in label]
    stand.click("#undo")
    settle(stand)
    stand.click("#undo")
    settle(stand)
    assert len(figures(stand)) == count
    assert stand.is_disabled("#undo")


def test_the_same_by_keyboard_alone(stand: Any) -> None:
    before = figures(stand)
    stand.keyboard.press("ArrowRight")
    stand.keyboard.press("ArrowRight")
    stand.keyboard.press("ArrowLeft")
    stand.wait_for_selector(".alternative .take")
    assert stand.get_attribute(".fig[aria-pressed=true]", "aria-label") == before[0]
    stand.keyboard.press("k")
    settle(stand)
    assert figures(stand)[0] == f"{before[0]}, kept"
    stand.wait_for_selector(".alternative .take")
    stand.keyboard.press("r")
    stand.keyboard.press("Enter")
    settle(stand)
    assert figures(stand) != before
    for _ in range(2):
        stand.keyboard.press("u")
        settle(stand)
    assert figures(stand) == before
    stand.keyboard.press("y")
    settle(stand)
    assert figures(stand)[0] == f"{before[0]}, kept"
    stand.keyboard.press("Control+z")
    settle(stand)


def test_letters_can_be_turned_off(stand: Any) -> None:
    stand.keyboard.press("?")
    assert stand.is_visible("#keys")
    stand.uncheck("#letters")
    stand.keyboard.press("Escape")
    stand.keyboard.press("ArrowRight")
    stand.keyboard.press("x")
    settle(stand)
    assert stand.is_disabled("#undo")


def test_an_added_note_is_raised_and_lowered_again(stand: Any) -> None:
    before = figures(stand)
    for number in range(len(before)):
        stand.press(f".fig[role=button] >> nth={number}", "Enter")
        stand.wait_for_selector(".alternative")
        if not stand.query_selector(".bend"):
            continue
        written = first_added(stand)
        stand.click(".bend button >> nth=1")
        settle(stand)
        if not stand.is_disabled("#undo"):
            break
        assert "take another one" in stand.inner_text("#said")
    else:
        pytest.fail("no added note could be raised")
    assert first_added(stand) == written + 1
    stand.click(".bend button >> nth=0")
    settle(stand)
    assert first_added(stand) == written
    for _ in range(2):
        stand.click("#undo")
        settle(stand)
    assert figures(stand) == before
    assert stand.is_disabled("#undo")


def test_the_marker_follows_the_line_that_is_heard(short: Any) -> None:
    short.uncheck("#count-in")
    short.keyboard.press(" ")
    assert sounding_note(short)[0] == "s2"
    short.keyboard.press("p")
    _, first = sounding_note(short, "s1")
    short.wait_for_timeout(1500)
    assert sounding_note(short, "s1")[1] > first
    short.keyboard.press(" ")
    short.wait_for_selector("#play[aria-pressed=false]")
    assert sounding(short) == []


def test_bars_are_looped_by_dragging_and_lines_taken_in_turn(short: Any) -> None:
    bars = [bar.bounding_box() for bar in short.query_selector_all("g.measure")]
    short.mouse.move(bars[1]["x"] + 25, bars[1]["y"] + 10)
    short.mouse.down()
    short.mouse.move(bars[1]["x"] + 50, bars[1]["y"] + 10)
    short.mouse.move(bars[2]["x"] + 30, bars[2]["y"] + 10)
    short.mouse.up()
    assert short.inner_text("#loop-words") == "bars 2–3"
    assert len(short.query_selector_all(".bar-wash")) == 2
    short.uncheck("#count-in")
    short.keyboard.press("t")
    short.keyboard.press(" ")
    short.wait_for_selector(".sounding[id^=s1-]")
    short.wait_for_selector(".sounding[id^=s2-]")
    inside = {
        note.get_attribute("id")
        for bar in (1, 2)
        for note in short.query_selector_all("g.measure")[bar].query_selector_all("g.note")
    }
    outside = 0
    for _ in range(12):
        outside += not set(sounding(short)) <= inside
        short.wait_for_timeout(120)
    assert outside <= 1, "the note after the loop may come a hair before the bar line, in human timing"
    short.keyboard.press("l")
    assert short.get_attribute("#loop", "aria-pressed") == "false"
    short.keyboard.press(" ")


def test_another_tempo_is_another_performance(stand: Any) -> None:
    with stand.expect_response(lambda answer: "hearing" in answer.url and "tempo=128" in answer.url):
        stand.keyboard.press("[")
    assert stand.inner_text("#tempo-words").startswith("128")


def test_level_and_another_version_side_by_side(stand: Any) -> None:
    before = figures(stand)
    stand.click("#tab-setting")
    stand.keyboard.press("1")
    settle(stand)
    assert "level 1" in stand.inner_text("#setting-words")
    assert len(figures(stand)) < len(before)
    stand.click("#other-show")
    settle(stand)
    assert stand.query_selector("[id^=s3-n]")
    assert stand.is_visible("text=This, other")
    stand.click("#other-take")
    settle(stand)
    assert not stand.query_selector("[id^=s3-n]")
    for _ in range(2):
        stand.click("#undo")
        settle(stand)
    assert figures(stand) == before


def test_a_file_is_dropped_and_stands_on_the_stand(browser: Any, address: str, tmp_path: Path) -> None:
    page = opened(browser, address, "/bring")
    page.wait_for_selector("#preview svg")
    page.evaluate(
        """text => {
            const data = new DataTransfer();
            data.items.add(new File([text], "waltz.abc"));
            document.getElementById("drop").dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
        }""",
        WALTZ,
    )
    page.wait_for_url("**/stand/*")
    page.wait_for_selector(READY)
    assert page.inner_text("#title") == "Small Waltz"
    assert page.faults == []
    page.context.close()


def test_typed_abc_is_engraved_and_its_errors_are_underlined(browser: Any, address: str) -> None:
    page = opened(browser, address, "/bring")
    page.wait_for_selector("#preview svg")
    page.fill("#abc", WALTZ.replace("B2 A", "B/0 A"))
    page.wait_for_selector("#marks mark")
    assert page.inner_text("#problem").startswith("Line 6, column 13")
    assert page.text_content("#marks mark") == "B/0"
    assert page.is_disabled("#take")
    page.fill("#abc", WALTZ)
    page.wait_for_selector("#take:enabled")
    page.focus("#take")
    page.keyboard.press("Enter")
    page.wait_for_url("**/stand/*")
    assert page.faults == []
    page.context.close()


def test_the_shelf_is_tagged_and_searched(browser: Any, address: str) -> None:
    page = opened(browser, address, "/shelf")
    page.click("[data-act=describe] >> nth=-1")
    page.fill("input[name=title]", "Lanterns at Night")
    page.fill("input[name=tags]", "swing, evening")
    page.keyboard.press("Enter")
    page.wait_for_selector("nav.tags >> text=evening (1)")
    page.fill("input[type=search]", "night")
    page.keyboard.press("Enter")
    page.wait_for_url("**search=night*")
    assert page.inner_text(".tune h2") == "Lanterns at Night"
    with page.expect_download() as download:
        page.click("text=Export everything")
    assert download.value.suggested_filename == "fioritura-shelf.zip"
    assert page.faults == []
    page.context.close()


def faults_of(page: Any) -> list[str]:
    found = axe_module.Axe().run(page, options=RULES).response["violations"]
    return [f"{fault['id']}: {node['target']}" for fault in found for node in fault["nodes"]]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [1280, 360])
def test_no_screen_has_an_accessibility_fault(browser: Any, address: str, scheme: str, width: int) -> None:
    options: dict[str, Any] = {
        "viewport": {"width": width, "height": 800},
        "color_scheme": scheme,
        "bypass_csp": True,
    }
    page = opened(browser, address, **options)
    assert faults_of(page) == []
    page.keyboard.press("ArrowRight")
    page.wait_for_selector(".alternative")
    assert faults_of(page) == []
    page.keyboard.press("s")
    page.keyboard.press("v")
    page.wait_for_selector("[id^=s3-n]")
    assert faults_of(page) == []
    page.keyboard.press("Escape")
    page.click("#mixer-button")
    assert faults_of(page) == []
    page.keyboard.press("?")
    assert faults_of(page) == []
    for path, ready in (
        ("/bring", "#preview svg"),
        ("/shelf", ".tune"),
        ("/lesson/new/1", ".example svg"),
        ("/nowhere", "#wrong-title"),
    ):
        page.goto(address + path)
        page.wait_for_selector(ready)
        assert faults_of(page) == []
        assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert page.faults == []
    page.context.close()
