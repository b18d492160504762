"""The page's server: what it answers, what it refuses, and that what it tells of the sound is so."""

from __future__ import annotations

import io
import json
import re
import socket
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile
from lxml import etree
from starlette.testclient import TestClient

from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.cli import main
from fioritura.shelf.store import Shelf
from fioritura.theory.pitch import Pitch
from fioritura.web.guard import MOST_BYTES
from fioritura.web.server import _listener
from tests.archives import rewritten
from tests.musicxml_text import attributes, notes, score
from tests.served import client_of

HOSTILE = '<script>alert(1)</script>"&'
WALTZ = 'X:1\nT:Small Waltz\nM:3/4\nL:1/4\nQ:1/4=120\nK:D\n"D"D F A|"G"B2 A|"A7"G2 E|"D"F3|"D"D F A|"G"d2 B|"A7"A G E|"D"D3|]\n'


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("page")


@pytest.fixture(scope="module")
def client(folder: Path) -> Iterator[TestClient]:
    with client_of(folder) as client:
        yield client


@pytest.fixture
def waltz(client: TestClient) -> int:
    """A fresh arrangement of a small tune."""
    welcome = client.post("/api/tunes/typed", json={"text": WALTZ}).json()
    assert welcome["problems"] == []
    return int(welcome["tunes"][0]["arrangement"])


def view(client: TestClient, id: int, **query: float | str) -> dict[str, Any]:
    answer = client.get(f"/api/arrangements/{id}", params=query)
    assert answer.status_code == 200, answer.text
    found: dict[str, Any] = answer.json()
    return found


def decide(client: TestClient, id: int, **wish: object) -> dict[str, Any]:
    answer = client.post(f"/api/arrangements/{id}/decisions", json=wish)
    assert answer.status_code == 200, answer.text
    found: dict[str, Any] = answer.json()
    return found


def svg_ids(shown: dict[str, Any]) -> set[str]:
    trees = [etree.fromstring(system["svg"].encode()) for system in shown["systems"]]
    return {element.get("id", "") for tree in trees for element in tree.iter()}


# The stand


def test_the_first_visit_shows_the_demo_tune(client: TestClient) -> None:
    home = client.get("/", follow_redirects=False)
    assert home.status_code == 303
    page = client.get("/stand/1")
    assert "Lanterns on the Quay" in page.text
    shown = view(client, 1)
    assert len(shown["figures"]) > 5
    assert sum(system["bars"] for system in shown["systems"]) == len(shown["bar_numbers"])


def test_every_element_that_is_told_of_is_in_the_svg(client: TestClient) -> None:
    shown = view(client, 1, seed=3)
    ids = svg_ids(shown)
    for figure in shown["figures"] + shown["other"]:
        assert figure["elements"]
        assert set(figure["elements"]) <= ids
        assert {note["element"] for note in figure["added"]} <= set(figure["elements"])
    assert {f"s2-l{figure['number']}" for figure in shown["figures"]} <= ids


def test_a_figure_that_is_kept_stands_in_every_version(client: TestClient, waltz: int) -> None:
    figure = view(client, waltz)["figures"][0]
    shown = decide(client, waltz, at=0, kind="keep", figure=figure["id"])
    assert [f["id"] for f in shown["figures"] if f["is_kept"]] == [figure["id"]]
    for seed in (1, 2, 3):
        assert figure["id"] in [f["id"] for f in view(client, waltz, seed=seed)["other"]]
    released = decide(client, waltz, at=1, kind="release", figure=figure["id"])
    assert not any(f["is_kept"] for f in released["figures"])


def test_a_figure_that_is_left_out_is_gone_until_undone(client: TestClient, waltz: int) -> None:
    before = view(client, waltz)
    figure = before["figures"][0]["id"]
    after = decide(client, waltz, at=0, kind="leave-out", figure=figure)
    assert figure not in [f["id"] for f in after["figures"]]
    assert after["step"]["undoes"].startswith("left out")
    undone = client.post(f"/api/arrangements/{waltz}/undo", json={"at": 1}).json()
    assert undone["figures"] == before["figures"]
    assert undone["step"]["redoes"] == after["step"]["undoes"]
    redone = client.post(f"/api/arrangements/{waltz}/redo", json={"at": 0}).json()
    assert redone["figures"] == after["figures"]


def test_alternatives_are_ranked_and_each_can_be_taken(client: TestClient, waltz: int) -> None:
    figure = view(client, waltz)["figures"][0]["id"]
    found = client.get(f"/api/arrangements/{waltz}/alternatives", params={"figure": figure}).json()
    assert [one["worth"] for one in found] == sorted((one["worth"] for one in found), reverse=True)
    assert [one["id"] for one in found if one["stands"]] == [figure]
    for number, one in enumerate(found):
        tree = etree.fromstring(one["svg"].encode())
        assert all(e.get("id", f"a{number}-").startswith(f"a{number}-") for e in tree.iter())
    other = next(one["id"] for one in found if not one["stands"])
    taken = decide(client, waltz, at=0, kind="replace", figure=figure, other=other)
    assert other in [f["id"] for f in taken["figures"]]
    assert figure not in [f["id"] for f in taken["figures"]]


def test_an_added_note_is_raised_by_a_semitone(client: TestClient) -> None:
    shown = view(client, 1)
    at = shown["step"]["at"]
    tried = 0
    for figure in shown["figures"]:
        for added in figure["added"]:
            wish = {"at": at, "kind": "raise", "figure": figure["id"], "note": added["note"]}
            answer = client.post("/api/arrangements/1/decisions", json=wish)
            if answer.status_code == 200:
                bent = answer.json()
                fresh = [
                    f for f in bent["figures"] if f["id"] not in {g["id"] for g in shown["figures"]} and f["is_kept"]
                ]
                assert [f["technique"] for f in fresh] == [figure["technique"]]
                semitones = [
                    Pitch.parse(new["written"]).midi - Pitch.parse(old["written"]).midi
                    for old, new in zip(figure["added"], fresh[0]["added"], strict=True)
                ]
                assert semitones == [int(old is added) for old in figure["added"]]
                client.post("/api/arrangements/1/undo", json={"at": at + 1})
                return
            tried += 1
            assert answer.status_code == 422
    pytest.fail(f"none of {tried} notes could be raised")


def test_a_decision_on_an_older_state_is_refused(client: TestClient, waltz: int) -> None:
    figure = view(client, waltz)["figures"][0]["id"]
    decide(client, waltz, at=0, kind="keep", figure=figure)
    answer = client.post(f"/api/arrangements/{waltz}/decisions", json={"at": 0, "kind": "keep", "figure": figure})
    assert answer.status_code == 409
    assert "changed elsewhere" in answer.json()["problem"]


def test_what_was_decided_is_on_the_shelf_as_it_was_shown(client: TestClient, waltz: int, folder: Path) -> None:
    figure = view(client, waltz)["figures"][0]["id"]
    shown = decide(client, waltz, at=0, kind="leave-out", figure=figure)
    again = Shelf(folder / "data")
    stored = arrangement_from_json(again.step(waltz).text)
    again.close()
    assert stored.decisions.refused == (figure,)
    assert [f["technique"] for f in shown["figures"]] == [f.technique for f in stored.rendition.figures]


@pytest.mark.parametrize(
    "change",
    [
        {"level": 5},
        {"idiom": "folk"},
        {"feel": "swing"},
        {"tempo": 90},
        {"without": ["graces"]},
        {"seed": 7},
        {"player": "trombone"},
    ],
)
def test_the_setting_can_be_changed(client: TestClient, waltz: int, change: dict[str, Any]) -> None:
    setting = view(client, waltz)["setting"]
    setting.pop("beat")
    answer = client.put(f"/api/arrangements/{waltz}/setting", json={"at": 0} | setting | change)
    assert answer.status_code == 200, answer.text
    shown = answer.json()
    assert {name: shown["setting"][name] for name in change} == change
    if "without" in change:
        assert not [f for f in shown["figures"] if f["family"] == "graces"]


def test_decisions_outlast_another_level(client: TestClient, waltz: int) -> None:
    shown = view(client, waltz)
    figure = shown["figures"][0]["id"]
    decide(client, waltz, at=0, kind="keep", figure=figure)
    setting = shown["setting"] | {"level": 5, "at": 1}
    setting.pop("beat")
    changed = client.put(f"/api/arrangements/{waltz}/setting", json=setting).json()
    assert [f["is_kept"] for f in changed["figures"] if f["id"] == figure] == [True]


def test_compound_metres_count_beats_not_quarters(client: TestClient) -> None:
    text = "X:1\nT:Jig\nM:6/8\nL:1/8\nQ:3/8=100\nK:G\nGAB cde|d2B G3|]\n"
    id = client.post("/api/tunes/typed", json={"text": text}).json()["tunes"][0]["arrangement"]
    assert view(client, id)["setting"]["tempo"] == 100
    assert view(client, id)["setting"]["beat"] == 1.5


# Bringing in


def test_abc_is_engraved_as_it_is_typed(client: TestClient) -> None:
    seen = client.post("/api/abc", json={"text": WALTZ, "width": 120}).json()
    assert seen["problem"] is None
    assert sum(system["bars"] for system in seen["systems"]) == 8


@pytest.mark.parametrize(("music", "wrong"), [("G A B/0 c", "B/0"), ("G A B c]", "]"), ('G A "D7 c', '"')])
def test_an_error_in_abc_is_shown_at_its_character(client: TestClient, music: str, wrong: str) -> None:
    seen = client.post("/api/abc", json={"text": f"X:1\nM:4/4\nL:1/4\nK:G\n{music}|]\n"}).json()
    problem = seen["problem"]
    assert problem["line"] == 5
    start = problem["column"] - 1
    assert music[start : start + problem["length"]] == wrong


def test_of_notes_at_once_in_abc_the_top_line_is_shown_and_that_is_said(client: TestClient) -> None:
    seen = client.post("/api/abc", json={"text": "X:1\nM:4/4\nL:1/4\nK:G\nG A [ce] c|]\n"}).json()
    assert seen["problem"] is None and seen["systems"]
    assert any("the top line is taken" in warning for warning in seen["warnings"])


def test_bars_that_do_not_add_up_are_named_and_shown_all_the_same(client: TestClient) -> None:
    seen = client.post("/api/abc", json={"text": WALTZ.replace("B2 A|", "B2|")}).json()
    assert "bar 2" in seen["problem"]["problem"]
    assert "--" not in seen["problem"]["problem"]
    assert seen["systems"]


def test_files_of_all_kinds_come_in_together(client: TestClient) -> None:
    files = [
        ("files", ("a.abc", WALTZ.encode())),
        ("files", ("b.musicxml", client.get("/api/openapi.json").content)),
        ("files", ("c.abc", (WALTZ + "\n" + WALTZ.replace("X:1", "X:2").replace("Small", "Second")).encode())),
        ("files", ("d.pdf", b"%PDF-1.7")),
    ]
    welcome = client.post("/api/tunes", files=files, data={"tags": "new, test"}).json()
    assert [tune["title"] for tune in welcome["tunes"]] == ["Small Waltz", "Small Waltz", "Second Waltz"]
    assert [tune["tags"] for tune in welcome["tunes"]] == [["new", "test"]] * 3
    assert len(welcome["problems"]) == 2
    assert any("PDF" in one["problem"] for one in welcome["problems"])


@pytest.mark.parametrize("name", ["../../evil.abc", "C:\\temp\\evil.abc", "\0evil.abc", HOSTILE + ".abc", "." * 300])
def test_the_name_of_an_upload_is_never_trusted(client: TestClient, name: str) -> None:
    welcome = client.post("/api/tunes", files=[("files", (name, WALTZ.encode()))]).json()
    kept = welcome["tunes"][0]["source_name"]
    assert re.fullmatch(r"[\w ()'-]+\.abc", kept)
    assert "<script>" not in client.get("/shelf").text


def test_a_hostile_title_is_only_text(client: TestClient) -> None:
    text = WALTZ.replace("Small Waltz", HOSTILE).replace('"D"D F', '"<b>x"D F')
    tune = client.post("/api/tunes/typed", json={"text": text}).json()["tunes"][0]
    for path in (f"/stand/{tune['arrangement']}", "/shelf"):
        page = client.get(path)
        assert page.status_code == 200
        assert "<script>alert" not in page.text
    shown = view(client, tune["arrangement"])
    for system in shown["systems"]:
        tags = {etree.QName(element).localname for element in etree.fromstring(system["svg"].encode()).iter()}
        assert tags <= {
            "svg",
            "g",
            "path",
            "use",
            "text",
            "tspan",
            "defs",
            "ellipse",
            "polygon",
            "polyline",
            "rect",
            "desc",
        }


def test_a_player_who_can_not_reach_the_tune_is_told_so(client: TestClient) -> None:
    wide = "X:1\nM:4/4\nL:1/4\nK:C\nC,,,, c'''' C c|]\n"
    welcome = client.post("/api/tunes/typed", json={"text": wide}).json()
    assert welcome["tunes"] == []
    assert "lie outside" in welcome["problems"][0]["problem"]


# The shelf


def test_the_shelf_is_searched_changed_exported_and_restored(client: TestClient) -> None:
    tune = client.post("/api/tunes/typed", json={"text": WALTZ.replace("Small", "Exported")}).json()["tunes"][0]
    changed = client.patch(f"/api/tunes/{tune['id']}", json={"title": "Renamed", "tags": ["Gift"]}).json()
    assert (changed["title"], changed["tags"]) == ("Renamed", ["gift"])
    assert view(client, tune["arrangement"])["title"] == "Renamed"
    archive = client.get("/api/export")
    assert archive.headers["content-type"] == "application/zip"
    assert client.delete(f"/api/tunes/{tune['id']}").status_code == 204
    assert client.get("/api/tunes", params={"tag": "gift"}).json() == []
    assert client.get(f"/api/arrangements/{tune['arrangement']}").status_code == 404
    restored = client.post("/api/restore", files={"archive": ("shelf.zip", archive.content)})
    assert restored.status_code == 200
    back = client.get("/api/tunes", params={"search": "renamed"}).json()
    assert [one["tags"] for one in back] == [["gift"]]
    assert view(client, back[0]["arrangement"])["figures"]


def test_an_archive_with_a_tune_that_can_not_be_read_is_refused(client: TestClient) -> None:
    client.post("/api/tunes/typed", json={"text": WALTZ.replace("Small", "Kept")})
    before = len(client.get("/api/tunes").json())
    whole = client.get("/api/export").content
    with zipfile.ZipFile(io.BytesIO(whole)) as archive:
        table = json.loads(archive.read("shelf.json"))
    data = rewritten(whole, table, {table["tunes"][0]["source"]: b"MThd and nothing more"})
    answer = client.post("/api/restore", data={"doubles": "copy"}, files={"archive": ("shelf.zip", data)})
    assert answer.status_code == 422
    assert len(client.get("/api/tunes").json()) == before


def test_no_other_site_can_start_an_export(client: TestClient) -> None:
    """A page may be linked to from anywhere; data may not."""
    elsewhere = {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate"}
    assert client.get("/shelf", headers=elsewhere).status_code == 200
    assert client.get("/api/export", headers=elsewhere).status_code == 403
    assert client.get("/api/export", headers=elsewhere | {"Sec-Fetch-Site": "same-origin"}).status_code == 200


def test_what_is_no_archive_is_refused(client: TestClient) -> None:
    answer = client.post("/api/restore", files={"archive": ("shelf.zip", b"PK\x03\x04 nothing")})
    assert answer.status_code == 422
    assert "archive" in answer.json()["problem"].lower()


# The sound


def hearing(client: TestClient, id: int, **query: float | str) -> dict[str, Any]:
    answer = client.get(f"/api/arrangements/{id}/hearing", params={"tempo": 120, **query})
    assert answer.status_code == 200, answer.text
    found: dict[str, Any] = answer.json()
    return found


def sound(client: TestClient, key: str) -> tuple[np.ndarray[Any, Any], int]:
    answer = client.get(f"/api/sounds/{key}")
    assert answer.status_code == 200, answer.text
    samples, rate = soundfile.read(io.BytesIO(answer.content))
    return samples, rate


def test_bars_last_as_long_as_the_tempo_says(client: TestClient, waltz: int) -> None:
    heard = hearing(client, waltz, tempo=120)
    lengths = [bar["end"] - bar["start"] for bar in heard["bars"]]
    assert lengths == pytest.approx([1.5] * 8, abs=1e-3)
    assert heard["starts_at"] == pytest.approx(1.5, abs=1e-3)
    assert [bar["bar"] for bar in heard["bars"]] == list(range(8))
    assert hearing(client, waltz, tempo=60)["bars"][0]["end"] == pytest.approx(6.0, abs=1e-3)


def test_all_sounds_of_a_hearing_are_equally_long(client: TestClient, waltz: int) -> None:
    heard = hearing(client, waltz)
    keys = [line["sound"] for line in heard["lines"]] + list(heard["band"].values())
    lengths = {len(sound(client, key)[0]) for key in keys}
    assert len(lengths) == 1
    assert set(heard["band"]) == {"bass", "chords", "drums", "click"}


def test_the_melody_sounds_when_it_is_said_to(client: TestClient, waltz: int) -> None:
    heard = hearing(client, waltz)
    line = next(line for line in heard["lines"] if line["name"] == "plain")
    audio, rate = sound(client, line["sound"])
    first = int(np.argmax(np.abs(audio[:, 0]) > 0.01)) / rate
    assert first == pytest.approx(line["notes"][0][0], abs=0.03)
    ids = svg_ids(view(client, waltz))
    assert {note[2] for each in heard["lines"] for note in each["notes"]} <= ids


def test_a_repeat_is_heard_twice_and_shown_once(client: TestClient) -> None:
    text = 'X:1\nT:Twice\nM:4/4\nL:1/4\nK:C\n|:"C"C E G E|"G7"F D B, D:|"C"C4|]\n'
    id = client.post("/api/tunes/typed", json={"text": text, "unfolds": False}).json()["tunes"][0]["arrangement"]
    heard = hearing(client, id)
    assert [bar["bar"] for bar in heard["bars"]] == [0, 1, 0, 1, 2]
    plain = next(line for line in heard["lines"] if line["name"] == "plain")["notes"]
    assert [note[2] for note in plain][:9] == [f"s1-n{n}" for n in (*range(8), 0)]


def test_only_the_changed_line_is_made_anew(client: TestClient, waltz: int) -> None:
    before = hearing(client, waltz)
    decide(client, waltz, at=0, kind="leave-out", figure=view(client, waltz)["figures"][0]["id"])
    after = hearing(client, waltz)
    assert after["band"] == before["band"]
    sounds = [{line["name"]: line["sound"] for line in heard["lines"]} for heard in (before, after)]
    assert sounds[0]["plain"] == sounds[1]["plain"]
    assert sounds[0]["ornamented"] != sounds[1]["ornamented"]


def test_a_feel_that_is_not_played_in_the_metre_leaves_the_melody_alone(client: TestClient) -> None:
    text = "X:1\nT:Five Beats of Three\nM:15/8\nL:1/8\nK:C\nC3D3E3F3G3|]\n"
    id = client.post("/api/tunes/typed", json={"text": text}).json()["tunes"][0]["arrangement"]
    assert hearing(client, id)["band"]
    heard = hearing(client, id, feel="waltz")
    assert heard["band"] == {}
    assert heard["remark"]
    assert heard["starts_at"] == 0


def test_a_figure_can_be_heard_before_it_is_taken(client: TestClient, waltz: int) -> None:
    figure = view(client, waltz)["figures"][0]["id"]
    found = client.get(f"/api/arrangements/{waltz}/alternatives", params={"figure": figure}).json()
    for one in found[:2]:
        answer = client.get(f"/api/arrangements/{waltz}/figure-sound", params={"figure": one["id"]})
        assert answer.headers["content-type"] == "audio/flac"
        audio, _ = soundfile.read(io.BytesIO(answer.content))
        assert 0.05 < np.abs(audio).max() < 1.0
    assert view(client, waltz)["step"]["at"] == 0


def test_an_unknown_sound_is_not_found(client: TestClient) -> None:
    for key in ("0" * 40, "../../etc/passwd", "x"):
        assert client.get(f"/api/sounds/{key}").status_code == 404


# The guard


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1:9999", "localhost", "localhost:8420.evil.example", ""])
def test_other_names_of_this_machine_are_refused(client: TestClient, host: str) -> None:
    assert client.get("/api/tunes", headers={"Host": host}).status_code == 421


@pytest.mark.parametrize("host", ["127.0.0.1:8420", "localhost:8420", "[::1]:8420"])
def test_its_own_names_are_answered(client: TestClient, host: str) -> None:
    assert client.get("/api/tunes", headers={"Host": host}).status_code == 200


@pytest.mark.parametrize(
    "headers",
    [
        {"Origin": "http://evil.example"},
        {"Origin": "null"},
        {"Origin": "https://127.0.0.1:8420"},
        {"Sec-Fetch-Site": "cross-site"},
        {"Sec-Fetch-Site": "same-site", "Origin": "http://localhost:3000"},
        {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate"},
    ],
)
def test_posts_from_other_sites_are_refused(client: TestClient, headers: dict[str, str]) -> None:
    assert client.post("/api/tunes/typed", json={"text": WALTZ}, headers=headers).status_code == 403


def test_a_link_from_elsewhere_may_open_the_page_but_not_read_data(client: TestClient) -> None:
    elsewhere = {"Sec-Fetch-Site": "cross-site"}
    assert client.get("/stand/1", headers=elsewhere | {"Sec-Fetch-Mode": "navigate"}).status_code == 200
    assert client.get("/api/tunes", headers=elsewhere | {"Sec-Fetch-Mode": "no-cors"}).status_code == 403


def test_every_answer_carries_the_security_headers(client: TestClient) -> None:
    answers = [
        client.get(path) for path in ("/stand/1", "/shelf", "/bring", "/static/page.css", "/api/tunes", "/none")
    ]
    answers.append(client.get("/", headers={"Host": "evil.example"}))
    for answer in answers:
        policy = answer.headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
        assert answer.headers["x-content-type-options"] == "nosniff"


def test_pages_hold_nothing_that_their_policy_forbids_and_nothing_from_elsewhere(client: TestClient) -> None:
    for path in ("/stand/1", "/shelf", "/bring"):
        page, data_blocks = re.subn(
            r'<script type="application/json" id="(?:words|families)">[^<]*</script>', "", client.get(path).text
        )
        assert data_blocks == 2, "data is no script: the policy lets it be, and it holds nothing that ends it"
        assert not re.search(r"<script(?![^>]*\bsrc=)|\son\w+=|\sstyle=|javascript:", page)
        assert not re.search(r"(?:src|href|action)=\"(?:https?:)?//", page)
    for system in view(client, 1)["systems"]:
        assert " style=" not in system["svg"]


def test_bodies_are_bounded(client: TestClient) -> None:
    too_much = b"x" * (MOST_BYTES + 1)
    assert client.post("/api/tunes", content=too_much).status_code == 413

    def chunks() -> Iterator[bytes]:
        for _ in range(MOST_BYTES // 65536 + 2):
            yield b"x" * 65536

    answer = client.post("/api/tunes/typed", content=chunks(), headers={"Content-Type": "application/json"})
    assert 400 <= answer.status_code < 500


@pytest.mark.parametrize(
    ("path", "body"),
    [
        ("decisions", {"at": 0, "kind": "keep", "figure": "turn-0-000000"}),
        ("decisions", {"at": 0, "kind": "explode", "figure": "turn-0-000000"}),
        ("decisions", {"at": -1, "kind": "keep", "figure": "x"}),
        ("decisions", {"at": 0, "kind": "replace", "figure": "turn-0-000000"}),
        ("decisions", []),
        ("undo", {"at": 0}),
        ("undo", {"at": "zero"}),
    ],
)
def test_nonsense_is_refused_in_words(client: TestClient, waltz: int, path: str, body: object) -> None:
    answer = client.post(f"/api/arrangements/{waltz}/{path}", json=body)
    assert answer.status_code == 422
    assert answer.json()["problem"]


def test_the_api_is_documented(client: TestClient) -> None:
    document = client.get("/api/openapi.json").json()
    assert document["openapi"].startswith("3.")
    operations = [(path, way) for path, ways in document["paths"].items() for way in ways.values()]
    assert len(operations) >= 15
    for path, way in operations:
        assert path.startswith("/api/")
        assert way["description"]
    assert set(document["components"]["schemas"]) >= {"ArrangementView", "Decision", "HearingView", "TuneView"}


def test_musicxml_comes_in(client: TestClient) -> None:
    welcome = client.post(
        "/api/tunes", files=[("files", ("score.xml", score(attributes() + notes("C5:4 D5:4 E5:4 C5:4"))))]
    ).json()
    assert welcome["problems"] == []


# The server


def test_the_address_answers_as_soon_as_it_is_told() -> None:
    with _listener(0) as listener:
        assert listener.getsockname()[0] == "127.0.0.1"
        socket.create_connection(listener.getsockname(), timeout=5).close()


def test_a_port_that_is_taken_or_does_not_exist_is_refused_in_words(capsys: pytest.CaptureFixture[str]) -> None:
    with _listener(0) as listener:
        port = listener.getsockname()[1]
        assert main(["serve", "--port", str(port)]) == 2
    assert main(["serve", "--port", "70000"]) == 2
    said = capsys.readouterr().err
    assert f"Port {port} of 127.0.0.1 can't be used" in said
    assert "Port 70000 does not exist" in said


def test_a_folder_comes_in_as_a_job(client: TestClient) -> None:
    files = [("files", (f"folder/{n}.abc", WALTZ.replace("Small", f"Number {n}").encode())) for n in range(5)]
    files.append(("files", ("folder/broken.abc", WALTZ.replace("B2 A", "B/0 A").encode())))
    started = client.post("/api/tunes/import", files=files, data={"tags": "folder", "level": "2"})
    assert started.status_code == 202, started.text
    with client.stream("GET", f"/api/jobs/{started.json()['id']}/events") as answer:
        told = [json.loads(line[6:]) for line in answer.iter_lines() if line.startswith("data: ")]
    assert told[-1]["state"] == "done", told[-1]["problem"]
    assert told[-1]["steps"] == [{"name": "reading", "done": 6, "total": 6}]
    assert [tune["title"] for tune in told[-1]["result"]["tunes"]] == [f"Number {n} Waltz" for n in range(5)]
    assert len(told[-1]["result"]["problems"]) == 1
    assert len(client.get("/api/tunes", params={"tag": "folder"}).json()) == 5
    assert view(client, told[-1]["result"]["tunes"][0]["arrangement"])["setting"]["level"] == 2


@pytest.mark.parametrize("id", [0, -1, 2**53 + 1, 2**70])
def test_numbers_that_no_shelf_has_are_refused(client: TestClient, id: int) -> None:
    for path in (f"/api/arrangements/{id}", f"/api/lessons/{id}", f"/stand/{id}", f"/lesson/{id}", f"/take/{id}"):
        assert client.get(path).status_code in (404, 422)


def test_people_are_told_on_a_page_and_programs_as_json(client: TestClient) -> None:
    for path in ("/stand/999", "/lesson/999", "/nowhere", "/stand/x", "/static/none.js"):
        answer = client.get(path)
        assert answer.status_code in (404, 422)
        assert "To the shelf" in answer.text
    for path in ("/api/arrangements/999", "/api/nowhere", "/api/arrangements/x"):
        answer = client.get(path)
        assert answer.status_code in (404, 422)
        assert answer.json()["problem"]


def test_a_tune_can_have_several_arrangements(client: TestClient, waltz: int) -> None:
    decide(client, waltz, at=0, kind="leave-out", figure=view(client, waltz)["figures"][0]["id"])
    copied = client.post(f"/api/arrangements/{waltz}/copy", json={"name": "For <Anna>"})
    assert copied.status_code == 201
    other = copied.json()["id"]
    mine, theirs = view(client, waltz), view(client, other)
    assert [figure["id"] for figure in mine["figures"]] == [figure["id"] for figure in theirs["figures"]]
    assert theirs["step"] == {"at": 0, "undoes": "", "redoes": ""}
    decide(client, other, at=0, kind="leave-out", figure=theirs["figures"][0]["id"])
    assert view(client, waltz)["figures"] == mine["figures"]
    assert "For &lt;Anna&gt;" in client.get("/shelf").text
    assert client.delete(f"/api/arrangements/{other}").status_code == 204
    assert client.get(f"/api/arrangements/{other}").status_code == 404
    refused = client.delete(f"/api/arrangements/{waltz}")
    assert (refused.status_code, "only arrangement" in refused.json()["problem"]) == (422, True)


def test_single_techniques_can_be_left_out(client: TestClient, waltz: int) -> None:
    shown = view(client, waltz)
    technique = shown["figures"][0]["technique"]
    setting = shown["setting"] | {"without": [technique], "at": 0}
    setting.pop("beat")
    changed = client.put(f"/api/arrangements/{waltz}/setting", json=setting).json()
    assert technique not in [figure["technique"] for figure in changed["figures"]]
    assert changed["setting"]["without"] == [technique]


@pytest.mark.parametrize("path", ["/stand/1", "/bring", "/shelf", "/take/1"])
def test_a_page_names_all_scripts_that_it_needs_beforehand(client: TestClient, path: str) -> None:
    html = client.get(path).text
    named = re.findall(r'<link rel="modulepreload" href="(/static/[\w-]+\.js)">', html)
    assert set(re.findall(r'<script type="module" src="(.+?)">', html)) <= set(named)
    for address in named:
        script = client.get(address)
        assert script.status_code == 200
        imported = set(re.findall(r"""from ["']\./([\w-]+\.js)["']""", script.text))
        assert {f"/static/{name}" for name in imported} <= set(named)
