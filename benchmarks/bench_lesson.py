"""Speed of the lesson pack on the tune that comes with the program, its 32 bars written out.

    python benchmarks/bench_lesson.py [--clips]

Prints wall and processor seconds of the handout alone, of a whole pack for seven parts from an empty cache, of the
same pack again, and of clips on request. Processor seconds over cores is what an idle machine takes; the aims are 3 s
for the handout and 25 s for the pack on two cores, and a quarter of a clip's length for the clip.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from importlib.resources import as_file, files
from pathlib import Path

from fioritura.arrange.prepare import prepared
from fioritura.lesson.cache import Cache
from fioritura.lesson.lesson import Lesson, lesson_of
from fioritura.lesson.pack import PackOptions, write_pack
from fioritura.lesson.running_order import example_sec
from fioritura.notation.read import read_tune
from fioritura.players.instruments import instrument_named
from fioritura.players.player import Player
from fioritura.techniques.place import Setting

SEVEN = ("concert", "tenor-sax", "trumpet", "alto-sax", "baritone-sax", "flute", "trombone")
ALL = ("handout", "parts", "sound", "exercises", "levels", "page", "overlays")


def processor_sec() -> float:
    times = os.times()
    return times.user + times.system + times.children_user + times.children_system


def demo() -> Lesson:
    with as_file(files("fioritura.data") / "lanterns.abc") as path:
        tune = prepared(read_tune(path), instrument_named("alto-sax"), unfold=True)
    return lesson_of(tune, Setting(Player.of("alto-sax", 3), tune.quarters_per_minute, tune.feel, "jazz"))


def main() -> None:
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)

        def timed(what: str, sections: tuple[str, ...], cache: Cache) -> None:
            wall, processor = time.perf_counter(), processor_sec()
            lesson = demo()
            write_pack(lesson, folder / "pack", PackOptions(players=SEVEN, sections=sections), cache=cache)
            wall, processor = time.perf_counter() - wall, processor_sec() - processor
            print(
                f"{what:<24} {wall:6.1f} s wall {processor:6.1f} s processor {processor / cores:6.1f} s on {cores} cores"
            )

        timed("handout", ("handout",), Cache(folder / "first"))
        timed("whole pack", ALL, Cache(folder / "second"))
        timed("whole pack again", ALL, Cache(folder / "second"))
        if "--clips" in sys.argv[1:]:
            lesson = demo()
            seconds = 2 * sum(example_sec(lesson, example, 1.0) + 1.0 for example in lesson.examples)
            print(f"clips last {seconds:.0f} s")
            timed("clips", ("clips",), Cache(folder / "third"))


if __name__ == "__main__":
    main()
