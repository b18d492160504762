"""Messages as plain data, to be kept in a file and said later, perhaps in another language."""

from __future__ import annotations

import json
from typing import Any, Final

from fioritura.words.message import VERBATIM, Message, Speakable, Value, verbatim
from fioritura.words.speech import say

__all__ = ["kept", "message_data", "message_from", "message_of", "remembered"]

_DEEPEST: Final = 8


def message_data(said: Message | str) -> Any:
    """A message for JSON: text for what is text already, else an object of its id and its arguments."""
    if isinstance(said, str):
        return said
    if said.id == VERBATIM:
        return said["text"]
    return {"id": said.id, **({"args": {name: _data(value) for name, value in said.args}} if said.args else {})}


def message_from(data: Any) -> Message:
    """The message of its data.

    Raises:
        ValueError: the data are none of a message.
    """
    if isinstance(data, str):
        return verbatim(data)
    found = _value(data, 0)
    if not isinstance(found, Message):
        raise ValueError(f"{data!r} is no message")
    return found


def message_of(data: object) -> Message:
    """The message of its data; what is none, or can't be said here, as it stands."""
    if isinstance(data, Message):
        return data
    try:
        found = message_from(data)
        say(found)
    except (LookupError, ValueError, TypeError):
        return verbatim(json.dumps(data, ensure_ascii=False))
    return found


def kept(said: Message | Speakable) -> str:
    """A message as one text, for `remembered`."""
    data = message_data(said if isinstance(said, Message) else said.message)
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def remembered(text: str) -> Message:
    """The message that was kept as a text. Any other text, such as older versions wrote, is said as it stands."""
    try:
        return message_of(json.loads(text)) if text.startswith('{"id":') else verbatim(text)
    except (ValueError, RecursionError):
        return verbatim(text)


def _data(value: Value) -> Any:
    if isinstance(value, Message):
        return message_data(value)
    if isinstance(value, tuple):
        return [_data(one) for one in value]
    if isinstance(value, Speakable):
        return message_data(value.message)
    return value


def _value(data: Any, depth: int) -> Value:
    if isinstance(data, str | int | float):
        return data
    if depth < _DEEPEST:
        if isinstance(data, list):
            return tuple(_value(one, depth + 1) for one in data)
        if isinstance(data, dict) and isinstance(data.get("id"), str) and isinstance(data.get("args", {}), dict):
            args = {str(name): _value(one, depth + 1) for name, one in data.get("args", {}).items()}
            return Message(data["id"], tuple(sorted(args.items())))
    raise ValueError(f"{data!r} is no value of a message")
