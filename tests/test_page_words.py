"""The words of the page: every message is used and every use has its message, in templates and scripts alike."""

from __future__ import annotations

import base64
import re
import shutil
from collections.abc import Iterable, Iterator
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from fluent.syntax import FluentParser, ast
from jinja2 import Environment, nodes
from markupsafe import Markup

import fioritura.web
from fioritura.web.words import Piece, pieces_of, say_in_html
from fioritura.words import LANGUAGES, message, say, speaking
from fioritura.words.speech import locale

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
WEB = Path(fioritura.web.__file__).parent
SAID = re.compile(r'"(page-[a-z-]+)"')


def _message_ids() -> set[str]:
    text = files("fioritura").joinpath("words", "en", "page.ftl").read_text(encoding="utf-8")
    return {entry.id.name for entry in FluentParser().parse(text).body if isinstance(entry, ast.Message)}


def _in_scripts() -> set[str]:
    texts = (script.read_text(encoding="utf-8") for script in (WEB / "static").glob("*.js"))
    return {id for text in texts for id in SAID.findall(text)}


def _in_templates() -> Iterator[tuple[str, set[str]]]:
    for template in (WEB / "templates").glob("*.html"):
        tree = Environment().parse(template.read_text(encoding="utf-8"))
        for call in tree.find_all(nodes.Call):
            if isinstance(call.node, nodes.Name) and call.node.name == "say":
                assert isinstance(call.args[0], nodes.Const), (
                    f"{template.name}: a message must be named where it is said"
                )
                yield call.args[0].value, {keyword.key for keyword in call.kwargs}


def _arguments(pieces: Iterable[Piece]) -> Iterator[str]:
    for piece in pieces:
        if isinstance(piece, dict):
            yield piece.get("arg") or piece["by"]
            for case in piece.get("cases", {}).values():
                yield from _arguments(case)


def test_every_message_is_said_and_every_one_that_is_said_is_there() -> None:
    said = _in_scripts() | {id for id, _ in _in_templates()}
    assert said == _message_ids()


def test_templates_give_the_arguments_that_messages_need() -> None:
    for id, given in _in_templates():
        assert given == set(_arguments(pieces_of([id])[id])), id


def test_templates_hold_no_words_of_their_own() -> None:
    for template in (WEB / "templates").glob("*.html"):
        text = re.sub(
            r"\{\{.*?\}\}|\{%.*?%\}|<textarea.*?</textarea>|<svg.*?</svg>", "", template.read_text(), flags=re.S
        )
        words = re.findall(r">([^<>]*[A-Za-z]{2}[^<>]*)<", text)
        words += re.findall(r'(?:title|aria-label|placeholder|aria-valuetext)="([^"]*[A-Za-z]{2}[^"]*)"', text)
        assert not [each for each in words if each.strip() != "Fioritura"], template.name


def test_messages_are_said_with_their_arguments() -> None:
    assert say_in_html("page-stop") == "Stop"
    assert say_in_html("page-bars-count", count=1) == "1 bar"
    assert say_in_html("page-bars-count", count=32) == "32 bars"
    assert say_in_html("page-pack-ready", count=2, size=1.25).startswith("Ready: 2 files, 1.")


def test_what_is_missing_is_an_error() -> None:
    with pytest.raises(LookupError, match="page-nowhere"):
        say_in_html("page-nowhere")
    with pytest.raises(LookupError, match="page-nowhere"):
        pieces_of(["page-nowhere"])
    with pytest.raises(ValueError, match="count"):
        say_in_html("page-bars-count")


def test_text_is_escaped_and_html_is_kept() -> None:
    assert say_in_html("page-lesson-on", title="<b>&") == Markup("Lesson on &lt;b&gt;&amp;")
    assert say_in_html("page-lesson-on", title=Markup("<b>A</b>")) == Markup("Lesson on <b>A</b>")


def _samples(pieces: Iterable[Piece]) -> Iterator[dict[str, Any]]:
    """Arguments for a message: each case that has a name, and numbers that plurals and digits turn on."""
    pieces = list(pieces)
    named = [piece for piece in pieces if isinstance(piece, dict) and "by" in piece and "one" not in piece["cases"]]
    for number in (0, 1, 2, 1.26, 1234.56):
        usual: dict[str, Any] = dict.fromkeys(_arguments(pieces), number)
        yield usual
        for choice in named:
            for case in choice["cases"]:
                yield usual | {choice["by"]: case}


@pytest.mark.skipif(CHROMIUM is None, reason="the page is tested in Chromium: apt-get install chromium")
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_browser_says_what_the_server_says(language: str) -> None:
    playwright = pytest.importorskip("playwright.sync_api")
    with speaking(language):
        messages, tag = pieces_of(_message_ids()), locale()
    asked = [(id, args) for id, pieces in messages.items() for args in _samples(pieces)]
    module = base64.b64encode((WEB / "static" / "words.js").read_bytes()).decode()
    script = """async ({module, messages, asked, tag}) => {
      const {filled} = await import(`data:text/javascript;base64,${module}`);
      return asked.map(([id, args]) => filled(messages[id], args, tag));
    }"""
    with playwright.sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        found = browser.new_page().evaluate(
            script, {"module": module, "messages": messages, "asked": asked, "tag": tag}
        )
        browser.close()
    assert len(asked) > 1000
    with speaking(language):
        for (id, args), text in zip(asked, found, strict=True):
            assert text == say(message(id, **args)), (id, args)
