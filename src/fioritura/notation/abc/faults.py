"""What can't be read in an ABC text: refused with its place, or left out with a warning."""

from __future__ import annotations

from collections import Counter
from typing import Final, Protocol

from fioritura.errors import FiorituraError, ReadError, TuneError

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

    def __init__(self, problem: str, *, line: int, column: int, text: str) -> None:
        super().__init__(f"line {line}, column {column}, {_shown(text)!r}: {problem}")
        self.problem = problem
        self.line = line
        self.column = column
        self.text = text


class AbcError(_PlacedError, ReadError):
    """A place in an ABC text that can't be read: `line`, `column`, `text` and `problem` say where and why."""


class AbcPolyphonyError(_PlacedError, TuneError):
    """A place in an ABC text where several notes sound at once, with the attributes of an `AbcError`."""


class UnreadableError(Exception):
    """What is wrong with a piece of text, in words for a player; whoever knows the place hands it to `Faults`."""


class Faults:
    """The faults of one tune. With `is_lenient` they become warnings, else the first one is raised."""

    def __init__(self, *, is_lenient: bool) -> None:
        self.is_lenient = is_lenient
        self._places: list[str] = []
        self._counts: Counter[str] = Counter()
        self._left_out: Counter[str] = Counter()

    def meet(self, piece: Placed, fault: UnreadableError) -> None:
        """A piece can't be read and is left out.

        Raises:
            AbcError: unless lenient.
        """
        if not self.is_lenient:
            raise AbcError(str(fault), line=piece.line, column=piece.column, text=piece.text) from None
        self.warn(piece, f"{_shown(piece.text)!r} is left out: {fault}")

    def meet_polyphony(self, piece: Placed, what: str) -> None:
        """Several notes sound at once; the top one is read.

        Raises:
            AbcPolyphonyError: unless lenient.
        """
        if not self.is_lenient:
            problem = (
                f"{what} sound at once; the melody must be one note at a time: take the others out, or keep the top "
                "note with --irregular keep."
            )
            raise AbcPolyphonyError(problem, line=piece.line, column=piece.column, text=piece.text)
        self._counts["times several notes sound at once: the top note is read"] += 1

    def warn(self, piece: Placed, text: str) -> None:
        """Something at a place was guessed or left out."""
        self._places.append(f"line {piece.line}, column {piece.column}: {text}")

    def remark(self, text: str) -> None:
        """Something about the whole tune."""
        if text:
            self._places.append(text)

    def count(self, what: str) -> None:
        """One more of something that is worth a line in all: ``"ties ... are read as slurs"``."""
        self._counts[what] += 1

    def leave_out(self, what: str) -> None:
        """Something that has no place in a melody's notes was left out."""
        self._left_out[what] += 1

    @property
    def warnings(self) -> list[str]:
        """All of it in words; the first 20 places one by one."""
        texts = self._places[:MAX_WARNINGS]
        if len(self._places) > MAX_WARNINGS:
            texts.append(f"{len(self._places) - MAX_WARNINGS} more places like these")
        texts += [f"{count} {what}" for what, count in self._counts.items()]
        if self._left_out:
            names = [f"{name} ({count})" for name, count in sorted(self._left_out.items())]
            more = f" and {len(names) - MAX_WARNINGS} more" if len(names) > MAX_WARNINGS else ""
            texts.append(f"left out, as they are no notes of a melody: {', '.join(names[:MAX_WARNINGS])}{more}")
        return texts


def _shown(text: str) -> str:
    return text if len(text) <= MAX_SHOWN else text[: MAX_SHOWN - 3] + "..."
