"""`fioritura ornament`: one tune, ornamented, in all its files."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import (
    WHERE_WIDTH,
    add_plan_options,
    add_source_options,
    add_taste_options,
    full,
    names,
    place_of,
    plan_of,
    print_files,
    print_json,
    print_note,
    print_plan,
    print_warnings,
    print_words,
    setting_of,
    tune_of,
)
from fioritura.words import capital, message, say

if TYPE_CHECKING:
    from fioritura.arrange.arrangement import Arrangement
    from fioritura.arrange.rendition import Rendition
    from fioritura.lesson.edition import Edition

__all__ = ["add_edition_options", "add_parser", "give_out", "run"]

_ABOUT = """\
Choose the best ornaments for a tune and write plain and ornamented notation, sheets and sound into a folder.

  fioritura ornament tune.musicxml --player tenor-sax --level 2 --out tune
  fioritura ornament book.abc --number 12 --idiom folk --seed 4 --out twelve

Seed 0 gives the best version; each other seed gives another good one, always the same.
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "ornament",
        help="ornament a tune and write notation, sheets and sound",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_source_options(parser)
    add_taste_options(parser)
    parser.add_argument(
        "--seed", type=int, default=0, metavar="N", help="another good version (default: 0, the best)"
    )
    parser.add_argument(
        "--lock", default="", metavar="ID,ID", help="figures that must stand (ids as in figures.json)"
    )
    parser.add_argument("--refuse", default="", metavar="ID,ID", help="figures that must not stand")
    add_plan_options(parser, "1, its repeats as written")
    add_edition_options(parser)
    parser.set_defaults(run=run)


def add_edition_options(parser: argparse.ArgumentParser) -> None:
    """Where to, and how the files look."""
    group = parser.add_argument_group("output")
    group.add_argument("--out", type=Path, metavar="DIR", help="folder for the files (default: the tune's name)")
    group.add_argument(
        "--formats", default="", metavar="ENDING,...", help="of musicxml mid abc svg pdf mp3 wav flac json"
    )
    group.add_argument("--concert", action="store_true", help="notate at sounding pitch")
    group.add_argument("--no-labels", action="store_true", help="no names above the figures")
    group.add_argument("--paper", choices=("a4", "letter"), default="a4")
    group.add_argument("--exact", action="store_true", help="sound without humanised timing")
    group.add_argument("--json", action="store_true", help="print a summary as JSON")


def run(options: argparse.Namespace) -> int:
    """Ornament the tune and give out its edition."""
    from fioritura.arrange.arrangement import arranged

    tune, plan = tune_of(options), plan_of(options)
    tune = plan.written_out(tune) if plan else tune
    arrangement = arranged(
        tune,
        setting_of(options, tune),
        seed=options.seed,
        only=names(options.only),
        without=names(options.without),
        locked=names(options.lock),
        refused=names(options.refuse),
        plan=plan,
    )
    return give_out(arrangement, options, options.out or Path(options.tune.stem))


def give_out(arrangement: Arrangement, options: argparse.Namespace, folder: Path) -> int:
    """Write the edition with a progress bar and say what was made."""
    from fioritura.lesson.edition import USUAL_FORMATS, Edition, write_edition

    rendition = arrangement.rendition
    edition = Edition(
        rendition,
        is_concert=options.concert,
        has_labels=not options.no_labels,
        paper=options.paper,
        formats=names(options.formats) or USUAL_FORMATS,
        exact=options.exact,
        arrangement=arrangement,
    )
    files = write_edition(edition, folder, _progress(edition))
    summary = summary_of(rendition, files)
    if options.json:
        print_json(summary)
    else:
        _say(rendition, summary, options)
    return 0


def summary_of(rendition: Rendition, files: list[Path]) -> dict[str, Any]:
    """What `--json` prints."""
    from fioritura.arrange.field import phrase_limits
    from fioritura.arrange.levels import level_of
    from fioritura.arrange.playable import places_to_practise
    from fioritura.lesson.edition import plan_record
    from fioritura.players.feel import styled
    from fioritura.theory.metre import WHOLE

    tune, setting = rendition.tune, rendition.setting
    level = level_of(setting)
    return {
        "title": tune.title,
        "part": tune.part_name,
        "key": str(tune.key),
        "player": setting.instrument.id,
        "level": setting.level,
        "idiom": setting.idiom,
        "feel": setting.feel,
        "style": styled(tune, setting.feel, setting.idiom).style,
        "quarters_per_minute": setting.quarters_per_minute,
        "seed": rendition.seed,
        "kept_share": round(rendition.kept_share, 4),
        "figure_count": len(rendition.figures),
        "figures_per_bar": round(len(rendition.figures) / max(tune.duration_ticks / WHOLE, 1e-9), 3),
        "most_figures_in_a_phrase": max(phrase_limits(tune, level, plan=rendition.plan), default=0),
        "plan": plan_record(rendition),
        "score": rendition.score,
        "hardest_places": [
            {
                "bar": place.bar,
                "beat": place.beat,
                "why": say(place.why),
                "practice": [say(step) for step in place.practice],
            }
            for place in places_to_practise(rendition)
        ],
        "chords_inferred": any(span.is_inferred for span in tune.chords),
        "chords": [span.text for span in tune.chords],
        "warnings": [say(warning) for warning in tune.warnings],
        "files": [str(path) for path in files],
    }


def _progress(edition: Edition) -> Any:
    """A progress bar on a terminal; nothing elsewhere."""
    if not sys.stderr.isatty():
        return lambda name: None
    from tqdm import tqdm

    bar = tqdm(total=None, unit="file", leave=False, desc=say(message("cli-writing")))

    def step(name: str) -> None:
        bar.set_description(say(message("cli-writing-file", name=name)))
        bar.update()

    return step


def _say(rendition: Rendition, summary: dict[str, Any], options: argparse.Namespace) -> None:
    from fioritura.lesson.edition import sounding_start
    from fioritura.techniques.table import technique_named

    print_warnings(rendition.tune, options)
    if summary["chords_inferred"]:
        print_note(message("cli-chords-inferred"))
    print_words(
        "cli-ornamented",
        title=summary["title"],
        part=summary["part"] or "",
        has_part=bool(summary["part"]),
        figures=summary["figure_count"],
        rate=round(summary["figures_per_bar"], 1),
        most=summary["most_figures_in_a_phrase"],
        kept=round(100 * summary["kept_share"]),
    )
    plan, shown = rendition.plan, -1
    for figure in rendition.figures:
        number = plan.number_at(rendition.tune, sounding_start(rendition.tune, figure)) if plan else 0
        if plan and number > shown:
            print_plan(plan, range(shown + 1, number + 1))
            shown = number
        where = rendition.tune.position_at(sounding_start(rendition.tune, figure))
        print(f"  {full(where):<{WHERE_WIDTH}} {capital(say(technique_named(figure.technique).name))}")
    if summary["hardest_places"]:
        print_words("cli-practise-first")
    for place in summary["hardest_places"]:
        print(
            f"  {full(place_of(rendition.tune, place['bar'], place['beat'])):<{WHERE_WIDTH}} {place['why']} {' '.join(place['practice'])}"
        )
    print_files([Path(name) for name in summary["files"]])
    print_words("care-rights.short")
    print_words("care-hearing.short")
