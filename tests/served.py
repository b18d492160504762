"""The page's server in a thread of the tests, and its client without a network."""

from __future__ import annotations

import socket
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
import uvicorn
from starlette.testclient import TestClient

from fioritura.shelf.store import Shelf
from fioritura.web.app import create_app
from fioritura.web.guard import hosts_of
from fioritura.web.hearing import Sounds
from fioritura.web.patience import PatientProtocol
from tests.sound_fakes import SineSynth

__all__ = ["BASE", "cached_in", "client_of", "served"]

BASE = "http://127.0.0.1:8420"


@contextmanager
def cached_in(folder: Path) -> Iterator[None]:
    """Sounds are cached in a folder of the test's own."""
    patch = pytest.MonkeyPatch()
    patch.setenv("XDG_CACHE_HOME", str(folder))
    yield
    patch.undo()


@contextmanager
def client_of(folder: Path) -> Iterator[TestClient]:
    """A client of a page whose shelf and cache lie in a folder."""
    with cached_in(folder / "cache"):
        shelf = Shelf(folder / "data")
        with TestClient(create_app(shelf, hosts_of(8420), Sounds(SineSynth())), base_url=BASE) as client:
            yield client
        shelf.close()


@contextmanager
def served(shelf: Shelf, listener: socket.socket, *, is_open: bool = False, **parts: Any) -> Iterator[str]:
    """The address of a page that is served while the block lasts."""
    host, port = listener.getsockname()[:2]
    app = create_app(shelf, hosts_of(port, is_open=is_open), Sounds(SineSynth()), **parts)
    server = uvicorn.Server(uvicorn.Config(app, http=PatientProtocol, log_level="warning"))
    thread = threading.Thread(target=server.run, args=([listener],), daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.02)
    yield f"http://{host}:{port}"
    server.should_exit = True
    thread.join(10)
