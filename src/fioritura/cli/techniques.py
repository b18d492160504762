"""`fioritura techniques`: the table of ornaments."""

from __future__ import annotations

import argparse
from itertools import groupby
from typing import Any

from fioritura.cli.options import print_json, print_words
from fioritura.words import capital, say

__all__ = ["add_parser", "run"]


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser("techniques", help="the table of ornaments, level by level")
    parser.add_argument("--json", action="store_true", help="print a list of objects as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Print the table."""
    from fioritura.lesson.edition import technique_record
    from fioritura.techniques.table import all_techniques

    table = list(all_techniques().values())
    if options.json:
        fields = ("id", "name", "family", "level", "text", "label", "how", "when", "fault", "cure")
        print_json([technique_record(technique, fields) for technique in table])
        return 0
    for level, members in groupby(table, key=lambda technique: technique.level):
        print_words("cli-level", level=level)
        for technique in members:
            print(f"  {technique.id:<26} {capital(say(technique.name))}")
            print(f"  {'':<26} {say(technique.text)}")
    return 0
