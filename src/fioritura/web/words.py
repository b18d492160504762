"""The words of the page, which lie in a file of messages (Project Fluent): said by the server, and taken apart for scripts."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from typing import Any, Final

from fluent.runtime import FluentBundle
from fluent.syntax import FluentParser, ast
from markupsafe import Markup, escape

__all__ = ["Piece", "message_ids", "pieces_of", "say", "say_in_html"]

LANGUAGE: Final = "en"
REGION: Final = "en-GB"

Piece = str | dict[str, Any]
"""Text; a value to be filled in (``arg``, and the ``format`` of a number); or cases of a value (``by``, ``cases``, and the
``usual`` one)."""


def say(id: str, /, **args: object) -> str:
    """A message with its arguments filled in.

    Raises:
        LookupError: there is no such message, or it needs another argument.
    """
    bundle = _bundle()
    pattern = bundle.get_message(id).value
    if pattern is None:
        raise LookupError(id)
    text, errors = bundle.format_pattern(pattern, args)
    if errors:
        raise LookupError(id, errors[0])
    return str(text)


def say_in_html(id: str, /, **args: object) -> Markup:
    """The same in HTML: text is escaped, arguments that are HTML stay so."""
    marks = {name: f"\0{name}\0" for name, value in args.items() if isinstance(value, Markup)}
    text = escape(say(id, **(args | marks)))
    for name, mark in marks.items():
        text = text.replace(mark, Markup(args[name]))
    return text


def message_ids() -> frozenset[str]:
    """The names of all messages."""
    return frozenset(_messages())


def pieces_of(ids: Iterable[str]) -> dict[str, list[Piece]]:
    """Messages taken apart, so that a script can put them together with its own arguments.

    Raises:
        LookupError: there is no such message, or it holds what scripts can't say: other messages, functions but NUMBER.
    """
    return {id: [_piece(element) for element in _messages()[id].elements] for id in sorted(ids)}


@cache
def _resource() -> ast.Resource:
    text = files("fioritura").joinpath("words", LANGUAGE, "page.ftl").read_text(encoding="utf-8")
    return FluentParser().parse(text)


@cache
def _bundle() -> FluentBundle:
    bundle = FluentBundle([REGION], use_isolating=False)
    bundle.add_resource(_resource())
    return bundle


@cache
def _messages() -> dict[str, ast.Pattern]:
    return {one.id.name: one.value for one in _resource().body if isinstance(one, ast.Message) and one.value}


def _piece(element: ast.TextElement | ast.Placeable) -> Piece:
    if isinstance(element, ast.TextElement):
        return element.value
    match element.expression:
        case ast.StringLiteral() as literal:
            return str(literal.parse()["value"])
        case ast.VariableReference(id=name):
            return {"arg": name.name}
        case ast.FunctionReference(arguments=call) if isinstance(call.positional[0], ast.VariableReference):
            digits = {one.name.name: int(one.value.value) for one in call.named}
            return {"arg": call.positional[0].id.name, "format": digits}
        case ast.SelectExpression(selector=ast.VariableReference(id=name), variants=variants):
            cases = {_key(one): [_piece(inner) for inner in one.value.elements] for one in variants}
            return {"by": name.name, "cases": cases, "usual": next(_key(one) for one in variants if one.default)}
        case other:
            raise LookupError(type(other).__name__)


def _key(variant: ast.Variant) -> str:
    key = variant.key
    return key.name if isinstance(key, ast.Identifier) else str(key.value)
