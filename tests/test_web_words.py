"""The page in four languages: whose language is spoken, and that nothing on it comes from elsewhere than the words.

What is made in the pseudo-language has no plain letters, but for what is no language (`tests.pseudo`).
"""

from __future__ import annotations

import json
import re
import shutil
import socket
import threading
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import pytest
from lxml import etree, html
from starlette.testclient import TestClient

from fioritura.accompany.feels import FEELS
from fioritura.errors import OptionError
from fioritura.shelf.store import Shelf
from fioritura.theory.pitch import Pitch
from fioritura.web.app import create_app
from fioritura.web.guard import hosts_of
from fioritura.web.hearing import Sounds
from fioritura.web.jobs import Bench, Jobs, Made
from fioritura.web.languages import NAMES
from fioritura.web.take_models import KEEPING, SlipView, Tendency
from fioritura.web.token_check import TokenCheck
from fioritura.words import LANGUAGES, kept, language, message, remembered, say, speaking
from tests.pseudo import plain_words
from tests.served import BASE, cached_in, served
from tests.sound_fakes import SineSynth

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
TOKEN = "abcd-efgh-jkmn-pqrs"
PAGES = (
    "/stand/1",
    "/bring",
    "/shelf",
    "/lesson/new/1",
    "/take/1",
    "/students",
    "/students/0",
    "/nowhere",
    "/stand/99",
)
OURS = ("Fioritura", "demo", "lanterns.abc", "Swing", *NAMES.values())
"""Names, and what stands over the notes in every language."""

WORDLESS = frozenset(
    [
        "id",
        "technique",
        "family",
        "player",
        "idiom",
        "feel",
        "kind",
        "unit",
        "status",
        "elements",
        "element",
        "sound",
        "source_name",
        "title",
        "composer",
        "tags",
        "line",
        "texts",
        "other",
        "changed_at",
        "subject",
        "file",
        "metre",
    ]
)
"""Fields of answers that hold ids, the tune's own words, or words in the lesson's language."""

UNDONE = {
    "en": "changed the setting",
    "de": "Einstellung geändert",
    "fr": "modifier le réglage",
    "es": "cambiar el ajuste",
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    made = tmp_path_factory.mktemp("words")
    with cached_in(made / "cache"):
        yield made


def client_in(folder: Path, name: str, usual: str | None = None, **parts: Any) -> Iterator[TestClient]:
    shelf = Shelf(folder / name)
    app = create_app(shelf, hosts_of(8420), Sounds(SineSynth()), language=usual, **parts)
    with TestClient(app, base_url=BASE) as client:
        yield client
    shelf.close()


@pytest.fixture(scope="module")
def client(folder: Path) -> Iterator[TestClient]:
    """A page that leaves the language to the browser."""
    yield from client_in(folder, "usual")


@pytest.fixture(scope="module")
def pseudo(folder: Path) -> Iterator[TestClient]:
    yield from client_in(folder, "pseudo", "pseudo")


def tag_of(client: TestClient, **headers: str) -> str:
    return str(html.fromstring(client.get("/bring", headers=headers).text).get("lang"))


# Whose language is spoken


@pytest.mark.parametrize(
    ("accepted", "tag"),
    [
        ("de", "de-DE"),
        ("de-AT,de;q=0.9,en;q=0.5", "de-DE"),
        ("fr-CA", "fr-FR"),
        ("es-MX,es;q=0.8", "es-ES"),
        ("en;q=0.3, fr;q=0.7", "fr-FR"),
        ("nl, es;q=0.2", "es-ES"),
        ("de;q=0, en", "en-GB"),
        ("nl", "en-GB"),
        ("*", "en-GB"),
        ("de;q=much, fr", "fr-FR"),
        ("", "en-GB"),
    ],
)
def test_the_browsers_language_is_spoken(client: TestClient, accepted: str, tag: str) -> None:
    """Weights as in RFC 9110, 12.5.4."""
    assert tag_of(client, **{"accept-language": accepted}) == tag


def test_what_is_chosen_in_the_menu_goes_before_the_browser(folder: Path) -> None:
    for client in client_in(folder, "chosen"):
        chosen = client.post("/language", data={"language": "fr", "back": "/shelf?tag=demo"}, follow_redirects=False)
        assert (chosen.status_code, chosen.headers["location"]) == (303, "/shelf?tag=demo")
        assert tag_of(client, **{"accept-language": "de"}) == "fr-FR"
        assert "Étagère" in client.get("/shelf").text


@pytest.mark.parametrize(
    "back", ["https://elsewhere.example/", "//elsewhere.example/", "/\\elsewhere.example", "/\nx"]
)
def test_the_menu_leads_nowhere_else(folder: Path, back: str) -> None:
    for client in client_in(folder, "nowhere"):
        chosen = client.post("/language", data={"language": "de", "back": back}, follow_redirects=False)
        assert chosen.headers["location"] == "/"


def test_an_unknown_language_is_refused(client: TestClient, folder: Path) -> None:
    refused = client.post("/language", data={"language": "tlh"}, headers={"accept-language": "de"})
    assert refused.status_code == 422
    assert "spricht die Seite nicht" in refused.json()["problem"]
    with pytest.raises(OptionError, match="tlh"):
        next(client_in(folder, "refused", "tlh"))


def test_the_servers_own_language_goes_before_the_browsers(folder: Path) -> None:
    for client in client_in(folder, "german", "de"):
        assert tag_of(client, **{"accept-language": "fr"}) == "de-DE"
        client.post("/language", data={"language": "es"})
        assert tag_of(client, **{"accept-language": "fr"}) == "es-ES"


def test_every_answer_of_many_at_once_is_in_the_language_of_who_asked(client: TestClient) -> None:
    """Handlers run in a pool of threads, which must each speak the language of their request."""
    asked = [code for code in LANGUAGES for _ in range(6)]
    start = threading.Barrier(8)

    def problem(code: str) -> str:
        if not start.broken:
            start.wait(10)
        return str(client.get("/api/arrangements/99", headers={"accept-language": code}).json()["problem"])

    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(problem, asked))
    for code, text in zip(asked, found, strict=True):
        with speaking(code):
            assert text == say(message("not-on-shelf", kind="arrangement", number=99))
    assert language() == "en"


def test_the_guard_refuses_in_the_readers_language(client: TestClient) -> None:
    refused = client.get("/bring", headers={"host": "elsewhere.example", "accept-language": "es"})
    assert refused.json()["problem"].startswith("Este servidor solo responde")


def test_the_entrance_has_the_menu_too(folder: Path) -> None:
    for client in client_in(folder, "entrance", check=TokenCheck(TOKEN)):
        assert client.post("/language", data={"language": "de", "back": "/enter"}).status_code == 200
        assert "Wessen Regal ist das?" in client.get("/").text


# What is kept is told in the language of who reads it


def test_the_history_is_told_in_the_readers_language(client: TestClient) -> None:
    view = client.get("/api/arrangements/1").json()
    setting = {name: value for name, value in view["setting"].items() if name != "beat"}
    at = {"at": view["step"]["at"]}
    client.put("/api/arrangements/1/setting", json=setting | at | {"level": 2}, headers={"accept-language": "fr"})
    for code, words in UNDONE.items():
        shown = client.get("/api/arrangements/1", headers={"accept-language": code}).json()
        assert shown["step"]["undoes"] == words
    figure = client.get("/api/arrangements/1").json()["figures"][0]["id"]
    at = {"at": client.get("/api/arrangements/1").json()["step"]["at"]}
    client.post("/api/arrangements/1/decisions", json={"kind": "keep", "figure": figure} | at)
    german = client.get("/api/arrangements/1", headers={"accept-language": "de"}).json()
    assert re.fullmatch("„.+“ behalten", german["step"]["undoes"])
    assert german["step"]["undoes"][1:-10].lower() == german["figures"][0]["name"].lower()


def test_steps_of_older_shelves_are_told_as_they_stand(folder: Path) -> None:
    for client in client_in(folder, "older"):
        shelf = client.app.app.state.workspace.shelf  # type: ignore[attr-defined]
        step = shelf.step(1)
        shelf.add_step(1, step.number, "kept “Turn”", step.text)
        shown = client.get("/api/arrangements/1", headers={"accept-language": "de"}).json()
        assert shown["step"]["undoes"] == "kept “Turn”"


def test_keys_and_names_on_the_shelf_are_told_in_the_readers_language(client: TestClient) -> None:
    told = {
        code: client.get("/api/tunes", headers={"accept-language": code}).json()[0]
        for code in ("en", "de", "fr", "es")
    }
    assert {code: tune["versions"][0]["name"] for code, tune in told.items()} == {
        "en": "first",
        "de": "erste",
        "fr": "premier",
        "es": "primero",
    }
    assert len({tune["key"] for tune in told.values()}) >= 3


def test_reports_are_kept_in_messages_and_told_in_any_language() -> None:
    slip = SlipView(
        kind="wrong",
        bar=2,
        beat=1.5,
        passage=1,
        where=message("bar-name", number=2),
        words=Pitch.parse("Bb4").message,
    )
    text = slip.model_dump_json(context=KEEPING)
    assert json.loads(text)["where"] == {"id": "bar-name", "args": {"number": 2}}
    again = SlipView.model_validate_json(text)
    for code, where, note in (("en", "bar 2", "B♭4"), ("de", "Takt 2", "B4"), ("fr", "mesure 2", "Si♭4")):
        with speaking(code):
            assert json.loads(again.model_dump_json())["where"] == where
            assert again.model_dump()["words"] == note


def test_reports_of_older_versions_are_told_as_they_stand() -> None:
    slip = SlipView.model_validate({"kind": "wrong", "bar": 3, "beat": 1.67, "passage": 1, "words": "E5 for F5"})
    assert slip.model_dump()["words"] == "E5 for F5"
    assert slip.model_dump()["where"] == "bar 3, beat 1.67"
    assert Tendency(name=message("bar-name", number=1), count=1, value=2.0).model_dump()["name"] == "bar 1"


@pytest.mark.parametrize(
    "text",
    [
        "",
        "kept “Turn”",
        '{"id":',
        '{"id":"no-such-text"}',
        '{"id":"bar-name"}',
        '{"id":7,"args":{}}',
        '{"id":' + "[" * 99999,
    ],
)
def test_what_is_no_message_is_remembered_as_it_stands(text: str) -> None:
    assert say(remembered(text)).replace(" ", "") == text.replace(" ", "")


def test_messages_are_remembered() -> None:
    said = message("step-decided", kind="keep", figure=Pitch.parse("Bb4"))
    with speaking("de"):
        assert say(remembered(kept(said))) == "„B4“ behalten"


def speak(bench: Bench) -> Made:
    bench.tell("listening", 1, 1)
    return Made({"language": language(), "words": say(message("the-take"))})


def fail(bench: Bench) -> Made:
    raise OptionError("no-such-job")


def test_jobs_are_done_in_the_language_of_who_asked() -> None:
    jobs = Jobs()
    with speaking("es"):
        done, failed = (
            jobs.start("test", "Test", work, then=lambda made: Made({**made.data, "here": language()}))
            for work in (speak, fail)
        )
    while not (done.status.is_over and failed.status.is_over):
        threading.Event().wait(0.02)
    jobs.close()
    assert done.status.made is not None
    assert done.status.made.data == {"language": "es", "words": "La toma", "here": "es"}
    with speaking("fr"):
        assert str(failed.status.problem) == "Ce travail n’existe plus\u202f: relancez-le."


# Nothing but words


def shown_in(page: str) -> str:
    """What a page shows or reads out: its text, and its attributes that are words."""
    root: Any = html.fromstring(page)
    etree.strip_elements(root, "script", "style", "textarea", "code", "svg", with_tail=False)
    attributes = root.xpath("//@title | //@aria-label | //@placeholder | //@aria-valuetext")
    return " ".join([root.text_content(), *attributes])


def told_in(answer: Any, name: str = "") -> Iterator[str]:
    """The words of an answer."""
    if name in WORDLESS:
        return
    if isinstance(answer, dict):
        for field, value in answer.items():
            yield from told_in(value, field)
    elif isinstance(answer, list):
        for value in answer:
            yield from told_in(value, name)
    elif isinstance(answer, str):
        yield " ".join(map(str, etree.fromstring(answer.encode()).itertext())) if name in ("svg", "svgs") else answer


def own_words(client: TestClient) -> list[str]:
    tune = client.get("/api/tunes").json()[0]
    return [tune["title"], tune["composer"], *OURS]


@pytest.mark.parametrize("path", PAGES)
def test_pages_hold_no_words_from_elsewhere(pseudo: TestClient, path: str) -> None:
    answer = pseudo.get(path)
    assert answer.status_code in (200, 404)
    assert plain_words(shown_in(answer.text), own_words(pseudo)) == set()
    root: Any = html.fromstring(answer.text)
    for script in root.xpath("//script[@id='words']"):
        said = json.loads(script.text)
        assert said
        assert plain_words(" ".join(texts_of(said))) == set()


def texts_of(pieces: Any) -> Iterator[str]:
    """The texts of messages that were taken apart."""
    if isinstance(pieces, str):
        yield pieces
    elif isinstance(pieces, list):
        for piece in pieces:
            yield from texts_of(piece)
    elif "cases" in pieces:
        yield from texts_of(list(pieces["cases"].values()))
    elif "arg" not in pieces:
        yield from texts_of(list(pieces.values()))


def test_answers_hold_no_words_from_elsewhere(pseudo: TestClient) -> None:
    view = pseudo.get("/api/arrangements/1?seed=1").json()
    figure, at = view["figures"][0]["id"], view["step"]["at"]
    asked = {
        "arrangement": view,
        "alternatives": pseudo.get(f"/api/arrangements/1/alternatives?figure={figure}").json(),
        "decision": pseudo.post(
            "/api/arrangements/1/decisions", json={"at": at, "kind": "keep", "figure": figure}
        ).json(),
        "hearing": pseudo.get("/api/arrangements/1/hearing?tempo=120&feel=jig").json()["remark"],
        "tunes": pseudo.get("/api/tunes").json(),
        "techniques": pseudo.get("/api/techniques").json(),
        "line": pseudo.get("/api/arrangements/1/line?which=ornamented").json(),
    }
    for name, answer in asked.items():
        words = " ".join(told_in(answer))
        assert words.strip(), name
        assert plain_words(words, own_words(pseudo)) == set(), name


@pytest.mark.parametrize(
    ("method", "path", "sent"),
    [
        ("GET", "/api/arrangements/99", None),
        ("GET", "/api/nowhere", None),
        ("PATCH", "/api/arrangements/1", {}),
        ("POST", "/api/arrangements/1/undo", {"at": 77}),
        ("POST", "/api/arrangements/1/undo", {}),
        ("POST", "/api/arrangements/1/copy", {"name": "x" * 81}),
        ("POST", "/api/arrangements/1/copy", {"name": "x", "more": 1}),
        ("GET", "/api/arrangements/1/hearing?tempo=1", None),
        ("GET", "/api/arrangements/1/hearing?tempo=120&feel=nothing", None),
        ("GET", "/api/arrangements/1/alternatives?figure=nothing", None),
        ("GET", "/api/sounds/nothing", None),
        ("GET", "/api/jobs/0123456789abcdef", None),
        ("POST", "/api/abc", {"text": ""}),
        ("POST", "/api/students", {"name": ""}),
        ("DELETE", "/api/arrangements/1", None),
        ("GET", "/api/lessons/9", None),
        ("GET", "/api/takes/0123456789abcdef", None),
    ],
)
def test_problems_hold_no_words_from_elsewhere(pseudo: TestClient, method: str, path: str, sent: Any) -> None:
    answer = pseudo.request(method, path, json=sent).json()
    problem = answer["problem"]["problem"] if path == "/api/abc" else answer["problem"]
    given = ("nothing", "name", "tempo", "at", "more", "api", "openapi", "json", *FEELS)
    assert problem
    assert plain_words(problem, given) == set()


# In the browser


@pytest.mark.skipif(CHROMIUM is None, reason="the page is tested in Chromium: apt-get install chromium")
def test_pages_come_up_in_every_language(folder: Path) -> None:
    playwright = pytest.importorskip("playwright.sync_api")
    listener = socket.create_server(("127.0.0.1", 0))
    shelf = Shelf(folder / "browser")
    with served(shelf, listener) as address, playwright.sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        page = browser.new_context(locale="nl-NL").new_page()
        faults: list[str] = []
        page.on("pageerror", lambda error: faults.append(str(error)))
        for code, name in NAMES.items():
            page.goto(f"{address}/stand/1")
            page.locator(".languages summary").click()
            page.get_by_role("button", name=name).click()
            page.wait_for_selector("#music .system svg")
            with speaking(code):
                assert page.locator("#play-words").inner_text() == say(message("page-play"))
                page.keyboard.press("ArrowRight")
                assert page.locator("#leave-out").inner_text() == say(message("page-figure-leave-out"))
                page.locator("#undo").wait_for()
            for path in PAGES[1:7]:
                page.goto(address + path)
                page.wait_for_load_state("networkidle")
                assert page.evaluate("document.documentElement.lang").startswith(code)
        assert faults == []
        browser.close()
    shelf.close()
