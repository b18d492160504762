"""In which language a reader is answered: as chosen in the page's menu, else as the server was told, else the browser's."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from http.cookies import CookieError, SimpleCookie
from typing import Annotated, Final

from fastapi import FastAPI, Form, Request
from fastapi.responses import RedirectResponse, Response
from starlette.datastructures import Headers

from fioritura.errors import OptionError
from fioritura.words.speech import LANGUAGES, PSEUDO

__all__ = ["CHOICE", "NAMES", "Reader", "add_language_choice", "reader_in"]

CHOICE: Final = "/language"
"""Where the menu sends what was chosen."""

NAMES: Final[Mapping[str, str]] = {"en": "English", "de": "Deutsch", "fr": "Français", "es": "Español"}
"""The languages as they call themselves."""

_COOKIE: Final = "fioritura-language"
_YEAR_SEC: Final = 365 * 86400
_MOST_OFFERED: Final = 20

Reader = Callable[[Headers], str]
"""The language for who sends these headers."""


def reader_in(usual: str | None) -> Reader:
    """The language of each reader; `usual` is that of those who have chosen none, None leaves it to their browser.

    Raises:
        OptionError: nothing can be said in that language.
    """
    if usual is not None and usual not in (*LANGUAGES, PSEUDO):
        raise OptionError("no-page-language", given=usual, known=LANGUAGES)
    return lambda headers: _chosen(headers) or usual or _offered(headers.get("accept-language", ""))


def add_language_choice(app: FastAPI) -> None:
    """Add the address of the menu."""

    @app.post(CHOICE, include_in_schema=False)
    def choose(
        request: Request,
        language: Annotated[str, Form(max_length=12)],
        back: Annotated[str, Form(max_length=2000)] = "/",
    ) -> Response:
        if language not in LANGUAGES:
            raise OptionError("no-page-language", given=language, known=LANGUAGES)
        answer = RedirectResponse(back if _is_ours(back) else "/", 303)
        answer.set_cookie(_COOKIE, language, httponly=True, samesite="lax", max_age=_YEAR_SEC)
        return answer


def _is_ours(address: str) -> bool:
    return address.startswith("/") and not address.startswith(("//", "/\\")) and address.isprintable()


def _chosen(headers: Headers) -> str:
    try:
        found = SimpleCookie(headers.get("cookie", "")).get(_COOKIE)
    except CookieError:
        return ""
    return found.value if found is not None and found.value in LANGUAGES else ""


def _offered(accepted: str) -> str:
    """The best of the languages that a browser asks for (RFC 9110, 12.5.4)."""
    weighted = []
    for place, one in enumerate(accepted.split(",")[:_MOST_OFFERED]):
        tag, _, weight = one.partition(";")
        code = tag.strip().lower().partition("-")[0]
        try:
            share = float(weight.strip().removeprefix("q=")) if weight.strip() else 1.0
        except ValueError:
            continue
        if code in LANGUAGES and share > 0:
            weighted.append((-share, place, code))
    return min(weighted)[2] if weighted else LANGUAGES[0]
