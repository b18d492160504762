"""Speed of the lesson pack on the tune that comes with the program, its 32 bars written out.

    python benchmarks/bench_lesson.py [--clips]

Prints wall and processor seconds of the handout alone, of a whole pack for seven parts from an empty cache, of the
same pack again, and of clips on request. Processor seconds over cores is what an idle machine takes; the aims are 3 s
for the handout and 25 s for the pack on two cores, and a quarter of a clip's length for the clip.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
import time
from importlib.resources import as_file, files
from pathlib import Path

from fioritura.arrange.plan import Plan, usual_count
from fioritura.arrange.prepare import prepared
from fioritura.lesson.cache import Cache
from fioritura.lesson.lesson import Lesson, lesson_of
from fioritura.lesson.pack import PackOptions, write_pack
from fioritura.lesson.running_order import example_sec
from fioritura.lesson.workers import worker_count
from fioritura.notation.read import read_tune
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.players.setting import Setting

SEVEN = ("concert", "tenor-sax", "trumpet", "alto-sax", "baritone-sax", "flute", "trombone")
ALL = ("handout", "parts", "sound", "exercises", "levels", "page", "overlays")


def demo() -> Lesson:
    with as_file(files("fioritura.data") / "lanterns.abc") as path:
        tune = prepared(read_tune(path), instrument_named("alto-sax"), unfold=True)
    setting = Setting(Player.of("alto-sax", 3), tune.quarters_per_minute, tune.feel, "jazz")
    return lesson_of(tune, setting, plan=Plan.usual(usual_count(tune)))


def make(sections: tuple[str, ...], folder: Path, cache: Path) -> None:
    write_pack(demo(), folder, PackOptions(players=SEVEN, sections=sections), cache=Cache(cache))


def timed(what: str, sections: tuple[str, ...], folder: Path, cache: Path) -> None:
    """Time a pack made by a program of its own, as the command line starts it."""
    code = f"import bench_lesson as b; from pathlib import Path; b.make({sections!r}, Path({str(folder)!r}), Path({str(cache)!r}))"
    wall, before = time.perf_counter(), resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, "-c", code], check=True, cwd=Path(__file__).parent)
    wall, after = time.perf_counter() - wall, resource.getrusage(resource.RUSAGE_CHILDREN)
    processor = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    cores = worker_count()
    print(f"{what:<18} {wall:6.1f} s wall {processor:6.1f} s processor {processor / cores:6.1f} s a core", flush=True)


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        timed("handout", ("handout",), folder / "handout", folder / "first")
        timed("whole pack", ALL, folder / "pack", folder / "second")
        timed("whole pack again", ALL, folder / "pack", folder / "second")
        if "--clips" in sys.argv[1:]:
            lesson = demo()
            seconds = 2 * sum(example_sec(lesson, example, 1.0) + 1.0 for example in lesson.examples)
            print(f"{len(lesson.examples)} clips, twice, last {seconds:.0f} s")
            timed("clips", ("clips",), folder / "clips", folder / "third")


if __name__ == "__main__":
    main()
