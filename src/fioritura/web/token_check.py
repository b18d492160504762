"""The entrance of a server that others can reach: who gives the token once may come in, with a cookie to show for it."""

from __future__ import annotations

import asyncio
import secrets
import time
from collections.abc import Callable
from hashlib import sha256
from http.cookies import CookieError, SimpleCookie
from typing import Annotated, Final

from fastapi import FastAPI, Form, Request
from fastapi.responses import RedirectResponse, Response
from starlette.datastructures import Headers

from fioritura.errors import OptionError
from fioritura.web.languages import CHOICE

__all__ = ["ENTRANCE", "SHORTEST_TOKEN", "TokenCheck", "add_entrance", "new_token"]

ENTRANCE: Final = "/enter"
SHORTEST_TOKEN: Final = 16
COOKIE: Final = "fioritura-door"
FREE_TRIES: Final = 5
WAIT_SEC: Final = 0.5
LONGEST_WAIT_SEC: Final = 8.0
FORGOTTEN_SEC: Final = 300.0
"""Wrong tokens that cost nothing, how long the next one waits (each further one twice as long), at most, and after how long
they are forgotten."""

_LETTERS: Final = "abcdefghjkmnpqrstuvwxyz23456789"
"""Without those that look alike."""

_OPEN_TO_ALL: Final = ("/static/", "/fonts/")
_GROUPS: Final = 4
_GROUP: Final = 4


def new_token() -> str:
    """A token of 79 random bits that can be typed: ``"abcd-efgh-jkmn-pqrs"``."""
    return "-".join("".join(secrets.choice(_LETTERS) for _ in range(_GROUP)) for _ in range(_GROUPS))


class TokenCheck:
    """Knows the token that lets in. The cookie holds a digest of it, not the token itself."""

    def __init__(self, token: str) -> None:
        """A check that lets `token` pass.

        Raises:
            OptionError: the token is too short to keep anyone out.
        """
        if len(token) < SHORTEST_TOKEN:
            raise OptionError("token-too-short", count=len(token), limit=SHORTEST_TOKEN)
        self._token = token
        self._failures = 0
        self._last_sec = 0.0
        self._turn = asyncio.Lock()
        self.cookie = sha256(b"fioritura door " + token.encode()).hexdigest()

    async def checked(self, token: str) -> bool:
        """As `fits`, but after a few wrong tokens each further try waits its turn: the more of them, the longer."""
        now = time.monotonic()
        if now - self._last_sec > FORGOTTEN_SEC:
            self._failures = 0
        async with self._turn:
            if self._failures >= FREE_TRIES:
                await asyncio.sleep(min(LONGEST_WAIT_SEC, WAIT_SEC * 2 ** (self._failures - FREE_TRIES)))
            is_right = self.fits(token)
            self._failures = 0 if is_right else self._failures + 1
            self._last_sec = time.monotonic()
        return is_right

    async def slow_down(self, headers: Headers) -> None:
        """A wrong token in a header waits like one at the entrance."""
        scheme, _, token = headers.get("authorization", "").partition(" ")
        if scheme.lower() == "bearer":
            await self.checked(token)

    def fits(self, token: str) -> bool:
        """True for the token, whatever spaces and capitals it was typed with."""
        typed = "".join(token.split())
        return any(secrets.compare_digest(each.encode(), self._token.encode()) for each in (typed, typed.lower()))

    def lets_in(self, path: str, headers: Headers) -> bool:
        """True when a request may pass: by cookie, by ``Authorization: Bearer``, or on its way to the entrance."""
        if path in (ENTRANCE, CHOICE) or path.startswith(_OPEN_TO_ALL):
            return True
        scheme, _, token = headers.get("authorization", "").partition(" ")
        if scheme.lower() == "bearer" and self.fits(token):
            return True
        try:
            shown = SimpleCookie(headers.get("cookie", "")).get(COOKIE)
        except CookieError:
            return False
        return shown is not None and secrets.compare_digest(shown.value.encode(), self.cookie.encode())


def add_entrance(app: FastAPI, check: TokenCheck, page: Callable[..., Response]) -> None:
    """Add the entrance; `page` renders a template."""

    @app.get(ENTRANCE, include_in_schema=False)
    def entrance(request: Request) -> Response:
        return page(request, "enter", is_wrong=False)

    @app.post(ENTRANCE, include_in_schema=False)
    async def enter(request: Request, token: Annotated[str, Form(max_length=200)] = "") -> Response:
        if not await check.checked(token):
            return page(request, "enter", 401, is_wrong=True)
        answer = RedirectResponse("/", 303)
        answer.set_cookie(COOKIE, check.cookie, httponly=True, samesite="strict", max_age=30 * 86400)
        return answer
