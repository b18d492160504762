"""Requests to the page's API: those that its own page would send, and others drawn from its own document.

A request is bytes: ``POST /api/tunes/typed``, a line with the type of the body (or none), and the body. It is answered by the
whole application over a shelf of its own, which is laid out anew from time to time.
"""

from __future__ import annotations

import asyncio
import io
import json
import random
import re
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Final
from urllib.parse import quote, unquote_to_bytes

import soundfile

from fioritura.arrange.arrangement_file import arrangement_from_json
from fioritura.errors import FiorituraError
from fioritura.shelf.archive import Checks, restore
from fioritura.shelf.store import Shelf
from fioritura.techniques.grace import LOWER_GRACE_STEP
from fioritura.techniques.run import RUN_SCALE
from fioritura.techniques.turn import TURN
from fioritura.web.app import create_app
from fioritura.web.guard import Guard, hosts_of
from fioritura.web.hearing import Sounds
from fioritura.web.intake import check_tune
from fioritura.web.lesson_views import check_plan
from fioritura.web.take_views import check_take
from tests.listening_takes import RATE
from tests.served import cached_in
from tests.sound_fakes import SineSynth
from tests.take_sound import wave_of

__all__ = ["ODD", "answered", "archives", "drawn", "page_requests", "restored"]

Upload = tuple[str, bytes]
"""A file's name and what is in it."""

HOST: Final = "127.0.0.1:8420"
MOST_ANSWERS: Final = 400
"""After so many answers a new shelf is laid out: thousands of tunes and students would only slow it down."""

BOUNDARY: Final = "between-the-parts"
WALTZ: Final = 'X:1\nT:Small Waltz\nM:3/4\nL:1/4\nK:D\n"D"D F A|"G"B2 A|"A7"G2 E|"D"F3|]\n'
LEFT_OUT: Final = "POST /api/lessons/{id}/pack"
"""Makes all the sounds of a lesson, for half a minute; tests/test_web_schema.py asks for it."""

ODD: Final[tuple[object, ...]] = (
    *(None, True, -1, 0, 10**30, -(2**63), 1e308, 1e-308, "", "0", "NaN", "é\u202e𝄞", "\x00", "../../etc/hostname"),
    *("a" * 5000, [], {}, [[]], [None], {"step": 1}, "<script>", "' or 1=1 --", "%00", 2**53, 0.5),
)
WORDS: Final = {
    "player": ("alto-sax", "flute", "concert", "trumpet"),
    "players": ("tenor-sax", "clarinet"),
    "tag": ("demo", "slow"),
    "sections": ("handout", "parts", "sound", "exercises", "levels", "page"),
    "language": ("en", "de", "fr"),
    "feel": ("", "swing", "straight", "bossa", "waltz"),
    "search": ("waltz", "lantern"),
    "techniques": (TURN.id, LOWER_GRACE_STEP.id, RUN_SCALE.id),
    "words": ("title", "notes", "rights"),
}
"""Words that fields of a name ask for."""

NAMES: Final = (
    "tune.abc",
    "tune.musicxml",
    "tune.mxl",
    "tune.mid",
    "take.wav",
    "shelf.zip",
    "",
    "..",
    "../../up.abc",
    "a\x00b",
)


class RefusedError(FiorituraError):
    """The application said no, and why."""


class Served:
    """The application over a small shelf, without a network; its loop of events belongs to this object."""

    def __init__(self) -> None:
        self._closing = ExitStack()
        folder = Path(self._closing.enter_context(TemporaryDirectory(prefix="fioritura-")))
        with cached_in(folder / "cache"):
            self.shelf = Shelf(folder / "data")
            self.app = create_app(self.shelf, hosts_of(8420), Sounds(SineSynth()))
        self.answers = 0
        self.loop = asyncio.new_event_loop()
        plan = {"sections": ["handout"]}
        for path, body in (
            ("/api/tunes/typed", {"text": WALTZ}),
            ("/api/lessons", {"arrangement": 2, "plan": plan}),
            ("/api/students", {"name": "Ada"}),
        ):
            status, answer = self.ask("POST", path, "application/json", json.dumps(body).encode())
            assert status in (200, 201), answer

    def close(self) -> None:
        """Stop all jobs, and take the shelf away."""
        inner = self.inner
        inner.state.jobs.close()
        inner.state.workspace.close()
        self.loop.run_until_complete(self.loop.shutdown_default_executor())
        self.loop.close()
        self.shelf.close()
        self._closing.close()

    @property
    def inner(self) -> Any:
        """The application inside its guard."""
        return self.app.app

    def ask(self, method: str, target: str, kind: str, body: bytes) -> tuple[int, bytes]:
        """The status and the body of the answer."""
        self.answers += 1
        return self.loop.run_until_complete(_exchange(self.app, method, target, kind, body))


async def _exchange(app: Guard, method: str, target: str, kind: str, body: bytes) -> tuple[int, bytes]:
    path, _, query = target.partition("?")
    headers = [(b"host", HOST.encode()), (b"content-length", str(len(body)).encode())]
    if kind:
        headers.append((b"content-type", kind.encode("latin-1")))
    scope = {
        "type": "http",
        "asgi": {"version": "3.0"},
        "http_version": "1.1",
        "method": method,
        "scheme": "http",
        "path": unquote_to_bytes(path).decode("utf-8", "replace"),
        "raw_path": path.encode(),
        "query_string": query.encode(),
        "root_path": "",
        "headers": headers,
        "client": ("127.0.0.1", 50000),
        "server": ("127.0.0.1", 8420),
    }
    coming = iter(({"type": "http.request", "body": body, "more_body": False},))
    status, parts = 0, list[bytes]()

    async def receive() -> Any:
        for message in coming:
            return message
        await asyncio.sleep(3600)

    async def send(message: Any) -> None:
        nonlocal status
        status = message.get("status", status)
        parts.append(message.get("body", b""))

    await app(scope, receive, send)
    return status, b"".join(parts)


_served: Served | None = None


def _app() -> Served:
    global _served
    if _served is not None and _served.answers >= MOST_ANSWERS:
        _served.close()
        _served = None
    if _served is None:
        _served = Served()
    return _served


def answered(data: bytes) -> object:
    """The answer to a request. A job that it started is waited for.

    Raises:
        RefusedError: the request was refused with a reason.
        AssertionError: the answer is a server's error, or a refusal without a reason.
    """
    head, _, rest = data.partition(b"\n")
    kind, _, body = rest.partition(b"\n")
    if not re.fullmatch(rb"[A-Z]+ [!-~]+", head):
        raise RefusedError("400: the server below the application takes no such request")
    method, _, target = head.decode().partition(" ")
    served = _app()
    status, answer = served.ask(method, target, kind.decode("latin-1"), body)
    assert 200 <= status < 500, f"{status} {answer[:200]!r}"
    if status >= 400:
        assert _problem(answer), f"{status} without a reason: {answer[:200]!r}"
        raise RefusedError(f"{status}: {_problem(answer)}")
    if status == 202:
        _finished(served, json.loads(answer))
    return status


def _problem(answer: bytes) -> str:
    try:
        return str(json.loads(answer)["problem"]).strip()
    except (ValueError, KeyError, TypeError):
        return "a page says it" if answer.startswith(b"<!doctype html>") else ""


def _finished(served: Served, started: dict[str, Any]) -> None:
    """Wait for a job; one that broke, and does not only say what was wrong with its input, is a fault."""
    job = served.inner.state.jobs.job(started.get("job", started)["id"])
    while not job.status.is_over:
        time.sleep(0.02)
    problem = str(job.status.problem or "")
    assert "The work failed" not in problem, problem
    assert "worker process" not in problem, problem


@cache
def _document() -> dict[str, Any]:
    found: dict[str, Any] = _app().inner.openapi()
    return found


@cache
def _operations() -> tuple[tuple[str, str, dict[str, Any]], ...]:
    found = [
        (method.upper(), path, operation)
        for path, methods in _document()["paths"].items()
        for method, operation in methods.items()
    ]
    return tuple(each for each in found if f"{each[0]} {each[1]}" != LEFT_OUT)


@cache
def _figures() -> tuple[str, ...]:
    """Names of figures of the demo tune, those that stand and others that could."""
    _, answer = _app().ask("GET", "/api/arrangements/1", "", b"")
    return tuple(figure["id"] for figure in json.loads(answer)["figures"])


@cache
def page_requests() -> tuple[bytes, ...]:
    """Requests that the page itself would send to the shelf as it is laid out."""
    first, other = _figures()[:2]
    setting = {"at": 0, "player": "tenor-sax", "level": 4, "idiom": "folk", "feel": "straight", "tempo": 96}
    plan = {"sections": ["handout", "exercises"], "techniques": [TURN.id], "level": 2, "players": ["flute"]}
    asked: list[tuple[str, object]] = [
        ("GET /api/arrangements/1?width=200&staff=7&seed=3", None),
        (f"GET /api/arrangements/1/alternatives?figure={first}&count=4", None),
        (f"GET /api/arrangements/1/figure-sound?figure={other}", None),
        ("GET /api/arrangements/2/hearing?tempo=90&feel=&seed=1", None),
        ("GET /api/arrangements/1/lesson-offer?level=3&language=en&width=180", None),
        ("GET /api/arrangements/2/line?which=plain", None),
        ("GET /api/tunes?search=waltz&tag=demo", None),
        ("GET /api/takes?student=1&tune=1", None),
        ("POST /api/arrangements/1/decisions?width=200", {"at": 0, "kind": "leave-out", "figure": first}),
        ("POST /api/arrangements/1/decisions", {"at": 0, "kind": "raise", "figure": first, "note": 0}),
        ("POST /api/arrangements/1/undo", {"at": 1}),
        ("PUT /api/arrangements/2/setting", setting),
        ("POST /api/arrangements/1/copy", {"name": "for the duet"}),
        ("POST /api/abc", {"text": WALTZ, "width": 160}),
        ("POST /api/tunes/typed", {"text": WALTZ, "player": "flute", "level": 5, "idiom": "folk"}),
        ("PATCH /api/tunes/2", {"title": "Waltz in D", "tags": ["slow", "three"]}),
        ("POST /api/lessons/preview", {"arrangement": 2, "plan": plan}),
        ("PUT /api/lessons/1", {"at": 0, "plan": plan}),
        ("PATCH /api/students/1", {"name": "Ben"}),
    ]
    return tuple(_request(line, body) for line, body in asked)


@cache
def archives() -> tuple[bytes, ...]:
    """What the shelf as it is laid out gives out as a file, with a take of the waltz."""
    served = Served()
    step = served.shelf.step(2)
    wave = io.BytesIO()
    soundfile.write(wave, wave_of(arrangement_from_json(step.text)), RATE, format="FLAC")
    fields = (("arrangement", b"2"), ("line", b"ornamented"), ("tempo", b"120"), ("student", b"1"))
    parts = b"".join(_part(f'name="{name}"', value) for name, value in fields)
    body = parts + _part('name="recording"; filename="take.flac"', wave.getvalue()) + f"--{BOUNDARY}--\r\n".encode()
    status, started = served.ask("POST", "/api/takes", f"multipart/form-data; boundary={BOUNDARY}", body)
    assert status == 202, started
    _finished(served, json.loads(started))
    take = json.loads(started)["take"]
    status, kept = served.ask("PUT", f"/api/takes/{take}", "application/json", b'{"student": 1}')
    assert status == 200, kept
    _, archive = served.ask("GET", "/api/export", "", b"")
    served.close()
    return (archive,)


def restored(data: bytes) -> object:
    """Put what an archive holds on the shelf, look at all of it, and take it off again."""
    served = _app()
    shelf = served.shelf
    before = {entry.id for entry in shelf.tunes()}
    added = restore(shelf, io.BytesIO(data), Checks(arrangement_from_json, check_take, check_plan, check_tune))
    for entry in shelf.tunes():
        if entry.id not in before:
            paths = [f"/api/arrangements/{version.id}" for version in entry.versions]
            paths += [f"/api/lessons/{lesson.id}" for lesson in shelf.lessons.lessons(tune_id=entry.id)]
            for take in shelf.takes.takes(tune_id=entry.id):
                paths += [f"/api/takes/{take.id}", f"/api/takes/{take.id}/line", f"/api/takes/{take.id}/sound"]
            for path in ("/api/tunes", "/api/takes", "/api/students", "/shelf", *paths):
                status, answer = served.ask("GET", path, "", b"")
                assert status == 200, f"{path}: {status} {answer[:200]!r}"
            shelf.remove_tune(entry.id)
    return added


def _request(line: str, body: object = None) -> bytes:
    if body is None:
        return f"{line}\n\n".encode()
    return f"{line}\napplication/json\n{json.dumps(body)}".encode()


def drawn(
    rng: random.Random, upload: Callable[[random.Random], Upload], text: Callable[[random.Random], bytes]
) -> bytes:
    """A request for an operation of the document, its values mostly of the kinds that it asks for; `upload` and `text` draw
    files and ABC."""
    if rng.random() < 0.4:
        return _nearly(rng, rng.choice(page_requests()))
    method, path, operation = rng.choice(_operations())
    if method == "DELETE" and rng.random() < 0.9:
        method, path, operation = rng.choice(_operations())
    draw = _Drawing(rng, text)
    query = list[str]()
    for parameter in operation.get("parameters", ()):
        value = draw.value(parameter["schema"], parameter["name"])
        shown = quote(value if isinstance(value, str) else json.dumps(value), safe="")
        if parameter["in"] == "path":
            path = path.replace(f"{{{parameter['name']}}}", shown)
        elif parameter.get("required") or rng.random() < 0.5:
            query.append(f"{parameter['name']}={shown}")
    line = f"{method} {path}" + ("?" + "&".join(query) if query else "")
    content = operation.get("requestBody", {}).get("content", {})
    if "multipart/form-data" in content:
        parts = b"".join(_parts(draw, content["multipart/form-data"]["schema"], upload))
        return f"{line}\nmultipart/form-data; boundary={BOUNDARY}\n".encode() + parts + f"--{BOUNDARY}--\r\n".encode()
    if content:
        return _request(line, draw.value(content["application/json"]["schema"], ""))
    return _request(line)


def _nearly(rng: random.Random, request: bytes) -> bytes:
    """A request of the page's as it is, or with one value of its body changed."""
    line, _, body = request.decode().partition("\napplication/json\n")
    if not body or rng.random() < 0.3:
        return request
    value = json.loads(body)
    key = rng.choice(tuple(value))
    value[key] = rng.choice((*ODD, *(0, 1, 2, 3, 4, "keep", "release", "flute", "straight")))
    return _request(line, value)


def _parts(draw: _Drawing, schema: dict[str, Any], upload: Callable[[random.Random], Upload]) -> Iterator[bytes]:
    for name, of in draw.resolved(schema)["properties"].items():
        if name in ("files", "recording", "archive"):
            for _ in range(draw.rng.choice((0, 1, 1, 1, 2))):
                suggested, data = upload(draw.rng)
                file = suggested if draw.rng.random() < 0.8 else draw.rng.choice(NAMES)
                yield _part(f'name="{name}"; filename="{file}"', data)
        elif draw.rng.random() < 0.8:
            value = draw.value(of, name)
            yield _part(f'name="{name}"', (value if isinstance(value, str) else json.dumps(value)).encode())


def _part(about: str, data: bytes) -> bytes:
    return f"--{BOUNDARY}\r\nContent-Disposition: form-data; {about}\r\n\r\n".encode() + data + b"\r\n"


class _Drawing:
    """Values for a schema of the document; one in twenty is of another kind."""

    def __init__(self, rng: random.Random, text: Callable[[random.Random], bytes]) -> None:
        self.rng, self.text = rng, text

    def resolved(self, schema: dict[str, Any]) -> dict[str, Any]:
        """The schema that is meant."""
        if "$ref" in schema:
            found: dict[str, Any] = _document()["components"]["schemas"][schema["$ref"].rpartition("/")[2]]
            return found
        return schema

    def value(self, schema: dict[str, Any], name: str) -> Any:
        """A value for a field or a parameter of a name."""
        if self.rng.random() < 0.05:
            return self.rng.choice(ODD)
        schema = self.resolved(schema)
        if "anyOf" in schema:
            return self.value(self.rng.choice(schema["anyOf"]), name)
        if "enum" in schema or "const" in schema:
            return self.rng.choice(schema.get("enum", (schema.get("const"),)))
        match schema.get("type"):
            case "object":
                return self._object(schema, name)
            case "array":
                return [self.value(schema["items"], name) for _ in range(self.rng.choice((0, 1, 1, 2, 5)))]
            case "integer" | "number" as kind:
                return self._number(schema, name, kind)
            case "boolean":
                return self.rng.random() < 0.5
            case "string":
                return self._string(schema, name)
        return None

    def _object(self, schema: dict[str, Any], name: str) -> dict[str, Any]:
        needed = schema.get("required", ())
        found = {
            key: self.value(of, key)
            for key, of in schema.get("properties", {}).items()
            if key in needed or self.rng.random() < 0.4
        }
        if isinstance(of := schema.get("additionalProperties"), dict):
            found |= {self._string({}, name): self.value(of, name) for _ in range(self.rng.randrange(3))}
        return found

    def _number(self, schema: dict[str, Any], name: str, kind: str) -> float:
        low, high = schema.get("minimum", 0), schema.get("maximum", 1000)
        if self.rng.random() < 0.1:
            return float(self.rng.choice((low, high, low - 1, high + 1)))
        if name in ("id", "arrangement", "student", "tune", "at", "note", "passage"):
            return self.rng.choice((0, 1, 1, 2, 2, 3))
        drawn = self.rng.uniform(low, min(high, low + 200))
        return round(drawn) if kind == "integer" else drawn

    def _string(self, schema: dict[str, Any], name: str) -> str:
        if name in ("figure", "other"):
            return self.rng.choice(_figures())
        if name == "text" and self.rng.random() < 0.9:
            return self.text(self.rng).decode("utf-8", "replace")
        if re.search("0-9a-f", schema.get("pattern", "")):
            return self.rng.randbytes(8).hex()
        return self.rng.choice(WORDS.get(name, (TURN.id, "label", "title", "x")))
