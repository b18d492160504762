"""Lessons over the API: what is offered, how a plan will look, what is kept, and the pack that comes of it."""

from __future__ import annotations

import io
import json
import time
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pypdf
import pytest
from starlette.testclient import TestClient

from fioritura.techniques.inflection import SCOOP
from fioritura.techniques.turn import TURN
from tests.served import client_of

PLAN: dict[str, Any] = {"sections": ["handout"]}


@pytest.fixture(scope="module")
def client(tmp_path_factory: pytest.TempPathFactory) -> Iterator[TestClient]:
    with client_of(tmp_path_factory.mktemp("lessons")) as client:
        yield client


def asked(client: TestClient, method: str, path: str, status: int = 200, **rest: Any) -> Any:
    answer = client.request(method, f"/api/{path}", **rest)
    assert answer.status_code == status, answer.text
    return answer.json() if answer.content else None


def offer(client: TestClient, **query: object) -> dict[str, Any]:
    found: dict[str, Any] = asked(client, "GET", "arrangements/1/lesson-offer", params=query)
    return found


def preview(client: TestClient, plan: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = asked(client, "POST", "lessons/preview", json={"arrangement": 1, "plan": PLAN | plan})
    return found


def test_the_offer_counts_what_the_arrangement_holds(client: TestClient) -> None:
    shown, offered = asked(client, "GET", "arrangements/1"), offer(client)
    used = {one["id"]: one["used"] for one in offered["techniques"] if one["used"]}
    counted: dict[str, int] = {}
    for figure in shown["figures"]:
        counted[figure["technique"]] = counted.get(figure["technique"], 0) + 1
    assert used == counted
    assert sum(phrase["figures"] for phrase in offered["phrases"]) == len(shown["figures"])
    assert [phrase["number"] for phrase in offered["phrases"]] == list(range(len(offered["phrases"])))
    assert all(phrase["svgs"] for phrase in offered["phrases"])


def test_the_offer_speaks_the_language_and_grows_with_the_level(client: TestClient) -> None:
    english, german = (offer(client, language=code)["techniques"] for code in ("en", "de"))
    assert [one["id"] for one in english] == [one["id"] for one in german]
    assert sum(a["texts"]["text"] != b["texts"]["text"] for a, b in zip(english, german, strict=True)) == len(english)
    assert len(offer(client, level=5)["techniques"]) > len(offer(client, level=1)["techniques"])
    assert client.get("/api/arrangements/1/lesson-offer", params={"language": "xx"}).status_code == 422


def test_a_preview_shows_the_chosen_techniques_in_the_chosen_phrases(client: TestClient) -> None:
    offered = offer(client)
    one = next(one for one in offered["techniques"] if one["used"])
    phrase = offered["phrases"][one["phrases"][0]]
    seen = preview(client, {"techniques": [one["id"]], "phrases": [phrase["number"]]})
    assert [example["technique"] for example in seen["examples"]] == [one["id"]]
    assert seen["examples"][0]["first_bar"] <= phrase["last_bar"]
    assert seen["examples"][0]["last_bar"] >= phrase["first_bar"]
    named = preview(client, {"techniques": [one["id"]], "overrides": {"techniques": {one["id"]: {"name": "A Wave"}}}})
    assert named["examples"][0]["name"] == "A Wave"
    nothing = preview(client, {"phrases": []})
    assert nothing["examples"] == []
    assert "choose another technique or phrase" in nothing["problem"]


def test_a_lesson_is_kept_changed_and_removed(client: TestClient) -> None:
    lesson = asked(client, "POST", "lessons", 201, json={"arrangement": 1, "plan": PLAN})
    assert (lesson["title"], lesson["revision"]) == ("Lanterns on the Quay", 0)
    titled = PLAN | {"overrides": {"words": {"title": "For Anna"}}}
    changed = asked(client, "PUT", f"lessons/{lesson['id']}", json={"at": 0, "plan": titled})
    assert (changed["title"], changed["revision"]) == ("For Anna", 1)
    assert asked(client, "GET", f"lessons/{lesson['id']}") == changed
    assert changed["plan"]["overrides"]["words"] == {"title": "For Anna"}
    assert (
        "changed elsewhere"
        in asked(client, "PUT", f"lessons/{lesson['id']}", 409, json={"at": 0, "plan": PLAN})["problem"]
    )
    assert "For Anna" in client.get("/shelf").text
    assert [tune["id"] for tune in asked(client, "GET", "tunes", params={"search": "anna"})] == [1]
    assert client.get("/lesson/for/1", follow_redirects=False).headers["location"] == f"/lesson/{lesson['id']}"
    asked(client, "DELETE", f"lessons/{lesson['id']}", 204)
    asked(client, "GET", f"lessons/{lesson['id']}", 404)
    assert client.get("/lesson/for/1", follow_redirects=False).headers["location"] == "/lesson/new/1"


@pytest.mark.parametrize(
    "wrong",
    [
        {"sections": []},
        {"sections": ["film"]},
        {"players": ["kazoo"]},
        {"paper": "a3"},
        {"language": "../../etc"},
        {"techniques": ["whistle"]},
        {"overrides": {"words": {"price": "5"}}},
        {"overrides": {"techniques": {TURN.id: {"sound": "loud"}}}},
    ],
)
def test_a_plan_that_makes_no_sense_is_refused(client: TestClient, wrong: dict[str, Any]) -> None:
    asked(client, "POST", "lessons", 422, json={"arrangement": 1, "plan": PLAN | wrong})


def packed(client: TestClient, lesson: dict[str, Any]) -> dict[str, Any]:
    job = asked(client, "POST", f"lessons/{lesson['id']}/pack", 202)
    while job["state"] in ("waiting", "running"):
        time.sleep(0.1)
        job = asked(client, "GET", f"jobs/{job['id']}")
    assert job["state"] == "done", job["problem"]
    found: dict[str, Any] = job
    return found


def test_the_pack_holds_the_plan_and_the_words(client: TestClient) -> None:
    plan = PLAN | {
        "techniques": [SCOOP.id],
        "overrides": {
            "words": {"title": 'An "Evening" / Song', "studio": "Harbour Street Studio"},
            "techniques": {SCOOP.id: {"how": "Think of a lazy gate."}},
        },
    }
    lesson = asked(client, "POST", "lessons", 201, json={"arrangement": 1, "plan": plan})
    job = packed(client, lesson)
    assert job["result"]["techniques"] == 1
    steps = {step["name"] for step in job["steps"]}
    assert "documents" in steps <= {"engraving", "documents"}, "what was engraved before comes from the cache"
    assert all(step["done"] == step["total"] for step in job["steps"])
    answer = client.get(job["file"])
    assert "An _Evening_ _ Song.zip" in answer.headers["content-disposition"].replace("%20", " ")
    archive = zipfile.ZipFile(io.BytesIO(answer.content))
    assert len(archive.namelist()) == job["result"]["files"]
    folder = archive.namelist()[0].split("/")[0]
    text = "\n".join(
        page.extract_text() for page in pypdf.PdfReader(io.BytesIO(archive.read(f"{folder}/handout.pdf"))).pages
    )
    assert "Harbour Street Studio" in text
    assert "lazy gate" in " ".join(text.split())
    manifest = json.loads(archive.read(f"{folder}/manifest.json"))
    assert manifest["settings"]["plan"]["techniques"] == [SCOOP.id]
    assert manifest["source"] == {"tune": "source/arrangement.json"}


def test_a_pack_that_can_not_be_made_says_why(client: TestClient) -> None:
    lesson = asked(client, "POST", "lessons", 201, json={"arrangement": 1, "plan": PLAN | {"phrases": []}})
    job = asked(client, "POST", f"lessons/{lesson['id']}/pack", 202)
    while job["state"] in ("waiting", "running"):
        time.sleep(0.1)
        job = asked(client, "GET", f"jobs/{job['id']}")
    assert job["state"] == "failed"
    assert "choose another technique or phrase" in job["problem"]
    assert client.get(f"/api/jobs/{job['id']}/file").status_code == 404


def test_a_hostile_title_is_only_text_on_the_lesson(client: TestClient, tmp_path: Path) -> None:
    hostile = "<script>alert(1)</script>'\"&"
    text = f"X:1\nT:{hostile}\nM:4/4\nL:1/4\nK:C\nCEGE|CEGc|]\n"
    tune = asked(client, "POST", "tunes/typed", json={"text": text})["tunes"][0]
    plan = PLAN | {"overrides": {"words": {"title": hostile}}}
    lesson = asked(client, "POST", "lessons", 201, json={"arrangement": tune["arrangement"], "plan": plan})
    for path in (f"/lesson/{lesson['id']}", f"/lesson/new/{tune['arrangement']}", "/shelf"):
        assert "<script>alert" not in client.get(path).text
