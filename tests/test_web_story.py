"""The whole story in a browser, from a file to a downloaded pack: by mouse with its clicks counted, and by keyboard alone."""

from __future__ import annotations

import json
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from fioritura.shelf.store import Shelf
from fioritura.web.server import _listener
from fioritura.web.token_check import TokenCheck
from tests.served import served
from tests.test_web_page import CHROMIUM, READY, WALTZ, address, browser, faults_of, opened

__all__ = ["address", "browser"]

pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="the page is tested in Chromium: apt-get install chromium")

MOST_CLICKS = 10
PACK_MS = 240_000
TOKEN = "abcd-efgh-jkmn-pqrs"
COUNT_CLICKS = "window.clicks = 0; addEventListener('click', event => { if (event.isTrusted && event.detail) sessionStorage.clicks = 1 + Number(sessionStorage.clicks ?? 0); }, true);"


@pytest.fixture
def waltz_file(tmp_path: Path) -> Path:
    path = tmp_path / "small waltz.abc"
    path.write_text(WALTZ)
    return path


def finished(page: Any) -> None:
    page.wait_for_selector("#download:not([hidden])", timeout=PACK_MS)


def downloaded(page: Any, act: Callable[[], None], folder: Path) -> list[str]:
    """The files of the pack that an action downloads, checked."""
    with page.expect_download() as download:
        act()
    download.value.save_as(folder / download.value.suggested_filename)
    with zipfile.ZipFile(folder / download.value.suggested_filename) as pack:
        assert pack.testzip() is None
        return [name.split("/", 1)[1] for name in pack.namelist()]


def assert_whole(names: list[str]) -> None:
    expected = {
        "handout.pdf",
        "exercises.pdf",
        "lesson.html",
        "parts/alto-sax.pdf",
        "sound/performance.mp3",
        "manifest.json",
    }
    assert expected <= set(names)


def test_from_a_file_to_a_pack_by_mouse_in_few_clicks(
    browser: Any, address: str, waltz_file: Path, tmp_path: Path
) -> None:
    page = opened(browser, address, "/")
    page.context.add_init_script(COUNT_CLICKS)
    page.reload()
    page.wait_for_selector(READY)
    page.click("nav >> text=Bring in")
    page.wait_for_selector("#preview svg")
    page.evaluate(
        """([name, text]) => {
            const data = new DataTransfer();
            data.items.add(new File([text], name));
            document.getElementById("drop").dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
        }""",
        [waltz_file.name, waltz_file.read_text()],
    )
    page.wait_for_url("**/stand/*")
    page.wait_for_selector(READY)
    page.click("nav >> text=Lesson")
    page.wait_for_selector(".example svg")
    page.click("#build")
    page.wait_for_selector("#progress progress", state="attached")
    finished(page)
    assert_whole(downloaded(page, lambda: page.click("#download"), tmp_path))
    assert int(page.evaluate("sessionStorage.clicks")) <= MOST_CLICKS
    assert page.faults == []
    page.context.close()


def tab_to(page: Any, selector: str) -> None:
    for _ in range(80):
        page.keyboard.press("Tab")
        if page.evaluate("wanted => document.activeElement?.matches(wanted) ?? false", selector):
            return
    pytest.fail(f"{selector} can't be reached by the Tab key")


def test_the_same_by_keyboard_alone(browser: Any, address: str, waltz_file: Path, tmp_path: Path) -> None:
    page = opened(browser, address, "/")
    # Listening from here on has the browser hand choosers over well before there is one.
    page.on("filechooser", lambda chooser: None)
    tab_to(page, "nav a[href='/bring']")
    page.keyboard.press("Enter")
    page.wait_for_selector("#preview svg")
    tab_to(page, "#files")
    with page.expect_file_chooser() as chooser:
        page.keyboard.press("Enter")
    chooser.value.set_files(waltz_file)
    page.wait_for_url("**/stand/*")
    page.wait_for_selector(READY)
    page.keyboard.press("m")
    page.wait_for_selector(".example svg")
    page.keyboard.press("b")
    finished(page)
    assert page.evaluate("document.activeElement.id") == "download"
    assert_whole(downloaded(page, lambda: page.keyboard.press("Enter"), tmp_path))
    assert page.faults == []
    page.context.close()


@pytest.fixture
def lesson(browser: Any, address: str) -> Iterator[Any]:
    page = opened(browser, address, "/lesson/new/1", bypass_csp=True)
    page.wait_for_selector(".example svg")
    yield page
    assert page.faults == []
    page.context.close()


def kept(page: Any) -> dict[str, Any]:
    """The lesson as the shelf has it, once the page says so."""
    page.wait_for_function("document.getElementById('kept').textContent === 'On the shelf'")
    found: dict[str, Any] = page.evaluate(
        "fetch(`/api/lessons/${location.pathname.split('/').at(-1)}`).then(answer => answer.json())"
    )
    return found


def shown(page: Any) -> list[str]:
    page.wait_for_selector("#preview[aria-busy=false]")
    return [heading.inner_text().split("\u2002")[-1] for heading in page.query_selector_all(".example h3")]


def test_what_is_chosen_and_written_is_kept_and_shown(lesson: Any) -> None:
    before = shown(lesson)
    lesson.uncheck("#techniques input[name=techniques] >> nth=0")
    lesson.fill("[data-word=title]", "Lanterns for Anna")
    lesson.uncheck("input[name=players][value=trombone]")
    lesson.wait_for_function(f"document.querySelectorAll('.example').length === {len(before) - 1}")
    lesson.click(".technique summary >> nth=1")
    lesson.fill(".own textarea >> nth=0", "A Lazy Gate")
    plan = kept(lesson)["plan"]
    assert plan["overrides"]["words"] == {"title": "Lanterns for Anna"}
    assert [list(texts.values()) for texts in plan["overrides"]["techniques"].values()] == [["A Lazy Gate"]]
    assert "trombone" not in plan["players"]
    assert len(plan["techniques"]) == len(before) - 1
    lesson.wait_for_selector(".example h3 >> text=A Lazy Gate")
    lesson.reload()
    lesson.wait_for_selector(".example h3 >> text=A Lazy Gate")
    assert lesson.input_value("[data-word=title]") == "Lanterns for Anna"
    assert not lesson.is_checked("#techniques input[name=techniques] >> nth=0") or lesson.is_hidden("#more")
    lesson.click(".technique.edited summary")
    lesson.click(".technique.edited >> text=Put the usual words back")
    lesson.wait_for_function("!document.querySelector('.technique.edited')")
    assert kept(lesson)["plan"]["overrides"]["techniques"] == {}
    lesson.click("#remove")
    lesson.click("#sure >> text=Remove >> nth=-1")
    lesson.wait_for_url("**/lesson/**")


def test_phrases_level_and_language_change_the_examples(lesson: Any) -> None:
    first = shown(lesson)
    for box in lesson.query_selector_all("input[name=phrases]")[1:]:
        box.uncheck()
    lesson.wait_for_function(
        "[...document.querySelectorAll('.example p')].every(one => Number(one.textContent.match(/\\d+/)[0]) <= 4)"
    )
    assert 0 < len(shown(lesson)) <= len(first)
    lesson.select_option("select[name=language]", "de")
    lesson.wait_for_function(
        "[...document.querySelectorAll('.technique .check')].some(one => /vorschlag/i.test(one.textContent))"
    )
    assert kept(lesson)["plan"]["language"] == "de"
    for box in lesson.query_selector_all("input[name=phrases]"):
        box.uncheck()
    lesson.wait_for_selector("#preview-words.wrong")
    assert lesson.is_disabled("#build")


def test_building_can_be_stopped(lesson: Any) -> None:
    lesson.keyboard.press("b")
    lesson.wait_for_selector("#cancel:visible")
    lesson.keyboard.press("Escape")
    lesson.wait_for_selector("#pack-words >> text=Stopped.")
    assert lesson.is_hidden("#download")
    assert lesson.is_enabled("#build")


def test_a_folder_is_brought_in_with_progress(browser: Any, address: str, tmp_path: Path) -> None:
    for number in range(5):
        (tmp_path / f"{number}.abc").write_text(WALTZ.replace("Small", f"Folder {number}"))
    page = opened(browser, address, "/bring")
    page.wait_for_selector("#preview svg")
    page.set_input_files("#folder", tmp_path)
    page.wait_for_selector("#found a >> nth=4")
    assert [link.inner_text() for link in page.query_selector_all("#found a")] == [
        f"Folder {n} Waltz" for n in range(5)
    ]
    assert page.faults == []
    page.context.close()


@pytest.fixture
def guarded(tmp_path: Path) -> Iterator[str]:
    """A server behind a token, on an address of loopback that is none of its usual names."""
    shelf = Shelf(tmp_path)
    with served(shelf, _listener(0, "127.0.0.2"), is_open=True, check=TokenCheck(TOKEN)) as address:
        yield address
    shelf.close()


def test_the_entrance_asks_for_the_token(browser: Any, guarded: str) -> None:
    page = opened(browser, guarded, "/shelf", bypass_csp=True)
    page.wait_for_selector("input[name=token]")
    assert faults_of(page) == []
    page.keyboard.type("not-the-token-at-all")
    page.keyboard.press("Enter")
    page.wait_for_selector("#wrong")
    assert faults_of(page) == []
    page.fill("input[name=token]", TOKEN)
    page.keyboard.press("Enter")
    page.wait_for_selector(READY)
    assert json.loads(page.evaluate("fetch('/api/tunes').then(answer => answer.text())"))
    page.context.close()
