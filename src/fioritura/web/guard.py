"""The guard at the door: who may ask, how much may be sent, and what a browser may do with the answer.

The server listens on loopback only, but any web page that is open in the same browser can send requests there, and can
give its own name loopback's address. So requests must name one of our hosts; those that change something, or ask for
data, must not come from another site's page; and bodies are bounded.
"""

from __future__ import annotations

import json
from collections.abc import Collection
from typing import Final

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from fioritura.shelf.recordings import MOST_BYTES as MOST_RECORDING_BYTES

__all__ = ["MOST_BYTES", "SECURITY_HEADERS", "Guard", "hosts_of"]

MOST_BYTES: Final = 16 * 1024 * 1024
"""The largest body of a request, but for those of `_LIMITS`: archives and recordings."""

_LIMITS: Final = {
    "/api/restore": 2 * 1024 * 1024 * 1024,
    "/api/takes": MOST_RECORDING_BYTES + 64 * 1024,
}

_SAFE: Final = frozenset({"GET", "HEAD"})
_POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; "
    "media-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
SECURITY_HEADERS: Final = {
    "Content-Security-Policy": _POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(self)",
}


def hosts_of(port: int) -> frozenset[str]:
    """The names under which a server on a port may be asked for."""
    names = ("127.0.0.1", "localhost", "[::1]")
    return frozenset(f"{name}:{port}" for name in names) | (frozenset(names) if port == 80 else frozenset())


class Guard:
    """ASGI middleware: refuses what should not come in, and puts the security headers on what goes out."""

    def __init__(self, app: ASGIApp, hosts: Collection[str]) -> None:
        self.app, self.hosts = app, frozenset(hosts)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Serve a request."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        limit = _LIMITS.get(scope["path"], MOST_BYTES)
        refusal = self._refusal(scope["method"], headers, limit)
        outgoing = _with_headers(send)
        if refusal:
            await _refuse(outgoing, *refusal)
            return
        await self.app(scope, _bounded(receive, limit), outgoing)

    def _refusal(self, method: str, headers: Headers, limit: int) -> tuple[int, str] | None:
        """Why a request is refused, if it is."""
        if headers.get("host", "") not in self.hosts:
            return (
                421,
                "This server answers to its own address only: open the address that `fioritura serve` printed.",
            )
        site = headers.get("sec-fetch-site", "none")
        is_page = headers.get("sec-fetch-mode") == "navigate" and method in _SAFE
        if site not in ("same-origin", "none") and not is_page:
            return 403, "The request comes from another site: use the page itself."
        origin = headers.get("origin")
        if origin is not None and origin.removeprefix("http://") not in self.hosts:
            return 403, "The request comes from another site: use the page itself."
        length = headers.get("content-length", "0")
        if not length.isdigit() or int(length) > limit:
            return 413, f"{length} bytes are too many: {limit:,} is the limit."
        return None


def _bounded(receive: Receive, limit: int) -> Receive:
    """The body of a request, cut off where it passes the limit: for bodies that do not say how long they are."""
    taken = 0

    async def bounded() -> Message:
        nonlocal taken
        message = await receive()
        taken += len(message.get("body", b""))
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


async def _refuse(send: Send, status: int, problem: str) -> None:
    body = json.dumps({"problem": problem}).encode()
    headers = [(b"content-type", b"application/json"), (b"content-length", str(len(body)).encode())]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body})
