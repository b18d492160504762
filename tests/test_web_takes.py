"""The API of takes and students: what is played is what is told of it, and nothing else is let in.

Takes are made by formula (`tests.take_sound`): their notes, tuning and lateness are known, and the page must tell them.
"""

from __future__ import annotations

import io
import json
import time
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from typing import Any

import numpy as np
import pytest
import soundfile
from lxml import etree
from starlette.testclient import TestClient

from fioritura.arrange.arrangement import Arrangement
from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.shelf.store import Shelf
from fioritura.theory.metre import QUARTER
from fioritura.web.app import create_app
from fioritura.web.guard import hosts_of
from fioritura.web.hearing import Sounds
from tests import listening_takes as sound
from tests.archives import rewritten
from tests.pseudo import plain_words
from tests.sound_fakes import SineSynth
from tests.take_sound import wave_of
from tests.test_web_words import told_in

BASE = "http://127.0.0.1:8421"
MARCH = (
    'X:1\nT:Gate March\nM:4/4\nL:1/4\nQ:1/4=96\nK:F\n"F"F G A c|"Bb"d2 c2|"C7"B A G E|"F"F3 z|'
    '"F"A c f e|"Bb"d f d2|"C7"c B A G|"F"F4|]\n'
)
DEMO = 1
SHARP_CENTS = 18.0
LATE_SEC = 0.045


@dataclass(frozen=True)
class Desk:
    """The page's server, and the number of an arrangement on it."""

    client: TestClient
    shelf: Shelf
    id: int

    @property
    def arrangement(self) -> Arrangement:
        return arrangement_from_json(self.shelf.step(self.id).text)

    def sent(self, wave: np.ndarray | bytes, **fields: object) -> Any:
        """The answer to a recording."""
        data = wave if isinstance(wave, bytes) else wav(wave)
        values = {"arrangement": self.id, "line": "ornamented", "tempo": 96} | fields
        return self.client.post("/api/takes", data=values, files={"recording": ("../../take.wav", data)})

    def heard(self, wave: np.ndarray | bytes, **fields: object) -> tuple[str, dict[str, Any]]:
        """A take's name, and the job that has listened to it."""
        answer = self.sent(wave, **fields)
        assert answer.status_code == 202, answer.text
        return answer.json()["take"], self.over(answer.json()["job"]["id"])

    def over(self, job: str) -> dict[str, Any]:
        until = time.monotonic() + 90
        while time.monotonic() < until:
            found: dict[str, Any] = self.client.get(f"/api/jobs/{job}").json()
            if found["state"] in ("done", "failed"):
                return found
            time.sleep(0.05)
        raise AssertionError("the job does not end")

    def take(self, id: str) -> dict[str, Any]:
        answer = self.client.get(f"/api/takes/{id}")
        assert answer.status_code == 200, answer.text
        found: dict[str, Any] = answer.json()
        return found

    @property
    def files(self) -> set[str]:
        folder = self.shelf.takes.recordings.folder
        return {path.name for path in folder.iterdir()} if folder.is_dir() else set()


def wav(wave: np.ndarray, rate: int = sound.RATE) -> bytes:
    file = io.BytesIO()
    soundfile.write(file, wave, rate, "PCM_16", format="WAV")
    return file.getvalue()


@pytest.fixture(scope="module")
def workspace(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    folder = tmp_path_factory.mktemp("takes")
    patch = pytest.MonkeyPatch()
    patch.setenv("XDG_CACHE_HOME", str(folder / "cache"))
    shelf = Shelf(folder / "data")
    with TestClient(create_app(shelf, hosts_of(8421), Sounds(SineSynth())), base_url=BASE) as client:
        welcome = client.post("/api/tunes/typed", json={"text": MARCH}).json()
        yield Desk(client, shelf, int(welcome["tunes"][0]["arrangement"]))
    shelf.close()
    patch.undo()


@pytest.fixture(scope="module")
def ornamented(workspace: Desk) -> str:
    """A take of all that was asked, 18 cents sharp."""
    id, job = workspace.heard(wave_of(workspace.arrangement, cents=SHARP_CENTS))
    assert (job["state"], job["problem"], job["result"]) == ("done", "", {"take": id})
    return id


# What was heard


def test_the_ornaments_that_were_played_are_told(workspace: Desk, ornamented: str) -> None:
    take = workspace.take(ornamented)
    facts, report = take["facts"], take["report"]
    assert facts["asked"] == len(workspace.arrangement.rendition.figures) >= 4
    assert facts["done"] >= 0.8 * facts["asked"]
    assert facts["right"] == facts["notes"] == len(workspace.arrangement.tune.notes)
    assert report["tuning_cents"] == pytest.approx(SHARP_CENTS, abs=4)
    assert report["timing"]["tempo"] == pytest.approx(96, rel=0.03)
    assert 1 <= len(report["advice"]) <= 3
    assert "pitch" in {one["subject"] for one in report["advice"]}
    assert "tuning" in {one["kind"] for one in report["happenings"]}
    assert report["praise"]
    assert not take["is_kept"]
    asked = sorted(row["technique"] for row in report["figures"] if row["status"] != "added")
    assert asked == sorted(figure.technique for figure in workspace.arrangement.rendition.figures)


def test_a_kept_report_is_told_in_the_readers_language(workspace: Desk, ornamented: str) -> None:
    """What was heard for an English reader holds no English for another."""
    app = create_app(workspace.shelf, hosts_of(8421), Sounds(SineSynth()), language="pseudo")
    with TestClient(app, base_url=BASE) as reader:
        report = reader.get(f"/api/takes/{ornamented}").json()["report"]
    assert report["praise"] != workspace.take(ornamented)["report"]["praise"]
    assert plain_words(" ".join(told_in(report))) == set()


def test_the_trace_lies_on_the_printed_notes(workspace: Desk, ornamented: str) -> None:
    line = workspace.client.get(f"/api/takes/{ornamented}/line", params={"width": 160, "staff": 7}).json()
    ids = {
        element.get("id", "")
        for system in line["systems"]
        for element in etree.fromstring(system["svg"].encode()).iter()
    }
    assert {note["element"] for note in line["notes"]} <= ids
    assert sum(system["bars"] for system in line["systems"]) == len(line["bar_numbers"]) == len(line["ends_ticks"])
    right = [note for note in line["trace"] if note["kind"] == "right"]
    assert len(right) >= 0.5 * len(workspace.arrangement.tune.notes)
    for note in right:
        printed = min(line["notes"], key=lambda other: abs(other["onset_ticks"] - note["start_ticks"]))
        assert abs(printed["onset_ticks"] - note["start_ticks"]) < QUARTER / 3
        assert printed["step"] == note["step"]
        assert abs(median(note["contour"])) < 8
    figures = workspace.take(ornamented)["report"]["figures"]
    assert {f"s1-l{number}" for number in range(len(figures))} <= ids


def test_lateness_against_the_band_is_told(workspace: Desk) -> None:
    """Plain notes 45 ms after those of the band, in a recording that begins half a second into its count-in."""
    hearing = workspace.client.get(f"/api/arrangements/{workspace.id}/hearing", params={"tempo": 104}).json()
    tune, offset = workspace.arrangement.tune, 0.5
    truth = []
    for note in tune.notes:
        # The beat of the band, not the performed line: that one lies back already where the tune swings.
        written = tune.bar_at(note.onset_ticks)
        bar = hearing["bars"][tune.bars.index(written)]
        share = (note.onset_ticks - written.start_ticks) / written.duration_ticks
        start = bar["start"] + share * (bar["end"] - bar["start"]) + LATE_SEC - offset
        truth.append(sound.Truth(start, start + 0.3, note.pitch.midi))
    wave = sound.render(truth, sound.TIMBRES["saxophone"], np.random.default_rng(2))
    id, job = workspace.heard(wave, line="plain", tempo=104, offset=offset)
    assert job["state"] == "done", job["problem"]
    take = workspace.take(id)
    assert take["facts"]["is_with_band"]
    assert take["report"]["timing"]["behind_band_ms"] == pytest.approx(1000 * LATE_SEC, abs=12)
    assert take["report"]["timing"]["tempo"] == pytest.approx(104, rel=0.03)
    assert workspace.take(id)["facts"]["asked"] == 0


def test_an_unclear_recording_and_another_tune_are_said_plainly_and_deleted(workspace: Desk) -> None:
    rng = np.random.default_rng(3)
    before = workspace.files
    for wave, fields, words in (
        (np.zeros(4 * sound.RATE), {}, "Hardly anything is to be heard"),
        (0.2 * rng.normal(0, 1, 4 * sound.RATE).clip(-2, 2), {}, "noise"),
        (
            wave_of(workspace.arrangement, is_plain=True),
            {"arrangement": DEMO},
            "does not sound like Lanterns on the Quay",
        ),
    ):
        id, job = workspace.heard(wave, **fields)
        assert job["state"] == "failed"
        assert words in job["problem"]
        assert workspace.client.get(f"/api/takes/{id}").status_code == 404
    assert workspace.files == before


# What is let in


@pytest.mark.parametrize(
    ("data", "fields", "status", "words"),
    [
        (b"no sound", {}, 422, "no recording that can be read"),
        (b"\x1aE\xdf\xa3" + b"webm" * 500, {}, 422, "WAV, FLAC, MP3 or OGG"),
        (b"", {}, 422, ""),
        (None, {"arrangement": 999}, 404, "no arrangement 999"),
        (None, {"student": 999}, 404, "no student 999"),
        (None, {"line": "other"}, 422, "line"),
        (None, {"tempo": "nan"}, 422, "tempo"),
        (None, {"tempo": 801}, 422, "tempo"),
        (None, {"offset": -61}, 422, "offset"),
        (None, {"offset": 0, "feel": "gavotte"}, 422, "gavotte"),
        (None, {"arrangement": "1; DROP TABLE takes"}, 422, "arrangement"),
    ],
)
def test_what_is_wrong_is_refused_and_leaves_nothing(
    workspace: Desk, data: bytes | None, fields: dict[str, object], status: int, words: str
) -> None:
    before = workspace.files
    answer = workspace.sent(wav(np.zeros(2 * sound.RATE)) if data is None else data, **fields)
    assert answer.status_code == status, answer.text
    assert words in answer.json()["problem"]
    assert workspace.files == before


def test_a_recording_that_is_too_long_or_too_large_is_refused(workspace: Desk) -> None:
    file = io.BytesIO()
    soundfile.write(file, np.zeros(605 * 8000, np.int16), 8000, format="FLAC")
    answer = workspace.sent(file.getvalue())
    assert (answer.status_code, "longer than 10 minutes" in answer.json()["problem"]) == (422, True)
    claimed = {"Content-Length": str(80 * 1024 * 1024), "Content-Type": "multipart/form-data; boundary=x"}
    assert workspace.client.post("/api/takes", content=b"", headers=claimed).status_code == 413


def test_a_file_name_is_never_used(workspace: Desk, ornamented: str) -> None:
    assert f"{ornamented}.flac" in workspace.files
    assert all(len(Path(name).stem) == 16 and int(Path(name).stem, 16) >= 0 for name in workspace.files)
    for path in ("../shelf", "..%2Fshelf.db", "0" * 15, "G" * 16):
        assert workspace.client.get(f"/api/takes/{path}/sound").status_code in (404, 422)


# The shelf


def test_a_take_is_kept_given_to_another_and_discarded(workspace: Desk) -> None:
    ada = workspace.client.post("/api/students", json={"name": "Ada"}).json()["id"]
    bo = workspace.client.post("/api/students", json={"name": " Bo  B. "}).json()
    assert bo["name"] == "Bo B."
    id, job = workspace.heard(wave_of(workspace.arrangement, is_plain=True), line="plain", student=ada)
    assert job["state"] == "done", job["problem"]
    assert workspace.take(id)["student"] == "Ada"
    assert next(s for s in workspace.client.get("/api/students").json() if s["id"] == ada)["takes"] == 0
    assert workspace.client.put(f"/api/takes/{id}", json={"student": ada}).json()["is_kept"]
    assert next(s for s in workspace.client.get("/api/students").json() if s["id"] == ada)["takes"] == 1
    moved = workspace.client.put(f"/api/takes/{id}", json={"student": bo["id"]}).json()
    assert moved["student"] == "Bo B."
    assert [take["id"] for take in workspace.client.get("/api/takes", params={"student": bo["id"]}).json()] == [id]
    assert workspace.client.put(f"/api/takes/{id}", json={"student": 999}).status_code == 404
    assert workspace.client.delete(f"/api/takes/{id}").status_code == 204
    assert workspace.client.get(f"/api/takes/{id}").status_code == 404
    assert f"{id}.flac" not in workspace.files


def test_listening_is_given_up_and_the_recording_deleted(workspace: Desk) -> None:
    started = workspace.sent(wave_of(workspace.arrangement)).json()
    assert f"{started['take']}.flac" in workspace.files
    workspace.client.delete(f"/api/jobs/{started['job']['id']}")
    assert workspace.client.delete(f"/api/takes/{started['take']}").status_code == 204
    assert f"{started['take']}.flac" not in workspace.files
    assert workspace.client.get(f"/api/takes/{started['take']}").status_code == 404


def test_students_are_named_once_renamed_and_removed(workspace: Desk) -> None:
    one = workspace.client.post("/api/students", json={"name": "Cleo"})
    assert one.status_code == 201
    id = one.json()["id"]
    assert "already" in workspace.client.post("/api/students", json={"name": "CLEO"}).json()["problem"]
    assert workspace.client.post("/api/students", json={"name": "  "}).status_code == 422
    hostile = '<img src=x onerror="alert(1)">'
    assert workspace.client.patch(f"/api/students/{id}", json={"name": hostile}).json()["name"] == hostile
    page = workspace.client.get(f"/students/{id}").text
    assert hostile not in page
    assert "&lt;img" in page
    assert workspace.client.delete(f"/api/students/{id}").status_code == 204
    assert workspace.client.get(f"/students/{id}").status_code == 404
    assert workspace.client.patch(f"/api/students/{id}", json={"name": "x"}).status_code == 404


def test_the_recording_can_be_heard_again_from_any_place(workspace: Desk, ornamented: str) -> None:
    answer = workspace.client.get(f"/api/takes/{ornamented}/sound")
    assert answer.headers["content-type"] == "audio/flac"
    heard, rate = soundfile.read(io.BytesIO(answer.content), dtype="int16")
    sent, _ = soundfile.read(io.BytesIO(wav(wave_of(workspace.arrangement, cents=SHARP_CENTS))), dtype="int16")
    assert rate == sound.RATE
    assert np.array_equal(heard, sent)
    part = workspace.client.get(f"/api/takes/{ornamented}/sound", headers={"Range": "bytes=100-199"})
    assert (part.status_code, part.content) == (206, answer.content[100:200])


def test_a_take_comes_out_and_in_again_with_its_student(workspace: Desk, ornamented: str) -> None:
    student = workspace.client.post("/api/students", json={"name": "Dora"}).json()["id"]
    workspace.client.put(f"/api/takes/{ornamented}", json={"student": student})
    exported = workspace.client.get("/api/export").content
    before = {take["id"] for take in workspace.client.get("/api/takes").json()}
    again = {"doubles": "copy"}
    answer = workspace.client.post("/api/restore", data=again, files={"archive": ("x.zip", exported)})
    assert answer.status_code == 200
    (added,) = [
        t for t in workspace.client.get("/api/takes", params={"student": student}).json() if t["id"] not in before
    ]
    again, first = workspace.take(added["id"]), workspace.take(ornamented)
    assert again["report"] == first["report"]
    assert again["facts"] == first["facts"]
    assert again["tune_id"] != first["tune_id"]
    assert workspace.client.get(f"/api/takes/{added['id']}/line").status_code == 200


def change_facts(tune: dict[str, Any], take: dict[str, Any]) -> None:
    take["facts"]["done"] = "many"


def change_student(tune: dict[str, Any], take: dict[str, Any]) -> None:
    take["student"] = ["Dora"]


def change_day(tune: dict[str, Any], take: dict[str, Any]) -> None:
    take["taken_at"] = "tomorrow"


def change_bars(tune: dict[str, Any], take: dict[str, Any]) -> None:
    tune["facts"]["bars"] = "many"


def change_reading(tune: dict[str, Any], take: dict[str, Any]) -> None:
    tune["reading"]["place"] = "third"


def change_plan(tune: dict[str, Any], take: dict[str, Any]) -> None:
    tune["lessons"] = [{"of": 0, "title": "On Turns", "plan": {"sections": ["handout"], "phrases": "all"}}]


def change_nothing(tune: dict[str, Any], take: dict[str, Any]) -> None:
    pass


@pytest.mark.parametrize(
    "change",
    [change_nothing, change_facts, change_student, change_day, change_bars, change_reading, change_plan],
)
def test_what_could_not_be_shown_is_not_restored(
    workspace: Desk, ornamented: str, change: Callable[[dict[str, Any], dict[str, Any]], None]
) -> None:
    """The report of a take, or what the table says of takes, tunes and lessons."""
    workspace.client.put(f"/api/takes/{ornamented}", json={"student": None})
    exported = workspace.client.get("/api/export").content
    manifest = json.loads(zipfile.ZipFile(io.BytesIO(exported)).read("shelf.json"))
    tune = next(tune for tune in manifest["tunes"] if tune["takes"])
    change(tune, tune["takes"][0])
    damaged = {tune["takes"][0]["report"]: b'{"praise": 5}'} if change is change_nothing else {}
    data = rewritten(exported, manifest, damaged)
    before = [workspace.client.get(f"/api/{kind}").json() for kind in ("tunes", "takes", "lessons")]
    answer = workspace.client.post("/api/restore", files={"archive": ("x.zip", data)})
    assert answer.status_code == 422
    assert "damaged" in answer.json()["problem"]
    assert [workspace.client.get(f"/api/{kind}").json() for kind in ("tunes", "takes", "lessons")] == before


def test_the_report_is_printed(workspace: Desk, ornamented: str) -> None:
    answer = workspace.client.post(f"/api/takes/{ornamented}/print")
    assert answer.status_code == 202
    job = workspace.over(answer.json()["id"])
    assert job["state"] == "done", job["problem"]
    assert workspace.client.get(job["file"]).content.startswith(b"%PDF")


def test_takes_go_with_their_tune(workspace: Desk) -> None:
    id = int(workspace.client.post("/api/tunes/typed", json={"text": MARCH}).json()["tunes"][0]["id"])
    arrangement = workspace.shelf.tune(id).versions[0].id
    take, job = workspace.heard(wave_of(workspace.arrangement, is_plain=True), line="plain", arrangement=arrangement)
    assert job["state"] == "done", job["problem"]
    assert workspace.client.delete(f"/api/tunes/{id}").status_code == 204
    assert workspace.client.get(f"/api/takes/{take}").status_code == 404
    assert f"{take}.flac" not in workspace.files


def test_a_recording_that_somebody_has_deleted_is_missed_plainly(workspace: Desk) -> None:
    id, _ = workspace.heard(wave_of(workspace.arrangement, is_plain=True), line="plain")
    workspace.client.put(f"/api/takes/{id}", json={"student": None})
    (workspace.shelf.takes.recordings.folder / f"{id}.flac").unlink()
    for answer in (workspace.client.get(f"/api/takes/{id}/sound"), workspace.client.post(f"/api/takes/{id}/print")):
        assert answer.status_code == 404
        assert "no longer in" in answer.json()["problem"]
    assert workspace.client.get(f"/api/takes/{id}").status_code == 200
    names = zipfile.ZipFile(io.BytesIO(workspace.client.get("/api/export").content)).namelist()
    assert not [name for name in names if id in name]
    assert workspace.client.delete(f"/api/takes/{id}").status_code == 204


# Pages and document


def test_the_pages_answer(workspace: Desk, ornamented: str) -> None:
    assert (
        workspace.client.get("/take", params={"student": 1}, follow_redirects=False)
        .headers["location"]
        .endswith("?student=1")
    )
    for path in (f"/take/{workspace.id}", f"/takes/{ornamented}", "/students", "/students/0"):
        answer = workspace.client.get(path)
        assert answer.status_code == 200
        assert "microphone=(self)" in answer.headers["permissions-policy"]
    assert workspace.client.get("/takes/0123456789abcdef").status_code == 404
    assert workspace.client.get("/take/999").status_code == 404


def test_everything_is_in_the_openapi_document(workspace: Desk) -> None:
    document = workspace.client.get("/api/openapi.json").json()
    paths = {path: set(methods) for path, methods in document["paths"].items()}
    assert {"get", "post"} == paths["/api/students"] == paths["/api/takes"]
    assert {"get", "put", "delete"} == paths["/api/takes/{id}"]
    assert {"patch", "delete"} == paths["/api/students/{id}"]
    assert {
        "/api/takes/{id}/line",
        "/api/takes/{id}/sound",
        "/api/takes/{id}/print",
        "/api/arrangements/{id}/line",
    } <= set(paths)
    for path, methods in document["paths"].items():
        if "take" in path or "student" in path:
            assert all(method["description"] for method in methods.values())
