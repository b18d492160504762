"""Options that several commands share, and what they ask for."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from fioritura.players.idiom import IDIOMS, idiom_of
from fioritura.players.instrument import INSTRUMENTS
from fioritura.words import Message, Value, message, say
from fioritura.words.speech import is_known_text

if TYPE_CHECKING:
    from fioritura.arrange.plan import Plan
    from fioritura.players.setting import Setting
    from fioritura.theory.key import Key
    from fioritura.theory.position import Position
    from fioritura.tune import Tune

__all__ = [
    "WHERE_WIDTH",
    "add_choice_options",
    "add_key_option",
    "add_plan_options",
    "add_source_options",
    "add_taste_options",
    "file_tune",
    "full",
    "names",
    "part_of",
    "place_of",
    "plan_of",
    "print_files",
    "print_json",
    "print_note",
    "print_plan",
    "print_warnings",
    "print_words",
    "setting_of",
    "tune_of",
    "with_hint",
]


def add_source_options(parser: argparse.ArgumentParser, *, has_key: bool = True) -> None:
    """TUNE and how to read it; the key it is moved to where a command `has_key` of no other meaning."""
    parser.add_argument("tune", type=Path, metavar="TUNE", help="a MusicXML (.musicxml .xml .mxl), ABC or MIDI file")
    group = parser.add_argument_group("reading")
    group.add_argument(
        "--number", type=int, metavar="N", help="which tune of a book, counted from 1 (default: the first)"
    )
    group.add_argument("--part", metavar="NAME|N", help="which part holds the melody (default: chosen, and named)")
    group.add_argument("--chords", default="", metavar='"C | Am7 | Dm7 G7"', help="chord symbols, bars parted by |")
    group.add_argument(
        "--irregular",
        choices=("refuse", "keep", "repair"),
        default="refuse",
        help="what to do with bars that do not add up",
    )
    group.add_argument(
        "--line", default="top", metavar="top|bottom|N", help="which of several notes at once (default: top)"
    )
    group.add_argument("--unfold", action="store_true", help="write the repeats out and ornament each time anew")
    group.add_argument(
        "--octave",
        type=int,
        metavar="N",
        help="play N octaves higher (lower: -1) than the file (default: where it fits)",
    )
    if has_key:
        add_key_option(group)


def add_key_option(group: argparse._ArgumentGroup | argparse.ArgumentParser) -> None:
    """The key that the tune is moved to."""
    group.add_argument(
        "--key",
        dest="tune_key",
        metavar="KEY|best",
        help="move the tune to a sounding key, as Bb; best: the one that suits the player, or the players, best",
    )


def add_taste_options(parser: argparse.ArgumentParser, *, has_level: bool = True) -> None:
    """For whom, and in what manner, the tune is ornamented; one level where a command `has_level`."""
    group = parser.add_argument_group("player and manner")
    group.add_argument(
        "--player", default="alto-sax", metavar="INSTRUMENT", help=f"{', '.join(INSTRUMENTS)}; or a plugin's"
    )
    if has_level:
        group.add_argument("--level", type=int, default=3, metavar="1-5", help="1 beginner to 5 expert (default: 3)")
    group.add_argument("--idiom", choices=IDIOMS, help="whose ornaments (default: what the file says, else jazz)")
    group.add_argument("--feel", choices=("straight", "swing"), help="default: what the file says")
    group.add_argument("--tempo", type=float, metavar="BPM", help="beats a minute (in 6/8 dotted quarters)")
    add_choice_options(group)


def add_choice_options(group: argparse._ArgumentGroup) -> None:
    """How many ornaments, and which."""
    group.add_argument(
        "--density", type=float, default=1.0, metavar="X", help="how many ornaments: 0.25 to 2 times the usual"
    )
    group.add_argument("--only", default="", metavar="ID,ID", help="only these techniques or families, at any level")
    group.add_argument("--without", default="", metavar="ID,ID", help="without these techniques or families")


def add_plan_options(group: argparse._ArgumentGroup | argparse.ArgumentParser, usual: str) -> None:
    """How often the tune is played, and how that grows; `usual` says what holds unless it is asked for."""
    group.add_argument(
        "--choruses",
        type=int,
        metavar="N",
        help=f"how often the tune is played: nearly plain, then fuller, a climax (default: {usual})",
    )
    group.add_argument(
        "--curve", default="", metavar="X,X,...", help="the density of each chorus yourself, 0 to 2 times the usual"
    )


def plan_of(options: argparse.Namespace, usual: int = 1) -> Plan | None:
    """The plan that the options ask for, or the usual one of so many choruses; None where the tune is played once.

    Raises:
        OptionError: a curve that is none, or has another number of choruses than is asked for.
    """
    from fioritura.arrange.plan import Plan
    from fioritura.errors import OptionError

    if not options.curve:
        count = usual if options.choruses is None else options.choruses
        return Plan.usual(count) if count != 1 else None
    try:
        plan = Plan.of(float(text) for text in names(options.curve))
    except ValueError:
        raise OptionError("cli-no-curve", given=options.curve) from None
    if options.choruses not in (None, plan.count):
        raise OptionError("cli-curve-count", given=plan.count, count=options.choruses)
    return plan


def print_plan(plan: Plan | None, numbers: Iterable[int] | None = None) -> None:
    """Say how the choruses go, all or those with these numbers."""
    told = plan.told if plan else ()
    for number in range(len(told)) if numbers is None else numbers:
        print(f"  {say(told[number])}")


def names(text: str) -> tuple[str, ...]:
    """The names of a comma-separated list."""
    return tuple(name.strip() for name in text.split(",") if name.strip())


def tune_of(options: argparse.Namespace, path: Path | None = None) -> Tune:
    """The tune that the options name, ready for the player.

    Raises:
        ReadError, TuneError, RangeError, OptionError: see `read_tune` and `prepared`.
    """
    from fioritura.arrange.prepare import prepared
    from fioritura.players.instruments import instrument_named

    instrument = instrument_named(options.player)
    tune = file_tune(options, path)
    key: str | Key | None = getattr(options, "tune_key", None)
    return prepared(tune, instrument, octave=options.octave, chords=options.chords, unfold=options.unfold, key=key)


def file_tune(options: argparse.Namespace, path: Path | None = None) -> Tune:
    """The tune that the options name, as its file has it.

    Raises:
        ReadError, TuneError, OptionError: see `read_tune`.
    """
    from fioritura.notation.line import checked_line
    from fioritura.notation.read import read_tune

    return read_tune(
        path or options.tune,
        part=part_of(options.part),
        tune_number=options.number,
        irregular=options.irregular,
        line=checked_line(options.line),
    )


def part_of(text: str | None) -> str | int | None:
    """A part as `read_tune` takes it: a number, or a name."""
    return int(text[:9]) if text and text.isdecimal() else text


def setting_of(options: argparse.Namespace, tune: Tune) -> Setting:
    """The setting that the options ask for.

    Raises:
        OptionError: an unknown instrument or level, or a tempo outside 20-400 quarter notes a minute.
    """
    from fioritura.arrange.prepare import setting_for

    return setting_for(
        tune,
        options.player,
        options.level,
        beats_per_minute=options.tempo,
        feel=options.feel,
        idiom=options.idiom,
        density=options.density,
    )


WHERE_WIDTH: Final = 36
"""Columns for a place in the bar, in words."""


def print_words(id: str, /, **arguments: Value) -> None:
    """Say something on standard output."""
    print(say(message(id, **arguments)))


def with_hint(said: Message) -> Message:
    """What is said of a tune or an error, and which option of the command line has to do with it."""
    core = said.core
    hint = f"hint-{core.id}"
    return message("cli-hint", text=said, hint=Message(hint, core.args)) if is_known_text(hint) else said


def print_note(said: Message | str) -> None:
    """Say something beside the point, on standard error."""
    text = with_hint(said) if isinstance(said, Message) else said
    print(say(message("cli-note", text=text)), file=sys.stderr)


def print_warnings(tune: Tune, options: argparse.Namespace) -> None:
    """Say what was guessed, left out or moved when the tune was read, and when its feel is nobody's word."""
    from fioritura.players.feel import feel_by_custom

    for warning in tune.warnings:
        print_note(warning)
    idiom = getattr(options, "idiom", None) or idiom_of(tune)
    custom = None if getattr(options, "feel", "set") else feel_by_custom(tune, idiom)
    if custom:
        print_note(custom)


def print_files(paths: Sequence[Path], folder: Path | None = None) -> None:
    """Say which files were written; their names are those inside `folder` (default: the first one's own)."""
    folder = folder or (paths[0].parent if paths else Path())
    print_words("cli-written", folder=str(folder))
    print(f"  {'  '.join(str(path.relative_to(folder)) for path in paths)}")


def full(where: Position) -> str:
    """Bar and place in the bar: ``"bar 4, off-beat after 2"``."""
    return say(where.message.form("full"))


def place_of(tune: Tune, bar: int, beat: float) -> Position:
    """The place of a beat (from 1) of the first bar of a number."""
    from fioritura.theory.position import position_of_beat

    metre = next((each.metre for each in tune.bars if each.number == bar), tune.metre)
    return position_of_beat(metre, beat, bar)


def print_json(data: Any) -> None:
    """Machine-readable output."""
    import json

    print(json.dumps(data, indent=2, ensure_ascii=False))
