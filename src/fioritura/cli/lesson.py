"""`fioritura lesson`: one tune, and everything that a class needs for it."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fioritura.cli.options import (
    add_plan_options,
    add_source_options,
    add_taste_options,
    file_tune,
    names,
    plan_of,
    print_json,
    print_note,
    print_plan,
    print_words,
    setting_of,
)
from fioritura.words import message, say

if TYPE_CHECKING:
    from fioritura.lesson.lesson import Lesson
    from fioritura.lesson.manifest import PackSource
    from fioritura.tune import Tune

__all__ = ["add_parser", "run"]

_ABOUT = """\
Make a lesson pack of a tune: handout, parts, sound, exercises, a graded path, and a page that works offline.

  fioritura lesson tune.musicxml --player alto-sax --level 3 --out pack
  fioritura lesson tune.abc --language de --paper letter --words mine.txt --out pack.zip
  fioritura lesson tune.abc --sections handout --out quick          the handout alone
  fioritura lesson pack/manifest.json --out again                   the same pack once more
"""

_REMEMBERED = (
    *("number", "part", "line", "chords", "irregular", "unfold", "octave", "tune_key"),
    *("player", "level", "idiom", "density", "feel", "tempo", "only", "without"),
    *("seed", "choruses", "curve", "players", "sections", "paper", "language", "notes", "clips", "audio"),
)
"""The options that a pack can be made from again."""


def add_parser(subparsers: Any) -> None:
    """Add the command."""
    parser = subparsers.add_parser(
        "lesson",
        help="make a lesson pack: handout, parts, sound, exercises, offline page",
        description=_ABOUT,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_source_options(parser)
    add_taste_options(parser)
    parser.add_argument(
        "--seed", type=int, default=0, metavar="N", help="another good version (default: 0, the best)"
    )
    add_plan_options(parser, "3 up to 12 bars, 2 up to 48, 1 beyond")
    group = parser.add_argument_group("pack")
    group.add_argument("--out", type=Path, metavar="DIR|FILE.zip", help="where to (default: TUNE-lesson)")
    group.add_argument("--players", default="", metavar="ID,ID", help="who gets a part (default: a usual class)")
    group.add_argument(
        "--sections",
        default="",
        metavar="NAME,...",
        help="of handout parts sound exercises levels page overlays clips",
    )
    group.add_argument("--clips", action="store_true", help="video clips of the examples, too (slow)")
    group.add_argument("--paper", choices=("a4", "letter"), default="a4")
    group.add_argument(
        "--notes", choices=("english", "german", "solfege"), help="note names (default: the language's)"
    )
    group.add_argument("--words", type=Path, metavar="FILE", help="your own title, notes, studio line, texts")
    group.add_argument("--audio", choices=("mp3", "flac", "wav"), default="mp3")
    group.add_argument("--workers", type=int, metavar="N", help="processes at once (default: one a core)")
    group.add_argument("--json", action="store_true", help="print the manifest as JSON")
    parser.set_defaults(run=run, plan=None)


def run(options: argparse.Namespace) -> int:
    """Make the pack and say what is in it."""
    from fioritura.lesson.pack import PackOptions, write_pack
    from fioritura.lesson.parts import CLASS_SET

    lesson, source = _lesson(options)
    usual = ("handout", "parts", "sound", "exercises", "levels", "page", "overlays")
    sections = names(options.sections) or usual
    wanted = PackOptions(
        players=names(options.players) or CLASS_SET,
        sections=(*sections, "clips") if options.clips and "clips" not in sections else sections,
        audio=options.audio,
        workers=options.workers,
    )
    out = options.out or Path(f"{source.tune.stem}-lesson")
    settings = options.plan or {name: getattr(options, name) for name in _REMEMBERED}
    with _progress() as progress:
        manifest = write_pack(lesson, out, wanted, source=source, settings=settings, progress=progress)
    if options.json:
        print_json(manifest)
        return 0
    for warning in manifest["warnings"]:
        print_note(warning)
    for missing in manifest["left_out"]:
        print_note(message("cli-no-part-for", player=missing["player"], reason=missing["reason"]))
    size = sum(file["bytes"] for file in manifest["files"]) / 1e6
    print_words(
        "cli-pack-made",
        title=lesson.title,
        techniques=len(lesson.examples),
        files=len(manifest["files"]),
        size=round(size, 1),
        out=str(out),
    )
    print_plan(lesson.rendition.plan)
    return 0


def _lesson(options: argparse.Namespace) -> tuple[Lesson, PackSource]:
    from fioritura.arrange.plan import usual_count
    from fioritura.lesson.lesson import lesson_of
    from fioritura.lesson.manifest import PackSource, read_manifest
    from fioritura.lesson.overrides import Overrides, read_overrides
    from fioritura.lesson.plan import check_language

    if options.tune.suffix.lower() == ".json":
        settings, source = read_manifest(options.tune)
        if "plan" in settings:
            return _planned(options, settings, source)
        for name in _REMEMBERED:
            setattr(options, name, settings.get(name, 1 if name == "choruses" else getattr(options, name)))
    else:
        source = PackSource(options.tune, options.words)
    check_language(options.language)
    overrides = read_overrides(source.overrides) if source.overrides else Overrides()
    tune, octave = _ready_tune(options, source.tune)
    lesson = lesson_of(
        tune,
        setting_of(options, tune),
        seed=options.seed,
        only=names(options.only),
        without=names(options.without),
        language=options.language,
        naming=options.notes,
        overrides=overrides,
        paper=options.paper,
        octave=octave,
        plan=plan_of(options, usual_count(tune)),
    )
    return lesson, source


def _planned(
    options: argparse.Namespace, settings: Mapping[str, Any], source: PackSource
) -> tuple[Lesson, PackSource]:
    """The lesson of a pack that was made by a plan from an arrangement."""
    from fioritura.arrange.arrangement_file import arrangement_from_json
    from fioritura.files import read_bytes
    from fioritura.lesson.plan import plan_of, planned_lesson

    plan = plan_of(settings["plan"])
    arrangement = arrangement_from_json(read_bytes(source.tune).decode("utf-8", "replace"))
    options.players, options.sections = ",".join(plan.players), ",".join(plan.sections)
    options.audio, options.plan = plan.audio, settings
    return planned_lesson(arrangement, plan, int(settings.get("octave", 0))), source


def _ready_tune(options: argparse.Namespace, path: Path) -> tuple[Tune, int]:
    """The tune ready for the player, in the key that suits all players best where that is asked for, and by how many
    octaves it was moved."""
    from fioritura.arrange.keys import keyed
    from fioritura.arrange.prepare import nearest_octave, prepared
    from fioritura.lesson.parts import CLASS_SET
    from fioritura.players.instruments import instrument_named

    instrument, found = instrument_named(options.player), file_tune(options, path)
    moved = found
    if options.tune_key:
        has_parts = not options.sections or "parts" in names(options.sections)
        players = names(options.players) or (CLASS_SET if has_parts else ())
        moved = keyed(
            found, options.tune_key, [instrument_named(id) for id in dict.fromkeys((options.player, *players))]
        )
    octave = nearest_octave(moved, instrument) if options.octave is None else options.octave
    tune = prepared(
        found, instrument, octave=options.octave, chords=options.chords, unfold=options.unfold, key=moved.key
    )
    return replace(tune, warnings=(*moved.warnings, *tune.warnings[len(found.warnings) :])), octave


@contextmanager
def _progress() -> Iterator[Callable[[str, int, int], None]]:
    """A progress bar for each step on a terminal; nothing elsewhere."""
    if not sys.stderr.isatty():
        yield lambda step, done, total: None
        return
    from tqdm import tqdm

    bars: dict[str, Any] = {}

    def tell(step: str, done: int, total: int) -> None:
        if step not in bars:
            bars[step] = tqdm(
                total=total,
                desc=f"{say(message('cli-pack-step', step=step)):<14}",
                position=len(bars),
                leave=False,
                unit="file",
            )
        bars[step].update(done - bars[step].n)

    try:
        yield tell
    finally:
        for bar in bars.values():
            bar.close()
