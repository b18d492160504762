"""A server that others can reach: nobody comes in without the token, and the command says what that means."""

from __future__ import annotations

import asyncio
import http.client
import os
import re
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient
from starlette.types import Message

from fioritura.cli import main
from fioritura.errors import OptionError
from fioritura.shelf.store import Shelf
from fioritura.web import guard as guard_module
from fioritura.web.app import create_app
from fioritura.web.guard import _bounded, hosts_of
from fioritura.web.patience import PatientProtocol
from fioritura.web.server import _listener
from fioritura.web.token_check import COOKIE, FREE_TRIES, TokenCheck, new_token
from tests.served import served

TOKEN = "abcd-efgh-jkmn-pqrs"
BASE = "http://192.168.1.20:8420"


@pytest.fixture
def client(tmp_path: Path) -> Iterator[TestClient]:
    shelf = Shelf(tmp_path)
    app = create_app(shelf, hosts_of(8420, is_open=True), check=TokenCheck(TOKEN))
    with TestClient(app, base_url=BASE, follow_redirects=False) as client:
        yield client
    shelf.close()


@pytest.mark.parametrize("path", ["/", "/stand/1", "/shelf", "/lesson", "/students"])
def test_pages_lead_to_the_entrance(client: TestClient, path: str) -> None:
    answer = client.get(path)
    assert (answer.status_code, answer.headers["location"]) == (303, "/enter")
    assert "Lanterns" not in answer.text


@pytest.mark.parametrize("path", ["/api/tunes", "/api/export", "/api/openapi.json", "/api/jobs"])
def test_data_is_not_given_out(client: TestClient, path: str) -> None:
    answer = client.get(path)
    assert answer.status_code == 401
    assert "token" in answer.json()["problem"]
    assert client.post(path).status_code == 401


def test_who_gives_the_token_comes_in_and_the_cookie_does_not_tell_it(client: TestClient) -> None:
    assert client.get("/enter").status_code == 200
    wrong = client.post("/enter", data={"token": "abcd-efgh-jkmn-pqrt"})
    assert wrong.status_code == 401
    assert "not the token" in wrong.text
    assert COOKIE not in client.cookies
    right = client.post("/enter", data={"token": f"  {TOKEN.upper()} "})
    assert (right.status_code, right.headers["location"]) == (303, "/")
    cookie = right.headers["set-cookie"]
    assert "HttpOnly" in cookie
    assert "SameSite=strict" in cookie
    assert TOKEN not in cookie
    assert client.get("/stand/1").status_code == 200
    assert client.get("/api/tunes").status_code == 200


@pytest.mark.parametrize("cookie", ["", "x", TOKEN, '"', "\x00", "é"])
def test_a_made_up_cookie_opens_nothing(client: TestClient, cookie: str) -> None:
    headers = {b"Cookie": f"{COOKIE}={cookie}".encode()}
    assert client.get("/api/tunes", headers=headers).status_code == 401


def test_a_program_may_send_the_token_with_each_request(client: TestClient) -> None:
    assert client.get("/api/tunes", headers={"Authorization": f"Bearer {TOKEN}"}).status_code == 200
    assert client.get("/api/tunes", headers={"Authorization": "Bearer nothing"}).status_code == 401


def test_after_a_few_wrong_tokens_each_further_try_waits_longer(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    waits: list[float] = []

    async def sleep(seconds: float) -> None:
        waits.append(seconds)

    monkeypatch.setattr(asyncio, "sleep", sleep)
    for number in range(FREE_TRIES + 6):
        if number % 2:
            client.post("/enter", data={"token": "abcd-efgh-jkmn-0000"})
        else:
            client.get("/api/tunes", headers={"Authorization": "Bearer nothing"})
    assert waits == [0.5, 1.0, 2.0, 4.0, 8.0, 8.0]
    assert client.post("/enter", data={"token": TOKEN}).status_code == 303
    waits.clear()
    client.cookies.clear()
    client.post("/enter", data={"token": "abcd-efgh-jkmn-0000"})
    assert waits == []


@pytest.mark.parametrize("sent", [b"", b"GET / HT", b"GET / HTTP/1.1\r\nHost: 127.0"])
def test_a_connection_that_brings_no_whole_request_is_closed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, sent: bytes
) -> None:
    monkeypatch.setattr(PatientProtocol, "patience_sec", 0.3)
    shelf = Shelf(tmp_path)
    with served(shelf, _listener(0)) as address:
        host, _, port = address.removeprefix("http://").partition(":")
        with socket.create_connection((host, int(port)), timeout=10) as line:
            line.sendall(sent)
            assert line.recv(100) == b""
        with socket.create_connection((host, int(port)), timeout=10) as line:
            for _ in range(2):
                for part in (b"GET /enter HTTP/1.1\r\n", f"Host: {host}:{port}\r\n\r\n".encode()):
                    line.sendall(part)
                    time.sleep(0.05)
                answer = http.client.HTTPResponse(line)
                answer.begin()
                assert (answer.status, bool(answer.read())) == (404, True)
    shelf.close()


def test_on_this_machine_too_a_token_is_asked_for_where_one_is_set(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    app = create_app(shelf, hosts_of(8420), check=TokenCheck(TOKEN))
    with TestClient(app, base_url="http://127.0.0.1:8420", follow_redirects=False) as client:
        assert client.get("/api/tunes").status_code == 401
        assert client.get("/").headers["location"] == "/enter"
    shelf.close()


def test_another_site_can_not_use_the_cookie(client: TestClient) -> None:
    client.post("/enter", data={"token": TOKEN})
    for origin in ("http://evil.example", "http://192.168.1.66:8420", "http://192.168.1.20"):
        answer = client.post("/api/tunes/typed", json={"text": ""}, headers={"Origin": origin})
        assert answer.status_code == 403


def test_names_that_can_be_made_to_lead_here_are_refused() -> None:
    open_to_all, closed = hosts_of(8420, is_open=True), hosts_of(8420)
    for host in ("192.168.1.20:8420", "[fe80::1]:8420", "10.0.0.1:8420"):
        assert host in open_to_all
        assert host not in closed
    for host in ("evil.example:8420", "192.168.1.20:80", "192.168.1.20", "1.2.3.4.evil.example:8420", ":8420", ""):
        assert host not in open_to_all
    assert "localhost" in hosts_of(80)
    assert "[::1]" in hosts_of(80)


def test_tokens_are_long_and_never_the_same() -> None:
    made = {new_token() for _ in range(200)}
    assert len(made) == 200
    assert all(re.fullmatch(r"([a-z2-9]{4}-){3}[a-z2-9]{4}", token) for token in made)
    with pytest.raises(OptionError, match="16 is the least"):
        TokenCheck("short")


def test_a_body_that_does_not_come_is_not_waited_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(guard_module, "MOST_SEC", 0.05)

    async def never() -> Message:
        await asyncio.sleep(60)
        return {"type": "http.request"}

    async def ask() -> Message:
        return await _bounded(never, 100)()

    assert asyncio.run(ask()) == {"type": "http.disconnect"}


@pytest.mark.skipif(sys.platform == "win32", reason="needs POSIX signals")
def test_the_command_says_what_listening_means(tmp_path: Path) -> None:
    command = [
        sys.executable,
        "-m",
        "fioritura",
        "serve",
        "--listen",
        "0.0.0.0",
        "--port",
        "0",
        "--data",
        str(tmp_path),
    ]
    environment = os.environ | {"XDG_CACHE_HOME": str(tmp_path), "FIORITURA_TOKEN": TOKEN}
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=environment) as process:
        assert process.stdout is not None
        lines = [process.stdout.readline() for _ in range(5)]
        process.terminate()
    said = "".join(lines)
    assert "Whoever can reach it and has the token" in said
    assert "encrypted" in said
    assert lines[-1] == f"Token: {TOKEN}\n"


@pytest.mark.parametrize("address", ["nowhere", "198.51.100.7"])
def test_an_address_that_is_not_ours_is_refused(
    address: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["serve", "--listen", address, "--port", "0", "--data", str(tmp_path)]) == 2
    assert address in capsys.readouterr().err
