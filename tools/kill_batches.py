"""Kill batches and their workers while they are at work, and compare what comes of it: ``python -m tools.kill_batches``.

A book of corpus tunes is made once without a disturbance. Then the batch is killed again and again and taken up each time;
its workers are killed, one after the other; and the workers of a scheduler on loopback are. Each time the folder must be
the same, byte for byte, and no process may stay behind. Prints a log; the exit code is 1 when anything differs.
"""

from __future__ import annotations

import argparse
import hashlib
import os
import random
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from tests.batches import children, is_running, tree
from tests.corpus_tunes import book_entries

PAUSES_SEC: Final = (1.0, 6.0)
"""The shortest and the longest time between two kills."""

MOST_LEFT_SEC: Final = 10.0


def main() -> int:
    """Kill, take up again, compare, and say so."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--tunes", type=int, default=300, help="tunes in the book (default: 300)")
    parser.add_argument("--kills", type=int, default=8, help="kills in each way (default: 8)")
    options = parser.parse_args()
    luck = random.Random(options.tunes)
    with TemporaryDirectory(prefix="fioritura-kills-") as name:
        book = Path(name) / "book.abc"
        entries = luck.sample(list(book_entries()), options.tunes)
        book.write_text("\n\n".join(str(entry.text) for entry in entries) + "\n", encoding="utf-8")
        straight = Path(name) / "straight"
        ended = started(book, straight, "--workers", "2").wait()
        wanted = tree(straight)
        say(f"undisturbed: exit {ended}, {len(wanted):,} files, {digest_of(wanted)}")
        differ = 0
        for way in (batch_killed, workers_killed, cluster_killed):
            for out in way(book, options.kills, luck):
                found = tree(out)
                is_same = found == wanted
                differ += not is_same
                say(f"{out.name}: {len(found):,} files, {digest_of(found)}: {'the same' if is_same else 'DIFFERENT'}")
    return 1 if differ else 0


def batch_killed(book: Path, kills: int, luck: random.Random) -> Iterator[Path]:
    """The batch itself gets SIGKILL, and is taken up again."""
    out = book.parent / "batch-killed"
    for number in range(1, kills + 1):
        process = started(book, out, "--workers", "2")
        if ends_within(process, luck.uniform(*PAUSES_SEC)):
            say(f"batch: ended by itself before kill {number}")
            break
        workers = children(process.pid)
        process.kill()
        process.wait()
        left_sec = gone_after(workers)
        say(
            f"batch: kill {number}, {records(out)} tunes done, its {len(workers)} workers gone after {left_sec:.2f} s"
        )
    say(f"batch: taken up for the last time, exit {started(book, out, '--workers', '2').wait()}")
    yield out


def workers_killed(book: Path, kills: int, luck: random.Random) -> Iterator[Path]:
    """A worker of the batch gets SIGKILL, and then another one."""
    out = book.parent / "workers-killed"
    process = started(book, out, "--workers", "2")
    for number in range(1, kills + 1):
        if ends_within(process, luck.uniform(*PAUSES_SEC)):
            break
        if workers := children(process.pid):
            os.kill(luck.choice(workers), signal.SIGKILL)
            say(f"workers: kill {number}, {records(out)} tunes done")
    say(f"workers: exit {process.wait()}")
    yield out


def cluster_killed(book: Path, kills: int, luck: random.Random) -> Iterator[Path]:
    """A scheduler and three workers on loopback: first left alone, then a worker after the other gets SIGKILL."""
    with cluster() as (address, nannies):
        calm = book.parent / "cluster"
        say(f"cluster: scheduler and 3 workers, exit {started(book, calm, '--scheduler', address).wait()}")
        yield calm
        out = book.parent / "cluster-killed"
        process = started(book, out, "--scheduler", address)
        for number in range(1, kills + 1):
            if ends_within(process, luck.uniform(*PAUSES_SEC)):
                break
            if workers := children(luck.choice(nannies)):
                os.kill(workers[-1], signal.SIGKILL)
                say(f"cluster: kill {number}, {records(out)} tunes done")
        say(f"cluster: exit {process.wait()}")
        yield out


@contextmanager
def cluster() -> Iterator[tuple[str, list[int]]]:
    """The address of a scheduler, and the processes that look after one worker each."""
    with socket.create_server(("127.0.0.1", 0)) as free:
        address = f"tcp://127.0.0.1:{free.getsockname()[1]}"
    port = address.rpartition(":")[2]
    quiet = partial(subprocess.Popen[bytes], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    dask = [sys.executable, "-m", "distributed.cli.dask_scheduler", "--host", "127.0.0.1", "--port", port]
    worker = [sys.executable, "-m", "distributed.cli.dask_worker", address, "--nthreads", "1", "--no-dashboard"]
    processes = [quiet([*dask, "--no-dashboard"])]
    processes += [quiet(worker) for _ in range(3)]
    try:
        yield address, [process.pid for process in processes[1:]]
    finally:
        for process in reversed(processes):
            process.terminate()
            process.wait()


def started(book: Path, out: Path, *more: str) -> subprocess.Popen[bytes]:
    """A batch that has begun."""
    command = [sys.executable, "-m", "fioritura", "batch", str(book), "--out", str(out)]
    command += ["--levels", "1,3,5", "--irregular", "keep", "--json", *more]
    return subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def ends_within(process: subprocess.Popen[bytes], seconds: float) -> bool:
    """True when the process ends in that time."""
    try:
        process.wait(seconds)
    except subprocess.TimeoutExpired:
        return False
    return True


def gone_after(pids: list[int]) -> float:
    """The seconds until all of these have ended."""
    began = time.monotonic()
    while any(is_running(pid) for pid in pids):
        if time.monotonic() - began > MOST_LEFT_SEC:
            raise SystemExit(f"Workers stay behind: {pids}")
        time.sleep(0.01)
    return time.monotonic() - began


def records(out: Path) -> int:
    """How many tunes have been written."""
    return sum(1 for _ in out.glob("*/tune.json"))


def digest_of(files: dict[str, bytes]) -> str:
    """A short checksum of a whole tree."""
    sums = sorted((path, hashlib.sha256(data).hexdigest()) for path, data in files.items())
    return "sha256 " + hashlib.sha256(repr(sums).encode()).hexdigest()[:16]


def say(words: str) -> None:
    """A line of the log."""
    print(f"{time.strftime('%H:%M:%S')}  {words}", flush=True)


if __name__ == "__main__":
    sys.exit(main())
