"""`fioritura backing`: the band without the melody, to play along with."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any, Final

from fioritura.cli.options import add_plan_options, add_source_options, plan_of, tune_of
from fioritura.cli.sound_options import add_form_options, add_sound_options, give_out, keys_of, loops_of, tempos_of

__all__ = ["add_parser", "run"]

USUAL_CHORUSES: Final = 3

_ABOUT = """\
Write a play-along for a tune: count-in, choruses and ending, by bass, chords and drums in a feel.

  fioritura backing tune.musicxml --choruses 4 --feel swing --out tune-backing
  fioritura backing tune.abc --feel bossa --tempo 130 --key all --out twelve-keys
  fioritura backing tune.abc --minus each --tempo 90,120 --out minus-one      for bass players, pianists, drummers
  fioritura backing tune.abc --just drums --click --bars 1-8 --out drums-alone
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "backing",
        help="write a play-along: the band without the melody",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_source_options(parser, has_key=False)
    form = add_form_options(parser)
    add_plan_options(form, "3")
    add_sound_options(parser)
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder (default: TUNE-backing)")
    parser.add_argument(
        "--formats", default="mp3,mid", metavar="ENDING,...", help="of mp3 wav flac mid (default: mp3,mid)"
    )
    parser.set_defaults(run=run, player="concert")


def run(options: argparse.Namespace) -> int:
    """Write the play-along in every version and format that is asked for."""
    from fioritura.accompany.feels import default_feel, feel_named
    from fioritura.cli.options import names
    from fioritura.lesson.practice import Practice
    from fioritura.players.instruments import INSTRUMENTS

    tune = tune_of(options)
    practice = Practice(
        tune,
        tune.notes,
        INSTRUMENTS["concert"],
        feel_named(options.feel) if options.feel else default_feel(tune),
        what="backing",
        keys=keys_of(options, tune),
        quarters_per_minute=tempos_of(options, tune).quarters,
        plan=plan_of(options, USUAL_CHORUSES),
        loops=loops_of(options),
        opening=options.opening,
        clicks=options.click,
        ending=options.ending,
        exact=options.exact,
        seed=options.seed,
    )
    folder = options.out or Path(f"{options.tune.stem}-backing")
    return give_out(practice, options, [folder / f"backing.{ending}" for ending in names(options.formats)])
