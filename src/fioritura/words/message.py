"""Messages: what there is to say, before it is put into words."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Protocol, TypeAlias, Union, runtime_checkable

__all__ = ["Message", "Speakable", "Value", "message", "verbatim"]

VERBATIM: Final = "verbatim"
"""The id of a message that is text already."""


@runtime_checkable
class Speakable(Protocol):
    """A value of the music (a pitch, a key, a place in the bar) that says how it is named."""

    @property
    def message(self) -> Message:
        """The message that names it."""
        ...


Value: TypeAlias = Union[str, int, float, "Message", Speakable, tuple["Value", ...]]
"""What a message may be given: text that is the same in each language (a title, a file's name, an id), a number,
another message, a value that names itself, or several of these, which are listed."""


@dataclass(frozen=True, slots=True)
class Message:
    """Something to say: the id of a text (or ``"id.attribute"``) and its named arguments, in order of name.

    `str` puts it into words in the language that is spoken (see `speech.speaking`).
    """

    id: str
    args: tuple[tuple[str, Value], ...] = ()

    def __str__(self) -> str:
        from fioritura.words.speech import say

        return say(self)

    def __getitem__(self, name: str) -> Value:
        """An argument.

        Raises:
            KeyError: there is none of that name.
        """
        return dict(self.args)[name]

    def form(self, attribute: str) -> Message:
        """The same message in another of its forms, an attribute of its text (``turn.form("how")``)."""
        return Message(f"{self.id.partition('.')[0]}.{attribute}", self.args)


def message(id: str, /, **args: Value) -> Message:
    """A message; see `Message`."""
    if not args:
        return _bare(id)
    items = args.items()
    return Message(id, tuple(items) if len(args) < 2 else tuple(sorted(items)))


@lru_cache(maxsize=2048)
def _bare(id: str) -> Message:
    return Message(id)


def verbatim(text: str) -> Message:
    """Text that is the same in every language: what the user, a file or another program wrote."""
    return Message(VERBATIM, (("text", text),))
