"""What a batch costs by stage, from ten tunes to the whole corpus; its memory; and an estimate for a million tunes.

    PYTHONPATH=. python benchmarks/scale_bench.py                     10, 100 and 1,000 tunes
    PYTHONPATH=. python benchmarks/scale_bench.py 10 100 1000 0 --workers 2     0 is the whole corpus
    PYTHONPATH=. python benchmarks/scale_bench.py 400 --against-one   how much quicker two workers are than one

Each row is a run of ``fioritura batch`` in a process of its own over a book of tunes drawn from music21's ABC books, at
three levels to MusicXML. Processor time is user and system time: other work on the machine does not count. `keeping` is
all that is neither reading, engine nor writing: the start, listing the book, keys, putting files away.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.corpus_tunes import book_entries

STAGES = ("reading", "engine", "writing")
MILLION = 1_000_000


@dataclass(frozen=True, slots=True)
class Run:
    """A batch that was measured; `cpu_sec` by stage, `peak_mb` of its largest process."""

    tunes: int
    made: int
    failed: int
    wall_sec: float
    cpu_sec: dict[str, float]
    peak_mb: float
    out_mb: float

    @property
    def total_sec(self) -> float:
        return sum(self.cpu_sec.values())

    @property
    def ours(self) -> float:
        """Share of the time that goes into engine and writing, reading apart."""
        return (self.cpu_sec["engine"] + self.cpu_sec["writing"]) / (self.total_sec - self.cpu_sec["reading"])


def measured(count: int, workers: int, player: str, levels: str) -> Run:
    """Run a batch over `count` tunes of the corpus (0: all) and measure it."""
    entries = book_entries()
    chosen = random.Random(count).sample(entries, count) if count else list(entries)
    with tempfile.TemporaryDirectory(prefix="fioritura-scale-") as name:
        book, out = Path(name) / "book.abc", Path(name) / "out"
        book.write_text("\n\n".join(str(entry.text) for entry in chosen) + "\n", encoding="utf-8")
        options = ["--out", str(out), "--player", player, "--levels", levels, "--irregular", "keep", "--json"]
        command = [sys.executable, "-m", "fioritura", "batch", str(book), *options, "--workers", str(workers)]
        started = time.monotonic()
        with subprocess.Popen(command, stdout=subprocess.PIPE) as process:
            assert process.stdout is not None
            said = process.stdout.read()
            _, status, usage = os.wait4(process.pid, 0)
            process.returncode = os.waitstatus_to_exitcode(status)
        wall_sec = time.monotonic() - started
        if process.returncode not in (0, 4):
            raise SystemExit(f"The batch ended with {process.returncode}.")
        summary = json.loads(said)
        cpu = {stage: summary["cpu_seconds"].get(stage, 0.0) for stage in STAGES}
        cpu["keeping"] = usage.ru_utime + usage.ru_stime - sum(cpu.values())
        out_mb = sum(path.stat().st_size for path in out.rglob("*") if path.is_file()) / 1e6
    peak_mb = usage.ru_maxrss / (1e6 if sys.platform == "darwin" else 1e3)
    return Run(len(chosen), summary["made"], summary["failed_tunes"], wall_sec, cpu, peak_mb, out_mb)


def say(runs: Sequence[Run]) -> None:
    print(
        "| tunes | pieces | failed | reading | engine | writing | keeping | ms a tune | ours | wall | peak | files |"
    )
    print("|" + "---:|" * 12)
    for run in runs:
        stages = " | ".join(f"{run.cpu_sec[stage]:.1f} s" for stage in (*STAGES, "keeping"))
        print(
            f"| {run.tunes:,} | {run.made:,} | {run.failed:,} | {stages} | {1000 * run.total_sec / run.tunes:.1f} "
            f"| {run.ours:.1%} | {run.wall_sec:.0f} s | {run.peak_mb:.0f} MB | {run.out_mb:.0f} MB |"
        )


def estimate(run: Run) -> None:
    """What a million such tunes would take, and what would hold them up."""
    each = {stage: seconds / run.tunes for stage, seconds in run.cpu_sec.items()}
    hours = MILLION * sum(each.values()) / 3600
    slowest = max(each, key=lambda stage: each[stage])
    working = sum(each.values()) - each["keeping"]
    print(f"\nA million tunes, from the run of {run.tunes:,}: {hours:.0f} hours of one core,")
    print(
        f"{MILLION / run.tunes * run.out_mb / 1000:.0f} GB of files. The bottleneck is {slowest}: {each[slowest] / sum(each.values()):.0%}"
    )
    print(
        f"of the time. The one process that keeps ({1000 * each['keeping']:.1f} ms a tune) has enough to do with {working / each['keeping']:.0f} workers."
    )


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("counts", type=int, nargs="*", default=[10, 100, 1000])
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--player", default="concert", help="one that reaches every tune by default")
    parser.add_argument("--levels", default="1,3,5")
    parser.add_argument("--against-one", action="store_true", help="compare two workers with one, three times")
    options = parser.parse_args()
    if options.against_one:
        for count in options.counts:
            pairs = [
                [measured(count, workers, options.player, options.levels).wall_sec for workers in (1, 2)]
                for _ in range(3)
            ]
            one, two = (min(walls) for walls in zip(*pairs, strict=True))
            print(f"{count:,} tunes: one worker {one:.1f} s, two {two:.1f} s, {one / two:.2f} times as quick")
        return
    runs = [measured(count, options.workers, options.player, options.levels) for count in options.counts]
    say(runs)
    estimate(runs[-1])


if __name__ == "__main__":
    main()
