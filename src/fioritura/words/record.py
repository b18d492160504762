"""Values as plain data for machines: dataclasses as tables, messages in the language that is spoken."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from typing import Any

from fioritura.words.message import Message, Speakable
from fioritura.words.speech import say

__all__ = ["record"]


def record(value: Any) -> Any:
    """A value as JSON has it; what is said to people (messages, pitches, places) in words."""
    if isinstance(value, Message | Speakable):
        return say(value)
    if isinstance(value, Enum):
        return value.value
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: record(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, Mapping):
        return {name: record(each) for name, each in value.items()}
    if isinstance(value, tuple | list):
        return [record(each) for each in value]
    return value
