"""`fioritura revise`: change a saved arrangement figure by figure; each decision changes its phrase at most."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import names, plan_of, print_json
from fioritura.cli.ornament import add_edition_options, give_out
from fioritura.words import capital, say

if TYPE_CHECKING:
    from fioritura.arrange.arrangement import Arrangement

__all__ = ["add_parser", "run"]

_ABOUT = """\
Work on an arrangement.json that `ornament` wrote. Figures go by the ids in figures.json.

  fioritura revise tune/arrangement.json --alternatives turn-12-3fa9c1       what else could stand there
  fioritura revise tune/arrangement.json --swap turn-12-3fa9c1=scoop-12-0b6f44
  fioritura revise tune/arrangement.json --raise surround-8-77ac20:1         second note, a semitone up
  fioritura revise tune/arrangement.json --anew                              all that is not decided
  fioritura revise tune/arrangement.json --curve 0.2,0.8,1.5                 how dense each chorus is
  fioritura revise tune/arrangement.json --undo

A decision changes the phrase of its figure at most. Decisions are kept in the file, in order, and can be taken back one by one.
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "revise",
        help="change a saved arrangement figure by figure",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("arrangement", type=Path, metavar="ARRANGEMENT", help="an arrangement.json")
    group = parser.add_argument_group("decisions, taken in this order")
    group.add_argument("--undo", action="store_true", help="take the last decision back")
    group.add_argument("--accept", default="", metavar="ID,ID", help="these figures must stand")
    group.add_argument("--refuse", default="", metavar="ID,ID", help="these figures must not stand")
    group.add_argument("--swap", default="", metavar="ID=ID", help="put the second figure in place of the first")
    group.add_argument("--raise", dest="up", default="", metavar="ID:N", help="raise note N of a figure (from 0)")
    group.add_argument("--lower", dest="down", default="", metavar="ID:N", help="lower note N of a figure (from 0)")
    group.add_argument("--anew", action="store_true", help="choose all anew that is not decided")
    group.add_argument("--seed", type=int, metavar="N", help="another version under the same decisions")
    group.add_argument(
        "--curve", default="", metavar="X,X,...", help="another density for each chorus; the undecided is chosen anew"
    )
    parser.add_argument("--alternatives", metavar="ID", help="only list what could stand there, best first")
    add_edition_options(parser)
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Decide and give out, or list alternatives."""
    from fioritura.arrange.arrangement_file import arrangement_from_json
    from fioritura.files import read_bytes

    text = read_bytes(options.arrangement).decode("utf-8", "replace")
    arrangement = arrangement_from_json(text)
    if options.alternatives:
        return _list_alternatives(arrangement, options)
    return give_out(_decided(arrangement, options), options, options.out or options.arrangement.parent)


def _decided(arrangement: Arrangement, options: argparse.Namespace) -> Arrangement:
    if options.undo:
        arrangement = arrangement.undo()
    for id in names(options.accept):
        arrangement = arrangement.accept(id)
    for id in names(options.refuse):
        arrangement = arrangement.refuse(id)
    if options.swap:
        arrangement = arrangement.swap(*_pair(options.swap, "=", "--swap OLD=NEW"))
    for value, semitones in ((options.up, 1), (options.down, -1)):
        if value:
            id, note = _pair(value, ":", "--raise ID:N")
            arrangement = arrangement.bend(id, int(note[:9]) if note.isdecimal() else -1, semitones)
    if options.curve:
        plan = plan_of(argparse.Namespace(curve=options.curve, choruses=None))
        arrangement = arrangement.with_plan(plan) if plan else arrangement
    if options.anew and options.seed is None:
        arrangement = arrangement.anew()
    return arrangement if options.seed is None else arrangement.with_seed(options.seed)


def _pair(text: str, sign: str, usage: str) -> tuple[str, str]:
    from fioritura.errors import OptionError

    one, found, other = text.partition(sign)
    if not found:
        raise OptionError("cli-incomplete", given=text, usage=usage)
    return one.strip(), other.strip()


def _list_alternatives(arrangement: Arrangement, options: argparse.Namespace) -> int:
    from fioritura.techniques.table import technique_named

    rows: list[dict[str, Any]] = [
        {
            "id": alternative.figure.id,
            "technique": alternative.figure.technique,
            "worth": alternative.worth,
            "stands": alternative.stands,
            "reason": say(alternative.figure.why),
        }
        for alternative in arrangement.alternatives(options.alternatives)
    ]
    if options.json:
        print_json(rows)
        return 0
    for row in rows:
        sign = "*" if row["stands"] else " "
        print(
            f"{sign} {row['worth']:>8.2f}  {row['id']:<34} {capital(say(technique_named(row['technique']).name))}: {row['reason']}"
        )
    return 0
