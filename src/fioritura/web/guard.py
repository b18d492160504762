"""The guard at the entrance: who may ask, how much may be sent, and what a browser may do with the answer.

Even where the server listens on loopback only, any web page that is open in the same browser can send requests there, and
can give its own name loopback's address. So requests must name one of our hosts; those that change something, or ask for
data, must not come from another site's page; and bodies are bounded in size and time. A server that others can reach has
a token, too (`fioritura.web.token_check`).
"""

from __future__ import annotations

import asyncio
import json
import socket
from collections.abc import Container
from ipaddress import ip_address
from typing import Final

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import RedirectResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from fioritura.shelf.recordings import MOST_BYTES as MOST_RECORDING_BYTES
from fioritura.web.languages import Reader, reader_in
from fioritura.web.token_check import ENTRANCE, TokenCheck
from fioritura.words import Message as Said
from fioritura.words import message, say, speaking

__all__ = ["MOST_BYTES", "SECURITY_HEADERS", "Guard", "Hosts", "hosts_of"]

MOST_BYTES: Final = 16 * 1024 * 1024
"""The largest body of a request, but for those of `_LIMITS`: archives and recordings."""

_LIMITS: Final = {
    "/api/restore": 2 * 1024 * 1024 * 1024,
    "/api/takes": MOST_RECORDING_BYTES + 64 * 1024,
}

MOST_SEC: Final = 120.0
"""How long a body may take to come in."""

_SAFE: Final = frozenset({"GET", "HEAD"})
_POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; "
    "media-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
SECURITY_HEADERS: Final = {
    "Content-Security-Policy": _POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(self)",
}


class Hosts:
    """The names under which a server may be asked for: those of loopback, and with `is_open` this machine's own and
    any address in digits, as a name that leads elsewhere can be made to lead here but a number can't."""

    def __init__(self, port: int, *, is_open: bool = False) -> None:
        self.port, self.is_open = port, is_open
        own = socket.gethostname().lower()
        self._names = {"127.0.0.1", "localhost", "[::1]"} | ({own, f"{own}.local"} if is_open else set())

    def __contains__(self, host: object) -> bool:
        """True for a Host header that names this server."""
        name, colon, port = str(host).lower().rpartition(":")
        if not colon or port.endswith("]"):
            name, port = str(host).lower(), "80"
        if port != str(self.port):
            return False
        return name in self._names or (self.is_open and _is_address(name))


def hosts_of(port: int, *, is_open: bool = False) -> Hosts:
    """The names under which a server on a port may be asked for."""
    return Hosts(port, is_open=is_open)


def _is_address(name: str) -> bool:
    try:
        ip_address(name.removeprefix("[").removesuffix("]"))
    except ValueError:
        return False
    return True


class Guard:
    """ASGI middleware: refuses what should not come in, puts the security headers on what goes out, and speaks the
    language of the reader."""

    def __init__(
        self,
        app: ASGIApp,
        hosts: Container[str],
        check: TokenCheck | None = None,
        reader: Reader | None = None,
    ) -> None:
        self.app, self.hosts, self.check, self.reader = app, hosts, check, reader or reader_in(None)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Serve a request."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        with speaking(self.reader(headers)):
            await self._serve(scope, headers, receive, send)

    async def _serve(self, scope: Scope, headers: Headers, receive: Receive, send: Send) -> None:
        limit = _LIMITS.get(scope["path"], MOST_BYTES)
        refusal = self._refusal(scope["method"], scope["path"], headers, limit)
        outgoing = _with_headers(send)
        if refusal:
            await _refuse(outgoing, *refusal)
            return
        if self.check and not self.check.lets_in(scope["path"], headers):
            await self.check.slow_down(headers)
            if scope["method"] in _SAFE and not scope["path"].startswith("/api/"):
                await RedirectResponse(ENTRANCE, 303)(scope, receive, outgoing)
            else:
                await _refuse(outgoing, 401, message("token-first", address=ENTRANCE))
            return
        await self.app(scope, _bounded(receive, limit), outgoing)

    def _refusal(self, method: str, path: str, headers: Headers, limit: int) -> tuple[int, Said] | None:
        """Why a request is refused, if it is."""
        host = headers.get("host", "")
        if host not in self.hosts:
            return 421, message("other-host")
        site = headers.get("sec-fetch-site", "none")
        is_page = headers.get("sec-fetch-mode") == "navigate" and method in _SAFE and not path.startswith("/api/")
        if site not in ("same-origin", "none") and not is_page:
            return 403, message("other-site")
        origin = headers.get("origin")
        if origin is not None and origin.lower() != f"http://{host.lower()}":
            return 403, message("other-site")
        length = headers.get("content-length", "0")
        if not (length.isascii() and length.isdecimal()) or int(length[:20]) > limit:
            return 413, message("request-too-large", size=length[:20], limit=limit)
        return None


def _bounded(receive: Receive, limit: int) -> Receive:
    """The body of a request, cut off where it passes the limit, whatever it says of itself, or takes too long."""
    taken, is_whole = 0, False
    last = asyncio.get_running_loop().time() + MOST_SEC

    async def bounded() -> Message:
        nonlocal taken, is_whole
        if is_whole:
            return await receive()
        try:
            async with asyncio.timeout_at(last):
                message = await receive()
        except TimeoutError:
            return {"type": "http.disconnect"}
        taken += len(message.get("body", b""))
        is_whole = not message.get("more_body", False)
        return {"type": "http.disconnect"} if taken > limit else message

    return bounded


def _with_headers(send: Send) -> Send:
    async def outgoing(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in SECURITY_HEADERS.items():
                headers[name] = value
            if "cache-control" not in headers:
                headers["Cache-Control"] = "no-store"
        await send(message)

    return outgoing


async def _refuse(send: Send, status: int, problem: Said) -> None:
    body = json.dumps({"problem": say(problem)}).encode()
    headers = [(b"content-type", b"application/json"), (b"content-length", str(len(body)).encode())]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body})
