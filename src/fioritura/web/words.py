"""The words of the page: said in its templates, and taken apart for its scripts."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from fluent.syntax import ast
from markupsafe import Markup, escape

from fioritura.words import Message, capital, message, say
from fioritura.words.message import Speakable, Value
from fioritura.words.speech import pattern_of

__all__ = ["Piece", "capital_of", "pieces_of", "say_in_html"]

Piece = str | dict[str, Any]
"""Text; a value to be filled in (``arg``, and the ``format`` of a number); or cases of a value (``by``, ``cases``, and the
``usual`` one)."""


def say_in_html(id: str, /, **args: Value) -> Markup:
    """A message in HTML: text is escaped, arguments that are HTML stay so.

    Raises:
        LookupError: there is no such message.
        ValueError: it needs another argument.
    """
    marks = {name: f"\0{name}\0" for name, value in args.items() if isinstance(value, Markup)}
    text = escape(say(message(id, **(args | marks))))
    for name, mark in marks.items():
        text = text.replace(mark, Markup(args[name]))
    return text


def capital_of(said: Message | Speakable | str) -> str:
    """What is said, with a capital first letter: as a heading, or in a list."""
    return capital(say(said))


def pieces_of(ids: Iterable[str]) -> dict[str, list[Piece]]:
    """Messages of the language that is spoken taken apart, so that a script can put them together with its own arguments.

    Raises:
        LookupError: there is no such message, or it holds what scripts can't say: other messages, functions but NUMBER.
    """
    return {id: [_piece(element) for element in pattern_of(id).elements] for id in sorted(ids)}


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
