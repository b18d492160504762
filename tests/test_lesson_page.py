"""The offline page in a browser: accessible (axe-core, WCAG 2 AA), alone, and in time with its notes."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from fioritura.lesson.handout import handout_engravings
from fioritura.lesson.lesson import Lesson, drawn_here
from fioritura.lesson.web_page import web_page
from fioritura.unfold import unfolded

from .lessons import demo_lesson

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")


@pytest.fixture(scope="module")
def lesson() -> Lesson:
    return demo_lesson(level=2)


@pytest.fixture(scope="module")
def html(lesson: Lesson) -> str:
    return web_page(lesson, drawn_here(handout_engravings(lesson)))


@pytest.fixture(scope="module")
def page(html: str, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    playwright = pytest.importorskip("playwright.sync_api")
    if CHROMIUM is None:
        pytest.skip("no Chromium")
    path = tmp_path_factory.mktemp("page") / "lesson.html"
    path.write_text(html, encoding="utf-8")
    with playwright.sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--autoplay-policy=no-user-gesture-required"]
        )
        view = browser.new_page(viewport={"width": 1000, "height": 800})
        view.faults = []
        view.on("pageerror", lambda error: view.faults.append(str(error)))
        view.requests = []
        view.on("request", lambda request: view.requests.append(request.url))
        view.goto(path.as_uri())
        yield view
        browser.close()


def test_the_page_stands_alone(html: str) -> None:
    assert not re.search(r'(?:src|href)="(?!#)', html.replace("xlink:href", "href"))
    assert "http://" not in re.sub(r"http://www\.w3\.org/[\w/]+", "", html)


def test_the_page_has_every_example_and_text(lesson: Lesson, html: str) -> None:
    from markupsafe import escape

    for example in lesson.examples:
        assert f'id="{example.name}"' in html
        assert escape(lesson.heading(example.technique)) in html
        for field in ("text", "how", "when", "fault", "cure"):
            assert escape(lesson.of(example.technique, field)) in html


def test_axe_finds_no_violation(page: Any) -> None:
    axe = pytest.importorskip("axe_playwright_python.sync_playwright")
    for width in (1000, 380):
        page.set_viewport_size({"width": width, "height": 800})
        results = axe.Axe().run(page)
        assert [violation["id"] for violation in results.response["violations"]] == []
        assert len(results.response["passes"]) > 20


def test_the_keyboard_plays_loops_and_stops(page: Any) -> None:
    button = page.locator("article").first.locator("button").nth(2)
    button.focus()
    page.keyboard.press("Enter")
    page.wait_for_function("lessonState() && document.querySelector('.marker[visibility=visible]')", timeout=20_000)
    assert button.get_attribute("aria-pressed") == "true"
    assert page.locator("#status").inner_text() != ""
    page.keyboard.press("Escape")
    assert page.evaluate("lessonState()") is None
    assert button.get_attribute("aria-pressed") == "false"
    assert page.faults == []
    assert [url for url in page.requests if not url.startswith(("file:", "data:"))] == []


def test_the_tempo_changes_how_long_it_lasts(page: Any) -> None:
    lengths = []
    for tempo in (132, 66):
        page.evaluate(f"document.getElementById('tempo').value = {tempo}")
        page.locator("article").first.locator("button").first.click()
        page.wait_for_function("lessonState()", timeout=20_000)
        lengths.append(page.evaluate("lessonState().end - sound.context.currentTime"))
        page.keyboard.press("Escape")
    assert lengths[1] == pytest.approx(2 * lengths[0], rel=0.1)


def test_the_marker_visits_every_note_of_the_performance_in_time(lesson: Lesson, html: str) -> None:
    import json

    found = re.search(r'<script type="application/json" id="music">(.*?)</script>', html, re.DOTALL)
    assert found
    music = json.loads(found[1])
    line = music["scores"]["performance"]["ornamented"]
    assert len(line["marks"]) == len(unfolded(lesson.tune).notes) + sum(
        len(played) - len(plain) for played, plain in [(_unfolded_line(lesson), unfolded(lesson.tune).notes)]
    )
    times = [mark[0] for mark in line["marks"]]
    assert times == sorted(times)
    first = line["marks"][1][0] - line["marks"][0][0]
    assert 0.2 < first < 1.5
    midis = [sample[0] for sample in music["samples"]]
    played = [note[2] for lines in music["scores"].values() for each in lines.values() for note in each["notes"]]
    assert all(min(abs(midi - sample) for sample in midis) <= 3 for midi in played)


def _unfolded_line(lesson: Lesson) -> tuple[Any, ...]:
    from dataclasses import replace

    return unfolded(replace(lesson.tune, notes=lesson.rendition.line)).notes


def test_a_title_is_never_markup(tmp_path: Path) -> None:
    from dataclasses import replace

    lesson = demo_lesson(level=1)
    hostile = "</script><img src=x onerror=alert(1)>"
    lesson = replace(lesson, tune=replace(lesson.tune, title=hostile))
    page = web_page(lesson, drawn_here(handout_engravings(lesson)))
    assert hostile not in page
    assert "<img" not in page
