"""The API against its own OpenAPI document: whatever fits the document, or nearly, no answer is a server error.

The requests are drawn by schemathesis, which is kept apart from this project; each is answered by the whole application.
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis.errors import Unsatisfiable
from hypothesis.strategies import SearchStrategy
from starlette.testclient import TestClient
from starlette.types import Receive, Scope, Send

from fioritura.shelf.store import Shelf
from fioritura.web.app import create_app
from fioritura.web.guard import Guard, hosts_of
from fioritura.web.hearing import Sounds
from tests.sound_fakes import SineSynth

schemathesis = pytest.importorskip("schemathesis", reason="pip install schemathesis")

BASE = "http://127.0.0.1:8420"
WALTZ = 'X:1\nT:Small Waltz\nM:3/4\nL:1/4\nK:D\n"D"D F A|"G"B2 A|"A7"G2 E|"D"F3|]\n'
FEW, MANY = 12, 150
"""Requests for each operation, always and in long runs."""


@pytest.fixture(scope="module")
def app() -> Iterator[Guard]:
    patch = pytest.MonkeyPatch()
    with tempfile.TemporaryDirectory(prefix="fioritura-") as folder:
        patch.setenv("XDG_CACHE_HOME", str(Path(folder, "cache")))
        shelf = Shelf(Path(folder))
        guard = create_app(shelf, hosts_of(8420), Sounds(SineSynth()))
        with TestClient(guard, base_url=BASE) as client:
            assert client.post("/api/tunes/typed", json={"text": WALTZ}).json()["tunes"]
            plan = {"sections": ["handout"]}
            assert client.post("/api/lessons", json={"arrangement": 2, "plan": plan}).status_code == 201
            yield guard
        shelf.close()
    patch.undo()


KNOWN = {"/api/arrangements/{id}": 2, "/api/lessons/{id}": 1, "/api/tunes/{id}": 1}
"""Numbers that are on the shelf."""


class StaysOpen:
    """The application without its beginning and end, which the drawer of requests would call for each of them."""

    def __init__(self, app: Guard) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "lifespan":
            await self.app(scope, receive, send)
            return
        while (message := await receive())["type"] == "lifespan.startup":
            await send({"type": "lifespan.startup.complete"})
        assert message["type"] == "lifespan.shutdown"
        await send({"type": "lifespan.shutdown.complete"})


def strategies(operation: Any) -> Iterator[SearchStrategy[Any]]:
    """Requests that fit an operation, those of them that are about what there is, and requests that do not fit."""
    yield operation.as_strategy(generation_mode=schemathesis.GenerationMode.POSITIVE)
    yield operation.as_strategy(generation_mode=schemathesis.GenerationMode.NEGATIVE)
    for path, number in KNOWN.items():
        if operation.path.startswith(path):
            yield operation.as_strategy(path_parameters={"id": number})


def ask(operation: Any, strategy: SearchStrategy[Any], examples: int, *, is_derandomized: bool) -> set[int]:
    """The statuses of the answers to some requests."""
    statuses: set[int] = set()

    @settings(
        max_examples=examples,
        derandomize=is_derandomized,
        deadline=None,
        database=None,
        suppress_health_check=list(HealthCheck),
    )
    @given(case=strategy)
    def answered(case: Any) -> None:
        answer = case.call(base_url=BASE)
        statuses.add(answer.status_code)
        assert answer.status_code < 500, f"{operation.label}: {answer.text}"

    with suppress(Unsatisfiable):
        answered()
    return statuses


def ask_everything(app: Guard, examples: int, *, is_derandomized: bool) -> dict[str, set[int]]:
    """All operations, removing last, and the statuses of their answers."""
    document = TestClient(StaysOpen(app), base_url=BASE).get("/api/openapi.json").json()
    schema = schemathesis.openapi.from_dict(document)
    schema.app = StaysOpen(app)
    operations = [result.ok() for result in schema.get_all_operations()]
    operations.sort(key=lambda operation: operation.method == "delete")
    return {
        operation.label: set().union(
            *(ask(operation, each, examples, is_derandomized=is_derandomized) for each in strategies(operation))
        )
        for operation in operations
    }


def assert_all_were_asked(statuses: dict[str, set[int]]) -> None:
    assert len(statuses) >= 30
    assert 202 in statuses["POST /api/lessons/{id}/pack"] | statuses["POST /api/tunes/import"]
    reached = [label for label, found in statuses.items() if found & {200, 201, 202, 204}]
    assert len(reached) >= len(statuses) // 3, statuses


def test_nothing_that_is_asked_breaks_the_server(app: Guard) -> None:
    assert_all_were_asked(ask_everything(app, FEW, is_derandomized=True))


@pytest.mark.slow
def test_nothing_that_is_asked_many_times_breaks_the_server(app: Guard) -> None:
    assert_all_were_asked(ask_everything(app, MANY, is_derandomized=False))
