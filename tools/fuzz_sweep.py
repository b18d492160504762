"""Throw damaged and invented input at every reader: ``python -m tools.fuzz_sweep --count 1000000``.

Every input must be read or refused with a deliberate error, within two seconds of processor time and a gigabyte of
memory. Prints a table; the exit code is 1 when an input did anything else, and such inputs are kept in a folder.
"""

from __future__ import annotations

import argparse
import os
import resource
import signal
import sys
import time
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from contextlib import contextmanager
from dataclasses import dataclass, field
from math import ceil
from pathlib import Path

from tests.fuzzing import READERS, made, tried

MOST_SECONDS = 2.0
MOST_MEGABYTES = 1024
CHUNK = 500


@dataclass
class Outcome:
    """What became of a chunk of inputs."""

    reader: str
    kinds: Counter[str] = field(default_factory=Counter)
    failed: list[tuple[int, str]] = field(default_factory=list)
    slowest_sec: float = 0.0
    megabytes: int = 0


def main() -> int:
    """Run the sweep and print its table."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--count", type=int, default=1_000_000, help="inputs in all (default: 1,000,000)")
    parser.add_argument("--kept", type=Path, default=Path("fuzz-failures"), help="folder for inputs that failed")
    options = parser.parse_args()
    started = time.monotonic()
    totals = {reader: Outcome(reader) for reader in READERS}
    with ProcessPoolExecutor() as pool:
        running = [pool.submit(run_chunk, chunk) for chunk in _chunks(options.count)]
        for number, ended in enumerate(as_completed(running), start=1):
            outcome = ended.result()
            _add(totals[outcome.reader], outcome, options.kept)
            if sys.stderr.isatty():
                print(f"\r{number * CHUNK:,} of {options.count:,}", end="", file=sys.stderr)
    return _print_table(totals, time.monotonic() - started)


def run_chunk(chunk: tuple[str, int, int]) -> Outcome:
    """Try the inputs of one chunk."""
    reader, first, stop = chunk
    outcome = Outcome(reader)
    signal.signal(signal.SIGPROF, _out_of_time)
    with _hushed():
        for number in range(first, stop):
            data = made(reader, number)
            started = time.process_time()
            signal.setitimer(signal.ITIMER_PROF, MOST_SECONDS)
            kind = fault = ""
            try:
                kind = tried(reader, data)
            except BaseException as error:
                fault = f"{type(error).__name__}: {error}"[:200]
            finally:
                signal.setitimer(signal.ITIMER_PROF, 0)
            took_sec = time.process_time() - started
            if not fault and took_sec > MOST_SECONDS:
                fault = f"{took_sec:.1f} s"
            if fault:
                outcome.failed.append((number, fault))
            else:
                outcome.kinds[kind] += 1
            outcome.slowest_sec = max(outcome.slowest_sec, took_sec)
    outcome.megabytes = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024
    return outcome


@contextmanager
def _hushed() -> Iterator[None]:
    """Keep quiet what the libraries below Python print about damaged audio."""
    before = os.dup(2)
    with Path(os.devnull).open("wb") as nowhere:
        os.dup2(nowhere.fileno(), 2)
    try:
        yield
    finally:
        os.dup2(before, 2)
        os.close(before)


def _chunks(count: int) -> Iterator[tuple[str, int, int]]:
    """Chunks for all readers; those that cost ten times as much as the others get a tenth of a share."""
    shares = {reader: 0.1 if reader in ("whole way", "archive", "api") else 1.0 for reader in READERS}
    for reader, share in shares.items():
        wanted = ceil(count * share / sum(shares.values()))
        for first in range(0, wanted, CHUNK):
            yield reader, first, min(first + CHUNK, wanted)


def _out_of_time(*_: object) -> None:
    raise TimeoutError(f"more than {MOST_SECONDS:g} s")


def _add(total: Outcome, outcome: Outcome, kept: Path) -> None:
    total.kinds += outcome.kinds
    total.failed += outcome.failed
    total.slowest_sec = max(total.slowest_sec, outcome.slowest_sec)
    total.megabytes = max(total.megabytes, outcome.megabytes)
    for number, error in outcome.failed:
        kept.mkdir(exist_ok=True)
        (kept / f"{outcome.reader}-{number}").write_bytes(made(outcome.reader, number))
        print(f"{outcome.reader} {number}: {error}", flush=True)


def _print_table(totals: dict[str, Outcome], seconds: float) -> int:
    print(f"{'reader':<12} {'inputs':>9} {'read':>9} {'refused':>9} {'failed':>7} {'slowest':>9} {'memory':>8}")
    failed = inputs = 0
    for total in totals.values():
        tried_here = total.kinds.total() + len(total.failed)
        inputs += tried_here
        failed += len(total.failed) + (total.megabytes > MOST_MEGABYTES)
        print(
            f"{total.reader:<12} {tried_here:>9,} {total.kinds['read']:>9,} {total.kinds.total() - total.kinds['read']:>9,} "
            f"{len(total.failed):>7} {total.slowest_sec:>7.2f} s {total.megabytes:>5} MB"
        )
    print(f"{inputs:,} inputs in {seconds / 60:.1f} min: " + (f"{failed} failures." if failed else "no failure."))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
