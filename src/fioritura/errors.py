"""Every error that Fioritura raises on purpose, in one tree with one base.

An error carries what it says as a value (see `words.Message`); `str` puts it into words. A message gives the value that was met, the limit it broke, and the remedy, in words for a player::

    FiorituraError
    ├── ReadError        a file can't be read as a tune
    ├── TuneError        a tune was read but can't be worked with
    ├── RangeError       notes lie outside the instrument
    ├── OptionError      an option's value makes no sense here
    ├── OutputError      a result can't be written
    ├── OtherTuneError   what was played is not the tune (exit code 3)
    └── ToolError        a synth, font or engraver is missing or failed
"""

from __future__ import annotations

from fioritura.words import Message, Value, message, verbatim

__all__ = [
    "FiorituraError",
    "OptionError",
    "OtherTuneError",
    "OutputError",
    "RangeError",
    "ReadError",
    "ToolError",
    "TuneError",
]


class FiorituraError(Exception):
    """Base of all deliberate errors; the command line prints its message and exits with `exit_code`.

    Made of the id of a text and its arguments, ``OptionError("tempo-out-of-reach", given=7, low=20, high=400)``, or of a
    message.
    """

    exit_code: int = 2

    def __init__(self, said: str | Message, /, **args: Value) -> None:
        if isinstance(said, str):
            said = verbatim(said) if " " in said else message(said, **args)
        super().__init__(said)
        self.message: Message = said

    @property
    def core(self) -> Message:
        """What is wrong, without the places (file, tune, line) that are said before it as a message's `problem`."""
        said = self.message
        while isinstance(problem := dict(said.args).get("problem"), Message):
            said = problem
        return said

    def put_in(self, place: str, /, **args: Value) -> None:
        """Say a place before it: the id of a text that takes a `problem`, and its other arguments."""
        self.message = message(place, problem=self.message, **args)
        self.args = (self.message,)


class ReadError(FiorituraError):
    """A file is missing, damaged, unsafe, too large, or not of a kind that can be read."""


class TuneError(FiorituraError):
    """A tune was read, but it has no melody, several voices at once, or bars that do not add up."""


class RangeError(FiorituraError):
    """Some notes lie outside the written range of the chosen instrument."""


class OptionError(FiorituraError):
    """An option or argument has a value outside its limits."""


class OtherTuneError(FiorituraError):
    """What was played or written out is not a version of the tune."""

    exit_code = 3


class OutputError(FiorituraError):
    """A result could not be written; whatever stood there before is unharmed."""


class ToolError(FiorituraError):
    """An engraver, synthesiser, soundfont or encoder is missing or failed."""
