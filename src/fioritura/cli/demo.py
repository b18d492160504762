"""`fioritura demo`: the whole job on the tune that comes with the program."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from fioritura.cli.options import add_taste_options, names, setting_of
from fioritura.cli.ornament import add_edition_options, give_out

__all__ = ["add_parser", "run"]


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser("demo", help="ornament the tune that comes with the program")
    add_taste_options(parser)
    parser.add_argument(
        "--seed", type=int, default=0, metavar="N", help="another good version (default: 0, the best)"
    )
    parser.add_argument("--octave", type=int, metavar="N", help="play N octaves higher (lower: -1)")
    add_edition_options(parser)
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Ornament the demo tune, its repeats written out."""
    from importlib.resources import as_file, files

    from fioritura.arrange.arrangement import arranged
    from fioritura.arrange.prepare import prepared
    from fioritura.notation.read import read_tune
    from fioritura.players.instruments import instrument_named

    with as_file(files("fioritura.data") / "lanterns.abc") as path:
        tune = read_tune(path)
    tune = prepared(tune, instrument_named(options.player), octave=options.octave, unfold=True)
    arrangement = arranged(
        tune,
        setting_of(options, tune),
        seed=options.seed,
        only=names(options.only),
        without=names(options.without),
    )
    return give_out(arrangement, options, options.out or Path("demo"))
