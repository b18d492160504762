"""`fioritura spots`: every figure that would fit a tune, with place, reason and score."""

from __future__ import annotations

import argparse
from typing import Any

from fioritura.cli.options import (
    WHERE_WIDTH,
    add_source_options,
    add_taste_options,
    full,
    names,
    place_of,
    print_json,
    print_note,
    print_words,
    setting_of,
    tune_of,
)
from fioritura.words import capital, say

__all__ = ["add_parser", "run"]

_ABOUT = """\
List every place of a tune where a technique would fit: bar, beat, technique, score and the reason in words.

  fioritura spots tune.abc --only turn,lower-grace-semitone
  fioritura spots tune.abc --best 20 --why       the twenty best, and what made each score
"""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "spots",
        help="list every figure that would fit, with reason and score",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_source_options(parser)
    add_taste_options(parser)
    parser.add_argument("--best", type=int, metavar="N", help="only the N with the highest score")
    parser.add_argument("--why", action="store_true", help="what each feature adds to the score")
    parser.add_argument("--json", action="store_true", help="print a list of objects as JSON")
    parser.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """List the spots."""
    from fioritura.arrange.survey import difficulty, figure_id, survey
    from fioritura.lesson.edition import sounding_start
    from fioritura.techniques.table import technique_named

    tune = tune_of(options)
    setting = setting_of(options, tune)
    found = survey(tune, setting, names(options.only), names(options.without))
    figures = list(found.figures)
    if options.best is not None:
        kept = sorted(figures, key=lambda figure: -figure.score)[: max(options.best, 0)]
        figures = [figure for figure in figures if figure in kept]
    rows: list[dict[str, Any]] = []
    for figure in figures:
        bar, beat = tune.beat_at(sounding_start(tune, figure))
        row: dict[str, Any] = {
            "id": figure_id(figure),
            "technique": figure.technique,
            "bar": bar,
            "beat": round(beat, 6),
            "anchors": list(figure.anchors),
            "reason": say(figure.why),
            "score": figure.score,
            "level": technique_named(figure.technique).level,
            "difficulty": difficulty(figure, setting),
        }
        if options.why:
            row["why"] = {say(name): round(value, 4) for name, value in found.why(figure).items()}
        rows.append(row)
    if options.json:
        print_json(rows)
        return 0
    for warning in tune.warnings:
        print_note(warning)
    for row in rows:
        name = capital(say(technique_named(row["technique"]).name))
        where = full(place_of(tune, row["bar"], row["beat"]))
        print(f"{where:<{WHERE_WIDTH}} {row['score']:>6.2f}  {name}: {row['reason']}")
        for feature, value in row.get("why", {}).items():
            print(f"{'':>{WHERE_WIDTH + 1}}{value:+.2f}  {feature}")
    print_words("cli-spots", spots=len(rows), techniques=len({row["technique"] for row in rows}))
    return 0
