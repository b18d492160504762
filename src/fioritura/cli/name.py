"""`fioritura name`: which ornaments another setting or performance of a tune uses."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import print_json
from fioritura.words import capital, say

if TYPE_CHECKING:
    from fioritura.listening.naming import NamedFigure, Naming

__all__ = ["add_parser", "run"]

_ABOUT = """\
Lay a played or written-out version beside the plain tune and name its ornaments, bar by bar.

  fioritura name performance.mid --tune tune.musicxml
  fioritura name setting.abc --number 12 --tune book.abc --tune-number 3 --json

Key, octave, repeats and small slips do not matter; a version of another tune is refused with exit code 3.
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "name",
        help="name the ornaments of a written or MIDI version of a tune",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("played", type=Path, metavar="PLAYED", help="a MusicXML, ABC or MIDI file")
    parser.add_argument(
        "--tune", type=Path, required=True, metavar="PLAIN", help="the plain tune, in the same kinds of file"
    )
    parser.add_argument("--number", type=int, metavar="N", help="which tune of a book PLAYED is")
    parser.add_argument("--tune-number", type=int, metavar="N", help="which tune of a book PLAIN is")
    parser.add_argument("--part", metavar="NAME|N", help="which part of PLAYED is the melody")
    parser.add_argument("--tune-part", metavar="NAME|N", help="which part of PLAIN is the melody")
    parser.add_argument("--json", action="store_true", help="print the result as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Name the ornaments."""
    from fioritura.cli.options import part_of
    from fioritura.errors import OtherTuneError
    from fioritura.listening.name import name_line
    from fioritura.listening.words import likeness_words
    from fioritura.notation.read import read_tune

    tune = read_tune(options.tune, part=part_of(options.tune_part), tune_number=options.tune_number, irregular="keep")
    played = read_tune(options.played, part=part_of(options.part), tune_number=options.number, irregular="keep")
    naming = name_line(tune, played.notes)
    if not naming.alignment.is_this_tune:
        raise OtherTuneError(likeness_words(naming.alignment, options.played.name))
    for name, warnings in ((options.tune.name, tune.warnings), (options.played.name, played.warnings)):
        for warning in warnings:
            print(f"note: {name}: {warning}", file=sys.stderr)
    if options.json:
        print_json(_record(naming))
    else:
        _say(naming)
    return 0


def _record(naming: Naming) -> dict[str, Any]:
    """What `--json` prints."""
    from dataclasses import asdict

    from fioritura.listening.words import slip_words

    alignment = naming.alignment
    return {
        "title": alignment.tune.title,
        "likeness": alignment.likeness,
        "semitones": alignment.semitones,
        "figures": [_figure_record(one) for one in naming.figures],
        "slips": [{**asdict(slip), "words": str(slip_words(alignment, slip))} for slip in naming.slips],
    }


def _figure_record(one: NamedFigure) -> dict[str, Any]:
    from dataclasses import asdict, replace

    from fioritura.techniques.table import technique_named

    record = asdict(replace(one, figure=None))
    del record["figure"]
    return {**record, "name": capital(say(technique_named(one.technique).name))}


def _say(naming: Naming) -> None:
    from fioritura.listening.words import key_words, slip_words
    from fioritura.techniques.table import technique_named

    alignment = naming.alignment
    print(f"{alignment.tune.title}: {len(naming.figures)} figures, {len(naming.slips)} slips.")
    if words := key_words(alignment.semitones):
        print(f"It sounds {words}.")
    played = sum(1 for one in alignment.passes if one.spans)
    for passage in range(1, played + 1):
        if played > 1:
            print(f"Passage {passage} of {played}")
        for one in (figure for figure in naming.figures if figure.passage == passage):
            name = capital(say(technique_named(one.technique).name))
            other = "" if one.confidence >= 0.9 else f" (else {_other_name(one.other)})"
            print(f"  bar {one.bar:>3} beat {one.beat:<5.4g} {one.confidence:>4.0%}  {name}{other}")
        for slip in (slip for slip in naming.slips if slip.passage == passage):
            print(f"  bar {slip.bar:>3} beat {slip.beat:<5.4g} slip  {slip_words(alignment, slip)}")


def _other_name(other: str) -> str:
    from fioritura.listening.naming import PLAIN
    from fioritura.techniques.table import technique_named

    return "no ornament" if other == PLAIN else capital(say(technique_named(other).name))
