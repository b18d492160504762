"""`fioritura play`: a tune with a band, as sound or MIDI, ready to practise with."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import (
    add_choice_options,
    add_plan_options,
    add_source_options,
    names,
    plan_of,
    setting_of,
    tune_of,
)
from fioritura.cli.sound_options import (
    add_form_options,
    add_sound_options,
    give_out,
    keys_of,
    loops_of,
    tempos_of,
)
from fioritura.players.idiom import IDIOMS, idiom_of, tradition_of
from fioritura.players.instrument import INSTRUMENTS

if TYPE_CHECKING:
    from fioritura.arrange.plan import Plan
    from fioritura.lesson.practice import Practice
    from fioritura.tune import Tune

__all__ = ["add_parser", "run"]

_ABOUT = """\
Play a tune, plain or ornamented, with a band that follows its chords; write it as MP3, WAV, FLAC or MIDI.

  fioritura play tune.musicxml --out tune.mp3
  fioritura play tune.abc --what in-turn --times 2 --tempo 90 --out turns.mp3
  fioritura play tune.abc --choruses 3 --curve 0.2,0.8,1.5 --out tune.mp3               how dense each chorus is
  fioritura play tune.abc --bars 5-8,13-16 --times 8 --tempo 70,80,90 --out loop.mp3    one file for each loop and tempo
  fioritura play tune.abc --mute melody --key all --out keys.mp3                        one file for each key
  fioritura play tune.abc --minus each --out minus.mp3                                  one file without each part
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
    add_plan_options(form, "3 up to 12 bars, 2 up to 48, 1 beyond")
    form.add_argument("--solos", type=int, default=0, metavar="N", help="choruses without melody before the last one")
    form.add_argument("--times", type=int, default=1, metavar="N", help="how often all that, or the loop, is played")
    form.add_argument("--no-band", action="store_true", help="melody alone, after a count-in")
    add_sound_options(parser)
    parser.add_argument("--out", type=Path, metavar="FILE", help=".mp3 .wav .flac or .mid (default: TUNE.mp3)")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Play the tune in every version that is asked for."""
    practice = _practice(options)
    out = options.out or Path(f"{options.tune.stem}.mp3")
    return give_out(practice, options, [out])


def _planned(options: argparse.Namespace) -> tuple[Tune, Plan | None]:
    """The tune, written out as often as it is played, and the plan of it: a loop and an in-turn version have one only
    where it is asked for."""
    from fioritura.arrange.plan import usual_count

    tune = tune_of(options)
    is_once = options.bars or options.what == "in-turn"
    plan = plan_of(options, 1 if is_once else usual_count(tune))
    return (plan.written_out(tune) if plan else tune), plan


def _practice(options: argparse.Namespace) -> Practice:
    from fioritura.accompany.feels import default_feel, feel_named
    from fioritura.arrange.arranger import ornament
    from fioritura.lesson.practice import Practice
    from fioritura.players.instruments import instrument_named

    tune, plan = _planned(options)
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
            plan=plan,
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
        plan=plan,
        solos=options.solos,
        times=options.times,
        loops=loops_of(options),
        opening=options.opening,
        has_band=not options.no_band,
        clicks=options.click,
        ending=options.ending,
        exact=options.exact,
        seed=options.seed,
    )
