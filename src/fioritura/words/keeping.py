"""Messages in files and databases: kept by id and arguments, so that they are read in the reader's own language."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from fioritura.words.message import VERBATIM, Message, Speakable, Value, message, verbatim
from fioritura.words.speech import say

__all__ = ["kept", "message_of", "plain", "remembered"]


def plain(value: Value) -> Any:
    """A message or an argument as plain data for JSON; text stays text."""
    if isinstance(value, tuple):
        return [plain(each) for each in value]
    if isinstance(value, Speakable):
        value = value.message
    if not isinstance(value, Message):
        return value
    if value.id == VERBATIM:
        return str(value["text"])
    return {"id": value.id, "args": {name: plain(each) for name, each in value.args}}


def message_of(data: object) -> Message:
    """The message of plain data; what is none, or has no text here, is shown as it stands."""
    if isinstance(data, Message):
        return data
    if isinstance(data, Mapping):
        try:
            found = _message(data)
            say(found)
        except (LookupError, TypeError, ValueError, RecursionError):
            return verbatim(json.dumps(data, ensure_ascii=False))
        return found
    return verbatim(str(data))


def kept(said: Message | Speakable) -> str:
    """A message as text, for `remembered`."""
    return json.dumps(plain(said), ensure_ascii=False, separators=(",", ":"))


def remembered(text: str) -> Message:
    """The message that was kept as text. Text of another kind, as older versions kept it, is shown as it stands."""
    if text.startswith('{"id":'):
        try:
            return message_of(json.loads(text))
        except (ValueError, RecursionError):
            pass
    return verbatim(text)


def _message(data: Mapping[Any, Any]) -> Message:
    return message(str(data["id"]), **{str(name): _value(each) for name, each in data["args"].items()})


def _value(data: Any) -> Value:
    if isinstance(data, Mapping):
        return _message(data)
    if isinstance(data, list):
        return tuple(_value(each) for each in data)
    if isinstance(data, str | int | float):
        return data
    raise TypeError(type(data).__name__)
