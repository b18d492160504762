"""`fioritura batch`: whole folders and books of tunes."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from fioritura.cli.options import add_taste_options, names, print_json, print_words
from fioritura.words import message, say

if TYPE_CHECKING:
    from fioritura.batch.batch import Summary
    from fioritura.batch.pool import Team
    from fioritura.batch.wishes import Wishes

__all__ = ["SOME_FAILED", "add_parser", "run"]

SOME_FAILED: Final = 4
"""The exit code where some tunes were made and others failed."""

_SHOWN: Final = 12
_WORD_SEC: Final = 30.0

_ABOUT = """\
Make notation, sound, lesson packs and reports on takes of every tune of a folder or a book.

  fioritura batch tunes --out made --levels 1,3,5
  fioritura batch book.abc --out made --make notation,sound --formats musicxml,pdf --workers 4
  fioritura batch tunes --out made --make report --takes recordings     takes named after their tunes
  fioritura batch tunes --out made --scheduler tcp://192.168.1.20:8786  on a cluster: see docs/cluster.md

Run the same command again after any stop: what is done is not done again. A tune that fails does not stop the
others; failures.csv and batch.json in the folder say why. Exit code 4: some tunes failed, the others are made.
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "batch",
        help="whole folders and books: notation, sound, packs, reports on takes",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("source", type=Path, metavar="FOLDER|BOOK", help="a folder of tunes, or an ABC book")
    parser.add_argument("--out", type=Path, metavar="DIR", help="folder for the results (default: NAME-batch)")
    group = parser.add_argument_group("what to make")
    group.add_argument("--make", default="notation", metavar="KIND,...", help="of notation sound pack report")
    group.add_argument(
        "--levels", default="3", metavar="N,N", help="levels of each tune, as 1,3,5 or 1-5 (default: 3)"
    )
    group.add_argument("--formats", default="musicxml", metavar="ENDING,...", help="of musicxml abc mid svg pdf")
    group.add_argument("--audio", choices=("mp3", "flac", "wav"), default="mp3")
    group.add_argument(
        "--sections",
        default="",
        metavar="NAME,...",
        help="of a pack: handout parts sound exercises levels page overlays",
    )
    group.add_argument("--paper", choices=("a4", "letter"), default="a4")
    group.add_argument(
        "--takes", type=Path, metavar="FOLDER", help="recordings to report on (default: the tunes' folder)"
    )
    group.add_argument(
        "--asked", type=int, default=0, metavar="N", help="the takes were to play the arrangement of this level"
    )
    add_taste_options(parser, has_level=False)
    parser.add_argument(
        "--seed", type=int, default=0, metavar="N", help="another good version (default: 0, the best)"
    )
    parser.add_argument("--unfold", action="store_true", help="write the repeats out and ornament each time anew")
    parser.add_argument(
        "--octave", type=int, metavar="N", help="play N octaves higher (default: where the tune fits)"
    )
    parser.add_argument(
        "--irregular", choices=("refuse", "keep"), default="refuse", help="what to do with bars that do not add up"
    )
    group = parser.add_argument_group("workers")
    group.add_argument("--workers", type=int, metavar="N", help="processes at once (default: one a core)")
    group.add_argument("--scheduler", metavar="tcp://...", help="of a dask cluster, in place of this machine's cores")
    group.add_argument(
        "--limit", type=float, default=900.0, metavar="SECONDS", help="give a tune up after so long (default: 900)"
    )
    parser.add_argument("--json", action="store_true", help="print a summary as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Run the batch and say what failed."""
    from fioritura.batch.batch import run_batch
    from fioritura.batch.sources import Sources
    from fioritura.errors import OptionError

    if options.limit <= 0:
        raise OptionError("cli-no-time", given=options.limit)
    if options.takes and "report" not in names(options.make):
        raise OptionError("cli-takes-unasked")
    wishes, out = _wishes(options), options.out or Path(f"{options.source.stem}-batch")
    takes = options.takes
    if "report" in wishes.kinds and takes is None:
        takes = options.source if options.source.is_dir() else options.source.parent
    sources = Sources(options.source, out, takes if "report" in wishes.kinds else None)
    with _progress() as progress:
        summary = run_batch(sources, out, wishes, _team(options), progress, options.limit)
    if options.json:
        print_json(_record(summary, out))
    else:
        _say(summary, out)
    return SOME_FAILED if summary.reasons else 0


def _wishes(options: argparse.Namespace) -> Wishes:
    from fioritura.batch.wishes import Wishes
    from fioritura.lesson.pack import SECTIONS

    return Wishes(
        kinds=names(options.make),  # type: ignore[arg-type]
        levels=_levels(options.levels),
        formats=names(options.formats),
        audio=options.audio,
        player=options.player,
        idiom=options.idiom,
        feel=options.feel,
        tempo=options.tempo,
        density=options.density,
        only=names(options.only),
        without=names(options.without),
        seed=options.seed,
        irregular=options.irregular,
        unfold=options.unfold,
        octave=options.octave,
        sections=names(options.sections) or SECTIONS[:-1],
        language=options.language,
        paper=options.paper,
        asked=options.asked,
    )


def _levels(text: str) -> tuple[int, ...]:
    """Levels as they are named: ``"1,3,5"`` or ``"1-5"``."""
    from fioritura.errors import OptionError

    found: dict[int, None] = {}
    for part in names(text):
        first, _, last = part.partition("-")
        if not (first.isdecimal() and (last or first).isdecimal() and len(first + last) <= 4):
            raise OptionError("cli-no-levels", given=text)
        found |= dict.fromkeys(range(int(first), int(last or first) + 1))
    return tuple(found)


def _team(options: argparse.Namespace) -> Team:
    """The workers: a cluster's, or processes here."""
    from fioritura.errors import OptionError
    from fioritura.lesson.workers import worker_count

    if options.workers is not None and options.workers < 1:
        raise OptionError("cli-no-workers", given=options.workers)
    if options.scheduler:
        from fioritura.batch.cluster import Cluster

        return Cluster(options.scheduler)
    from fioritura.batch.pool import Pool

    return Pool(options.workers or worker_count())


def _record(summary: Summary, out: Path) -> dict[str, Any]:
    import json

    from fioritura.batch.store import REPORT

    report: dict[str, Any] = json.loads((out / REPORT).read_text(encoding="utf-8"))
    return {
        "out": str(out),
        "made": summary.made,
        "done_before": summary.done_before,
        "seconds": round(summary.seconds, 2),
        "cpu_seconds": {name: round(value, 2) for name, value in sorted(summary.cpu_sec.items())},
        **report,
    }


def _say(summary: Summary, out: Path) -> None:
    from itertools import islice

    from fioritura.batch.store import FAILURES, failures_in

    print_words(
        "cli-batch-done",
        tunes=summary.tunes,
        made=summary.made,
        before=summary.done_before,
        time=_clock(summary.seconds),
        out=str(out),
    )
    if not summary.reasons:
        return
    print_words("cli-batch-failed", failed=summary.failed)
    for kind, count in summary.reasons.most_common():
        print(f"  {count:>7,}  {kind}")
    for failure in islice(failures_in(out), _SHOWN):
        piece = f" ({failure.piece})" if failure.piece else ""
        print(f"  {failure.source}{piece}: {failure.reason}")
    print_words("cli-batch-reasons", path=str(out / FAILURES))


def _clock(seconds: float) -> str:
    whole = round(seconds)
    return (
        f"{whole // 3600}:{whole // 60 % 60:02}:{whole % 60:02}"
        if whole >= 3600
        else f"{whole // 60}:{whole % 60:02}"
    )


@contextmanager
def _progress() -> Iterator[Callable[[Summary], None]]:
    """A bar with the time left on a terminal, else a line now and then."""
    if not sys.stderr.isatty():
        yield _lines()
        return
    from tqdm import tqdm

    tqdm.monitor_interval = 0
    form = "{percentage:3.0f}% |{bar}| {desc} [{elapsed} + {remaining}]"
    with tqdm(
        total=1.0,
        desc=say(message("cli-batch-progress", tunes=0, failed=0)),
        bar_format=form,
        leave=False,
        mininterval=0.2,
    ) as bar:

        def tell(summary: Summary) -> None:
            words = message("cli-batch-progress", tunes=summary.tunes, failed=summary.failed)
            bar.set_description_str(say(words), refresh=False)
            bar.update(summary.share - bar.n)

        yield tell


def _lines() -> Callable[[Summary], None]:
    last = 0.0

    def tell(summary: Summary) -> None:
        nonlocal last
        if summary.seconds - last >= _WORD_SEC and summary.share:
            last = summary.seconds
            left = summary.seconds * (1 / summary.share - 1)
            counts = message("cli-batch-progress", tunes=summary.tunes, failed=summary.failed)
            share = round(100 * summary.share)
            print(say(message("cli-batch-line", share=share, counts=counts, left=_clock(left))), file=sys.stderr)

    return tell
