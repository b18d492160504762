"""What can't be read in an ABC text: refused with its place, or left out with a warning."""

from __future__ import annotations

from collections import Counter
from typing import Final, Protocol

from fioritura.errors import FiorituraError, ReadError, TuneError
from fioritura.notation.lists import first_named
from fioritura.words import Message, Value, message

__all__ = ["AbcError", "AbcPolyphonyError", "Faults", "Placed", "UnreadableError"]

MAX_WARNINGS: Final = 20
MAX_SHOWN: Final = 40


class Placed(Protocol):
    """A piece of text that knows its line and column, both from 1."""

    @property
    def text(self) -> str:
        """The piece itself."""

    @property
    def line(self) -> int:
        """Its line in the text as given."""

    @property
    def column(self) -> int:
        """The column of its first character."""


class _PlacedError(FiorituraError):
    """`line` and `column` count from 1 in the text that was given, `text` is what stands there, and `problem` says
    what is wrong with it and what to do; the message holds them all."""

    def __init__(self, problem: Message, *, line: int, column: int, text: str) -> None:
        super().__init__(message("abc-at", line=line, column=column, text=_shown(text), problem=problem))
        self.problem = problem
        self.line = line
        self.column = column
        self.text = text


class AbcError(_PlacedError, ReadError):
    """A place in an ABC text that can't be read: `line`, `column`, `text` and `problem` say where and why."""


class AbcPolyphonyError(_PlacedError, TuneError):
    """A place in an ABC text where several notes sound at once, with the attributes of an `AbcError`."""


class UnreadableError(Exception):
    """What is wrong with a piece of text, as `message`; whoever knows the place hands it to `Faults`."""

    def __init__(self, said: str | Message, /, **args: Value) -> None:
        self.message = message(said, **args) if isinstance(said, str) else said
        super().__init__(self.message)


class Faults:
    """The faults of one tune. With `is_lenient` they become warnings, else the first one is raised."""

    def __init__(self, *, is_lenient: bool) -> None:
        self.is_lenient = is_lenient
        self._places: list[Message] = []
        self._counts: Counter[str] = Counter()
        self._left_out: Counter[str | Message] = Counter()

    def meet(self, piece: Placed, fault: UnreadableError) -> None:
        """A piece can't be read and is left out.

        Raises:
            AbcError: unless lenient.
        """
        if not self.is_lenient:
            raise AbcError(fault.message, line=piece.line, column=piece.column, text=piece.text) from None
        self.warn(piece, message("abc-left-out", text=_shown(piece.text), problem=fault.message))

    def meet_polyphony(self, piece: Placed, problem: Message) -> None:
        """Several notes sound at once; the top one is read.

        Raises:
            AbcPolyphonyError: unless lenient.
        """
        if not self.is_lenient:
            raise AbcPolyphonyError(problem, line=piece.line, column=piece.column, text=piece.text)
        self.count("abc-top-notes")

    def warn(self, piece: Placed, said: Message) -> None:
        """Something at a place was guessed or left out."""
        self._places.append(message("abc-warned", line=piece.line, column=piece.column, problem=said))

    def remark(self, said: Message | None) -> None:
        """Something about the whole tune."""
        if said:
            self._places.append(said)

    def count(self, id: str) -> None:
        """One more of something that is worth a line in all: the id of a text that takes a `count`."""
        self._counts[id] += 1

    def leave_out(self, what: str | Message) -> None:
        """Something that has no place in a melody's notes was left out."""
        self._left_out[what] += 1

    @property
    def warnings(self) -> list[Message]:
        """All of it; the first 20 places one by one."""
        said = self._places[:MAX_WARNINGS]
        if len(self._places) > MAX_WARNINGS:
            said.append(message("abc-more-places", count=len(self._places) - MAX_WARNINGS))
        said += (message(id, count=count) for id, count in self._counts.items())
        if self._left_out:
            in_order = sorted(self._left_out.items(), key=_by_name)
            signs = [message("abc-sign-counted", sign=sign, count=count) for sign, count in in_order]
            said.append(message("abc-signs-left-out", signs=first_named(signs, MAX_WARNINGS)))
        return said


def _by_name(counted: tuple[str | Message, int]) -> tuple[bool, str]:
    """Signs before what has a name in words."""
    sign = counted[0]
    return (True, repr(sign)) if isinstance(sign, Message) else (False, sign)


def _shown(text: str) -> str:
    plain = "".join(sign if sign.isprintable() else "\N{REPLACEMENT CHARACTER}" for sign in text[:MAX_SHOWN])
    return plain if len(text) <= MAX_SHOWN else plain[: MAX_SHOWN - 3] + "..."
