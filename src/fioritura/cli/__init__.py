"""The `fioritura` command. Each command is one module here with `add_parser` and `run`; no music lives in this room."""

from __future__ import annotations

import argparse
import os
import sys
import warnings
from collections.abc import Sequence
from importlib import import_module
from typing import Final

from fioritura.errors import FiorituraError, OptionError
from fioritura.words import LANGUAGES, Message, message, say, speaking
from fioritura.words.speech import PSEUDO, is_known_text

__all__ = ["COMMANDS", "command_parser", "main"]

LANGUAGE_VARIABLE: Final = "FIORITURA_LANGUAGE"

COMMANDS: Final = (
    "demo",
    "ornament",
    "revise",
    "play",
    "backing",
    "lesson",
    "batch",
    "spots",
    "name",
    "listen",
    "transcribe",
    "techniques",
    "sounds",
    "serve",
)

_ABOUT: Final = """\
Take a plain melody with chord symbols and make it sing: playable, idiomatic ornaments for wind players who teach.

  fioritura demo --out demo                                 the whole job on the tune that comes with the program
  fioritura ornament tune.musicxml --player alto-sax --out tune
  fioritura spots tune.abc --only turn                      every place where a turn would fit, and why
  fioritura techniques                                      the ornaments, level by level
"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; returns the exit code (0 well done, 2 bad input, 3 another tune, 4 some of a batch failed,
    130 interrupted)."""
    warnings.formatwarning = _in_words
    parser = command_parser()
    options = parser.parse_args(arguments)
    options.asked_language = options.language or os.environ.get(LANGUAGE_VARIABLE)
    options.language = options.asked_language or LANGUAGES[0]
    is_known = options.language in (*LANGUAGES, PSEUDO)
    with speaking(options.language if is_known else LANGUAGES[0], getattr(options, "notes", None)):
        try:
            if not is_known:
                raise OptionError("no-such-language", given=options.language, known=LANGUAGES)
            return int(options.run(options) or 0)
        except FiorituraError as error:
            print(say(message("cli-error", text=_with_hint(error))), file=sys.stderr)
            return error.exit_code
        except KeyboardInterrupt:
            print(say(message("cli-error", text=message("cli-stopped"))), file=sys.stderr)
            return 130
        except BrokenPipeError:
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            return 0


def _with_hint(error: FiorituraError) -> Message:
    """What went wrong, and which option of the command line has to do with it."""
    hint = f"hint-{error.core.id}"
    if not is_known_text(hint):
        return error.message
    return message("cli-hint", text=error.message, hint=Message(hint, error.core.args))


def command_parser() -> argparse.ArgumentParser:
    """The parser of the whole command line, a subparser for each command."""
    parser = argparse.ArgumentParser(
        prog="fioritura", description=_ABOUT, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--version", action=_Version)
    subparsers = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for name in COMMANDS:
        import_module(f"fioritura.cli.{name}").add_parser(subparsers)
        subparsers.choices[name].add_argument(
            "--language",
            metavar="CODE",
            help=f"of all that is said and written: {', '.join(LANGUAGES)} (default: {LANGUAGE_VARIABLE}, or en)",
        )
    return parser


def _in_words(
    message: Warning | str, category: type[Warning], filename: str, lineno: int, line: str | None = None
) -> str:
    """What is wrong with a plugin, as a note for the user; other warnings as Python words them."""
    if category.__name__ == "PluginWarning":
        return f"note: {message}\n"
    return _usual_words(message, category, filename, lineno, line)


_usual_words: Final = warnings.formatwarning


class _Version(argparse.Action):
    def __init__(self, option_strings: Sequence[str], dest: str) -> None:
        super().__init__(option_strings, dest, nargs=0, help="print the version and stop")

    def __call__(self, parser: argparse.ArgumentParser, *rest: object) -> None:
        from importlib.metadata import version

        print(version("fioritura"))
        parser.exit()
