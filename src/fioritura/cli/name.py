"""`fioritura name`: which ornaments another setting or performance of a tune uses."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import WHERE_WIDTH, full, place_of, print_json, print_note, print_words
from fioritura.words import Message, capital, message, say

if TYPE_CHECKING:
    from fioritura.listening.naming import NamedFigure, Naming

__all__ = ["add_parser", "run"]

_SURE = 0.9
"""Below it the second likeliest name is told, too."""

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
            print_note(message("problem-in-file", name=name, problem=warning))
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
    tune = alignment.tune
    print_words("cli-named", title=tune.title, figures=len(naming.figures), slips=len(naming.slips))
    if words := key_words(alignment.semitones):
        print_words("cli-sounds", where=words)
    played = sum(1 for one in alignment.passes if one.spans)
    for passage in range(1, played + 1):
        if played > 1:
            print_words("cli-passage", number=passage, count=played)
        for one in (figure for figure in naming.figures if figure.passage == passage):
            name = technique_named(one.technique).name
            if one.confidence < _SURE:
                name = message("cli-else", name=name, other=_other_name(one.other))
            where = full(place_of(tune, one.bar, one.beat))
            print(f"  {where:<{WHERE_WIDTH}} {one.confidence:>4.0%}  {capital(say(name))}")
        for slip in (slip for slip in naming.slips if slip.passage == passage):
            where = full(place_of(tune, slip.bar, slip.beat))
            print(f"  {where:<{WHERE_WIDTH}} {say(message('cli-slip'))}  {say(slip_words(alignment, slip))}")


def _other_name(other: str) -> Message:
    from fioritura.listening.naming import PLAIN
    from fioritura.techniques.table import technique_named

    return message("no-ornament") if other == PLAIN else technique_named(other).name
