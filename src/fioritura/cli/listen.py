"""`fioritura listen`: hear a take, name its ornaments, and say what to practise."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import (
    WHERE_WIDTH,
    full,
    part_of,
    print_files,
    print_json,
    print_note,
    print_words,
)
from fioritura.words import capital, message, say

if TYPE_CHECKING:
    from fioritura.arrange.arrangement import Arrangement
    from fioritura.review.progress import TakeRow
    from fioritura.review.take_review import Review
    from fioritura.tune import Tune

__all__ = ["add_parser", "run"]

_ABOUT = """\
Listen to a recording of one wind player and report on it: which ornaments came out, pitch, time, evenness and
level, and what to practise next, each with its exercise. The first sentence names the one thing that matters most.

  fioritura listen take.wav --tune tune.musicxml
  fioritura listen take.mp3 --asked tune/arrangement.json --out report
  fioritura listen monday.wav friday.wav --asked tune/arrangement.json --out report

With --asked the report says which of the arrangement's ornaments were played. Any key, octave and tempo will do;
a take of another tune is refused with exit code 3. With --out the report is written as page, print and data. Of
several takes the last is reported on and the others show the progress, as do the takes that an earlier report in
the same folder was on.
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "listen",
        help="hear a take, name its ornaments and say what to practise",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument(
        "takes", type=Path, nargs="+", metavar="TAKE", help="a WAV, FLAC, MP3 or OGG recording; several: oldest first"
    )
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
    parser.add_argument(
        "--tempo",
        type=float,
        metavar="BPM",
        help="beats a minute that were asked for (with --asked: the arrangement's)",
    )
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder for report.html, report.pdf, report.json")
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4")
    parser.add_argument("--json", action="store_true", help="print the report as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Hear, report and say."""
    from fioritura.review.folder import PROGRESS_FILE, write_review
    from fioritura.review.progress import joined, read_rows, row_of, shown

    step = _progress()
    arrangement = _arrangement(options)
    tune = arrangement.tune if arrangement else _tune(options)
    rows = read_rows(options.out / PROGRESS_FILE) if options.out else ()
    for path in options.takes:
        step(say(message("cli-hearing", name=path.name)))
        review = _reviewed(options, path, tune, arrangement)
        rows = joined(rows, row_of(review, path))
    files = write_review(review, rows, options.out, options.paper, step) if options.out else []
    own = shown(rows, tune)
    if options.json:
        print_json(
            {**_with_progress(review, own), "heard": review.take.heard(), "files": [str(path) for path in files]}
        )
    else:
        _say(review, own)
        if files:
            print_files(files, options.out)
    return 0


def _progress() -> Any:
    """A progress bar on a terminal; nothing elsewhere."""
    if not sys.stderr.isatty():
        return lambda name: None
    from tqdm import tqdm

    bar = tqdm(total=None, unit="step", leave=False, desc=say(message("cli-reading")))

    def step(name: str) -> None:
        bar.set_description(name)
        bar.update()

    return step


def _reviewed(options: argparse.Namespace, path: Path, tune: Tune, arrangement: Arrangement | None) -> Review:
    from fioritura.players.instruments import instrument_named
    from fioritura.review.take_review import review_take
    from fioritura.theory.metre import QUARTER

    instrument = instrument_named(options.player) if options.player else None
    tempo = options.tempo * tune.metre.beat_ticks / QUARTER if options.tempo else None
    return review_take(path, tune, asked=arrangement, instrument=instrument, level=options.level, tempo=tempo)


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
        raise OptionError("cli-which-tune")
    return read_tune(options.tune, part=part_of(options.part), tune_number=options.number, irregular="keep")


def _with_progress(review: Review, rows: tuple[TakeRow, ...]) -> dict[str, Any]:
    """What `--json` prints."""
    from dataclasses import asdict

    return {**review.to_dict(), "progress": [asdict(row) for row in rows]}


def _say(review: Review, rows: tuple[TakeRow, ...]) -> None:
    from fioritura.listening.rows import Status
    from fioritura.review.progress import progress_words

    report = review.report
    for finding in review.take.findings:
        print_note(finding.advice)
    timing = report.timing
    print(f"{report.title}: {say(review.headline)}")
    if review.praise != review.headline:
        print(say(review.praise))
    print_words(
        "cli-played",
        tempo=round(timing.quarters_per_minute),
        drift=f"{timing.drift_percent:+.0f}",
        spread=round(timing.spread_ms),
        swing=round(timing.swing_ratio, 2),
        tuning=f"{report.tuning_cents:+.0f}",
    )
    for row in report.figures:
        sure = "" if row.status is Status.MISSED else f"{row.confidence:.0%}"
        mark = say(message("cli-status", status=str(row.status))) if report.is_asked else ""
        print(f"  {full(row.position):<{WHERE_WIDTH}} {mark:<9} {sure:>4}  {capital(say(row.name))}")
    for slip in report.slips:
        print(f"  {full(slip.position):<{WHERE_WIDTH}} {say(message('cli-slip')):<9}       {say(slip.words)}")
    print_words("cli-practise-next")
    for number, one in enumerate(review.advice, start=1):
        print(f"  {number}. {say(one.title)}. {say(one.finding)}")
        print(f"     {say(one.practice)}")
    if len(rows) > 1:
        print(say(progress_words(rows)))
