"""`fioritura listen`: hear a take, name its ornaments, and say what to practise."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import part_of, print_json

if TYPE_CHECKING:
    from fioritura.arrange.arrangement import Arrangement
    from fioritura.listening.advice import Advice
    from fioritura.listening.notes import Take
    from fioritura.listening.report import Report
    from fioritura.players.instruments import Instrument
    from fioritura.tune import Tune

__all__ = ["add_parser", "run"]

_ABOUT = """\
Listen to a recording of one wind player and report on it: which ornaments came out, pitch, time, evenness and
level, and the three things to practise next.

  fioritura listen take.wav --tune tune.musicxml
  fioritura listen take.mp3 --asked tune/arrangement.json --out report

With --asked the report says which of the arrangement's ornaments were played. Any key, octave and tempo will do;
a take of another tune is refused with exit code 3.
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "listen",
        help="hear a take, name its ornaments and say what to practise",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("take", type=Path, metavar="TAKE", help="a WAV, FLAC, MP3 or OGG recording")
    parser.add_argument("--tune", type=Path, metavar="TUNE", help="the plain tune: MusicXML, ABC or MIDI")
    parser.add_argument(
        "--asked", type=Path, metavar="ARRANGEMENT", help="an arrangement.json: what was to be played"
    )
    parser.add_argument("--number", type=int, metavar="N", help="which tune of a book")
    parser.add_argument("--part", metavar="NAME|N", help="which part holds the melody")
    parser.add_argument("--player", metavar="INSTRUMENT", help="names notes as this instrument reads them")
    parser.add_argument(
        "--level", type=int, default=3, metavar="1-5", help="for the next ornament to try (default: 3)"
    )
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder for report.json")
    parser.add_argument("--json", action="store_true", help="print the report as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Hear, report and say."""
    from fioritura.errors import OtherTuneError
    from fioritura.listening.advice import advice_on, praise_for
    from fioritura.listening.hear import hear
    from fioritura.listening.report import report_on
    from fioritura.listening.words import likeness_words, refuse_unclear

    arrangement = _arrangement(options)
    tune = arrangement.tune if arrangement else _tune(options)
    asked = arrangement.rendition.figures if arrangement else ()
    take = hear(options.take)
    refuse_unclear(take, options.take.name)
    naming, report = report_on(tune, take, asked, instrument=_instrument(options, arrangement))
    if not naming.alignment.is_this_tune:
        raise OtherTuneError(f"{options.take.name}: {likeness_words(naming.alignment)}")
    feel = arrangement.setting.feel if arrangement else tune.feel
    level = arrangement.setting.level if arrangement else options.level
    advice = advice_on(report, feel, level)
    record = _record(report, take, praise_for(report), advice)
    if options.out:
        _write(options.out, record)
    if options.json:
        print_json(record)
    else:
        _say(report, take, praise_for(report), advice)
    return 0


def _arrangement(options: argparse.Namespace) -> Arrangement | None:
    from fioritura.arrange.arrangement_file import arrangement_from_json
    from fioritura.files import read_bytes

    if options.asked is None:
        return None
    return arrangement_from_json(read_bytes(options.asked).decode("utf-8", "replace"))


def _tune(options: argparse.Namespace) -> Tune:
    from fioritura.errors import OptionError
    from fioritura.notation.read import read_tune

    if options.tune is None:
        raise OptionError("Which tune was played? Give --tune with its file, or --asked with an arrangement.json.")
    return read_tune(options.tune, part=part_of(options.part), tune_number=options.number, irregular="keep")


def _instrument(options: argparse.Namespace, arrangement: Arrangement | None) -> Instrument | None:
    from fioritura.players.instruments import instrument_named

    if options.player:
        return instrument_named(options.player)
    return arrangement.setting.instrument if arrangement else None


def _record(report: Report, take: Take, praise: str, advice: tuple[Advice, ...]) -> dict[str, Any]:
    """What `--json` prints and report.json holds."""
    from dataclasses import asdict

    return {
        **report.to_dict(),
        "praise": praise,
        "advice": [asdict(one) for one in advice],
        "findings": [asdict(one) for one in take.findings],
    }


def _write(folder: Path, record: dict[str, Any]) -> None:
    import json

    from fioritura.files import staged_folder

    with staged_folder(folder) as stage:
        text = json.dumps(record, indent=2, ensure_ascii=False) + "\n"
        (stage / "report.json").write_text(text, encoding="utf-8")


def _say(report: Report, take: Take, praise: str, advice: tuple[Advice, ...]) -> None:
    from fioritura.listening.report import Status
    from fioritura.listening.words import key_words

    for finding in take.findings:
        print(f"note: {finding.advice}", file=sys.stderr)
    timing = report.timing
    print(f"{report.title}: {praise}")
    if words := key_words(report.semitones):
        print(f"It sounds {words}.")
    print(
        f"  tempo {timing.quarters_per_minute:.0f}, {timing.drift_percent:+.0f} percent to the end; "
        f"notes within {timing.spread_ms:.0f} ms; eighths {timing.swing_ratio:.2f} to 1; "
        f"tuning {report.tuning_cents:+.0f} cents"
    )
    for row in report.figures:
        sure = "" if row.status is Status.MISSED else f"{row.confidence:.0%}"
        mark = str(row.status) if report.is_asked else ""
        print(f"  bar {row.bar:>3} beat {row.beat:<5.4g} {mark:<7} {sure:>4}  {row.name}")
    for slip in report.slips:
        print(f"  bar {slip.bar:>3} beat {slip.beat:<5.4g} slip          {slip.words}")
    print("To practise next:")
    for number, one in enumerate(advice, start=1):
        print(f"  {number}. {one.title}. {one.finding}")
        print(f"     {one.practice}")
