"""The command reference, from the parsers themselves."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator

from fioritura.cli import command_parser

__all__ = ["commands_page"]


def commands_page() -> str:
    """Every command with its options, as Markdown."""
    whole = command_parser()
    choices = next(action for action in whole._actions if isinstance(action, argparse._SubParsersAction))
    short = {choice.dest: choice.help or "" for choice in choices._choices_actions}
    lines = [
        "# Commands\n",
        "`fioritura COMMAND --help` says the same. Commands that print results also print them for programs, with `--json`.",
        "Exit codes: 0 well done, 2 bad input, 3 another tune, 4 some of a batch failed, 130 interrupted.\n",
        "| command | does |",
        "|---|---|",
        *(f"| [{name}](#{name}) | {_text(short.get(name, ''))} |" for name in choices.choices),
        "",
    ]
    for name, command in choices.choices.items():
        lines += _command(name, command, short.get(name, ""))
    return "\n".join(lines)


def _command(name: str, command: argparse.ArgumentParser, short: str) -> Iterator[str]:
    yield f"## {name} {{ #{name} }}\n"
    yield from _about(command.description or f"{short[:1].upper()}{short[1:]}.")
    yield '??? abstract "Usage"\n'
    yield "    ```text"
    yield from (f"    {line}".rstrip() for line in _usage(command).splitlines())
    yield "    ```\n"
    for group in command._action_groups:
        actions = [action for action in group._group_actions if not isinstance(action, argparse._HelpAction)]
        if not actions:
            continue
        title = "arguments" if group.title == "positional arguments" else group.title or ""
        yield f"**{title[:1].upper()}{title[1:]}**\n"
        yield "| | |\n|---|---|"
        yield from (f"| {_names(action)} | {_meaning(action, command)} |" for action in actions)
        yield ""


def _usage(command: argparse.ArgumentParser) -> str:
    usage = command.format_usage().removeprefix("usage: ")
    return re.sub(r"\n {7}", "\n", usage)


def _about(description: str) -> Iterator[str]:
    """A description: its paragraphs, those that are indented as commands to type."""
    for block in re.split(r"\n\s*\n", description.strip("\n")):
        if block.startswith("  "):
            yield "\n".join(["```sh", *(line[2:] for line in block.splitlines()), "```", ""])
        else:
            yield _text(block) + "\n"


def _names(action: argparse.Action) -> str:
    value = action.metavar if isinstance(action.metavar, str) else None
    if value is None and action.choices is not None:
        value = "|".join(map(str, action.choices))
    if value is None and action.nargs != 0:
        value = action.dest.upper()
    if not action.option_strings:
        return f"`{value or action.dest}`"
    shown = f" {value}" if value and action.nargs != 0 else ""
    return f"`{', '.join(action.option_strings)}{shown}`"


def _meaning(action: argparse.Action, command: argparse.ArgumentParser) -> str:
    text = command._get_formatter()._expand_help(action) if action.help else ""
    is_said = not action.option_strings or "default" in text or action.nargs == 0
    if not is_said and action.default not in (None, "", (), argparse.SUPPRESS):
        text = f"{text} (default: {action.default})".strip()
    return _text(text)


def _text(text: str) -> str:
    """Plain text as Markdown of one line that shows it as it is."""
    flat = " ".join(text.split())
    return re.sub(r"([*_<|\[\]])", r"\\\1", flat)
