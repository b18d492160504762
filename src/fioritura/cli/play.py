"""`fioritura play`: a tune with a band, as sound or MIDI, ready to practise with."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import add_choice_options, add_source_options, names, setting_of, tune_of
from fioritura.cli.sound_options import (
    add_form_options,
    add_sound_options,
    give_out,
    keys_of,
    tempos_of,
)
from fioritura.players.idiom import IDIOMS, idiom_of, tradition_of
from fioritura.players.instrument import INSTRUMENTS

if TYPE_CHECKING:
    from fioritura.lesson.practice import Practice

__all__ = ["add_parser", "run"]

_ABOUT = """\
Play a tune, plain or ornamented, with a band that follows its chords; write it as MP3, WAV, FLAC or MIDI.

  fioritura play tune.musicxml --out tune.mp3
  fioritura play tune.abc --what in-turn --times 2 --tempo 90 --out turns.mp3
  fioritura play tune.abc --bars 5-8 --times 8 --tempo 70,80,90,100 --out loop.mp3      one file for each tempo
  fioritura play tune.abc --mute melody --key all --out keys.mp3                        one file for each key
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "play",
        help="play a tune with a band, as MP3, WAV, FLAC or MIDI",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_source_options(parser, has_key=False)
    group = parser.add_argument_group("melody")
    group.add_argument(
        "--what",
        choices=("plain", "ornamented", "in-turn"),
        default="ornamented",
        help="in-turn: one after the other",
    )
    group.add_argument("--player", default="alto-sax", metavar="INSTRUMENT", help=f"{', '.join(INSTRUMENTS)}")
    group.add_argument("--level", type=int, default=3, metavar="1-5", help="1 beginner to 5 expert (default: 3)")
    group.add_argument("--idiom", choices=IDIOMS, help="whose ornaments (default: what the file says, else jazz)")
    add_choice_options(group)
    form = add_form_options(parser)
    form.add_argument("--choruses", type=int, default=0, metavar="N", help="solo choruses, then the head again")
    form.add_argument("--bars", metavar="A-B", help="loop these bars after a bar of count-in")
    form.add_argument("--times", type=int, default=1, metavar="N", help="how often the head or the loop is played")
    form.add_argument("--no-band", action="store_true", help="melody alone, after a count-in")
    add_sound_options(parser)
    parser.add_argument("--out", type=Path, metavar="FILE", help=".mp3 .wav .flac or .mid (default: TUNE.mp3)")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Play the tune in every version that is asked for."""
    practice = _practice(options)
    out = options.out or Path(f"{options.tune.stem}.mp3")
    return give_out(practice, options, [out])


def _practice(options: argparse.Namespace) -> Practice:
    from fioritura.accompany.excerpt import bar_range
    from fioritura.accompany.feels import default_feel, feel_named
    from fioritura.arrange.arranger import ornament
    from fioritura.lesson.practice import Practice
    from fioritura.players.instruments import instrument_named

    tune = tune_of(options)
    tempos = tempos_of(options, tune)
    feel = (
        feel_named(options.feel)
        if options.feel
        else default_feel(tune, is_folk=tradition_of(options.idiom or idiom_of(tune)) == "folk")
    )
    line = tune.notes
    if options.what != "plain":
        fastest = argparse.Namespace(
            **{**vars(options), "feel": feel.line_feel, "tempo": max(tempos.beats, default=None)}
        )
        rendition = ornament(
            tune,
            setting_of(fastest, tune),
            seed=options.seed,
            only=names(options.only),
            without=names(options.without),
        )
        line = rendition.line
    return Practice(
        tune,
        line,
        instrument_named(options.player),
        feel,
        what=options.what,
        keys=keys_of(options, tune),
        quarters_per_minute=tempos.quarters,
        choruses=options.choruses,
        times=options.times,
        bars=bar_range(options.bars) if options.bars else None,
        has_band=not options.no_band,
        clicks=options.click,
        ending=options.ending,
        exact=options.exact,
        seed=options.seed,
    )
